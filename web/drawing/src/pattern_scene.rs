//! The marks of a beam's pattern: all the way round, and level over angle.

use std::f64::consts::PI;

use tinwave_core::math;

use super::fixed_point::push_integer;
use super::path_text::PathText;
use super::scene::{Mark, Scene};

/// Degrees between two levels of a cut.
pub const STEP_DEG: usize = 2;
/// Levels of a cut: from -180 degrees to 180, both included.
pub const POINTS: usize = 360 / STEP_DEG + 1;
/// From the top of the scale to its floor, dB.
const DEPTH_DB: f64 = 30.0;
/// Decibels between two lines.
const LINE_DB: f64 = 10.0;

/// Side of the round picture, px.
const SIDE: f64 = 320.0;
const CENTRE: f64 = SIDE / 2.0;
const RADIUS: f64 = 132.0;

/// The chart's frame, px.
const WIDTH: f64 = 340.0;
const HEIGHT: f64 = 220.0;
const LEFT: f64 = 34.0;
const RIGHT: f64 = WIDTH - 10.0;
const TOP: f64 = 12.0;
const BOTTOM: f64 = HEIGHT - 34.0;

/// The pattern of a beam in its two planes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PatternPlot {
    /// Level along the wire (E plane), dBi, from -180 degrees (the side away from
    /// the wire) to 180; empty: not computed.
    pub e_dbi: Vec<f64>,
    /// Level across the wire (H plane).
    pub h_dbi: Vec<f64>,
    /// Direction of the E plane's highest level, degrees.
    pub peak_deg: f64,
    /// Full half-power widths, degrees; 0 where there is none.
    pub width_deg: (f64, f64),
}

/// Signed angle of a level, degrees.
#[must_use]
pub fn angle_deg(index: usize) -> f64 {
    (index * STEP_DEG) as f64 - 180.0
}

impl PatternPlot {
    /// Top of the scale, dBi: the next 5 dB above the highest level.
    fn top(&self) -> f64 {
        let levels = self.e_dbi.iter().chain(&self.h_dbi);
        let highest = levels.copied().fold(f64::NEG_INFINITY, f64::max);
        if highest.is_finite() {
            (highest / 5.0).floor() * 5.0 + 5.0
        } else {
            10.0
        }
    }

    /// Place of a level between floor (0) and top (1).
    fn height(&self, level: f64) -> f64 {
        (1.0 + (level - self.top()) / DEPTH_DB).max(0.0)
    }

    /// In words.
    fn description(&self) -> String {
        if self.e_dbi.is_empty() {
            "The pattern is not computed yet.".to_owned()
        } else {
            "The level in each direction, along the wire (full line) and across it (dashed); \
             the figures stand in the list."
                .to_owned()
        }
    }

    /// The pattern all the way round, ahead upwards, the wire's side to the right.
    #[must_use]
    pub fn polar(&self) -> Scene {
        let mut rings = PathText::new();
        let mut marks = Vec::new();
        for ring in 1..=3 {
            rings.circle(CENTRE, CENTRE, RADIUS * f64::from(ring) / 3.0);
        }
        for spoke in 0..6 {
            let (x, y) = around(f64::from(spoke) * 30.0, 1.0);
            rings.segment(x, y, 2.0 * CENTRE - x, 2.0 * CENTRE - y);
        }
        marks.push(Mark::path("pic-grid", rings.into_text()));
        marks.push(Mark::path("pic-limit", self.half_power_spokes()));
        marks.push(Mark::path("pic-beam-h", self.round(&self.h_dbi)));
        marks.push(Mark::path("pic-beam-e", self.round(&self.e_dbi)));
        for ring in 1..=3_u8 {
            let level = self.top() - DEPTH_DB + LINE_DB * f64::from(ring);
            let at = (CENTRE + 3.0, CENTRE - RADIUS * f64::from(ring) / 3.0 + 12.0);
            let mut text = whole(level);
            if ring == 3 {
                text.push_str(" dBi");
            }
            marks.push(Mark::text("pic-words pic-small", "start", at, text));
        }
        for (angle, anchor, words) in [
            (0.0, "middle", "ahead"),
            (90.0, "end", "90\u{b0}"),
            (-90.0, "start", "90\u{b0}"),
            (180.0, "middle", "back"),
        ] {
            let (x, y) = around(angle, 1.0);
            let shift = match angle as i32 {
                0 => (0.0, -6.0),
                180 => (0.0, 15.0),
                90 => (26.0, 4.0),
                _ => (-26.0, 4.0),
            };
            let at = (x + shift.0, y + shift.1);
            marks.push(Mark::text("pic-words pic-small", anchor, at, words.into()));
        }
        Scene {
            size: (SIDE, SIDE),
            id: "pic-polar",
            title: "Pattern of the beam, all the way round",
            description: self.description(),
            hatch: None,
            marks,
        }
    }

    fn round(&self, levels: &[f64]) -> String {
        let mut path = PathText::new();
        let points = levels.iter().enumerate();
        path.polyline(points.map(|(i, level)| around(angle_deg(i), self.height(*level))));
        path.into_text()
    }

