//! What was done to the can: the drawing follows, the log tells it, and what is known
//! of the can goes on.

use tinwave_core::design::Design;
use tinwave_core::design_error::Field;
use tinwave_core::diagnosis::{Knowledge, Remedy};
use tinwave_core::dimension::Dimension;
use tinwave_web::workpiece::Workpiece;

use super::Case;
use super::desk::{self, Found, Stage};
use super::log_line::{Change, Done, Line};
use super::{cut_field, expected, known, measured_line};
use crate::reply::Reply;

/// How well a cut is measured, metres. Common practice, no source.
const CUT_SD_M: f64 = 1e-4;

/// What a press does to the can.
struct Plan {
    done: Done,
    amount_um: u32,
    work: Workpiece,
    /// Dimensions that were made anew, and how well.
    anew: Vec<(Dimension, f64)>,
    expected_vswr: Option<f64>,
}

impl Case<'_> {
    /// Does what was pressed; whether the can was changed.
    pub(super) fn change(&mut self, reply: &mut Reply) -> bool {
        let plan = match self.request.act() {
            "did-cut" => self.cut(reply),
            act if act.starts_with("remedy ") => self.remedy(),
            _ => return false,
        };
        let Some(plan) = plan else {
            return false;
        };
        self.note_measurement();
        let after = self.known_after(&plan);
        self.log.push(Line::Changed(Change {
            done: plan.done,
            amount_um: plan.amount_um,
            wire_um: plan.work.design.probe.length_um,
            expected_milli: plan.expected_vswr.map(measured_line::milli),
            after,
        }));
        reply.field("log-was", "");
        self.log.keep(self.request, reply);
        reply.take(&plan.work);
        true
    }

    fn cut(&self, reply: &mut Reply) -> Option<Plan> {
        let cut = match cut_field::cut_um(self.request) {
            Ok(cut) => cut,
            Err(error) => {
                reply.wrong("cut", &error.to_string());
                return None;
            }
        };
        let mut work = self.request.work.clone();
        let length = i64::from(work.design.probe.length_um) - i64::from(cut);
        if cut == 0 || work.set_field(Field::ProbeLength, length).is_err() {
            reply.wrong("cut", NO_WIRE);
            return None;
        }
        reply.wrong("cut", "");
        let built = self.built();
        let expected = built.and_then(|built| expected::after_cut(self.request, &built, cut));
        Some(Plan {
            done: Done::Cut,
            amount_um: cut,
            work,
            anew: vec![(Dimension::ProbeLength, CUT_SD_M)],
            expected_vswr: expected,
        })
    }

    fn remedy(&self) -> Option<Plan> {
        self.found.as_ref()?;
        let Stage::Ready(advice) = desk::stage() else {
            return None;
        };
        let index = self.request.act().strip_prefix("remedy ")?.parse::<usize>();
        let (remedy, vswr) = *advice.remedies.get(index.ok()?)?;
        let mut work = self.request.work.clone();
        let design = &mut work.design;
        let usual = |dimension: Dimension| (dimension, dimension.usual_tolerance());
        let (done, amount_um, anew) = match remedy {
            Remedy::Lengthen { by_um } => {
                design.probe.length_um = design.probe.length_um.saturating_add(by_um);
                let anew = vec![usual(Dimension::ProbeLength)];
                (Done::Lengthened, by_um, anew)
            }
            Remedy::Move {
                backshort_distance_um,
                length_um,
            } => {
                design.probe.backshort_distance_um = backshort_distance_um;
                design.probe.length_um = length_um;
                let anew = [Dimension::BackshortDistance, Dimension::ProbeLength];
                let anew = anew.map(usual).to_vec();
                (Done::Moved, backshort_distance_um, anew)
            }
            Remedy::AddScrew(screw) => {
                design.screws.push(screw);
                (Done::Screwed, screw.depth_um, Vec::new())
            }
            Remedy::Leave | Remedy::Trim { .. } => return None,
        };
        design.check().ok()?;
        Some(Plan {
            done,
            amount_um,
            work,
            anew,
            expected_vswr: Some(vswr),
        })
    }

    fn built(&self) -> Option<Design> {
        let diagnosis = self.found.as_ref()?.told()?;
        desk::as_built(self.request, diagnosis)
    }

    /// What is known of the changed can, as deviations from its changed drawing.
    fn known_after(&self, plan: &Plan) -> String {
        let drawn = self.request.design();
        let fitted = self.found.as_ref().and_then(Found::told);
        let last = self.log.lines.iter().rev().find_map(Line::after);
        let known = fitted.map(|fitted| fitted.knowledge.clone());
        let known = known.or_else(|| known::read(last?, drawn).ok());
        let Some(known) = known else {
            return String::new();
        };
        let known = plan.anew.iter().fold(known, |known, (dimension, sd)| {
            made_anew(known, *dimension, *sd, plan.done)
        });
        known::write(&known, &plan.work.design)
    }

    /// The drawing becomes the can as it was found.
    pub(super) fn redraw(&mut self, reply: &mut Reply) {
        let Some(built) = self.built().filter(|built| built.check().is_ok()) else {
            reply.text("redrawn", NOT_DRAWN);
            return;
        };
        reply.text("redrawn", "");
        if built == *self.request.design() {
            return;
        }
        self.note_measurement();
        let mut work = self.request.work.clone();
        work.design = built;
        self.log.push(Line::Changed(Change {
            done: Done::Redrawn,
            amount_um: 0,
            wire_um: work.design.probe.length_um,
            expected_milli: None,
            after: String::new(),
        }));
        reply.field("log-was", "");
        self.log.keep(self.request, reply);
        reply.take(&work);
    }
}

const NO_WIRE: &str = "That would leave no usable wire: the cut must be shorter than the wire.";
const NOT_DRAWN: &str = "That isn\u{2019}t drawn: the measurement isn\u{2019}t explained, or a dimension would be out of range.";

/// A cut or a longer wire adds its own error to what is known; a part made anew is
/// known as well as it was made.
fn made_anew(mut known: Knowledge, dimension: Dimension, sd: f64, done: Done) -> Knowledge {
    if done != Done::Moved {
        return known.after_change(dimension, sd);
    }
    let Some(place) = known.dimensions.iter().position(|d| *d == dimension) else {
        return known;
    };
    if let Some(mean) = known.means.get_mut(place) {
        *mean = 0.0;
    }
    for other in 0..known.dimensions.len() {
        let own = known.covariance.at(place, other);
        let wanted = if other == place { sd * sd } else { 0.0 };
        known.covariance.add(place, other, wanted - own);
        if other != place {
            known.covariance.add(other, place, -own);
        }
    }
    known
}
