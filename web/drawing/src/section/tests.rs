use super::drafting::{Anchor, Label, Tone};
use super::knob::Tip;
use super::{BareSection, SectionFor, SectionScene, SectionSpec, SheetSize};
use tinwave_core::design::{Band, Can, Design, Mouth, Probe, Screw, Sleeve};
use tinwave_core::metal::Metal;
use tinwave_maker::entry::LengthUnit;

/// A can of 87 mm by 150 mm with a wire of 1.6 mm.
pub(crate) fn orchard_gate() -> Design {
    Design {
        name: "Orchard gate".into(),
        band: Band {
            low_khz: 2_401_000,
            high_khz: 2_483_500,
        },
        can: Can {
            inside_diameter_um: 87_000,
            open_length_um: 150_000,
            wall_um: 200,
            base_recess_um: 3_600,
            metal: Metal::Tinplate,
        },
        probe: Probe {
            wire_diameter_um: 1_600,
            length_um: 30_000,
            backshort_distance_um: 51_400,
            hole_diameter_um: Some(4_100),
            reference_milliohm: 50_000,
            shunt_ff: 0,
            sleeve: None,
        },
        mouth: Mouth::Open,
        screws: Vec::new(),
        sweep: None,
    }
}

const SHEETS: [(f64, f64, f64); 6] = [
    (288.0, 236.0, 13.0),
    (328.0, 236.0, 13.0),
    (328.0, 236.0, 26.0),
    (480.0, 300.0, 13.0),
    (680.0, 392.0, 13.0),
    (1_100.0, 392.0, 18.0),
];

fn scene(design: &Design, shown_for: SectionFor, sheet: (f64, f64, f64)) -> SectionScene {
    let spec = SectionSpec::new(design, LengthUnit::Millimetre, shown_for);
    SectionScene::new(&spec, SheetSize::measured(sheet.0, sheet.1, sheet.2))
}

/// Left, top, right, bottom.
fn extent(scene: &SectionScene, label: &Label) -> (f64, f64, f64, f64) {
    let letter = scene.drafting.letter;
    let width = letter.width(label);
    let height = if label.figure.is_empty() {
        letter.words
    } else {
        letter.figure
    };
    if label.turned {
        return (
            label.x - height,
            label.y - width / 2.0,
            label.x,
            label.y + width / 2.0,
        );
    }
    let left = match label.anchor {
        Anchor::Start => label.x,
        Anchor::Middle => label.x - width / 2.0,
        Anchor::End => label.x - width,
    };
    // From a capital's top to the baseline.
    (left, label.y - 0.75 * height, left + width, label.y)
}

fn assert_legible(design: &Design, shown_for: SectionFor, sheet: (f64, f64, f64)) {
    let scene = scene(design, shown_for, sheet);
    let labels = &scene.drafting.labels;
    assert!(!labels.is_empty());
    for (i, label) in labels.iter().enumerate() {
        let (left, top, right, bottom) = extent(&scene, label);
        assert!(
            top >= -1.0 && bottom <= sheet.1 + 1.0,
            "{label:?} on {sheet:?}"
        );
        assert!(
            left >= -1.0 && right <= sheet.0 + 1.0,
            "{label:?} on {sheet:?}"
        );
        for other in labels.iter().skip(i + 1) {
            let there = extent(&scene, other);
            let apart = right <= there.0 || there.2 <= left || bottom <= there.1 || there.3 <= top;
            assert!(apart, "{label:?} {other:?} on {sheet:?}");
        }
    }
}

#[test]
fn no_text_leaves_the_sheet_or_lies_on_another() {
    let base = orchard_gate();
    for sheet in SHEETS {
        for shown_for in [SectionFor::Can, SectionFor::Feed] {
            assert_legible(&base, shown_for, sheet);
            for distance in [2_000, 10_000, 20_000, 75_000, 110_000, 140_000] {
                for length in [4_000, 20_000, 43_000, 80_000] {
                    let mut design = base.clone();
                    design.probe.backshort_distance_um = distance;
                    design.probe.length_um = length;
                    assert_legible(&design, shown_for, sheet);
                }
            }
            for (diameter, length) in [(40_000, 300_000), (150_000, 90_000), (65_000, 65_000)] {
                let mut design = base.clone();
                design.can.inside_diameter_um = diameter;
                design.can.open_length_um = length;
                design.probe.backshort_distance_um = 40_000;
                assert_legible(&design, shown_for, sheet);
            }
        }
    }
}

