//! The measurement in hand as a line of the log.

use super::Case;
use super::compare;
use super::known;
use super::log_line::{Figures, Line, Measured};

/// A VSWR in thousandths.
pub(super) fn milli(vswr: f64) -> u32 {
    (vswr * 1e3).round() as u32
}

impl Case<'_> {
    fn figures(&self) -> Figures {
        let Some(entered) = &self.entered else {
            return Figures::default();
        };
        let measured = compare::measured(self.request, entered);
        let band = self.request.design().band;
        let worst = compare::worst_in(band, &measured);
        let best = compare::best(band, &measured);
        Figures {
            worst_milli: worst.map(milli),
            best: best.map(|(hz, vswr)| ((hz / 1e3).round() as u32, milli(vswr))),
        }
    }

    /// Adds the measurement in hand to the log, once; whether it was added.
    pub(super) fn note_measurement(&mut self) -> bool {
        let Some(found) = &self.found else {
            return false;
        };
        if self.log.noted(&found.mark).is_some() {
            return false;
        }
        let drawn = self.request.design();
        let told = found.told();
        let line = Measured {
            mark: found.mark.clone(),
            wire_um: drawn.probe.length_um,
            figures: self.figures(),
            before: found.prior.text.clone(),
            after: told.map_or_else(String::new, |told| known::write(&told.knowledge, drawn)),
        };
        self.log.push(Line::Measured(line));
        true
    }
}
