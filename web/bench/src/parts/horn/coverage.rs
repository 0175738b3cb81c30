//! What the half-power beam covers at a distance, as a picture from above.

use std::f64::consts::PI;

use tinwave_web::drawing::path_text::PathText;
use tinwave_web::entry::{LengthUnit, format_decimal};

use super::beams::Beams;
use crate::reply::Reply;
use crate::request::Request;
use crate::sheet::{Anchor, Sheet, WIDTH};

const WORDS: &str = "pic-words pic-small";
/// Longest the beam is drawn, and widest, px.
const LONGEST: f64 = 250.0;
const WIDEST: f64 = 190.0;
/// Where the can's mouth stands.
const MOUTH_X: f64 = 30.0;
/// Above and below the beam, for words.
const MARGIN: f64 = 22.0;

/// Metres of the three arcs, and what they are called in feet.
const ARCS: [f64; 3] = [100.0, 300.0, 1000.0];
const FEET_PER_METRE: f64 = 1.0 / 0.3048;

/// Metres or feet, as a maker says it.
fn distance(metres: f64, unit: LengthUnit) -> String {
    let (value, symbol) = match unit {
        LengthUnit::Millimetre => (metres, " m"),
        LengthUnit::Inch => (metres * FEET_PER_METRE, " ft"),
    };
    [&format_decimal(value, 0), symbol].concat()
}

/// Between the half-power edges, straight across, at a distance.
fn spot_m(metres: f64, width_deg: f64) -> f64 {
    2.0 * metres * (width_deg.min(170.0) * PI / 360.0).tan()
}

/// A piece of a circle round the mouth between the edges of the beam.
fn arc(radius: f64, half_rad: f64, middle: f64) -> Vec<(f64, f64)> {
    let steps = 24;
    let at = |i: i32| {
        let angle = half_rad * (f64::from(i) / f64::from(steps) * 2.0 - 1.0);
        (
            MOUTH_X + radius * angle.cos(),
            middle + radius * angle.sin(),
        )
    };
    (0..=steps).map(at).collect()
}

/// The picture: angle to scale, distances not.
fn picture(width_deg: f64, unit: LengthUnit, says: &str) -> String {
    let half = width_deg.min(170.0) * PI / 360.0;
    let radius = LONGEST.min(WIDEST / 2.0 / half.sin());
    let middle = radius * half.sin() + MARGIN;
    let height = 2.0 * middle;
    let title = "What the half-power beam covers, from above";
    let mut sheet = Sheet::new("horn-cover", height, title, says);
    let rim = arc(radius, half, middle);
    let mut beam = PathText::new();
    let mut outline = vec![(MOUTH_X, middle)];
    outline.extend(&rim);
    beam.polygon(&outline);
    sheet.path("pic-band", beam.as_str());
    for (place, metres) in ARCS.into_iter().enumerate() {
        let share = (place as f64 + 1.0) / 3.0;
        let mut line = PathText::new();
        line.polyline(arc(radius * share, half, middle));
        sheet.path("pic-line-other", line.as_str());
        let x = MOUTH_X + radius * share + 4.0;
        let words = distance(metres, unit);
        sheet.text(WORDS, Anchor::Start, (x, middle - 3.0), &words);
    }
    let mut can = PathText::new();
    let (top, bottom) = (middle - 7.0, middle + 7.0);
    can.polygon(&[(6.0, top), (MOUTH_X, top), (MOUTH_X, bottom), (6.0, bottom)]);
    sheet.path("pic-edge", can.as_str());
    let degrees = [
        &format_decimal(width_deg, 0),
        "\u{b0} between the half-power edges",
    ]
    .concat();
    sheet.text(WORDS, Anchor::Start, (4.0, 14.0), &degrees);
    sheet.text(
        WORDS,
        Anchor::End,
        (WIDTH - 4.0, height - 6.0),
        "from above; angle to scale, distances not",
    );
    sheet.finish()
}

/// Shows what the beam covers; the wire is taken to stand upright.
pub(super) fn show(request: &Request, beams: Option<&Beams>, reply: &mut Reply) {
    let figures = beams.and_then(Beams::centre).map(|(_, beam)| beam.figures);
    let widths =
        figures.and_then(|figures| Some((figures.beamwidth_h_deg?, figures.beamwidth_e_deg?)));
    let Some((across, along)) = widths else {
        reply.place("cover-picture", String::new());
        reply.text(
            "cover-says",
            "What the beam covers is not known for this can.",
        );
        return;
    };
    let spots = ARCS.map(|metres| {
        let spot = |width: f64| distance(spot_m(metres, width), request.unit);
        let far = distance(metres, request.unit);
        [
            "at ",
            &far,
            " ",
            &spot(across),
            " wide and ",
            &spot(along),
            " high",
        ]
        .concat()
    });
    let says = [
        "With the wire upright the half-power beam covers ",
        &spots.join("; "),
        ".",
    ]
    .concat();
    reply.place("cover-picture", picture(across, request.unit, &says));
    reply.text("cover-says", &says);
}

#[cfg(test)]
mod tests {
    use super::{picture, spot_m};
    use tinwave_web::entry::LengthUnit;

    #[test]
    fn the_spot_is_twice_the_tangent_of_half_the_width() {
        // 2 tan 30 degrees is 1.154 701 (any table of the tangent).
        assert!((spot_m(300.0, 60.0) - 346.410).abs() < 1e-2);
    }

    #[test]
    fn narrow_and_wide_beams_stay_on_the_sheet() {
        for width in [3.0, 72.0, 140.0, 200.0] {
            let svg = picture(width, LengthUnit::Millimetre, "a \"b\"");
            assert!(
                !svg.contains("NaN") && svg.contains("a &quot;b&quot;"),
                "{svg}"
            );
            // Nothing lies to the left of the sheet or above it.
            assert!(!svg.contains("M-") && !svg.contains("L-"), "{svg}");
        }
    }
}
