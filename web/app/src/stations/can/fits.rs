//! What else fits: asked of the worker once the own can's figures are final, and kept
//! while it is still true.

use leptos::prelude::*;
use tinwave_core::design::Design;
use tinwave_core::grade::Grade;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::fits::{
    BandFit, SizeFit, bands_for, base_of_bands, base_of_sizes, rank, sizes_for, take_band,
    take_size, way_from,
};
use tinwave_maker::history::Change;
use tinwave_protocol::fits::{BandsMatched, MatchBands, MatchSizes, Matched, SizesMatched};

use crate::reactive::{effect, memo};
use crate::state::{Freshness, Workshop};
use crate::worker::{Task, TaskState};

/// A trade size as the list shows it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct SizeRow {
    /// The size.
    pub(super) fit: SizeFit,
    /// How well it does, once known.
    pub(super) matched: Option<Matched>,
}

/// What else fits. A handle, copied freely.
#[derive(Clone, Copy)]
pub(super) struct Fits {
    workshop: Workshop,
    sizes_base: Memo<Design>,
    bands_base: Memo<Design>,
    sizes_task: Task<SizesMatched>,
    bands_task: Task<BandsMatched>,
    /// What was asked last.
    sizes_asked: RwSignal<Option<Design>>,
    bands_asked: RwSignal<Option<Design>>,
    sizes_known: RwSignal<SizesMatched>,
    bands_known: RwSignal<BandsMatched>,
    /// The sizes: those that were matched by rank, else the roomiest first.
    pub(super) rows: Memo<Vec<SizeRow>>,
    /// Sizes whose matching the maker stopped.
    stopped: RwSignal<bool>,
}

/// Where the station has what else fits: it opens with the first part that asks for it,
/// and goes with the station.
#[derive(Clone, Copy)]
pub(super) struct FitsPlace {
    station: StoredValue<Owner>,
    fits: StoredValue<Option<Fits>>,
}

impl FitsPlace {
    /// Nothing there yet.
    pub(super) fn new() -> Self {
        Self {
            station: StoredValue::new(Owner::current().unwrap_or_default()),
            fits: StoredValue::new(None),
        }
    }
}

impl Fits {
    /// The station's.
    pub(super) fn of_station() -> Self {
        let place = expect_context::<FitsPlace>();
        place.fits.get_value().unwrap_or_else(|| {
            let workshop = expect_context();
            let fits = place
                .station
                .get_value()
                .with(|| untrack(|| Self::open(workshop)));
            place.fits.set_value(Some(fits));
            fits
        })
    }

    /// Follows the work.
    fn open(workshop: Workshop) -> Self {
        let work = workshop.work;
        let sizes_base = memo(move || work.with(|work| base_of_sizes(&work.design)));
        let bands_base = memo(move || work.with(|work| base_of_bands(&work.design)));
        let sizes = memo(move || sizes_base.with(sizes_for));
        let sizes_asked = RwSignal::new(None::<Design>);
        let sizes_known = RwSignal::new(SizesMatched::default());
        let rows = memo(move || {
            let is_of_these =
                sizes_asked.with(|asked| sizes_base.with(|base| asked.as_ref() == Some(base)));
            sizes
                .with(|sizes| sizes_known.with(|known| ranked(sizes, is_of_these.then_some(known))))
        });
        let fits = Self {
            workshop,
            sizes_base,
            bands_base,
            sizes_task: Task::new(),
            bands_task: Task::new(),
            sizes_asked,
            bands_asked: RwSignal::new(None),
            sizes_known,
            bands_known: RwSignal::new(BandsMatched::default()),
            rows,
            stopped: RwSignal::new(false),
        };
        fits.follow();
        fits
    }

    fn follow(self) {
        // The own can comes first: the worker does the newest job first.
        let is_ready = memo(move || {
            let answers = self.workshop.answers;
            answers.freshness.get() == Freshness::Final
                && answers.graded.with(|graded| graded.complete)
        });
        effect(move || {
            let base = self.sizes_base.get();
            let is_asked = self.sizes_asked.with(|asked| asked.as_ref() == Some(&base));
            if is_ready.get() && !is_asked {
                self.ask_sizes(base);
            }
        });
        let will_not_do = memo(move || {
            let graded = self.workshop.answers.graded;
            graded.with(|graded| graded.grade == Grade::WillNotDo && graded.complete)
        });
        effect(move || {
            let base = self.bands_base.get();
            let is_asked = self.bands_asked.with(|asked| asked.as_ref() == Some(&base));
            if is_ready.get() && will_not_do.get() && !is_asked {
                self.bands_known.set(BandsMatched::default());
                self.bands_asked.set(Some(base));
                let design = self
                    .workshop
                    .work
                    .with_untracked(|work| work.design.clone());
                self.bands_task.run(MatchBands { design });
            }
        });
        keep_what_comes(self.sizes_task, self.sizes_known);
        keep_what_comes(self.bands_task, self.bands_known);
    }

    fn ask_sizes(self, base: Design) {
        self.stopped.set(false);
        self.sizes_known.set(SizesMatched::default());
        self.sizes_asked.set(Some(base.clone()));
        self.sizes_task.run(MatchSizes { design: base });
    }

    /// Unit of the lengths that are shown.
    pub(super) fn unit(self) -> LengthUnit {
        self.workshop.unit.get()
    }

    /// Matches the sizes after they were stopped.
    pub(super) fn ask_again(self) {
        self.ask_sizes(self.sizes_base.get_untracked());
    }

