//! The can as the feed of a dish.

use std::f64::consts::PI;

use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::Design;
use tinwave_core::dish::{DishEfficiency, FOCAL_RATIOS, dish_gain_dbi};
use tinwave_core::outside::Outline;
use tinwave_core::radiation::CanBeam;
use tinwave_core::si::{SiDesign, hertz, metres};
use tinwave_web::entry::{LengthUnit, format_decimal, format_frequency, format_metres};

use super::beams::Beams;
use super::can_key::CanKey;
use super::entries::{length, plain_number};
use super::funnel_size::Funnel;
use crate::chart::{Axis, Chart, LineKind};
use crate::html::result;
use crate::reply::Reply;
use crate::request::Request;

/// Diameters that are taken, micrometres.
const DIAMETERS: (u32, u32) = (100_000, 30_000_000);

/// A dish.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Dish {
    diameter_m: f64,
    focal_ratio: f64,
}

/// Reads the dish; `None` where an entry is missing or wrong, which is said there.
fn read(request: &Request, reply: &mut Reply) -> Option<Dish> {
    let by_depth = request.get("horn-dish-by") == "depth";
    reply.show("ratio-field", !by_depth);
    reply.show("depth-field", by_depth);
    let diameter = length(request, reply, "horn-dish", DIAMETERS).number();
    let (least, most) = FOCAL_RATIOS;
    if by_depth {
        // Depth is D/(16 f/D).
        let um = f64::from(diameter?);
        let ends = (um / (16.0 * most), um / (16.0 * least));
        let range = (ends.0.ceil() as u32, ends.1.floor() as u32);
        let depth = length(request, reply, "horn-depth", range).number()?;
        return Some(Dish {
            diameter_m: metres(diameter?),
            focal_ratio: um / (16.0 * f64::from(depth.max(1))),
        });
    }
    let ratio = plain_number(request, reply, "horn-ratio").number();
    let ratio = f64::from(ratio?) / 1e3;
    if !(least..=most).contains(&ratio) {
        reply.wrong("horn-ratio", "This must be from 0.2 to 2.");
        return None;
    }
    Some(Dish {
        diameter_m: metres(diameter?),
        focal_ratio: ratio,
    })
}

fn percent(share: f64) -> String {
    [&format_decimal(100.0 * share, 0), " %"].concat()
}

/// A distance in the open, in metres or feet.
fn far_text(metres: f64, unit: LengthUnit) -> String {
    let (value, symbol) = match unit {
        LengthUnit::Millimetre => (metres, " m"),
        LengthUnit::Inch => (metres / 0.3048, " ft"),
    };
    [&format_decimal(value, 1), symbol].concat()
}

fn ratio_text(ratio: f64) -> String {
    format_decimal(ratio, 2)
}

/// Where the rim must stand, in words.
fn focus_says(request: &Request, dish: &Dish, lit: &DishEfficiency) -> String {
    let unit = request.unit;
    let off = format_metres(lit.focus_m.abs(), unit);
    let can = CanKey::of(request.design());
    let funnel = Funnel::of(request.design().mouth);
    let rim = if funnel.is_some() {
        "the can\u{2019}s rim, where the funnel begins,"
    } else {
        "the can\u{2019}s rim"
    };
    let place = if lit.focus_m.abs() < 5e-4 {
        ["Set ", rim, " at the dish\u{2019}s focus"].concat()
    } else if lit.focus_m > 0.0 {
        [
            "Set ",
            rim,
            " ",
            &off,
            " behind the dish\u{2019}s focus, farther from the dish: the focus lies in front of the can",
        ]
        .concat()
    } else {
        [
            "Set ",
            rim,
            " ",
            &off,
            " inside the dish\u{2019}s focus, nearer to the dish: the focus lies within the can",
        ]
        .concat()
    };
    let focal = dish.focal_ratio * dish.diameter_m;
    let from_dish = focal + lit.focus_m;
    let mut text = [
        &place,
        ". From the middle of the dish: focus ",
        &format_metres(focal, unit),
        ", rim ",
        &format_metres(from_dish, unit),
    ]
    .concat();
    if let Some(funnel) = funnel {
        text.push_str(", mouth of the funnel ");
        text.push_str(&format_metres(from_dish - funnel.length_m(&can), unit));
    }
    if funnel.is_some_and(|funnel| funnel.length_m(&can) > from_dish) {
        text.push_str(
            ". This funnel is longer than the way to the dish: it can\u{2019}t stand there",
        );
    }
    text.push_str(". Slide it along the axis for the strongest signal before you fix it.");
    text
}

