//! Patterns as DXF, release 12 in ASCII: what cutting machines read.
//!
//! Coordinates are millimetres; the layers are those of [`Layer`]. Texts are
//! ASCII: any other character is written `\U+XXXX`.

use crate::drawing::{Anchor, Drawing, Shape, Text};
use crate::figure::{push_scaled, push_whole};
use crate::fill::Put;
use crate::geometry::{Point, Um, nearest};
use crate::layer::{Layer, LineKind};
use crate::pdf::push_hex;

/// Angles are written to a millionth of a degree.
const DEGREE_MILLIONTHS: f64 = 1_000_000.0;

/// The drawing as a DXF file.
#[must_use]
pub fn dxf(drawing: &Drawing) -> String {
    let mut file = File { out: String::new() };
    file.header(drawing);
    file.tables();
    file.out.put("0\nSECTION\n2\nENTITIES\n");
    for item in &drawing.items {
        file.shape(item.layer, &item.shape);
    }
    file.out.put("0\nENDSEC\n0\nEOF\n");
    file.out
}

struct File {
    out: String,
}

/// The line type's name in the file.
const fn line_type(line: LineKind) -> &'static str {
    match line {
        LineKind::ContinuousWide | LineKind::ContinuousNarrow => "CONTINUOUS",
        LineKind::Dashed => "DASHED",
        LineKind::ChainCentre => "CENTER",
        LineKind::ChainFold => "PHANTOM",
    }
}

/// Colour by number, so that layers are told apart on the screen.
const fn colour(layer: Layer) -> i64 {
    match layer {
        Layer::Cut => 1,
        Layer::Fold => 5,
        Layer::Drill => 3,
        Layer::Centre => 4,
        Layer::Outline | Layer::Hidden => 6,
        Layer::Dimension | Layer::Ruler | Layer::Register => 8,
        Layer::Note => 7,
    }
}

impl File {
    #[inline(never)]
    fn pair(&mut self, code: i64, value: &str) {
        push_whole(&mut self.out, code);
        self.out.put("\n");
        self.out.put(value);
        self.out.put("\n");
    }

    #[inline(never)]
    fn whole(&mut self, code: i64, value: i64) {
        push_whole(&mut self.out, code);
        self.out.put("\n");
        push_whole(&mut self.out, value);
        self.out.put("\n");
    }

    /// A number counted in 10^-`decimals`.
    #[inline(never)]
    fn real(&mut self, code: i64, value: i64, decimals: u32) {
        push_whole(&mut self.out, code);
        self.out.put("\n");
        push_scaled(&mut self.out, value, decimals);
        self.out.put("\n");
    }

    #[inline(never)]
    fn length(&mut self, code: i64, um: Um) {
        self.real(code, i64::from(um), 3);
    }

    #[inline(never)]
    fn point(&mut self, first: i64, point: Point) {
        self.length(first, point.x);
        self.length(first + 10, point.y);
        self.length(first + 20, 0);
    }

    fn header(&mut self, drawing: &Drawing) {
        let bounds = drawing.bounds();
        // $INSUNITS is unknown to release 12, and heeded by readers all the
        // same: millimetres.
        self.out.put(
            "999\nLengths in millimetres\n0\nSECTION\n2\nHEADER\n\
             9\n$ACADVER\n1\nAC1009\n9\n$INSUNITS\n70\n4\n",
        );
        for (name, corner) in [("$EXTMIN", bounds.low), ("$EXTMAX", bounds.high)] {
            self.pair(9, name);
            self.point(10, corner);
        }
        self.pair(0, "ENDSEC");
    }

    fn tables(&mut self) {
        self.out
            .put("0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLTYPE\n70\n4\n");
        for line in LineKind::ALL {
            // Both continuous kinds have one line type.
            if line != LineKind::ContinuousNarrow {
                self.line_type(line);
            }
        }
        self.out.put("0\nENDTAB\n0\nTABLE\n2\nLAYER\n70\n10\n");
        for layer in Layer::ALL {
            self.pair(0, "LAYER");
            self.pair(2, layer.name());
            self.whole(70, 0);
            self.whole(62, colour(layer));
            self.pair(6, line_type(layer.line()));
        }
        self.out.put("0\nENDTAB\n0\nENDSEC\n");
    }

