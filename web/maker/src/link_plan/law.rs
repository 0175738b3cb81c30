//! What the chosen rules say of an end's power: which of their limits were checked, and
//! which were not.

use tinwave_core::radio_link::lawful::{RuleSet, Ruling, Standing, Transmission, ruling};

use super::number::MOST_POWER_DBM;

/// A limit that was checked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CheckedLimit {
    /// Power times gain, dBm.
    Eirp {
        /// Most.
        most_dbm: f64,
        /// What is sent.
        sent_dbm: f64,
    },
    /// Power at the transmitter's output, dBm.
    Output {
        /// Most, with this gain.
        most_dbm: f64,
        /// What is sent.
        sent_dbm: f64,
    },
}

/// A limit that the rules have, and that is not worked out here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UncheckedLimit {
    /// Power in each part of the channel.
    Density,
    /// Time, or share of the time, on the air.
    TimeOnAir,
    /// Beams that point steeply upwards.
    SteepBeams,
    /// Power outside the channel.
    OutOfBand,
}

/// How an end stands to the rules.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LawStanding {
    /// Every limit of the rules was checked and is kept.
    Within,
    /// What was checked is kept; something was not checked.
    NotAllChecked,
    /// Over a limit.
    Over,
    /// The station's licence decides.
    LicenceDecides,
    /// It only listens: nothing to limit.
    Listening,
    /// It sends, though the rules are for listening.
    MustNotTransmit,
    /// The rules do not cover the channel: no claim.
    NotCovered,
}

/// What the chosen rules say of an end.
#[derive(Clone, Debug, PartialEq)]
pub struct LawAnswer {
    /// How it stands.
    pub standing: LawStanding,
    /// Every limit that was checked.
    pub checked: Vec<CheckedLimit>,
    /// Every limit known of that was not.
    pub unchecked: Vec<UncheckedLimit>,
    /// Most power of the radio by the checked limits, dBm, rounded down to a tenth;
    /// `None` where they name none, or so much that no station may send it.
    pub most_power_dbm: Option<f64>,
    /// Whether the cable's loss was counted in the maker's favour.
    pub cable_helps: bool,
    /// Conditions and sources.
    pub ruling: Ruling,
}

impl LawAnswer {
    /// `None` without rules.
    pub(super) fn new(
        rules: Option<RuleSet>,
        sent: &Transmission,
        has_cable: bool,
    ) -> Option<Self> {
        let ruling = ruling(rules, sent)?;
        let checked = checked(&ruling, sent);
        let unchecked = unchecked(rules?, &ruling);
        let standing = match ruling.standing {
            Standing::Inside => stand_inside(&unchecked),
            Standing::Over => LawStanding::Over,
            Standing::LicenceDecides => LawStanding::LicenceDecides,
            Standing::Listening | Standing::LimitsOnly => LawStanding::Listening,
            Standing::MustNotTransmit => LawStanding::MustNotTransmit,
            Standing::NotCovered => LawStanding::NotCovered,
        };
        // Where the transmitter's output is limited, a cable is no excuse.
        let radiated = ruling.eirp_limit_dbm.is_some() && ruling.conducted_limit_dbm.is_none();
        Some(Self {
            standing,
            checked,
            unchecked,
            most_power_dbm: ruling
                .transmit_power_limit_dbm
                .map(|dbm| (dbm * 10.0 + 1e-6).floor() / 10.0)
                .filter(|dbm| *dbm <= MOST_POWER_DBM),
            cable_helps: radiated && has_cable,
            ruling,
        })
    }

    /// How far over its limit the power is, dB.
    #[must_use]
    pub fn over_db(&self) -> Option<f64> {
        let headroom = self.ruling.headroom_db?;
        (self.standing == LawStanding::Over).then_some(-headroom)
    }
}

/// Within the rules is only what keeps all of their limits.
const fn stand_inside(unchecked: &[UncheckedLimit]) -> LawStanding {
    if unchecked.is_empty() {
        LawStanding::Within
    } else {
        LawStanding::NotAllChecked
    }
}

fn checked(ruling: &Ruling, sent: &Transmission) -> Vec<CheckedLimit> {
    let (Some(power_dbm), Some(eirp_dbm)) = (sent.transmit_power_dbm, ruling.eirp_dbm) else {
        return Vec::new();
    };
    match (ruling.conducted_limit_dbm, ruling.eirp_limit_dbm) {
        (Some(most_dbm), _) => vec![CheckedLimit::Output {
            most_dbm,
            sent_dbm: power_dbm,
        }],
        (None, Some(most_dbm)) => vec![CheckedLimit::Eirp {
            most_dbm,
            sent_dbm: eirp_dbm,
        }],
        (None, None) => Vec::new(),
    }
}

/// Limits besides power: of density and of what falls outside the channel in every set
/// that needs no licence (47 CFR 15.247(d) and (e), 15.407(a) and (b); EN 300 328 and
/// EN 301 893; from memory), and those that the rows themselves tell of.
fn unchecked(set: RuleSet, ruling: &Ruling) -> Vec<UncheckedLimit> {
    let needs_no_licence = matches!(set, RuleSet::UsUnlicensed | RuleSet::EuLicenceExempt);
    let asked = &ruling.conditions;
    [
        (needs_no_licence, UncheckedLimit::Density),
        (asked.duty_cycle_limited, UncheckedLimit::TimeOnAir),
        (asked.steep_beams_limited, UncheckedLimit::SteepBeams),
        (needs_no_licence, UncheckedLimit::OutOfBand),
    ]
    .into_iter()
    .filter_map(|(is_there, limit)| is_there.then_some(limit))
    .collect()
}

#[cfg(test)]
mod tests {
    use super::{LawStanding, UncheckedLimit, stand_inside};

    #[test]
    fn within_is_only_what_keeps_every_limit() {
        assert_eq!(stand_inside(&[]), LawStanding::Within);
        let some = [UncheckedLimit::Density];
        assert_eq!(stand_inside(&some), LawStanding::NotAllChecked);
    }
}
