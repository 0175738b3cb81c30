//! What was done to a can: the log tells it, and what is known of the can goes on. The
//! design stays what the can should become, but where something new was made.

use tinwave_core::design::Design;
use tinwave_core::diagnosis::{Diagnosis, Knowledge, Remedy};
use tinwave_core::dimension::Dimension;

use super::known;
use super::line::{Change, Day, Done, Figures, Line, Measured};
use super::log::CanLog;

/// How well a cut is measured, metres. Common practice, no source.
pub const CUT_SD_M: f64 = 1e-4;

/// A measurement that was weighed.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// Tells it from another.
    pub mark: String,
    /// How well the can was matched.
    pub figures: Figures,
    /// What it told, where it is explained: the rest is no ground to stand on.
    pub diagnosis: Option<Diagnosis>,
    /// What was known before it.
    pub before: Knowledge,
}

/// Work on a can that was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Work {
    /// So much wire was taken off, micrometres.
    Cut(u32),
    /// A remedy was followed.
    Remedy(Remedy),
}

impl CanLog {
    /// Adds a measurement, once; whether it was added.
    pub fn note(&mut self, told: &Told, design: &Design, on: Option<Day>) -> bool {
        if self.noted(&told.mark).is_some() {
            return false;
        }
        let after = told.diagnosis.as_ref();
        self.push(Line::Measured(Measured {
            mark: told.mark.clone(),
            wire_um: design.probe.length_um,
            figures: told.figures,
            before: known::write(&told.before, design),
            after: after.map_or_else(String::new, |told| known::write(&told.knowledge, design)),
            on,
        }));
        true
    }

    /// Notes work and the measurement that it rests on; the design after it. `None`
    /// where it can't be: no wire would be left, or a number would be out of range.
    pub fn work(
        &mut self,
        told: &Told,
        design: &Design,
        work: Work,
        expected_milli: Option<u32>,
        on: Option<Day>,
    ) -> Option<Design> {
        let knowledge = &told.diagnosis.as_ref()?.knowledge;
        let (done, amount_um, after, known) = outcome(design, knowledge.clone(), work)?;
        after.check().ok()?;
        self.note(told, design, on);
        self.push(Line::Changed(Change {
            done,
            amount_um,
            wire_um: after.probe.length_um,
            expected_milli,
            after: known::write(&known, &after),
            on,
        }));
        Some(after)
    }

    /// Notes that the design was made like the can as it was found.
    pub fn redrawn(&mut self, told: &Told, design: &Design, built: &Design, on: Option<Day>) {
        self.note(told, design, on);
        self.push(Line::Changed(Change {
            done: Done::Redrawn,
            amount_um: 0,
            wire_um: built.probe.length_um,
            expected_milli: None,
            after: String::new(),
            on,
        }));
    }
}

/// What was done, the design after it, and what is then known.
fn outcome(
    design: &Design,
    known: Knowledge,
    work: Work,
) -> Option<(Done, u32, Design, Knowledge)> {
    const LENGTH: Dimension = Dimension::ProbeLength;
    let mut after = design.clone();
    let usual = Dimension::usual_tolerance;
    let metres = |um: u32| f64::from(um) * 1e-6;
    match work {
        Work::Cut(um) => {
            if um == 0 || um >= design.probe.length_um {
                return None;
            }
            let known = known.after_work(LENGTH, -metres(um), CUT_SD_M);
            Some((Done::Cut, um, after, known))
        }
        Work::Remedy(Remedy::Lengthen { by_um }) => {
            let known = known.after_work(LENGTH, metres(by_um), usual(LENGTH));
            Some((Done::Lengthened, by_um, after, known))
        }
        Work::Remedy(Remedy::Move {
            backshort_distance_um,
            length_um,
        }) => {
            after.probe.backshort_distance_um = backshort_distance_um;
            after.probe.length_um = length_um;
            let known = [Dimension::BackshortDistance, LENGTH]
                .into_iter()
                .fold(known, |known, anew| known.made_anew(anew, usual(anew)));
            Some((Done::Moved, backshort_distance_um, after, known))
        }
        Work::Remedy(Remedy::AddScrew(screw)) => {
            after.screws.push(screw);
            Some((Done::Screwed, screw.depth_um, after, known))
        }
        Work::Remedy(Remedy::Leave | Remedy::Trim { .. }) => None,
    }
}
