//! Names beside curves, where no curve runs; left out where there is no such place.

use super::layout::{Letters, PlotSize};
use super::{ChartSpec, Style, runs};

/// Where a name stands: about its middle.
#[derive(Clone, Debug, PartialEq)]
pub struct NamePlace {
    /// What it says.
    pub text: String,
    /// How the curve is drawn; `None` for the name of a single point.
    pub style: Option<Style>,
    /// Share of the plot's width.
    pub x: f64,
    /// Share of its height, from the bottom.
    pub y: f64,
}

impl NamePlace {
    /// Its box, px from the plot's upper left corner.
    #[must_use]
    pub fn letters(&self, size: PlotSize) -> Letters {
        Letters::about(
            self.x * size.width,
            (1.0 - self.y) * size.height,
            size.text_width(&self.text),
            size.line(),
        )
    }
}

/// Clear between letters and any line, px.
const CLEAR: f64 = 3.0;
/// Farthest that a name may stand from its curve, in ems.
const REACH_EM: f64 = 2.2;
/// Places tried along the plot.
const TRIED: u32 = 40;

/// A curve on the plot, px from its upper left corner.
type Path = Vec<Vec<(f64, f64)>>;

pub(super) struct Names<'a> {
    pub(super) spec: &'a ChartSpec,
    pub(super) size: PlotSize,
}

/// What names must keep off.
struct Taken {
    paths: Vec<Path>,
    lines: Vec<Letters>,
    boxes: Vec<Letters>,
}

