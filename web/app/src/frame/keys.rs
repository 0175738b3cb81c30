//! Keys that work everywhere: undo and redo.

use crate::browser;
use crate::state::Workshop;

/// Ctrl+Z (or ⌘Z) undoes, with Shift, or Ctrl+Y, it redoes; but not while a text is
/// typed: there the browser's own undo holds.
pub(super) fn listen(workshop: Workshop) {
    browser::on_window("keydown", move |event| {
        let Some(key) = browser::command_key_of(&event) else {
            return;
        };
        let redoes = match key.as_str() {
            "z" => false,
            "Z" | "y" => true,
            _ => return,
        };
        if browser::is_typing(&event) {
            return;
        }
        event.prevent_default();
        if redoes {
            workshop.redo();
        } else {
            workshop.undo();
        }
    });
}
