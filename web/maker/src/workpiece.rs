//! What the page edits, keeps, links and undoes: a design and its connector.

use tinwave_core::design::{Design, Mouth, Sleeve};
use tinwave_core::design_error::{DesignError, Field};

use crate::connectors::ConnectorChoice;

/// Longest name, in characters.
pub const LONGEST_NAME: usize = 40;

/// Permittivity of a sleeve that was given only a diameter: polyethylene,
/// 2.25 (A. von Hippel, *Dielectric Materials and Applications*, 1954, from
/// memory), in thousandths.
const USUAL_SLEEVE_MILLI: u32 = 2_250;

/// Whether the cut (the wire's length and its distance from the back wall) is the
/// maker's own.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Cut {
    /// It is the best for can, wire and band, and changes with them.
    FollowsBest,
    /// It stays as it was typed, dragged or cut.
    #[default]
    AsCut,
}

/// A design, the connector that feeds it, and whose the cut is.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Workpiece {
    /// The design.
    pub design: Design,
    /// Its connector.
    pub connector: ConnectorChoice,
    /// Whether the cut follows the best.
    pub cut: Cut,
}

/// A name fit to keep: one line, no space at its ends, at most
/// [`LONGEST_NAME`] characters.
#[must_use]
pub fn clean_name(text: &str) -> String {
    let line: String = text
        .chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    let short: String = line.trim().chars().take(LONGEST_NAME).collect();
    short.trim_end().to_owned()
}

impl Workpiece {
    /// One number of the design in its own whole units; `None` where the
    /// design has no such number (no sleeve, no funnel, the sweep or hole left
    /// to the default, or one of many screws).
    #[must_use]
    pub fn field(&self, field: Field) -> Option<i64> {
        let Design {
            band,
            can,
            probe,
            screws,
            ..
        } = &self.design;
        let value = match field {
            Field::InsideDiameter => can.inside_diameter_um,
            Field::OpenLength => can.open_length_um,
            Field::Wall => can.wall_um,
            Field::BaseRecess => can.base_recess_um,
            Field::WireDiameter => probe.wire_diameter_um,
            Field::ProbeLength => probe.length_um,
            Field::BackshortDistance => probe.backshort_distance_um,
            Field::HoleDiameter => probe.hole_diameter_um?,
            Field::Reference => probe.reference_milliohm,
            Field::Shunt => probe.shunt_ff,
            Field::SleeveDiameter => probe.sleeve?.outside_diameter_um,
            Field::SleevePermittivity => probe.sleeve?.permittivity_milli,
            Field::BandLow => band.low_khz,
            Field::BandHigh => band.high_khz,
            Field::SweepLow => self.design.sweep?.low_khz,
            Field::SweepHigh => self.design.sweep?.high_khz,
            Field::SweepPoints => self.design.sweep?.points,
            Field::ScrewCount => u32::try_from(screws.len()).ok()?,
            Field::MouthDiameter | Field::MouthAngle | Field::ChokeDepth => {
                return self.mouth_field(field);
            }
            _ => return None,
        };
        Some(i64::from(value))
    }

    fn mouth_field(&self, field: Field) -> Option<i64> {
        let value = match (self.design.mouth, field) {
            (
                Mouth::Funnel {
                    mouth_diameter_um: diameter,
                    ..
                }
                | Mouth::Flange {
                    outside_diameter_um: diameter,
                }
                | Mouth::Choke {
                    outside_diameter_um: diameter,
                    ..
                },
                Field::MouthDiameter,
            ) => diameter,
            (
                Mouth::Funnel {
                    half_angle_millideg,
                    ..
                },
                Field::MouthAngle,
            ) => half_angle_millideg,
            (Mouth::Choke { depth_um, .. }, Field::ChokeDepth) => depth_um,
            _ => return None,
        };
        Some(i64::from(value))
    }

    /// With one number changed. A hole, sleeve or sweep that was left to the
    /// default becomes a stated one. A number that the design has no place for
    /// is left alone.
    ///
    /// # Errors
    /// [`DesignError`] where the changed design is out of range.
    pub fn with_field(mut self, field: Field, value: i64) -> Result<Self, DesignError> {
        field.check(value)?;
        // Every range of a number that is set here lies within u32.
        if let Ok(number) = u32::try_from(value) {
            place(&mut self.design, field, number);
            self.design.check()?;
        }
        Ok(self)
    }

    /// Changes one number in place, as [`Self::with_field`] does.
    ///
    /// # Errors
    /// [`DesignError`] where the changed design is out of range; the design is
    /// then as it was.
    pub fn set_field(&mut self, field: Field, value: i64) -> Result<(), DesignError> {
        *self = self.clone().with_field(field, value)?;
        Ok(())
    }
}

fn place(design: &mut Design, field: Field, value: u32) {
    match field {
        Field::InsideDiameter => design.can.inside_diameter_um = value,
        Field::OpenLength => design.can.open_length_um = value,
        Field::Wall => design.can.wall_um = value,
        Field::BaseRecess => design.can.base_recess_um = value,
        Field::WireDiameter => design.probe.wire_diameter_um = value,
        Field::ProbeLength => design.probe.length_um = value,
        Field::BackshortDistance => design.probe.backshort_distance_um = value,
        Field::HoleDiameter => design.probe.hole_diameter_um = Some(value),
        Field::Reference => design.probe.reference_milliohm = value,
        Field::Shunt => design.probe.shunt_ff = value,
        Field::BandLow => design.band.low_khz = value,
        Field::BandHigh => design.band.high_khz = value,
        Field::SleeveDiameter | Field::SleevePermittivity => place_sleeve(design, field, value),
        Field::SweepLow | Field::SweepHigh | Field::SweepPoints => {
            place_sweep(design, field, value);
        }
        Field::MouthDiameter | Field::MouthAngle | Field::ChokeDepth => {
            place_mouth(design, field, value);
        }
        _ => {}
    }
}

fn place_sleeve(design: &mut Design, field: Field, value: u32) {
    // A usual wire insulation is about as thick as the wire's radius.
    let wire = design.probe.wire_diameter_um;
    let sleeve = design.probe.sleeve.get_or_insert(Sleeve {
        outside_diameter_um: wire.saturating_add(wire),
        permittivity_milli: USUAL_SLEEVE_MILLI,
    });
    if field == Field::SleeveDiameter {
        sleeve.outside_diameter_um = value;
    } else {
        sleeve.permittivity_milli = value;
    }
}

fn place_sweep(design: &mut Design, field: Field, value: u32) {
    let mut sweep = design.effective_sweep();
    match field {
        Field::SweepLow => sweep.low_khz = value,
        Field::SweepHigh => sweep.high_khz = value,
        _ => sweep.points = value,
    }
    design.sweep = Some(sweep);
}

fn place_mouth(design: &mut Design, field: Field, value: u32) {
    match (&mut design.mouth, field) {
        (
            Mouth::Funnel {
                mouth_diameter_um: diameter,
                ..
            }
            | Mouth::Flange {
                outside_diameter_um: diameter,
            }
            | Mouth::Choke {
                outside_diameter_um: diameter,
                ..
            },
            Field::MouthDiameter,
        ) => *diameter = value,
        (
            Mouth::Funnel {
                half_angle_millideg,
                ..
            },
            Field::MouthAngle,
        ) => *half_angle_millideg = value,
        (Mouth::Choke { depth_um, .. }, Field::ChokeDepth) => *depth_um = value,
        _ => {}
    }
}
