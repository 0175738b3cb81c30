//! Names of metals, modes and changes.

use tinwave_core::metal::Metal;
use tinwave_core::waveguide_mode::Mode;

use super::labels::label;
use tinwave_maker::history::Change;

/// A metal's name.
#[must_use]
pub const fn metal(metal: Metal) -> &'static str {
    match metal {
        Metal::Perfect => "No loss (for checks)",
        Metal::Tinplate => "Tinplate (food can)",
        Metal::Galvanised => "Galvanised steel (duct)",
        Metal::Aluminium => "Aluminium",
        Metal::Copper => "Copper",
        Metal::Brass => "Brass",
        Metal::Zinc => "Zinc sheet",
        Metal::Steel => "Bare steel",
        Metal::Stainless => "Stainless steel",
        _ => "Another metal",
    }
}

/// What a mode that passes beside TE11 does to the beam.
#[must_use]
pub fn mode_effect(mode: Mode) -> &'static str {
    if mode == Mode::TE11 {
        "TE11 is the wanted mode: one lobe straight ahead."
    } else if mode == Mode::TM01 {
        "TM01 has a hole straight ahead and a ring round it. Mixed with TE11 it tilts the beam towards or away from the probe’s side, by an amount that changes with frequency."
    } else if mode == Mode::TE21 {
        "TE21 has four lobes round the axis and none ahead. A single probe drives it; mixed with TE11 it widens the beam and makes it lopsided."
    } else if mode == Mode::TE01 {
        "TE01 has a ring round the axis and nothing ahead. A straight probe hardly drives it."
    } else if mode == Mode::TM11 {
        "TM11 sends little ahead and lobes to both sides in the plane of the wire. Mixed with TE11 it widens or narrows the beam in that plane as the frequency changes."
    } else {
        "Each mode more takes power into lobes of its own. The beam gets uneven, and the match changes quickly with frequency."
    }
}

/// What an edit changed, for "Undo …" and "Redo …".
#[must_use]
pub fn change(change: Change) -> String {
    let words = match change {
        Change::Field(field) => label(field).plain,
        Change::Diameter => "Inside diameter",
        Change::ProbeDrag => "Moving the probe",
        Change::Band => "Band",
        Change::Metal => "Metal",
        Change::Wire => "Wire",
        Change::Connector => "Connector",
        Change::Name => "Name",
        Change::Mouth => "Mouth",
        Change::Screws => "Screws",
        Change::Sleeve => "Sleeve",
        Change::Sweep => "Range of the chart",
        Change::BestCut => "Taking the best cut",
        Change::TradeSize => "Taking a trade size",
        Change::Measured => "Work on the measured can",
        Change::Opened => "Opening a design",
    };
    words.into()
}
