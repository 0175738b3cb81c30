//! A picture as a fixed list of marks. Which marks there are and in which order
//! never changes; their attributes do. So a picture can be written once as text
//! and from then on be kept up to date attribute by attribute.

use super::fixed_point::{push_tenths, tenths};

/// One element of a picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Name of the element: `path`, `text`, `rect` or `circle`.
    pub tag: &'static str,
    /// Its class in `pictures.css`.
    pub class: &'static str,
    /// Its attributes: always the same names in the same order.
    pub attributes: Vec<(&'static str, String)>,
    /// Its text; empty for other elements.
    pub text: String,
}

impl Mark {
    /// A path.
    #[must_use]
    pub fn path(class: &'static str, data: String) -> Self {
        Self {
            tag: "path",
            class,
            attributes: vec![("d", data)],
            text: String::new(),
        }
    }

    /// A path filled with one of the picture's patterns.
    #[must_use]
    pub fn hatched(class: &'static str, pattern: &str, data: String) -> Self {
        let mut mark = Self::path(class, data);
        mark.attributes
            .push(("fill", ["url(#", pattern, ")"].concat()));
        mark
    }

    /// A text at a point.
    #[must_use]
    pub fn text(class: &'static str, anchor: &'static str, at: (f64, f64), text: String) -> Self {
        Self {
            tag: "text",
            class,
            attributes: vec![
                ("text-anchor", anchor.into()),
                ("transform", translation(at, false)),
            ],
            text,
        }
    }

    /// A text that is not there at present.
    #[must_use]
    pub fn no_text() -> Self {
        Self::text("pic-words", "start", (0.0, 0.0), String::new())
    }

    /// A circle.
    #[must_use]
    pub fn circle(class: &'static str, at: (f64, f64), radius: f64) -> Self {
        Self {
            tag: "circle",
            class,
            attributes: vec![
                ("cx", tenths(at.0)),
                ("cy", tenths(at.1)),
                ("r", tenths(radius)),
            ],
            text: String::new(),
        }
    }
}

/// Value of `transform` that moves to a point, and turns a text to be read from
/// the right.
#[must_use]
pub fn translation(at: (f64, f64), turned: bool) -> String {
    let mut text = String::with_capacity(36);
    text.push_str("translate(");
    push_tenths(&mut text, at.0);
    text.push(' ');
    push_tenths(&mut text, at.1);
    text.push_str(if turned { ") rotate(-90)" } else { ")" });
    text
}

/// A pattern of parallel lines.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hatch {
    /// Its id, unique in the page.
    pub id: &'static str,
    /// Class of its line.
    pub class: &'static str,
    /// Distance of its lines, px, as text.
    pub pitch: &'static str,
    /// Angle, degrees, as text.
    pub angle: &'static str,
}

/// A whole picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// Width and height, px.
    pub size: (f64, f64),
    /// Begins the ids of title and description.
    pub id: &'static str,
    /// What it is.
    pub title: &'static str,
    /// What it shows, in words.
    pub description: String,
    /// Its pattern, if any.
    pub hatch: Option<Hatch>,
    /// Its marks.
    pub marks: Vec<Mark>,
}

impl Scene {
    /// How many elements of the written SVG come before the marks: title,
    /// description, definitions.
    pub const LEADING: usize = 3;

    /// Value of `viewBox`.
    #[must_use]
    pub fn view_box(&self) -> String {
        let mut text = String::from("0 0 ");
        push_tenths(&mut text, self.size.0);
        text.push(' ');
        push_tenths(&mut text, self.size.1);
        text
    }

    /// The picture as an SVG element. Presentation is left to `pictures.css`.
    #[must_use]
    pub fn to_svg(&self) -> String {
        let mut svg = String::with_capacity(6_000);
        let view_box = self.view_box();
        let id = self.id;
        let open = [
            "<svg class=\"pic-sheet\" xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"",
            &view_box,
            "\" aria-labelledby=\"",
            id,
            "-title\" aria-describedby=\"",
            id,
            "-desc\">\n<title id=\"",
            id,
            "-title\">",
            self.title,
            "</title>\n<desc id=\"",
            id,
            "-desc\">",
        ];
        open.into_iter().for_each(|piece| svg.push_str(piece));
        push_escaped(&mut svg, &self.description);
        svg.push_str("</desc>\n<defs>");
        if let Some(hatch) = self.hatch {
            push_hatch(&mut svg, hatch);
        }
        svg.push_str("</defs>\n");
        for mark in &self.marks {
            push_mark(&mut svg, mark);
        }
        svg.push_str("</svg>\n");
        svg
    }

    /// Drops what draws nothing: for a file that is not kept up to date.
    pub fn drop_empty(&mut self) {
        self.marks.retain(|mark| match mark.tag {
            "text" => !mark.text.is_empty(),
            "path" => mark
                .attributes
                .iter()
                .any(|(name, d)| *name == "d" && !d.is_empty()),
            _ => true,
        });
    }
}

fn push_hatch(svg: &mut String, hatch: Hatch) {
    let pieces = [
        "<pattern id=\"",
        hatch.id,
        "\" width=\"",
        hatch.pitch,
        "\" height=\"",
        hatch.pitch,
        "\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(",
        hatch.angle,
        ")\"><path class=\"",
        hatch.class,
        "\" d=\"M0 0V",
        hatch.pitch,
        "\"/></pattern>",
    ];
    pieces.into_iter().for_each(|piece| svg.push_str(piece));
}

fn push_mark(svg: &mut String, mark: &Mark) {
    for piece in ["<", mark.tag, " class=\"", mark.class] {
        svg.push_str(piece);
    }
    for (name, value) in &mark.attributes {
        for piece in ["\" ", name, "=\"", value] {
            svg.push_str(piece);
        }
    }
    svg.push_str("\">");
    push_escaped(svg, &mark.text);
    for piece in ["</", mark.tag, ">\n"] {
        svg.push_str(piece);
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
    use super::{Mark, Scene, push_escaped};

    #[test]
    fn text_cannot_break_out_of_the_file() {
        let mut svg = String::new();
        push_escaped(&mut svg, "a<b>&\"c");
        assert_eq!(svg, "a&lt;b&gt;&amp;&quot;c");
    }

    #[test]
    fn a_scene_is_written_in_order() {
        let mut scene = Scene {
            size: (340.0, 20.5),
            id: "x",
            title: "T",
            description: "D".into(),
            hatch: None,
            marks: vec![
                Mark::path("a", "M0 0".into()),
                Mark::path("b", String::new()),
                Mark::text("c", "end", (1.0, 2.0), "5 < 6".into()),
                Mark::no_text(),
            ],
        };
        scene.drop_empty();
        assert_eq!(
            scene.to_svg(),
            "<svg class=\"pic-sheet\" xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" \
             viewBox=\"0 0 340 20.5\" aria-labelledby=\"x-title\" aria-describedby=\"x-desc\">\n\
             <title id=\"x-title\">T</title>\n<desc id=\"x-desc\">D</desc>\n<defs></defs>\n\
             <path class=\"a\" d=\"M0 0\"></path>\n\
             <text class=\"c\" text-anchor=\"end\" transform=\"translate(1 2)\">5 &lt; 6</text>\n\
             </svg>\n"
        );
    }
}
