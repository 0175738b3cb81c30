//! A body made ready for many frequencies.

use alloc::vec::Vec;
use core::f64::consts::PI;

use super::arc::{Arc, Fineness, Panel};
use super::assembly::MOST_DISCS;
use super::error::OutsideError;
use super::mode_disc::{DISC_PANELS, Disc, MODES, ModeSheet};
use super::outline::Outline;
use super::samples::{Sampler, Samples};
use crate::constants::{SPEED_OF_LIGHT, wavenumber};
use crate::math;

/// How finely the arc is divided.
const FINENESS: Fineness = Fineness {
    per_wavelength: 14.0,
    at_rim: 3,
    at_corner: 1,
};
/// Most panels of a body.
const MOST_PANELS: usize = 240;
/// `k a` from which and up to which frequencies are taken.
const KA: (f64, f64) = (0.3, 6.0);

/// The outside of a can: everything that depends on the shape alone.
///
/// Method of moments for bodies of revolution, azimuthal orders 0, 1 and 2. Any
/// frequency up to the one it is made for may be asked, each on its own.
#[derive(Clone, Debug)]
pub struct PreparedOutside {
    pub(super) outline: Outline,
    pub(super) top_hz: f64,
    pub(super) arc: Arc,
    /// Panels of the discs, disc by disc.
    disc_panels: Vec<Panel>,
    pub(super) discs: Vec<Disc>,
    /// Disc that uses each panel of body and discs.
    pub(super) disc_on: Vec<Option<usize>>,
    pub(super) sheets: [ModeSheet; 3],
    pub(super) samples: Samples,
}

/// Places in the list of discs: probes near the mouth, the source at the back,
/// and the source for modes that would not reach the mouth from there.
pub(super) const FRONT_PROBE: usize = 0;
pub(super) const BACK_PROBE: usize = 1;
pub(super) const BACK_SOURCE: usize = 2;
pub(super) const NEAR_SOURCE: usize = 3;

impl PreparedOutside {
    /// Prepares an outline for frequencies up to `top_hz`.
    ///
    /// # Errors
    /// [`OutsideError`] for a shape that cannot be, is too large in wavelengths,
    /// or a frequency at which `k a` is not between 0.3 and 6.
    pub fn new(outline: &Outline, top_hz: f64) -> Result<Self, OutsideError> {
        outline.check()?;
        let (low_hz, high_hz) = frequency_range(outline.radius_m);
        if !(low_hz..=high_hz).contains(&top_hz) {
            return Err(OutsideError::Frequency {
                frequency_hz: top_hz,
                low_hz,
                high_hz,
            });
        }
        let wavelength = SPEED_OF_LIGHT / top_hz;
        let about = arc_length(outline) / wavelength * FINENESS.per_wavelength;
        let too_large = |panels| OutsideError::TooLarge {
            panels,
            most: MOST_PANELS,
        };
        if !(about < MOST_PANELS as f64) {
            return Err(too_large(about.min(1e9) as usize));
        }
        let arc = Arc::new(outline, wavelength, FINENESS);
        if arc.panels.len() > MOST_PANELS {
            return Err(too_large(arc.panels.len()));
        }
        let discs = discs(&arc, outline, wavelength);
        let mut prepared = Self {
            outline: *outline,
            top_hz,
            disc_panels: discs
                .iter()
                .flat_map(|disc| disc.panels(outline.radius_m))
                .collect(),
            disc_on: alloc::vec![None; arc.panels.len()],
            arc,
            discs,
            sheets: MODES.map(|mode| ModeSheet::new(mode, outline.radius_m)),
            samples: Samples::default(),
        };
        prepared.place_discs();
        prepared.sample();
        Ok(prepared)
    }

    fn place_discs(&mut self) {
        for (number, disc) in self.discs.iter().enumerate() {
            if let Some(place) = self.disc_on.get_mut(disc.wall_panel) {
                *place = Some(number);
            }
            self.disc_on.extend([Some(number); DISC_PANELS]);
        }
    }

    /// A panel of the body or, after those, of the discs.
    pub(super) fn panel(&self, number: usize) -> Option<&Panel> {
        match number.checked_sub(self.arc.panels.len()) {
            None => self.arc.panels.get(number),
            Some(place) => self.disc_panels.get(place),
        }
    }

    fn sample(&mut self) {
        let sampler = Sampler::new(wavenumber(self.top_hz), self.outline.widest_m());
        let mut samples = Samples::default();
        let body = || self.arc.panels.iter().enumerate();
        for (i, first) in body() {
            for (j, second) in body().skip(i) {
                sampler.add(&mut samples, (i, first), (j, second));
            }
        }
        let from = self.arc.panels.len();
        let disc_panels = || {
            self.disc_panels
                .iter()
                .enumerate()
                .map(|(n, panel)| (n / DISC_PANELS, (from + n, panel)))
        };
        for (disc, first) in disc_panels() {
            for second in body() {
                sampler.add(&mut samples, first, second);
            }
            // Each probe and each source.
            if disc <= BACK_PROBE {
                for (_, second) in disc_panels().filter(|(other, _)| *other >= BACK_SOURCE) {
                    sampler.add(&mut samples, first, second);
                }
            }
        }
        self.samples = samples;
    }

    /// The outline it was made for.
    #[must_use]
    pub const fn outline(&self) -> &Outline {
        &self.outline
    }

    /// Evaluations of the kernel that one frequency takes: a measure of its cost,
    /// about 15 ns each on a machine of 2020.
    #[must_use]
    pub fn kernel_evaluations(&self) -> usize {
        self.samples.distance.len()
    }

    /// Panels of the body.
    #[must_use]
    pub fn panels(&self) -> usize {
        self.arc.panels.len()
    }
}

/// Frequencies that a can of a radius can be prepared for, Hz.
#[must_use]
pub fn frequency_range(radius_m: f64) -> (f64, f64) {
    let scale = SPEED_OF_LIGHT / (2.0 * PI * radius_m);
    (KA.0 * scale, KA.1 * scale)
}

/// Length of the generating arc, m.
fn arc_length(outline: &Outline) -> f64 {
    use super::outline::Rim;
    let a = outline.radius_m;
    let out = outline.widest_m() - a;
    let more = match outline.rim {
        Rim::Bare => 0.0,
        Rim::Funnel { .. } => math::hypot(out, outline.front_m()),
        Rim::Flange { .. } => out,
        Rim::Choke { depth_m, .. } => out + depth_m,
    };
    a + outline.length_m + more
}

/// The discs: two probes a third of a wavelength apart near the mouth, a source
/// near the back, one between for modes below cutoff.
fn discs(arc: &Arc, outline: &Outline, wavelength: f64) -> Vec<Disc> {
    let (a, length) = (outline.radius_m, outline.length_m);
    let front = -(0.3 * a).min(0.2 * length);
    let back = front - (0.35 * wavelength).min(0.3 * length);
    let near_source = back - (0.7 * a).min(0.15 * length);
    let source = -length + (0.5 * a).min(0.2 * length);
    // Nodes of the wall, the one at its back left out.
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
    let front = nearest(front, nodes.len());
    let back = nearest(back, front);
    let source = nearest(source, back);
    let near_source = nearest(near_source, back).max(source);
    let mut discs: Vec<Disc> = [front, back, source, near_source]
        .iter()
        .filter_map(|n| nodes.get(*n))
        .map(|&(z, wall_panel)| Disc { z, wall_panel })
        .collect();
    discs.truncate(MOST_DISCS);
    if near_source == source {
        discs.pop();
    }
    discs
}
