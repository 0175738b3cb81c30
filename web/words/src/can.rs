//! What the Can station says.

use tinwave_core::design::Band;
use tinwave_core::grade::Grade;
use tinwave_core::metal::Metal;
use tinwave_core::waveguide_mode::Mode;
use tinwave_maker::bands::PublishedBand;
use tinwave_maker::entry::{
    LengthUnit, format_decimal, format_frequency_exact, format_hertz, format_length,
    format_length_exact, format_length_number,
};
use tinwave_maker::fits::Room;
use tinwave_maker::mode_role::ModeRole;
use tinwave_maker::trade_sizes::{SizeGroup, TradeSize};

use crate::figures::percent;

mod shelf;
mod waves;

pub use shelf::*;
pub use waves::*;

/// Heads the size.
#[must_use]
pub const fn size() -> &'static str {
    "Size"
}

/// Above the size, while the page still shows its example.
#[must_use]
pub const fn example_note() -> &'static str {
    "This is an example. Type your can’s width: cut, match and beam follow."
}

/// In its place from the first edit on.
#[must_use]
pub const fn own_note() -> &'static str {
    "Now it is your can: cut, match and beam follow what you type."
}

/// What is chosen between: the ways to a diameter.
#[must_use]
pub const fn measured_how() -> &'static str {
    "Width measured by"
}

/// A way to the inside diameter.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum WidthBy {
    /// A ruler across the mouth.
    #[default]
    Inside,
    /// A ruler or caliper across the outside.
    Outside,
    /// A strip of paper wrapped once round.
    PaperStrip,
}

impl WidthBy {
    /// Every way.
    pub const ALL: [Self; 3] = [Self::Inside, Self::Outside, Self::PaperStrip];

    /// How the page knows it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Inside => "inside",
            Self::Outside => "outside",
            Self::PaperStrip => "strip",
        }
    }

    /// The way of a key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|way| way.key() == key)
    }

    /// Its name among the others.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Inside => "Inside",
            Self::Outside => "Outside",
            Self::PaperStrip => "Paper strip",
        }
    }

    /// What is typed.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Inside => "Across the inside",
            Self::Outside => "Across the outside",
            Self::PaperStrip => "Strip, once round",
        }
    }

    /// How to measure it.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::Inside => {
                "Across the mouth, away from the seam. An oval can: the mean of the widest and the narrowest."
            }
            Self::Outside => {
                "Across the straight part of the wall, not across the seams at the ends. Twice the wall is taken off."
            }
            Self::PaperStrip => {
                "Wrap a strip of paper round the outside, mark where it meets, measure it flat. The paper (0.1 mm) and twice the wall are taken off."
            }
        }
    }
}

/// Below the inside diameter: what a strip of paper would measure.
#[must_use]
pub fn strip_round_it(um: u32, unit: LengthUnit) -> String {
    format!("strip round it: {}", format_length(um, unit))
}

/// Below another measure: the inside diameter that it makes.
#[must_use]
pub fn makes_inside(um: u32, unit: LengthUnit) -> String {
    format!("{} inside", format_length(um, unit))
}

/// The walls leave nothing of the can.
#[must_use]
pub const fn no_inside_left() -> &'static str {
    "That leaves no inside: the wall is thicker than the can. Check the wall’s thickness."
}

/// A measure that makes a can beyond what can be computed.
#[must_use]
pub fn width_out_of_range(inside_um: u32, low_um: u32, high_um: u32, unit: LengthUnit) -> String {
    format!(
        "That makes {} inside. A can is {} to {} wide here.",
        format_length(inside_um, unit),
        format_length(low_um, unit)
            .trim_end_matches(unit.symbol())
            .trim_end(),
        format_length(high_um, unit)
    )
}

/// The length's label.
#[must_use]
pub const fn length_inside() -> &'static str {
    "Inside length"
}

/// How to measure it.
#[must_use]
pub const fn length_help() -> &'static str {
    "From the back wall to the rim of the mouth."
}

/// The band's label.
#[must_use]
pub const fn band() -> &'static str {
    "Band"
}

/// A band by its edges.
#[must_use]
pub fn band_edges(band: Band) -> String {
    format!(
        "{} to {} MHz",
        format_frequency_exact(band.low_khz),
        format_frequency_exact(band.high_khz)
    )
}

/// Heads the channels in the list of bands.
#[must_use]
pub fn channels_of(set: &str) -> String {
    format!("{set}s")
}

/// A band that was typed as one frequency beyond what can be computed.
#[must_use]
pub fn band_out_of_range(typed_khz: u32, low_khz: u32, high_khz: u32) -> String {
    format!(
        "{} MHz is {}. A band can lie from {} to {} MHz.",
        format_frequency_exact(typed_khz),
        if typed_khz < low_khz {
            "too low"
        } else {
            "too high"
        },
        format_frequency_exact(low_khz),
        format_frequency_exact(high_khz)
    )
}

