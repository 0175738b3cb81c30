//! The trade's terms, each in two sentences.

/// A term of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Term {
    /// How well the feed is matched.
    Vswr,
    /// Gain.
    Dbi,
    /// Ratios.
    Decibel,
    /// A way in which the field stands across the can.
    Mode,
    /// The wanted mode.
    Te11,
    /// The frequency from which a mode passes.
    Cutoff,
}

/// A term, explained.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TermText {
    /// The term as it is written.
    pub name: &'static str,
    /// Two sentences: what it is, and what a maker needs of it.
    pub text: &'static str,
}

impl Term {
    /// Every term.
    pub const ALL: [Self; 6] = [
        Self::Vswr,
        Self::Dbi,
        Self::Decibel,
        Self::Mode,
        Self::Te11,
        Self::Cutoff,
    ];
}

/// A term in words.
#[must_use]
pub const fn term(term: Term) -> TermText {
    let (name, text) = match term {
        Term::Vswr => (
            "VSWR",
            "How much of the power comes back from the antenna instead of going out: 1 is none, 1.5 is 4 %, 2 is 11 %. Under 1.5 over the whole band is good, and above 2 a radio may turn its power down.",
        ),
        Term::Dbi => (
            "dBi",
            "How much stronger the beam is straight ahead than if the same power went evenly all round. 3 dBi more is twice the power there; a can alone has 7 to 9.",
        ),
        Term::Decibel => (
            "dB",
            "A ratio of two powers, written so that ratios add up: 3 dB is twice, 10 dB ten times, 20 dB a hundred times. Less than nothing is a loss: −3 dB is half.",
        ),
        Term::Mode => (
            "mode",
            "A way in which the field stands across the can, as a string has several ways to swing. The can should carry one of them over the whole band: a second takes power and bends the beam.",
        ),
        Term::Te11 => (
            "TE11",
            "The mode that a can carries first and the one that is wanted: the field runs straight across, as the wire points. Its beam goes straight ahead.",
        ),
        Term::Cutoff => (
            "cutoff",
            "The frequency from which a mode passes through the can; below it that mode dies out within a hand’s width. A wider can has lower cutoffs.",
        ),
    };
    TermText { name, text }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_term_is_explained_in_two_sentences() {
        for text in Term::ALL.map(term) {
            // A full stop inside a figure is followed by a digit.
            let ends = text.text.matches(". ").count() + usize::from(text.text.ends_with('.'));
            assert_eq!(ends, 2, "{}", text.name);
        }
    }
}
