//! Cost of making a probe ready, of a sweep, and of moving the wire.
#![allow(missing_docs, reason = "the macros make undocumented functions")]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use tinwave_core::probe::{Feed, GuideCondition, PreparedProbe, ProbeError, ProbeGeometry, Wire};

fn can() -> ProbeGeometry {
    let wire = Wire {
        radius_m: 0.4065e-3,
        insertion_m: 0.031,
        axial_m: 0.0514,
        angle_rad: 0.0,
    };
    let feed = Feed {
        wire,
        hole_radius_m: 0.9358e-3,
        insulation: None,
        shunt_capacitance_f: 0.0,
    };
    ProbeGeometry {
        guide_radius_m: 0.045,
        feed,
        screws: Vec::new(),
    }
}

fn sweep(probe: &PreparedProbe) {
    for i in 0..101 {
        let frequency = 2.2e9 + 4e6 * f64::from(i);
        black_box(probe.input_admittance(frequency, &GuideCondition::MATCHED));
    }
}

fn probe(c: &mut Criterion) {
    let geometry = can();
    c.bench_function("probe: make ready", |b| {
        b.iter(|| PreparedProbe::new(black_box(&geometry)))
    });
    c.bench_function("probe: make ready and sweep 101", |b| {
        b.iter(|| PreparedProbe::new(black_box(&geometry)).map(|probe| sweep(&probe)));
    });
    let run = |c: &mut Criterion| -> Result<(), ProbeError> {
        let ready = PreparedProbe::new(&geometry)?;
        c.bench_function("probe: sweep 101", |b| b.iter(|| sweep(black_box(&ready))));
        c.bench_function("probe: move the wire", |b| {
            b.iter(|| ready.at_backshort_distance(black_box(0.048)));
        });
        Ok(())
    };
    assert!(run(c).is_ok(), "the geometry is possible");
}

criterion_group!(benches, probe);
criterion_main!(benches);
