//! The whole can: probe, guide, wall loss and mouth together, seen from the
//! connector.

use alloc::sync::Arc;

use crate::cap::{Sheet, capped_reflection};
use crate::complex::Complex;
use crate::constants::wavenumber;
use crate::design::{Design, Mouth};
use crate::metal::Metal;
use crate::mouth::mouth_reflection;
use crate::outside::OutsideSpectrum;
use crate::probe::{
    Feed, GuideCondition, GuideEnd, Insulation, ModeExcitation, PreparedProbe, ProbeError,
    ProbeGeometry, ProbeSolution, Wire,
};
use crate::reflection::PointMatch;
use crate::si::SiDesign;
use crate::waveguide_mode::Mode;

/// Why a can's match could not be computed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum CanError {
    /// The probe cannot be as stated.
    Probe(ProbeError),
    /// What is at the mouth needs the outside solved, which was not given.
    MouthNotComputed,
    /// The frequency lies outside what the mouth's solution covers (`k a`).
    BeyondRange {
        /// Wavenumber times inside radius.
        ka: f64,
    },
}

impl From<ProbeError> for CanError {
    fn from(error: ProbeError) -> Self {
        Self::Probe(error)
    }
}

/// The part of a can that a given end of the guide and metal make, without the probe.
#[derive(Clone, Debug, PartialEq)]
pub struct CanBody {
    radius_m: f64,
    length_m: f64,
    metal: Metal,
    end: BodyEnd,
    /// Radius that the outside was solved for.
    solved_radius_m: f64,
    /// Over the mouth.
    cap: Option<Sheet>,
}

/// What the guide ends in.
#[derive(Clone, Debug, PartialEq)]
enum BodyEnd {
    /// It goes on for ever.
    Absorbing,
    /// The mouth of an endless thin-walled pipe.
    Pipe,
    /// The solved outside; where its band ends, for an open can the pipe.
    Outside(Arc<OutsideSpectrum>, bool),
}

impl CanBody {
    /// The body of a design, an open mouth taken as that of an endless pipe.
    ///
    /// # Errors
    /// [`CanError::MouthNotComputed`] for funnel, flange and choke: they need
    /// [`Self::with_outside`].
    pub fn new(design: &Design, si: &SiDesign) -> Result<Self, CanError> {
        let end = match design.mouth {
            Mouth::Open => BodyEnd::Pipe,
            Mouth::Absorbing => BodyEnd::Absorbing,
            Mouth::Funnel { .. } | Mouth::Flange { .. } | Mouth::Choke { .. } => {
                return Err(CanError::MouthNotComputed);
            }
        };
        Ok(Self::with_end(design, si, end))
    }

    /// The body of a design with its outside solved; an absorbing mouth stays so.
    #[must_use]
    pub fn with_outside(design: &Design, si: &SiDesign, outside: Arc<OutsideSpectrum>) -> Self {
        let end = match design.mouth {
            Mouth::Absorbing => BodyEnd::Absorbing,
            mouth => BodyEnd::Outside(outside, mouth == Mouth::Open),
        };
        Self::with_end(design, si, end)
    }

    /// Of one or the other: with the outside where it is given.
    ///
    /// # Errors
    /// As [`Self::new`] without one.
    pub fn of(
        design: &Design,
        si: &SiDesign,
        outside: Option<&Arc<OutsideSpectrum>>,
    ) -> Result<Self, CanError> {
        outside.map_or_else(
            || Self::new(design, si),
            |outside| Ok(Self::with_outside(design, si, Arc::clone(outside))),
        )
    }

    fn with_end(design: &Design, si: &SiDesign, end: BodyEnd) -> Self {
        Self {
            radius_m: si.radius_m,
            length_m: si.open_length_m,
            metal: design.can.metal,
            end,
            solved_radius_m: si.radius_m,
            cap: None,
        }
    }

