//! Works out what each millimetre matters: one changed can a step.

use tinwave_core::changed_can::ChangedCan;
use tinwave_core::design::Design;
use tinwave_core::dimension::Dimension;
use tinwave_core::match_band::band_frequencies;
use tinwave_core::reflection::{magnitude_of_vswr, vswr};
use tinwave_core::si::{hertz, micrometres};
use tinwave_protocol::matters::{Leeway, Matter, Matters, Way, WhatMatters};

use crate::Work;
use crate::outsides::kept_outside;

/// Points over the band at which the match is judged.
const BAND_POINTS: u32 = 11;
/// Limits of a leeway: the first that holds as drawn.
const LIMITS: [f64; 2] = [1.5, 2.0];
/// How a leeway is looked for: in steps so long, so many of them, metres.
const WALKS: [(Dimension, f64, u32); 2] = [
    (Dimension::ProbeLength, 0.25e-3, 24),
    (Dimension::BackshortDistance, 1.0e-3, 20),
];
/// Both ways of both walks.
const WAYS: u32 = 4;

/// A walk one way, from the design as drawn to where the limit is passed.
#[derive(Clone, Copy, Debug)]
struct Walk {
    dimension: Dimension,
    /// Metres, with its sign.
    step: f64,
    most: u32,
    taken: u32,
    /// Reflection at the last step.
    before: f64,
    end: Option<Way>,
}

impl Walk {
    fn new((dimension, step, most): (Dimension, f64, u32), sign: f64) -> Self {
        Self {
            dimension,
            step: sign * step,
            most,
            taken: 0,
            before: 0.0,
            end: None,
        }
    }

    /// The next step; a can that is impossible ends the walk where it stands.
    fn step(&mut self, can: &mut BandMatch, limit: f64) {
        if self.end.is_some() {
            return;
        }
        let size = self.step.abs();
        let gone = f64::from(self.taken) * size;
        let next = can.worst(&[(self.dimension, self.step * f64::from(self.taken + 1))]);
        match next {
            Some(next) if next <= limit => {
                self.before = next;
                self.taken += 1;
                if self.taken == self.most {
                    self.stop(gone + size, true);
                }
            }
            Some(next) => self.stop(
                gone + size * (limit - self.before) / (next - self.before),
                false,
            ),
            None => self.stop(gone, false),
        }
    }

    fn stop(&mut self, metres: f64, at_least: bool) {
        self.end = Some(Way {
            um: micrometres(metres),
            at_least,
        });
    }
}

/// The match over the band of a changed can.
struct BandMatch {
    can: ChangedCan,
    hz: Vec<f64>,
}

impl BandMatch {
    fn new(design: &Design) -> Option<Self> {
        let outside = kept_outside(design);
        let can = ChangedCan::new(design, outside.as_ref()).ok().flatten()?;
        let hz = band_frequencies(design.band, BAND_POINTS);
        Some(Self {
            can,
            hz: hz.into_iter().map(hertz).collect(),
        })
    }

    /// Largest reflection over the band.
    fn worst(&mut self, changes: &[(Dimension, f64)]) -> Option<f64> {
        let si = self.can.changed(changes);
        let sizes = self.can.reflections(&si, &self.hz).ok()?;
        Some(sizes.iter().map(|size| size.abs()).fold(0.0, f64::max))
    }
}

/// The work on its way.
pub struct MattersWork {
    /// `None` where nothing can be computed.
    can: Option<BandMatch>,
    as_drawn: Option<f64>,
    dimensions: Vec<Matter>,
    walks: Vec<Walk>,
    taken: u32,
}

impl MattersWork {
    /// Prepares the can.
    #[must_use]
    pub fn new(question: &WhatMatters) -> Self {
        let mut can = BandMatch::new(&question.design);
        let as_drawn = can.as_mut().and_then(|can| can.worst(&[]));
        let both = |walk| [-1.0, 1.0].map(|sign| Walk::new(walk, sign));
        let mut walks: Vec<Walk> = WALKS.into_iter().flat_map(both).collect();
        for walk in &mut walks {
            walk.before = as_drawn.unwrap_or(0.0);
        }
        Self {
            can: can.filter(|_| as_drawn.is_some()),
            as_drawn,
            dimensions: Vec::new(),
            walks,
            taken: 0,
        }
    }

    fn limit(&self) -> Option<f64> {
        let as_drawn = self.as_drawn?;
        LIMITS
            .into_iter()
            .find(|limit| as_drawn <= magnitude_of_vswr(*limit))
    }

    fn matter(&mut self, dimension: Dimension) {
        let Some(can) = &mut self.can else { return };
        let change = dimension.usual_tolerance();
        let less = can.worst(&[(dimension, -change)]);
        let more = can.worst(&[(dimension, change)]);
        self.dimensions.push(Matter {
            dimension,
            change,
            worst_vswr: less.zip(more).map(|(less, more)| vswr(less.max(more))),
        });
    }

