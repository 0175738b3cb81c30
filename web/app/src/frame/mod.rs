//! What stands round every station: top line, rail, strip, notices, more.

pub mod about_page;
pub mod brief;
pub mod cautions_page;
pub mod first_time;
pub mod keys;
pub mod lines;
pub mod more_list;
pub mod rail;
pub mod said;
pub mod side_page;
pub mod station_link;
pub mod strip;
pub mod top_line;

pub use about_page::AboutPage;
pub use brief::Briefs;
pub use cautions_page::CautionsPage;
pub use first_time::FirstTime;
pub use lines::Lines;
pub use more_list::begin_anew;
pub use rail::Rail;
pub use said::Said;
pub use side_page::{SidePage, SidePages};
pub use strip::Strip;
pub use top_line::TopLine;

use leptos::prelude::*;
use tinwave_maker::station::Station;
use tinwave_words::frame as words;

use crate::browser;
use crate::kit::LiveRegion;
use crate::reactive::effect;
use crate::state::Workshop;

/// Provides what the frame's parts and the stations share, and follows the work with
/// the document's title, the focus and the keys.
pub fn begin(workshop: Workshop) {
    provide_context(Briefs::new());
    provide_context(SidePages::new(workshop));
    provide_context(Lines::new(workshop));
    effect(move || {
        let name = workshop.work.with(|work| work.design.name.clone());
        browser::set_title(&words::document_title(workshop.station.get(), &name));
    });
    // Whoever opens a station is taken to its answer.
    Effect::new(move |before: Option<_>| {
        let now = (workshop.station.get(), expect_context::<SidePages>().open());
        if before.is_some_and(|before| before != now) {
            browser::soon(|| browser::begin_at("answer"));
        }
        now
    });
    keys::listen(workshop);
}

/// Leads the keys past the list of stations.
#[component]
pub fn SkipLink() -> impl IntoView {
    let to_answer = |event: leptos::ev::MouseEvent| {
        event.prevent_default();
        browser::focus("answer");
    };
    view! { <a class="skip" href="#answer" on:click=to_answer>{words::skip()}</a> }
}

/// Tells those who hear the page its verdict and its first figure, once typing pauses.
/// The Can tells its own.
#[component]
pub fn Told() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let lines = expect_context::<Lines>();
    let text = move || {
        let grade = workshop.answers.graded.with(|graded| graded.grade);
        words::told(grade, &lines.of(Station::Feed))
    };
    view! {
        <Show when=move || workshop.station.get() != Station::Can><LiveRegion text=text/></Show>
    }
}
