//! Findings of the verdict as sentences.

use tinwave_core::verdict::{DiameterRange, Finding, ModeEntry, Severity};
use tinwave_core::waveguide_mode::Mode;

use super::figures::{percent, share_below};
use super::names::mode_effect;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_hertz, format_metres};

/// A finding in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// How much it matters.
    pub severity: Severity,
    /// The word of the report file.
    pub code: &'static str,
    /// A few words.
    pub headline: String,
    /// What happens, why, and what to do.
    pub sentence: String,
}

/// A finding in words, lengths in that unit.
#[must_use]
pub fn finding(finding: &Finding, unit: LengthUnit) -> Said {
    let (headline, sentence) = modes(finding, unit)
        .or_else(|| feed(finding, unit))
        .or_else(|| results(finding))
        .unwrap_or_else(|| {
            (
                "Something to look at".into(),
                format!(
                    "The computation reports “{}”. See the report file.",
                    finding.code()
                ),
            )
        });
    Said {
        severity: finding.severity(),
        code: finding.code(),
        headline,
        sentence,
    }
}

/// The one line that is always in sight: the most severe finding, which the
/// core puts first.
#[must_use]
pub fn verdict_line(findings: &[Finding], unit: LengthUnit) -> Said {
    findings.first().map_or_else(
        || Said {
            severity: Severity::Note,
            code: "none",
            headline: "Nothing found".into(),
            sentence: "The computation found nothing to say about this can.".into(),
        },
        |first| finding(first, unit),
    )
}

type Words = Option<(String, String)>;

fn words(headline: &str, sentence: String) -> Words {
    Some((headline.into(), sentence))
}

/// `76.1 to 92.4 mm`, rounded inwards so that both ends do.
pub(crate) fn span(range: DiameterRange, unit: LengthUnit) -> String {
    let step = match unit {
        LengthUnit::Millimetre => 0.1e-3,
        LengthUnit::Inch => 25.4e-6,
    };
    // Nearly half a step inwards before rounding to the nearest step, so that
    // an exact edge stays.
    let low = format_metres(range.low_m + 0.49 * step, unit);
    let high = format_metres(range.high_m - 0.49 * step, unit);
    let low = low.trim_end_matches(unit.symbol()).trim_end();
    format!("{low} to {high}")
}

fn advice(range: Option<DiameterRange>, unit: LengthUnit) -> String {
    range.map_or_else(
        || {
            "No diameter carries just one mode over a band this wide. Make the band narrower."
                .into()
        },
        |range| format!("A can of {} inside carries one mode.", span(range, unit)),
    )
}

fn modes(finding: &Finding, unit: LengthUnit) -> Words {
    match finding {
        Finding::NoMode {
            te11_cutoff_hz,
            band_low_hz,
            part_of_band_passes,
            one_mode_diameters,
        } => {
            let cutoff = format_hertz(*te11_cutoff_hz);
            let low = format_hertz(*band_low_hz);
            let advice = advice(*one_mode_diameters, unit);
            if *part_of_band_passes {
                words(
                    "Part of the band does not pass",
                    format!(
                        "The band starts at {low}, but the first mode, TE11, passes only above {cutoff}. Below that the signal dies out inside the can. {advice}"
                    ),
                )
            } else {
                words(
                    "The can is too narrow for this band",
                    format!(
                        "No mode passes at {low}. The first mode, TE11, passes only above {cutoff}, so the signal dies out inside the can. {advice}"
                    ),
                )
            }
        }
        Finding::NearCutoff {
            margin,
            guide_wavelength_m,
            wavelength_per_diameter,
            one_mode_diameters,
        } => words(
            "One mode passes, but every millimetre counts",
            near_cutoff(
                *margin,
                *guide_wavelength_m,
                *wavelength_per_diameter,
                *one_mode_diameters,
                unit,
            ),
        ),
        Finding::OneMode {
            lower_margin,
            upper_margin,
        } => words(
            "One mode passes over the whole band",
            format!(
                "The cutoff of TE11 lies {} below the band, and TM01 enters {} above the band’s end. The beam has one clean lobe.",
                percent(share_below(*lower_margin)),
                percent(*upper_margin)
            ),
        ),
        Finding::SeveralModes {
            others,
            tm01_share,
            one_mode_diameters,
        } => several(others, *tm01_share, *one_mode_diameters, unit),
        Finding::TooShort {
            tm01_decay_db,
            wanted_db,
            sufficient_length_m,
        } => words(
            "The can is short",
            format!(
                "TM01 does not pass, but it needs room to die out before the mouth. From the probe to the mouth it falls by {} dB; {} dB is wanted. The beam and the match get less even. Take a can at least {} long inside.",
                format_decimal(*tm01_decay_db, 1),
                format_decimal(*wanted_db, 1),
                format_metres(*sufficient_length_m, unit)
            ),
        ),
        _ => None,
    }
}

