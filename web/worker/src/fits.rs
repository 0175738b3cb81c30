//! Matches and grades what else fits: one trial after the other.

use tinwave_core::analysis::Analyser;
use tinwave_core::best_cut::{BestCut, BestCutSearch, FreeDimensions, Progress};
use tinwave_core::design::Design;
use tinwave_core::grade::{Best, grade};
use tinwave_core::outside::{OutsideSpectrum, OutsideSteps};
use tinwave_maker::fits::{bands_for, sizes_for};
use tinwave_protocol::fits::{BandsMatched, MatchBands, MatchSizes, Matched, SizesMatched};

use std::collections::VecDeque;
use std::sync::Arc;

use crate::Work;
use crate::fits_kept::{keep, known};

/// Parts of the solution of a trial's mouth, and of the search for its cut.
const MOUTH_PARTS: u32 = 10;
const CUT_PARTS: u32 = 5;
/// The last step of a trial grades it.
const STEPS: u32 = MOUTH_PARTS + CUT_PARTS + 1;

/// What is done for the trial in hand.
enum Stage {
    Mouth(OutsideSteps),
    Cut(BestCutSearch),
    Grade(Option<BestCut>),
}

/// One trial on its way.
struct Trial {
    design: Design,
    outside: Option<Arc<OutsideSpectrum>>,
    stage: Stage,
    step: u32,
}

impl Trial {
    fn new(design: Design) -> Self {
        let steps = OutsideSteps::of_design(&design).ok().flatten();
        let mut trial = Self {
            design,
            outside: None,
            stage: Stage::Grade(None),
            step: 0,
        };
        match steps {
            Some(steps) => trial.stage = Stage::Mouth(steps),
            None => {
                trial.search();
                trial.step = MOUTH_PARTS;
            }
        }
        trial
    }

    fn search(&mut self) {
        let free = FreeDimensions::LengthAndDistance;
        let search = BestCutSearch::with_outside(&self.design, free, self.outside.as_ref());
        self.stage = search.map_or(Stage::Grade(None), Stage::Cut);
    }

    /// Takes a step; what came out, after the last.
    fn step(&mut self) -> Option<Matched> {
        self.step += 1;
        match &mut self.stage {
            Stage::Mouth(steps) => {
                let wanted = steps.total() * self.step as usize / MOUTH_PARTS as usize;
                let mut more = true;
                while more && steps.done() < wanted {
                    more = steps.step();
                }
                if self.step >= MOUTH_PARTS {
                    self.take_outside();
                }
            }
            Stage::Cut(search) => {
                let part = self.step.saturating_sub(MOUTH_PARTS);
                let share = f64::from(part) / f64::from(CUT_PARTS);
                loop {
                    match search.step() {
                        Progress::Done(cuts) => {
                            self.stage = Stage::Grade(cuts.first().copied());
                            break;
                        }
                        Progress::Working { done } if done >= share && part < CUT_PARTS => break,
                        Progress::Working { .. } => {}
                    }
                }
            }
            Stage::Grade(cut) => {
                return Some(graded(&mut self.design, *cut, self.outside.as_ref()));
            }
        }
        None
    }

    fn take_outside(&mut self) {
        let stage = std::mem::replace(&mut self.stage, Stage::Grade(None));
        if let Stage::Mouth(steps) = stage {
            self.outside = steps.finish().map(Arc::new);
        }
        self.search();
    }
}

fn graded(
    design: &mut Design,
    cut: Option<BestCut>,
    outside: Option<&Arc<OutsideSpectrum>>,
) -> Matched {
    let analysis = cut.and_then(|cut| {
        design.probe.length_um = cut.length_um;
        design.probe.backshort_distance_um = cut.backshort_distance_um;
        Analyser::new().analyse_with(design, outside).ok()
    });
    let best = analysis.as_ref().map_or(Best::None, Best::Known);
    Matched {
        cut,
        graded: grade(design, best),
    }
}

/// Trials of one question, told apart by `K`.
pub struct FitsWork<K> {
    left: VecDeque<(K, Design)>,
    in_hand: Option<Trial>,
    total: u32,
    found: Vec<(K, Matched)>,
    news: bool,
    /// What was known from the start is told with the first step.
    untold: bool,
}

impl<K> FitsWork<K> {
    fn of(trials: impl Iterator<Item = (K, Design)>) -> Self {
        let (mut left, mut found) = (VecDeque::new(), Vec::new());
        for (key, trial) in trials {
            match known(&trial) {
                Some(matched) => found.push((key, matched)),
                None => left.push_back((key, trial)),
            }
        }
        Self {
            total: STEPS * u32::try_from(left.len()).unwrap_or(0),
            left,
            in_hand: None,
            news: false,
            untold: !found.is_empty(),
            found,
        }
    }

    fn take_step(&mut self) {
        self.news = std::mem::take(&mut self.untold);
        let Some((_, design)) = self.left.front() else {
            return;
        };
        let trial = self
            .in_hand
            .get_or_insert_with(|| Trial::new(design.clone()));
        let Some(matched) = trial.step() else {
            return;
        };
        self.in_hand = None;
        if let Some((key, design)) = self.left.pop_front() {
            keep(design, matched.clone());
            self.found.push((key, matched));
            self.news = true;
        }
    }

    fn rest(mut self) -> Vec<(K, Matched)> {
        while !self.left.is_empty() {
            self.take_step();
        }
        self.found
    }
}

impl FitsWork<usize> {
    /// Matches trade sizes.
    #[must_use]
    pub fn sizes(question: &MatchSizes) -> Self {
        let fits = sizes_for(&question.design);
        Self::of(fits.into_iter().map(|fit| (fit.index, fit.trial)))
    }
}

impl FitsWork<String> {
    /// Matches published bands.
    #[must_use]
    pub fn bands(question: &MatchBands) -> Self {
        let fits = bands_for(&question.design);
        Self::of(
            fits.into_iter()
                .map(|fit| (fit.band.key.to_owned(), fit.trial)),
        )
    }
}

impl Work for FitsWork<usize> {
    type Answer = SizesMatched;

    fn total(&self) -> u32 {
        self.total
    }

    fn step(&mut self) {
        self.take_step();
    }

    fn so_far(&self) -> Option<SizesMatched> {
        self.news.then(|| SizesMatched(self.found.clone()))
    }

    fn finish(self) -> SizesMatched {
        SizesMatched(self.rest())
    }
}

impl Work for FitsWork<String> {
    type Answer = BandsMatched;

    fn total(&self) -> u32 {
        self.total
    }

    fn step(&mut self) {
        self.take_step();
    }

    fn so_far(&self) -> Option<BandsMatched> {
        self.news.then(|| BandsMatched(self.found.clone()))
    }

    fn finish(self) -> BandsMatched {
        BandsMatched(self.rest())
    }
}
