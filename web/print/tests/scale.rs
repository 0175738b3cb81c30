//! True scale: printed files rendered by poppler at 600 dots to the inch and
//! measured in pixels, within 0.1 mm.

mod common;
#[path = "common/raster.rs"]
mod raster;

use std::f64::consts::PI;

use raster::{Raster, raster};
use tinwave_print::drawing::{Drawing, Shape};
use tinwave_print::geometry::{Point, Rect, at};
use tinwave_print::layer::Layer;
use tinwave_print::layout::lay_out;
use tinwave_print::write_file;
use tinwave_protocol::print::FileKind;
use tinwave_protocol::print::{Orientation, PaperSize, PrintedRulers};
use tinwave_protocol::print::{Part, PrintJob, Rim};

/// The bar.
const WITHIN_MM: f64 = 0.1;

fn near(what: &str, measured: f64, right: f64) -> Result<(), String> {
    if (measured - right).abs() <= WITHIN_MM {
        return Ok(());
    }
    Err(format!("{what} measures {measured:.3} mm for {right:.3}"))
}

/// A can whose strip fits on one sheet, on that paper.
fn small_can(paper: PaperSize, rim: Rim) -> Result<PrintJob, String> {
    let mut job = common::jobs::orchard_gate();
    job.can.outside_diameter_um = 74_400;
    job.paper = paper;
    job.rim = rim;
    job.orientation = Orientation::Landscape;
    job.parts = vec![Part::DrillTemplate];
    Ok(job)
}

fn rendered(job: &PrintJob, page: usize, name: &str) -> Result<Raster, String> {
    let file = write_file(job, FileKind::Pdf).map_err(|error| error.to_string())?;
    raster(&file.bytes, page, name)
}

fn mm(um: i32) -> f64 {
    f64::from(um) / 1e3
}

/// First corners of the rulers' long lines: the metric one across, the inch
/// one, the metric one upright. Only where to look; what is there is measured.
fn ruler_starts(furniture: &Drawing) -> Vec<Point> {
    let long = furniture.items.iter().filter_map(|item| match item.shape {
        Shape::Line { from, to } if item.layer == Layer::Ruler => {
            ((to.x - from.x).max(to.y - from.y) > 50_000).then_some(from)
        }
        _ => None,
    });
    long.collect()
}

/// Lengths of the three rulers on a page: only the end marks are 4 mm long, the
/// others at most 3.
fn ruler_lengths(job: &PrintJob, page: &Raster) -> Result<[f64; 3], String> {
    let layout = lay_out(job).map_err(|error| error.to_string())?;
    let sheet = layout.sheets.first().ok_or("no sheet")?;
    let factor_x = 100_000.0 / f64::from(job.rulers.across_um);
    let factor_y = 100_000.0 / f64::from(job.rulers.upright_um);
    let starts = ruler_starts(&sheet.furniture);
    let [metric, inch, upright] = starts.as_slice() else {
        return Err(format!("{} rulers", starts.len()));
    };
    let span = |ends: Vec<f64>| match ends.as_slice() {
        [first, last] => Ok(last - first),
        other => Err(format!("{} marks", other.len())),
    };
    let across = |start: &Point| {
        let (x, y) = (mm(start.x) * factor_x, (mm(start.y) + 3.6) * factor_y);
        span(page.across(y, x - 2.0, x + 108.0 * factor_x - 6.5 * factor_x))
    };
    let x = (mm(upright.x) - 3.6) * factor_x;
    let y = mm(upright.y) * factor_y;
    let up = span(page.upright(x, y - 1.0, y + 100.8 * factor_y))?;
    let inch_x = mm(inch.x) * factor_x;
    let inch_y = (mm(inch.y) + 3.6) * factor_y;
    let inch = span(page.across(inch_y, inch_x - 2.0, inch_x + 102.5 * factor_x))?;
    Ok([across(metric)?, inch, up])
}

#[test]
fn pages_are_as_large_as_their_paper() -> Result<(), String> {
    for (paper, name, width, height) in [
        (PaperSize::A4, "size-a4", 297.0, 210.0),
        (PaperSize::Letter, "size-letter", 279.4, 215.9),
    ] {
        let page = rendered(&small_can(paper, Rim::Closed)?, 1, name)?;
        near("width of the page", page.size_mm().0, width)?;
        near("height of the page", page.size_mm().1, height)?;
    }
    Ok(())
}

#[test]
fn rulers_are_100_mm_and_4_in() -> Result<(), String> {
    for (paper, name) in [
        (PaperSize::A4, "ruler-a4"),
        (PaperSize::Letter, "ruler-letter"),
    ] {
        let job = small_can(paper, Rim::Closed)?;
        let [across, inch, upright] = ruler_lengths(&job, &rendered(&job, 1, name)?)?;
        near("ruler across", across, 100.0)?;
        near("ruler of 4 in", inch, 101.6)?;
        near("ruler upright", upright, 100.0)?;
    }
    Ok(())
}

/// A printer whose ruler across measured 98 mm and upright 101.5 mm gets its
/// next sheet larger and smaller by as much.
#[test]
fn what_the_last_rulers_measured_corrects_each_axis() -> Result<(), String> {
    let mut job = small_can(PaperSize::A4, Rim::Closed)?;
    job.rulers = PrintedRulers {
        across_um: 98_000,
        upright_um: 101_500,
    };
    let page = rendered(&job, 1, "corrected")?;
    let [across, inch, upright] = ruler_lengths(&job, &page)?;
    near("ruler across", across, 100.0 / 0.98)?;
    near("ruler of 4 in", inch, 101.6 / 0.98)?;
    near("ruler upright", upright, 100.0 / 1.015)?;
    near("width of the page", page.size_mm().0, 297.0)
}

