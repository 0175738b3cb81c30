//! What must hold for every radio link.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod radio_link_cases;
mod support;

use std::f64::consts::TAU;

use proptest::prelude::*;
use radio_link_cases::worked_link;
use support::assert_near;
use tinwave_core::radio_link::lawful::{Arrangement, RuleSet, Standing, Transmission, ruling};
use tinwave_core::radio_link::{
    BuildingMaterial, CoaxLine, CoaxType, Emitter, End, ExposureStandard, Link, Obstacle,
    PathClearance, PathProfile, Polarisation, Reflection, Sense, Wall, fresnel_radius_m,
    knife_edge_loss_db, polarisation_efficiency, polarisation_loss_db, safe_distance,
};

prop_compose! {
    fn links()(
        powers in (0.0..30.0, 0.0..30.0),
        gains in (0.0..20.0, 0.0..20.0),
        tilts in (0.0..TAU, 0.0..TAU),
        pointing in (0.0..6.0, 0.0..6.0),
        cable in 0..CoaxType::ALL.len(),
        lengths in (0.0..20.0, 0.0..20.0),
        distance_m in 10.0..20_000.0,
        frequency_hz in 1e9..6e9,
        thickness_m in 0.0..0.5,
        foliage_depth_m in 0.0..100.0,
    ) -> Link {
        let mut link = worked_link();
        for (end, power, gain, tilt_rad, lost, length_m) in [
            (&mut link.a, powers.0, gains.0, tilts.0, pointing.0, lengths.0),
            (&mut link.b, powers.1, gains.1, tilts.1, pointing.1, lengths.1),
        ] {
            end.transmit_power_dbm = Some(power);
            end.gain_dbi = gain;
            end.polarisation = Polarisation::Linear { tilt_rad };
            end.pointing_loss_db = lost;
            end.line = Some(CoaxLine { coax: CoaxType::ALL[cable], length_m });
        }
        link.distance_m = distance_m;
        link.frequency_hz = frequency_hz;
        link.walls = vec![Wall { material: BuildingMaterial::Brick, thickness_m }];
        link.foliage_depth_m = foliage_depth_m;
        link
    }
}

prop_compose! {
    fn profiles()(
        distance_m in 50.0..50_000.0,
        heights in (1.0..60.0, 1.0..60.0),
        frequency_hz in 0.5e9..11e9,
        earth_factor in 0.6..4.0,
    ) -> PathProfile {
        PathProfile {
            distance_m,
            height_a_m: heights.0,
            height_b_m: heights.1,
            frequency_hz,
            earth_factor,
        }
    }
}

