//! Charts: curves on a canvas, letters over it that follow the user's letter size, a
//! line to read off, and the same as a table.

mod canvas;
mod letters;
#[cfg(target_arch = "wasm32")]
mod plot;
mod reading_line;

use leptos::html::{Canvas, Div};
use leptos::prelude::*;
use tinwave_drawing::chart::{ChartLayout, ChartSpec, PlotSize, Reading};
use tinwave_words::chart as words;

use super::{Part, TableFold, TableText};
use crate::browser;
use crate::reactive::{effect, live, memo};
use reading_line::LineKeys;

/// A chart over two axes: title, what is shown, plot, reading line, readout, table.
///
/// The data is a [`ChartSpec`] (see `tinwave_drawing::chart`): axes, curves, band,
/// limits, marks. The chart is redrawn when it changes.
///
/// ```ignore
/// use tinwave_drawing::chart::{Axis, ChartSpec, Series, Style};
///
/// let spec = move || {
///     let mut spec = ChartSpec::new(Axis::frequency_mhz(2_318.5, 2_566.0), Axis::vswr(worst.get()));
///     spec.band = Some((2_400.0, 2_483.5));
///     spec.band_name = tinwave_words::chart::your_band().to_owned();
///     spec.limits = vec![1.5];
///     spec.series = vec![
///         Series::new("measured", Style::Measured, measured.get()),   // Vec<(x, y)>; NaN: a gap
///         Series::new("predicted", Style::Compared, predicted.get()),
///     ];
///     spec
/// };
/// view! { <XyChart title="Measured and predicted" note="VSWR, lower is better" spec/> }
/// ```
#[component]
pub fn XyChart(
    /// Its heading.
    #[prop(into)]
    title: Signal<String>,
    /// The line below: what goes up the plot, in words, with its unit; else the axis'
    /// own name and unit.
    #[prop(optional, into)]
    note: Signal<String>,
    /// What it shows.
    #[prop(into)]
    spec: Signal<ChartSpec>,
    /// What is said where there is nothing to draw.
    #[prop(optional, into)]
    empty: Signal<String>,
    /// Whether it wants the column's whole width even where two fit.
    #[prop(optional)]
    wide: bool,
    /// Where the reading line stands, shared with other pictures; `None` in it: at rest.
    #[prop(optional)]
    reading: Option<RwSignal<Option<f64>>>,
    /// More words for the readout, of the line's place.
    #[prop(optional, into)]
    also: Option<Callback<f64, String>>,
) -> impl IntoView {
    let spec = memo(move || spec.get());
    let size = RwSignal::new(PlotSize::FIRST);
    let layout = memo(move || spec.with(|spec| ChartLayout::new(spec, size.get())));
    let chosen = reading.unwrap_or_else(|| RwSignal::new(None));
    let reading =
        memo(move || spec.with(|spec| spec.read(chosen.get().unwrap_or_else(|| spec.rest()))));
    let note = move || {
        let said = note.get();
        if said.is_empty() {
            spec.with(|spec| spec.y.head())
        } else {
            said
        }
    };
    let is_empty = memo(move || spec.with(ChartSpec::is_empty));
    let nothing = move || {
        let said = empty.get();
        if said.is_empty() {
            words::nothing().to_owned()
        } else {
            said
        }
    };
    view! {
        <Part title note wide>
            <Show when=move || !is_empty.get()
                fallback=move || view! { <p class="chart-empty">{nothing}</p> }>
                {chart_plot(title, spec, layout, size, reading, chosen)}
                <p class="chart-readout">{live(move || reading.with(readout))}
                    {also.map(|also| view! { <span>{live(move || also.run(reading.with(|reading| reading.x)))}</span> })}
                </p>
                {fold(title, spec)}
            </Show>
        </Part>
    }
}

