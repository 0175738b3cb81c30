//! The logs of all cans that the device keeps: one belongs to the present design, the
//! others wait on a shelf.

use super::log::CanLog;
use crate::link;
use crate::workpiece::Workpiece;

/// The key of the device's own storage.
pub const LOGS_KEY: &str = "tinwave-can-logs";

/// So many other cans are kept; the oldest go first.
const MOST_CANS: usize = 24;

/// The word that a can's part begins with.
const CAN: &str = "can";

/// A can that has a log.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct LoggedCan {
    /// Its name.
    name: String,
    /// Its design when it was last seen, without the name.
    drawn: String,
    log: CanLog,
}

/// All logs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CanLogs {
    present: LoggedCan,
    shelf: Vec<LoggedCan>,
    /// The log before the last line was taken out.
    was: Option<CanLog>,
}

/// The design without the name, which changes nothing.
fn drawn_of(work: &Workpiece) -> String {
    let mut work = work.clone();
    work.design.name.clear();
    link::encode(&work)
}

impl CanLogs {
    /// The log of the present can.
    #[must_use]
    pub const fn present(&self) -> &CanLog {
        &self.present.log
    }

    /// Changes the log of the present can.
    pub fn change(&mut self, change: impl FnOnce(&mut CanLog)) {
        self.was = None;
        change(&mut self.present.log);
    }

    /// Takes one line out, or all; they can be brought back.
    pub fn take_out(&mut self, place: Option<usize>) {
        let before = self.present.log.clone();
        match place {
            Some(place) if place < before.lines.len() => {
                self.present.log.lines.remove(place);
            }
            Some(_) => return,
            None => self.present.log.lines.clear(),
        }
        self.was = Some(before);
    }

    /// Whether what was taken out can be brought back.
    #[must_use]
    pub const fn can_bring_back(&self) -> bool {
        self.was.is_some()
    }

    /// Brings back what was taken out last.
    pub fn bring_back(&mut self) {
        if let Some(was) = self.was.take() {
            self.present.log = was;
        }
    }

    /// Another design, or a change of this one: under a new name the same design is the
    /// same can; another design under another name is another.
    pub fn follow(&mut self, work: &Workpiece) {
        let name = work.design.name.as_str();
        let drawn = drawn_of(work);
        let before = &self.present;
        if before.name == name || before.drawn.is_empty() || before.drawn == drawn {
            name.clone_into(&mut self.present.name);
            self.present.drawn = drawn;
            return;
        }
        let found = self.shelf.iter().position(|can| can.name == name);
        let mut can = found.map_or_else(LoggedCan::default, |place| self.shelf.remove(place));
        name.clone_into(&mut can.name);
        can.drawn = drawn;
        let left = std::mem::replace(&mut self.present, can);
        self.was = None;
        self.shelf.retain(|can| can.name != left.name);
        if !left.log.lines.is_empty() {
            self.shelf.push(left);
        }
        let over = self.shelf.len().saturating_sub(MOST_CANS);
        self.shelf.drain(..over);
    }

    /// Reads a kept text. Lines that make no sense are shown as they stand.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let mut cans: Vec<(LoggedCan, Vec<&str>)> = Vec::new();
        for line in text.lines() {
            let mut words = line.splitn(3, '\t');
            match (words.next(), words.next(), words.next()) {
                (Some(CAN), Some(drawn), Some(name)) => {
                    let can = LoggedCan {
                        name: name.to_owned(),
                        drawn: drawn.to_owned(),
                        log: CanLog::default(),
                    };
                    cans.push((can, Vec::new()));
                }
                _ => {
                    if let Some((_, lines)) = cans.last_mut() {
                        lines.push(line);
                    }
                }
            }
        }
        let mut cans = cans.into_iter().map(|(mut can, lines)| {
            can.log = CanLog::read(lines.into_iter());
            can
        });
        Self {
            present: cans.next().unwrap_or_default(),
            shelf: cans.collect(),
            was: None,
        }
    }

    /// The text to be kept: the present can first.
    #[must_use]
    pub fn write(&self) -> String {
        let mut text = String::new();
        for can in std::iter::once(&self.present).chain(&self.shelf) {
            text.push_str(&[CAN, "\t", &can.drawn, "\t", &can.name, "\n"].concat());
            for line in &can.log.lines {
                text.push_str(&line.write());
                text.push('\n');
            }
        }
        text
    }
}

#[cfg(test)]
mod tests {
    use super::super::line::Line;
    use super::CanLogs;
    use crate::example::example;
    use crate::workpiece::Workpiece;

    fn can(name: &str, diameter_um: u32) -> Workpiece {
        let mut work = example();
        name.clone_into(&mut work.design.name);
        work.design.can.inside_diameter_um = diameter_um;
        work
    }

    fn lines(logs: &CanLogs) -> usize {
        logs.present().lines.len()
    }

    #[test]
    fn each_can_has_its_own_log_and_a_new_name_keeps_it() {
        let mut logs = CanLogs::default();
        logs.follow(&can("Orchard gate", 87_000));
        logs.change(|log| log.push(Line::Other("one".to_owned())));
        // A new name for the same design.
        logs.follow(&can("Barn", 87_000));
        assert_eq!(lines(&logs), 1);
        // A change of the same can.
        logs.follow(&can("Barn", 87_200));
        assert_eq!(lines(&logs), 1);
        // Another can.
        logs.follow(&can("Mill", 92_000));
        assert_eq!(lines(&logs), 0);
        // Back, after a visit of the device's memory.
        let mut logs = CanLogs::read(&logs.write());
        logs.follow(&can("Barn", 87_200));
        assert_eq!(logs.present().lines, [Line::Other("one".to_owned())]);
    }

    #[test]
    fn lines_are_taken_out_and_brought_back() {
        let mut logs = CanLogs::default();
        logs.follow(&can("Barn", 87_000));
        for text in ["a <b>", "second", "third"] {
            logs.change(|log| log.push(Line::Other(text.to_owned())));
        }
        let whole = logs.present().clone();
        logs.take_out(Some(1));
        assert_eq!(lines(&logs), 2);
        assert!(logs.can_bring_back());
        logs.bring_back();
        assert_eq!(*logs.present(), whole);
        logs.take_out(Some(7));
        assert!(!logs.can_bring_back());
        logs.take_out(None);
        assert_eq!(lines(&logs), 0);
        logs.bring_back();
        assert_eq!(*logs.present(), whole);
    }

    #[test]
    fn any_text_can_be_read() {
        for text in [
            "",
            "nonsense\n\tx",
            "can\t\t",
            "can\tv=1\n",
            "\u{0}\ncan\ta\tb\nmeasured\t",
        ] {
            let logs = CanLogs::read(text);
            let again = CanLogs::read(&logs.write());
            assert_eq!(again, logs, "{text}");
        }
    }
}
