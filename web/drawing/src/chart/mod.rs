//! Charts as data: what there is to draw, and where each letter of it goes.
//!
//! A [`ChartSpec`] says what a chart shows, in its own units. A [`ChartLayout`] places
//! ticks and names on a plot of a certain size, so that no two letters meet and no name
//! lies on a curve. Neither knows of a browser.
//!
//! ```
//! use tinwave_drawing::chart::{Axis, ChartSpec, Series, Style};
//!
//! let mut spec = ChartSpec::new(Axis::frequency_mhz(2_300.0, 2_560.0), Axis::vswr(1.4));
//! spec.band = Some((2_400.0, 2_483.5));
//! spec.band_name = "your band".to_owned();
//! spec.limits = vec![1.5];
//! spec.series = vec![
//!     Series::new("best", Style::This, vec![(2_300.0, 1.3), (2_560.0, 1.2)]),
//!     Series::new("as cut", Style::Compared, vec![(2_300.0, 1.5), (2_560.0, 1.4)]),
//! ];
//! assert_eq!(spec.rest(), 2_441.75);
//! ```

mod axis;
mod layout;
mod name_place;
mod reading;
mod runs;
mod series;
mod ticks;

pub use axis::{Axis, Scale};
pub use layout::{ABOVE_EM, BELOW_EM, BESIDE_PX, ChartLayout, Letters, PlotSize, Side, TickPlace};
pub use name_place::NamePlace;
pub use reading::{Reading, ReadingKey, TableRow, Value};
pub use runs::{Run, runs};
pub use series::{Mark, Range, Series, Style};
pub use ticks::{decimals_of, log_ticks, nice_step, nice_ticks};

/// What a chart shows.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartSpec {
    /// Along.
    pub x: Axis,
    /// Up.
    pub y: Axis,
    /// Shaded stretches between two curves, behind everything.
    pub ranges: Vec<Range>,
    /// Curves; the first is drawn last, over the others.
    pub series: Vec<Series>,
    /// A stretch of the x axis that is shaded.
    pub band: Option<(f64, f64)>,
    /// What that stretch is, above the plot.
    pub band_name: String,
    /// Horizontal lines that must not be passed, dotted.
    pub limits: Vec<f64>,
    /// Single points that stand out.
    pub marks: Vec<Mark>,
    /// Where the reading line rests; the band's middle where nothing is said.
    pub rest: Option<f64>,
}

impl ChartSpec {
    /// An empty plot over two axes.
    #[must_use]
    pub const fn new(x: Axis, y: Axis) -> Self {
        Self {
            x,
            y,
            ranges: Vec::new(),
            series: Vec::new(),
            band: None,
            band_name: String::new(),
            limits: Vec::new(),
            marks: Vec::new(),
            rest: None,
        }
    }

    /// Whether there is nothing to see but the grid.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        let seen = |series: &Series| {
            series
                .points
                .iter()
                .any(|(x, y)| x.is_finite() && y.is_finite())
        };
        !self.series.iter().any(seen)
    }

    /// Where the reading line rests.
    #[must_use]
    pub fn rest(&self) -> f64 {
        let middle = |(low, high): (f64, f64)| (low + high) / 2.0;
        let rest = self
            .rest
            .or(self.band.map(middle))
            .unwrap_or_else(|| self.x.value(0.5));
        self.x.kept(rest)
    }

    /// The shaded stretch as shares of the width; `None` where it is off the plot.
    #[must_use]
    pub fn band_shares(&self) -> Option<(f64, f64)> {
        let (low, high) = self.band?;
        let ends = (
            self.x.share(low).clamp(0.0, 1.0),
            self.x.share(high).clamp(0.0, 1.0),
        );
        (ends.1 > ends.0).then_some(ends)
    }
}
