//! The path from the side: ground with its bulge, obstacles, the line between the ends
//! and the zone that should be free. Heights are drawn larger than distances.

use tinwave_core::radio_link::{
    CLEARANCE_WANTED, Obstacle, PathProfile, earth_bulge_m, fresnel_radius_m,
};
use tinwave_web::drawing::path_text::PathText;
use tinwave_web::entry::{LengthUnit, format_decimal};

use super::words::axis_unit;
use crate::sheet::{Anchor, Sheet, WIDTH, round_values};

const LEFT: f64 = 40.0;
const RIGHT: f64 = WIDTH - 14.0;
const TOP: f64 = 28.0;
const BOTTOM: f64 = 190.0;
const HEIGHT: f64 = 230.0;

/// Points along the path.
const POINTS: u32 = 60;

struct View<'a> {
    profile: &'a PathProfile,
    low_m: f64,
    high_m: f64,
}

impl<'a> View<'a> {
    fn new(profile: &'a PathProfile, obstacles: &[Obstacle]) -> Self {
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
        for one in obstacles {
            high = high.max(one.height_m + view.ground_m(one.distance_m));
            low = low.min(one.height_m + view.ground_m(one.distance_m));
        }
        let room = 0.06 * (high - low);
        (view.low_m, view.high_m) = (low - room, high + room);
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
        (
            LEFT + at_m / self.profile.distance_m * (RIGHT - LEFT),
            BOTTOM - share * (BOTTOM - TOP),
        )
    }

    fn points(&self, height_m: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
        (0..=POINTS)
            .map(|n| self.place(self.along(n), height_m(self.along(n))))
            .collect()
    }
}

/// The picture.
pub(super) fn picture(
    profile: &PathProfile,
    obstacles: &[Obstacle],
    description: &str,
    unit: LengthUnit,
) -> String {
    let view = View::new(profile, obstacles);
    let mut sheet = Sheet::new(
        "plan-side-view",
        HEIGHT,
        "The path from the side",
        description,
    );
    figures(&mut sheet, &view, unit);
    zone(&mut sheet, &view);
    ground(&mut sheet, &view);
    for (n, one) in obstacles.iter().enumerate() {
        obstacle(&mut sheet, &view, n, one);
    }
    let mut line = PathText::new();
    line.polyline(view.points(|at| view.line_m(at)));
    sheet.path("pic-line-main", &line.into_text());
    ends(&mut sheet, &view);
    sheet.finish()
}

fn zone(sheet: &mut Sheet, view: &View<'_>) {
    let mut outline = view.points(|at| view.line_m(at) + view.zone_m(at));
    let mut lower = view.points(|at| view.line_m(at) - view.zone_m(at));
    lower.reverse();
    outline.append(&mut lower);
    let mut path = PathText::new();
    path.polygon(&outline);
    sheet.path("plan-zone", &path.into_text());
}

fn ground(sheet: &mut Sheet, view: &View<'_>) {
    let mut outline = view.points(|at| view.ground_m(at));
    outline.push((RIGHT, BOTTOM));
    outline.push((LEFT, BOTTOM));
    let mut path = PathText::new();
    path.polygon(&outline);
    sheet.path("plan-ground", &path.into_text());
}

fn obstacle(sheet: &mut Sheet, view: &View<'_>, n: usize, one: &Obstacle) {
    let ground = view.ground_m(one.distance_m);
    let (x, top) = view.place(one.distance_m, ground + one.height_m);
    let (_, foot) = view.place(one.distance_m, ground);
    let mut path = PathText::new();
    path.rectangle(x - 2.5, top, x + 2.5, foot);
    sheet.path("plan-obstacle", &path.into_text());
    let number = (n + 1).to_string();
    sheet.text(
        "pic-figure",
        Anchor::Middle,
        (x, top.min(foot) - 4.0),
        &number,
    );
}

fn ends(sheet: &mut Sheet, view: &View<'_>) {
    let distance_m = view.profile.distance_m;
    let mut masts = PathText::new();
    for (at, height) in [
        (0.0, view.profile.height_a_m),
        (distance_m, view.profile.height_b_m),
    ] {
        let (x, top) = view.place(at, height);
        let (_, foot) = view.place(at, 0.0);
        masts.segment(x, top, x, foot);
    }
    sheet.path("plan-mast", &masts.into_text());
    sheet.text("pic-words", Anchor::Start, (LEFT, 24.0), "this end");
    sheet.text("pic-words", Anchor::End, (RIGHT, 24.0), "far end");
}

fn figures(sheet: &mut Sheet, view: &View<'_>, unit: LengthUnit) {
    let (up_symbol, up) = axis_unit(view.high_m - view.low_m, unit);
    let (along_symbol, along) = axis_unit(view.profile.distance_m, unit);
    let mut path = PathText::new();
    let digits = |span: f64| if span < 5.0 { 1 } else { 0 };
    let (low, high) = (view.low_m / up, view.high_m / up);
    for (value, _) in round_values(low, high, 6.0) {
        let (_, y) = view.place(0.0, value * up);
        path.segment(LEFT, y, RIGHT, y);
        let figure = format_decimal(value, digits(high - low));
        sheet.text(
            "pic-words pic-small",
            Anchor::End,
            (LEFT - 4.0, y + 4.0),
            &figure,
        );
    }
    let long = view.profile.distance_m / along;
    for (value, _) in round_values(0.0, long, 5.0) {
        let (x, _) = view.place(value * along, 0.0);
        let figure = format_decimal(value, digits(long));
        sheet.text(
            "pic-words pic-small",
            Anchor::Middle,
            (x, BOTTOM + 15.0),
            &figure,
        );
    }
    sheet.path("pic-grid", &path.into_text());
    let up_title = ["Height, ", up_symbol].concat();
    sheet.text("pic-words pic-small", Anchor::Start, (2.0, 11.0), &up_title);
    let along_title = ["Distance from this end, ", along_symbol].concat();
    sheet.text(
        "pic-words pic-small",
        Anchor::End,
        (RIGHT, HEIGHT - 6.0),
        &along_title,
    );
}
