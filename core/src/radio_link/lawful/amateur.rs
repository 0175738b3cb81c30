//! Amateur bands from 902 MHz to 10.5 GHz, widest edges of any region: the station's
//! licence and the country decide edges and power.
//!
//! Source: 47 CFR 97.301, columns of all regions (2009 and 2021 texts); ITU Radio
//! Regulations, Art. 5 and 25.

use super::rule::{Basis, Conditions, PowerLimit, Rule, Source};

const fn band(low_khz: u32, high_khz: u32, year: u16) -> Rule {
    Rule {
        band_khz: [low_khz, high_khz],
        arrangement: None,
        least_bandwidth_hz: None,
        limit: PowerLimit::StationLicence,
        conditions: Conditions {
            needs_licence: true,
            national_limits_differ: true,
            ..Conditions::NONE
        },
        source: Source {
            citation: "47 CFR 97.301; ITU-R RR Art. 5, 25",
            date: Some((year, None)),
            basis: Basis::Read,
        },
    }
}

pub(super) const RULES: &[Rule] = &[
    // Region 2 only.
    band(902_000, 928_000, 2021),
    band(1_240_000, 1_300_000, 2021),
    band(2_300_000, 2_450_000, 2021),
    // Being withdrawn in several countries.
    band(3_300_000, 3_500_000, 2009),
    // To 5850 MHz in regions 1 and 3.
    band(5_650_000, 5_925_000, 2021),
    band(10_000_000, 10_500_000, 2021),
];
