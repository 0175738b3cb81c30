//! A sheet's marks as PDF operators, in millimetres.

use crate::drawing::{Item, Shape, Text};
use crate::figure::push_scaled;
use crate::fill::Put;
use crate::geometry::{Point, Rect, Um};
use crate::layer::LineKind;
use crate::letters::{self, Weight};
use crate::sheet::{Layout, Sheet};
use crate::text_image::image_length;
use crate::words;
use tinwave_protocol::print::PrintJob;

/// The content stream of a sheet.
pub(crate) fn content(job: &PrintJob, layout: &Layout, sheet: &Sheet) -> String {
    let mut content = Content {
        text: String::new(),
        line: None,
        job,
    };
    content.scale(sheet);
    for item in &sheet.furniture.items {
        content.item(item, (0, 0));
    }
    for view in &sheet.views {
        if view.clipped {
            content.clip(view.place());
        }
        for item in view.items(layout) {
            content.item(item, view.shift);
        }
        if view.clipped {
            content.text.put("Q\n");
            // The line kind set inside went with the clip.
            content.line = None;
        }
    }
    content.text
}

struct Content<'a> {
    text: String,
    line: Option<LineKind>,
    job: &'a PrintJob,
}

impl Content<'_> {
    /// Millimetres, the printer's correction included.
    fn scale(&mut self, sheet: &Sheet) {
        let (across, upright) = sheet.paper.rulers.factors_millionths();
        // 72 points to 25.4 mm, in billionths.
        let points = |factor: i64| factor * 720_000 / 254;
        push_scaled(&mut self.text, points(across), 9);
        self.text.put(" 0 0 ");
        push_scaled(&mut self.text, points(upright), 9);
        self.text.put(" 0 0 cm\n");
    }

    #[inline(never)]
    fn number(&mut self, um: Um) {
        push_scaled(&mut self.text, i64::from(um), 3);
        self.text.put(" ");
    }

    #[inline(never)]
    fn point(&mut self, point: Point) {
        self.number(point.x);
        self.number(point.y);
    }

    #[inline(never)]
    fn operator(&mut self, name: &str) {
        self.text.put(name);
        self.text.put("\n");
    }

    fn clip(&mut self, window: Rect) {
        self.text.put("q ");
        self.point(window.low);
        self.number(window.width());
        self.number(window.height());
        self.operator("re W n");
    }

    fn set_line(&mut self, line: LineKind) {
        if self.line == Some(line) {
            return;
        }
        self.line = Some(line);
        push_scaled(&mut self.text, i64::from(line.width_um()), 3);
        self.text.put(" w [");
        for dash in line.dashes_um() {
            push_scaled(&mut self.text, i64::from(*dash), 3);
            self.text.put(" ");
        }
        self.operator("] 0 d");
    }

    fn item(&mut self, item: &Item, (x, y): (Um, Um)) {
        match &item.shape {
            Shape::Text(text) => self.words(text, (x, y)),
            shape => {
                self.set_line(item.layer.line());
                self.shape(shape, (x, y));
            }
        }
    }

    fn shape(&mut self, shape: &Shape, (x, y): (Um, Um)) {
        match shape {
            Shape::Line { from, to } => {
                self.point(from.by(x, y));
                self.text.put("m ");
                self.point(to.by(x, y));
                self.operator("l S");
            }
            Shape::Polyline { points, closed } => {
                let mut step = "m ";
                for point in points {
                    self.point(point.by(x, y));
                    self.text.put(step);
                    step = "l ";
                }
                self.operator(if *closed { "s" } else { "S" });
            }
            Shape::Circle { centre, radius } => {
                self.arc(centre.by(x, y), f64::from(*radius), 0.0, 360.0);
                self.operator("s");
            }
            Shape::Arc {
                centre,
                radius,
                start_deg,
                sweep_deg,
            } => {
                self.arc(centre.by(x, y), f64::from(*radius), *start_deg, *sweep_deg);
                self.operator("S");
            }
            Shape::Text(_) => {}
        }
    }

    /// An arc as Bézier curves of at most 15 degrees, which stay within
    /// 1e-8 of the radius: their handles are `4/3 tan(θ/4)` radii long.
    fn arc(&mut self, centre: Point, radius: f64, start: f64, sweep: f64) {
        let pieces = crate::geometry::nearest(sweep / 15.0).max(1);
        let step = sweep / f64::from(pieces);
        let (sin, cos) = crate::turn::sin_cos(step / 4.0);
        let handle = radius * 4.0 / 3.0 * sin / cos;
        self.point(centre.polar(radius, start));
        self.text.put("m ");
        for piece in 0..pieces {
            let from = start + step * f64::from(piece);
            let to = from + step;
            self.point(centre.polar(radius, from).polar(handle, from + 90.0));
            self.point(centre.polar(radius, to).polar(handle, to - 90.0));
            self.point(centre.polar(radius, to));
            self.text.put("c\n");
        }
    }

    fn words(&mut self, text: &Text, (x, y): (Um, Um)) {
        let origin = text.origin().by(x, y);
        if !letters::covers(&text.words) {
            self.image(text, origin);
            return;
        }
        self.text.put("BT ");
        self.text.put(match text.weight {
            Weight::Regular => "/F1 ",
            Weight::Bold => "/F2 ",
        });
        self.number(letters::font_size(text.capital));
        self.text.put(if text.turned {
            "Tf 0 1 -1 0 "
        } else {
            "Tf 1 0 0 1 "
        });
        self.point(origin);
        self.text.put("Tm ");
        push_string(&mut self.text, &text.words);
        self.operator("Tj ET");
    }

    fn image(&mut self, text: &Text, origin: Point) {
        let mut images = self.job.images.iter().enumerate();
        let Some((index, image)) = images.find(|(_, image)| image.words == text.words) else {
            return;
        };
        let width = image_length(image, image.width_px, text.capital);
        let height = image_length(image, image.height_px, text.capital);
        let below = image_length(image, image.height_px - image.baseline_px, text.capital);
        self.text.put("q ");
        if text.turned {
            self.text.put("0 ");
            self.number(width);
            self.number(-height);
            self.text.put("0 ");
            self.point(origin.by(below, 0));
        } else {
            self.number(width);
            self.text.put("0 0 ");
            self.number(height);
            self.point(origin.by(0, -below));
        }
        self.text.put("cm /I");
        self.text.put(&words::count(index));
        self.operator(" Do Q");
    }
}

/// A literal string in WinAnsi: parentheses and the backslash escaped, codes
/// above 126 as three octal digits, so that the stream is plain ASCII.
fn push_string(out: &mut String, words: &str) {
    out.put("(");
    for code in words.chars().filter_map(letters::win_ansi) {
        match code {
            b'(' | b')' | b'\\' => {
                out.put("\\");
                out.push(char::from(code));
            }
            32..=126 => out.push(char::from(code)),
            _ => {
                out.put("\\");
                for shift in [6, 3, 0] {
                    out.push(char::from(b'0' + ((code >> shift) & 7)));
                }
            }
        }
    }
    out.put(") ");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strings_are_escaped() {
        let mut out = String::new();
        push_string(&mut out, ")(\\ <&\"' ünï €");
        assert_eq!(out, "(\\)\\(\\\\ <&\"' \\374n\\357 \\200) ");
    }
}
