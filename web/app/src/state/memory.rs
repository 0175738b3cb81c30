//! What the device keeps between visits.

use leptos::prelude::*;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::link;
use tinwave_maker::store::{self, Kept, Theme};

use super::Workshop;
use super::workshop::same_but_for_best;
use crate::browser;
use crate::reactive::effect;

/// The device's memory. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Memory {
    /// Everything that is kept: the shelf, the unit, the colours, the design at hand.
    pub kept: RwSignal<Kept>,
    /// A text that could not be read, and was put aside.
    broken: StoredValue<Option<String>>,
    /// The design of an earlier visit that an opened link has covered; it goes on the
    /// shelf before its place is taken.
    covered: StoredValue<Option<String>>,
}

impl Memory {
    pub(super) fn open() -> Self {
        let read = store::read(browser::stored(store::KEY).as_deref());
        if let Some(broken) = &read.broken {
            browser::store(store::BROKEN_KEY, broken);
        }
        Self {
            kept: RwSignal::new(read.kept),
            broken: StoredValue::new(read.broken),
            covered: StoredValue::new(None),
        }
    }

    pub(super) fn unit(self) -> LengthUnit {
        self.kept.with_untracked(|kept| kept.unit)
    }

    pub(super) fn broken(self) -> Option<String> {
        self.broken.get_value()
    }

    pub(super) fn cover(self, link: Option<String>) {
        self.covered.set_value(link);
    }

    /// Light, dark, or as the device says.
    #[must_use]
    pub fn theme(self) -> Theme {
        self.kept.with(|kept| kept.theme)
    }

    /// Changes what is kept, and keeps it.
    pub fn change(self, change: impl FnOnce(&mut Kept)) {
        self.kept.update(change);
    }

    /// Follows the work, the unit and the colours; writes what changed.
    pub(super) fn follow(self, workshop: Workshop) {
        Effect::new(move |before: Option<String>| {
            let fragment = workshop.work.with(link::encode);
            if before.is_some_and(|before| before != fragment) {
                self.keep_design(&fragment);
            }
            fragment
        });
        effect(move || {
            let unit = workshop.unit.get();
            if self.unit() != unit {
                self.change(|kept| kept.unit = unit);
            }
        });
        effect(move || browser::tell_styles("theme", self.theme().key()));
        Effect::new(move |before: Option<String>| {
            let text = self.kept.with(store::write);
            if before.is_some_and(|before| before != text) {
                browser::store(store::KEY, &text);
            }
            text
        });
        // Another tab has written: its shelf is ours too.
        browser::on_window("storage", move |_| {
            let read = store::read(browser::stored(store::KEY).as_deref());
            let same = self
                .kept
                .with_untracked(|kept| kept.saved == read.kept.saved);
            if read.broken.is_none() && !same {
                self.kept.update(|kept| kept.saved = read.kept.saved);
            }
        });
    }

    /// Takes a design as what the device should open next time.
    fn keep_design(self, fragment: &str) {
        let covered = self.covered.try_update_value(Option::take).flatten();
        self.change(|kept| {
            if let Some(earlier) = covered.filter(|earlier| !is_same(earlier, fragment)) {
                kept.save(tinwave_words::before_the_link(), &earlier);
            }
            kept.link = Some(fragment.to_owned());
        });
    }
}

/// Whether two links are to the same work, a best cut that was found anew left aside.
pub(super) fn is_same(one: &str, other: &str) -> bool {
    let work = |fragment: &str| link::decode(fragment).ok().map(|opened| opened.work);
    one == other
        || work(one)
            .zip(work(other))
            .is_some_and(|(one, other)| same_but_for_best(&one, &other))
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_maker::example::example;
    use tinwave_maker::workpiece::Cut;

    #[test]
    fn a_best_cut_found_anew_is_no_other_design() {
        let mut work = example();
        work.cut = Cut::FollowsBest;
        let before = link::encode(&work);
        work.design.probe.length_um += 100;
        let after = link::encode(&work);
        assert!(before != after && is_same(&before, &after), "{after}");
        work.cut = Cut::AsCut;
        assert!(!is_same(&before, &link::encode(&work)));
        work.cut = Cut::FollowsBest;
        work.design.can.open_length_um += 100;
        assert!(!is_same(&before, &link::encode(&work)));
    }
}
