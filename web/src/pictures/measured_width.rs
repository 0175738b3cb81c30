//! Width of an element, followed as it changes.

use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::ResizeObserver;

/// The width of an element in CSS px; `first` until it is in the page.
pub(super) fn measured_width(node: NodeRef<Div>, first: f64) -> ReadSignal<f64> {
    let (width, set_width) = signal(first);
    let kept = StoredValue::new_local(None::<(ResizeObserver, Closure<dyn FnMut()>)>);
    Effect::new(move |_| {
        let Some(element) = node.get() else {
            return;
        };
        let measured = element.clone();
        let measure = move || {
            let now = f64::from(measured.client_width());
            if now > 0.0 && width.try_get_untracked() != Some(now) {
                set_width.try_set(now);
            }
        };
        measure();
        let closure = Closure::<dyn FnMut()>::new(measure);
        if let Ok(observer) = ResizeObserver::new(closure.as_ref().unchecked_ref()) {
            observer.observe(&element);
            kept.set_value(Some((observer, closure)));
        }
    });
    on_cleanup(move || {
        kept.try_update_value(|kept| {
            if let Some((observer, _)) = kept.take() {
                observer.disconnect();
            }
        });
    });
    width
}
