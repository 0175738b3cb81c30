//! Words: there are some for everything, they hold their numbers, and they
//! stay plain.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

use tinwave_core::design_error::{DesignError, Field};
use tinwave_core::metal::Metal;
use tinwave_core::verdict::{DiameterRange, Finding, ModeEntry, Severity};
use tinwave_core::waveguide_mode::Mode;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::history::Change;
use tinwave_words::{
    Caution, Occasion, Shown, caution, cautions, change, design_error, finding, label, metal,
    mode_effect, severity_word, verdict_line, why,
};

const MM: LengthUnit = LengthUnit::Millimetre;
const IN: LengthUnit = LengthUnit::Inch;

const RANGE: Option<DiameterRange> = Some(DiameterRange {
    low_m: 0.076_04,
    high_m: 0.092_38,
});

fn entry(mode: Mode, cutoff_hz: f64) -> ModeEntry {
    ModeEntry { mode, cutoff_hz }
}

/// One finding of every kind, and what its sentence must hold in millimetres.
fn every_finding() -> Vec<(Finding, Vec<&'static str>)> {
    let no_mode = |part_of_band_passes| Finding::NoMode {
        te11_cutoff_hz: 2.795e9,
        band_low_hz: 2.401e9,
        part_of_band_passes,
        one_mode_diameters: RANGE,
    };
    let near_mouth = |distance_m| Finding::ProbeNearMouth {
        distance_m,
        least_m: 0.021_75,
    };
    vec![
        (
            no_mode(false),
            vec!["2795 MHz", "2401 MHz", "76.1 to 92.3 mm"],
        ),
        (
            no_mode(true),
            vec!["2795 MHz", "2401 MHz", "76.1 to 92.3 mm"],
        ),
        (
            Finding::NearCutoff {
                margin: 0.0432,
                guide_wavelength_m: 0.435,
                wavelength_per_diameter: -33.96,
                one_mode_diameters: RANGE,
            },
            vec!["4.1 %", "435.0 mm", "34.0 mm", "Each millimetre"],
        ),
        (
            Finding::OneMode {
                lower_margin: 0.189,
                upper_margin: 0.0621,
            },
            vec!["16 %", "6.2 %"],
        ),
        (
            Finding::SeveralModes {
                others: vec![entry(Mode::TM01, 2.295e9), entry(Mode::TE21, 2.4791e9)],
                tm01_share: Some(0.117),
                one_mode_diameters: RANGE,
            },
            vec![
                "TM01 enters at 2295 MHz",
                "TE21 enters at 2479 MHz",
                "12 %",
                "76.1 to 92.3 mm",
            ],
        ),
        (
            Finding::TooShort {
                tm01_decay_db: 6.23,
                wanted_db: 10.0,
                sufficient_length_m: 0.143_21,
            },
            vec!["6.2 dB", "10.0 dB", "143.2 mm"],
        ),
        (
            Finding::ProbeTooDeep {
                length_m: 0.09,
                longest_m: 0.0864,
            },
            vec!["90.0 mm", "86.4 mm"],
        ),
        (
            Finding::ProbeNearBack {
                distance_m: 0.001,
                least_m: 0.0015,
            },
            vec!["1.0 mm", "1.5 mm"],
        ),
        (near_mouth(0.0123), vec!["12.3 mm", "21.8 mm"]),
        (near_mouth(-0.005), vec!["5.0 mm beyond", "21.8 mm"]),
        (
            Finding::WireTooThickForHole {
                wire_m: 0.003,
                hole_m: 0.0025,
            },
            vec!["3.0 mm", "2.5 mm"],
        ),
        (
            Finding::SleeveThinnerThanWire {
                sleeve_m: 0.001,
                wire_m: 0.0012,
            },
            vec!["1.0 mm", "1.2 mm"],
        ),
        (
            Finding::HoleLineImpedance {
                line_ohm: 69.4,
                reference_ohm: 50.0,
            },
            vec!["69 ohm", "50 ohm"],
        ),
        (Finding::ScrewImpossible { index: 1 }, vec!["Screw 2"]),
        (Finding::Match { worst_vswr: 1.316 }, vec!["1.32", "1.9 %"]),
        (Finding::Match { worst_vswr: 2.0 }, vec!["2.00", "11 %"]),
        (Finding::Match { worst_vswr: 3.0 }, vec!["3.00", "25 %"]),
        (
            Finding::Match {
                worst_vswr: f64::INFINITY,
            },
            vec!["nearly all"],
        ),
        (Finding::MouthNotComputed, vec!["open mouth"]),
        (
            Finding::CupRings {
                depth_m: 0.06,
                deepest_m: 0.0483,
            },
            vec!["60.0 mm", "48.3 mm"],
        ),
        (Finding::ProbeNotComputed, vec!["wire"]),
        (Finding::NoBeam, vec!["open mouth"]),
        (
            Finding::BeyondRange {
                low_hz: 2.03e9,
                high_hz: 4.17e9,
            },
            vec!["2030 MHz", "4170 MHz"],
        ),
        (Finding::BeamOfOneModeOnly, vec!["leans"]),
        (
            Finding::BeamOfEndlessPipe {
                gain_db: 0.23,
                beamwidth_deg: 6.0,
            },
            vec!["±0.2 dB", "±6°"],
        ),
    ]
}

