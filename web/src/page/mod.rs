//! The page: state, inputs, results.

mod band;
mod beam_part;
mod browser;
mod can;
mod cautions;
mod cut_part;
mod entries;
mod entry_field;
mod feed;
mod fit;
mod keeping;
mod matching;
mod opening;
mod parts;
mod pictures_part;
mod search;
mod state;
mod toolbar;
mod verdict_strip;

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use search::Search;
use state::Page;

/// Starts the page: takes the place of the static example in `#app`.
pub fn start() {
    std::panic::set_hook(Box::new(|info| browser::report_panic(&info.to_string())));
    let Some(place) = document().get_element_by_id("app") else {
        return;
    };
    place.set_inner_html("");
    let mounted = mount_to(place.unchecked_into(), || view(opening::open()));
    mounted.forget();
}

fn view(page: Page) -> AnyView {
    opening::follow(page);
    let search = Search::new(page);
    let pictures = pictures_part::Pictures::new(page, search);
    let body = vec![
        can::can_section(page),
        band::band_section(page, pictures.in_section(pictures_part::Which::Ladder)),
        feed::feed_section(page),
        matching::match_section(
            page,
            search,
            pictures.in_section(pictures_part::Which::Charts),
        ),
        beam_part::beam_section(page),
        fit::fit_section(page, search),
        cut_part::cut_section(page, search),
        cautions::caution_section(page),
        keeping::keeping_section(page),
    ];
    view! {
        {verdict_strip::verdict_strip(page)}
        {verdict_strip::announcer(page)}
        {opening::notice(page)}
        {toolbar::toolbar(page)}
        <div class="work" class:stale=page.stale()>
            <div class="pictures">{pictures.column()}</div>
            <div class="parts">{body}</div>
        </div>
    }
    .into_any()
}
