//! The fit: which small changes explain the measurement.

use tinwave_core::diagnosis::{Diagnosis, DiagnosisError, DiagnosisSettings, Knowledge, diagnose};

use super::entered::{Entered, decimal};
use crate::outsides::outside_of;
use crate::request::Request;

/// Fits the measurement, with what was known of this can before.
pub(super) fn find(
    request: &Request,
    entered: &Entered,
    known: &Knowledge,
) -> Result<Diagnosis, DiagnosisError> {
    let design = request.design();
    let usual = DiagnosisSettings::default();
    let settings = DiagnosisSettings {
        noise: decimal(request.get("care")).unwrap_or(usual.noise),
        knowledge: known.clone(),
        ..usual
    };
    let outside = outside_of(design);
    diagnose(design, outside.as_ref(), &entered.measurement, settings)
}