    /// The same body with a cap over its mouth (of an endless one: a sheet across it at
    /// the can's length). What it does at the end of a funnel's throat is no cap of the
    /// funnel.
    #[must_use]
    pub fn with_cap(self, sheet: Sheet) -> Self {
        Self {
            cap: Some(sheet),
            ..self
        }
    }

    /// The same body a little wider or longer. A solved outside is not solved anew:
    /// it counts as scaled with the radius, which is exact for a small change to first
    /// order but for the rim's own size.
    #[must_use]
    pub(crate) fn resized(&self, radius_m: f64, length_m: f64) -> Self {
        Self {
            radius_m,
            length_m,
            ..self.clone()
        }
    }

    /// The solved outside's end at a frequency, scaled to this radius and length.
    fn outside_end(&self, outside: &OutsideSpectrum, frequency_hz: f64) -> Option<GuideEnd> {
        if self.radius_m == self.solved_radius_m {
            let end = outside.guide_end(frequency_hz)?;
            return Some(GuideEnd {
                length_m: self.length_m,
                ..end
            });
        }
        let (low, high) = outside.band_hz();
        let scaled = frequency_hz * (self.radius_m / self.solved_radius_m);
        if !(low..=high).contains(&frequency_hz) {
            return None;
        }
        outside
            .guide_end(scaled.clamp(low, high))
            .map(|end| GuideEnd {
                length_m: self.length_m,
                ..end
            })
    }

    /// The guide's condition at a frequency: wall loss and what comes back from the mouth.
    ///
    /// # Errors
    /// [`CanError::BeyondRange`] where the mouth's solution does not reach.
    pub fn condition(&self, frequency_hz: f64) -> Result<GuideCondition, CanError> {
        let end = match &self.end {
            BodyEnd::Absorbing => None,
            BodyEnd::Pipe => Some(self.pipe_end(frequency_hz)?),
            BodyEnd::Outside(outside, open) => match self.outside_end(outside, frequency_hz) {
                Some(end) => Some(end),
                None if *open => Some(self.pipe_end(frequency_hz)?),
                None => {
                    let ka = wavenumber(frequency_hz) * self.radius_m;
                    return Err(CanError::BeyondRange { ka });
                }
            },
        };
        let end = match &self.cap {
            Some(sheet) => Some(self.capped(sheet, end, frequency_hz)),
            None => end,
        };
        Ok(GuideCondition {
            surface_resistance_ohm: self.metal.surface_resistance(frequency_hz),
            end,
        })
    }

    /// The guide's end under a cap.
    fn capped(&self, sheet: &Sheet, end: Option<GuideEnd>, frequency_hz: f64) -> GuideEnd {
        let end = end.unwrap_or(GuideEnd {
            length_m: self.length_m,
            te11: Complex::ZERO,
            tm01: Complex::ZERO,
            te21: Complex::ZERO,
        });
        let under = |mode, reflection| {
            capped_reflection(mode, self.radius_m, frequency_hz, reflection, sheet)
        };
        GuideEnd {
            length_m: end.length_m,
            te11: under(Mode::TE11, end.te11),
            tm01: under(Mode::TM01, end.tm01),
            te21: under(Mode::TE21, end.te21),
        }
    }

    fn pipe_end(&self, frequency_hz: f64) -> Result<GuideEnd, CanError> {
        let ka = wavenumber(frequency_hz) * self.radius_m;
        let at = |mode| mouth_reflection(mode, ka);
        match (at(Mode::TE11), at(Mode::TM01), at(Mode::TE21)) {
            (Ok(te11), Ok(tm01), Ok(te21)) => Ok(GuideEnd {
                length_m: self.length_m,
                te11,
                tm01,
                te21,
            }),
            _ => Err(CanError::BeyondRange { ka }),
        }
    }
}

