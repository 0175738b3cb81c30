//! The can from the side: the hole, tuning screws, the mouth's part, the cap.

use tinwave_core::design::Mouth;
use tinwave_core::ruler::RulerFigures;
use tinwave_maker::entry::format_length_number;
use tinwave_words::make as words;

use super::BenchView;
use super::sheet::{BenchLine, ROW, Sheet, figure_width, words_width};
use crate::section::drafting::Anchor;

/// The can on the sheet, its closed end at the left.
struct Can {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
    per_um: f64,
}

impl Can {
    fn middle(&self) -> f64 {
        (self.top + self.bottom) / 2.0
    }
}

/// Room left and right of a can, px.
const MARGIN: f64 = 12.0;

/// Draws the can to one scale in the room there is; `beyond` is what the mouth's part
/// adds to its length, `wide` the widest diameter, micrometres.
fn can(sheet: &mut Sheet, view: &BenchView, beyond_um: f64, wide_um: f64) -> Can {
    let figures = RulerFigures::new(&view.work.design);
    let length = f64::from(figures.overall_length_um.max(1));
    let across = f64::from(figures.outside_diameter_um.max(1));
    let highest = if sheet.is_wide() { 220.0 } else { 130.0 };
    let room = sheet.width - 3.0 * MARGIN;
    let per_um = (room / (length + beyond_um)).min(highest / across.max(wide_um));
    let top = 8.0 + (across.max(wide_um) - across) * per_um / 2.0;
    let can = Can {
        left: MARGIN,
        right: MARGIN + length * per_um,
        top,
        bottom: top + across * per_um,
        per_um,
    };
    let body = ((can.left, can.top), (can.right, can.bottom));
    for line in [BenchLine::Tint, BenchLine::Outline] {
        sheet
            .line(line)
            .rectangle(body.0.0, body.0.1, body.1.0, body.1.1);
    }
    for x in [can.left + 3.5, can.right - 3.5] {
        sheet
            .line(BenchLine::Thin)
            .segment(x, can.top, x, can.bottom);
    }
    let design = &view.work.design.can;
    let base = f64::from(design.base_recess_um + design.wall_um) * per_um;
    if base > 5.0 {
        let x = can.left + base;
        sheet
            .line(BenchLine::Hidden)
            .segment(x, can.top, x, can.bottom);
    }
    let y = can.middle();
    sheet
        .line(BenchLine::Centre)
        .segment(can.left - 8.0, y, can.right + 8.0, y);
    sheet.height = sheet.height.max(can.bottom + 8.0);
    can
}

/// Names the can's ends inside its outline, where both fit beside `x`, the hole.
fn name_ends(sheet: &mut Sheet, can: &Can, x: f64) {
    let (closed, mouth) = (words::closed_end(), words::mouth());
    if can.left + 22.0 + words_width(closed) < x - 12.0 {
        sheet.words(can.left + 14.0, can.top + 18.0, Anchor::Start, closed);
    }
    if can.right - 14.0 - words_width(mouth) > x + 12.0 {
        sheet.words(can.right - 10.0, can.top + 18.0, Anchor::End, mouth);
    }
}

pub(super) fn mark(sheet: &mut Sheet, view: &BenchView) {
    let can = can(sheet, view, 0.0, 0.0);
    let figures = RulerFigures::new(&view.work.design);
    let hole_um = figures.hole_from_closed_rim_um;
    let x = can.left + f64::from(hole_um) * can.per_um;
    let y = can.middle();
    name_ends(sheet, &can, x);
    sheet
        .line(BenchLine::Centre)
        .segment(x, can.top - 6.0, x, can.bottom + 6.0);
    let mark = sheet.line(BenchLine::Mark);
    mark.circle(x, y, 5.0);
    mark.segment(x - 16.0, y, x + 16.0, y);
    mark.segment(x, y - 16.0, x, y + 16.0);
    let figure = |um| format_length_number(um, view.unit);
    let own = figure(hole_um);
    let other = figures.hole_from_open_rim_um.map(figure);
    // Side by side where both have room for their figures, else one below the other.
    let fits = |wide: f64, text: &str| wide >= figure_width(text) + 22.0;
    let both = fits(x - can.left, &own)
        && other
            .as_ref()
            .is_none_or(|other| fits(can.right - x, other));
    let line_y = can.bottom + ROW;
    let own_y = if both { line_y } else { line_y + ROW };
    if let Some(other) = other {
        sheet.along((x, can.right), can.bottom + 4.0, line_y, false, &other);
    }
    sheet.along((can.left, x), can.bottom + 4.0, own_y, true, &own);
    sheet.height = own_y + 8.0;
}

