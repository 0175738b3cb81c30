//! A can with some of its dimensions changed a little: what fits and tolerances
//! ask again and again.

use alloc::sync::Arc;
use alloc::vec::Vec;

use crate::complex::Complex;
use crate::design::Design;
use crate::design_error::DesignError;
use crate::dimension::Dimension;
use crate::outside::OutsideSpectrum;
use crate::probe::PreparedProbe;
use crate::reflection::PointMatch;
use crate::si::SiDesign;
use crate::whole_can::{CanBody, CanError, probe_geometry};

/// A design whose dimensions may be changed as real numbers.
#[derive(Clone, Debug)]
pub struct ChangedCan {
    body: CanBody,
    nominal: SiDesign,
    /// The last probe made ready, with the design it was made from.
    ready: Option<(SiDesign, PreparedProbe)>,
}

impl ChangedCan {
    /// Of a design, with its outside solved if it is.
    ///
    /// # Errors
    /// A number outside its hard range; `Ok(None)` where the mouth needs the outside
    /// and none is given.
    pub fn new(
        design: &Design,
        outside: Option<&Arc<OutsideSpectrum>>,
    ) -> Result<Option<Self>, DesignError> {
        design.check()?;
        let nominal = SiDesign::new(design);
        Ok(CanBody::of(design, &nominal, outside)
            .ok()
            .map(|body| Self {
                body,
                nominal,
                ready: None,
            }))
    }

    /// The design without changes.
    #[must_use]
    pub const fn nominal(&self) -> &SiDesign {
        &self.nominal
    }

    /// Whether the mouth is covered at a frequency.
    #[must_use]
    pub fn covers(&self, frequency_hz: f64) -> bool {
        self.body.condition(frequency_hz).is_ok()
    }

    /// The design with changes added, each in the unit of [`Dimension::of`].
    #[must_use]
    pub fn changed(&self, changes: &[(Dimension, f64)]) -> SiDesign {
        let mut si = self.nominal.clone();
        for (dimension, change) in changes {
            dimension.set(&mut si, dimension.of(&self.nominal) + change);
        }
        si
    }

    /// Reflection at each frequency (Hz) of a changed design, against its reference.
    ///
    /// Capacitance is added to the admittance and may be negative here: less than the
    /// model's own. A probe that only moved, or only got another capacitance or can
    /// length, is not made ready anew.
    ///
    /// # Errors
    /// [`CanError`] where the probe is impossible or the mouth not covered.
    pub fn reflections(
        &mut self,
        si: &SiDesign,
        frequencies_hz: &[f64],
    ) -> Result<Vec<Complex>, CanError> {
        let body = self.body.resized(si.radius_m, si.open_length_m);
        let probe = self.probe(si)?;
        frequencies_hz
            .iter()
            .map(|hz| {
                let condition = body.condition(*hz)?;
                let omega = 2.0 * core::f64::consts::PI * hz;
                let admittance = probe.input_admittance(*hz, &condition)
                    + Complex::new(0.0, omega * si.shunt_capacitance_f);
                Ok(PointMatch::from_admittance(admittance, si.reference_ohm).reflection)
            })
            .collect()
    }

    /// A probe ready for a design but for its capacitance, moved from the last one
    /// where that is enough.
    fn probe(&mut self, si: &SiDesign) -> Result<PreparedProbe, CanError> {
        let reusable = self.ready.as_ref().filter(|(made, _)| same_probe(made, si));
        if let Some((made, probe)) = reusable {
            if made.backshort_distance_m == si.backshort_distance_m {
                return Ok(probe.clone());
            }
            return Ok(probe.at_backshort_distance(si.backshort_distance_m)?);
        }
        let mut geometry = probe_geometry(si);
        geometry.feed.shunt_capacitance_f = 0.0;
        let probe = PreparedProbe::new(&geometry)?;
        self.ready = Some((si.clone(), probe.clone()));
        Ok(probe)
    }
}

/// Whether a probe made ready for one design serves the other, moved or loaded.
fn same_probe(a: &SiDesign, b: &SiDesign) -> bool {
    a.radius_m == b.radius_m
        && a.probe_length_m == b.probe_length_m
        && a.wire_radius_m == b.wire_radius_m
        && a.hole_radius_m == b.hole_radius_m
        && a.sleeve == b.sleeve
        && a.screws == b.screws
}
