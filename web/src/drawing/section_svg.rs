//! The section drawing as a file: the same sheet as text, for a page without
//! script and for print.

use tinwave_core::design::Design;

use super::dimension_line::Label;
use super::fixed_point::push_tenths;
use super::section_sheet::SectionSheet;
use crate::entry::LengthUnit;

/// The section drawing of a design as an SVG element, `width_px` wide. Its
/// classes are those of `pictures.css`; presentation is left to them.
#[must_use]
pub fn static_section_svg(design: &Design, unit: LengthUnit, width_px: f64) -> String {
    let sheet = SectionSheet::new(design, unit, width_px);
    let mut svg = String::with_capacity(6_000);
    svg.push_str("<svg class=\"pic-sheet\" xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ");
    push_tenths(&mut svg, sheet.scale.width);
    svg.push(' ');
    push_tenths(&mut svg, sheet.scale.height);
    svg.push_str("\" role=\"img\" aria-labelledby=\"example-title example-desc\">\n");
    svg.push_str("<title id=\"example-title\">The can in section</title>\n");
    svg.push_str("<desc id=\"example-desc\">");
    push_escaped(&mut svg, &sheet.description);
    svg.push_str("</desc>\n");
    svg.push_str(concat!(
        "<defs><pattern id=\"example-hatch\" width=\"5\" height=\"5\" ",
        "patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">",
        "<path class=\"pic-hatch\" d=\"M0 0V5\"/></pattern></defs>\n"
    ));
    let outline = &sheet.outline;
    let drafting = &sheet.drafting;
    let paths = [
        ("pic-edge", "", outline.edges.as_str()),
        (
            "pic-cut",
            " fill=\"url(#example-hatch)\"",
            outline.cut.as_str(),
        ),
        ("pic-sleeve", "", outline.sleeve.as_str()),
        ("pic-screw", "", outline.screws.as_str()),
        ("pic-wire", "", outline.wire.as_str()),
        ("pic-centre", "", outline.centre.as_str()),
        ("pic-thin", "", drafting.thin.as_str()),
        ("pic-arrow", "", drafting.arrows.as_str()),
    ];
    for (class, fill, data) in paths.into_iter().filter(|(_, _, data)| !data.is_empty()) {
        for piece in ["<path class=\"", class, "\"", fill, " d=\"", data, "\"/>\n"] {
            svg.push_str(piece);
        }
    }
    for label in &drafting.labels {
        push_label(&mut svg, label);
    }
    svg.push_str("</svg>\n");
    svg
}

fn push_label(svg: &mut String, label: &Label) {
    svg.push_str("<text class=\"");
    svg.push_str(label.class());
    svg.push_str("\" text-anchor=\"");
    svg.push_str(label.anchor.attribute());
    svg.push_str("\" transform=\"");
    svg.push_str(&label.transform());
    svg.push_str("\">");
    push_escaped(svg, &label.text);
    svg.push_str("</text>\n");
}

impl Label {
    /// Its class in `pictures.css`.
    #[must_use]
    pub const fn class(&self) -> &'static str {
        if self.is_figure {
            "pic-figure"
        } else {
            "pic-words"
        }
    }

    /// Value of the attribute `transform` that puts it in its place.
    #[must_use]
    pub fn transform(&self) -> String {
        let mut text = String::with_capacity(36);
        text.push_str("translate(");
        push_tenths(&mut text, self.x);
        text.push(' ');
        push_tenths(&mut text, self.y);
        text.push_str(if self.turned { ") rotate(-90)" } else { ")" });
        text
    }
}

fn push_escaped(svg: &mut String, text: &str) {
    for letter in text.chars() {
        match letter {
            '&' => svg.push_str("&amp;"),
            '<' => svg.push_str("&lt;"),
            '>' => svg.push_str("&gt;"),
            '"' => svg.push_str("&quot;"),
            other => svg.push(other),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{push_escaped, static_section_svg};
    use crate::drawing::section_sheet::tests::orchard_gate;
    use crate::entry::LengthUnit;

    #[test]
    fn text_cannot_break_out_of_the_file() {
        let mut svg = String::new();
        push_escaped(&mut svg, "a<b>&\"c");
        assert_eq!(svg, "a&lt;b&gt;&amp;&quot;c");
    }

    #[test]
    fn the_file_has_no_inline_style_and_every_figure() {
        let svg = static_section_svg(&orchard_gate(), LengthUnit::Millimetre, 340.0);
        assert!(!svg.contains("style="));
        assert!(svg.contains("viewBox=\"0 0 340 300\""));
        assert!(svg.contains(">51.4</text>"));
        let opened = svg.matches("<text").count();
        assert_eq!(opened, svg.matches("</text>").count());
        assert!(opened >= 9);
    }
}
