//! One axis: its ends, its unit, and how its figures are written.

use tinwave_maker::entry::{NO_NUMBER, format_decimal};
use tinwave_words::chart as words;

use super::ticks::{decimals_of, log_ticks, nice_step, nice_ticks};

/// How values are laid along an axis.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Scale {
    /// Equal steps for equal differences.
    #[default]
    Linear,
    /// Equal steps for equal ratios; both ends above zero.
    Logarithmic,
}

/// One axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Axis {
    /// Value at the left or lower end.
    pub low: f64,
    /// Value at the other end; never equal to `low`.
    pub high: f64,
    /// How values are laid along it.
    pub scale: Scale,
    /// What it measures, in a word: head of the table's column, name of the slider.
    pub name: String,
    /// Its unit, once at its end; empty for a bare ratio.
    pub unit: String,
    /// Decimals of a value read off.
    pub decimals: u8,
    /// Step of the reading line.
    pub step: f64,
    /// Values that get a tick; round ones where nothing is said.
    pub ticks: Option<Vec<f64>>,
    /// Beyond this a value is only said to be over it.
    pub most: Option<f64>,
}

impl Axis {
    /// A linear axis between two ends.
    #[must_use]
    pub fn new(name: impl Into<String>, unit: impl Into<String>, low: f64, high: f64) -> Self {
        Self {
            low,
            high,
            scale: Scale::Linear,
            name: name.into(),
            unit: unit.into(),
            decimals: 1,
            step: nice_step((high - low).abs() / 100.0),
            ticks: None,
            most: None,
        }
    }

    /// A linear axis that holds all these values, with round ends and some room; from 0
    /// to 1 where there are none.
    #[must_use]
    pub fn holding(
        name: impl Into<String>,
        unit: impl Into<String>,
        values: impl IntoIterator<Item = f64>,
    ) -> Self {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for value in values.into_iter().filter(|value| value.is_finite()) {
            (low, high) = (low.min(value), high.max(value));
        }
        if low > high {
            (low, high) = (0.0, 1.0);
        }
        let least = (high.abs().max(low.abs()) * 1e-3).max(1e-3);
        let step = nice_step(((high - low) / 4.0).max(least));
        let below = (low / step + 1e-9).floor() * step;
        let above = (high / step - 1e-9).ceil() * step;
        let above = if above > below { above } else { below + step };
        Self::new(name, unit, below, above)
    }

    /// Laid out by ratios instead.
    #[must_use]
    pub fn logarithmic(mut self) -> Self {
        self.scale = Scale::Logarithmic;
        self
    }

    /// With so many decimals where a value is read off.
    #[must_use]
    pub const fn with_decimals(mut self, decimals: u8) -> Self {
        self.decimals = decimals;
        self
    }

    /// With another step of the reading line.
    #[must_use]
    pub const fn with_step(mut self, step: f64) -> Self {
        self.step = step;
        self
    }

    /// With ticks at these values.
    #[must_use]
    pub fn with_ticks(mut self, ticks: Vec<f64>) -> Self {
        self.ticks = Some(ticks);
        self
    }

    /// Frequency, MHz, read off in steps of 1 MHz.
    #[must_use]
    pub fn frequency_mhz(low: f64, high: f64) -> Self {
        let coarse = nice_step((high - low) / 500.0).max(1.0);
        Self::new(words::frequency(), "MHz", low, high)
            .with_decimals(0)
            .with_step(coarse)
    }

    /// Standing-wave ratio from 1 upwards, to the first round top that holds `worst`
    /// with room above it.
    #[must_use]
    pub fn vswr(worst: f64) -> Self {
        const TOPS: [(f64, &[f64]); 6] = [
            (1.6, &[1.0, 1.2, 1.4, 1.6]),
            (2.0, &[1.0, 1.25, 1.5, 1.75, 2.0]),
            (3.0, &[1.0, 1.5, 2.0, 2.5, 3.0]),
            (5.0, &[1.0, 2.0, 3.0, 4.0, 5.0]),
            (10.0, &[1.0, 2.0, 4.0, 6.0, 8.0, 10.0]),
            (20.0, &[1.0, 5.0, 10.0, 15.0, 20.0]),
        ];
        let holds = |top: f64| worst <= 1.0 + (top - 1.0) * 0.92;
        let (top, ticks) = TOPS
            .into_iter()
            .find(|(top, _)| holds(*top))
            .unwrap_or((20.0, &[1.0, 5.0, 10.0, 15.0, 20.0]));
        let mut axis = Self::new("VSWR", "", 1.0, top)
            .with_decimals(2)
            .with_ticks(ticks.to_vec());
        axis.most = Some(10.0);
        axis
    }

