//! The frame of the match chart: margins, axes, and the way back from a place
//! to a point of the sweep.

use tinwave_core::match_band::SweepPoint;

use super::frequency_axis::{FrequencyAxis, Tick};
use super::match_rows::nearest;

/// Room for the vertical scale, CSS px.
pub const PLOT_LEFT: f64 = 36.0;
/// Room on the right.
pub const PLOT_RIGHT: f64 = 12.0;
/// Room above, for what the vertical scale shows.
pub const PLOT_TOP: f64 = 22.0;
/// Room for the frequencies and their unit.
pub const PLOT_BOTTOM: f64 = 38.0;
/// Height of the chart where it is narrow; `pictures.css` has the same.
pub const PLOT_HEIGHT: f64 = 280.0;
/// Narrowest chart that is laid out, CSS px.
const LEAST_WIDTH: f64 = 200.0;

/// Place of the plot on its canvas, CSS px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlotFrame {
    /// Frequencies along it.
    pub axis: FrequencyAxis,
    /// Whole height.
    pub height: f64,
}

impl PlotFrame {
    /// The frame of a sweep on a canvas `width_px` wide; `None` for fewer than
    /// two points.
    #[must_use]
    pub fn new(points: &[SweepPoint], width_px: f64) -> Option<Self> {
        let low = points.first()?.frequency_khz;
        let high = points.last()?.frequency_khz;
        if high <= low {
            return None;
        }
        Some(Self {
            axis: FrequencyAxis {
                low_khz: f64::from(low),
                high_khz: f64::from(high),
                left: PLOT_LEFT,
                right: width_px.max(LEAST_WIDTH) - PLOT_RIGHT,
            },
            height: PLOT_HEIGHT,
        })
    }

    /// Ticks of the frequency axis, clear of the frame's ends.
    #[must_use]
    pub fn ticks(&self) -> Vec<Tick> {
        let least = ((self.axis.right - self.axis.left) / 9.0).max(54.0);
        let mut ticks = self.axis.ticks(least);
        ticks.retain(|tick| tick.x < self.axis.right - 4.0);
        ticks
    }

    /// px of a height between 0 and 1.
    #[must_use]
    pub fn y(&self, height: f64) -> f64 {
        let bottom = self.height - PLOT_BOTTOM;
        bottom - height * (bottom - PLOT_TOP)
    }

    /// The frequency of the sweep's point nearest to a place.
    #[must_use]
    pub fn point_at(&self, x: f64, points: &[SweepPoint]) -> Option<u32> {
        // Within the axis, whose ends are whole kilohertz.
        let khz = self.axis.frequency(x).round() as u32;
        nearest(points, khz).map(|point| point.frequency_khz)
    }
}

/// The frequency so many points further on (or back), from the band's centre
/// where nothing is chosen yet.
#[must_use]
pub fn step(points: &[SweepPoint], from_khz: u32, steps: isize) -> Option<u32> {
    let now = points
        .iter()
        .enumerate()
        .min_by_key(|(_, point)| point.frequency_khz.abs_diff(from_khz))?
        .0;
    let last = points.len().saturating_sub(1);
    let next = now.saturating_add_signed(steps).min(last);
    points.get(next).map(|point| point.frequency_khz)
}

#[cfg(test)]
mod tests {
    use super::{PlotFrame, step};
    use tinwave_core::match_band::SweepPoint;

    fn sweep() -> Vec<SweepPoint> {
        (0..101_u32)
            .map(|i| SweepPoint {
                frequency_khz: 2_318_500 + 2_475 * i,
                at: None,
            })
            .collect()
    }

    #[test]
    fn a_place_gives_the_point_drawn_there() {
        let points = sweep();
        let frame = PlotFrame::new(&points, 360.0);
        let at = |x| frame.and_then(|frame| frame.point_at(x, &points));
        assert_eq!(at(0.0), Some(2_318_500));
        assert_eq!(at(36.0 + 312.0 / 2.0), Some(2_318_500 + 2_475 * 50));
        assert_eq!(at(999.0), Some(2_566_000));
        assert!(PlotFrame::new(&[], 360.0).is_none());
    }

    #[test]
    fn steps_stop_at_the_ends() {
        let points = sweep();
        assert_eq!(step(&points, 2_318_500, -1), Some(2_318_500));
        assert_eq!(step(&points, 2_318_500, 10), Some(2_343_250));
        assert_eq!(step(&points, 2_320_900, 1), Some(2_323_450));
        assert_eq!(step(&points, 9_999_999, 1), Some(2_566_000));
        assert_eq!(step(&[], 1, 1), None);
    }
}
