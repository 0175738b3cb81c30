//! A best cut as plain numbers, for the way between threads.

use super::{Allowance, BestCut, Slack};
use crate::design::Micrometres;

/// Numbers of one cut.
pub const CUT_NUMBERS: usize = 11;

/// Stands for an allowance that there is none of.
const NONE: f64 = -1.0;

fn allowance_numbers(allowance: Option<Allowance>) -> [f64; 2] {
    allowance.map_or([NONE; 2], |(minus, plus)| {
        [f64::from(minus), f64::from(plus)]
    })
}

/// A whole number of micrometres, if it is one.
fn micrometres(number: f64) -> Option<Micrometres> {
    let um = number as Micrometres;
    (f64::from(um) == number).then_some(um)
}

fn allowance(numbers: [f64; 2]) -> Option<Option<Allowance>> {
    let [minus, plus] = numbers;
    if minus == NONE && plus == NONE {
        return Some(None);
    }
    Some(Some((micrometres(minus)?, micrometres(plus)?)))
}

impl BestCut {
    /// The cut as numbers: length and distance (µm), worst VSWR, then the allowances
    /// (µm; -1 where there is none) of length and distance to VSWR 1.5 and to 2.
    #[must_use]
    pub fn to_numbers(&self) -> [f64; CUT_NUMBERS] {
        let [a, b] = allowance_numbers(self.length_slack.to_vswr_1_5);
        let [c, d] = allowance_numbers(self.length_slack.to_vswr_2);
        let [e, f] = allowance_numbers(self.distance_slack.to_vswr_1_5);
        let [g, h] = allowance_numbers(self.distance_slack.to_vswr_2);
        let length = f64::from(self.length_um);
        let distance = f64::from(self.backshort_distance_um);
        [length, distance, self.worst_vswr, a, b, c, d, e, f, g, h]
    }

    /// The cut of [`BestCut::to_numbers`]; `None` for numbers that are none.
    #[must_use]
    pub fn from_numbers(numbers: &[f64; CUT_NUMBERS]) -> Option<Self> {
        let [length, distance, worst_vswr, a, b, c, d, e, f, g, h] = *numbers;
        Some(Self {
            length_um: micrometres(length)?,
            backshort_distance_um: micrometres(distance)?,
            worst_vswr,
            length_slack: Slack {
                to_vswr_1_5: allowance([a, b])?,
                to_vswr_2: allowance([c, d])?,
            },
            distance_slack: Slack {
                to_vswr_1_5: allowance([e, f])?,
                to_vswr_2: allowance([g, h])?,
            },
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const CUT: BestCut = BestCut {
        length_um: 31_300,
        backshort_distance_um: 69_900,
        worst_vswr: 1.05,
        length_slack: Slack {
            to_vswr_1_5: Some((0, 1_200)),
            to_vswr_2: Some((2_000, 2_100)),
        },
        distance_slack: Slack {
            to_vswr_1_5: None,
            to_vswr_2: Some((3_000, 4_000)),
        },
    };

    #[test]
    fn a_cut_survives_the_way() {
        assert_eq!(BestCut::from_numbers(&CUT.to_numbers()), Some(CUT));
    }

    #[test]
    fn what_is_no_length_is_refused() {
        for (place, number) in [(0, -5.0), (1, 0.5), (3, f64::NAN), (4, NONE), (10, 5e9)] {
            let mut numbers = CUT.to_numbers();
            numbers[place] = number;
            assert_eq!(BestCut::from_numbers(&numbers), None, "{place}: {number}");
        }
    }
}
