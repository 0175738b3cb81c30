//! The marks of the mode ladder.

use super::dimension_line::figure_width;
use super::fixed_point::push_integer;
use super::frequency_axis::{FrequencyAxis, Tick};
use super::mode_rungs::{
    BOTTOM, HEIGHT, Ladder, MOST_RUNGS, MOST_TICKS, Rung, RungState, SIDE, TOP,
};
use super::path_text::PathText;
use super::scene::{Hatch, Mark, Scene};

/// Height of a bar.
const BAR: f64 = 11.0;
/// Where its middle lies in the rung.
const BAR_MIDDLE: f64 = 26.0;
/// Id of the pattern of unwanted modes.
const HATCH: &str = "pic-bar-hatch";

impl Ladder {
    /// The ladder's marks: the same ones for every can.
    #[must_use]
    pub fn scene(self) -> Scene {
        let bars = |wanted: fn(RungState) -> bool| bars(&self.rungs, &self.axis, wanted);
        let band =
            PathText::of_rectangle((self.band_x.0, TOP - 6.0), (self.band_x.1, BOTTOM + 6.0));
        let mut marks = vec![
            Mark::path("pic-band", band),
            Mark::path("pic-band-edge", band_edges(self.band_x)),
            Mark::path("pic-below", below(&self.rungs, &self.axis)),
            Mark::path(
                "pic-bar pic-bar-out",
                bars(|s| matches!(s, RungState::Blocked | RungState::StaysOut)),
            ),
            Mark::path(
                "pic-bar pic-bar-signal",
                bars(|s| matches!(s, RungState::Carries | RungState::CarriesPart)),
            ),
            Mark::hatched(
                "pic-bar pic-bar-unwanted",
                HATCH,
                bars(|s| matches!(s, RungState::Enters | RungState::Unwanted)),
            ),
            Mark::path("pic-thin", axis_lines(&self.axis, &self.ticks)),
            Mark::text(
                "pic-figure",
                "middle",
                (self.band_label_x, 13.0),
                self.band_words,
            ),
        ];
        let mut rungs = self.rungs.into_iter();
        for _ in 0..MOST_RUNGS {
            let Some(rung) = rungs.next() else {
                marks.extend([Mark::no_text(), Mark::no_text()]);
                continue;
            };
            let y = rung.y + 15.0;
            // Capitals are wider than figures.
            let after = SIDE + figure_width(&rung.name) * 1.12 + 5.0;
            marks.push(Mark::text("pic-figure", "start", (SIDE, y), rung.name));
            let mut said = rung.words;
            let width = figure_width(&said) + figure_width(&rung.margin);
            if after + width <= self.axis.right + SIDE {
                said.push_str(&rung.margin);
            }
            marks.push(Mark::text("pic-words", "start", (after, y), said));
        }
        let mut ticks = self.ticks.into_iter().enumerate();
        marks.extend((0..MOST_TICKS).map(|_| {
            ticks.next().map_or_else(Mark::no_text, |(i, tick)| {
                let mut text = String::new();
                push_integer(&mut text, tick.mhz);
                text.push_str(if i == 0 { " MHz" } else { "" });
                Mark::text("pic-words", "middle", (tick.x, HEIGHT - 5.0), text)
            })
        }));
        Scene {
            size: (self.axis.right + SIDE, HEIGHT),
            id: "pic-ladder",
            title: "Modes against the band",
            description: self.summary,
            hatch: Some(Hatch {
                id: HATCH,
                class: "pic-bar-hatch",
                pitch: "6",
                angle: "-45",
            }),
            marks,
        }
    }
}

fn band_edges((low, high): (f64, f64)) -> String {
    let mut path = PathText::new();
    for x in [low, high] {
        path.segment(x, TOP - 6.0, x, BOTTOM + 6.0);
    }
    path.into_text()
}

fn below(rungs: &[Rung], axis: &FrequencyAxis) -> String {
    let mut path = PathText::new();
    for rung in rungs {
        let y = rung.y + BAR_MIDDLE;
        path.segment(axis.left, y, rung.cutoff_x, y);
    }
    path.into_text()
}

/// Bars from the cutoff to the right end, where they stay open: the mode goes
/// on passing.
fn bars(rungs: &[Rung], axis: &FrequencyAxis, wanted: fn(RungState) -> bool) -> String {
    let mut path = PathText::new();
    let right = axis.right + SIDE;
    for rung in rungs.iter().filter(|rung| wanted(rung.state)) {
        let (top, bottom) = (
            rung.y + BAR_MIDDLE - BAR / 2.0,
            rung.y + BAR_MIDDLE + BAR / 2.0,
        );
        if rung.cutoff_x >= axis.right {
            continue;
        }
        path.polyline([
            (right, top),
            (rung.cutoff_x, top),
            (rung.cutoff_x, bottom),
            (right, bottom),
        ]);
    }
    path.into_text()
}

fn axis_lines(axis: &FrequencyAxis, ticks: &[Tick]) -> String {
    let mut path = PathText::new();
    let y = BOTTOM + 6.0;
    path.segment(axis.left, y, axis.right, y);
    for tick in ticks {
        path.segment(tick.x, y, tick.x, y + 5.0);
    }
    path.into_text()
}

#[cfg(test)]
mod tests {
    use crate::mode_rungs::Ladder;
    use tinwave_core::design::Band;
    use tinwave_core::verdict::ModeEntry;
    use tinwave_core::waveguide_mode::Mode;

    const BAND: Band = Band {
        low_khz: 2_401_000,
        high_khz: 2_483_500,
    };

    fn entry(mode: Mode, mhz: f64) -> ModeEntry {
        ModeEntry {
            mode,
            cutoff_hz: mhz * 1e6,
        }
    }

    #[test]
    fn every_can_has_the_same_marks() {
        let modes = [
            entry(Mode::TE11, 2_019.5),
            entry(Mode::TM01, 2_300.0),
            entry(Mode::TE21, 3_350.1),
        ];
        let tags = |modes: &[ModeEntry]| {
            let scene = Ladder::new(modes, BAND, 340.0).scene();
            let tags = scene.marks.iter().map(|m| (m.tag, m.attributes.len()));
            tags.collect::<Vec<_>>()
        };
        assert_eq!(tags(&modes), tags(&[]));
    }
}
