//! Where each letter of a chart goes, on a plot of a certain size.

use super::name_place::{NamePlace, Names};
use super::{Axis, ChartSpec};

/// Size of a plot and of the letters around it, px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlotSize {
    /// Width of the plot itself.
    pub width: f64,
    /// Height of the plot itself.
    pub height: f64,
    /// Height of a letter's em.
    pub letter: f64,
}

impl PlotSize {
    /// Assumed before the page has been measured: a phone.
    pub const FIRST: Self = Self {
        width: 280.0,
        height: 176.0,
        letter: 13.0,
    };

    /// Estimated width of a text. Sans-serif faces give 0.5 to 0.57 of the em per
    /// letter; too much is better than two texts that touch.
    #[must_use]
    pub fn text_width(&self, text: &str) -> f64 {
        text.chars().count() as f64 * self.letter * 0.62
    }

    /// Height that a line of letters takes.
    #[must_use]
    pub fn line(&self) -> f64 {
        self.letter * 1.2
    }
}

/// An upright box on the plot, px from its upper left corner; also beyond its edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Letters {
    /// Left edge.
    pub left: f64,
    /// Top edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Bottom edge.
    pub bottom: f64,
}

impl Letters {
    /// The box of a text about its middle.
    #[must_use]
    pub fn about(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self {
            left: x - width / 2.0,
            top: y - height / 2.0,
            right: x + width / 2.0,
            bottom: y + height / 2.0,
        }
    }

    /// The same with room all round.
    #[must_use]
    pub fn wider(self, by: f64) -> Self {
        Self {
            left: self.left - by,
            top: self.top - by,
            right: self.right + by,
            bottom: self.bottom + by,
        }
    }

    /// Whether two boxes meet.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }
}

/// On which side of its point a text stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Starts there.
    Start,
    /// About it.
    Middle,
    /// Ends there.
    End,
}

impl Side {
    /// Value of `text-anchor`.
    #[must_use]
    pub const fn anchor(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A tick.
#[derive(Clone, Debug, PartialEq)]
pub struct TickPlace {
    /// Its value.
    pub value: f64,
    /// Its place, as a share of its axis.
    pub share: f64,
    /// Its figure; `None` where there is no room for it.
    pub text: Option<String>,
}

/// All letters of a chart in their places. Shares count from the plot's left edge and
/// from its bottom.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartLayout {
    /// The size it holds for.
    pub size: PlotSize,
    /// Ticks below the plot.
    pub x_ticks: Vec<TickPlace>,
    /// Ticks left of it.
    pub y_ticks: Vec<TickPlace>,
    /// The band's name above the plot: share of the width, and its side of that point.
    pub band_name: Option<(f64, Side)>,
    /// Names beside the curves.
    pub names: Vec<NamePlace>,
}

/// From the plot's left edge to the figures beside it, px.
pub const BESIDE_PX: f64 = 6.0;
/// From the plot's bottom to the middle of the figures below it, in ems.
pub const BELOW_EM: f64 = 1.3;
/// From the plot's top to the middle of the band's name, in ems.
pub const ABOVE_EM: f64 = 0.9;

impl ChartLayout {
    /// Places everything.
    #[must_use]
    pub fn new(spec: &ChartSpec, size: PlotSize) -> Self {
        let mut layout = Self {
            size,
            x_ticks: x_ticks(&spec.x, size),
            y_ticks: y_ticks(&spec.y, size),
            band_name: None,
            names: Vec::new(),
        };
        layout.band_name = band_name(spec, size);
        layout.names = Names { spec, size }.place();
        layout
    }

    /// Longest figure beside the plot, in letters: how much room the left margin needs.
    #[must_use]
    pub fn y_letters(&self) -> usize {
        let letters = |tick: &TickPlace| tick.text.as_ref().map_or(0, |text| text.chars().count());
        self.y_ticks.iter().map(letters).max().unwrap_or(0)
    }

