//! Screws that were found, and whether they are in the design yet.

use tinwave_core::design::{Design, Screw};
use tinwave_core::screw_search::{DepthPoint, TunedScrews};

use super::desk::{self, nameless};
use super::screw_entries::ScrewChoice;
use crate::reply::Reply;
use crate::request::Request;

/// What a search found.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct ScrewsFound {
    /// The can it was for, without a name.
    pub(super) design: Design,
    /// What was looked for.
    pub(super) choice: ScrewChoice,
    /// What came of it; `None`: the can is not computed.
    pub(super) tuned: Option<TunedScrews>,
    /// For each screw, the others in place: VSWR against depth.
    pub(super) curves: Vec<Vec<DepthPoint>>,
}

/// How what was found stands to the design.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Standing {
    /// For this can; not in it yet.
    Offered,
    /// In the design.
    Taken,
}

impl ScrewsFound {
    /// The screws.
    pub(super) fn screws(&self) -> &[Screw] {
        self.tuned.as_ref().map_or(&[], |tuned| &tuned.screws)
    }

    /// The can with them.
    pub(super) fn with_screws(&self) -> Design {
        let mut design = self.design.clone();
        design.screws.extend_from_slice(self.screws());
        design
    }
}

/// What was found for the present can and choice, and whether it is in it.
pub(super) fn for_request(request: &Request) -> Option<(ScrewsFound, Standing)> {
    let found = desk::screws()?;
    if found.choice != ScrewChoice::read(request) {
        return None;
    }
    let design = nameless(request.design());
    let standing = if design == found.design {
        Standing::Offered
    } else if !found.screws().is_empty() && design == found.with_screws() {
        Standing::Taken
    } else {
        return None;
    };
    Some((found, standing))
}

/// Puts the screws into the design, or takes all out.
pub(super) fn take(request: &Request, reply: &mut Reply) {
    let mut work = request.work.clone();
    let screws = &mut work.design.screws;
    match request.act() {
        "take-screws" => match for_request(request) {
            Some((found, Standing::Offered)) => screws.extend_from_slice(found.screws()),
            _ => return,
        },
        "remove-screws" => screws.clear(),
        _ => return,
    }
    if work != request.work && work.design.check().is_ok() {
        reply.take(&work);
    }
}
