//! The browser's few services that the page uses, behind plain functions. On the host,
//! where the first paint is rendered, they do nothing.

use std::cell::RefCell;
use std::time::Duration;

use leptos::prelude::*;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// Whether there is a browser at all.
#[must_use]
pub const fn is_here() -> bool {
    cfg!(target_arch = "wasm32")
}

/// A timer that runs the latest task only: setting it again drops the task that waits.
#[derive(Clone, Copy)]
pub struct Timer(StoredValue<Option<TimeoutHandle>>);

impl Default for Timer {
    fn default() -> Self {
        Self::new()
    }
}

impl Timer {
    /// With nothing to do. Lives as long as the component that makes it.
    #[must_use]
    pub fn new() -> Self {
        Self(StoredValue::new(None))
    }

    /// Runs a task after a while, in place of the one that waits; not if the component has
    /// gone by then, and with it what the task is about.
    pub fn set(self, after_ms: u32, task: impl FnOnce() + 'static) {
        self.clear();
        if !is_here() || self.0.is_disposed() {
            return;
        }
        let run = move || {
            let is_here_still = self.0.try_set_value(None).is_none();
            if is_here_still {
                task();
            }
        };
        let handle = set_timeout_with_handle(run, Duration::from_millis(u64::from(after_ms)));
        self.0.try_set_value(handle.ok());
    }

    /// Whether a task waits.
    #[must_use]
    pub fn waits(self) -> bool {
        self.0.with_value(Option::is_some)
    }

    /// Drops the task that waits.
    pub fn clear(self) {
        if let Some(handle) = self.0.try_update_value(Option::take).flatten() {
            handle.clear();
        }
    }
}

thread_local! {
    /// The first paint, out of the page.
    static FIRST_PAINT: RefCell<Option<web_sys::Node>> = const { RefCell::new(None) };
}

/// Takes the first paint out of its place, which is the program's now.
pub fn take_out_first_paint(place: &web_sys::Element) {
    FIRST_PAINT.set(place.clone_node_with_deep(false).ok());
    FIRST_PAINT.with_borrow(|first| {
        if let Some(first) = first.as_ref().and_then(|node| node.dyn_ref()) {
            put_into(first, place);
        }
    });
}

/// The part of the first paint that has a class.
#[must_use]
pub fn first_paint_part(class: &str) -> Option<web_sys::Element> {
    FIRST_PAINT.with_borrow(|first| {
        let first: &web_sys::Element = first.as_ref()?.dyn_ref()?;
        let found = first.get_elements_by_class_name(class);
        found.item(0)
    })
}

thread_local! {
    static STYLES_IN_USE: RefCell<Option<js_sys::Promise>> = const { RefCell::new(None) };
}

/// Asks for the styles of what comes when the page is first used, once; tells then
/// whether they came.
pub fn styles_in_use() -> impl Future<Output = bool> {
    let coming =
        STYLES_IN_USE.with_borrow_mut(|coming| coming.get_or_insert_with(ask_for_styles).clone());
    async {
        let came = wasm_bindgen_futures::JsFuture::from(coming).await.is_ok();
        if !came {
            STYLES_IN_USE.take();
        }
        came
    }
}

fn ask_for_styles() -> js_sys::Promise {
    js_sys::Promise::new(&mut |came, failed| {
        let link = document().create_element("link").ok();
        let link = link.and_then(|link| link.dyn_into::<web_sys::HtmlElement>().ok());
        let head = document().query_selector("head").ok().flatten();
        if let (Some(link), Some(head)) = (link, head) {
            link.set_onload(Some(&came));
            link.set_onerror(Some(&failed));
            let is_told = link.set_attribute("rel", "stylesheet").is_ok()
                && link
                    .set_attribute("href", &left_by_start("style-in-use").unwrap_or_default())
                    .is_ok()
                && head.append_child(&link).is_ok();
            if is_told {
                return;
            }
        }
        // Nobody waits for what was never asked for.
        let _ = failed.call0(&JsValue::NULL);
    })
}

/// Moves all that is in a part into a place.
pub fn put_into(place: &web_sys::Element, part: &web_sys::Element) {
    while let Some(child) = part.first_child() {
        if place.append_child(&child).is_err() {
            return;
        }
    }
}

/// The page's link without its fragment.
#[must_use]
pub fn address() -> String {
    if !is_here() {
        return String::new();
    }
    let href = location().href().unwrap_or_default();
    match href.split_once('#') {
        Some((before, _)) => before.to_owned(),
        None => href,
    }
}

/// The fragment, without `#`; empty if there is none.
#[must_use]
pub fn fragment() -> String {
    if !is_here() {
        return String::new();
    }
    let hash = location().hash().unwrap_or_default();
    hash.strip_prefix('#').unwrap_or(&hash).to_owned()
}

