//! How a published value of this crate is known.

/// How sure a carried-over value is. Shown beside the value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Confidence {
    /// Read in the published source, or in a public table that quotes it.
    Seen,
    /// Remembered; the source is known but was not open. Check before relying on it.
    FromMemory,
    /// Worked out from published values by a stated rule.
    Estimated,
}

impl Confidence {
    /// Words for people.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Seen => "from a published table",
            Self::FromMemory => "from memory, check it",
            Self::Estimated => "estimated, measure it",
        }
    }
}
