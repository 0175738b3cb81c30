//! What was measured on the can, what it told, and the can's log.

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_core::complex::Complex;
use tinwave_core::design::{Band, Design, Sweep};
use tinwave_core::diagnosis::{Advice, Conclusion, Diagnosis, Measurement, remove_port_length};
use tinwave_core::reflection::vswr;
use tinwave_maker::can_log::{CanLogs, Figures, LOGS_KEY, Prior, Told, milli};
use tinwave_maker::measured::{CurveFigures, between, curve_figures, mark_of};
use tinwave_maker::workpiece::Workpiece;
use tinwave_protocol::measure::{Advise, Diagnose, Diagnosed, FileRead, FileRefused, ReadFile};

use super::{Answers, Freshness};
use crate::browser;
use crate::reactive::{effect, memo};
use crate::worker::{Task, TaskState};

/// Most points that charts are given.
const MOST_SHOWN: usize = 1_001;

/// A measurement as charts show it.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// Frequency in Hz and reflection against the design's reference. Where no phase was
    /// measured its magnitude counts alone.
    pub points: Vec<(f64, Complex)>,
    /// Whether phase was measured: only then it belongs on a Smith chart.
    pub has_phase: bool,
    /// What it is called.
    pub name: String,
}

/// Where a measurement is from.
#[derive(Clone, Debug, PartialEq)]
pub enum Source {
    /// An analyser's file.
    File(FileRead),
    /// A table by hand, or one reading; whether values below zero were turned.
    ByHand(Measurement, bool),
}

/// A measurement that was brought.
#[derive(Clone, Debug, PartialEq)]
pub struct Brought {
    /// What it is called.
    pub name: String,
    /// Where it is from.
    pub source: Source,
}

impl Brought {
    /// The measurement at a port (from 0), against a reference, ohm.
    fn measurement(&self, port: usize, reference_ohm: f64) -> Measurement {
        match &self.source {
            Source::ByHand(measurement, _) => measurement.clone(),
            Source::File(read) => {
                let points = read.ports.get(port).or_else(|| read.ports.first());
                let step =
                    (reference_ohm - read.reference_ohm) / (reference_ohm + read.reference_ohm);
                let against = |s: Complex| (s - step) / (Complex::ONE - s.scale(step));
                let points = points.into_iter().flatten();
                Measurement::Reflection(points.map(|(hz, s)| (*hz, against(*s))).collect())
            }
        }
    }

    /// Ports to choose from.
    #[must_use]
    pub const fn ports(&self) -> usize {
        match &self.source {
            Source::File(read) => read.ports.len(),
            Source::ByHand(..) => 1,
        }
    }
}

/// How far readings can be trusted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Trust {
    /// An analyser, calibrated at the plug.
    #[default]
    Calibrated,
    /// A hand-held one, roughly calibrated.
    Rough,
    /// A bridge, or a meter's needle.
    Needle,
}

impl Trust {
    /// Every choice.
    pub const ALL: [Self; 3] = [Self::Calibrated, Self::Rough, Self::Needle];

    /// Standard deviation of the reflection. Common practice, no source.
    #[must_use]
    pub const fn noise(self) -> f64 {
        match self {
            Self::Calibrated => 0.01,
            Self::Rough => 0.03,
            Self::Needle => 0.08,
        }
    }
}

/// A file that was not taken.
#[derive(Clone, Debug, PartialEq)]
pub struct NotTaken {
    /// Its name.
    pub name: String,
    /// Why.
    pub why: FileRefused,
}

