//! The report file: everything about a design in JSON, schema 1.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::sync::Arc;
use alloc::vec::Vec;

use serde::Serialize;
use serde_json::{Map, Value};

use super::beam_report::{BeamOut, beam_out};
use super::tuning_report::{ScrewsOut, SensitivityOut, screws_out, sensitivity_out};
use crate::analysis::{Analyser, Analysis};
use crate::best_cut::{BestCut, FreeDimensions, Slack, best_cut_with};
use crate::complex::Complex;
use crate::design::{Design, Kilohertz};
use crate::design_error::DesignError;
use crate::match_band::FrequencyRange;
use crate::outside::{OutsideSpectrum, OutsideSteps};
use crate::verdict::{DiameterRange, Finding, ModeEntry};

#[derive(Serialize)]
struct Report {
    schema: u32,
    modes: Vec<ModeOut>,
    guide: GuideOut,
    verdict: Vec<Value>,
    sweep: Vec<PointOut>,
    #[serde(rename = "match")]
    match_: Option<MatchOut>,
    best_cut: BestCutsOut,
    one_mode_diameters_mm: Option<RangeOut>,
    beam: Option<BeamOut>,
    screws: Option<ScrewsOut>,
    sensitivity: Vec<SensitivityOut>,
}

#[derive(Serialize)]
struct ModeOut {
    mode: String,
    cutoff_mhz: f64,
}

#[derive(Serialize)]
struct GuideOut {
    at_mhz: f64,
    guide_wavelength_mm: Option<f64>,
    attenuation_db_per_m: Option<f64>,
    quarter_wave_length_mm: f64,
    quarter_wave_distance_mm: Option<f64>,
}

#[derive(Serialize)]
struct PointOut {
    mhz: f64,
    impedance_ohm: Option<[f64; 2]>,
    reflection: Option<[f64; 2]>,
    vswr: Option<f64>,
}

#[derive(Serialize)]
struct MatchOut {
    worst_vswr_in_band: f64,
    worst_mhz: f64,
    vswr15_low_mhz: Option<f64>,
    vswr15_high_mhz: Option<f64>,
    vswr2_low_mhz: Option<f64>,
    vswr2_high_mhz: Option<f64>,
}

#[derive(Serialize)]
struct BestCutsOut {
    length_only: Option<CutOut>,
    length_and_distance: Option<CutOut>,
    /// The second good pair, where there is one.
    other_length_and_distance: Option<CutOut>,
}

#[derive(Serialize)]
struct CutOut {
    length_mm: f64,
    backshort_distance_mm: f64,
    worst_vswr_in_band: f64,
    length_slack_mm: SlackOut,
    distance_slack_mm: SlackOut,
}

#[derive(Serialize)]
struct SlackOut {
    vswr15: Option<[f64; 2]>,
    vswr2: Option<[f64; 2]>,
}

#[derive(Serialize)]
struct RangeOut {
    low: f64,
    high: f64,
}

/// Analyses a design and writes the report.
///
/// # Errors
/// A number outside its hard range ([`Design::check`]).
pub fn report_json(design: &Design) -> Result<String, DesignError> {
    design.check()?;
    let outside = outside_of(design);
    let outside = outside.as_ref();
    let analysis = Analyser::new().analyse_with(design, outside)?;
    let length_only = best_cut_with(design, FreeDimensions::Length, outside)?;
    let pairs = best_cut_with(design, FreeDimensions::LengthAndDistance, outside)?;
    let report = Report {
        schema: 1,
        modes: analysis.modes.iter().map(mode_out).collect(),
        guide: guide_out(&analysis),
        verdict: analysis.verdict.iter().map(finding_out).collect(),
        sweep: sweep_out(&analysis),
        match_: match_out(&analysis),
        best_cut: BestCutsOut {
            length_only: length_only.first().map(cut_out),
            length_and_distance: pairs.first().map(cut_out),
            other_length_and_distance: pairs.get(1).map(cut_out),
        },
        one_mode_diameters_mm: analysis.one_mode_diameters.map(range_out),
        beam: beam_out(design, &analysis),
        screws: screws_out(design, outside)?,
        sensitivity: sensitivity_out(design, outside)?,
    };
    // Serialising plain structs of numbers and text cannot fail.
    Ok(serde_json::to_string_pretty(&report).unwrap_or_default())
}

