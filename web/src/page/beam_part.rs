//! The beam: the estimate at once, the full-wave solution when it has come.

use std::f64::consts::PI;

use tinwave_core::beam::{Beam, endless_pipe_uncertainty};
use tinwave_core::constants::wavenumber;
use tinwave_core::math;
use tinwave_core::radiation::{BeamFigures, CanBeam, PhaseCentre, SideLobe};
use tinwave_core::si::{SiDesign, micrometres};

use super::live::Named;
use super::markup::flag;
use super::model::Model;
use super::outside_job::Solving;
use super::said::{self, Place};
use crate::drawing::pattern_scene::{POINTS, PatternPlot, angle_deg};
use crate::entry;

const NOT_COMPUTED: &str = "not computed";

fn estimate(model: &Model) -> Option<Beam> {
    model.analysis.as_ref()?.beam
}

fn true_beam(model: &Model) -> Option<&CanBeam> {
    model.analysis.as_ref()?.true_beam.as_ref()
}

fn figures(model: &Model) -> Option<&BeamFigures> {
    true_beam(model).map(|beam| &beam.figures)
}

fn decimal(value: f64, digits: u8) -> String {
    entry::format_decimal(value, digits)
}

fn or_not(text: Option<String>) -> String {
    text.unwrap_or_else(|| NOT_COMPUTED.to_owned())
}

/// What only the full-wave solution knows.
fn solved_only(model: &Model, text: Option<String>) -> String {
    text.unwrap_or_else(|| {
        match model.solving {
            Solving::Working { .. } => "being computed",
            Solving::Untouched => "not computed yet",
            _ => NOT_COMPUTED,
        }
        .to_owned()
    })
}

/// The spread of gain (dB) and widths (degrees) of the estimate.
fn spread(model: &Model) -> (f64, f64) {
    let si = SiDesign::new(&model.work.design);
    endless_pipe_uncertainty(&si, si.centre_hz())
}

/// A true figure, or the estimate marked as such with its spread.
fn figure(
    model: &Model,
    solved: Option<f64>,
    estimated: Option<f64>,
    spread: f64,
    digits: u8,
    unit: &str,
) -> String {
    if let Some(value) = solved {
        return [&decimal(value, digits), unit].concat();
    }
    if true_beam(model).is_some() {
        return NOT_COMPUTED.to_owned();
    }
    or_not(estimated.map(|value| {
        let parts: [&str; 5] = [
            &decimal(value, digits),
            " \u{b1} ",
            &decimal(spread, digits),
            unit,
            " (estimate)",
        ];
        parts.concat()
    }))
}

fn gain(model: &Model, solved: Option<f64>, estimated: Option<f64>) -> String {
    figure(model, solved, estimated, spread(model).0, 1, " dBi")
}

fn width(model: &Model, solved: Option<f64>, estimated: Option<f64>) -> String {
    figure(model, solved, estimated, spread(model).1, 0, "\u{b0}")
}

/// Half-power widths along and across the wire, degrees.
fn widths(model: &Model) -> Option<(f64, f64)> {
    match figures(model) {
        Some(true_figures) => Some((true_figures.beamwidth_e_deg?, true_figures.beamwidth_h_deg?)),
        None => estimate(model).map(|beam| (beam.beamwidth_e_deg, beam.beamwidth_h_deg)),
    }
}

fn directivity(model: &Model) -> Option<f64> {
    let solved = figures(model).map(|figures| figures.directivity_dbi);
    solved.or_else(|| estimate(model).map(|beam| beam.directivity_dbi))
}

fn summary(model: &Model) -> String {
    let Some((gain, (e, h))) = directivity(model).zip(widths(model)) else {
        return NOT_COMPUTED.to_owned();
    };
    let how = if true_beam(model).is_some() {
        ""
    } else {
        " (estimate)"
    };
    let parts: [&str; 7] = [
        &decimal(gain, 1),
        " dBi, ",
        &decimal(e, 0),
        "\u{b0} by ",
        &decimal(h, 0),
        "\u{b0} wide",
        how,
    ];
    parts.concat()
}

