//! A JSON value as its parser keeps it, so that each program may read with the
//! parser it has: the page with the browser's, others with `serde_json`.

use alloc::string::String;
use alloc::vec::Vec;

/// One value of a parsed JSON text.
pub trait JsonTree: Sized {
    /// A member of an object; `None` where there is none, where it is null, and
    /// for anything but an object.
    fn member(&self, key: &str) -> Option<Self>;
    /// Whether this is an object.
    fn is_object(&self) -> bool;
    /// The items, if this is an array.
    fn items(&self) -> Option<Vec<Self>>;
    /// The number, if this is one.
    fn number(&self) -> Option<f64>;
    /// The text, if this is one.
    fn text(&self) -> Option<String>;
}
