//! A measurement as the maker brings it: tables by hand, and what a curve amounts to.

mod curve;
mod table;

pub use curve::{CurveFigures, Under, between, curve_figures};
pub use table::{Column, TableFault, TableProblem, TableRead, decimal, read_table};

/// A few letters that tell a measurement from another: FNV-1a, 64 bits (G. Fowler,
/// L. C. Noll, P. Vo, *The FNV Non-Cryptographic Hash Algorithm*, from memory).
#[must_use]
pub fn mark_of(values: impl IntoIterator<Item = f64>) -> String {
    let mut hash = 0xcbf2_9ce4_8422_2325_u64;
    for value in values {
        for byte in value.to_le_bytes() {
            hash = (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
    format!("{hash:016x}")
}
