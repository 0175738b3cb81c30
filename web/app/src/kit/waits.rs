//! A station, or a part of one, that waits for another.

use leptos::prelude::*;
use tinwave_maker::station::Station;

use super::{Action, Empty, station_icon};
use crate::state::Workshop;

/// What is missing here, in one block, and the way to where it comes from.
///
/// ```ignore
/// view! { <Waits station=Station::Feed title="No cut for this can" text="Five modes pass …"
///     action="To the can" to=Station::Can/> }
/// ```
#[component]
pub fn Waits(
    /// The station that waits: its icon is shown.
    station: Station,
    /// What is missing.
    #[prop(into)]
    title: Signal<String>,
    /// Why, and when it comes.
    #[prop(into)]
    text: Signal<String>,
    /// What is on the button.
    #[prop(into)]
    action: Signal<String>,
    /// Where it leads.
    to: Station,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    view! {
        <Empty icon=station_icon(station) title text>
            <Action text=action on_press=move |()| workshop.go_to(to)/>
        </Empty>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_missing_stands_with_the_way_to_it() {
        let html = Owner::new().with(|| {
            provide_context(Workshop::open());
            view! {
                <Waits station=Station::Feed title="No cut for this can" text="Five modes pass."
                    action="To the can" to=Station::Can/>
            }
            .to_html()
        });
        assert!(
            html.contains("No cut for this can") && html.contains("To the can"),
            "{html}"
        );
    }
}
