//! A disc across the can that carries the current of one mode, as source or probe.
//!
//! A sheet of current in the shape of a mode's transverse electric field launches
//! that mode alone, and tested on such a sheet a field shows that mode alone: the
//! modes are orthogonal. So a disc far back feeds the can, and two discs near the
//! mouth say how much of the mode goes out and comes back. The radial current
//! goes on along the wall for one panel, so that no charge stays on the edge.

use alloc::vec::Vec;

use super::arc::Panel;
use crate::mouth::real_bessel::bessel_first;
use crate::quadrature::GaussLegendre;
use crate::waveguide_mode::{Family, Mode};

/// The modes that the outside is solved for; the place is the azimuthal order.
pub const MODES: [Mode; 3] = [Mode::TM01, Mode::TE11, Mode::TE21];

/// Panels of a disc.
pub(super) const DISC_PANELS: usize = 5;

/// Current of one panel: along the arc at its two ends, and round the axis.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Share {
    pub(super) along: [f64; 2],
    pub(super) round: f64,
}

/// The current of a mode on a disc.
#[derive(Clone, Debug)]
pub(super) struct ModeSheet {
    /// Of the disc's panels.
    pub(super) disc: Vec<Share>,
    /// Of the wall's panel in front of it.
    pub(super) wall: Share,
    /// Overlap with the mode's true field of unit amplitude, `∫(e·e)ρ dρ`, m².
    pub(super) overlap: f64,
}

/// A disc: where it stands and which panel of the wall begins there.
#[derive(Clone, Copy, Debug)]
pub(super) struct Disc {
    pub(super) z: f64,
    pub(super) wall_panel: usize,
}

impl Disc {
    /// Its panels, axis to wall.
    pub(super) fn panels(&self, radius: f64) -> impl Iterator<Item = Panel> + '_ {
        let step = radius / DISC_PANELS as f64;
        let z = self.z;
        (0..DISC_PANELS).map(move |n| {
            let (from, to) = (n as f64 * step, (n + 1) as f64 * step);
            Panel::new((from, z), (to, z))
        })
    }
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

impl ModeSheet {
    /// Of one of [`MODES`] in a can of the given radius.
    pub(super) fn new(mode: Mode, radius: f64) -> Self {
        let root = mode.root().unwrap_or(1.0);
        let step = radius / DISC_PANELS as f64;
        let field = |rho: f64| shape(mode, root * rho / radius);
        let rule = GaussLegendre::new(4);
        let mut overlap = 0.0;
        let disc = (0..DISC_PANELS)
            .map(|n| {
                let ends = [n as f64 * step, (n + 1) as f64 * step];
                let [from, to] = ends;
                let share = Share {
                    along: ends.map(|rho| rho * field(rho).0),
                    round: rule.integrate(from, to, |rho| field(rho).1) / step,
                };
                let [start, end] = share.along;
                overlap += rule.integrate(from, to, |rho| {
                    let (radial, round) = field(rho);
                    let along = start + (end - start) * (rho - from) / step;
                    along * radial + share.round * round * rho
                });
                share
            })
            .collect();
        let wall = Share {
            along: [radius * field(radius).0, 0.0],
            round: 0.0,
        };
        Self {
            disc,
            wall,
            overlap,
        }
    }
}
