//! A picture of bars, each under its name and figure.

use tinwave_web::drawing::path_text::PathText;

use crate::sheet::{Anchor, Sheet, WIDTH};

/// One bar.
pub(super) struct Bar {
    /// What it is of.
    pub(super) name: String,
    /// Its length in any unit, not below zero; what is not finite is as long as the
    /// longest.
    pub(super) length: f64,
    /// Its figure.
    pub(super) figure: String,
}

const ROW: u32 = 34;
const TOP: u32 = 2;

/// The bars as markup, the longest as wide as the picture.
pub(super) fn bars(id: &str, title: &str, description: &str, rows: &[Bar]) -> String {
    let count = u32::try_from(rows.len()).unwrap_or(0);
    let height = f64::from(TOP + ROW * count);
    let mut sheet = Sheet::new(id, height, title, description);
    let finite = rows.iter().map(|bar| bar.length).filter(|l| l.is_finite());
    let longest = finite.fold(1e-9, f64::max);
    for (bar, place) in rows.iter().zip(0_u32..) {
        let top = TOP + ROW * place;
        let share = (bar.length / longest).clamp(0.0, 1.0);
        let mut path = PathText::new();
        let (upper, lower) = (f64::from(top + 17), f64::from(top + 28));
        // A line where there is nothing to see, so that no row looks forgotten.
        let right = (2.0 + share * (WIDTH - 4.0)).max(3.0);
        path.polygon(&[(2.0, upper), (right, upper), (right, lower), (2.0, lower)]);
        let base = f64::from(top + 12);
        sheet.text("pic-words", Anchor::Start, (2.0, base), &bar.name);
        let at = (WIDTH - 2.0, base);
        sheet.text("pic-figure", Anchor::End, at, &bar.figure);
        sheet.path("spread-bar", path.as_str());
    }
    sheet.finish()
}

#[cfg(test)]
mod tests {
    use super::{Bar, bars};

    #[test]
    fn the_longest_fills_the_picture_and_nothing_breaks_out() {
        let bar = |name: &str, length| Bar {
            name: name.to_owned(),
            length,
            figure: "<i>".to_owned(),
        };
        let svg = bars("t", "a", "b", &[bar("half", 1.0), bar("full", 2.0)]);
        assert!(svg.contains("d=\"M2 19L170 19L170 30L2 30Z\""), "{svg}");
        assert!(svg.contains("d=\"M2 53L338 53L338 64L2 64Z\""), "{svg}");
        assert!(!svg.contains("<i>"));
        let odd = bars(
            "t",
            "a",
            "b",
            &[bar("odd", f64::INFINITY), bar("no", f64::NAN)],
        );
        assert!(!odd.contains("NaN") && !odd.contains("inf"), "{odd}");
    }
}
