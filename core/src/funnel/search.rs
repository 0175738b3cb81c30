//! The best funnel within limits: mouth, length, sheet.
//!
//! A quick fit finds where to start; the solution of the whole body decides. The work
//! comes in steps of one solved body.

use crate::constants::SPEED_OF_LIGHT;
use crate::math;
use crate::outside::{Outline, OutsideError, PreparedOutside, Rim};

use super::flat_pattern::FlatPattern;
use super::gain_fit::funnel_gain_fit_dbi;

/// What the maker has room and metal for; `None` is no limit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FunnelLimits {
    /// Largest diameter of the mouth, m.
    pub mouth_m: Option<f64>,
    /// Largest length along the axis, m.
    pub length_m: Option<f64>,
    /// Width and height of the sheet it is cut from in one piece, m.
    pub sheet_m: Option<(f64, f64)>,
    /// Width of the seam, m.
    pub seam_m: f64,
}

/// A funnel that was solved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FunnelChoice {
    /// Diameter of the mouth, m.
    pub mouth_diameter_m: f64,
    /// Half angle, rad.
    pub half_angle_rad: f64,
    /// Length along the axis, m.
    pub length_m: f64,
    /// Directivity straight ahead of TE11, dB over isotropic.
    pub directivity_dbi: f64,
    /// Its flat sheet.
    pub sheet: FlatPattern,
}

/// How far a search is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FunnelProgress {
    /// Still at it.
    Working {
        /// Share of the steps done, 0 to 1.
        done: f64,
    },
    /// The best; `None` where no funnel fits.
    Done(Option<FunnelChoice>),
}

/// Half angles looked at, degrees.
const ANGLES: (f64, f64) = (8.0, 60.0);
/// Largest mouth looked at, wavelengths.
const WIDEST: f64 = 4.0;
/// Mouths tried for each half angle.
const MOUTHS: usize = 48;
/// Most bodies solved.
const MOST_SOLVED: usize = 24;
/// First and last steps of the solved search: degrees, share of the mouth.
const FIRST_STEP: (f64, f64) = (4.0, 0.06);
const LAST_STEP: f64 = 0.2;

/// A search that advances step by step. It varies mouth and half angle.
#[derive(Clone, Debug)]
pub struct FunnelSearch {
    can: Outline,
    frequency_hz: f64,
    limits: FunnelLimits,
    best: Option<FunnelChoice>,
    start: Option<(f64, f64)>,
    /// Neighbour to look at next, and the step's share of the first.
    next: usize,
    step: f64,
    solved: usize,
    improved: bool,
}

impl FunnelSearch {
    /// Sets a search up for a can (its rim is ignored) at a frequency, Hz.
    #[must_use]
    pub fn new(can: &Outline, frequency_hz: f64, limits: FunnelLimits) -> Self {
        let mut search = Self {
            can: *can,
            frequency_hz,
            limits,
            best: None,
            start: None,
            next: 0,
            step: 1.0,
            solved: 0,
            improved: false,
        };
        search.start = search.estimate();
        search
    }

    /// Mouth diameter and half angle that the fit likes best.
    fn estimate(&self) -> Option<(f64, f64)> {
        let wavelength = SPEED_OF_LIGHT / self.frequency_hz;
        let can = 2.0 * self.can.radius_m;
        let widest = self.limits.mouth_m.unwrap_or(f64::INFINITY);
        let widest = widest.min(WIDEST * wavelength);
        let mut best: Option<(f64, f64, f64)> = None;
        let mut degrees = ANGLES.0;
        while degrees <= ANGLES.1 {
            let angle = degrees * (core::f64::consts::PI / 180.0);
            for n in 1..=MOUTHS {
                let mouth = can + (widest - can) * n as f64 / MOUTHS as f64;
                if self.fitting(mouth, angle).is_none() {
                    continue;
                }
                let gain = funnel_gain_fit_dbi(mouth, angle, wavelength);
                if best.is_none_or(|best| gain > best.2) {
                    best = Some((mouth, angle, gain));
                }
            }
            degrees += 1.0;
        }
        best.map(|(mouth, angle, _)| (mouth, angle))
    }

