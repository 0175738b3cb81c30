//! The guide's modes and how strongly a radial wire couples to each.
//!
//! Normalisation: the transverse electric field of every mode has unit square
//! integral over the cross-section. Source: N. Marcuvitz, *Waveguide Handbook*,
//! 1951, section 2.4.

use alloc::vec::Vec;
use core::f64::consts::PI;

use super::bessel_table::BesselTable;
use super::expansion::{Expansion, TERMS};
use crate::bessel_roots::BESSEL_ROOTS;
use crate::math;
use crate::quadrature::GaussLegendre;

/// Amplitudes of one wire in one mode: its polynomials, then (fed wire only) the
/// frill of its feed.
pub(super) type Coupling = [f64; TERMS + 1];

/// Modes with a root below this can propagate, or nearly; their dependence on
/// frequency is kept exactly. Enough for `ka` up to 3.87.
const EXACT_BELOW: f64 = 8.0;

/// One mode whose electric field has a radial part.
#[derive(Clone, Copy, Debug)]
pub(super) struct GuideMode {
    /// Whether it is a TE mode (else TM).
    pub(super) transverse_electric: bool,
    /// Order n of its dependence on the angle.
    pub(super) order: usize,
    /// Index of its root within the order, from 1.
    pub(super) index: u8,
    /// Cutoff wavenumber times the guide's radius.
    pub(super) root: f64,
    /// Cutoff wavenumber, rad/m.
    pub(super) cutoff: f64,
    /// Factor that makes the square integral one, 1/m.
    norm: f64,
}

/// The modes of one guide, ascending, with what is needed to integrate over them.
pub(super) struct ModeSet {
    pub(super) modes: Vec<GuideMode>,
    /// How many of them are kept exactly.
    pub(super) exact: usize,
    guide_radius: f64,
    root_max: f64,
    table: BesselTable,
}

impl ModeSet {
    /// All modes of a guide of radius `a` with roots up to `root_max`; the table
    /// reaches `reach` (>= 1) times the wall's radius.
    pub(super) fn new(a: f64, root_max: f64, reach: f64) -> Self {
        // TE_0n have no radial field.
        let wanted = || {
            BESSEL_ROOTS
                .iter()
                .take_while(|root| root.x <= root_max)
                .filter(|root| !(root.of_derivative && root.order == 0))
        };
        let highest = wanted()
            .map(|root| usize::from(root.order))
            .max()
            .unwrap_or(0);
        let table = BesselTable::new(root_max * reach, highest);
        let modes: Vec<_> = wanted()
            .map(|root| {
                let order = usize::from(root.order);
                let m = order as f64;
                let norm_sqr = if root.of_derivative {
                    let j = table.at(order, root.x);
                    0.5 * PI * a * a * (1.0 - m * m / (root.x * root.x)) * j * j
                } else {
                    let j = table.at(order + 1, root.x);
                    let turn = if order == 0 { PI } else { 0.5 * PI };
                    turn * a * a * j * j
                };
                GuideMode {
                    transverse_electric: root.of_derivative,
                    order,
                    index: root.index,
                    root: root.x,
                    cutoff: root.x / a,
                    norm: 1.0 / math::sqrt(norm_sqr),
                }
            })
            .collect();
        let exact = modes.iter().filter(|mode| mode.root < EXACT_BELOW).count();
        Self {
            modes,
            exact,
            guide_radius: a,
            root_max,
            table,
        }
    }

    /// Largest order present.
    pub(super) fn highest_order(&self) -> usize {
        self.modes.iter().map(|mode| mode.order).max().unwrap_or(0)
    }

    /// Radial field of a mode at the distance `rho` from the axis (negative:
    /// beyond it, still counted along the same direction), 1/m.
    fn radial_field(&self, mode: &GuideMode, rho: f64) -> f64 {
        let (below, above) = self.table.neighbours(mode.order, mode.cutoff * rho);
        let both = if mode.transverse_electric {
            below + above
        } else {
            below - above
        };
        0.5 * mode.norm * both
    }

    /// Coupling of every mode to a wire, `∫ f_n(s) e_ρ(a - s) ds`, and to a
    /// radial dipole of moment `frill_area` at the wall.
    pub(super) fn couplings(&self, wire: &Expansion, frill_area: f64) -> Vec<Coupling> {
        let half_turns = 0.6 * self.root_max * wire.length / self.guide_radius;
        let rule = GaussLegendre::new(half_turns as usize + 10);
        let nodes: Vec<_> = rule
            .on(0.0, wire.length)
            .map(|(s, w)| (self.guide_radius - s, wire.at(s).value.map(|f| f * w)))
            .collect();
        self.modes
            .iter()
            .map(|mode| {
                let mut coupling = [0.0; TERMS + 1];
                for (rho, weights) in &nodes {
                    let field = self.radial_field(mode, *rho);
                    for (sum, weight) in coupling.iter_mut().zip(weights) {
                        *sum += weight * field;
                    }
                }
                coupling[TERMS] = frill_area * self.radial_field(mode, self.guide_radius);
                coupling
            })
            .collect()
    }
}
