//! The log of one can, and what it has told before a measurement.

use tinwave_core::design::Design;
use tinwave_core::diagnosis::Knowledge;

use super::known::{self, Unknown};
use super::line::{Figures, Line, Measured};

/// So many lines are kept.
const MOST_LINES: usize = 60;

/// The log of a can, the oldest line first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CanLog {
    /// Its lines.
    pub lines: Vec<Line>,
}

/// What a measurement is weighed against.
#[derive(Clone, Debug, PartialEq)]
pub struct Prior {
    /// What is known of the can.
    pub knowledge: Knowledge,
    /// Whether the log is about a can of quite another size.
    pub another_can: bool,
    /// Whether a measurement before it told something.
    pub from_log: bool,
}

/// The usual tolerances, rounded as the log keeps them: a measurement that is noted is
/// then weighed as before.
fn usual_as_kept(design: &Design) -> Knowledge {
    let usual = Knowledge::usual();
    known::read(&known::write(&usual, design), design).unwrap_or(usual)
}

impl CanLog {
    /// The line of a measurement that was noted already.
    #[must_use]
    pub fn noted(&self, mark: &str) -> Option<&Measured> {
        self.lines.iter().rev().find_map(|line| match line {
            Line::Measured(one) if one.mark == mark => Some(one),
            _ => None,
        })
    }

    /// What is known of a design's can without the measurement of that mark.
    #[must_use]
    pub fn prior(&self, design: &Design, mark: &str) -> Prior {
        let text = match self.noted(mark) {
            Some(noted) => noted.before.as_str(),
            None => self.lines.iter().rev().find_map(Line::after).unwrap_or(""),
        };
        match known::read(text, design) {
            Ok(knowledge) => Prior {
                knowledge,
                another_can: false,
                from_log: self.told_before(mark),
            },
            Err(why) => Prior {
                knowledge: usual_as_kept(design),
                another_can: why == Unknown::AnotherCan,
                from_log: false,
            },
        }
    }

    /// Whether another measurement than that of the mark told something before it.
    fn told_before(&self, mark: &str) -> bool {
        let lines = self.lines.iter();
        let mut before =
            lines.take_while(|line| !matches!(line, Line::Measured(one) if one.mark == mark));
        before.any(|line| line.after().is_some())
    }

    /// Adds a line.
    pub fn push(&mut self, line: Line) {
        self.lines.push(line);
        let over = self.lines.len().saturating_sub(MOST_LINES);
        self.lines.drain(..over);
    }

    /// Whether work was done since the last measurement, so that one is due.
    #[must_use]
    pub fn is_due(&self) -> bool {
        self.lines.last().is_some_and(Line::is_work)
    }

    /// The match before and after the change on a line, each from the nearest
    /// measurement.
    #[must_use]
    pub fn around(&self, place: usize) -> (Option<Figures>, Option<Figures>) {
        let of = |line: &Line| match line {
            Line::Measured(one) => Some(one.figures),
            _ => None,
        };
        let (before, rest) = self.lines.split_at(place.min(self.lines.len()));
        let before = before.iter().rev().find_map(of);
        // After the next change it would be that one's.
        let mut after = rest.iter().skip(1).take_while(|line| !line.is_work());
        (before, after.find_map(of))
    }

    /// How well the wire's length was known after each earlier measurement than that of
    /// the mark: standard deviations, metres.
    #[must_use]
    pub fn length_sds_m(&self, mark: &str) -> Vec<f64> {
        let earlier = self
            .lines
            .iter()
            .filter(|line| matches!(line, Line::Measured(one) if one.mark != mark));
        earlier.filter_map(Line::length_sd_m).collect()
    }

    pub(super) fn read<'a>(lines: impl Iterator<Item = &'a str>) -> Self {
        let lines = lines.filter(|line| !line.trim().is_empty());
        Self {
            lines: lines.map(Line::read).collect(),
        }
    }
}
