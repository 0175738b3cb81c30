//! A plan with the example's can, its outside solved.
#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use std::sync::{Arc, OnceLock};

use tinwave_core::analysis::Analyser;
use tinwave_core::design::{Band, Design};
use tinwave_core::outside::OutsideSteps;
use tinwave_core::radio_link::{BudgetItemKind, End};
use tinwave_maker::example::example;
use tinwave_maker::link_plan::{LinkAnswer, LinkPlan, PlanAnswer, PlanAntenna, PlanEnd};

/// 2401 to 2483.5 MHz: 2442.25 MHz in the middle.
pub(crate) const WHOLE_BAND: Band = Band {
    low_khz: 2_401_000,
    high_khz: 2_483_500,
};

/// 802.11 channel 6 and half a channel on either side: 2437 MHz in the middle.
pub(crate) const AT_2437: Band = Band {
    low_khz: 2_427_000,
    high_khz: 2_447_000,
};

/// A design's antenna with its outside solved.
pub(crate) fn antenna_of(design: &Design) -> Option<PlanAntenna> {
    let steps = OutsideSteps::of_design(design).ok().flatten();
    let outside = steps.and_then(|mut steps| {
        while steps.step() {}
        steps.finish().map(Arc::new)
    });
    let analysis = Analyser::new().analyse_with(design, outside.as_ref());
    PlanAntenna::of_can(design, &analysis.ok()?)
}

/// A can of 87 by 190 mm with wall 0.2 mm.
pub(crate) fn can() -> &'static PlanAntenna {
    static CAN: OnceLock<PlanAntenna> = OnceLock::new();
    CAN.get_or_init(|| {
        let mut design = example().design;
        design.can.inside_diameter_um = 87_000;
        design.can.open_length_um = 190_000;
        design.band = WHOLE_BAND;
        antenna_of(&design).expect("a beam")
    })
}

/// The plan with the can at both ends.
pub(crate) fn both(plan: &LinkPlan) -> PlanAnswer {
    PlanAnswer::new(plan, WHOLE_BAND, [Some(can()), Some(can())]).expect("an answer")
}

/// The plan with a far end of 12 dBi and nothing between radios and antennas.
pub(crate) fn stated(mut plan: LinkPlan) -> PlanAnswer {
    plan.here.pairs = 0;
    plan.far.pairs = 0;
    let far = PlanAntenna::stated(plan.far.gain_dbi, plan.far.width_deg);
    PlanAnswer::new(&plan, WHOLE_BAND, [Some(can()), Some(&far)]).expect("an answer")
}

/// The link of an answer.
pub(crate) fn link(answer: &PlanAnswer) -> &LinkAnswer {
    answer.link.as_ref().expect("a link")
}

/// What a step of a direction adds, dB.
pub(crate) fn step_from(answer: &PlanAnswer, from: End, kind: BudgetItemKind) -> f64 {
    let budget = link(answer).from(from).expect("a direction");
    let mut items = budget.items.iter();
    let item = items.find(|item| item.kind == kind).expect("a step");
    item.change_db
}

/// The same of what this end sends.
pub(crate) fn step(answer: &PlanAnswer, kind: BudgetItemKind) -> f64 {
    step_from(answer, End::A, kind)
}

/// Margin of what an end sends, dB.
pub(crate) fn margin(answer: &PlanAnswer, from: End) -> f64 {
    link(answer).from(from).expect("a direction").margin_db
}

/// A usual plan, changed.
pub(crate) fn plan(change: impl FnOnce(&mut LinkPlan)) -> LinkPlan {
    let mut plan = LinkPlan::default();
    change(&mut plan);
    plan
}

/// A usual end with another height.
pub(crate) fn end_at(height_m: f64) -> PlanEnd {
    PlanEnd {
        height_m,
        ..PlanEnd::default()
    }
}

/// A number within so much of another.
pub(crate) fn near(what: &str, value: f64, wanted: f64, within: f64) {
    assert!(
        (value - wanted).abs() <= within,
        "{what}: {value}, wanted {wanted} to {within}"
    );
}
