//! What printing wants computed: how far the wire's length may be off, what a cap does
//! to the match, how deep a bracket's rivets may stick in.

use std::sync::Arc;

use tinwave_core::analysis::Analyser;
use tinwave_core::cap::{Sheet, cap_effect};
use tinwave_core::design::Design;
use tinwave_core::intrusion::{
    DepthLimit, USUAL_CHANGE, WallPlace, deepest_intrusion, last_place_um,
};
use tinwave_core::outside::OutsideSpectrum;
use tinwave_protocol::outside::SolveOutside;
use tinwave_protocol::print::{
    Bracket, BracketFound, CapFound, CutLimits, Fittings, FittingsFound, RivetDepth,
};

use crate::Work;
use crate::outside::OutsideWork;

/// Hole of a 4 mm blind rivet or M4 screw, and between the two along the can (common
/// practice, no source).
const HOLE_UM: u32 = 4_100;
const SPACING_UM: u32 = 40_000;
/// From a hole's edge to the end of the can, at least.
const WALL_UM: u32 = 5_000;
/// Places along the can that stand for all where the bracket may go.
const PLACES: u32 = 8;

/// Steps of the walk from the present length, and how many each way.
const STEP_UM: u32 = 200;
const STEPS: u32 = 40;

/// The work: first the outside, then shorter and longer wires, the cap, the bracket.
pub struct FittingsWork {
    design: Design,
    outside_work: Option<OutsideWork>,
    outside: Option<Arc<OutsideSpectrum>>,
    outside_steps: u32,
    shorter: Walk,
    longer: Walk,
    cap: Option<Sheet>,
    bracket: Option<BracketSearch>,
    done: u32,
    found: FittingsFound,
}

impl FittingsWork {
    /// Sets it up.
    #[must_use]
    pub fn new(question: Fittings) -> Self {
        let outside_work = OutsideWork::new(SolveOutside {
            design: question.design.clone(),
        });
        let length_um = question.design.probe.length_um;
        let bracket = |angle| BracketSearch::new(&question.design, angle);
        Self {
            // One step more: the last keeps the outside.
            outside_steps: outside_work.total() + 1,
            outside_work: Some(outside_work),
            outside: None,
            shorter: Walk::new(length_um, -1),
            longer: Walk::new(length_um, 1),
            cap: question.cap,
            bracket: question.bracket_millideg.map(bracket),
            done: 0,
            found: FittingsFound::default(),
            design: question.design,
        }
    }

    fn step_outside(&mut self) {
        if self.done + 1 < self.outside_steps {
            if let Some(work) = &mut self.outside_work {
                work.step();
            }
        } else if let Some(work) = self.outside_work.take() {
            self.outside = work.finish().map(Arc::new);
        }
    }
}

impl Work for FittingsWork {
    type Answer = FittingsFound;

    fn total(&self) -> u32 {
        let bracket = self.bracket.as_ref().map_or(0, |_| PLACES);
        self.outside_steps + 2 * STEPS + u32::from(self.cap.is_some()) + bracket
    }

    fn step(&mut self) {
        let outside = self.outside.as_ref();
        if self.done < self.outside_steps {
            self.step_outside();
        } else if self.done < self.outside_steps + STEPS {
            self.shorter.step(&self.design, outside);
        } else if self.done < self.outside_steps + 2 * STEPS {
            self.longer.step(&self.design, outside);
        } else if let Some(sheet) = self.cap.take() {
            self.found.cap = Some(cap(&self.design, outside, &sheet));
        } else if let Some(bracket) = &mut self.bracket {
            bracket.step(&self.design, outside);
        }
        self.done += 1;
    }

    fn finish(mut self) -> FittingsFound {
        let [within_1_5, within_2] = [0, 1].map(|limit| {
            let (shortest_um, longest_um) = (self.shorter.ends[limit], self.longer.ends[limit]);
            (longest_um > shortest_um).then_some(CutLimits {
                shortest_um,
                longest_um,
            })
        });
        self.found.within_1_5 = within_1_5;
        self.found.within_2 = within_2;
        self.found.bracket = self.bracket.map(BracketSearch::finish);
        self.found
    }
}

/// The limits of VSWR that wires are cut to.
const LIMITS: [f64; 2] = [1.5, 2.0];

/// A walk from the present length one way, until the VSWR is past both limits.
struct Walk {
    analyser: Analyser,
    length_um: u32,
    /// Micrometres a step.
    way: i32,
    taken: i32,
    within: [bool; 2],
    /// The last lengths within each limit.
    ends: [u32; 2],
}

