//! What the page shows first: the link's design, the device's, or the example.

use tinwave_maker::entry::LengthUnit;
use tinwave_maker::example::example;
use tinwave_maker::link::{self, LinkError};
use tinwave_maker::station::Station;
use tinwave_maker::workpiece::Workpiece;

use super::memory::{Memory, is_same};
use crate::browser;

/// Something to be said above everything, with a text to copy if there is one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// What is said.
    pub sentence: String,
    /// What could not be used, whole.
    pub keep: Option<String>,
}

impl Notice {
    /// A link of a newer page was opened as far as it can be.
    #[must_use]
    pub fn newer_link(version: u32) -> Self {
        Self {
            sentence: tinwave_words::newer_link(version),
            keep: None,
        }
    }

    /// A link could not be opened.
    #[must_use]
    pub fn refused_link(error: &LinkError, unit: LengthUnit, fragment: String) -> Self {
        Self {
            sentence: tinwave_words::link_error(error, unit),
            keep: Some(fragment),
        }
    }
}

/// What is opened.
pub(super) struct Opened {
    pub(super) work: Workpiece,
    pub(super) station: Station,
    pub(super) notice: Option<Notice>,
    pub(super) unknown: Vec<(String, String)>,
}

pub(super) fn open(memory: Memory) -> Opened {
    let fragment = browser::fragment();
    let mut notice = memory.broken().map(|broken| Notice {
        sentence: tinwave_words::broken_store().to_owned(),
        keep: Some(broken),
    });
    let kept_link =
        leptos::prelude::WithUntracked::with_untracked(&memory.kept, |kept| kept.link.clone());
    match link::decode(&fragment) {
        Ok(opened) => {
            notice = notice.or_else(|| opened.newer.map(Notice::newer_link));
            let link = link::encode(&opened.work);
            memory.cover(kept_link.filter(|kept| !is_same(kept, &link)));
            return Opened {
                work: opened.work,
                station: opened.station.unwrap_or_default(),
                notice,
                unknown: opened.unknown,
            };
        }
        Err(_) if fragment.is_empty() => {}
        Err(error) => notice = Some(Notice::refused_link(&error, memory.unit(), fragment)),
    }
    let kept = kept_link.and_then(|link| link::decode(&link).ok());
    Opened {
        work: kept.map_or_else(example, |opened| opened.work),
        station: Station::default(),
        notice,
        unknown: Vec::new(),
    }
}
