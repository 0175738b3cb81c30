//! The generating arc divided into straight panels, and the triangles of axial
//! current that hang on its nodes.
//!
//! Ten or more panels per wavelength; panels halve towards free rims, where the
//! current along the rim grows without bound, and towards corners. At a node
//! where several panels meet there is one triangle fewer than panels, which is
//! Kirchhoff's law (any such set spans the same currents).

use alloc::vec::Vec;

use super::outline::{Outline, Rim};
use crate::math;

/// One straight piece of the arc, a conical ring in space.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Panel {
    /// Distance from the axis at start and end, m.
    pub(super) rho: [f64; 2],
    /// Position along the axis at start and end, m.
    pub(super) z: [f64; 2],
    /// Length, m.
    pub(super) length: f64,
    /// Radial part of the unit vector from start to end.
    pub(super) across: f64,
    /// Axial part of the same.
    pub(super) along: f64,
    /// Node at start and end.
    nodes: [usize; 2],
    /// Triangles at start and end.
    pub(super) ends: [PanelEnd; 2],
}

/// Triangles that reach one end of a panel: number and the sign of their current.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct PanelEnd {
    held: [(usize, f64); MOST_AT_END],
    count: usize,
}

/// Panels that may meet at a node, less one.
const MOST_AT_END: usize = 2;

impl PanelEnd {
    fn push(&mut self, triangle: usize, sign: f64) {
        if let Some(place) = self.held.get_mut(self.count) {
            *place = (triangle, sign);
            self.count += 1;
        }
    }

    pub(super) fn triangles(&self) -> &[(usize, f64)] {
        self.held.get(..self.count).unwrap_or_default()
    }
}

impl Panel {
    /// From start to end, both (distance from the axis, position along it).
    pub(super) fn new(start: (f64, f64), end: (f64, f64)) -> Self {
        let (across, along) = (end.0 - start.0, end.1 - start.1);
        let length = math::hypot(across, along);
        Self {
            rho: [start.0, end.0],
            z: [start.1, end.1],
            length,
            across: across / length,
            along: along / length,
            ..Self::default()
        }
    }

    /// Point at the share `s` of the length.
    pub(super) fn at(&self, s: f64) -> (f64, f64) {
        let [r0, r1] = self.rho;
        let [z0, z1] = self.z;
        (r0 + (r1 - r0) * s, z0 + (z1 - z0) * s)
    }

    /// Smallest distance between an end of this panel and one of the other.
    pub(super) fn end_distance(&self, other: &Self) -> f64 {
        let mut least = f64::INFINITY;
        for a in 0..2 {
            for b in 0..2 {
                let d = math::hypot(self.rho[a] - other.rho[b], self.z[a] - other.z[b]);
                least = least.min(d);
            }
        }
        least
    }
}

/// How finely the arc is divided.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Fineness {
    pub(super) per_wavelength: f64,
    /// Halvings at free rims.
    pub(super) at_rim: u32,
    /// Halvings at corners.
    pub(super) at_corner: u32,
}

/// Least number of panels along the can's wall: the discs of modes need them.
const LEAST_WALL: usize = 10;

/// The divided arc.
#[derive(Clone, Debug)]
pub(super) struct Arc {
    pub(super) panels: Vec<Panel>,
    /// Number of triangles.
    pub(super) triangles: usize,
    /// Nodes of the can's wall from back to front: position and the panel that
    /// starts there.
    pub(super) wall_nodes: Vec<(f64, usize)>,
}

/// What stands at an end of a straight stretch of the arc.
#[derive(Clone, Copy)]
enum Finish {
    Smooth,
    Corner,
    Rim,
}

struct Builder {
    panels: Vec<Panel>,
    nodes: Vec<(f64, f64)>,
    fineness: Fineness,
    panel_length: f64,
}

impl Builder {
    fn node(&mut self, at: (f64, f64)) -> usize {
        self.nodes.push(at);
        self.nodes.len() - 1
    }

    /// Divides a straight stretch from a node to a new one, which is returned.
    fn stretch(&mut self, from: usize, to: (f64, f64), finish: [Finish; 2], least: usize) -> usize {
        let start = self.nodes.get(from).copied().unwrap_or_default();
        let (across, along) = (to.0 - start.0, to.1 - start.1);
        let length = math::hypot(across, along);
        let count = (math::ceil(length / self.panel_length) as usize)
            .max(least)
            .max(1);
        let mut last = from;
        for share in self.shares(count, finish) {
            let next = self.node(if share < 1.0 {
                (start.0 + across * share, start.1 + along * share)
            } else {
                to
            });
            let ends = [last, next].map(|n| self.nodes.get(n).copied().unwrap_or_default());
            let [a, b] = ends;
            self.panels.push(Panel {
                nodes: [last, next],
                ..Panel::new(a, b)
            });
            last = next;
        }
        last
    }

