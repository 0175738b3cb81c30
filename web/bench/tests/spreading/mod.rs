//! What the tests of tolerances and screws share.
#![allow(dead_code, reason = "each test program uses its share")]

use crate::common::{DESIGN, answer};
use tinwave_bench::Reply;
use tinwave_bench::outsides::outside_of;
use tinwave_bench::whole::whole_can;
use tinwave_core::design::Design;
use tinwave_core::dimension::Dimension;
use tinwave_core::match_band::band_frequencies;

pub(crate) const MARKUP: &str = include_str!("../../parts/spread.html");

pub(crate) const FIELDS: [(Dimension, &str); 7] = [
    (Dimension::ProbeLength, "spread-length"),
    (Dimension::BackshortDistance, "spread-distance"),
    (Dimension::InsideDiameter, "spread-diameter"),
    (Dimension::HoleDiameter, "spread-hole"),
    (Dimension::ShuntCapacitance, "spread-capacitance"),
    (Dimension::OpenLength, "spread-open"),
    (Dimension::WireDiameter, "spread-wire"),
];

pub(crate) fn ask(entries: &[(&str, &str)]) -> Reply {
    answer("spread", DESIGN, entries)
}

/// The value of a result in a place.
pub(crate) fn value(reply: &Reply, place: &str, what: &str) -> String {
    let markup = reply.get(&["#", place].concat()).expect("a place");
    let (_, rest) = markup
        .split_once(&[">", what, "</dt><dd><span class=\"value\">"].concat())
        .unwrap_or_else(|| panic!("no “{what}” in {markup}"));
    rest.split('<').next().unwrap_or_default().to_owned()
}

/// Largest VSWR over the band of a whole can.
pub(crate) fn worst(design: &Design, points: u32) -> f64 {
    let can = whole_can(design, outside_of(design).as_ref()).expect("possible");
    band_frequencies(design.band, points)
        .into_iter()
        .map(|khz| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr)
        .fold(1.0, f64::max)
}

/// A can that is far from its best, with a wall and a recess.
pub(crate) const POOR: &str = "v=1&n=Mill&b=2401-2483.5&d=87&l=190&w=0.25&r=3&pw=1.29&pl=27&pd=38";
