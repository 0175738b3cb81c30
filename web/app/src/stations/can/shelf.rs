//! Other sizes: the own can first and marked, then the best.

use leptos::prelude::*;
use tinwave_core::grade::Grade;
use tinwave_maker::entry::{LengthUnit, format_length_number, strip_round};
use tinwave_maker::fits::Room;
use tinwave_words::can as words;

use super::fits::{Fits, SizeRow};
use crate::kit::{Action, Part, ProgressBar};
use crate::reactive::{live, memo};
use crate::state::{Freshness, Workshop};

/// So many are shown beside the own can.
const BEST: usize = 4;

/// What the cells of a row hold.
#[derive(Clone, Debug, Default, PartialEq)]
struct Cells {
    name: String,
    kind: String,
    /// Inside, strip, outside, length.
    measures: [String; 4],
    room: String,
    vswr: String,
    /// Beside the VSWR: that it is less than good.
    grade: &'static str,
}

/// The list as a part of the station.
#[component]
pub fn OnTheShelf() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let fits = Fits::of_station();
    let all = RwSignal::new(false);
    let count = memo(move || fits.rows.with(Vec::len));
    let grade = memo(move || workshop.answers.graded.with(|graded| graded.grade));
    // While a row has the focus the rows keep their places, whatever is matched meanwhile:
    // a row that is moved would lose it.
    let is_walked = RwSignal::new(false);
    let shown = Memo::new(move |before: Option<&Vec<usize>>| {
        let most = if all.get() { usize::MAX } else { BEST };
        let is_walked = is_walked.get();
        fits.rows.with(|rows| {
            let now: Vec<_> = rows.iter().map(|row| row.fit.index).collect();
            let holds = |before: &&Vec<usize>| {
                before.len() == most.min(now.len()) && before.iter().all(|one| now.contains(one))
            };
            match before.filter(|_| is_walked).filter(holds) {
                Some(before) => before.clone(),
                None => now.into_iter().take(most).collect(),
            }
        })
    });
    let matched = move || {
        fits.rows
            .with(|rows| rows.iter().filter(|row| row.matched.is_some()).count())
    };
    let heads = words::shelf_heads().map(|head| view! { <span>{head}</span> });
    let has_more = move || count.get() > BEST;
    let more = move || {
        if all.get() {
            words::fewer_sizes().to_owned()
        } else {
            words::all_sizes(count.get())
        }
    };
    view! {
        <Part title=move || words::shelf(grade.get()).to_owned() wide=true
            note=move || words::shelf_note(count.get(), matched() == count.get(), workshop.unit.get())>
            <div class="sizes">
                <div class="sizes-head" aria-hidden="true">{heads}<span></span></div>
                <ul on:focusin=move |_| is_walked.set(true)
                    on:focusout=move |_| {
                        is_walked.try_set(false);
                    }>
                    <li><OwnRow/></li>
                    <For each=move || shown.get() key=|index| *index let:index>
                        <li><SizeButton index/></li>
                    </For>
                </ul>
            </div>
            <Show when=move || fits.sizes_done().is_some()>
                <ProgressBar done=move || fits.sizes_done().unwrap_or_default()
                    text=move || words::matching_sizes(matched(), count.get())
                    on_stop=move |()| fits.stop()/>
            </Show>
            <div class="actions">
                <Show when=has_more>
                    <Action text=more on_press=move |()| all.update(|all| *all = !*all)/>
                </Show>
                <Show when=move || fits.is_stopped()>
                    <Action text=words::match_sizes() on_press=move |()| fits.ask_again()/>
                </Show>
            </div>
        </Part>
    }
    .into_any()
}

/// The own can, marked.
#[component]
fn OwnRow() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let cells = memo(move || own_cells(workshop));
    view! { <div class="size-row own">{live(move || row_cells(&cells.get()))}<span class="size-take"></span></div> }
    .into_any()
}

