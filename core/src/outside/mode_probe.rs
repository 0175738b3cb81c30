//! Currents inside the can that launch one mode, and that a field is tested on to
//! see one mode.
//!
//! TE11 and TE21: a sheet across the can in the shape of the mode's transverse
//! electric field launches that mode alone, and shows that mode alone: the modes
//! are orthogonal. Its radial current goes on along the wall for one panel, so that
//! no charge stays on the edge.
//!
//! TM01: two short tubes of axial current about the axis. At this mode's cutoff the
//! transverse field dies out in a can closed at the back, the axial one does not.
//! Radii and currents are those of the discrete Hankel transform of three terms, so
//! that TM02 and TM03 see nothing of the tubes; the rest dies out within a fraction
//! of the can's radius. Source: H. F. Johnson, *An improved method for computing a
//! discrete Hankel transform*, Comput. Phys. Commun. 43 (1987) 181-202 (from
//! memory).
//!
//! Each mode has two probes near the mouth and a source near the back; a sheet
//! between is the source of modes that would not reach the mouth from there.

use alloc::vec::Vec;

use super::arc::{Arc, Panel};
use super::outline::Outline;
use crate::math;
use crate::mouth::real_bessel::bessel_first;
use crate::quadrature::GaussLegendre;
use crate::waveguide_mode::{Family, Mode};

/// The modes that the outside is solved for; the place is the azimuthal order.
pub const MODES: [Mode; 3] = [Mode::TM01, Mode::TE11, Mode::TE21];

/// Probes near the mouth, the one in front first.
pub(super) const FRONT_PROBE: usize = 0;
pub(super) const BACK_PROBE: usize = 1;
/// Source near the back wall.
pub(super) const BACK_SOURCE: usize = 2;
/// Source between, for modes below cutoff.
pub(super) const NEAR_SOURCE: usize = 3;
/// Number of these roles.
pub(super) const ROLES: usize = 4;

/// Panels of a sheet.
const SHEET_PANELS: usize = 3;
/// Half the length of a tube over the can's radius.
const TUBE_HALF: f64 = 0.1;
/// Roots of J0 beyond TM01's: M. Abramowitz and I. A. Stegun, *Handbook of
/// Mathematical Functions*, 1964, table 9.5.
const CHI_TM02: f64 = 5.520_078_110_286_311;
const CHI_TM03: f64 = 8.653_727_912_911_013;

/// Current of one panel: along the arc at its two ends, and round the axis.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Share {
    pub(super) along: [f64; 2],
    pub(super) round: f64,
}

/// What a panel carries for the probes and sources.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Carrier {
    pub(super) role: usize,
    /// Its current for each order.
    pub(super) shares: [Option<Share>; 3],
}

/// All probes and sources.
#[derive(Clone, Debug, Default)]
pub(super) struct ModeProbes {
    /// Panels that are not the body's.
    pub(super) panels: Vec<Panel>,
    /// What each panel of the body, then each of `panels`, carries.
    pub(super) carriers: Vec<Option<Carrier>>,
    /// Positions by role for each order, m; not a number where there is none.
    pub(super) z: [[f64; ROLES]; 3],
    /// Overlap of a sheet with its mode's true field of unit amplitude,
    /// `∫(e·e)ρ dρ` of orders 1 and 2, m².
    overlap: [f64; 3],
    radius: f64,
}

/// Transverse electric field of a mode at `x = root ρ/a`: radial (times cos nφ) and
/// round the axis (times sin nφ), as [`crate::mouth::FarField`] has it.
fn shape(mode: Mode, x: f64) -> (f64, f64) {
    let n = f64::from(mode.order);
    let (j, slope) = bessel_first(mode.order, x);
    let j_over_x = if x > 1e-9 {
        j / x
    } else if mode.order == 1 {
        0.5
    } else {
        0.0
    };
    match mode.family {
        Family::Te => (n * j_over_x, -slope),
        Family::Tm => (slope, -n * j_over_x),
    }
}

/// A mode's current on a sheet, and its overlap with the mode's field.
struct Sheet {
    shares: [Share; SHEET_PANELS],
    wall: Share,
    overlap: f64,
}

impl Sheet {
    fn new(mode: Mode, radius: f64) -> Self {
        let root = mode.root().unwrap_or(1.0);
        let step = radius / SHEET_PANELS as f64;
        let field = |rho: f64| shape(mode, root * rho / radius);
        let rule = GaussLegendre::new(4);
        let mut overlap = 0.0;
        let mut shares = [Share::default(); SHEET_PANELS];
        for (n, share) in shares.iter_mut().enumerate() {
            let ends = [n as f64 * step, (n + 1) as f64 * step];
            let [from, to] = ends;
            *share = Share {
                along: ends.map(|rho| rho * field(rho).0),
                round: rule.integrate(from, to, |rho| field(rho).1) / step,
            };
            let [start, end] = share.along;
            overlap += rule.integrate(from, to, |rho| {
                let (radial, round) = field(rho);
                let along = start + (end - start) * (rho - from) / step;
                along * radial + share.round * round * rho
            });
        }
        Self {
            shares,
            wall: Share {
                along: [radius * field(radius).0, 0.0],
                round: 0.0,
            },
            overlap,
        }
    }
}

