//! Everything the page shows, and the ways in which it changes.

use tinwave_core::analysis::{Analyser, Analysis};
use tinwave_core::match_band::SweepPoint;

use super::outside_job::{Outsides, Solving};
use super::search::{Cuts, RuleMatch};
use crate::entry::LengthUnit;
use crate::history::{Change, History};
use crate::link;
use crate::store::{Kept, Theme};
use crate::workpiece::Workpiece;

/// How the maker states the can's diameter.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum DiameterBy {
    Inside,
    Outside,
    Circumference,
}

/// A message above everything, with text to copy if there is some.
pub(super) struct Notice {
    pub(super) sentence: String,
    pub(super) keep: Option<String>,
}

/// What became of copying the link.
#[derive(PartialEq, Eq)]
pub(super) enum Copied {
    No,
    Yes,
    /// The clipboard refused: here it is to be copied by hand.
    ByHand(String),
}

/// A measured reflection.
#[derive(Clone)]
pub(super) struct Measured {
    pub(super) points: Vec<SweepPoint>,
    /// Without it only the magnitude is known.
    pub(super) has_phase: bool,
}

/// What the page shows.
pub(super) struct Model {
    /// The last good work: what every picture and number is about.
    pub(super) work: Workpiece,
    /// Its analysis; `None` where nothing could be computed.
    pub(super) analysis: Option<Analysis>,
    pub(super) unit: LengthUnit,
    pub(super) theme: Theme,
    pub(super) diameter_by: DiameterBy,
    /// The hole stays typed even where it equals the connector's.
    pub(super) hole_typed: bool,
    /// Whether some entry holds text that can't be used.
    pub(super) waits: bool,
    pub(super) notice: Option<Notice>,
    pub(super) copied: Copied,
    /// What the maker asked to have kept on the device.
    pub(super) kept: Kept,
    /// Counts up when every entry must show the work again, whatever it holds.
    pub(super) refill: u32,
    pub(super) history: History,
    /// The best cuts.
    pub(super) cuts: Cuts,
    /// What the rule of thumb would give.
    pub(super) rule: RuleMatch,
    /// The sweep of the best pair, to stand behind the present one.
    pub(super) ghost: Vec<SweepPoint>,
    /// A measurement of this can, to stand beside its sweep.
    pub(super) measured: Option<Measured>,
    /// Parts of the opened link that this version doesn't know; they go out again.
    pub(super) unknown: Vec<(String, String)>,
    /// The design of an earlier visit that a link has covered; put among the
    /// saved ones before its place is taken.
    pub(super) covered: Option<String>,
    /// The solved outsides at hand.
    pub(super) outsides: Outsides,
    /// How far the present can's is.
    pub(super) solving: Solving,
    analyser: Analyser,
}

impl Model {
    /// Not analysed yet.
    pub(super) fn new(work: Workpiece, kept: Kept) -> Self {
        Self {
            history: History::new(work.clone()),
            work,
            analysis: None,
            unit: kept.unit,
            theme: kept.theme,
            diameter_by: DiameterBy::Inside,
            hole_typed: false,
            waits: false,
            notice: None,
            copied: Copied::No,
            kept,
            refill: 0,
            cuts: Cuts::default(),
            rule: RuleMatch::Waiting,
            ghost: Vec::new(),
            measured: None,
            unknown: Vec::new(),
            covered: None,
            outsides: Outsides::default(),
            solving: Solving::Untouched,
            analyser: Analyser::new(),
        }
    }

    /// Analyses the present work, with its outside where that is at hand.
    pub(super) fn compute(&mut self) {
        let design = &self.work.design;
        let outside = self.outsides.of(design);
        self.analysis = self.analyser.analyse_with(design, outside).ok();
    }

    /// Shows other work, analysed.
    fn show(&mut self, work: Workpiece) {
        self.work = work;
        self.compute();
    }

    /// Shows other work as an edit that stays open: the next of its kind joins it.
    pub(super) fn put(&mut self, work: Workpiece, change: Change) {
        if self.work != work {
            self.history.edit(work.clone(), change);
            self.show(work);
        }
    }

    /// Shows other work as one whole edit and fills every entry from it.
    pub(super) fn replace(&mut self, work: Workpiece, change: Change) {
        self.history.commit();
        self.put(work, change);
        self.history.commit();
        self.refill += 1;
    }

    /// One step back or forth in the history.
    pub(super) fn walk(&mut self, step: fn(&mut History) -> Option<&Workpiece>) {
        self.history.commit();
        if let Some(work) = step(&mut self.history).cloned() {
            self.show(work);
            self.refill += 1;
        }
    }

    /// The work of the browser's present entry, at the place the entry
    /// remembers if that is the same work, else as a new edit.
    pub(super) fn follow_browser(&mut self, work: Workpiece, position: Option<usize>) {
        self.history.commit();
        if self.work != work {
            let back = self.history.position();
            let found = position
                .and_then(|place| self.history.go_to(place))
                .is_some_and(|there| *there == work);
            if !found {
                self.history.go_to(back);
                self.history.edit(work.clone(), Change::Opened);
                self.history.commit();
            }
            self.show(work);
        }
        self.refill += 1;
    }

    /// The fragment of the link to the present work.
    pub(super) fn fragment(&self) -> String {
        link::encode_keeping(&self.work, &self.unknown)
    }

    /// Takes the present work as what the device should open next time.
    pub(super) fn keep_design(&mut self, fragment: String) {
        if let Some(earlier) = self.covered.take()
            && earlier != fragment
        {
            self.kept.save("From before the opened link", &earlier);
        }
        self.kept.link = Some(fragment);
    }
}