    /// Where a value lies, 0 at the low end to 1 at the high one; beyond them outside.
    #[must_use]
    pub fn share(&self, value: f64) -> f64 {
        match self.scale {
            Scale::Linear => (value - self.low) / (self.high - self.low),
            Scale::Logarithmic => {
                let low = self.low.max(f64::MIN_POSITIVE);
                (value.max(f64::MIN_POSITIVE) / low).ln() / (self.high / low).ln()
            }
        }
    }

    /// The value at a share of the axis.
    #[must_use]
    pub fn value(&self, share: f64) -> f64 {
        match self.scale {
            Scale::Linear => self.low + share * (self.high - self.low),
            Scale::Logarithmic => {
                let low = self.low.max(f64::MIN_POSITIVE);
                low * (share * (self.high / low).ln()).exp()
            }
        }
    }

    /// A value kept between the ends; the low end for what is no number.
    #[must_use]
    pub fn kept(&self, value: f64) -> f64 {
        let (least, most) = if self.low < self.high {
            (self.low, self.high)
        } else {
            (self.high, self.low)
        };
        if value.is_nan() {
            self.low
        } else {
            value.clamp(least, most)
        }
    }

    /// Ticks, at most so many.
    #[must_use]
    pub fn tick_values(&self, most: usize) -> Vec<f64> {
        let (least, top) = if self.low < self.high {
            (self.low, self.high)
        } else {
            (self.high, self.low)
        };
        match (&self.ticks, self.scale) {
            (Some(ticks), _) => ticks
                .iter()
                .copied()
                .filter(|tick| *tick >= least && *tick <= top)
                .collect(),
            (None, Scale::Linear) => nice_ticks(least, top, most),
            (None, Scale::Logarithmic) => log_ticks(least, top, most),
        }
    }

    /// Figures of ticks, all with the same decimals.
    #[must_use]
    pub fn tick_texts(&self, ticks: &[f64]) -> Vec<String> {
        // 1.25 among 1.5 and 2 keeps its own decimals: `2`, `1.75`, `1.5`.
        ticks
            .iter()
            .map(|tick| format_decimal(*tick, decimals_of(&[*tick])))
            .collect()
    }

    /// A value as it is read off, without its unit.
    #[must_use]
    pub fn figure(&self, value: f64) -> String {
        match self.most {
            Some(most) if value > most => words::over(&format_decimal(most, 0)),
            _ if !value.is_finite() => NO_NUMBER.to_owned(),
            _ => format_decimal(value, self.decimals),
        }
    }

    /// A value as it is read off, with its unit.
    #[must_use]
    pub fn text(&self, value: f64) -> String {
        self.with_unit(self.figure(value))
    }

    /// A figure of this axis with its unit.
    #[must_use]
    pub fn with_unit(&self, mut figure: String) -> String {
        if !self.unit.is_empty() {
            figure.push('\u{a0}');
            figure.push_str(&self.unit);
        }
        figure
    }

    /// Name and unit: the head of a column.
    #[must_use]
    pub fn head(&self) -> String {
        words::column(&self.name, &self.unit)
    }
}

#[cfg(test)]
mod tests {
    use super::Axis;

    #[test]
    fn a_share_leads_back_to_its_value() {
        let linear = Axis::new("x", "m", 10.0, 30.0);
        let ratio = Axis::new("x", "m", 10.0, 1_000.0).logarithmic();
        assert!((ratio.share(100.0) - 0.5).abs() < 1e-12);
        for axis in [linear, ratio] {
            for share in [0.0, 0.3, 1.0] {
                assert!((axis.share(axis.value(share)) - share).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn the_axis_of_the_match_holds_the_worst() {
        for (worst, top) in [
            (1.06, 1.6),
            (1.7, 2.0),
            (2.5, 3.0),
            (4.0, 5.0),
            (8.0, 10.0),
            (99.0, 20.0),
            (f64::NAN, 20.0),
        ] {
            assert_eq!(Axis::vswr(worst).high, top, "{worst}");
        }
        assert_eq!(Axis::vswr(99.0).text(14.0), "over 10");
        assert_eq!(Axis::vswr(1.2).text(1.0649), "1.06");
    }

    #[test]
    fn round_ends_hold_all_values() {
        let axis = Axis::holding("Gain", "dBi", [7.31, 7.94, f64::NAN]);
        assert!(axis.low <= 7.31 && axis.high >= 7.94 && axis.high - axis.low <= 1.0);
        let flat = Axis::holding("Gain", "dBi", [5.0, 5.0]);
        assert!(flat.high > flat.low && flat.low <= 5.0 && flat.high >= 5.0);
        let none = Axis::holding("Gain", "dBi", []);
        assert_eq!((none.low, none.high), (0.0, 1.0));
    }
}
