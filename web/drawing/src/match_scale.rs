//! Vertical scale of the match chart: standing-wave ratio, or return loss.

use tinwave_core::match_band::SweepPoint;
use tinwave_core::reflection::{magnitude_of_vswr, return_loss_db};

/// What the match chart shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Quantity {
    /// Voltage standing-wave ratio, 1 at the bottom.
    #[default]
    Vswr,
    /// Return loss, dB. Zero is at the top, so that good is low on both scales.
    ReturnLoss,
}

/// A vertical scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MatchScale {
    /// What is shown.
    pub quantity: Quantity,
    /// Value at the bottom.
    pub bottom: f64,
    /// Value at the top.
    pub top: f64,
}

/// Lines that every maker looks for.
pub const LIMITS: [f64; 2] = [1.5, 2.0];
/// Tops of the VSWR scale: the first that holds the band's worst is taken.
const TOPS: [f64; 4] = [3.0, 5.0, 10.0, 20.0];
/// Ends of the return-loss scale, dB.
const DEEPEST: [f64; 3] = [20.0, 30.0, 40.0];

impl MatchScale {
    /// The scale that shows the worst VSWR of the band with room above it.
    #[must_use]
    pub fn new(quantity: Quantity, worst_vswr: f64, best_vswr: f64) -> Self {
        match quantity {
            Quantity::Vswr => {
                let top = TOPS.into_iter().find(|top| worst_vswr <= top * 0.92);
                Self {
                    quantity,
                    bottom: 1.0,
                    top: top.unwrap_or(20.0),
                }
            }
            Quantity::ReturnLoss => {
                let best = return_loss_db(magnitude_of_vswr(best_vswr.max(1.0)));
                let deepest = DEEPEST.into_iter().find(|deepest| best <= *deepest);
                Self {
                    quantity,
                    bottom: deepest.unwrap_or(40.0),
                    top: 0.0,
                }
            }
        }
    }

    /// A VSWR as the quantity shown.
    #[must_use]
    pub fn value(&self, vswr: f64) -> f64 {
        match self.quantity {
            Quantity::Vswr => vswr,
            Quantity::ReturnLoss => return_loss_db(magnitude_of_vswr(vswr.max(1.0))),
        }
    }

    /// Height of a VSWR over the bottom, 0 to 1; what lies beyond stays at the edge.
    #[must_use]
    pub fn height(&self, vswr: f64) -> f64 {
        let part = (self.value(vswr) - self.bottom) / (self.top - self.bottom);
        if part.is_nan() {
            1.0
        } else {
            part.clamp(0.0, 1.0)
        }
    }

    /// Values at which the scale is labelled, bottom first.
    #[must_use]
    pub fn ticks(&self) -> Vec<f64> {
        match self.quantity {
            Quantity::Vswr => {
                let ticks: &[f64] = match self.top {
                    top if top <= 3.0 => &[1.0, 1.5, 2.0, 2.5, 3.0],
                    top if top <= 5.0 => &[1.0, 1.5, 2.0, 3.0, 4.0, 5.0],
                    top if top <= 10.0 => &[1.0, 2.0, 4.0, 6.0, 8.0, 10.0],
                    _ => &[1.0, 2.0, 5.0, 10.0, 15.0, 20.0],
                };
                ticks.to_vec()
            }
            Quantity::ReturnLoss => {
                // Deepest first; at most 40 by construction.
                let steps = (self.bottom / 5.0) as u32;
                let every = if steps > 4 { 10.0 } else { 5.0 };
                (0..=(self.bottom / every) as u32)
                    .rev()
                    .map(|i| every * f64::from(i))
                    .collect()
            }
        }
    }

    /// Height of a value of the quantity shown (a tick), 0 to 1.
    #[must_use]
    pub fn tick_height(&self, value: f64) -> f64 {
        ((value - self.bottom) / (self.top - self.bottom)).clamp(0.0, 1.0)
    }
}

/// Best VSWR among points.
#[must_use]
pub fn best_vswr(points: &[SweepPoint]) -> Option<(u32, f64)> {
    points
        .iter()
        .filter_map(|point| Some((point.frequency_khz, point.at?.vswr)))
        .min_by(|a, b| a.1.total_cmp(&b.1))
}

#[cfg(test)]
mod tests {
    use super::{MatchScale, Quantity};

    #[test]
    fn the_scale_holds_the_worst_point() {
        for (worst, top) in [(1.3, 3.0), (2.9, 5.0), (7.0, 10.0), (500.0, 20.0)] {
            assert_eq!(MatchScale::new(Quantity::Vswr, worst, 1.1).top, top);
        }
        assert_eq!(MatchScale::new(Quantity::Vswr, f64::NAN, 1.0).top, 20.0);
    }

    /// VSWR 2 is 9.54 dB and VSWR 1.5 is 13.98 dB of return loss (any handbook's
    /// conversion table).
    #[test]
    fn return_loss_is_the_handbooks() {
        let scale = MatchScale::new(Quantity::ReturnLoss, 2.0, 1.1);
        assert!((scale.value(2.0) - 9.542).abs() < 1e-3);
        assert!((scale.value(1.5) - 13.979).abs() < 1e-3);
        assert!(scale.height(1.5) < scale.height(2.0));
        assert_eq!(scale.ticks(), [30.0, 20.0, 10.0, 0.0]);
    }

    #[test]
    fn what_is_off_the_scale_stays_at_its_edge() {
        let scale = MatchScale::new(Quantity::Vswr, 1.4, 1.1);
        assert_eq!(scale.height(50.0), 1.0);
        assert_eq!(scale.height(1.0), 0.0);
        assert_eq!(scale.height(2.0), 0.5);
        assert_eq!(scale.height(f64::NAN), 1.0);
    }
}
