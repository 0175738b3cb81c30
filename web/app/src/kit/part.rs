//! Parts of a station: a heading, a line below it, and what it is about.

use leptos::prelude::*;

use super::new_id;

/// A part on the sheet: a picture, chart or table with its heading.
///
/// ```ignore
/// view! { <Part title="Match over the band" note="VSWR, lower is better">…</Part> }
/// ```
#[component]
pub fn Part(
    /// Its heading.
    #[prop(into)]
    title: Signal<String>,
    /// The line below: what is shown, in which unit.
    #[prop(optional, into)]
    note: Signal<String>,
    /// Whether it wants the column's whole width even where two fit.
    #[prop(optional)]
    wide: bool,
    /// What it shows.
    children: Children,
) -> impl IntoView {
    let id = new_id("part");
    let named = id.clone();
    view! {
        <section class=if wide { "part wide" } else { "part" } aria-labelledby=named>
            <h2 id=id>{title}</h2>
            <Show when=move || !note.with(String::is_empty)>
                <p class="note">{note}</p>
            </Show>
            {children()}
        </section>
    }
}

/// A group of entries under a heading with a thick line.
///
/// ```ignore
/// view! { <EntryGroup title="Wire and connector"> <DesignField ../> </EntryGroup> }
/// ```
#[component]
pub fn EntryGroup(
    /// Its heading.
    #[prop(into)]
    title: Signal<String>,
    /// A few words at the heading's right.
    #[prop(optional, into)]
    note: Signal<String>,
    /// Whether the heading is only for those who hear the page (where sight needs none).
    #[prop(optional)]
    quiet: bool,
    /// The entries.
    children: Children,
) -> impl IntoView {
    let id = new_id("group");
    let named = id.clone();
    view! {
        <section class=if quiet { "entry-group quiet" } else { "entry-group" } aria-labelledby=named>
            <h2 id=id>{title}<span class="note">{note}</span></h2>
            {children()}
        </section>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_is_named_by_its_heading() {
        let html =
            Owner::new().with(|| view! { <Part title="How wide may it be?">"x"</Part> }.to_html());
        let id = html
            .split("aria-labelledby=\"")
            .nth(1)
            .and_then(|rest| rest.split('"').next());
        assert!(
            html.contains(&format!("<h2 id=\"{}\"", id.unwrap_or("none"))),
            "{html}"
        );
        assert!(
            !html.contains("class=\"note\""),
            "no empty line below: {html}"
        );
    }

    #[test]
    fn a_group_keeps_its_heading_for_those_who_hear() {
        let html = Owner::new()
            .with(|| view! { <EntryGroup title="Size" quiet=true>"x"</EntryGroup> }.to_html());
        assert!(html.contains("Size") && html.contains("quiet"), "{html}");
    }
}
