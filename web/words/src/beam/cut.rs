//! Any cut of the pattern.

use tinwave_maker::entry::format_decimal;

use crate::figures::{degrees, trimmed, whole_db};

/// Name of the fold of any cut; label and help of its angle.
#[must_use]
pub const fn cut_entry() -> (&'static str, (&'static str, &'static str)) {
    (
        "Any cut of the pattern",
        (
            "Turned from the wire",
            "0° is along the wire (E plane), 90° across it (H plane).",
        ),
    )
}

/// The chart of a cut: title, note, axes, curves.
#[must_use]
pub const fn cut_chart() -> [&'static str; 6] {
    [
        "Directivity in this cut",
        "dBi over the angle from straight ahead",
        "Angle",
        "Directivity",
        "wanted",
        "crossed",
    ]
}

/// What a curve has where it lies below the chart.
#[must_use]
pub fn below_the_chart(lowest_dbi: f64) -> String {
    format!("below {} dBi", trimmed(lowest_dbi, 1))
}

/// A cut in one line: peak, width, crossed polarisation (dB below and where).
#[must_use]
pub fn cut_found(
    azimuth_deg: f64,
    (peak_dbi, peak_deg): (f64, f64),
    width_deg: Option<f64>,
    crossed: Option<(f64, f64)>,
) -> String {
    let turned = format!("{}°", trimmed(azimuth_deg, 1));
    let place = match azimuth_deg.rem_euclid(180.0) {
        0.0 => format!("{turned}, along the wire"),
        90.0 => format!("{turned}, across the wire"),
        _ => turned,
    };
    let width = width_deg.map_or_else(
        || "never falls to half".to_owned(),
        |width| format!("{} wide at half power", degrees(width)),
    );
    let crossed = crossed.map_or_else(
        || "no crossed polarisation ahead".to_owned(),
        |(below, at)| {
            format!(
                "crossed polarisation ahead {} or more below, most at {}°",
                whole_db(below),
                trimmed(at, 0)
            )
        },
    );
    let peak = format!(
        "{} dBi at {}°",
        format_decimal(peak_dbi, 1),
        trimmed(peak_deg, 0)
    );
    format!("{place}: {peak}, {width}; {crossed}.")
}

/// The fold's line.
#[must_use]
pub fn cut_summary(azimuth_deg: f64) -> String {
    format!(
        "at {}° from the wire, with crossed polarisation",
        trimmed(azimuth_deg, 1)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cut_tells_its_plane() {
        let said = cut_found(90.0, (12.6, -0.1), Some(46.6), Some((36.8, 40.0)));
        assert_eq!(
            said,
            "90°, across the wire: 12.6 dBi at 0°, 47° wide at half power; crossed polarisation ahead 37 dB or more below, most at 40°."
        );
        assert!(cut_found(-180.0, (8.0, 0.0), None, None).contains("along the wire"));
    }
}
