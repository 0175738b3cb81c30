//! The reasons behind the figures: each opens where it is asked for.

use wasm_bindgen::JsCast;
use web_sys::Element;

use super::browser::{self, elements, part};
use crate::words::{self, Shown};

/// What a place for a reason may name.
const NAMES: [(&str, Shown); 19] = [
    ("cutoff", Shown::Cutoff),
    ("guide-wavelength", Shown::GuideWavelength),
    ("wall-loss", Shown::WallLoss),
    ("impedance", Shown::ProbeImpedance),
    ("vswr", Shown::Vswr),
    ("vswr-band", Shown::VswrBand),
    ("mouth", Shown::MouthReflection),
    ("gain", Shown::Gain),
    ("beamwidth", Shown::Beamwidth),
    ("front-to-back", Shown::FrontToBack),
    ("pattern", Shown::Pattern),
    ("textbook", Shown::TextbookGain),
    ("best-cut", Shown::BestCut),
    ("one-mode", Shown::OneModeDiameters),
    ("rule", Shown::QuarterWaveRule),
    ("hole-position", Shown::HolePosition),
    ("wire-length", Shown::WireLength),
    ("hole-size", Shown::HoleSize),
    ("trade-sizes", Shown::TradeSizes),
];

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

/// Fills the reason that is being opened.
pub(super) fn open(details: &Element) {
    let Some(place) = details.closest("[data-why]").ok().flatten() else {
        return;
    };
    let key = place.get_attribute("data-why").unwrap_or_default();
    let Some((_, shown)) = NAMES.iter().find(|(name, _)| *name == key) else {
        browser::log_error(&["The page asks for no known reason: ", &key].concat());
        return;
    };
    let Some(text) = part(&place, ".why-text") else {
        return;
    };
    if text.has_child_nodes() {
        return;
    }
    browser::stamp(&text, "why-text");
    let why = words::why(*shown);
    let texts = [why.formula, why.inputs, why.source, why.error_bar];
    if let Some(title) = part(&place, ".why-title") {
        title.set_text_content(Some(why.title));
    }
    for (span, text) in elements(&place, ".why-text span").iter().zip(texts) {
        span.unchecked_ref::<web_sys::Node>()
            .set_text_content(Some(text));
    }
}
