//! What is kept on the device between visits, as one text.
//!
//! Designs are kept as links, which every later version opens. A text that
//! can't be read is handed back, to be kept elsewhere: nothing is destroyed.

use crate::entry::LengthUnit;
use crate::shelf::KeptFigures;

/// The key of the device's own storage.
pub const KEY: &str = "tinwave";
/// Where a text that can't be read is put.
pub const BROKEN_KEY: &str = "tinwave-broken";

/// The first line: whose text this is, and the version of its form.
const HEAD: &str = "tinwave 1";

/// Light or dark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Theme {
    /// As the device says.
    #[default]
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

/// A design kept under a name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SavedDesign {
    /// Its name in the list.
    pub name: String,
    /// The design, as the fragment of a link.
    pub link: String,
    /// What was known of it when it was kept.
    pub figures: Option<KeptFigures>,
}

/// Everything that is kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    /// The design that was on the page.
    pub link: Option<String>,
    /// The unit of lengths.
    pub unit: LengthUnit,
    /// Light or dark.
    pub theme: Theme,
    /// The plan of a link, as [`crate::link_plan::text`] writes it.
    pub plan: Option<String>,
    /// Saved designs, the newest first.
    pub saved: Vec<SavedDesign>,
    /// Lines that a newer page kept, written back as they were.
    other: Vec<String>,
}

/// What was read.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadBack {
    /// What could be understood.
    pub kept: Kept,
    /// The whole text, where not all of it could be.
    pub broken: Option<String>,
}

impl Theme {
    /// Every choice.
    pub const ALL: [Self; 3] = [Self::System, Self::Light, Self::Dark];

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::System => "system",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }

    /// The choice of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|theme| theme.key() == key)
    }
}

/// Reads a text of the device's storage; `None` on a first visit.
#[must_use]
pub fn read(text: Option<&str>) -> ReadBack {
    let mut kept = Kept::default();
    let mut whole = true;
    if let Some(text) = text {
        let mut lines = text.lines();
        whole = lines.next() == Some(HEAD);
        if whole {
            for line in lines {
                whole &= read_line(&mut kept, line);
            }
        }
    }
    ReadBack {
        kept,
        broken: text.filter(|_| !whole).map(str::to_owned),
    }
}

/// Reads one line; whether it made sense.
fn read_line(kept: &mut Kept, line: &str) -> bool {
    let Some((word, rest)) = line.split_once(' ') else {
        return false;
    };
    match word {
        "link" => kept.link = Some(rest.to_owned()),
        // A word that a newer page knows is no fault; the default holds.
        "unit" => kept.unit = LengthUnit::from_key(rest).unwrap_or_default(),
        "theme" => kept.theme = Theme::from_key(rest).unwrap_or_default(),
        "plan" => kept.plan = Some(rest.to_owned()),
        "saved" => {
            let Some((link, name)) = rest.split_once(' ') else {
                return false;
            };
            kept.saved.push(SavedDesign {
                name: name.to_owned(),
                link: link.to_owned(),
                figures: None,
            });
        }
        // Of the design in the line above.
        "figures" => {
            let Some(last) = kept.saved.last_mut() else {
                return false;
            };
            last.figures = Some(KeptFigures::from_word(rest));
        }
        _ => kept.other.push(line.to_owned()),
    }
    true
}

/// Writes the text to be kept: one line for each thing, a word first.
#[must_use]
pub fn write(kept: &Kept) -> String {
    let mut text = String::from(HEAD);
    let mut line = |parts: &[&str]| {
        for (index, part) in parts.iter().enumerate() {
            text.push(if index == 0 { '\n' } else { ' ' });
            text.extend(part.chars().map(|c| if c.is_control() { ' ' } else { c }));
        }
    };
    if let Some(link) = &kept.link {
        line(&["link", link]);
    }
    line(&["unit", kept.unit.key()]);
    line(&["theme", kept.theme.key()]);
    if let Some(plan) = &kept.plan {
        line(&["plan", plan]);
    }
    for design in &kept.saved {
        line(&["saved", &design.link, &design.name]);
        if let Some(figures) = &design.figures {
            line(&["figures", &figures.word()]);
        }
    }
    for other in &kept.other {
        line(&[other]);
    }
    text
}

impl Kept {
    /// Saves a design under a name, at the head of the list; one of the same
    /// name is replaced.
    pub fn save(&mut self, name: &str, link: &str) {
        self.save_with(name, link, None);
    }

    /// The same with what is known of it.
    pub fn save_with(&mut self, name: &str, link: &str, figures: Option<KeptFigures>) {
        self.remove(name);
        self.saved.insert(
            0,
            SavedDesign {
                name: name.into(),
                link: link.into(),
                figures,
            },
        );
    }

    /// The saved design of a name.
    #[must_use]
    pub fn saved_as(&self, name: &str) -> Option<&SavedDesign> {
        self.saved.iter().find(|design| design.name == name)
    }

    /// A name like `wanted` that is not in use.
    #[must_use]
    pub fn free_name(&self, wanted: &str) -> String {
        let taken: Vec<&str> = self
            .saved
            .iter()
            .map(|design| design.name.as_str())
            .collect();
        crate::shelf::free_name(wanted, &taken)
    }

    /// Forgets a saved design; says whether there was one.
    pub fn remove(&mut self, name: &str) -> bool {
        let before = self.saved.len();
        self.saved.retain(|design| design.name != name);
        self.saved.len() < before
    }
}
