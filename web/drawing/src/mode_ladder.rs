//! Which modes pass at which frequency: a row each, with a bar from its cutoff, over
//! one axis. Places are shares of the axis, so that letters keep their size while the
//! bars take the width there is.

use tinwave_core::design::Band;
use tinwave_core::verdict::ModeEntry;
use tinwave_core::waveguide_mode::Mode;
use tinwave_maker::mode_role::ModeRole;

/// Most rows; what passes beyond them is counted.
pub const MOST_ROWS: usize = 5;
/// How far beyond the band the axis goes, as a factor on its upper edge.
const BEYOND: f64 = 1.45;
/// What is left free before the first bar and behind the last cutoff.
const MARGIN: f64 = 0.1;
/// Most figures on the axis: so many fit beside the words of a phone.
const MOST_TICKS: f64 = 6.0;

/// A row: one mode, or those that share a cutoff.
#[derive(Clone, Debug, PartialEq)]
pub struct LadderRow {
    /// The modes.
    pub modes: Vec<Mode>,
    /// From here on they pass, Hz.
    pub cutoff_hz: f64,
    /// The same on the axis.
    pub from: f64,
    /// What they do to the band.
    pub role: ModeRole,
}

/// A figure of the axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxisTick {
    /// Whole MHz.
    pub mhz: u32,
    /// Its place.
    pub at: f64,
}

/// All rows, the lowest cutoff first.
#[derive(Clone, Debug, PartialEq)]
pub struct ModeLadder {
    /// The rows.
    pub rows: Vec<LadderRow>,
    /// The band's edges on the axis.
    pub band: (f64, f64),
    /// Figures of the axis.
    pub ticks: Vec<AxisTick>,
    /// How many modes more pass in the band without a row.
    pub more: usize,
}

impl ModeLadder {
    /// Of modes (ascending by cutoff) against a band.
    #[must_use]
    pub fn new(modes: &[ModeEntry], band: Band) -> Self {
        let merged = merged(modes, band);
        let axis = Axis::new(&merged, band);
        let passing = merged.iter().filter(|row| row.role.passes()).count();
        // The first one that stays out is of interest too.
        let rows: Vec<LadderRow> = merged
            .iter()
            .filter(|row| row.cutoff_hz < axis.high_hz)
            .take(MOST_ROWS.min(passing.max(2) + 1))
            .map(|row| LadderRow {
                from: axis.place(row.cutoff_hz),
                ..row.clone()
            })
            .collect();
        let more = merged
            .iter()
            .skip(rows.len())
            .filter(|row| row.role.passes())
            .map(|row| row.modes.len())
            .sum();
        Self {
            band: (
                axis.place(f64::from(band.low_khz) * 1e3),
                axis.place(f64::from(band.high_khz) * 1e3),
            ),
            ticks: axis.ticks(),
            rows,
            more,
        }
    }
}

/// Modes of equal cutoff (TE01 and TM11) share a row.
fn merged(modes: &[ModeEntry], band: Band) -> Vec<LadderRow> {
    let mut rows: Vec<LadderRow> = Vec::with_capacity(modes.len());
    for entry in modes.iter().filter(|entry| entry.cutoff_hz.is_finite()) {
        match rows.last_mut() {
            Some(last) if (last.cutoff_hz - entry.cutoff_hz).abs() <= 1e-6 * entry.cutoff_hz => {
                last.modes.push(entry.mode);
            }
            _ => rows.push(LadderRow {
                modes: vec![entry.mode],
                cutoff_hz: entry.cutoff_hz,
                from: 0.0,
                role: ModeRole::of(entry.mode, entry.cutoff_hz, band),
            }),
        }
    }
    rows
}

#[derive(Clone, Copy, Debug)]
struct Axis {
    low_hz: f64,
    high_hz: f64,
}

impl Axis {
    fn new(rows: &[LadderRow], band: Band) -> Self {
        let (low, high) = (
            f64::from(band.low_khz) * 1e3,
            f64::from(band.high_khz) * 1e3,
        );
        let first = rows.first().map_or(low, |row| row.cutoff_hz);
        Self {
            low_hz: low.min(first) * (1.0 - MARGIN),
            high_hz: (high * BEYOND).max(first * (1.0 + MARGIN)),
        }
    }

    fn place(self, hz: f64) -> f64 {
        ((hz - self.low_hz) / (self.high_hz - self.low_hz)).clamp(0.0, 1.0)
    }

    /// Round figures, none so near an end that its letters leave the axis.
    fn ticks(self) -> Vec<AxisTick> {
        let (low, high) = (self.low_hz / 1e6, self.high_hz / 1e6);
        let step = round_step((high - low) / MOST_TICKS);
        let first = (low / step).ceil();
        (0..)
            .map(|count| (first + f64::from(count)) * step)
            .take_while(|mhz| *mhz < high)
            .map(|mhz| AxisTick {
                mhz: mhz.round() as u32,
                at: self.place(mhz * 1e6),
            })
            .filter(|tick| (0.06..0.8).contains(&tick.at))
            .collect()
    }
}

