//! What is read off a chart: at the reading line, and as a table.

use tinwave_maker::entry::format_decimal;
use tinwave_words::chart as words;

use super::{ChartSpec, Series, Style, decimals_of};

/// A value read off one curve.
#[derive(Clone, Debug, PartialEq)]
pub struct Value {
    /// The curve's name.
    pub name: String,
    /// How it is drawn.
    pub style: Style,
    /// The value; `None` in a gap and beyond the curve's ends.
    pub value: Option<f64>,
    /// The value in figures, with its unit, or that there is none.
    pub text: String,
}

/// What the reading line reads.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Its place.
    pub x: f64,
    /// The place in figures, with its unit.
    pub place: String,
    /// What each curve has there.
    pub values: Vec<Value>,
}

impl Reading {
    /// In words.
    #[must_use]
    pub fn sentence(&self) -> String {
        words::reading(
            &self.place,
            self.values
                .iter()
                .map(|value| (value.name.as_str(), value.text.as_str())),
        )
    }
}

/// A row of the same as a table: the place, and each curve's figure.
#[derive(Clone, Debug, PartialEq)]
pub struct TableRow {
    /// The place in figures.
    pub place: String,
    /// Figures of the curves, in their order.
    pub values: Vec<String>,
    /// Whether the place lies within the band.
    pub in_band: bool,
}

/// A key that moves the reading line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadingKey {
    /// So many steps on; back where below zero.
    Steps(i32),
    /// To the left end.
    Start,
    /// To the right end.
    End,
}

impl ReadingKey {
    /// From the name of a key (`KeyboardEvent.key`) and whether shift is held.
    #[must_use]
    pub fn from_key(key: &str, shift: bool) -> Option<Self> {
        let step = if shift { 10 } else { 1 };
        match key {
            "ArrowRight" | "ArrowUp" => Some(Self::Steps(step)),
            "ArrowLeft" | "ArrowDown" => Some(Self::Steps(-step)),
            "PageUp" => Some(Self::Steps(10)),
            "PageDown" => Some(Self::Steps(-10)),
            "Home" => Some(Self::Start),
            "End" => Some(Self::End),
            _ => None,
        }
    }
}

/// Most rows of a table that are not edges of the band.
const MOST_ROWS: usize = 25;

impl ChartSpec {
    /// What the reading line reads at a place.
    #[must_use]
    pub fn read(&self, x: f64) -> Reading {
        let x = self.x.kept(x);
        let values = self.series.iter().map(|series| {
            let value = series.at(x);
            Value {
                name: series.name.clone(),
                style: series.style,
                value,
                text: value.map_or_else(|| series.gap.clone(), |value| self.y.text(value)),
            }
        });
        Reading {
            x,
            place: self.x.with_unit(self.place(x)),
            values: values.collect(),
        }
    }

    /// The place of a share of the width, on the grid of the reading line's steps.
    #[must_use]
    pub fn place_at(&self, share: f64) -> f64 {
        let x = self.x.value(share.clamp(0.0, 1.0));
        self.x.kept((x / self.x.step).round() * self.x.step)
    }

    /// The place after a key. A step first goes to the grid.
    #[must_use]
    pub fn after_key(&self, x: f64, key: ReadingKey) -> f64 {
        match key {
            ReadingKey::Start => self.x.low,
            ReadingKey::End => self.x.high,
            ReadingKey::Steps(steps) => {
                let place = x / self.x.step;
                let grid = if steps > 0 {
                    (place + 1e-6).floor()
                } else {
                    (place - 1e-6).ceil()
                };
                self.x.kept((grid + f64::from(steps)) * self.x.step)
            }
        }
    }

    /// The same as a table: a readable number of places, the band's edges among them.
    #[must_use]
    pub fn rows(&self) -> Vec<TableRow> {
        let mut places: Vec<f64> = Vec::new();
        let longest = self.series.iter().max_by_key(|series| series.points.len());
        if let Some(series) = longest {
            let stride = series.points.len().div_ceil(MOST_ROWS).max(1);
            places.extend(series.points.iter().step_by(stride).map(|point| point.0));
        }
        if let Some((low, high)) = self.band {
            places.extend([low, high]);
        }
        places.retain(|x| self.x.kept(*x) == *x);
        places.sort_by(f64::total_cmp);
        places.dedup();
        let in_band = |x: f64| self.band.is_some_and(|(low, high)| x >= low && x <= high);
        let figure = |series: &Series, x: f64| {
            series
                .at(x)
                .map_or_else(|| series.gap.clone(), |value| self.y.figure(value))
        };
        let row = |x: f64| TableRow {
            place: self.place(x),
            values: self.series.iter().map(|series| figure(series, x)).collect(),
            in_band: in_band(x),
        };
        places.into_iter().map(row).collect()
    }

