//! (entry)
