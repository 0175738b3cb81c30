//! The fit: which small changes explain the measurement.

use tinwave_core::diagnosis::{Diagnosis, DiagnosisError, DiagnosisSettings, diagnose};

use super::entered::{Entered, decimal};
use super::{known, log};
use crate::outsides::outside_of;
use crate::request::Request;

/// Fits the measurement, with what earlier measurements of this can have told.
pub(super) fn find(request: &Request, entered: &Entered) -> Result<Diagnosis, DiagnosisError> {
    let design = request.design();
    let usual = DiagnosisSettings::default();
    let settings = DiagnosisSettings {
        noise: decimal(request.get("care")).unwrap_or(usual.noise),
        knowledge: known::read(log::known(request)).unwrap_or(usual.knowledge),
        ..usual
    };
    diagnose(
        design,
        outside_of(design).as_ref(),
        &entered.measurement,
        settings,
    )
}
