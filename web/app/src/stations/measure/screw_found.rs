//! Screws that were found: where, how deep, and what they do.

use leptos::prelude::*;
use tinwave_core::ruler::RulerFigures;
use tinwave_core::screw_search::{DepthPoint, TunedScrews};
use tinwave_drawing::chart::{Axis, ChartSpec, Series, Style};
use tinwave_maker::history::Change;
use tinwave_maker::threads::Thread;
use tinwave_protocol::screws::{ScrewsFound, SearchScrews, slack};
use tinwave_words::tolerance as words;

use super::facts::Facts;
use super::screws::Screws;
use crate::kit::{Action, XyChart};
use crate::state::Workshop;

/// Above this VSWR the chart ends.
const HIGHEST: f64 = 5.0;

/// What was found, with the way to put it in.
#[component]
pub fn Found(
    /// What was looked for.
    screws: Screws,
    /// What was found.
    found: ScrewsFound,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let Some((question, thread)) = screws.asked.get_untracked() else {
        return ().into_any();
    };
    let Some(tuned) = found.tuned.clone() else {
        return view! { <p class="note">{words::screws_not_computed()}</p> }.into_any();
    };
    let said = words::screws_found(&tuned, question.settings.count);
    if tuned.screws.is_empty() {
        return view! { <p>{said}</p> }.into_any();
    }
    let curves = StoredValue::new(found.curves.clone());
    let angle = question.settings.angle_millideg;
    let places = places(&question, &tuned, &found, thread);
    let each = places.into_iter().enumerate().map(|(index, place)| {
        let rows = move || words::screw_rows(&place, workshop.unit.get());
        view! {
            <h3>{words::screw_head(index + 1, thread, angle)}</h3>
            <Facts rows=Signal::derive(rows)/>
        }
    });
    let each = each.collect_view();
    let (title, note) = words::depth_chart();
    let first = tuned
        .screws
        .first()
        .map(|screw| thread.quarter_turns(screw.depth_um));
    let spec = move || curves.with_value(|curves| spec(curves, first));
    let add = tuned.screws.clone();
    let put_in = move |()| {
        let add = add.clone();
        workshop.edit(Change::Screws, move |work| work.design.screws.extend(add));
    };
    view! {
        <p>{said}</p>
        <Action text=words::put_in() on_press=put_in/>
        {each}
        <XyChart title note spec=Signal::derive(spec)/>
    }
    .into_any()
}

/// Where each screw goes: a ruler finds it as it finds the wire's hole.
fn places(
    question: &SearchScrews,
    tuned: &TunedScrews,
    found: &ScrewsFound,
    thread: Thread,
) -> Vec<words::ScrewPlace> {
    let curves = found.curves.iter().map(Some).chain(std::iter::repeat(None));
    let each = tuned.screws.iter().zip(curves).map(|(screw, curve)| {
        let mut design = question.design.clone();
        design.probe.backshort_distance_um = screw.axial_um;
        let ruler = RulerFigures::new(&design);
        let at = thread.quarter_turns(screw.depth_um);
        words::ScrewPlace {
            screw: *screw,
            from_closed_rim_um: ruler.hole_from_closed_rim_um,
            from_mouth_um: ruler.hole_from_open_rim_um,
            thread,
            slack: curve.and_then(|curve| slack(curve, at)),
        }
    });
    each.collect()
}

/// VSWR against depth, a point for every quarter turn; shaded where the first screw is
/// near its best.
fn spec(curves: &[Vec<DepthPoint>], first: Option<u32>) -> ChartSpec {
    let turned = |point: &DepthPoint| f64::from(point.quarter_turns);
    let all = || curves.iter().flatten();
    let last = all().map(turned).fold(1.0, f64::max);
    let highest = all()
        .filter_map(|point| point.worst_vswr)
        .fold(1.5, f64::max);
    let (name, unit) = words::turns_axis();
    let x = Axis::new(name, unit, 0.0, last)
        .with_decimals(0)
        .with_step(1.0);
    let mut spec = ChartSpec::new(x, Axis::vswr(highest.min(HIGHEST * 0.9)));
    spec.limits = vec![1.5, 2.0];
    let near = first.and_then(|at| slack(curves.first()?, at));
    spec.band = near.map(|(low, high)| (f64::from(low), f64::from(high)));
    words::near_best().clone_into(&mut spec.band_name);
    let styles = [Style::This, Style::Compared].into_iter();
    spec.series = curves
        .iter()
        .zip(styles)
        .enumerate()
        .map(|(index, (curve, style))| {
            let points = curve.iter();
            let points = points.map(|point| (turned(point), point.worst_vswr.unwrap_or(f64::NAN)));
            Series::new(words::screw_curve(index + 1), style, points.collect())
        })
        .collect();
    spec
}
