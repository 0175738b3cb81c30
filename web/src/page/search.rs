//! Searches that take longer than a frame, run in slices between repaints: the
//! rule of thumb's match and the best cuts.

use std::cell::Cell;
use std::sync::Arc;

use tinwave_core::analysis::Analyser;
use tinwave_core::best_cut::{BestCut, BestCutSearch, FreeDimensions, Progress};
use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSpectrum;
use tinwave_core::si::micrometres;

use super::browser::{self, Timer};
use super::model::Model;
use super::state::Page;
use crate::pictures::follow;

/// A slice works this long, then lets the page repaint.
const SLICE_MS: f64 = 4.0;
/// Progress is shown this often; what is found, at once.
const SHOW_EVERY_MS: f64 = 100.0;
/// A search starts when the design has rested this long.
const REST_MS: u32 = 120;

/// What a search for the best cut has found.
#[derive(Clone, Default, PartialEq)]
pub(super) struct Found {
    /// The best first. While a new search runs, still those of the last one.
    pub(super) cuts: Vec<BestCut>,
    /// Percent done; 100 when the cuts are those of the present design.
    pub(super) percent: u8,
}

/// The match that the quarter-wave rule would give.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum RuleMatch {
    Waiting,
    Impossible,
    Worst(f64),
}

/// The searches; what they find goes into the model.
#[derive(Clone, Copy)]
pub(super) struct Search {
    page: Page,
    job: &'static Cell<Option<Box<Job>>>,
    rest: Timer,
    slice: Timer,
}

/// The work in hand.
struct Job {
    design: Design,
    /// Its solved outside, where that is at hand.
    outside: Option<Arc<OutsideSpectrum>>,
    stage: Stage,
    search: Option<BestCutSearch>,
    shown_ms: f64,
    /// What the found cuts belong to, so that they are not searched again, and
    /// whether the outside was known.
    done_length: Option<(Design, bool)>,
    done_pair: Option<(Design, bool)>,
}

#[derive(Clone, Copy, PartialEq)]
enum Stage {
    Rule,
    Length,
    Pair,
    Ghost,
    Rest,
}

impl Search {
    pub(super) fn new(page: Page) -> Self {
        let search = Self {
            page,
            job: Box::leak(Box::new(Cell::new(None))),
            rest: Timer::new(),
            slice: Timer::new(),
        };
        follow(Box::new(move || {
            page.track_edition();
            search.restart_soon();
        }));
        search
    }

    /// The design changed: what runs is stopped, and starts anew after a rest.
    fn restart_soon(self) {
        self.slice.clear();
        self.rest.set(REST_MS, Box::new(move || self.restart()));
    }

    fn restart(self) {
        let (design, outside) = self.page.look(|model| {
            let design = model.work.design.clone();
            let outside = model.outsides.of(&design).cloned();
            (design, outside)
        });
        let (done_length, done_pair) = match self.job.take() {
            Some(job) => (job.done_length, job.done_pair),
            None => (None, None),
        };
        self.job.set(Some(Box::new(Job {
            design,
            outside,
            stage: Stage::Rule,
            search: None,
            shown_ms: browser::now_ms(),
            done_length,
            done_pair,
        })));
        self.run_slice();
    }

    /// Stops what runs. Changing the design starts it again.
    pub(super) fn stop(self) {
        self.slice.clear();
        self.rest.clear();
    }

    fn run_slice(self) {
        let Some(mut job) = self.job.take() else {
            return;
        };
        let end = browser::now_ms() + SLICE_MS;
        let stage = job.stage;
        while job.stage == stage && stage != Stage::Rest && browser::now_ms() < end {
            self.step(&mut job);
        }
        let more = job.stage != Stage::Rest;
        let show = job.stage != stage || end - job.shown_ms > SHOW_EVERY_MS;
        if show {
            job.shown_ms = end;
        }
        self.job.set(Some(job));
        if show {
            self.page.tell();
        }
        if more {
            self.slice.set(0, Box::new(move || self.run_slice()));
        }
    }

