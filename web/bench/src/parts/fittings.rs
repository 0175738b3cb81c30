//! What printing wants computed: how far the wire's length may be off, what the cap
//! does to the match, how deep a bracket's rivets may stick in. Not a part that is
//! seen: its answer is lines of the print job.

use std::sync::Arc;

use tinwave_core::analysis::Analyser;
use tinwave_core::cap::{CapEffect, Sheet, cap_effect};
use tinwave_core::design::Design;
use tinwave_core::intrusion::{
    DepthLimit, USUAL_CHANGE, WallPlace, deepest_intrusion, last_place_um,
};
use tinwave_core::outside::OutsideSpectrum;
use tinwave_web::entry::{format_decimal, format_length};
use tinwave_web::job_lines::JobLines;

use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;

/// Hole of a 4 mm blind rivet or M4 screw, and between the two along the can (common
/// practice, no source).
const HOLE_UM: u32 = 4_100;
const SPACING_UM: u32 = 40_000;
/// From a hole's edge to the end of the can, at least.
const WALL_UM: u32 = 5_000;
/// Places along the can that stand for all where the bracket may go.
const PLACES: u32 = 8;

/// The numbers of a choice; none where nothing is chosen.
fn chosen(request: &Request, field: &str) -> Vec<u32> {
    let words = request.get(field).split(' ');
    words.filter_map(|word| word.parse().ok()).collect()
}

/// The lines, for the choices `cap` (thickness in micrometres, permittivity in
/// thousandths, loss tangent in millionths) and `bracket` (angle, thousandths of a
/// degree).
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut lines = JobLines::default();
    let outside = outside_of(request.design());
    limits(request.design(), outside.as_ref(), &mut lines);
    if let [thickness_um, permittivity_milli, loss_tangent_micro] = *chosen(request, "cap") {
        let sheet = Sheet {
            thickness_um,
            permittivity_milli,
            loss_tangent_micro,
        };
        cap(request.design(), outside.as_ref(), &sheet, &mut lines);
    }
    if let [angle_millideg] = *chosen(request, "bracket") {
        bracket(request, outside.as_ref(), angle_millideg, &mut lines);
    }
    let mut reply = Reply::new();
    reply.lines(lines.into_text());
    reply
}

/// Steps of the walk from the present length, and how many each way.
const STEP_UM: u32 = 200;
const STEPS: u32 = 40;

/// How short and how long the wire may be before the VSWR passes 1.5 and 2.
fn limits(design: &Design, outside: Option<&Arc<OutsideSpectrum>>, lines: &mut JobLines) {
    let mut analyser = Analyser::new();
    let mut worst = |length_um: u32| {
        let mut trial = design.clone();
        trial.probe.length_um = length_um;
        let analysis = analyser.analyse_with(&trial, outside).ok()?;
        Some(analysis.match_summary?.worst_vswr_in_band)
    };
    let present = design.probe.length_um;
    let mut ends = [[present; 2]; 2];
    for (side, end) in [(-1, 0), (1, 1)] {
        let mut within = [true; 2];
        for step in 0..STEPS {
            let Some(length) = present.checked_add_signed(side * (step * STEP_UM) as i32) else {
                break;
            };
            let vswr = worst(length).unwrap_or(f64::INFINITY);
            for (place, limit) in [1.5, 2.0].into_iter().enumerate() {
                within[place] &= vswr <= limit;
                if within[place] {
                    ends[place][end] = length;
                }
            }
            if !within[1] {
                break;
            }
        }
    }
    for (key, [shortest, longest]) in ["within-1.5", "within-2"].into_iter().zip(ends) {
        if longest > shortest {
            lines.numbers(key, &[shortest, longest]);
        }
    }
}

fn cap(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    sheet: &Sheet,
    lines: &mut JobLines,
) {
    lines.numbers("cap", &[sheet.thickness_um, sheet.permittivity_milli]);
    let said = match cap_effect(design, outside, sheet) {
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

fn bracket(
    request: &Request,
    outside: Option<&Arc<OutsideSpectrum>>,
    angle_millideg: u32,
    lines: &mut JobLines,
) {
    let design = request.design();
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
    let limit = deepest_intrusion(design, outside, &places, USUAL_CHANGE);
    // Down to a tenth of a millimetre; 0 says nothing.
    let deepest = match limit {
        Ok(DepthLimit::Within { depth_um, .. }) => (depth_um / 100 * 100).max(1),
        _ => 0,
    };
    lines.numbers("bracket", &[angle_millideg, HOLE_UM, SPACING_UM, deepest]);
    let said = match limit {
        Ok(DepthLimit::Beyond { tried_um }) => [
            "The rivets of the bracket may stick in up to ",
            &format_length(tried_um, request.unit),
            ": the VSWR moves by less than 0.1.",
        ]
        .concat(),
        Err(_) => "How deep the bracket's rivets may stick in was not computed.".to_owned(),
        Ok(_) => return,
    };
    lines.words("note", &said);
}
