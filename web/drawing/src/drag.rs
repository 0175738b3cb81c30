//! Moving the probe by hand: from px on the glass, or keys, to whole
//! micrometres inside the can.

use tinwave_core::design::Design;
use tinwave_core::design_error::Field;

/// Step of a drag or of one arrow key: what a maker can mark and file.
pub const STEP_UM: u32 = 100;
/// Step with the shift key.
pub const LARGE_STEP_UM: u32 = 1_000;
/// Step of page up and page down.
pub const PAGE_STEP_UM: u32 = 5_000;
/// Shortest probe and least distance that a drag gives.
const LEAST_UM: u32 = 1_000;

/// Where in a movement an edit stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DragPhase {
    /// The hand has taken hold; the value is still the old one.
    Start,
    /// The value has changed.
    Move,
    /// The hand has let go: the movement is one step of the history.
    End,
}

/// One step of a movement of the probe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DragEdit {
    /// [`Field::ProbeLength`] or [`Field::BackshortDistance`].
    pub field: Field,
    /// The value wanted, micrometres, within [`ProbeLimits`].
    pub um: u32,
    /// Where in the movement.
    pub phase: DragPhase,
}

/// A key that moves a handle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HandleKey {
    /// More by so many micrometres.
    More(u32),
    /// Less by so many micrometres.
    Less(u32),
    /// To the lower limit.
    Least,
    /// To the upper limit.
    Most,
}

impl HandleKey {
    /// From the name of a key (`KeyboardEvent.key`) and whether shift is held.
    #[must_use]
    pub fn from_key(key: &str, shift: bool) -> Option<Self> {
        let step = if shift { LARGE_STEP_UM } else { STEP_UM };
        match key {
            "ArrowRight" | "ArrowUp" => Some(Self::More(step)),
            "ArrowLeft" | "ArrowDown" => Some(Self::Less(step)),
            "PageUp" => Some(Self::More(PAGE_STEP_UM)),
            "PageDown" => Some(Self::Less(PAGE_STEP_UM)),
            "Home" => Some(Self::Least),
            "End" => Some(Self::Most),
            _ => None,
        }
    }
}

/// Range of one handle, micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HandleRange {
    /// Least.
    pub low_um: u32,
    /// Most.
    pub high_um: u32,
}

impl HandleRange {
    /// The range of a probe's length or distance in its can: the tip stays a
    /// wire's radius short of the far wall, the wire inside the can's length.
    #[must_use]
    pub fn of(design: &Design, field: Field) -> Self {
        let radius = design.probe.wire_diameter_um / 2;
        let whole = match field {
            Field::BackshortDistance => design.can.open_length_um,
            _ => design.can.inside_diameter_um,
        };
        let high = whole.saturating_sub(radius) / STEP_UM * STEP_UM;
        Self {
            low_um: LEAST_UM,
            high_um: high.max(LEAST_UM),
        }
    }

    /// A wanted value (may be negative or far out) on the step's grid and in range.
    #[must_use]
    pub fn nearest(self, wanted_um: f64) -> u32 {
        let step = f64::from(STEP_UM);
        let snapped = (wanted_um / step).round() * step;
        let clamped = snapped
            .max(f64::from(self.low_um))
            .min(f64::from(self.high_um));
        // In range by the clamp; a NaN becomes 0 and then the lower limit.
        (clamped as u32).max(self.low_um)
    }

    /// The value after a key. Arrow steps first go to the grid, so that 31.04
    /// becomes 31.1, not 31.14.
    #[must_use]
    pub fn after_key(self, value_um: u32, key: HandleKey) -> u32 {
        match key {
            HandleKey::Least => self.low_um,
            HandleKey::Most => self.high_um,
            HandleKey::More(step) => {
                let grid = value_um / STEP_UM * STEP_UM;
                grid.saturating_add(step).clamp(self.low_um, self.high_um)
            }
            HandleKey::Less(step) => {
                let grid = value_um.div_ceil(STEP_UM).saturating_mul(STEP_UM);
                grid.saturating_sub(step).clamp(self.low_um, self.high_um)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{HandleKey, HandleRange};
    use crate::section_sheet::tests::orchard_gate;
    use tinwave_core::design_error::Field;

    #[test]
    fn the_probe_stays_in_its_can() {
        let design = orchard_gate();
        let length = HandleRange::of(&design, Field::ProbeLength);
        // 87 mm less half of 1.6 mm wire.
        assert_eq!((length.low_um, length.high_um), (1_000, 86_200));
        let distance = HandleRange::of(&design, Field::BackshortDistance);
        assert_eq!((distance.low_um, distance.high_um), (1_000, 149_200));
        assert_eq!(length.nearest(-5e9), 1_000);
        assert_eq!(length.nearest(5e9), 86_200);
        assert_eq!(length.nearest(f64::NAN), 1_000);
        assert_eq!(length.nearest(31_049.0), 31_000);
        assert_eq!(length.nearest(31_051.0), 31_100);
    }

    #[test]
    fn keys_step_by_a_tenth_one_and_five_millimetres() {
        let range = HandleRange {
            low_um: 1_000,
            high_um: 86_200,
        };
        let press = |name, shift| HandleKey::from_key(name, shift);
        let after = |value, key: Option<HandleKey>| key.map(|k| range.after_key(value, k));
        assert_eq!(after(31_000, press("ArrowUp", false)), Some(31_100));
        assert_eq!(after(31_000, press("ArrowLeft", false)), Some(30_900));
        assert_eq!(after(31_000, press("ArrowRight", true)), Some(32_000));
        assert_eq!(after(31_000, press("PageDown", false)), Some(26_000));
        assert_eq!(after(31_000, press("Home", false)), Some(1_000));
        assert_eq!(after(31_000, press("End", false)), Some(86_200));
        assert_eq!(after(31_000, press("Tab", false)), None);
        // Off the grid: to the next tenth first.
        assert_eq!(after(31_040, press("ArrowUp", false)), Some(31_100));
        assert_eq!(after(31_040, press("ArrowDown", false)), Some(31_000));
        assert_eq!(after(1_000, press("ArrowDown", false)), Some(1_000));
        assert_eq!(after(86_150, press("ArrowUp", true)), Some(86_200));
    }
}
