//! A radio link: its losses, its budget both ways, whether its path is clear, how
//! exactly to aim, what the law allows, and from where on people may stay.

mod aim;
mod budget;
mod building_material;
mod coax_line;
mod error;
mod foliage;
mod free_space;
mod fresnel_zone;
mod knife_edge;
pub mod lawful;
mod link_end;
mod path_clearance;
mod pointing;
mod polarisation;
mod reach;
mod receiver_noise;
mod safe_distance;
mod sensitivity;
mod wall;
mod what_buys_most;

pub use aim::{Aim, degrees_per_mm, sideways_of_turn_m, spot_width_m, turn_of_lever_rad};
pub use budget::{Budget, BudgetItem, BudgetItemKind, Link};
pub use building_material::BuildingMaterial;
pub use coax_line::{CoaxBasis, CoaxLine, CoaxType, Connector};
pub use error::{LinkError, LinkQuantity};
pub use foliage::{
    FoliageLoss, WoodlandSet, early_itu_loss_db, foliage_loss, specific_attenuation_db_per_m,
    weissberger_loss_db, woodland_loss_db,
};
pub use free_space::{free_space_distance_m, free_space_loss_db, wavelength_m};
pub use fresnel_zone::{EARTH_RADIUS_M, STANDARD_EARTH_FACTOR, earth_bulge_m, fresnel_radius_m};
pub use knife_edge::{diffraction_parameter, knife_edge_loss_db};
pub use link_end::{End, LinkEnd};
pub use path_clearance::{
    CLEARANCE_WANTED, Clearance, Obstacle, PathClearance, PathProfile,
    equal_heights_over_flat_ground_m,
};
pub use pointing::{MOST_POINTING_LOSS_DB, error_for_loss_rad, pointing_loss_db};
pub use polarisation::{
    MOST_POLARISATION_LOSS_DB, Polarisation, Sense, polarisation_efficiency, polarisation_loss_db,
    practical_polarisation_loss_db,
};
pub use receiver_noise::{
    ReceiveStation, STANDARD_TEMPERATURE_K, sensitivity_from_noise_dbm, thermal_noise_dbm,
};
pub use safe_distance::{
    DistanceHeldBy, Emitter, ExposureStandard, Reflection, SafeDistance, far_field_distance_m,
    power_density_w_m2, safe_distance,
};
pub use sensitivity::{ChannelWidth, Coding, OlderRate};
pub use wall::Wall;
pub use what_buys_most::{BETTER_CABLES, LARGER_ANTENNA_DB, LinkChange, Saving};
