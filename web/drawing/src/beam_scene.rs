//! A beam's pattern all the way round, in two planes.

use std::f64::consts::PI;

use tinwave_core::radiation::SumPattern;

use crate::path_text::PathText;

/// Degrees between two levels of a cut.
const STEP_DEG: i32 = 2;
/// From the top of the round scale to its middle, dB.
const DEPTH_DB: f64 = 30.0;

/// Side of the round picture, px.
pub const ROUND: f64 = 320.0;
const CENTRE: f64 = ROUND / 2.0;
const RADIUS: f64 = 128.0;

/// Levels of the two planes, dBi, from −180 to 180 degrees.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BeamCuts {
    /// Along the wire (E plane); positive angles on the wire's side.
    pub e_dbi: Vec<f64>,
    /// Across the wire (H plane).
    pub h_dbi: Vec<f64>,
}

/// Half-power width in a plane and where its middle points, degrees.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BeamWidth {
    /// Full width; `None` where the level never falls to half.
    pub width_deg: Option<f64>,
    /// Direction of the highest level.
    pub peak_deg: f64,
}

/// Signed angle of a level, degrees.
#[must_use]
pub fn angle_deg(index: usize) -> f64 {
    f64::from(STEP_DEG) * index as f64 - 180.0
}

impl BeamCuts {
    /// Out of a pattern.
    #[must_use]
    pub fn new(pattern: &SumPattern) -> Self {
        let angles: Vec<f64> = (-180 / STEP_DEG..=180 / STEP_DEG)
            .map(|step| f64::from(step * STEP_DEG) * (PI / 180.0))
            .collect();
        Self {
            e_dbi: pattern.cut_dbi(0.0, &angles),
            h_dbi: pattern.cut_dbi(0.5 * PI, &angles),
        }
    }

    /// Highest level of both planes.
    fn highest(&self) -> f64 {
        let levels = self.e_dbi.iter().chain(&self.h_dbi);
        levels.copied().fold(f64::NEG_INFINITY, f64::max)
    }

    /// The pattern all the way round; nothing for no levels.
    #[must_use]
    pub fn round(&self) -> Option<RoundScene> {
        let highest = self.highest();
        if !highest.is_finite() {
            return None;
        }
        let top = (highest / 5.0).floor() * 5.0 + 5.0;
        let curve = |levels: &[f64]| {
            let mut path = PathText::new();
            path.polyline(levels.iter().enumerate().map(|(index, level)| {
                let share = (1.0 + (level - top) / DEPTH_DB).max(0.0);
                around(angle_deg(index), share)
            }));
            path.into_text()
        };
        let mut grid = PathText::new();
        for ring in 1..=3 {
            grid.circle(CENTRE, CENTRE, RADIUS * f64::from(ring) / 3.0);
        }
        for spoke in 0..6 {
            let (x, y) = around(f64::from(spoke) * 30.0, 1.0);
            grid.segment(x, y, ROUND - x, ROUND - y);
        }
        let rings = (1..=3_u8).map(|ring| {
            let level = top - DEPTH_DB + 10.0 * f64::from(ring);
            let y = CENTRE - RADIUS * f64::from(ring) / 3.0;
            (y, level)
        });
        Some(RoundScene {
            grid: grid.into_text(),
            e: curve(&self.e_dbi),
            h: curve(&self.h_dbi),
            rings: rings.collect(),
            h_name: self.place_of_h_name(top),
        })
    }

    /// Where the name of the H plane's curve stands apart from the other: at the angle
    /// on the left at which the two differ most.
    fn place_of_h_name(&self, top: f64) -> (f64, f64) {
        let mut best = (0.0, (CENTRE - RADIUS, CENTRE));
        for (index, (e, h)) in self.e_dbi.iter().zip(&self.h_dbi).enumerate() {
            let angle = angle_deg(index);
            let apart = h - e;
            if (-160.0..=-60.0).contains(&angle) && apart > best.0 && *h > top - DEPTH_DB {
                let share = (1.0 + (h - top) / DEPTH_DB).max(0.0) + 0.06;
                best = (apart, around(angle, share));
            }
        }
        best.1
    }
}

/// A place of the round picture: ahead upwards, the wire's side to the right.
fn around(angle_deg: f64, share: f64) -> (f64, f64) {
    let angle = angle_deg * (PI / 180.0);
    let out = RADIUS * share;
    (CENTRE + out * angle.sin(), CENTRE - out * angle.cos())
}

/// The pattern all the way round, as path data in a box of [`ROUND`].
#[derive(Clone, Debug, PartialEq)]
pub struct RoundScene {
    /// Rings and spokes.
    pub grid: String,
    /// The E plane.
    pub e: String,
    /// The H plane.
    pub h: String,
    /// Height of each ring's letters, and its level in dBi.
    pub rings: Vec<(f64, f64)>,
    /// Where the H plane's curve is named.
    pub h_name: (f64, f64),
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A beam that falls off like the cosine's square ahead, and 20 dB down behind.
    fn cuts() -> BeamCuts {
        let level = |index: usize| {
            let cosine = (angle_deg(index) * PI / 180.0).cos();
            8.0 + (20.0 * cosine.max(0.1).log10()).max(-20.0)
        };
        let levels: Vec<f64> = (0..=180).map(level).collect();
        BeamCuts {
            e_dbi: levels.clone(),
            h_dbi: levels,
        }
    }

    #[test]
    fn the_scale_ends_above_the_highest_level() {
        let rings = cuts().round().map(|scene| scene.rings).unwrap_or_default();
        assert_eq!(rings.last().map(|ring| ring.1), Some(10.0));
        assert!(BeamCuts::default().round().is_none());
    }
}
