//! Short notices. They speak in the top line in place of the name, cover nothing and
//! move nothing; for six seconds, or until they are answered where there is a choice.

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_words::frame as words;

use crate::browser::{self, Timer};
use crate::reactive::effect;

/// How long a notice without a choice stands, in milliseconds.
const STANDS_MS: u32 = 6_000;

/// What a press on a notice does. It lives as long as the notice, whatever becomes of the
/// component that said it.
type Press = Arc<dyn Fn() + Send + Sync>;

/// A notice.
#[derive(Clone)]
pub(super) struct Brief {
    pub(super) text: String,
    /// What can be pressed, and what that does.
    pub(super) actions: Vec<(String, Press)>,
    /// Whether it waits for its answer.
    stays: bool,
}

/// The place of short notices. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Briefs {
    brief: RwSignal<Option<Brief>>,
    /// One with a choice that was not answered yet: it comes back after another.
    waiting: StoredValue<Option<Brief>>,
    rest: Timer,
}

impl Briefs {
    /// With nothing to say; listens to what the loader tells.
    pub(super) fn new() -> Self {
        let briefs = Self {
            brief: RwSignal::new(None),
            waiting: StoredValue::new(None),
            rest: Timer::new(),
        };
        browser::on_window("tinwave-offline", move |_| {
            briefs.say(words::works_offline())
        });
        browser::on_window("tinwave-update", move |_| briefs.newer_page());
        effect(move || {
            if browser::left_by_start("update").is_some() {
                briefs.newer_page();
            }
        });
        briefs
    }

    /// Says something for a while.
    pub fn say(self, text: impl Into<String>) {
        self.show(text.into(), Vec::new(), false);
    }

    /// Says something for a while, with one thing to press ("Undo").
    pub fn say_with(
        self,
        text: impl Into<String>,
        action: impl Into<String>,
        press: impl Fn() + Send + Sync + 'static,
    ) {
        let press: Press = Arc::new(press);
        self.show(text.into(), vec![(action.into(), press)], false);
    }

    fn newer_page(self) {
        let take: Press = Arc::new(|| browser::tell_window("tinwave-take-update"));
        let later: Press = Arc::new(|| {});
        let actions = vec![
            (words::take_it().to_owned(), take),
            (words::later().to_owned(), later),
        ];
        self.show(words::newer_page().to_owned(), actions, true);
    }

    fn show(self, text: String, actions: Vec<(String, Press)>, stays: bool) {
        let brief = Some(Brief {
            text,
            actions,
            stays,
        });
        self.brief.set(brief.clone());
        self.rest.clear();
        if stays {
            self.waiting.set_value(brief);
        } else {
            self.rest.set(STANDS_MS, move || self.next());
        }
    }

    /// While a notice is pointed at or has the focus, it stays.
    pub(super) fn hold(self) {
        self.rest.clear();
    }

    /// It is left again.
    pub(super) fn release(self) {
        let goes = self
            .brief
            .with_untracked(|brief| brief.as_ref().is_some_and(|brief| !brief.stays));
        if goes {
            self.rest.set(STANDS_MS, move || self.next());
        }
    }

    /// Puts the notice away.
    pub(super) fn put_away(self) {
        self.rest.clear();
        let is_answered = self
            .brief
            .with_untracked(|brief| brief.as_ref().is_some_and(|brief| brief.stays));
        if is_answered {
            self.waiting.set_value(None);
        }
        self.next();
    }

    /// What waits for its answer takes the place of what has stood long enough.
    fn next(self) {
        self.brief.set(self.waiting.get_value());
    }

    /// The notice that stands.
    pub(super) fn standing(self) -> Option<Brief> {
        self.brief.get()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_notice_stands_until_it_is_put_away() {
        Owner::new().with(|| {
            let briefs = Briefs::new();
            briefs.say("Link copied");
            assert_eq!(
                briefs.standing().map(|brief| brief.text).as_deref(),
                Some("Link copied")
            );
            briefs.put_away();
            assert!(briefs.standing().is_none());
        });
    }

    #[test]
    fn a_newer_page_waits_for_its_answer() {
        Owner::new().with(|| {
            let briefs = Briefs::new();
            briefs.newer_page();
            let brief = briefs.standing();
            assert!(brief.is_some_and(|brief| brief.stays && brief.actions.len() == 2));
        });
    }

    #[test]
    fn what_waits_for_an_answer_comes_back_after_another_notice() {
        Owner::new().with(|| {
            let briefs = Briefs::new();
            let standing = || briefs.standing().map(|brief| brief.text);
            briefs.newer_page();
            briefs.say("Link copied");
            assert_eq!(standing().as_deref(), Some("Link copied"));
            briefs.put_away();
            assert_eq!(standing().as_deref(), Some(words::newer_page()));
            briefs.put_away();
            assert_eq!(standing(), None);
        });
    }
}
