//! The match as a table: the chart's data for those who want figures.

use leptos::html::Details;
use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;

use crate::drawing::match_rows::{MOST_ROWS, MatchRow, match_rows};
use crate::drawing::match_words::vswr_text;
use crate::entry::{format_decimal, format_frequency_exact};

/// A fold with the table. Its rows are made when it is first opened, and from
/// then on follow the sweep.
pub(super) fn match_table(sweep: Signal<Vec<SweepPoint>>, band: Signal<Band>) -> AnyView {
    let fold = NodeRef::<Details>::new();
    let (open, set_open) = signal(false);
    let rows = Memo::new(move |_| {
        if open.get() {
            sweep.with(|points| match_rows(points, band.get()))
        } else {
            Vec::new()
        }
    });
    let toggle = move |_| set_open.set(fold.get_untracked().is_some_and(|fold| fold.open()));
    view! {
        <details class="pic-fold" node_ref=fold on:toggle=toggle>
            <summary>"The same as a table"</summary>
            <div class="pic-table-frame" tabindex="0" role="region" aria-label="Match over frequency, table">
                <table class="pic-table">
                    <thead>
                        <tr>
                            <th scope="col">"Frequency"<br/>"MHz"</th>
                            <th scope="col">"VSWR"<br/>"ratio"</th>
                            <th scope="col">"Return loss"<br/>"dB"</th>
                            <th scope="col">"Resistance"<br/>"Ω"</th>
                            <th scope="col">"Reactance"<br/>"Ω"</th>
                        </tr>
                    </thead>
                    <tbody>
                        {move || open.get().then(|| {
                            (0..MOST_ROWS).map(|slot| table_row(rows, slot)).collect::<Vec<_>>()
                        })}
                    </tbody>
                </table>
            </div>
        </details>
    }
    .into_any()
}

fn table_row(rows: Memo<Vec<MatchRow>>, slot: usize) -> AnyView {
    let is_absent = move || rows.with(|rows| slot >= rows.len());
    let is_edge = move || rows.with(|rows| rows.get(slot).is_some_and(|row| row.is_edge));
    let cell = move |says: fn(&MatchRow) -> Option<String>| {
        view! {
            <td>
                {move || rows.with(|rows| {
                    rows.get(slot).map(|row| says(row).unwrap_or_else(|| "–".to_owned()))
                })}
            </td>
        }
    };
    view! {
        <tr hidden=is_absent class:pic-edge-row=is_edge>
            <th scope="row">
                {move || rows.with(|rows| rows.get(slot).map(|row| format_frequency_exact(row.khz)))}
                {move || is_edge().then_some(" band edge")}
            </th>
            {cell(|row| row.at.map(|at| vswr_text(at.vswr)))}
            {cell(|row| row.return_loss_db().map(|db| format_decimal(db, 1)))}
            {cell(|row| row.at.map(|at| format_decimal(at.impedance_ohm.re, 1)))}
            {cell(|row| row.at.map(|at| format_decimal(at.impedance_ohm.im, 1)))}
        </tr>
    }
    .into_any()
}