/// Middle of a circle's crossings on a line that may also cross a centre line.
fn middle_of_ends(places: &[f64]) -> Result<f64, String> {
    match (places.first(), places.last()) {
        (Some(first), Some(last)) if last - first > 1.0 => Ok((first + last) / 2.0),
        _ => Err(format!("no circle: {places:?}")),
    }
}

#[test]
fn the_strip_goes_round_and_the_hole_is_in_its_place() -> Result<(), String> {
    for (paper, rim, name) in [
        (PaperSize::A4, Rim::Closed, "strip-a4-closed"),
        (PaperSize::A4, Rim::Open, "strip-a4-open"),
        (PaperSize::Letter, Rim::Closed, "strip-letter-closed"),
    ] {
        let job = small_can(paper, rim)?;
        let layout = lay_out(&job).map_err(|error| error.to_string())?;
        assert_eq!(layout.sheets.len(), 1, "{name}");
        let view = layout.sheets[0].views[0];
        let (left, bottom) = (mm(view.shift.0), mm(view.shift.1));
        let page = rendered(&job, 1, name)?;

        // Along a line just above the lower edge: the start, the line that
        // the start must meet, the end of the tab.
        let around = PI * (74.4 + 0.1);
        let edges = page.across(bottom + 0.7, left - 2.0, left + around + 10.0);
        let [start, meets, _tab] = edges.as_slice() else {
            return Err(format!("{name}: {edges:?}"));
        };
        near("circumference", meets - start, around)?;

        let lower = page.upright(left + 20.0, bottom - 1.0, bottom + 1.0);
        let [lower] = lower.as_slice() else {
            return Err(format!("{name}: {lower:?}"));
        };
        // The drill's circle of 10 mm is crossed 2.5 mm off its centre, clear
        // of the crosshair's end and the flange's screw holes.
        let x = left + around / 2.0;
        let y_right = match rim {
            Rim::Closed => 45.0 + 4.0 + 0.2,
            Rim::Open => 140.0 - 45.0,
        };
        let y = bottom + y_right;
        let crossing = page.across(y + 2.5, x - 6.0, x + 6.0);
        near(
            "hole, round",
            middle_of_ends(&crossing)? - start,
            around / 2.0,
        )?;
        let crossing = page.upright(x + 2.5, y - 6.0, y + 6.0);
        near(
            "hole, from the rim",
            middle_of_ends(&crossing)? - lower,
            y_right,
        )?;
    }
    Ok(())
}

/// The gauge's bar: from its thick line to the cut line.
#[test]
fn the_gauge_is_as_long_as_the_wire() -> Result<(), String> {
    let mut job = common::jobs::orchard_gate();
    job.parts = vec![Part::CutGauge];
    let layout = lay_out(&job).map_err(|error| error.to_string())?;
    let view = layout.sheets[0].views[0];
    let page = rendered(&job, 1, "gauge")?;
    let drawing = &layout.patterns[0].drawing;
    let bars = drawing.items.iter().filter_map(|item| match &item.shape {
        Shape::Polyline { closed: true, .. } => Some(item.shape.bounds()),
        _ => None,
    });
    let lengths: Vec<f64> = bars
        .map(|bar| {
            // Above the bar and below the ends of the two thick lines.
            let y = mm(bar.high.y + 1_200 + view.shift.1);
            let x = mm(view.shift.0);
            let marks = page.across(y, x - 1.0, x + 35.0);
            marks.last().unwrap_or(&0.0) - marks.first().unwrap_or(&0.0)
        })
        .collect();
    let [inside, face] = lengths.as_slice() else {
        return Err(format!("{lengths:?}"));
    };
    near("wire from the inside wall", *inside, 28.4)?;
    near("wire from the face", *face, 28.6)
}

/// A funnel's two arcs on the sheet: their distance along the middle line is
/// the wall's length in space, by Pythagoras.
#[test]
fn the_funnels_wall_is_as_long_on_paper_as_in_space() -> Result<(), String> {
    let mut job = common::jobs::orchard_gate();
    job.parts = vec![Part::MouthPattern];
    job.mouth = tinwave_protocol::print::Mouth::Funnel {
        mouth_diameter_um: 130_000,
        half_angle_millideg: 30_000,
        sheet_um: 300,
    };
    let layout = lay_out(&job).map_err(|error| error.to_string())?;
    let (rise, flare): (f64, f64) = ((130.0 - 83.4) / 2.0 / 30.0_f64.to_radians().tan(), 23.3);
    // The cone's tip is the pattern's origin, its middle line goes straight up.
    // The sheet's middle lies half a thickness outside, square to the wall.
    let inner = (83.4 / 2.0 + 0.15 * 30.0_f64.to_radians().cos()) / 0.5;
    let middle_line = Rect::new(at(0, 82_000), at(3_000, 130_000));
    let sheets = layout.sheets.iter().enumerate();
    let mut whole = sheets.filter(|(_, sheet)| sheet.views[0].window.contains(middle_line));
    let (index, sheet) = whole.next().ok_or("the middle line is on no sheet")?;
    let page = rendered(&job, index + 1, "funnel")?;
    let (x, tip) = (mm(sheet.views[0].shift.0), mm(sheet.views[0].shift.1));
    // The bending line has gaps: go aside until it is met, by 3 mm at most,
    // which lowers both arcs by less than 0.06 mm.
    let columns = (0..30).map(|step| {
        let x = x + 0.1 * f64::from(step);
        page.upright(x, tip + inner - 1.0, tip + inner + 52.0)
    });
    let marks = columns.into_iter().find(|marks| marks.len() == 2);
    let marks = marks.ok_or("the bending line is nowhere")?;
    let (first, last) = (marks[0], marks[1]);
    near("funnel's wall", last - first, rise.hypot(flare))
}