proptest! {
    #[test]
    fn a_path_loses_as_much_either_way(link in links()) {
        let there = link.budget(End::A).expect("in range").expect("a way");
        let back = link.budget(End::B).expect("in range").expect("a way");
        let lost = |power: Option<f64>, received: f64| power.expect("sends") - received;
        let (a, b) = (
            lost(link.a.transmit_power_dbm, there.received_dbm),
            lost(link.b.transmit_power_dbm, back.received_dbm),
        );
        prop_assert!((a - b).abs() < 1e-9, "{a} {b}");
    }

    #[test]
    fn farther_is_weaker_and_ten_times_is_20_db(link in links(), factor in 1.001..10.0) {
        let received = |times: f64| {
            let mut link = link.clone();
            link.distance_m *= times;
            link.budget(End::A).expect("in range").expect("a way").received_dbm
        };
        prop_assert!(received(factor) < received(1.0));
        prop_assert!((received(1.0) - received(10.0) - 20.0).abs() < 1e-9);
    }

    #[test]
    fn reach_falls_with_margin(link in links(), margin in 0.0..30.0) {
        let reach = |db: f64| link.reach_both_ways_m(db).expect("in range").expect("a way");
        prop_assert!(reach(margin + 1.0) < reach(margin));
        prop_assert!((reach(margin) / reach(margin + 20.0) - 10.0).abs() < 1e-9);
    }

    #[test]
    fn savings_never_cost(link in links()) {
        let savings = link.what_buys_most().expect("in range");
        prop_assert!(savings.iter().all(|saving| saving.gained_db >= 0.05));
        prop_assert!(savings.windows(2).all(|pair| pair[0].gained_db >= pair[1].gained_db));
        prop_assert!(!savings.is_empty());
    }

    #[test]
    fn walls_never_gain(
        material in 0..BuildingMaterial::ALL.len(),
        thickness_m in 0.0..0.5,
        frequency_hz in 1e9..40e9,
    ) {
        let wall = Wall { material: BuildingMaterial::ALL[material], thickness_m };
        let [low, high] = wall.material.frequency_range_hz();
        let (coherent, averaged) =
            (wall.loss_db(frequency_hz), wall.averaged_loss_db(frequency_hz));
        if !(low..=high).contains(&frequency_hz) {
            prop_assert!(coherent.is_err() && averaged.is_err());
        } else {
            prop_assert!(coherent.expect("in range") >= -1e-9);
            prop_assert!(averaged.expect("in range") >= -1e-9);
        }
    }

    #[test]
    fn fresnel_zones_are_alike_from_both_ends(
        near in 1.0..1e5, far in 1.0..1e5, frequency_hz in 1e8..1e11, n in 1_u32..10,
    ) {
        let one = fresnel_radius_m(n, near, far, frequency_hz);
        let other = fresnel_radius_m(n, far, near, frequency_hz);
        prop_assert!((one - other).abs() <= 1e-12 * one);
        let first = fresnel_radius_m(1, near, far, frequency_hz);
        prop_assert!((one * one / (first * first) - f64::from(n)).abs() < 1e-9);
    }

    #[test]
    fn a_path_is_alike_from_both_ends(
        profile in profiles(), share in 0.01..0.99, height_m in 0.0..40.0,
    ) {
        let at = |share: f64| Obstacle { distance_m: share * profile.distance_m, height_m };
        let there = PathClearance::new(&profile, &[at(share)]).expect("in range");
        let turned = PathProfile {
            height_a_m: profile.height_b_m,
            height_b_m: profile.height_a_m,
            ..profile
        };
        let back = PathClearance::new(&turned, &[at(1.0 - share)]).expect("in range");
        let near = |a: f64, b: f64| (a - b).abs() <= 1e-6 * (1.0 + a.abs());
        prop_assert!(near(there.worst().ratio, back.worst().ratio));
        prop_assert!(near(there.raise_both_m, back.raise_both_m));
        prop_assert!(near(there.obstacle_loss_db(), back.obstacle_loss_db()));
    }

    #[test]
    fn a_raised_path_is_clear(
        profile in profiles(), share in 0.01..0.99, height_m in 0.0..40.0,
    ) {
        let trees = [Obstacle { distance_m: share * profile.distance_m, height_m }];
        let raise = PathClearance::new(&profile, &trees).expect("in range").raise_both_m;
        let raised = PathProfile {
            height_a_m: profile.height_a_m + raise,
            height_b_m: profile.height_b_m + raise,
            ..profile
        };
        let path = PathClearance::new(&raised, &trees).expect("in range");
        prop_assert!(path.worst().ratio >= 0.6 - 1e-6);
    }

    #[test]
    fn higher_edges_lose_more(v in -2.0..10.0, more in 0.0..1.0) {
        prop_assert!(knife_edge_loss_db(v + more) >= knife_edge_loss_db(v));
    }

    #[test]
    fn polarisations_are_shares(
        tilts in (0.0..TAU, 0.0..TAU), ratios in (0.0..40.0, 0.0..40.0), same: bool,
    ) {
        let one = Polarisation::Elliptic {
            axial_ratio_db: ratios.0,
            sense: Sense::RightHand,
            tilt_rad: tilts.0,
        };
        let sense = if same { Sense::RightHand } else { Sense::LeftHand };
        let other = Polarisation::Elliptic {
            axial_ratio_db: ratios.1,
            sense,
            tilt_rad: tilts.1,
        };
        let share = polarisation_efficiency(one, other);
        prop_assert!((0.0..=1.0).contains(&share));
        prop_assert!((share - polarisation_efficiency(other, one)).abs() < 1e-12);
        prop_assert!(polarisation_loss_db(one, one) < 1e-9);
    }

    #[test]
    fn safe_distance_grows_with_power(
        power_w in 0.0..100.0, more in 1.0..4.0, gain_dbi in 0.0..20.0,
        aperture_diameter_m in 0.05..0.6, frequency_hz in 0.5e9..11e9, which in 0..2_usize,
    ) {
        let standard = ExposureStandard::ALL[which];
        let at = |power_w: f64, reflection| {
            let emitter = Emitter { power_w, gain_dbi, aperture_diameter_m, frequency_hz };
            safe_distance(&emitter, standard, reflection).expect("in range")
        };
        let now = at(power_w, Reflection::None);
        prop_assert!(at(power_w * more, Reflection::None).distance_m >= now.distance_m);
        prop_assert!(at(power_w, Reflection::Ground).distance_m >= now.distance_m);
        prop_assert!(now.distance_m >= now.far_field_m);
    }

    #[test]
    fn power_at_the_limit_is_inside_and_more_is_over(
        which in 0..2_usize, gain_dbi in -3.0..30.0, line_loss_db in 0.0..10.0,
        mhz in 2411.0..2472.0, pair: bool,
    ) {
        let set = [RuleSet::UsUnlicensed, RuleSet::EuLicenceExempt][which];
        let arrangement = if pair { Arrangement::FixedPointToPoint } else { Arrangement::Other };
        let asked = Transmission {
            frequency_hz: mhz * 1e6,
            bandwidth_hz: 20e6,
            gain_dbi,
            line_loss_db,
            transmit_power_dbm: None,
            arrangement,
            power_control: false,
        };
        let limit = ruling(Some(set), &asked).expect("a set");
        let limit = limit.transmit_power_limit_dbm.expect("a limit");
        let standing = |dbm: f64| {
            let sent = Transmission { transmit_power_dbm: Some(dbm), ..asked };
            ruling(Some(set), &sent).expect("a set").standing
        };
        prop_assert_eq!(standing(limit), Standing::Inside);
        prop_assert_eq!(standing(limit + 0.01), Standing::Over);
    }
}

#[test]
fn flat_ground_without_bulge_has_a_closed_form() {
    // Least of (a + (b - a) x)/sqrt(x (1 - x)) over x: 2 sqrt(a b), by hand.
    let profile = PathProfile {
        distance_m: 800.0,
        height_a_m: 3.0,
        height_b_m: 9.0,
        frequency_hz: 2.437e9,
        earth_factor: 1000.0,
    };
    let path = PathClearance::new(&profile, &[]).expect("in range");
    let zone = fresnel_radius_m(1, 400.0, 400.0, 2.437e9) * 2.0;
    assert_near("ratio", path.ground.ratio, 2.0 * 27_f64.sqrt() / zone, 1e-4);
    assert_near("place", path.ground.distance_m, 200.0, 0.1);
}
