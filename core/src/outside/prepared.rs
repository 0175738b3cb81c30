//! A body made ready for many frequencies.

use core::f64::consts::PI;

use super::arc::{Arc, Fineness, Panel};
use super::error::OutsideError;
use super::mode_probe::{BACK_PROBE, BACK_SOURCE, Carrier, ModeProbes};
use super::outline::Outline;
use super::samples::{Sampler, Samples};
use crate::constants::{SPEED_OF_LIGHT, wavenumber};
use crate::math;

/// How finely the arc is divided.
const FINENESS: Fineness = Fineness {
    per_wavelength: 16.0,
    at_rim: 4,
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
    pub(super) probes: ModeProbes,
    pub(super) samples: Samples,
}

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
        if about.is_nan() || about >= MOST_PANELS as f64 {
            return Err(too_large(about.min(1e9) as usize));
        }
        let arc = Arc::new(outline, wavelength, FINENESS);
        if arc.panels.len() > MOST_PANELS {
            return Err(too_large(arc.panels.len()));
        }
        let mut prepared = Self {
            outline: *outline,
            top_hz,
            probes: ModeProbes::new(&arc, outline, wavelength),
            arc,
            samples: Samples::default(),
        };
        prepared.sample();
        Ok(prepared)
    }

    /// A panel of the body or, after those, of the probes.
    pub(super) fn panel(&self, number: usize) -> Option<&Panel> {
        match number.checked_sub(self.arc.panels.len()) {
            None => self.arc.panels.get(number),
            Some(place) => self.probes.panels.get(place),
        }
    }

    fn sample(&mut self) {
        let sampler = Sampler::new(wavenumber(self.top_hz), self.outline.widest_m());
        let mut samples = Samples::default();
        let count = self.arc.panels.len();
        let pairs = count * (count + 1) / 2 + count * self.probes.panels.len();
        Sampler::reserve(&mut samples, pairs);
        let body = || self.arc.panels.iter().enumerate();
        for (i, first) in body() {
            for (j, second) in body().skip(i) {
                sampler.add(&mut samples, (i, first), (j, second));
            }
        }
        let from = self.arc.panels.len();
        let carriers = self.probes.carriers.get(from..).unwrap_or_default();
        let probes = || {
            let carriers = carriers.iter().flatten();
            let panels = self.probes.panels.iter().enumerate().zip(carriers);
            panels.map(|((n, panel), carrier)| ((from + n, panel), carrier))
        };
        for (first, carrier) in probes() {
            for second in body() {
                sampler.add(&mut samples, first, second);
            }
            // Each probe and each source of the same order.
            if carrier.role <= BACK_PROBE {
                let same_orders = |other: &Carrier| {
                    let both = carrier.shares.iter().zip(&other.shares);
                    both.into_iter().any(|(a, b)| a.is_some() && b.is_some())
                };
                let sources =
                    probes().filter(|(_, other)| other.role >= BACK_SOURCE && same_orders(other));
                for (second, _) in sources {
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
    /// about 30 ns each, all else included, on a machine of 2020.
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