    /// A place in figures: an edge of the band and an end of the chart are never shown
    /// past what they are.
    fn place(&self, x: f64) -> String {
        let is_edge = |(low, high)| x == low || x == high;
        if self.band.is_some_and(is_edge) || is_edge((self.x.low, self.x.high)) {
            format_decimal(x, decimals_of(&[x]).max(self.x.decimals))
        } else {
            self.x.figure(x)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::ReadingKey;
    use crate::chart::{Axis, ChartSpec, Series, Style};

    fn spec() -> ChartSpec {
        let mut spec = ChartSpec::new(Axis::frequency_mhz(2_300.0, 2_500.0), Axis::vswr(1.4));
        spec.band = Some((2_400.0, 2_483.5));
        let points = |slope: f64| {
            (0..=100)
                .map(|i| (2_300.0 + 2.0 * f64::from(i), 1.1 + slope * f64::from(i)))
                .collect()
        };
        spec.series = vec![
            Series::new("best", Style::This, points(0.001)),
            Series::new("as cut", Style::Compared, points(0.002)),
        ];
        spec
    }

    #[test]
    fn the_line_rests_in_the_bands_middle_and_reads_every_curve() {
        let spec = spec();
        let reading = spec.read(spec.rest());
        assert_eq!(reading.x, 2_441.75);
        assert_eq!(reading.values.len(), 2);
        assert!((reading.values[0].value.unwrap_or(0.0) - 1.170_875).abs() < 1e-9);
        assert_eq!(reading.sentence(), "2442\u{a0}MHz: best 1.17; as cut 1.24");
    }

    #[test]
    fn keys_walk_the_grid_and_stop_at_the_ends() {
        let spec = spec();
        let press = |x: f64, key: &str, shift: bool| {
            ReadingKey::from_key(key, shift).map(|key| spec.after_key(x, key))
        };
        assert_eq!(press(2_441.75, "ArrowRight", false), Some(2_442.0));
        assert_eq!(press(2_441.75, "ArrowLeft", false), Some(2_441.0));
        assert_eq!(press(2_442.0, "ArrowRight", true), Some(2_452.0));
        assert_eq!(press(2_499.0, "PageUp", false), Some(2_500.0));
        assert_eq!(press(2_400.0, "Home", false), Some(2_300.0));
        assert_eq!(press(2_400.0, "End", false), Some(2_500.0));
        assert_eq!(press(2_400.0, "Tab", false), None);
        assert_eq!(spec.place_at(0.5013), 2_400.0);
        assert_eq!(spec.place_at(7.0), 2_500.0);
    }

    #[test]
    fn the_table_is_short_and_has_the_bands_edges() {
        let rows = spec().rows();
        assert!(rows.len() <= 27, "{}", rows.len());
        let banded: Vec<&str> = rows
            .iter()
            .filter(|row| row.in_band)
            .map(|row| row.place.as_str())
            .collect();
        assert_eq!(banded.first(), Some(&"2400"));
        assert_eq!(banded.last(), Some(&"2483.5"));
        assert!(rows.iter().all(|row| row.values.len() == 2));
    }

    #[test]
    fn a_chart_over_the_band_alone_ends_where_the_band_does() {
        let mut spec = ChartSpec::new(Axis::frequency_mhz(2_400.0, 2_483.5), Axis::vswr(1.4));
        let points = vec![(2_400.0, 1.2), (2_483.5, 1.3)];
        spec.series = vec![Series::new("", Style::This, points)];
        let last = spec.rows().pop().map(|row| row.place);
        assert_eq!(last.as_deref(), Some("2483.5"));
        assert_eq!(spec.read(2_500.0).place, "2483.5\u{a0}MHz");
    }

    #[test]
    fn a_gap_says_why_it_is_one() {
        let mut spec = spec();
        let points = vec![(2_350.0, 1.2), (2_450.0, 1.3)];
        spec.series = vec![Series::new("seen", Style::Measured, points).with_gap("not seen")];
        assert_eq!(spec.read(2_300.0).values[0].text, "not seen");
        assert_eq!(spec.read(2_400.0).values[0].text, "1.25");
    }
}
