//! How deep something may stick in through the wall before the match moves: the rivets
//! or screws of a bracket, the tip of a fixing screw.
//!
//! Rivet and probe are solved together, as tuning screws are ([`crate::probe`],
//! [`crate::screw_search`]). The rivet counts as a thin rod with a flat end, as deep as
//! it sticks in; below a depth of about its own diameter a rod is no good picture of
//! it, and the depth found is then a rough one.

use alloc::sync::Arc;
use alloc::vec::Vec;
use core::f64::consts::PI;

use crate::constants::SPEED_OF_LIGHT;
use crate::design::{Design, Micrometres, Mouth, Screw};
use crate::design_error::{DesignError, Field};
use crate::judge::least_mouth_distance_m;
use crate::math;
use crate::outside::OutsideSpectrum;
use crate::screw_search::{Band, DEEPEST, worst_vswr};
use crate::si::{SiDesign, metres, micrometres};

/// The change of the worst VSWR that is usually asked about.
pub const USUAL_CHANGE: f64 = 0.1;

/// Where something sticks in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct WallPlace {
    /// From the inside of the back wall to its axis.
    pub axial_um: Micrometres,
    /// Round the axis from the probe, thousandths of a degree (180,000: opposite).
    pub angle_millideg: i32,
    /// Its diameter, 100 to 20,000.
    pub diameter_um: Micrometres,
}

/// How deep it may stick in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DepthLimit {
    /// Up to here the worst VSWR moves by less.
    Within {
        /// Largest depth that was found to move it less.
        depth_um: Micrometres,
        /// Index of the alternative that allows least.
        alternative: usize,
    },
    /// Every depth up to here, in every alternative, moves it less; more was not tried.
    Beyond {
        /// Largest depth tried.
        tried_um: Micrometres,
    },
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum IntrusionError {
    /// A number of the design or of a place is outside its hard range.
    Design(DesignError),
    /// The change must be a number above 0.
    Change(f64),
    /// The place lies on the probe's hole, on a screw or on another place of the same
    /// alternative, or runs into the back wall.
    Taken(WallPlace),
    /// The place is nearer to the mouth than the model holds, or beyond it.
    NearMouth {
        /// The place.
        place: WallPlace,
        /// The last that can be asked about, from the inside of the back wall.
        last_um: Micrometres,
    },
    /// The can itself isn't computed.
    NotComputed,
}

impl From<DesignError> for IntrusionError {
    fn from(error: DesignError) -> Self {
        Self::Design(error)
    }
}

/// Depths of the scan, from flush to the deepest.
const SCANNED: u32 = 24;
/// The limit is found to this.
const WITHIN_UM: Micrometres = 10;

/// The greatest depth at which rivets may stick in before the worst VSWR over the band
/// moves by `change`, up or down. The places of one alternative are all taken at once,
/// equally deep; of several alternatives (a bracket here or there) the least depth holds.
///
/// Depths are scanned first, up to 0.19 wavelengths (short of a rod's resonance) or 1.6
/// guide radii, so that a VSWR which moves out and back again is seen, if it stays out
/// for a step of the scan; then the first step over is halved.
/// [`DepthLimit::Beyond`] with 0 where no alternative is given.
///
/// # Errors
/// [`IntrusionError`].
pub fn deepest_intrusion<P: AsRef<[WallPlace]>>(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    alternatives: &[P],
    change: f64,
) -> Result<DepthLimit, IntrusionError> {
    design.check()?;
    if change.is_nan() || change <= 0.0 {
        return Err(IntrusionError::Change(change));
    }
    let si = SiDesign::new(design);
    for places in alternatives {
        check(design, &si, places.as_ref())?;
    }
    let band = Band::new(design, outside).ok_or(IntrusionError::NotComputed)?;
    let without = worst_vswr(design, &band, &[]).ok_or(IntrusionError::NotComputed)?;
    let moves_less = |places: &[WallPlace], depth_um: Micrometres| {
        let rods: Vec<Screw> = places.iter().map(|place| rod(*place, depth_um)).collect();
        let worst = worst_vswr(design, &band, &rods);
        worst.is_some_and(|vswr| math::fabs(vswr - without) < change)
    };
    let wavelength = SPEED_OF_LIGHT / si.centre_hz();
    let mut least = micrometres((DEEPEST * wavelength).min(1.6 * si.radius_m));
    let mut limit = DepthLimit::Beyond {
        tried_um: if alternatives.is_empty() { 0 } else { least },
    };
    for (alternative, places) in alternatives.iter().enumerate() {
        let moves_less = |depth_um| moves_less(places.as_ref(), depth_um);
        if let Some(depth_um) = first_over(least, moves_less) {
            least = depth_um;
            limit = DepthLimit::Within {
                depth_um,
                alternative,
            };
        }
    }
    Ok(limit)
}

/// The last depth that moves less before the first that moves more; `None` where none
/// up to `deepest` does.
fn first_over(deepest: Micrometres, moves_less: impl Fn(Micrometres) -> bool) -> Option<u32> {
    let step = (deepest / SCANNED).max(1);
    let (mut good, mut bad) = (0, None);
    while good < deepest && bad.is_none() {
        let next = good.saturating_add(step).min(deepest);
        if moves_less(next) {
            good = next;
        } else {
            bad = Some(next);
        }
    }
    let mut bad = bad?;
    while bad - good > WITHIN_UM {
        let middle = good.midpoint(bad);
        if moves_less(middle) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    Some(good)
}

const fn rod(place: WallPlace, depth_um: Micrometres) -> Screw {
    Screw {
        axial_um: place.axial_um,
        angle_millideg: place.angle_millideg,
        depth_um,
        diameter_um: place.diameter_um,
    }
}

/// Last place along the can that can be asked about, from the inside of the back wall.
#[must_use]
pub fn last_place_um(design: &Design) -> Micrometres {
    let si = SiDesign::new(design);
    if design.mouth == Mouth::Absorbing {
        return design.can.open_length_um;
    }
    micrometres((si.open_length_m - least_mouth_distance_m(&si)).max(0.0))
}

fn check(design: &Design, si: &SiDesign, places: &[WallPlace]) -> Result<(), IntrusionError> {
    let last_um = last_place_um(design);
    // Holes of the wall: along, round, radius.
    let mut holes = alloc::vec![(si.backshort_distance_m, 0.0, si.hole_radius_m)];
    let screws = si.screws.iter();
    holes.extend(screws.map(|screw| (screw.axial_m, screw.angle_rad, screw.radius_m)));
    for place in places.iter().copied() {
        Field::ScrewAxial.check(i64::from(place.axial_um))?;
        Field::ScrewAngle.check(i64::from(place.angle_millideg))?;
        Field::ScrewDiameter.check(i64::from(place.diameter_um))?;
        if place.axial_um > last_um {
            return Err(IntrusionError::NearMouth { place, last_um });
        }
        let axial_m = metres(place.axial_um);
        let angle_rad = f64::from(place.angle_millideg) * (PI / 180_000.0);
        let radius_m = 0.5 * metres(place.diameter_um);
        let touches = |(along, round, hole_m): &(f64, f64, f64)| {
            let chord = 2.0 * si.radius_m * math::sin(0.5 * (angle_rad - round));
            math::hypot(axial_m - along, chord) <= radius_m + hole_m
        };
        if axial_m <= radius_m || holes.iter().any(touches) {
            return Err(IntrusionError::Taken(place));
        }
        holes.push((axial_m, angle_rad, radius_m));
    }
    Ok(())
}
