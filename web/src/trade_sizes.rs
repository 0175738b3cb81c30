//! (trade_sizes)
