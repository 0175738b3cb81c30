//! Trade sizes and bands, matched and graded, as good as they say when they are taken.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test may stop where it finds something wrong"
)]

use tinwave_core::analysis::Analyser;
use tinwave_core::design::Design;
use tinwave_core::grade::{Grade, Reason};
use tinwave_maker::fits::{self, SizeFit, bands_for, sizes_for, take_band, take_size};
use tinwave_maker::link;
use tinwave_maker::workpiece::Workpiece;
use tinwave_protocol::fits::{BandsMatched, MatchBands, MatchSizes, Matched, SizesMatched};
use tinwave_protocol::{Question, Told, from_bytes};
use tinwave_worker::outsides::outside_of;
use tinwave_worker::work;

/// A can of 87 mm, 190 mm long.
const DESIGN: &str = "v=1&n=Orchard_gate&b=2401-2483.5&d=87&l=190&pw=1.29&pl=28.4&pd=45";

fn workpiece(link: &str) -> Workpiece {
    link::decode(link).expect("a good link").work
}

fn with_wire(mm: &str) -> Design {
    workpiece(&DESIGN.replace("pw=1.29", &format!("pw={mm}"))).design
}

fn answer<Q: Question>(question: Q) -> Q::Answer {
    let bytes = work::begin(question.into_job()).run().expect("an end");
    from_bytes(&bytes).expect("an answer of its type")
}

/// Worst VSWR of a taken can as a whole.
fn worst_vswr(design: &Design) -> f64 {
    let analysis = Analyser::new()
        .analyse_with(design, outside_of(design).as_ref())
        .expect("in range");
    let summary = analysis.match_summary.expect("a match");
    summary.worst_vswr_in_band
}

fn ranked<'a>(fits: &'a [SizeFit], matched: &'a SizesMatched) -> Vec<(&'a SizeFit, &'a Matched)> {
    let mut all: Vec<_> = fits
        .iter()
        .filter_map(|fit| Some((fit, matched.of(fit.index)?)))
        .collect();
    all.sort_by(|a, b| {
        let rank = |matched: &Matched| fits::rank(&matched.graded, matched.cut.as_ref());
        rank(a.1).partial_cmp(&rank(b.1)).expect("numbers")
    });
    all
}

#[test]
fn every_size_is_matched_and_as_good_as_it_says_when_it_is_taken() {
    let work = workpiece(DESIGN);
    let fits = sizes_for(&work.design);
    let matched = answer(MatchSizes {
        design: work.design.clone(),
    });
    assert_eq!(matched.0.len(), fits.len());
    for (fit, matched) in ranked(&fits, &matched).into_iter().take(4) {
        let cut = matched.cut.expect("a cut");
        let mut taken = work.clone();
        take_size(&mut taken, fit, Some(&cut));
        assert!(fit.is_can_of(&taken.design));
        assert_eq!(taken.design.name, work.design.name);
        let worst = worst_vswr(&taken.design);
        assert!(
            (worst - cut.worst_vswr).abs() < 0.012,
            "{}: {worst} {cut:?}",
            fit.size().name
        );
    }
}

#[test]
fn what_is_too_short_or_warned_against_never_ranks_first() {
    let design = with_wire("1.5");
    let fits = sizes_for(&design);
    let matched = answer(MatchSizes { design });
    let ranked = ranked(&fits, &matched);
    let (first, best) = ranked.first().expect("a size");
    assert_eq!(best.graded.grade, Grade::WillDo, "{}", first.size().name);
    // Some are warned against, and stand behind all that will do.
    let short = ranked.iter().position(|(_, matched)| {
        let reasons = &matched.graded.reasons;
        reasons
            .iter()
            .any(|reason| matches!(reason, Reason::TooShort { .. }))
    });
    let last_good = ranked
        .iter()
        .rposition(|(_, matched)| matched.graded.grade == Grade::WillDo);
    assert!(short > last_good, "{short:?} {last_good:?}");
}

#[test]
fn each_size_is_told_of_as_it_is_matched_and_not_matched_twice() {
    let design = with_wire("2");
    let question = || {
        MatchSizes {
            design: design.clone(),
        }
        .into_job()
    };
    let mut running = work::begin(question());
    let first = loop {
        match running.step().expect("not the end") {
            Told::Working {
                so_far: Some(bytes),
                ..
            } => break from_bytes::<SizesMatched>(&bytes).expect("an answer"),
            Told::Working { .. } => {}
            Told::Done(_) => panic!("nothing was told on the way"),
        }
    };
    assert_eq!(first.0.len(), 1);
    drop(running);
    // What was matched is known to the next question, and told at once.
    let told = work::begin(question()).step();
    let Some(Told::Working {
        so_far: Some(bytes),
        ..
    }) = told
    else {
        panic!("{told:?}");
    };
    let known = from_bytes::<SizesMatched>(&bytes).expect("an answer");
    assert_eq!(known, first);
}

#[test]
fn a_can_too_narrow_for_its_band_is_good_for_another() {
    // 65 mm carries one mode from 2703 to 3531 MHz.
    let narrow = workpiece(&DESIGN.replace("d=87", "d=65"));
    let fits = bands_for(&narrow.design);
    assert!(!fits.is_empty());
    let matched: BandsMatched = answer(MatchBands {
        design: narrow.design.clone(),
    });
    assert_eq!(matched.0.len(), fits.len());
    let (fit, matched) = fits
        .iter()
        .filter_map(|fit| Some((fit, matched.of(fit.band.key)?)))
        .find(|(_, matched)| matched.graded.grade != Grade::WillNotDo)
        .expect("a band");
    let cut = matched.cut.expect("a cut");
    let mut taken = narrow;
    take_band(&mut taken, fit.band.band(), Some(&cut));
    assert_eq!(taken.design.can.inside_diameter_um, 65_000);
    let worst = worst_vswr(&taken.design);
    assert!((worst - cut.worst_vswr).abs() < 0.012, "{worst} {cut:?}");
}

#[test]
fn nothing_fits_a_band_too_wide_and_that_is_answered_at_once() {
    let design = workpiece(&DESIGN.replace("b=2401-2483.5", "b=2000-4000")).design;
    assert_eq!(answer(MatchSizes { design }), SizesMatched::default());
}
