//! (bands)
