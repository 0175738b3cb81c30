//! Typed numbers: what is understood, what is refused, and that nothing is
//! lost on the way to the box and back.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

use proptest::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_maker::entry::{
    Entered, EntryError, LengthUnit, circumference_of, field_text, format_decimal,
    format_frequency, format_frequency_exact, format_length, format_length_exact,
    format_length_signed, format_metres, format_scaled, inch_fraction, inside_from_outside,
    outside_from_circumference, parse_count, parse_degrees, parse_field, parse_frequency,
    parse_length, parse_ohm, parse_permittivity, parse_picofarad,
};

const MM: LengthUnit = LengthUnit::Millimetre;
const IN: LengthUnit = LengthUnit::Inch;

fn exact(value: u32) -> Result<Entered<u32>, EntryError> {
    Ok(Entered {
        value,
        rounded: false,
    })
}

fn rounded(value: u32) -> Result<Entered<u32>, EntryError> {
    Ok(Entered {
        value,
        rounded: true,
    })
}

#[test]
fn metric_lengths() {
    for (text, um) in [
        ("87", 87_000),
        ("87.0", 87_000),
        (" 87,5 ", 87_500),
        ("87.125mm", 87_125),
        ("8.7 cm", 87_000),
        ("0,087 m", 87_000),
        ("87000 µm", 87_000),
        ("87000 um", 87_000),
        ("87\u{a0}mm", 87_000),
        ("87\u{202f}MM", 87_000),
        (".5", 500),
        ("87.", 87_000),
        ("+87", 87_000),
        ("0", 0),
        ("-0", 0),
        ("87.12500000", 87_125),
        ("1,234", 1_234),
        ("3.5in", 88_900),
        ("50 thou", 1_270),
        ("87½", 87_500),
    ] {
        assert_eq!(parse_length(text, MM), exact(um), "{text}");
    }
}

#[test]
fn inch_lengths() {
    // 1 in is 25.4 mm exactly (international yard and pound agreement, 1959).
    for (text, um) in [
        ("3.5", 88_900),
        ("3,5", 88_900),
        ("3 1/2", 88_900),
        ("3-1/2", 88_900),
        ("3 1/2\"", 88_900),
        ("3½", 88_900),
        ("3 ½ in", 88_900),
        ("3 1⁄2″", 88_900),
        ("1/8", 3_175),
        ("⅜", 9_525),
        ("2 ¾", 69_850),
        ("5⅝ inches", 142_875),
        ("⅞ inch", 22_225),
        ("25/4", 158_750),
        ("88.9 mm", 88_900),
        ("3 - 1/2", 88_900),
    ] {
        assert_eq!(parse_length(text, IN), exact(um), "{text}");
    }
    // 3 9/16 in is 90.4875 mm; 9/16 in is 14.2875 mm: half a micrometre is said.
    assert_eq!(parse_length("3 9/16", IN), rounded(90_488));
    assert_eq!(parse_length("3-9/16", IN), rounded(90_488));
    assert_eq!(parse_length("9/16", IN), rounded(14_288));
    assert_eq!(parse_length("3.001", IN), rounded(76_225));
}

#[test]
fn finer_than_a_micrometre_is_said() {
    assert_eq!(parse_length("87.0004", MM), rounded(87_000));
    assert_eq!(parse_length("87.0005", MM), rounded(87_001));
    assert_eq!(parse_length("0.4 um", MM), rounded(0));
    assert_eq!(parse_frequency("2437.0001"), rounded(2_437_000));
}

#[test]
fn ambiguous_or_broken_lengths_are_refused() {
    use EntryError as E;
    let refused = |text: &str| parse_length(text, MM).unwrap_err();
    let two = |text: &str, suggestion: &str| E::TwoDecimalSigns {
        text: text.into(),
        suggestion: suggestion.into(),
    };
    assert_eq!(refused("1,234.5"), two("1,234.5", "1234.5"));
    assert_eq!(refused("1.234,5"), two("1.234,5", "1234.5"));
    assert_eq!(refused("87..5"), two("87..5", "875"));
    assert_eq!(refused("1.234.567"), two("1.234.567", "1234567"));
    assert!(
        matches!(refused("1 234"), E::GroupedDigits { suggestion, .. } if suggestion == "1234")
    );
    assert!(
        matches!(refused("1 234.5"), E::GroupedDigits { suggestion, .. } if suggestion == "1234.5")
    );
    assert_eq!(refused(""), E::Empty);
    assert_eq!(refused(" \u{a0} "), E::Empty);
    assert!(matches!(refused("mm"), E::NoNumber { .. }));
    assert_eq!(refused("-87"), E::Negative);
    assert_eq!(refused("−87"), E::Negative);
    assert_eq!(refused("–0.0001"), E::Negative);
    assert_eq!(refused("1/0"), E::ZeroDenominator);
    assert_eq!(refused("3 9/8"), E::FractionNotProper);
    assert_eq!(refused("3.5 1/2"), E::DecimalInFraction);
    assert!(matches!(
        refused("3--1/2"),
        E::UnexpectedCharacter { character: '-' }
    ));
    assert!(matches!(
        refused("80-90"),
        E::UnexpectedCharacter { character: '-' }
    ));
    assert!(matches!(refused("3 4 1/2"), E::GroupedDigits { .. }));
    assert!(matches!(refused("87 MHz"), E::UnknownUnit { unit, .. } if unit == "mhz"));
    assert!(matches!(refused("3 ft 2 in"), E::UnknownUnit { .. }));
    assert!(matches!(refused("8.7e1"), E::UnknownUnit { .. }));
    assert!(matches!(refused("NaN"), E::NoNumber { .. }));
    assert_eq!(refused("99999999"), E::TooLarge);
    assert_eq!(refused("9999999999"), E::TooManyDigits);
    assert_eq!(refused("1.0000000001"), E::TooManyDigits);
    assert_eq!(refused(&"9".repeat(100_000)), E::TooLong);
    assert!(matches!(
        refused("1/2/3"),
        E::UnexpectedCharacter { character: '/' }
    ));
}

