//! Gauges, bands, channels, connectors and trade sizes against their sources.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

use tinwave_core::design::Band;
use tinwave_core::design_error::Field;
use tinwave_maker::bands::{BANDS, BandGroup, ChannelSet, band_by_key, channel, named, parse_band};
use tinwave_maker::connectors::{CONNECTORS, ConnectorChoice, ConnectorKind, Mounting, connector};
use tinwave_maker::entry::{EntryError, LengthUnit};
use tinwave_maker::trade_sizes::{SizeGroup, TRADE_SIZES};
use tinwave_maker::wire_gauges::{GaugeSystem, gauge, gauges, nearest, parse_wire};

const MM: LengthUnit = LengthUnit::Millimetre;

#[test]
fn american_gauges_follow_their_formula() {
    // ASTM B258: d = 0.127 mm × 92^((36 − n)/39).
    for wire in gauges(GaugeSystem::Awg) {
        let exponent = (36.0 - f64::from(wire.size)) / 39.0;
        let um = 127.0 * 92_f64.powf(exponent);
        assert!(
            (f64::from(wire.diameter_um) - um).abs() <= 0.501,
            "{wire:?} {um}"
        );
    }
    assert_eq!(gauges(GaugeSystem::Awg).len(), 27);
}

#[test]
fn areas_give_the_diameter_of_a_circle() {
    // IEC 60228: nominal area A; d = 2 √(A/π).
    for wire in gauges(GaugeSystem::SquareMillimetre) {
        let um = 2000.0 * (f64::from(wire.size) / 100.0 / std::f64::consts::PI).sqrt();
        assert!(
            (f64::from(wire.diameter_um) - um).abs() <= 0.501,
            "{wire:?} {um}"
        );
    }
}

#[test]
fn imperial_gauges_are_the_standards_thousandths() {
    // BS 3737:1964: 18 is 0.048 in, 16 is 0.064 in, 22 is 0.028 in, 30 is 0.0124 in.
    for (number, ten_thousandths) in [
        (8, 1600),
        (16, 640),
        (18, 480),
        (22, 280),
        (27, 164),
        (30, 124),
    ] {
        let um = f64::from(ten_thousandths) * 2.54;
        let wire = gauge(GaugeSystem::Swg, number).unwrap();
        assert!(
            (f64::from(wire.diameter_um) - um).abs() <= 0.501,
            "{wire:?}"
        );
    }
}

#[test]
fn gauges_are_found_both_ways() {
    for system in GaugeSystem::ALL {
        for &wire in gauges(system) {
            assert_eq!(nearest(system, wire.diameter_um), wire);
            assert_eq!(
                parse_wire(&wire.label(), MM).unwrap().value,
                wire.diameter_um
            );
        }
        assert!(!system.name().is_empty() && !system.source().is_empty());
    }
    assert_eq!(nearest(GaugeSystem::Awg, 1_290).label(), "AWG 16");
    assert_eq!(nearest(GaugeSystem::Swg, 0).size, 30);
    assert_eq!(nearest(GaugeSystem::Swg, u32::MAX).size, 8);
    for (text, um) in [
        ("swg 18", 1_219),
        ("18 SWG", 1_219),
        ("awg16", 1_291),
        ("1.5 mm2", 1_382),
        ("1,5mm²", 1_382),
        ("1.29", 1_290),
        ("0.81 mm", 810),
    ] {
        assert_eq!(parse_wire(text, MM).unwrap().value, um, "{text}");
    }
    for text in ["swg 99", "awg", "1.4 mm2", "swg -3", "awg 16.5"] {
        assert!(
            matches!(parse_wire(text, MM), Err(EntryError::UnknownGauge { .. })),
            "{text}"
        );
    }
}

