//! (words)
