//! The section drawing, complete: everything a view or a file has to write.

use tinwave_core::design::Design;
use tinwave_core::ruler::RulerFigures;

use super::dimension_line::Drafting;
use super::section_figures::{SectionFigures, fine_number};
use super::section_outline::{ProbePlace, SectionOutline};
use super::section_scale::SectionScale;
use tinwave_maker::entry::{LengthUnit, format_length};

/// Most texts a sheet can have.
pub const MOST_LABELS: usize = 14;

/// The drawing of one design at one width.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionSheet {
    /// Scale and place.
    pub scale: SectionScale,
    /// The probe's place.
    pub probe: ProbePlace,
    /// Outlines of the parts.
    pub outline: SectionOutline,
    /// Dimension lines and texts.
    pub drafting: Drafting,
    /// The drawing in words.
    pub description: String,
}

impl SectionSheet {
    /// Lays out a design on a sheet `width_px` wide.
    #[must_use]
    pub fn new(design: &Design, unit: LengthUnit, width_px: f64) -> Self {
        let scale = SectionScale::new(design, width_px);
        let probe = ProbePlace::new(design, &scale);
        let outline = SectionOutline::new(design, &scale, &probe);
        let drafting = SectionFigures {
            design,
            scale: &scale,
            probe: &probe,
            unit,
        }
        .draft();
        Self {
            scale,
            probe,
            outline,
            drafting,
            description: describe(design, unit),
        }
    }
}

/// What the drawing shows, for those who can't see it.
fn describe(design: &Design, unit: LengthUnit) -> String {
    let can = &design.can;
    let probe = &design.probe;
    let length = |um: u32| format_length(um, unit);
    let mut text =
        String::from("A can cut along its axis: closed on the left, open on the right, ");
    let parts = [
        length(can.inside_diameter_um),
        " inside diameter, ".into(),
        length(can.open_length_um),
        " long inside. The probe, a wire of ".into(),
        fine_number(probe.wire_diameter_um, unit),
        [" ", unit.symbol()].concat(),
        ", stands ".into(),
        length(probe.backshort_distance_um),
        " from the back wall and reaches ".into(),
        length(probe.length_um),
        " in. Its hole is centred ".into(),
        length(RulerFigures::new(design).hole_from_closed_rim_um),
        " from the outer rim of the closed end.".into(),
    ];
    for part in &parts {
        text.push_str(part);
    }
    text
}

#[cfg(test)]
pub(crate) mod tests {
    use super::{MOST_LABELS, SectionSheet};
    use crate::dimension_line::{Anchor, Label, figure_width, words_width};
    use crate::section_outline::TOUCH;
    use tinwave_core::design::{Band, Can, Design, Mouth, Probe, Screw, Sleeve};
    use tinwave_core::metal::Metal;
    use tinwave_maker::entry::LengthUnit;

    /// A can of 87 mm by 150 mm with a probe of 1.6 mm wire.
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

    fn extent(label: &Label) -> (f64, f64) {
        let width = if label.is_figure {
            figure_width(&label.text)
        } else {
            words_width(&label.text)
        };
        match label.anchor {
            Anchor::Start => (label.x, label.x + width),
            Anchor::Middle => (label.x - width / 2.0, label.x + width / 2.0),
            Anchor::End => (label.x - width, label.x),
        }
    }

    fn assert_legible(design: &Design, width: f64) {
        let sheet = SectionSheet::new(design, LengthUnit::Millimetre, width);
        let labels = &sheet.drafting.labels;
        assert!(labels.len() <= MOST_LABELS);
        for (i, label) in labels.iter().enumerate() {
            assert!(label.y > 0.0 && label.y <= sheet.scale.height, "{label:?}");
            if label.turned {
                continue;
            }
            let (left, right) = extent(label);
            assert!(left >= -1.0 && right <= width + 1.0, "{label:?} at {width}");
            for other in labels.iter().skip(i + 1).filter(|l| !l.turned) {
                let (other_left, other_right) = extent(other);
                let apart = right <= other_left || other_right <= left;
                assert!(
                    apart || (label.y - other.y).abs() >= 11.0,
                    "{label:?} {other:?}"
                );
            }
        }
    }

