//! Line icons, drawn for this page.

use leptos::prelude::*;
use tinwave_maker::station::Station;

/// What an icon shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum IconName {
    /// The can, seen from its end.
    Can,
    /// The wire through the wall.
    Feed,
    /// A beam.
    Beam,
    /// A centre mark.
    Make,
    /// A dip on axes.
    Measure,
    /// Two masts.
    Link,
    /// A shelf.
    Shelf,
    /// One step back.
    Undo,
    /// One step forward.
    Redo,
    /// Pass it on.
    Share,
    /// The list of everything else.
    More,
    /// A fold.
    Chevron,
    /// Something to watch.
    Caution,
    /// Something to know.
    Note,
    /// The cut follows the best.
    Follows,
    /// The cut is made.
    Cut,
    /// A search.
    Search,
    /// Leave.
    Close,
    /// Less than it was.
    Down,
    /// More than it was.
    Up,
}

/// The icon of a station.
#[must_use]
pub const fn station_icon(station: Station) -> IconName {
    match station {
        Station::Can => IconName::Can,
        Station::Feed => IconName::Feed,
        Station::Beam => IconName::Beam,
        Station::Make => IconName::Make,
        Station::Measure => IconName::Measure,
        Station::Link => IconName::Link,
        Station::Shelf => IconName::Shelf,
    }
}

/// Lines, and what is filled or heavier, on a square of 32.
const fn strokes(name: IconName) -> (&'static str, &'static str) {
    match name {
        IconName::Can => (
            "M16 3.5a12.5 12.5 0 1 0 .01 0zM16 7a9 9 0 1 0 .01 0zM16 11.5a4.5 4.5 0 1 0 .01 0z",
            "",
        ),
        IconName::Feed => (
            "M2 19h10v4.5H2M30 19H20v4.5h10M24 14V4m-3 3.5L24 4l3 3.5",
            "M16 5v24",
        ),
        IconName::Beam => (
            "M8 16C13 6 30 7 30 16S13 26 8 16zM8 16c-2-4-6-3.5-6 0s4 4 6 0z",
            "",
        ),
        IconName::Make => (
            "M16 8a8 8 0 1 0 .01 0zM16 2v10M16 20v10M2 16h10M20 16h10",
            "M16 15.9v.2",
        ),
        IconName::Measure => ("M4 3v25h25M16 28v-3", "M8 8c5 0 4 13 8 13s3-12 11-13"),
        IconName::Link => (
            "M5.5 29V9M26.5 29V9M2 29h28M5.5 3.5a2.7 2.7 0 1 0 .01 0zM26.5 3.5a2.7 2.7 0 1 0 .01 0zM11 6.200h2.5M15 6.200h2.5M19 6.200h2.5",
            "",
        ),
        IconName::Shelf => (
            "M6 6h9v18H6zM6 9.5h9M19 13h7v11h-7zM19 16h7M6 25v4M26 25v4",
            "M2 24.5h28",
        ),
        IconName::Undo => ("M12 8l-6 6 6 6M6.5 14H20a6 6 0 0 1 0 12h-6", ""),
        IconName::Redo => ("M20 8l6 6-6 6M25.5 14H12a6 6 0 0 0 0 12h6", ""),
        IconName::Share => ("M16 19V5m-5 5l5-5 5 5M8 15H6v12h20V15h-2", ""),
        IconName::More => ("M6 9h20M6 16h20M6 23h20", ""),
        IconName::Chevron => ("M8 12l8 8 8-8", ""),
        IconName::Caution => ("M16 5l13 22.5H3zM16 13v7", "M16 23.9v.2"),
        IconName::Note => ("M4 16h17m-6-6l6 6-6 6M27 6v20", ""),
        IconName::Follows => (
            "M16 9.5a6.5 6.5 0 1 0 .01 0zM16 3v6M16 23v6M3 16h6M23 16h6",
            "",
        ),
        IconName::Cut => ("M5 17l7.5 7.5L27 8", ""),
        IconName::Search => ("M14 5a9 9 0 1 0 .01 0zM20.5 20.5L28 28", ""),
        IconName::Close => ("M8 8l16 16M24 8L8 24", ""),
        IconName::Down => ("", "M8 11h16l-8 11z"),
        IconName::Up => ("", "M8 21h16l-8-11z"),
    }
}

/// An icon. It is never alone: a word stands beside it, or its button has a name.
///
/// ```ignore
/// view! { <Icon name=IconName::Caution/> }
/// ```
#[component]
pub fn Icon(
    /// Which.
    name: IconName,
) -> impl IntoView {
    let (line, heavy) = strokes(name);
    let class = match name {
        IconName::Down | IconName::Up => "icon filled",
        _ => "icon",
    };
    view! {
        <svg class=class viewBox="0 0 32 32" aria-hidden="true">
            <path d=line/>
            <path class="heavy" d=heavy/>
        </svg>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_station_has_an_icon_of_its_own() {
        let drawn = Station::ALL.map(|station| strokes(station_icon(station)));
        for (index, strokes) in drawn.iter().enumerate() {
            assert!(!drawn[index + 1..].contains(strokes));
        }
    }
}
