//! The Tinwave page.
