//! Tolerances: what each dimension does, and cans drawn at random.

use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::{Sensitivity, Yield, YieldSteps, sensitivities};
use tinwave_protocol::tolerance::{DrawCans, RankDimensions, Ranking};

use crate::Work;
use crate::outside_first::OutsideFirst;

/// Steps before the first can is drawn (pieces of the stand-in and its checks: one and
/// eight beside one for each dimension), and cans of a step.
const BEFORE: u32 = 9;
const PER_STEP: u32 = 200;

/// Dimensions ranked one a step.
pub struct RankWork {
    question: RankDimensions,
    outside: OutsideFirst,
    as_drawn: Option<f64>,
    ranked: Vec<Sensitivity>,
    impossible: Vec<(Dimension, f64)>,
    next: usize,
}

impl RankWork {
    /// Prepares it.
    #[must_use]
    pub fn new(question: RankDimensions) -> Self {
        Self {
            outside: OutsideFirst::new(&question.design),
            question,
            as_drawn: None,
            ranked: Vec::new(),
            impossible: Vec::new(),
            next: 0,
        }
    }

    fn one(&self, dimension: Dimension, size: f64) -> Option<Sensitivity> {
        let outside = self.outside.outside();
        let design = &self.question.design;
        let found = sensitivities(design, outside.as_ref(), &[(dimension, size)]).ok()?;
        found.into_iter().next()
    }
}

impl Work for RankWork {
    type Answer = Option<Ranking>;

    fn total(&self) -> u32 {
        let dimensions = u32::try_from(self.question.tolerances.len()).unwrap_or(0);
        // One more for the can as drawn.
        self.outside.total() + dimensions + 1
    }

    fn step(&mut self) {
        if self.outside.step() {
            return;
        }
        if self.next == 0 {
            // No change at all: the can as drawn.
            let drawn = self.one(Dimension::OpenLength, 0.0);
            self.as_drawn = drawn.map(|one| one.worst_vswr.0);
        } else if let Some((dimension, size)) = self.question.tolerances.get(self.next - 1) {
            match self.one(*dimension, *size) {
                Some(one) => self.ranked.push(one),
                None => self.impossible.push((*dimension, *size)),
            }
        }
        self.next += 1;
    }

    fn finish(mut self) -> Option<Ranking> {
        let as_drawn = self.as_drawn?;
        self.ranked
            .sort_by(|a, b| Ranking::worst(b).total_cmp(&Ranking::worst(a)));
        Some(Ranking {
            as_drawn,
            ranked: self.ranked,
            impossible: self.impossible,
        })
    }
}

/// Cans drawn, some a step; what is drawn so far is told.
pub struct DrawWork {
    question: DrawCans,
    outside: OutsideFirst,
    /// Set up once the outside is there; `None` in it where nothing can be drawn.
    steps: Option<Option<YieldSteps>>,
}

impl DrawWork {
    /// Prepares it.
    #[must_use]
    pub fn new(question: DrawCans) -> Self {
        Self {
            outside: OutsideFirst::new(&question.design),
            question,
            steps: None,
        }
    }

    fn begin(&self) -> Option<YieldSteps> {
        let DrawCans { design, settings } = &self.question;
        if settings.spreads.is_empty() {
            return None;
        }
        YieldSteps::new(design, self.outside.outside().as_ref(), settings.clone()).ok()
    }
}

impl Work for DrawWork {
    type Answer = Option<Yield>;

    fn total(&self) -> u32 {
        let settings = &self.question.settings;
        let dimensions = u32::try_from(settings.spreads.len()).unwrap_or(0);
        // The first sets it up.
        self.outside.total() + 1 + BEFORE + dimensions + settings.samples.div_ceil(PER_STEP)
    }

    fn step(&mut self) {
        if self.outside.step() {
            return;
        }
        match &mut self.steps {
            None => self.steps = Some(self.begin()),
            Some(Some(steps)) => {
                steps.step();
            }
            Some(None) => {}
        }
    }

    fn so_far(&self) -> Option<Option<Yield>> {
        let steps = self.steps.as_ref()?.as_ref()?;
        (steps.done() > 0.0).then(|| steps.clone().finish())
    }

    fn finish(self) -> Option<Yield> {
        let mut steps = self.steps.flatten()?;
        while steps.step() {}
        steps.finish()
    }
}
