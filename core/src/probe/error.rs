//! What can be wrong with a probe's geometry.

use super::collision::axis_distance;
use super::wire::{Insulation, ProbeGeometry, Wire};

/// Which wire an error is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WireId {
    /// The fed wire.
    Feed,
    /// The screw with this index, from 0.
    Screw(usize),
}

/// Why a geometry cannot be computed: the quantity, its value and the range
/// that would be right (SI units, ends included).
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum ProbeError {
    /// Inside radius of the guide, m.
    GuideRadius {
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Radius of a wire, m.
    WireRadius {
        /// Which wire.
        wire: WireId,
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Insertion of a wire, m: it must not touch the wall opposite.
    Insertion {
        /// Which wire.
        wire: WireId,
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Distance of a wire from the back wall, m: neither the wire nor the feed's
    /// hole may touch that wall.
    AxialPosition {
        /// Which wire.
        wire: WireId,
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Angle of a wire round the axis, rad.
    Angle {
        /// Which wire.
        wire: WireId,
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Radius of the hole, m: the wire must fit in with room to spare.
    HoleRadius {
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Outer radius of the sleeve, m.
    InsulationRadius {
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Relative permittivity of the sleeve.
    Permittivity {
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Extra shunt capacitance, F.
    ShuntCapacitance {
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Two wires touch: distance between their axes, m.
    Collision {
        /// One wire.
        first: WireId,
        /// The other.
        second: WireId,
        /// Distance between the axes.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
}

/// Largest distance from the back wall, in guide radii.
const FARTHEST_RADII: f64 = 1000.0;
/// A hole narrower than this many wire radii is no coaxial line.
const TIGHTEST_HOLE: f64 = 1.001;
/// Largest angle taken, rad; beyond it the sine loses digits.
const LARGEST_ANGLE_RAD: f64 = 1000.0;

/// `Ok` when `value` is a number inside `range`.
fn within<E>(value: f64, range: [f64; 2], error: impl FnOnce(f64, [f64; 2]) -> E) -> Result<(), E> {
    if value >= range[0] && value <= range[1] {
        Ok(())
    } else {
        Err(error(value, range))
    }
}

/// Checks everything about a geometry.
pub(super) fn check(geometry: &ProbeGeometry) -> Result<(), ProbeError> {
    let a = geometry.guide_radius_m;
    within(a, [1e-3, 1.0], |value, range| ProbeError::GuideRadius {
        value,
        range,
    })?;
    let feed = &geometry.feed;
    check_wire(&feed.wire, WireId::Feed, a, 1e-6 * a)?;
    let r = feed.wire.radius_m;
    within(
        feed.hole_radius_m,
        [TIGHTEST_HOLE * r, a],
        |value, range| ProbeError::HoleRadius { value, range },
    )?;
    check_axial(&feed.wire, WireId::Feed, a, feed.hole_radius_m)?;
    if let Some(sleeve) = &feed.insulation {
        check_insulation(sleeve, r, a)?;
    }
    within(feed.shunt_capacitance_f, [0.0, 1e-9], |value, range| {
        ProbeError::ShuntCapacitance { value, range }
    })?;
    for (index, screw) in geometry.screws.iter().enumerate() {
        check_wire(screw, WireId::Screw(index), a, 0.0)?;
    }
    check_collisions(geometry, &feed.wire)
}

/// Checks a new distance of the fed wire from the back wall, and that it keeps
/// clear of the screws there.
pub(super) fn check_position(geometry: &ProbeGeometry, axial_m: f64) -> Result<(), ProbeError> {
    let wire = Wire {
        axial_m,
        ..geometry.feed.wire
    };
    check_axial(
        &wire,
        WireId::Feed,
        geometry.guide_radius_m,
        geometry.feed.hole_radius_m,
    )?;
    check_collisions(geometry, &wire)
}

fn check_wire(wire: &Wire, id: WireId, a: f64, shortest: f64) -> Result<(), ProbeError> {
    let r = wire.radius_m;
    within(r, [1e-6, 0.5 * a], |value, range| ProbeError::WireRadius {
        wire: id,
        value,
        range,
    })?;
    within(wire.insertion_m, [shortest, 2.0 * a - r], |value, range| {
        ProbeError::Insertion {
            wire: id,
            value,
            range,
        }
    })?;
    within(
        wire.angle_rad,
        [-LARGEST_ANGLE_RAD, LARGEST_ANGLE_RAD],
        |value, range| ProbeError::Angle {
            wire: id,
            value,
            range,
        },
    )?;
    check_axial(wire, id, a, r)
}

/// `room` is what the wire takes up on either side of its axis.
fn check_axial(wire: &Wire, id: WireId, a: f64, room: f64) -> Result<(), ProbeError> {
    within(wire.axial_m, [room, FARTHEST_RADII * a], |value, range| {
        ProbeError::AxialPosition {
            wire: id,
            value,
            range,
        }
    })
}

fn check_insulation(sleeve: &Insulation, r: f64, a: f64) -> Result<(), ProbeError> {
    within(sleeve.radius_m, [r, a], |value, range| {
        ProbeError::InsulationRadius { value, range }
    })?;
    within(
        sleeve.relative_permittivity,
        [1.0, 100.0],
        |value, range| ProbeError::Permittivity { value, range },
    )
}

fn check_collisions(geometry: &ProbeGeometry, fed: &Wire) -> Result<(), ProbeError> {
    let a = geometry.guide_radius_m;
    let feed = core::iter::once((WireId::Feed, fed));
    let screws = geometry
        .screws
        .iter()
        .enumerate()
        .map(|(i, w)| (WireId::Screw(i), w));
    let wires = feed.chain(screws).filter(|(_, w)| w.insertion_m > 0.0);
    for (n, (first, one)) in wires.clone().enumerate() {
        for (second, other) in wires.clone().take(n) {
            let distance = axis_distance(one, other, a);
            let range = [one.radius_m + other.radius_m, f64::INFINITY];
            within(distance, range, |value, range| ProbeError::Collision {
                first: second,
                second: first,
                value,
                range,
            })?;
        }
    }
    Ok(())
}
