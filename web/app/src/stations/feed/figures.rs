//! The four figures: worst VSWR, what comes back, leeway of length and of distance.

use leptos::prelude::*;
use tinwave_core::best_cut::Slack;
use tinwave_protocol::matters::Leeway;
use tinwave_words::feed as words;
use tinwave_words::{Shown, why};

use super::known::Feed;
use crate::kit::{Figure, FigureState, FigureText, Figures, WhyText};
use crate::state::Freshness;

/// The station's figures.
#[component]
pub fn FeedFigures() -> impl IntoView {
    let feed = expect_context::<Feed>();
    let comes_back_why = {
        let (how, sure) = words::comes_back_why();
        WhyText {
            how: how.into(),
            sure: sure.into(),
            source: String::new(),
        }
    };
    view! {
        <Figures>
            <Figure label=words::worst_label() text=move || worst(feed) why=WhyText::from(&why(Shown::Vswr))/>
            <Figure label=words::comes_back_label() text=move || comes_back(feed) why=comes_back_why/>
            <Figure label=words::length_leeway_label() text=move || leeway(feed, Way::Length) why=leeway_why()/>
            <Figure label=words::distance_leeway_label() text=move || leeway(feed, Way::Distance) why=leeway_why()/>
        </Figures>
    }
}

fn leeway_why() -> WhyText {
    let (how, sure) = words::leeway_why();
    WhyText {
        how: how.into(),
        sure: sure.into(),
        source: String::new(),
    }
}

/// How sure the figures of the present cut are, and what to say of it.
fn with_freshness(feed: Feed, mut text: FigureText) -> FigureText {
    match feed.workshop.answers.freshness.get() {
        Freshness::Final => {}
        Freshness::Estimate => text.state = FigureState::Estimate,
        Freshness::Pending => {
            text.state = FigureState::Estimate;
            words::of_the_cut_before().clone_into(&mut text.note);
        }
    }
    text
}

fn worst(feed: Feed) -> FigureText {
    let Some(summary) = feed.summary() else {
        return FigureText::waiting(words::no_match());
    };
    let band = feed.workshop.work.with(|work| work.design.band);
    let note = words::at_frequency(summary.worst_khz, band);
    let value = words::vswr(summary.worst_vswr_in_band);
    with_freshness(feed, FigureText::plain(value, "", note))
}

fn comes_back(feed: Feed) -> FigureText {
    let Some(summary) = feed.summary() else {
        return FigureText::waiting(words::no_match());
    };
    let value = words::comes_back(summary.worst_vswr_in_band);
    with_freshness(
        feed,
        FigureText::plain(value, "%", words::comes_back_note()),
    )
}

#[derive(Clone, Copy)]
enum Way {
    Length,
    Distance,
}

/// From the search where the cut is the best; else as it was worked out for this cut.
fn leeway(feed: Feed, way: Way) -> FigureText {
    let unit = feed.workshop.unit.get();
    if let Some(best) = feed.present_best() {
        let slack = match way {
            Way::Length => best.length_slack,
            Way::Distance => best.distance_slack,
        };
        if let Some((limit, (less, more))) = of_slack(slack) {
            let value = words::leeway((less, false), (more, false), unit);
            let text = FigureText::plain(value, unit.symbol(), words::leeway_note(limit));
            return with_freshness(feed, text);
        }
    }
    let Some(matters) = feed.matters() else {
        return FigureText::waiting(if feed.workshop.answers.is_awake() {
            words::waits_for_computation()
        } else {
            words::waits_for_touch()
        });
    };
    let found: Option<Leeway> = match way {
        Way::Length => matters.length,
        Way::Distance => matters.distance,
    };
    match found {
        Some(leeway) => {
            let (less, more) = (leeway.less, leeway.more);
            let value = words::leeway((less.um, less.at_least), (more.um, more.at_least), unit);
            let text = FigureText::plain(value, unit.symbol(), words::leeway_note(leeway.vswr));
            with_freshness(feed, text)
        }
        None => FigureText::plain(words::no_leeway(), "", words::no_leeway_note()),
    }
}

fn of_slack(slack: Slack) -> Option<(f64, (u32, u32))> {
    let good = slack.to_vswr_1_5.map(|allowance| (1.5, allowance));
    good.or(slack.to_vswr_2.map(|allowance| (2.0, allowance)))
}
