//! Cap and bracket of the print job, with what the computation says of them.

use leptos::prelude::document;
use tinwave_core::cap::{CapEffect, Sheet, cap_effect};
use tinwave_core::intrusion::{
    DepthLimit, USUAL_CHANGE, WallPlace, deepest_intrusion, last_place_um,
};

use super::browser;
use super::model::Model;
use super::print_part::Lines;
use crate::entry::{format_decimal, format_length};

/// Hole of a 4 mm blind rivet or M4 screw, and between the two along the can (common
/// practice, no source).
const HOLE_UM: u32 = 4_100;
const SPACING_UM: u32 = 40_000;
/// From a hole's edge to the end of the can, at least.
const WALL_UM: u32 = 5_000;
/// Places along the can that stand for all where the bracket may go.
const PLACES: u32 = 8;

/// The numbers of a choice; none where nothing is chosen.
fn chosen(id: &str) -> Vec<u32> {
    let value = document().get_element_by_id(id);
    let value = value.map(|element| browser::value_of(&element));
    let words = value.unwrap_or_default();
    words
        .split(' ')
        .filter_map(|word| word.parse().ok())
        .collect()
}

/// The lines of cap and bracket, as chosen under Print.
pub(super) fn fittings(model: &Model, lines: &mut Lines) {
    if let [thickness_um, permittivity_milli, loss_tangent_micro] = *chosen("print-cap") {
        let sheet = Sheet {
            thickness_um,
            permittivity_milli,
            loss_tangent_micro,
        };
        cap(model, &sheet, lines);
    }
    if let [angle_millideg] = *chosen("print-bracket") {
        bracket(model, angle_millideg, lines);
    }
}

fn cap(model: &Model, sheet: &Sheet, lines: &mut Lines) {
    lines.numbers("cap", &[sheet.thickness_um, sheet.permittivity_milli]);
    let design = &model.work.design;
    let said = match cap_effect(design, model.outsides.of(design), sheet) {
        Ok(effect) => cap_said(&effect),
        Err(_) => "What the cap does was not computed for this mouth.".into(),
    };
    lines.words("note", &said);
}

fn cap_said(effect: &CapEffect) -> String {
    let vswr = |worst: f64| format_decimal(worst, 2);
    let mut said = [
        "With the cap the worst VSWR of the band is ",
        &vswr(effect.with.worst_vswr_in_band),
        ", without it ",
        &vswr(effect.without.worst_vswr_in_band),
        ".",
    ]
    .concat();
    let seen = |shift_khz: &i64| shift_khz.unsigned_abs() >= 500;
    if let Some(shift_khz) = effect.shift_khz().filter(seen) {
        let megahertz = format_decimal(shift_khz.unsigned_abs() as f64 / 1e3, 0);
        let way = if shift_khz < 0 { " down." } else { " up." };
        for part in [" The best frequency moves ", &megahertz, " MHz", way] {
            said.push_str(part);
        }
    }
    if let Some(loss_db) = effect.loss_db {
        let lost = if loss_db < 0.005 {
            "less than 0.01".into()
        } else {
            format_decimal(loss_db, 2)
        };
        for part in [" Lost in it: ", &lost, " dB."] {
            said.push_str(part);
        }
    }
    said
}

fn bracket(model: &Model, angle_millideg: u32, lines: &mut Lines) {
    let design = &model.work.design;
    let first = WALL_UM + HOLE_UM / 2;
    // Of the rivet nearer to the back wall.
    let last = design.can.open_length_um.saturating_sub(first);
    let last = last.min(last_place_um(design)).saturating_sub(SPACING_UM);
    let step = last.saturating_sub(first) / (PLACES - 1);
    let pair = |place: u32| {
        [0, SPACING_UM].map(|farther| WallPlace {
            axial_um: first + step * place + farther,
            angle_millideg: angle_millideg as i32,
            diameter_um: HOLE_UM,
        })
    };
    let places: Vec<[WallPlace; 2]> = (0..PLACES).map(pair).collect();
    let outside = model.outsides.of(design);
    let limit = deepest_intrusion(design, outside, &places, USUAL_CHANGE);
    // Down to a tenth of a millimetre.
    let deepest = match limit {
        Ok(DepthLimit::Within { depth_um, .. }) => (depth_um / 100 * 100).max(1),
        _ => 0,
    };
    lines.numbers("bracket", &[angle_millideg, HOLE_UM, SPACING_UM, deepest]);
    if let Ok(DepthLimit::Beyond { tried_um }) = limit {
        let depth = format_length(tried_um, model.unit);
        let said = ["The rivets of the bracket may stick in up to ", &depth];
        let why = ": the VSWR moves by less than 0.1.";
        lines.words("note", &[said.concat().as_str(), why].concat());
    }
}
