//! The rules behind the verdict: what of a design is looked at, and the
//! thresholds.
//!
//! Thresholds are common practice, no source, unless a line says otherwise.

use alloc::vec::Vec;

use crate::constants::SPEED_OF_LIGHT;
use crate::design::{Design, Mouth};
use crate::one_mode_diameter::{one_mode_diameters_m, one_mode_margins};
use crate::si::{SiDesign, air_line_impedance_ohm, metres};
use crate::verdict::{DiameterRange, Finding, ModeEntry};
use crate::wall_loss::DB_PER_NEPER;
use crate::waveguide_mode::{Mode, modes_up_to};

/// Below this margin over TE11's cutoff every millimetre of diameter counts:
/// the guide wavelength changes by more than 5 % per 1 % of diameter.
pub const NEAR_CUTOFF_MARGIN: f64 = 0.10;

/// How far TM01 should have decayed between probe and mouth, dB. What comes
/// back has then fallen by twice this, and moves the probe's match little.
pub const TM01_DECAY_DB: f64 = 10.0;

/// Deepest cup of a choke, in wavelengths: one of a quarter of a wavelength chokes;
/// from about here on the power that goes in and comes out no longer agrees (the power
/// balance of this crate's own outside solver; no published source).
pub const DEEPEST_CUP_WAVELENGTHS: f64 = 0.4;

/// A hole whose air line differs from the reference by more than this factor is noted.
const LINE_RATIO: f64 = 1.35;

/// Diameters that carry one mode over the design's band.
#[must_use]
pub fn one_mode_range(si: &SiDesign) -> Option<DiameterRange> {
    one_mode_diameters_m(si.band_low_hz, si.band_high_hz)
        .map(|(low_m, high_m)| DiameterRange { low_m, high_m })
}

/// Findings about the modes that pass. `tm01_share`: see [`Finding::SeveralModes`].
#[must_use]
pub fn judge_modes(si: &SiDesign, tm01_share: Option<f64>) -> Finding {
    let margins = one_mode_margins(2.0 * si.radius_m, si.band_low_hz, si.band_high_hz);
    let one_mode_diameters = one_mode_range(si);
    let te11_cutoff_hz = Mode::TE11.cutoff_frequency_hz(si.radius_m);
    if margins.lower <= 0.0 {
        return Finding::NoMode {
            te11_cutoff_hz,
            band_low_hz: si.band_low_hz,
            part_of_band_passes: te11_cutoff_hz < si.band_high_hz,
            one_mode_diameters,
        };
    }
    if margins.upper <= 0.0 {
        let others = modes_up_to(si.radius_m, si.band_high_hz)
            .into_iter()
            .filter(|mode| *mode != Mode::TE11)
            .map(|mode| ModeEntry {
                mode,
                cutoff_hz: mode.cutoff_frequency_hz(si.radius_m),
            })
            .collect();
        return Finding::SeveralModes {
            others,
            tm01_share,
            one_mode_diameters,
        };
    }
    let centre = si.centre_hz();
    match Mode::TE11.guide_wavelength_m(si.radius_m, centre) {
        Some(guide_wavelength_m) if margins.lower < NEAR_CUTOFF_MARGIN => {
            // d ln(λg)/d ln(D) = -(fc/f)²/(1-(fc/f)²), from λg = λ/√(1-(fc/f)²).
            let ratio = te11_cutoff_hz / centre;
            let square = ratio * ratio;
            let slope = -square / (1.0 - square) * guide_wavelength_m / (2.0 * si.radius_m);
            Finding::NearCutoff {
                margin: margins.lower,
                guide_wavelength_m,
                wavelength_per_diameter: slope,
                one_mode_diameters,
            }
        }
        _ => Finding::OneMode {
            lower_margin: margins.lower,
            upper_margin: margins.upper,
        },
    }
}

/// Whether TM01 dies out before the mouth. Only asked where it does not pass.
#[must_use]
pub fn judge_length(design: &Design, si: &SiDesign) -> Option<Finding> {
    if design.mouth == Mouth::Absorbing {
        return None;
    }
    let decay = Mode::TM01.evanescent_decay_np_per_m(si.radius_m, si.band_high_hz)?;
    let tm01_decay_db = DB_PER_NEPER * decay * (si.open_length_m - si.backshort_distance_m);
    (tm01_decay_db < TM01_DECAY_DB).then(|| Finding::TooShort {
        tm01_decay_db,
        wanted_db: TM01_DECAY_DB,
        sufficient_length_m: si.backshort_distance_m + TM01_DECAY_DB / (DB_PER_NEPER * decay),
    })
}

