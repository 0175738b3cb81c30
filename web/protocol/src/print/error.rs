//! Why a job can't be printed.

use core::fmt;

use serde::{Deserialize, Serialize};

/// A number of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum JobNumber {
    /// What the printed ruler across measured.
    RulerAcross,
    /// What the printed ruler upright measured.
    RulerUpright,
    /// Thickness of the paper that goes round the can.
    PaperThickness,
    /// Outside diameter of the can.
    OutsideDiameter,
    /// Its wall.
    Wall,
    /// Its inside length.
    OpenLength,
    /// Recess of its base.
    BaseRecess,
    /// Diameter of the wire.
    Wire,
    /// Length of the wire.
    Length,
    /// Its distance from the back wall.
    Backshort,
    /// Outside diameter of its sleeve.
    Sleeve,
    /// Shortest or longest wire.
    CutLimits,
    /// Hole for the connector.
    Drill,
    /// Mass of the connector.
    ConnectorMass,
    /// A number of the connector's flange.
    Flange,
    /// A number of a tuning screw.
    Screw,
    /// A number of the bracket.
    Bracket,
    /// A number of what is made for the mouth.
    Mouth,
    /// Thickness of its sheet.
    Sheet,
    /// A number of the cap.
    Cap,
}

/// Why a job can't be printed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum PrintError {
    /// A number outside its range.
    OutOfRange {
        /// Which.
        number: JobNumber,
        /// What it is.
        value: u32,
        /// Smallest that would be right.
        low: u32,
        /// Largest that would be right.
        high: u32,
    },
    /// Name, link or a note is longer than any that the page makes.
    WordsTooLong {
        /// The most bytes that are taken.
        most: u32,
    },
    /// An image whose numbers don't agree with each other.
    UnsoundImage,
    /// Words that the standard fonts don't hold and no image was given for.
    NeedsImages(Vec<String>),
    /// More sheets than anybody would tape together.
    TooManySheets {
        /// How many it would be.
        sheets: u32,
        /// The most that are printed.
        most: u32,
    },
}

/// For whoever writes programs; what the page says of it is made elsewhere.
impl fmt::Display for PrintError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self, f)
    }
}

impl core::error::Error for PrintError {}
