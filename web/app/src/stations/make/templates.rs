//! Templates at true size: the choices, and the buttons that save and print.

use leptos::prelude::*;
use tinwave_core::design::{Micrometres, Mouth};
use tinwave_maker::bench::BracketPlace;
use tinwave_maker::entry::{LengthUnit, format_length_exact, parse_length};
use tinwave_protocol::print::{
    FileKind, PRINTED_RANGE_UM, PaperSize, Part as SheetPart, PrintedRulers, Rim, SideSeam,
};
use tinwave_words::make as words;

use super::bench::{Bench, Readiness};
use super::choices::{PAPERS, PrintChoices, RIMS, SEAMS, by_key, paper_key, rim_key, seam_key};
use super::print_job::{cap_note, rivet_note};
use super::saving::Saving;
use crate::kit::{Action, ActionKind, Check, Fault, Fold, NumberField, Part, Pick, ShortList};
use crate::reactive::{derived, effect, live, memo};

/// A paper's name.
pub(super) const fn paper_name(paper: PaperSize) -> &'static str {
    match paper {
        PaperSize::A4 => "A4",
        PaperSize::Letter => "Letter",
    }
}

/// The name of a part of the print.
pub(super) const fn part_name(part: SheetPart) -> &'static str {
    match part {
        SheetPart::BuildSheet => words::part_build_sheet(),
        SheetPart::DrillTemplate => words::part_drill_template(),
        SheetPart::CutGauge => words::part_cut_gauge(),
        SheetPart::MouthPattern => words::part_mouth(),
        SheetPart::Cap => words::part_cap(),
    }
}

const fn rim_name(rim: Rim) -> &'static str {
    match rim {
        Rim::Closed => words::closed_rim(),
        Rim::Open => words::mouth_rim(),
    }
}

const fn seam_name(seam: SideSeam) -> &'static str {
    match seam {
        SideSeam::Opposite => words::seam_opposite(),
        SideSeam::Through => words::seam_through(),
        SideSeam::None => words::seam_none(),
    }
}

/// The part of the station that prints.
#[component]
pub fn Templates(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let saving = Saving::new(bench);
    // While the station is open the worker computes ahead what printing wants.
    effect(move || {
        bench.question.track();
        if bench.readiness() == Readiness::Ready {
            bench.fit_then(|_| {});
        }
    });
    let can_print = move || bench.readiness() == Readiness::Ready && !saving.is_busy();
    let disabled = derived(move || !can_print());
    view! {
        <Part title=words::print_at_true_size() note=words::print_note()>
            <PaperChoices bench/>
            <div class="actions">
                <Action text=words::save_pdf() kind=ActionKind::Main disabled
                    on_press=move |()| saving.save(FileKind::Pdf)/>
                <Action text=words::print() disabled on_press=move |()| saving.print()/>
                <Action text=words::save_svg() says=words::save_svg_says() disabled
                    on_press=move |()| saving.save(FileKind::Svg)/>
                <Action text=words::save_dxf() says=words::save_dxf_says() disabled
                    on_press=move |()| saving.save(FileKind::Dxf)/>
            </div>
            <p class="print-said" role="status">{live(move || saving.said())}</p>
            <p class="note">{words::print_at_100()}</p>
            <RulersFold bench/>
            <SheetsFold bench/>
        </Part>
    }
}

/// A list of which one is chosen, kept in the choices.
fn list<T: Copy + Send + Sync + 'static, const N: usize>(
    bench: Bench,
    label: &'static str,
    all: [T; N],
    key_of: fn(T) -> &'static str,
    name_of: fn(T) -> &'static str,
    place: fn(&mut PrintChoices) -> &mut T,
) -> impl IntoView {
    let picks: Vec<_> = all
        .iter()
        .map(|one| Pick::new(key_of(*one), name_of(*one)))
        .collect();
    let chosen = move || {
        let mut choices = bench.choices.get();
        key_of(*place(&mut choices)).to_owned()
    };
    let choose = move |key: String| {
        if let Some(one) = by_key(all, key_of, &key) {
            bench.choices.update(|choices| *place(choices) = one);
        }
    };
    view! { <ShortList label picks chosen=Signal::derive(chosen) on_choose=choose/> }
}

/// Paper, rim, seam.
#[component]
fn PaperChoices(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    view! {
        {list(bench, words::paper(), PAPERS, paper_key, paper_name, |choices| &mut choices.paper)}
        {list(bench, words::laid_on(), RIMS, rim_key, rim_name, |choices| &mut choices.rim)}
        {list(bench, words::seam(), SEAMS, seam_key, seam_name, |choices| &mut choices.seam)}
    }
}

