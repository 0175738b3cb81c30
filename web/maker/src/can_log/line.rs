//! One line of the log as text: words with tabs between, numbers whole.

/// A day, as its eight digits: year, month, day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Day(u32);

impl Day {
    /// Of year, month and day.
    #[must_use]
    pub const fn new(year: u32, month: u32, day: u32) -> Self {
        Self(year * 10_000 + month * 100 + day)
    }

    /// `2031-05-04`.
    #[must_use]
    pub fn text(self) -> String {
        let Self(digits) = self;
        let (year, month, day) = (digits / 10_000, digits / 100 % 100, digits % 100);
        format!("{year:04}-{month:02}-{day:02}")
    }
}

/// A VSWR in thousandths.
#[must_use]
pub fn milli(vswr: f64) -> u32 {
    (vswr * 1e3).round() as u32
}

/// How well a can was matched: VSWR in thousandths, frequency in kilohertz.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Figures {
    /// Worst VSWR over the band, where the measurement reaches across it.
    pub worst_milli: Option<u32>,
    /// Where it is best, and the VSWR there.
    pub best: Option<(u32, u32)>,
}

/// A measurement.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measured {
    /// Tells one measurement from another.
    pub mark: String,
    /// The wire as it was drawn, micrometres.
    pub wire_um: u32,
    /// How well it was matched.
    pub figures: Figures,
    /// What was known of the can without it; may be empty.
    pub before: String,
    /// What is known with it.
    pub after: String,
    /// When it was noted, where that is known.
    pub on: Option<Day>,
}

/// What was done to the can, or to its drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    /// Wire was taken off.
    Cut,
    /// A longer wire was put in.
    Lengthened,
    /// Another hole was drilled.
    Moved,
    /// A tuning screw was put in.
    Screwed,
    /// The design was made like the can as found.
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
pub struct Change {
    /// What was done.
    pub done: Done,
    /// By how much, or where, micrometres.
    pub amount_um: u32,
    /// The wire as it is drawn since, micrometres.
    pub wire_um: u32,
    /// Worst VSWR to expect after it, thousandths.
    pub expected_milli: Option<u32>,
    /// What is known of the can after it; may be empty.
    pub after: String,
    /// When it was done, where that is known.
    pub on: Option<Day>,
}

/// A line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Line {
    /// A measurement.
    Measured(Measured),
    /// A change.
    Changed(Change),
    /// Anything else, shown as it stands.
    Other(String),
}

const NONE: &str = "-";

fn number(value: Option<u32>) -> String {
    value.map_or_else(|| NONE.to_owned(), |value| value.to_string())
}

fn day(on: Option<Day>) -> String {
    number(on.map(|Day(digits)| digits))
}

fn read_number(word: &str) -> Option<Option<u32>> {
    if word == NONE {
        return Some(None);
    }
    word.parse().ok().map(Some)
}

impl Line {
    /// The line as text.
    #[must_use]
    pub fn write(&self) -> String {
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
                &day(one.on),
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
                    &day(change.on),
                ]
                .join("\t")
            }
            Self::Other(text) => text.clone(),
        }
    }

    /// A line of a text.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let words: Vec<&str> = text.split('\t').collect();
        let line = match words.as_slice() {
            ["measured", mark, wire, worst, at, there, before, after, on] => {
                measured(mark, [wire, worst, at, there, on], before, after)
            }
            [done, amount, wire, expected, after, on] => {
                changed(done, [amount, wire, expected, on], after)
            }
            _ => None,
        };
        line.unwrap_or_else(|| Self::Other(text.to_owned()))
    }

    /// What is known of the can after this line, if it tells.
    #[must_use]
    pub fn after(&self) -> Option<&str> {
        let after = match self {
            Self::Measured(one) => &one.after,
            Self::Changed(change) => &change.after,
            Self::Other(_) => return None,
        };
        (!after.is_empty()).then_some(after.as_str())
    }

    /// Standard deviation of the wire's length that it leaves, metres.
    #[must_use]
    pub fn length_sd_m(&self) -> Option<f64> {
        super::known::length_sd(self.after()?)
    }

    /// Whether the can itself was changed, so that a measurement is due.
    #[must_use]
    pub fn is_work(&self) -> bool {
        matches!(self, Self::Changed(change) if change.done != Done::Redrawn)
    }
}

fn measured(mark: &str, numbers: [&str; 5], before: &str, after: &str) -> Option<Line> {
    let [wire, worst, at, there, on] = numbers.map(read_number);
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
        on: on?.map(Day),
    }))
}

fn changed(done: &str, numbers: [&str; 4], after: &str) -> Option<Line> {
    let [amount, wire, expected, on] = numbers.map(read_number);
    let (done, _) = DONE.into_iter().find(|(_, word)| *word == done)?;
    Some(Line::Changed(Change {
        done,
        amount_um: amount??,
        wire_um: wire??,
        expected_milli: expected?,
        after: after.to_owned(),
        on: on?.map(Day),
    }))
}

#[cfg(test)]
mod tests {
    use super::{Change, Day, Done, Figures, Line, Measured};

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
            on: Some(Day::new(2031, 5, 4)),
        });
        let changed = Line::Changed(Change {
            done: Done::Cut,
            amount_um: 800,
            wire_um: 27_600,
            expected_milli: Some(1_400),
            after: String::new(),
            on: None,
        });
        for line in [measured, changed] {
            assert_eq!(Line::read(&line.write()), line);
        }
        for text in [
            "",
            "a <b>",
            "cut\t-\t1\t2\t\t-",
            "measured\t1",
            "x\t1\t2\t3\t\t-",
        ] {
            assert_eq!(Line::read(text), Line::Other(text.to_owned()), "{text}");
        }
        assert_eq!(Day::new(2031, 5, 4).text(), "2031-05-04");
    }
}
