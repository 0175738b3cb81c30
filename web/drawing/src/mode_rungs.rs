//! The mode ladder: which modes pass where, against the band.

use tinwave_core::design::Band;
use tinwave_core::verdict::ModeEntry;
use tinwave_core::waveguide_mode::Mode;

use super::dimension_line::figure_width;
use super::frequency_axis::{FrequencyAxis, Tick};
use super::section_scale::MOST_WIDTH;
use tinwave_maker::entry::{format_decimal, format_frequency, format_hertz};

/// Most rungs that are drawn; what comes above is counted in words.
pub const MOST_RUNGS: usize = 6;
/// Height of the whole picture, px: the same for every can, so that nothing
/// below it moves.
pub const HEIGHT: f64 = 276.0;
/// Where the rungs begin.
pub const TOP: f64 = 24.0;
/// Where they end and the axis begins.
pub const BOTTOM: f64 = TOP + RUNG * MOST_RUNGS as f64;
/// Height of a rung.
const RUNG: f64 = 38.0;
/// Margin left and right.
pub const SIDE: f64 = 4.0;

/// What a mode does to the band.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RungState {
    /// The wanted mode passes the whole band.
    Carries,
    /// The wanted mode passes part of the band.
    CarriesPart,
    /// The wanted mode does not reach down to the band.
    Blocked,
    /// Another mode that stays out of the band.
    StaysOut,
    /// Another mode that enters within the band.
    Enters,
    /// Another mode that passes the whole band.
    Unwanted,
}

impl RungState {
    fn of(mode: Mode, cutoff_khz: f64, band: Band) -> Self {
        let (low, high) = (f64::from(band.low_khz), f64::from(band.high_khz));
        match (mode == Mode::TE11, cutoff_khz < low, cutoff_khz < high) {
            (true, true, _) => Self::Carries,
            (true, false, true) => Self::CarriesPart,
            (true, false, false) => Self::Blocked,
            (false, true, _) => Self::Unwanted,
            (false, false, true) => Self::Enters,
            (false, false, false) => Self::StaysOut,
        }
    }

    /// In plain words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Carries => "carries the signal",
            Self::CarriesPart => "carries only part: passes",
            Self::Blocked => "passes only",
            Self::StaysOut => "stays out, passes",
            Self::Enters => "unwanted, enters the band",
            Self::Unwanted => "unwanted, passes too,",
        }
    }
}

/// One rung.
#[derive(Clone, Debug, PartialEq)]
pub struct Rung {
    /// Top of the rung, px.
    pub y: f64,
    /// From where the mode passes, px.
    pub cutoff_x: f64,
    /// Name: `TE11`, or two that share a cutoff.
    pub name: String,
    /// What it does, from where.
    pub words: String,
    /// The margin to the band, said after these words where there is room; may be empty.
    pub margin: String,
    /// What it does to the band.
    pub state: RungState,
}

/// Most figures on the axis.
pub const MOST_TICKS: usize = 10;

/// The whole ladder.
#[derive(Clone, Debug, PartialEq)]
pub struct Ladder {
    /// Its axis.
    pub axis: FrequencyAxis,
    /// The band's edges, px.
    pub band_x: (f64, f64),
    /// Its rungs, lowest cutoff first.
    pub rungs: Vec<Rung>,
    /// Figures of the axis.
    pub ticks: Vec<Tick>,
    /// The band in words.
    pub band_words: String,
    /// Where these words are centred.
    pub band_label_x: f64,
    /// Modes that pass the band without a rung, in words; may be empty.
    pub more: String,
    /// All of it in words.
    pub summary: String,
}

