//! Drawings as SVG in millimetres: sheets for the browser's own print, and one
//! uncut drawing for other programs.

use crate::drawing::{Anchor, Drawing, Item, Shape, Text};
use crate::figure::push_scaled;
use crate::fill::{Put, fill};
use crate::furniture::metric_ruler;
use crate::geometry::{MM, Point, Rect, Um, at};
use crate::layer::Layer;
use crate::letters::{self, Weight};
use crate::pattern::Pattern;
use crate::sheet::{Layout, Sheet};
use crate::words;

/// Between two patterns of the uncut drawing.
const GAP: Um = 20 * MM;

/// A sheet as an `<svg>` element as large as the paper; `index` makes the names in it
/// its own.
#[must_use]
pub fn svg_page(layout: &Layout, sheet: &Sheet, index: usize) -> String {
    let mut out = String::new();
    Page::new(&mut out, sheet.paper.height).sheet(layout, sheet, index);
    out
}

/// Patterns one above the other at true scale, with a ruler, in one document.
#[must_use]
pub fn svg_document(patterns: Vec<Pattern>, name: &str) -> String {
    let mut drawing = stacked(patterns);
    let low = drawing.bounds().low;
    metric_ruler(&mut drawing, low.by(0, -10 * MM), false);
    let bounds = drawing.bounds().grown(5 * MM);
    let size = (bounds.width(), bounds.height());
    let mut out = String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    let mut page = Page::new(&mut out, size.1);
    page.open(size, "tinwave-drawing");
    page.out.put("<title>");
    push_escaped(page.out, words::PROGRAM);
    if !name.is_empty() {
        page.out.put(": ");
        push_escaped(page.out, name);
    }
    page.out.put("</title>\n");
    let shift = (-bounds.low.x, -bounds.low.y);
    let items: Vec<&Item> = drawing.items.iter().collect();
    page.group(&items, shift);
    page.close();
    out
}

/// All patterns in one drawing, the first on top.
#[must_use]
pub fn stacked(patterns: Vec<Pattern>) -> Drawing {
    let mut drawing = Drawing::default();
    let mut top = 0;
    for pattern in patterns {
        let bounds = pattern.drawing.bounds();
        drawing.place(pattern.drawing, -bounds.low.x, top - bounds.high.y);
        top -= bounds.height() + GAP;
    }
    drawing
}

/// An `<svg>` element as it grows. Its y runs downwards from `height`.
struct Page<'a> {
    out: &'a mut String,
    height: Um,
}

impl<'a> Page<'a> {
    const fn new(out: &'a mut String, height: Um) -> Self {
        Self { out, height }
    }

    #[inline(never)]
    fn number(&mut self, um: Um) {
        push_scaled(self.out, i64::from(um), 3);
    }

    #[inline(never)]
    fn attribute(&mut self, name: &str, um: Um) {
        self.out.put(" ");
        self.out.put(name);
        self.out.put("=\"");
        self.number(um);
        self.out.put("\"");
    }

    fn open(&mut self, (width, height): (Um, Um), class: &str) {
        self.out.put("<svg class=\"");
        self.out.put(class);
        self.out
            .put("\" xmlns=\"http://www.w3.org/2000/svg\" width=\"");
        self.number(width);
        self.out.put("mm\" height=\"");
        self.number(height);
        self.out.put("mm\" viewBox=\"0 0 ");
        self.number(width);
        self.out.put(" ");
        self.number(height);
        self.out.put(
            "\" fill=\"none\" stroke=\"#000\" font-family=\"Helvetica, Arial, sans-serif\">\n",
        );
    }

    fn close(&mut self) {
        self.out.put("</svg>\n");
    }

    fn sheet(&mut self, layout: &Layout, sheet: &Sheet, index: usize) {
        let paper = sheet.paper;
        self.open((paper.width, paper.height), "tinwave-sheet");
        // The drawing is scaled for the printer about the lower left corner.
        let (across, upright) = paper.rulers.factors_millionths();
        let scaled = (across, upright) != (1_000_000, 1_000_000);
        if scaled {
            let drawn = paper.drawn_size().1;
            self.out.put("<g transform=\"scale(");
            push_scaled(self.out, across, 6);
            self.out.put(" ");
            push_scaled(self.out, upright, 6);
            self.out.put(")\">\n");
            self.height = drawn;
        }
        let furniture: Vec<&Item> = sheet.furniture.items.iter().collect();
        self.group(&furniture, (0, 0));
        for (number, view) in sheet.views.iter().enumerate() {
            let id = fill("tw{}-{}", &[&words::count(index), &words::count(number)]);
            if view.clipped {
                self.clip(&id, view.place());
            }
            self.group(&view.items(layout), view.shift);
            if view.clipped {
                self.out.put("</g>\n");
            }
        }
        if scaled {
            self.out.put("</g>\n");
        }
        self.close();
    }

