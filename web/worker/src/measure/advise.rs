//! Works out what to do about a can as it was found, some cans a step.

use tinwave_core::diagnosis::{Advice, AdviceSteps};
use tinwave_protocol::measure::Advise;

use crate::Work;
use crate::outside_first::OutsideFirst;

/// Progress is told in so many parts; the work in each is a few model evaluations.
const PARTS: u32 = 80;
const PIECES: u32 = 6;

/// The advice on its way.
pub struct AdviseWork {
    question: Advise,
    outside: OutsideFirst,
    /// Set up once the outside is there; `None` in it where nothing can be computed.
    steps: Option<Option<AdviceSteps>>,
}

impl AdviseWork {
    /// Prepares it.
    #[must_use]
    pub fn new(question: Advise) -> Self {
        Self {
            outside: OutsideFirst::new(&question.design),
            question,
            steps: None,
        }
    }
}

impl Work for AdviseWork {
    type Answer = Option<Advice>;

    fn total(&self) -> u32 {
        self.outside.total() + PARTS
    }

    fn step(&mut self) {
        if self.outside.step() {
            return;
        }
        let Some(steps) = &mut self.steps else {
            let Advise { design, diagnosis } = &self.question;
            let outside = self.outside.outside();
            self.steps = Some(AdviceSteps::new(design, outside.as_ref(), diagnosis).ok());
            return;
        };
        if let Some(steps) = steps {
            for _ in 0..PIECES {
                if !steps.step() {
                    break;
                }
            }
        }
    }

    fn finish(self) -> Option<Advice> {
        let mut steps = self.steps.flatten()?;
        while steps.step() {}
        Some(steps.finish())
    }
}
