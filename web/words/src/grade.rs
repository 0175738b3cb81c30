//! Will this can do: the grade, what it rests on, what it costs, and what to do.

use tinwave_core::design::Design;
use tinwave_core::grade::{
    Grade, Graded, LITTLE_IN_OTHERS, LITTLE_ROOM, MOST_IN_OTHERS, MOST_VSWR, Reason,
};
use tinwave_core::judge;
use tinwave_core::one_mode_diameter::one_mode_diameters_m;
use tinwave_core::si::SiDesign;
use tinwave_core::verdict::DiameterRange;
use tinwave_core::waveguide_mode::Mode;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_hertz, format_metres};

use crate::figures::{percent, share_below};
use crate::findings::{finding, span};

/// The grade as a station's answer.
#[must_use]
pub const fn grade(grade: Grade) -> &'static str {
    match grade {
        Grade::WillDo => "Will do",
        Grade::WithCare => "Will do, with care",
        Grade::WillNotDo => "Will not do",
    }
}

/// The grade in as few words as the top line has room for.
#[must_use]
pub const fn grade_short(grade: Grade) -> &'static str {
    match grade {
        Grade::WillDo => "Will do",
        Grade::WithCare => "With care",
        Grade::WillNotDo => "Will not do",
    }
}

/// A reason in words. Parts may be empty.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ReasonWords {
    /// A few words.
    pub headline: &'static str,
    /// What happens, and how much.
    pub what: String,
    /// When it is good enough, and what would be better.
    pub advice: String,
}

impl ReasonWords {
    /// What happens and what to do, in one run.
    #[must_use]
    pub fn text(&self) -> String {
        if self.advice.is_empty() {
            self.what.clone()
        } else {
            format!("{} {} {}", self.what, what_to_do(), self.advice)
        }
    }
}

/// One sentence below the grade: its gravest reason, or that all is well.
#[must_use]
pub fn answer(graded: &Graded, design: &Design, unit: LengthUnit) -> ReasonWords {
    graded.reasons.first().map_or_else(
        || ReasonWords {
            what: all_well(graded.room_below, graded.room_above),
            ..ReasonWords::default()
        },
        |first| reason(first, design, unit),
    )
}

fn all_well(below: f64, above: f64) -> String {
    format!(
        "One wave passes over the whole band, with {} of room below it and {} above.",
        percent(share_below(below)),
        percent(above)
    )
}

/// One reason in words, lengths in that unit.
#[must_use]
pub fn reason(reason: &Reason, design: &Design, unit: LengthUnit) -> ReasonWords {
    let limits = Limits::of(design);
    match *reason {
        Reason::CutOff {
            te11_cutoff_hz,
            part_of_band_passes,
        } => cut_off(&limits, te11_cutoff_hz, part_of_band_passes, design, unit),
        Reason::ThirdMode { .. } => ReasonWords {
            headline: "Too wide for this band",
            what: format!(
                "Too wide by {}. Three waves or more pass. They add up differently at every frequency, so no cut can be trusted and none is given.",
                difference(limits.diameter_m - limits.third_m, unit)
            ),
            advice: String::new(),
        },
        Reason::SecondMode { cutoff_hz, share } => second_wave(cutoff_hz, share, &limits, unit),
        Reason::LittleRoomBelow { room } => ReasonWords {
            headline: "Hardly wide enough",
            what: format!(
                "One wave passes, but the point below which nothing does lies only {} below the band. So near it the best cut moves much with every millimetre of width.",
                percent(share_below(room))
            ),
            advice: format!(
                "good enough if the width is measured well. A can of {} or more forgives more.",
                format_metres(limits.first_m * (1.0 + LITTLE_ROOM), unit)
            ),
        },
        Reason::LittleRoomAbove { room } => ReasonWords {
            headline: "Nearly too wide",
            what: format!(
                "One wave passes, but a second begins only {} above the band. In a can a little wider it takes power and tilts the beam.",
                percent(room)
            ),
            advice: format!(
                "good enough if the width is measured well. A can of {} or less is on the safe side.",
                format_metres(limits.second_m / (1.0 + LITTLE_ROOM), unit)
            ),
        },
        Reason::TooShort {
            sufficient_length_m,
        } => ReasonWords {
            headline: "The can is short",
            what: "The can is short: a second wave has not died out at the mouth. Match and beam are less even for it.".into(),
            advice: format!(
                "good enough to try. A can of {} or more inside is long enough.",
                format_metres(sufficient_length_m, unit)
            ),
        },
        Reason::Match { worst_vswr } => poor_match(worst_vswr),
        Reason::NoCut => ReasonWords {
            headline: "No cut can be given",
            what: no_cut(design, unit),
            advice: String::new(),
        },
    }
}

