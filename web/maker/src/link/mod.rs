//! A design in the fragment of a link.
//!
//! `v=1&n=Orchard_gate&b=2401-2483.5&d=87&l=190&pw=1.29&pl=28.4&pd=45`
//!
//! Only letters, digits and `- _ . ~ = &`, so that forum software leaves it
//! whole. Lengths are in millimetres, frequencies in megahertz, each with at
//! most three decimals, so that every whole micrometre and kilohertz comes
//! back exactly. What equals version 1's fixed default is left out. Every
//! version that was ever published opens for good: `tests/links_v1.txt` holds
//! the proof for version 1.
//!
//! | key | what | left out |
//! |---|---|---|
//! | v | version | never |
//! | n | name (see [`name`]) | empty |
//! | b | band, low-high | never |
//! | d l | can: inside diameter, open length | never |
//! | w r | wall, recess of the base | 0.25, 0 |
//! | m | metal | tinplate |
//! | pw pl pd | wire diameter, probe length, distance from the back wall | never |
//! | ph | hole diameter | default hole |
//! | z c | reference impedance in ohm, shunt capacitance in pF | 50, 0 |
//! | s | sleeve: diameter `_` permittivity | none |
//! | mo | `absorbing`, `funnel_`diameter`_`angle, `flange_`diameter, `choke_`diameter`_`depth | open |
//! | k | connector `_` fixing | sma_flange |
//! | t | screws: axial`_`angle`_`depth`_`diameter, with `~` between | none |
//! | f | sweep: low-high-points | default |
//! | u | `best`: the cut follows the best | the cut stays as it is |
//! | at | the station that the link opens at | the first |

mod error;
mod name;
mod number;
mod read;

pub use error::LinkError;

use tinwave_core::design::{Mouth, Screw};
use tinwave_core::metal::Metal;

use crate::connectors::{ConnectorChoice, ConnectorKind, Mounting};
use crate::station::Station;
use crate::workpiece::{Cut, Workpiece, clean_name};
use number::push_thousandths;

/// The version that is written.
pub const LINK_VERSION: u32 = 1;
/// Longest fragment that is ever written, in characters.
pub const LONGEST_LINK: usize = 500;
/// Longest fragment that is read.
pub const LONGEST_READ: usize = 2_000;

// Version 1's defaults. They can never change.
const V1_WALL_UM: u32 = 250;
const V1_RECESS_UM: u32 = 0;
const V1_METAL: Metal = Metal::Tinplate;
const V1_REFERENCE_MILLIOHM: u32 = 50_000;
const V1_SHUNT_FF: u32 = 0;
const V1_CONNECTOR: ConnectorChoice = ConnectorChoice {
    kind: ConnectorKind::Sma,
    mounting: Mounting::Flange,
};

/// What a link held.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened {
    /// The workpiece.
    pub work: Workpiece,
    /// The station that the link names.
    pub station: Option<Station>,
    /// The version, where it is newer than this page.
    pub newer: Option<u32>,
    /// Keys that this page does not know, to be written back.
    pub unknown: Vec<(String, String)>,
    /// Known keys of a newer link whose values were not understood; their
    /// defaults hold.
    pub not_understood: Vec<String>,
}

/// Reads a fragment, with or without its `#`.
///
/// # Errors
/// [`LinkError`]: nothing of a link that is refused is used.
pub fn decode(fragment: &str) -> Result<Opened, LinkError> {
    read::decode(fragment)
}

/// Writes a workpiece.
#[must_use]
pub fn encode(work: &Workpiece) -> String {
    encode_keeping(work, &[])
}

/// Writes a workpiece and the unknown keys that its link came with, as far as
/// [`LONGEST_LINK`] allows.
#[must_use]
pub fn encode_keeping(work: &Workpiece, unknown: &[(String, String)]) -> String {
    encode_at(work, Station::default(), unknown)
}

