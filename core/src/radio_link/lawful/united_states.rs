//! 47 CFR part 15: digitally modulated transmitters without a licence.
//!
//! 15.203 and 15.204(c) bind a device to the antennas it was authorised with; 15.23 lets
//! a person build up to five devices for personal use (from memory). Limits of power
//! density (15.247(e), 15.407(a)) come on top. Frequency hopping over fewer than 75
//! channels has less (15.247(b)(1)).

use super::rule::{Arrangement, Basis, Conditions, PowerLimit, Rule, Source};

const PART_15: Conditions = Conditions {
    changed_antenna_may_be_forbidden: true,
    ..Conditions::NONE
};

const POINT_TO_POINT: Conditions = Conditions {
    fixed_point_to_point_only: true,
    ..PART_15
};

const RADAR: Conditions = Conditions {
    dynamic_frequency_selection: true,
    transmitter_power_control: true,
    ..PART_15
};

/// 1 W at the transmitter, less by so much per dB above a gain.
const fn one_watt(free_gain_dbi: f64, reduction_db_per_db: f64) -> PowerLimit {
    PowerLimit::Conducted {
        dbm: 30.0,
        per_mhz_dbm: None,
        free_gain_dbi,
        reduction_db_per_db,
    }
}

/// The lesser of 250 mW and 11 dBm plus the bandwidth.
const QUARTER_WATT: PowerLimit = PowerLimit::Conducted {
    dbm: 23.979_400_086_720_38,
    per_mhz_dbm: Some(11.0),
    free_gain_dbi: 6.0,
    reduction_db_per_db: 1.0,
};

/// Least 6 dB bandwidth of digital modulation: 47 CFR 15.247(a)(2), and 15.407(e) from
/// 5725 MHz (both from memory). The channel's width stands for it.
const DIGITAL_HZ: Option<f64> = Some(500e3);

const fn source(citation: &'static str, date: Option<(u16, Option<u8>)>, basis: Basis) -> Source {
    Source {
        citation,
        date,
        basis,
    }
}

pub(super) const RULES: &[Rule] = &[
    Rule {
        band_khz: [902_000, 928_000],
        arrangement: None,
        least_bandwidth_hz: DIGITAL_HZ,
        limit: one_watt(6.0, 1.0),
        conditions: PART_15,
        source: source("47 CFR 15.247(b)(3),(b)(4)", None, Basis::Memory),
    },
    Rule {
        band_khz: [2_400_000, 2_483_500],
        arrangement: Some(Arrangement::FixedPointToPoint),
        least_bandwidth_hz: DIGITAL_HZ,
        limit: one_watt(6.0, 1.0 / 3.0),
        conditions: POINT_TO_POINT,
        source: source("47 CFR 15.247(c)(1)(i)", None, Basis::Read),
    },
    Rule {
        band_khz: [2_400_000, 2_483_500],
        arrangement: None,
        least_bandwidth_hz: DIGITAL_HZ,
        limit: one_watt(6.0, 1.0),
        conditions: PART_15,
        source: source("47 CFR 15.247(b)(3),(b)(4)", None, Basis::Read),
    },
    Rule {
        band_khz: [5_150_000, 5_250_000],
        arrangement: Some(Arrangement::FixedPointToPoint),
        least_bandwidth_hz: None,
        limit: one_watt(23.0, 1.0),
        conditions: POINT_TO_POINT,
        source: source("47 CFR 15.407(a)(1)(iii)", Some((2016, None)), Basis::Read),
    },
    Rule {
        band_khz: [5_150_000, 5_250_000],
        arrangement: None,
        least_bandwidth_hz: None,
        limit: one_watt(6.0, 1.0),
        conditions: Conditions {
            steep_beams_limited: true,
            ..PART_15
        },
        source: source("47 CFR 15.407(a)(1)(i)", Some((2016, None)), Basis::Read),
    },
    Rule {
        band_khz: [5_250_000, 5_350_000],
        arrangement: None,
        least_bandwidth_hz: None,
        limit: QUARTER_WATT,
        conditions: RADAR,
        source: source("47 CFR 15.407(a)(2)", None, Basis::Memory),
    },
    Rule {
        band_khz: [5_470_000, 5_725_000],
        arrangement: None,
        least_bandwidth_hz: None,
        limit: QUARTER_WATT,
        conditions: RADAR,
        source: source("47 CFR 15.407(a)(2)", None, Basis::Memory),
    },
    Rule {
        band_khz: [5_725_000, 5_850_000],
        arrangement: Some(Arrangement::FixedPointToPoint),
        least_bandwidth_hz: DIGITAL_HZ,
        limit: one_watt(6.0, 0.0),
        conditions: POINT_TO_POINT,
        source: source("47 CFR 15.407(a)(3)", None, Basis::Memory),
    },
    Rule {
        band_khz: [5_725_000, 5_850_000],
        arrangement: None,
        least_bandwidth_hz: DIGITAL_HZ,
        limit: one_watt(6.0, 1.0),
        conditions: PART_15,
        source: source("47 CFR 15.407(a)(3)", None, Basis::Memory),
    },
];
