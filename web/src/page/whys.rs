//! The reasons behind the figures: a folded place for each, which the workbench fills
//! when it is unfolded.

use web_sys::Element;

use super::browser::{self, elements, part};

/// Puts a folded reason into each place for one.
pub(super) fn write(root: &Element) {
    for place in elements(root, "[data-why]") {
        browser::stamp(&place, "why");
        let named = place
            .closest(".result")
            .ok()
            .flatten()
            .and_then(|row| part(&row, "dt"))
            .and_then(|name| name.text_content());
        let name = [": ", named.as_deref().unwrap_or("this result")].concat();
        if let Some(unseen) = part(&place, ".unseen") {
            unseen.set_text_content(Some(&name));
        }
    }
}