/// Writes a workpiece, the station that the link opens at, and the unknown keys that
/// the opened link came with, as far as [`LONGEST_LINK`] allows.
#[must_use]
pub fn encode_at(work: &Workpiece, station: Station, unknown: &[(String, String)]) -> String {
    let mut numbers = String::with_capacity(160);
    if station != Station::default() {
        pair(&mut numbers, "at", station.key());
    }
    if work.cut == Cut::FollowsBest {
        pair(&mut numbers, "u", "best");
    }
    push_band_and_can(&mut numbers, work);
    push_probe(&mut numbers, work);
    let mut link = String::from("v=");
    link.push_str(&LINK_VERSION.to_string());
    let room = LONGEST_LINK.saturating_sub(link.len() + numbers.len());
    let name = name::encoded(&clean_name(&work.design.name), room.saturating_sub(3));
    if !name.is_empty() {
        pair(&mut link, "n", &name);
    }
    for (key, value) in unknown {
        let fits = link.len() + numbers.len() + key.len() + value.len() + 2 <= LONGEST_LINK;
        if fits && read::plain(key) && read::plain(value) {
            pair(&mut link, key, value);
        }
    }
    // Numbers last: no link ends in a sign that software might cut off.
    link.push_str(&numbers);
    link
}

fn pair(text: &mut String, key: &str, value: &str) {
    text.push('&');
    text.push_str(key);
    text.push('=');
    text.push_str(value);
}

fn length(text: &mut String, key: &str, value: u32) {
    text.push('&');
    text.push_str(key);
    text.push('=');
    push_thousandths(text, i64::from(value));
}

fn push_band_and_can(text: &mut String, work: &Workpiece) {
    let design = &work.design;
    length(text, "b", design.band.low_khz);
    text.push('-');
    push_thousandths(text, i64::from(design.band.high_khz));
    if let Some(sweep) = design.sweep {
        length(text, "f", sweep.low_khz);
        text.push('-');
        push_thousandths(text, i64::from(sweep.high_khz));
        text.push('-');
        text.push_str(&sweep.points.to_string());
    }
    push_mouth(text, design.mouth);
    if work.connector != V1_CONNECTOR {
        pair(text, "k", work.connector.kind.key());
        text.push('_');
        text.push_str(work.connector.mounting.key());
    }
    let can = design.can;
    if can.metal != V1_METAL {
        pair(text, "m", can.metal.key());
    }
    length(text, "d", can.inside_diameter_um);
    length(text, "l", can.open_length_um);
    if can.wall_um != V1_WALL_UM {
        length(text, "w", can.wall_um);
    }
    if can.base_recess_um != V1_RECESS_UM {
        length(text, "r", can.base_recess_um);
    }
}

fn push_probe(text: &mut String, work: &Workpiece) {
    let probe = work.design.probe;
    push_screws(text, &work.design.screws);
    if probe.reference_milliohm != V1_REFERENCE_MILLIOHM {
        length(text, "z", probe.reference_milliohm);
    }
    if probe.shunt_ff != V1_SHUNT_FF {
        length(text, "c", probe.shunt_ff);
    }
    if let Some(sleeve) = probe.sleeve {
        length(text, "s", sleeve.outside_diameter_um);
        text.push('_');
        push_thousandths(text, i64::from(sleeve.permittivity_milli));
    }
    if let Some(hole) = probe.hole_diameter_um {
        length(text, "ph", hole);
    }
    length(text, "pw", probe.wire_diameter_um);
    length(text, "pl", probe.length_um);
    length(text, "pd", probe.backshort_distance_um);
}

fn push_mouth(text: &mut String, mouth: Mouth) {
    let (word, numbers): (&str, &[u32]) = match &mouth {
        Mouth::Open => return,
        Mouth::Absorbing => ("absorbing", &[]),
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => ("funnel", &[*mouth_diameter_um, *half_angle_millideg]),
        Mouth::Flange {
            outside_diameter_um,
        } => ("flange", &[*outside_diameter_um]),
        Mouth::Choke {
            outside_diameter_um,
            depth_um,
        } => ("choke", &[*outside_diameter_um, *depth_um]),
    };
    pair(text, "mo", word);
    for &number in numbers {
        text.push('_');
        push_thousandths(text, i64::from(number));
    }
}

fn push_screws(text: &mut String, screws: &[Screw]) {
    for (index, screw) in screws.iter().enumerate() {
        text.push_str(if index == 0 { "&t=" } else { "~" });
        push_thousandths(text, i64::from(screw.axial_um));
        text.push('_');
        push_thousandths(text, i64::from(screw.angle_millideg));
        text.push('_');
        push_thousandths(text, i64::from(screw.depth_um));
        text.push('_');
        push_thousandths(text, i64::from(screw.diameter_um));
    }
}
