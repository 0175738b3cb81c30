//! The marks of a Smith chart.

use std::f64::consts::FRAC_1_SQRT_2;

use tinwave_core::complex::Complex;
use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;

use super::fixed_point::push_integer;
use super::match_rows::{nearest, within_band};
use super::scene::{Mark, Scene};
use super::smith_coordinates::{
    CENTRE, LINES, SIDE, grid, locus, note_place, place, resistance_label_x, rim, vswr_radius,
};

/// What a Smith chart shows.
#[derive(Clone, Copy, Debug)]
pub struct SmithPlot<'a> {
    /// The design's sweep.
    pub sweep: &'a [SweepPoint],
    /// A second line; may be empty.
    pub compare: &'a [SweepPoint],
    /// The band: the thick part.
    pub band: Band,
    /// Reference impedance, milliohm.
    pub reference_milliohm: u32,
    /// Frequency that is read off, kHz.
    pub cursor_khz: Option<u32>,
}

/// Standing-wave ratios that have a circle.
const CIRCLES: [(f64, &str); 2] = [(1.5, "1.5"), (2.0, "2")];

impl SmithPlot<'_> {
    /// The chart's marks: the same ones for every sweep.
    #[must_use]
    pub fn scene(&self) -> Scene {
        let mut marks = vec![Mark::path("pic-grid", grid()), Mark::path("pic-rim", rim())];
        marks.extend(LINES.map(|r| self.resistance(r)));
        for (vswr, name) in CIRCLES {
            let radius = vswr_radius(vswr);
            let corner = CENTRE - FRAC_1_SQRT_2 * (radius + 2.0);
            marks.push(Mark::circle("pic-limit", (CENTRE, CENTRE), radius));
            marks.push(Mark::text(
                "pic-words pic-small",
                "end",
                (corner, corner),
                name.into(),
            ));
        }
        let in_band = within_band(self.sweep, self.band);
        marks.push(Mark::path("pic-ghost", locus(self.compare)));
        marks.push(Mark::path("pic-locus", locus(self.sweep)));
        marks.push(Mark::path("pic-locus-band", locus(&in_band)));
        marks.extend(ends(&in_band));
        marks.push(self.cursor());
        Scene {
            size: (SIDE, SIDE),
            id: "pic-smith",
            title: "Impedance on a Smith chart",
            description: super::match_words::locus_text(self.sweep, self.band),
            hatch: None,
            marks,
        }
    }

    /// A resistance on the real axis, ohm.
    fn resistance(&self, r: f64) -> Mark {
        let ohm = f64::from(self.reference_milliohm) / 1e3 * r;
        let mut text = String::new();
        // At most 5 times 500 ohm.
        push_integer(&mut text, ohm.round() as u32);
        text.push_str(if r == 1.0 { " Ω" } else { "" });
        let at = (resistance_label_x(r) + 3.0, CENTRE - 4.0);
        Mark::text("pic-words pic-small", "start", at, text)
    }

    fn cursor(&self) -> Mark {
        let at = self
            .cursor_khz
            .and_then(|khz| nearest(self.sweep, khz)?.at)
            .map(|at| place(at.reflection));
        match at {
            Some(at) => Mark::circle("pic-cursor-mark", at, 6.0),
            None => Mark::circle("pic-cursor-mark", (CENTRE, CENTRE), 0.0),
        }
    }
}

/// Marks and words at both edges of the band.
fn ends(in_band: &[SweepPoint]) -> [Mark; 4] {
    let reflection = |point: Option<&SweepPoint>| Some(point?.at?.reflection);
    let (Some(low), Some(high)) = (reflection(in_band.first()), reflection(in_band.last())) else {
        let gone = Mark::circle("pic-end", (CENTRE, CENTRE), 0.0);
        return [gone.clone(), gone, Mark::no_text(), Mark::no_text()];
    };
    let word = |end: Complex, other: Complex, text: &str| {
        Mark::text("pic-figure", "middle", note_place(end, other), text.into())
    };
    [
        Mark::circle("pic-end", place(low), 4.0),
        Mark::circle("pic-end pic-end-high", place(high), 4.0),
        word(low, high, "low"),
        word(high, low, "high"),
    ]
}

#[cfg(test)]
mod tests {
    use super::SmithPlot;
    use tinwave_core::complex::Complex;
    use tinwave_core::design::Band;
    use tinwave_core::match_band::SweepPoint;
    use tinwave_core::reflection::PointMatch;

    #[test]
    fn every_sweep_has_the_same_marks() {
        let points: Vec<SweepPoint> = [2_400_000, 2_490_000]
            .into_iter()
            .map(|frequency_khz| SweepPoint {
                frequency_khz,
                at: Some(PointMatch::from_admittance(Complex::real(0.01), 50.0)),
            })
            .collect();
        let plot = |sweep| SmithPlot {
            sweep,
            compare: &[],
            band: Band {
                low_khz: 2_401_000,
                high_khz: 2_483_500,
            },
            reference_milliohm: 50_000,
            cursor_khz: Some(2_440_000),
        };
        let tags = |sweep| {
            let scene = plot(sweep).scene();
            let tags = scene.marks.iter().map(|m| (m.tag, m.attributes.len()));
            tags.collect::<Vec<_>>()
        };
        assert_eq!(tags(&points), tags(&[]));
        // 100 ohm on the real axis is where the circle of 2 crosses it.
        let svg = plot(&points).scene().to_svg();
        assert!(svg.contains(">100</text>") && svg.contains(">50 Ω</text>"));
    }
}
