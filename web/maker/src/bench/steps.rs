//! The steps that a design needs, in the order of the work.

use tinwave_core::design::Mouth;
use tinwave_core::ruler::RulerFigures;

use super::fixing::{Clamp, clamp_of};
use crate::workpiece::Workpiece;

/// A step of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    /// Mark the middle of the hole.
    Mark,
    /// Drill it.
    Drill,
    /// Rub the wall bright.
    RubOff,
    /// Cut the wire.
    CutWire,
    /// Solder it to the socket, or bare it where the cable's own wire stands inside.
    Solder,
    /// Slide the sleeve on.
    Sleeve,
    /// Fix the socket to the can.
    Fix,
    /// Put the tuning screws in.
    Screws,
    /// Make and fix what stands at the mouth.
    MouthPart,
    /// Cap the mouth.
    Cap,
    /// What to see to before it transmits or goes up: always the last.
    Before,
}

/// What a step was done to: where it differs from what is asked now, the step is to be
/// looked at again.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stamp(pub Vec<u32>);

impl Step {
    /// Every step, in order.
    pub const ALL: [Self; 11] = [
        Self::Mark,
        Self::Drill,
        Self::RubOff,
        Self::CutWire,
        Self::Solder,
        Self::Sleeve,
        Self::Fix,
        Self::Screws,
        Self::MouthPart,
        Self::Cap,
        Self::Before,
    ];

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Mark => "mark",
            Self::Drill => "drill",
            Self::RubOff => "rub",
            Self::CutWire => "cut",
            Self::Solder => "solder",
            Self::Sleeve => "sleeve",
            Self::Fix => "fix",
            Self::Screws => "screws",
            Self::MouthPart => "mouth",
            Self::Cap => "cap",
            Self::Before => "before",
        }
    }

    /// The step of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|step| step.key() == key)
    }

    /// Whether it changes the metal: from then on the cut is made.
    #[must_use]
    pub const fn makes_the_cut(self) -> bool {
        matches!(self, Self::Drill | Self::CutWire)
    }

    /// What it is done to in that work.
    #[must_use]
    pub fn stamp(self, work: &Workpiece) -> Stamp {
        let ruler = RulerFigures::new(&work.design);
        let hole = ruler.hole_from_closed_rim_um;
        let drill = work.connector.drill_um().unwrap_or(0);
        let wire = ruler.wire_from_connector_face_um;
        Stamp(match self {
            Self::Mark => vec![hole],
            Self::Drill => vec![drill, hole],
            Self::RubOff | Self::Fix => vec![drill, work.connector.mounting as u32],
            Self::CutWire => vec![wire],
            Self::Solder => vec![work.design.probe.wire_diameter_um],
            Self::Sleeve => {
                let sleeve = work.design.probe.sleeve;
                sleeve
                    .map(|sleeve| sleeve.outside_diameter_um)
                    .into_iter()
                    .collect()
            }
            Self::Screws => {
                let screws = work.design.screws.iter();
                screws
                    .flat_map(|screw| [screw.axial_um, screw.depth_um])
                    .collect()
            }
            Self::MouthPart => match work.design.mouth {
                Mouth::Open | Mouth::Absorbing => Vec::new(),
                Mouth::Funnel {
                    mouth_diameter_um,
                    half_angle_millideg,
                } => vec![mouth_diameter_um, half_angle_millideg],
                Mouth::Flange {
                    outside_diameter_um,
                } => vec![outside_diameter_um],
                Mouth::Choke {
                    outside_diameter_um,
                    depth_um,
                } => vec![outside_diameter_um, depth_um],
            },
            Self::Cap | Self::Before => Vec::new(),
        })
    }
}

/// The steps of a work, in order. A cable that is soldered to the can is fixed and
/// soldered in one.
#[must_use]
pub fn steps(work: &Workpiece) -> Vec<Step> {
    let design = &work.design;
    let is_due = |step: &Step| match step {
        Step::Solder => clamp_of(work.connector) != Clamp::Solder,
        Step::Sleeve => design.probe.sleeve.is_some(),
        Step::Screws => !design.screws.is_empty(),
        Step::MouthPart => !matches!(design.mouth, Mouth::Open | Mouth::Absorbing),
        _ => true,
    };
    Step::ALL.into_iter().filter(is_due).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::connectors::{ConnectorChoice, ConnectorKind, Mounting};
    use crate::example::example;
    use tinwave_core::design::Sleeve;

    #[test]
    fn what_the_design_lacks_is_no_step_and_the_last_is_always_the_same() {
        let mut work = example();
        let plain = steps(&work);
        assert_eq!(plain.len(), 8);
        assert_eq!(plain.first(), Some(&Step::Mark));
        assert_eq!(plain.last(), Some(&Step::Before));
        work.design.mouth = Mouth::Flange {
            outside_diameter_um: 150_000,
        };
        work.design.probe.sleeve = Some(Sleeve {
            outside_diameter_um: 3_000,
            permittivity_milli: 2_250,
        });
        work.connector = ConnectorChoice {
            kind: ConnectorKind::Cable,
            mounting: Mounting::Soldered,
        };
        let more = steps(&work);
        assert!(more.contains(&Step::MouthPart) && more.contains(&Step::Sleeve));
        assert!(!more.contains(&Step::Solder));
        assert_eq!(more.last(), Some(&Step::Before));
    }

    #[test]
    fn every_step_is_found_by_its_key() {
        for step in Step::ALL {
            assert_eq!(Step::from_key(step.key()), Some(step));
        }
    }

    #[test]
    fn a_moved_hole_changes_what_was_drilled_but_not_the_wire() {
        let work = example();
        let mut moved = work.clone();
        moved.design.probe.backshort_distance_um += 1_000;
        assert_ne!(Step::Mark.stamp(&work), Step::Mark.stamp(&moved));
        assert_ne!(Step::Drill.stamp(&work), Step::Drill.stamp(&moved));
        assert_eq!(Step::CutWire.stamp(&work), Step::CutWire.stamp(&moved));
    }
}
