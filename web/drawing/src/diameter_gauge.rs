//! How wide a can may be: what each inside diameter carries over the band, this can,
//! and the trade sizes. Places are shares of the gauge's width.

use std::f64::consts::PI;

use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::{Band, Micrometres};
use tinwave_core::waveguide_mode::Mode;

/// What the gauge shows below the narrowest and above the widest limit, as factors.
const USUAL_ENDS: (f64, f64) = (0.8, 1.15);
/// The farthest that it reaches out for a can.
const FARTHEST_ENDS: (f64, f64) = (0.55, 1.5);
/// Limits nearer than this share get their figures on either side.
const NEAR: f64 = 0.13;
/// A figure or name this near an end begins or ends there.
const END: f64 = 0.17;
/// A part narrower than this has no room for its name.
const LEAST_NAMED: f64 = 0.11;

/// What passes over the band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ZoneKind {
    /// Nothing, in part of the band at least.
    TooNarrow,
    /// One mode.
    One,
    /// A second one, in part of the band at least.
    Two,
    /// A third one, or more.
    Many,
}

/// A range of diameters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Zone {
    /// What passes.
    pub kind: ZoneKind,
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// Whether its name fits in.
    pub is_named: bool,
}

/// Which part of a text stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stand {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// A limit between two ranges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// The diameter.
    pub metres: f64,
    /// Its place.
    pub at: f64,
    /// How its figure stands there.
    pub stand: Stand,
}

/// A trade size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// Its place in the list of trade sizes.
    pub index: usize,
    /// Its place.
    pub at: f64,
}

/// The gauge.
#[derive(Clone, Debug, PartialEq)]
pub struct DiameterGauge {
    /// What passes, from narrow to wide, without gaps.
    pub zones: Vec<Zone>,
    /// The limits between them.
    pub limits: Vec<Limit>,
    /// This can, kept on the gauge.
    pub can: Limit,
    /// Whether this can lies beyond an end.
    pub can_is_beyond: bool,
    /// The trade sizes, the narrowest first.
    pub strokes: Vec<Stroke>,
}

impl DiameterGauge {
    /// For a band, a can, and trade sizes (place in their list, inside diameter).
    #[must_use]
    pub fn new(
        band: Band,
        can_um: Micrometres,
        sizes: impl Iterator<Item = (usize, Micrometres)>,
    ) -> Self {
        let can_m = f64::from(can_um) / 1e6;
        let ranges = ranges(band);
        let axis = Axis::new(&ranges, can_m);
        let mut strokes: Vec<Stroke> = sizes
            .map(|(index, um)| Stroke {
                index,
                at: axis.place(f64::from(um) / 1e6),
            })
            .collect();
        strokes.sort_by(|a, b| a.at.total_cmp(&b.at));
        let at = axis.place(can_m);
        Self {
            zones: zones(&ranges, axis),
            limits: limits(&ranges, axis),
            can: Limit {
                metres: can_m,
                at,
                stand: stand_near_ends(at),
            },
            can_is_beyond: !(axis.low..=axis.high).contains(&can_m),
            strokes,
        }
    }

    /// The stroke nearest to a place.
    #[must_use]
    pub fn nearest(&self, at: f64) -> Option<usize> {
        let away = |stroke: &Stroke| (stroke.at - at).abs();
        let nearest = self
            .strokes
            .iter()
            .enumerate()
            .min_by(|a, b| away(a.1).total_cmp(&away(b.1)));
        nearest.map(|(place, _)| place)
    }
}

/// Diameter from which a mode passes at a frequency.
fn passes_from_m(mode: Mode, khz: u32) -> f64 {
    let root = mode.root().unwrap_or(f64::INFINITY);
    root * SPEED_OF_LIGHT / (PI * f64::from(khz) * 1e3)
}

/// Each kind with the diameter from which it holds; those without any are left out.
fn ranges(band: Band) -> Vec<(ZoneKind, f64)> {
    let one = passes_from_m(Mode::TE11, band.low_khz);
    let two = passes_from_m(Mode::TM01, band.high_khz).max(one);
    let many = passes_from_m(Mode::TE21, band.high_khz).max(one);
    let mut ranges = vec![(ZoneKind::TooNarrow, 0.0)];
    for (kind, from, to) in [
        (ZoneKind::One, one, two),
        (ZoneKind::Two, two, many),
        (ZoneKind::Many, many, f64::INFINITY),
    ] {
        if from < to {
            ranges.push((kind, from));
        }
    }
    ranges
}

#[derive(Clone, Copy, Debug)]
struct Axis {
    low: f64,
    high: f64,
}

impl Axis {
    fn new(ranges: &[(ZoneKind, f64)], can_m: f64) -> Self {
        let first = ranges.get(1).map_or(can_m, |(_, from)| *from);
        let last = ranges.last().map_or(can_m, |(_, from)| *from);
        Self {
            low: (first * USUAL_ENDS.0)
                .min(can_m * 0.97)
                .max(first * FARTHEST_ENDS.0),
            high: (last * USUAL_ENDS.1)
                .max(can_m * 1.04)
                .min(last * FARTHEST_ENDS.1),
        }
    }