impl Ladder {
    /// Lays out modes (ascending by cutoff) against a band.
    #[must_use]
    pub fn new(modes: &[ModeEntry], band: Band, width_px: f64) -> Self {
        let merged = merge_degenerate(modes);
        let shown = merged
            .get(..merged.len().min(MOST_RUNGS))
            .unwrap_or(&merged);
        let axis = axis_for(shown, band, width_px);
        let rungs: Vec<Rung> = shown
            .iter()
            .enumerate()
            .map(|(i, (name, mode, cutoff_khz))| {
                let state = RungState::of(*mode, *cutoff_khz, band);
                Rung {
                    y: TOP + RUNG * i as f64,
                    cutoff_x: axis.place(*cutoff_khz),
                    name: name.clone(),
                    words: words(state, *cutoff_khz),
                    margin: if i < 2 {
                        margin(state, *cutoff_khz, band)
                    } else {
                        String::new()
                    },
                    state,
                }
            })
            .collect();
        let band_x = (
            axis.place(f64::from(band.low_khz)),
            axis.place(f64::from(band.high_khz)),
        );
        let band_words = band_words(band);
        let half_label = figure_width(&band_words) / 2.0;
        let middle = (band_x.0 + band_x.1) / 2.0;
        let band_label_x = middle.max(half_label).min(axis.right + SIDE - half_label);
        let ticks = axis.ticks(((axis.right - axis.left) / MOST_TICKS as f64).max(70.0));
        // A figure must not be cut off at the sheet's edge.
        let ticks: Vec<Tick> = ticks
            .into_iter()
            .filter(|tick| tick.x > 34.0 && tick.x < axis.right - 16.0)
            .collect();
        let more = more_words(&merged, rungs.len(), band);
        let summary = summarise(&rungs, &band_words, &more);
        Self {
            axis,
            band_x,
            rungs,
            ticks,
            band_words,
            band_label_x,
            more,
            summary,
        }
    }
}

fn band_words(band: Band) -> String {
    let low = format_frequency(band.low_khz);
    let mut text = String::from("your band ");
    text.push_str(low.strip_suffix(" MHz").unwrap_or(&low));
    text.push('–');
    text.push_str(&format_frequency(band.high_khz));
    text
}

/// Modes of equal cutoff (TE01 and TM11) share a rung.
fn merge_degenerate(modes: &[ModeEntry]) -> Vec<(String, Mode, f64)> {
    let mut merged: Vec<(String, Mode, f64)> = Vec::with_capacity(modes.len());
    for entry in modes.iter().filter(|entry| entry.cutoff_hz.is_finite()) {
        let khz = entry.cutoff_hz / 1e3;
        let name = entry.mode.to_string();
        match merged.last_mut() {
            Some(last) if (last.2 - khz).abs() <= 1e-6 * khz => {
                last.0.push('+');
                last.0.push_str(&name);
            }
            _ => merged.push((name, entry.mode, khz)),
        }
    }
    merged
}

/// Narrowest ladder: a part of the page on a phone 320 px wide.
const LEAST_WIDTH: f64 = 240.0;

fn axis_for(shown: &[(String, Mode, f64)], band: Band, width_px: f64) -> FrequencyAxis {
    let (low, high) = (f64::from(band.low_khz), f64::from(band.high_khz));
    let first = shown.first().map_or(low, |rung| rung.2);
    let second = shown.get(1).map_or(high, |rung| rung.2);
    let left = low.min(first) * 0.9;
    let right = high.max(second.min(1.8 * high)) * 1.12;
    FrequencyAxis {
        low_khz: left,
        high_khz: right.max(left * 1.2),
        left: SIDE,
        right: width_px.clamp(LEAST_WIDTH, MOST_WIDTH) - SIDE,
    }
}

/// What a rung says.
fn words(state: RungState, cutoff_khz: f64) -> String {
    let mut text = String::from(state.words());
    text.push_str(" from ");
    text.push_str(&format_hertz(cutoff_khz * 1e3));
    text
}

/// The margin to the band, said of the wanted mode and of its nearest
/// neighbour, which decide on the can.
fn margin(state: RungState, cutoff_khz: f64, band: Band) -> String {
    let (low, high) = (f64::from(band.low_khz), f64::from(band.high_khz));
    let (part, place) = match state {
        RungState::Carries => (low / cutoff_khz - 1.0, " % below"),
        RungState::StaysOut | RungState::Blocked => (cutoff_khz / high - 1.0, " % above"),
        _ => return String::new(),
    };
    let percent = part * 100.0;
    let mut text = String::from(", ");
    text.push_str(&format_decimal(percent, u8::from(percent < 10.0)));
    text.push_str(place);
    text
}