/// Where the four roles would best be: (front, back, source, near source).
fn wanted(outline: &Outline, wavelength: f64, front: f64) -> [f64; ROLES] {
    let (a, length) = (outline.radius_m, outline.length_m);
    let front = -(front * a).min(0.25 * length);
    let back = front - (0.35 * wavelength).min(0.3 * length);
    let source = -length + (0.5 * a).min(0.2 * length);
    let near_source = (back - (0.8 * a).min(0.2 * length)).max(source);
    [front, back, source, near_source]
}

impl ModeProbes {
    /// For an arc divided for a wavelength.
    pub(super) fn new(arc: &Arc, outline: &Outline, wavelength: f64) -> Self {
        let mut probes = Self {
            carriers: alloc::vec![None; arc.panels.len()],
            z: [[f64::NAN; ROLES]; 3],
            radius: outline.radius_m,
            ..Self::default()
        };
        probes.add_sheets(arc, outline, wavelength);
        probes.add_tubes(outline, wavelength);
        probes
    }

    /// Sheets stand at nodes of the wall.
    fn add_sheets(&mut self, arc: &Arc, outline: &Outline, wavelength: f64) {
        let a = outline.radius_m;
        let [tm01, te11, te21] = MODES.map(|mode| Sheet::new(mode, a));
        self.overlap = [0.0, te11.overlap, te21.overlap];
        // The node at the back is no place for a sheet.
        let nodes = arc.wall_nodes.get(1..).unwrap_or_default();
        let nearest = |z: f64, below: usize| -> usize {
            let mut best = (f64::INFINITY, 0);
            for (n, node) in nodes.iter().enumerate().take(below) {
                let off = math::fabs(node.0 - z);
                if off < best.0 {
                    best = (off, n);
                }
            }
            best.1
        };
        let [front, back, source, near] = wanted(outline, wavelength, 0.3);
        let front = nearest(front, nodes.len());
        let back = nearest(back, front);
        let source = nearest(source, back);
        let near = nearest(near, back).max(source);
        for (role, place) in [front, back, source, near].into_iter().enumerate() {
            let Some(&(z, wall_panel)) = nodes.get(place) else {
                continue;
            };
            if role == NEAR_SOURCE && near == source {
                continue;
            }
            let axial = (role == NEAR_SOURCE).then_some(&tm01);
            for order in 0..3 {
                if order > 0 || axial.is_some() {
                    self.z[order][role] = z;
                }
            }
            if let Some(carrier) = self.carriers.get_mut(wall_panel) {
                let shares = [
                    axial.map(|sheet| sheet.wall),
                    Some(te11.wall),
                    Some(te21.wall),
                ];
                *carrier = Some(Carrier { role, shares });
            }
            let step = a / SHEET_PANELS as f64;
            for (n, (first, second)) in te11.shares.iter().zip(&te21.shares).enumerate() {
                let (from, to) = (n as f64 * step, (n + 1) as f64 * step);
                let axial = axial.and_then(|sheet| sheet.shares.get(n).copied());
                let shares = [axial, Some(*first), Some(*second)];
                self.push(Panel::new((from, z), (to, z)), Carrier { role, shares });
            }
        }
    }

    fn add_tubes(&mut self, outline: &Outline, wavelength: f64) {
        let half = self.tube_half();
        let positions = wanted(outline, wavelength, 0.4);
        for (role, z) in positions.into_iter().enumerate() {
            if role == NEAR_SOURCE {
                continue;
            }
            self.z[0][role] = z;
            for (rho, current) in self.tubes() {
                for (from, along) in [(z - half, [0.0, current]), (z, [current, 0.0])] {
                    let share = Share { along, round: 0.0 };
                    let shares = [Some(share), None, None];
                    let panel = Panel::new((rho, from), (rho, from + half));
                    self.push(panel, Carrier { role, shares });
                }
            }
        }
    }

    /// Radius and current of the tubes.
    fn tubes(&self) -> [(f64, f64); 2] {
        let first = Mode::TM01.root().unwrap_or(1.0);
        [first, CHI_TM02].map(|root| {
            let share = root / CHI_TM03;
            let slope = bessel_first(0, root).1;
            let current = bessel_first(0, first * share).0 / (slope * slope);
            (share * self.radius, current)
        })
    }

    fn push(&mut self, panel: Panel, carrier: Carrier) {
        self.panels.push(panel);
        self.carriers.push(Some(carrier));
    }

    fn tube_half(&self) -> f64 {
        TUBE_HALF * self.radius
    }

    /// What a probe of an order shows of a mode of unit amplitude at its place:
    /// transverse electric field (orders 1 and 2, m²), axial electric field on the
    /// axis (order 0, m). `square` is `h²`.
    pub(super) fn overlap(&self, order: usize, square: f64) -> f64 {
        if order > 0 {
            return self.overlap.get(order).copied().unwrap_or(1.0);
        }
        let half = self.tube_half();
        let chi = Mode::TM01.root().unwrap_or(1.0);
        let on_tubes: f64 = self
            .tubes()
            .iter()
            .map(|(rho, current)| current * bessel_first(0, chi * rho / self.radius).0)
            .sum();
        // Mean of cos(hz) over the triangle; h is small against 1/half.
        let (twelfth, square) = (1.0 / 12.0, square * half * half);
        on_tubes * half * (1.0 - twelfth * square * (1.0 - square / 30.0))
    }
}
