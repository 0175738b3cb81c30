//! What a plan says of the law and of safe distance.

mod link_planned;

use link_planned::{AT_2437, WHOLE_BAND, both, can, near, plan, stated};
use tinwave_core::radio_link::lawful::{Arrangement, RuleSet};
use tinwave_core::radio_link::{CoaxType, DistanceHeldBy, End, ExposureStandard};
use tinwave_maker::link_plan::{
    CheckedLimit, LawAnswer, LawStanding, LinkPlan, NO_CLOSER_M, PlanAnswer, PlanAntenna, Role,
    UncheckedLimit,
};

/// What the rules say of the far end of 12 dBi, 18 dBm unless changed.
fn far(rules: RuleSet, change: impl FnOnce(&mut LinkPlan)) -> Option<LawAnswer> {
    let plan = plan(|plan| {
        plan.rules = Some(rules);
        change(plan);
    });
    let mut answer = stated(plan);
    let [_, far] = &mut answer.ends;
    far.law.take()
}

#[test]
fn without_rules_nothing_is_claimed() {
    for role in [Role::Both, Role::ListensHere, Role::ListensFar] {
        let answer = both(&plan(|plan| plan.role = role));
        assert!(answer.ends.iter().all(|end| end.law.is_none()));
    }
}

/// 47 CFR 15.247(b)(4) and (c)(1)(i): 30 dBm, less 1 dB per dB, or per 3 dB between two
/// fixed stations, of gain above 6 dBi. ETSI EN 300 328: 20 dBm EIRP.
#[test]
fn limits_are_those_of_the_published_rules() {
    let most = |law: &Option<LawAnswer>| law.as_ref().and_then(|law| law.most_power_dbm);
    let several = far(RuleSet::UsUnlicensed, |_| {});
    assert_eq!(most(&several), Some(24.0));
    let fixed = far(RuleSet::UsUnlicensed, |plan| {
        plan.arrangement = Arrangement::FixedPointToPoint;
    });
    assert_eq!(most(&fixed), Some(28.0));
    let europe = far(RuleSet::EuLicenceExempt, |_| {});
    assert_eq!(most(&europe), Some(8.0));
    let over = europe.as_ref().and_then(LawAnswer::over_db);
    near("over", over.unwrap_or(f64::NAN), 10.0, 1e-9);
    let source = europe
        .as_ref()
        .and_then(|law| law.ruling.rules.first().map(|rule| rule.source));
    let date = source.map(|source| (source.citation, source.date));
    assert_eq!(
        date,
        Some(("ETSI EN 300 328 V2.2.2, 4.3.2.2", Some((2019, Some(7)))))
    );
    let warned = europe.is_some_and(|law| law.ruling.conditions.changed_antenna_may_be_forbidden);
    assert!(warned);
}

#[test]
fn within_is_never_said_while_something_is_not_checked() {
    let low = far(RuleSet::EuLicenceExempt, |plan| plan.far.power_dbm = 8.0);
    let low = low.map(|law| (law.standing, law.checked, law.unchecked));
    let eirp = CheckedLimit::Eirp {
        most_dbm: 20.0,
        sent_dbm: 20.0,
    };
    let missing = vec![UncheckedLimit::Density, UncheckedLimit::OutOfBand];
    assert_eq!(low, Some((LawStanding::NotAllChecked, vec![eirp], missing)));
    let output = far(RuleSet::UsUnlicensed, |_| {});
    let output = output.map(|law| (law.standing, law.checked));
    let limit = CheckedLimit::Output {
        most_dbm: 24.0,
        sent_dbm: 18.0,
    };
    assert_eq!(output, Some((LawStanding::NotAllChecked, vec![limit])));
}

