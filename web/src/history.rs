//! (history)
