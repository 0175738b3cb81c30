//! The station's answer.

use leptos::prelude::*;
use tinwave_maker::entry::LengthUnit;
use tinwave_protocol::measure::Diagnosed;
use tinwave_words::measure::{self as words, Answer};

use crate::state::{Freshness, Workshop};
use crate::worker::TaskState;

/// What the measurement told, or what is waited for.
pub(super) fn answer(workshop: Workshop) -> Answer {
    let measuring = workshop.measuring();
    if measuring.measured.with(Option::is_none) {
        let due = measuring.logs.with(|logs| logs.present().is_due());
        return if due {
            words::measure_again()
        } else {
            words::bring_one()
        };
    }
    let unit = workshop.unit.get();
    measuring.diagnosing.state().with(|state| match state {
        TaskState::Done(found) => told(workshop, found, unit),
        TaskState::Working { .. } => words::looking(),
        TaskState::Refused => words::no_worker(),
        TaskState::Idle if workshop.answers.freshness.get() == Freshness::Final => words::looking(),
        TaskState::Idle => words::prediction_first(),
    })
}

fn told(workshop: Workshop, found: &Diagnosed, unit: LengthUnit) -> Answer {
    match found {
        Diagnosed::Found(diagnosis) => words::found(diagnosis, unit),
        Diagnosed::NoPoint { range_hz } => words::no_point(*range_hz),
        Diagnosed::NotComputed => words::not_computed(),
        Diagnosed::TooFew => {
            let measuring = workshop.measuring();
            let best = measuring.measured_figures().best;
            best.map_or_else(words::not_computed, |(hz, vswr)| {
                words::too_few(hz, vswr, predicted_at(&measuring.predicted.get(), hz))
            })
        }
    }
}

/// The predicted VSWR at a frequency, along straight lines between its points.
pub(super) fn predicted_at(curve: &[(f64, f64)], hz: f64) -> Option<f64> {
    let after = curve.partition_point(|point| point.0 < hz);
    let right = curve.get(after)?;
    if right.0 == hz {
        return Some(right.1);
    }
    let left = curve.get(after.checked_sub(1)?)?;
    let part = (hz - left.0) / (right.0 - left.0);
    Some(left.1 + part * (right.1 - left.1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::{Brought, Source};
    use tinwave_core::diagnosis::Measurement;

    #[test]
    fn between_its_points_a_prediction_runs_straight() {
        let curve = [(1.0, 1.0), (3.0, 2.0)];
        assert_eq!(predicted_at(&curve, 2.0), Some(1.5));
        assert_eq!(predicted_at(&curve, 3.0), Some(2.0));
        assert_eq!(predicted_at(&curve, 3.5), None);
        assert_eq!(predicted_at(&curve, 0.5), None);
    }

    #[test]
    fn without_a_measurement_one_is_asked_for_and_with_one_it_is_compared() {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            assert_eq!(answer(workshop), words::bring_one());
            let reading = Measurement::from_best(2.44e9, 1.6).ok();
            workshop.measuring().bring(Brought {
                name: "one".into(),
                source: Source::ByHand(
                    reading.unwrap_or(Measurement::Magnitude(Vec::new())),
                    false,
                ),
            });
            // The outside of the can is not solved on the host.
            assert_eq!(answer(workshop), words::prediction_first());
            let figures = workshop.measuring().measured_figures();
            assert!(
                figures
                    .best
                    .is_some_and(|(hz, vswr)| hz == 2.44e9 && (vswr - 1.6).abs() < 1e-9)
            );
        });
    }
}