/// The measurement, and what follows from it. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Measuring {
    /// What was brought.
    pub brought: RwSignal<Option<Brought>>,
    /// The port with the can on it, from 0.
    pub port: RwSignal<usize>,
    /// How far it can be trusted.
    pub trust: RwSignal<Trust>,
    /// Whether the port's length is taken out of what the Smith chart shows.
    pub take_out: RwSignal<bool>,
    /// A file that was not taken.
    pub not_taken: RwSignal<Option<NotTaken>>,
    /// The logs of cans.
    pub logs: RwSignal<CanLogs>,
    /// The reading of a file.
    pub reading: Task<Result<FileRead, FileRefused>>,
    /// What is off.
    pub diagnosing: Task<Diagnosed>,
    /// What to do.
    pub advising: Task<Option<Advice>>,
    /// The measurement against the design's reference.
    pub measurement: Memo<Option<Arc<Measurement>>>,
    /// The same for charts.
    pub measured: Memo<Option<Measured>>,
    /// What was known of the can before it.
    pub prior: Memo<Option<Prior>>,
    /// VSWR over frequency, Hz: as measured within the sweep.
    pub curve: Memo<Vec<(f64, f64)>>,
    /// The same for the chart: from end to end of it, where it was measured so far.
    pub drawn: Memo<Vec<(f64, f64)>>,
    /// VSWR over frequency, Hz, as predicted.
    pub predicted: Memo<Vec<(f64, f64)>>,
    mark: Memo<String>,
    question: Memo<Option<Diagnose>>,
    work: Memo<Workpiece>,
}

impl Measuring {
    pub(super) fn open(work: Memo<Workpiece>, answers: Answers) -> Self {
        let brought = RwSignal::new(None::<Brought>);
        let port = RwSignal::new(0);
        let trust = RwSignal::new(Trust::default());
        let take_out = RwSignal::new(false);
        let kept = browser::stored(LOGS_KEY).unwrap_or_default();
        let mut logs = CanLogs::read(&kept);
        work.with_untracked(|work| logs.follow(work));
        let logs = RwSignal::new(logs);
        let diagnosing = Task::new();
        let reference = memo(move || work.with(|work| reference_ohm(&work.design)));
        let sweep = memo(move || work.with(|work| work.design.effective_sweep()));
        let measurement = memo(move || {
            let (port, reference) = (port.get(), reference.get());
            brought.with(|brought| {
                let brought = brought.as_ref()?;
                Some(Arc::new(brought.measurement(port, reference)))
            })
        });
        let mark = memo(move || {
            let measurement = measurement.get();
            measurement.map_or_else(String::new, |measurement| mark_of(values(&measurement)))
        });
        let prior = memo(move || {
            let mark = mark.get();
            if mark.is_empty() {
                return None;
            }
            let design = work.with(|work| nameless(&work.design));
            Some(logs.with(|logs| logs.present().prior(&design, &mark)))
        });
        let question = memo(move || {
            let measurement = measurement.get()?;
            if !answers.has_cut() || answers.freshness.get() != Freshness::Final {
                return None;
            }
            Some(Diagnose {
                design: work.with(|work| nameless(&work.design)),
                measurement: Measurement::clone(&measurement),
                noise: trust.get().noise(),
                knowledge: prior.get()?.knowledge,
            })
        });
        let measured = memo(move || {
            let measurement = measurement.get()?;
            let name = brought.with(|brought| brought.as_ref().map(|one| one.name.clone()))?;
            let length = take_out.get().then(|| port_length(diagnosing)).flatten();
            Some(for_charts(&measurement, sweep.get(), length, name))
        });
        let curve = memo(move || {
            measurement.get().map_or_else(Vec::new, |measurement| {
                for_charts(&measurement, sweep.get(), None, String::new())
                    .points
                    .into_iter()
                    .filter(|(_, s)| s.is_finite())
                    .map(|(hz, s)| (hz, vswr(s.abs())))
                    .collect()
            })
        });
        let drawn = memo(move || {
            let measurement = measurement.get();
            measurement.map_or_else(Vec::new, |measurement| for_chart(&measurement, sweep.get()))
        });
        let predicted = memo(move || {
            answers.analysis.with(|analysis| {
                let sweep = analysis.iter().flat_map(|analysis| &analysis.sweep);
                let points = sweep.filter_map(|point| {
                    Some((f64::from(point.frequency_khz) * 1e3, point.at?.vswr))
                });
                points.collect()
            })
        });
        let measuring = Self {
            brought,
            port,
            trust,
            take_out,
            not_taken: RwSignal::new(None),
            logs,
            reading: Task::new(),
            diagnosing,
            advising: Task::new(),
            measurement,
            measured,
            prior,
            curve,
            drawn,
            predicted,
            mark,
            question,
            work,
        };
        measuring.follow();
        measuring
    }