/// How far the solution is, in a sentence.
fn solving(model: &Model) -> String {
    match model.solving {
        Solving::Done => {
            "Computed for this can: the field inside and outside, its length and what stands at its mouth included."
                .to_owned()
        }
        Solving::Working { .. } => {
            "Estimated from an endless pipe. The full computation of this can is running."
                .to_owned()
        }
        Solving::Untouched => {
            "Estimated from an endless pipe. The full computation of this can begins when you first touch the page."
                .to_owned()
        }
        Solving::Stopped => {
            "Stopped. What stands here is an estimate from an endless pipe.".to_owned()
        }
        Solving::Impossible => {
            "This can is beyond the full computation: too wide, too long or far from the band in wavelengths."
                .to_owned()
        }
        Solving::Refused => {
            "The full computation could not be fetched or has stopped; what stands here is an estimate from an endless pipe."
                .to_owned()
        }
    }
}

fn steps(model: &Model) -> (u32, u32) {
    match model.solving {
        Solving::Working { done, total } => (done, total),
        _ => (0, 0),
    }
}

/// Where the beam points.
fn lean(model: &Model) -> Option<String> {
    let angle = figures(model)?.e_peak_angle_deg;
    if angle.abs() < 0.5 {
        return Some("straight ahead".to_owned());
    }
    let side = if angle > 0.0 {
        "\u{b0} towards the connector\u{2019}s side, "
    } else {
        "\u{b0} away from the connector\u{2019}s side, "
    };
    let peak = decimal(figures(model)?.e_peak_dbi, 1);
    Some([&decimal(angle.abs(), 0), side, &peak, " dBi"].concat())
}

fn lobe_text(lobe: Option<SideLobe>) -> String {
    lobe.map_or_else(
        || "none".to_owned(),
        |lobe| {
            let angle = (lobe.angle_rad * (180.0 / PI)).abs();
            let level = decimal(lobe.level_db, 0);
            [&level, " dB at ", &decimal(angle, 0), "\u{b0}"].concat()
        },
    )
}

fn side_lobes(model: &Model) -> Option<String> {
    let figures = figures(model)?;
    let along = lobe_text(figures.side_lobe_e);
    Some(["E ", &along, ", H ", &lobe_text(figures.side_lobe_h)].concat())
}

fn phase_centre(model: &Model) -> Option<String> {
    let figures = figures(model)?;
    let place = |centre: Option<PhaseCentre>| {
        centre.map_or_else(
            || NOT_COMPUTED.to_owned(),
            |centre| {
                let um = micrometres(centre.axial_m.abs());
                let side = if centre.axial_m < 0.0 {
                    " behind"
                } else {
                    " ahead"
                };
                [&entry::format_length(um, model.unit), side].concat()
            },
        )
    };
    let along = place(figures.phase_centre_e);
    Some(["E ", &along, ", H ", &place(figures.phase_centre_h)].concat())
}

/// Directivity of a large circular opening with the TE11 field in it,
/// `10.5 π (a/λ)²`: C. A. Balanis, *Antenna Theory*, 3rd ed. 2005, table 12.2.
fn textbook_dbi(model: &Model) -> f64 {
    let si = SiDesign::new(&model.work.design);
    let ka = wavenumber(si.centre_hz()) * si.radius_m;
    10.0 * math::log10(10.5 * PI * (ka / (2.0 * PI)) * (ka / (2.0 * PI)))
}

fn textbook(model: &Model) -> String {
    let handbook = textbook_dbi(model);
    let mut text = [&decimal(handbook, 1), " dBi"].concat();
    if let Some(own) = directivity(model) {
        let difference = handbook - own;
        if difference.abs() >= 0.05 {
            text.push_str(if difference > 0.0 {
                ", too high by "
            } else {
                ", too low by "
            });
            text.push_str(&decimal(difference.abs(), 1));
            text.push_str(" dB");
        }
    }
    text
}

/// Distances at which the spot is told, metres.
const DISTANCES: [(f64, &str); 3] = [(100.0, "100 m"), (300.0, "300 m"), (1000.0, "1 km")];

