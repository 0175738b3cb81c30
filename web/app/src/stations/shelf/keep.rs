//! Keeping the present design: a name in use is never overwritten silently.

use leptos::prelude::*;
use tinwave_maker::shelf::KeptFigures;
use tinwave_maker::store::SavedDesign;
use tinwave_words::shelf as words;

use crate::browser;
use crate::frame::Briefs;
use crate::state::{Freshness, Workshop};

/// A name that is in use, and what may be done about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InUse {
    /// The name.
    pub name: String,
    /// A like one that is free.
    pub free: String,
}

/// Keeping. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Keeping {
    workshop: Workshop,
    briefs: Briefs,
    /// The question that waits for its answer.
    pub asked: RwSignal<Option<InUse>>,
}

impl Keeping {
    pub(super) fn new() -> Self {
        Self {
            workshop: expect_context(),
            briefs: expect_context(),
            asked: RwSignal::new(None),
        }
    }

    /// Keeps the present design, or asks where its name is in use.
    pub(super) fn keep(self) {
        self.workshop.commit();
        let name = self.name();
        let link = self.link();
        let memory = self.workshop.memory;
        let used = memory
            .kept
            .with_untracked(|kept| kept.saved_as(&name).cloned());
        match used {
            Some(used) if used.link == link => {
                self.put(&name);
                self.briefs.say(words::kept_already(&name));
            }
            Some(_) => {
                let free = memory.kept.with_untracked(|kept| kept.free_name(&name));
                self.asked.set(Some(InUse { name, free }));
            }
            None => {
                self.put(&name);
                self.briefs.say(words::kept(&name));
            }
        }
    }

    /// Puts the present design in the place of the one with its name; can be undone.
    pub(super) fn replace(self, in_use: &InUse) {
        self.asked.set(None);
        let before = self.workshop.memory.kept.get_untracked().saved;
        self.put(&in_use.name);
        self.with_undo(words::replaced(&in_use.name), before);
    }

    /// Keeps both, the present design under a free name, which is its own from now on.
    pub(super) fn keep_both(self, in_use: &InUse) {
        self.asked.set(None);
        let free = in_use.free.clone();
        if !self
            .workshop
            .work
            .with_untracked(|work| work.design.name.is_empty())
        {
            let name = free.clone();
            self.workshop
                .edit(tinwave_maker::history::Change::Name, move |work| {
                    work.design.name = name
                });
        }
        self.put(&free);
        self.briefs.say(words::kept(&free));
    }

    /// Takes a design off the shelf; can be undone.
    pub(super) fn remove(self, name: &str) {
        let before = self.workshop.memory.kept.get_untracked().saved;
        self.workshop.memory.change(|kept| {
            kept.remove(name);
        });
        self.with_undo(words::removed(name), before);
    }

    /// Puts a copy on the shelf, under a free name.
    pub(super) fn duplicate(self, design: &SavedDesign) {
        let free = self
            .workshop
            .memory
            .kept
            .with_untracked(|kept| kept.free_name(&design.name));
        self.workshop
            .memory
            .change(|kept| kept.save_with(&free, &design.link, design.figures));
        self.briefs.say(words::kept(&free));
    }

    fn with_undo(self, text: String, before: Vec<SavedDesign>) {
        let memory = self.workshop.memory;
        let back = move || memory.change(|kept| kept.saved.clone_from(&before));
        self.briefs.say_with(text, words::undo(), back);
    }

    fn name(self) -> String {
        self.workshop.work.with_untracked(|work| {
            if work.design.name.is_empty() {
                words::name_by_size(work)
            } else {
                work.design.name.clone()
            }
        })
    }

    fn link(self) -> String {
        self.workshop
            .work
            .with_untracked(tinwave_maker::link::encode)
    }

    fn put(self, name: &str) {
        let (link, figures) = (self.link(), self.figures());
        self.workshop
            .memory
            .change(|kept| kept.save_with(name, &link, Some(figures)));
    }

    /// What is known of the present design; nothing that is still an estimate.
    fn figures(self) -> KeptFigures {
        let answers = self.workshop.answers;
        let is_final = answers.freshness.get_untracked() == Freshness::Final;
        let analysis = answers.analysis.get_untracked().filter(|_| is_final);
        let vswr = analysis
            .as_ref()
            .and_then(|analysis| analysis.match_summary.as_ref())
            .map(|matched| matched.worst_vswr_in_band);
        let gain = analysis
            .as_ref()
            .and_then(|analysis| analysis.true_beam.as_ref())
            .and_then(|beam| beam.realised_gain_dbi);
        KeptFigures {
            day: browser::day_number(),
            grade: Some(answers.graded.with_untracked(|graded| graded.grade)),
            vswr_milli: vswr
                .filter(|vswr| *vswr < 1e3)
                .map(|vswr| (vswr * 1e3).round() as u32),
            gain_centi: gain.map(|gain| (gain * 1e2).round() as i32),
        }
    }
}

#[cfg(test)]
#[allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]
mod tests {
    use super::*;
    use tinwave_maker::history::Change;

    fn keeping() -> Keeping {
        let workshop = Workshop::open();
        provide_context(workshop);
        crate::frame::begin(workshop);
        Keeping::new()
    }

    fn names(keeping: Keeping) -> Vec<String> {
        let kept = keeping.workshop.memory.kept.get_untracked();
        kept.saved.into_iter().map(|design| design.name).collect()
    }

    fn change(keeping: Keeping) {
        keeping.workshop.edit(Change::Diameter, |work| {
            work.design.can.inside_diameter_um += 1_000
        });
    }

    #[test]
    fn a_design_is_kept_under_its_name_or_its_size() {
        Owner::new().with(|| {
            let keeping = keeping();
            keeping.keep();
            assert_eq!(names(keeping), ["87.0 × 190.0 mm"]);
            keeping
                .workshop
                .edit(Change::Name, |work| work.design.name = "North can".into());
            keeping.keep();
            assert_eq!(names(keeping), ["North can", "87.0 × 190.0 mm"]);
        });
    }

    #[test]
    fn a_name_in_use_is_asked_about_and_nothing_is_overwritten() {
        Owner::new().with(|| {
            let keeping = keeping();
            keeping
                .workshop
                .edit(Change::Name, |work| work.design.name = "North can".into());
            keeping.keep();
            let first = keeping.workshop.memory.kept.get_untracked().saved;
            change(keeping);
            keeping.keep();
            assert_eq!(keeping.workshop.memory.kept.get_untracked().saved, first);
            let asked = keeping.asked.get_untracked();
            let Some(in_use) = asked else {
                panic!("it asks")
            };
            keeping.keep_both(&in_use);
            assert_eq!(names(keeping), ["North can 2", "North can"]);
            assert_eq!(
                keeping.workshop.work.get_untracked().design.name,
                "North can 2"
            );
        });
    }

    #[test]
    fn replacing_leaves_one_and_removing_none() {
        Owner::new().with(|| {
            let keeping = keeping();
            keeping
                .workshop
                .edit(Change::Name, |work| work.design.name = "North can".into());
            keeping.keep();
            change(keeping);
            keeping.keep();
            if let Some(in_use) = keeping.asked.get_untracked() {
                keeping.replace(&in_use);
            }
            assert_eq!(names(keeping), ["North can"]);
            keeping.remove("North can");
            assert!(names(keeping).is_empty());
        });
    }
}
