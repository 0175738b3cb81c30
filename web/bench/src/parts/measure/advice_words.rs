//! What to do, in words.

use tinwave_core::diagnosis::{Advice, Remedy};
use tinwave_web::entry::{LengthUnit, format_decimal, format_length};

use super::cut_field::settable;
use super::expected;
use crate::html::escaped;
use crate::request::Request;

/// The list's items, the least work first.
pub(super) fn list(request: &Request, advice: &Advice) -> String {
    let unit = request.unit;
    let mut markup = String::new();
    let now = advice.worst_vswr_now.map_or_else(
        || "The can as it most likely is can\u{2019}t be computed.".to_owned(),
        |now| {
            let vswr = format_decimal(now, 2);
            [
                "As it most likely is now, the can has VSWR ",
                &vswr,
                " at worst in the band.",
            ]
            .concat()
        },
    );
    push(&mut markup, &now, None);
    for (index, (remedy, vswr)) in advice.remedies.iter().enumerate() {
        let button = button_of(remedy).map(|text| (index, text));
        let mut said = sentence(remedy, *vswr, unit);
        if let Remedy::Trim { whole_um, safe_um } = remedy
            && safe_um < whole_um
            && let Some(step) =
                expected::after_cut(request, &advice.as_built, settable(*safe_um, unit))
        {
            said.push_str(" After the first step alone: ");
            said.push_str(&format_decimal(step, 2));
            said.push('.');
        }
        push(&mut markup, &said, button);
    }
    markup
}

fn push(markup: &mut String, text: &str, button: Option<(usize, &str)>) {
    markup.push_str("<li>");
    markup.push_str(&escaped(text));
    if let Some((index, label)) = button {
        let index = index.to_string();
        for part in [
            " <button type=\"button\" data-act=\"remedy ",
            &index,
            "\">",
            label,
            "</button>",
        ] {
            markup.push_str(part);
        }
    }
    markup.push_str("</li>");
}

/// What is pressed when it is done; a cut has its own field.
const fn button_of(remedy: &Remedy) -> Option<&'static str> {
    match remedy {
        Remedy::Lengthen { .. } => Some("I have put the longer wire in"),
        Remedy::Move { .. } => Some("I have moved the wire"),
        Remedy::AddScrew(_) => Some("I have put the screw in"),
        _ => None,
    }
}

fn sentence(remedy: &Remedy, vswr: f64, unit: LengthUnit) -> String {
    let length = |um: u32| format_length(um, unit);
    let partly = matches!(remedy, Remedy::Trim { whole_um, safe_um } if whole_um != safe_um);
    let after = [
        if partly {
            " After the whole cut VSWR "
        } else {
            " Then VSWR "
        },
        &format_decimal(vswr, 2),
        " at worst is to be expected.",
    ]
    .concat();
    let todo = match remedy {
        Remedy::Leave => {
            return "Leave it: no cut, screw or other hole would better it by much.".to_owned();
        }
        Remedy::Trim { whole_um, safe_um } if whole_um == safe_um => {
            ["Cut ", &length(*whole_um), " off the wire."].concat()
        }
        Remedy::Trim { whole_um, safe_um } => [
            "About ",
            &length(*whole_um),
            " should come off the wire. Cut only ",
            &length(settable(*safe_um, unit)),
            " now, then measure again: wire can\u{2019}t be put back.",
        ]
        .concat(),
        Remedy::Lengthen { by_um } => [
            "The wire is too short: solder in one that is ",
            &length(*by_um),
            " longer.",
        ]
        .concat(),
        Remedy::Move {
            backshort_distance_um,
            length_um,
        } => [
            "Drill another hole, ",
            &length(*backshort_distance_um),
            " from the inside of the back wall, with a wire of ",
            &length(*length_um),
            " from the inner wall, and close the old hole with a soldered patch of bare tinplate or brass: hot zinc gives off fumes that make you ill.",
        ]
        .concat(),
        Remedy::AddScrew(screw) => [
            "Leave the wire and add a tuning screw of ",
            &length(screw.diameter_um),
            " opposite the wire, ",
            &length(screw.axial_um),
            " from the inside of the back wall, ",
            &length(screw.depth_um),
            " deep.",
        ]
        .concat(),
    };
    [todo, after].concat()
}
