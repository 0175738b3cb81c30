//! Sheets on which nothing overlaps, for every size that cans are sold in.

mod common;

use tinwave_maker::trade_sizes::TRADE_SIZES;
use tinwave_print::PrintJob;
use tinwave_print::drawing::{Drawing, Item, Shape};
use tinwave_print::geometry::{Point, Rect};
use tinwave_print::layer::Layer;
use tinwave_print::layout::lay_out;
use tinwave_print::sheet::{Layout, Sheet};
use tinwave_protocol::print::{Bracket, Cap, Fixing, Mouth, Part, Rim, SideSeam, WallHole};
use tinwave_protocol::print::{Orientation, PaperSize};

fn texts(drawing: &Drawing) -> Vec<(String, Rect)> {
    let of_text = |item: &Item| match &item.shape {
        Shape::Text(text) => Some((text.words.clone(), text.bounds())),
        _ => None,
    };
    drawing.items.iter().filter_map(of_text).collect()
}

/// Boxes that no text may touch: drilled holes.
fn holes(drawing: &Drawing) -> Vec<Rect> {
    let holes = drawing
        .items
        .iter()
        .filter(|item| item.layer == Layer::Drill);
    holes.map(|item| item.shape.bounds()).collect()
}

fn check_drawing(drawing: &Drawing) -> Result<(), String> {
    let texts = texts(drawing);
    for (index, (words, ground)) in texts.iter().enumerate() {
        for (other, taken) in &texts[..index] {
            if taken.overlaps(*ground) {
                return Err(format!("{words:?} lies on {other:?}"));
            }
        }
        if let Some(hole) = holes(drawing).iter().find(|hole| hole.overlaps(*ground)) {
            return Err(format!("{words:?} lies on a hole at {:?}", hole.low));
        }
    }
    Ok(())
}

fn check_sheet(sheet: &Sheet) -> Result<(), String> {
    check_drawing(&sheet.furniture)?;
    let printable = sheet.paper.printable();
    if !printable.contains(sheet.furniture.bounds()) {
        return Err(format!(
            "the furniture leaves the sheet: {:?}",
            sheet.furniture.bounds()
        ));
    }
    for (index, view) in sheet.views.iter().enumerate() {
        let place = view.place();
        if !printable.contains(place) {
            return Err(format!("a pattern leaves the sheet: {place:?}"));
        }
        for item in &sheet.furniture.items {
            if item.shape.bounds().overlaps(place) {
                return Err(format!("{item:?} lies on a pattern at {place:?}"));
            }
        }
        if let Some(other) = sheet.views[..index]
            .iter()
            .find(|v| v.place().overlaps(place))
        {
            return Err(format!("{place:?} lies on {:?}", other.place()));
        }
    }
    Ok(())
}

/// Each point of each pattern is on some sheet.
fn check_covered(layout: &Layout) -> Result<(), String> {
    for (index, pattern) in layout.patterns.iter().enumerate() {
        let views = layout.sheets.iter().flat_map(|sheet| &sheet.views);
        let windows: Vec<Rect> = views
            .filter(|view| view.pattern == index)
            .map(|view| view.window)
            .collect();
        for item in &pattern.drawing.items {
            for place in places(&item.shape) {
                let point = Rect::new(place, place);
                if !windows.iter().any(|window| window.contains(point)) {
                    return Err(format!("{place:?} of {} is on no sheet", pattern.title));
                }
            }
        }
    }
    Ok(())
}

fn places(shape: &Shape) -> Vec<Point> {
    match shape {
        Shape::Line { from, to } => vec![*from, *to],
        Shape::Polyline { points, .. } => points.clone(),
        Shape::Circle { centre, radius } => (0..24)
            .map(|n| centre.polar(f64::from(*radius), f64::from(n) * 15.0))
            .collect(),
        Shape::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
        } => (0..=24)
            .map(|n| {
                centre.polar(
                    f64::from(*radius),
                    start_deg + sweep_deg / 24.0 * f64::from(n),
                )
            })
            .collect(),
        Shape::Text(text) => vec![text.bounds().low, text.bounds().high],
    }
}

fn check(job: &PrintJob) -> Result<(), String> {
    let layout = lay_out(job).map_err(|error| error.to_string())?;
    for pattern in &layout.patterns {
        check_drawing(&pattern.drawing).map_err(|error| format!("{}: {error}", pattern.title))?;
    }
    for (index, sheet) in layout.sheets.iter().enumerate() {
        check_sheet(sheet).map_err(|error| format!("sheet {}: {error}", index + 1))?;
    }
    check_covered(&layout)
}

