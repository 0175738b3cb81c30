//! What the tests of radio links share.
#![allow(dead_code, reason = "each test file uses its own part")]

use tinwave_core::radio_link::{
    BuildingMaterial, CoaxLine, CoaxType, Connector, Link, LinkEnd, Polarisation, Wall,
};

/// The worked link of tests/reference/radio_link.py.
pub(crate) fn worked_link() -> Link {
    let tilted = |degrees: f64| Polarisation::Linear {
        tilt_rad: degrees.to_radians(),
    };
    Link {
        a: LinkEnd {
            transmit_power_dbm: Some(20.0),
            sensitivity_dbm: Some(-82.0),
            line: Some(CoaxLine {
                coax: CoaxType::Rg213,
                length_m: 3.0,
            }),
            connector: Connector::N,
            connector_pairs: 2,
            mismatch_loss_db: 0.2,
            gain_dbi: 12.0,
            pointing_loss_db: 0.75,
            polarisation: tilted(30.0),
        },
        b: LinkEnd {
            transmit_power_dbm: Some(15.0),
            sensitivity_dbm: Some(-82.0),
            line: None,
            connector: Connector::N,
            connector_pairs: 1,
            mismatch_loss_db: 0.0,
            gain_dbi: 8.0,
            pointing_loss_db: 0.0,
            polarisation: tilted(0.0),
        },
        frequency_hz: 2.437e9,
        distance_m: 1000.0,
        walls: vec![Wall {
            material: BuildingMaterial::Brick,
            thickness_m: 0.1025,
        }],
        foliage_depth_m: 10.0,
        obstacle_loss_db: 1.5,
        other_loss_db: 0.5,
        required_fade_margin_db: 10.0,
    }
}