impl Walk {
    fn new(length_um: u32, way: i32) -> Self {
        Self {
            analyser: Analyser::new(),
            length_um,
            way: way * STEP_UM as i32,
            taken: 0,
            within: [true; 2],
            ends: [length_um; 2],
        }
    }

    fn step(&mut self, design: &Design, outside: Option<&Arc<OutsideSpectrum>>) {
        let length = self.length_um.checked_add_signed(self.way * self.taken);
        self.taken += 1;
        let Some(length_um) = length.filter(|_| self.within[1]) else {
            return;
        };
        let mut trial = design.clone();
        trial.probe.length_um = length_um;
        let analysis = self.analyser.analyse_with(&trial, outside).ok();
        let summary = analysis.and_then(|analysis| analysis.match_summary);
        let vswr = summary.map_or(f64::INFINITY, |summary| summary.worst_vswr_in_band);
        for (place, limit) in LIMITS.into_iter().enumerate() {
            self.within[place] &= vswr <= limit;
            if self.within[place] {
                self.ends[place] = length_um;
            }
        }
    }
}

fn cap(design: &Design, outside: Option<&Arc<OutsideSpectrum>>, sheet: &Sheet) -> CapFound {
    match cap_effect(design, outside, sheet) {
        Ok(effect) => CapFound::Computed {
            vswr_without: effect.without.worst_vswr_in_band,
            vswr_with: effect.with.worst_vswr_in_band,
            shift_khz: effect.shift_khz(),
            loss_db: effect.loss_db,
        },
        Err(_) => CapFound::NotComputed,
    }
}

/// How deep the rivets of a bracket may stick in, place by place along the can.
struct BracketSearch {
    angle_millideg: u32,
    places: Vec<[WallPlace; 2]>,
    depth: Option<RivetDepth>,
}

impl BracketSearch {
    fn new(design: &Design, angle_millideg: u32) -> Self {
        let first = WALL_UM + HOLE_UM / 2;
        // Of the rivet nearer to the back wall.
        let last = design.can.open_length_um.saturating_sub(first);
        let last = last.min(last_place_um(design)).saturating_sub(SPACING_UM);
        let step = last.saturating_sub(first) / (PLACES - 1);
        let pair = |place: u32| {
            [0, SPACING_UM].map(|farther| WallPlace {
                axial_um: first + step * place + farther,
                angle_millideg: angle_millideg as i32,
                diameter_um: HOLE_UM,
            })
        };
        Self {
            angle_millideg,
            // The first is taken last.
            places: (0..PLACES).rev().map(pair).collect(),
            depth: None,
        }
    }

    fn step(&mut self, design: &Design, outside: Option<&Arc<OutsideSpectrum>>) {
        let Some(pair) = self.places.pop() else {
            return;
        };
        let here = match deepest_intrusion(design, outside, &[pair], USUAL_CHANGE) {
            Ok(DepthLimit::Within { depth_um, .. }) => RivetDepth::Within(depth_um),
            Ok(DepthLimit::Beyond { tried_um }) => RivetDepth::Beyond(tried_um),
            Err(_) => RivetDepth::NotComputed,
        };
        self.depth = Some(match self.depth {
            None => here,
            Some(before) => least(before, here),
        });
    }

    fn finish(self) -> BracketFound {
        let depth = self.depth.unwrap_or(RivetDepth::NotComputed);
        BracketFound {
            bracket: Bracket {
                angle_millideg: self.angle_millideg,
                hole_um: HOLE_UM,
                spacing_um: SPACING_UM,
                deepest_um: match depth {
                    // Down to a tenth of a millimetre.
                    RivetDepth::Within(depth_um) => Some((depth_um / 100 * 100).max(1)),
                    RivetDepth::Beyond(_) | RivetDepth::NotComputed => None,
                },
            },
            depth,
        }
    }
}

/// What holds at both of two places.
fn least(a: RivetDepth, b: RivetDepth) -> RivetDepth {
    match (a, b) {
        (RivetDepth::NotComputed, _) | (_, RivetDepth::NotComputed) => RivetDepth::NotComputed,
        (RivetDepth::Within(a), RivetDepth::Within(b)) => RivetDepth::Within(a.min(b)),
        (RivetDepth::Within(a), RivetDepth::Beyond(_))
        | (RivetDepth::Beyond(_), RivetDepth::Within(a)) => RivetDepth::Within(a),
        (RivetDepth::Beyond(a), RivetDepth::Beyond(b)) => RivetDepth::Beyond(a.min(b)),
    }
}
