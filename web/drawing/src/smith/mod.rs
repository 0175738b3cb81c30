//! The match on a Smith chart.

mod coordinates;

pub use coordinates::{RIM, SmithPlane};

use std::f64::consts::FRAC_1_SQRT_2;

use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;
use tinwave_words::smith as words;

use crate::chart::{Letters, Style};
use crate::sweep::{nearest, within_band};

/// The match of one cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Locus {
    /// What it is.
    pub name: String,
    /// How it is drawn.
    pub style: Style,
    /// Its sweep.
    pub sweep: Vec<SweepPoint>,
}

/// What the chart shows.
#[derive(Clone, Debug, PartialEq)]
pub struct SmithSpec {
    /// The cuts; the first is this one.
    pub loci: Vec<Locus>,
    /// The band: the thick part of the first.
    pub band: Band,
    /// Impedance of the cable.
    pub reference_milliohm: u32,
}

/// A line of one cut.
#[derive(Clone, Debug, PartialEq)]
pub struct LocusPath {
    /// How it is drawn.
    pub style: Style,
    /// Over the whole sweep.
    pub whole: String,
    /// Within the band.
    pub band: String,
}

/// A text; shares of the square from its upper left corner, about its middle.
#[derive(Clone, Debug, PartialEq)]
pub struct SmithLabel {
    /// What it says.
    pub text: String,
    /// Of a cut; `None` for the grid's own.
    pub style: Option<Style>,
    /// From the left.
    pub x: f64,
    /// From the top.
    pub y: f64,
}

/// Everything that is drawn, in the units of [`RIM`].
#[derive(Clone, Debug, PartialEq)]
pub struct SmithScene {
    /// How much of the chart.
    pub plane: SmithPlane,
    /// Its grid.
    pub grid: String,
    /// Radii of the circles of VSWR.
    pub circles: Vec<f64>,
    /// The cuts, in their order.
    pub loci: Vec<LocusPath>,
    /// This cut at the band's edges: ring low, dot high.
    pub ends: Option<[(f64, f64); 2]>,
    /// Texts.
    pub labels: Vec<SmithLabel>,
}

/// Standing-wave ratios that have a circle.
const CIRCLES: [f64; 2] = [1.5, 2.0];
/// Resistances that are told, in units of the reference.
const TOLD: [f64; 2] = [0.5, 2.0];
/// Size for which texts are placed, px: the smallest at which it is shown.
const SIDE: f64 = 288.0;
/// Its letters.
const LETTER: f64 = 13.0;

