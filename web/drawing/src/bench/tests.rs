use tinwave_core::design::{Mouth, Screw, Sleeve};
use tinwave_maker::bench::Step;
use tinwave_maker::connectors::{ConnectorChoice, ConnectorKind, Mounting};
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::example::example;
use tinwave_maker::workpiece::Workpiece;

use super::sheet::{figure_width, words_width};
use super::{BenchScene, BenchView, bench_scene};
use crate::section::drafting::Anchor;

/// The box of a text: left, top, right, bottom.
fn boxes(scene: &BenchScene) -> Vec<([f64; 4], &str)> {
    let of = |text: &super::BenchText| {
        let (wide, high) = if text.is_figure {
            (figure_width(&text.text), 15.0)
        } else {
            (words_width(&text.text), 13.0)
        };
        let left = match text.anchor {
            Anchor::Start => text.x,
            Anchor::Middle => text.x - wide / 2.0,
            Anchor::End => text.x - wide,
        };
        [left, text.y - high, left + wide, text.y]
    };
    scene
        .texts
        .iter()
        .map(|text| (of(text), text.text.as_str()))
        .collect()
}

fn works() -> Vec<Workpiece> {
    let mut works = Vec::new();
    for (diameter_um, length_um) in [(65_000, 60_000), (87_000, 190_000), (155_000, 150_000)] {
        for (kind, mounting) in [
            (ConnectorKind::N, Mounting::Flange),
            (ConnectorKind::Sma, Mounting::Flange),
            (ConnectorKind::Bnc, Mounting::SingleHole),
            (ConnectorKind::Cable, Mounting::Soldered),
        ] {
            let mut work = example();
            work.design.can.inside_diameter_um = diameter_um;
            work.design.can.open_length_um = length_um;
            work.design.probe.backshort_distance_um = length_um / 3;
            work.connector = ConnectorChoice { kind, mounting };
            work.design.probe.sleeve = Some(Sleeve {
                outside_diameter_um: 3_000,
                permittivity_milli: 2_250,
            });
            work.design.screws = vec![Screw {
                axial_um: length_um / 2,
                angle_millideg: 180_000,
                depth_um: 4_000,
                diameter_um: 3_000,
            }];
            work.design.mouth = Mouth::Funnel {
                mouth_diameter_um: 220_000,
                half_angle_millideg: 25_000,
            };
            works.push(work);
        }
    }
    works
}

#[test]
fn no_text_leaves_the_sheet_or_touches_another() {
    for work in works() {
        for unit in [LengthUnit::Millimetre, LengthUnit::Inch] {
            for width in [328.0, 704.0, 960.0] {
                for step in Step::ALL {
                    let view = BenchView {
                        work: &work,
                        unit,
                        width,
                    };
                    let Some(scene) = bench_scene(step, &view) else {
                        assert_eq!(step, Step::Before);
                        continue;
                    };
                    let boxes = boxes(&scene);
                    for (index, (here, text)) in boxes.iter().enumerate() {
                        let what = format!("{step:?} {text:?} at {width}");
                        assert!(here[0] >= 0.0 && here[2] <= width, "{what}: {here:?}");
                        assert!(
                            here[1] >= 0.0 && here[3] <= scene.height,
                            "{what}: {here:?}"
                        );
                        for (other, _) in &boxes[..index] {
                            let apart = here[2] <= other[0]
                                || other[2] <= here[0]
                                || here[3] <= other[1]
                                || other[3] <= here[1];
                            assert!(apart, "{what} meets {other:?}");
                        }
                    }
                }
            }
        }
    }
}

#[test]
fn a_phone_has_the_picture_and_the_buttons_on_one_screen() {
    for work in works() {
        for step in Step::ALL {
            let view = BenchView {
                work: &work,
                unit: LengthUnit::Millimetre,
                width: 328.0,
            };
            if let Some(scene) = bench_scene(step, &view) {
                assert!(scene.height <= 210.0, "{step:?}: {}", scene.height);
            }
        }
    }
}

#[test]
fn the_marked_dimension_is_the_steps_own_figure() {
    let work = example();
    let view = BenchView {
        work: &work,
        unit: LengthUnit::Millimetre,
        width: 328.0,
    };
    for (step, figure) in [
        (Step::Mark, "74.0"),
        (Step::Drill, "4.1"),
        (Step::CutWire, "31.5"),
    ] {
        let scene = bench_scene(step, &view);
        let texts = scene.map(|scene| scene.texts).unwrap_or_default();
        let marked: Vec<_> = texts.iter().filter(|text| text.is_mark).collect();
        assert_eq!(marked.len(), 1, "{step:?}");
        assert_eq!(marked[0].text, figure);
    }
}
