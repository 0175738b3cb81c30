//! The connector near by: its hole, its wire, how it is held.

use tinwave_core::ruler::RulerFigures;
use tinwave_maker::bench::{Clamp, clamp_of};
use tinwave_maker::entry::format_length_number;
use tinwave_words::make as words;

use super::BenchView;
use super::sheet::{BenchLine, ROW, Sheet};
use crate::section::drafting::Anchor;

/// The hole from outside, the screws' holes round it; gives its middle and px a
/// micrometre.
fn face(sheet: &mut Sheet, view: &BenchView, all_um: f64) -> ((f64, f64), f64) {
    let high = if sheet.is_wide() { 200.0 } else { 128.0 };
    // The widest thing fills the height; nothing is drawn at more than twelve times.
    let per_um = (high / all_um).min(0.046);
    let half = all_um * per_um / 2.0;
    let middle = (sheet.width / 2.0 - 20.0, 12.0 + half);
    let hole_um = f64::from(view.work.connector.drill_um().unwrap_or(0));
    let (x, y) = middle;
    let reach = half + 10.0;
    let centre = sheet.line(BenchLine::Centre);
    centre.segment(x - reach, y, x + reach, y);
    centre.segment(x, y - reach, x, y + reach);
    if hole_um > 0.0 {
        sheet
            .line(BenchLine::Mark)
            .circle(x, y, hole_um * per_um / 2.0);
    }
    if let Clamp::Screws(flange) = clamp_of(view.work.connector) {
        let aside = f64::from(flange.square_um) * per_um / 2.0;
        sheet
            .line(BenchLine::Hidden)
            .rectangle(x - aside, y - aside, x + aside, y + aside);
        let pitch = f64::from(flange.hole_pitch_um) * per_um / 2.0;
        let radius = f64::from(flange.hole_um) * per_um / 2.0;
        for (dx, dy) in [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)] {
            sheet
                .line(BenchLine::Outline)
                .circle(x + dx * pitch, y + dy * pitch, radius);
        }
    }
    sheet.height = y + half + 14.0;
    (middle, per_um)
}

/// How much of the wall is shown round the hole, micrometres.
fn shown_um(view: &BenchView) -> f64 {
    let hole = f64::from(view.work.connector.drill_um().unwrap_or(4_000));
    match clamp_of(view.work.connector) {
        Clamp::Screws(flange) => f64::from(flange.square_um).max(hole),
        Clamp::Nut => hole * 1.8,
        Clamp::Solder => hole + 20_000.0,
    }
}

pub(super) fn drill(sheet: &mut Sheet, view: &BenchView) {
    let ((x, y), per_um) = face(sheet, view, shown_um(view));
    let half = shown_um(view) * per_um / 2.0;
    let Some(hole_um) = view.work.connector.drill_um() else {
        return;
    };
    let radius = f64::from(hole_um) * per_um / 2.0;
    let line_y = y + half + ROW;
    let figure = words::drill(hole_um, view.unit);
    sheet.along((x - radius, x + radius), y, line_y, true, &figure);
    sheet.height = line_y + 8.0;
    if let Clamp::Screws(flange) = clamp_of(view.work.connector) {
        let pitch = f64::from(flange.hole_pitch_um) * per_um / 2.0;
        let figure = words::drill(flange.hole_pitch_um, view.unit);
        sheet.upright(
            (y - pitch, y + pitch),
            x + pitch,
            x + half + 24.0,
            false,
            &figure,
        );
    }
}

pub(super) fn rub_off(sheet: &mut Sheet, view: &BenchView) {
    let ((x, y), per_um) = face(sheet, view, shown_um(view));
    let half = shown_um(view) * per_um / 2.0;
    let tint = sheet.line(BenchLine::Cut);
    match clamp_of(view.work.connector) {
        Clamp::Screws(flange) => {
            let aside = f64::from(flange.square_um) * per_um / 2.0;
            tint.rectangle(x - aside, y - aside, x + aside, y + aside);
            let figure = words::drill(flange.square_um, view.unit);
            sheet.along(
                (x - aside, x + aside),
                y + aside + 4.0,
                y + half + ROW,
                true,
                &figure,
            );
            sheet.height = y + half + ROW + 8.0;
        }
        Clamp::Nut | Clamp::Solder => tint.circle(x, y, half),
    }
    sheet.words(x + half + 16.0, y + 5.0, Anchor::Start, words::bright());
}

/// Depth of a connector's body on the sheet, px: not to scale.
const BODY: f64 = 34.0;