#[test]
fn every_refusal_says_what_would_be_right() {
    for text in [
        "", "mm", "1,234.5", "1 234", "1/0", "3 9/8", "3.5 1/2", "87 MHz", "-3", "8;7",
    ] {
        let sentence = parse_length(text, MM).unwrap_err().to_string();
        assert!(
            sentence.ends_with(|c: char| c == '.' || c.is_ascii_digit()),
            "{sentence}"
        );
        assert!(sentence.len() > 20, "{sentence}");
    }
    let grouped = parse_length("1,234.5", MM).unwrap_err().to_string();
    assert!(grouped.ends_with("1234.5"), "{grouped}");
}

#[test]
fn frequencies() {
    for (text, khz) in [
        ("2437", 2_437_000),
        ("2437 MHz", 2_437_000),
        ("2.437 GHz", 2_437_000),
        ("2,437ghz", 2_437_000),
        ("2483.5", 2_483_500),
        ("2437000 kHz", 2_437_000),
        ("2437000000 Hz", 2_437_000),
        ("1420.406", 1_420_406),
    ] {
        let entered = parse_frequency(text);
        // Ten digits are more than are kept apart.
        if text.ends_with(" Hz") {
            assert_eq!(entered, Err(EntryError::TooManyDigits));
        } else {
            assert_eq!(entered, exact(khz), "{text}");
        }
    }
    assert!(matches!(
        parse_frequency("2.437"),
        Err(EntryError::PerhapsGigahertz { .. })
    ));
    assert!(matches!(
        parse_frequency("2,412"),
        Err(EntryError::PerhapsGigahertz { .. })
    ));
    assert!(matches!(
        parse_frequency("2 412"),
        Err(EntryError::GroupedDigits { .. })
    ));
    assert!(matches!(
        parse_frequency("2437 mm"),
        Err(EntryError::UnknownUnit { .. })
    ));
}

#[test]
fn other_quantities() {
    assert_eq!(parse_permittivity("2,3"), exact(2_300));
    assert_eq!(parse_ohm("50"), exact(50_000));
    assert_eq!(parse_ohm("75 Ω"), exact(75_000));
    assert_eq!(parse_ohm("75 \u{2126}"), exact(75_000));
    assert_eq!(parse_ohm("50ohm"), exact(50_000));
    assert_eq!(parse_picofarad("0.125 pF"), exact(125));
    assert_eq!(parse_picofarad("125 fF"), exact(125));
    assert_eq!(parse_degrees("-12.5°").unwrap().value, -12_500);
    assert_eq!(parse_degrees("−90").unwrap().value, -90_000);
    assert_eq!(parse_count("101"), Ok(101));
    assert_eq!(parse_count("10.5"), Err(EntryError::NotWhole));
}

