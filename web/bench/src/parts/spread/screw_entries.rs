//! Which screws are looked for.

use tinwave_core::screw_search::ScrewSettings;

use super::threads::{self, Thread};
use crate::request::Request;

/// Sides that the field offers: thousandths of a degree from the probe, and words.
pub(super) const SIDES: [(&str, i32, &str); 7] = [
    ("180", 180_000, "opposite the probe"),
    (
        "150",
        150_000,
        "30\u{b0} beside the line opposite the probe",
    ),
    (
        "135",
        135_000,
        "45\u{b0} beside the line opposite the probe",
    ),
    ("0", 0, "on the probe\u{2019}s side"),
    ("30", 30_000, "30\u{b0} beside the probe\u{2019}s line"),
    ("45", 45_000, "45\u{b0} beside the probe\u{2019}s line"),
    ("90", 90_000, "a quarter round from the probe"),
];

/// What is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct ScrewChoice {
    /// One or two.
    pub(super) count: u32,
    /// Thread.
    pub(super) thread: Thread,
    /// Side: its angle and its words.
    pub(super) side: (i32, &'static str),
}

impl ScrewChoice {
    /// The entries; what is unknown is the first of each field.
    pub(super) fn read(request: &Request) -> Self {
        let key = request.get("spread-side");
        let side = SIDES.iter().find(|(known, ..)| *known == key);
        let (_, angle, words) = side.unwrap_or(&SIDES[0]);
        Self {
            count: if request.get("spread-screws") == "2" {
                2
            } else {
                1
            },
            thread: threads::of_key(request.get("spread-thread")),
            side: (*angle, words),
        }
    }

    /// For the search.
    pub(super) const fn settings(&self) -> ScrewSettings {
        ScrewSettings {
            count: self.count,
            diameter_um: self.thread.diameter_um,
            angle_millideg: self.side.0,
        }
    }
}
