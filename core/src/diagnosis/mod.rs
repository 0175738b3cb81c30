//! Why a measured can differs from its drawing: which small changes of its
//! dimensions explain the measurement, how surely, and what to do.
//!
//! Weighted least squares with the true solver, the maker's tolerances as what was
//! known before. Sources: D. W. Marquardt, *J. SIAM* 11 (1963) 431-441; A. Tarantola,
//! *Inverse Problem Theory*, SIAM 2005, section 3.2 (from memory).

mod advice;
mod conclusion;
mod fit;
mod knowledge;
mod measurement;
mod port_length;
mod target;

pub use advice::{Advice, AdviceSteps, Remedy, worst_vswr_as_built};
pub use conclusion::{Conclusion, Diagnosis, Estimate};
pub use fit::{DiagnosisError, DiagnosisSettings, DiagnosisSteps, diagnose};
pub use knowledge::Knowledge;
pub use measurement::{Measurement, MeasurementError};
pub use port_length::{remove_port_length, with_port_length};
