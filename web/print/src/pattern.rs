//! A thing to be cut out or looked at, at true scale, before it meets paper.

use tinwave_protocol::print::Part;

use crate::drawing::{Anchor, Drawing, Text};
use crate::geometry::{Point, Rect, Um};

/// One pattern.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    /// The part of the print that it belongs to.
    pub part: Part,
    /// What it is, for the head of its sheets.
    pub title: &'static str,
    /// The drawing.
    pub drawing: Drawing,
    /// Places that a joint between two sheets should keep away from.
    pub keep_whole: Vec<Point>,
}

/// Finds free places for short words among what is already drawn.
#[derive(Clone, Debug)]
pub struct FreePlaces {
    ground: Rect,
    taken: Vec<Rect>,
}

/// A place for a text, and which part of the text stands there.
pub type Place = (Point, Anchor);

/// Air round a text.
const AIR: Um = 400;

impl FreePlaces {
    /// All of a ground is free.
    #[must_use]
    pub const fn new(ground: Rect) -> Self {
        Self {
            ground,
            taken: Vec::new(),
        }
    }

    /// Nothing more may be written on a box.
    pub fn take(&mut self, rect: Rect) {
        self.taken.push(rect);
    }

    /// Writes the text at the first of the places where it stands on free
    /// ground. Gives whether there was one.
    pub fn write(&mut self, drawing: &mut Drawing, text: &Text, places: &[Place]) -> bool {
        for (at, anchor) in places {
            let mut text = text.clone();
            text.at = *at;
            text.anchor = *anchor;
            let needed = text.bounds().grown(AIR);
            let free = !self.taken.iter().any(|taken| taken.overlaps(needed));
            if free && self.ground.contains(needed) {
                self.take(needed);
                drawing.text(text);
                return true;
            }
        }
        false
    }
}
