//! Limits of transmit power against the published rules.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod support;

use support::{assert_near, tolerance};
use tinwave_core::radio_link::lawful::{
    Arrangement, RuleSet, Ruling, Standing, Transmission, ruling,
};

const P2P: Arrangement = Arrangement::FixedPointToPoint;

/// A channel of 20 MHz, no line, power control.
fn sent(mhz: f64, gain_dbi: f64, power: Option<f64>, arrangement: Arrangement) -> Transmission {
    Transmission {
        frequency_hz: mhz * 1e6,
        bandwidth_hz: 20e6,
        gain_dbi,
        line_loss_db: 0.0,
        transmit_power_dbm: power,
        arrangement,
        power_control: true,
    }
}

fn said(set: RuleSet, transmission: &Transmission) -> Ruling {
    ruling(Some(set), transmission).expect("a rule set")
}

#[test]
fn limits_are_those_published() {
    let most = tolerance(
        "radio_link::lawful::ruling",
        "lawful_power::limits_are_those_published",
    );
    let us = RuleSet::UsUnlicensed;
    let eu = RuleSet::EuLicenceExempt;
    let other = Arrangement::Other;
    // Set, MHz, gain dBi, arrangement: conducted and EIRP limit, dBm.
    let rows = [
        // 47 CFR 15.247(c)(1)(i): 1 dB for every 3 dB above 6 dBi.
        (us, 2437.0, 6.0, P2P, Some(30.0), 36.0),
        (us, 2437.0, 9.0, P2P, Some(29.0), 38.0),
        (us, 2437.0, 12.0, P2P, Some(28.0), 40.0),
        (us, 2437.0, 15.0, P2P, Some(27.0), 42.0),
        (us, 2437.0, 18.0, P2P, Some(26.0), 44.0),
        (us, 2437.0, 21.0, P2P, Some(25.0), 46.0),
        (us, 2437.0, 24.0, P2P, Some(24.0), 48.0),
        // 47 CFR 15.247(b)(4): 1 dB per dB, so 36 dBm EIRP; below 6 dBi 1 W.
        (us, 2437.0, 12.0, other, Some(24.0), 36.0),
        (us, 2437.0, 2.0, other, Some(30.0), 32.0),
        (us, 915.0, 8.0, other, Some(28.0), 36.0),
        // 47 CFR 15.407(a)(1)(iii): up to 23 dBi free.
        (us, 5180.0, 23.0, P2P, Some(30.0), 53.0),
        (us, 5180.0, 26.0, P2P, Some(27.0), 53.0),
        (us, 5180.0, 12.0, other, Some(24.0), 36.0),
        // 47 CFR 15.407(a)(2): the lesser of 250 mW and 11 dBm + 10 log 20 = 24.01.
        (us, 5500.0, 6.0, other, Some(23.979), 29.979),
        (us, 5300.0, 12.0, P2P, Some(17.979), 29.979),
        // 47 CFR 15.407(a)(3): fixed point-to-point without reduction (from memory).
        (us, 5785.0, 30.0, P2P, Some(30.0), 60.0),
        (us, 5785.0, 12.0, other, Some(24.0), 36.0),
        // ETSI EN 300 328: 20 dBm EIRP. EN 301 893: 23 and 30 dBm. EN 300 440: 25 mW.
        (eu, 2437.0, 12.0, P2P, None, 20.0),
        (eu, 5180.0, 12.0, other, None, 23.0),
        (eu, 5300.0, 12.0, other, None, 23.0),
        (eu, 5500.0, 12.0, other, None, 30.0),
        (eu, 5800.0, 12.0, other, None, 13.979),
    ];
    for (set, mhz, gain, arrangement, conducted, eirp) in rows {
        // 915 MHz ± 10 lies in 902 to 928.
        let got = said(set, &sent(mhz, gain, None, arrangement));
        let what = format!("{set:?} {mhz} MHz {gain} dBi {arrangement:?}");
        assert_eq!(got.standing, Standing::LimitsOnly, "{what}");
        let limit = got.eirp_limit_dbm.expect("a limit");
        assert_near(&what, limit, eirp, most);
        let transmit = got.transmit_power_limit_dbm.expect("a limit");
        assert_near(&what, transmit, conducted.unwrap_or(eirp - gain), most);
        assert_eq!(got.conducted_limit_dbm.is_some(), conducted.is_some());
        assert!(got.conditions.changed_antenna_may_be_forbidden, "{what}");
        assert!(!got.rules.is_empty());
    }
}

