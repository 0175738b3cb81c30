//! The match in words: for readers who cannot see the charts, and beside them.

use tinwave_core::complex::Complex;
use tinwave_core::design::Band;
use tinwave_core::match_band::{FrequencyRange, MatchSummary, SweepPoint};
use tinwave_core::reflection::{PointMatch, return_loss_db};

use super::match_rows::interpolate;
use super::match_scale::best_vswr;
use tinwave_maker::entry::{format_decimal, format_frequency};

/// A VSWR for people: two decimals, above 10 only that it is.
#[must_use]
pub fn vswr_text(vswr: f64) -> String {
    if vswr > 10.0 {
        "over 10".into()
    } else {
        format_decimal(vswr, 2)
    }
}

/// An impedance, ohm.
#[must_use]
pub fn impedance_text(ohm: Complex) -> String {
    // Spaces that do not break, so that an impedance stays on one line.
    let sign = if ohm.im < 0.0 {
        "\u{a0}−\u{a0}j"
    } else {
        "\u{a0}+\u{a0}j"
    };
    [
        &format_decimal(ohm.re, 0),
        sign,
        &format_decimal(ohm.im.abs(), 0),
        "\u{a0}Ω",
    ]
    .concat()
}

/// One point of the match: what a cursor reads.
#[must_use]
pub fn point_text(khz: u32, at: Option<PointMatch>) -> String {
    let Some(at) = at else {
        return [&format_frequency(khz), ": not computed"].concat();
    };
    [
        &format_frequency(khz),
        ": VSWR ",
        &vswr_text(at.vswr),
        ", return loss ",
        &format_decimal(return_loss_db(at.reflection.abs()), 1),
        " dB, ",
        &impedance_text(at.impedance_ohm),
    ]
    .concat()
}

fn range_text(range: Option<FrequencyRange>) -> String {
    match range {
        None => "nowhere near the band's centre".into(),
        Some((low, high)) => {
            let low = format_frequency(low);
            let low = low.strip_suffix(" MHz").unwrap_or(&low);
            ["from ", low, " to ", &format_frequency(high)].concat()
        }
    }
}

/// The match chart in words.
#[must_use]
pub fn match_summary_text(points: &[SweepPoint], summary: Option<&MatchSummary>) -> String {
    let (Some(summary), Some((best_khz, best))) = (summary, best_vswr(points)) else {
        return "The match is not computed for this design.".into();
    };
    [
        "At worst VSWR ",
        &vswr_text(summary.worst_vswr_in_band),
        " in the band, at ",
        &format_frequency(summary.worst_khz),
        "; at best ",
        &vswr_text(best),
        ", at ",
        &format_frequency(best_khz),
        ". At or under 1.5 ",
        &range_text(summary.vswr_1_5_khz),
        "; under 2 ",
        &range_text(summary.vswr_2_khz),
        ".",
    ]
    .concat()
}

/// The Smith chart in words.
#[must_use]
pub fn locus_text(points: &[SweepPoint], band: Band) -> String {
    let edge = |khz| interpolate(points, khz).map(|at| (khz, at.impedance_ohm));
    let ends = [band.low_khz, band.centre_khz(), band.high_khz].map(edge);
    let [Some(low), Some(centre), Some(high)] = ends else {
        return "The impedance is not computed over the whole band.".into();
    };
    let say = |(khz, ohm): (u32, Complex)| {
        [&impedance_text(ohm), " at ", &format_frequency(khz)].concat()
    };
    [
        "Impedance at the wall: ",
        &say(low),
        ", ",
        &say(centre),
        ", ",
        &say(high),
        ".",
    ]
    .concat()
}

#[cfg(test)]
mod tests {
    use super::{impedance_text, locus_text, match_summary_text, point_text, vswr_text};
    use tinwave_core::complex::Complex;
    use tinwave_core::design::Band;
    use tinwave_core::match_band::{MatchSummary, SweepPoint};
    use tinwave_core::reflection::PointMatch;

    /// 100 ohm on a 50-ohm line: VSWR 2, return loss 9.54 dB.
    fn hundred_ohm() -> PointMatch {
        PointMatch::from_admittance(Complex::real(0.01), 50.0)
    }

    #[test]
    fn a_point_reads_as_an_analyser_would_show_it() {
        assert_eq!(
            point_text(2_437_000, Some(hundred_ohm())),
            "2437 MHz: VSWR 2.00, return loss 9.5 dB, 100\u{a0}+\u{a0}j0\u{a0}Ω"
        );
        assert_eq!(point_text(2_437_000, None), "2437 MHz: not computed");
        assert_eq!(vswr_text(10.4), "over 10");
        assert_eq!(
            impedance_text(Complex::new(41.2, -12.6)),
            "41\u{a0}−\u{a0}j13\u{a0}Ω"
        );
    }

    #[test]
    fn the_summary_names_worst_best_and_ranges() {
        let points = [2_400_000, 2_450_000].map(|frequency_khz| SweepPoint {
            frequency_khz,
            at: Some(hundred_ohm()),
        });
        let summary = MatchSummary {
            worst_vswr_in_band: 2.0,
            worst_khz: 2_450_000,
            vswr_1_5_khz: None,
            vswr_2_khz: Some((2_400_000, 2_450_000)),
        };
        assert_eq!(
            match_summary_text(&points, Some(&summary)),
            "At worst VSWR 2.00 in the band, at 2450 MHz; at best 2.00, at 2400 MHz. \
             At or under 1.5 nowhere near the band's centre; under 2 from 2400 to 2450 MHz."
        );
        assert!(match_summary_text(&[], None).contains("not computed"));
        let band = Band {
            low_khz: 2_400_000,
            high_khz: 2_450_000,
        };
        assert!(locus_text(&points, band).contains("100\u{a0}+\u{a0}j0\u{a0}Ω at 2425 MHz"));
    }
}
