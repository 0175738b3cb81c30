//! (store)