    fn place(self, metres: f64) -> f64 {
        ((metres - self.low) / (self.high - self.low)).clamp(0.0, 1.0)
    }
}

fn zones(ranges: &[(ZoneKind, f64)], axis: Axis) -> Vec<Zone> {
    let ends = ranges
        .iter()
        .skip(1)
        .map(|(_, from)| axis.place(*from))
        .chain([1.0]);
    ranges
        .iter()
        .zip(ends)
        .map(|((kind, from), to)| {
            let from = axis.place(*from);
            Zone {
                kind: *kind,
                from,
                to,
                is_named: to - from >= LEAST_NAMED,
            }
        })
        .collect()
}

fn limits(ranges: &[(ZoneKind, f64)], axis: Axis) -> Vec<Limit> {
    let mut limits: Vec<Limit> = ranges
        .iter()
        .skip(1)
        .map(|(_, metres)| {
            let at = axis.place(*metres);
            Limit {
                metres: *metres,
                at,
                stand: stand_near_ends(at),
            }
        })
        .collect();
    for place in 1..limits.len() {
        if limits[place].at - limits[place - 1].at < NEAR {
            limits[place - 1].stand = Stand::End;
            limits[place].stand = Stand::Start;
        }
    }
    limits
}

fn stand_near_ends(at: f64) -> Stand {
    if at < END {
        Stand::Start
    } else if at > 1.0 - END {
        Stand::End
    } else {
        Stand::Middle
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BAND: Band = Band {
        low_khz: 2_401_000,
        high_khz: 2_483_500,
    };

    fn gauge(can_um: u32) -> DiameterGauge {
        DiameterGauge::new(BAND, can_um, [(3, 82_500), (1, 76_700)].into_iter())
    }

    #[test]
    fn the_limits_are_the_cutoffs_by_hand() {
        // x c / (pi f): 1.84118 at 2401, 2.40483 and 3.05424 at 2483.5 MHz
        // (Abramowitz and Stegun, table 9.5).
        let limits: Vec<f64> = gauge(87_000)
            .limits
            .iter()
            .map(|limit| limit.metres * 1e3)
            .collect();
        for (got, wanted) in limits.iter().zip([73.18, 92.40, 117.36]) {
            assert!((got - wanted).abs() < 0.01, "{limits:?}");
        }
        assert_eq!(limits.len(), 3);
    }

    #[test]
    fn the_ranges_fill_the_gauge_and_hold_the_can() {
        for (um, kind) in [
            (65_000, ZoneKind::TooNarrow),
            (87_000, ZoneKind::One),
            (99_000, ZoneKind::Two),
            (155_000, ZoneKind::Many),
        ] {
            let gauge = gauge(um);
            assert!(!gauge.can_is_beyond, "{um}");
            assert_eq!(gauge.zones[0].from, 0.0);
            assert_eq!(gauge.zones[3].to, 1.0);
            for pair in gauge.zones.windows(2) {
                assert_eq!(pair[0].to, pair[1].from);
            }
            let holds = |zone: &&Zone| (zone.from..zone.to).contains(&gauge.can.at);
            let zone = gauge.zones.iter().find(holds);
            assert_eq!(zone.map(|zone| zone.kind), Some(kind), "{um}");
        }
    }

    #[test]
    fn a_can_far_off_is_kept_on_the_gauge_and_that_is_known() {
        for um in [20_000, 400_000] {
            let gauge = gauge(um);
            assert!(gauge.can_is_beyond, "{um}");
            assert!((0.0..=1.0).contains(&gauge.can.at));
            assert_ne!(gauge.can.stand, Stand::Middle);
        }
    }

    #[test]
    fn a_band_too_wide_for_one_mode_has_no_such_range() {
        let wide = Band {
            low_khz: 2_000_000,
            high_khz: 4_000_000,
        };
        let gauge = DiameterGauge::new(wide, 87_000, std::iter::empty());
        let kinds: Vec<ZoneKind> = gauge.zones.iter().map(|zone| zone.kind).collect();
        assert_eq!(kinds, [ZoneKind::TooNarrow, ZoneKind::Many]);
    }

    #[test]
    fn figures_of_near_limits_stand_apart() {
        // One mode passes from 1.306 times the lower edge down to almost nothing.
        let band = Band {
            low_khz: 2_000_000,
            high_khz: 2_590_000,
        };
        let gauge = DiameterGauge::new(band, 87_000, std::iter::empty());
        assert!(gauge.limits[1].at - gauge.limits[0].at < NEAR);
        assert_eq!(gauge.limits[0].stand, Stand::End);
        assert_eq!(gauge.limits[1].stand, Stand::Start);
    }

    #[test]
    fn strokes_are_found_by_their_place() {
        let gauge = gauge(87_000);
        let found = |at| gauge.nearest(at).map(|place| gauge.strokes[place].index);
        assert_eq!(found(0.0), Some(1));
        assert_eq!(found(1.0), Some(3));
        assert_eq!(found(gauge.strokes[1].at - 0.001), Some(3));
    }
}