/// What a design of a diameter is likely to have, at its most crowded.
fn crowded(inside_um: u32, wall_um: u32) -> Result<PrintJob, String> {
    let mut job = common::jobs::orchard_gate();
    job.can.outside_diameter_um = inside_um + 2 * wall_um;
    job.can.wall_um = wall_um;
    job.can.open_length_um = inside_um * 2;
    job.can.metal = tinwave_core::metal::Metal::Steel;
    job.probe.backshort_um = inside_um / 2;
    job.probe.length_um = inside_um / 3;
    job.probe.within_1_5 = None;
    job.probe.sleeve_um = Some(4_000);
    job.screws = [120_000, 180_000, 240_000]
        .map(|angle_millideg| WallHole {
            axial_um: inside_um,
            angle_millideg,
            hole_um: 4_000,
            depth_um: 5_000,
        })
        .to_vec();
    job.bracket = Some(Bracket {
        angle_millideg: 90_000,
        hole_um: 4_100,
        spacing_um: 30_000,
        deepest_um: Some(4_000),
    });
    job.cap = Some(Cap {
        sheet_um: 500,
        permittivity_milli: 2_250,
    });
    Ok(job)
}

#[test]
fn every_trade_size_on_both_papers() -> Result<(), String> {
    for size in TRADE_SIZES {
        for paper in [PaperSize::A4, PaperSize::Letter] {
            let mut job = crowded(size.inside_um, size.wall_um)?;
            job.paper = paper;
            job.parts.retain(|part| *part != Part::MouthPattern);
            check(&job).map_err(|error| format!("{} {paper:?}: {error}", size.name))?;
        }
    }
    Ok(())
}

#[test]
fn every_seam_rim_and_fixing_both_ways_of_the_paper() -> Result<(), String> {
    let fixings = [
        Fixing::Nut,
        Fixing::Solder,
        crowded(80_000, 200)?.panel.fixing,
    ];
    for diameter in [50_000, 83_000, 154_000] {
        for seam in [SideSeam::Opposite, SideSeam::Through, SideSeam::None] {
            for rim in [Rim::Closed, Rim::Open] {
                for fixing in fixings {
                    for orientation in [Orientation::Portrait, Orientation::Landscape] {
                        let mut job = crowded(diameter, 200)?;
                        job.seam = seam;
                        job.rim = rim;
                        job.panel.fixing = fixing;
                        job.orientation = orientation;
                        let what =
                            format!("{diameter} {seam:?} {rim:?} {fixing:?} {orientation:?}");
                        check(&job).map_err(|error| format!("{what}: {error}"))?;
                    }
                }
            }
        }
    }
    Ok(())
}

#[test]
fn funnels_rings_and_choke_cups() -> Result<(), String> {
    for (mouth_diameter_um, half_angle_millideg) in [
        (90_000, 10_000),
        (120_000, 15_000),
        (200_000, 30_000),
        (300_000, 60_000),
        (220_000, 85_000),
    ] {
        for mouth in [
            Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg,
                sheet_um: 300,
            },
            Mouth::Ring {
                outside_diameter_um: mouth_diameter_um,
                sheet_um: 300,
            },
            Mouth::Choke {
                inside_diameter_um: mouth_diameter_um,
                depth_um: half_angle_millideg,
                sheet_um: 300,
            },
        ] {
            let mut job = crowded(83_000, 200)?;
            job.mouth = mouth;
            check(&job).map_err(|error| format!("{mouth:?}: {error}"))?;
        }
    }
    Ok(())
}

/// Long words, and as many as a link of 500 signs: the build sheet still has
/// one page, and the strip's band takes them.
#[test]
fn long_names_and_links() -> Result<(), String> {
    for paper in [PaperSize::A4, PaperSize::Letter] {
        for diameter in [50_000, 83_000] {
            let mut job = crowded(diameter, 200)?;
            job.paper = paper;
            job.name = "W".repeat(40);
            job.link = format!("https://example.org/#{}", "m~1-".repeat(120));
            job.notes = vec!["Match at the middle of the band: VSWR 1.12.".into(); 6];
            check(&job)?;
        }
    }
    Ok(())
}

/// The same register mark is at the same place of the pattern on both sheets.
#[test]
fn register_marks_meet() -> Result<(), String> {
    let mut job = crowded(154_000, 500)?;
    job.parts = vec![Part::DrillTemplate];
    let layout = lay_out(&job).map_err(|error| error.to_string())?;
    let marks: Vec<Vec<Point>> = layout.sheets.iter().map(marks_in_pattern).collect();
    assert!(marks.len() >= 2);
    for neighbours in marks.windows(2) {
        let shared = neighbours[0].iter().filter(|m| neighbours[1].contains(m));
        assert!(shared.count() >= 2, "{neighbours:?}");
    }
    Ok(())
}

fn marks_in_pattern(sheet: &Sheet) -> Vec<Point> {
    let shift = sheet.views.first().map_or((0, 0), |view| view.shift);
    let centre = |item: &Item| match item.shape {
        Shape::Circle { centre, .. } if item.layer == Layer::Register => {
            Some(centre.by(-shift.0, -shift.1))
        }
        _ => None,
    };
    sheet.furniture.items.iter().filter_map(centre).collect()
}
