//! The stations of the maker's way.

/// A station; one is open at a time.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Station {
    /// Will this can do?
    #[default]
    Can,
    /// Wire, hole and match.
    Feed,
    /// Gain, widths and what stands at the mouth.
    Beam,
    /// Drilling, cutting, templates.
    Make,
    /// Measured against computed.
    Measure,
    /// A link from here to there.
    Link,
    /// What is kept.
    Shelf,
}

impl Station {
    /// Every station, in the maker's order.
    pub const ALL: [Self; 7] = [
        Self::Can,
        Self::Feed,
        Self::Beam,
        Self::Make,
        Self::Measure,
        Self::Link,
        Self::Shelf,
    ];

    /// Its word in an address.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Can => "can",
            Self::Feed => "feed",
            Self::Beam => "beam",
            Self::Make => "make",
            Self::Measure => "measure",
            Self::Link => "link",
            Self::Shelf => "shelf",
        }
    }

    /// The station of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|station| station.key() == key)
    }
}
