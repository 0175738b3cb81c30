//! What a link is planned with: budget, reach, path, aim, safe distance, errors.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod radio_link_cases;
mod support;

use radio_link_cases::worked_link;
use support::assert_near;
use tinwave_core::radio_link as link;
use tinwave_core::radio_link::{
    BudgetItemKind, BuildingMaterial, CoaxType, DistanceHeldBy, Emitter, End, ExposureStandard,
    LinkChange, LinkError, LinkQuantity, Obstacle, PathClearance, PathProfile, Reflection, Wall,
};

#[test]
fn a_waterfall_runs_from_power_to_level() {
    let link = worked_link();
    let budget = link.budget(End::A).expect("in range").expect("sends");
    let mut level = 0.0;
    for item in &budget.items {
        level += item.change_db;
        assert_near("level", item.level_dbm, level, 1e-9);
    }
    assert_near("received", budget.received_dbm, level, 1e-9);
    let kinds: Vec<BudgetItemKind> = budget.items.iter().map(|item| item.kind).collect();
    assert_eq!(kinds.first(), Some(&BudgetItemKind::TransmitPower));
    assert_eq!(kinds.last(), Some(&BudgetItemKind::ReceiveLine));
    assert!(kinds.contains(&BudgetItemKind::Wall(0)));
    // 20 dBm, 3 m of RG-213 (1.436 dB), two pairs of N (0.156 dB), 0.2 dB, 12 dBi.
    assert_near("EIRP", budget.eirp_dbm, 30.208, 0.01);
    let floor = -82.0;
    assert_near(
        "margin",
        budget.margin_db,
        budget.received_dbm - floor,
        1e-9,
    );
    assert_near("spare", budget.spare_db, budget.margin_db - 10.0, 1e-9);
    assert_eq!(budget.meets_fade_margin(), budget.margin_db >= 10.0);
    let both = link.budgets().expect("in range");
    assert_eq!(both.len(), 2);
    let weaker = link.weaker_budget().expect("in range").expect("a way");
    assert_eq!(weaker.from, End::B, "5 dB less power");
}

#[test]
fn losses_of_a_feed_add() {
    let end = worked_link().a;
    let hz = 2.437e9;
    let line = end.line_loss_db(hz).expect("in range");
    let connectors = end.connector_loss_db(hz).expect("in range");
    // The parts' own cases: RG-213 by its law, N by MIL-PRF-39012.
    assert_near("line", line, 3.0 * 0.47874, 1e-3);
    assert_near(
        "connectors",
        connectors,
        2.0 * 0.05 * 2.437_f64.sqrt(),
        1e-9,
    );
    let feed = end.feed_loss_db(hz).expect("in range");
    assert_near("feed", feed, line + connectors, 1e-12);
}

#[test]
fn reach_has_the_margin_asked_for() {
    let mut link = worked_link();
    let reach = link.reach_both_ways_m(10.0).expect("in range");
    link.distance_m = reach.expect("a way");
    let weaker = link.weaker_budget().expect("in range").expect("a way");
    assert_near("margin", weaker.margin_db, 10.0, 1e-9);
    link.a.sensitivity_dbm = None;
    link.a.transmit_power_dbm = None;
    assert_eq!(link.reach_both_ways_m(10.0), Ok(None));
    assert_eq!(link.budget(End::A), Ok(None));
}

