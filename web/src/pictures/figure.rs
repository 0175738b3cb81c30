//! What all pictures share: a figure of fixed markup, its width, its listeners.

use leptos::html::Figure;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, Event, HtmlElement, ResizeObserver};

use super::followed::{Followed, Watched};

/// A figure in the page.
#[derive(Clone)]
pub(super) struct Picture {
    root: Element,
    /// Width of the figure, CSS px.
    pub(super) width: Watched<f64>,
}

impl Picture {
    /// The first element of the picture that a selector names.
    pub(super) fn part(&self, selector: &str) -> Option<HtmlElement> {
        self.root.query_selector(selector).ok()??.dyn_into().ok()
    }
}

/// A figure of the given class with fixed markup; `ready` runs once it is in
/// the page. Greyed while `stale`.
pub(super) fn figure(
    class: &'static str,
    markup: &'static str,
    stale: Followed<bool>,
    ready: Box<dyn FnOnce(Picture)>,
) -> AnyView {
    let node = NodeRef::<Figure>::new();
    let mut ready = Some(ready);
    let width = Watched::new(0.0);
    let owner = Owner::current();
    follow(Box::new(move || {
        let Some(root) = node.get() else {
            return;
        };
        if let (Some(ready), Some(owner)) = (ready.take(), &owner) {
            let root: Element = root.unchecked_into();
            watch_width(&root, width);
            // Under the component's owner, so that it lives as long.
            owner.with(|| {
                grey_while_stale(root.clone(), class, stale);
                ready(Picture { root, width });
            });
        }
    }));
    view! { <figure class=class node_ref=node inner_html=markup></figure> }.into_any()
}

/// Runs now and whenever a signal that it reads changes.
pub fn follow(mut run: Box<dyn FnMut()>) {
    Effect::new(move |_| run());
}

fn grey_while_stale(root: Element, class: &'static str, stale: Followed<bool>) {
    follow(Box::new(move || {
        if stale.get() {
            root.set_class_name(&[class, " pic-stale"].concat());
        } else {
            root.set_class_name(class);
        }
    }));
}

fn watch_width(root: &Element, width: Watched<f64>) {
    let measured = root.clone();
    let measure = move || {
        let now = f64::from(measured.client_width());
        if now > 0.0 {
            width.set(now);
        }
    };
    measure();
    let closure = Closure::<dyn FnMut()>::new(measure);
    if let Ok(observer) = ResizeObserver::new(closure.as_ref().unchecked_ref()) {
        observer.observe(root);
    }
    // The observer goes with its element; only these few bytes stay.
    closure.forget();
}

/// Calls `run` for every such event at an element, as long as the element lives.
pub(super) fn listen(element: &Element, event: &str, run: Box<dyn FnMut(Event)>) {
    let closure = Closure::<dyn FnMut(Event)>::wrap(run);
    // Refused only for a callback that is none.
    let _ = element.add_event_listener_with_callback(event, closure.as_ref().unchecked_ref());
    closure.forget();
}

/// Sets an attribute; the names used here are valid, so it is never refused.
pub(super) fn set_attribute(element: &Element, name: &str, value: &str) {
    let _ = element.set_attribute(name, value);
}

/// Sets a property of an element's own style.
pub(super) fn set_style(element: &HtmlElement, property: &str, value: &str) {
    let _ = element.style().set_property(property, value);
}
