//! Measurements that were simulated.

#![allow(dead_code, reason = "each test program uses its share")]

use std::sync::Arc;

use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::diagnosis::{Advice, Diagnosis, Knowledge, Measurement, Remedy};
use tinwave_core::dimension::Dimension;
use tinwave_core::match_band::band_frequencies;
use tinwave_core::outside::OutsideSpectrum;
use tinwave_core::si::SiDesign;
use tinwave_core::whole_can::{CanBody, WholeCan, probe_geometry};
use tinwave_maker::link;
use tinwave_protocol::measure::{Advise, Diagnose, Diagnosed};
use tinwave_protocol::{Question, from_bytes};
use tinwave_worker::outsides::outside_of;
use tinwave_worker::work;

/// A can of 87 mm, 190 mm long.
pub(crate) const DESIGN: &str = "v=1&n=Orchard_gate&b=2401-2483.5&d=87&l=190&pw=1.29&pl=28.4&pd=45";
/// A can that is far from its best, with a wall and a recess.
pub(crate) const POOR: &str = "v=1&n=Mill&b=2401-2483.5&d=87&l=190&w=0.25&r=3&pw=1.29&pl=27&pd=38";

pub(crate) fn design(link: &str) -> Design {
    link::decode(link).expect("a good link").work.design
}

pub(crate) fn answer<Q: Question>(question: Q) -> Q::Answer {
    let bytes = work::begin(question.into_job()).run().expect("an end");
    from_bytes(&bytes).expect("an answer of its type")
}

/// The whole can, solved anew.
pub(crate) fn whole_can(design: &Design) -> WholeCan {
    let si = SiDesign::new(design);
    let outside: Option<Arc<OutsideSpectrum>> = outside_of(design);
    let body = CanBody::of(design, &si, outside.as_ref()).expect("a body");
    WholeCan::from_parts(body, &probe_geometry(&si), si.reference_ohm).expect("possible")
}

/// Reflection of a whole can, as an analyser would see it: simulated.
pub(crate) fn points(design: &Design, hz: impl Iterator<Item = f64>) -> Vec<(f64, Complex)> {
    let can = whole_can(design);
    hz.filter_map(|hz| Some((hz, can.match_at(hz).ok()?.reflection)))
        .collect()
}

pub(crate) fn sweep() -> impl Iterator<Item = f64> {
    (0..101).map(|i| 2_350e6 + 2e6 * f64::from(i))
}

/// The can of a design with a wire longer by so many micrometres.
pub(crate) fn with_wire(design: &Design, longer_um: i32) -> Design {
    let mut design = design.clone();
    design.probe.length_um = design.probe.length_um.saturating_add_signed(longer_um);
    design
}

/// A measurement that was simulated: a can with a wire longer by so many micrometres.
pub(crate) fn simulated(longer_um: i32) -> Measurement {
    Measurement::Reflection(points(&with_wire(&design(DESIGN), longer_um), sweep()))
}

/// Largest VSWR over the band of a whole can.
pub(crate) fn worst(design: &Design, points: u32) -> f64 {
    let can = whole_can(design);
    band_frequencies(design.band, points)
        .into_iter()
        .map(|khz| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr)
        .fold(1.0, f64::max)
}

pub(crate) fn ask(measurement: Measurement, noise: f64, knowledge: Knowledge) -> Diagnosed {
    answer(Diagnose {
        design: design(DESIGN),
        measurement,
        noise,
        knowledge,
    })
}

pub(crate) fn found(measurement: Measurement) -> Diagnosis {
    match ask(measurement, 0.01, Knowledge::usual()) {
        Diagnosed::Found(diagnosis) => diagnosis,
        other => panic!("{other:?}"),
    }
}

pub(crate) fn advice(diagnosis: &Diagnosis) -> Advice {
    let question = Advise {
        design: design(DESIGN),
        diagnosis: diagnosis.clone(),
    };
    answer(question).expect("advice")
}

/// Deviation of the wire's length and its standard deviation, metres.
pub(crate) fn length(diagnosis: &Diagnosis) -> (f64, f64) {
    let mut all = diagnosis.estimates.iter();
    let length = all.find(|estimate| estimate.dimension == Dimension::ProbeLength);
    length.map(|one| (one.change, one.sd)).expect("a length")
}

/// All that should come off, the safe step, and the VSWR to expect after all.
pub(crate) fn trim(advice: &Advice) -> Option<(u32, u32, f64)> {
    advice
        .remedies
        .iter()
        .find_map(|(remedy, vswr)| match remedy {
            Remedy::Trim { whole_um, safe_um } => Some((*whole_um, *safe_um, *vswr)),
            _ => None,
        })
}
