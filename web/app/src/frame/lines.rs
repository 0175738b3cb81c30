//! The live line below each station's name: what it has to tell, while another is open.

use leptos::prelude::*;
use tinwave_core::grade::Grade;
use tinwave_maker::station::Station;
use tinwave_maker::workpiece::{Cut, Workpiece};
use tinwave_words::frame as words;

use crate::reactive::memo;
use crate::state::Workshop;

/// A cut whose VSWR is so many times the best one's is told of.
const MUCH_WORSE: f64 = 1.25;

/// A line that a station has said, and the work that it was said of.
#[derive(Clone, Default)]
struct SaidLine {
    text: String,
    of: Option<Workpiece>,
}

/// The stations' lines. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Lines {
    workshop: Workshop,
    said: RwSignal<[SaidLine; 7]>,
    /// Lines of the stations whose state opens late.
    followed: RwSignal<[Option<Memo<String>>; 7]>,
}

impl Lines {
    pub(crate) fn new(workshop: Workshop) -> Self {
        Self {
            workshop,
            said: RwSignal::new(Default::default()),
            followed: RwSignal::new([None; 7]),
        }
    }

    /// Whether a station's line follows a state of its own.
    #[must_use]
    pub fn follows(self, station: Station) -> bool {
        self.followed
            .with_untracked(|followed| followed[place(station)].is_some())
    }

    /// A station's line that follows a state of its own, from now on.
    pub fn follow(self, station: Station, line: impl Fn() -> String + Send + Sync + 'static) {
        let line = self.workshop.for_good(|| memo(line));
        self.followed
            .update(|followed| followed[place(station)] = Some(line));
    }

    /// A station says its line itself: what only it knows (the step of the work, what
    /// the measurement found). It holds as long as the work stays as it is.
    pub fn say(self, station: Station, text: impl Into<String>) {
        let line = SaidLine {
            text: text.into(),
            of: Some(self.workshop.work.get_untracked()),
        };
        self.said.update(|said| said[place(station)] = line);
    }

    /// The line of a station.
    #[must_use]
    pub fn of(self, station: Station) -> String {
        let said = self.said.with(|said| {
            let line = &said[place(station)];
            let of = line.of.as_ref()?;
            self.workshop
                .work
                .with(|work| work == of)
                .then(|| line.text.clone())
        });
        said.unwrap_or_else(|| self.worked_out(station))
    }

    fn worked_out(self, station: Station) -> String {
        let answers = self.workshop.answers;
        let grade = answers.graded.with(|graded| graded.grade);
        let does = grade != Grade::WillNotDo;
        match station {
            Station::Can => {
                let diameter = self
                    .workshop
                    .work
                    .with(|work| work.design.can.inside_diameter_um);
                words::line_can(diameter, grade, self.workshop.unit.get())
            }
            Station::Shelf => {
                words::line_shelf(self.workshop.memory.kept.with(|kept| kept.saved.len()))
            }
            Station::Feed if does => self.feed(),
            Station::Feed => words::line_no_cut().to_owned(),
            Station::Beam if does => self.beam(),
            Station::Make if does => words::line_make().to_owned(),
            Station::Link => self.followed(station),
            Station::Measure if does => self.followed(station),
            _ => words::line_waits(station).to_owned(),
        }
    }

    fn followed(self, station: Station) -> String {
        let line = self.followed.with(|followed| followed[place(station)]);
        line.map_or_else(
            || words::line_not_opened(station).to_owned(),
            |line| line.get(),
        )
    }

    fn feed(self) -> String {
        let answers = self.workshop.answers;
        let (length_um, as_cut) = self
            .workshop
            .work
            .with(|work| (work.design.probe.length_um, work.cut == Cut::AsCut));
        let vswr = answers.analysis.with(|analysis| {
            let matched = analysis.as_ref()?.match_summary.as_ref()?;
            Some(matched.worst_vswr_in_band)
        });
        let Some(vswr) = vswr else {
            return words::line_no_cut().to_owned();
        };
        let best = answers.best.with(|best| best.map(|best| best.worst_vswr));
        let better = best.filter(|best| as_cut && vswr > best * MUCH_WORSE);
        words::line_feed(length_um, vswr, better, self.workshop.unit.get())
    }

    fn beam(self) -> String {
        self.workshop.answers.analysis.with(|analysis| {
            let of_can = analysis
                .as_ref()
                .and_then(|analysis| analysis.true_beam.as_ref());
            let approximate = analysis
                .as_ref()
                .and_then(|analysis| analysis.beam.as_ref());
            if let Some(beam) = of_can {
                let figures = &beam.figures;
                let widths = figures.beamwidth_e_deg.zip(figures.beamwidth_h_deg);
                words::line_beam(figures.realised_gain_dbi, widths)
            } else if let Some(beam) = approximate {
                words::line_beam(
                    beam.realised_gain_dbi.unwrap_or(beam.directivity_dbi),
                    Some((beam.beamwidth_e_deg, beam.beamwidth_h_deg)),
                )
            } else {
                words::line_waits(Station::Beam).to_owned()
            }
        })
    }
}

fn place(station: Station) -> usize {
    Station::ALL
        .iter()
        .position(|of| *of == station)
        .unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_core::design_error::Field;
    use tinwave_maker::history::Change;

    #[test]
    fn what_a_station_said_holds_until_the_work_changes() {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            let lines = Lines::new(workshop);
            let before = lines.of(Station::Make);
            lines.say(Station::Make, "Step 2 of 7");
            assert_eq!(lines.of(Station::Make), "Step 2 of 7");
            workshop.edit(Change::Field(Field::OpenLength), |work| {
                work.design.can.open_length_um += 1_000;
            });
            assert_eq!(lines.of(Station::Make), before);
        });
    }

    #[test]
    fn a_can_that_will_not_do_has_no_cut_to_tell_of() {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            let lines = Lines::new(workshop);
            workshop.edit(Change::Field(Field::InsideDiameter), |work| {
                work.design.can.inside_diameter_um = 40_000;
            });
            assert_eq!(lines.of(Station::Feed), words::line_no_cut());
            assert_eq!(lines.of(Station::Beam), words::line_waits(Station::Beam));
        });
    }
}
