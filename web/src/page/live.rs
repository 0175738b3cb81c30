//! Keeps the places of the page that are marked in `index.html` in line with
//! the model: writes only what has changed.
//!
//! A place names what it shows in an attribute; the attribute says what of the
//! element follows: `data-text`, `data-html`, `data-once` (markup that never
//! changes), `data-max`, `data-value`, `data-check`, `data-hide`, `data-off`.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, HtmlElement};

use super::browser::{self, elements, log_error};
use super::model::Model;

/// Makes the text of a place from the model.
pub(super) type Make = fn(&Model) -> String;

/// What a name in the page stands for.
pub(super) type Named = (&'static str, Make);

/// What of an element follows.
#[derive(Clone, Copy, PartialEq)]
enum What {
    Text,
    Html,
    Max,
    /// The value of a choice or a progress bar.
    Value,
    /// A radio button or check box is set unless the text is empty.
    Check,
    /// Not shown unless the text is empty.
    Hide,
    /// Switched off unless the text is empty.
    Off,
}

/// The attributes, in the order in which they are served: a list before the
/// choice from it, a scale before the value on it.
const ATTRIBUTES: [(&str, What); 7] = [
    ("data-text", What::Text),
    ("data-html", What::Html),
    ("data-max", What::Max),
    ("data-value", What::Value),
    ("data-check", What::Check),
    ("data-hide", What::Hide),
    ("data-off", What::Off),
];

struct Place {
    element: Element,
    what: What,
    make: Make,
    shown: Option<String>,
}

/// The marked places, found in the page.
#[derive(Default)]
pub(super) struct LivePlaces(Vec<Place>);

impl LivePlaces {
    /// Finds the places in `root`; `names` are all that a place may name.
    pub(super) fn find(root: &Element, names: &[&[Named]], model: &Model) -> Self {
        for element in elements(root, "[data-once]") {
            if let Some(make) = named(names, &element, "data-once") {
                element.set_inner_html(&make(model));
            }
        }
        let mut places = Vec::new();
        for (attribute, what) in ATTRIBUTES {
            for element in elements(root, &["[", attribute, "]"].concat()) {
                if let Some(make) = named(names, &element, attribute) {
                    places.push(Place {
                        element,
                        what,
                        make,
                        shown: None,
                    });
                }
            }
        }
        Self(places)
    }

    /// Shows the model.
    pub(super) fn follow(&mut self, model: &Model) {
        for place in &mut self.0 {
            let text = (place.make)(model);
            // What the maker can change by hand is set whatever we know of it.
            let by_hand = matches!(place.what, What::Value | What::Check);
            if by_hand || place.shown.as_ref() != Some(&text) {
                write(&place.element, place.what, &text);
                place.shown = Some(text);
            }
        }
    }
}

fn named(names: &[&[Named]], element: &Element, attribute: &str) -> Option<Make> {
    let name = element.get_attribute(attribute)?;
    let found = names
        .iter()
        .flat_map(|part| part.iter())
        .find(|(known, _)| *known == name);
    if found.is_none() {
        log_error(&["The page has a place for nothing known: ", &name].concat());
    }
    found.map(|(_, make)| *make)
}

fn write(element: &Element, what: What, text: &str) {
    match what {
        What::Text => element.set_text_content(Some(text)),
        What::Html => write_html(element, text),
        What::Max => set(element, "max", &JsValue::from_str(text)),
        What::Value => {
            // Choosing anew in a long list costs more than looking.
            if browser::value_of(element) != text {
                set(element, "value", &JsValue::from_str(text));
            }
        }
        What::Check => set(element, "checked", &JsValue::from_bool(!text.is_empty())),
        What::Hide => set(element, "hidden", &JsValue::from_bool(!text.is_empty())),
        What::Off => set(element, "disabled", &JsValue::from_bool(!text.is_empty())),
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
