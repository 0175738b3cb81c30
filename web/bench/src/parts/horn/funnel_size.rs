//! A funnel in whole numbers of the design, and what limits it.

use std::f64::consts::PI;

use tinwave_core::design::Mouth;
use tinwave_core::funnel::{FlatPattern, FunnelLimits};
use tinwave_core::outside::Rim;
use tinwave_core::si::{metres, micrometres};

use super::can_key::CanKey;
use super::entries::{Entry, length};
use crate::reply::Reply;
use crate::request::Request;

/// What the maker has entered.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Limits {
    pub(super) mouth_um: Option<u32>,
    pub(super) length_um: Option<u32>,
    pub(super) sheet_um: Option<(u32, u32)>,
    pub(super) seam_um: u32,
}

impl Limits {
    /// Reads the fields; `None` where one is wrong or half of the sheet is missing.
    pub(super) fn read(request: &Request, reply: &mut Reply) -> Option<Self> {
        const SIZES: (u32, u32) = (10_000, 5_000_000);
        let mouth = length(request, reply, "horn-mouth", SIZES);
        let long = length(request, reply, "horn-length", SIZES);
        let width = length(request, reply, "horn-sheet-width", SIZES);
        let height = length(request, reply, "horn-sheet-height", SIZES);
        let seam = length(request, reply, "horn-seam", (0, 100_000));
        let other_side = "Give this side of the sheet as well.";
        match (width, height) {
            (Entry::Number(_), Entry::Empty) => reply.wrong("horn-sheet-height", other_side),
            (Entry::Empty, Entry::Number(_)) => reply.wrong("horn-sheet-width", other_side),
            _ => {}
        }
        let wrong = [mouth, long, width, height, seam].contains(&Entry::Wrong);
        let (width, height) = (width.number(), height.number());
        (!wrong && width.is_some() == height.is_some()).then(|| Self {
            mouth_um: mouth.number(),
            length_um: long.number(),
            sheet_um: width.zip(height),
            seam_um: seam.number().unwrap_or(0),
        })
    }

    pub(super) const fn are_none(&self) -> bool {
        self.mouth_um.is_none() && self.length_um.is_none() && self.sheet_um.is_none()
    }

    pub(super) fn seam_m(&self) -> f64 {
        metres(self.seam_um)
    }

    /// As the core takes them.
    pub(super) fn si(&self) -> FunnelLimits {
        FunnelLimits {
            mouth_m: self.mouth_um.map(metres),
            length_m: self.length_um.map(metres),
            sheet_m: self
                .sheet_um
                .map(|(one, other)| (metres(one), metres(other))),
            seam_m: self.seam_m(),
        }
    }
}

/// A funnel that may stand at the can's rim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Funnel {
    pub(super) mouth_um: u32,
    pub(super) half_angle_millideg: u32,
    /// Directivity straight ahead, dB over isotropic.
    pub(super) gain_dbi: f64,
    /// Whether the gain was solved for; else it is from the fit.
    pub(super) is_solved: bool,
}

impl Funnel {
    /// In sizes that can be marked out: mouth to 0.1 mm, never wider, angle to
    /// 0.01 degrees.
    pub(super) fn new(mouth_m: f64, half_angle_rad: f64, gain_dbi: f64, is_solved: bool) -> Self {
        Self {
            mouth_um: (micrometres(mouth_m).saturating_add(1) / 100).saturating_mul(100),
            half_angle_millideg: ((half_angle_rad * (18_000.0 / PI)).round() as u32)
                .saturating_mul(10),
            gain_dbi,
            is_solved,
        }
    }

    /// The funnel of a design.
    pub(super) const fn of(mouth: Mouth) -> Option<Self> {
        match mouth {
            Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg,
            } => Some(Self {
                mouth_um: mouth_diameter_um,
                half_angle_millideg,
                gain_dbi: f64::NAN,
                is_solved: false,
            }),
            _ => None,
        }
    }

    pub(super) const fn mouth(&self) -> Mouth {
        Mouth::Funnel {
            mouth_diameter_um: self.mouth_um,
            half_angle_millideg: self.half_angle_millideg,
        }
    }

    pub(super) fn mouth_m(&self) -> f64 {
        metres(self.mouth_um)
    }

    pub(super) fn half_angle_rad(&self) -> f64 {
        f64::from(self.half_angle_millideg) * (PI / 180_000.0)
    }

    pub(super) fn rim(&self) -> Rim {
        Rim::Funnel {
            mouth_radius_m: 0.5 * self.mouth_m(),
            half_angle_rad: self.half_angle_rad(),
        }
    }

    /// Along the axis, m.
    pub(super) fn length_m(&self, can: &CanKey) -> f64 {
        (0.5 * self.mouth_m() - can.radius_m()) / self.half_angle_rad().tan()
    }

    pub(super) fn sheet(&self, can: &CanKey, seam_m: f64) -> Option<FlatPattern> {
        let mouth_radius_m = 0.5 * self.mouth_m();
        FlatPattern::new(
            can.radius_m(),
            mouth_radius_m,
            self.half_angle_rad(),
            seam_m,
        )
    }

    /// What its buttons send.
    pub(super) fn act(&self) -> String {
        let angle = self.half_angle_millideg.to_string();
        ["take-funnel ", &self.mouth_um.to_string(), " ", &angle].concat()
    }
}