    /// Keeps the log, asks the worker what is off, and what to do.
    fn follow(self) {
        effect(move || {
            let mut next = self.logs.get_untracked();
            self.work.with(|work| next.follow(work));
            if self.logs.with_untracked(|logs| *logs != next) {
                self.logs.set(next);
            }
        });
        Effect::new(move |before: Option<String>| {
            let text = self.logs.with(CanLogs::write);
            if before.is_some_and(|before| before != text) {
                browser::store(LOGS_KEY, &text);
            }
            text
        });
        effect(move || {
            self.advising.clear();
            match self.question.get() {
                Some(question) => {
                    let design = question.design.clone();
                    self.diagnosing.run_then(question, move |found| {
                        if let Some(diagnosis) = explained(found) {
                            self.advise_on(design.clone(), diagnosis.clone());
                        }
                    });
                }
                None => self.diagnosing.clear(),
            }
        });
    }

    fn advise_on(self, design: Design, diagnosis: Diagnosis) {
        self.advising.run(Advise { design, diagnosis });
    }

    /// Works out what to do, after that was stopped.
    pub fn advise(self) {
        let design = self.work.with_untracked(|work| nameless(&work.design));
        let found = self.diagnosing.state();
        let diagnosis = found.with_untracked(|found| found.answer().and_then(explained).cloned());
        if let Some(diagnosis) = diagnosis {
            self.advise_on(design, diagnosis);
        }
    }

    /// Reads a file; what was there before stays until it is read, and if it can't be.
    pub fn read_file(self, name: String, bytes: Vec<u8>) {
        self.not_taken.set(None);
        let question = ReadFile {
            name: name.clone(),
            bytes,
            reference_ohm: self.work.with_untracked(|work| reference_ohm(&work.design)),
        };
        self.reading.run_then(question, move |read| match read {
            Ok(read) => self.bring(Brought {
                name: name.clone(),
                source: Source::File(read.clone()),
            }),
            Err(why) => self.not_taken.set(Some(NotTaken {
                name: name.clone(),
                why: why.clone(),
            })),
        });
    }

    /// Takes a measurement in place of the one before.
    pub fn bring(self, brought: Brought) {
        self.not_taken.set(None);
        self.port.set(0);
        self.take_out.set(false);
        self.brought.set(Some(brought));
    }

    /// Puts the measurement away.
    pub fn put_away(self) {
        self.brought.set(None);
        self.not_taken.set(None);
    }

    /// What was found of the present measurement.
    #[must_use]
    pub fn found(self) -> Option<Diagnosed> {
        self.diagnosing
            .state()
            .with(|state| state.answer().cloned())
    }

    /// The same where it is explained: the rest is no ground to stand on.
    #[must_use]
    pub fn explained(self) -> Option<Diagnosis> {
        let state = self.diagnosing.state();
        state.with(|state| state.answer().and_then(explained).cloned())
    }

    /// The advice, once it is there.
    #[must_use]
    pub fn advice(self) -> Option<Advice> {
        let state = self.advising.state();
        state.with(|state| state.answer().cloned().flatten())
    }

    /// Figures of the measured curve.
    #[must_use]
    pub fn measured_figures(self) -> CurveFigures {
        self.curve.with(|curve| curve_figures(self.band(), curve))
    }

    /// Figures of the predicted curve.
    #[must_use]
    pub fn predicted_figures(self) -> CurveFigures {
        self.predicted
            .with(|curve| curve_figures(self.band(), curve))
    }

    fn band(self) -> Band {
        self.work.with(|work| work.design.band)
    }

    /// Whether the measurement is in the log.
    #[must_use]
    pub fn is_noted(self) -> bool {
        let mark = self.mark.get();
        self.logs.with(|logs| logs.present().noted(&mark).is_some())
    }

    /// Standard deviations of the wire's length after earlier measurements, metres.
    #[must_use]
    pub fn earlier_sds_m(self) -> Vec<f64> {
        let mark = self.mark.get();
        self.logs.with(|logs| logs.present().length_sds_m(&mark))
    }

