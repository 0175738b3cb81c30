//! Whatever is entered about a link, every sentence has its figures.

use tinwave_core::design::Band;
use tinwave_core::radio_link::lawful::RuleSet;
use tinwave_core::radio_link::{BuildingMaterial, CoaxType, End, Obstacle, Wall};
use tinwave_maker::entry::LengthUnit::{self, Inch, Millimetre};
use tinwave_maker::link_plan::{
    LinkPlan, PlanAnswer, PlanAntenna, PlanNumber, Role, SensitivityBy,
};
use tinwave_words::link_plan as words;

/// A plan in which every kind of entry counts.
fn full(rules: RuleSet, by: SensitivityBy, role: Role) -> LinkPlan {
    let mut plan = LinkPlan {
        role,
        sensitivity: by,
        rules: Some(rules),
        walls: vec![Wall {
            material: BuildingMaterial::Brick,
            thickness_m: 0.12,
        }],
        foliage_m: 5.0,
        obstacles: vec![
            Obstacle {
                distance_m: 100.0,
                height_m: 6.0,
            },
            Obstacle {
                distance_m: 900.0,
                height_m: 2.0,
            },
        ],
        ..LinkPlan::default()
    };
    plan.here.cable = Some(CoaxType::Rg58);
    plan.far.cable = Some(CoaxType::Foam400);
    plan
}

/// Everything that is said of an answer.
fn said(answer: &PlanAnswer, unit: LengthUnit) -> Vec<String> {
    let mut all = vec![
        words::answer(answer, unit),
        words::reason(answer),
        words::in_short(answer, unit),
        words::path_text(answer.path.as_ref(), unit),
        words::fall(&answer.plan, unit),
        words::aim_polarisation(&answer.plan),
        words::safe_summary(answer, unit),
    ];
    all.extend(words::not_counted(answer, unit));
    all.extend(words::law_sources(answer));
    for end in [End::A, End::B] {
        let of_end = answer.end(end);
        if let Some(law) = &of_end.law {
            all.push(words::law_headline(Some(end), law));
            all.extend(words::law_lines(law));
        }
        if let Some(aim) = &of_end.aim {
            all.extend([words::aim_wrong(aim), words::aim_summary(aim)]);
            all.extend(words::aim_rows(aim, unit).1.into_iter().flatten());
        }
    }
    if let Some(link) = &answer.link {
        all.push(words::margin_note(answer, link, unit));
        all.push(words::does_not_reach(answer, link, unit));
        all.extend(
            words::budget_rows(answer, link, unit)
                .1
                .into_iter()
                .flatten(),
        );
        if let Some(receiver) = &link.receiver {
            all.extend(words::receiver_rows(receiver).into_iter().flatten());
        }
    }
    if let Some(path) = &answer.path {
        all.extend(words::clearance_rows(path, unit).1.into_iter().flatten());
    }
    all
}

/// Every sentence of a plan; none where the formulas do not take it.
fn sentences(plan: &LinkPlan, unit: LengthUnit) -> Vec<String> {
    let band = Band {
        low_khz: 2_400_000,
        high_khz: 2_483_500,
    };
    let of = |end: End| PlanAntenna::stated(plan.end(end).gain_dbi, plan.end(end).width_deg);
    let (here, far) = (of(End::A), of(End::B));
    let answer = PlanAnswer::new(plan, band, [Some(&here), Some(&far)]);
    answer.map_or_else(|_| Vec::new(), |answer| said(&answer, unit))
}

#[test]
fn no_sentence_lacks_its_figure_at_either_end_of_any_range() {
    let mut answered = 0;
    for rules in RuleSet::ALL {
        for by in [
            SensitivityBy::Table,
            SensitivityBy::Stated,
            SensitivityBy::Noise,
        ] {
            for role in [Role::Both, Role::ListensHere, Role::ListensFar] {
                for number in PlanNumber::SINGLE {
                    for value in number.range() {
                        let mut plan = full(rules, by, role);
                        number.set(&mut plan, value);
                        let unit = if value > 1.0 { Inch } else { Millimetre };
                        let all = sentences(&plan, unit);
                        answered += usize::from(!all.is_empty());
                        for sentence in all {
                            let odd = ["NaN", "inf ", "– ", "–.", "−0 ", "−0.0 ", "−0.00"]
                                .iter()
                                .any(|odd| sentence.contains(odd))
                                || sentence.ends_with("−0.0");
                            assert!(!odd, "{number:?} at {value}: {sentence}");
                        }
                    }
                }
            }
        }
    }
    assert!(answered > 1_000, "{answered}");
}

#[test]
fn a_refusal_tells_what_was_understood_and_what_would_be_right() {
    let said = |number: PlanNumber, text: &str| {
        let refused = number.read(text, Millimetre).err();
        refused.map_or_else(String::new, |one| words::refusal(number, &one, Millimetre))
    };
    let power = said(PlanNumber::Power(End::A), "22900 W");
    assert!(
        power.contains("22900 W") && power.contains("1500 W"),
        "{power}"
    );
    let trees = said(PlanNumber::Foliage, "500");
    assert!(
        trees.contains("500 m") && trees.contains("400 m"),
        "{trees}"
    );
    for number in PlanNumber::SINGLE {
        let [low, high] = number.range();
        let beyond = number.quantity().text(high * 2.0 + 1.0, Millimetre);
        assert!(!said(number, &beyond).is_empty(), "{number:?} {beyond}");
        let below = number.quantity().text(low - low.abs() - 1.0, Millimetre);
        assert!(!said(number, &below).is_empty(), "{number:?} {below}");
    }
}
