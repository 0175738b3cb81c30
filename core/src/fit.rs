//! Trying a trade size in place of the can at hand.

use crate::constants::SPEED_OF_LIGHT;
use crate::design::{Design, Micrometres};
use crate::si::{SiDesign, metres, micrometres};
use crate::waveguide_mode::Mode;

/// The same design in a tube of another inside diameter, for the search of
/// [`crate::best_cut`]. Length: the stated one, or where none is known enough
/// for a probe at any useful distance: three quarters of a guide wavelength and
/// a diameter more, at most four wavelengths. Screws are left out: they belong
/// to the old can.
#[must_use]
pub fn trial_design(
    base: &Design,
    inside_diameter_um: Micrometres,
    open_length_um: Option<Micrometres>,
) -> Design {
    let mut design = base.clone();
    design.can.inside_diameter_um = inside_diameter_um;
    design.screws.clear();
    design.can.open_length_um = open_length_um.unwrap_or_else(|| {
        let si = SiDesign::new(&design);
        let centre = si.centre_hz();
        let most = 4.0 * SPEED_OF_LIGHT / centre;
        let guide = Mode::TE11
            .guide_wavelength_m(si.radius_m, centre)
            .unwrap_or(most);
        micrometres((0.75 * guide + metres(inside_diameter_um)).min(most))
    });
    design
}