    /// Begins a group that shows only a window.
    fn clip(&mut self, id: &str, window: Rect) {
        let corner = at(window.low.x, self.height - window.high.y);
        self.out.put("<clipPath id=\"");
        self.out.put(id);
        self.out.put("\"><rect");
        self.attribute("x", corner.x);
        self.attribute("y", corner.y);
        self.attribute("width", window.width());
        self.attribute("height", window.height());
        self.out.put("/></clipPath>\n<g clip-path=\"url(#");
        self.out.put(id);
        self.out.put(")\">\n");
    }

    /// Items in groups of one layer, which is each group's class.
    fn group(&mut self, items: &[&Item], (x, y): (Um, Um)) {
        let mut open: Option<Layer> = None;
        for item in items {
            if let Shape::Text(text) = &item.shape {
                if open.take().is_some() {
                    self.out.put("</g>\n");
                }
                self.text(text, (x, y));
                continue;
            }
            if open != Some(item.layer) {
                if open.is_some() {
                    self.out.put("</g>\n");
                }
                open = Some(item.layer);
                self.open_group(item.layer);
            }
            self.shape(&item.shape, (x, y));
        }
        if open.is_some() {
            self.out.put("</g>\n");
        }
    }

    fn open_group(&mut self, layer: Layer) {
        let line = layer.line();
        self.out.put("<g class=\"");
        self.out.put(layer.name());
        self.out.put("\"");
        self.attribute("stroke-width", Um::try_from(line.width_um()).unwrap_or(0));
        if !line.dashes_um().is_empty() {
            self.out.put(" stroke-dasharray=\"");
            for (index, dash) in line.dashes_um().iter().enumerate() {
                if index > 0 {
                    self.out.put(" ");
                }
                push_scaled(self.out, i64::from(*dash), 3);
            }
            self.out.put("\"");
        }
        self.out.put(">\n");
    }

    #[inline(never)]
    fn point(&mut self, point: Point, (x, y): (Um, Um)) {
        self.number(point.x + x);
        self.out.put(" ");
        self.number(self.height - point.y - y);
    }

    fn shape(&mut self, shape: &Shape, shift: (Um, Um)) {
        match shape {
            Shape::Circle { centre, radius } => {
                self.out.put("<circle");
                self.attribute("cx", centre.x + shift.0);
                self.attribute("cy", self.height - centre.y - shift.1);
                self.attribute("r", *radius);
                self.out.put("/>\n");
            }
            shape => {
                self.out.put("<path d=\"M");
                self.path(shape, shift);
                self.out.put("\"/>\n");
            }
        }
    }

    fn path(&mut self, shape: &Shape, shift: (Um, Um)) {
        match shape {
            Shape::Line { from, to } => {
                self.point(*from, shift);
                self.out.put("L");
                self.point(*to, shift);
            }
            Shape::Polyline { points, closed } => {
                for (index, point) in points.iter().enumerate() {
                    if index > 0 {
                        self.out.put("L");
                    }
                    self.point(*point, shift);
                }
                if *closed {
                    self.out.put("Z");
                }
            }
            Shape::Arc {
                centre,
                radius,
                start_deg,
                sweep_deg,
            } => {
                // In two halves, so that neither is past half a turn.
                let far = f64::from(*radius);
                self.point(centre.polar(far, *start_deg), shift);
                for part in [0.5, 1.0] {
                    self.out.put("A");
                    self.number(*radius);
                    self.out.put(" ");
                    self.number(*radius);
                    self.out.put(" 0 0 0 ");
                    self.point(centre.polar(far, start_deg + sweep_deg * part), shift);
                }
            }
            Shape::Circle { .. } | Shape::Text(_) => {}
        }
    }

    fn text(&mut self, text: &Text, (x, y): (Um, Um)) {
        let place = at(text.at.x + x, self.height - text.at.y - y);
        self.out.put("<text");
        self.attribute("x", place.x);
        self.attribute("y", place.y);
        self.attribute("font-size", letters::font_size(text.capital));
        // Where Helvetica's widths are known they hold in any font.
        if letters::covers(&text.words) && text.width() > 0 {
            self.attribute("textLength", text.width());
            self.out.put(" lengthAdjust=\"spacingAndGlyphs\"");
        }
        self.out.put(match text.anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        });
        if text.weight == Weight::Bold {
            self.out.put(" font-weight=\"bold\"");
        }
        if text.turned {
            self.out.put(" transform=\"rotate(-90 ");
            self.number(place.x);
            self.out.put(" ");
            self.number(place.y);
            self.out.put(")\"");
        }
        self.out.put(" fill=\"#000\" stroke=\"none\">");
        push_escaped(self.out, &text.words);
        self.out.put("</text>\n");
    }
}

/// Characters that mean something in XML as references; those that XML forbids
/// left out.
fn push_escaped(out: &mut String, words: &str) {
    for character in words.chars() {
        match character {
            '&' => out.put("&amp;"),
            '<' => out.put("&lt;"),
            '>' => out.put("&gt;"),
            '"' => out.put("&quot;"),
            '\'' => out.put("&#39;"),
            '\t' | '\n' | '\r' => out.put(" "),
            '\u{fffe}' | '\u{ffff}' => {}
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
}