fn summarise(rungs: &[Rung], band_words: &str, more: &str) -> String {
    let mut text = String::from("Modes against ");
    text.push_str(band_words);
    text.push('.');
    for rung in rungs {
        for piece in [" ", &rung.name, ": ", &rung.words, &rung.margin, "."] {
            text.push_str(piece);
        }
    }
    if !more.is_empty() {
        text.push(' ');
        text.push_str(more);
    }
    text
}

fn more_words(merged: &[(String, Mode, f64)], drawn: usize, band: Band) -> String {
    let passes = |khz: f64| khz < f64::from(band.high_khz);
    let more = merged
        .iter()
        .skip(drawn)
        .filter(|(_, _, khz)| passes(*khz))
        .count();
    if more == 0 {
        return String::new();
    }
    ["And ", &more.to_string(), " more pass in the band."].concat()
}

#[cfg(test)]
mod tests {
    use super::{Ladder, MOST_RUNGS, RungState};
    use tinwave_core::design::Band;
    use tinwave_core::verdict::ModeEntry;
    use tinwave_core::waveguide_mode::Mode;

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
            entry(Mode::TE01, 4_202.9),
            entry(Mode::TM11, 4_202.9),
        ]
    }

    #[test]
    fn a_one_mode_can_says_so_with_margins() {
        let ladder = Ladder::new(&modes_of_87_mm(), BAND, 340.0);
        let states: Vec<RungState> = ladder.rungs.iter().map(|rung| rung.state).collect();
        let out = RungState::StaysOut;
        assert_eq!(states, [RungState::Carries, out, out, out]);
        // 2401 / 2019.5 = 1.189; 2637.8 / 2483.5 = 1.062.
        assert!(
            ladder
                .summary
                .contains("carries the signal from 2020 MHz, 19 % below")
        );
        assert!(
            ladder
                .summary
                .contains("stays out, passes from 2638 MHz, 6.2 % above")
        );
        assert_eq!(ladder.rungs[3].name, "TE01+TM11");
    }

    #[test]
    fn every_rung_fits_the_narrowest_sheet() {
        for mhz in [1_500.0, 2_300.0, 2_440.0, 2_637.8, 9_000.0] {
            let modes = [
                entry(Mode::TE11, mhz),
                entry(Mode::TM01, mhz * 1.306),
                entry(Mode::TE01, mhz * 2.08),
                entry(Mode::TM11, mhz * 2.08),
            ];
            for rung in Ladder::new(&modes, BAND, 320.0).rungs {
                let width = 5 + rung.name.len() + rung.words.len();
                // Half an em per letter, 12 px letters: measured on the page.
                assert!(width * 6 <= 324, "{width}: {} {}", rung.name, rung.words);
            }
        }
    }

    #[test]
    fn states_follow_the_bands_edges() {
        let of = |mode, mhz| {
            let ladder = Ladder::new(&[entry(mode, mhz)], BAND, 340.0);
            ladder.rungs[0].state
        };
        assert_eq!(of(Mode::TE11, 2_450.0), RungState::CarriesPart);
        assert_eq!(of(Mode::TE11, 2_600.0), RungState::Blocked);
        assert_eq!(of(Mode::TM01, 2_300.0), RungState::Unwanted);
        assert_eq!(of(Mode::TM01, 2_450.0), RungState::Enters);
    }

    #[test]
    fn a_huge_can_is_counted_not_drawn() {
        let many: Vec<ModeEntry> = (0..30_u8)
            .map(|i| entry(Mode::te(i + 2, 1), 1_000.0 + 20.0 * f64::from(i)))
            .collect();
        let ladder = Ladder::new(&many, BAND, 340.0);
        assert_eq!(ladder.rungs.len(), MOST_RUNGS);
        assert!(ladder.summary.ends_with("And 24 more pass in the band."));
    }

    #[test]
    fn the_stripe_and_the_bars_share_an_axis() {
        let ladder = Ladder::new(&modes_of_87_mm(), BAND, 700.0);
        let (low, high) = ladder.band_x;
        assert!(ladder.rungs[0].cutoff_x < low && low < high);
        assert!(high < ladder.rungs[1].cutoff_x && ladder.rungs[1].cutoff_x < 696.0);
    }
}
