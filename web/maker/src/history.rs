//! Undo and redo.
//!
//! Typing in one field, or one drag, is one entry: edits of the same kind
//! replace each other until they are committed.

use tinwave_core::design_error::Field;

use crate::workpiece::Workpiece;

/// How many entries are kept; the oldest goes first.
const MOST_ENTRIES: usize = 200;

/// What an edit changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Change {
    /// One number.
    Field(Field),
    /// The diameter, from whichever way it was measured.
    Diameter,
    /// The probe, dragged in the drawing.
    ProbeDrag,
    /// The band or channel, chosen or typed as one.
    Band,
    /// The metal.
    Metal,
    /// The wire, chosen by gauge.
    Wire,
    /// The connector.
    Connector,
    /// The name.
    Name,
    /// The kind of mouth.
    Mouth,
    /// Tuning screws.
    Screws,
    /// The sleeve put on or taken off.
    Sleeve,
    /// The frequencies of the chart.
    Sweep,
    /// The best cut taken over.
    BestCut,
    /// A trade size taken over.
    TradeSize,
    /// What a measurement told, or what was done upon it.
    Measured,
    /// Another design opened.
    Opened,
}

#[derive(Clone, Debug)]
struct Entry {
    work: Workpiece,
    /// What led here from the entry before.
    change: Change,
    /// Whether a further edit of the same kind joins this entry.
    open: bool,
}

/// The designs that were, the one that is, and those that were undone.
#[derive(Clone, Debug)]
pub struct History {
    before: Vec<Entry>,
    current: Entry,
    /// The next to be redone last.
    after: Vec<Entry>,
    /// How many of the oldest entries were dropped.
    dropped: usize,
}

impl History {
    /// A history that begins here.
    #[must_use]
    pub const fn new(work: Workpiece) -> Self {
        Self {
            before: Vec::new(),
            current: Entry {
                work,
                change: Change::Opened,
                open: false,
            },
            after: Vec::new(),
            dropped: 0,
        }
    }

    /// The workpiece as it is.
    #[must_use]
    pub const fn current(&self) -> &Workpiece {
        &self.current.work
    }

    /// Takes an edit. It joins the entry before it where that is of the same
    /// kind and not committed; anything that was undone is then gone. Returns
    /// whether a new entry began.
    pub fn edit(&mut self, work: Workpiece, change: Change) -> bool {
        if work == self.current.work {
            return false;
        }
        self.after.clear();
        if self.current.open && self.current.change == change {
            self.current.work = work;
            return false;
        }
        let entry = Entry {
            work,
            change,
            open: true,
        };
        self.before
            .push(core::mem::replace(&mut self.current, entry));
        if self.before.len() >= MOST_ENTRIES {
            self.before.remove(0);
            self.dropped += 1;
        }
        true
    }

    /// Changes the current entry without beginning one: for what follows from the
    /// maker's edit by itself.
    pub fn amend(&mut self, work: Workpiece) {
        self.current.work = work;
    }

    /// Ends an entry: the next edit begins a new one. Called when a field is
    /// left, Enter is pressed, or the pointer is lifted.
    pub const fn commit(&mut self) {
        self.current.open = false;
    }

    /// One step back.
    pub fn undo(&mut self) -> Option<&Workpiece> {
        let entry = self.before.pop()?;
        let undone = core::mem::replace(&mut self.current, entry);
        self.after.push(undone);
        self.commit();
        Some(&self.current.work)
    }

    /// One step forward again.
    pub fn redo(&mut self) -> Option<&Workpiece> {
        let entry = self.after.pop()?;
        let before = core::mem::replace(&mut self.current, entry);
        self.before.push(before);
        self.commit();
        Some(&self.current.work)
    }

    /// Whether there is a step back.
    #[must_use]
    pub const fn can_undo(&self) -> bool {
        !self.before.is_empty()
    }

    /// Whether there is a step forward.
    #[must_use]
    pub const fn can_redo(&self) -> bool {
        !self.after.is_empty()
    }

    /// What the next undo would take back.
    #[must_use]
    pub fn undo_change(&self) -> Option<Change> {
        self.can_undo().then_some(self.current.change)
    }

    /// What the next redo would bring back.
    #[must_use]
    pub fn redo_change(&self) -> Option<Change> {
        self.after.last().map(|entry| entry.change)
    }

    /// Number of the current entry, counted from the first that ever was: what
    /// the browser's own history should hold.
    #[must_use]
    pub const fn position(&self) -> usize {
        self.dropped + self.before.len()
    }

    /// Steps to an entry; `None` (and nothing moved) where it is not kept any
    /// more, or never was.
    pub fn go_to(&mut self, position: usize) -> Option<&Workpiece> {
        if position < self.dropped || position > self.position() + self.after.len() {
            return None;
        }
        while self.position() > position && self.undo().is_some() {}
        while self.position() < position && self.redo().is_some() {}
        Some(&self.current.work)
    }
}
