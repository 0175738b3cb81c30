//! Building materials by ITU-R P.2040.
//!
//! Source: ITU-R P.2040-3 (08/2023), Table 3, read from a copy of its figures. Ordinary
//! dry materials: reinforcing bars, foil, coated glass and moisture add 3 to 30 dB to a
//! wall (common practice, no source).

use super::error::{LinkError, LinkQuantity, within};
use crate::complex::Complex;
use crate::constants::EPSILON_0;
use crate::math;

/// A material of walls, floors and windows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[non_exhaustive]
pub enum BuildingMaterial {
    /// Concrete without bars.
    Concrete,
    /// Brick.
    Brick,
    /// Plasterboard.
    Plasterboard,
    /// Wood.
    Wood,
    /// Plain glass, without a metal coating.
    Glass,
    /// Ceiling board.
    CeilingBoard,
    /// Chipboard.
    Chipboard,
    /// Plywood.
    Plywood,
    /// Marble.
    Marble,
    /// Floorboard; given from 50 GHz up only.
    Floorboard,
    /// Metal sheet.
    Metal,
}

/// Row of the table: `a`, `b`, `c`, `d`, lowest and highest frequency in GHz.
type Row = [f64; 6];

impl BuildingMaterial {
    /// Every material, in the order a list should show them.
    pub const ALL: [Self; 11] = [
        Self::Brick,
        Self::Concrete,
        Self::Plasterboard,
        Self::Wood,
        Self::Glass,
        Self::Chipboard,
        Self::Plywood,
        Self::CeilingBoard,
        Self::Marble,
        Self::Floorboard,
        Self::Metal,
    ];

    const fn row(self) -> Row {
        match self {
            Self::Concrete => [5.24, 0.0, 0.0462, 0.7822, 1.0, 100.0],
            Self::Brick => [3.91, 0.0, 0.0238, 0.16, 1.0, 40.0],
            Self::Plasterboard => [2.73, 0.0, 0.0085, 0.9395, 1.0, 100.0],
            Self::Wood => [1.99, 0.0, 0.0047, 1.0718, 0.001, 100.0],
            Self::Glass => [6.31, 0.0, 0.0036, 1.3394, 0.1, 100.0],
            Self::CeilingBoard => [1.48, 0.0, 0.0011, 1.075, 1.0, 100.0],
            Self::Chipboard => [2.58, 0.0, 0.0217, 0.78, 1.0, 100.0],
            Self::Plywood => [2.71, 0.0, 0.33, 0.0, 1.0, 40.0],
            Self::Marble => [7.074, 0.0, 0.0055, 0.9262, 1.0, 60.0],
            Self::Floorboard => [3.66, 0.0, 0.0044, 1.3515, 50.0, 100.0],
            Self::Metal => [1.0, 0.0, 1e7, 0.0, 1.0, 100.0],
        }
    }

    /// Frequencies for which the material's figures are given, Hz, ends included.
    #[must_use]
    pub const fn frequency_range_hz(self) -> [f64; 2] {
        let [_, _, _, _, low_ghz, high_ghz] = self.row();
        [low_ghz * 1e9, high_ghz * 1e9]
    }

    /// Real part of the relative permittivity, `a f^b` with `f` in GHz.
    ///
    /// # Errors
    /// A frequency outside [`Self::frequency_range_hz`].
    pub fn relative_permittivity(self, frequency_hz: f64) -> Result<f64, LinkError> {
        let [a, b, ..] = self.row();
        Ok(a * math::pow(self.covered_ghz(frequency_hz)?, b))
    }

    /// Conductivity in S/m, `c f^d` with `f` in GHz.
    ///
    /// # Errors
    /// A frequency outside [`Self::frequency_range_hz`].
    pub fn conductivity_s_per_m(self, frequency_hz: f64) -> Result<f64, LinkError> {
        let [_, _, c, d, ..] = self.row();
        Ok(c * math::pow(self.covered_ghz(frequency_hz)?, d))
    }

    /// Complex relative permittivity `ε' - jσ/(2π f ε0)`, for time as `e^(+jωt)`.
    pub(super) fn complex_permittivity(self, frequency_hz: f64) -> Result<Complex, LinkError> {
        let sigma = self.conductivity_s_per_m(frequency_hz)?;
        let omega = 2.0 * core::f64::consts::PI * frequency_hz;
        Ok(Complex::new(
            self.relative_permittivity(frequency_hz)?,
            -sigma / (omega * EPSILON_0),
        ))
    }

    fn covered_ghz(self, frequency_hz: f64) -> Result<f64, LinkError> {
        let range = self.frequency_range_hz();
        within(LinkQuantity::FrequencyHz, frequency_hz, range).map(|hz| hz / 1e9)
    }

    /// Short word for links and files (`"brick"`).
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Concrete => "concrete",
            Self::Brick => "brick",
            Self::Plasterboard => "plasterboard",
            Self::Wood => "wood",
            Self::Glass => "glass",
            Self::CeilingBoard => "ceiling_board",
            Self::Chipboard => "chipboard",
            Self::Plywood => "plywood",
            Self::Marble => "marble",
            Self::Floorboard => "floorboard",
            Self::Metal => "metal",
        }
    }

    /// The material of a short word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.key() == key)
    }
}
