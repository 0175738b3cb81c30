//! Headline figures: label, value, unit, note; each opens its reasons.

use leptos::prelude::*;
use tinwave_words::frame as words;

use super::{Icon, IconName};
use crate::browser::Timer;
use crate::reactive::{live, memo};

/// How long the old value stands beside a new one, in milliseconds.
const WAS_MS: u32 = 6_000;

/// How sure a figure is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FigureState {
    /// As good as it gets.
    #[default]
    Plain,
    /// A better one is being worked out; the value has its ±.
    Estimate,
    /// Not there yet: the value is "…", the note says what it waits for.
    Waiting,
}

/// The colour of a figure.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FigureTone {
    /// A result.
    #[default]
    Ink,
    /// The wire, or what is to be taken off it.
    Copper,
}

/// What stands in a figure's cell.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FigureText {
    /// The value.
    pub value: String,
    /// Its unit; may be empty.
    pub unit: String,
    /// The line below: what it is measured from.
    pub note: String,
    /// How sure it is.
    pub state: FigureState,
}

impl FigureText {
    /// A figure as good as it gets.
    pub fn plain(
        value: impl Into<String>,
        unit: impl Into<String>,
        note: impl Into<String>,
    ) -> Self {
        Self {
            value: value.into(),
            unit: unit.into(),
            note: note.into(),
            state: FigureState::Plain,
        }
    }

    /// A figure that is not there yet, and what it waits for.
    pub fn waiting(note: impl Into<String>) -> Self {
        Self {
            value: "…".into(),
            unit: String::new(),
            note: note.into(),
            state: FigureState::Waiting,
        }
    }
}

/// Why a figure is what it is. Empty parts are left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct WhyText {
    /// How it is worked out.
    pub how: String,
    /// How far it may be off.
    pub sure: String,
    /// The published source.
    pub source: String,
}

impl From<&tinwave_words::Why> for WhyText {
    fn from(why: &tinwave_words::Why) -> Self {
        let parts = [why.formula, why.inputs];
        let how = parts.iter().filter(|part| !part.is_empty()).copied();
        Self {
            how: how.collect::<Vec<_>>().join(" "),
            sure: why.error_bar.into(),
            source: why.source.into(),
        }
    }
}

/// The block of a station's figures, four at most.
///
/// ```ignore
/// view! { <Figures> <Figure ../> <Figure ../> <Figure ../> <Figure ../> </Figures> }
/// ```
#[component]
pub fn Figures(
    /// The cells.
    children: Children,
) -> impl IntoView {
    view! { <div class="figures">{children()}</div> }
}

/// One figure. The whole cell opens its reasons.
///
/// ```ignore
/// view! { <Figure label="VSWR, at worst" text=move || FigureText::plain("1.06", "", "in the band")
///     why=move || WhyText::from(&why(Shown::Vswr))/> }
/// ```
#[component]
pub fn Figure(
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// Value, unit, note.
    #[prop(into)]
    text: Signal<FigureText>,
    /// Its reasons.
    #[prop(into)]
    why: Signal<WhyText>,
    /// Its colour.
    #[prop(optional)]
    tone: FigureTone,
) -> impl IntoView {
    let text = memo(move || text.get());
    let was = old_value(text);
    let class = move || match (tone, text.with(|text| text.state)) {
        (_, FigureState::Waiting) => "figure waiting",
        (_, FigureState::Estimate) => "figure estimate",
        (FigureTone::Copper, _) => "figure copper",
        (FigureTone::Ink, _) => "figure",
    };
    view! {
        <details class=class>
            <summary>
                <span class="figure-label">{label}</span>
                <span class="figure-why" aria-hidden="true">{words::why()}</span>
                <span class="figure-value">
                    {live(move || text.with(|text| text.value.clone()))}
                    <Show when=move || text.with(|text| !text.unit.is_empty())>
                        " "<span class="figure-unit">{live(move || text.with(|text| text.unit.clone()))}</span>
                    </Show>
                </span>
                <span class="figure-note">
                    <span class:covered=move || was.with(Option::is_some)>
                        {live(move || text.with(|text| text.note.clone()))}
                    </span>
                    {live(move || was.get().map(|was| view! { <OldValue was/> }))}
                </span>
                <span class="unseen">{live(move || format!(" {}", words::why_of(&label.get())))}</span>
            </summary>
            <div class="reasons">{live(move || why.with(reasons))}</div>
        </details>
    }
}

