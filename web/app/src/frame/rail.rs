//! The stations at the left of a desk's screen.

use leptos::prelude::*;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::station::Station;
use tinwave_words::frame as words;

use super::station_link::StationLink;
use super::{SidePage, SidePages};
use crate::kit::{Action, ActionKind, Choice, Pick};
use crate::state::Workshop;

/// Icon, name and one live line a station; units and all cautions at the foot.
#[component]
pub fn Rail() -> impl IntoView {
    let pages = expect_context::<SidePages>();
    view! {
        <div class="rail">
            <div class="rail-inner">
                <nav aria-label=words::stations()>
                    <ul>
                        {Station::ALL.map(|station| view! {
                            <li><StationLink station with_line=true/></li>
                        }).collect_view()}
                    </ul>
                </nav>
                <aside class="rail-foot" aria-label=words::settings()>
                    <UnitChoice/>
                    <Action text=words::all_cautions() kind=ActionKind::Words
                        on_press=move |()| pages.show(SidePage::Cautions)/>
                </aside>
            </div>
        </div>
    }
}

/// Millimetres or inches.
#[component]
pub(super) fn UnitChoice() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let units = [LengthUnit::Millimetre, LengthUnit::Inch];
    let picks = units
        .map(|unit| Pick::new(unit.key(), words::unit(unit)))
        .to_vec();
    let choose = move |key: String| {
        workshop
            .unit
            .set(LengthUnit::from_key(&key).unwrap_or_default())
    };
    view! {
        <Choice label=words::lengths_in() picks=picks chosen=move || workshop.unit.get().key().to_owned()
            on_choose=choose/>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_open_station_is_marked_and_all_seven_are_links() {
        let html = Owner::new().with(|| {
            let workshop = Workshop::open();
            provide_context(workshop);
            crate::frame::begin(workshop);
            view! { <Rail/> }.to_html()
        });
        assert_eq!(html.matches("class=\"station-link\"").count(), 7, "{html}");
        assert_eq!(html.matches("aria-current=\"page\"").count(), 1);
        assert!(html.contains("aria-label=\"Stations\""));
    }
}