#[test]
fn published_bands_are_in_order() {
    let (low, high) = Field::BandLow.range();
    for band in BANDS {
        assert!(band.low_khz < band.high_khz, "{}", band.key);
        assert!(i64::from(band.low_khz) >= low && i64::from(band.high_khz) <= high);
        assert!(!band.source.is_empty() && !band.name.is_empty());
        assert_eq!(
            band.receive_only,
            band.group == BandGroup::Receive,
            "{}",
            band.key
        );
        assert_eq!(band_by_key(band.key), Some(band));
        if band.group == BandGroup::Amateur {
            assert!(band.note.contains("licence"), "{}", band.key);
        }
    }
    for group in BandGroup::ALL {
        assert!(BANDS.iter().any(|band| band.group == group));
    }
    let keys: Vec<_> = BANDS.iter().map(|band| band.key).collect();
    for (index, key) in keys.iter().enumerate() {
        assert!(!keys.get(index + 1..).unwrap().contains(key), "{key} twice");
    }
    // 47 CFR 15.247: 2400 to 2483.5 MHz. Hydrogen: 1420.405751768 MHz.
    assert_eq!(
        named(Band {
            low_khz: 2_400_000,
            high_khz: 2_483_500
        })
        .unwrap()
        .key,
        "wlan2g4"
    );
    let hydrogen = band_by_key("hydrogen").unwrap();
    assert!(hydrogen.low_khz < 1_420_405 && hydrogen.high_khz > 1_420_406);
}

#[test]
fn channels_follow_their_rules() {
    // IEEE Std 802.11-2020 Annex E and IEEE 802.15.4: stated centres in MHz.
    for (set, number, mhz) in [
        (ChannelSet::Lan2g4, 1, 2412),
        (ChannelSet::Lan2g4, 6, 2437),
        (ChannelSet::Lan2g4, 13, 2472),
        (ChannelSet::Lan2g4, 14, 2484),
        (ChannelSet::Lan5g, 36, 5180),
        (ChannelSet::Lan5g, 144, 5720),
        (ChannelSet::Lan5g, 177, 5885),
        (ChannelSet::Lan6g, 1, 5955),
        (ChannelSet::Lan6g, 233, 7115),
        (ChannelSet::Personal2g4, 11, 2405),
        (ChannelSet::Personal2g4, 26, 2480),
    ] {
        let found = channel(set, number).unwrap();
        assert_eq!(found.centre_khz, mhz * 1000);
        assert_eq!(found.low_khz + found.high_khz, 2 * found.centre_khz);
    }
    assert_eq!(ChannelSet::Lan6g.numbers().len(), 59);
    assert_eq!(channel(ChannelSet::Lan2g4, 15), None);
    assert_eq!(channel(ChannelSet::Lan5g, 37), None);
    assert_eq!(channel(ChannelSet::Lan2g4, 0), None);
    assert_eq!(
        channel(ChannelSet::Lan2g4, 6).unwrap().label(),
        "Channel 6, 2437 MHz"
    );
    for set in ChannelSet::ALL {
        assert_eq!(ChannelSet::from_key(set.key()), Some(set));
        for number in set.numbers() {
            assert!(channel(set, number).is_some());
        }
    }
}

#[test]
fn typed_bands() {
    for (text, low_khz, high_khz) in [
        ("2401-2483.5", 2_401_000, 2_483_500),
        ("2401 – 2483,5 MHz", 2_401_000, 2_483_500),
        ("2.4 to 2.4835 GHz", 2_400_000, 2_483_500),
        ("2.4GHz-2.4835GHz", 2_400_000, 2_483_500),
        ("2437", 2_427_000, 2_447_000),
        ("ch 6", 2_427_000, 2_447_000),
        ("Channel 6", 2_427_000, 2_447_000),
        ("ch. 6", 2_427_000, 2_447_000),
        ("5 GHz ch 36", 5_170_000, 5_190_000),
        ("6 GHz, channel 1", 5_945_000, 5_965_000),
    ] {
        assert_eq!(parse_band(text), Ok(Band { low_khz, high_khz }), "{text}");
    }
    assert_eq!(parse_band("2483-2401"), Err(EntryError::BandReversed));
    assert_eq!(parse_band("2437-2437"), Err(EntryError::BandReversed));
    assert_eq!(
        parse_band("ch 37"),
        Err(EntryError::UnknownChannel { number: 37 })
    );
    assert_eq!(parse_band("7 GHz ch 3"), Err(EntryError::NotABand));
    assert_eq!(parse_band(""), Err(EntryError::Empty));
    assert!(matches!(
        parse_band("2.4-2.4835"),
        Err(EntryError::PerhapsGigahertz { .. })
    ));
    assert!(parse_band("-2437").is_err());
    assert_eq!(parse_band(&"c".repeat(1_000_000)), Err(EntryError::TooLong));
}

