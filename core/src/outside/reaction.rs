//! Reactions between the currents of two panels.
//!
//! Current along the arc `J_t = I(t)/ρ cos nφ`, I a straight line on each panel;
//! round the axis `J_φ = K sin nφ`, K constant. Charges follow from continuity.
//! Electric-field integral equation with Galerkin testing; J. R. Mautz and R. F.
//! Harrington, *Radiation and scattering from bodies of revolution*, Appl. Sci.
//! Res. 20 (1969) 405-435 (from memory).

use super::arc::Panel;
use super::moments::Moments;
use crate::complex::Complex;

/// Reactions of one order: the field of the second panel on the first, over
/// `-jη`. Index: rising (1) or falling (0) half of the panel's current.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Reaction {
    /// Along the arc on both.
    pub(super) along: [[Complex; 2]; 2],
    /// Along the arc on the first, round on the second.
    pub(super) along_round: [Complex; 2],
    /// Round on the first, along the arc on the second.
    pub(super) round_along: [Complex; 2],
    /// Round on both.
    pub(super) round: Complex,
}

type Square = [[Complex; 2]; 2];

fn combine(a: &Square, b: &Square, sign: f64) -> Square {
    let mut out = *a;
    for (row, other) in out.iter_mut().zip(b) {
        for (x, y) in row.iter_mut().zip(other) {
            *x = (*x + y.scale(sign)).scale(0.5);
        }
    }
    out
}

impl Reaction {
    /// Of an order n up to 2, from the moments of the pair.
    pub(super) fn new(
        order: usize,
        k: f64,
        first: &Panel,
        second: &Panel,
        moments: &Moments,
    ) -> Self {
        let [m0, m1, m2, m3] = &moments.of;
        // cos ψ cos nψ and sin ψ sin nψ as sums of neighbouring moments.
        let (scalar, cosine, sine) = match order {
            0 => (m0, *m1, Square::default()),
            1 => (m1, combine(m0, m2, 1.0), combine(m0, m2, -1.0)),
            _ => (m2, combine(m1, m3, 1.0), combine(m1, m3, -1.0)),
        };
        let n = order as f64;
        let [[s00, s01], [s10, s11]] = *scalar;
        let charge = (s00 + s01 + s10 + s11).scale(1.0 / k);
        let slope = |panel: &Panel| [-1.0 / panel.length, 1.0 / panel.length];
        let (slope, other_slope) = (slope(first), slope(second));
        let across = k * first.across * second.across;
        let along = k * first.along * second.along;
        let mut out = Self {
            round: charge.scale(-n * n),
            ..Self::default()
        };
        for a in 0..2 {
            out.along_round[a] = charge.scale(-n * slope[a]);
            out.round_along[a] = charge.scale(-n * other_slope[a]);
        }
        for a in 0..2 {
            for b in 0..2 {
                out.along[a][b] = cosine[a][b].scale(across) + scalar[a][b].scale(along)
                    - charge.scale(slope[a] * other_slope[b]);
                let (rho, other_rho) = (first.rho[a], second.rho[b]);
                out.along_round[a] -= sine[a][b].scale(k * first.across * other_rho);
                out.round_along[b] -= sine[a][b].scale(k * second.across * rho);
                out.round += cosine[a][b].scale(k * rho * other_rho);
            }
        }
        out
    }

    /// The same seen from the other panel.
    pub(super) fn turned(&self) -> Self {
        let [[a, b], [c, d]] = self.along;
        Self {
            along: [[a, c], [b, d]],
            along_round: self.round_along,
            round_along: self.along_round,
            round: self.round,
        }
    }
}
