//! Designs from JSON text, parsed by `serde_json`.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use serde_json::Value;

use super::design_file::{JsonError, design_from_tree};
use super::tree::JsonTree;
use crate::design::Design;

/// Reads a design from JSON text; see [`design_from_tree`].
///
/// # Errors
/// [`JsonError`]: where the text is no JSON, or the field that is wrong.
pub fn design_from_json(text: &str) -> Result<Design, JsonError> {
    let value: Value = serde_json::from_str(text).map_err(|error| JsonError::Syntax {
        line: error.line(),
        column: error.column(),
    })?;
    design_from_tree(&value)
}

impl JsonTree for &Value {
    fn member(&self, key: &str) -> Option<Self> {
        self.get(key).filter(|value| !value.is_null())
    }

    fn is_object(&self) -> bool {
        Value::is_object(self)
    }

    fn items(&self) -> Option<Vec<Self>> {
        self.as_array().map(|items| items.iter().collect())
    }

    fn number(&self) -> Option<f64> {
        self.as_f64()
    }

    fn text(&self) -> Option<String> {
        self.as_str().map(ToString::to_string)
    }
}
