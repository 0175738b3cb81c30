//! JSON read by the browser's own parser. In the browser only.

use js_sys::{Array, JSON, Reflect};
use tinwave_core::json::JsonTree;
use wasm_bindgen::{JsCast, JsValue};

/// A value that the browser has parsed.
pub struct Tree(JsValue);

/// Parses a text; where that fails, what the browser says of it.
pub fn parse(text: &str) -> Result<Tree, String> {
    JSON::parse(text).map(Tree).map_err(|error| {
        let message = Reflect::get(&error, &"message".into());
        let message = message.ok().and_then(|message| message.as_string());
        message.map_or_else(String::new, |message| message + ".")
    })
}

impl JsonTree for Tree {
    fn member(&self, key: &str) -> Option<Self> {
        if !self.is_object() {
            return None;
        }
        let value = Reflect::get(&self.0, &key.into()).ok()?;
        (!value.is_null() && !value.is_undefined()).then_some(Self(value))
    }

    fn is_object(&self) -> bool {
        self.0.is_object() && !Array::is_array(&self.0)
    }

    fn items(&self) -> Option<Vec<Self>> {
        let array: &Array = self.0.dyn_ref()?;
        Some(array.iter().map(Self).collect())
    }

    fn number(&self) -> Option<f64> {
        self.0.as_f64()
    }

    fn text(&self) -> Option<String> {
        self.0.as_string()
    }
}
