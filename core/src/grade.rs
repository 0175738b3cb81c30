//! Will this can do? The grade of a can and its band, from the best cut that it allows.
//!
//! The limits are common practice, no source. What they cost: a tenth of the power in
//! another mode is half a decibel and a tilted beam; a VSWR of 1.5 sends 4 % of the
//! power back, one of 2.5 sends 18 %.

use alloc::vec::Vec;

use crate::analysis::Analysis;
use crate::design::Design;
use crate::judge;
use crate::one_mode_diameter::one_mode_margins;
use crate::si::SiDesign;
use crate::verdict::Finding;
use crate::waveguide_mode::{Mode, modes_up_to};

/// Power in modes other than TE11 up to which a second mode is only just there: the
/// can is still one to take with care, since the mode passes.
pub const LITTLE_IN_OTHERS: f64 = 0.01;
/// Power in modes other than TE11 beyond which a can will not do.
pub const MOST_IN_OTHERS: f64 = 0.10;
/// Room between the band and a cutoff below which every millimetre counts.
pub const LITTLE_ROOM: f64 = 0.03;
/// Worst VSWR of the best cut up to which the match is good.
pub const GOOD_VSWR: f64 = 1.5;
/// Worst VSWR of the best cut beyond which a can will not do.
pub const MOST_VSWR: f64 = 2.5;

/// Will it do?
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Grade {
    /// It will do.
    WillDo,
    /// It will do, with care.
    WithCare,
    /// It will not do.
    WillNotDo,
}

/// What a grade rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Reason {
    /// Nothing passes in the band, or in its lower part.
    CutOff {
        /// Below this nothing passes, Hz.
        te11_cutoff_hz: f64,
        /// Whether the band's upper part passes.
        part_of_band_passes: bool,
    },
    /// A third mode passes: no cut can be given.
    ThirdMode {
        /// The third.
        mode: Mode,
        /// From here on it passes, Hz.
        cutoff_hz: f64,
    },
    /// A second mode passes in the band.
    SecondMode {
        /// Where it begins to pass, Hz.
        cutoff_hz: f64,
        /// Its largest share of the power over the band, with the best cut; `None`
        /// until that is known.
        share: Option<f64>,
    },
    /// Little room between TE11's cutoff and the band.
    LittleRoomBelow {
        /// Band's lower edge over the cutoff, less one.
        room: f64,
    },
    /// Little room between the band and the second mode.
    LittleRoomAbove {
        /// The second mode's cutoff over the band's upper edge, less one.
        room: f64,
    },
    /// The can is so short that the second mode has not died out at the mouth.
    TooShort {
        /// Length inside that would do, metres.
        sufficient_length_m: f64,
    },
    /// The best cut's match is fair, or poor.
    Match {
        /// Worst VSWR over the band with the best cut.
        worst_vswr: f64,
    },
    /// No cut can be worked out for this can, wire and mouth.
    NoCut,
}

/// The grade of a can and its band, and what it rests on, the gravest first.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Graded {
    /// The grade.
    pub grade: Grade,
    /// Why it is no better; empty where it will do.
    pub reasons: Vec<Reason>,
    /// Band's lower edge over TE11's cutoff, less one; negative where it is cut off.
    pub room_below: f64,
    /// TM01's cutoff over the band's upper edge, less one; negative where it passes.
    pub room_above: f64,
    /// Whether the best cut was known. Without it the grade may still get worse.
    pub complete: bool,
}

impl Reason {
    /// The grade that this alone gives.
    #[must_use]
    pub fn grade(&self) -> Grade {
        match *self {
            Self::CutOff { .. } | Self::ThirdMode { .. } | Self::NoCut => Grade::WillNotDo,
            Self::SecondMode { share, .. } if share.unwrap_or(0.0) > MOST_IN_OTHERS => {
                Grade::WillNotDo
            }
            Self::Match { worst_vswr } if worst_vswr > MOST_VSWR => Grade::WillNotDo,
            Self::SecondMode { .. }
            | Self::LittleRoomBelow { .. }
            | Self::LittleRoomAbove { .. }
            | Self::TooShort { .. }
            | Self::Match { .. } => Grade::WithCare,
        }
    }
}