    /// The edges of the half-power beam in the E plane.
    fn half_power_spokes(&self) -> String {
        let mut path = PathText::new();
        if self.width_deg.0 > 0.0 && !self.e_dbi.is_empty() {
            for side in [-0.5, 0.5] {
                let (x, y) = around(self.peak_deg + side * self.width_deg.0, 1.0);
                path.segment(CENTRE, CENTRE, x, y);
            }
        }
        path.into_text()
    }

    /// Level over angle.
    #[must_use]
    pub fn chart(&self) -> Scene {
        let mut grid = PathText::new();
        let mut words = Vec::new();
        for line in 0..=3_u8 {
            let level = self.top() - LINE_DB * f64::from(line);
            let y = self.chart_y(level);
            grid.segment(LEFT, y, RIGHT, y);
            let at = (LEFT - 4.0, y + 4.0);
            words.push(Mark::text("pic-words pic-small", "end", at, whole(level)));
        }
        for angle in [-180, -90, 0, 90, 180] {
            let x = chart_x(f64::from(angle));
            grid.segment(x, TOP, x, BOTTOM);
            let at = (x, BOTTOM + 15.0);
            let mut text = whole(f64::from(angle));
            text.push('\u{b0}');
            let anchor = match angle {
                -180 => "start",
                180 => "end",
                _ => "middle",
            };
            words.push(Mark::text("pic-words pic-small", anchor, at, text));
        }
        let unit = "dBi over angle; the wire\u{2019}s side is positive";
        let at = (LEFT, HEIGHT - 4.0);
        words.push(Mark::text("pic-words pic-small", "start", at, unit.into()));
        let mut marks = vec![
            Mark::path("pic-grid", grid.into_text()),
            Mark::path("pic-limit", self.half_power_lines()),
            Mark::path("pic-beam-h", self.line(&self.h_dbi)),
            Mark::path("pic-beam-e", self.line(&self.e_dbi)),
        ];
        marks.extend(words);
        Scene {
            size: (WIDTH, HEIGHT),
            id: "pic-levels",
            title: "Level of the beam over angle",
            description: self.description(),
            hatch: None,
            marks,
        }
    }

    fn chart_y(&self, level: f64) -> f64 {
        BOTTOM - (BOTTOM - TOP) * self.height(level)
    }

    fn line(&self, levels: &[f64]) -> String {
        let mut path = PathText::new();
        let points = levels.iter().enumerate();
        path.polyline(points.map(|(i, level)| (chart_x(angle_deg(i)), self.chart_y(*level))));
        path.into_text()
    }

    fn half_power_lines(&self) -> String {
        let mut path = PathText::new();
        if self.width_deg.0 > 0.0 && !self.e_dbi.is_empty() {
            for side in [-0.5, 0.5] {
                let x = chart_x(self.peak_deg + side * self.width_deg.0);
                path.segment(x, TOP, x, BOTTOM);
            }
        }
        path.into_text()
    }
}

/// Place of a signed angle at a share of the radius.
fn around(angle_deg: f64, share: f64) -> (f64, f64) {
    let angle = angle_deg * PI / 180.0;
    let (s, c) = (math::sin(angle), math::cos(angle));
    (CENTRE + RADIUS * share * s, CENTRE - RADIUS * share * c)
}

fn chart_x(angle_deg: f64) -> f64 {
    LEFT + (RIGHT - LEFT) * (angle_deg + 180.0) / 360.0
}

/// A whole number with a true minus sign.
fn whole(value: f64) -> String {
    let mut text = String::new();
    if value < -0.5 {
        text.push('\u{2212}');
    }
    push_integer(&mut text, value.abs().round() as u32);
    text
}

#[cfg(test)]
mod tests {
    use super::{CENTRE, POINTS, PatternPlot, RADIUS, angle_deg};

    fn plot(level: f64) -> PatternPlot {
        PatternPlot {
            e_dbi: vec![level; POINTS],
            h_dbi: vec![level - 10.0; POINTS],
            peak_deg: 0.0,
            width_deg: (60.0, 60.0),
        }
    }

    #[test]
    fn the_same_marks_whatever_is_computed() {
        let tags = |plot: &PatternPlot| {
            let scenes = [plot.polar(), plot.chart()];
            scenes.map(|scene| scene.marks.iter().map(|m| m.tag).collect::<Vec<_>>())
        };
        assert_eq!(tags(&plot(7.0)), tags(&PatternPlot::default()));
    }

    #[test]
    fn a_level_stands_at_its_distance_from_the_middle() {
        // 7.5 dBi under a top of 10 with 30 dB to the floor: 27.5/30 of the radius.
        let path = plot(7.5).polar().to_svg();
        let edge = CENTRE - RADIUS * 27.5 / 30.0;
        assert!(path.contains(&format!("L{CENTRE} {edge}")), "{edge}");
        assert_eq!((angle_deg(0), angle_deg(POINTS - 1)), (-180.0, 180.0));
    }

    #[test]
    fn levels_below_the_floor_stay_on_the_sheet() {
        let mut deep = plot(5.0);
        deep.e_dbi = vec![f64::NEG_INFINITY; POINTS];
        assert!(!deep.polar().to_svg().contains("NaN"));
        assert!(!deep.chart().to_svg().contains("inf"));
    }
}
