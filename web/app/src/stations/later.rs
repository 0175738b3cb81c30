//! What a first visit does without until the page is first used: the stations behind the
//! first one, other cans, and the sheets for the browser's paper. With the feature `split`
//! their program is a file of its own, fetched when it is first wanted; the build cuts it
//! off.

use leptos::prelude::*;
use tinwave_maker::station::Station;

use super::make::{BuildSheet, PaperSheets};
use super::{beam, can, feed, link, make, measure, shelf};
use crate::frame::{Lines, SidePage, SidePages};
use crate::state::Workshop;

/// A part that may come later.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LaterPart {
    /// Any station but the first.
    Station(Station),
    /// The first station's drawing.
    CanPicture,
    /// Its part on other cans: which widths, which sizes.
    OtherCans,
    /// Its ways on from a can that will not do.
    WaysOn,
    /// A page beside the stations.
    Page(SidePage),
    /// The sheets that the browser prints.
    Papers,
}

impl LaterPart {
    /// The class of its element in the first paint, which serves until the page is first
    /// used; `None` for what is not in it.
    #[cfg_attr(
        not(feature = "split"),
        allow(dead_code, reason = "all is there at once")
    )]
    const fn in_first_paint(self) -> Option<&'static str> {
        match self {
            Self::CanPicture => Some("can-picture"),
            Self::OtherCans => Some("other-cans"),
            _ => None,
        }
    }
}

/// The views. None of them is asked for but through [`Later`].
fn view_of(part: LaterPart) -> AnyView {
    follow_lines();
    match part {
        LaterPart::Station(Station::Feed) => view! { <feed::FeedStation/> }.into_any(),
        LaterPart::Station(Station::Beam) => view! { <beam::BeamStation/> }.into_any(),
        LaterPart::Station(Station::Make) => view! { <make::MakeStation/> }.into_any(),
        LaterPart::Station(Station::Measure) => view! { <measure::MeasureStation/> }.into_any(),
        LaterPart::Station(Station::Link) => view! { <link::LinkStation/> }.into_any(),
        LaterPart::Station(Station::Shelf) => view! { <shelf::ShelfStation/> }.into_any(),
        // The first station is never late.
        LaterPart::Station(Station::Can) => ().into_any(),
        LaterPart::CanPicture => view! { <can::CanPicture/> }.into_any(),
        LaterPart::OtherCans => view! { <can::OtherCans/> }.into_any(),
        LaterPart::WaysOn => view! { <can::WaysOn/> }.into_any(),
        LaterPart::Page(page) => expect_context::<SidePages>().view(page).into_any(),
        LaterPart::Papers => view! { <BuildSheet/> <PaperSheets/> }.into_any(),
    }
}

/// From now on the lines of link and measurement follow what they tell of.
fn follow_lines() {
    let lines = expect_context::<Lines>();
    if lines.follows(Station::Link) {
        return;
    }
    let workshop = expect_context::<Workshop>();
    lines.follow(Station::Link, move || link::line(workshop));
    lines.follow(Station::Measure, move || measure::line(workshop));
}

/// A part, at once.
#[cfg(not(feature = "split"))]
#[component]
pub fn Later(
    /// Which.
    part: LaterPart,
) -> impl IntoView {
    view_of(part)
}

#[cfg(feature = "split")]
pub use fetched::Later;

/// The parts behind the split.
#[cfg(feature = "split")]
pub mod fetched {
    use leptos::html::Div;
    use leptos::prelude::*;
    use leptos::reactive::computed::ScopedFuture;
    use leptos::task::spawn_local;
    use leptos::wasm_split::{SplitLoaderError, wasm_split};
    use tinwave_words::frame as words;

    use super::{LaterPart, view_of};
    use crate::browser;
    use crate::kit::Action;
    use crate::reactive::{effect, live, memo};
    use crate::state::Workshop;

    #[wasm_split(stations, wasm_split_path = ::leptos::wasm_split, fallible)]
    fn fetched(part: LaterPart, place: StoredValue<Owner>) -> Result<AnyView, SplitLoaderError> {
        // The person may have gone on to another station meanwhile, and with the place
        // goes what the part would find there.
        if place.is_disposed() {
            return Ok(().into_any());
        }
        Ok(view_of(part))
    }

    /// How a part stands.
    enum Coming {
        /// Its program and its styles are on the way.
        Fetched,
        /// It is there, or the program did not come.
        Here(Option<AnyView>),
        /// It was shown.
        Shown,
    }

    /// A part as soon as its program is there; a failed fetch can be tried again.
    #[component]
    pub fn Later(
        /// Which.
        part: LaterPart,
    ) -> impl IntoView {
        let workshop = expect_context::<Workshop>();
        let coming = RwSignal::new_local(Coming::Fetched);
        // The part is made under this component's owner, where it finds the context: the
        // button that asks again has none.
        let owner = StoredValue::new(Owner::current().unwrap_or_default());
        let fetch = move || {
            owner.get_value().with(|| {
                spawn_local(ScopedFuture::new_untracked(async move {
                    let styles = browser::styles_in_use();
                    let view = fetched(part, owner).await.ok();
                    let here = if styles.await { view } else { None };
                    coming.try_set(Coming::Here(here));
                }));
            });
        };
        let again = move |()| {
            coming.set(Coming::Fetched);
            fetch();
        };
        if part.in_first_paint().is_some() {
            // It is true of the example alone.
            let is_wanted = memo(move || workshop.answers.is_awake() || !workshop.is_example());
            let was_asked = StoredValue::new(false);
            effect(move || {
                if is_wanted.get() && !was_asked.get_value() {
                    was_asked.set_value(true);
                    fetch();
                }
            });
        } else {
            fetch();
        }
        live(move || {
            coming.track();
            let now = coming.try_update_untracked(|coming| match coming {
                Coming::Here(_) => std::mem::replace(coming, Coming::Shown),
                Coming::Fetched => Coming::Fetched,
                Coming::Shown => Coming::Shown,
            });
            match (now, part) {
                (Some(Coming::Here(Some(view))), _) => view,
                (Some(Coming::Here(None)), LaterPart::Papers) => ().into_any(),
                (Some(Coming::Here(None)), _) => view! {
                    <div class="said" role="alert">
                        <p>{words::station_not_fetched()}</p>
                        <p class="actions"><Action text=words::try_again() on_press=again/></p>
                    </div>
                }
                .into_any(),
                (Some(Coming::Fetched), LaterPart::Papers) => ().into_any(),
                (Some(Coming::Fetched), part) => match part.in_first_paint() {
                    Some(class) => view! { <FirstPaintPart class/> }.into_any(),
                    None => view! { <Fetching/> }.into_any(),
                },
                _ => ().into_any(),
            }
        })
    }

    /// Says that a part is on its way.
    #[component]
    fn Fetching() -> impl IntoView {
        view! { <p class="note" role="status" data-coming="">{words::station_fetched()}</p> }
    }

    /// What the first paint has in the part's place, as long as it is true: the very
    /// elements, moved here.
    #[component]
    fn FirstPaintPart(
        /// Its class.
        class: &'static str,
    ) -> impl IntoView {
        let workshop = expect_context::<Workshop>();
        let place = NodeRef::<Div>::new();
        effect(move || {
            if let (Some(place), Some(part)) = (place.get(), browser::first_paint_part(class)) {
                browser::put_into(&place, &part);
            }
        });
        let is_own = memo(move || !workshop.is_example());
        view! {
            <div class=class data-coming="" hidden=is_own node_ref=place></div>
            <Show when=move || is_own.get()>
                <Fetching/>
            </Show>
        }
    }
}
