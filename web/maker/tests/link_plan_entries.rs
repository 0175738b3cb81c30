//! The numbers of a plan as they are typed, and the plan as it is kept.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use proptest::prelude::*;
use tinwave_core::radio_link::lawful::{Arrangement, RuleSet};
use tinwave_core::radio_link::{
    BuildingMaterial, ChannelWidth, CoaxType, Connector, End, Obstacle, OlderRate, Wall,
};
use tinwave_maker::entry::EntryError;
use tinwave_maker::entry::LengthUnit::{Inch, Millimetre};
use tinwave_maker::link_plan::{
    EndAntenna, FarPolarisation, LinkPlan, PlanNumber, PlanRefusal, Rate, Role, SensitivityBy, text,
};

fn read(number: PlanNumber, text: &str) -> f64 {
    number
        .read(text, Millimetre)
        .ok()
        .flatten()
        .unwrap_or(f64::NAN)
}

#[test]
fn units_are_turned_into_the_one_that_is_kept() {
    assert_eq!(read(PlanNumber::Distance, "1,5 km"), 1500.0);
    assert!((read(PlanNumber::Distance, "1000 ft") - 304.8).abs() < 1e-9);
    assert!((read(PlanNumber::WallThickness(0), "4 1/2 in") - 0.1143).abs() < 1e-12);
    assert_eq!(read(PlanNumber::Stated(End::A), "−82"), -82.0);
    // 100 mW and 1 W are 20 and 30 dBm by definition.
    assert!((read(PlanNumber::Power(End::A), "100 mW") - 20.0).abs() < 1e-9);
    assert!((read(PlanNumber::Power(End::A), "1W") - 30.0).abs() < 1e-9);
    assert_eq!(read(PlanNumber::Bandwidth, "500 kHz"), 5e5);
    assert_eq!(read(PlanNumber::Bandwidth, "20"), 20e6);
    // A bare number is in the unit shown.
    let feet = PlanNumber::Distance.read("1000", Inch).ok().flatten();
    assert!((feet.unwrap_or(f64::NAN) - 304.8).abs() < 1e-9);
}

#[test]
fn a_comma_before_three_digits_of_a_distance_is_asked_about() {
    for (text, plain) in [("20,000", "20000"), ("1,500 km", "1500 km")] {
        let suggested = match PlanNumber::Distance.read(text, Millimetre) {
            Err(PlanRefusal::Entry(EntryError::TwoDecimalSigns { suggestion, .. })) => suggestion,
            _ => String::new(),
        };
        assert_eq!(suggested, plain, "{text}");
        assert!(PlanNumber::Distance.read(plain, Millimetre).is_ok());
    }
    // A decimal comma all the same.
    for (text, metres) in [
        ("1,5 km", 1500.0),
        ("0,300 km", 300.0),
        ("1,2345 km", 1234.5),
    ] {
        assert_eq!(read(PlanNumber::Distance, text), metres, "{text}");
    }
}

#[test]
fn no_digit_is_rounded_away() {
    assert_eq!(read(PlanNumber::Distance, "12.34567"), 12.345_67);
    assert_eq!(read(PlanNumber::Distance, "36000000"), 3.6e7);
    assert_eq!(read(PlanNumber::Snr, "-3-1/4"), -3.25);
    assert_eq!(read(PlanNumber::Snr, ",5"), 0.5);
}

#[test]
fn what_is_wrong_is_refused_with_what_would_be_right() {
    for bad in [
        "", "abc", "5 parsec", "1.2.3", "<b>", "0 mW", "-3 W", "NaN", "inf", "1/0",
    ] {
        assert!(
            PlanNumber::Power(End::A).read(bad, Millimetre).is_err(),
            "{bad}"
        );
    }
    let far = PlanNumber::Foliage.read("500", Millimetre);
    assert_eq!(
        far,
        Err(PlanRefusal::OutOfRange {
            value: 500.0,
            range: [0.0, 400.0]
        })
    );
    // No station sends 22.9 kW of this.
    assert!(
        PlanNumber::Power(End::A)
            .read("22900 W", Millimetre)
            .is_err()
    );
    assert!(PlanNumber::Power(End::A).read("1500 W", Millimetre).is_ok());
    assert!(PlanNumber::Pairs(End::A).read("1.5", Millimetre).is_err());
    // The one number that may be left out.
    assert_eq!(PlanNumber::Stated(End::B).read(" ", Millimetre), Ok(None));
    assert!(PlanNumber::Stated(End::A).read(" ", Millimetre).is_err());
}

