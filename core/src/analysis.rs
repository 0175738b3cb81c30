//! Everything about a design at once: modes, guide, verdict, match and beam.

use alloc::sync::Arc;
use alloc::vec::Vec;

use crate::beam::{Beam, endless_pipe_uncertainty};
use crate::constants::SPEED_OF_LIGHT;
use crate::design::{Design, Kilohertz, Mouth};
use crate::design_error::DesignError;
use crate::judge;
use crate::match_band::{MatchSummary, SweepPoint, band_frequencies, summarise, sweep_frequencies};
use crate::mouth;
use crate::outside::OutsideSpectrum;
use crate::radiation::CanBeam;
use crate::si::{SiDesign, hertz, kilohertz};
use crate::verdict::{DiameterRange, Finding, ModeEntry, Severity};
use crate::wall_loss::DB_PER_NEPER;
use crate::waveguide_mode::{Mode, modes_up_to};
use crate::whole_can::{CanBody, CanError, WholeCan, probe_geometry};

/// How many points of the band join the sweep, so that no band falls between
/// two points of a coarse one.
const BAND_POINTS: u32 = 11;

/// How far above the band modes are listed, as a factor on its upper edge.
const MODES_UP_TO: f64 = 1.6;

/// The guide at the band's centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GuideSummary {
    /// Frequency of these figures.
    pub at_khz: Kilohertz,
    /// TE11's wavelength along the guide, metres; `None` when cut off.
    pub guide_wavelength_m: Option<f64>,
    /// TE11's wall loss, dB/m; `None` when cut off.
    pub attenuation_db_per_m: Option<f64>,
    /// The rule of thumb's probe length: a quarter of the free-space wavelength, metres.
    pub quarter_wave_length_m: f64,
    /// The rule of thumb's distance: a quarter of the guide wavelength, metres.
    pub quarter_wave_distance_m: Option<f64>,
}

/// Everything known about a design.
#[derive(Clone, Debug, PartialEq)]
pub struct Analysis {
    /// Modes by cutoff: those up to 1.6 times the band's upper edge, TE11 and TM01 always.
    pub modes: Vec<ModeEntry>,
    /// The guide at the band's centre.
    pub guide: GuideSummary,
    /// Findings, the most severe first.
    pub verdict: Vec<Finding>,
    /// The sweep asked for.
    pub sweep: Vec<SweepPoint>,
    /// The match over the band; `None` where it can't be computed.
    pub match_summary: Option<MatchSummary>,
    /// Diameters that carry exactly one mode over the band.
    pub one_mode_diameters: Option<DiameterRange>,
    /// The beam at the band's centre, taken as that of an endless pipe; `None` where
    /// it can't be computed.
    pub beam: Option<Beam>,
    /// The true beam at the band's centre; only where the outside was given.
    pub true_beam: Option<CanBeam>,
}

impl Analysis {
    /// The most severe thing found.
    #[must_use]
    pub fn severity(&self) -> Severity {
        self.verdict
            .iter()
            .map(Finding::severity)
            .max()
            .unwrap_or(Severity::Good)
    }
}

/// Analyses designs one after the other; keeps what the next one can reuse.
#[derive(Clone, Debug, Default)]
pub struct Analyser {
    /// The last prepared can with the design it was prepared from.
    last: Option<(Design, WholeCan)>,
}

/// Analyses one design.
///
/// # Errors
/// A number outside its hard range ([`Design::check`]).
pub fn analyse(design: &Design) -> Result<Analysis, DesignError> {
    Analyser::new().analyse(design)
}

impl Analyser {
    /// With nothing kept yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Analyses a design.
    ///
    /// # Errors
    /// A number outside its hard range ([`Design::check`]).
    pub fn analyse(&mut self, design: &Design) -> Result<Analysis, DesignError> {
        self.analyse_with(design, None)
    }