    /// Ends of the panels of a stretch as shares of it.
    fn shares(&self, count: usize, finish: [Finish; 2]) -> Vec<f64> {
        let levels = finish.map(|finish| match finish {
            Finish::Smooth => 0,
            Finish::Corner => self.fineness.at_corner,
            Finish::Rim => self.fineness.at_rim,
        });
        let step = 1.0 / count as f64;
        let halvings = |levels: u32| {
            (1..=levels)
                .rev()
                .map(move |level| step / f64::from(1_u32 << level.min(20)))
        };
        let [first, last] = levels;
        let mut shares: Vec<f64> = halvings(first).collect();
        shares.extend((1..count).map(|n| n as f64 * step));
        let mut end: Vec<f64> = halvings(last).map(|part| 1.0 - part).collect();
        end.reverse();
        if count == 1 {
            // Both halvings would meet; keep those of the second end beyond the middle.
            shares.retain(|share| *share < 0.5);
            end.retain(|share| *share >= 0.5);
        }
        shares.extend(end);
        shares.push(1.0);
        shares
    }

    /// Hangs triangles on the nodes.
    fn triangles(&mut self) -> usize {
        let mut first: Vec<Option<(usize, usize)>> = alloc::vec![None; self.nodes.len()];
        let mut count = 0;
        for index in 0..self.panels.len() {
            for end in 0..2 {
                let node = self.panels[index].nodes[end];
                let Some(seen) = first.get_mut(node) else {
                    continue;
                };
                match *seen {
                    None => *seen = Some((index, end)),
                    Some((other, other_end)) => {
                        // Out of the first panel, into this one.
                        let out = if other_end == 1 { 1.0 } else { -1.0 };
                        let into = if end == 0 { 1.0 } else { -1.0 };
                        self.panels[other].ends[other_end].push(count, out);
                        self.panels[index].ends[end].push(count, into);
                        count += 1;
                    }
                }
            }
        }
        count
    }
}

impl Arc {
    /// Divides an outline for a wavelength.
    pub(super) fn new(outline: &Outline, wavelength_m: f64, fineness: Fineness) -> Self {
        let mut arc = Builder {
            panels: Vec::new(),
            nodes: Vec::new(),
            fineness,
            panel_length: wavelength_m / fineness.per_wavelength,
        };
        let (a, length) = (outline.radius_m, outline.length_m);
        let axis = arc.node((0.0, -length));
        let back = arc.stretch(axis, (a, -length), [Finish::Smooth, Finish::Corner], 3);
        let wall_from = arc.panels.len();
        let (rim, foot) = Self::wall(&mut arc, outline, back);
        let wall_to = arc.panels.len();
        match outline.rim {
            Rim::Bare => {}
            Rim::Funnel { mouth_radius_m, .. } => {
                let end = (mouth_radius_m, outline.front_m().max(0.0));
                arc.stretch(rim, end, [Finish::Corner, Finish::Rim], 2);
            }
            Rim::Flange { outside_radius_m } => {
                let end = (outside_radius_m, 0.0);
                arc.stretch(rim, end, [Finish::Corner, Finish::Rim], 2);
            }
            Rim::Choke {
                outside_radius_m,
                depth_m,
            } => Self::cup(&mut arc, foot, (outside_radius_m, depth_m)),
        }
        let triangles = arc.triangles();
        let wall = arc.panels.get(wall_from..wall_to).unwrap_or_default();
        let wall_nodes = wall
            .iter()
            .enumerate()
            .map(|(n, panel)| (panel.z[0], wall_from + n))
            .collect();
        Self {
            panels: arc.panels,
            triangles,
            wall_nodes,
        }
    }

    /// The can's wall from the back to the rim. Returned are the rim's node and that
    /// of a cup's foot (without a cup the back's).
    fn wall(arc: &mut Builder, outline: &Outline, back: usize) -> (usize, usize) {
        let (a, length) = (outline.radius_m, outline.length_m);
        let front = match outline.rim {
            Rim::Bare | Rim::Choke { .. } => Finish::Rim,
            Rim::Funnel { .. } | Rim::Flange { .. } => Finish::Corner,
        };
        if let Rim::Choke { depth_m, .. } = outline.rim {
            let share = depth_m / length;
            let least = |share: f64| math::ceil(share * LEAST_WALL as f64) as usize;
            let corners = [Finish::Corner, Finish::Corner];
            let foot = arc.stretch(back, (a, -depth_m), corners, least(1.0 - share));
            let finish = [Finish::Corner, front];
            let rim = arc.stretch(foot, (a, 0.0), finish, least(share).max(2));
            return (rim, foot);
        }
        let rim = arc.stretch(back, (a, 0.0), [Finish::Corner, front], LEAST_WALL);
        (rim, back)
    }

    /// The cup of an outside radius and depth, from its foot on the can's wall.
    fn cup(arc: &mut Builder, foot: usize, (outside, depth): (f64, f64)) {
        let corners = [Finish::Corner, Finish::Corner];
        let corner = arc.stretch(foot, (outside, -depth), corners, 2);
        arc.stretch(corner, (outside, 0.0), [Finish::Corner, Finish::Rim], 2);
    }
}