    /// Length and sheet of a funnel; `None` where it breaks a limit.
    fn fitting(&self, mouth_m: f64, half_angle_rad: f64) -> Option<(f64, FlatPattern)> {
        let radius = self.can.radius_m;
        let slack = 1.0 + 1e-9;
        let within =
            |value: f64, limit: Option<f64>| limit.is_none_or(|most| value <= most * slack);
        let sheet = FlatPattern::new(radius, 0.5 * mouth_m, half_angle_rad, self.limits.seam_m)?;
        let length = sheet.slant_m() * math::cos(half_angle_rad);
        let (width, height) = sheet.rectangle_m();
        let on_sheet = self.limits.sheet_m.is_none_or(|(one, other)| {
            let fits = |w: f64, h: f64| width <= w * slack && height <= h * slack;
            fits(one, other) || fits(other, one)
        });
        let fits = mouth_m >= 2.02 * radius
            && within(mouth_m, self.limits.mouth_m)
            && within(length, self.limits.length_m)
            && on_sheet;
        fits.then_some((length, sheet))
    }

    /// Solves one funnel; `None` where it breaks a limit.
    fn solve(
        &self,
        mouth_m: f64,
        half_angle_rad: f64,
    ) -> Option<Result<FunnelChoice, OutsideError>> {
        let (length_m, sheet) = self.fitting(mouth_m, half_angle_rad)?;
        let outline = Outline {
            rim: Rim::Funnel {
                mouth_radius_m: 0.5 * mouth_m,
                half_angle_rad,
            },
            ..self.can
        };
        let solved = PreparedOutside::new(&outline, self.frequency_hz)
            .and_then(|prepared| prepared.solve(self.frequency_hz));
        Some(solved.map(|solution| {
            let mode = solution.te11();
            let ahead = mode.far_field(0.0).theta.norm_sqr();
            FunnelChoice {
                mouth_diameter_m: mouth_m,
                half_angle_rad,
                length_m,
                directivity_dbi: 10.0 * math::log10(ahead / mode.radiated_power()),
                sheet,
            }
        }))
    }

    /// Neighbours of a funnel: each side in angle, in mouth, and along the edge of
    /// a limit on length, where the mouth goes with the angle.
    fn neighbour(&self, of: &FunnelChoice, number: usize) -> (f64, f64) {
        let angle = self.step * FIRST_STEP.0 * (core::f64::consts::PI / 180.0);
        let wider = 1.0 + self.step * FIRST_STEP.1;
        let (mouth, now) = (of.mouth_diameter_m, of.half_angle_rad);
        let along = |other: f64| {
            let at_length = 2.0 * (self.can.radius_m + of.length_m * math::tan(other));
            (at_length, other)
        };
        match number {
            0 => (mouth, now - angle),
            1 => (mouth * wider, now),
            2 => along(now - angle),
            3 => along(now + angle),
            4 => (mouth, now + angle),
            _ => (mouth / wider, now),
        }
    }

    /// Solves one body.
    pub fn step(&mut self) -> FunnelProgress {
        let Some(best) = self.best else {
            let first = self
                .start
                .and_then(|(mouth, angle)| self.solve(mouth, angle));
            return match first {
                Some(Ok(choice)) => {
                    self.best = Some(choice);
                    self.solved = 1;
                    FunnelProgress::Working { done: self.done() }
                }
                _ => FunnelProgress::Done(None),
            };
        };
        while self.solved < MOST_SOLVED && self.step >= LAST_STEP {
            let (mouth, angle) = self.neighbour(&best, self.next);
            self.next += 1;
            let degrees = angle * (180.0 / core::f64::consts::PI);
            let in_range = (ANGLES.0..=ANGLES.1).contains(&degrees);
            let found = if in_range {
                self.solve(mouth, angle)
            } else {
                None
            };
            if let Some(Ok(choice)) = found {
                self.solved += 1;
                if choice.directivity_dbi > best.directivity_dbi + 1e-4 {
                    self.best = Some(choice);
                    self.improved = true;
                    // Once more the same way.
                    self.next -= 1;
                }
                self.next_round();
                return FunnelProgress::Working { done: self.done() };
            }
            self.next_round();
        }
        FunnelProgress::Done(self.best)
    }

    /// After all neighbours: shorter steps unless one was better.
    fn next_round(&mut self) {
        if self.next > 5 {
            if !self.improved {
                self.step *= 0.5;
            }
            self.next = 0;
            self.improved = false;
        }
    }

    fn done(&self) -> f64 {
        self.solved as f64 / (MOST_SOLVED + 1) as f64
    }
}
