//! The outside of a can as a line turned about the axis: closed back, wall, and
//! what stands at the mouth.

use super::error::OutsideError;
use crate::design::{Design, Mouth};
use crate::math;
use crate::si::{SiDesign, metres};

/// What stands at the rim of the can's straight wall. Sheet of no thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Rim {
    /// Nothing.
    Bare,
    /// A conical funnel.
    Funnel {
        /// Radius of its wide end, m; more than the can's.
        mouth_radius_m: f64,
        /// Angle of its wall to the axis, rad; above 0 and below a right angle.
        half_angle_rad: f64,
    },
    /// A flat ring in the plane of the rim.
    Flange {
        /// Outside radius, m; more than the can's.
        outside_radius_m: f64,
    },
    /// A cup round the can, open to the front, its rim in the plane of the can's.
    Choke {
        /// Inside radius of the cup, m; more than the can's.
        outside_radius_m: f64,
        /// Depth of the cup, m; less than the can's length.
        depth_m: f64,
    },
}

/// Shape of the whole body. The rim lies at z = 0, the back wall at `-length_m`.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Outline {
    /// Radius of the can, m.
    pub radius_m: f64,
    /// From the back wall to the rim, m.
    pub length_m: f64,
    /// What stands at the rim.
    pub rim: Rim,
}

/// Least step from the can's radius to the rim's, as a share of the can's.
const LEAST_STEP: f64 = 0.01;

impl Outline {
    /// The outline of a design; `None` where the guide is taken to go on for ever.
    #[must_use]
    pub fn new(design: &Design, si: &SiDesign) -> Option<Self> {
        let half = |um: u32| 0.5 * metres(um);
        let rim = match design.mouth {
            Mouth::Absorbing => return None,
            Mouth::Open => Rim::Bare,
            Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg,
            } => Rim::Funnel {
                mouth_radius_m: half(mouth_diameter_um),
                half_angle_rad: f64::from(half_angle_millideg)
                    * (core::f64::consts::PI / 180_000.0),
            },
            Mouth::Flange {
                outside_diameter_um,
            } => Rim::Flange {
                outside_radius_m: half(outside_diameter_um),
            },
            Mouth::Choke {
                outside_diameter_um,
                depth_um,
            } => Rim::Choke {
                outside_radius_m: half(outside_diameter_um),
                depth_m: metres(depth_um),
            },
        };
        Some(Self {
            radius_m: si.radius_m,
            length_m: si.open_length_m,
            rim,
        })
    }

    /// How far the body reaches in front of the rim, m.
    #[must_use]
    pub fn front_m(&self) -> f64 {
        match self.rim {
            Rim::Funnel {
                mouth_radius_m,
                half_angle_rad,
            } => (mouth_radius_m - self.radius_m) / math::tan(half_angle_rad),
            _ => 0.0,
        }
    }

    /// Largest radius of the body, m.
    #[must_use]
    pub const fn widest_m(&self) -> f64 {
        match self.rim {
            Rim::Bare => self.radius_m,
            Rim::Funnel { mouth_radius_m, .. } => mouth_radius_m,
            Rim::Flange { outside_radius_m }
            | Rim::Choke {
                outside_radius_m, ..
            } => outside_radius_m,
        }
    }

    /// Checks that the parts can stand together.
    ///
    /// # Errors
    /// The size that cannot be, with what would be right.
    pub fn check(&self) -> Result<(), OutsideError> {
        if !(self.radius_m > 0.0 && self.length_m > 0.0) {
            return Err(OutsideError::NotASize {
                radius_m: self.radius_m,
                length_m: self.length_m,
            });
        }
        let least_m = self.radius_m * (1.0 + LEAST_STEP);
        let outside_m = self.widest_m();
        if self.rim != Rim::Bare && (outside_m.is_nan() || outside_m < least_m) {
            return Err(OutsideError::RimNotWider { outside_m, least_m });
        }
        match self.rim {
            Rim::Choke { depth_m, .. } => {
                let most_m = self.length_m * (1.0 - LEAST_STEP);
                if !(depth_m > 0.0 && depth_m <= most_m) {
                    return Err(OutsideError::CupTooDeep { depth_m, most_m });
                }
            }
            Rim::Funnel { half_angle_rad, .. } => {
                let right = core::f64::consts::FRAC_PI_2;
                if !(half_angle_rad > 0.0 && half_angle_rad <= right) {
                    return Err(OutsideError::FunnelAngle { half_angle_rad });
                }
            }
            _ => {}
        }
        Ok(())
    }
}
