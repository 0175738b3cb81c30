//! The path from the side: ground with its bulge, obstacles, the line between the ends,
//! the zone that should be free, and the margin. Heights are drawn larger than distances.
//!
//! Lines are in a box of 1000 by 1000 that is stretched over the plot; labels have their
//! places in per cent of it, so that letters keep their own size.

use tinwave_core::radio_link::{
    CLEARANCE_WANTED, Obstacle, PathProfile, earth_bulge_m, fresnel_radius_m,
};
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_maker::link_plan::{PathAnswer, PathState};
use tinwave_words::figures::axis_unit;
use tinwave_words::link_plan as words;

use crate::path_text::PathText;

/// Side of the box that lines are in.
pub const BOX: f64 = 1_000.0;

/// Points along the path.
const POINTS: u32 = 60;

/// Half the width of an obstacle.
const HALF_OBSTACLE: f64 = 7.0;

/// Widest that a label may get, as a share of the narrowest plot.
const LABEL_SHARE: f64 = 0.34;

/// Which way a label lies from its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelSide {
    /// Over it, centred.
    Above,
    /// Under it, centred.
    Below,
}

/// What a label names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelKind {
    /// The straight line: it carries the margin.
    Line,
    /// The zone.
    Zone,
    /// An obstacle, by its number.
    Obstacle,
}

/// A label.
#[derive(Clone, Debug, PartialEq)]
pub struct PathLabel {
    /// What it names.
    pub kind: LabelKind,
    /// Its words.
    pub text: String,
    /// Place from the left, per cent.
    pub left: f64,
    /// Place from the top, per cent.
    pub top: f64,
    /// Which way it lies from there.
    pub side: LabelSide,
}

/// A tick of an axis: its place in per cent (from the left, or from the top) and figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Tick {
    /// Place, per cent.
    pub at: f64,
    /// Figure.
    pub text: String,
}

/// The picture.
#[derive(Clone, Debug, PartialEq)]
pub struct PathScene {
    /// Outline of the zone that should be free.
    pub zone: String,
    /// Outline of the ground.
    pub ground: String,
    /// The obstacles.
    pub obstacles: String,
    /// The masts.
    pub masts: String,
    /// The straight line.
    pub line: String,
    /// Hairlines at the ticks.
    pub grid: String,
    /// Whether the line is blocked.
    pub is_blocked: bool,
    /// Ticks of the heights.
    pub heights: Vec<Tick>,
    /// Ticks of the distance.
    pub distances: Vec<Tick>,
    /// Unit of the heights.
    pub height_unit: &'static str,
    /// Unit of the distance.
    pub distance_unit: &'static str,
    /// Labels; no two of them meet.
    pub labels: Vec<PathLabel>,
}

struct View<'a> {
    profile: &'a PathProfile,
    low_m: f64,
    high_m: f64,
}

impl<'a> View<'a> {
    fn new(profile: &'a PathProfile, obstacles: &[(usize, Obstacle)]) -> Self {
        let mut view = Self {
            profile,
            low_m: 0.0,
            high_m: 1.0,
        };
        let (mut low, mut high) = (0.0_f64, 1.0_f64);
        for n in 0..=POINTS {
            let at = view.along(n);
            let (line, zone) = (view.line_m(at), view.zone_m(at));
            low = low.min(line - zone);
            high = high.max(line + zone).max(view.ground_m(at));
        }
        for (_, one) in obstacles {
            let top = one.height_m + view.ground_m(one.distance_m);
            high = high.max(top);
            low = low.min(top);
        }
        // Room for the labels over everything.
        (view.low_m, view.high_m) = (low, high + 0.14 * (high - low));
        view
    }

    fn along(&self, n: u32) -> f64 {
        self.profile.distance_m * f64::from(n) / f64::from(POINTS)
    }

    fn far_m(&self, at_m: f64) -> f64 {
        (self.profile.distance_m - at_m).max(0.0)
    }

