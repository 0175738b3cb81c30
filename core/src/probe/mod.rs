//! The wire probe of a round guide: input admittance and the waves it launches.
//!
//! A coaxial line ends in the wall of a round guide closed at the back; its inner
//! conductor goes on into the guide as a radial wire. Tuning screws may stand
//! beside it. SI units; the reference plane of the admittance is the guide's inner
//! wall; time convention `e^(+jωt)`.

mod assembly;
mod axial_split;
mod bessel_table;
mod collision;
mod elimination;
mod error;
mod expansion;
mod frill;
mod guide_condition;
mod modal_field;
mod mutual;
mod prepared;
mod reaction;
mod short_range;
mod sleeve;
mod solution;
mod wire;

pub use error::{ProbeError, WireId};
pub use guide_condition::{GuideCondition, GuideEnd};
pub use prepared::PreparedProbe;
pub use solution::{ModeExcitation, ProbeSolution};
pub use wire::{Feed, Insulation, ProbeGeometry, Wire};
