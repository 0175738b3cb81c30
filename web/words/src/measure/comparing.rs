//! Measured beside predicted.

use tinwave_maker::entry::{format_decimal, format_hertz};
use tinwave_maker::measured::{CurveFigures, Under};

/// The chart.
#[must_use]
pub const fn chart_title() -> &'static str {
    "Measured and predicted"
}

/// The chart without a measurement.
#[must_use]
pub const fn chart_title_predicted() -> &'static str {
    "What is predicted"
}

/// What goes up it.
#[must_use]
pub const fn chart_note(loss: bool) -> &'static str {
    if loss {
        "Return loss in dB, higher is better"
    } else {
        "VSWR, lower is better"
    }
}

/// The axis of return loss.
#[must_use]
pub const fn return_loss() -> &'static str {
    "Return loss"
}

/// The scales to choose from.
#[must_use]
pub const fn scales() -> (&'static str, [&'static str; 2]) {
    ("Draw", ["VSWR", "Return loss"])
}

/// The curve that was measured.
#[must_use]
pub const fn measured() -> &'static str {
    "measured"
}

/// Where nothing was measured.
#[must_use]
pub const fn not_measured() -> &'static str {
    "not measured"
}

/// The curve that is predicted.
#[must_use]
pub const fn predicted() -> &'static str {
    "predicted"
}

/// The best point of a reading.
#[must_use]
pub const fn the_reading() -> &'static str {
    "reading"
}

/// Below the chart: the worst in the band.
#[must_use]
pub const fn worst_in_band() -> &'static str {
    "Worst in the band"
}

/// The table.
#[must_use]
pub const fn table_title() -> &'static str {
    "Measured beside predicted"
}

/// Its heads.
#[must_use]
pub fn table_heads() -> Vec<String> {
    ["VSWR", "Measured", "Predicted"]
        .map(str::to_owned)
        .to_vec()
}

/// A VSWR; what is far beyond use is only said to be.
#[must_use]
pub fn vswr(value: f64) -> String {
    if value > 20.0 {
        "over 20".to_owned()
    } else {
        format_decimal(value, 2)
    }
}

fn under(under: Under, none: &str) -> String {
    match under {
        Under::Unknown => none.to_owned(),
        Under::Nowhere => "nowhere".to_owned(),
        Under::Range {
            low_hz,
            high_hz,
            curve_ends,
        } => {
            let (low, high) = (format_decimal(low_hz / 1e6, 0), format_hertz(high_hz));
            match curve_ends {
                (false, false) => format!("{low} to {high}"),
                (true, false) => format!("{low} (its end) to {high}"),
                (false, true) => format!("{low} to {high} (its end)"),
                (true, true) => format!("{low} to {high}, all of it"),
            }
        }
    }
}

/// Its rows.
#[must_use]
pub fn table_rows(measured: &CurveFigures, predicted: &CurveFigures) -> Vec<Vec<String>> {
    let both = |what: &str, cell: &dyn Fn(&CurveFigures, &str) -> String| {
        vec![
            what.to_owned(),
            cell(measured, not_measured()),
            cell(predicted, "not computed"),
        ]
    };
    let or = |text: Option<String>, none: &str| text.unwrap_or_else(|| none.to_owned());
    vec![
        both("At worst in the band", &|figures, none| {
            or(figures.worst_in_band.map(vswr), none)
        }),
        both("Best in or near the band", &|figures, none| {
            let best = figures
                .best
                .map(|(hz, there)| format!("{} at {}", vswr(there), format_hertz(hz)));
            or(best, none)
        }),
        both("Under 2", &|figures, none| under(figures.under_two, none)),
    ]
}

/// Figures where there is nothing to take off.
#[must_use]
pub const fn figure_measured() -> &'static str {
    "VSWR measured"
}

/// The same, predicted.
#[must_use]
pub const fn figure_predicted() -> &'static str {
    "VSWR predicted"
}

/// Where it is best, measured.
#[must_use]
pub const fn figure_best_measured() -> &'static str {
    "Best at, measured"
}

/// Where it is best, predicted.
#[must_use]
pub const fn figure_best_predicted() -> &'static str {
    "Best at, predicted"
}

/// Below a worst VSWR.
#[must_use]
pub const fn at_worst_in_band() -> &'static str {
    "at worst in the band"
}

/// Below a VSWR that does not reach over the band.
#[must_use]
pub fn where_measured(hz: f64) -> String {
    format!("at {}", format_hertz(hz))
}

/// Below a best frequency.
#[must_use]
pub fn vswr_there(there: f64) -> String {
    format!("VSWR {}", vswr(there))
}

/// How a comparison is worked out.
#[must_use]
pub const fn why_measured() -> (&'static str, &'static str, &'static str) {
    (
        "Read off the measurement: its largest value in the band, or where it is least in or near the band.",
        "As good as the readings. Shown only where the measurement reaches across the band.",
        "",
    )
}

/// How a prediction is worked out.
#[must_use]
pub const fn why_predicted() -> (&'static str, &'static str, &'static str) {
    (
        "The field computation of the can as designed, at the same frequencies as the Feed station.",
        "Within 0.004 of finite elements in the reflection; a real can differs by what its maker was off.",
        "",
    )
}

/// The Smith chart.
#[must_use]
pub const fn smith_title() -> &'static str {
    "On the Smith chart"
}

/// Saves the prediction.
#[must_use]
pub const fn save_predicted() -> &'static str {
    "Save the prediction as a file (.s1p)"
}

/// What a file of the prediction is called.
#[must_use]
pub const fn predicted_file() -> &'static str {
    "predicted"
}

/// Heads such a file.
#[must_use]
pub const fn predicted_comment() -> &'static str {
    "! Predicted by computation, not measured. Reference plane: inner wall of the can.\n"
}
