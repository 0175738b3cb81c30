//! The log of a can: its measurements, cuts and other changes, one a line.

use tinwave_core::diagnosis::Knowledge;

use super::known::{self, Unknown};
use super::log_line::{Line, Measured};
use super::{cans, log_words};
use crate::reply::Reply;
use crate::request::Request;

/// So many lines are kept.
const MOST_LINES: usize = 60;

/// The log of the present can.
pub(super) struct Log {
    pub(super) lines: Vec<Line>,
}

/// What a measurement is weighed against.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Prior {
    pub(super) knowledge: Knowledge,
    /// The same as text.
    pub(super) text: String,
    /// Whether the log is about a can of quite another size.
    pub(super) another_can: bool,
    /// Whether a measurement before it told something.
    pub(super) from_log: bool,
}

impl Log {
    /// The log of the design's can.
    pub(super) fn of(request: &Request, reply: &mut Reply) -> Self {
        Self::read(&cans::log_of(request, reply))
    }

    pub(super) fn read(text: &str) -> Self {
        let lines = text.lines().filter(|line| !line.trim().is_empty());
        Self {
            lines: lines.map(Line::read).collect(),
        }
    }

    fn write(&self) -> String {
        let lines: Vec<String> = self.lines.iter().map(Line::write).collect();
        lines.join("\n")
    }

    /// The line of a measurement that was noted already.
    pub(super) fn noted(&self, mark: &str) -> Option<&Measured> {
        self.lines.iter().rev().find_map(|line| match line {
            Line::Measured(one) if one.mark == mark => Some(one),
            _ => None,
        })
    }

    /// What is known of the can without the measurement of that mark.
    pub(super) fn prior(&self, request: &Request, mark: &str) -> Prior {
        let text = match self.noted(mark) {
            Some(noted) => noted.before.as_str(),
            None => self.lines.iter().rev().find_map(Line::after).unwrap_or(""),
        };
        let design = request.design();
        let read = known::read(text, design);
        let another_can = read == Err(Unknown::AnotherCan);
        match read {
            Ok(knowledge) => Prior {
                knowledge,
                text: text.to_owned(),
                another_can,
                from_log: self.told_before(mark),
            },
            Err(_) => Prior {
                text: known::write(&Knowledge::usual(), design),
                knowledge: Knowledge::usual(),
                another_can,
                from_log: false,
            },
        }
    }

    /// Whether another measurement than that of the mark told something before it.
    fn told_before(&self, mark: &str) -> bool {
        let lines = self.lines.iter();
        let before =
            lines.take_while(|line| !matches!(line, Line::Measured(one) if one.mark == mark));
        before.filter(|line| line.after().is_some()).count() > 0
    }

    /// Adds a line.
    pub(super) fn push(&mut self, line: Line) {
        self.lines.push(line);
        let over = self.lines.len().saturating_sub(MOST_LINES);
        self.lines.drain(..over);
    }

    /// Keeps the log and shows it.
    pub(super) fn keep(&self, request: &Request, reply: &mut Reply) {
        reply.field("log", &self.write());
        self.show(request, reply);
    }

    pub(super) fn show(&self, request: &Request, reply: &mut Reply) {
        reply.place("log-lines", log_words::items(self, request.unit));
        reply.text("log-of", &log_words::whose(request, self.lines.is_empty()));
        let back = reply.get("=log-was").unwrap_or(request.get("log-was"));
        reply.show("log-back", !back.is_empty());
        reply.show("log-keep", !self.lines.is_empty());
    }

    /// Takes out one line, or all, or brings back what was taken out last; whether it
    /// was such a press.
    pub(super) fn edit(&mut self, request: &Request, reply: &mut Reply) -> bool {
        let was = self.write();
        match request.act() {
            "forget" => self.lines.clear(),
            "bring-back" => {
                self.lines = Self::read(request.get("log-was")).lines;
                reply.field("log-was", "");
                self.keep(request, reply);
                return true;
            }
            act => {
                let place = act.strip_prefix("drop ").and_then(|n| n.parse().ok());
                match place {
                    Some(place) if place < self.lines.len() => {
                        self.lines.remove(place);
                    }
                    _ => return false,
                }
            }
        }
        reply.field("log-was", &was);
        self.keep(request, reply);
        true
    }

    /// Hands the maker the log as a text.
    pub(super) fn save(&self, request: &Request, reply: &mut Reply) {
        let text = log_words::plain(self, request.unit);
        let head = log_words::whose(request, false);
        reply.save("can-log.txt", &[&head, "\n\n", &text].concat());
    }
}
