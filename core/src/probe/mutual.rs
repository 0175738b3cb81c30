//! Near part of the reaction between two different wires, direct and through the
//! wall, and between the feed's dipole at the wall and a wire. It matters only
//! when they stand within a few split widths.

use alloc::vec::Vec;

use super::expansion::{BasisValues, Expansion};
use super::frill::FRILL_ROW;
use super::reaction::{Block, Nodes};
use super::short_range::{point_potentials, point_slopes};
use crate::math;
use crate::quadrature::GaussLegendre;

/// Points along each wire.
const POINTS: usize = 24;
/// Beyond this many widths the near part is below 1e-5 of the field.
const NOTHING_BEYOND: f64 = 6.0;

/// How the two stand to each other.
#[derive(Clone, Copy, Debug)]
pub(super) struct Placing {
    /// Guide radius, m.
    pub(super) guide_radius: f64,
    /// Axial distance, m.
    pub(super) distance: f64,
    /// Cosine of the angle between them.
    pub(super) cosine: f64,
    /// 1, or -1 for an image in the back wall.
    pub(super) sign: f64,
    /// Split width, m.
    pub(super) width: f64,
}

/// Adds the near part of the reaction of two wires.
pub(super) fn add_mutual(
    block: &mut Block,
    nodes: &Nodes,
    row: &Expansion,
    column: &Expansion,
    placing: &Placing,
) {
    let rule = GaussLegendre::new(POINTS);
    let places = |wire: &Expansion| -> Vec<(f64, f64, BasisValues)> {
        let all = rule.on(0.0, wire.length);
        all.map(|(s, w)| (s, w, wire.at(s))).collect()
    };
    let (rows, columns) = (places(row), places(column));
    let a = placing.guide_radius;
    let apart = placing.distance * placing.distance;
    let limit = NOTHING_BEYOND * placing.width;
    for (s, w, f) in &rows {
        let p = a - s;
        for (s2, w2, f2) in &columns {
            let weight = placing.sign * w * w2;
            for (q, mirror) in [(a - s2, 1.0), (a + s2, -1.0)] {
                let r_sqr = p * p + q * q - 2.0 * p * q * placing.cosine + apart;
                if r_sqr > limit * limit {
                    continue;
                }
                let at = point_potentials(math::sqrt(r_sqr), placing.width);
                let total = nodes
                    .k_sqr
                    .map(|k2| weight * (at.current + k2 * at.dynamic));
                let mut current = total;
                for (c, k2) in current.iter_mut().zip(nodes.k_sqr) {
                    *c *= k2 * placing.cosine;
                }
                block.add_elements(current, total.map(|x| mirror * x), f, f2);
            }
        }
    }
}

/// Adds the near part of what the feed's dipole, of moment `area`, does to a wire
/// (or to the image of its own).
pub(super) fn add_dipole(
    block: &mut Block,
    nodes: &Nodes,
    area: f64,
    column: &Expansion,
    placing: &Placing,
) {
    let (a, z) = (placing.guide_radius, placing.distance);
    for (s, w) in GaussLegendre::new(POINTS).on(0.0, column.length) {
        let f = column.at(s);
        let weight = placing.sign * area * w;
        for (q, mirror) in [(a - s, 1.0), (a + s, -1.0)] {
            let r = math::sqrt(a * a + q * q - 2.0 * a * q * placing.cosine + z * z);
            let at = point_potentials(r, placing.width);
            let slope = point_slopes(r, placing.width);
            // Derivative of the distance as the dipole leaves the wall.
            let leaving = (q * placing.cosine - a) / r;
            let current = nodes
                .k_sqr
                .map(|k2| weight * placing.cosine * k2 * (at.current + k2 * at.dynamic));
            let charge = nodes
                .k_sqr
                .map(|k2| weight * mirror * leaving * (slope.charge + k2 * slope.dynamic));
            block.add_product(current, &FRILL_ROW, &f.value);
            block.add_product(charge, &FRILL_ROW, &f.slope);
        }
    }
}

/// Adds the near part of what the feed's dipole does to itself through its image
/// in the back wall.
pub(super) fn add_dipole_image(block: &mut Block, nodes: &Nodes, area: f64, placing: &Placing) {
    let z = placing.distance;
    let at = point_potentials(z, placing.width);
    let slope = point_slopes(z, placing.width);
    let total = nodes.k_sqr.map(|k2| {
        let potential = k2 * (at.current + k2 * at.dynamic);
        2.0 * placing.sign * area * area * (potential + (slope.charge + k2 * slope.dynamic) / z)
    });
    block.add_product(total, &FRILL_ROW, &FRILL_ROW);
}
