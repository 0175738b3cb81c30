//! The can without what stands at its mouth: all that a search for something at its mouth depends on.

use std::f64::consts::PI;

use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::Design;
use tinwave_core::mouth::COVERED_KA;
use tinwave_core::outside::{Outline, PreparedOutside, Rim};
use tinwave_core::si::{hertz, metres};
use tinwave_protocol::beam::Radiated;

/// The bare can and the band's centre.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct BareCan {
    inside_diameter_um: u32,
    open_length_um: u32,
    centre_khz: u32,
}

impl BareCan {
    pub(super) const fn of(design: &Design) -> Self {
        Self {
            inside_diameter_um: design.can.inside_diameter_um,
            open_length_um: design.can.open_length_um,
            centre_khz: design.band.centre_khz(),
        }
    }

    pub(super) fn frequency_hz(&self) -> f64 {
        hertz(self.centre_khz)
    }

    pub(super) fn wavelength_m(&self) -> f64 {
        SPEED_OF_LIGHT / self.frequency_hz().max(1.0)
    }

    pub(super) const fn inside_diameter_um(&self) -> u32 {
        self.inside_diameter_um
    }

    pub(super) fn radius_m(&self) -> f64 {
        0.5 * metres(self.inside_diameter_um)
    }

    /// The body with something at its rim.
    pub(super) fn outline(&self, rim: Rim) -> Outline {
        Outline {
            radius_m: self.radius_m(),
            length_m: metres(self.open_length_um),
            rim,
        }
    }

    /// Whether TE11 and the computation reach the band's centre.
    pub(super) fn is_covered(&self) -> bool {
        let ka = 2.0 * PI * self.radius_m() / self.wavelength_m();
        (1.85..=COVERED_KA.1).contains(&ka) && self.outline(Rim::Bare).check().is_ok()
    }

    /// Solves for one body; `None` where it can't be or is too large.
    pub(super) fn solve(&self, rim: Rim) -> Option<Radiated> {
        let frequency = self.frequency_hz();
        let prepared = PreparedOutside::new(&self.outline(rim), frequency).ok()?;
        let solution = prepared.solve(frequency).ok()?;
        let mode = solution.te11();
        let power = mode.radiated_power();
        let level = |theta: f64| {
            let field = mode.far_field(theta);
            (field.theta.norm_sqr().max(field.phi.norm_sqr()) / power).max(1e-30)
        };
        let ahead = level(0.0);
        let rear = (90..=180_u32)
            .step_by(3)
            .map(|d| level(f64::from(d) * (PI / 180.0)));
        let highest = rear.fold(0.0, f64::max);
        let solved = Radiated {
            gain_dbi: 10.0 * ahead.log10(),
            front_to_back_db: 10.0 * (ahead / level(PI)).log10(),
            front_to_rear_db: 10.0 * (ahead / highest).log10(),
        };
        solved.gain_dbi.is_finite().then_some(solved)
    }
}