    /// Analyses a design with its outside solved, if it is: then match and beam are
    /// those of the real mouth, whatever stands there.
    ///
    /// # Errors
    /// A number outside its hard range ([`Design::check`]).
    pub fn analyse_with(
        &mut self,
        design: &Design,
        outside: Option<&Arc<OutsideSpectrum>>,
    ) -> Result<Analysis, DesignError> {
        design.check()?;
        let si = SiDesign::new(design);
        let mut verdict = judge::judge_feed(design, &si);
        let can = if verdict.is_empty() {
            self.prepare(design, &si, outside)
        } else {
            Err(None)
        };
        let (sweep, merged) = match &can {
            Ok(can) => sweep_points(design, can),
            Err(_) => (nothing_computed(design), Vec::new()),
        };
        let match_summary = summarise(&merged, design.band);
        let computed = can.as_ref().ok().copied();
        verdict.push(judge::judge_modes(&si, tm01_share(design, &si, computed)));
        verdict.extend(judge::judge_length(design, &si));
        verdict.extend(judge::judge_hole(&si));
        verdict.extend(judge::judge_cup(design, &si));
        if let Some(summary) = match_summary {
            verdict.push(Finding::Match {
                worst_vswr: summary.worst_vswr_in_band,
            });
        }
        match &can {
            Err(Some(CanError::MouthNotComputed)) => verdict.push(Finding::MouthNotComputed),
            Err(Some(CanError::Probe(_))) => verdict.push(Finding::ProbeNotComputed),
            _ => {}
        }
        if computed.is_some() && sweep.iter().chain(&merged).any(|point| point.at.is_none()) {
            verdict.push(range_covered(&si));
        }
        let beam = Beam::new(design, &si, computed);
        let true_beam = outside
            .filter(|_| design.mouth != Mouth::Absorbing)
            .and_then(|outside| CanBeam::new(outside, computed, si.centre_hz()));
        let approximate = beam.as_ref().filter(|_| true_beam.is_none());
        verdict.extend(judge_beam(design, &si, approximate));
        verdict.sort_by_key(|finding| core::cmp::Reverse(finding.severity()));
        Ok(Analysis {
            modes: mode_entries(&si),
            guide: guide_summary(design, &si),
            verdict,
            sweep,
            match_summary,
            one_mode_diameters: judge::one_mode_range(&si),
            beam,
            true_beam,
        })
    }

    /// The can, from what is kept where only body, band or sweep changed.
    fn prepare(
        &mut self,
        design: &Design,
        si: &SiDesign,
        outside: Option<&Arc<OutsideSpectrum>>,
    ) -> Result<&WholeCan, Option<CanError>> {
        let body = CanBody::of(design, si, outside).map_err(Some)?;
        let can = match self.last.take() {
            Some((last, can)) if same_probe(&last, design) => can.with_body(body, si.reference_ohm),
            _ => WholeCan::from_parts(body, &probe_geometry(si), si.reference_ohm).map_err(Some)?,
        };
        Ok(&self.last.insert((design.clone(), can)).1)
    }
}

/// Whether two designs share everything that the prepared probe depends on.
fn same_probe(a: &Design, b: &Design) -> bool {
    a.can.inside_diameter_um == b.can.inside_diameter_um
        && a.screws == b.screws
        && a.probe.wire_diameter_um == b.probe.wire_diameter_um
        && a.probe.length_um == b.probe.length_um
        && a.probe.backshort_distance_um == b.probe.backshort_distance_um
        && a.probe.hole_diameter_um == b.probe.hole_diameter_um
        && a.probe.shunt_ff == b.probe.shunt_ff
        && a.probe.sleeve == b.probe.sleeve
}

