//! Writing the design file.

use alloc::string::String;
use alloc::vec::Vec;

use serde::Serialize;

use super::design_file::THOUSAND;
use crate::design::{Design, Mouth};

#[derive(Serialize)]
struct DesignOut<'a> {
    schema: u32,
    name: &'a str,
    band: BandOut,
    can: CanOut,
    probe: ProbeOut,
    mouth: MouthOut,
    screws: Vec<ScrewOut>,
    #[serde(skip_serializing_if = "Option::is_none")]
    sweep: Option<SweepOut>,
}

#[derive(Serialize)]
struct BandOut {
    low_mhz: f64,
    high_mhz: f64,
}

#[derive(Serialize)]
struct CanOut {
    inside_diameter_mm: f64,
    open_length_mm: f64,
    wall_mm: f64,
    base_recess_mm: f64,
    metal: &'static str,
}

#[derive(Serialize)]
struct ProbeOut {
    wire_diameter_mm: f64,
    length_mm: f64,
    backshort_distance_mm: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    hole_diameter_mm: Option<f64>,
    reference_ohm: f64,
    shunt_pf: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    sleeve: Option<SleeveOut>,
}

#[derive(Serialize)]
struct SleeveOut {
    outside_diameter_mm: f64,
    permittivity: f64,
}

#[derive(Serialize, Default)]
struct MouthOut {
    kind: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    mouth_diameter_mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    half_angle_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    outside_diameter_mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    depth_mm: Option<f64>,
}

#[derive(Serialize)]
struct ScrewOut {
    axial_mm: f64,
    angle_deg: f64,
    depth_mm: f64,
    diameter_mm: f64,
}

#[derive(Serialize)]
struct SweepOut {
    low_mhz: f64,
    high_mhz: f64,
    points: u32,
}

/// Writes a design file that [`super::design_from_json`] reads back unchanged.
#[must_use]
pub fn design_to_json(design: &Design) -> String {
    let per_mille = |whole: u32| f64::from(whole) / THOUSAND;
    let (can, probe) = (&design.can, &design.probe);
    let out = DesignOut {
        schema: 1,
        name: &design.name,
        band: BandOut {
            low_mhz: per_mille(design.band.low_khz),
            high_mhz: per_mille(design.band.high_khz),
        },
        can: CanOut {
            inside_diameter_mm: per_mille(can.inside_diameter_um),
            open_length_mm: per_mille(can.open_length_um),
            wall_mm: per_mille(can.wall_um),
            base_recess_mm: per_mille(can.base_recess_um),
            metal: can.metal.key(),
        },
        probe: ProbeOut {
            wire_diameter_mm: per_mille(probe.wire_diameter_um),
            length_mm: per_mille(probe.length_um),
            backshort_distance_mm: per_mille(probe.backshort_distance_um),
            hole_diameter_mm: probe.hole_diameter_um.map(per_mille),
            reference_ohm: per_mille(probe.reference_milliohm),
            shunt_pf: per_mille(probe.shunt_ff),
            sleeve: probe.sleeve.map(|sleeve| SleeveOut {
                outside_diameter_mm: per_mille(sleeve.outside_diameter_um),
                permittivity: per_mille(sleeve.permittivity_milli),
            }),
        },
        mouth: mouth_out(design.mouth),
        screws: design
            .screws
            .iter()
            .map(|screw| ScrewOut {
                axial_mm: per_mille(screw.axial_um),
                angle_deg: f64::from(screw.angle_millideg) / THOUSAND,
                depth_mm: per_mille(screw.depth_um),
                diameter_mm: per_mille(screw.diameter_um),
            })
            .collect(),
        sweep: design.sweep.map(|sweep| SweepOut {
            low_mhz: per_mille(sweep.low_khz),
            high_mhz: per_mille(sweep.high_khz),
            points: sweep.points,
        }),
    };
    // Serialising plain structs of numbers and text cannot fail.
    serde_json::to_string_pretty(&out).unwrap_or_default()
}

fn mouth_out(mouth: Mouth) -> MouthOut {
    let per_mille = |whole: u32| Some(f64::from(whole) / THOUSAND);
    match mouth {
        Mouth::Open => MouthOut {
            kind: "open",
            ..MouthOut::default()
        },
        Mouth::Absorbing => MouthOut {
            kind: "absorbing",
            ..MouthOut::default()
        },
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => MouthOut {
            kind: "funnel",
            mouth_diameter_mm: per_mille(mouth_diameter_um),
            half_angle_deg: per_mille(half_angle_millideg),
            ..MouthOut::default()
        },
        Mouth::Flange {
            outside_diameter_um,
        } => MouthOut {
            kind: "flange",
            outside_diameter_mm: per_mille(outside_diameter_um),
            ..MouthOut::default()
        },
        Mouth::Choke {
            outside_diameter_um,
            depth_um,
        } => MouthOut {
            kind: "choke",
            outside_diameter_mm: per_mille(outside_diameter_um),
            depth_mm: per_mille(depth_um),
            ..MouthOut::default()
        },
    }
}