    fn line_m(&self, at_m: f64) -> f64 {
        let rise = self.profile.height_b_m - self.profile.height_a_m;
        self.profile.height_a_m + rise * at_m / self.profile.distance_m
    }

    fn ground_m(&self, at_m: f64) -> f64 {
        earth_bulge_m(at_m, self.far_m(at_m), self.profile.earth_factor)
    }

    fn zone_m(&self, at_m: f64) -> f64 {
        CLEARANCE_WANTED * fresnel_radius_m(1, at_m, self.far_m(at_m), self.profile.frequency_hz)
    }

    fn place(&self, at_m: f64, height_m: f64) -> (f64, f64) {
        let share = (height_m - self.low_m) / (self.high_m - self.low_m);
        (at_m / self.profile.distance_m * BOX, (1.0 - share) * BOX)
    }

    fn points(&self, height_m: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
        (0..=POINTS)
            .map(|n| self.place(self.along(n), height_m(self.along(n))))
            .collect()
    }
}

impl PathScene {
    /// The picture of a path; `margin` stands on its line where it is known.
    #[must_use]
    pub fn new(path: &PathAnswer, margin: Option<&str>, unit: LengthUnit) -> Self {
        let view = View::new(&path.profile, &path.obstacles);
        let mut line = PathText::new();
        line.polyline(view.points(|at| view.line_m(at)));
        let mut outline = view.points(|at| view.line_m(at) + view.zone_m(at));
        let mut lower = view.points(|at| view.line_m(at) - view.zone_m(at));
        lower.reverse();
        outline.append(&mut lower);
        let (height_unit, heights) = heights(&view, unit);
        let (distance_unit, distances) = distances(&view, unit);
        Self {
            zone: polygon(&outline),
            ground: ground(&view),
            obstacles: obstacles(&view, &path.obstacles),
            masts: masts(&view),
            line: line.into_text(),
            grid: grid(&heights, &distances),
            is_blocked: path.state == PathState::Blocked,
            labels: labels(&view, path, margin),
            heights,
            distances,
            height_unit,
            distance_unit,
        }
    }
}

fn polygon(points: &[(f64, f64)]) -> String {
    let mut path = PathText::new();
    path.polygon(points);
    path.into_text()
}

fn ground(view: &View<'_>) -> String {
    let mut outline = view.points(|at| view.ground_m(at));
    outline.push((BOX, BOX));
    outline.push((0.0, BOX));
    polygon(&outline)
}

fn obstacles(view: &View<'_>, obstacles: &[(usize, Obstacle)]) -> String {
    let mut path = PathText::new();
    for (_, one) in obstacles {
        let ground = view.ground_m(one.distance_m);
        let (x, top) = view.place(one.distance_m, ground + one.height_m);
        let (_, foot) = view.place(one.distance_m, ground);
        path.rectangle(
            x - HALF_OBSTACLE,
            top.min(foot),
            x + HALF_OBSTACLE,
            top.max(foot),
        );
    }
    path.into_text()
}

fn masts(view: &View<'_>) -> String {
    let mut path = PathText::new();
    let distance_m = view.profile.distance_m;
    for (at, height) in [
        (0.0, view.profile.height_a_m),
        (distance_m, view.profile.height_b_m),
    ] {
        let (x, top) = view.place(at, height);
        let (_, foot) = view.place(at, 0.0);
        path.segment(x, top, x, foot);
    }
    path.into_text()
}

/// Round values from low to high, at most so many.
fn round_values(low: f64, high: f64, most: f64) -> (Vec<f64>, u8) {
    let rough = (high - low) / most;
    let decade = 10_f64.powf(rough.log10().floor());
    let factor = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .find(|factor| factor * decade >= rough)
        .unwrap_or(10.0);
    let step = factor * decade;
    let first = (low / step - 1e-9).ceil();
    let count = ((high - first * step) / step + 1e-9).floor().max(0.0) as u32;
    let values = (0..=count).map(|n| (first + f64::from(n)) * step).collect();
    (values, if step < 1.0 { 1 } else { 0 })
}