/// Another size: the whole row takes it.
#[component]
fn SizeButton(index: usize) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let fits = Fits::of_station();
    let row = memo(move || {
        fits.rows
            .with(|rows| rows.iter().find(|row| row.fit.index == index).cloned())
    });
    let cells = memo(move || {
        let unit = workshop.unit.get();
        row.with(|row| row.as_ref().map(|row| cells_of(row, unit)))
            .unwrap_or_default()
    });
    let is_taken = memo(move || {
        row.with(|row| {
            let row = row.as_ref();
            row.is_some_and(|row| workshop.work.with(|work| row.fit.is_can_of(&work.design)))
        })
    });
    let take = move |_| {
        if let Some(row) = row.get_untracked() {
            fits.take(&row);
        }
    };
    view! {
        <button type="button" class="size-row" class:taken=move || is_taken.get() on:click=take
            aria-pressed=move || if is_taken.get() { "true" } else { "false" }>
            {live(move || row_cells(&cells.get()))}
            <span class="size-take">
                {live(move || if is_taken.get() { words::taken() } else { words::take() })}
            </span>
        </button>
    }
    .into_any()
}

fn row_cells(cells: &Cells) -> impl IntoView + use<> {
    let measures = words::before_figure()
        .into_iter()
        .zip(cells.measures.clone())
        .map(|(before, figure)| {
            view! { <span class="size-measure"><span class="before">{before}" "</span>{figure}</span> }
        })
        .collect_view();
    let grade = (!cells.grade.is_empty()).then(|| view! { <small>{cells.grade}</small> });
    view! {
        <span class="size-name"><strong>{cells.name.clone()}</strong><small>{cells.kind.clone()}</small></span>
        <span class="measures">{measures}</span>
        <span class="size-room"><span class="before">{words::room_before()}" "</span>{cells.room.clone()}</span>
        <span class="size-vswr"><span class="before">"VSWR "</span><strong>{cells.vswr.clone()}</strong>{grade}</span>
    }
    .into_any()
}

fn measures(um: [u32; 3], length: String, unit: LengthUnit) -> [String; 4] {
    let [inside, strip, outside] = um.map(|um| format_length_number(um, unit));
    [inside, strip, outside, length]
}

fn own_cells(workshop: Workshop) -> Cells {
    let answers = workshop.answers;
    let unit = workshop.unit.get();
    let graded = answers.graded.get();
    let waits = answers.freshness.get() == Freshness::Pending || !graded.complete;
    let worst = answers.best_analysis.with(|known| {
        let summary = known.as_ref()?.match_summary?;
        Some(summary.worst_vswr_in_band)
    });
    let vswr = match (waits && !workshop.is_example(), worst, answers.has_cut()) {
        (_, _, false) => "–".to_owned(),
        (true, _, true) | (false, None, true) => "…".to_owned(),
        (false, worst, true) => words::vswr(worst),
    };
    workshop.work.with(|work| {
        let can = &work.design.can;
        let outside = can
            .inside_diameter_um
            .saturating_add(can.wall_um.saturating_mul(2));
        let strip = strip_round(outside);
        Cells {
            name: words::your_can_row().to_owned(),
            kind: work.design.name.clone(),
            measures: measures(
                [can.inside_diameter_um, strip, outside],
                format_length_number(can.open_length_um, unit),
                unit,
            ),
            room: words::room(
                Room {
                    below: graded.room_below,
                    above: graded.room_above,
                },
                graded.grade,
            ),
            vswr,
            grade: words::less_than_good(graded.grade),
        }
    })
}

fn cells_of(row: &SizeRow, unit: LengthUnit) -> Cells {
    let fit = &row.fit;
    let size = fit.size();
    let outside = fit.outside_um();
    let strip = strip_round(outside);
    let length = words::shelf_length(fit.length_um(), fit.has_own_length(), unit);
    let (vswr, grade) = row
        .matched
        .as_ref()
        .map_or(("…".to_owned(), ""), |matched| {
            let worst = matched.cut.map(|cut| cut.worst_vswr);
            (
                words::vswr(worst),
                words::less_than_good(matched.graded.grade),
            )
        });
    Cells {
        name: size.name.to_owned(),
        kind: words::sold_as(size),
        measures: measures([size.inside_um, strip, outside], length, unit),
        room: words::room(fit.room, Grade::WillDo),
        vswr,
        grade,
    }
}