/// The diameters at which one wave more passes over the band, and the can's own.
struct Limits {
    diameter_m: f64,
    first_m: f64,
    second_m: f64,
    third_m: f64,
    /// With the room that a can on the safe side has.
    one_wave: Option<DiameterRange>,
}

impl Limits {
    fn of(design: &Design) -> Self {
        let si = SiDesign::new(design);
        let diameter_m = 2.0 * si.radius_m;
        // A cutoff is inversely proportional to the diameter.
        let at = |mode: Mode, hz: f64| diameter_m * mode.cutoff_frequency_hz(si.radius_m) / hz;
        Self {
            diameter_m,
            first_m: at(Mode::TE11, si.band_low_hz),
            second_m: at(Mode::TM01, si.band_high_hz),
            third_m: at(Mode::TE21, si.band_high_hz),
            one_wave: one_mode_diameters_m(si.band_low_hz, si.band_high_hz)
                .map(|(low_m, high_m)| DiameterRange {
                    low_m: low_m * (1.0 + LITTLE_ROOM),
                    high_m: high_m / (1.0 + LITTLE_ROOM),
                })
                .filter(|range| range.low_m < range.high_m),
        }
    }
}

/// A difference of lengths: never nothing where there is one.
fn difference(metres: f64, unit: LengthUnit) -> String {
    let least_m = match unit {
        LengthUnit::Millimetre => 0.1e-3,
        LengthUnit::Inch => 25.4e-6,
    };
    if metres < least_m / 2.0 {
        format!("less than {}", format_metres(least_m, unit))
    } else {
        format_metres(metres, unit)
    }
}

fn cut_off(
    limits: &Limits,
    te11_cutoff_hz: f64,
    part_of_band_passes: bool,
    design: &Design,
    unit: LengthUnit,
) -> ReasonWords {
    let by = difference(limits.first_m - limits.diameter_m, unit);
    let from = format_hertz(te11_cutoff_hz);
    let edge = |khz: u32| format!("{} MHz", tinwave_maker::entry::format_frequency_exact(khz));
    let what = if part_of_band_passes {
        format!(
            "Too narrow by {by}. The band begins at {}, but nothing passes below {from}: there the signal dies out inside the can.",
            edge(design.band.low_khz)
        )
    } else {
        format!(
            "Too narrow by {by}. Nothing passes below {from}, and the band ends at {}: the signal dies out inside the can.",
            edge(design.band.high_khz)
        )
    };
    ReasonWords {
        headline: "Too narrow for this band",
        what,
        advice: String::new(),
    }
}

fn second_wave(
    cutoff_hz: f64,
    share: Option<f64>,
    limits: &Limits,
    unit: LengthUnit,
) -> ReasonWords {
    let what = match share {
        None => format!(
            "A second wave passes from {}. How much of the power it carries is being worked out.",
            format_hertz(cutoff_hz)
        ),
        Some(share) if share > MOST_IN_OTHERS => format!(
            "A second wave carries {} of the power at worst. It tilts the beam so much, and differently at every frequency, that no cut is given.",
            percent(share)
        ),
        Some(share) if share <= LITTLE_IN_OTHERS => {
            "A second wave passes, though it carries less than 1 % of the power. It tilts the beam a little.".into()
        }
        Some(share) => format!(
            "A second wave carries {} of the power at worst. It tilts the beam to one side, differently over the band.",
            percent(share)
        ),
    };
    let good_enough = share.is_some_and(|share| share <= MOST_IN_OTHERS);
    let advice = match limits.one_wave {
        Some(range) if good_enough => format!(
            "good enough for most links. Where the beam must not wander, take a can of {}.",
            span(range, unit)
        ),
        _ if good_enough => "good enough for most links.".to_owned(),
        _ => String::new(),
    };
    ReasonWords {
        headline: "A second wave passes",
        what,
        advice,
    }
}