/// The sweep asked for, and it merged with points over the band.
fn sweep_points(design: &Design, can: &WholeCan) -> (Vec<SweepPoint>, Vec<SweepPoint>) {
    let at = |frequency_khz: Kilohertz| SweepPoint {
        frequency_khz,
        at: can.match_at(hertz(frequency_khz)).ok(),
    };
    let sweep: Vec<SweepPoint> = sweep_frequencies(design.effective_sweep())
        .into_iter()
        .map(at)
        .collect();
    let mut merged = sweep.clone();
    for khz in band_frequencies(design.band, BAND_POINTS) {
        if let Err(place) = merged.binary_search_by_key(&khz, |point| point.frequency_khz) {
            merged.insert(place, at(khz));
        }
    }
    (sweep, merged)
}

fn nothing_computed(design: &Design) -> Vec<SweepPoint> {
    sweep_frequencies(design.effective_sweep())
        .into_iter()
        .map(|frequency_khz| SweepPoint {
            frequency_khz,
            at: None,
        })
        .collect()
}

/// TM01's largest share of the power that leaves the mouth, over the band;
/// `None` where it does not pass or was not computed.
fn tm01_share(design: &Design, si: &SiDesign, can: Option<&WholeCan>) -> Option<f64> {
    let can = can?;
    if Mode::TM01.cutoff_frequency_hz(si.radius_m) >= si.band_high_hz {
        return None;
    }
    band_frequencies(design.band, 5)
        .into_iter()
        .filter_map(|khz| can.power_at(hertz(khz)).ok())
        .map(|power| power.tm01 / power.total().max(f64::MIN_POSITIVE))
        .reduce(f64::max)
}

fn range_covered(si: &SiDesign) -> Finding {
    let scale = SPEED_OF_LIGHT / (2.0 * core::f64::consts::PI * si.radius_m);
    let (low, high) = mouth::COVERED_KA;
    Finding::BeyondRange {
        low_hz: low * scale,
        high_hz: high * scale,
    }
}

fn judge_beam(design: &Design, si: &SiDesign, beam: Option<&Beam>) -> Vec<Finding> {
    let mut findings = Vec::new();
    if design.mouth == Mouth::Absorbing {
        findings.push(Finding::NoBeam);
    }
    if beam.is_some() {
        let (gain_db, beamwidth_deg) = endless_pipe_uncertainty(si, si.centre_hz());
        findings.push(Finding::BeamOfEndlessPipe {
            gain_db,
            beamwidth_deg,
        });
        if Mode::TM01.cutoff_frequency_hz(si.radius_m) < si.band_high_hz {
            findings.push(Finding::BeamOfOneModeOnly);
        }
    }
    findings
}

/// Modes of a design by cutoff: those up to 1.6 times the band's upper edge, TE11 and
/// TM01 always.
#[must_use]
pub fn modes_of(design: &Design) -> Vec<ModeEntry> {
    mode_entries(&SiDesign::new(design))
}

fn mode_entries(si: &SiDesign) -> Vec<ModeEntry> {
    let tm01 = Mode::TM01.cutoff_frequency_hz(si.radius_m);
    // A hair above TM01, so that it is listed whatever the band.
    let top = (si.band_high_hz * MODES_UP_TO).max(tm01 * 1.000_001);
    modes_up_to(si.radius_m, top)
        .into_iter()
        .map(|mode| ModeEntry {
            mode,
            cutoff_hz: mode.cutoff_frequency_hz(si.radius_m),
        })
        .collect()
}

fn guide_summary(design: &Design, si: &SiDesign) -> GuideSummary {
    let centre = si.centre_hz();
    let rs = design.can.metal.surface_resistance(centre);
    let guide_wavelength_m = Mode::TE11.guide_wavelength_m(si.radius_m, centre);
    GuideSummary {
        at_khz: kilohertz(centre),
        guide_wavelength_m,
        attenuation_db_per_m: Mode::TE11
            .wall_attenuation_np_per_m(si.radius_m, centre, rs)
            .map(|np| np * DB_PER_NEPER),
        quarter_wave_length_m: SPEED_OF_LIGHT / centre / 4.0,
        quarter_wave_distance_m: guide_wavelength_m.map(|length| length / 4.0),
    }
}