#[test]
fn every_number_comes_back_from_its_own_text() {
    let plan = LinkPlan::default();
    for unit in [Millimetre, Inch] {
        for number in PlanNumber::SINGLE {
            let Some(value) = number.value(&plan) else {
                continue;
            };
            let shown = number.quantity().text(value, unit);
            let again = number.read(&shown, unit).ok().flatten();
            let again = again.unwrap_or(f64::NAN);
            assert!((again - value).abs() <= 2e-3, "{number:?}: {shown}");
        }
    }
    assert_eq!(PlanNumber::Distance.quantity().text(300.0, Inch), "984.25");
    assert_eq!(PlanNumber::Snr.quantity().text(-0.000_01, Inch), "0");
}

#[test]
fn a_number_outside_its_range_is_never_set() {
    let mut plan = LinkPlan::default();
    for number in PlanNumber::SINGLE {
        for wild in [f64::NAN, f64::INFINITY, -1e12, 1e12] {
            number.set(&mut plan, wild);
        }
    }
    assert_eq!(plan, LinkPlan::default());
}

/// A plan in which nothing is as usual.
fn full() -> LinkPlan {
    let mut plan = LinkPlan {
        role: Role::ListensHere,
        far_polarisation: FarPolarisation::LeftHand,
        sensitivity: SensitivityBy::Noise,
        rate: Rate::Older(OlderRate::Ofdm24),
        width: ChannelWidth::Mhz80,
        walls: vec![Wall {
            material: BuildingMaterial::CeilingBoard,
            thickness_m: 0.0125,
        }],
        obstacles: vec![
            Obstacle {
                distance_m: 120.0,
                height_m: 8.25,
            },
            Obstacle {
                distance_m: 0.1 + 0.2,
                height_m: -3.0,
            },
        ],
        rules: Some(RuleSet::UsUnlicensed),
        arrangement: Arrangement::FixedPointToPoint,
        power_control: true,
        ..LinkPlan::default()
    };
    plan.here.antenna = EndAntenna::Stated;
    plan.far.antenna = EndAntenna::Kept("v=1&n=Orchard_gate&b=2401-2483.5&d=87&l=190".to_owned());
    plan.far.cable = Some(CoaxType::Corrugated12);
    plan.far.connector = Connector::N;
    plan.far.stated_dbm = Some(-91.5);
    plan
}

#[test]
fn a_plan_comes_back_from_its_text() {
    for plan in [LinkPlan::default(), full()] {
        let written = text::write(&plan);
        assert!(!written.contains(['\n', '\r']), "{written}");
        assert_eq!(text::read(&written), Some(plan));
    }
}

/// A text as the first version wrote it: it opens for good.
#[test]
fn the_first_versions_text_opens() {
    let first = "plan1;role=listen-far;antenna-here=this;antenna-far=stated;cable-here=rg58;\
        connector-here=n;connector-far=sma;polarisation=linear;sensitivity=table;rate=mcs7;width=40;\
        rules=eu;arrangement=other;distance=1250.5;fade=20;power-here=10;power-far=18;gain-far=15;\
        beam-far=25;cable-length-here=3;pairs-here=2;height-here=6;turn=-10;trees=4;wall=brick,0.12;\
        obstacle=600,7";
    let plan = text::read(first).expect("a plan");
    assert_eq!((plan.role, plan.distance_m), (Role::ListensFar, 1250.5));
    assert_eq!(plan.here.cable, Some(CoaxType::Rg58));
    assert_eq!(plan.far.antenna, EndAntenna::Stated);
    assert_eq!((plan.far.gain_dbi, plan.far.width_deg), (15.0, 25.0));
    assert_eq!(plan.needed_dbm(End::B), -61.0);
    assert_eq!(plan.rules, Some(RuleSet::EuLicenceExempt));
    assert_eq!((plan.walls.len(), plan.obstacles.len()), (1, 1));
    assert_eq!(plan.turn_deg, -10.0);
}

#[test]
fn what_is_not_known_is_passed_over() {
    let odd = "plan1;weather=fine;distance=-5;fade=abc;rules=moon;wall=jelly,1;obstacle=3;height-far=9;=;x";
    let plan = text::read(odd).expect("a plan");
    let mut wanted = LinkPlan::default();
    wanted.far.height_m = 9.0;
    assert_eq!(plan, wanted);
    for other in ["", "plan2;distance=3", "tinwave 1", "v=1&b=2401"] {
        assert_eq!(text::read(other), None, "{other}");
    }
}

proptest! {
    #[test]
    fn no_text_breaks_the_reader(tail in "[ -~\u{80}-\u{2fff}]{0,200}") {
        let read = text::read(&["plan1;", &tail].concat());
        prop_assert!(read.is_some());
        prop_assert_eq!(text::read(&text::write(&read.expect("a plan"))).is_some(), true);
    }

    #[test]
    fn any_distance_comes_back_exactly(distance in 1.0_f64..1e9) {
        let mut plan = LinkPlan::default();
        PlanNumber::Distance.set(&mut plan, distance);
        let again = text::read(&text::write(&plan));
        prop_assert_eq!(again.map(|plan| plan.distance_m), Some(distance));
    }
}