fn heights(view: &View<'_>, unit: LengthUnit) -> (&'static str, Vec<Tick>) {
    let (symbol, worth) = axis_unit(view.high_m - view.low_m, unit);
    let (values, decimals) = round_values(view.low_m / worth, view.high_m / worth, 5.0);
    let ticks = values.into_iter().map(|value| Tick {
        at: view.place(0.0, value * worth).1 / BOX * 100.0,
        text: format_decimal(value, decimals),
    });
    (symbol, ticks.collect())
}

fn distances(view: &View<'_>, unit: LengthUnit) -> (&'static str, Vec<Tick>) {
    let long_m = view.profile.distance_m;
    let (symbol, worth) = axis_unit(long_m, unit);
    let (values, decimals) = round_values(0.0, long_m / worth, 4.0);
    let ticks = values.into_iter().map(|value| Tick {
        at: value * worth / long_m * 100.0,
        text: format_decimal(value, decimals),
    });
    (symbol, ticks.collect())
}

fn grid(heights: &[Tick], distances: &[Tick]) -> String {
    let mut path = PathText::new();
    for tick in heights {
        let y = tick.at / 100.0 * BOX;
        path.segment(0.0, y, BOX, y);
    }
    for tick in distances {
        let x = tick.at / 100.0 * BOX;
        path.segment(x, 0.0, x, BOX);
    }
    path.into_text()
}

fn labels(view: &View<'_>, path: &PathAnswer, margin: Option<&str>) -> Vec<PathLabel> {
    let named = words::path_labels();
    let mut labels = Vec::new();
    let place = |share: f64, height: f64| {
        let (x, y) = view.place(share * view.profile.distance_m, height);
        (x / BOX * 100.0, y / BOX * 100.0)
    };
    if let Some(share) = free_share(view, path) {
        let (left, top) = place(share, view.line_m(share * view.profile.distance_m));
        labels.push(PathLabel {
            kind: LabelKind::Line,
            text: margin.unwrap_or(named.line).to_owned(),
            left,
            top,
            side: LabelSide::Above,
        });
        // Where the zone is thin there is no room in it.
        let radius = view.zone_m(share * view.profile.distance_m);
        let is_free = path.obstacles.is_empty() && path.state == PathState::Clear;
        if is_free && radius / (view.high_m - view.low_m) > 0.17 {
            labels.push(PathLabel {
                kind: LabelKind::Zone,
                text: named.zone.to_owned(),
                left,
                top,
                side: LabelSide::Below,
            });
        }
    }
    let mut taken: Vec<f64> = Vec::new();
    for (n, one) in &path.obstacles {
        let share = one.distance_m / view.profile.distance_m;
        // Numbers that would meet are left out: the table has them.
        if taken.iter().any(|other| (other - share).abs() < 0.06) {
            continue;
        }
        taken.push(share);
        let top_m = view.ground_m(one.distance_m) + one.height_m.max(0.0);
        let (left, top) = place(share, top_m);
        labels.push(PathLabel {
            kind: LabelKind::Obstacle,
            text: (n + 1).to_string(),
            left,
            top,
            side: LabelSide::Above,
        });
    }
    labels
}

/// Where along the line there is room over it for a label, from the middle outwards.
fn free_share(view: &View<'_>, path: &PathAnswer) -> Option<f64> {
    let high_m = view.high_m - view.low_m;
    let is_free = |share: f64| {
        let line = view.line_m(share * view.profile.distance_m);
        path.obstacles.iter().all(|(_, one)| {
            let at = one.distance_m / view.profile.distance_m;
            let top = view.ground_m(one.distance_m) + one.height_m;
            // An obstacle carries its number on top.
            (at - share).abs() > 0.5 * LABEL_SHARE + 0.03 || top + 0.14 * high_m < line
        })
    };
    [0.5, 0.25, 0.75].into_iter().find(|share| is_free(*share))
}
