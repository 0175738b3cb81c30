//! The section drawing as marks, and as a file for a page without script and
//! for print.

use tinwave_core::design::Design;

use super::dimension_line::Label;
use super::scene::{Hatch, Mark, Scene, translation};
use super::section_sheet::{MOST_LABELS, SectionSheet};
use tinwave_maker::entry::LengthUnit;

/// The section drawing of a design as an SVG element, `width_px` wide. Its
/// classes are those of `pictures.css`; presentation is left to them.
#[must_use]
pub fn static_section_svg(design: &Design, unit: LengthUnit, width_px: f64) -> String {
    let mut sheet = SectionSheet::new(design, unit, width_px);
    let mut scene = section_scene(&mut sheet, "example");
    scene.marks.retain(|mark| mark.class != GRIP);
    scene.drop_empty();
    scene.to_svg()
}

const GRIP: &str = "pic-grip";

/// The marks of a sheet, whose path data are taken out of it. `id` begins the
/// ids in the picture: `pic-section`, or `example` for the file.
#[must_use]
pub fn section_scene(sheet: &mut SectionSheet, id: &'static str) -> Scene {
    let hatch = if id == "example" {
        "example-hatch"
    } else {
        "pic-hatch"
    };
    let outline = std::mem::take(&mut sheet.outline);
    let drafting = std::mem::take(&mut sheet.drafting);
    let mut marks = vec![
        Mark::path("pic-edge", outline.edges.into_text()),
        Mark::hatched("pic-cut", hatch, outline.cut.into_text()),
        Mark::path("pic-sleeve", outline.sleeve.into_text()),
        Mark::path("pic-screw", outline.screws.into_text()),
        Mark::path("pic-wire", outline.wire.into_text()),
        Mark::path("pic-centre", outline.centre.into_text()),
        Mark::path("pic-thin", drafting.thin.into_text()),
        Mark::path("pic-arrow", drafting.arrows.into_text()),
        Mark::path(GRIP, sheet.probe.grips()),
    ];
    let mut labels = drafting.labels.into_iter().map(label_mark);
    marks.extend((0..MOST_LABELS).map(|_| labels.next().unwrap_or_else(Mark::no_text)));
    Scene {
        size: (sheet.scale.width, sheet.scale.height),
        id,
        title: "The can in section",
        description: std::mem::take(&mut sheet.description),
        hatch: Some(Hatch {
            id: hatch,
            class: "pic-hatch",
            pitch: "5",
            angle: "45",
        }),
        marks,
    }
}

fn label_mark(label: Label) -> Mark {
    let class = if label.is_figure {
        "pic-figure"
    } else {
        "pic-words"
    };
    Mark {
        tag: "text",
        class,
        attributes: vec![
            ("text-anchor", label.anchor.attribute().into()),
            ("transform", translation((label.x, label.y), label.turned)),
        ],
        text: label.text,
    }
}

#[cfg(test)]
mod tests {
    use super::{section_scene, static_section_svg};
    use crate::section_sheet::SectionSheet;
    use crate::section_sheet::tests::orchard_gate;
    use tinwave_maker::entry::LengthUnit;

    #[test]
    fn the_file_has_no_inline_style_and_every_figure() {
        let svg = static_section_svg(&orchard_gate(), LengthUnit::Millimetre, 340.0);
        assert!(!svg.contains("style="));
        assert!(svg.contains("viewBox=\"0 0 340 300\""));
        assert!(svg.contains(">51.4</text>"));
        assert!(svg.contains("fill=\"url(#example-hatch)\""));
        assert!(!svg.contains("pic-grip"));
    }

    /// What is kept up to date must have the same marks for every design.
    #[test]
    fn every_design_has_the_same_marks() {
        let tags = |design| {
            let mut sheet = SectionSheet::new(design, LengthUnit::Millimetre, 340.0);
            let scene = section_scene(&mut sheet, "pic-section");
            scene
                .marks
                .iter()
                .map(|mark| (mark.tag, mark.attributes.len()))
                .collect::<Vec<_>>()
        };
        let plain = orchard_gate();
        let mut other = plain.clone();
        other.can.inside_diameter_um = 40_000;
        other.can.open_length_um = 300_000;
        other.probe.backshort_distance_um = 5_000;
        assert_eq!(tags(&plain), tags(&other));
    }
}
