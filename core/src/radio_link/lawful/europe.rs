//! Europe: radio without a licence. Limits are of EIRP, so an antenna's gain counts in
//! full. Countries may differ.
//!
//! Limits of power density come on top: 10 dBm/MHz at 2.4 GHz, 50 mW/MHz from 5470 MHz
//! (from memory). Dates are those of the copies read: powers in the EN 301 893 and
//! EN 300 440 bands are those of a database of national limits, June 2022. Who changes a
//! device's antenna may become its maker in the sense of Directive 2014/53/EU (from
//! memory). From 863 to 870 MHz the pieces for alarms and those with 5 mW are left out,
//! so nothing is said there.

use super::rule::{Basis, Conditions, PowerLimit, Rule, Source};

const EXEMPT: Conditions = Conditions {
    changed_antenna_may_be_forbidden: true,
    national_limits_differ: true,
    ..Conditions::NONE
};

const SHORT_RANGE: Conditions = Conditions {
    duty_cycle_limited: true,
    ..EXEMPT
};

const INDOOR: Conditions = Conditions {
    indoor_only: true,
    ..EXEMPT
};

const RADAR: Conditions = Conditions {
    dynamic_frequency_selection: true,
    transmitter_power_control: true,
    ..EXEMPT
};

const fn eirp(dbm: f64) -> PowerLimit {
    PowerLimit::Eirp {
        dbm,
        without_power_control_dbm: dbm,
    }
}

const fn rule(
    band_khz: [u32; 2],
    limit: PowerLimit,
    conditions: Conditions,
    source: Source,
) -> Rule {
    Rule {
        band_khz,
        arrangement: None,
        least_bandwidth_hz: None,
        limit,
        conditions,
        source,
    }
}

const fn source(citation: &'static str, date: Option<(u16, Option<u8>)>, basis: Basis) -> Source {
    Source {
        citation,
        date,
        basis,
    }
}

const RECOMMENDATION_70_03: Source = source("ERC/REC 70-03 Annex 1", None, Basis::Memory);

/// A half-wave dipole's gain, dBi, between ERP and EIRP.
const DIPOLE_DBI: f64 = 2.15;

/// 25 mW ERP.
const WEAK: PowerLimit = eirp(13.979_400_086_720_377 + DIPOLE_DBI);

/// 500 mW ERP.
const STRONG: PowerLimit = eirp(26.989_700_043_360_187 + DIPOLE_DBI);

pub(super) const RULES: &[Rule] = &[
    rule([863_000, 868_600], WEAK, SHORT_RANGE, RECOMMENDATION_70_03),
    rule([868_700, 869_200], WEAK, SHORT_RANGE, RECOMMENDATION_70_03),
    rule(
        [869_400, 869_650],
        STRONG,
        SHORT_RANGE,
        RECOMMENDATION_70_03,
    ),
    rule(
        [2_400_000, 2_483_500],
        eirp(20.0),
        EXEMPT,
        source(
            "ETSI EN 300 328 V2.2.2, 4.3.2.2",
            Some((2019, Some(7))),
            Basis::Read,
        ),
    ),
    rule(
        [5_150_000, 5_250_000],
        eirp(23.0),
        INDOOR,
        source(
            "ETSI EN 301 893; Decision (EU) 2022/179",
            Some((2022, Some(6))),
            Basis::SecondHand,
        ),
    ),
    rule(
        [5_250_000, 5_350_000],
        PowerLimit::Eirp {
            dbm: 23.0,
            without_power_control_dbm: 20.0,
        },
        Conditions {
            indoor_only: true,
            ..RADAR
        },
        source(
            "ETSI EN 301 893; Decision (EU) 2022/179",
            Some((2022, Some(6))),
            Basis::SecondHand,
        ),
    ),
    rule(
        [5_470_000, 5_725_000],
        PowerLimit::Eirp {
            dbm: 30.0,
            without_power_control_dbm: 27.0,
        },
        RADAR,
        source(
            "ETSI EN 301 893; Decision (EU) 2022/179",
            Some((2022, Some(6))),
            Basis::SecondHand,
        ),
    ),
    rule(
        [5_725_000, 5_875_000],
        eirp(13.979_400_086_720_377),
        EXEMPT,
        source("ETSI EN 300 440", Some((2022, Some(6))), Basis::SecondHand),
    ),
];