/// The plot with its letters and its reading line.
fn chart_plot(
    title: Signal<String>,
    spec: Memo<ChartSpec>,
    layout: Memo<ChartLayout>,
    size: RwSignal<PlotSize>,
    reading: Memo<Reading>,
    chosen: RwSignal<Option<f64>>,
) -> AnyView {
    let place = NodeRef::<Div>::new();
    let paper = NodeRef::<Canvas>::new();
    effect(move || {
        let Some(place) = place.get() else { return };
        let watched = place.clone();
        browser::watch_size(&place, move |width, height| {
            let letter = browser::letter_px(&watched);
            size.set(PlotSize {
                width,
                height,
                letter,
            });
        });
    });
    canvas::keep_drawn(paper, spec, layout);
    let keys = LineKeys { spec, chosen };
    let x = move |value: fn(&ChartSpec) -> f64| spec.with(|spec| value(spec).to_string());
    let name = move || words::reading_line(&title.get(), &spec.with(|spec| spec.x.name.clone()));
    view! {
        <div class="chart" data-letters=move || layout.with(|layout| layout.y_letters().to_string())>
            <div class="chart-plot" node_ref=place role="slider" tabindex="0" aria-label=name
                aria-orientation="horizontal"
                aria-valuemin=move || x(|spec| spec.x.low.min(spec.x.high))
                aria-valuemax=move || x(|spec| spec.x.low.max(spec.x.high))
                aria-valuenow=move || reading.with(|reading| reading.x.to_string())
                aria-valuetext=move || reading.with(Reading::sentence)
                on:keydown=move |event| keys.press(&event)
                on:pointerdown=move |event| keys.take(&event)
                on:pointermove=move |event| keys.follow(&event)>
                <canvas class="chart-canvas" node_ref=paper aria-hidden="true"></canvas>
                <svg class="chart-letters" aria-hidden="true">
                    {letters::letters(spec, layout)}
                    {reading_line::line(spec, reading)}
                </svg>
            </div>
        </div>
    }
    .into_any()
}

fn fold(title: Signal<String>, spec: Memo<ChartSpec>) -> AnyView {
    view! { <TableFold name=title table=move || spec.with(table)/> }.into_any()
}

fn readout(reading: &Reading) -> impl IntoView + use<> {
    let values = reading.values.iter().map(|value| {
        let (text, name) = (value.text.clone(), value.name.clone());
        view! { <span class=value.style.class()><b>{text}</b>" "{name}</span> }
    });
    view! { <b>{reading.place.clone()}</b>{values.collect_view()} }
}

fn table(spec: &ChartSpec) -> TableText {
    let named = |name: &str| {
        if name.is_empty() {
            spec.y.head()
        } else {
            name.to_owned()
        }
    };
    let mut head = vec![spec.x.head()];
    head.extend(spec.series.iter().map(|series| named(&series.name)));
    let row = |row: tinwave_drawing::chart::TableRow| {
        let mut cells = vec![row.place];
        cells.extend(row.values);
        cells
    };
    TableText {
        head,
        rows: spec.rows().into_iter().map(row).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_drawing::chart::{Axis, Series, Style};

    fn spec(points: Vec<(f64, f64)>) -> ChartSpec {
        let mut spec = ChartSpec::new(Axis::frequency_mhz(2_300.0, 2_500.0), Axis::vswr(1.4));
        spec.band = Some((2_400.0, 2_483.5));
        spec.band_name = "your band".into();
        spec.series = vec![Series::new("best", Style::This, points)];
        spec
    }

    fn chart(points: Vec<(f64, f64)>) -> String {
        let spec = spec(points);
        Owner::new().with(|| {
            view! { <XyChart title="Match over the band" spec=Signal::stored(spec) empty="No cut, no curve."/> }
                .to_html()
        })
    }

    #[test]
    fn the_first_paint_has_letters_a_reading_and_no_inline_style() {
        let html = chart(vec![(2_300.0, 1.3), (2_500.0, 1.1)]);
        assert!(
            html.contains("<canvas") && html.contains(">2400<"),
            "{html}"
        );
        assert!(
            html.contains("your band") && html.contains(">MHz<"),
            "{html}"
        );
        assert!(
            html.contains("role=\"slider\"") && html.contains("2442\u{a0}MHz: best 1.16"),
            "{html}"
        );
        // The page's policy would refuse it.
        assert!(!html.contains(" style="), "{html}");
    }

    #[test]
    fn a_sentence_stands_in_place_of_an_empty_grid() {
        let html = chart(vec![(2_400.0, f64::NAN)]);
        assert!(
            html.contains("No cut, no curve.") && !html.contains("<canvas"),
            "{html}"
        );
    }

    #[test]
    fn the_table_names_its_columns_with_units() {
        let table = table(&spec(vec![(2_300.0, 1.3), (2_500.0, 1.1)]));
        assert_eq!(table.head, ["Frequency, MHz", "best"]);
        assert!(table.rows.iter().any(|row| row[0] == "2483.5"));
    }
}
