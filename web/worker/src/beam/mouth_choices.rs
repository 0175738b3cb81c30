//! What could stand at the mouth: nothing, a funnel of moderate size, a ring, a cup.

use std::cell::RefCell;
use std::f64::consts::PI;

use tinwave_core::funnel::funnel_gain_fit_dbi;
use tinwave_protocol::beam::{FunnelPoint, MouthChoice, MouthChoices, MouthGoal};

use super::can::BareCan;
use super::funnel_size::{funnel, rim};
use super::rim_search::RimSearch;
use crate::Work;

/// Length of the funnel that is shown beside ring and cup, wavelengths: what a maker
/// still cuts from one household sheet.
const FUNNEL_LENGTH: f64 = 1.0;
/// Half angles that are tried for it, degrees.
const ANGLES_DEG: (u32, u32) = (10, 50);

/// So many cans' choices are kept: a maker goes to and fro between stations.
const MOST_KEPT: usize = 4;

thread_local! {
    static KEPT: RefCell<Vec<(BareCan, Vec<MouthChoice>)>> = const { RefCell::new(Vec::new()) };
}

fn kept(can: BareCan) -> Option<Vec<MouthChoice>> {
    KEPT.with_borrow(|kept| {
        let found = kept.iter().find(|(known, _)| *known == can);
        found.map(|(_, choices)| choices.clone())
    })
}

fn keep(can: BareCan, choices: &[MouthChoice]) {
    KEPT.with_borrow_mut(|kept| {
        kept.retain(|(known, _)| *known != can);
        kept.insert(0, (can, choices.to_vec()));
        kept.truncate(MOST_KEPT);
    });
}

/// The search for rings and cups, and the funnel as its last step.
pub struct MouthWork {
    can: BareCan,
    /// What was found before for this can.
    kept: Option<Vec<MouthChoice>>,
    /// `None` where the can is beyond the computation, or nothing is left to search.
    search: Option<RimSearch>,
    done: u32,
    funnel: Option<MouthChoice>,
}

impl MouthWork {
    /// Sets the search up.
    #[must_use]
    pub fn new(question: &MouthChoices) -> Self {
        let can = BareCan::of(&question.design);
        let kept = kept(can);
        let may_search = kept.is_none() && can.is_covered();
        Self {
            search: may_search.then(|| RimSearch::new(can)),
            kept,
            can,
            done: 0,
            funnel: None,
        }
    }

    /// The funnel of the length, with the mouth that gains most by the fit, solved.
    fn funnel(&self) -> Option<MouthChoice> {
        let wavelength = self.can.wavelength_m();
        let length = FUNNEL_LENGTH * wavelength;
        let of_angle = |degrees: u32| -> FunnelPoint {
            let angle = f64::from(degrees) * (PI / 180.0);
            let mouth = 2.0 * (self.can.radius_m() + length * angle.tan());
            let gain = funnel_gain_fit_dbi(mouth, angle, wavelength);
            funnel(&self.can, mouth, angle, gain, false)
        };
        let best = (ANGLES_DEG.0..=ANGLES_DEG.1)
            .map(of_angle)
            .max_by(|a, b| a.gain_dbi.total_cmp(&b.gain_dbi))?;
        Some(MouthChoice {
            goal: MouthGoal::Funnel,
            mouth: best.mouth(),
            radiated: self.can.solve(rim(&best))?,
        })
    }

    fn choices(&self) -> Vec<MouthChoice> {
        let mut choices = self
            .search
            .as_ref()
            .map_or_else(Vec::new, RimSearch::choices);
        if let Some(funnel) = self.funnel {
            choices.insert(1.min(choices.len()), funnel);
        }
        choices
    }
}

impl Work for MouthWork {
    type Answer = Vec<MouthChoice>;

    fn total(&self) -> u32 {
        self.search.as_ref().map_or(0, |search| search.total() + 1)
    }

    fn step(&mut self) {
        // The bare can first, the funnel second: they are what is asked for most.
        if self.done == 1 {
            self.funnel = self.funnel();
        } else if let Some(search) = &mut self.search {
            search.step();
        }
        self.done += 1;
    }

    fn so_far(&self) -> Option<Self::Answer> {
        (self.done == 2).then(|| self.choices())
    }

    fn finish(self) -> Self::Answer {
        if let Some(kept) = &self.kept {
            return kept.clone();
        }
        let choices = self.choices();
        keep(self.can, &choices);
        choices
    }
}
