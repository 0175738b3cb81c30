//! Matrix, probe rows and couplings of the discs at one frequency.

use alloc::vec;
use alloc::vec::Vec;

use super::arc::Panel;
use super::ldl::Symmetric;
use super::mode_disc::{DISC_PANELS, ModeSheet, Share};
use super::moments::Reader;
use super::prepared::PreparedOutside;
use super::reaction::Reaction;
use crate::complex::Complex;

/// Most discs in a can.
pub(super) const MOST_DISCS: usize = 4;

/// What one azimuthal order needs at one frequency.
#[derive(Clone, Debug)]
pub(super) struct System {
    order: usize,
    triangles: usize,
    pub(super) matrix: Symmetric,
    /// Reaction of each disc's current on every unknown of the body.
    pub(super) rows: [Vec<Complex>; MOST_DISCS],
    /// Reactions between discs.
    pub(super) mutual: [[Complex; MOST_DISCS]; MOST_DISCS],
}

/// The discs' part in the assembly of one order.
struct Sheets<'a> {
    body_panels: usize,
    /// Disc that uses each panel, as one of its own or of the wall's.
    disc_on: &'a [Option<usize>],
    sheet: &'a ModeSheet,
}

impl Sheets<'_> {
    /// The disc with current on a panel, and that current.
    fn on(&self, panel: usize) -> Option<(usize, Share)> {
        let disc = (*self.disc_on.get(panel)?)?;
        let share = match panel.checked_sub(self.body_panels) {
            None => self.sheet.wall,
            Some(place) => *self.sheet.disc.get(place % DISC_PANELS)?,
        };
        Some((disc, share))
    }
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
            rows: [(); MOST_DISCS].map(|()| vec![Complex::ZERO; size]),
            mutual: [[Complex::ZERO; MOST_DISCS]; MOST_DISCS],
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

    /// Adds the reaction of a disc's share on a panel of the body; `reaction` has
    /// the disc's panel first.
    fn add_row(
        &mut self,
        (disc, share): (usize, Share),
        (j, panel): (usize, &Panel),
        reaction: &Reaction,
    ) {
        let Some(row) = self.rows.get_mut(disc) else {
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

    /// Adds the reaction between the shares of two discs.
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

    /// The element rows of one order at the wavenumber k.
    fn take(
        &mut self,
        sheets: &Sheets<'_>,
        (i, first): (usize, &Panel),
        (j, second): (usize, &Panel),
        reaction: &Reaction,
    ) {
        let body = |panel: usize| panel < sheets.body_panels;
        if body(i) && body(j) {
            self.add_body((i, first), (j, second), reaction);
        }
        let (on_first, on_second) = (sheets.on(i), sheets.on(j));
        if let Some(share) = on_first
            && body(j)
        {
            self.add_row(share, (j, second), reaction);
        }
        if let Some(share) = on_second
            && i != j
            && body(i)
        {
            self.add_row(share, (i, first), &reaction.turned());
        }
        if let (Some(d), Some(e)) = (on_first, on_second)
            && d.0 != e.0
        {
            self.add_mutual(d, e, reaction);
        }
    }
}

impl PreparedOutside {
    /// Assembles all orders at the wavenumber k.
    pub(super) fn assemble(&self, k: f64) -> [System; 3] {
        let body_panels = self.arc.panels.len();
        let mut systems =
            [0, 1, 2].map(|order| System::new(order, self.arc.triangles, body_panels));
        let mut reader = Reader::new(&self.samples);
        for pair in &self.samples.pairs {
            let moments = reader.moments(k, pair.points);
            let (i, j) = (pair.i as usize, pair.j as usize);
            let (Some(first), Some(second)) = (self.panel(i), self.panel(j)) else {
                continue;
            };
            for (system, sheet) in systems.iter_mut().zip(&self.sheets) {
                let reaction = Reaction::new(system.order, k, first, second, &moments);
                let sheets = Sheets {
                    body_panels,
                    disc_on: &self.disc_on,
                    sheet,
                };
                system.take(&sheets, (i, first), (j, second), &reaction);
            }
        }
        systems
    }
}
