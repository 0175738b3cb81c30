//! The diagnosis of a measured can in JSON, schema 1.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use serde::Serialize;
use serde_json::{Value, json};

use super::report::{mm, outside_of, tidy};
use crate::design::Design;
use crate::diagnosis::{
    Advice, AdviceSteps, Conclusion, Diagnosis, DiagnosisError, DiagnosisSettings, Measurement,
    Remedy, diagnose,
};
use crate::dimension::Dimension;

#[derive(Serialize)]
struct DiagnosisOut {
    schema: u32,
    conclusion: &'static str,
    /// The dimensions that the conclusion is about.
    causes: Vec<&'static str>,
    deviations: Vec<DeviationOut>,
    alike: Vec<Value>,
    port_length_mm: Option<[f64; 2]>,
    misfit: f64,
    misfit_as_drawn: f64,
    worst_vswr_now: Option<f64>,
    remedies: Vec<Value>,
}

#[derive(Serialize)]
struct DeviationOut {
    dimension: &'static str,
    unit: &'static str,
    change: f64,
    plus_minus_95_percent: f64,
    measured: bool,
}

/// Fits a measurement of a can made after a design, and writes what was found.
///
/// # Errors
/// [`DiagnosisError`].
pub fn diagnosis_json(
    design: &Design,
    measurement: &Measurement,
    settings: DiagnosisSettings,
) -> Result<String, DiagnosisError> {
    design.check()?;
    let outside = outside_of(design);
    let found = diagnose(design, outside.as_ref(), measurement, settings)?;
    let mut steps = AdviceSteps::new(design, outside.as_ref(), &found)?;
    while steps.step() {}
    let out = diagnosis_out(&found, &steps.finish());
    // Serialising plain structs of numbers and text cannot fail.
    Ok(serde_json::to_string_pretty(&out).unwrap_or_default())
}

/// A dimension's key, its unit in files, and units per SI unit.
pub(super) const fn key(dimension: Dimension) -> (&'static str, &'static str, f64) {
    match dimension {
        Dimension::ProbeLength => ("length", "mm", 1e3),
        Dimension::BackshortDistance => ("backshort_distance", "mm", 1e3),
        Dimension::InsideDiameter => ("inside_diameter", "mm", 1e3),
        Dimension::HoleDiameter => ("hole_diameter", "mm", 1e3),
        Dimension::ShuntCapacitance => ("shunt", "pF", 1e12),
        Dimension::OpenLength => ("open_length", "mm", 1e3),
        Dimension::WireDiameter => ("wire_diameter", "mm", 1e3),
    }
}

fn diagnosis_out(found: &Diagnosis, advice: &Advice) -> DiagnosisOut {
    let (conclusion, causes): (_, &[Dimension]) = match &found.conclusion {
        Conclusion::AsDrawn => ("as_drawn", &[]),
        Conclusion::OneCause(one) => ("one_cause", core::slice::from_ref(one)),
        Conclusion::CannotTell(several) => ("cannot_tell", several),
        Conclusion::SeveralTogether => ("several_together", &[]),
        Conclusion::Unexplained => ("unexplained", &[]),
    };
    DiagnosisOut {
        schema: 1,
        conclusion,
        causes: causes.iter().map(|cause| key(*cause).0).collect(),
        deviations: found
            .estimates
            .iter()
            .map(|estimate| {
                let (dimension, unit, per_si) = key(estimate.dimension);
                DeviationOut {
                    dimension,
                    unit,
                    change: tidy(estimate.change * per_si),
                    plus_minus_95_percent: tidy(2.0 * estimate.sd * per_si),
                    measured: estimate.measured,
                }
            })
            .collect(),
        alike: found
            .alike
            .iter()
            .map(|(one, other, correlation)| {
                json!([key(*one).0, key(*other).0, tidy(*correlation)])
            })
            .collect(),
        port_length_mm: found
            .port_length_m
            .map(|(length, sd)| [tidy(length * 1e3), tidy(2.0 * sd * 1e3)]),
        misfit: tidy(found.misfit),
        misfit_as_drawn: tidy(found.misfit_as_drawn),
        worst_vswr_now: advice.worst_vswr_now.map(tidy),
        remedies: advice.remedies.iter().map(remedy_out).collect(),
    }
}

fn remedy_out((remedy, worst_vswr): &(Remedy, f64)) -> Value {
    let mut out = match remedy {
        Remedy::Leave => json!({"do": "leave"}),
        Remedy::Trim { whole_um, safe_um } => {
            json!({"do": "trim", "whole_mm": mm(*whole_um), "safe_mm": mm(*safe_um)})
        }
        Remedy::Lengthen { by_um } => json!({"do": "lengthen", "by_mm": mm(*by_um)}),
        Remedy::Move {
            backshort_distance_um,
            length_um,
        } => json!({
            "do": "move",
            "backshort_distance_mm": mm(*backshort_distance_um),
            "length_mm": mm(*length_um),
        }),
        Remedy::AddScrew(screw) => json!({
            "do": "add_screw",
            "axial_mm": mm(screw.axial_um),
            "angle_deg": f64::from(screw.angle_millideg) / 1e3,
            "depth_mm": mm(screw.depth_um),
            "diameter_mm": mm(screw.diameter_um),
        }),
    };
    if let Some(map) = out.as_object_mut() {
        let worst = Some(*worst_vswr).filter(|vswr| vswr.is_finite()).map(tidy);
        map.insert("worst_vswr_after".to_string(), worst.into());
    }
    out
}
