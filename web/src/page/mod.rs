//! The page: state, inputs, results.