    fn step(self, job: &mut Job) {
        match job.stage {
            Stage::Rule => {
                let rule = self.page.look(rule_match);
                self.page.change(&|model| model.rule = rule);
                job.stage = Stage::Length;
            }
            Stage::Length => {
                let key = (length_key(&job.design), job.outside.is_some());
                if job.done_length.as_ref() == Some(&key) {
                    job.stage = Stage::Pair;
                } else if self.advance(job, FreeDimensions::Length) {
                    job.done_length = Some(key);
                    job.stage = Stage::Pair;
                }
            }
            Stage::Pair => {
                let key = (pair_key(&job.design), job.outside.is_some());
                if job.done_pair.as_ref() == Some(&key) {
                    job.stage = Stage::Ghost;
                } else if self.advance(job, FreeDimensions::LengthAndDistance) {
                    job.done_pair = Some(key);
                    job.stage = Stage::Ghost;
                }
            }
            Stage::Ghost => {
                self.show_ghost(&job.design, job.outside.as_ref());
                job.stage = Stage::Rest;
            }
            Stage::Rest => {}
        }
    }

    /// One step of a search for the present design; whether it is done.
    fn advance(self, job: &mut Job, free: FreeDimensions) -> bool {
        let outside = job.outside.as_ref();
        let progress = step_search(&mut job.search, &job.design, outside, free);
        self.page.change(&|model| {
            let found = match free {
                FreeDimensions::Length => &mut model.length,
                FreeDimensions::LengthAndDistance => &mut model.pair,
            };
            match &progress {
                Progress::Working { done } => {
                    found.percent = (done.clamp(0.0, 0.99) * 100.0) as u8;
                }
                Progress::Done(cuts) => {
                    found.cuts.clone_from(cuts);
                    found.percent = 100;
                }
            }
        });
        matches!(progress, Progress::Done(_))
    }

    /// The sweep of the best pair, for the charts.
    fn show_ghost(self, design: &Design, outside: Option<&Arc<OutsideSpectrum>>) {
        let best = self.page.look(|model| model.pair.cuts.first().copied());
        let sweep = best.map_or_else(Vec::new, |cut| {
            let mut best = design.clone();
            best.probe.length_um = cut.length_um;
            best.probe.backshort_distance_um = cut.backshort_distance_um;
            Analyser::new()
                .analyse_with(&best, outside)
                .map_or_else(|_| Vec::new(), |analysis| analysis.sweep)
        });
        self.page.change(&|model| model.ghost.clone_from(&sweep));
        self.page.tell_ghost();
    }
}

/// Takes one step of the search in hand, beginning it if there is none.
fn step_search(
    search: &mut Option<BestCutSearch>,
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    free: FreeDimensions,
) -> Progress {
    let Some(running) = search else {
        return match BestCutSearch::with_outside(design, free, outside) {
            Ok(begun) => {
                *search = Some(begun);
                Progress::Working { done: 0.0 }
            }
            Err(_) => Progress::Done(Vec::new()),
        };
    };
    let progress = running.step();
    if matches!(progress, Progress::Done(_)) {
        *search = None;
    }
    progress
}

/// The worst match over the band with the rule of thumb's two quarter waves.
fn rule_match(model: &Model) -> RuleMatch {
    let guide = model.analysis.as_ref().map(|analysis| analysis.guide);
    let Some((length_m, distance_m)) =
        guide.and_then(|guide| Some((guide.quarter_wave_length_m, guide.quarter_wave_distance_m?)))
    else {
        return RuleMatch::Impossible;
    };
    let mut ruled = model.work.design.clone();
    ruled.probe.length_um = micrometres(length_m);
    ruled.probe.backshort_distance_um = micrometres(distance_m);
    Analyser::new()
        .analyse_with(&ruled, model.outsides.of(&ruled))
        .ok()
        .and_then(|analysis| analysis.match_summary)
        .map_or(RuleMatch::Impossible, |summary| {
            RuleMatch::Worst(summary.worst_vswr_in_band)
        })
}

/// A design without what the best length does not depend on.
fn length_key(design: &Design) -> Design {
    let mut key = design.clone();
    key.name.clear();
    key.sweep = None;
    key.probe.length_um = 0;
    key
}

fn pair_key(design: &Design) -> Design {
    let mut key = length_key(design);
    key.probe.backshort_distance_um = 0;
    key
}
