//! What a part of the page asks.

use tinwave_core::design::Design;
use tinwave_web::entry::LengthUnit;
use tinwave_web::link;
use tinwave_web::workpiece::Workpiece;

use crate::form_data;

/// A part's question: the design, the unit of lengths, and all that the maker has
/// entered in the part.
#[derive(Clone, Debug)]
pub struct Request {
    pairs: Vec<(String, String)>,
    /// The present work.
    pub work: Workpiece,
    /// Unit of the lengths that people read.
    pub unit: LengthUnit,
}

impl Request {
    /// Reads form data: `part`, `design` (the fragment of the link), `unit`, `act`
    /// (the button that was pressed, if any) and the part's own fields. `None`
    /// where the design can't be read.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let pairs = form_data::read(text);
        let value = |wanted: &str| {
            let found = pairs.iter().find(|(name, _)| name == wanted);
            found.map_or("", |(_, value)| value.as_str())
        };
        let work = link::decode(value("design")).ok()?.work;
        let unit = LengthUnit::from_key(value("unit")).unwrap_or_default();
        Some(Self { pairs, work, unit })
    }

    /// The design in question.
    #[must_use]
    pub const fn design(&self) -> &Design {
        &self.work.design
    }

    /// The part of the page that asks.
    #[must_use]
    pub fn part(&self) -> &str {
        self.get("part")
    }

    /// The button that was pressed; empty if none was.
    #[must_use]
    pub fn act(&self) -> &str {
        self.get("act")
    }

    /// The value of a field; empty if there is none.
    #[must_use]
    pub fn get(&self, name: &str) -> &str {
        let found = self.pairs.iter().find(|(known, _)| known == name);
        found.map_or("", |(_, value)| value.as_str())
    }

    /// All values of a field that may have several.
    pub fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        let found = self.pairs.iter().filter(move |(known, _)| known == name);
        found.map(|(_, value)| value.as_str())
    }

    /// Whether a box is ticked.
    #[must_use]
    pub fn is_on(&self, name: &str) -> bool {
        !self.get(name).is_empty()
    }
}
