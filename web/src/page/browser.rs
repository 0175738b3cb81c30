//! The browser's few services that the page uses, behind plain functions.

use std::rc::Rc;
use std::sync::{Mutex, PoisonError};
use std::time::Duration;

use crate::entry::LengthUnit;
use leptos::prelude::*;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// Milliseconds since the page was opened.
pub(super) fn now_ms() -> f64 {
    window().performance().map_or(0.0, |clock| clock.now())
}

/// A timer that runs the latest task only: setting it again drops the task
/// that still waits.
#[derive(Clone, Copy)]
pub(super) struct Timer(&'static Mutex<Option<TimeoutHandle>>);

impl Timer {
    pub(super) fn new() -> Self {
        Self(Box::leak(Box::new(Mutex::new(None))))
    }

    #[inline(never)]
    pub(super) fn set(self, after_ms: u32, task: Box<dyn FnOnce()>) {
        self.clear();
        let run = move || {
            self.hold(None);
            task();
        };
        let handle = set_timeout_with_handle(run, Duration::from_millis(u64::from(after_ms)));
        self.hold(handle.ok());
    }

    /// Holds another task's handle; gives the one before.
    fn hold(self, handle: Option<TimeoutHandle>) -> Option<TimeoutHandle> {
        let mut slot = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        std::mem::replace(&mut *slot, handle)
    }

    /// Whether a task waits.
    pub(super) fn waits(self) -> bool {
        self.0.lock().is_ok_and(|slot| slot.is_some())
    }

    #[inline(never)]
    pub(super) fn clear(self) {
        if let Some(handle) = self.hold(None) {
            handle.clear();
        }
    }
}

/// The page's link without its fragment.
pub(super) fn address() -> String {
    let href = location().href().unwrap_or_default();
    match href.split_once('#') {
        Some((before, _)) => before.to_owned(),
        None => href,
    }
}

/// The fragment, without `#`; empty if there is none.
pub(super) fn fragment() -> String {
    let hash = location().hash().unwrap_or_default();
    hash.strip_prefix('#').unwrap_or(&hash).to_owned()
}

/// Writes the fragment: a new entry of the browser's history, or the present
/// one changed. `false` if the browser refused (too many writes in a short time).
pub(super) fn write_fragment(fragment: &str, position: usize, new_entry: bool) -> bool {
    let Ok(history) = window().history() else {
        return false;
    };
    let state = JsValue::from_f64(u32::try_from(position).map_or(0.0, f64::from));
    let url = ["#", fragment].concat();
    let written = if new_entry {
        history.push_state_with_url(&state, "", Some(&url))
    } else {
        history.replace_state_with_url(&state, "", Some(&url))
    };
    written.is_ok()
}

/// The position that [`write_fragment`] left with the present entry.
pub(super) fn history_position() -> Option<usize> {
    let state = window().history().ok()?.state().ok()?.as_f64()?;
    if (0.0..1e9).contains(&state) {
        Some(state as usize)
    } else {
        None
    }
}

fn storage() -> Option<web_sys::Storage> {
    window().local_storage().ok().flatten()
}

/// Reads the device's memory; `None` also if the browser forbids it.
pub(super) fn stored(key: &str) -> Option<String> {
    storage()?.get_item(key).ok().flatten()
}

/// Writes the device's memory. `false` if the browser forbids it or it is full.
pub(super) fn store(key: &str, text: &str) -> bool {
    storage().is_some_and(|memory| memory.set_item(key, text).is_ok())
}

/// Tells whether a media query holds: now, and at each change.
pub(super) fn media(query: &str, tell: Box<dyn Fn(bool)>) {
    if let Ok(Some(list)) = window().match_media(query) {
        tell(list.matches());
        let again = list.clone();
        on_event(&list, "change", Box::new(move |_| tell(again.matches())));
    }
}

/// The first element below `root` that a selector names.
pub(super) fn part(root: &web_sys::Element, selector: &str) -> Option<web_sys::Element> {
    root.query_selector(selector).ok().flatten()
}

/// All elements below `root` that a selector names.
pub(super) fn elements(root: &web_sys::Element, selector: &str) -> Vec<web_sys::Element> {
    let mut found = Vec::new();
    if let Ok(list) = root.query_selector_all(selector) {
        for index in 0..list.length() {
            found.extend(list.get(index).map(JsCast::unchecked_into));
        }
    }
    found
}

/// Puts a copy of a pattern of the page (a `template` by its id) into an element.
pub(super) fn stamp(element: &web_sys::Element, id: &str) {
    let pattern = document()
        .get_element_by_id(id)
        .and_then(|template| template.dyn_into::<web_sys::HtmlTemplateElement>().ok())
        .and_then(|template| template.content().clone_node_with_deep(true).ok());
    if let Some(pattern) = pattern {
        let _ = element.append_child(&pattern);
    }
}

/// Writes to the browser's log.
pub(super) fn log_error(message: &str) {
    web_sys::console::error_1(&JsValue::from_str(message));
}

/// The value of an input or a choice.
pub(super) fn value_of(element: &web_sys::Element) -> String {
    js_get(element, "value").as_string().unwrap_or_default()
}

/// Listens as long as the page lives.
pub(super) fn on_event(
    target: &web_sys::EventTarget,
    name: &str,
    task: Box<dyn FnMut(web_sys::Event)>,
) {
    let closure = Closure::wrap(task);
    let run = closure.as_ref().unchecked_ref();
    if target.add_event_listener_with_callback(name, run).is_ok() {
        closure.forget();
    }
}

/// Puts text on the clipboard; `done` hears whether it worked.
pub(super) fn copy(text: &str, done: Box<dyn Fn(bool)>) {
    let navigator = window().navigator();
    // Absent outside a secure context.
    let clipboard = js_get(&navigator, "clipboard");
    if clipboard.is_undefined() {
        done(false);
        return;
    }
    let promise = navigator.clipboard().write_text(text);
    when_settled(&promise, Box::new(move |value| done(value.is_some())));
}

/// Hears what a promise came to; `None` if it was refused.
fn when_settled(promise: &js_sys::Promise, done: Box<dyn Fn(Option<JsValue>)>) {
    let done = Rc::new(done);
    let refused = done.clone();
    let kept = Closure::once_into_js(move |value: JsValue| done(Some(value)));
    let lost = Closure::once_into_js(move |_: JsValue| refused(None));
    let then: js_sys::Function = js_get(promise, "then").unchecked_into();
    let _ = then.call2(promise, &kept, &lost);
}

/// Whether the browser has a share sheet.
pub(super) fn can_share() -> bool {
    js_get(&window().navigator(), "share").is_function()
}

/// Opens the share sheet.
pub(super) fn share(title: &str, url: &str) {
    let data = web_sys::ShareData::new();
    data.set_title(title);
    data.set_url(url);
    let promise = window().navigator().share_with_data(&data);
    // A refused or cancelled share needs no word.
    when_settled(&promise, Box::new(|_| {}));
}

fn js_get(object: &JsValue, name: &str) -> JsValue {
    js_sys::Reflect::get(object, &JsValue::from_str(name)).unwrap_or(JsValue::UNDEFINED)
}

/// Offers text as a file to keep.
pub(super) fn download(file_name: &str, kind: &str, text: &str) {
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let bag = web_sys::BlobPropertyBag::new();
    bag.set_type(kind);
    let Ok(blob) = web_sys::Blob::new_with_str_sequence_and_options(&parts, &bag) else {
        return;
    };
    let Ok(url) = web_sys::Url::create_object_url_with_blob(&blob) else {
        return;
    };
    if let Ok(link) = document().create_element("a") {
        let link: web_sys::HtmlAnchorElement = link.unchecked_into();
        link.set_href(&url);
        link.set_download(file_name);
        link.click();
    }
    set_timeout(
        move || {
            let _ = web_sys::Url::revoke_object_url(&url);
        },
        Duration::from_secs(20),
    );
}

/// Reads the file that the maker chose in a file input, then forgets the choice.
pub(super) fn chosen_file(input: &web_sys::HtmlInputElement, done: Box<dyn Fn(Option<String>)>) {
    let Some(file) = input.files().and_then(|files| files.get(0)) else {
        return;
    };
    // A design file is a few kilobytes; anything far bigger is not one.
    if file.size() > 1e6 {
        done(None);
        return;
    }
    let promise = file.text();
    input.set_value("");
    when_settled(
        &promise,
        Box::new(move |text| done(text.and_then(|text| text.as_string()))),
    );
}

/// Puts a sentence into an element.
pub(super) fn say(id: &str, sentence: &str) {
    if let Some(element) = document().get_element_by_id(id) {
        element.set_text_content(Some(sentence));
    }
}

/// The address of the worker's script, once the page has been touched.
pub(super) fn worker_script() -> Option<String> {
    document().document_element()?.get_attribute("data-worker")
}

/// Says what design stands, for the parts of the page that are fetched when they
/// are wanted.
pub(super) fn stand(fragment: &str, unit: LengthUnit) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-unit", unit.key());
        let _ = root.set_attribute("data-design", fragment);
    }
}

/// Hears what those parts say under a name: one text each time.
pub(super) fn on_word(name: &str, hear: Box<dyn Fn(&str)>) {
    on_event(
        &window(),
        name,
        Box::new(move |event| {
            if let Some(text) = js_get(&event, "detail").as_string() {
                hear(&text);
            }
        }),
    );
}

/// Hands a job to the start script, which fetches what prints.
pub(super) fn ask_to_print(job: &str, kind: &str) {
    let detail = js_sys::Array::of2(&job.into(), &kind.into());
    let event = web_sys::CustomEventInit::new();
    event.set_detail(&detail);
    if let Ok(event) = web_sys::CustomEvent::new_with_event_init_dict("tinwave-print", &event) {
        let _ = window().dispatch_event(&event);
    }
}
