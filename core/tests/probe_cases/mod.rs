//! Reading of the probe reference cases.

#![allow(dead_code, reason = "each test file uses its part")]

use serde_json::Value;
use tinwave_core::complex::Complex;
use tinwave_core::probe::{Feed, ProbeGeometry, Wire};

/// One case: the geometry and the input impedance over frequency.
pub(crate) struct Case {
    pub(crate) id: String,
    pub(crate) far_end: String,
    pub(crate) geometry: ProbeGeometry,
    /// Pairs of frequency in Hz and impedance in ohm.
    pub(crate) impedance: Vec<(f64, Complex)>,
}

/// Hole of a 50-ohm air line over the wire: `exp(50/59.958)`, rounded as in the
/// finite-element runs.
const HOLE_OVER_WIRE: f64 = 2.302;

/// All cases of a file's text.
pub(crate) fn read(text: &str) -> Vec<Case> {
    let file: Value = serde_json::from_str(text).expect("JSON");
    file["cases"]
        .as_array()
        .expect("cases")
        .iter()
        .map(case)
        .collect()
}

/// A number in millimetres, as metres.
fn metres(value: &Value, key: &str) -> f64 {
    value[key]
        .as_f64()
        .unwrap_or_else(|| panic!("{key} is missing in {value}"))
        * 1e-3
}

fn numbers(value: &Value) -> Vec<f64> {
    let list = value.as_array().expect("a list");
    list.iter().map(|x| x.as_f64().expect("a number")).collect()
}

fn screw(value: &Value) -> Wire {
    Wire {
        radius_m: 0.5 * metres(value, "diameter_mm"),
        insertion_m: metres(value, "depth_mm"),
        axial_m: metres(value, "axial_mm"),
        angle_rad: value["angle_deg"].as_f64().expect("angle_deg").to_radians(),
    }
}

fn case(value: &Value) -> Case {
    let radius_m = 0.5 * metres(value, "wire_diameter_mm");
    let hole_radius_m = match value.get("hole_diameter_mm") {
        Some(_) => 0.5 * metres(value, "hole_diameter_mm"),
        None => HOLE_OVER_WIRE * radius_m,
    };
    let wire = Wire {
        radius_m,
        insertion_m: metres(value, "probe_length_mm"),
        axial_m: metres(value, "backshort_distance_mm"),
        angle_rad: 0.0,
    };
    let frequencies = numbers(&value["f_ghz"]);
    let resistance = numbers(&value["z_re_ohm"]);
    let reactance = numbers(&value["z_im_ohm"]);
    let impedance = frequencies
        .iter()
        .zip(resistance.iter().zip(&reactance))
        .map(|(f, (r, x))| (f * 1e9, Complex::new(*r, *x)))
        .collect();
    Case {
        id: value["id"].as_str().unwrap_or_default().into(),
        far_end: value["far_end"].as_str().unwrap_or_default().into(),
        geometry: ProbeGeometry {
            guide_radius_m: 0.5 * metres(value, "inside_diameter_mm"),
            feed: Feed {
                wire,
                hole_radius_m,
                insulation: None,
                shunt_capacitance_f: 0.0,
            },
            screws: value["screws"]
                .as_array()
                .map_or_else(Vec::new, |s| s.iter().map(screw).collect()),
        },
        impedance,
    }
}

/// Reflection coefficient of an admittance on a 50-ohm line.
pub(crate) fn reflection(admittance: Complex) -> Complex {
    let y = admittance.scale(50.0);
    (Complex::ONE - y) / (Complex::ONE + y)
}