    /// The boxes of all letters, px from the plot's upper left corner.
    #[must_use]
    pub fn boxes(&self, spec: &ChartSpec) -> Vec<Letters> {
        let size = self.size;
        let mut boxes = Vec::new();
        let below = size.height + BELOW_EM * size.letter;
        for tick in &self.x_ticks {
            if let Some(text) = &tick.text {
                boxes.push(Letters::about(
                    tick.share * size.width,
                    below,
                    size.text_width(text),
                    size.line(),
                ));
            }
        }
        for tick in &self.y_ticks {
            if let Some(text) = &tick.text {
                let width = size.text_width(text);
                let y = (1.0 - tick.share) * size.height;
                boxes.push(Letters::about(
                    -BESIDE_PX - width / 2.0,
                    y,
                    width,
                    size.line(),
                ));
            }
        }
        if !spec.x.unit.is_empty() {
            boxes.push(unit_box(&spec.x.unit, size));
        }
        if let Some((share, side)) = self.band_name {
            let width = size.text_width(&spec.band_name);
            let middle = match side {
                Side::Start => share * size.width + width / 2.0,
                Side::Middle => share * size.width,
                Side::End => share * size.width - width / 2.0,
            };
            boxes.push(Letters::about(
                middle,
                -ABOVE_EM * size.letter,
                width,
                size.line(),
            ));
        }
        boxes.extend(self.names.iter().map(|name| name.letters(size)));
        boxes
    }
}

/// The unit ends with the axis.
fn unit_box(unit: &str, size: PlotSize) -> Letters {
    let width = size.text_width(unit);
    Letters::about(
        size.width - width / 2.0,
        size.height + BELOW_EM * size.letter,
        width,
        size.line(),
    )
}

/// Seven at most, and never so many that their figures fill the line.
fn fitting_ticks(axis: &Axis, size: PlotSize) -> (Vec<f64>, Vec<String>) {
    let ticks = |most: usize| {
        let values = axis.tick_values(most);
        let texts = axis.tick_texts(&values);
        (values, texts)
    };
    let fits = |(values, texts): &(Vec<f64>, Vec<String>)| {
        let widest = texts
            .iter()
            .map(|text| size.text_width(text))
            .fold(0.0, f64::max);
        values.windows(2).all(|pair| {
            let [a, b] = pair else { return true };
            (axis.share(*b) - axis.share(*a)).abs() * size.width >= widest + size.letter
        })
    };
    (2..=7)
        .rev()
        .map(ticks)
        .find(fits)
        .unwrap_or_else(|| ticks(2))
}

fn x_ticks(axis: &Axis, size: PlotSize) -> Vec<TickPlace> {
    let (values, texts) = fitting_ticks(axis, size);
    let below = size.height + BELOW_EM * size.letter;
    let gap = size.letter * 0.4;
    let mut taken = Vec::new();
    if !axis.unit.is_empty() {
        taken.push(unit_box(&axis.unit, size).wider(gap));
    }
    values
        .into_iter()
        .zip(texts)
        .map(|(value, text)| {
            let share = axis.share(value);
            let width = size.text_width(&text);
            let place = Letters::about(share * size.width, below, width, size.line());
            let free = !taken.iter().any(|other: &Letters| other.meets(&place));
            if free {
                taken.push(place.wider(gap));
            }
            TickPlace {
                value,
                share,
                text: free.then_some(text),
            }
        })
        .collect()
}

fn y_ticks(axis: &Axis, size: PlotSize) -> Vec<TickPlace> {
    let most = ((size.height / (2.4 * size.letter)).floor() as usize).clamp(2, 6);
    let values = axis.tick_values(most);
    let texts = axis.tick_texts(&values);
    let mut last: Option<f64> = None;
    values
        .into_iter()
        .zip(texts)
        .map(|(value, text)| {
            let share = axis.share(value);
            let y = share * size.height;
            let free = last.is_none_or(|last| (y - last).abs() >= size.line());
            if free {
                last = Some(y);
            }
            TickPlace {
                value,
                share,
                text: free.then_some(text),
            }
        })
        .collect()
}

fn band_name(spec: &ChartSpec, size: PlotSize) -> Option<(f64, Side)> {
    let (low, high) = spec.band_shares()?;
    if spec.band_name.is_empty() {
        return None;
    }
    let half = size.text_width(&spec.band_name) / 2.0 / size.width.max(1.0);
    let middle = (low + high) / 2.0;
    Some(if middle - half < 0.0 {
        (0.0, Side::Start)
    } else if middle + half > 1.0 {
        (1.0, Side::End)
    } else {
        (middle, Side::Middle)
    })
}

#[cfg(test)]
mod tests {
    use super::{ChartLayout, Letters, PlotSize};
    use crate::chart::{Axis, ChartSpec, Series, Style};

