//! Cost of a diagnosis from 201 points, of 2,000 cans drawn at random, and of a screw.
#![allow(missing_docs, reason = "the macros make undocumented functions")]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use tinwave_core::changed_can::ChangedCan;
use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::diagnosis::{DiagnosisSettings, Measurement, diagnose, with_port_length};
use tinwave_core::dimension::Dimension;
use tinwave_core::json::design_from_json;
use tinwave_core::screw_search::{ScrewProgress, ScrewSearch, ScrewSettings};
use tinwave_core::tolerance::{Spread, YieldSettings, yield_of};

fn sweep(design: &Design) -> Vec<(f64, Complex)> {
    let hz: Vec<f64> = (0..201).map(|i| 2.25e9 + 2e6 * f64::from(i)).collect();
    let Ok(Some(mut can)) = ChangedCan::new(design, None) else {
        return Vec::new();
    };
    let changes = [
        (Dimension::ProbeLength, 6e-4),
        (Dimension::BackshortDistance, -8e-4),
        (Dimension::InsideDiameter, 3e-4),
    ];
    let si = can.changed(&changes);
    let s = can.reflections(&si, &hz).unwrap_or_default();
    with_port_length(&hz.into_iter().zip(s).collect::<Vec<_>>(), 0.21)
}

fn measure(c: &mut Criterion) {
    let text = include_str!("../tests/data/orchard_gate.json");
    let Ok(design) = design_from_json(text) else {
        return;
    };
    let measurement = Measurement::Reflection(sweep(&design));
    c.bench_function("diagnosis: 201 points", |b| {
        b.iter(|| {
            diagnose(
                &design,
                None,
                black_box(&measurement),
                DiagnosisSettings::default(),
            )
        });
    });
    let settings = YieldSettings {
        spreads: Dimension::ALL
            .map(|d| (d, Spread::Normal(d.usual_tolerance())))
            .to_vec(),
        vswr_limit: 1.5,
        samples: 2000,
        seed: 1,
    };
    c.bench_function("tolerance: 2000 cans, seven dimensions", |b| {
        b.iter(|| yield_of(&design, None, black_box(settings.clone())));
    });
    let screw = ScrewSettings {
        count: 1,
        diameter_um: 4000,
        angle_millideg: 180_000,
    };
    let mut group = c.benchmark_group("slow");
    group.sample_size(10);
    group.bench_function("screws: one", |b| {
        b.iter(|| {
            let Ok(mut search) = ScrewSearch::new(&design, None, screw) else {
                return;
            };
            while !matches!(search.step(), ScrewProgress::Done(_)) {}
        });
    });
}

criterion_group!(benches, measure);
criterion_main!(benches);