impl Names<'_> {
    pub(super) fn place(&self) -> Vec<NamePlace> {
        let spec = self.spec;
        let mut taken = Taken {
            paths: spec
                .series
                .iter()
                .map(|series| self.path(&series.points))
                .collect(),
            lines: self.lines(),
            boxes: Vec::new(),
        };
        let mut names = Vec::new();
        for mark in &spec.marks {
            let at = self.px(mark.at);
            let ring = Letters::about(at.0, at.1, 12.0, 12.0);
            if !mark.name.is_empty()
                && let Some(place) = self.beside(at, &mark.name, &taken)
            {
                taken.boxes.push(place);
                names.push(self.name(&mark.name, None, place));
            }
            taken.boxes.push(ring);
        }
        for (index, series) in spec.series.iter().enumerate() {
            if series.name.is_empty() {
                continue;
            }
            if let Some(place) = self.along(index, &series.name, &taken) {
                taken.boxes.push(place.wider(CLEAR));
                names.push(self.name(&series.name, Some(series.style), place));
            }
        }
        names
    }

    fn name(&self, text: &str, style: Option<Style>, place: Letters) -> NamePlace {
        NamePlace {
            text: text.to_owned(),
            style,
            x: (place.left + place.right) / 2.0 / self.size.width,
            y: 1.0 - (place.top + place.bottom) / 2.0 / self.size.height,
        }
    }

    fn px(&self, at: (f64, f64)) -> (f64, f64) {
        (
            self.spec.x.share(at.0) * self.size.width,
            (1.0 - self.spec.y.share(at.1)) * self.size.height,
        )
    }

    fn path(&self, points: &[(f64, f64)]) -> Path {
        runs(points, &self.spec.x, &self.spec.y)
            .into_iter()
            .map(|run| run.into_iter().map(|at| self.px(at)).collect())
            .collect()
    }

    /// Limits, and the reading line where it rests.
    fn lines(&self) -> Vec<Letters> {
        let size = self.size;
        let across = |limit: &f64| {
            let y = (1.0 - self.spec.y.share(*limit)) * size.height;
            Letters::about(size.width / 2.0, y, size.width, 1.0)
        };
        let rest = self.spec.x.share(self.spec.rest()) * size.width;
        let mut lines: Vec<Letters> = self.spec.limits.iter().map(across).collect();
        lines.push(Letters::about(rest, size.height / 2.0, 1.0, size.height));
        lines
    }

    /// Beside a single point: right, left, above, below, or at one of its corners.
    fn beside(&self, at: (f64, f64), text: &str, taken: &Taken) -> Option<Letters> {
        let (width, height) = (self.size.text_width(text), self.size.line());
        let (far_x, far_y) = (10.0 + width / 2.0, 9.0 + height / 2.0);
        let (corner_x, corner_y) = (6.0 + width / 2.0, 6.0 + height / 2.0);
        let beside = [(far_x, 0.0), (-far_x, 0.0), (0.0, -far_y), (0.0, far_y)];
        let corners = [
            (corner_x, -corner_y),
            (corner_x, corner_y),
            (-corner_x, -corner_y),
            (-corner_x, corner_y),
        ];
        beside
            .into_iter()
            .chain(corners)
            .map(|(dx, dy)| Letters::about(at.0 + dx, at.1 + dy, width, height))
            .find(|place| self.is_free(*place, taken))
    }

    /// Along a curve: from its right end leftwards, above it, then below it.
    fn along(&self, index: usize, text: &str, taken: &Taken) -> Option<Letters> {
        let own = taken.paths.get(index)?;
        let (width, height) = (self.size.text_width(text), self.size.line());
        if width + 4.0 > self.size.width {
            return None;
        }
        (0..=TRIED)
            .map(|i| 1.0 - f64::from(i) / f64::from(TRIED))
            .flat_map(|share| {
                let x = (share * self.size.width)
                    .clamp(width / 2.0 + 2.0, self.size.width - width / 2.0 - 2.0);
                let span = extent(own, x - width / 2.0 - CLEAR, x + width / 2.0 + CLEAR);
                let above = span.map(|(top, _)| top - CLEAR - 1.0 - height / 2.0);
                let below = span.map(|(_, bottom)| bottom + CLEAR + 1.0 + height / 2.0);
                [above, below].map(|y| y.map(|y| Letters::about(x, y, width, height)))
            })
            .flatten()
            .find(|place| self.is_free(*place, taken) && self.belongs(*place, index, taken))
    }

    fn is_free(&self, place: Letters, taken: &Taken) -> bool {
        let inside = place.left >= 1.0
            && place.right <= self.size.width - 1.0
            && place.top >= 1.0
            && place.bottom <= self.size.height - 1.0;
        let room = place.wider(CLEAR);
        inside
            && !taken.boxes.iter().any(|other| other.meets(&room))
            && !taken.lines.iter().any(|line| line.meets(&room))
            && !taken.paths.iter().any(|path| runs_through(path, room))
    }

    /// Whether the name stands near its own curve, and nearer to it than to any other.
    fn belongs(&self, place: Letters, index: usize, taken: &Taken) -> bool {
        let middle = (
            (place.left + place.right) / 2.0,
            (place.top + place.bottom) / 2.0,
        );
        let away = |path: &Path| match extent(path, middle.0 - 1.0, middle.0 + 1.0) {
            Some((top, bottom)) => (middle.1 - bottom).max(top - middle.1).max(0.0),
            None => f64::INFINITY,
        };
        let own = taken.paths.get(index).map_or(f64::INFINITY, away);
        let reach = REACH_EM * self.size.letter + place.bottom - place.top;
        own <= reach
            && taken
                .paths
                .iter()
                .enumerate()
                .all(|(other, path)| other == index || away(path) > own * 1.2)
    }
}

/// Highest and lowest px of a curve between two px of the width.
fn extent(path: &Path, left: f64, right: f64) -> Option<(f64, f64)> {
    let mut found: Option<(f64, f64)> = None;
    let mut hold = |y: f64| {
        found = Some(found.map_or((y, y), |(top, bottom)| (top.min(y), bottom.max(y))));
    };
    for run in path {
        if let [(x, y)] = run.as_slice()
            && *x >= left
            && *x <= right
        {
            hold(*y);
        }
        for pair in run.windows(2) {
            let [a, b] = pair else { continue };
            let (from, to) = (a.0.max(left), b.0.min(right));
            if from <= to {
                let slope = (b.1 - a.1) / (b.0 - a.0).max(1e-9);
                hold(a.1 + slope * (from - a.0));
                hold(a.1 + slope * (to - a.0));
            }
        }
    }
    found
}

