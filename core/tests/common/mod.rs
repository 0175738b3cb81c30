//! Reference data of the tests.

use serde_json::Value;
use tinwave_core::complex::Complex;

/// The parsed text of a data file.
pub(crate) fn parse(text: &str) -> Value {
    serde_json::from_str(text).expect("the data file is JSON")
}

/// The rows of a table in a data file; never empty.
#[allow(dead_code, reason = "not every test file needs it")]
pub(crate) fn rows<'a>(data: &'a Value, key: &str) -> &'a [Value] {
    let rows = data[key].as_array().expect("a table");
    assert!(!rows.is_empty());
    rows
}

/// A number of a row.
pub(crate) fn number(row: &Value, key: &str) -> f64 {
    row[key]
        .as_f64()
        .unwrap_or_else(|| panic!("{key} in {row}"))
}

/// A complex number written as a pair.
#[allow(dead_code, reason = "not every test file needs it")]
pub(crate) fn complex(value: &Value) -> Complex {
    let part = |n: usize| value[n].as_f64().expect("a pair of numbers");
    Complex::new(part(0), part(1))
}
