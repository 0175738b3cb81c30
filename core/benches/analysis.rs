//! The paths a person waits for: a changed can, a changed frequency, the best cut.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop, and say what it found"
)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use tinwave_core::analysis::{Analyser, analyse};
use tinwave_core::best_cut::{FreeDimensions, best_cut};
use tinwave_core::design::Design;
use tinwave_core::json::design_from_json;

const ORCHARD_GATE: &str = include_str!("../tests/data/orchard_gate.json");

fn orchard_gate() -> Design {
    design_from_json(ORCHARD_GATE).expect("the example is a sound design")
}

fn paths(c: &mut Criterion) {
    let design = orchard_gate();
    c.bench_function("analysis, changed geometry, 101 frequencies", |b| {
        b.iter(|| analyse(black_box(&design)));
    });
    let mut analyser = Analyser::new();
    let mut other = design.clone();
    c.bench_function("analysis, changed can length only, 101 frequencies", |b| {
        b.iter(|| {
            other.can.open_length_um ^= 1;
            analyser.analyse(black_box(&other))
        });
    });
    c.bench_function("best length", |b| {
        b.iter(|| best_cut(black_box(&design), FreeDimensions::Length));
    });
    c.bench_function("best length and distance", |b| {
        b.iter(|| best_cut(black_box(&design), FreeDimensions::LengthAndDistance));
    });
}

criterion_group!(benches, paths);
criterion_main!(benches);
