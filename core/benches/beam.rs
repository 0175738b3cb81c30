//! Cost of the outside: preparing a body, each frequency, and the beam's figures.
#![allow(missing_docs, reason = "criterion's macros make undocumented items")]
#![allow(clippy::unwrap_used, reason = "a benchmark may fail by panicking")]

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use tinwave_core::complex::Complex;
use tinwave_core::outside::{Outline, PreparedOutside, Rim};
use tinwave_core::radiation::{BeamFigures, SumPattern};

/// Five Chebyshev points of 2.3 to 2.6 GHz.
const FREQUENCIES: [f64; 5] = [2.3e9, 2.343_934e9, 2.45e9, 2.556_066e9, 2.6e9];

fn bodies() -> [(&'static str, Outline); 3] {
    let bare = Outline {
        radius_m: 0.045,
        length_m: 0.235,
        rim: Rim::Bare,
    };
    let funnel = Rim::Funnel {
        mouth_radius_m: 0.12,
        half_angle_rad: 20.0_f64.to_radians(),
    };
    let choke = Rim::Choke {
        outside_radius_m: 0.076,
        depth_m: 0.031,
    };
    [
        ("plain can", bare),
        (
            "240 mm funnel",
            Outline {
                rim: funnel,
                ..bare
            },
        ),
        ("choke", Outline { rim: choke, ..bare }),
    ]
}

fn outside(c: &mut Criterion) {
    for (name, outline) in bodies() {
        c.bench_function(&format!("{name}, prepared"), |b| {
            b.iter(|| PreparedOutside::new(black_box(&outline), 2.6e9).unwrap());
        });
        c.bench_function(&format!("{name}, prepared and 5 frequencies"), |b| {
            b.iter(|| {
                let prepared = PreparedOutside::new(black_box(&outline), 2.6e9).unwrap();
                FREQUENCIES.map(|hz| prepared.solve(hz).unwrap().te11().reflection())
            });
        });
    }
    let [(_, bare), ..] = bodies();
    let prepared = PreparedOutside::new(&bare, 2.6e9).unwrap();
    let pattern = SumPattern::of_te11(&prepared.solve(2.45e9).unwrap());
    c.bench_function("figures of a beam", |b| {
        b.iter(|| BeamFigures::new(black_box(&pattern), Complex::ZERO));
    });
}

criterion_group!(benches, outside);
criterion_main!(benches);