#[test]
fn every_finding_has_words_with_its_numbers() {
    for (data, numbers) in every_finding() {
        let said = finding(&data, MM);
        assert_eq!((said.severity, said.code), (data.severity(), data.code()));
        assert!(
            !said.sentence.contains("report file"),
            "no words for {}",
            said.code
        );
        for number in numbers {
            assert!(
                said.sentence.contains(number),
                "{number}: {}",
                said.sentence
            );
        }
        assert!(
            said.headline.len() > 10 && !said.headline.ends_with('.'),
            "{}",
            said.headline
        );
        plain(&said.sentence);
        let inches = finding(&data, IN).sentence;
        assert!(!inches.contains(" mm"), "{inches}");
        // Where there was a length in millimetres, there is one in inches.
        let inch = inches.contains(" in.") || inches.contains(" in ") || inches.contains(" in,");
        assert!(inch || !said.sentence.contains(" mm"), "{inches}");
    }
}

#[test]
fn a_band_too_wide_gets_other_advice() {
    let said = finding(
        &Finding::SeveralModes {
            others: vec![entry(Mode::TM01, 2.295e9)],
            tm01_share: None,
            one_mode_diameters: None,
        },
        MM,
    );
    assert_eq!(said.headline, "Two modes pass");
    assert!(
        said.sentence.contains("Make the band narrower"),
        "{}",
        said.sentence
    );
    assert!(!said.sentence.contains('%'), "{}", said.sentence);
    // It must not send the maker to a narrower can that does not exist.
    assert!(!said.sentence.contains("narrower can"), "{}", said.sentence);
}

#[test]
fn advised_diameters_lie_inside_the_range() {
    let range = |low_m, high_m| {
        let sentence = finding(
            &Finding::NoMode {
                te11_cutoff_hz: 3e9,
                band_low_hz: 2.4e9,
                part_of_band_passes: false,
                one_mode_diameters: Some(DiameterRange { low_m, high_m }),
            },
            MM,
        )
        .sentence;
        sentence.split("A can of ").nth(1).unwrap().to_owned()
    };
    assert!(range(0.073_01, 0.092_39).starts_with("73.1 to 92.3 mm"));
    assert!(range(0.073_00, 0.092_40).starts_with("73.0 to 92.4 mm"));
    assert!(range(0.073_09, 0.092_31).starts_with("73.1 to 92.3 mm"));
}

#[test]
fn the_line_in_sight_is_the_first_finding() {
    let findings = [
        Finding::ScrewImpossible { index: 0 },
        Finding::Match { worst_vswr: 1.2 },
    ];
    assert_eq!(verdict_line(&findings, MM).code, "screw_impossible");
    assert!(!verdict_line(&[], MM).sentence.is_empty());
    for severity in [
        Severity::Good,
        Severity::Note,
        Severity::Caution,
        Severity::Stop,
    ] {
        assert!(!severity_word(severity).is_empty());
    }
}

const FIELDS: [Field; 25] = [
    Field::InsideDiameter,
    Field::OpenLength,
    Field::Wall,
    Field::BaseRecess,
    Field::WireDiameter,
    Field::ProbeLength,
    Field::BackshortDistance,
    Field::HoleDiameter,
    Field::Reference,
    Field::Shunt,
    Field::SleeveDiameter,
    Field::SleevePermittivity,
    Field::BandLow,
    Field::BandHigh,
    Field::SweepLow,
    Field::SweepHigh,
    Field::SweepPoints,
    Field::ScrewAxial,
    Field::ScrewDepth,
    Field::ScrewDiameter,
    Field::ScrewAngle,
    Field::ScrewCount,
    Field::MouthDiameter,
    Field::MouthAngle,
    Field::ChokeDepth,
];

