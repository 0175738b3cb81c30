//! What the parts say that are fetched when they are wanted: a design to take, a
//! measurement to draw.

use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::match_band::SweepPoint;
use tinwave_core::reflection::{PointMatch, vswr};

use super::browser;
use super::model::Measured;
use super::state::Page;
use crate::history::Change;
use crate::link;

pub(super) fn listen(page: Page) {
    browser::on_word(
        "tinwave-take",
        Box::new(move |fragment| {
            if let Ok(opened) = link::decode(fragment) {
                page.replace(&opened.work, Change::Opened);
            }
        }),
    );
    browser::on_word(
        "tinwave-measured",
        Box::new(move |text| {
            let measured = page.look(|model| read(text, &model.work.design));
            page.change(&|model| model.measured.clone_from(&measured));
            page.tell_ghost();
        }),
    );
}

/// Without a phase this stands for the imaginary part.
const NO_PHASE: i64 = i64::MAX;

/// Reads `kHz real imaginary` of each point, the parts in millionths; whole numbers,
/// because reading others weighs ten kilobytes.
fn read(text: &str, design: &Design) -> Option<Measured> {
    let reference_ohm = f64::from(design.probe.reference_milliohm) / 1e3;
    let sweep = design.effective_sweep();
    let numbers: Vec<i64> = text.split(' ').flat_map(str::parse).collect();
    let (triples, _) = numbers.as_chunks::<3>();
    let has_phase = triples.first()?[2] != NO_PHASE;
    let shown = triples
        .iter()
        .filter(|[khz, _, _]| (i64::from(sweep.low_khz)..=i64::from(sweep.high_khz)).contains(khz));
    let points = shown.map(|[khz, re, im]| {
        let part = |millionths: i64| millionths as f64 / 1e6;
        let reflection = Complex::new(part(*re), if has_phase { part(*im) } else { 0.0 });
        SweepPoint {
            frequency_khz: *khz as u32,
            at: Some(PointMatch {
                impedance_ohm: ((Complex::ONE + reflection) / (Complex::ONE - reflection))
                    .scale(reference_ohm),
                reflection,
                vswr: vswr(reflection.abs()),
            }),
        }
    });
    Some(Measured {
        points: points.collect(),
        has_phase,
    })
}