/// What the half-power beam covers at a distance.
fn spots(model: &Model) -> String {
    let Some((e, h)) = widths(model) else {
        return String::new();
    };
    let mut text = String::from("The half-power beam covers ");
    let mut first = true;
    for (metres, name) in DISTANCES {
        let across = |width: f64| 2.0 * metres * math::tan(width.min(170.0) * (PI / 360.0));
        if !first {
            text.push_str("; ");
        }
        first = false;
        let parts: [&str; 6] = [
            &decimal(across(h), 0),
            " m across the wire and ",
            &decimal(across(e), 0),
            " m along it at ",
            name,
            "",
        ];
        text.push_str(&parts.concat());
    }
    text.push('.');
    text
}

fn mouth(model: &Model) -> String {
    let solved = true_beam(model).map(|beam| beam.mouth_reflection);
    let reflection = solved.or_else(|| estimate(model).map(|beam| beam.mouth_reflection));
    or_not(reflection.map(|reflection| {
        [
            &decimal(reflection.norm_sqr() * 100.0, 1),
            " % of the power",
        ]
        .concat()
    }))
}

/// The pattern as it is drawn, once it is computed.
pub(super) fn pattern_plot(model: &Model) -> PatternPlot {
    let Some(beam) = true_beam(model) else {
        return PatternPlot::default();
    };
    let angles: Vec<f64> = (0..POINTS).map(|i| angle_deg(i) * (PI / 180.0)).collect();
    let figures = &beam.figures;
    PatternPlot {
        e_dbi: beam.pattern.cut_dbi(0.0, &angles),
        h_dbi: beam.pattern.cut_dbi(0.5 * PI, &angles),
        peak_deg: figures.e_peak_angle_deg,
        width_deg: (
            figures.beamwidth_e_deg.unwrap_or(0.0),
            figures.beamwidth_h_deg.unwrap_or(0.0),
        ),
    }
}

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("beam", summary),
    ("solving", solving),
    ("solving-steps", |model| steps(model).1.max(1).to_string()),
    ("solving-done", |model| steps(model).0.to_string()),
    ("not-solving", |model| {
        flag(!matches!(model.solving, Solving::Working { .. }))
    }),
    ("not-stopped", |model| {
        flag(!matches!(
            model.solving,
            Solving::Stopped | Solving::Refused
        ))
    }),
    ("directivity", |model| {
        let solved = figures(model).map(|figures| figures.directivity_dbi);
        gain(
            model,
            solved,
            estimate(model).map(|beam| beam.directivity_dbi),
        )
    }),
    ("lean", |model| solved_only(model, lean(model))),
    ("gain", |model| {
        let solved = true_beam(model).and_then(|beam| beam.realised_gain_dbi);
        gain(
            model,
            solved,
            estimate(model).and_then(|beam| beam.realised_gain_dbi),
        )
    }),
    ("textbook", textbook),
    ("width-e", |model| {
        let solved = figures(model).and_then(|figures| figures.beamwidth_e_deg);
        width(
            model,
            solved,
            estimate(model).map(|beam| beam.beamwidth_e_deg),
        )
    }),
    ("width-h", |model| {
        let solved = figures(model).and_then(|figures| figures.beamwidth_h_deg);
        width(
            model,
            solved,
            estimate(model).map(|beam| beam.beamwidth_h_deg),
        )
    }),
    ("front-to-back", |model| {
        let solved = figures(model).map(|figures| figures.front_to_back_db);
        let estimated = estimate(model).map(|beam| beam.front_to_back_db);
        or_not(
            solved
                .or(estimated)
                .map(|ratio| [&decimal(ratio, 0), " dB"].concat()),
        )
    }),
    ("side-lobes", |model| solved_only(model, side_lobes(model))),
    ("cross-polar", |model| {
        let level = figures(model).map(|figures| figures.cross_polar_db);
        solved_only(
            model,
            level.map(|level| [&decimal(-level, 0), " dB down"].concat()),
        )
    }),
    ("phase-centre", |model| {
        solved_only(model, phase_centre(model))
    }),
    ("mouth", mouth),
    ("spots", spots),
    ("beam-findings", |model| said::findings(model, Place::Beam)),
];
