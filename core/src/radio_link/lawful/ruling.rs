//! How a transmission stands to a rule set.

use alloc::vec::Vec;

use super::RuleSet;
use super::rule::{Arrangement, Conditions, PowerLimit, Rule};
use crate::math;
use crate::si;

/// What is to be judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Transmission {
    /// Centre of the channel, Hz.
    pub frequency_hz: f64,
    /// Width of the channel, Hz, zero or more.
    pub bandwidth_hz: f64,
    /// Gain of the antenna, dBi, without the line.
    pub gain_dbi: f64,
    /// Loss between transmitter and antenna, dB, zero or more.
    pub line_loss_db: f64,
    /// Power at the transmitter's output, dBm; `None` to ask for limits only.
    pub transmit_power_dbm: Option<f64>,
    /// What the stations are to each other.
    pub arrangement: Arrangement,
    /// Whether the transmitter controls its power.
    pub power_control: bool,
}

/// How a transmission stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Standing {
    /// No power given, so limits only.
    LimitsOnly,
    /// Inside the limit.
    Inside,
    /// Over the limit.
    Over,
    /// The station's licence decides.
    LicenceDecides,
    /// Listening: nothing to limit.
    Listening,
    /// A power is given though the station only listens.
    MustNotTransmit,
    /// Some of the channel is in no row of the rule set, or the channel is narrower than
    /// the row asks: no claim.
    NotCovered,
}

/// What a rule set says of a transmission.
#[derive(Clone, Debug, PartialEq)]
pub struct Ruling {
    /// How it stands.
    pub standing: Standing,
    /// Most EIRP with this antenna, dBm.
    pub eirp_limit_dbm: Option<f64>,
    /// Most power at the transmitter's output that the rules name, dBm; `None` where
    /// they limit EIRP alone.
    pub conducted_limit_dbm: Option<f64>,
    /// Most power at the transmitter's output that stays inside, dBm.
    pub transmit_power_limit_dbm: Option<f64>,
    /// EIRP of the power given, dBm.
    pub eirp_dbm: Option<f64>,
    /// Limit less power given, dB; below zero when over.
    pub headroom_db: Option<f64>,
    /// What the rows ask besides.
    pub conditions: Conditions,
    /// The rows that cover the channel, lowest first; none when it is not covered.
    pub rules: Vec<&'static Rule>,
}

/// What a rule set says; `None` without a rule set.
///
/// A channel that lies in several rows keeps the strictest limit and every condition.
/// A loss of the line raises what may be sent where EIRP is limited, and gives no credit
/// where the transmitter's output is. A gain between the steps of "1 dB for every 3 dB"
/// counts in proportion, the stricter reading.
#[must_use]
pub fn ruling(set: Option<RuleSet>, sent: &Transmission) -> Option<Ruling> {
    let set = set?;
    let rules = covering(set, sent);
    let mut limits = Limits::default();
    for rule in &rules {
        limits.tighten(rule, sent);
    }
    let eirp_dbm = sent
        .transmit_power_dbm
        .map(|dbm| dbm - sent.line_loss_db + sent.gain_dbi);
    let transmit_power_limit_dbm = limits.transmit_dbm;
    let headroom_db = match (transmit_power_limit_dbm, sent.transmit_power_dbm) {
        (Some(limit), Some(given)) => Some(limit - given),
        _ => None,
    };
    let standing = match (rules.is_empty(), limits.kind, headroom_db) {
        (true, _, _) => Standing::NotCovered,
        (_, Kind::Licence, _) => Standing::LicenceDecides,
        (_, Kind::Listening, _) if sent.transmit_power_dbm.is_some() => Standing::MustNotTransmit,
        (_, Kind::Listening, _) => Standing::Listening,
        // A billionth of a dB is rounding, not a breach.
        (_, Kind::Power, Some(spare)) if spare >= -1e-9 => Standing::Inside,
        (_, Kind::Power, Some(_)) => Standing::Over,
        (_, Kind::Power, None) => Standing::LimitsOnly,
    };
    Some(Ruling {
        standing,
        eirp_limit_dbm: limits.eirp_dbm,
        conducted_limit_dbm: limits.conducted_dbm,
        transmit_power_limit_dbm,
        eirp_dbm,
        headroom_db,
        conditions: limits.conditions,
        rules,
    })
}

/// The rows that cover the whole channel, lowest first, or none.
fn covering(set: RuleSet, sent: &Transmission) -> Vec<&'static Rule> {
    let half = 0.5 * sent.bandwidth_hz.max(0.0);
    let mut at = si::kilohertz(sent.frequency_hz - half);
    let end = si::kilohertz(sent.frequency_hz + half);
    let mut found = Vec::new();
    loop {
        let next = set.rules().iter().find(|rule| {
            let [low, high] = rule.band_khz;
            // A row begins with its first frequency; its last belongs to it only when
            // the channel ends there.
            let inside = low <= at && (at < high || (at == high && at == end));
            let least_hz = rule.least_bandwidth_hz.unwrap_or(0.0);
            inside
                && sent.bandwidth_hz >= least_hz
                && rule.arrangement.is_none_or(|only| only == sent.arrangement)
        });
        let Some(rule) = next else {
            return Vec::new();
        };
        found.push(rule);
        let [_, high] = rule.band_khz;
        if end <= high {
            return found;
        }
        at = high;
    }
}

/// What kind of limit holds; the strictest last.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
enum Kind {
    #[default]
    Power,
    Licence,
    Listening,
}

/// Limits gathered over the rows of a channel.
#[derive(Clone, Copy, Debug, Default)]
struct Limits {
    kind: Kind,
    eirp_dbm: Option<f64>,
    conducted_dbm: Option<f64>,
    transmit_dbm: Option<f64>,
    conditions: Conditions,
}

impl Limits {
    fn tighten(&mut self, rule: &Rule, sent: &Transmission) {
        self.conditions = self.conditions.with(rule.conditions);
        match rule.limit {
            PowerLimit::Eirp {
                dbm,
                without_power_control_dbm,
            } => {
                let most = if sent.power_control {
                    dbm
                } else {
                    without_power_control_dbm
                };
                lower(&mut self.eirp_dbm, most);
                let transmit = most - sent.gain_dbi + sent.line_loss_db;
                lower(&mut self.transmit_dbm, transmit);
            }
            PowerLimit::Conducted {
                dbm,
                per_mhz_dbm,
                free_gain_dbi,
                reduction_db_per_db,
            } => {
                let by_width = per_mhz_dbm.map_or(f64::INFINITY, |base| {
                    // A bare carrier counts as 1 Hz wide.
                    base + 10.0 * math::log10(sent.bandwidth_hz.max(1.0) / 1e6)
                });
                let over = (sent.gain_dbi - free_gain_dbi).max(0.0);
                let conducted = dbm.min(by_width) - reduction_db_per_db * over;
                lower(&mut self.conducted_dbm, conducted);
                lower(&mut self.transmit_dbm, conducted);
                lower(&mut self.eirp_dbm, conducted + sent.gain_dbi);
            }
            PowerLimit::StationLicence => self.kind = self.kind.max(Kind::Licence),
            PowerLimit::NoTransmission => self.kind = self.kind.max(Kind::Listening),
        }
    }
}

fn lower(limit: &mut Option<f64>, candidate: f64) {
    *limit = Some(limit.map_or(candidate, |now| now.min(candidate)));
}
