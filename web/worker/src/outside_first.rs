//! The outside of a can as the first part of longer work.

use std::sync::Arc;

use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSpectrum;
use tinwave_protocol::outside::SolveOutside;

use crate::Work;
use crate::outside::OutsideWork;
use crate::outsides::kept_outside;

/// The outside, solved one frequency a step unless it is kept.
pub(crate) struct OutsideFirst {
    design: Design,
    work: Option<OutsideWork>,
    total: u32,
    done: u32,
}

impl OutsideFirst {
    /// Of a design.
    pub(crate) fn new(design: &Design) -> Self {
        let work = OutsideWork::new(SolveOutside {
            design: design.clone(),
        });
        Self {
            design: design.clone(),
            total: work.total(),
            work: Some(work),
            done: 0,
        }
    }

    /// Steps in all; none where it is kept or can't be solved.
    pub(crate) const fn total(&self) -> u32 {
        self.total
    }

    /// Takes a step; `false` when there was none left.
    pub(crate) fn step(&mut self) -> bool {
        if self.done >= self.total {
            return false;
        }
        self.done += 1;
        if let Some(work) = &mut self.work {
            work.step();
        }
        if self.done == self.total
            && let Some(work) = self.work.take()
        {
            work.finish();
        }
        true
    }

    /// What was solved; `None` where there is none.
    pub(crate) fn outside(&self) -> Option<Arc<OutsideSpectrum>> {
        kept_outside(&self.design)
    }
}