fn poor_match(worst_vswr: f64) -> ReasonWords {
    let reflection = (worst_vswr - 1.0) / (worst_vswr + 1.0);
    let comes_back = if worst_vswr.is_finite() && worst_vswr < 20.0 {
        format!(
            "{} of the power back at worst (VSWR {})",
            percent(reflection * reflection),
            format_decimal(worst_vswr, 2)
        )
    } else {
        "nearly all of the power back".to_owned()
    };
    if worst_vswr > MOST_VSWR {
        return ReasonWords {
            headline: "Nothing matches it",
            what: format!("Even the best cut sends {comes_back}, so none is given."),
            advice: String::new(),
        };
    }
    ReasonWords {
        headline: "The match is only fair",
        what: format!("Even the best cut sends {comes_back}."),
        advice: "usable; above a VSWR of 2 some radios turn their power down. Another size may match better."
            .into(),
    }
}

/// Why there is no cut at all, as far as it can be told.
fn no_cut(design: &Design, unit: LengthUnit) -> String {
    let si = SiDesign::new(design);
    if let Some(fault) = judge::judge_feed_but_for_cut(&si).first() {
        return finding(fault, unit).sentence;
    }
    let least_m = judge::least_backshort_distance_m(&si) + judge::least_mouth_distance_m(&si);
    if si.open_length_m < least_m {
        return format!(
            "Too short for a wire: between back wall and mouth there must be {} at least.",
            format_metres(least_m, unit)
        );
    }
    "The field computation finds no cut for this can with this wire and mouth.".into()
}

/// Heads what to do.
#[must_use]
pub const fn what_to_do() -> &'static str {
    "What to do:"
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_core::grade::{Best, grade as graded};
    use tinwave_maker::example::example;

    const MM: LengthUnit = LengthUnit::Millimetre;

    fn can(diameter_um: u32) -> Design {
        let mut design = example().design;
        design.can.inside_diameter_um = diameter_um;
        design.band.low_khz = 2_401_000;
        design
    }

    fn said(diameter_um: u32) -> ReasonWords {
        let design = can(diameter_um);
        answer(&graded(&design, Best::Unknown), &design, MM)
    }

    #[test]
    fn a_can_that_will_not_do_says_by_how_much() {
        // 1.84118 c / (pi 2.401 GHz) = 73.18 mm; 3.05424 at 2.4835 GHz 117.36 mm.
        assert!(said(65_000).what.starts_with("Too narrow by 8.2 mm."));
        assert!(said(155_000).what.starts_with("Too wide by 37.6 mm."));
        assert!(said(73_170).what.contains("less than 0.1 mm"));
        assert!(said(65_000).advice.is_empty());
    }

    #[test]
    fn a_good_can_says_its_room() {
        let words = said(87_000);
        // 2019.6 below 2401, and 2637.8 above 2483.5 MHz.
        assert!(
            words.what.contains("16 %") && words.what.contains("6.2 %"),
            "{}",
            words.what
        );
        assert!(words.advice.is_empty());
    }

    #[test]
    fn care_says_what_it_costs_and_when_it_is_good_enough() {
        let design = can(99_000);
        let second = |share| {
            let reason = Reason::SecondMode {
                cutoff_hz: 2.318e9,
                share,
            };
            super::reason(&reason, &design, MM)
        };
        let words = second(Some(0.026));
        assert!(words.what.contains("2.6 %"), "{}", words.what);
        assert!(words.advice.contains("75.4 to 89.7 mm"), "{}", words.advice);
        // Nothing is called good enough that is not known to be.
        assert!(second(None).advice.is_empty());
        assert!(second(Some(0.2)).advice.is_empty());
        assert!(second(Some(0.004)).what.contains("less than 1 %"));
    }

    #[test]
    fn a_count_is_never_the_headline() {
        for grade in [Grade::WillDo, Grade::WithCare, Grade::WillNotDo] {
            assert!(!super::grade(grade).contains(|c: char| c.is_ascii_digit()));
            assert!(grade_short(grade).len() <= super::grade(grade).len());
        }
    }

    #[test]
    fn limits_are_in_the_makers_unit() {
        let mut design = can(74_000);
        let near = graded(&design, Best::Unknown);
        let words = answer(&near, &design, LengthUnit::Inch);
        assert!(words.advice.contains(" in or more"), "{}", words.advice);
        design.can.open_length_um = 12_000;
        let short = reason(&Reason::NoCut, &design, MM);
        assert!(short.what.starts_with("Too short"), "{}", short.what);
    }

    #[test]
    fn no_cut_for_a_wire_that_touches_says_so() {
        let mut design = can(87_000);
        design.probe.hole_diameter_um = Some(design.probe.wire_diameter_um);
        let words = reason(&Reason::NoCut, &design, MM);
        assert!(words.what.contains("hole"), "{}", words.what);
    }
}
