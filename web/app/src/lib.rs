//! The Tinwave page: one Leptos application of seven stations.
//!
//! `app` is the table of contents. `state` holds the work and what follows from it,
//! `kit` the components that every station is made of, `pictures` the drawings,
//! `stations` one folder a station. Compiled for the browser it runs; compiled for the
//! host it renders the first paint, so no component touches the browser but in effects,
//! handlers and [`browser`].
// A station is one deep type of views.
#![recursion_limit = "512"]

pub mod app;
pub mod browser;
pub mod frame;
pub mod json_tree;
pub mod kit;
pub mod pictures;
pub mod reactive;
pub mod state;
pub mod stations;
pub mod worker;

use leptos::prelude::*;

/// Starts the page in place of its first paint.
#[cfg(target_arch = "wasm32")]
pub fn start() {
    use wasm_bindgen::JsCast;
    let Some(root) = document().get_element_by_id("app") else {
        return;
    };
    let root: web_sys::HtmlElement = root.unchecked_into();
    browser::take_out_first_paint(&root);
    mount_to(root, app::App).forget();
}

/// The markup of the example's page, for `#app`.
#[cfg(not(target_arch = "wasm32"))]
#[must_use]
pub fn first_paint() -> String {
    let owner = Owner::new();
    owner.with(|| view! { <app::App/> }.to_html())
}
