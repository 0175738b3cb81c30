//! The link that the entries describe.

use std::sync::Arc;

use tinwave_core::design::Design;
use tinwave_core::radio_link::{
    End, Link, LinkEnd, LinkError, PathClearance, PathProfile, Polarisation, STANDARD_EARTH_FACTOR,
};
use tinwave_web::entry::LengthUnit;
use tinwave_web::link;

use super::antenna::{Antenna, centre_hz};
use super::entries::{EndEntries, Entries, FarAntenna, Role};
use super::form::Form;
use crate::request::Request;

/// Longest path that is looked at along the Earth, m.
const LONGEST_PATH_M: f64 = 1e6;

/// Everything that the results rest on.
pub(super) struct Plan {
    pub unit: LengthUnit,
    pub frequency_hz: f64,
    pub entries: Entries,
    pub here: Arc<Antenna>,
    pub far: Arc<Antenna>,
    pub link: Link,
    /// The path along the ground; `None` where it is too long for that.
    pub path: Option<(PathProfile, PathClearance)>,
}

/// The far end's antenna; `None` with a message where its link can't be used.
pub(super) fn far_antenna(
    form: &mut Form<'_>,
    request: &Request,
    entries: &Entries,
    here: &Arc<Antenna>,
) -> Option<Arc<Antenna>> {
    let fragment = match &entries.far_antenna {
        FarAntenna::Same => return Some(Arc::clone(here)),
        FarAntenna::Stated(gain_dbi, width_deg) => {
            return Some(Arc::new(Antenna::stated(*gain_dbi, *width_deg)));
        }
        FarAntenna::Link(fragment) => fragment,
    };
    let found = can_of_link(request.design(), fragment);
    let sentence = found.as_ref().err().copied().unwrap_or_default();
    if sentence.is_empty() {
        form.right("plan-far-link");
    } else {
        form.wrong("plan-far-link", sentence);
    }
    found.ok()
}

/// The can of a link, at the band of the present design.
fn can_of_link(present: &Design, fragment: &str) -> Result<Arc<Antenna>, &'static str> {
    if fragment.trim().is_empty() {
        return Err("Paste the link of the other can: open its design and press Copy link.");
    }
    let opened = link::decode(fragment).map_err(
        |_| "This is no whole link of this page. Open the other design and copy its link again.",
    )?;
    let mut other = opened.work.design;
    other.band = present.band;
    other.sweep = None;
    Antenna::of_can(&other)
        .ok_or("That can sends no wave in this band. Choose one that works in the same band.")
}

impl Plan {
    pub(super) fn new(
        request: &Request,
        entries: Entries,
        here: Arc<Antenna>,
        far: Arc<Antenna>,
    ) -> Result<Self, LinkError> {
        let frequency_hz = centre_hz(request.design());
        let path = if entries.distance_m <= LONGEST_PATH_M {
            let profile = PathProfile {
                distance_m: entries.distance_m,
                height_a_m: entries.here.height_m,
                height_b_m: entries.far.height_m,
                frequency_hz,
                earth_factor: STANDARD_EARTH_FACTOR,
            };
            Some((profile, PathClearance::new(&profile, &entries.obstacles)?))
        } else {
            None
        };
        let obstacle_loss_db = path
            .as_ref()
            .map_or(0.0, |path| path.1.diffraction_loss_db());
        let upright = Polarisation::VERTICAL;
        let link = Link {
            a: end(
                &entries.here,
                &here,
                upright,
                (entries.role != Role::ListensFar).then_some(entries.sensitivity_here_dbm),
            ),
            b: end(
                &entries.far,
                &far,
                entries.far_polarisation,
                (entries.role != Role::ListensHere).then_some(entries.sensitivity_far_dbm),
            ),
            frequency_hz,
            distance_m: entries.distance_m,
            walls: entries.walls.clone(),
            foliage_depth_m: entries.foliage_m,
            obstacle_loss_db,
            other_loss_db: entries.other_db,
            required_fade_margin_db: entries.fade_db,
        };
        Ok(Self {
            unit: request.unit,
            frequency_hz,
            entries,
            here,
            far,
            link,
            path,
        })
    }

    /// What the ground is reckoned with, dB, where it and no obstacle decides the loss.
    pub(super) fn ground_loss_db(&self) -> Option<f64> {
        let (_, clearance) = self.path.as_ref()?;
        let ground_db = clearance.ground.loss_db;
        (ground_db > clearance.obstacle_loss_db()).then_some(ground_db)
    }

    /// Whether too little of the path is free of the ground.
    pub(super) fn is_low_over_ground(&self) -> bool {
        let ground = self.path.as_ref().map(|path| path.1.ground);
        ground.is_some_and(|ground| !ground.is_clear())
    }

    /// Whether the straight line between the ends is blocked.
    pub(super) fn is_blocked(&self) -> bool {
        let path = self.path.as_ref();
        path.is_some_and(|(_, clearance)| clearance.worst().clearance_m < 0.0)
    }

    /// The antenna of an end.
    pub(super) fn antenna(&self, end: End) -> &Antenna {
        match end {
            End::A => &self.here,
            End::B => &self.far,
        }
    }
}

/// An end by its words in a sentence.
pub(super) const fn end_words(end: End) -> &'static str {
    match end {
        End::A => "this end",
        End::B => "the far end",
    }
}

fn end(
    entries: &EndEntries,
    antenna: &Antenna,
    polarisation: Polarisation,
    sensitivity_dbm: Option<f64>,
) -> LinkEnd {
    LinkEnd {
        transmit_power_dbm: entries.power_dbm,
        sensitivity_dbm,
        line: entries.line,
        connector: entries.connector,
        connector_pairs: entries.pairs,
        mismatch_loss_db: antenna.mismatch_loss_db,
        gain_dbi: antenna.gain_dbi,
        pointing_loss_db: antenna.pointing_loss_db(entries.pointing_deg),
        polarisation,
    }
}
