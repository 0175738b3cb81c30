//! Safe distance in front of a mouth that transmits, and the cautions of putting it up.

use std::f64::consts::PI;

use tinwave_core::radio_link::{
    DistanceHeldBy, Emitter, End, ExposureStandard, LinkError, LinkQuantity, Reflection,
    SafeDistance, safe_distance, wavelength_m,
};
use tinwave_web::entry::{LengthUnit, format_decimal};
use tinwave_web::words::{self, Occasion};

use super::link::Plan;
use super::typed;
use super::words::distance_at_least;
use crate::html::{escaped, result};
use crate::reply::Reply;
use crate::request::Request;

/// Added to a mast's length as distance from a mains line, m (common practice, no
/// source).
const BESIDE_LINES_M: f64 = 3.0;

/// Diameters that the mouth of an antenna which is only stated may have, m.
const STATED_MOUTHS_M: [f64; 2] = [0.05, 10.0];

/// Share of its mouth that a dish or horn makes use of (common practice, no source).
const APERTURE_EFFICIENCY: f64 = 0.5;

/// Diameter of the mouth that a gain needs, m: `λ/π sqrt(G/η)`, from `G = η (πD/λ)²`.
///
/// A mouth thought too small would end the near field too early, and its bound with it;
/// one thought too large would thin out the power in it.
fn mouth_of_gain_m(gain_dbi: f64, frequency_hz: f64) -> f64 {
    let [least, most] = STATED_MOUTHS_M;
    let gain = 10_f64.powf(gain_dbi / 10.0);
    let across = wavelength_m(frequency_hz) / PI * (gain / APERTURE_EFFICIENCY).sqrt();
    across.clamp(least, most)
}

pub(super) fn show(plan: &Plan, reply: &mut Reply) -> Result<(), LinkError> {
    let mut markup = String::new();
    let emitters = [emitter(plan, End::A)?, emitter(plan, End::B)?];
    match emitters {
        [Some(here), Some(far)] if here == far => push(&mut markup, plan, &here, "either end"),
        [here, far] => {
            for (emitter, name) in [(here, "this end"), (far, "the far end")] {
                if let Some(emitter) = emitter {
                    push(&mut markup, plan, &emitter, name);
                }
            }
        }
    }
    reply.place("safe", markup);
    reply.text("fall", &fall(plan));
    Ok(())
}

/// What an end sends; `None` where it only listens.
fn emitter(plan: &Plan, end: End) -> Result<Option<Emitter>, LinkError> {
    let one = plan.link.end(end);
    let Some(power_dbm) = one.transmit_power_dbm else {
        return Ok(None);
    };
    let at_antenna_dbm = power_dbm - one.feed_loss_db(plan.frequency_hz)?;
    let antenna = plan.antenna(end);
    Ok(Some(Emitter {
        power_w: 10_f64.powf((at_antenna_dbm - 30.0) / 10.0),
        gain_dbi: antenna.peak_gain_dbi,
        aperture_diameter_m: antenna
            .mouth_diameter_m
            .unwrap_or_else(|| mouth_of_gain_m(antenna.peak_gain_dbi, plan.frequency_hz)),
        frequency_hz: plan.frequency_hz,
    }))
}

fn push(markup: &mut String, plan: &Plan, emitter: &Emitter, name: &str) {
    for standard in ExposureStandard::ALL {
        let what = match standard {
            ExposureStandard::Icnirp2020 => "ICNIRP 2020, general public",
            ExposureStandard::Fcc1310 => "47 CFR 1.1310, uncontrolled",
        };
        let value = safe_distance(emitter, standard, Reflection::Complete).map_or_else(
            |error| not_given(&error).to_owned(),
            |safe| said(plan, &safe),
        );
        markup.push_str(&result(
            &["In front of ", name, ": ", what].concat(),
            &value,
        ));
    }
}

/// Why there is no distance.
const fn not_given(error: &LinkError) -> &'static str {
    match error {
        LinkError::OutOfRange {
            quantity: LinkQuantity::FrequencyHz,
            ..
        } => "not given at this frequency",
        _ => "not reckoned for so much power or gain: keep far away",
    }
}

/// Rounded up to whole centimetres or half inches, or to three figures from a metre on.
fn said(plan: &Plan, safe: &SafeDistance) -> String {
    let (per_metre, parts, symbol) = match plan.unit {
        LengthUnit::Millimetre => (100.0, 1.0, " cm"),
        LengthUnit::Inch => (1.0 / 0.0254, 2.0, " in"),
    };
    let up = (safe.distance_m * per_metre * parts).ceil() / parts;
    let length = if safe.distance_m < 1.0 {
        [&typed::short(up), symbol].concat()
    } else {
        distance_at_least(safe.distance_m, plan.unit)
    };
    let why = match safe.held_by {
        DistanceHeldBy::FarField => "far field",
        DistanceHeldBy::Aperture => "near field of the mouth",
        DistanceHeldBy::ReactiveField => "no closer, whatever the power",
    };
    let limit = format_decimal(safe.limit_w_m2, 1);
    ["at least ", &length, " (", &limit, " W/m²; ", why, ")"].concat()
}

/// How far from a mains line a mast of the entered height can stand.
fn fall(plan: &Plan) -> String {
    let tallest = plan.entries.here.height_m.max(plan.entries.far.height_m);
    let clear = distance_at_least(tallest + BESIDE_LINES_M, plan.unit);
    [
        "A mast falls as far as it is long. With the heights entered, no overhead line may be nearer than ",
        &clear,
        " to its foot, ladder and guys included (its length and 3 m; common practice, no source). The network operator and the local code may ask for more.",
    ]
    .concat()
}

/// The cautions of transmitting and of putting an antenna up.
pub(super) fn cautions(request: &Request, reply: &mut Reply) {
    let mut markup = String::new();
    for occasion in [Occasion::Power, Occasion::Mount] {
        for caution in words::cautions(occasion, request.design().can.metal) {
            for part in [
                "<li><strong>",
                &escaped(caution.headline),
                "</strong> ",
                &escaped(caution.text),
                "</li>",
            ] {
                markup.push_str(part);
            }
        }
    }
    reply.place("cautions", markup);
}

#[cfg(test)]
mod tests {
    use super::mouth_of_gain_m;

    #[test]
    fn a_dish_of_a_metre_has_its_gain() {
        // π · 1 m/0.1230 m squared is 652; half of that is 25.1 dBi.
        let across = mouth_of_gain_m(25.13, 2.437e9);
        assert!((across - 1.0).abs() < 0.005, "{across}");
        assert!((mouth_of_gain_m(-20.0, 2.437e9) - 0.05).abs() < 1e-12);
    }
}