/// What the last print's rulers measured.
#[component]
fn RulersFold(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let summary = move || {
        let rulers = bench.choices.with(|choices| choices.rulers);
        words::rulers_said(&written(rulers.across_um), &written(rulers.upright_um))
    };
    view! {
        <Fold title=words::printed_rulers() summary=Signal::derive(summary)>
            <RulerField bench label=words::ruler_across() place=|rulers| &mut rulers.across_um/>
            <RulerField bench label=words::ruler_upright() place=|rulers| &mut rulers.upright_um/>
        </Fold>
    }
}

/// A printed ruler's length, always in millimetres: it is a ruler of 100 mm.
fn written(um: Micrometres) -> String {
    format_length_exact(um, LengthUnit::Millimetre)
}

#[component]
fn RulerField(
    /// The bench.
    bench: Bench,
    label: &'static str,
    place: fn(&mut PrintedRulers) -> &mut Micrometres,
) -> impl IntoView {
    let value = move || {
        let mut rulers = bench.choices.with(|choices| choices.rulers);
        written(*place(&mut rulers))
    };
    let take = move |text: String| -> Result<(), Fault> {
        let (low, high) = PRINTED_RANGE_UM;
        let um = parse_length(&text, LengthUnit::Millimetre)?.value;
        if !(low..=high).contains(&um) {
            return Err(words::ruler_out_of_range(low, high).into());
        }
        bench
            .choices
            .update(|choices| *place(&mut choices.rulers) = um);
        Ok(())
    };
    view! {
        <NumberField label unit="mm" help=words::ruler_help() value=Signal::derive(value)
            take=Callback::new(take)/>
    }
}

/// Which sheets, and the bracket.
#[component]
fn SheetsFold(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let has_mouth_part = move || {
        bench
            .workshop
            .work
            .with(|work| !matches!(work.design.mouth, Mouth::Open | Mouth::Absorbing))
    };
    let offered = memo(move || {
        let has_cap = bench.choices.with(|choices| choices.cap.is_some());
        SheetPart::ALL
            .into_iter()
            .filter(|part| match part {
                SheetPart::MouthPattern => has_mouth_part(),
                SheetPart::Cap => has_cap,
                _ => true,
            })
            .collect::<Vec<_>>()
    });
    let chosen = move |part| bench.choices.with(|choices| choices.has(part));
    let summary = move || {
        let offered = offered.get().into_iter();
        let names: Vec<_> = offered
            .filter(|part| chosen(*part))
            .map(part_name)
            .collect();
        words::parts_chosen(&names)
    };
    let check = move |part: SheetPart| {
        // The last sheet stays: there is nothing to print without it.
        let change = move |on: bool| {
            bench.choices.update(|choices| {
                choices.set_part(part, on);
                if choices.parts.is_empty() {
                    choices.set_part(part, true);
                }
            });
        };
        view! {
            <Check label=part_name(part) checked=derived(move || chosen(part))
                on_change=change/>
        }
    };
    view! {
        <Fold title=words::sheets() summary=Signal::derive(summary)>
            {live(move || offered.get().into_iter().map(check).collect_view())}
            <BracketChoice bench/>
            <FittingsSaid bench cap=false/>
        </Fold>
    }
}

#[component]
fn BracketChoice(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let none = Pick::new("none", words::none());
    let places = BracketPlace::ALL.map(|place| Pick::new(place.key(), words::bracket_place(place)));
    let picks: Vec<_> = std::iter::once(none).chain(places).collect();
    let chosen = move || {
        let bracket = bench.choices.with(|choices| choices.bracket);
        bracket.map_or("none", BracketPlace::key).to_owned()
    };
    let choose = move |key: String| {
        bench
            .choices
            .update(|choices| choices.bracket = BracketPlace::from_key(&key));
    };
    view! { <ShortList label=words::bracket() picks chosen=Signal::derive(chosen) on_choose=choose/> }
}

/// What the cap does, or how deep the bracket's rivets may go, once it is worked out.
#[component]
pub fn FittingsSaid(
    /// The bench.
    bench: Bench,
    /// Of the cap; else of the bracket.
    cap: bool,
) -> impl IntoView {
    let said = move || {
        let is_chosen = bench.choices.with(|choices| {
            if cap {
                choices.cap.is_some()
            } else {
                choices.bracket.is_some()
            }
        });
        if !is_chosen || bench.is_alone() {
            return String::new();
        }
        let Some(found) = bench.fittings() else {
            return words::working_out().into();
        };
        let unit = bench.workshop.unit.get();
        let of_cap = found.cap.as_ref().filter(|_| cap).map(cap_note);
        let of_bracket = found.bracket.filter(|_| !cap);
        of_cap
            .or(of_bracket.map(|found| rivet_note(found.depth, unit)))
            .unwrap_or_default()
    };
    view! { <p class="note fittings-said" role="status">{said}</p> }
}