/// Writes the fragment, with a number to find the entry again: a new entry of the
/// browser's history, or the present one changed. `false` if the browser refused
/// (too many writes in a short time).
pub fn write_fragment(fragment: &str, position: usize, new_entry: bool) -> bool {
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

/// The number that [`write_fragment`] left with the present entry.
#[must_use]
pub fn history_position() -> Option<usize> {
    let state = window().history().ok()?.state().ok()?.as_f64()?;
    (0.0..1e9).contains(&state).then_some(state as usize)
}

fn storage() -> Option<web_sys::Storage> {
    if is_here() {
        window().local_storage().ok().flatten()
    } else {
        None
    }
}

/// Reads the device's memory; `None` also if the browser forbids it.
#[must_use]
pub fn stored(key: &str) -> Option<String> {
    storage()?.get_item(key).ok().flatten()
}

/// Writes the device's memory. `false` if the browser forbids it or it is full.
pub fn store(key: &str, text: &str) -> bool {
    storage().is_some_and(|memory| memory.set_item(key, text).is_ok())
}

/// The day by the device's clock; `None` on the host.
#[must_use]
pub fn today() -> Option<tinwave_maker::can_log::Day> {
    is_here().then(|| {
        let now = js_sys::Date::new_0();
        tinwave_maker::can_log::Day::new(now.get_full_year(), now.get_month() + 1, now.get_date())
    })
}

/// Milliseconds since the page was opened.
#[must_use]
pub fn now_ms() -> f64 {
    if is_here() {
        window().performance().map_or(0.0, |clock| clock.now())
    } else {
        0.0
    }
}

/// Listens to an event of the window for as long as the page lives.
pub fn on_window(name: &str, heard: impl Fn(web_sys::Event) + 'static) {
    if !is_here() {
        return;
    }
    let heard = Closure::<dyn Fn(web_sys::Event)>::new(heard);
    let added = window().add_event_listener_with_callback(name, heard.as_ref().unchecked_ref());
    if added.is_ok() {
        heard.forget();
    }
}

/// A value that `start.js` left with the document (`data-…`).
#[must_use]
pub fn left_by_start(key: &str) -> Option<String> {
    let root = document().document_element()?;
    root.get_attribute(&["data-", key].concat())
}

/// Says a value to the styles (`data-…` of the document's root).
pub fn tell_styles(key: &str, value: &str) {
    if is_here()
        && let Some(root) = document().document_element()
    {
        // Only an invalid name can be refused.
        let _ = root.set_attribute(&["data-", key].concat(), value);
    }
}

/// Offers bytes to be kept as a file.
pub fn save_file(name: &str, media_type: &str, bytes: &[u8]) -> Option<()> {
    let parts = js_sys::Array::of1(&js_sys::Uint8Array::from(bytes));
    let options = web_sys::BlobPropertyBag::new();
    options.set_type(media_type);
    let blob = web_sys::Blob::new_with_u8_array_sequence_and_options(&parts, &options).ok()?;
    let url = web_sys::Url::create_object_url_with_blob(&blob).ok()?;
    let anchor = document().create_element("a").ok()?;
    let anchor: web_sys::HtmlAnchorElement = anchor.unchecked_into();
    anchor.set_href(&url);
    anchor.set_download(name);
    anchor.click();
    // The browser must have begun to read it.
    set_timeout(
        move || {
            let _ = web_sys::Url::revoke_object_url(&url);
        },
        Duration::from_secs(30),
    );
    Some(())
}

/// Selects a cell's whole text.
pub fn select_all(input: &web_sys::HtmlInputElement) {
    if is_here() {
        input.select();
    }
}

/// Lets a finger's keypad go, which gives its room back to the page; whether there is one.
pub fn put_keypad_away() -> bool {
    if !is_here() || !has_finger() {
        return false;
    }
    let focused = document().active_element();
    if let Some(cell) = focused.and_then(|one| one.dyn_into::<web_sys::HtmlElement>().ok()) {
        // Only what can't have the focus refuses.
        let _ = cell.blur();
    }
    true
}

/// Tells an element's height, px, now and whenever it changes, for as long as the
/// component that asks lives.
pub fn watch_height(element: &web_sys::HtmlElement, told: impl Fn(i32) + 'static) {
    if !is_here() {
        return;
    }
    let watched = element.clone();
    let look = Closure::<dyn Fn()>::new(move || told(watched.offset_height()));
    let Ok(observer) = web_sys::ResizeObserver::new(look.as_ref().unchecked_ref()) else {
        return;
    };
    observer.observe(element);
    let kept = StoredValue::new_local((observer, look));
    on_cleanup(move || {
        kept.try_with_value(|(observer, _)| observer.disconnect());
    });
}

/// Tells an element's width and height, CSS px, now and whenever they change, for as
/// long as the component or effect that asks lives.
pub fn watch_size(element: &web_sys::HtmlElement, told: impl Fn(f64, f64) + 'static) {
    if !is_here() {
        return;
    }
    let watched = element.clone();
    let look = Closure::<dyn Fn()>::new(move || {
        let (width, height) = (watched.client_width(), watched.client_height());
        // What is not shown has no size.
        if width > 0 && height > 0 {
            told(f64::from(width), f64::from(height));
        }
    });
    let Ok(observer) = web_sys::ResizeObserver::new(look.as_ref().unchecked_ref()) else {
        return;
    };
    observer.observe(element);
    let kept = StoredValue::new_local((observer, look));
    on_cleanup(move || {
        kept.try_with_value(|(observer, _)| observer.disconnect());
    });
}

/// Height of a letter's em in an element, CSS px.
#[must_use]
pub fn letter_px(element: &web_sys::HtmlElement) -> f64 {
    const USUAL: f64 = 13.0;
    if !is_here() {
        return USUAL;
    }
    let style = window().get_computed_style(element).ok().flatten();
    let size = style.and_then(|style| style.get_property_value("font-size").ok());
    size.map(|size| js_sys::Number::parse_float(&size))
        .filter(|size| size.is_finite())
        .unwrap_or(USUAL)
}

/// Runs a task before the next repaint.
pub fn on_next_frame(task: impl FnOnce() + 'static) {
    if is_here() {
        request_animation_frame(task);
    }
}

/// Calls whenever the page's colours may have changed: by the device, by a wish for
/// more contrast, by the choice under More. For as long as the component or effect that
/// asks lives.
pub fn on_look(changed: impl Fn() + 'static) {
    const DEVICES: [&str; 3] = [
        "(prefers-color-scheme: dark)",
        "(prefers-contrast: more)",
        "(forced-colors: active)",
    ];
    if !is_here() {
        return;
    }
    let changed = Closure::<dyn Fn()>::new(changed);
    let heard: &js_sys::Function = changed.as_ref().unchecked_ref();
    let queries: Vec<web_sys::MediaQueryList> = DEVICES
        .into_iter()
        .filter_map(|query| window().match_media(query).ok().flatten())
        .filter(|query| {
            let added = query.add_event_listener_with_callback("change", heard);
            added.is_ok()
        })
        .collect();
    let chosen = watch_root(heard);
    let kept = StoredValue::new_local((queries, chosen, changed));
    on_cleanup(move || {
        kept.try_with_value(|(queries, chosen, changed)| {
            let heard: &js_sys::Function = changed.as_ref().unchecked_ref();
            for query in queries {
                // Only a listener that is gone can be refused.
                let _ = query.remove_event_listener_with_callback("change", heard);
            }
            if let Some(chosen) = chosen {
                chosen.disconnect();
            }
        });
    });
}

/// Watches the document's root for a choice of colours.
fn watch_root(heard: &js_sys::Function) -> Option<web_sys::MutationObserver> {
    let observer = web_sys::MutationObserver::new(heard).ok()?;
    let options = web_sys::MutationObserverInit::new();
    options.set_attributes(true);
    let root = document().document_element()?;
    observer.observe_with_options(&root, &options).ok()?;
    Some(observer)
}

/// Sets a custom property of an element's styles.
pub fn set_property(element: &web_sys::HtmlElement, name: &str, value: &str) {
    if is_here() {
        // Only an invalid name can be refused.
        let _ = element.style().set_property(name, value);
    }
}

/// Brings an element into sight, as little as it takes.
pub fn bring_into_sight(id: &str) {
    if is_here()
        && let Some(element) = document().get_element_by_id(id)
    {
        let options = web_sys::ScrollIntoViewOptions::new();
        options.set_block(web_sys::ScrollLogicalPosition::Nearest);
        element.scroll_into_view_with_scroll_into_view_options(&options);
    }
}

/// Puts the focus on an element.
pub fn focus(id: &str) {
    if is_here()
        && let Some(element) = document().get_element_by_id(id)
        && let Some(element) = element.dyn_ref::<web_sys::HtmlElement>()
    {
        // Only an element that is gone can refuse.
        let _ = element.focus();
    }
}

/// Reads a file's bytes, and hands them on; `None` where the browser can't read it.
pub fn read_file(file: &web_sys::File, read: impl FnOnce(Option<Vec<u8>>) + 'static) {
    let bytes = wasm_bindgen_futures::JsFuture::from(file.array_buffer());
    leptos::task::spawn_local(async move {
        let buffer = bytes.await.ok();
        read(buffer.map(|buffer| js_sys::Uint8Array::new(&buffer).to_vec()));
    });
}

/// Runs a task after the present change is on the page.
pub fn soon(task: impl FnOnce() + 'static) {
    if is_here() {
        request_animation_frame(task);
    }
}

/// The document's title.
pub fn set_title(title: &str) {
    if is_here() {
        document().set_title(title);
    }
}

/// Begins to read at an element: the page is at its top, the element has the focus.
pub fn begin_at(id: &str) {
    if !is_here() {
        return;
    }
    window().scroll_to_with_x_and_y(0.0, 0.0);
    if let Some(element) = document().get_element_by_id(id)
        && let Some(element) = element.dyn_ref::<web_sys::HtmlElement>()
    {
        let options = web_sys::FocusOptions::new();
        options.set_prevent_scroll(true);
        // Only an element that is gone can refuse.
        let _ = element.focus_with_options(&options);
    }
}

/// Tells an event of that name to the window: `start.js` listens.
pub fn tell_window(name: &str) {
    if is_here()
        && let Ok(event) = web_sys::Event::new(name)
    {
        // Nobody can refuse it.
        let _ = window().dispatch_event(&event);
    }
}

/// Listens to an event of the window for as long as the component that asks lives.
pub fn on_window_while_here(name: &'static str, heard: impl Fn(web_sys::Event) + 'static) {
    if is_here() {
        let listener = window_event_listener_untyped(name, heard);
        on_cleanup(move || listener.remove());
    }
}

/// Whether an event happened inside an element.
#[must_use]
pub fn is_inside(element: &web_sys::Element, event: &web_sys::Event) -> bool {
    let target = event.target();
    let node = target
        .as_ref()
        .and_then(|target| target.dyn_ref::<web_sys::Node>());
    element.contains(node)
}

/// The key of a keyboard's event.
#[must_use]
pub fn key_of(event: &web_sys::Event) -> Option<String> {
    event
        .dyn_ref::<web_sys::KeyboardEvent>()
        .map(web_sys::KeyboardEvent::key)
}

/// The key that was pressed together with Ctrl or ⌘; capital with Shift.
#[must_use]
pub fn command_key_of(event: &web_sys::Event) -> Option<String> {
    let event = event.dyn_ref::<web_sys::KeyboardEvent>()?;
    (event.ctrl_key() || event.meta_key()).then(|| event.key())
}

/// Whether an event happened where a text is typed; in a cell whose text was taken
/// already nothing is.
#[must_use]
pub fn is_typing(event: &web_sys::Event) -> bool {
    let target = event.target();
    let element = target
        .as_ref()
        .and_then(|target| target.dyn_ref::<web_sys::Element>());
    element.is_some_and(|element| {
        element
            .matches("input[type=text]:not([data-settled]), textarea, [contenteditable]")
            .unwrap_or(false)
    })
}

/// Copies a text; hands on whether the browser did.
pub fn copy_text(text: &str, done: impl FnOnce(bool) + 'static) {
    if !is_here() {
        return;
    }
    let copying = window().navigator().clipboard().write_text(text);
    leptos::task::spawn_local(async move {
        done(wasm_bindgen_futures::JsFuture::from(copying).await.is_ok());
    });
}

/// Whether a finger is the device's pointer.
fn has_finger() -> bool {
    let media = window().match_media("(pointer: coarse)").ok().flatten();
    media.is_some_and(|media| media.matches())
}

/// Passes a link on by the device's own list, where a finger is its pointer and it has
/// one; else copies it. Hands on whether it was copied, nothing where the device's list
/// was shown.
pub fn share_link(link: &str, done: impl FnOnce(Option<bool>) + 'static) {
    if !is_here() {
        return;
    }
    let data = web_sys::ShareData::new();
    data.set_url(link);
    if has_finger() && js_sys::Reflect::has(&window().navigator(), &"share".into()).unwrap_or(false)
    {
        let sharing = window().navigator().share_with_data(&data);
        leptos::task::spawn_local(async move {
            // Shutting the list again is a refusal too: nothing to be said.
            let _ = wasm_bindgen_futures::JsFuture::from(sharing).await;
            done(None);
        });
    } else {
        copy_text(link, move |copied| done(Some(copied)));
    }
}

/// Today, counted in days from 1970-01-01 (UTC); `None` without a browser.
#[must_use]
pub fn day_number() -> Option<u32> {
    is_here().then(|| (js_sys::Date::now() / 86_400_000.0) as u32)
}

/// Opens the browser's own print.
pub fn print_page() {
    if is_here() {
        // A browser without printing does nothing.
        let _ = window().print();
    }
}
