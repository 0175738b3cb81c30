//! The trade of a funnel: gain against length and gain against mouth.

use tinwave_core::si::metres;
use tinwave_web::entry::{LengthUnit, format_decimal, format_metres};

use super::can_key::CanKey;
use super::found::FunnelFound;
use super::funnel::sizes;
use super::funnel_size::{Funnel, Limits};
use crate::chart::{Chart, Choice, LineKind, axis_around};
use crate::reply::Reply;
use crate::request::Request;

/// Points nearer to the best one than this share of the axis make room for it.
const ROOM: f64 = 0.08;

fn in_unit(metres: f64, unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Millimetre => metres * 1e3,
        LengthUnit::Inch => metres / 0.0254,
    }
}

/// One of the two charts.
struct Trade<'a> {
    request: &'a Request,
    can: &'a CanKey,
    best: Option<&'a Funnel>,
    id: &'static str,
    title: &'static str,
    along: &'static str,
    place: fn(&Funnel, &CanKey) -> f64,
    /// Up to where the limits reach, m.
    most_m: Option<f64>,
}

impl Trade<'_> {
    fn choice(&self, funnel: &Funnel, at: (f64, f64)) -> Choice {
        let how = if funnel.is_solved { "" } else { "about " };
        let name = [
            how,
            &format_decimal(funnel.gain_dbi, 1),
            " dBi: ",
            &sizes(funnel, self.can, self.request.unit),
            ": put it into the design",
        ];
        Choice {
            at,
            act: funnel.act(),
            name: name.concat(),
            chosen: self.request.design().mouth == funnel.mouth(),
        }
    }

    fn at(&self, funnel: &Funnel) -> (f64, f64) {
        let along = (self.place)(funnel, self.can);
        (in_unit(along, self.request.unit), funnel.gain_dbi)
    }

    /// The points in order, the best among them.
    fn points(&self, funnels: &[Funnel]) -> Vec<Funnel> {
        let mut points = funnels.to_vec();
        if let Some(best) = self.best {
            let place = |funnel: &Funnel| (self.place)(funnel, self.can);
            let longest = points.iter().map(place).fold(place(best), f64::max);
            points.retain(|point| (place(point) - place(best)).abs() > ROOM * longest);
            points.push(*best);
            points.sort_by(|a, b| place(a).total_cmp(&place(b)));
        }
        points
    }

    fn svg(&self, funnels: &[Funnel]) -> String {
        let points = self.points(funnels);
        let Some(top) = points
            .iter()
            .max_by(|a, b| a.gain_dbi.total_cmp(&b.gain_dbi))
        else {
            return String::new();
        };
        let unit = self.request.unit;
        let line: Vec<_> = points.iter().map(|point| self.at(point)).collect();
        let least = in_unit(0.05, unit);
        let along = axis_around(
            line.iter().map(|at| at.0).chain([0.0]),
            least,
            [self.along, ", ", unit.symbol()].concat(),
        );
        let solved = points.iter().all(|point| point.is_solved);
        let (kind, words) = if solved {
            (LineKind::Main, "dBi, computed")
        } else {
            (LineKind::Other, "dBi, dashed: not all computed yet")
        };
        let most = self.most_m.map(|metres| in_unit(metres, unit));
        let chart = Chart {
            id: self.id,
            title: self.title.to_owned(),
            description: [
                "Highest: ",
                &format_decimal(top.gain_dbi, 1),
                " dBi, ",
                &sizes(top, self.can, unit),
                ".",
            ]
            .concat(),
            shaded: most.map(|most| (along.low, most.min(along.high))),
            x: along,
            y: axis_around(line.iter().map(|at| at.1), 2.0, words.to_owned()),
            lines: vec![(kind, line.clone())],
            choices: points
                .iter()
                .zip(line)
                .map(|(point, at)| self.choice(point, at))
                .collect(),
        };
        chart.to_svg()
    }
}

fn says(request: &Request, can: &CanKey, best: Option<&Funnel>) -> String {
    let at_length = best.map_or_else(String::new, |best| {
        let length = format_metres(best.length_m(can), request.unit);
        [" The second keeps the length of ", &length, "."].concat()
    });
    [
        "Each point is a funnel: press one to put it into the design. In the first chart each has the best mouth for its length within mouth and sheet.",
        &at_length,
        " Shaded: within the limit of the axis.",
    ]
    .concat()
}

/// Shows both charts.
pub(super) fn show(
    request: &Request,
    reply: &mut Reply,
    can: &CanKey,
    limits: &Limits,
    best: Option<&Funnel>,
    found: &FunnelFound,
) {
    let by_length = Trade {
        request,
        can,
        best,
        id: "horn-by-length",
        title: "Gain against the funnel\u{2019}s length",
        along: "length",
        place: Funnel::length_m,
        most_m: limits.length_um.map(metres),
    };
    let by_mouth = Trade {
        id: "horn-by-mouth",
        title: "Gain against the funnel\u{2019}s mouth",
        along: "mouth",
        place: |funnel, _| funnel.mouth_m(),
        most_m: limits.mouth_um.map(metres),
        ..by_length
    };
    reply.place("length-chart", by_length.svg(&found.by_length));
    reply.place("mouth-chart", by_mouth.svg(&found.by_mouth));
    reply.text("trade-says", &says(request, can, best));
}