    fn line_type(&mut self, line: LineKind) {
        let dashes = line.dashes_um();
        self.pair(0, "LTYPE");
        self.pair(2, line_type(line));
        self.out.put("70\n0\n3\n\n72\n65\n");
        self.whole(73, i64::try_from(dashes.len()).unwrap_or(0));
        self.real(40, dashes.iter().map(|dash| i64::from(*dash)).sum(), 3);
        for (index, dash) in dashes.iter().enumerate() {
            // Dashes are positive, gaps negative.
            let sign = if index % 2 == 0 { 1 } else { -1 };
            self.real(49, sign * i64::from(*dash), 3);
        }
    }

    #[inline(never)]
    fn begin(&mut self, name: &str, layer: Layer) {
        self.pair(0, name);
        self.pair(8, layer.name());
    }

    fn shape(&mut self, layer: Layer, shape: &Shape) {
        match shape {
            Shape::Line { from, to } => {
                self.begin("LINE", layer);
                self.point(10, *from);
                self.point(11, *to);
            }
            Shape::Circle { centre, radius } => {
                self.begin("CIRCLE", layer);
                self.point(10, *centre);
                self.length(40, *radius);
            }
            Shape::Arc {
                centre,
                radius,
                start_deg,
                sweep_deg,
            } => {
                self.begin("ARC", layer);
                self.point(10, *centre);
                self.length(40, *radius);
                self.angle(50, *start_deg);
                self.angle(51, start_deg + sweep_deg);
            }
            Shape::Polyline { points, closed } => self.polyline(layer, points, *closed),
            Shape::Text(text) => self.text(layer, text),
        }
    }

    /// An angle in degrees, from 0 to below 360.
    fn angle(&mut self, code: i64, degrees: f64) {
        let micro = i64::from(nearest(degrees * DEGREE_MILLIONTHS));
        self.real(code, micro.rem_euclid(360_000_000), 6);
    }

    fn polyline(&mut self, layer: Layer, points: &[Point], closed: bool) {
        self.begin("POLYLINE", layer);
        self.whole(66, 1);
        self.point(10, Point::default());
        self.whole(70, i64::from(closed));
        for point in points {
            self.begin("VERTEX", layer);
            self.point(10, *point);
        }
        self.begin("SEQEND", layer);
    }

    fn text(&mut self, layer: Layer, text: &Text) {
        self.begin("TEXT", layer);
        self.point(10, text.at);
        // The height of a DXF text is that of its capitals.
        self.length(40, text.capital);
        self.pair(1, &ascii(&text.words));
        if text.turned {
            self.whole(50, 90);
        }
        let place = match text.anchor {
            Anchor::Start => return,
            Anchor::Middle => 1,
            Anchor::End => 2,
        };
        self.whole(72, place);
        self.point(11, text.at);
    }
}

/// A text in ASCII. Signs that begin a code of DXF are written as codes
/// themselves, so that no name can be one.
fn ascii(words: &str) -> String {
    let mut out = String::new();
    for character in words.chars() {
        match character {
            '\\' | '%' => push_code(&mut out, character),
            // A caret and a space are a caret; with a letter it is a control sign.
            '^' => out.put("^ "),
            ' '..='~' => out.push(character),
            c if c.is_control() => out.put(" "),
            _ => push_code(&mut out, character),
        }
    }
    out
}

fn push_code(out: &mut String, character: char) {
    let mut units = [0; 2];
    for unit in character.encode_utf16(&mut units) {
        out.put("\\U+");
        push_hex(out, *unit);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_name_can_be_a_code() {
        assert_eq!(
            ascii("100 %%c \\P ^J ü 日"),
            "100 \\U+0025\\U+0025c \\U+005CP ^ J \\U+00FC \\U+65E5"
        );
    }
}
