//! Small pieces that the sections are put together from.

use leptos::prelude::*;
use tinwave_core::verdict::{Finding, Severity};

use super::state::{Page, Text};
use crate::words::{self, Shown};

/// A part of the page: a heading that keeps its result in sight when folded.
pub(super) fn section(
    page: Page,
    key: &'static str,
    title: &'static str,
    open: bool,
    result: Text,
    body: Vec<AnyView>,
) -> AnyView {
    section_with(key, title, open, page.text(result), Box::new(|_| {}), body)
}

/// A part whose result is a signal of its own and that hears when it is folded.
pub(super) fn section_with(
    key: &'static str,
    title: &'static str,
    open: bool,
    result: Signal<String>,
    on_fold: Box<dyn Fn(bool)>,
    body: Vec<AnyView>,
) -> AnyView {
    let title_id = [key, "-title"].concat();
    view! {
        <section class="part" id=key aria-labelledby=title_id.clone()>
            <details open=open on:toggle=move |event| on_fold(is_open(&event))>
                <summary>
                    <h2 id=title_id.clone()>{title}</h2>
                    <span class="sum">{follow(result)}</span>
                </summary>
                <div class="part-body">{body}</div>
            </details>
        </section>
    }
    .into_any()
}

/// A text that follows its signal.
pub(super) fn follow(text: Signal<String>) -> AnyView {
    (move || text.get()).into_any()
}

/// A paragraph.
pub(super) fn paragraph(class: &'static str, text: &'static str) -> AnyView {
    view! { <p class=class>{text}</p> }.into_any()
}

/// A paragraph that follows the work.
pub(super) fn live_paragraph(class: &'static str, text: Signal<String>) -> AnyView {
    view! { <p class=class>{follow(text)}</p> }.into_any()
}

/// A heading inside a section.
pub(super) fn heading(text: &'static str) -> AnyView {
    view! { <h3>{text}</h3> }.into_any()
}

/// Entries side by side where there is room.
pub(super) fn fields(entries: Vec<AnyView>) -> AnyView {
    view! { <div class="fields">{entries}</div> }.into_any()
}

/// Figures with what they are called.
pub(super) fn results(rows: Vec<AnyView>) -> AnyView {
    view! { <dl class="results">{rows}</dl> }.into_any()
}

/// One figure, with the reason behind it.
pub(super) fn row(page: Page, name: &'static str, value: Text, why: Shown) -> AnyView {
    figure(name, page.text(value), why)
}

/// One figure from a signal of its own.
pub(super) fn figure(name: &'static str, value: Signal<String>, shown: Shown) -> AnyView {
    view! {
        <div class="result">
            <dt>{name}</dt>
            <dd>
                <span class="value">{follow(value)}</span>
                {why(name, shown)}
            </dd>
        </div>
    }
    .into_any()
}

/// The reason behind a figure; its text is made when it is opened.
pub(super) fn why(name: &'static str, shown: Shown) -> AnyView {
    let open = RwSignal::new(false);
    view! {
        <details
            class="why"
            on:toggle=move |event| open.set(is_open(&event))
        >
            <summary>"why"<span class="unseen">{[": ", name].concat()}</span></summary>
            {move || open.get().then(|| why_text(shown))}
        </details>
    }
    .into_any()
}

/// Whether the `details` that sent a toggle event is open.
pub(super) fn is_open(event: &leptos::ev::Event) -> bool {
    event_target::<web_sys::Element>(event).has_attribute("open")
}

fn why_text(shown: Shown) -> AnyView {
    let why = words::why(shown);
    let lines = [
        ("Formula", why.formula),
        ("From", why.inputs),
        ("Source", why.source),
        ("How sure", why.error_bar),
    ];
    let lines: Vec<AnyView> = lines
        .into_iter()
        .map(|(name, text)| view! { <p><b>{name}</b>" "{text}</p> }.into_any())
        .collect();
    view! {
        <div class="why-text">
            <p class="why-title">{why.title}</p>
            {lines}
        </div>
    }
    .into_any()
}

/// A button.
pub(super) fn button(class: &'static str, label: &'static str, on_click: Box<dyn Fn()>) -> AnyView {
    view! { <button type="button" class=class on:click=move |_| on_click()>{label}</button> }
        .into_any()
}

/// A choice from a list given as HTML (`option_html`, `group_html`).
pub(super) fn choice(
    id: &'static str,
    label: &'static str,
    options: String,
    value: Signal<String>,
    on_change: Box<dyn Fn(String)>,
) -> AnyView {
    view! {
        <div class="field">
            <div class="field-head"><label for=id>{label}</label></div>
            <select
                id=id
                inner_html=options
                prop:value=move || value.get()
                on:change=move |event| on_change(event_target_value(&event))
            ></select>
        </div>
    }
    .into_any()
}

