//! (example)
