//! Tolerances: what each dimension does, and the share of cans that come out well.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod measured;

use measured::*;
use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::{Spread, Yield, YieldSettings, yield_of};
use tinwave_protocol::tolerance::{DrawCans, RankDimensions, Ranking};
use tinwave_protocol::{Question, Told, from_bytes};
use tinwave_worker::outsides::outside_of;
use tinwave_worker::work;

fn usual() -> Vec<(Dimension, f64)> {
    Dimension::ALL
        .map(|dimension| (dimension, dimension.usual_tolerance()))
        .to_vec()
}

fn ranked(tolerances: Vec<(Dimension, f64)>) -> Ranking {
    answer(RankDimensions {
        design: design(DESIGN),
        tolerances,
    })
    .expect("computed")
}

fn settings(spread: fn(f64) -> Spread, samples: u32, seed: u64) -> YieldSettings {
    YieldSettings {
        spreads: usual()
            .into_iter()
            .map(|(d, size)| (d, spread(size)))
            .collect(),
        vswr_limit: 1.5,
        samples,
        seed,
    }
}

fn drawn(settings: YieldSettings) -> Yield {
    answer(DrawCans {
        design: design(DESIGN),
        settings,
    })
    .expect("drawn")
}

#[test]
fn the_wire_of_this_can_deserves_the_care() {
    let ranking = ranked(usual());
    assert_eq!(ranking.ranked.len(), 7);
    let first = ranking.first().expect("one that matters");
    assert_eq!(first.dimension, Dimension::ProbeLength);
    // The can is solved for anew and whole, at the same eleven points.
    let drawn = design(DESIGN);
    assert!((ranking.as_drawn - worst(&drawn, 11)).abs() < 1e-6);
    let ends = [500, -500].map(|um| worst(&with_wire(&drawn, um), 11));
    let off = ends[0].max(ends[1]);
    assert!((Ranking::worst(first) - off).abs() < 1e-6, "{off}");
}

/// The frequency of the best match moves as that of whole cans does.
#[test]
fn the_shift_is_that_of_whole_cans() {
    let best = |um: i32| {
        let can = whole_can(&with_wire(&design(DESIGN), um));
        let at = |khz: u32| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr;
        // The dip in the band; the can has another above what is looked at.
        (2_340_000..2_480_000)
            .step_by(250)
            .min_by(|a, b| at(*a).total_cmp(&at(*b)))
            .expect("a best")
    };
    let per_metre = (f64::from(best(100)) - f64::from(best(-100))) * 1e3 / 0.2e-3;
    let ranking = ranked(usual());
    let slope = ranking
        .first()
        .and_then(|first| first.best_slope_hz)
        .expect("a slope");
    // Both from points: a parabola through a grid of 4 MHz, and the best of 0.25 MHz.
    assert!(
        (slope / per_metre - 1.0).abs() < 0.1,
        "{slope}, not {per_metre}"
    );
}

#[test]
fn no_tolerance_is_no_harm_and_too_much_is_told() {
    let exact = Dimension::ALL.map(|dimension| (dimension, 0.0)).to_vec();
    assert!(ranked(exact).first().is_none());
    let wide = ranked(vec![(Dimension::WireDiameter, 5e-3)]);
    assert_eq!(wide.impossible, [(Dimension::WireDiameter, 5e-3)]);
    let none = DrawCans {
        design: design(DESIGN),
        settings: YieldSettings {
            spreads: Vec::new(),
            ..settings(Spread::Uniform, 100, 1)
        },
    };
    assert_eq!(answer(none), None);
    let mut through = design(DESIGN);
    through.probe.length_um = 99_000;
    let impossible = RankDimensions {
        design: through,
        tolerances: usual(),
    };
    assert_eq!(answer(impossible), None);
}

#[test]
fn the_yield_is_that_of_the_core_for_the_same_seed() {
    let design = design(DESIGN);
    for spread in [Spread::Uniform, Spread::Normal] {
        let wanted = yield_of(
            &design,
            outside_of(&design).as_ref(),
            settings(spread, 3_000, 7),
        );
        let wanted = wanted.expect("a yield");
        assert!(
            (0.2..0.99).contains(&wanted.pass),
            "a telling share: {wanted:?}"
        );
        assert_eq!(drawn(settings(spread, 3_000, 7)), wanted);
        assert_ne!(drawn(settings(spread, 3_000, 8)), wanted);
    }
}

#[test]
fn figures_come_on_the_way() {
    let question = DrawCans {
        design: design(DESIGN),
        settings: settings(Spread::Uniform, 4_000, 1),
    };
    let mut running = work::begin(question.into_job());
    let mut counts = Vec::new();
    while let Some(Told::Working { so_far, .. }) = running.step() {
        let so_far: Option<Option<Yield>> = so_far.and_then(|bytes| from_bytes(&bytes));
        counts.extend(so_far.flatten().map(|drawn| drawn.samples));
    }
    assert!(counts.len() > 10, "{counts:?}");
    assert!(counts.windows(2).all(|two| two[0] < two[1]), "{counts:?}");
}