/// The probe's geometry of a design.
#[must_use]
pub fn probe_geometry(si: &SiDesign) -> ProbeGeometry {
    ProbeGeometry {
        guide_radius_m: si.radius_m,
        feed: Feed {
            wire: Wire {
                radius_m: si.wire_radius_m,
                insertion_m: si.probe_length_m,
                axial_m: si.backshort_distance_m,
                angle_rad: 0.0,
            },
            hole_radius_m: si.hole_radius_m,
            insulation: si
                .sleeve
                .map(|(radius_m, relative_permittivity)| Insulation {
                    radius_m,
                    relative_permittivity,
                }),
            shunt_capacitance_f: si.shunt_capacitance_f,
        },
        screws: si
            .screws
            .iter()
            .filter(|screw| screw.depth_m > 0.0)
            .map(|screw| Wire {
                radius_m: screw.radius_m,
                insertion_m: screw.depth_m,
                axial_m: screw.axial_m,
                angle_rad: screw.angle_rad,
            })
            .collect(),
    }
}

/// A can ready to be asked for its match at any frequency.
#[derive(Clone, Debug)]
pub struct WholeCan {
    body: CanBody,
    probe: PreparedProbe,
    reference_ohm: f64,
}

impl WholeCan {
    /// Prepares a design.
    ///
    /// # Errors
    /// [`CanError`] where probe or mouth can't be computed.
    pub fn new(design: &Design) -> Result<Self, CanError> {
        let si = SiDesign::new(design);
        let body = CanBody::new(design, &si)?;
        Self::from_parts(body, &probe_geometry(&si), si.reference_ohm)
    }

    /// From a body and a probe's geometry.
    ///
    /// # Errors
    /// [`CanError::Probe`] where the probe can't be computed.
    pub fn from_parts(
        body: CanBody,
        geometry: &ProbeGeometry,
        reference_ohm: f64,
    ) -> Result<Self, CanError> {
        Ok(Self {
            body,
            probe: PreparedProbe::new(geometry)?,
            reference_ohm,
        })
    }

    /// The same probe in another body: what changes when only length, metal or
    /// mouth of the can do.
    #[must_use]
    pub fn with_body(self, body: CanBody, reference_ohm: f64) -> Self {
        Self {
            body,
            reference_ohm,
            ..self
        }
    }

    /// Impedance, reflection and VSWR at the connector's plane (the inner wall).
    ///
    /// # Errors
    /// [`CanError::BeyondRange`] where the mouth's solution does not reach.
    pub fn match_at(&self, frequency_hz: f64) -> Result<PointMatch, CanError> {
        let condition = self.body.condition(frequency_hz)?;
        let admittance = self.probe.input_admittance(frequency_hz, &condition);
        Ok(PointMatch::from_admittance(admittance, self.reference_ohm))
    }

    /// Currents at one frequency and the waves they launch.
    ///
    /// # Errors
    /// [`CanError::BeyondRange`] where the mouth's solution does not reach.
    pub fn solve(&self, frequency_hz: f64) -> Result<ProbeSolution, CanError> {
        let condition = self.body.condition(frequency_hz)?;
        Ok(self.probe.solve(frequency_hz, &condition))
    }

    /// What reaches the mouth and leaves it, at a frequency.
    ///
    /// # Errors
    /// [`CanError::BeyondRange`] where the mouth's solution does not reach.
    pub fn power_at(&self, frequency_hz: f64) -> Result<MouthPower, CanError> {
        let solution = self.solve(frequency_hz)?;
        // Net of what the mouth sends back; rounding may leave a hair below zero.
        let share = |mode: ModeExcitation| mode.power_fraction.max(0.0);
        Ok(MouthPower {
            te11: share(solution.te11),
            tm01: share(solution.tm01),
            te21: share(solution.te21),
        })
    }
}

/// Power that leaves the mouth in each mode, as fractions of the power that
/// enters at the connector.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MouthPower {
    /// In TE11.
    pub te11: f64,
    /// In TM01.
    pub tm01: f64,
    /// In TE21.
    pub te21: f64,
}

impl MouthPower {
    /// All of it: one less the share lost in the walls.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.te11 + self.tm01 + self.te21
    }
}
