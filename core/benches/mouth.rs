//! Cost of the mouth: table and exact solution.
#![allow(missing_docs, reason = "criterion's macros make undocumented items")]
#![allow(clippy::unwrap_used, reason = "a benchmark may fail by panicking")]

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use tinwave_core::mouth::{OpenPipe, Plane, mouth_reflection, pipe_beam, pipe_pattern_dbi};
use tinwave_core::waveguide_mode::Mode;

fn mouth(c: &mut Criterion) {
    for (name, mode) in [
        ("TE11", Mode::TE11),
        ("TM01", Mode::TM01),
        ("TE21", Mode::TE21),
    ] {
        c.bench_function(&format!("mouth_reflection {name}"), |b| {
            let mut ka = 1.9;
            b.iter(|| {
                ka = if ka > 3.8 { 1.9 } else { ka + 0.001 };
                mouth_reflection(black_box(mode), black_box(ka)).unwrap()
            });
        });
    }
    c.bench_function("pipe_beam", |b| {
        b.iter(|| pipe_beam(black_box(2.3)).unwrap())
    });
    c.bench_function("OpenPipe::new TE11", |b| {
        b.iter(|| OpenPipe::new(Mode::TE11, black_box(2.3)).unwrap());
    });
    c.bench_function("pattern, 361 angles", |b| {
        let angles: Vec<f64> = (0..361)
            .map(|n| f64::from(n) * 0.5_f64.to_radians())
            .collect();
        b.iter(|| pipe_pattern_dbi(black_box(2.3), Plane::E, &angles).unwrap());
    });
}

criterion_group!(benches, mouth);
criterion_main!(benches);
