//! What is worked out once the design rests: the rule of thumb's match, and the best
//! cuts, which the workbench searches for.

use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::sync::Arc;

use tinwave_core::analysis::Analyser;
use tinwave_core::best_cut::{BestCut, CUT_NUMBERS};
use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSpectrum;
use tinwave_core::si::micrometres;

use super::bench_worker::{BenchWorker, Heard, Kind};
use super::browser::{self, Timer};
use super::model::Model;
use super::state::Page;
use crate::link;
use crate::pictures::follow;

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

/// The searches for the best length, and for the best length and distance.
#[derive(Clone, Default, PartialEq)]
pub(super) struct Cuts {
    pub(super) length: Found,
    pub(super) pair: Found,
    /// The workbench did not come, or broke.
    pub(super) refused: bool,
}

/// The match that the quarter-wave rule would give.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum RuleMatch {
    Waiting,
    Impossible,
    Worst(f64),
}

/// What found cuts belong to.
#[derive(Clone, PartialEq)]
struct Keys {
    length: Design,
    pair: Design,
    has_outside: bool,
}

impl Keys {
    fn new(model: &Model) -> Self {
        let design = &model.work.design;
        Self {
            length: length_key(design),
            pair: pair_key(design),
            has_outside: model.outsides.of(design).is_some(),
        }
    }

    fn same_pair(&self, other: &Self) -> bool {
        self.pair == other.pair && self.has_outside == other.has_outside
    }
}

/// The searches; what they find goes into the model.
#[derive(Clone, Copy)]
pub(super) struct Search {
    page: Page,
    worker: BenchWorker,
    /// What the cuts in the model belong to.
    done: &'static RefCell<Option<Keys>>,
    /// What the search in hand is for.
    in_hand: &'static RefCell<Option<Keys>>,
    shown_ms: &'static Cell<f64>,
    rest: Timer,
}

impl Search {
    pub(super) fn new(page: Page, worker: BenchWorker) -> Self {
        let search = Self {
            page,
            worker,
            done: Box::leak(Box::default()),
            in_hand: Box::leak(Box::default()),
            shown_ms: Box::leak(Box::default()),
            rest: Timer::new(),
        };
        follow(Box::new(move || {
            page.track_edition();
            search.restart_soon();
        }));
        search
    }

    /// The design changed, or what is known of its outside: all is worked out anew
    /// after a rest.
    pub(super) fn restart_soon(self) {
        self.rest.set(REST_MS, Box::new(move || self.restart()));
    }

    fn restart(self) {
        let (rule, keys) = self
            .page
            .look(|model| (rule_match(model), Keys::new(model)));
        self.page.change(&|model| model.rule = rule);
        if self.in_hand.borrow().as_ref() != Some(&keys) {
            self.look_anew(keys);
        }
        self.page.tell();
    }

    /// Begins what is to be searched for; what was in hand was for another design.
    fn look_anew(self, keys: Keys) {
        self.in_hand.take();
        self.worker.stop(Kind::Cuts);
        let known = self.done.borrow().clone();
        let same_pair = known.as_ref().is_some_and(|known| known.same_pair(&keys));
        let same = known.as_ref() == Some(&keys);
        self.page.change(&|model| {
            model.cuts.refused = false;
            model.cuts.length.percent = if same { 100 } else { 0 };
            model.cuts.pair.percent = if same_pair { 100 } else { 0 };
        });
        if same_pair {
            self.show_ghost();
        }
        // The cuts are searched for once, with the outside if there is one.
        let waits = self.page.look(|model| model.solving.is_awaited());
        if !same && !waits && browser::worker_script().is_some() {
            self.begin(keys);
        }
    }

    fn begin(self, keys: Keys) {
        let link = self.page.look(|model| link::encode(&model.work));
        *self.in_hand.borrow_mut() = Some(keys.clone());
        let hear = move |heard| self.hear(&keys, heard);
        self.worker.begin(Kind::Cuts, &link, Rc::new(hear));
    }

    fn hear(self, keys: &Keys, heard: Heard) {
        // The design has gone on: another search is coming.
        if self.page.look(Keys::new) != *keys {
            return;
        }
        match heard {
            Heard::Working { done, total } => self.show_progress(done, total),
            Heard::Done(numbers) => {
                let mut numbers = numbers.as_slice();
                let (length, pair) = (read(&mut numbers), read(&mut numbers));
                self.page.change(&|model| {
                    model.cuts.length.cuts.clone_from(&length);
                    model.cuts.pair.cuts.clone_from(&pair);
                    model.cuts.length.percent = 100;
                    model.cuts.pair.percent = 100;
                });
                *self.done.borrow_mut() = self.in_hand.take();
                self.page.tell();
                self.show_ghost();
            }
            Heard::Refused => {
                self.in_hand.take();
                self.page.set(&|model| model.cuts.refused = true);
            }
        }
    }

    /// The first half of the steps is for the length, the other for the pair.
    fn show_progress(self, done: u32, total: u32) {
        let percent = done.saturating_mul(200) / total.max(1);
        self.page.change(&|model| {
            for (found, percent) in [
                (&mut model.cuts.length, percent),
                (&mut model.cuts.pair, percent.saturating_sub(100)),
            ] {
                // What is known stays known.
                if found.percent < 100 {
                    found.percent = percent.min(99) as u8;
                }
            }
        });
        let now = browser::now_ms();
        if now - self.shown_ms.get() > SHOW_EVERY_MS {
            self.shown_ms.set(now);
            self.page.tell();
        }
    }

    /// The sweep of the best pair, for the charts.
    fn show_ghost(self) {
        let (design, outside, best) = self.page.look(|model| {
            let design = &model.work.design;
            let outside: Option<Arc<OutsideSpectrum>> = model.outsides.of(design).cloned();
            let best = model.cuts.pair.cuts.first().copied();
            (design.clone(), outside, best)
        });
        let sweep = best.map_or_else(Vec::new, |cut| {
            let mut best = design;
            best.probe.length_um = cut.length_um;
            best.probe.backshort_distance_um = cut.backshort_distance_um;
            Analyser::new()
                .analyse_with(&best, outside.as_ref())
                .map_or_else(|_| Vec::new(), |analysis| analysis.sweep)
        });
        self.page.change(&|model| model.ghost.clone_from(&sweep));
        self.page.tell_ghost();
    }
}

/// Reads the cuts of one search off the front: how many, and the numbers of each.
fn read(numbers: &mut &[f64]) -> Vec<BestCut> {
    let Some((count, rest)) = numbers.split_first() else {
        return Vec::new();
    };
    let count = *count as usize;
    let (cuts, _) = rest.as_chunks::<CUT_NUMBERS>();
    *numbers = rest.get(count * CUT_NUMBERS..).unwrap_or_default();
    let cuts = cuts.iter().take(count);
    cuts.filter_map(BestCut::from_numbers).collect()
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
