//! Solves the field outside a can, one frequency a step.

use tinwave_core::design::Design;
use tinwave_core::outside::{OutsideSpectrum, OutsideSteps};
use tinwave_protocol::outside::SolveOutside;

use crate::Work;
use crate::outsides::{keep_outside, kept_outside};

/// The outside on its way.
pub struct OutsideWork {
    design: Design,
    /// `None` where it is kept already, or can't be solved.
    steps: Option<OutsideSteps>,
}

impl OutsideWork {
    /// Prepares the body.
    #[must_use]
    pub fn new(question: SolveOutside) -> Self {
        let design = question.design;
        let steps = match kept_outside(&design) {
            Some(_) => None,
            None => OutsideSteps::of_design(&design).ok().flatten(),
        };
        Self { design, steps }
    }
}

impl Work for OutsideWork {
    type Answer = Option<OutsideSpectrum>;

    fn total(&self) -> u32 {
        let total = self.steps.as_ref().map_or(0, OutsideSteps::total);
        u32::try_from(total).unwrap_or(u32::MAX)
    }

    fn step(&mut self) {
        if let Some(steps) = &mut self.steps {
            steps.step();
        }
    }

    fn finish(self) -> Self::Answer {
        let solved = match self.steps {
            Some(steps) => keep_outside(&self.design, steps.finish()?),
            None => kept_outside(&self.design)?,
        };
        Some(OutsideSpectrum::clone(&solved))
    }
}