#[test]
fn savings_come_best_first() {
    let link = worked_link();
    let savings = link.what_buys_most().expect("in range");
    assert!(
        savings
            .windows(2)
            .all(|pair| pair[0].gained_db >= pair[1].gained_db)
    );
    assert!(savings.iter().all(|saving| saving.gained_db >= 0.05));
    // Half the distance is worth 6.02 dB, more than any other here.
    assert_eq!(savings[0].change, LinkChange::HalveDistance);
    let listed = |change| savings.iter().any(|saving| saving.change == change);
    assert!(listed(LinkChange::BetterCable(End::A, CoaxType::Foam400)));
    assert!(listed(LinkChange::LargerAntenna(End::B)));
    assert!(!listed(LinkChange::Aim(End::B)), "it is aimed");
    assert!(!listed(LinkChange::RemoveLine(End::B)), "it has none");
    // The weaker direction is from the second end.
    let before = link.budget(End::B).expect("in range").expect("a way");
    for saving in savings {
        let after = link.after(saving.change).budget(End::B);
        let after = after.expect("in range").expect("a way");
        let gained = after.margin_db - before.margin_db;
        assert_near("gained", gained, saving.gained_db, 1e-9);
    }
}

#[test]
fn a_path_names_its_worst_obstacle() {
    let profile = PathProfile {
        distance_m: 2000.0,
        height_a_m: 10.0,
        height_b_m: 10.0,
        frequency_hz: 2.437e9,
        earth_factor: link::STANDARD_EARTH_FACTOR,
    };
    let tree = |distance_m, height_m| Obstacle {
        distance_m,
        height_m,
    };
    let trees = [tree(300.0, 4.0), tree(1000.0, 12.0), tree(1700.0, 5.0)];
    let path = PathClearance::new(&profile, &trees).expect("in range");
    assert_eq!(path.worst_obstacle, Some(1));
    let worst = path.obstacles[1];
    assert_eq!(*path.worst(), worst);
    assert!(!worst.is_clear() && worst.clearance_m < -2.0);
    // Bulge 1000 · 1000/(12.74 · 4/3) in km: 0.0589 m; r1 = 7.843 m;
    // v = 2.0589 √2/7.843 = 0.3713, J = 6.9 + 20 log 1.3074 = 9.228 dB (ITU-R P.526, eq. 31, by hand).
    assert_near("v", worst.v, 0.3713, 1e-3);
    assert_near("loss", path.obstacle_loss_db(), 9.228, 0.01);
    let raised = PathProfile {
        height_a_m: 10.0 + path.raise_both_m,
        height_b_m: 10.0 + path.raise_both_m,
        ..profile
    };
    let path = PathClearance::new(&raised, &trees).expect("in range");
    assert_near("ratio", path.worst().ratio, 0.6, 1e-9);
    assert_near("raise", path.raise_both_m, 0.0, 1e-9);
    // No obstacle: the ground is the worst place.
    let open = PathClearance::new(&profile, &[]).expect("in range");
    assert_eq!(open.worst_obstacle, None);
    assert_eq!(*open.worst(), open.ground);
    assert_near("loss", open.obstacle_loss_db(), 0.0, 0.0);
    assert_near("all", open.diffraction_loss_db(), 0.0, 0.0);
}

#[test]
fn the_curve_of_the_earth_costs_at_least_an_edge() {
    let profile = PathProfile {
        distance_m: 30e3,
        height_a_m: 4.0,
        height_b_m: 4.0,
        frequency_hz: 2.437e9,
        earth_factor: link::STANDARD_EARTH_FACTOR,
    };
    let path = PathClearance::new(&profile, &[]).expect("in range");
    // Bulge 15 · 15/(12.74 · 4/3) in km: 13.246 m, 9.246 m over the line;
    // v = 0.4305, J = 6.9 + 20 log 1.3837 = 9.721 dB (ITU-R P.526, eq. 31, by hand).
    assert_near("loss", path.diffraction_loss_db(), 9.721, 0.01);
    // A taller obstacle decides instead.
    let tower = Obstacle {
        distance_m: 15e3,
        height_m: 20.0,
    };
    let path = PathClearance::new(&profile, &[tower]).expect("in range");
    let most = path.diffraction_loss_db();
    assert!(most > 12.0);
    assert_near("tower", most, path.obstacle_loss_db(), 0.0);
}