fn near_cutoff(
    margin: f64,
    wavelength_m: f64,
    per_diameter: f64,
    range: Option<DiameterRange>,
    unit: LengthUnit,
) -> String {
    let (step, step_m) = match unit {
        LengthUnit::Millimetre => ("Each millimetre", 1e-3),
        LengthUnit::Inch => ("Each 0.05 in", 1.27e-3),
    };
    format!(
        "The cutoff of TE11 lies only {} below the band. The guide wavelength is {} at the band’s centre. {step} more in diameter shortens it by {}, and the best place of the probe moves along. Measure the can well, or take a wider one. {}",
        percent(share_below(margin)),
        format_metres(wavelength_m, unit),
        format_metres(per_diameter.abs() * step_m, unit),
        advice(range, unit)
    )
}

fn several(
    others: &[ModeEntry],
    tm01_share: Option<f64>,
    range: Option<DiameterRange>,
    unit: LengthUnit,
) -> Words {
    let count = match others.len() {
        0 | 1 => "Two modes pass".to_owned(),
        2 => "Three modes pass".to_owned(),
        3 => "Four modes pass".to_owned(),
        more => format!("{} modes pass", more + 1),
    };
    let mut sentence = String::from("Beside TE11");
    for (index, entry) in others.iter().take(3).enumerate() {
        sentence.push_str(if index == 0 { ", " } else { "; " });
        sentence.push_str(&entry.mode.to_string());
        sentence.push_str(" enters at ");
        sentence.push_str(&format_hertz(entry.cutoff_hz));
    }
    if others.len() > 3 {
        sentence.push_str("; and more above");
    }
    sentence.push_str(". ");
    if let Some(entry) = others.first() {
        sentence.push_str(mode_effect(entry.mode));
        sentence.push(' ');
    }
    if let Some(share) = tm01_share {
        sentence.push_str(&format!(
            "At worst {} of the power reaches the mouth in {}. ",
            percent(share),
            Mode::TM01
        ));
    }
    sentence.push_str(&advice(range, unit));
    Some((count, sentence))
}

fn feed(finding: &Finding, unit: LengthUnit) -> Words {
    let length = |metres: f64| format_metres(metres, unit);
    match finding {
        Finding::ProbeTooDeep {
            length_m,
            longest_m,
        } => words(
            "The probe touches the far wall",
            format!(
                "The wire is {} long, but only {} fits with some air before the far wall. Cut it shorter.",
                length(*length_m),
                length(*longest_m)
            ),
        ),
        Finding::ProbeNearBack {
            distance_m,
            least_m,
        } => words(
            "The probe is too near the back wall",
            format!(
                "Its axis stands {} from the back wall. So near, the wall short-circuits it, and hole and drill don’t fit. Keep at least {}.",
                length(*distance_m),
                length(*least_m)
            ),
        ),
        Finding::ProbeNearMouth {
            distance_m,
            least_m,
        } if *distance_m <= 0.0 => words(
            "The probe is outside the can",
            format!(
                "Its axis would stand {} beyond the rim of the mouth. Move it at least {} inside, or take a longer can.",
                length(distance_m.abs()),
                length(*least_m)
            ),
        ),
        Finding::ProbeNearMouth {
            distance_m,
            least_m,
        } => words(
            "The probe is too near the mouth",
            format!(
                "Its axis stands {} from the rim. So near, the mouth disturbs the field at the wire, and no match can be given. Keep at least {}, or take a longer can.",
                length(*distance_m),
                length(*least_m)
            ),
        ),
        Finding::WireTooThickForHole { wire_m, hole_m } => words(
            "The wire touches the edge of its hole",
            format!(
                "The wire is {} thick, the hole {} wide. Wire and can would be short-circuited. Drill a wider hole or take a thinner wire.",
                length(*wire_m),
                length(*hole_m)
            ),
        ),
        Finding::CupRings { depth_m, deepest_m } => words(
            "The choke’s cup rings",
            format!(
                "The cup is {} deep, and from {} on it is a cavity of its own: match and beam are rough there. A quarter of a wavelength chokes.",
                length(*depth_m),
                length(*deepest_m)
            ),
        ),
        Finding::SleeveThinnerThanWire { sleeve_m, wire_m } => words(
            "The sleeve is no thicker than its wire",
            format!(
                "The sleeve’s outside is {}, the bare wire {}. Give the outside diameter of the sleeve, or take it off.",
                length(*sleeve_m),
                length(*wire_m)
            ),
        ),
        Finding::HoleLineImpedance {
            line_ohm,
            reference_ohm,
        } => words(
            "Hole and wire are not a matched line",
            format!(
                "Wire and hole make an air line of {} ohm; the cable has {} ohm. In a thin wall this does little, and the figures here count it. An insulator in the hole lowers it: by 30 % for PTFE.",
                format_decimal(*line_ohm, 0),
                format_decimal(*reference_ohm, 0)
            ),
        ),
        Finding::ScrewImpossible { index } => words(
            "A screw can’t be where it is stated",
            format!(
                "Screw {} meets the probe, the far wall or the back wall. Move it or make it shorter.",
                index.saturating_add(1)
            ),
        ),
        _ => None,
    }
}

