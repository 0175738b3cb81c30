//! How high the figures and the entries are on a desk, told to the styles: both stand
//! in the right column below each other, and stay in sight as far as the screen's
//! height lets them, though the phone's order of reading keeps them apart.

use leptos::html::Div;
use leptos::prelude::*;

use crate::browser;
use crate::reactive::effect;

/// Watches both places and tells their heights to the station's styles.
pub(super) fn watch(station: NodeRef<Div>, figures: NodeRef<Div>, entries: NodeRef<Div>) {
    let tell = move |place: NodeRef<Div>, name: &'static str| {
        effect(move || {
            let (Some(station), Some(place)) = (station.get(), place.get()) else {
                return;
            };
            browser::watch_height(&place, move |height| {
                browser::set_property(&station, name, &format!("{height}px"));
            });
        });
    };
    tell(figures, "--figures-height");
    tell(entries, "--entries-height");
}
