//! The rule of thumb, beside the computed cut as what it is.

use leptos::prelude::*;
use tinwave_core::analysis::Analyser;
use tinwave_core::design::Design;
use tinwave_core::si::micrometres;
use tinwave_words::feed::{self as words, CutSaid};

use crate::kit::FindingBlock;
use crate::reactive::memo;
use crate::state::Workshop;

/// What a quarter of the wavelength each would give.
#[component]
pub fn QuarterWave() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    // A drag of the tip must not compute it anew: it does not depend on the cut.
    let but_for_cut = memo(move || {
        let mut design = workshop.work.with(|work| work.design.clone());
        design.probe.length_um = tinwave_maker::example::example().design.probe.length_um;
        design.probe.backshort_distance_um = 0;
        design
    });
    let rule = memo(move || {
        let guide = workshop
            .answers
            .analysis
            .get()
            .map(|analysis| analysis.guide)?;
        Some(CutSaid {
            length_um: micrometres(guide.quarter_wave_length_m),
            distance_um: micrometres(guide.quarter_wave_distance_m?),
        })
    });
    let analyser = StoredValue::new(Analyser::new());
    let worst = memo(move || {
        let rule = rule.get()?;
        let mut design: Design = but_for_cut.get();
        design.probe.length_um = rule.length_um;
        design.probe.backshort_distance_um = rule.distance_um;
        let outside = workshop.answers.outside.get();
        let analysis = analyser
            .try_update_value(|analyser| analyser.analyse_with(&design, outside.as_ref()).ok())
            .flatten()?;
        Some(analysis.match_summary?.worst_vswr_in_band)
    });
    let text = move || {
        let said = rule
            .get()
            .map(|rule| words::rule(rule, worst.get(), workshop.unit.get()));
        said.unwrap_or_default()
    };
    view! {
        <Show when=move || rule.get().is_some()>
            <FindingBlock headline=words::rule_headline() text source=words::rule_source()/>
        </Show>
    }
}