fn results(finding: &Finding) -> Words {
    match finding {
        Finding::Match { worst_vswr } => Some(matched(*worst_vswr)),
        Finding::MouthNotComputed => words(
            "This mouth is not computed",
            "Match and beam are left out until the field computation of the whole body has answered. A very large body it can’t do: choose a smaller one, or the open mouth to see the bare can.".into(),
        ),
        Finding::ProbeNotComputed => words(
            "This probe is not computed",
            "The field computation can’t follow this wire, so match and beam are left out. Take a thinner or shorter wire, or move it away from walls and screws.".into(),
        ),
        Finding::NoBeam => words(
            "There is no beam",
            "The mouth is set to a guide that goes on for ever, which is for checks. Choose the open mouth to see the beam.".into(),
        ),
        Finding::BeyondRange { low_hz, high_hz } => words(
            "Some frequencies are left out",
            format!(
                "For this diameter the mouth is known from {} to {}. Outside it no match and no beam are given. Choose frequencies or a diameter within.",
                format_hertz(*low_hz),
                format_hertz(*high_hz)
            ),
        ),
        Finding::BeamOfOneModeOnly => words(
            "The beam shown is of TE11 alone",
            "Other modes pass, or nearly pass, and reach the mouth too. The true beam leans to one side and is less even than shown. Take a narrower or a longer can for a beam you can rely on.".into(),
        ),
        Finding::BeamOfEndlessPipe {
            gain_db,
            beamwidth_deg,
        } => words(
            "The beam is that of a long pipe",
            format!(
                "The back half of a real can ends, and its outside moves the beam a little. Expect the gain within ±{} dB and the beamwidths within ±{}° of the figures.",
                format_decimal(*gain_db, if *gain_db < 0.1 { 2 } else { 1 }),
                format_decimal(*beamwidth_deg, 0)
            ),
        ),
        _ => None,
    }
}

fn matched(worst_vswr: f64) -> (String, String) {
    let reflection = (worst_vswr - 1.0) / (worst_vswr + 1.0);
    let (headline, advice) = if worst_vswr <= 1.5 {
        ("The match is good", "Nothing needs to change.")
    } else if worst_vswr <= 2.0 {
        (
            "The match is usable",
            "The best cut shows whether another length or place does better.",
        )
    } else {
        (
            "The match is poor",
            "Change the length of the probe or its distance from the back wall. The best cut finds both.",
        )
    };
    let sentence = if worst_vswr.is_finite() {
        format!(
            "Over the band the VSWR is at most {}: at worst {} of the power comes back. {advice}",
            format_decimal(worst_vswr, 2),
            percent(reflection * reflection)
        )
    } else {
        format!("Somewhere in the band nearly all the power comes back. {advice}")
    };
    (headline.into(), sentence)
}
