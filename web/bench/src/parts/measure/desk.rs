//! The present fit and the advice on it, kept for the next question.

use std::cell::RefCell;

use tinwave_core::design::Design;
use tinwave_core::diagnosis::{Advice, AdviceSteps, Conclusion, Diagnosis, DiagnosisError};
use tinwave_web::link;

use super::entered::Entered;
use super::find;
use super::log::{Log, Prior};
use crate::outsides::outside_of;
use crate::request::Request;

/// A measurement that was weighed.
#[derive(Clone, Debug)]
pub(super) struct Found {
    /// Tells this measurement from another.
    pub(super) mark: String,
    pub(super) diagnosis: Result<Diagnosis, DiagnosisError>,
    pub(super) prior: Prior,
}

impl Found {
    /// What was found, where it explains the measurement: the rest is no ground to
    /// stand on.
    pub(super) fn told(&self) -> Option<&Diagnosis> {
        let diagnosis = self.diagnosis.as_ref().ok()?;
        (diagnosis.conclusion != Conclusion::Unexplained).then_some(diagnosis)
    }
}

/// How far the advice has come.
#[derive(Clone, Debug, Default)]
pub(super) enum Stage {
    #[default]
    Wanted,
    /// Being worked out.
    Begun,
    /// Stopped by the maker.
    Stopped,
    /// Nothing can be advised.
    Impossible,
    Ready(Box<Advice>),
}

#[derive(Default)]
struct Desk {
    /// Everything that the fit depends on.
    key: String,
    found: Option<Found>,
    stage: Stage,
}

thread_local! {
    static DESK: RefCell<Desk> = RefCell::new(Desk::default());
}

/// The design's link without its name, which changes nothing.
pub(super) fn nameless_link(request: &Request) -> String {
    let mut work = request.work.clone();
    work.design.name.clear();
    link::encode(&work)
}

/// What was measured, as entered.
const MEASUREMENT: [&str; 7] = ["source", "file", "port", "table", "column", "best", "vswr"];

fn key(request: &Request, prior: &Prior) -> String {
    let mut key = nameless_link(request);
    let fields = MEASUREMENT.map(|field| request.get(field));
    for text in fields.iter().chain(&[request.get("care"), &prior.text]) {
        key.push('\n');
        key.push_str(text);
    }
    key
}

/// A few letters that tell a measurement from another: FNV-1a, 64 bits (G. Fowler,
/// L. C. Noll, P. Vo, *The FNV Non-Cryptographic Hash Algorithm*, from memory).
fn mark_of(request: &Request) -> String {
    let mut hash = 0xcbf2_9ce4_8422_2325_u64;
    for field in MEASUREMENT {
        for byte in request.get(field).bytes().chain([b'\n']) {
            hash = (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
    let digit = |shift: u32| char::from_digit((hash >> shift) as u32 & 15, 16);
    (0..64).step_by(4).filter_map(digit).collect()
}

/// The fit of the present measurement: kept, or made now.
pub(super) fn found(request: &Request, entered: &Entered, log: &Log) -> Found {
    let mark = mark_of(request);
    let prior = log.prior(request, &mark);
    let key = key(request, &prior);
    DESK.with_borrow_mut(|desk| {
        if let Some(found) = desk.found.as_ref().filter(|_| desk.key == key) {
            return found.clone();
        }
        let found = Found {
            mark,
            diagnosis: find::find(request, entered, &prior.knowledge),
            prior,
        };
        *desk = Desk {
            key,
            found: Some(found.clone()),
            stage: Stage::Wanted,
        };
        found
    })
}

pub(super) fn stage() -> Stage {
    DESK.with_borrow(|desk| desk.stage.clone())
}

pub(super) fn set_stage(stage: Stage) {
    DESK.with_borrow_mut(|desk| desk.stage = stage);
}

/// The job in hand was dropped; the advice is still wanted.
pub(super) fn drop_job() {
    if matches!(stage(), Stage::Begun) {
        set_stage(Stage::Wanted);
    }
}

/// What the advice in hand is for.
pub(super) fn present_key() -> String {
    DESK.with_borrow(|desk| desk.key.clone())
}

/// The fit on the desk, if it is of this question's design.
pub(super) fn present(request: &Request) -> Option<Diagnosis> {
    DESK.with_borrow(|desk| {
        let same = desk.key.split('\n').next() == Some(nameless_link(request).as_str());
        let found = desk.found.as_ref().filter(|_| same)?;
        found.told().cloned()
    })
}

/// The can as it most likely is.
pub(super) fn as_built(request: &Request, diagnosis: &Diagnosis) -> Option<Design> {
    let design = request.design();
    let steps = AdviceSteps::new(design, outside_of(design).as_ref(), diagnosis).ok()?;
    let mut built = steps.finish().as_built;
    built.name.clone_from(&design.name);
    Some(built)
}
