//! What can be wrong with a question about the mouth.

use crate::waveguide_mode::Mode;

/// Why the mouth cannot be computed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum MouthError {
    /// The electrical radius `k a` is not in the range the computation covers.
    ElectricalRadius {
        /// The value asked for.
        ka: f64,
        /// Smallest value covered.
        low: f64,
        /// Largest value covered.
        high: f64,
    },
    /// The exact computation does not cover this mode: its order is too high or it
    /// does not exist.
    UnsupportedMode {
        /// The mode asked for.
        mode: Mode,
        /// Largest azimuthal order covered.
        highest_order: u8,
    },
    /// Only TE11, TM01 and TE21 are tabulated.
    NotTabulated {
        /// The mode asked for.
        mode: Mode,
    },
    /// The mode is at its cutoff, where it carries no wave.
    AtCutoff {
        /// The value of `k a` asked for.
        ka: f64,
        /// The mode's root; stay away from it by more than 1e-9 of its value.
        root: f64,
    },
}