impl SmithSpec {
    /// Whether there is nothing to see but the grid.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        !self
            .loci
            .iter()
            .any(|locus| locus.sweep.iter().any(|point| point.at.is_some()))
    }

    /// Everything that is drawn.
    #[must_use]
    pub fn scene(&self) -> SmithScene {
        let all = self.loci.iter().flat_map(|locus| &locus.sweep);
        let plane = SmithPlane::holding(all.filter_map(|point| Some(point.at?.reflection)));
        let reflections = |sweep: &[SweepPoint]| {
            let each = sweep.iter().map(|point| Some(point.at?.reflection));
            each.collect::<Vec<_>>()
        };
        let path = |locus: &Locus| LocusPath {
            style: locus.style,
            whole: plane.locus(reflections(&locus.sweep)),
            band: plane.locus(reflections(&within_band(&locus.sweep, self.band))),
        };
        let in_band = self
            .loci
            .first()
            .map(|locus| within_band(&locus.sweep, self.band));
        let end = |point: Option<&SweepPoint>| Some(plane.place(point?.at?.reflection));
        let ends = in_band.and_then(|band| Some([end(band.first())?, end(band.last())?]));
        SmithScene {
            plane,
            grid: plane.grid(),
            circles: CIRCLES.map(|vswr| plane.vswr_radius(vswr)).to_vec(),
            loci: self.loci.iter().map(path).collect(),
            ends,
            labels: self.labels(plane),
        }
    }

    /// Where this cut is at a frequency, kHz.
    #[must_use]
    pub fn place_at(&self, plane: SmithPlane, khz: u32) -> Option<(f64, f64)> {
        let point = nearest(&self.loci.first()?.sweep, khz)?;
        Some(plane.place(point.at?.reflection))
    }

    fn labels(&self, plane: SmithPlane) -> Vec<SmithLabel> {
        let mut labels = Vec::new();
        let mut taken = Vec::new();
        let lines: Vec<Vec<(f64, f64)>> =
            self.loci.iter().map(|locus| points(plane, locus)).collect();
        for r in TOLD {
            let ohm = f64::from(self.reference_milliohm) / 1e3 * r;
            let text = words::ohm(ohm);
            let side = if r < 1.0 { -1.0 } else { 1.0 };
            let x = px(plane.crossing(r)) + side * (width(&text) / 2.0 + 4.0);
            let place = Letters::about(x, px(0.0) - LETTER * 0.7, width(&text), LETTER * 1.2);
            keep(&mut labels, &mut taken, text, None, place, &lines);
        }
        for vswr in CIRCLES {
            let text = words::circle(vswr);
            let corner = FRAC_1_SQRT_2 * plane.vswr_radius(vswr);
            // Outside its circle: on the first diagonal that is free, else below or above.
            let diagonals = [(-1.0, 1.0), (-1.0, -1.0), (1.0, 1.0), (1.0, -1.0)].map(|(sx, sy)| {
                let x = px(sx * corner) + sx * (width(&text) / 2.0 + 2.0);
                let y = px(sy * corner) + sy * LETTER * 0.6;
                Letters::about(x, y, width(&text), LETTER * 1.2)
            });
            let upright = [1.0, -1.0].map(|sy| {
                let y = px(sy * plane.vswr_radius(vswr)) + sy * LETTER * 0.8;
                Letters::about(px(0.0), y, width(&text), LETTER * 1.2)
            });
            if let Some(place) = diagonals
                .into_iter()
                .chain(upright)
                .find(|place| is_free(*place, &taken, &lines))
            {
                keep(&mut labels, &mut taken, text, None, place, &lines);
            }
        }
        for (locus, line) in self.loci.iter().zip(&lines) {
            if let Some(place) = beside(line, &locus.name, &taken, &lines) {
                keep(
                    &mut labels,
                    &mut taken,
                    locus.name.clone(),
                    Some(locus.style),
                    place,
                    &lines,
                );
            }
        }
        labels
    }
}

/// A coordinate of the chart in px of the square.
fn px(at: f64) -> f64 {
    (at / RIM + 1.0) * SIDE / 2.0
}

fn width(text: &str) -> f64 {
    text.chars().count() as f64 * LETTER * 0.6
}

/// A cut's line in px.
fn points(plane: SmithPlane, locus: &Locus) -> Vec<(f64, f64)> {
    let places = locus
        .sweep
        .iter()
        .filter_map(|point| Some(plane.place(point.at?.reflection)));
    places.map(|(x, y)| (px(x), px(y))).collect()
}

fn keep(
    labels: &mut Vec<SmithLabel>,
    taken: &mut Vec<Letters>,
    text: String,
    style: Option<Style>,
    place: Letters,
    lines: &[Vec<(f64, f64)>],
) {
    if is_free(place, taken, lines) {
        labels.push(SmithLabel {
            text,
            style,
            x: (place.left + place.right) / 2.0 / SIDE,
            y: (place.top + place.bottom) / 2.0 / SIDE,
        });
        taken.push(place);
    }
}

fn is_free(place: Letters, taken: &[Letters], lines: &[Vec<(f64, f64)>]) -> bool {
    let middle = SIDE / 2.0;
    let room = place.wider(2.0);
    let corners = [
        (room.left, room.top),
        (room.right, room.top),
        (room.left, room.bottom),
        (room.right, room.bottom),
    ];
    let on_chart = corners
        .iter()
        .all(|(x, y)| (x - middle).hypot(y - middle) < middle - 1.0);
    let on_line = lines
        .iter()
        .flatten()
        .any(|(x, y)| *x >= room.left && *x <= room.right && *y >= room.top && *y <= room.bottom);
    on_chart && !on_line && !taken.iter().any(|other| other.meets(&room))
}

