//! The same as a table, below every chart.

use leptos::prelude::*;
use tinwave_words::chart::table_of;
use tinwave_words::frame as words;

/// A table's texts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TableText {
    /// Heads of the columns, with their units.
    pub head: Vec<String>,
    /// Rows, as many cells each; the first names the row.
    pub rows: Vec<Vec<String>>,
}

/// A chart's figures as a table, made when it is opened.
///
/// ```ignore
/// view! { <TableFold name="Match over the band" table=move || rows.get()/> }
/// ```
#[component]
pub fn TableFold(
    /// What the table is of.
    #[prop(into)]
    name: Signal<String>,
    /// Its texts; asked for only while it is open.
    #[prop(into)]
    table: Signal<TableText>,
    /// Whether it stands open at first.
    #[prop(optional)]
    open: bool,
) -> impl IntoView {
    let is_open = RwSignal::new(open);
    let rows = move || {
        let table = table.get();
        view! {
            <thead><tr>{table.head.into_iter().map(|head| view! { <th scope="col">{head}</th> }).collect_view()}</tr></thead>
            <tbody>{table.rows.into_iter().map(row).collect_view()}</tbody>
        }
    };
    view! {
        <details class="table-fold" open=open
            on:toggle=move |event| is_open.set(event_target::<web_sys::HtmlElement>(&event).has_attribute("open"))>
            <summary>{words::same_as_table()}<span class="unseen">": "{name}</span></summary>
            <Show when=move || is_open.get()>
                // A name of its own: the part around it has the plain one.
                <div class="wide-table" role="region" tabindex="0" aria-label=move || name.with(|name| table_of(name))>
                    <table class="figures-table">{rows}</table>
                </div>
            </Show>
        </details>
    }
}

fn row(cells: Vec<String>) -> impl IntoView {
    let mut cells = cells.into_iter();
    let name = cells.next().unwrap_or_default();
    view! {
        <tr>
            <th scope="row">{name}</th>
            {cells.map(|cell| view! { <td>{cell}</td> }).collect_view()}
        </tr>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table() -> TableText {
        TableText {
            head: vec!["MHz".into(), "VSWR".into()],
            rows: vec![vec!["2400".into(), "1.05".into()]],
        }
    }

    #[test]
    fn a_shut_table_is_named_and_not_made() {
        let html = Owner::new()
            .with(|| view! { <TableFold name="Match" table=Signal::derive(table)/> }.to_html());
        assert!(html.contains("Match") && !html.contains("<table"), "{html}");
    }

    #[test]
    fn an_open_table_can_be_reached_by_keys_and_names_its_rows() {
        let html = Owner::new().with(|| {
            view! { <TableFold name="Match" open=true table=Signal::derive(table)/> }.to_html()
        });
        assert!(
            html.contains("tabindex=\"0\"") && html.contains("aria-label=\"Match, as a table\""),
            "{html}"
        );
        assert!(html.contains("scope=\"row\">2400"), "{html}");
    }
}