pub(super) fn screws(sheet: &mut Sheet, view: &BenchView) {
    let can = can(sheet, view, 0.0, 0.0);
    let design = &view.work.design;
    let base_um = design.can.base_recess_um + design.can.wall_um;
    let mut line_y = can.bottom;
    for screw in &design.screws {
        let um = screw.axial_um.saturating_add(base_um);
        let x = (can.left + f64::from(um) * can.per_um).min(can.right);
        let half = (f64::from(screw.diameter_um) * can.per_um / 2.0).max(2.0);
        let deep = (f64::from(screw.depth_um) * can.per_um).max(4.0);
        let mark = sheet.line(BenchLine::Mark);
        mark.rectangle(x - half, can.top - 6.0, x + half, can.top + deep);
        line_y += ROW;
        let figure = format_length_number(um, view.unit);
        sheet.along((can.left, x), can.bottom + 4.0, line_y, true, &figure);
    }
    sheet.height = line_y + 8.0;
}

pub(super) fn mouth_part(sheet: &mut Sheet, view: &BenchView) {
    let (wide_um, long_um) = match view.work.design.mouth {
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => {
            let inside = f64::from(view.work.design.can.inside_diameter_um);
            let flare = (f64::from(mouth_diameter_um) - inside).max(0.0) / 2.0;
            let angle = (f64::from(half_angle_millideg) / 1e3).to_radians();
            (f64::from(mouth_diameter_um), flare / angle.tan().max(1e-3))
        }
        Mouth::Flange {
            outside_diameter_um,
        } => (f64::from(outside_diameter_um), 0.0),
        Mouth::Choke {
            outside_diameter_um,
            ..
        } => (f64::from(outside_diameter_um), 0.0),
        Mouth::Open | Mouth::Absorbing => (0.0, 0.0),
    };
    // A figure stands beside it.
    let beyond = long_um + wide_um * 0.45;
    let can = can(sheet, view, beyond, wide_um);
    let half = wide_um * can.per_um / 2.0;
    let (y, end) = (can.middle(), can.right + long_um * can.per_um);
    let mark = sheet.line(BenchLine::Mark);
    match view.work.design.mouth {
        Mouth::Funnel { .. } => {
            mark.polyline([(can.right, can.top), (end, y - half)]);
            mark.polyline([(can.right, can.bottom), (end, y + half)]);
        }
        Mouth::Flange { .. } => mark.rectangle(end - 4.0, y - half, end, y + half),
        Mouth::Choke { depth_um, .. } => {
            let deep = f64::from(depth_um) * can.per_um;
            mark.rectangle(end - deep, y - half, end, y + half);
        }
        Mouth::Open | Mouth::Absorbing => {}
    }
    let figure = format_length_number(wide_um as u32, view.unit);
    sheet.upright((y - half, y + half), end + 2.0, end + 20.0, true, &figure);
    sheet.height = sheet.height.max(y + half + 10.0);
}

pub(super) fn cap(sheet: &mut Sheet, view: &BenchView) {
    let wide_um = match view.work.design.mouth {
        Mouth::Flange {
            outside_diameter_um,
        }
        | Mouth::Choke {
            outside_diameter_um,
            ..
        } => f64::from(outside_diameter_um),
        _ => 0.0,
    };
    let can = can(sheet, view, 0.0, wide_um);
    let reach = (wide_um * can.per_um / 2.0 - (can.bottom - can.top) / 2.0).max(0.0);
    sheet.line(BenchLine::Mark).rectangle(
        can.right + 2.0,
        can.top - reach - 3.0,
        can.right + 6.0,
        can.bottom + reach + 3.0,
    );
    let (x, foot) = (can.right - (can.right - can.left) * 0.12, can.bottom);
    let mark = sheet.line(BenchLine::Mark);
    mark.segment(x - 4.0, foot, x + 4.0, foot);
    mark.segment(x, foot + 4.0, x, foot + 14.0);
    sheet.words(x + 2.0, foot + 30.0, Anchor::End, words::drain());
    sheet.words(
        can.right - 10.0,
        can.top + 18.0,
        Anchor::End,
        words::cap_here(),
    );
    sheet.height = foot + reach + 38.0;
}