/// The value before the last change, for a while.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Before {
    value: String,
    arrow: Option<IconName>,
}

fn old_value(text: Memo<FigureText>) -> RwSignal<Option<Before>> {
    let was = RwSignal::new(None::<Before>);
    let rest = Timer::new();
    Effect::new(move |settled: Option<FigureText>| {
        let now = text.get();
        // Only settled values are told of: an estimate that gets better is no change.
        if now.state != FigureState::Plain {
            return settled.unwrap_or(now);
        }
        if let Some(settled) = settled
            && settled.state == FigureState::Plain
            && (&settled.value, &settled.unit) != (&now.value, &now.unit)
            && settled.unit == now.unit
        {
            was.set(Some(Before {
                arrow: direction(&settled.value, &now.value),
                value: settled.value,
            }));
            rest.set(WAS_MS, move || was.set(None));
        }
        now
    });
    was
}

/// Which way a value went, where both are single numbers.
fn direction(before: &str, now: &str) -> Option<IconName> {
    // In millionths: a reader of any number at all weighs more than the rest of this file.
    let millionths = |text: &str| {
        let plain = text.replace('−', "-");
        let (whole, part) = plain.split_once('.').unwrap_or((&plain, ""));
        let sign_and_digits = format!("{whole}{part:0<6}");
        (part.len() <= 6).then(|| sign_and_digits.parse::<i64>().ok())?
    };
    match millionths(now)?.cmp(&millionths(before)?) {
        std::cmp::Ordering::Less => Some(IconName::Down),
        std::cmp::Ordering::Greater => Some(IconName::Up),
        std::cmp::Ordering::Equal => None,
    }
}

#[component]
fn OldValue(was: Before) -> impl IntoView {
    view! {
        <span class="old-value">
            {was.arrow.map(|name| view! { <Icon name/> })}
            {words::was(&was.value)}
        </span>
    }
}

fn reasons(why: &WhyText) -> impl IntoView + use<> {
    [
        (words::how_worked_out(), why.how.clone()),
        (words::how_sure(), why.sure.clone()),
        (words::source(), why.source.clone()),
    ]
    .into_iter()
    .filter(|(_, text)| !text.is_empty())
    .map(|(head, text)| view! { <p><strong>{head}</strong>" "{text}</p> })
    .collect_view()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figure(text: FigureText, tone: FigureTone) -> String {
        let why = WhyText {
            how: "Plain addition.".into(),
            ..WhyText::default()
        };
        Owner::new().with(|| view! { <Figure label="Drill at" text=text why=why tone/> }.to_html())
    }

    #[test]
    fn the_whole_cell_opens_its_reasons_and_names_them() {
        let html = figure(
            FigureText::plain("74.1", "mm", "from the rim"),
            FigureTone::Ink,
        );
        let line = html.split("</summary>").next().unwrap_or_default();
        assert!(line.contains("74.1") && line.contains("mm") && line.contains("from the rim"));
        assert!(line.contains("why: Drill at"), "{line}");
        assert!(html.contains("Plain addition."), "{html}");
        assert!(!html.contains("Source"), "no head without a text: {html}");
    }

    #[test]
    fn a_waiting_figure_and_copper_are_told_apart() {
        let waiting = figure(
            FigureText::waiting("waits for the beam"),
            FigureTone::Copper,
        );
        assert!(
            waiting.contains("figure waiting") && waiting.contains('…'),
            "{waiting}"
        );
        let wire = figure(FigureText::plain("31.5", "mm", ""), FigureTone::Copper);
        assert!(wire.contains("figure copper"), "{wire}");
    }

    #[test]
    fn the_arrow_shows_the_direction_of_single_numbers_only() {
        assert_eq!(direction("1.38", "1.06"), Some(IconName::Down));
        assert_eq!(direction("−1.9", "+2.5"), Some(IconName::Up));
        assert_eq!(direction("−1.9 +2.5", "−1.8 +2.5"), None);
    }
}
