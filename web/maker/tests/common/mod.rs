//! Designs of every kind for property tests.

use proptest::prelude::*;
use tinwave_core::design::{Band, Can, Design, Mouth, Probe, Screw, Sleeve, Sweep};
use tinwave_core::design_error::Field;
use tinwave_core::metal::Metal;
use tinwave_maker::connectors::{CONNECTORS, ConnectorChoice};
use tinwave_maker::workpiece::{Cut, Workpiece, clean_name};

fn within(field: Field) -> impl Strategy<Value = u32> + Clone {
    let (low, high) = field.range();
    let (low, high) = (
        u32::try_from(low).unwrap_or(0),
        u32::try_from(high).unwrap_or(0),
    );
    // Round values as makers type them, the ends, and anything between.
    prop_oneof![
        low..=high,
        Just(low),
        Just(high),
        (low / 1000..=high / 1000).prop_map(move |mm| (mm * 1000).clamp(low, high)),
    ]
}

fn edges(low: Field, high: Field) -> impl Strategy<Value = (u32, u32)> {
    (within(low), within(high))
        .prop_map(|(one, other)| (one.min(other), one.max(other)))
        .prop_filter("edges differ", |(low, high)| low < high)
}

fn mouth() -> impl Strategy<Value = Mouth> {
    prop_oneof![
        Just(Mouth::Open),
        Just(Mouth::Absorbing),
        (within(Field::MouthDiameter), within(Field::MouthAngle)).prop_map(
            |(mouth_diameter_um, half_angle_millideg)| Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg
            }
        ),
        within(Field::MouthDiameter).prop_map(|outside_diameter_um| Mouth::Flange {
            outside_diameter_um
        }),
        (within(Field::MouthDiameter), within(Field::ChokeDepth)).prop_map(
            |(outside_diameter_um, depth_um)| Mouth::Choke {
                outside_diameter_um,
                depth_um
            }
        ),
    ]
}

fn screw() -> impl Strategy<Value = Screw> {
    (
        within(Field::ScrewAxial),
        -360_000..=360_000_i32,
        within(Field::ScrewDepth),
        within(Field::ScrewDiameter),
    )
        .prop_map(|(axial_um, angle_millideg, depth_um, diameter_um)| Screw {
            axial_um,
            angle_millideg,
            depth_um,
            diameter_um,
        })
}

fn can() -> impl Strategy<Value = Can> {
    (
        within(Field::InsideDiameter),
        within(Field::OpenLength),
        within(Field::Wall),
        within(Field::BaseRecess),
        prop::sample::select(Metal::ALL.to_vec()),
    )
        .prop_map(
            |(inside_diameter_um, open_length_um, wall_um, base_recess_um, metal)| Can {
                inside_diameter_um,
                open_length_um,
                wall_um,
                base_recess_um,
                metal,
            },
        )
}

fn probe() -> impl Strategy<Value = Probe> {
    let sleeve = (
        within(Field::SleeveDiameter),
        within(Field::SleevePermittivity),
    )
        .prop_map(|(outside_diameter_um, permittivity_milli)| Sleeve {
            outside_diameter_um,
            permittivity_milli,
        });
    (
        within(Field::WireDiameter),
        within(Field::ProbeLength),
        within(Field::BackshortDistance),
        prop::option::of(within(Field::HoleDiameter)),
        within(Field::Reference),
        within(Field::Shunt),
        prop::option::of(sleeve),
    )
        .prop_map(
            |(
                wire_diameter_um,
                length_um,
                backshort_distance_um,
                hole,
                reference,
                shunt_ff,
                sleeve,
            )| {
                Probe {
                    wire_diameter_um,
                    length_um,
                    backshort_distance_um,
                    hole_diameter_um: hole,
                    reference_milliohm: reference,
                    shunt_ff,
                    sleeve,
                }
            },
        )
}

fn sweep() -> impl Strategy<Value = Option<Sweep>> {
    prop::option::of(
        (
            edges(Field::SweepLow, Field::SweepHigh),
            within(Field::SweepPoints),
        )
            .prop_map(|((low_khz, high_khz), points)| Sweep {
                low_khz,
                high_khz,
                points,
            }),
    )
}

fn connector() -> impl Strategy<Value = ConnectorChoice> {
    let all: Vec<_> = CONNECTORS
        .iter()
        .flat_map(|known| {
            known.mountings.iter().map(|&mounting| ConnectorChoice {
                kind: known.kind,
                mounting,
            })
        })
        .collect();
    prop::sample::select(all)
}

/// Any workpiece that the core accepts, its name fit to keep.
pub(crate) fn any_workpiece() -> impl Strategy<Value = Workpiece> {
    (
        ".{0,50}",
        edges(Field::BandLow, Field::BandHigh),
        can(),
        probe(),
        mouth(),
        prop::collection::vec(screw(), 0..=8),
        sweep(),
        (
            connector(),
            prop::sample::select(vec![Cut::FollowsBest, Cut::AsCut]),
        ),
    )
        .prop_map(
            |(name, (low_khz, high_khz), can, probe, mouth, screws, sweep, (connector, cut))| {
                Workpiece {
                    design: Design {
                        name: clean_name(&name),
                        band: Band { low_khz, high_khz },
                        can,
                        probe,
                        mouth,
                        screws,
                        sweep,
                    },
                    connector,
                    cut,
                }
            },
        )
}

/// A workpiece as the link corpus states it.
#[allow(dead_code, reason = "only the link's tests describe")]
pub(crate) fn described(work: &Workpiece) -> String {
    let Design {
        name,
        band,
        can,
        probe,
        mouth,
        screws,
        sweep,
    } = &work.design;
    let dash = || "-".to_owned();
    let screws: Vec<_> = screws
        .iter()
        .map(|s| {
            format!(
                "{} {} {} {}",
                s.axial_um, s.angle_millideg, s.depth_um, s.diameter_um
            )
        })
        .collect();
    let mouth = match mouth {
        Mouth::Open => "open".to_owned(),
        Mouth::Absorbing => "absorbing".to_owned(),
        Mouth::Funnel {
            mouth_diameter_um: d,
            half_angle_millideg: a,
        } => format!("funnel {d} {a}"),
        Mouth::Flange {
            outside_diameter_um: d,
        } => format!("flange {d}"),
        Mouth::Choke {
            outside_diameter_um: d,
            depth_um,
        } => format!("choke {d} {depth_um}"),
    };
    format!(
        "{name}; {}-{}; {}x{} ({}, {}) {}; {}x{}@{}; {}; {}; {}; {}; {mouth}; {}; {}; {} {}",
        band.low_khz,
        band.high_khz,
        can.inside_diameter_um,
        can.open_length_um,
        can.wall_um,
        can.base_recess_um,
        can.metal.key(),
        probe.wire_diameter_um,
        probe.length_um,
        probe.backshort_distance_um,
        probe
            .hole_diameter_um
            .map_or_else(dash, |hole| hole.to_string()),
        probe.reference_milliohm,
        probe.shunt_ff,
        probe.sleeve.map_or_else(dash, |s| format!(
            "{}/{}",
            s.outside_diameter_um, s.permittivity_milli
        )),
        screws.join(", "),
        sweep.map_or_else(dash, |s| format!(
            "{}-{}-{}",
            s.low_khz, s.high_khz, s.points
        )),
        work.connector.kind.key(),
        work.connector.mounting.key(),
    )
}
