//! What each dimension does within its tolerance: bars and a table.

use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::{Sensitivity, sensitivities};
use tinwave_web::entry::{LengthUnit, format_decimal};

use super::bars::{Bar, bars};
use super::words;
use crate::html::row;
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;

/// Below this rise of the worst VSWR nothing is worth a word.
const NOTICEABLE: f64 = 0.01;

/// What each dimension does, the one that costs most first.
pub(super) struct Ranking {
    /// Largest VSWR over the band as drawn.
    pub(super) as_drawn: f64,
    /// Dimensions that could be computed within their tolerance.
    pub(super) ranked: Vec<Sensitivity>,
    /// Those that could not: the can is impossible at an end.
    impossible: Vec<(Dimension, f64)>,
}

/// Larger of the two ends.
fn worst(of: &Sensitivity) -> f64 {
    of.worst_vswr.0.max(of.worst_vswr.1)
}

impl Ranking {
    /// Of a design; `None` where it is not computed.
    pub(super) fn of(request: &Request, tolerances: &[(Dimension, f64)]) -> Option<Self> {
        // No change at all: the can as drawn.
        let mut changes = vec![(Dimension::OpenLength, 0.0)];
        changes.extend_from_slice(tolerances);
        let design = request.design();
        let mut ranked = sensitivities(design, outside_of(design).as_ref(), &changes).ok()?;
        if ranked.first().is_none_or(|first| first.change != 0.0) {
            return None;
        }
        let as_drawn = ranked.remove(0).worst_vswr.0;
        ranked.sort_by(|a, b| worst(b).total_cmp(&worst(a)));
        let is_ranked = |wanted: &Dimension| ranked.iter().any(|one| one.dimension == *wanted);
        let impossible = tolerances.iter().filter(|(d, _)| !is_ranked(d)).copied();
        Some(Self {
            as_drawn,
            impossible: impossible.collect(),
            ranked,
        })
    }

    fn rise(&self, of: &Sensitivity) -> f64 {
        (worst(of) - self.as_drawn).max(0.0)
    }

    /// The dimension that deserves the care, if any does.
    pub(super) fn first(&self) -> Option<&Sensitivity> {
        let first = self.ranked.first()?;
        (self.rise(first) >= NOTICEABLE).then_some(first)
    }

    fn says(&self, unit: LengthUnit) -> String {
        if let Some((dimension, size)) = self.impossible.first() {
            return [
                "With ",
                &words::tolerance(*dimension, *size, unit),
                " on the ",
                words::name(*dimension),
                " the can could become impossible to build or compute. State less.",
            ]
            .concat();
        }
        let Some(first) = self.first() else {
            return [
                "None of these deviations alone moves the worst VSWR (",
                &words::vswr(self.as_drawn),
                " as drawn) noticeably.",
            ]
            .concat();
        };
        [
            "The ",
            words::name(first.dimension),
            " deserves the care: within ",
            &words::tolerance(first.dimension, first.change, unit),
            " it alone can raise the worst VSWR over the band from ",
            &words::vswr(self.as_drawn),
            " to ",
            &words::vswr(worst(first)),
            ".",
        ]
        .concat()
    }

    fn picture(&self, unit: LengthUnit) -> String {
        let rows: Vec<Bar> = self
            .ranked
            .iter()
            .map(|one| Bar {
                name: [
                    &words::name_as_head(one.dimension),
                    ", ",
                    &words::tolerance(one.dimension, one.change, unit),
                ]
                .concat(),
                length: self.rise(one),
                figure: ["VSWR ", &words::vswr(worst(one))].concat(),
            })
            .collect();
        let as_drawn = words::vswr(self.as_drawn);
        let description: Vec<String> = rows
            .iter()
            .map(|bar| [&bar.name, ": ", &bar.figure].concat())
            .collect();
        let title = ["Worst VSWR within each tolerance; as drawn ", &as_drawn].concat();
        bars(
            "spread-bars",
            &title,
            &[&description.join("; "), "."].concat(),
            &rows,
        )
    }

    fn table(&self, unit: LengthUnit) -> String {
        let known = self.ranked.iter().map(|one| {
            row(&[
                &words::name_as_head(one.dimension),
                &words::tolerance(one.dimension, one.change, unit),
                &words::vswr(one.worst_vswr.0),
                &words::vswr(one.worst_vswr.1),
                &shift(one, unit),
            ])
        });
        let unknown = self.impossible.iter().map(|(dimension, size)| {
            let size = words::tolerance(*dimension, *size, unit);
            let head = words::name_as_head(*dimension);
            row(&[&head, &size, "\u{2013}", "\u{2013}", "not computed"])
        });
        known.chain(unknown).collect()
    }
}

/// How far the frequency of the best match moves, per what a maker can set.
fn shift(of: &Sensitivity, unit: LengthUnit) -> String {
    let Some(slope) = of.best_slope_hz else {
        return "best match lies beyond the range looked at".to_owned();
    };
    let (step, per) = match (of.dimension, unit) {
        (Dimension::ShuntCapacitance, _) => (1e-13, " MHz per 0.1 pF"),
        (_, LengthUnit::Millimetre) => (1e-3, " MHz per mm"),
        (_, LengthUnit::Inch) => (0.254e-3, " MHz per 0.01 in"),
    };
    let mhz = format_decimal(slope * step * 1e-6, 1);
    let sign = if slope > 0.0 { "+" } else { "" };
    [sign, &mhz, per].concat()
}

/// Shows it, or that there is none.
pub(super) fn show(request: &Request, ranking: Option<&Ranking>, reply: &mut Reply) {
    let unit = request.unit;
    let says = ranking.map_or_else(
        || {
            "This can isn\u{2019}t computed as it stands: see the verdict, and the fields above."
                .to_owned()
        },
        |ranking| ranking.says(unit),
    );
    reply.text("ranking-says", &says);
    let picture = ranking.map_or_else(String::new, |ranking| ranking.picture(unit));
    reply.place("ranking-picture", picture);
    reply.show("ranking-table", ranking.is_some());
    let rows = ranking.map_or_else(String::new, |ranking| ranking.table(unit));
    reply.place("ranking-rows", rows);
}
