//! Measurements that were simulated, and what a part says of them.

#![allow(dead_code, reason = "each test program uses its share")]

use crate::common::{DESIGN, text, work};
use tinwave_bench::Reply;
use tinwave_bench::outsides::outside_of;
use tinwave_bench::whole::whole_can;
use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::diagnosis::with_port_length;
use tinwave_core::match_band::band_frequencies;
use tinwave_core::touchstone::write_one_port;

/// Reflection of a whole can, as an analyser would see it: simulated.
pub(crate) fn points(design: &Design, hz: impl Iterator<Item = f64>) -> Vec<(f64, Complex)> {
    let outside = outside_of(design);
    let can = whole_can(design, outside.as_ref()).unwrap();
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

/// A measurement that was simulated: the can of the design with a wire longer by so
/// many micrometres, seen through so much of a line.
pub(crate) fn simulated(longer_um: i32, line_m: f64) -> String {
    let points = points(&with_wire(&work(DESIGN).design, longer_um), sweep());
    write_one_port(&with_port_length(&points, line_m), 50.0)
}

/// Largest VSWR over the band of a whole can, at eleven points.
pub(crate) fn worst(design: &Design) -> f64 {
    let band = band_frequencies(design.band, 11).into_iter();
    let points = points(design, band.map(|khz| f64::from(khz) * 1e3));
    let largest = points.iter().map(|p| p.1.abs()).fold(0.0, f64::max);
    (1.0 + largest) / (1.0 - largest)
}

pub(crate) fn by_file<'a>(file: &'a str, care: &'a str) -> Vec<(&'a str, &'a str)> {
    vec![("source", "file"), ("file", file), ("care", care)]
}

pub(crate) fn and<'a>(
    entries: &[(&'a str, &'a str)],
    more: &[(&'a str, &'a str)],
) -> Vec<(&'a str, &'a str)> {
    [more, entries].concat()
}

pub(crate) fn number_in(text: &str, before: &str) -> f64 {
    let rest = text.split(before).nth(1).unwrap_or_default();
    let sign = if rest.starts_with('\u{2212}') {
        -1.0
    } else {
        1.0
    };
    let digits: String = rest
        .trim_start_matches(['+', '\u{2212}'])
        .chars()
        .take_while(|c| c.is_ascii_digit() || *c == '.')
        .collect();
    let digits = digits.trim_end_matches('.');
    digits.parse().map_or(f64::NAN, |n: f64| sign * n)
}

/// The bound of the wire's length in the table of estimates.
pub(crate) fn length_bound(reply: &Reply) -> f64 {
    let estimates = text(reply, "estimates");
    number_in(estimates.split("wire length").nth(1).unwrap(), "\u{b1} ")
}

pub(crate) fn lines_of_log(reply: &Reply) -> usize {
    reply.get("#log-lines").unwrap().matches("<li>").count()
}
