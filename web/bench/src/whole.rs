//! The whole can of a design, prepared for many frequencies.

use std::sync::Arc;

use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSpectrum;
use tinwave_core::si::SiDesign;
use tinwave_core::whole_can::{CanBody, WholeCan, probe_geometry};

/// The can with its outside where that is known. `None` where the probe can't be
/// computed.
#[must_use]
pub fn whole_can(design: &Design, outside: Option<&Arc<OutsideSpectrum>>) -> Option<WholeCan> {
    design.check().ok()?;
    let si = SiDesign::new(design);
    let body = CanBody::of(design, &si, outside).ok()?;
    WholeCan::from_parts(body, &probe_geometry(&si), si.reference_ohm).ok()
}
