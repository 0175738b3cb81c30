//! Where the pictures stand: beside the entries where there is room for two
//! columns, else each in the part that it belongs to.

use leptos::prelude::*;

use super::search::Search;
use super::state::Page;
use crate::drawing::{DragEdit, DragPhase};
use crate::history::Change;
use crate::pictures::{MatchChart, ModeLadder, SectionDrawing, SmithChart};
use crate::store::Theme;

/// Which pictures.
#[derive(Clone, Copy)]
pub(super) enum Which {
    Ladder,
    Charts,
}

/// The pictures' shared state.
#[derive(Clone, Copy)]
pub(super) struct Pictures {
    page: Page,
    search: Search,
    /// The frequency under the pointer, shared by the charts.
    cursor: RwSignal<Option<u32>>,
}

impl Pictures {
    pub(super) fn new(page: Page, search: Search) -> Self {
        Self {
            page,
            search,
            cursor: RwSignal::new(None),
        }
    }

    /// The column of pictures: all of them where there is room, else the drawing.
    pub(super) fn column(self) -> AnyView {
        let wide = self.page.wide;
        view! {
            {self.drawing()}
            {move || wide.get().then(|| self.show(Which::Ladder))}
            {move || wide.get().then(|| self.show(Which::Charts))}
        }
        .into_any()
    }

    /// The pictures in their part, where there is no column.
    pub(super) fn in_section(self, which: Which) -> AnyView {
        let wide = self.page.wide;
        (move || (!wide.get()).then(|| self.show(which))).into_any()
    }

    fn show(self, which: Which) -> AnyView {
        match which {
            Which::Ladder => self.ladder(),
            Which::Charts => self.charts(),
        }
    }

    fn drawing(self) -> AnyView {
        let page = self.page;
        let design = Signal::derive(move || page.work.with(|work| work.design.clone()));
        let on_drag = Callback::new(move |edit: DragEdit| {
            let DragEdit { field, um, phase } = edit;
            // A value out of range stays where it was: the drawing follows the work.
            let _ = page.edit(Change::ProbeDrag, &|work| {
                work.set_field(field, i64::from(um))
            });
            if phase == DragPhase::End {
                page.commit();
            }
        });
        view! { <SectionDrawing design unit=page.unit stale=page.stale() on_drag/> }.into_any()
    }

    fn band(self) -> Signal<tinwave_core::design::Band> {
        let page = self.page;
        Signal::derive(move || page.work.with(|work| work.design.band))
    }

    fn ladder(self) -> AnyView {
        let page = self.page;
        let modes = Signal::derive(move || {
            page.analysis.with(|analysis| {
                analysis
                    .as_ref()
                    .map_or_else(Vec::new, |analysis| analysis.modes.clone())
            })
        });
        view! { <ModeLadder modes band=self.band() stale=page.stale()/> }.into_any()
    }

    fn charts(self) -> AnyView {
        let page = self.page;
        let sweep = Signal::derive(move || {
            page.analysis.with(|analysis| {
                analysis
                    .as_ref()
                    .map_or_else(Vec::new, |analysis| analysis.sweep.clone())
            })
        });
        let ghost = self.search.ghost;
        let theme = Signal::derive(move || match page.theme.get() {
            Theme::System => 0,
            Theme::Light => 1,
            Theme::Dark => 2,
        });
        let name = Signal::derive(|| "best cut".to_owned());
        let summary = Signal::derive(move || {
            page.analysis
                .with(|analysis| analysis.as_ref().and_then(|analysis| analysis.match_summary))
        });
        let reference_milliohm = Signal::derive(move || {
            page.work.with(|work| work.design.probe.reference_milliohm)
        });
        view! {
            <MatchChart sweep compare=ghost compare_name=name band=self.band() summary
                cursor=self.cursor stale=page.stale() theme/>
            <SmithChart sweep compare=ghost band=self.band() reference_milliohm
                cursor=self.cursor stale=page.stale()/>
        }
        .into_any()
    }
}
