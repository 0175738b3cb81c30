//! Chebyshev expansions of the open pipe's aperture admittance and beam.

use std::f64::consts::PI;
use std::fmt::Write;

use tinwave_core::math;
use tinwave_core::mouth::{MouthError, OpenPipe, Plane};
use tinwave_core::waveguide_mode::Mode;

/// Coefficients of one expansion.
const TERMS: usize = 14;
/// Ends of the two pieces.
const ENDS: [f64; 3] = [1.2, 2.6, 3.83];

/// The modes and the next higher mode each couples to at the mouth. The
/// admittance has a square-root branch point at that mode's cutoff, so the upper
/// piece is expanded in `√(next² - (ka)²)`.
const MODES: [(Mode, Mode); 3] = [
    (Mode::TE11, Mode::TM11),
    (Mode::TM01, Mode::tm(0, 2)),
    (Mode::TE21, Mode::tm(2, 1)),
];

/// What is tabulated at one `ka`.
type Sample = Vec<f64>;

/// The electrical radii of the Chebyshev points of a piece.
fn points(piece: usize, next: f64) -> Vec<f64> {
    let (from, to) = (ENDS[piece], ENDS[piece + 1]);
    let variable = |ka: f64| {
        if piece == 0 {
            ka
        } else {
            math::sqrt((next - ka) * (next + ka))
        }
    };
    let (a, b) = (variable(from), variable(to));
    let point = |n: usize| {
        let t = math::cos(PI * (n as f64 + 0.5) / TERMS as f64);
        let v = 0.5 * (a + b) + 0.5 * (b - a) * t;
        if piece == 0 {
            v
        } else {
            math::sqrt((next - v) * (next + v))
        }
    };
    (0..TERMS).map(point).collect()
}

/// Coefficients of each quantity (A&S 1964, 22.4.4 and 25.4.38: discrete
/// orthogonality at the points above).
fn expand(samples: &[Sample]) -> Vec<[f64; TERMS]> {
    let quantities = samples.first().map_or(0, Vec::len);
    let coefficient = |quantity: usize, k: usize| {
        let weight = if k == 0 { 1.0 } else { 2.0 } / TERMS as f64;
        let term = |(n, sample): (usize, &Sample)| {
            sample[quantity] * math::cos(PI * k as f64 * (n as f64 + 0.5) / TERMS as f64)
        };
        weight * samples.iter().enumerate().map(term).sum::<f64>()
    };
    (0..quantities)
        .map(|quantity| std::array::from_fn(|k| coefficient(quantity, k)))
        .collect()
}

fn admittance(mode: Mode, ka: f64) -> Result<Sample, MouthError> {
    let y = OpenPipe::new(mode, ka)?.aperture_admittance();
    Ok(vec![y.re, y.im])
}

fn beam(mode: Mode, ka: f64) -> Result<Sample, MouthError> {
    let pipe = OpenPipe::new(mode, ka)?;
    let width = |plane| pipe.half_power_beamwidth_deg(plane).unwrap_or(f64::NAN);
    Ok(vec![
        pipe.directivity_dbi(0.0, Plane::E),
        width(Plane::E),
        width(Plane::H),
        pipe.front_to_back_db().unwrap_or(f64::NAN),
    ])
}

/// One family of tables: name, meaning, what to sample, how many of [`MODES`].
struct Kind {
    name: &'static str,
    meaning: &'static str,
    sample: fn(Mode, f64) -> Result<Sample, MouthError>,
    modes: usize,
}

const KINDS: [Kind; 2] = [
    Kind {
        name: "ADMITTANCE",
        meaning: "Aperture admittance (real, imaginary)",
        sample: admittance,
        modes: 3,
    },
    Kind {
        name: "BEAM",
        meaning: "Directivity dBi, beamwidths E and H degrees, front to back dB",
        sample: beam,
        modes: 1,
    },
];

/// The text of the data file.
pub(crate) fn text() -> Result<String, MouthError> {
    let mut out = format!(
        "//! Chebyshev coefficients of the mouth's tables, written by `examples/mouth_tables`.\n\n\
         /// Terms of every expansion.\n\
         pub(super) const TERMS: usize = {TERMS};\n\
         /// Ends of the two pieces, `k a`.\n\
         pub(super) const ENDS: [f64; 3] = {ENDS:?};\n"
    );
    for kind in &KINDS {
        for (mode, next) in MODES.iter().take(kind.modes) {
            out.push_str(&table(kind, *mode, *next)?);
        }
    }
    Ok(out)
}

/// The text of one table.
fn table(kind: &Kind, mode: Mode, next: Mode) -> Result<String, MouthError> {
    let Kind {
        name,
        meaning,
        sample,
        ..
    } = kind;
    let next_root = next.root().unwrap_or(f64::NAN);
    let width = sample(mode, ENDS[0])?.len();
    let mut out = format!(
        "\n/// {meaning} of {mode}; next mode {next}.\n#[rustfmt::skip]\n\
         pub(super) static {name}_{mode}: [[[f64; {width}]; TERMS]; 2] = [\n"
    );
    for piece in 0..2 {
        let radii = points(piece, next_root);
        let samples: Result<Vec<Sample>, _> = radii.iter().map(|ka| sample(mode, *ka)).collect();
        let columns = expand(&samples?);
        out.push_str("    [\n");
        for k in 0..TERMS {
            let row: Vec<String> = columns
                .iter()
                .map(|column| format!("{:.12}", column[k]))
                .collect();
            let _ = writeln!(out, "        [{}],", row.join(", "));
        }
        out.push_str("    ],\n");
    }
    out.push_str("];\n");
    Ok(out)
}
