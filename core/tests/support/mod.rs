//! What the tests share: the accuracy table and designs in short.
#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test may stop where its data are broken"
)]

use serde_json::Value;
use tinwave_core::design::{Band, Can, Design, Mouth, Probe};
use tinwave_core::metal::Metal;

/// The accuracy table.
pub(crate) fn table() -> Value {
    serde_json::from_str(include_str!("../accuracy.json")).expect("accuracy.json is sound")
}

/// Tolerance of the row that stands for a quantity and is checked by a test.
pub(crate) fn tolerance(quantity: &str, test: &str) -> f64 {
    let table = table();
    let rows = table["rows"].as_array().expect("rows");
    let row = rows
        .iter()
        .find(|row| row["quantity"] == quantity && row["checked_by"] == test)
        .unwrap_or_else(|| panic!("accuracy.json has no row for {quantity} checked by {test}"));
    row["tolerance"].as_f64().expect("a tolerance")
}

/// Fails unless two numbers agree within a tolerance; says which.
pub(crate) fn assert_near(what: &str, got: f64, wanted: f64, tolerance: f64) {
    assert!(
        (got - wanted).abs() <= tolerance,
        "{what}: got {got}, wanted {wanted} within {tolerance}"
    );
}

/// Numbers of a JSON list.
pub(crate) fn numbers(value: &Value) -> Vec<f64> {
    value
        .as_array()
        .expect("a list")
        .iter()
        .map(|number| number.as_f64().expect("a number"))
        .collect()
}

/// Millimetres in whole micrometres.
pub(crate) fn um(mm: f64) -> u32 {
    tinwave_core::si::micrometres(mm / 1e3)
}

/// Megahertz in whole kilohertz.
pub(crate) fn khz(mhz: f64) -> u32 {
    tinwave_core::si::kilohertz(mhz * 1e6)
}

/// A lossless design for checks: (diameter, wire, length, distance) in mm.
pub(crate) fn bare(mm: (f64, f64, f64, f64), mouth: Mouth, open_length_mm: f64) -> Design {
    let (diameter, wire, length, distance) = mm;
    Design {
        name: String::new(),
        band: Band {
            low_khz: 2_401_000,
            high_khz: 2_483_500,
        },
        can: Can {
            inside_diameter_um: um(diameter),
            open_length_um: um(open_length_mm),
            wall_um: 250,
            base_recess_um: 0,
            metal: Metal::Perfect,
        },
        probe: Probe {
            wire_diameter_um: um(wire),
            length_um: um(length),
            backshort_distance_um: um(distance),
            hole_diameter_um: None,
            reference_milliohm: 50_000,
            shunt_ff: 0,
            sleeve: None,
        },
        mouth,
        screws: Vec::new(),
        sweep: None,
    }
}

/// The worked example.
pub(crate) fn orchard_gate() -> Design {
    tinwave_core::json::design_from_json(include_str!("../data/orchard_gate.json"))
        .expect("the example is sound")
}