    #[test]
    fn no_text_leaves_the_sheet_or_lies_on_another() {
        for width in [320.0, 340.0, 480.0, 700.0, 1_100.0] {
            let base = orchard_gate();
            assert_legible(&base, width);
            for distance in [2_000, 10_000, 20_000, 75_000, 110_000, 140_000] {
                for length in [4_000, 20_000, 43_000, 80_000] {
                    let mut design = base.clone();
                    design.probe.backshort_distance_um = distance;
                    design.probe.length_um = length;
                    assert_legible(&design, width);
                }
            }
            for (diameter, length) in [(40_000, 300_000), (150_000, 90_000), (65_000, 65_000)] {
                let mut design = base.clone();
                design.can.inside_diameter_um = diameter;
                design.can.open_length_um = length;
                assert_legible(&design, width);
            }
        }
    }

    #[test]
    fn the_note_of_the_wire_keeps_off_a_cup() {
        for width in [320.0, 660.0, 700.0, 760.0, 1_100.0] {
            for depth_um in [20_000, 30_000, 45_000] {
                let mut design = orchard_gate();
                design.can.open_length_um = 190_000;
                design.probe.backshort_distance_um = 45_000;
                design.mouth = Mouth::Choke {
                    outside_diameter_um: 150_000,
                    depth_um,
                };
                let sheet = SectionSheet::new(&design, LengthUnit::Millimetre, width);
                let s = &sheet.scale;
                let cup = s.mouth_x - s.px(depth_um) - s.wall;
                for label in &sheet.drafting.labels {
                    if label.text.contains("hole") {
                        assert!(extent(label).1 < cup, "{label:?} at {width}");
                    }
                }
            }
        }
    }

    #[test]
    fn figures_are_the_designs_own() {
        let sheet = SectionSheet::new(&orchard_gate(), LengthUnit::Millimetre, 340.0);
        let says = |text: &str| sheet.drafting.labels.iter().any(|l| l.text.contains(text));
        // 51.4 inside; outside the base's 0.2 and the recess of 3.6 come on top.
        for text in ["150.0", "87.0", "30.0", "51.4", "55.2", "1.6", "4.1"] {
            assert!(says(text), "{text}");
        }
    }

    #[test]
    fn the_tip_stands_at_its_scaled_place() {
        let sheet = SectionSheet::new(&orchard_gate(), LengthUnit::Millimetre, 700.0);
        let inside = sheet.scale.near_wall_y - sheet.scale.far_wall_y;
        let reach = sheet.scale.near_wall_y - sheet.probe.tip_y;
        assert!((reach / inside - 30.0 / 87.0).abs() < 1e-9);
        let from_back = sheet.probe.x - sheet.scale.back_x;
        let along = sheet.scale.mouth_x - sheet.scale.back_x;
        assert!((from_back / along - 51.4 / 150.0).abs() < 1e-9);
    }

    #[test]
    fn a_finger_always_has_room_on_both_handles() {
        for length in [1_000, 5_000, 30_000, 86_000, 400_000] {
            let mut design = orchard_gate();
            design.probe.length_um = length;
            let sheet = SectionSheet::new(&design, LengthUnit::Millimetre, 340.0);
            let (tip, body) = sheet.probe.touch_boxes(&sheet.scale);
            assert!(tip.height >= TOUCH && body.height >= TOUCH, "{length}");
            assert!(tip.top >= 0.0 && tip.top + tip.height <= body.top + 1e-9);
            assert!(body.top + body.height <= sheet.scale.height);
        }
    }

    #[test]
    fn parts_appear_only_where_they_exist() {
        let plain = SectionSheet::new(&orchard_gate(), LengthUnit::Inch, 340.0);
        assert_eq!(plain.outline.sleeve.as_str(), "");
        assert_eq!(plain.outline.screws.as_str(), "");
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
        let full = SectionSheet::new(&design, LengthUnit::Inch, 340.0);
        assert_ne!(full.outline.sleeve.as_str(), "");
        assert_ne!(full.outline.screws.as_str(), "");
    }
}