/// Beside a line, somewhere along it, where nothing else is and no other line is nearer.
fn beside(
    line: &[(f64, f64)],
    name: &str,
    taken: &[Letters],
    lines: &[Vec<(f64, f64)>],
) -> Option<Letters> {
    if name.is_empty() {
        return None;
    }
    let (wide, high) = (width(name), LETTER * 1.2);
    let away = |points: &[(f64, f64)], place: &Letters| {
        let distance = |(x, y): &(f64, f64)| {
            let dx = (place.left - x).max(x - place.right).max(0.0);
            let dy = (place.top - y).max(y - place.bottom).max(0.0);
            dx.hypot(dy)
        };
        points.iter().map(distance).fold(f64::INFINITY, f64::min)
    };
    let stride = (line.len() / 12).max(1);
    let round = [
        (1.0, 0.0),
        (-1.0, 0.0),
        (0.0, -1.0),
        (0.0, 1.0),
        (0.7, -0.7),
        (0.7, 0.7),
        (-0.7, 0.7),
        (-0.7, -0.7),
    ];
    line.iter()
        .skip(stride / 2)
        .step_by(stride)
        .flat_map(|(x, y)| {
            round.map(|(dx, dy)| {
                Letters::about(
                    x + dx * (wide / 2.0 + 7.0),
                    y + dy * (high / 2.0 + 7.0),
                    wide,
                    high,
                )
            })
        })
        .find(|place| {
            let own = away(line, place);
            let others = lines.iter().filter(|other| other.as_slice() != line);
            is_free(*place, taken, lines)
                && others
                    .map(|other| away(other, place))
                    .all(|other| other > own * 1.5)
        })
}

#[cfg(test)]
mod tests {
    use super::{Locus, SmithSpec};
    use crate::chart::Style;
    use tinwave_core::complex::Complex;
    use tinwave_core::design::Band;
    use tinwave_core::match_band::SweepPoint;
    use tinwave_core::reflection::PointMatch;

    fn sweep(conductance: f64) -> Vec<SweepPoint> {
        (0..101_u32)
            .map(|i| SweepPoint {
                frequency_khz: 2_318_500 + 2_475 * i,
                at: Some(PointMatch::from_admittance(
                    Complex::new(conductance, 0.006 * (f64::from(i) / 50.0 - 1.0)),
                    50.0,
                )),
            })
            .collect()
    }

    fn spec() -> SmithSpec {
        let locus = |name: &str, style, conductance| Locus {
            name: name.into(),
            style,
            sweep: sweep(conductance),
        };
        SmithSpec {
            loci: vec![
                locus("best", Style::This, 0.02),
                locus("28.4 at 45.0", Style::Compared, 0.015),
            ],
            band: Band {
                low_khz: 2_401_000,
                high_khz: 2_483_500,
            },
            reference_milliohm: 50_000,
        }
    }

    #[test]
    fn labels_tell_ohms_and_cuts_and_do_not_meet() {
        let scene = spec().scene();
        let says = |text: &str| scene.labels.iter().any(|label| label.text == text);
        assert!(
            says("25 Ω") && says("100 Ω") && says("best") && says("28.4 at 45.0"),
            "{:?}",
            scene.labels
        );
        let boxes: Vec<_> = scene
            .labels
            .iter()
            .map(|label| {
                let (x, y) = (label.x * super::SIDE, label.y * super::SIDE);
                crate::chart::Letters::about(x, y, super::width(&label.text), super::LETTER)
            })
            .collect();
        for (i, one) in boxes.iter().enumerate() {
            assert!(boxes.iter().skip(i + 1).all(|other| !one.meets(other)));
        }
    }

    #[test]
    fn the_bands_edges_are_marked_and_the_cursor_is_on_the_line() {
        let spec = spec();
        let scene = spec.scene();
        assert!(scene.plane.is_inner());
        let [low, high] = scene.ends.unwrap_or_default();
        // Susceptance rises: the low edge lies above the real axis.
        assert!(low.1 < high.1);
        assert!(spec.place_at(scene.plane, 2_442_000).is_some());
        let empty = SmithSpec {
            loci: Vec::new(),
            ..spec
        };
        assert!(empty.is_empty() && empty.scene().ends.is_none());
    }
}