/// The connector lying, its wire to the right; with the sleeve over it.
pub(super) fn wire(sheet: &mut Sheet, view: &BenchView, sleeved: bool) {
    let figures = RulerFigures::new(&view.work.design);
    let design = &view.work.design;
    let face = 12.0 + BODY;
    let long_um = f64::from(figures.wire_from_connector_face_um.max(1));
    let most = if sheet.is_wide() { 0.012 } else { 0.009 };
    let per_um = ((sheet.width - face - 24.0) / long_um).min(most);
    let (inner, tip) = (
        face + f64::from(design.can.wall_um) * per_um,
        face + long_um * per_um,
    );
    let y = 56.0;
    let half = (f64::from(design.probe.wire_diameter_um) * per_um / 2.0).max(2.0);
    let outline = sheet.line(BenchLine::Outline);
    outline.rectangle(12.0, y - 14.0, face - 6.0, y + 14.0);
    outline.rectangle(face - 6.0, y - 32.0, face, y + 32.0);
    sheet.line(BenchLine::Hidden).segment(
        inner.max(face + 2.0),
        y - 40.0,
        inner.max(face + 2.0),
        y + 40.0,
    );
    sheet
        .line(BenchLine::Wire)
        .rectangle(face, y - half, tip, y + half);
    if let (true, Some(sleeve)) = (sleeved, design.probe.sleeve) {
        let thick = (f64::from(sleeve.outside_diameter_um) * per_um / 2.0).max(half + 3.0);
        sheet
            .line(BenchLine::Mark)
            .rectangle(inner, y - thick, tip, y + thick);
    }
    sheet.words(tip - 2.0, y - half - 22.0, Anchor::End, words::tip());
    let figure = |um| format_length_number(um, view.unit);
    let (first, second) = (y + 32.0 + ROW, y + 32.0 + 2.0 * ROW);
    let inside = figure(figures.wire_from_inner_wall_um);
    sheet.along((inner, tip), y + half + 4.0, first, sleeved, &inside);
    let from_face = figure(figures.wire_from_connector_face_um);
    sheet.along((face, tip), y + 34.0, second, !sleeved, &from_face);
    sheet.height = second + 8.0;
}

/// The connector standing, its wire upright.
pub(super) fn upright(sheet: &mut Sheet, view: &BenchView) {
    let (x, face_y) = (
        sheet.width / 2.0,
        if sheet.is_wide() { 170.0 } else { 118.0 },
    );
    let half = (f64::from(view.work.design.probe.wire_diameter_um) * 0.002).clamp(2.0, 6.0);
    let outline = sheet.line(BenchLine::Outline);
    outline.rectangle(x - 46.0, face_y, x + 46.0, face_y + 6.0);
    outline.rectangle(x - 16.0, face_y + 6.0, x + 16.0, face_y + 6.0 + BODY);
    sheet
        .line(BenchLine::Wire)
        .rectangle(x - half, 12.0, x + half, face_y);
    let mark = sheet.line(BenchLine::Mark);
    mark.polyline([
        (x + half + 22.0, face_y),
        (x + half + 22.0, face_y - 22.0),
        (x + half, face_y - 22.0),
    ]);
    sheet.words(x + half + 34.0, face_y - 12.0, Anchor::Start, "90°");
    sheet.words(x + 54.0, face_y + 8.0, Anchor::Start, words::face());
    sheet.height = face_y + 6.0 + BODY + 8.0;
}

/// The connector on the wall in section.
pub(super) fn fixed(sheet: &mut Sheet, view: &BenchView) {
    let (x, wall_y) = (
        sheet.width / 2.0,
        if sheet.is_wide() { 150.0 } else { 104.0 },
    );
    let (outer, gap) = (wall_y + 6.0, 12.0);
    let right = sheet.width - 16.0;
    let cut = sheet.line(BenchLine::Cut);
    cut.rectangle(16.0, wall_y, x - gap, outer);
    cut.rectangle(x + gap, wall_y, right, outer);
    sheet
        .line(BenchLine::Wire)
        .rectangle(x - 2.5, 12.0, x + 2.5, outer);
    sheet.words(
        sheet.width - 18.0,
        wall_y - 10.0,
        Anchor::End,
        words::inside(),
    );
    let outline = sheet.line(BenchLine::Outline);
    match clamp_of(view.work.connector) {
        Clamp::Screws(_) => {
            outline.rectangle(x - 60.0, outer, x + 60.0, outer + 8.0);
            outline.rectangle(x - 16.0, outer + 8.0, x + 16.0, outer + 8.0 + BODY);
            let mark = sheet.line(BenchLine::Mark);
            for side in [-42.0, 42.0] {
                let at = x + side;
                // Shank, head outside, nut inside.
                mark.rectangle(at - 3.0, wall_y - 12.0, at + 3.0, outer + 8.0);
                mark.rectangle(at - 8.0, outer + 8.0, at + 8.0, outer + 15.0);
                mark.rectangle(at - 8.0, wall_y - 8.0, at + 8.0, wall_y);
            }
        }
        Clamp::Nut => {
            outline.rectangle(x - 26.0, outer, x + 26.0, outer + 8.0);
            outline.rectangle(x - 16.0, outer + 8.0, x + 16.0, outer + 8.0 + BODY);
            let mark = sheet.line(BenchLine::Mark);
            for side in [-1.0, 1.0] {
                mark.rectangle(x + side * 4.0, wall_y - 12.0, x + side * 28.0, wall_y);
            }
        }
        Clamp::Solder => {
            outline.rectangle(x - 9.0, outer, x + 9.0, outer + 8.0 + BODY);
            let mark = sheet.line(BenchLine::Mark);
            for side in [-1.0, 1.0] {
                mark.polygon(&[
                    (x + side * 9.0, outer),
                    (x + side * 44.0, outer),
                    (x + side * 9.0, outer + 16.0),
                ]);
            }
        }
    }
    sheet.height = outer + 8.0 + BODY + 10.0;
}
