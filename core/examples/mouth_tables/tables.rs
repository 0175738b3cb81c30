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

/// The text of the data file.
pub(crate) fn text() -> Result<String, MouthError> {
    let mut out = String::from(
        "//! Chebyshev coefficients of the mouth's tables, written by `examples/mouth_tables`.\n\
         //! The last digits are those of the exact solution, rounded.\n\n",
    );
    let mut line = |text: &str| out.push_str(&format!("{text}\n"));
    line("/// Terms of every expansion.");
    line(&format!("pub(super) const TERMS: usize = {TERMS};"));
    line("/// Ends of the two pieces, `k a`.");
    line(&format!("pub(super) const ENDS: [f64; 3] = {ENDS:?};"));
    let kinds: [(
        &str,
        &str,
        fn(Mode, f64) -> Result<Sample, MouthError>,
        usize,
    ); 2] = [
        (
            "ADMITTANCE",
            "Aperture admittance (real, imaginary)",
            admittance,
            3,
        ),
        (
            "BEAM",
            "Directivity dBi, beamwidths E and H degrees, front to back dB",
            beam,
            1,
        ),
    ];
    for (name, meaning, sample, modes) in kinds {
        for (mode, next) in MODES.iter().take(modes) {
            let next_root = next.root().unwrap_or(f64::NAN);
            line("");
            line(&format!("/// {meaning} of {mode}; next mode {next}."));
            line("#[rustfmt::skip]");
            let width = sample(*mode, 2.3)?.len();
            line(&format!(
                "pub(super) static {name}_{mode}: [[[f64; {width}]; TERMS]; 2] = ["
            ));
            for piece in 0..2 {
                let samples: Result<Vec<Sample>, _> = points(piece, next_root)
                    .iter()
                    .map(|ka| sample(*mode, *ka))
                    .collect();
                let columns = expand(&samples?);
                line("    [");
                for k in 0..TERMS {
                    let mut row = String::new();
                    for column in &columns {
                        let comma = if row.is_empty() { "" } else { ", " };
                        let _ = write!(row, "{comma}{:.12}", column[k]);
                    }
                    line(&format!("        [{row}],"));
                }
                line("    ],");
            }
            line("];");
        }
    }
    Ok(out)
}