fn results(dish: &Dish, lit: &DishEfficiency, beams: &Beams, unit: LengthUnit) -> Option<String> {
    let (khz, beam) = beams.centre()?;
    let wavelength = SPEED_OF_LIGHT / hertz(*khz);
    let best = &beams.best_dish;
    let gain = dish_gain_dbi(dish.diameter_m, wavelength, lit.total);
    let with_losses = beam.realised_gain_dbi.map_or_else(
        || "not computed".to_owned(),
        |realised| {
            let lost = beam.figures.directivity_dbi - realised;
            [&format_decimal(gain - lost, 1), " dBi"].concat()
        },
    );
    let far = 2.0 * dish.diameter_m * dish.diameter_m / wavelength;
    let decibels = |value: f64| [&format_decimal(value, 1), " dB"].concat();
    let edge = [
        &format_decimal(lit.edge_angle_rad * (180.0 / PI), 0),
        "\u{b0} off the feed\u{2019}s axis",
    ]
    .concat();
    let best_text = [
        &ratio_text(best.focal_ratio),
        ", depth ",
        &format_metres(dish.diameter_m / (16.0 * best.focal_ratio), unit),
    ]
    .concat();
    let rows = [
        (
            "Power that meets the dish (spillover)",
            percent(lit.spillover),
        ),
        (
            "Evenness of the light (illumination)",
            percent(lit.illumination),
        ),
        ("Left by uneven phase", percent(lit.phase)),
        ("Efficiency in all", percent(lit.total)),
        ("Gain of the dish, band centre", {
            [&format_decimal(gain, 1), " dBi"].concat()
        }),
        ("The same with match and wall loss", with_losses),
        ("Edge of the dish seen from the focus", edge),
        (
            "Level towards the edge (edge taper)",
            decibels(lit.edge_taper_db),
        ),
        (
            "The same on the dish, the edge being farther",
            decibels(lit.edge_taper_on_dish_db),
        ),
        ("Best f/D for this feed", best_text),
        ("Efficiency at that f/D", percent(best.total)),
        (
            "Beam formed from (far field, 2 D\u{b2}/\u{3bb})",
            far_text(far, unit),
        ),
    ];
    let markup = rows.iter().map(|(what, value)| result(what, value));
    Some(markup.collect())
}

fn chart(dish: Option<&Dish>, beams: &Beams) -> String {
    let line = |of: fn(&DishEfficiency) -> f64| -> Vec<(f64, f64)> {
        let points = beams.dishes.iter();
        points
            .map(|lit| (lit.focal_ratio, 100.0 * of(lit)))
            .collect()
    };
    let total = line(|lit| lit.total);
    let best = &beams.best_dish;
    let description = [
        "Best at f/D ",
        &ratio_text(best.focal_ratio),
        ": ",
        &percent(best.total),
        ". The power that meets the dish falls as f/D grows, the evenness rises.",
    ]
    .concat();
    let mut lines = vec![
        (LineKind::Other, line(|lit| lit.illumination)),
        (LineKind::Limit, line(|lit| lit.spillover)),
        (LineKind::Main, total),
    ];
    let high = 1.2;
    if let Some(dish) = dish.filter(|dish| dish.focal_ratio <= high) {
        let ratio = dish.focal_ratio;
        lines.push((LineKind::Limit, vec![(ratio, 0.0), (ratio, 100.0)]));
    }
    let chart = Chart {
        id: "horn-dish-efficiency",
        title: "Efficiency of a dish with this feed against f/D".to_owned(),
        description,
        x: Axis {
            low: 0.2,
            high,
            title: "f/D (dotted upright: your dish)".to_owned(),
        },
        y: Axis {
            low: 0.0,
            high: 100.0,
            title: "%: full all, dashed evenness, dotted caught".to_owned(),
        },
        lines,
        shaded: None,
        choices: Vec::new(),
    };
    chart.to_svg()
}

/// Share of the dish's area behind the can and what stands at its mouth.
fn shaded(design: &Design, dish: &Dish) -> f64 {
    let outline = Outline::new(design, &SiDesign::new(design));
    let widest = outline.map_or(0.0, |outline| 2.0 * outline.widest_m());
    (widest / dish.diameter_m).powi(2).min(1.0)
}

fn says(lit: &DishEfficiency, gain_dbi: f64, beam: &CanBeam, khz: u32, dish: &Dish) -> String {
    let small = dish.diameter_m * hertz(khz) < 5.0 * SPEED_OF_LIGHT;
    let lean = beam.figures.e_peak_angle_deg.abs();
    let mut text = [
        "At ",
        &format_frequency(khz),
        " the dish has about ",
        &format_decimal(gain_dbi, 1),
        " dBi, ",
        &percent(lit.total),
        " of an evenly lit one.",
    ]
    .concat();
    if small {
        text.push_str(" The dish is narrower than five wavelengths: take this as a rough figure.");
    }
    if lean >= 3.0 {
        text.push_str(" The feed\u{2019}s beam leans; the mean of both sides is taken.");
    }
    text
}

/// Shows the dish, or says what is missing.
pub(super) fn show(request: &Request, beams: Option<&Beams>, reply: &mut Reply) {
    let dish = read(request, reply);
    let centre = beams.and_then(Beams::centre);
    let nothing = |reply: &mut Reply, why: &str| {
        reply.text("dish-says", why);
        reply.place("dish-results", String::new());
        reply.text("focus-says", "");
    };
    let (Some(beams), Some((khz, beam))) = (beams, centre) else {
        nothing(reply, super::band_gain::BEYOND);
        reply.place("dish-chart", String::new());
        return;
    };
    reply.place("dish-chart", chart(dish.as_ref(), beams));
    let Some(dish) = dish else {
        nothing(reply, "Give the diameter and the depth or f/D of the dish.");
        return;
    };
    let lit = beams.feed.efficiency(dish.focal_ratio);
    let wavelength = SPEED_OF_LIGHT / hertz(*khz);
    let gain = dish_gain_dbi(dish.diameter_m, wavelength, lit.total);
    let mut sentence = says(&lit, gain, beam, *khz, &dish);
    let shaded = shaded(request.design(), &dish);
    if shaded >= 0.005 {
        sentence.push_str(" What stands at the focus shades ");
        sentence.push_str(&percent(shaded));
        sentence.push_str(" of the dish\u{2019}s area, which is not counted.");
    }
    reply.text("dish-says", &sentence);
    let markup = results(&dish, &lit, beams, request.unit);
    reply.place("dish-results", markup.unwrap_or_default());
    reply.text("focus-says", &focus_says(request, &dish, &lit));
}
