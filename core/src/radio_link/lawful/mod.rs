//! Published limits of transmit power, as data, and how a station stands to them.
//!
//! Not legal advice: rules change, local law decides, and each row says where and when
//! its text was read. Without a rule set chosen nothing is claimed.

mod amateur;
mod europe;
mod rule;
mod ruling;
mod united_states;

pub use rule::{Arrangement, Basis, Conditions, PowerLimit, Rule, Source};
pub use ruling::{Ruling, Standing, Transmission, ruling};

/// Which rules a station goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[non_exhaustive]
pub enum RuleSet {
    /// United States, without a licence: 47 CFR 15.247 and 15.407.
    UsUnlicensed,
    /// Europe, without a licence: EN 300 328, EN 301 893, EN 300 440, ERC/REC 70-03.
    EuLicenceExempt,
    /// Amateur service: the station's licence decides.
    Amateur,
    /// The station only listens.
    ReceiveOnly,
}

impl RuleSet {
    /// Every set.
    pub const ALL: [Self; 4] = [
        Self::UsUnlicensed,
        Self::EuLicenceExempt,
        Self::Amateur,
        Self::ReceiveOnly,
    ];

    /// Its rows. The first that covers a frequency and an arrangement holds.
    #[must_use]
    pub const fn rules(self) -> &'static [Rule] {
        match self {
            Self::UsUnlicensed => united_states::RULES,
            Self::EuLicenceExempt => europe::RULES,
            Self::Amateur => amateur::RULES,
            Self::ReceiveOnly => rule::RECEIVE_ONLY,
        }
    }

    /// Short word for links and files (`"us"`).
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::UsUnlicensed => "us",
            Self::EuLicenceExempt => "eu",
            Self::Amateur => "amateur",
            Self::ReceiveOnly => "receive",
        }
    }

    /// The set of a short word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.key() == key)
    }
}