/// The smallest of 10, 20, 25, 50, 100 ... MHz that is at least `wanted`.
fn round_step(wanted: f64) -> f64 {
    let mut decade = 10.0;
    loop {
        for factor in [1.0, 2.0, 2.5, 5.0] {
            if factor * decade >= wanted {
                return factor * decade;
            }
        }
        if decade > 1e9 {
            return decade;
        }
        decade *= 10.0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BAND: Band = Band {
        low_khz: 2_401_000,
        high_khz: 2_483_500,
    };

    fn entry(mode: Mode, mhz: f64) -> ModeEntry {
        ModeEntry {
            mode,
            cutoff_hz: mhz * 1e6,
        }
    }

    /// Cutoffs of an 87 mm pipe: c x / (pi d) with x = 1.8412, 2.4048, 3.0542,
    /// 3.8317 (Abramowitz and Stegun, table 9.5), by hand.
    fn modes_of_87_mm() -> Vec<ModeEntry> {
        vec![
            entry(Mode::TE11, 2_019.5),
            entry(Mode::TM01, 2_637.8),
            entry(Mode::TE21, 3_350.1),
            entry(Mode::TM11, 4_202.9),
            entry(Mode::TE01, 4_202.9),
        ]
    }

    #[test]
    fn what_passes_has_a_row_and_so_has_what_comes_next() {
        let ladder = ModeLadder::new(&modes_of_87_mm(), BAND);
        let roles: Vec<ModeRole> = ladder.rows.iter().map(|row| row.role).collect();
        let out = ModeRole::StaysOut;
        assert_eq!(roles, [ModeRole::Carries, out, out]);
        assert_eq!(ladder.more, 0);
        assert!(ladder.rows.is_sorted_by(|a, b| a.from < b.from));
    }

    #[test]
    fn the_band_stands_between_the_cutoffs_that_bound_it() {
        let ladder = ModeLadder::new(&modes_of_87_mm(), BAND);
        let (low, high) = ladder.band;
        assert!(ladder.rows[0].from < low && low < high && high < ladder.rows[1].from);
        // 2401 and 2483.5 MHz lie 82.5 MHz apart, the first two cutoffs 618.3.
        let ratio = (high - low) / (ladder.rows[1].from - ladder.rows[0].from);
        assert!((ratio - 82.5 / 618.3).abs() < 1e-3, "{ratio}");
    }

    #[test]
    fn modes_of_one_cutoff_share_a_row() {
        // A 155 mm pipe: the same roots.
        let modes: Vec<ModeEntry> = modes_of_87_mm()
            .into_iter()
            .map(|entry| ModeEntry {
                cutoff_hz: entry.cutoff_hz * 87.0 / 155.0,
                ..entry
            })
            .collect();
        let ladder = ModeLadder::new(&modes, BAND);
        assert_eq!(ladder.rows.len(), 4);
        assert_eq!(ladder.rows[3].modes, [Mode::TM11, Mode::TE01]);
        assert!(ladder.rows.iter().all(|row| row.role.passes()));
    }

    #[test]
    fn a_huge_can_is_counted_not_drawn() {
        let many: Vec<ModeEntry> = (0..30_u8)
            .map(|i| entry(Mode::te(i + 2, 1), 1_000.0 + 20.0 * f64::from(i)))
            .collect();
        let ladder = ModeLadder::new(&many, BAND);
        assert_eq!((ladder.rows.len(), ladder.more), (MOST_ROWS, 25));
    }

    #[test]
    fn figures_are_round_few_and_where_they_belong() {
        for scale in [0.2, 0.7, 1.0, 1.6, 4.0] {
            let modes: Vec<ModeEntry> = modes_of_87_mm()
                .into_iter()
                .map(|entry| ModeEntry {
                    cutoff_hz: entry.cutoff_hz * scale,
                    ..entry
                })
                .collect();
            let ladder = ModeLadder::new(&modes, BAND);
            assert!((1..=6).contains(&ladder.ticks.len()), "{:?}", ladder.ticks);
            assert!(ladder.ticks.iter().all(|tick| tick.mhz % 10 == 0));
            // A figure and the band's edge are on one scale.
            let row = &ladder.rows[0];
            let per_mhz = (ladder.band.1 - ladder.band.0) / 82.5;
            for tick in &ladder.ticks {
                let wanted = row.from + (f64::from(tick.mhz) - row.cutoff_hz / 1e6) * per_mhz;
                assert!((tick.at - wanted).abs() < 1e-6, "{tick:?}");
            }
        }
    }
}
