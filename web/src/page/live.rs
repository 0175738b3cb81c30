//! Keeps the marked places of the page in line with the model: writes only
//! what has changed.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, HtmlElement};

use super::markup::{Live, What};
use super::model::Model;

/// The marked places, found in the page.
pub(super) struct LivePlaces {
    elements: Vec<Element>,
    places: Vec<(Live, Option<String>)>,
}

impl LivePlaces {
    pub(super) fn find(root: &Element, lives: Vec<Live>) -> Self {
        let mut elements = Vec::new();
        if let Ok(list) = root.query_selector_all("[data-live]") {
            for index in 0..list.length() {
                if let Some(element) = list.get(index).and_then(|node| node.dyn_into().ok()) {
                    elements.push(element);
                }
            }
        }
        let places = lives.into_iter().map(|live| (live, None)).collect();
        Self { elements, places }
    }

    /// Shows the model.
    pub(super) fn follow(&mut self, model: &Model) {
        for (live, shown) in &mut self.places {
            let Some(element) = self.elements.get(live.element) else {
                continue;
            };
            let text = (live.make)(model);
            // What the maker can change by hand is set whatever we know of it.
            let by_hand = matches!(live.what, What::Value | What::Checked);
            if by_hand || shown.as_ref() != Some(&text) {
                write(element, live.what, &text);
                *shown = Some(text);
            }
        }
    }
}

fn write(element: &Element, what: What, text: &str) {
    match what {
        What::Text => element.set_text_content(Some(text)),
        What::Html => write_html(element, text),
        What::Attribute(name) => {
            let _ = element.set_attribute(name, text);
        }
        What::Flag(name) if text.is_empty() => {
            let _ = element.remove_attribute(name);
        }
        What::Flag(name) => {
            let _ = element.set_attribute(name, "");
        }
        What::Value => set(element, "value", &JsValue::from_str(text)),
        What::Checked => set(element, "checked", &JsValue::from_bool(!text.is_empty())),
    }
}

fn set(element: &Element, name: &str, value: &JsValue) {
    let _ = js_sys::Reflect::set(element, &JsValue::from_str(name), value);
}

/// Writes markup; a button that had the focus gives it to its successor.
fn write_html(element: &Element, html: &str) {
    let focused = element
        .owner_document()
        .and_then(|document| document.active_element())
        .filter(|active| element.contains(Some(active)))
        .and_then(|active| selector_of(&active));
    element.set_inner_html(html);
    if let Some(next) = focused
        .and_then(|selector| element.query_selector(&selector).ok().flatten())
        .and_then(|next| next.dyn_into::<HtmlElement>().ok())
    {
        let _ = next.focus();
    }
}

fn selector_of(element: &Element) -> Option<String> {
    let verb = element.get_attribute("data-do")?;
    let argument = element.get_attribute("data-arg").unwrap_or_default();
    Some(["[data-do=\"", &verb, "\"][data-arg=\"", &argument, "\"]"].concat())
}