#[test]
fn connectors_make_their_impedance() {
    // Z = 60 Ω / √εr · ln(D/d): SMA with PTFE (εr 2.05), N's line in PTFE.
    for kind in [ConnectorKind::Sma, ConnectorKind::N, ConnectorKind::Tnc] {
        let known = connector(kind);
        let ratio = f64::from(known.dielectric_um.unwrap()) / f64::from(known.pin_um.unwrap());
        let ohm = 60.0 / 2.05_f64.sqrt() * ratio.ln();
        assert!((ohm - 50.0).abs() < 3.0, "{kind:?} {ohm}");
    }
    for (known, kind) in CONNECTORS.iter().zip(ConnectorKind::ALL) {
        assert_eq!(known.kind, kind);
        assert_eq!(connector(kind), known);
        assert_eq!(ConnectorKind::from_key(kind.key()), Some(kind));
        assert!(!known.mountings.is_empty());
        for &mounting in known.mountings {
            let choice = ConnectorChoice { kind, mounting };
            assert!(choice.exists());
            assert!(choice.drill_um().is_some(), "{choice:?}");
            assert!(!choice.measured_from().is_empty());
            assert_eq!(choice.face_from_inner_wall_um(200), 200);
            assert_eq!(Mounting::from_key(mounting.key()), Some(mounting));
        }
        if known.mountings.contains(&Mounting::Flange) {
            let flange = known.flange.unwrap();
            assert!(flange.hole_pitch_um + flange.hole_um < flange.square_um);
            assert!(known.dielectric_um.unwrap() < flange.hole_pitch_um);
        }
    }
}

#[test]
fn unsuited_connectors_are_named() {
    let band = Band {
        low_khz: 2_400_000,
        high_khz: 2_500_000,
    };
    let high = Band {
        low_khz: 5_150_000,
        high_khz: 5_350_000,
    };
    let warn = |kind, band| ConnectorChoice::usual(kind).warning(band);
    assert_eq!(warn(ConnectorKind::Sma, high), None);
    assert_eq!(warn(ConnectorKind::Bnc, band), None);
    assert!(warn(ConnectorKind::Bnc, high).is_some());
    assert!(warn(ConnectorKind::F, band).unwrap().contains("75 ohm"));
}

#[test]
fn trade_sizes_agree_with_their_codes() {
    for group in SizeGroup::ALL {
        assert!(
            TRADE_SIZES.iter().any(|size| size.group == group),
            "{group:?}"
        );
        assert!(!group.source().is_empty() && !group.note().is_empty());
    }
    for size in TRADE_SIZES {
        assert!(size.minus_um < size.inside_um / 10 && size.plus_um < size.inside_um / 10);
        assert!(size.wall_um > 0 && size.wall_um <= 5_000, "{size:?}");
    }
    // The can code is whole inches and sixteenths over the seam: the inside is
    // 2 to 6.5 mm less; the second group is the height.
    for size in TRADE_SIZES
        .iter()
        .filter(|size| size.group == SizeGroup::UsCan)
    {
        let um = |code: &str| {
            let number: u32 = code.parse().unwrap();
            (number / 100 * 16 + number % 100) * 25_400 / 16
        };
        let (across, high) = size.name.split_once(" × ").unwrap();
        let less = um(across) - size.inside_um;
        assert!((1_500..=6_500).contains(&less), "{} {less}", size.name);
        assert!(
            um(high).abs_diff(size.length_um.unwrap()) <= 10,
            "{}",
            size.name
        );
        assert!(size.estimated());
    }
    // EN 1057: 108 × 1.5 mm is 105 mm inside. ASTM B88: 4 in type L is 3.905 in.
    let inside = |name: &str| {
        TRADE_SIZES
            .iter()
            .find(|size| size.name == name)
            .unwrap()
            .inside_um
    };
    assert_eq!(inside("108 × 1.5 mm"), 105_000);
    assert_eq!(inside("4 in type L"), 99_187);
}