/// The outside solved; `None` where there is none or it can't be: the verdict says
/// which.
pub(super) fn outside_of(design: &Design) -> Option<Arc<OutsideSpectrum>> {
    let mut steps = OutsideSteps::of_design(design).ok()??;
    while steps.step() {}
    steps.finish().map(Arc::new)
}

pub(super) fn mhz(khz: Kilohertz) -> f64 {
    f64::from(khz) / 1e3
}

pub(super) fn mm(um: u32) -> f64 {
    f64::from(um) / 1e3
}

/// Nine significant decimals of a file unit: enough for any reader, short enough to read.
pub(super) fn tidy(value: f64) -> f64 {
    crate::math::round(value * 1e9) / 1e9
}

pub(super) fn pair(value: Complex) -> [f64; 2] {
    [tidy(value.re), tidy(value.im)]
}

fn mode_out(entry: &ModeEntry) -> ModeOut {
    ModeOut {
        mode: entry.mode.to_string(),
        cutoff_mhz: tidy(entry.cutoff_hz / 1e6),
    }
}

fn guide_out(analysis: &Analysis) -> GuideOut {
    let guide = &analysis.guide;
    GuideOut {
        at_mhz: mhz(guide.at_khz),
        guide_wavelength_mm: guide.guide_wavelength_m.map(|m| tidy(m * 1e3)),
        attenuation_db_per_m: guide.attenuation_db_per_m.map(tidy),
        quarter_wave_length_mm: tidy(guide.quarter_wave_length_m * 1e3),
        quarter_wave_distance_mm: guide.quarter_wave_distance_m.map(|m| tidy(m * 1e3)),
    }
}

fn sweep_out(analysis: &Analysis) -> Vec<PointOut> {
    analysis
        .sweep
        .iter()
        .map(|point| PointOut {
            mhz: mhz(point.frequency_khz),
            impedance_ohm: point.at.map(|at| pair(at.impedance_ohm)),
            reflection: point.at.map(|at| pair(at.reflection)),
            vswr: point.at.map(|at| tidy(at.vswr)),
        })
        .collect()
}

fn match_out(analysis: &Analysis) -> Option<MatchOut> {
    let summary = analysis.match_summary?;
    let low = |range: Option<FrequencyRange>| range.map(|(low, _)| mhz(low));
    let high = |range: Option<FrequencyRange>| range.map(|(_, high)| mhz(high));
    Some(MatchOut {
        worst_vswr_in_band: tidy(summary.worst_vswr_in_band),
        worst_mhz: mhz(summary.worst_khz),
        vswr15_low_mhz: low(summary.vswr_1_5_khz),
        vswr15_high_mhz: high(summary.vswr_1_5_khz),
        vswr2_low_mhz: low(summary.vswr_2_khz),
        vswr2_high_mhz: high(summary.vswr_2_khz),
    })
}

fn cut_out(cut: &BestCut) -> CutOut {
    let slack = |slack: Slack| {
        let pair = |(less, more): (u32, u32)| [mm(less), mm(more)];
        SlackOut {
            vswr15: slack.to_vswr_1_5.map(pair),
            vswr2: slack.to_vswr_2.map(pair),
        }
    };
    CutOut {
        length_mm: mm(cut.length_um),
        backshort_distance_mm: mm(cut.backshort_distance_um),
        worst_vswr_in_band: tidy(cut.worst_vswr),
        length_slack_mm: slack(cut.length_slack),
        distance_slack_mm: slack(cut.distance_slack),
    }
}

fn range_out(range: DiameterRange) -> RangeOut {
    RangeOut {
        low: tidy(range.low_m * 1e3),
        high: tidy(range.high_m * 1e3),
    }
}

/// One finding: its code and its numbers.
fn finding_out(finding: &Finding) -> Value {
    let mut out = Map::new();
    out.insert("code".to_string(), finding.code().into());
    let severity = format!("{:?}", finding.severity()).to_ascii_lowercase();
    out.insert("severity".to_string(), severity.into());
    for (key, value) in numbers(finding) {
        out.insert(key.to_string(), value);
    }
    Value::Object(out)
}

fn number(value: f64) -> Value {
    Value::from(tidy(value))
}

