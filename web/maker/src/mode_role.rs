//! What a mode of the can does to the band.

use tinwave_core::design::Band;
use tinwave_core::waveguide_mode::Mode;

/// What a mode does to a band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ModeRole {
    /// The wanted mode passes the whole band.
    Carries,
    /// The wanted mode passes the band's upper part only.
    CarriesPart,
    /// The wanted mode does not reach down to the band.
    Blocked,
    /// Another mode that stays above the band.
    StaysOut,
    /// Another mode that begins to pass within the band.
    Enters,
    /// Another mode that passes the whole band.
    PassesToo,
}

impl ModeRole {
    /// Of a mode with its cutoff, Hz.
    #[must_use]
    pub fn of(mode: Mode, cutoff_hz: f64, band: Band) -> Self {
        let (low, high) = (
            f64::from(band.low_khz) * 1e3,
            f64::from(band.high_khz) * 1e3,
        );
        match (mode == Mode::TE11, cutoff_hz < low, cutoff_hz < high) {
            (true, true, _) => Self::Carries,
            (true, false, true) => Self::CarriesPart,
            (true, false, false) => Self::Blocked,
            (false, true, _) => Self::PassesToo,
            (false, false, true) => Self::Enters,
            (false, false, false) => Self::StaysOut,
        }
    }

    /// Whether it passes in the band, or part of it.
    #[must_use]
    pub const fn passes(self) -> bool {
        !matches!(self, Self::Blocked | Self::StaysOut)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bands_edges_decide() {
        let band = Band {
            low_khz: 2_401_000,
            high_khz: 2_483_500,
        };
        let of = |mode, mhz: f64| ModeRole::of(mode, mhz * 1e6, band);
        assert_eq!(of(Mode::TE11, 2_300.0), ModeRole::Carries);
        assert_eq!(of(Mode::TE11, 2_450.0), ModeRole::CarriesPart);
        assert_eq!(of(Mode::TE11, 2_600.0), ModeRole::Blocked);
        assert_eq!(of(Mode::TM01, 2_300.0), ModeRole::PassesToo);
        assert_eq!(of(Mode::TM01, 2_450.0), ModeRole::Enters);
        assert_eq!(of(Mode::TM01, 2_638.0), ModeRole::StaysOut);
    }
}