fn runs_through(path: &Path, place: Letters) -> bool {
    extent(path, place.left, place.right).is_some_and(|_| {
        path.iter().any(|run| {
            let one = vec![run.clone()];
            meets_run(&one, place)
        })
    })
}

/// Whether a curve comes into a box: seen in narrow strips, in each of which it is
/// nearly straight.
fn meets_run(path: &Path, place: Letters) -> bool {
    const STRIPS: u32 = 8;
    let width = (place.right - place.left) / f64::from(STRIPS);
    (0..STRIPS).any(|i| {
        let left = place.left + width * f64::from(i);
        extent(path, left, left + width)
            .is_some_and(|(top, bottom)| top < place.bottom && bottom > place.top)
    })
}

#[cfg(test)]
mod tests {
    use super::super::layout::{ChartLayout, PlotSize};
    use crate::chart::{Axis, ChartSpec, Mark, Series, Style};

    fn spec(series: Vec<Series>) -> ChartSpec {
        let mut spec = ChartSpec::new(
            Axis::new("x", "MHz", 0.0, 100.0),
            Axis::new("y", "", 0.0, 1.0),
        );
        spec.series = series;
        spec
    }

    fn straight(from: f64, to: f64) -> Vec<(f64, f64)> {
        vec![(0.0, from), (100.0, to)]
    }

    #[test]
    fn no_name_lies_on_a_curve() {
        let size = PlotSize {
            width: 320.0,
            height: 180.0,
            letter: 13.0,
        };
        let wave = |phase: f64| {
            (0..=100)
                .map(f64::from)
                .map(|x| (x, 0.5 + 0.3 * (x * 0.12 + phase).sin()))
                .collect::<Vec<_>>()
        };
        let spec = spec(vec![
            Series::new("this one", Style::This, wave(0.0)),
            Series::new("measured", Style::Measured, wave(1.9)),
            Series::new("another", Style::Compared, wave(3.7)),
        ]);
        let layout = ChartLayout::new(&spec, size);
        assert!(!layout.names.is_empty());
        for name in &layout.names {
            let place = name.letters(size);
            for series in &spec.series {
                for (x, y) in &series.points {
                    let (x, y) = (x / 100.0 * size.width, (1.0 - y) * size.height);
                    let on =
                        x >= place.left && x <= place.right && y >= place.top && y <= place.bottom;
                    assert!(!on, "{name:?} lies on a curve at {x} {y}");
                }
            }
        }
    }

    #[test]
    fn names_stand_by_their_own_curves() {
        let size = PlotSize {
            width: 320.0,
            height: 180.0,
            letter: 13.0,
        };
        let spec = spec(vec![
            Series::new("upper", Style::This, straight(0.8, 0.8)),
            Series::new("lower", Style::Compared, straight(0.2, 0.3)),
        ]);
        let names = ChartLayout::new(&spec, size).names;
        assert_eq!(names.len(), 2);
        assert!(
            (names[0].y - 0.8).abs() < 0.15 && (names[1].y - 0.28).abs() < 0.2,
            "{names:?}"
        );
    }

    #[test]
    fn a_name_without_a_place_is_left_out() {
        let size = PlotSize {
            width: 320.0,
            height: 180.0,
            letter: 13.0,
        };
        let crowd = (0..14).map(|i| {
            let y = f64::from(i) / 14.0 + 0.03;
            Series::new(
                "much the same as all others",
                Style::Compared,
                straight(y, y),
            )
        });
        assert!(
            ChartLayout::new(&spec(crowd.collect()), size)
                .names
                .is_empty()
        );
    }

    #[test]
    fn a_point_has_its_name_beside_it() {
        let size = PlotSize {
            width: 320.0,
            height: 180.0,
            letter: 13.0,
        };
        let mut spec = spec(Vec::new());
        spec.rest = Some(10.0);
        spec.marks = vec![Mark {
            at: (50.0, 0.5),
            name: "worst".into(),
        }];
        let names = ChartLayout::new(&spec, size).names;
        assert!(names[0].x > 0.5 && (names[0].y - 0.5).abs() < 1e-9);
        spec.marks[0].at = (99.0, 0.5);
        assert!(ChartLayout::new(&spec, size).names[0].x < 0.9);
    }
}
