//! Links: every published form opens, every design comes back, and nothing
//! hostile does harm.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

mod common;

use common::{any_workpiece, described};
use proptest::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_maker::example::example;
use tinwave_maker::link::{LONGEST_LINK, LinkError, decode, encode, encode_keeping};

const CORPUS: &str = include_str!("links_v1.txt");
const USUAL: &str = "v=1&b=2401-2483.5&d=87&l=190&pw=1.29&pl=28.4&pd=45";

#[test]
fn every_published_link_opens() {
    let mut lines = CORPUS.lines().filter(|line| !line.starts_with('#'));
    let mut count = 0;
    while let (Some(link), Some(expected)) = (lines.next(), lines.next()) {
        let opened = decode(link).unwrap();
        let expected = expected.strip_prefix("=> ").unwrap();
        assert_eq!(described(&opened.work), expected, "{link}");
        assert_eq!(opened.newer, None);
        assert!(opened.unknown.is_empty() && opened.not_understood.is_empty());
        // Version 1 still writes each of them as it was.
        assert_eq!(encode(&opened.work), link);
        count += 1;
    }
    assert_eq!(count, 10);
}

#[test]
fn a_usual_link_is_short_and_plain() {
    let link = encode(&example());
    assert!(link.len() < 200, "{}: {link}", link.len());
    assert!(
        link.chars()
            .all(|c| c.is_ascii_alphanumeric() || "-_.~=&".contains(c))
    );
    assert!(link.ends_with(|c: char| c.is_ascii_alphanumeric()));
    assert_eq!(decode(&link).unwrap().work, example());
    assert_eq!(decode(&format!("#{link}")).unwrap().work, example());
}

#[test]
fn what_software_does_to_links_is_undone() {
    let link = encode(&example());
    assert_eq!(decode(&link.replace('&', "&amp;")).unwrap().work, example());
    assert_eq!(
        decode(&link.replace('~', "%7E").replace('=', "%3D"))
            .unwrap()
            .work,
        example()
    );
    assert_eq!(decode(&format!(" {link} ")).unwrap().work, example());
}

#[test]
fn unknown_keys_survive() {
    let opened = decode(&format!("{USUAL}&q=7.5_x&zz=")).unwrap();
    let unknown = vec![
        ("q".to_owned(), "7.5_x".to_owned()),
        ("zz".to_owned(), String::new()),
    ];
    assert_eq!(opened.unknown, unknown);
    let again = decode(&encode_keeping(&opened.work, &opened.unknown)).unwrap();
    assert_eq!(again, opened);
    // What is no plain pair is not written.
    let hostile = vec![
        ("q&d".to_owned(), "1".to_owned()),
        ("x".to_owned(), "<b>".to_owned()),
    ];
    assert_eq!(encode_keeping(&opened.work, &hostile), encode(&opened.work));
}

#[test]
fn a_newer_link_opens_as_far_as_it_can() {
    let newer = USUAL
        .replace("v=1", "v=3")
        .replace("&d=", "&m=unobtainium&mo=lens_3&new=1&d=");
    let opened = decode(&newer).unwrap();
    assert_eq!(opened.newer, Some(3));
    assert_eq!(opened.not_understood, ["m", "mo"]);
    assert_eq!(opened.unknown, [("new".to_owned(), "1".to_owned())]);
    assert_eq!(opened.work, decode(USUAL).unwrap().work);
    // In version 1 the same words are refused.
    assert!(matches!(
        decode(&newer.replace("v=3", "v=1")),
        Err(LinkError::BadValue { key: "m", .. })
    ));
}

fn refused(fragment: &str) -> LinkError {
    decode(fragment).unwrap_err()
}