/// Adds one option to a list for [`choice`].
pub(super) fn option_html(list: &mut String, value: &str, label: &str) {
    list.push_str("<option value=\"");
    escape(list, value);
    list.push_str("\">");
    escape(list, label);
    list.push_str("</option>");
}

/// Opens (with a name) or closes a group of options.
pub(super) fn group_html(list: &mut String, name: Option<&str>) {
    match name {
        Some(name) => {
            list.push_str("<optgroup label=\"");
            escape(list, name);
            list.push_str("\">");
        }
        None => list.push_str("</optgroup>"),
    }
}

fn escape(list: &mut String, text: &str) {
    for letter in text.chars() {
        match letter {
            '&' => list.push_str("&amp;"),
            '<' => list.push_str("&lt;"),
            '>' => list.push_str("&gt;"),
            '"' => list.push_str("&quot;"),
            other => list.push(other),
        }
    }
}

/// One of a few choices, all in sight.
pub(super) fn radios<T: Copy + PartialEq + Send + Sync + 'static>(
    group: &'static str,
    legend: &'static str,
    choices: &'static [(&'static str, T)],
    value: Signal<T>,
    on_pick: fn(Page, T),
    page: Page,
) -> AnyView {
    let options: Vec<AnyView> = choices
        .iter()
        .map(|(label, choice)| {
            let choice = *choice;
            view! {
                <label class="radio">
                    <input
                        type="radio"
                        name=group
                        prop:checked=move || value.get() == choice
                        on:change=move |_| on_pick(page, choice)
                    />
                    <span>{*label}</span>
                </label>
            }
            .into_any()
        })
        .collect();
    view! {
        <fieldset class="radios" id=group>
            <legend>{legend}</legend>
            {options}
        </fieldset>
    }
    .into_any()
}

/// The shape of a severity, so that colour never speaks alone: a tick in a
/// ring, a ring with a dot, a triangle, an octagon.
pub(super) const fn severity_shape(severity: Severity) -> &'static str {
    match severity {
        Severity::Good => "M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM5.5 10.5l3 3l6-7",
        Severity::Note => "M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM10 9v6M10 5v1.5",
        Severity::Caution => "M10 1.5L19 18.5H1zM10 7v6M10 15v1.5",
        Severity::Stop => "M6.3 1h7.4L19 6.3v7.4L13.7 19H6.3L1 13.7V6.3zM6.5 6.5l7 7M13.5 6.5l-7 7",
    }
}

/// A severity as shape and word.
pub(super) fn badge(severity: Severity) -> AnyView {
    view! {
        <span class=["badge is-", words::severity_key(severity)].concat()>
            <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
                <path d=severity_shape(severity)/>
            </svg>
            {words::severity_word(severity)}
        </span>
    }
    .into_any()
}

/// Which part of the page a finding belongs to.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    Can,
    Feed,
    Match,
    Beam,
}

fn place_of(finding: &Finding) -> Place {
    match finding {
        Finding::NoMode { .. }
        | Finding::NearCutoff { .. }
        | Finding::OneMode { .. }
        | Finding::SeveralModes { .. }
        | Finding::TooShort { .. } => Place::Can,
        Finding::ProbeTooDeep { .. }
        | Finding::ProbeNearBack { .. }
        | Finding::ProbeNearMouth { .. }
        | Finding::WireTooThickForHole { .. }
        | Finding::SleeveThinnerThanWire { .. }
        | Finding::HoleLineImpedance { .. }
        | Finding::ScrewImpossible { .. } => Place::Feed,
        Finding::BeamOfOneModeOnly | Finding::BeamOfEndlessPipe { .. } => Place::Beam,
        _ => Place::Match,
    }
}

/// The findings that belong to one part, as sentences.
pub(super) fn findings(page: Page, place: Place) -> AnyView {
    let list = move || {
        let unit = page.unit.get();
        page.analysis.with(|analysis| {
            analysis.as_ref().map_or_else(Vec::new, |analysis| {
                analysis
                    .verdict
                    .iter()
                    .filter(|finding| place_of(finding) == place)
                    .map(|finding| said(words::finding(finding, unit)))
                    .collect::<Vec<AnyView>>()
            })
        })
    };
    view! { <ul class="findings">{list}</ul> }.into_any()
}

fn said(said: words::Said) -> AnyView {
    view! {
        <li data-code=said.code>
            {badge(said.severity)}
            <div><strong>{said.headline}</strong><p>{said.sentence}</p></div>
        </li>
    }
    .into_any()
}
