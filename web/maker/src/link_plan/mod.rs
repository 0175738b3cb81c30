//! A link that is planned with a can: what the maker enters about it, and what follows.
//!
//! [`LinkPlan`] is what was entered, [`PlanNumber`] each of its numbers with range and
//! units, [`text`] how it is kept on the device. [`PlanAnswer`] is what follows from it:
//! budget both ways, reach, path, aim, law, safe distance, as data without words.

mod aim;
mod answer;
mod antenna;
mod law;
mod number;
mod path;
mod plan;
mod quantity;
mod receiver;
mod safe;
pub mod text;

pub use aim::{AimAnswer, PlaneAim, WRONG_BY_DEG};
pub use answer::{
    EndAnswer, LineLoss, LinkAnswer, PlanAnswer, Reach, TreesLoss, WallLoss, materials_at,
};
pub use antenna::{Knowledge, PlanAntenna};
pub use law::{CheckedLimit, LawAnswer, LawStanding, UncheckedLimit};
pub use number::{PlanNumber, PlanRefusal};
pub use path::{LossOfPath, PathAnswer, PathState, Spot};
pub use plan::{
    EndAntenna, FarPolarisation, LinkPlan, MOST_OBSTACLES, MOST_WALLS, PlanEnd, Rate, Role,
    SensitivityBy,
};
pub use quantity::PlanQuantity;
pub use receiver::ReceiverAnswer;
pub use safe::{NO_CLOSER_M, SafeAnswer};