#[test]
fn broken_and_hostile_links_are_refused() {
    use LinkError as E;
    let with = |from: &str, to: &str| refused(&USUAL.replace(from, to));
    assert_eq!(refused(""), E::Empty);
    assert_eq!(refused("#"), E::Empty);
    assert!(matches!(
        refused(&"a".repeat(1 << 20)),
        E::TooLong {
            length: 1_048_576,
            ..
        }
    ));
    assert_eq!(with("v=1&", ""), E::NoVersion);
    for version in ["0", "-1", "x", "", "1.0", "99999999999"] {
        assert!(matches!(
            with("v=1", &format!("v={version}")),
            E::BadVersion { .. }
        ));
    }
    assert_eq!(with("&pd=45", ""), E::Missing { key: "pd" });
    assert_eq!(
        with("&d=87", "&d=87&d=88"),
        E::Duplicate { key: "d".into() }
    );
    assert_eq!(with("&d=87", "&d=87&v=1"), E::Duplicate { key: "v".into() });
    assert_eq!(with("&d=87", "&d"), E::NoValue { part: "d".into() });
    assert_eq!(
        with("&d=87", "&d=<script>"),
        E::BadCharacter { character: '<' }
    );
    assert_eq!(with("&d=87", "&d=8é"), E::BadCharacter { character: 'é' });
    assert_eq!(with("&d=87", "&d=8%e9"), E::BadCharacter { character: '%' });
    for number in [
        "",
        "-",
        ".",
        "87.",
        ".5",
        "8.7.1",
        "87.1234",
        "1e3",
        "NaN",
        "inf",
        "0x57",
        "9999999999",
    ] {
        assert!(
            matches!(
                with("d=87", &format!("d={number}")),
                E::BadValue { key: "d", .. }
            ),
            "{number}"
        );
    }
    for (from, to, field) in [
        ("d=87", "d=9.999", Field::InsideDiameter),
        ("d=87", "d=-87", Field::InsideDiameter),
        ("d=87", "d=999999999", Field::InsideDiameter),
        ("pl=28.4", "pl=0", Field::ProbeLength),
        ("b=2401-2483.5", "b=2401-2401", Field::BandHigh),
        ("b=2401-2483.5", "b=2401-99999", Field::BandHigh),
        ("&d=87", "&d=87&f=1-2-1", Field::SweepPoints),
        ("&d=87", "&d=87&f=1-2-99999", Field::SweepPoints),
        ("&d=87", "&d=87&t=1_361_1_1", Field::ScrewAngle),
        (
            "&d=87",
            "&d=87&t=1_1_1_1~1_1_1_1~1_1_1_1~1_1_1_1~1_1_1_1~1_1_1_1~1_1_1_1~1_1_1_1~1_1_1_1",
            Field::ScrewCount,
        ),
        ("&d=87", "&d=87&mo=funnel_160_90", Field::MouthAngle),
    ] {
        let E::OutOfRange(error) = with(from, to) else {
            unreachable!("{to} was not refused for its range")
        };
        assert_eq!(error.field, field, "{to}");
    }
    for extra in [
        "f=1-2",
        "f=1-2-3-4",
        "f=1-2-2.5",
        "s=2",
        "mo=open_1",
        "mo=funnel",
        "mo=choke_1_2_3",
        "t=",
        "t=1_2_3",
        "k=xyz",
        "k=f_flange",
        "k=",
        "m=Copper",
        "n=~",
        "n=~zzzz9.",
        "n=~9.",
        "n=~d800",
    ] {
        assert!(
            matches!(refused(&format!("{USUAL}&{extra}")), E::BadValue { .. }),
            "{extra}"
        );
    }
    // A surrogate (U+D800 is 16o0 in base 36) is no character.
    assert!(matches!(
        refused(&format!("{USUAL}&n=~16o0.")),
        E::BadValue { key: "n", .. }
    ));
}

#[test]
fn the_largest_design_still_fits() {
    use tinwave_core::design::Screw;
    let mut work = example();
    work.design.name = "🥫".repeat(40);
    work.design.screws = vec![
        Screw {
            axial_um: 4_999_123,
            angle_millideg: -359_123,
            depth_um: 499_123,
            diameter_um: 19_123,
        };
        8
    ];
    let unknown = vec![("q".repeat(300), "1".to_owned())];
    let link = encode_keeping(&work, &unknown);
    assert!(link.len() <= LONGEST_LINK, "{}", link.len());
    // The numbers are whole; only the name was cut.
    let opened = decode(&link).unwrap().work;
    assert_eq!(opened.design.screws, work.design.screws);
    assert_eq!(opened.design.probe, work.design.probe);
    assert!(work.design.name.starts_with(&opened.design.name));
}

proptest! {
    #[test]
    fn any_design_comes_back(work in any_workpiece()) {
        let link = encode(&work);
        prop_assert!(link.len() <= LONGEST_LINK, "{}", link.len());
        prop_assert!(link.chars().all(|c| c.is_ascii_alphanumeric() || "-_.~=&".contains(c)));
        let mut opened = decode(&link).unwrap();
        prop_assert!(opened.unknown.is_empty());
        // A long name may be cut where eight screws leave it no room.
        if work.design.screws.len() > 2 {
            prop_assert!(work.design.name.starts_with(opened.work.design.name.trim_end()));
            opened.work.design.name = work.design.name.clone();
        }
        prop_assert_eq!(opened.work, work);
    }

    #[test]
    fn no_text_panics(text in ".{0,300}") {
        let _ = decode(&text);
        let _ = decode(&format!("{USUAL}&{text}"));
        let _ = decode(&format!("v=2&{text}"));
    }

    #[test]
    fn no_bytes_panic(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        let _ = decode(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn no_damaged_link_panics(work in any_workpiece(), at in 0..500_usize, with in "[ -~]{0,3}") {
        let mut link = encode(&work);
        let at = at.min(link.len());
        link.insert_str(at, &with);
        if let Ok(opened) = decode(&link) {
            prop_assert!(opened.work.design.check().is_ok());
        }
        link.truncate(at);
        let _ = decode(&link);
    }
}
