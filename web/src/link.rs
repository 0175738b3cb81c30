//! (link)