    /// The measurement as the log takes it.
    #[must_use]
    pub fn told(self) -> Option<Told> {
        untrack(|| {
            let prior = self.prior.get()?;
            let figures = self.measured_figures();
            let khz = |hz: f64| (hz / 1e3).round() as u32;
            Some(Told {
                mark: self.mark.get(),
                figures: Figures {
                    worst_milli: figures.worst_in_band.map(milli),
                    best: figures.best.map(|(hz, vswr)| (khz(hz), milli(vswr))),
                },
                diagnosis: self.explained(),
                before: prior.knowledge,
            })
        })
    }

    /// The line below the station's name.
    #[must_use]
    pub fn is_working(self) -> bool {
        self.diagnosing.state().with(TaskState::is_working)
    }
}

fn explained(found: &Diagnosed) -> Option<&Diagnosis> {
    match found {
        Diagnosed::Found(diagnosis) if diagnosis.conclusion != Conclusion::Unexplained => {
            Some(diagnosis)
        }
        _ => None,
    }
}

fn port_length(diagnosing: Task<Diagnosed>) -> Option<f64> {
    diagnosing.state().with(|state| {
        let found = state.answer().and_then(explained)?;
        found.port_length_m.map(|(length, _)| length)
    })
}

fn reference_ohm(design: &Design) -> f64 {
    f64::from(design.probe.reference_milliohm) / 1e3
}

/// A design without the name, which changes nothing.
fn nameless(design: &Design) -> Design {
    let mut design = design.clone();
    design.name.clear();
    design
}

/// All numbers of a measurement, a number of its kind first.
fn values(measurement: &Measurement) -> Vec<f64> {
    match measurement {
        Measurement::Reflection(points) => std::iter::once(0.0)
            .chain(points.iter().flat_map(|(hz, s)| [*hz, s.re, s.im]))
            .collect(),
        Measurement::Magnitude(points) => std::iter::once(1.0)
            .chain(points.iter().flat_map(|(hz, size)| [*hz, *size]))
            .collect(),
        Measurement::BestAt {
            frequency_hz,
            magnitude,
        } => vec![2.0, *frequency_hz, *magnitude],
    }
}

/// VSWR over frequency, Hz, from end to end of the sweep, so far as it was measured.
fn for_chart(measurement: &Measurement, sweep: Sweep) -> Vec<(f64, f64)> {
    let (points, _) = all_points(measurement);
    let curve: Vec<_> = points
        .into_iter()
        .filter(|(_, s)| s.is_finite())
        .map(|(hz, s)| (hz, vswr(s.abs())))
        .collect();
    if curve.len() == 1 {
        return curve;
    }
    let hertz = |khz: u32| f64::from(khz) * 1e3;
    between(
        hertz(sweep.low_khz),
        hertz(sweep.high_khz),
        &curve,
        MOST_SHOWN,
    )
}

/// All that was measured, and whether its phase was too.
fn all_points(measurement: &Measurement) -> (Vec<(f64, Complex)>, bool) {
    let real = |(hz, size): &(f64, f64)| (*hz, Complex::real(*size));
    match measurement {
        Measurement::Reflection(points) => (points.clone(), true),
        Measurement::Magnitude(points) => (points.iter().map(real).collect(), false),
        Measurement::BestAt {
            frequency_hz,
            magnitude,
        } => (vec![real(&(*frequency_hz, *magnitude))], false),
    }
}

/// What was measured within the sweep; a lone point counts wherever it is.
fn for_charts(
    measurement: &Measurement,
    sweep: Sweep,
    taken_out_m: Option<f64>,
    name: String,
) -> Measured {
    let (points, has_phase) = all_points(measurement);
    let points = match taken_out_m {
        Some(length) if has_phase => remove_port_length(&points, length),
        _ => points,
    };
    let range = f64::from(sweep.low_khz) * 1e3..=f64::from(sweep.high_khz) * 1e3;
    let is_lone = points.len() == 1;
    let shown: Vec<_> = points
        .into_iter()
        .filter(|(hz, _)| is_lone || range.contains(hz))
        .collect();
    let every = shown.len() / MOST_SHOWN + 1;
    Measured {
        points: shown.into_iter().step_by(every).collect(),
        has_phase,
        name,
    }
}