#[test]
fn short_range_devices_at_868() {
    // ERC/REC 70-03 Annex 1 (from memory): 25 mW ERP, 500 mW ERP at 869.4 to 869.65;
    // a dipole has 2.15 dBi.
    let narrow = |mhz: f64| Transmission {
        bandwidth_hz: 125e3,
        ..sent(mhz, 10.0, Some(10.0), P2P)
    };
    for (mhz, eirp) in [(868.1, 16.13), (869.525, 29.14)] {
        let got = said(RuleSet::EuLicenceExempt, &narrow(mhz));
        assert_near("EIRP", got.eirp_limit_dbm.expect("a limit"), eirp, 0.01);
        assert!(got.conditions.duty_cycle_limited);
        assert_near("sent", got.eirp_dbm.expect("a power"), 20.0, 1e-9);
    }
    let over = said(RuleSet::EuLicenceExempt, &narrow(868.1)).standing;
    let inside = said(RuleSet::EuLicenceExempt, &narrow(869.525)).standing;
    assert_eq!((over, inside), (Standing::Over, Standing::Inside));
}

#[test]
fn between_the_pieces_of_868_nothing_is_claimed() {
    // ERC/REC 70-03 Annex 1 (from memory): 868.6 to 868.7 and 869.2 to 869.4 MHz are for
    // alarms, 869.7 to 870 MHz has 5 mW.
    for mhz in [868.65, 869.3, 869.8] {
        let narrow = Transmission {
            bandwidth_hz: 25e3,
            ..sent(mhz, 2.15, Some(0.0), P2P)
        };
        let got = said(RuleSet::EuLicenceExempt, &narrow);
        assert_eq!(got.standing, Standing::NotCovered, "{mhz}");
    }
}

#[test]
fn digital_modulation_is_half_a_megahertz_wide_at_least() {
    // 47 CFR 15.247(a)(2) (from memory): a 6 dB bandwidth of 500 kHz or more.
    for (mhz, bandwidth_hz, standing) in [
        (915.0, 125e3, Standing::NotCovered),
        (915.0, 500e3, Standing::Inside),
        (2437.0, 250e3, Standing::NotCovered),
        (2437.0, 1e6, Standing::Inside),
    ] {
        let one = Transmission {
            bandwidth_hz,
            ..sent(mhz, 6.0, Some(20.0), Arrangement::Other)
        };
        let got = said(RuleSet::UsUnlicensed, &one).standing;
        assert_eq!(got, standing, "{mhz} MHz, {bandwidth_hz} Hz");
    }
}

#[test]
fn a_bare_carrier_has_a_finite_limit() {
    // 47 CFR 15.407(a)(2): 11 dBm + 10 log B, here of 1 Hz.
    let carrier = Transmission {
        bandwidth_hz: 0.0,
        ..sent(5500.0, 6.0, Some(0.0), P2P)
    };
    let got = said(RuleSet::UsUnlicensed, &carrier);
    assert_near(
        "11 - 60 dBm",
        got.conducted_limit_dbm.expect("a limit"),
        -49.0,
        1e-9,
    );
}

#[test]
fn a_line_counts_where_eirp_is_limited_only() {
    let with_line = |power| Transmission {
        line_loss_db: 3.0,
        ..sent(2437.0, 12.0, Some(power), P2P)
    };
    // 20 dBm EIRP = 11 dBm - 3 dB + 12 dBi.
    let eu = said(RuleSet::EuLicenceExempt, &with_line(11.0));
    assert_eq!(eu.standing, Standing::Inside);
    assert_near("headroom", eu.headroom_db.expect("a power"), 0.0, 1e-9);
    let eu = said(RuleSet::EuLicenceExempt, &with_line(15.0));
    assert_eq!(eu.standing, Standing::Over);
    assert_near("headroom", eu.headroom_db.expect("a power"), -4.0, 1e-9);
    let us = said(RuleSet::UsUnlicensed, &with_line(29.0));
    assert_eq!(us.standing, Standing::Over, "28 dBm at the transmitter");
}