#[test]
fn licences_listening_and_channels_outside_are_told_apart() {
    let standing = |rules, band| {
        let plan = plan(|plan| plan.rules = Some(rules));
        let end = PlanAntenna::stated(12.0, 30.0);
        let answer = PlanAnswer::new(&plan, band, [Some(can()), Some(&end)]).ok()?;
        answer.end(End::B).law.as_ref().map(|law| law.standing)
    };
    let amateur = standing(RuleSet::Amateur, AT_2437);
    assert_eq!(amateur, Some(LawStanding::LicenceDecides));
    // 2442 ± 10 MHz ends above 2450 MHz, where no amateur band is (47 CFR 97.301).
    let outside = standing(RuleSet::Amateur, WHOLE_BAND);
    assert_eq!(outside, Some(LawStanding::NotCovered));
    let sends = standing(RuleSet::ReceiveOnly, WHOLE_BAND);
    assert_eq!(sends, Some(LawStanding::MustNotTransmit));
    let listens = far(RuleSet::ReceiveOnly, |plan| plan.role = Role::ListensFar);
    assert_eq!(
        listens.map(|law| law.standing),
        Some(LawStanding::Listening)
    );
}

/// ETSI EN 300 328: 20 dBm EIRP, so 8 dBm to 12 dBi; a cable helps there and not where
/// the transmitter's output is limited (47 CFR 15.247).
#[test]
fn a_little_too_much_and_a_cable_that_helps_are_told() {
    let just = far(RuleSet::EuLicenceExempt, |plan| plan.far.power_dbm = 8.02);
    let over = just.as_ref().and_then(LawAnswer::over_db);
    near("over", over.unwrap_or(f64::NAN), 0.02, 1e-9);
    for (rules, helps) in [
        (RuleSet::EuLicenceExempt, true),
        (RuleSet::UsUnlicensed, false),
    ] {
        let law = far(rules, |plan| plan.far.cable = Some(CoaxType::Rg58));
        assert_eq!(law.map(|law| law.cable_helps), Some(helps));
    }
}

#[test]
fn no_power_that_nobody_may_send_is_called_lawful() {
    // 20 dBm EIRP with -20 dBi and 30 m of thin cable would be some tens of kilowatts.
    let law = far(RuleSet::EuLicenceExempt, |plan| {
        plan.far.gain_dbi = -20.0;
        plan.far.cable = Some(CoaxType::Rg174);
        plan.far.cable_m = 30.0;
    });
    let told = law.map(|law| (law.standing, law.most_power_dbm));
    assert_eq!(told, Some((LawStanding::NotAllChecked, None)));
}

/// ICNIRP 2020 and 47 CFR 1.1310: 10 W/m² at 2.4 GHz. 30 dBm and 12 dBi are 15.85 W EIRP;
/// with the power density fourfold sqrt(4 · 15.85/(4π · 10)) = 0.710 m.
#[test]
fn the_safe_distance_is_that_of_oet_65() {
    let answer = stated(plan(|plan| plan.far.power_dbm = 30.0));
    let safe = &answer.end(End::B).safe;
    assert_eq!(safe.len(), ExposureStandard::ALL.len());
    for one in safe {
        near("m", one.keep_m.unwrap_or(f64::NAN), 0.7103, 0.0005);
        let held = one.found.map(|safe| safe.held_by);
        assert_eq!(held, Ok(DistanceHeldBy::FarField));
    }
    near(
        "the longest",
        answer.keep_away_m().unwrap_or(f64::NAN),
        0.7103,
        0.0005,
    );
}

#[test]
fn nothing_below_20_cm_is_said_by_rules_that_ask_for_absorption_there() {
    let answer = both(&LinkPlan::default());
    let safe = &answer.end(End::A).safe;
    let keep = |standard| {
        let mut all = safe.iter();
        let found = all.find(|one| one.standard == standard);
        found.and_then(|one| one.keep_m).unwrap_or(f64::NAN)
    };
    assert!(keep(ExposureStandard::Icnirp2020) < NO_CLOSER_M);
    near("FCC", keep(ExposureStandard::Fcc1310), NO_CLOSER_M, 0.0);
    near(
        "kept",
        answer.keep_away_m().unwrap_or(f64::NAN),
        NO_CLOSER_M,
        0.0,
    );
}
