//! Working out what to do, in steps, and doing it to the drawing.

use std::cell::RefCell;

use tinwave_core::diagnosis::{Advice, AdviceSteps, Diagnosis, Remedy};
use tinwave_web::entry::format_length_number;
use tinwave_web::link;

use super::{advice_words, known, log};
use crate::job::Job;
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;

/// What advice was asked for, and what came of it.
#[derive(Default)]
struct Desk {
    /// Everything that the advice depends on, as text.
    asked: String,
    found: Option<Diagnosis>,
    advice: Option<Advice>,
}

thread_local! {
    static DESK: RefCell<Desk> = RefCell::new(Desk::default());
}

/// What the advice depends on.
fn key(request: &Request) -> String {
    let fields = [
        "source", "file", "port", "table", "column", "best", "vswr", "care", "known",
    ];
    let mut key = link::encode(&request.work);
    for field in fields {
        key.push('\n');
        key.push_str(request.get(field));
    }
    key
}

/// Asks for advice on what was found, unless it is at hand or being worked out.
pub(super) fn want(request: &Request, found: Diagnosis, reply: &mut Reply) {
    let key = key(request);
    DESK.with_borrow_mut(|desk| {
        if desk.asked == key {
            if let Some(advice) = &desk.advice {
                reply.place("advice", advice_words::list(advice, request.unit));
            }
            return;
        }
        *desk = Desk {
            asked: key,
            found: Some(found),
            advice: None,
        };
        reply.text("advice", "");
        reply.begin("advice");
    });
}

/// What is known after the measurement and a cut that is right to 0.1 mm.
pub(super) fn known_after_cut() -> Option<String> {
    const CUT_SD_M: f64 = 1e-4;
    DESK.with_borrow(|desk| {
        let knowledge = desk.found.as_ref()?.knowledge.clone();
        let dimension = tinwave_core::dimension::Dimension::ProbeLength;
        Some(known::write(&knowledge.after_change(dimension, CUT_SD_M)))
    })
}

fn advice() -> Option<Advice> {
    DESK.with_borrow(|desk| desk.advice.clone())
}

/// The drawing becomes the can as it was found; its deviations are then expected to
/// be none.
pub(super) fn take_as_built(request: &Request, reply: &mut Reply) {
    let Some(advice) = advice() else {
        return;
    };
    let mut work = request.work.clone();
    let name = core::mem::take(&mut work.design.name);
    work.design = advice.as_built;
    work.design.name = name;
    reply.take(&work);
    let centred = DESK.with_borrow(|desk| {
        let mut knowledge = desk.found.as_ref()?.knowledge.clone();
        knowledge.means.fill(0.0);
        Some(known::write(&knowledge))
    });
    if let Some(centred) = centred {
        log::set_known(request, &centred, reply);
    }
}

/// Draws one of the remedies.
pub(super) fn take_remedy(request: &Request, reply: &mut Reply) {
    let index = request
        .act()
        .strip_prefix("remedy ")
        .and_then(|n| n.parse::<usize>().ok());
    let remedy = index.and_then(|index| advice()?.remedies.get(index).map(|(remedy, _)| *remedy));
    let mut work = request.work.clone();
    let design = &mut work.design;
    match remedy {
        Some(Remedy::Lengthen { by_um }) => {
            design.probe.length_um = design.probe.length_um.saturating_add(by_um);
        }
        Some(Remedy::Move {
            backshort_distance_um,
            length_um,
        }) => {
            design.probe.backshort_distance_um = backshort_distance_um;
            design.probe.length_um = length_um;
        }
        Some(Remedy::AddScrew(screw)) => design.screws.push(screw),
        _ => return,
    }
    if design.check().is_ok() {
        reply.take(&work);
    }
}

/// Progress is told in so many parts; the work in each is a few model evaluations.
const PARTS: u32 = 50;
const PIECES: u32 = 8;

struct AdviceJob {
    steps: Option<AdviceSteps>,
    unit: tinwave_web::entry::LengthUnit,
    key: String,
}

impl Job for AdviceJob {
    fn total(&self) -> u32 {
        PARTS
    }

    fn step(&mut self) {
        if let Some(steps) = &mut self.steps {
            for _ in 0..PIECES {
                if !steps.step() {
                    break;
                }
            }
        }
    }

    fn finish(self: Box<Self>) -> Reply {
        let mut reply = Reply::new();
        let Some(mut steps) = self.steps else {
            return reply;
        };
        while steps.step() {}
        let advice = steps.finish();
        reply.place("advice", advice_words::list(&advice, self.unit));
        if let Some(safe) = advice.remedies.iter().find_map(|(remedy, _)| match remedy {
            Remedy::Trim { safe_um, .. } => Some(*safe_um),
            _ => None,
        }) {
            reply.field("cut", &format_length_number(safe, self.unit));
        }
        DESK.with_borrow_mut(|desk| {
            if desk.asked == self.key {
                desk.advice = Some(advice);
            }
        });
        reply
    }
}

/// Begins the work for the measurement in hand.
pub(super) fn begin(request: &Request) -> Option<Box<dyn Job>> {
    let found = DESK.with_borrow(|desk| desk.found.clone())?;
    let design = request.design();
    let steps = AdviceSteps::new(design, outside_of(design).as_ref(), &found).ok();
    Some(Box::new(AdviceJob {
        steps,
        unit: request.unit,
        key: key(request),
    }))
}
