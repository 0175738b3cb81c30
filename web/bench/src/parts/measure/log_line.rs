//! One line of the log as text: words with tabs between, numbers whole.

/// How well a can was matched: VSWR in thousandths, frequency in kilohertz.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Figures {
    /// Worst VSWR over the band, where the measurement reaches across it.
    pub(super) worst_milli: Option<u32>,
    /// Where it is best, and the VSWR there.
    pub(super) best: Option<(u32, u32)>,
}

/// A measurement.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Measured {
    /// Tells one measurement from another.
    pub(super) mark: String,
    /// The wire as it was drawn, micrometres.
    pub(super) wire_um: u32,
    pub(super) figures: Figures,
    /// What was known of the can without it (see [`super::known`]); may be empty.
    pub(super) before: String,
    /// What is known with it.
    pub(super) after: String,
}

/// What was done to the can, or to its drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Done {
    Cut,
    Lengthened,
    Moved,
    Screwed,
    Redrawn,
}

const DONE: [(Done, &str); 5] = [
    (Done::Cut, "cut"),
    (Done::Lengthened, "longer"),
    (Done::Moved, "moved"),
    (Done::Screwed, "screw"),
    (Done::Redrawn, "drawn"),
];

/// A change.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Change {
    pub(super) done: Done,
    /// By how much, or where, micrometres.
    pub(super) amount_um: u32,
    /// The wire as it is drawn since, micrometres.
    pub(super) wire_um: u32,
    /// Worst VSWR to expect after it, thousandths.
    pub(super) expected_milli: Option<u32>,
    /// What is known of the can after it; may be empty.
    pub(super) after: String,
}

/// A line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Line {
    Measured(Measured),
    Changed(Change),
    /// Anything else, shown as it stands.
    Other(String),
}

const NONE: &str = "-";

fn number(value: Option<u32>) -> String {
    value.map_or_else(|| NONE.to_owned(), |value| value.to_string())
}

fn read_number(word: &str) -> Option<Option<u32>> {
    if word == NONE {
        return Some(None);
    }
    word.parse().ok().map(Some)
}

impl Line {
    pub(super) fn write(&self) -> String {
        match self {
            Self::Measured(one) => [
                "measured",
                &one.mark,
                &one.wire_um.to_string(),
                &number(one.figures.worst_milli),
                &number(one.figures.best.map(|best| best.0)),
                &number(one.figures.best.map(|best| best.1)),
                &one.before,
                &one.after,
            ]
            .join("\t"),
            Self::Changed(change) => {
                let word = DONE.iter().find(|(done, _)| *done == change.done);
                [
                    word.map_or("", |(_, word)| word),
                    &change.amount_um.to_string(),
                    &change.wire_um.to_string(),
                    &number(change.expected_milli),
                    &change.after,
                ]
                .join("\t")
            }
            Self::Other(text) => text.clone(),
        }
    }

    pub(super) fn read(text: &str) -> Self {
        let words: Vec<&str> = text.split('\t').collect();
        let line = match words.as_slice() {
            ["measured", mark, wire, worst, at, there, before, after] => {
                measured(mark, [wire, worst, at, there], before, after)
            }
            [done, amount, wire, expected, after] => changed(done, [amount, wire, expected], after),
            _ => None,
        };
        line.unwrap_or_else(|| Self::Other(text.to_owned()))
    }

    /// What is known of the can after this line, if it tells.
    pub(super) fn after(&self) -> Option<&str> {
        let after = match self {
            Self::Measured(one) => &one.after,
            Self::Changed(change) => &change.after,
            Self::Other(_) => return None,
        };
        (!after.is_empty()).then_some(after.as_str())
    }

    /// Whether the can itself was changed, so that a measurement is due.
    pub(super) fn is_work(&self) -> bool {
        matches!(self, Self::Changed(change) if change.done != Done::Redrawn)
    }
}

fn measured(mark: &str, numbers: [&str; 4], before: &str, after: &str) -> Option<Line> {
    let [wire, worst, at, there] = numbers.map(read_number);
    let best = at?.zip(there?);
    Some(Line::Measured(Measured {
        mark: mark.to_owned(),
        wire_um: wire??,
        figures: Figures {
            worst_milli: worst?,
            best,
        },
        before: before.to_owned(),
        after: after.to_owned(),
    }))
}

fn changed(done: &str, numbers: [&str; 3], after: &str) -> Option<Line> {
    let [amount, wire, expected] = numbers.map(read_number);
    let (done, _) = DONE.into_iter().find(|(_, word)| *word == done)?;
    Some(Line::Changed(Change {
        done,
        amount_um: amount??,
        wire_um: wire??,
        expected_milli: expected?,
        after: after.to_owned(),
    }))
}

#[cfg(test)]
mod tests {
    use super::{Change, Done, Figures, Line, Measured};

    #[test]
    fn lines_come_back_and_others_stay_as_they_stand() {
        let measured = Line::Measured(Measured {
            mark: "1f".to_owned(),
            wire_um: 28_400,
            figures: Figures {
                worst_milli: None,
                best: Some((2_440_000, 1_210)),
            },
            before: String::new(),
            after: "1 2 3".to_owned(),
        });
        let changed = Line::Changed(Change {
            done: Done::Cut,
            amount_um: 800,
            wire_um: 27_600,
            expected_milli: Some(1_400),
            after: String::new(),
        });
        for line in [measured, changed] {
            assert_eq!(Line::read(&line.write()), line);
        }
        for text in ["", "a <b>", "cut\t-\t1\t2\t", "measured\t1", "x\t1\t2\t3\t"] {
            assert_eq!(Line::read(text), Line::Other(text.to_owned()), "{text}");
        }
    }
}