#[test]
fn results_are_rounded_for_a_maker() {
    assert_eq!(format_length(87_000, MM), "87.0 mm");
    assert_eq!(format_length(87_049, MM), "87.0 mm");
    assert_eq!(format_length(87_050, MM), "87.1 mm");
    assert_eq!(format_length(0, MM), "0.0 mm");
    assert_eq!(format_length(87_000, IN), "3.425 in");
    assert_eq!(format_length(25_400, IN), "1.000 in");
    assert_eq!(format_length_exact(87_000, MM), "87");
    assert_eq!(format_length_exact(87_120, MM), "87.12");
    assert_eq!(format_length_exact(5, MM), "0.005");
    assert_eq!(format_length_exact(88_900, IN), "3.5");
    assert_eq!(format_length_signed(500, MM), "+0.5 mm");
    assert_eq!(format_length_signed(-500, MM), "−0.5 mm");
    assert_eq!(format_length_signed(-20, MM), "±0.0 mm");
    assert_eq!(format_metres(0.087, MM), "87.0 mm");
    assert_eq!(format_metres(-0.0123, MM), "−12.3 mm");
    assert_eq!(format_metres(f64::NAN, MM), "–");
    assert_eq!(format_metres(f64::INFINITY, IN), "–");
    assert_eq!(format_frequency(2_441_750), "2442 MHz");
    assert_eq!(format_frequency_exact(2_483_500), "2483.5");
    assert_eq!(format_scaled(-5, 3), "−0.005");
    assert_eq!(format_scaled(i64::MIN, 0), "−9223372036854775808");
    assert_eq!(format_decimal(1.316, 2), "1.32");
    assert_eq!(format_decimal(-0.04, 1), "0.0");
    assert_eq!(format_decimal(-12.36, 1), "−12.4");
    assert_eq!(format_decimal(9.96, 1), "10.0");
    assert_eq!(format_decimal(f64::NEG_INFINITY, 1), "–");
    assert_eq!(format_decimal(1e300, 1), "–");
}

#[test]
fn inch_fractions_state_what_is_left() {
    let third = inch_fraction(90_488, 64);
    assert_eq!(third.to_string(), "3 9/16 in");
    // 90.488 − 90.4875 mm is half a micrometre, which rounds up.
    assert_eq!(third.remainder_um, 1);
    assert_eq!(inch_fraction(25_400, 64).to_string(), "1 in");
    assert_eq!(inch_fraction(9_525, 64).to_string(), "3/8 in");
    let coarse = inch_fraction(87_000, 16);
    assert_eq!(coarse.to_string(), "3 7/16 in");
    // 3 7/16 in is 87.3125 mm.
    assert!((-313..=-312).contains(&coarse.remainder_um), "{coarse:?}");
    assert_eq!(inch_fraction(87_000, 0).to_string(), "3 in");
}

#[test]
fn a_strip_of_paper_measures_the_outside() {
    // π × 87.4 mm = 274.5752 mm (π from any table).
    assert_eq!(circumference_of(87_400), 274_575);
    // Π (87.4 + 0.1) mm = 274.8894 mm: the strip's middle lies 0.05 mm out.
    assert_eq!(outside_from_circumference(274_889, 100), 87_400);
    assert_eq!(inside_from_outside(87_400, 200), Some(87_000));
    assert_eq!(inside_from_outside(400, 200), None);
    assert_eq!(inside_from_outside(400, u32::MAX), None);
    assert_eq!(outside_from_circumference(0, 100), 0);
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

proptest! {
    #[test]
    fn exact_lengths_come_back(um in 0..5_000_001_u32, inch: bool) {
        let unit = if inch { IN } else { MM };
        let text = format_length_exact(um, unit);
        prop_assert_eq!(parse_length(&text, unit), exact(um), "{}", text);
    }

    #[test]
    fn exact_frequencies_come_back(khz in 100_000..40_000_001_u32) {
        prop_assert_eq!(parse_frequency(&format_frequency_exact(khz)), exact(khz));
    }

    #[test]
    fn every_field_comes_back(index in 0..FIELDS.len(), share in 0.0..=1.0_f64, inch: bool) {
        let field = FIELDS[index];
        let (low, high) = field.range();
        let value = low + ((high - low) as f64 * share) as i64;
        let unit = if inch { IN } else { MM };
        let text = field_text(field, value, unit);
        // A bare frequency below 100 MHz is asked back about, on purpose.
        prop_assume!(!matches!(field, Field::SweepLow | Field::SweepHigh) || value >= 100_000);
        prop_assert_eq!(
            parse_field(field, &text, unit),
            Ok(Entered { value, rounded: false }),
            "{}", text
        );
    }

    #[test]
    fn no_text_panics(text in ".{0,80}", inch: bool) {
        let unit = if inch { IN } else { MM };
        for field in FIELDS {
            if let Err(error) = parse_field(field, &text, unit) {
                prop_assert!(!error.to_string().is_empty());
            }
        }
    }

    #[test]
    fn no_number_like_text_panics(text in "[-+0-9., /\"′½mMinkGHz]{0,24}") {
        let _ = parse_length(&text, IN);
        let _ = parse_frequency(&text);
        let _ = parse_degrees(&text);
    }

    #[test]
    fn shown_decimals_are_the_nearest(value in -1.0e6..1.0e6_f64, decimals in 0..=4_u8) {
        let text = format_decimal(value, decimals).replace('−', "-");
        let shown: f64 = text.parse().unwrap();
        let half = 0.5 * 10_f64.powi(-i32::from(decimals));
        prop_assert!((shown - value).abs() <= half * (1.0 + 1e-6), "{} {}", value, text);
    }
}
