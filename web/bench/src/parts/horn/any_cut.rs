//! The beam in any cut through the axis: wanted and crossed polarisation.

use std::f64::consts::PI;

use tinwave_core::radiation::{Cut, SumPattern};
use tinwave_web::entry::{format_decimal, format_frequency, format_trimmed};

use super::beams::Beams;
use super::entries::{Entry, angle};
use crate::chart::{Axis, Chart, LineKind};
use crate::reply::Reply;
use crate::request::Request;

/// Degrees between the points of a line.
const STEP_DEG: usize = 2;
/// What the chart shows below its top, dB.
const DEPTH_DB: f64 = 40.0;
/// Crossed levels farther below the peak are rounding, dB.
const NONE_DB: f64 = 60.0;

/// A cut: degrees off the axis with the levels of both polarisations, dBi.
struct Levels {
    wanted: Vec<(f64, f64)>,
    crossed: Vec<(f64, f64)>,
}

impl Levels {
    fn new(pattern: &SumPattern, azimuth: f64) -> Self {
        let power = pattern.radiated_share();
        let mut levels = Self {
            wanted: Vec::new(),
            crossed: Vec::new(),
        };
        for degrees in (-180..=180_i32).step_by(STEP_DEG) {
            let degrees = f64::from(degrees);
            let own = if degrees >= 0.0 {
                azimuth
            } else {
                azimuth + PI
            };
            let field = pattern.field(degrees.abs() * (PI / 180.0), own);
            let (wanted, crossed) = field.wanted_and_crossed(own);
            let level = |square: f64| 10.0 * (square / power).max(1e-12).log10();
            levels.wanted.push((degrees, level(wanted.norm_sqr())));
            levels.crossed.push((degrees, level(crossed.norm_sqr())));
        }
        levels
    }
}

fn highest(points: &[(f64, f64)]) -> (f64, f64) {
    let first = (0.0, f64::NEG_INFINITY);
    points.iter().fold(
        first,
        |best, point| if point.1 > best.1 { *point } else { best },
    )
}

/// The highest crossed level ahead.
fn crossed_says(levels: &Levels) -> String {
    let is_ahead = |point: &&(f64, f64)| point.0.abs() <= 90.0;
    let ahead: Vec<_> = levels.crossed.iter().filter(is_ahead).copied().collect();
    let (angle, level) = highest(&ahead);
    let below = highest(&levels.wanted).1 - level;
    if below > NONE_DB {
        return "no crossed polarisation ahead".to_owned();
    }
    [
        "crossed polarisation ahead ",
        &format_decimal(below, 0),
        " dB or more below the peak, most at ",
        &format_decimal(angle, 0),
        "\u{b0}",
    ]
    .concat()
}

fn chart(levels: &Levels, title: String, description: String) -> String {
    let top = (highest(&levels.wanted).1.max(highest(&levels.crossed).1) / 5.0).ceil() * 5.0;
    let chart = Chart {
        id: "horn-cut",
        title,
        description,
        x: Axis {
            low: -180.0,
            high: 180.0,
            title: "degrees from straight ahead".to_owned(),
        },
        y: Axis {
            low: top - DEPTH_DB,
            high: top,
            title: "dBi: full wanted, dashed crossed polarisation".to_owned(),
        },
        lines: vec![
            (LineKind::Other, levels.crossed.clone()),
            (LineKind::Main, levels.wanted.clone()),
        ],
        shaded: None,
        choices: Vec::new(),
    };
    chart.to_svg()
}

fn plane(millidegrees: i32) -> &'static str {
    match millidegrees.rem_euclid(180_000) {
        0 => " (along the wire, E plane)",
        90_000 => " (across the wire, H plane)",
        _ => "",
    }
}

/// Shows the cut, or nothing where the angle can't be read.
pub(super) fn show(request: &Request, beams: Option<&Beams>, reply: &mut Reply) {
    let millidegrees = match angle(request, reply, "horn-azimuth") {
        Entry::Number(angle) => Some(angle),
        Entry::Empty => Some(0),
        Entry::Wrong => None,
    };
    let centre = beams.and_then(Beams::centre);
    let (Some(millidegrees), Some((khz, beam))) = (millidegrees, centre) else {
        let why = if centre.is_none() {
            super::band_gain::BEYOND
        } else {
            "Correct the angle above."
        };
        reply.place("cut-chart", String::new());
        reply.text("cut-says", why);
        return;
    };
    let azimuth = f64::from(millidegrees) * (PI / 180_000.0);
    let levels = Levels::new(&beam.pattern, azimuth);
    let cut = Cut::new(&beam.pattern, azimuth);
    let width = cut.half_power_width_deg().map_or_else(
        || "no half-power width, the level never falls to half".to_owned(),
        |width| [&format_decimal(width, 0), "\u{b0} wide at half power"].concat(),
    );
    let angle = format_trimmed(i64::from(millidegrees), 3);
    let cross_says = crossed_says(&levels);
    let says = [
        "Cut at ",
        &angle,
        "\u{b0}",
        plane(millidegrees),
        ", ",
        &format_frequency(*khz),
        ": ",
        &format_decimal(cut.peak_dbi(), 1),
        " dBi at ",
        &format_decimal(cut.peak_angle_rad() * (180.0 / PI), 0),
        "\u{b0}, ",
        &width,
        "; ",
        &cross_says,
        ".",
    ]
    .concat();
    let title = ["Directivity in the cut at ", &angle, "\u{b0}"].concat();
    reply.place("cut-chart", chart(&levels, title, says.clone()));
    reply.text("cut-says", &says);
}