/// What is known of a can's best cut.
#[derive(Clone, Copy, Debug)]
pub enum Best<'a> {
    /// Not searched for yet.
    Unknown,
    /// No cut can be worked out.
    None,
    /// The analysis of the design with its best cut.
    Known(&'a Analysis),
}

/// Grades a design's can for its band; of the design's own cut only the distance
/// counts, and only while the best is not known.
#[must_use]
pub fn grade(design: &Design, best: Best<'_>) -> Graded {
    let si = SiDesign::new(design);
    let margins = one_mode_margins(2.0 * si.radius_m, si.band_low_hz, si.band_high_hz);
    let mut reasons = of_modes(design, &si, margins.lower, margins.upper, best);
    let passes = !reasons
        .iter()
        .any(|reason| reason.grade() == Grade::WillNotDo);
    if passes {
        match best {
            Best::None => reasons.push(Reason::NoCut),
            Best::Known(analysis) => reasons.extend(of_match(analysis)),
            Best::Unknown => {}
        }
    }
    reasons.sort_by_key(|reason| core::cmp::Reverse(reason.grade()));
    Graded {
        grade: reasons.first().map_or(Grade::WillDo, Reason::grade),
        reasons,
        room_below: margins.lower,
        room_above: margins.upper,
        complete: !passes || !matches!(best, Best::Unknown),
    }
}

fn of_match(analysis: &Analysis) -> Option<Reason> {
    match analysis.match_summary {
        None => Some(Reason::NoCut),
        Some(summary) if summary.worst_vswr_in_band > GOOD_VSWR => Some(Reason::Match {
            worst_vswr: summary.worst_vswr_in_band,
        }),
        Some(_) => None,
    }
}

fn of_modes(design: &Design, si: &SiDesign, below: f64, above: f64, best: Best<'_>) -> Vec<Reason> {
    let te11_cutoff_hz = Mode::TE11.cutoff_frequency_hz(si.radius_m);
    let mut reasons = Vec::new();
    if below <= 0.0 {
        reasons.push(Reason::CutOff {
            te11_cutoff_hz,
            part_of_band_passes: te11_cutoff_hz < si.band_high_hz,
        });
        return reasons;
    }
    let third = modes_up_to(si.radius_m, si.band_high_hz)
        .into_iter()
        .find(|mode| *mode != Mode::TE11 && *mode != Mode::TM01);
    if let Some(mode) = third {
        reasons.push(Reason::ThirdMode {
            mode,
            cutoff_hz: mode.cutoff_frequency_hz(si.radius_m),
        });
        return reasons;
    }
    if below < LITTLE_ROOM {
        reasons.push(Reason::LittleRoomBelow { room: below });
    }
    if above <= 0.0 {
        reasons.push(Reason::SecondMode {
            cutoff_hz: Mode::TM01.cutoff_frequency_hz(si.radius_m),
            share: share_of_tm01(best),
        });
    } else if above < LITTLE_ROOM {
        reasons.push(Reason::LittleRoomAbove { room: above });
    }
    reasons.extend(too_short(design, si, best));
    reasons
}

fn share_of_tm01(best: Best<'_>) -> Option<f64> {
    let Best::Known(analysis) = best else {
        return None;
    };
    analysis.verdict.iter().find_map(|finding| match finding {
        Finding::SeveralModes { tm01_share, .. } => *tm01_share,
        _ => None,
    })
}

fn too_short(design: &Design, si: &SiDesign, best: Best<'_>) -> Option<Reason> {
    let found = match best {
        Best::Known(analysis) => analysis
            .verdict
            .iter()
            .find(|finding| matches!(finding, Finding::TooShort { .. }))
            .cloned(),
        Best::None | Best::Unknown => judge::judge_length(design, si),
    };
    match found {
        Some(Finding::TooShort {
            sufficient_length_m,
            ..
        }) => Some(Reason::TooShort {
            sufficient_length_m,
        }),
        _ => None,
    }
}