    fn curve(f: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
        (0..101)
            .map(|i| 2_318.5 + 2.475 * f64::from(i))
            .map(|x| (x, f((x - 2_442.0) / 124.0)))
            .collect()
    }

    pub(crate) fn two_curves(worst: f64) -> ChartSpec {
        let mut spec = ChartSpec::new(Axis::frequency_mhz(2_318.5, 2_566.0), Axis::vswr(worst));
        spec.band = Some((2_400.0, 2_483.5));
        spec.band_name = "your band".into();
        spec.limits = vec![1.5];
        spec.series = vec![
            Series::new("best", Style::This, curve(|x| 1.02 + 0.4 * x * x)),
            Series::new("28.4 at 45.0", Style::Compared, curve(|x| 1.33 + 0.2 * x)),
        ];
        spec
    }

    fn assert_apart(spec: &ChartSpec, size: PlotSize) {
        let layout = ChartLayout::new(spec, size);
        let boxes = layout.boxes(spec);
        for (i, one) in boxes.iter().enumerate() {
            for other in boxes.iter().skip(i + 1) {
                assert!(!one.meets(other), "{one:?} {other:?} at {size:?}");
            }
        }
    }

    #[test]
    fn boxes_of_labels_do_not_meet() {
        for width in [200.0, 260.0, 300.0, 420.0, 560.0, 900.0] {
            for letter in [12.0, 13.0, 16.0, 20.0, 26.0] {
                let size = PlotSize {
                    width,
                    height: 176.0,
                    letter,
                };
                for worst in [1.2, 1.9, 2.7, 7.0, 40.0] {
                    assert_apart(&two_curves(worst), size);
                }
                let mut wide = two_curves(1.5);
                wide.x = Axis::frequency_mhz(800.0, 5_900.0);
                wide.band = Some((805.0, 830.0));
                assert_apart(&wide, size);
                let mut angles = ChartSpec::new(
                    Axis::new("Angle", "°", -180.0, 180.0),
                    Axis::holding("Gain", "dBi", [-32.7, 7.9]),
                );
                angles.series = vec![Series::new(
                    "along the wire",
                    Style::This,
                    vec![(-180.0, -12.0), (0.0, 7.9), (180.0, -12.0)],
                )];
                assert_apart(&angles, size);
                let far = ChartSpec::new(
                    Axis::new("Distance", "m", 1.0, 20_000.0).logarithmic(),
                    Axis::holding("Level", "dBm", [-100.0, -20.0]),
                );
                assert_apart(&far, size);
            }
        }
    }

    #[test]
    fn there_are_four_to_six_ticks_on_a_phone() {
        let layout = ChartLayout::new(&two_curves(1.4), PlotSize::FIRST);
        let said =
            |ticks: &[super::TickPlace]| ticks.iter().filter(|tick| tick.text.is_some()).count();
        assert!(
            (4..=6).contains(&said(&layout.x_ticks)),
            "{:?}",
            layout.x_ticks
        );
        assert!(
            (4..=6).contains(&said(&layout.y_ticks)),
            "{:?}",
            layout.y_ticks
        );
        assert_eq!(layout.y_letters(), 3);
    }

    #[test]
    fn boxes_that_share_an_edge_do_not_meet() {
        let one = Letters::about(0.0, 0.0, 10.0, 10.0);
        assert!(!one.meets(&Letters::about(10.0, 0.0, 10.0, 10.0)));
        assert!(one.meets(&Letters::about(9.9, 9.9, 10.0, 10.0)));
    }
}