/// Whether a choke's cup is so deep that it rings at the top of the band.
#[must_use]
pub fn judge_cup(design: &Design, si: &SiDesign) -> Option<Finding> {
    let Mouth::Choke { depth_um, .. } = design.mouth else {
        return None;
    };
    let depth_m = metres(depth_um);
    let deepest_m = DEEPEST_CUP_WAVELENGTHS * SPEED_OF_LIGHT / si.band_high_hz;
    (depth_m > deepest_m).then_some(Finding::CupRings { depth_m, deepest_m })
}

/// Smallest distance from the back wall: hole and wire must fit.
#[must_use]
pub fn least_backshort_distance_m(si: &SiDesign) -> f64 {
    si.hole_radius_m.max(2.0 * si.wire_radius_m)
}

/// Smallest distance from the mouth: nearer than half a radius the mouth
/// reflects modes that its solution does not follow (TM11 comes back with
/// more than 5 % of its size).
#[must_use]
pub fn least_mouth_distance_m(si: &SiDesign) -> f64 {
    0.5 * si.radius_m
}

/// Longest probe: a wire's radius of air, at least half a millimetre, stays
/// before the far wall.
#[must_use]
pub fn longest_probe_m(si: &SiDesign) -> f64 {
    2.0 * si.radius_m - si.wire_radius_m.max(metres(500))
}

/// Findings that make a feed impossible to build or to compute; empty when all is well.
#[must_use]
pub fn judge_feed(design: &Design, si: &SiDesign) -> Vec<Finding> {
    let mut findings = judge_cut(design, si);
    findings.extend(judge_feed_but_for_cut(si));
    findings
}

/// Findings about the probe's length and place.
fn judge_cut(design: &Design, si: &SiDesign) -> Vec<Finding> {
    let mut findings = Vec::new();
    let longest_m = longest_probe_m(si);
    if si.probe_length_m > longest_m {
        findings.push(Finding::ProbeTooDeep {
            length_m: si.probe_length_m,
            longest_m,
        });
    }
    let least_m = least_backshort_distance_m(si);
    if si.backshort_distance_m < least_m {
        findings.push(Finding::ProbeNearBack {
            distance_m: si.backshort_distance_m,
            least_m,
        });
    }
    let distance_m = si.open_length_m - si.backshort_distance_m;
    let least_m = least_mouth_distance_m(si);
    if design.mouth != Mouth::Absorbing && distance_m < least_m {
        findings.push(Finding::ProbeNearMouth {
            distance_m,
            least_m,
        });
    }
    findings
}

/// Findings about the feed that another cut would not mend.
#[must_use]
pub fn judge_feed_but_for_cut(si: &SiDesign) -> Vec<Finding> {
    let mut findings = Vec::new();
    // A hole within a hundredth of a millimetre of the wire touches it.
    if si.hole_radius_m < si.wire_radius_m + metres(10) {
        findings.push(Finding::WireTooThickForHole {
            wire_m: 2.0 * si.wire_radius_m,
            hole_m: 2.0 * si.hole_radius_m,
        });
    }
    if let Some((sleeve_radius_m, _)) = si.sleeve
        && sleeve_radius_m <= si.wire_radius_m
    {
        findings.push(Finding::SleeveThinnerThanWire {
            sleeve_m: 2.0 * sleeve_radius_m,
            wire_m: 2.0 * si.wire_radius_m,
        });
    }
    findings.extend(judge_screws(si));
    findings
}

fn judge_screws(si: &SiDesign) -> impl Iterator<Item = Finding> + '_ {
    si.screws.iter().enumerate().filter_map(|(index, screw)| {
        let fits_across = screw.depth_m + screw.radius_m < 2.0 * si.radius_m;
        let fits_along = screw.axial_m >= 2.0 * screw.radius_m;
        // The axes of two wires that touch or cross.
        let along = screw.axial_m - si.backshort_distance_m;
        let round = si.radius_m * crate::math::sin(0.5 * screw.angle_rad) * 2.0;
        let apart = crate::math::hypot(along, round);
        let clear = apart > 2.0 * (screw.radius_m + si.wire_radius_m);
        (screw.depth_m > 0.0 && !(fits_across && fits_along && clear))
            .then_some(Finding::ScrewImpossible { index })
    })
}

/// A note when hole and wire make a line far from the reference.
#[must_use]
pub fn judge_hole(si: &SiDesign) -> Option<Finding> {
    let line_ohm = air_line_impedance_ohm(si.hole_radius_m, si.wire_radius_m);
    let ratio = line_ohm / si.reference_ohm;
    (line_ohm > 0.0 && !(1.0 / LINE_RATIO..=LINE_RATIO).contains(&ratio)).then_some(
        Finding::HoleLineImpedance {
            line_ohm,
            reference_ohm: si.reference_ohm,
        },
    )
}