/// What is known of a published band.
#[must_use]
pub fn about_band(band: &PublishedBand) -> String {
    let receive = if band.receive_only {
        "Receive only: transmitting here is not allowed. "
    } else {
        ""
    };
    format!("{receive}{}", band.note)
}

/// The source of a published band.
#[must_use]
pub fn band_source(band: &PublishedBand) -> String {
    format!("{} ({})", band.source, band.confidence.words())
}

/// Names the fold of the can's finer entries.
#[must_use]
pub const fn wall_recess_metal() -> &'static str {
    "Wall, recess, metal"
}

/// The metal's label.
#[must_use]
pub const fn metal_label() -> &'static str {
    "Metal"
}

/// What is folded in there: `0.2 mm, 4 mm, tinplate`.
#[must_use]
pub fn wall_recess_metal_values(
    wall_um: u32,
    recess_um: u32,
    metal: Metal,
    unit: LengthUnit,
) -> String {
    let length = |um| format!("{} {}", format_length_exact(um, unit), unit.symbol());
    let metal = crate::metal(metal);
    let short = metal
        .split(" (")
        .next()
        .unwrap_or(metal)
        .to_ascii_lowercase();
    format!("{}, {}, {short}", length(wall_um), length(recess_um))
}

/// Where the hole is drilled.
#[must_use]
pub const fn drill_at() -> &'static str {
    "Drill at"
}

/// The face that it is measured from.
#[must_use]
pub const fn from_closed_rim() -> &'static str {
    "from the closed end’s rim"
}

/// How long the wire is cut.
#[must_use]
pub const fn cut_the_wire() -> &'static str {
    "Cut the wire"
}

/// The face that it is measured from.
#[must_use]
pub const fn from_connectors_face() -> &'static str {
    "from the connector’s face"
}

/// The worst VSWR.
#[must_use]
pub const fn vswr_at_worst() -> &'static str {
    "VSWR at worst"
}

/// Where.
#[must_use]
pub const fn in_the_band() -> &'static str {
    "in the band"
}

/// The same, of a cut that does not follow the best.
#[must_use]
pub fn in_the_band_best(best_vswr: f64) -> String {
    format!("as cut; the best has {}", vswr(Some(best_vswr)))
}

/// The gain.
#[must_use]
pub const fn gain() -> &'static str {
    "Gain"
}

/// How wide the beam is, along the wire and across it.
#[must_use]
pub fn beam_widths(e_deg: f64, h_deg: f64) -> String {
    format!(
        "{}° by {}° wide",
        format_decimal(e_deg, 0),
        format_decimal(h_deg, 0)
    )
}

/// What a figure waits for.
#[must_use]
pub const fn being_worked_out() -> &'static str {
    "being worked out"
}

/// A figure of which a better one is on its way: its possible error.
#[must_use]
pub fn give_or_take(error: &str, unit: &str) -> String {
    format!("± {error} {unit} so far")
}

/// A figure of which a better one is on its way.
#[must_use]
pub const fn estimated() -> &'static str {
    "estimated so far"
}

/// A figure that can't be worked out.
#[must_use]
pub const fn not_known() -> &'static str {
    "can’t be worked out"
}

/// A VSWR: two decimals; more than ten says no more than that it is large.
#[must_use]
pub fn vswr(value: Option<f64>) -> String {
    match value {
        None => "no match".to_owned(),
        Some(value) if value > 10.0 => "over 10".to_owned(),
        Some(value) => format_decimal(value, 2),
    }
}

/// The cut in use is not the best one.
#[must_use]
pub fn cut_stays(as_cut: f64, best: f64) -> String {
    format!(
        "The verdict is for the best cut, VSWR {}. Yours has {}.",
        vswr(Some(best)),
        vswr(Some(as_cut))
    )
}

/// Lets the cut follow the best again.
#[must_use]
pub const fn follow_again() -> &'static str {
    "Follow the best again"
}

/// The worker did not come.
#[must_use]
pub const fn no_worker() -> &'static str {
    "The best cut can’t be worked out: this browser did not start the page’s worker. Load the page again."
}

/// The search was stopped.
#[must_use]
pub const fn search_stopped() -> &'static str {
    "The search for the best cut was stopped."
}

/// What is told to those who hear the page when the verdict changes.
#[must_use]
pub fn told(grade: Grade, drill: &str, wire: &str) -> String {
    let verdict = crate::grade::grade(grade);
    if drill.is_empty() {
        format!("{verdict}.")
    } else {
        format!("{verdict}. Drill at {drill}, cut the wire {wire}.")
    }
}