#[test]
fn figures_are_the_designs_own() {
    let says = |shown_for, text: &str| {
        let scene = scene(&orchard_gate(), shown_for, SHEETS[1]);
        scene
            .drafting
            .labels
            .iter()
            .any(|label| label.figure.contains(text))
    };
    // 51.4 inside; outside the base's 0.2 and the recess of 3.6 come on top.
    for text in ["150.0", "87.0", "30.0", "51.4", "55.2"] {
        assert!(says(SectionFor::Feed, text), "{text}");
    }
    // From the connector's face, the wall of 0.2 comes on top.
    for text in ["150.0", "87.0", "30.2", "55.2"] {
        assert!(says(SectionFor::Can, text), "{text}");
    }
    assert!(!says(SectionFor::Can, "51.4"));
}

#[test]
fn the_tip_stands_at_its_scaled_place() {
    let scene = scene(&orchard_gate(), SectionFor::Feed, SHEETS[4]);
    let scale = &scene.scale;
    let probe = scene.probe.expect("a cut");
    let inside = scale.near_wall_y - scale.far_wall_y;
    assert!(((scale.near_wall_y - probe.tip_y) / inside - 30.0 / 87.0).abs() < 1e-9);
    let along = scale.mouth_x - scale.back_x;
    assert!(((probe.x - scale.back_x) / along - 51.4 / 150.0).abs() < 1e-9);
}

#[test]
fn a_can_without_a_cut_shows_neither_hole_nor_wire() {
    let mut design = orchard_gate();
    design.can.inside_diameter_um = 155_000;
    let mut spec = SectionSpec::new(&design, LengthUnit::Millimetre, SectionFor::Can);
    spec.has_cut = false;
    spec.would_do_um = Some(82_500);
    let scene = SectionScene::new(&spec, SheetSize::PHONE);
    assert!(scene.probe.is_none());
    assert_eq!(scene.outline.wire.as_str(), "");
    assert_ne!(scene.outline.would_do.as_str(), "");
    let labels = &scene.drafting.labels;
    assert!(
        labels
            .iter()
            .any(|label| label.tone == Tone::Ink && label.figure.contains("82.5"))
    );
    assert!(!labels.iter().any(|label| label.tone == Tone::Copper));
    assert!(!labels.iter().any(|label| label.figure.contains("55.2")));
    // The near wall is whole: one piece of metal.
    assert_eq!(scene.outline.cut.as_str().matches('M').count(), 1);
}

#[test]
fn parts_appear_only_where_they_exist() {
    let plain = scene(&orchard_gate(), SectionFor::Feed, SHEETS[1]);
    assert_eq!(plain.outline.sleeve.as_str(), "");
    assert_eq!(plain.outline.screws.as_str(), "");
    assert_eq!(plain.outline.other.as_str(), "");
    let mut design = orchard_gate();
    design.probe.sleeve = Some(Sleeve {
        outside_diameter_um: 3_000,
        permittivity_milli: 2_300,
    });
    design.screws.push(Screw {
        axial_um: 80_000,
        angle_millideg: 0,
        depth_um: 5_000,
        diameter_um: 3_000,
    });
    let mut spec = SectionSpec::new(&design, LengthUnit::Inch, SectionFor::Feed);
    spec.other = Some(Tip {
        length_um: 31_000,
        distance_um: 60_000,
    });
    let full = SectionScene::new(&spec, SheetSize::PHONE);
    for path in [
        &full.outline.sleeve,
        &full.outline.screws,
        &full.outline.other,
    ] {
        assert_ne!(path.as_str(), "");
    }
}

#[test]
fn cans_on_a_shelf_share_one_scale() {
    let small = BareSection::new(&orchard_gate(), 0.5, true);
    let mut longer = orchard_gate();
    longer.can.open_length_um = 190_000;
    let longer = BareSection::new(&longer, 0.5, true);
    assert!((longer.size.0 - small.size.0 - 20.0).abs() < 1e-9);
    assert_eq!(
        BareSection::new(&orchard_gate(), 0.5, false)
            .outline
            .wire
            .as_str(),
        ""
    );
}
