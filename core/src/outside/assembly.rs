//! Matrix, rows of the probes and their couplings at one frequency.

use alloc::vec;
use alloc::vec::Vec;

use super::arc::Panel;
use super::ldl::Symmetric;
use super::mode_probe::{Carrier, ROLES, Share};
use super::moments::{Moments, Reader};
use super::prepared::PreparedOutside;
use super::reaction::Reaction;
use crate::complex::Complex;

/// What one azimuthal order needs at one frequency.
#[derive(Clone, Debug)]
pub(super) struct System {
    order: usize,
    triangles: usize,
    pub(super) matrix: Symmetric,
    /// Reaction of each probe's current on every unknown of the body, by role.
    pub(super) rows: [Vec<Complex>; ROLES],
    /// Reactions between probes.
    pub(super) mutual: [[Complex; ROLES]; ROLES],
}

impl System {
    pub(super) const fn order(&self) -> usize {
        self.order
    }

    /// Number of unknowns along the arc; those round the axis follow them.
    pub(super) const fn triangles(&self) -> usize {
        self.triangles
    }

    fn new(order: usize, triangles: usize, panels: usize) -> Self {
        let size = triangles + if order == 0 { 0 } else { panels };
        Self {
            order,
            triangles,
            matrix: Symmetric::zero(size),
            rows: [(); ROLES].map(|()| vec![Complex::ZERO; size]),
            mutual: [[Complex::ZERO; ROLES]; ROLES],
        }
    }

    /// Adds the reaction of two panels of the body, i <= j.
    fn add_body(
        &mut self,
        (i, first): (usize, &Panel),
        (j, second): (usize, &Panel),
        reaction: &Reaction,
    ) {
        let same = i == j;
        // An element off the diagonal is met twice within one panel; one on the
        // diagonal once within one panel, but stands for both orders of two.
        let factor = |p: usize, q: usize| match (same, p == q) {
            (true, false) => 0.5,
            (false, true) => 2.0,
            _ => 1.0,
        };
        let rounds = (self.order > 0).then_some((self.triangles + i, self.triangles + j));
        for (a, row) in reaction.along.iter().enumerate() {
            for &(p, sign) in first.ends[a].triangles() {
                for (b, value) in row.iter().enumerate() {
                    for &(q, other) in second.ends[b].triangles() {
                        let value = value.scale(sign * other * factor(p, q));
                        self.matrix.add(p, q, value);
                    }
                }
                if let Some((_, round)) = rounds {
                    let value = reaction.along_round[a].scale(sign);
                    self.matrix.add(p, round, value);
                }
            }
        }
        let Some((round, other_round)) = rounds else {
            return;
        };
        if !same {
            for (b, value) in reaction.round_along.iter().enumerate() {
                for &(q, sign) in second.ends[b].triangles() {
                    self.matrix.add(round, q, value.scale(sign));
                }
            }
        }
        self.matrix.add(round, other_round, reaction.round);
    }

    /// Adds the reaction of a probe's share on a panel of the body; `reaction` has
    /// the probe's panel first.
    fn add_row(
        &mut self,
        (role, share): (usize, Share),
        (j, panel): (usize, &Panel),
        reaction: &Reaction,
    ) {
        let Some(row) = self.rows.get_mut(role) else {
            return;
        };
        let [start, end] = share.along;
        for b in 0..2 {
            let value = reaction.along[0][b].scale(start)
                + reaction.along[1][b].scale(end)
                + reaction.round_along[b].scale(share.round);
            for &(q, sign) in panel.ends[b].triangles() {
                if let Some(place) = row.get_mut(q) {
                    *place += value.scale(sign);
                }
            }
        }
        if self.order > 0
            && let Some(place) = row.get_mut(self.triangles + j)
        {
            *place += reaction.along_round[0].scale(start)
                + reaction.along_round[1].scale(end)
                + reaction.round.scale(share.round);
        }
    }

    /// Adds the reaction between the shares of two probes.
    fn add_mutual(
        &mut self,
        (d, first): (usize, Share),
        (e, second): (usize, Share),
        reaction: &Reaction,
    ) {
        let mut sum = reaction.round.scale(first.round * second.round);
        for a in 0..2 {
            for b in 0..2 {
                sum += reaction.along[a][b].scale(first.along[a] * second.along[b]);
            }
            sum += reaction.along_round[a].scale(first.along[a] * second.round);
            sum += reaction.round_along[a].scale(first.round * second.along[a]);
        }
        self.mutual[d][e] += sum;
        self.mutual[e][d] += sum;
    }

    /// Adds what two panels contribute to this order.
    fn take(&mut self, k: f64, [first, second]: [&Member<'_>; 2], moments: &Moments) {
        let (on_first, on_second) = (first.share(self.order), second.share(self.order));
        let in_body = first.body && second.body;
        if !in_body && (on_first.is_none() && !first.body || on_second.is_none() && !second.body) {
            return;
        }
        let reaction = Reaction::new(self.order, k, first.panel, second.panel, moments);
        let (one, other) = ((first.number, first.panel), (second.number, second.panel));
        if in_body {
            self.add_body(one, other, &reaction);
        }
        if let Some(share) = on_first
            && second.body
        {
            self.add_row(share, other, &reaction);
        }
        if let Some(share) = on_second
            && first.body
            && first.number != second.number
        {
            self.add_row(share, one, &reaction.turned());
        }
        if let (Some(d), Some(e)) = (on_first, on_second)
            && d.0 != e.0
        {
            self.add_mutual(d, e, &reaction);
        }
    }
}

/// A panel with what it is part of.
struct Member<'a> {
    number: usize,
    panel: &'a Panel,
    body: bool,
    carrier: Option<Carrier>,
}

impl Member<'_> {
    /// Role and current in an order.
    fn share(&self, order: usize) -> Option<(usize, Share)> {
        let carrier = self.carrier?;
        let share = (*carrier.shares.get(order)?)?;
        Some((carrier.role, share))
    }
}

impl PreparedOutside {
    fn member(&self, number: usize) -> Option<Member<'_>> {
        Some(Member {
            number,
            panel: self.panel(number)?,
            body: number < self.arc.panels.len(),
            carrier: *self.probes.carriers.get(number)?,
        })
    }

    /// Assembles all orders at the wavenumber k.
    pub(super) fn assemble(&self, k: f64) -> [System; 3] {
        let body_panels = self.arc.panels.len();
        let mut systems =
            [0, 1, 2].map(|order| System::new(order, self.arc.triangles, body_panels));
        let mut reader = Reader::new(&self.samples);
        for pair in &self.samples.pairs {
            let moments = reader.moments(k, pair.points);
            let members = [pair.i, pair.j].map(|number| self.member(number as usize));
            let [Some(first), Some(second)] = members else {
                continue;
            };
            for system in &mut systems {
                system.take(k, [&first, &second], &moments);
            }
        }
        systems
    }
}
