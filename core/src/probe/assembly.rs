//! Reactions of all wires that do not depend on loss, far end or frequency
//! beyond a parabola: computed once for a geometry, and again for the fed wire
//! alone when it moves along the guide.

use alloc::vec;
use alloc::vec::Vec;

use super::axial_split::AxialSplit;
use super::expansion::{Expansion, TERMS};
use super::frill::Frill;
use super::modal_field::{Coupling, GuideMode, ModeSet};
use super::mutual::{Placing, add_dipole, add_dipole_image, add_mutual};
use super::reaction::{AtNodes, Block, Nodes, packed};
use super::short_range::SelfReaction;
use super::sleeve::Sleeve;
use super::wire::{ProbeGeometry, Wire};
use crate::math;

/// One wire with everything that does not depend on where along the guide it is.
pub(super) struct PreparedWire {
    pub(super) wire: Wire,
    expansion: Expansion,
    /// Coupling to every mode of the set.
    pub(super) couplings: Vec<Coupling>,
    /// Parts that couple: the polynomials, and the frill of the fed wire.
    pub(super) parts: usize,
    /// Reaction with itself, without the back wall.
    own: Block,
}

/// What stays when the fed wire moves along the guide.
pub(super) struct Fixed {
    pub(super) geometry: ProbeGeometry,
    split: AxialSplit,
    pub(super) nodes: Nodes,
    pub(super) modes: ModeSet,
    /// The screws that stick in, then the fed wire.
    pub(super) wires: Vec<PreparedWire>,
    /// Cosines of the exact modes' turns between wires, by packed pair, then mode.
    pair_cosines: Vec<f64>,
    /// The frill's capacitance over the permittivity of vacuum, m.
    pub(super) frill_length: f64,
    /// Moment of the frill's dipole, m².
    frill_area: f64,
}

impl Fixed {
    pub(super) fn new(geometry: ProbeGeometry) -> Self {
        let a = geometry.guide_radius_m;
        let feed = &geometry.feed;
        let sleeve = feed.insulation.as_ref().map(Sleeve::new);
        let fed = Expansion::new(&feed.wire, screening(sleeve.as_ref()));
        let split = AxialSplit::new(a, fed.length);
        let standing = || {
            geometry
                .screws
                .iter()
                .filter(|screw| screw.insertion_m > 0.0)
        };
        let longest = standing()
            .map(|screw| Expansion::new(screw, 0.0).length)
            .fold(fed.length, f64::max);
        let modes = ModeSet::new(a, split.root_max, (longest / a - 1.0).max(1.0));
        let nodes = Nodes::new(a);
        let frill = Frill::new(feed.wire.radius_m, feed.hole_radius_m);
        let frill_length = frill.capacitance_length();
        let mut fixed = Self {
            split,
            nodes,
            modes,
            wires: Vec::new(),
            pair_cosines: Vec::new(),
            frill_length,
            frill_area: frill.dipole_area(),
            geometry: geometry.clone(),
        };
        for screw in standing() {
            let prepared = fixed.prepare_wire(screw, None, None);
            fixed.wires.push(prepared);
        }
        let prepared = fixed.prepare_wire(&feed.wire, sleeve.as_ref(), Some(&frill));
        fixed.wires.push(prepared);
        fixed.fill_pair_cosines();
        fixed
    }

    fn prepare_wire(
        &self,
        wire: &Wire,
        sleeve: Option<&Sleeve>,
        frill: Option<&Frill>,
    ) -> PreparedWire {
        let expansion = Expansion::new(wire, screening(sleeve));
        let parts = TERMS + usize::from(frill.is_some());
        let frill_area = frill.map_or(0.0, Frill::dipole_area);
        let couplings = self.modes.couplings(&expansion, frill_area);
        let mut own = Block::new(parts, parts);
        let near = SelfReaction {
            expansion: &expansion,
            radius: wire.radius_m,
            width: self.split.width,
            nodes: &self.nodes,
        };
        near.add_direct(&mut own, sleeve);
        near.add_curvature(&mut own, self.geometry.guide_radius_m, 0.0, 1.0);
        if let Some(frill) = frill {
            frill.add_excitation(&mut own, &expansion, self.split.width, &self.nodes);
        }
        let mut prepared = PreparedWire {
            wire: *wire,
            expansion,
            couplings,
            parts,
            own,
        };
        let mut own = core::mem::replace(&mut prepared.own, Block::new(0, 0));
        self.add_modes(&mut own, &prepared, &prepared, 0.0, 1.0);
        prepared.own = own;
        prepared
    }

    fn fill_pair_cosines(&mut self) {
        let exact = self.modes.exact;
        let mut cosines = vec![0.0; packed(self.wires.len(), 0) * exact];
        let mut slots = cosines.iter_mut();
        for (row, wire) in self.wires.iter().enumerate() {
            for other in self.wires.iter().take(row + 1) {
                let turn = wire.wire.angle_rad - other.wire.angle_rad;
                for (mode, slot) in self.modes.modes.iter().take(exact).zip(&mut slots) {
                    *slot = math::cos(mode.order as f64 * turn);
                }
            }
        }
        self.pair_cosines = cosines;
    }

