//! Facts in rows, and tables that stand open.

use leptos::prelude::*;

use crate::kit::TableText;
use crate::reactive::live;

/// What each thing is, and its value.
#[component]
pub fn Facts(
    /// The rows.
    #[prop(into)]
    rows: Signal<Vec<(String, String)>>,
) -> impl IntoView {
    view! {
        <dl class="facts">
            {live(move || rows.get().into_iter().map(|(what, value)| view! {
                <div><dt>{what}</dt><dd>{value}</dd></div>
            }).collect_view())}
        </dl>
    }
}

/// A table that stands open.
#[component]
pub fn OpenTable(
    /// What it is of.
    #[prop(into)]
    name: Signal<String>,
    /// Its texts.
    #[prop(into)]
    table: Signal<TableText>,
) -> impl IntoView {
    let body = move || {
        let table = table.get();
        let rows = table.rows.into_iter().map(|cells| {
            let mut cells = cells.into_iter();
            let head = cells.next().unwrap_or_default();
            let cells = cells.map(|cell| view! { <td>{cell}</td> }).collect_view();
            view! { <tr><th scope="row">{head}</th>{cells}</tr> }
        });
        view! {
            <thead><tr>{table.head.into_iter().map(|head| view! { <th scope="col">{head}</th> }).collect_view()}</tr></thead>
            <tbody>{rows.collect_view()}</tbody>
        }
    };
    view! {
        <div class="wide-table" role="region" tabindex="0" aria-label=name>
            <table class="figures-table">{body}</table>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_table_can_be_reached_by_keys_and_names_its_rows() {
        let table = TableText {
            head: vec!["Dimension".into(), "Off by".into()],
            rows: vec![vec!["Wire length".into(), "+1.0 mm".into()]],
        };
        let html = Owner::new().with(|| {
            view! { <OpenTable name="What is off" table=Signal::stored(table)/> }.to_html()
        });
        assert!(
            html.contains("tabindex=\"0\"") && html.contains("scope=\"row\">Wire length"),
            "{html}"
        );
    }
}