#[test]
fn aim_of_a_can() {
    // 200 mm can, 1.5 m arm, 60 degrees of beam, 1 km.
    let aim = link::Aim::new(0.2, 1.5, 60_f64.to_radians(), 1000.0);
    assert_near("mouth", aim.degrees_per_mm_at_mouth, 0.286_477, 1e-5);
    assert_near("tripod", aim.degrees_per_mm_at_tripod, 0.038_197, 1e-5);
    // 12 (x/60)² = 1: 17.3205 degrees; tan 17.3205° = 0.311_853.
    assert_near("1 dB", aim.degrees_for_1_db, 17.3205, 1e-3);
    assert_near("mouth", aim.mouth_for_1_db_m, 0.062_37, 1e-4);
    assert_near("tripod", aim.tripod_for_1_db_m, 0.467_8, 1e-3);
    assert_near("3 dB", aim.degrees_for_3_db, 30.0, 1e-9);
    assert_near("spot", aim.spot_width_m, 1154.70, 0.01);
    assert_near("far end", aim.far_end_per_mm_m, 5.0, 1e-9);
    assert_eq!(link::spot_width_m(10.0, 3.2), f64::INFINITY);
}

#[test]
fn what_holds_the_safe_distance() {
    let held = |power_w, mouth_m| {
        let emitter = Emitter {
            power_w,
            gain_dbi: 6.0,
            aperture_diameter_m: mouth_m,
            frequency_hz: 2.437e9,
        };
        link::safe_distance(&emitter, ExposureStandard::Icnirp2020, Reflection::None)
            .expect("in range")
    };
    assert_eq!(held(1e-3, 0.09).held_by, DistanceHeldBy::ReactiveField);
    assert_eq!(held(0.5, 0.09).held_by, DistanceHeldBy::FarField);
    assert_eq!(held(0.5, 0.3).held_by, DistanceHeldBy::Aperture);
    assert_near("none", held(0.0, 0.09).distance_m, 0.0, 0.0);
    // 4P/A: 4 · 0.1/(π 0.045²) = 62.876.
    assert_near("surface", held(0.1, 0.09).surface_w_m2, 62.876, 1e-3);
}

#[test]
fn errors_say_what_where_and_the_right_range() {
    let board = Wall {
        material: BuildingMaterial::Floorboard,
        thickness_m: 0.02,
    };
    let brick = Wall {
        material: BuildingMaterial::Brick,
        thickness_m: 0.1,
    };
    let mut link = worked_link();
    link.walls = vec![brick, board];
    link.frequency_hz = 2.437e9;
    let error = link.budget(End::A);
    let wanted = LinkError::OutOfRangeAt {
        index: 1,
        quantity: LinkQuantity::FrequencyHz,
        value: 2.437e9,
        range: [50e9, 100e9],
    };
    assert_eq!(error, Err(wanted));
    let mut link = worked_link();
    link.distance_m = f64::NAN;
    assert!(matches!(
        link.budget(End::A),
        Err(LinkError::OutOfRange {
            quantity: LinkQuantity::DistanceM,
            ..
        })
    ));
    let mut link = worked_link();
    link.b.gain_dbi = f64::INFINITY;
    assert!(matches!(
        link.budget(End::A),
        Err(LinkError::OutOfRangeAt {
            index: 1,
            quantity: LinkQuantity::LevelDb,
            ..
        })
    ));
    assert!(link::weissberger_loss_db(401.0, 2.4e9).is_err());
    assert!(ExposureStandard::Icnirp2020.limit_w_m2(200e6).is_err());
}

#[test]
fn keys_name_every_thing() {
    for material in BuildingMaterial::ALL {
        assert_eq!(BuildingMaterial::from_key(material.key()), Some(material));
    }
    for coax in CoaxType::ALL {
        assert_eq!(CoaxType::from_key(coax.key()), Some(coax));
        let [low, high] = coax.published_range_hz();
        assert!(low < high);
    }
    assert_eq!(CoaxType::from_key("no such cable"), None);
}
