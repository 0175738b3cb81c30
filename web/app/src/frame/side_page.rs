//! Pages that stand in the station's place for a while: all cautions, about.

use leptos::prelude::*;
use tinwave_words::frame as words;

use super::{AboutPage, CautionsPage};
use crate::browser;
use crate::kit::Action;
use crate::state::Workshop;

/// A page beside the stations.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SidePage {
    /// All cautions.
    Cautions,
    /// What this page is.
    About,
}

/// Which one stands in the station's place. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct SidePages {
    open: RwSignal<Option<SidePage>>,
}

impl SidePages {
    pub(super) fn new(workshop: Workshop) -> Self {
        let pages = Self {
            open: RwSignal::new(None),
        };
        // Another station, opened by a link or by the browser's back, ends it.
        Effect::new(move |before: Option<_>| {
            let now = workshop.station.get();
            if before.is_some_and(|before| before != now) {
                pages.close();
            }
            now
        });
        browser::on_window("keydown", move |event| {
            if browser::key_of(&event).as_deref() == Some("Escape")
                && pages.open.get_untracked().is_some()
            {
                pages.close();
            }
        });
        pages
    }

    /// Shows a page in the station's place.
    pub fn show(self, page: SidePage) {
        self.open.set(Some(page));
    }

    /// Back to the station.
    pub fn close(self) {
        if self.open.get_untracked().is_some() {
            self.open.set(None);
        }
    }

    /// The page that stands there.
    #[must_use]
    pub fn open(self) -> Option<SidePage> {
        self.open.get()
    }

    /// Its view.
    pub fn view(self, page: SidePage) -> impl IntoView {
        let workshop = expect_context::<Workshop>();
        let page = match page {
            SidePage::Cautions => view! { <CautionsPage/> }.into_any(),
            SidePage::About => view! { <AboutPage/> }.into_any(),
        };
        let back = move || words::back_to(workshop.station.get());
        view! {
            <div class="side-page">
                {page}
                <p><Action text=back on_press=move |()| self.close()/></p>
            </div>
        }
    }
}
