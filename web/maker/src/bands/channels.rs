//! Channels by rule.

use tinwave_core::design::Band;

use crate::confidence::Confidence;

/// A set of numbered channels.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ChannelSet {
    /// IEEE 802.11 at 2.4 GHz.
    Lan2g4,
    /// IEEE 802.11 at 5 GHz.
    Lan5g,
    /// IEEE 802.11 at 6 GHz.
    Lan6g,
    /// IEEE 802.15.4 at 2.4 GHz.
    Personal2g4,
}

/// One channel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Channel {
    /// Its set.
    pub set: ChannelSet,
    /// Its number.
    pub number: u16,
    /// Its centre.
    pub centre_khz: u32,
    /// Lower edge.
    pub low_khz: u32,
    /// Upper edge.
    pub high_khz: u32,
}

impl ChannelSet {
    /// Every set, in the order a list should show them.
    pub const ALL: [Self; 4] = [Self::Lan2g4, Self::Lan5g, Self::Lan6g, Self::Personal2g4];

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Lan2g4 => "Wireless LAN 2.4 GHz channel",
            Self::Lan5g => "Wireless LAN 5 GHz channel",
            Self::Lan6g => "Wireless LAN 6 GHz channel",
            Self::Personal2g4 => "Sensor network channel (802.15.4)",
        }
    }

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Lan2g4 => "lan2g4",
            Self::Lan5g => "lan5g",
            Self::Lan6g => "lan6g",
            Self::Personal2g4 => "personal2g4",
        }
    }

    /// The set of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|set| set.key() == key)
    }

    /// The published rule.
    #[must_use]
    pub const fn source(self) -> &'static str {
        match self {
            Self::Lan2g4 => {
                "IEEE Std 802.11-2020 Annex E: 2407 + 5 n MHz; channel 14 at 2484 MHz; 20 MHz wide"
            }
            Self::Lan5g => "IEEE Std 802.11-2020 Annex E: 5000 + 5 n MHz; 20 MHz wide",
            Self::Lan6g => "IEEE Std 802.11-2020 Annex E: 5950 + 5 n MHz; 20 MHz wide",
            Self::Personal2g4 => {
                "IEEE 802.15.4: 2405 + 5 (k − 11) MHz; main lobe 3 MHz wide at 2 Mchip/s"
            }
        }
    }

    /// How sure the rule is.
    #[must_use]
    pub const fn confidence(self) -> Confidence {
        Confidence::FromMemory
    }

    /// The numbers of its channels.
    #[must_use]
    pub fn numbers(self) -> Vec<u16> {
        match self {
            Self::Lan2g4 => (1..=14).collect(),
            Self::Lan5g => (36..=64)
                .step_by(4)
                .chain((100..=144).step_by(4))
                .chain((149..=177).step_by(4))
                .collect(),
            Self::Lan6g => (1..=233).step_by(4).collect(),
            Self::Personal2g4 => (11..=26).collect(),
        }
    }

    const fn half_width_khz(self) -> u32 {
        match self {
            Self::Personal2g4 => 1_500,
            _ => 10_000,
        }
    }

    const fn centre_khz(self, number: u16) -> u32 {
        let number = number as u32;
        match self {
            Self::Lan2g4 if number == 14 => 2_484_000,
            Self::Lan2g4 => 2_407_000 + 5_000 * number,
            Self::Lan5g => 5_000_000 + 5_000 * number,
            Self::Lan6g => 5_950_000 + 5_000 * number,
            Self::Personal2g4 => 2_350_000 + 5_000 * number,
        }
    }
}

impl Channel {
    /// `Channel 6, 2437 MHz`.
    #[must_use]
    pub fn label(self) -> String {
        let mut text = String::from("Channel ");
        text.push_str(&self.number.to_string());
        text.push_str(", ");
        text.push_str(&crate::entry::format_frequency(self.centre_khz));
        text
    }

    /// Its edges.
    #[must_use]
    pub const fn band(self) -> Band {
        Band {
            low_khz: self.low_khz,
            high_khz: self.high_khz,
        }
    }
}

/// A channel; `None` where the set has no such number.
#[must_use]
pub fn channel(set: ChannelSet, number: u16) -> Option<Channel> {
    if !set.numbers().contains(&number) {
        return None;
    }
    let centre_khz = set.centre_khz(number);
    let half = set.half_width_khz();
    Some(Channel {
        set,
        number,
        centre_khz,
        low_khz: centre_khz - half,
        high_khz: centre_khz + half,
    })
}
