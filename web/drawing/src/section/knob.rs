//! Moving the wire's tip by hand: from px on the glass, or keys, to whole
//! micrometres inside the can.

use tinwave_core::design::{Design, Micrometres};

/// Step of a drag or of one arrow key: what a maker can mark and file.
pub const STEP_UM: u32 = 100;
/// Step with the shift key.
pub const LARGE_STEP_UM: u32 = 1_000;
/// Shortest wire and least distance that a hand gives.
const LEAST_UM: u32 = 1_000;

/// The cut that the tip stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tip {
    /// Wire inside the can.
    pub length_um: Micrometres,
    /// From the back wall.
    pub distance_um: Micrometres,
}

/// A key that moves the tip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TipKey {
    /// Longer by so much; shorter where below zero.
    Longer(i32),
    /// Farther from the back wall by so much; nearer where below zero.
    Farther(i32),
}

impl TipKey {
    /// From the name of a key (`KeyboardEvent.key`) and whether shift is held.
    #[must_use]
    pub fn from_key(key: &str, shift: bool) -> Option<Self> {
        let step = if shift { LARGE_STEP_UM } else { STEP_UM }.cast_signed();
        match key {
            "ArrowUp" => Some(Self::Longer(step)),
            "ArrowDown" => Some(Self::Longer(-step)),
            "ArrowRight" => Some(Self::Farther(step)),
            "ArrowLeft" => Some(Self::Farther(-step)),
            _ => None,
        }
    }
}

/// How far the tip goes in a can.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TipRange {
    /// Shortest and longest wire.
    pub length_um: (Micrometres, Micrometres),
    /// Least and most distance.
    pub distance_um: (Micrometres, Micrometres),
}

impl TipRange {
    /// The tip stays a wire's radius short of the far wall, the wire inside the can's
    /// length.
    #[must_use]
    pub fn of(design: &Design) -> Self {
        let radius = design.probe.wire_diameter_um / 2;
        let up_to = |whole: Micrometres| {
            let most = whole.saturating_sub(radius) / STEP_UM * STEP_UM;
            (LEAST_UM, most.max(LEAST_UM))
        };
        Self {
            length_um: up_to(design.can.inside_diameter_um),
            distance_um: up_to(design.can.open_length_um),
        }
    }
}

impl Tip {
    /// Where a design has it.
    #[must_use]
    pub const fn of(design: &Design) -> Self {
        Self {
            length_um: design.probe.length_um,
            distance_um: design.probe.backshort_distance_um,
        }
    }

    /// The tip moved by a hand (by any amount), on the grid and in range. What was not
    /// moved stays as it is.
    #[must_use]
    pub fn moved(self, range: TipRange, longer_um: f64, farther_um: f64) -> Self {
        Self {
            length_um: nearest(self.length_um, longer_um, range.length_um),
            distance_um: nearest(self.distance_um, farther_um, range.distance_um),
        }
    }

    /// The tip after a key. A step first goes to the grid, so that 31.04 becomes 31.1,
    /// not 31.14.
    #[must_use]
    pub fn after_key(self, range: TipRange, key: TipKey) -> Self {
        match key {
            TipKey::Longer(by) => Self {
                length_um: stepped(self.length_um, by, range.length_um),
                ..self
            },
            TipKey::Farther(by) => Self {
                distance_um: stepped(self.distance_um, by, range.distance_um),
                ..self
            },
        }
    }
}

fn nearest(from: Micrometres, by: f64, (low, high): (Micrometres, Micrometres)) -> Micrometres {
    let step = f64::from(STEP_UM);
    if !by.is_finite() || by.abs() < step / 2.0 {
        return from;
    }
    let snapped = ((f64::from(from) + by) / step).round() * step;
    // In range by the clamp.
    snapped.clamp(f64::from(low), f64::from(high)) as Micrometres
}

fn stepped(from: Micrometres, by: i32, (low, high): (Micrometres, Micrometres)) -> Micrometres {
    let next = if by > 0 {
        (from / STEP_UM * STEP_UM).saturating_add(by.unsigned_abs())
    } else {
        (from.div_ceil(STEP_UM) * STEP_UM).saturating_sub(by.unsigned_abs())
    };
    next.clamp(low, high)
}

#[cfg(test)]
mod tests {
    use super::{Tip, TipKey, TipRange};
    use crate::section::tests::orchard_gate;

    const TIP: Tip = Tip {
        length_um: 31_040,
        distance_um: 51_400,
    };

    #[test]
    fn the_tip_stays_in_its_can() {
        let range = TipRange::of(&orchard_gate());
        // 87 mm and 150 mm less half of 1.6 mm wire.
        assert_eq!(range.length_um, (1_000, 86_200));
        assert_eq!(range.distance_um, (1_000, 149_200));
        let far = TIP.moved(range, 5e9, -5e9);
        assert_eq!((far.length_um, far.distance_um), (86_200, 1_000));
        let still = TIP.moved(range, f64::NAN, 12.0);
        assert_eq!(still, TIP);
        let moved = TIP.moved(range, 1_000.0, 0.0);
        assert_eq!((moved.length_um, moved.distance_um), (32_000, 51_400));
    }

    #[test]
    fn keys_step_by_a_tenth_and_by_one_millimetre() {
        let range = TipRange::of(&orchard_gate());
        let press = |name, shift| {
            let key = TipKey::from_key(name, shift)?;
            let tip = TIP.after_key(range, key);
            Some((tip.length_um, tip.distance_um))
        };
        // Off the grid: to the next tenth first.
        assert_eq!(press("ArrowUp", false), Some((31_100, 51_400)));
        assert_eq!(press("ArrowDown", false), Some((31_000, 51_400)));
        assert_eq!(press("ArrowRight", true), Some((31_040, 52_400)));
        assert_eq!(press("ArrowLeft", false), Some((31_040, 51_300)));
        assert_eq!(press("Tab", false), None);
    }
}