#[test]
fn conditions_of_the_bands() {
    let eu = |mhz, control| {
        let mut transmission = sent(mhz, 5.0, None, P2P);
        transmission.power_control = control;
        said(RuleSet::EuLicenceExempt, &transmission)
    };
    let low = eu(5180.0, true).conditions;
    assert!(low.indoor_only && !low.dynamic_frequency_selection);
    let middle = eu(5300.0, true).conditions;
    assert!(middle.indoor_only && middle.dynamic_frequency_selection);
    assert!(middle.transmitter_power_control);
    assert!(!eu(5500.0, true).conditions.indoor_only);
    // EN 301 893 without power control: 20 and 27 dBm.
    assert_eq!(eu(5300.0, false).eirp_limit_dbm, Some(20.0));
    assert_eq!(eu(5500.0, false).eirp_limit_dbm, Some(27.0));
    let us = |mhz, arrangement| said(RuleSet::UsUnlicensed, &sent(mhz, 5.0, None, arrangement));
    assert!(us(2437.0, P2P).conditions.fixed_point_to_point_only);
    assert!(
        us(5180.0, Arrangement::Other)
            .conditions
            .steep_beams_limited
    );
    assert!(us(5500.0, P2P).conditions.dynamic_frequency_selection);
}

#[test]
fn a_wide_channel_keeps_the_strictest_row() {
    // 160 MHz at 5250 lies in 5150-5250 and 5250-5350 MHz.
    let wide = Transmission {
        bandwidth_hz: 160e6,
        power_control: false,
        ..sent(5250.0, 6.0, None, Arrangement::Other)
    };
    let eu = said(RuleSet::EuLicenceExempt, &wide);
    assert_eq!(eu.rules.len(), 2);
    assert_eq!(eu.eirp_limit_dbm, Some(20.0));
    assert!(eu.conditions.dynamic_frequency_selection);
    let us = said(RuleSet::UsUnlicensed, &wide);
    assert_near(
        "250 mW",
        us.conducted_limit_dbm.expect("a limit"),
        23.979,
        1e-3,
    );
}

#[test]
fn nothing_is_claimed_where_nothing_is_known() {
    let any = sent(2437.0, 12.0, Some(20.0), P2P);
    assert_eq!(ruling(None, &any), None);
    // Channel 14, the gap at 5.4 GHz, and 6 GHz, where outside antennas are not for all.
    for (set, mhz) in [
        (RuleSet::UsUnlicensed, 2484.0),
        (RuleSet::EuLicenceExempt, 5400.0),
        (RuleSet::UsUnlicensed, 5955.0),
        (RuleSet::EuLicenceExempt, 6105.0),
        (RuleSet::Amateur, 2500.0),
    ] {
        let got = said(set, &sent(mhz, 12.0, Some(0.0), P2P));
        assert_eq!(got.standing, Standing::NotCovered, "{set:?} {mhz}");
        assert_eq!(got.eirp_limit_dbm, None);
        assert_eq!(got.headroom_db, None);
    }
    let amateur = said(RuleSet::Amateur, &any);
    assert_eq!(amateur.standing, Standing::LicenceDecides);
    assert!(amateur.conditions.needs_licence);
    assert_eq!(amateur.transmit_power_limit_dbm, None);
    let heard = said(RuleSet::ReceiveOnly, &sent(1420.4, 12.0, None, P2P));
    assert_eq!(heard.standing, Standing::Listening);
    assert!(heard.conditions.listening_may_be_restricted);
    let sends = said(RuleSet::ReceiveOnly, &any);
    assert_eq!(sends.standing, Standing::MustNotTransmit);
}

#[test]
fn every_row_says_where_it_is_written() {
    for set in RuleSet::ALL {
        assert_eq!(RuleSet::from_key(set.key()), Some(set));
        for rule in set.rules() {
            assert!(rule.band_khz[0] < rule.band_khz[1]);
            assert!(!rule.source.citation.is_empty());
        }
    }
}