    pub(super) fn pair_cosine(&self, row: usize, column: usize, mode: usize) -> f64 {
        let index = packed(row, column) * self.modes.exact + mode;
        self.pair_cosines.get(index).copied().unwrap_or(0.0)
    }

    /// Appends a wire's rows of the packed matrix.
    pub(super) fn append_rows(&self, row: usize, axial: &[f64], matrix: &mut Vec<AtNodes>) {
        let blocks: Vec<_> = (0..=row)
            .filter_map(|column| self.block(row, column, axial))
            .collect();
        let parts = self.wires.get(row).map_or(0, |wire| wire.parts);
        for i in 0..parts {
            for (column, block) in blocks.iter().enumerate() {
                let count = if column == row { i + 1 } else { TERMS };
                matrix.extend(block.row(i).iter().take(count));
            }
        }
    }

    /// Reactions of two wires without the exact modes' own fields.
    fn block(&self, row: usize, column: usize, axial: &[f64]) -> Option<Block> {
        let (wire, other) = (self.wires.get(row)?, self.wires.get(column)?);
        let (z, z_other) = (*axial.get(row)?, *axial.get(column)?);
        let mut block = if row == column {
            wire.own.clone()
        } else {
            let mut block = Block::new(wire.parts, TERMS);
            self.add_pair(&mut block, wire, other, math::fabs(z - z_other), 1.0);
            block
        };
        self.add_pair(&mut block, wire, other, z + z_other, -1.0);
        Some(block)
    }

    /// Adds the reaction of two wires at an axial distance (not a wire with itself
    /// at distance 0), without the exact modes' own fields.
    fn add_pair(
        &self,
        block: &mut Block,
        wire: &PreparedWire,
        other: &PreparedWire,
        z: f64,
        sign: f64,
    ) {
        self.add_modes(block, wire, other, z, sign);
        if !self.split.is_near(z) {
            return;
        }
        let placing = Placing {
            guide_radius: self.geometry.guide_radius_m,
            distance: z,
            cosine: math::cos(wire.wire.angle_rad - other.wire.angle_rad),
            sign,
            width: self.split.width,
        };
        if wire.parts > TERMS {
            add_dipole(
                block,
                &self.nodes,
                self.frill_area,
                &other.expansion,
                &placing,
            );
        }
        if !core::ptr::eq(wire, other) {
            add_mutual(
                block,
                &self.nodes,
                &wire.expansion,
                &other.expansion,
                &placing,
            );
            return;
        }
        let near = SelfReaction {
            expansion: &wire.expansion,
            radius: wire.wire.radius_m,
            width: self.split.width,
            nodes: &self.nodes,
        };
        near.add_back_image(block, z);
        near.add_curvature(block, self.geometry.guide_radius_m, z, sign);
        if wire.parts > TERMS {
            add_dipole_image(block, &self.nodes, self.frill_area, &placing);
        }
    }

    /// Adds what the modes carry between two wires: the far part of each, and less
    /// the near part of the exact ones, whose whole field comes later.
    fn add_modes(
        &self,
        block: &mut Block,
        wire: &PreparedWire,
        other: &PreparedWire,
        z: f64,
        sign: f64,
    ) {
        let near = self.split.is_near(z).then(|| self.split.near(z));
        let turn = wire.wire.angle_rad - other.wire.angle_rad;
        let cosines: Vec<_> = (0..=self.modes.highest_order())
            .map(|order| math::cos(order as f64 * turn))
            .collect();
        let couplings = wire.couplings.iter().zip(&other.couplings);
        for (index, (mode, (row, column))) in self.modes.modes.iter().zip(couplings).enumerate() {
            let factor = sign * cosines.get(mode.order).copied().unwrap_or(0.0);
            let at = if index < self.modes.exact {
                let Some(near) = &near else { continue };
                self.nodes.k_sqr.map(|k_sqr| {
                    -factor * weight(mode, k_sqr) * near.at(mode.cutoff * mode.cutoff - k_sqr)
                })
            } else {
                self.nodes.k_sqr.map(|k_sqr| {
                    let gamma = math::sqrt(mode.cutoff * mode.cutoff - k_sqr);
                    factor * weight(mode, k_sqr) * self.split.far(gamma, z)
                })
            };
            let columns = if core::ptr::eq(wire, other) {
                other.parts
            } else {
                TERMS
            };
            block.add_product(
                at,
                row.get(..wire.parts).unwrap_or(row),
                column.get(..columns).unwrap_or(column),
            );
        }
    }
}

/// Factor that turns a mode's axial field into a reaction, rad²/m².
fn weight(mode: &GuideMode, k_sqr: f64) -> f64 {
    if mode.transverse_electric {
        k_sqr
    } else {
        k_sqr - mode.cutoff * mode.cutoff
    }
}

/// Share of the charge that a sleeve, if any, screens.
fn screening(sleeve: Option<&Sleeve>) -> f64 {
    sleeve.map_or(0.0, |sleeve| sleeve.screening)
}