#[test]
fn every_number_has_its_own_label() {
    for (index, field) in FIELDS.into_iter().enumerate() {
        let words = label(field);
        assert!(
            words.plain != "Number" && !words.help.is_empty(),
            "{field:?}"
        );
        for other in FIELDS.into_iter().skip(index + 1) {
            assert_ne!(words.plain, label(other).plain);
        }
    }
    assert_eq!(label(Field::BackshortDistance).trade, "backshort");
}

#[test]
fn a_refused_number_is_told_its_range() {
    for field in FIELDS {
        let (low, high) = field.range();
        for value in [low - 1, high + 1] {
            let error = DesignError {
                field,
                value,
                low,
                high,
            };
            for unit in [MM, IN] {
                let message = design_error(&error, unit);
                assert!(message.contains(label(field).plain), "{message}");
                assert_eq!(message.contains("too small"), value < low, "{message}");
                assert!(message.ends_with('.'));
            }
        }
    }
    let message = |field, value, low, high, unit| {
        design_error(
            &DesignError {
                field,
                value,
                low,
                high,
            },
            unit,
        )
    };
    assert_eq!(
        message(Field::InsideDiameter, 5_000, 10_000, 500_000, MM),
        "Inside diameter: 5 mm is too small. It can be 10 to 500 mm."
    );
    let inches = message(Field::InsideDiameter, 5_080, 10_000, 500_000, IN);
    assert!(
        inches.contains("0.2 in is too small") && inches.contains("19.68504 in"),
        "{inches}"
    );
    assert_eq!(
        message(Field::BandHigh, 2_401_000, 2_401_001, 15_000_000, MM),
        "Band to: 2401 MHz is too small. It must be above the band’s lower edge: 2401.001 to 15000 MHz."
    );
}

#[test]
fn every_result_has_its_reasons() {
    for shown in Shown::ALL {
        let reasons = why(shown);
        for text in [
            reasons.title,
            reasons.formula,
            reasons.inputs,
            reasons.source,
            reasons.error_bar,
        ] {
            assert!(text.len() > 3, "{shown:?}");
        }
        for other in Shown::ALL {
            assert!(
                shown == other || why(other).title != reasons.title,
                "{shown:?} {other:?}"
            );
        }
    }
    assert!(why(Shown::QuarterWaveRule).source.contains("no source"));
    assert!(why(Shown::ProbeImpedance).error_bar.contains("0.010"));
}

#[test]
fn cautions_arise_where_they_belong() {
    let all: Vec<_> = Occasion::ALL
        .into_iter()
        .flat_map(|occasion| cautions(occasion, Metal::Galvanised))
        .map(|text| text.caution)
        .collect();
    assert!(all.contains(&Caution::PlatedFumes) && all.contains(&Caution::LegalLimits));
    let solder: Vec<_> = cautions(Occasion::Solder, Metal::Copper)
        .iter()
        .map(|text| text.caution)
        .collect();
    assert!(!solder.contains(&Caution::PlatedFumes) && solder.contains(&Caution::SolderFlux));
    for of in Caution::ALL {
        let words = caution(of);
        assert_eq!(words.caution, of);
        plain(words.text);
        assert!(!words.headline.is_empty() && !words.source.is_empty());
        // Each arises with some metal, at its own occasion.
        assert!(
            Metal::ALL
                .into_iter()
                .any(|m| cautions(words.occasion, m).contains(&words))
        );
    }
    let local = Caution::ALL
        .map(caution)
        .iter()
        .filter(|c| c.text.contains("ocal code") || c.source.contains("ocal code"))
        .count();
    assert!(local >= 2);
}

#[test]
fn names_for_all() {
    for one in Metal::ALL {
        assert_ne!(metal(one), "Another metal");
    }
    for mode in [
        Mode::TE11,
        Mode::TM01,
        Mode::TE21,
        Mode::TE01,
        Mode::TM11,
        Mode::TE12,
    ] {
        plain(mode_effect(mode));
    }
    assert!(mode_effect(Mode::TM01).starts_with("TM01"));
    assert_eq!(change(Change::Field(Field::Wall)), "Wall thickness");
    assert_eq!(change(Change::BestCut), "Taking the best cut");
}

/// Whole, short sentences without leftovers of formatting.
fn plain(text: &str) {
    assert!(text.ends_with('.'), "{text}");
    assert!(
        !text.contains("  ") && !text.contains('{') && !text.contains("NaN"),
        "{text}"
    );
    for sentence in text.split(". ") {
        let words = sentence.split_whitespace().count();
        assert!(words <= 34, "{words} words: {sentence}");
    }
}