    /// Stops the matching of the sizes.
    pub(super) fn stop(self) {
        self.sizes_task.stop();
        self.stopped.set(true);
    }

    /// Whether the maker stopped the matching before its end.
    pub(super) fn is_stopped(self) -> bool {
        self.stopped.get()
    }

    /// Share done of the sizes' matching, while it is in hand.
    pub(super) fn sizes_done(self) -> Option<f32> {
        done(self.sizes_task)
    }

    /// Whether sizes or bands are still being matched, or will be.
    pub(super) fn is_looking(self) -> bool {
        let bands_are_known = self
            .bands_asked
            .with(|asked| self.bands_base.with(|base| asked.as_ref() == Some(base)));
        let sizes_are_known = self
            .sizes_asked
            .with(|asked| self.sizes_base.with(|base| asked.as_ref() == Some(base)));
        !(bands_are_known && sizes_are_known)
            || done(self.sizes_task).is_some()
            || done(self.bands_task).is_some()
    }

    /// The nearest trade size that will do, or will do with care where none simply
    /// does.
    pub(super) fn nearest_size(self) -> Option<SizeRow> {
        let own = self
            .workshop
            .work
            .with(|work| work.design.can.inside_diameter_um);
        self.rows.with(|rows| {
            let usable = rows.iter().filter_map(|row| {
                let grade = row.matched.as_ref()?.graded.grade;
                (grade != Grade::WillNotDo).then_some((grade, way_from(&row.fit, own), row))
            });
            let best = usable.min_by_key(|(grade, way, _)| (*grade, *way));
            best.map(|(_, _, row)| row.clone())
        })
    }

    /// The nearest published band that this can is good for: one to transmit on before
    /// one to receive.
    pub(super) fn nearest_band(self) -> Option<(BandFit, Matched)> {
        let is_of_this = self
            .bands_asked
            .with(|asked| self.bands_base.with(|base| asked.as_ref() == Some(base)));
        if !is_of_this {
            return None;
        }
        let fits = self.workshop.work.with(|work| bands_for(&work.design));
        self.bands_known.with(|known| {
            let usable = fits.into_iter().filter_map(|fit| {
                let matched = known.of(fit.band.key)?;
                (matched.graded.grade != Grade::WillNotDo).then(|| (fit, matched.clone()))
            });
            // The first of equals: the list begins with the nearest.
            usable.min_by_key(|(fit, matched)| (matched.graded.grade, fit.band.receive_only))
        })
    }

    /// Takes a trade size.
    pub(super) fn take(self, row: &SizeRow) {
        let cut = row.matched.as_ref().and_then(|matched| matched.cut);
        self.workshop.edit(Change::TradeSize, |work| {
            take_size(work, &row.fit, cut.as_ref());
        });
    }

    /// Uses the can for another band.
    pub(super) fn use_for(self, fit: &BandFit, matched: &Matched) {
        self.workshop.edit(Change::Band, |work| {
            take_band(work, fit.band.band(), matched.cut.as_ref());
        });
    }
}

fn done<A: Clone + Send + Sync + serde::de::DeserializeOwned>(task: Task<A>) -> Option<f32> {
    task.state().with(|state| match state {
        TaskState::Working { done, .. } => Some(*done),
        _ => None,
    })
}

/// What the worker tells on its way and at the end.
fn keep_what_comes<A>(task: Task<A>, known: RwSignal<A>)
where
    A: Clone + Send + Sync + serde::de::DeserializeOwned + 'static,
{
    effect(move || {
        let news = task.state().with(|state| match state {
            TaskState::Working { so_far, .. } => so_far.clone(),
            TaskState::Done(answer) => Some(answer.clone()),
            _ => None,
        });
        if let Some(news) = news {
            known.set(news);
        }
    });
}

fn ranked(sizes: &[SizeFit], known: Option<&SizesMatched>) -> Vec<SizeRow> {
    let mut rows: Vec<SizeRow> = sizes
        .iter()
        .map(|fit| SizeRow {
            matched: known.and_then(|known| known.of(fit.index)).cloned(),
            fit: fit.clone(),
        })
        .collect();
    // Until all are matched the room alone counts, so that no row jumps.
    if rows.iter().all(|row| row.matched.is_some()) {
        rows.sort_by(|a, b| {
            let place = |row: &SizeRow| {
                row.matched
                    .as_ref()
                    .map(|matched| rank(&matched.graded, matched.cut.as_ref()))
            };
            place(a)
                .partial_cmp(&place(b))
                .unwrap_or(std::cmp::Ordering::Equal)
        });
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_core::grade::Graded;
    use tinwave_maker::example::example;

    fn matched(grade: Grade) -> Matched {
        Matched {
            cut: None,
            graded: Graded {
                grade,
                reasons: Vec::new(),
                room_below: 0.1,
                room_above: 0.1,
                complete: true,
            },
        }
    }

    #[test]
    fn no_row_jumps_until_all_are_matched_and_then_the_good_ones_come_first() {
        let sizes = sizes_for(&example().design);
        let order = |rows: &[SizeRow]| rows.iter().map(|row| row.fit.index).collect::<Vec<_>>();
        let first = sizes[0].index;
        let mut known = SizesMatched(vec![(first, matched(Grade::WillNotDo))]);
        let half = ranked(&sizes, Some(&known));
        assert_eq!(order(&half), order(&ranked(&sizes, None)));
        for fit in &sizes[1..] {
            known.0.push((fit.index, matched(Grade::WillDo)));
        }
        let all = ranked(&sizes, Some(&known));
        assert_eq!(all.last().map(|row| row.fit.index), Some(first));
    }
}