    fn leeway(&self, dimension: Dimension) -> Option<Leeway> {
        let vswr = self.limit()?;
        let mut ways = self.walks.iter().filter(|walk| walk.dimension == dimension);
        let mut way = || ways.next()?.end;
        Some(Leeway {
            vswr,
            less: way()?,
            more: way()?,
        })
    }
}

impl Work for MattersWork {
    type Answer = Matters;

    fn total(&self) -> u32 {
        if self.can.is_none() {
            return 0;
        }
        let dimensions = Dimension::ALL.len() as u32;
        let longest = WALKS
            .into_iter()
            .map(|(_, _, most)| most)
            .max()
            .unwrap_or(0);
        dimensions + WAYS * longest
    }

    fn step(&mut self) {
        let taken = self.taken as usize;
        self.taken += 1;
        if let Some(dimension) = Dimension::ALL.get(taken) {
            self.matter(*dimension);
            return;
        }
        let limit = self.limit().map(magnitude_of_vswr);
        let turn = (taken - Dimension::ALL.len()) % self.walks.len();
        if let (Some(can), Some(limit), Some(walk)) =
            (&mut self.can, limit, self.walks.get_mut(turn))
        {
            walk.step(can, limit);
        }
    }

    fn finish(mut self) -> Matters {
        let cost = |matter: &Matter| matter.worst_vswr.unwrap_or(f64::INFINITY);
        self.dimensions.sort_by(|a, b| cost(b).total_cmp(&cost(a)));
        Matters {
            length: self.leeway(Dimension::ProbeLength),
            distance: self.leeway(Dimension::BackshortDistance),
            as_drawn: self.as_drawn.map(vswr),
            dimensions: self.dimensions,
        }
    }
}

#[cfg(test)]
#[allow(clippy::expect_used, reason = "a test may stop")]
mod tests {
    use super::MattersWork;
    use crate::Work;
    use tinwave_core::best_cut::{FreeDimensions, best_cut};
    use tinwave_core::dimension::Dimension;
    use tinwave_maker::example::example;
    use tinwave_protocol::matters::{Matters, WhatMatters};

    fn matters(change: impl FnOnce(&mut tinwave_core::design::Design)) -> Matters {
        let mut design = example().design;
        change(&mut design);
        let mut work = MattersWork::new(&WhatMatters { design });
        for _ in 0..work.total() {
            work.step();
        }
        work.finish()
    }

    /// The search for the best cut has leeways of its own, from another model of the
    /// same curve.
    #[test]
    fn leeways_agree_with_those_of_the_search() {
        let design = example().design;
        let cuts = best_cut(&design, FreeDimensions::LengthAndDistance).unwrap_or_default();
        let best = cuts.first().expect("the example has a best cut");
        let found = matters(|design| {
            design.probe.length_um = best.length_um;
            design.probe.backshort_distance_um = best.backshort_distance_um;
        });
        let length = found.length.expect("within the limits");
        let (less, more) = best.length_slack.to_vswr_1_5.expect("a good cut");
        assert_eq!(length.vswr, 1.5);
        assert!(
            length.less.um.abs_diff(less) < 60 && length.more.um.abs_diff(more) < 60,
            "{length:?} {best:?}"
        );
        let distance = found.distance.expect("within the limits");
        let (less, more) = best.distance_slack.to_vswr_1_5.expect("a good cut");
        assert!(
            distance.less.um.abs_diff(less) < 150 && distance.more.um.abs_diff(more) < 150,
            "{distance:?} {best:?}"
        );
    }

    #[test]
    fn the_costliest_dimension_comes_first_and_none_helps() {
        let found = matters(|_| {});
        let as_drawn = found.as_drawn.expect("computed");
        let costs: Vec<f64> = found
            .dimensions
            .iter()
            .filter_map(|matter| matter.worst_vswr)
            .collect();
        assert_eq!(costs.len(), Dimension::ALL.len());
        assert!(costs.is_sorted_by(|a, b| a >= b));
        assert!(
            costs.iter().all(|cost| *cost >= as_drawn - 0.02),
            "{as_drawn} {costs:?}"
        );
        // Half a millimetre of wire costs more than two hundredths of its thickness.
        let place = |wanted| {
            found
                .dimensions
                .iter()
                .position(|matter| matter.dimension == wanted)
        };
        assert!(place(Dimension::ProbeLength) < place(Dimension::WireDiameter));
    }

    #[test]
    fn a_bad_cut_has_no_leeway() {
        let found = matters(|design| design.probe.length_um = 12_000);
        assert!(found.as_drawn.expect("computed") > 2.0);
        assert_eq!((found.length, found.distance), (None, None));
    }
}