fn numbers(finding: &Finding) -> Vec<(&'static str, Value)> {
    let mm = |metres: f64| number(metres * 1e3);
    let mhz = |hertz: f64| number(hertz / 1e6);
    let percent = |fraction: f64| number(fraction * 100.0);
    let diameters = |range: &Option<DiameterRange>| {
        range.map_or(Value::Null, |range| {
            Value::from(alloc::vec![mm(range.low_m), mm(range.high_m)])
        })
    };
    match finding {
        Finding::NoMode {
            te11_cutoff_hz,
            band_low_hz,
            part_of_band_passes,
            one_mode_diameters,
        } => alloc::vec![
            ("te11_cutoff_mhz", mhz(*te11_cutoff_hz)),
            ("band_low_mhz", mhz(*band_low_hz)),
            ("part_of_band_passes", (*part_of_band_passes).into()),
            ("one_mode_diameters_mm", diameters(one_mode_diameters)),
        ],
        Finding::NearCutoff {
            margin,
            guide_wavelength_m,
            wavelength_per_diameter,
            one_mode_diameters,
        } => alloc::vec![
            ("lower_margin_percent", percent(*margin)),
            ("guide_wavelength_mm", mm(*guide_wavelength_m)),
            (
                "guide_wavelength_mm_per_mm_of_diameter",
                number(*wavelength_per_diameter),
            ),
            ("one_mode_diameters_mm", diameters(one_mode_diameters)),
        ],
        Finding::OneMode {
            lower_margin,
            upper_margin,
        } => alloc::vec![
            ("lower_margin_percent", percent(*lower_margin)),
            ("upper_margin_percent", percent(*upper_margin)),
        ],
        Finding::SeveralModes {
            others,
            tm01_share,
            one_mode_diameters,
        } => {
            let others: Vec<Value> = others
                .iter()
                .filter_map(|entry| serde_json::to_value(mode_out(entry)).ok())
                .collect();
            alloc::vec![
                ("others", Value::from(others)),
                (
                    "tm01_share_percent",
                    tm01_share.map_or(Value::Null, percent),
                ),
                ("one_mode_diameters_mm", diameters(one_mode_diameters)),
            ]
        }
        Finding::TooShort {
            tm01_decay_db,
            wanted_db,
            sufficient_length_m,
        } => alloc::vec![
            ("tm01_decay_db", number(*tm01_decay_db)),
            ("wanted_db", number(*wanted_db)),
            ("sufficient_length_mm", mm(*sufficient_length_m)),
        ],
        other => feed_numbers(other),
    }
}

/// The numbers of findings about the feed and the computation's own limits.
fn feed_numbers(finding: &Finding) -> Vec<(&'static str, Value)> {
    let mm = |metres: f64| number(metres * 1e3);
    let mhz = |hertz: f64| number(hertz / 1e6);
    match finding {
        Finding::ProbeTooDeep {
            length_m,
            longest_m,
        } => alloc::vec![("length_mm", mm(*length_m)), ("longest_mm", mm(*longest_m))],
        Finding::ProbeNearBack {
            distance_m,
            least_m,
        }
        | Finding::ProbeNearMouth {
            distance_m,
            least_m,
        } => alloc::vec![("distance_mm", mm(*distance_m)), ("least_mm", mm(*least_m))],
        Finding::WireTooThickForHole { wire_m, hole_m } => {
            alloc::vec![("wire_mm", mm(*wire_m)), ("hole_mm", mm(*hole_m))]
        }
        Finding::SleeveThinnerThanWire { sleeve_m, wire_m } => {
            alloc::vec![("sleeve_mm", mm(*sleeve_m)), ("wire_mm", mm(*wire_m))]
        }
        Finding::HoleLineImpedance {
            line_ohm,
            reference_ohm,
        } => alloc::vec![
            ("line_ohm", number(*line_ohm)),
            ("reference_ohm", number(*reference_ohm)),
        ],
        Finding::CupRings { depth_m, deepest_m } => {
            alloc::vec![("depth_mm", mm(*depth_m)), ("deepest_mm", mm(*deepest_m))]
        }
        Finding::ScrewImpossible { index } => alloc::vec![("index", (*index).into())],
        Finding::Match { worst_vswr } => alloc::vec![("worst_vswr", number(*worst_vswr))],
        Finding::BeyondRange { low_hz, high_hz } => {
            alloc::vec![("low_mhz", mhz(*low_hz)), ("high_mhz", mhz(*high_hz))]
        }
        Finding::BeamOfEndlessPipe {
            gain_db,
            beamwidth_deg,
        } => alloc::vec![
            ("gain_plus_minus_db", number(*gain_db)),
            ("beamwidth_plus_minus_deg", number(*beamwidth_deg)),
        ],
        _ => Vec::new(),
    }
}
