//! Looks for the differences that explain a measurement, one evaluation of the model
//! a step.

use tinwave_core::diagnosis::{DiagnosisError, DiagnosisSettings, DiagnosisSteps};
use tinwave_protocol::measure::{Diagnose, Diagnosed, LEAST_POINTS};

use crate::Work;
use crate::outside_first::OutsideFirst;

/// Steps that a fit is given; one that needs more takes them at the end.
const FIT_STEPS: u32 = 110;

/// A fit on its way.
pub struct DiagnoseWork {
    question: Diagnose,
    outside: OutsideFirst,
    /// Set up once the outside is there.
    fit: Option<Result<DiagnosisSteps, Box<Diagnosed>>>,
}

impl DiagnoseWork {
    /// Prepares it.
    #[must_use]
    pub fn new(question: Diagnose) -> Self {
        Self {
            outside: OutsideFirst::new(&question.design),
            question,
            fit: None,
        }
    }

    fn begin(&self) -> Result<DiagnosisSteps, Box<Diagnosed>> {
        let Diagnose {
            design,
            measurement,
            noise,
            knowledge,
        } = &self.question;
        let settings = DiagnosisSettings {
            noise: *noise,
            knowledge: knowledge.clone(),
            ..DiagnosisSettings::default()
        };
        let outside = self.outside.outside();
        let steps = DiagnosisSteps::new(design, outside.as_ref(), measurement, settings);
        let steps = steps.map_err(|error| match error {
            DiagnosisError::NoPoint { range } => Box::new(Diagnosed::NoPoint { range_hz: range }),
            _ => Box::new(Diagnosed::NotComputed),
        })?;
        if steps.points() < LEAST_POINTS {
            return Err(Box::new(Diagnosed::TooFew));
        }
        Ok(steps)
    }
}

impl Work for DiagnoseWork {
    type Answer = Diagnosed;

    fn total(&self) -> u32 {
        self.outside.total() + FIT_STEPS
    }

    fn step(&mut self) {
        if self.outside.step() {
            return;
        }
        match &mut self.fit {
            None => self.fit = Some(self.begin()),
            Some(Ok(fit)) => {
                fit.step();
            }
            Some(Err(_)) => {}
        }
    }

    fn finish(self) -> Diagnosed {
        match self.fit {
            Some(Ok(mut fit)) => {
                while fit.step() {}
                fit.finish()
                    .map_or(Diagnosed::NotComputed, Diagnosed::Found)
            }
            Some(Err(why)) => *why,
            None => Diagnosed::NotComputed,
        }
    }
}
