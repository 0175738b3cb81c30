//! What can be wrong with the numbers of a link.

/// Which quantity of a link is outside its range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum LinkQuantity {
    /// Frequency, Hz.
    FrequencyHz,
    /// Length of the path, m.
    DistanceM,
    /// Thickness of a wall, m.
    WallThicknessM,
    /// Way through trees, m.
    FoliageDepthM,
    /// Length of a cable, m.
    LineLengthM,
    /// Height of an end above the ground, m.
    HeightM,
    /// Distance of an obstacle from the first end, m.
    ObstacleDistanceM,
    /// Height of an obstacle above the ground, m.
    ObstacleHeightM,
    /// Effective Earth radius over the true one.
    EarthRadiusFactor,
    /// Any level, gain or loss, dB.
    LevelDb,
    /// Transmit power, W.
    PowerW,
    /// Diameter of an aperture, m.
    ApertureM,
}

/// Why a link cannot be computed: the quantity, its place, its value, and the range
/// that would be right (ends included).
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum LinkError {
    /// A quantity of which there is one only.
    OutOfRange {
        /// Which.
        quantity: LinkQuantity,
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// A quantity of one thing in a list: a wall, an obstacle, or an end.
    OutOfRangeAt {
        /// Place in the list, from 0.
        index: usize,
        /// Which.
        quantity: LinkQuantity,
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
}

impl LinkError {
    /// The same error, of the thing with this place in a list.
    pub(super) fn at(self, index: usize) -> Self {
        match self {
            Self::OutOfRange {
                quantity,
                value,
                range,
            }
            | Self::OutOfRangeAt {
                quantity,
                value,
                range,
                ..
            } => Self::OutOfRangeAt {
                index,
                quantity,
                value,
                range,
            },
        }
    }
}

/// The value, if it lies in the range; a value that is no number does not.
pub(super) fn within(
    quantity: LinkQuantity,
    value: f64,
    range: [f64; 2],
) -> Result<f64, LinkError> {
    let [low, high] = range;
    if value >= low && value <= high {
        Ok(value)
    } else {
        Err(LinkError::OutOfRange {
            quantity,
            value,
            range,
        })
    }
}

/// Frequencies that the link's formulas are used at: 30 MHz to 100 GHz.
pub(super) const FREQUENCIES_HZ: [f64; 2] = [30e6, 100e9];
