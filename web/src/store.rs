//! What is kept on the device between visits, as one text.
//!
//! Designs are kept as links, which every later version opens. A text that
//! can't be read is handed back, to be kept elsewhere: nothing is destroyed.

use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use crate::entry::LengthUnit;

/// The key of the device's own storage.
pub const KEY: &str = "tinwave";
/// Where a text that can't be read is put.
pub const BROKEN_KEY: &str = "tinwave-broken";

/// Version of the form.
const SCHEMA: u64 = 1;
/// Most notes that are remembered as seen.
const MOST_SEEN: usize = 100;

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
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SavedDesign {
    /// Its name in the list.
    pub name: String,
    /// The design, as the fragment of a link.
    pub link: String,
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
    /// Saved designs, the newest first.
    pub saved: Vec<SavedDesign>,
    /// Notes that were seen and need not be said again.
    pub seen: Vec<String>,
    /// What a newer page kept, written back as it was.
    other: Map<String, Value>,
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
    let Some(text) = text else {
        return ReadBack {
            kept: Kept::default(),
            broken: None,
        };
    };
    let mut whole = true;
    let kept = match serde_json::from_str::<Map<String, Value>>(text) {
        Ok(map) => salvage(map, &mut whole),
        Err(_) => {
            whole = false;
            Kept::default()
        }
    };
    ReadBack {
        kept,
        broken: (!whole).then(|| text.to_owned()),
    }
}

fn salvage(mut map: Map<String, Value>, whole: &mut bool) -> Kept {
    map.remove("schema");
    let mut word = |key: &str| match map.remove(key) {
        Some(Value::String(word)) => Some(word),
        None | Some(Value::Null) => None,
        Some(_) => {
            *whole = false;
            None
        }
    };
    let link = word("link");
    let unit = word("unit");
    let theme = word("theme");
    Kept {
        link,
        unit: unit
            .and_then(|key| LengthUnit::from_key(&key))
            .unwrap_or_default(),
        theme: theme
            .and_then(|key| Theme::from_key(&key))
            .unwrap_or_default(),
        saved: list(map.remove("saved"), whole),
        seen: list(map.remove("seen"), whole),
        other: map,
    }
}

/// The items of a list that can be read.
fn list<T: for<'a> Deserialize<'a>>(value: Option<Value>, whole: &mut bool) -> Vec<T> {
    let items = match value {
        None | Some(Value::Null) => return Vec::new(),
        Some(Value::Array(items)) => items,
        Some(_) => {
            *whole = false;
            return Vec::new();
        }
    };
    let mut read = Vec::with_capacity(items.len());
    for item in items {
        match serde_json::from_value(item) {
            Ok(item) => read.push(item),
            Err(_) => *whole = false,
        }
    }
    read
}

/// Writes the text to be kept.
#[must_use]
pub fn write(kept: &Kept) -> String {
    let mut map = kept.other.clone();
    map.insert("schema".into(), SCHEMA.into());
    if let Some(link) = &kept.link {
        map.insert("link".into(), link.as_str().into());
    }
    map.insert("unit".into(), kept.unit.key().into());
    map.insert("theme".into(), kept.theme.key().into());
    let saved = serde_json::to_value(&kept.saved).unwrap_or_default();
    map.insert("saved".into(), saved);
    map.insert("seen".into(), kept.seen.clone().into());
    Value::Object(map).to_string()
}

impl Kept {
    /// Saves a design under a name, at the head of the list; one of the same
    /// name is replaced.
    pub fn save(&mut self, name: &str, link: &str) {
        self.remove(name);
        self.saved.insert(
            0,
            SavedDesign {
                name: name.into(),
                link: link.into(),
            },
        );
    }

    /// Forgets a saved design; says whether there was one.
    pub fn remove(&mut self, name: &str) -> bool {
        let before = self.saved.len();
        self.saved.retain(|design| design.name != name);
        self.saved.len() < before
    }

    /// Whether a note was seen.
    #[must_use]
    pub fn has_seen(&self, note: &str) -> bool {
        self.seen.iter().any(|seen| seen == note)
    }

    /// Remembers a note as seen.
    pub fn mark_seen(&mut self, note: &str) {
        if !self.has_seen(note) && self.seen.len() < MOST_SEEN {
            self.seen.push(note.into());
        }
    }
}
