//! How much is to come off the wire: the field, and what that would do.

use tinwave_core::diagnosis::{Advice, Remedy};
use tinwave_web::entry::{
    EntryError, LengthUnit, format_decimal, format_length, format_length_exact,
    format_length_number, parse_length,
};

use super::desk::{self, Stage};
use super::expected;
use crate::reply::Reply;
use crate::request::Request;

/// The unit that a bare number of the field is in: the page's of the last answer.
fn unit_of_field(request: &Request) -> LengthUnit {
    LengthUnit::from_key(request.get("cut-in")).unwrap_or(request.unit)
}

/// The length entered, micrometres.
pub(super) fn cut_um(request: &Request) -> Result<u32, EntryError> {
    parse_length(request.get("cut"), unit_of_field(request)).map(|entered| entered.value)
}

/// Writes the length anew when the page's unit has changed.
pub(super) fn follow_unit(request: &Request, reply: &mut Reply) {
    let unit = request.unit;
    reply.text("cut-unit", unit.symbol());
    if request.get("cut-in") == unit.key() {
        return;
    }
    if unit_of_field(request) != unit
        && let Ok(um) = cut_um(request)
    {
        reply.field("cut", &format_length_exact(um, unit));
    }
    reply.field("cut-in", unit.key());
}

/// All that should come off, and the safe step.
fn trim(advice: &Advice) -> Option<(u32, u32)> {
    advice.remedies.iter().find_map(|(remedy, _)| match remedy {
        Remedy::Trim { whole_um, safe_um } => Some((*whole_um, *safe_um)),
        _ => None,
    })
}

/// Puts the safe step into the field, unless the maker has written there; the cut
/// that stands there then.
pub(super) fn offer(request: &Request, advice: &Advice, reply: &mut Reply) -> Option<u32> {
    let entered = cut_um(request).ok();
    let offered = request.get("cut-offered").parse().ok();
    let own = !request.get("cut").trim().is_empty() && (entered.is_none() || entered != offered);
    if own {
        return entered;
    }
    let safe = trim(advice).map(|(_, safe)| safe);
    let text = safe.map_or_else(String::new, |safe| {
        format_length_number(settable(safe, request.unit), request.unit)
    });
    let um = parse_length(&text, request.unit)
        .ok()
        .map(|read| read.value);
    reply.field("cut", &text);
    reply.field("cut-in", request.unit.key());
    let offered = um.map_or_else(String::new, |um| um.to_string());
    reply.field("cut-offered", &offered);
    um
}

/// A safe step as a maker can set it, never more than it is.
pub(super) const fn settable(safe_um: u32, unit: LengthUnit) -> u32 {
    match unit {
        LengthUnit::Millimetre => safe_um / 100 * 100,
        LengthUnit::Inch => safe_um * 10 / 254 * 254 / 10,
    }
}

/// Says what the cut in the field would do.
pub(super) fn show(request: &Request, cut: Option<u32>, advice: &Advice, reply: &mut Reply) {
    let Some(cut) = cut.filter(|cut| *cut > 0) else {
        reply.text("cut-says", "");
        return;
    };
    let length = |um| format_length(um, request.unit);
    let mut text = expected::after_cut(request, &advice.as_built, cut).map_or_else(
        || "What that cut would do can\u{2019}t be computed.".to_owned(),
        |vswr| {
            [
                "With ",
                &length(cut),
                " off, VSWR ",
                &format_decimal(vswr, 2),
                " at worst is to be expected.",
            ]
            .concat()
        },
    );
    match trim(advice) {
        None => text.push_str(" No cut is advised: wire that is off is off."),
        Some((whole, _)) if cut > whole => {
            text.push_str(" That is more than should come off at all.");
        }
        Some((_, safe)) if cut > safe => {
            let step = length(settable(safe, request.unit));
            text.push_str(" That is more than the safe step of ");
            text.push_str(&step);
            text.push_str(": cut less, and measure in between.");
        }
        Some(_) => {}
    }
    reply.text("cut-says", &text);
}

/// Says it for the advice at hand.
pub(super) fn show_present(request: &Request, reply: &mut Reply) {
    if let Stage::Ready(advice) = desk::stage() {
        show(request, cut_um(request).ok(), &advice, reply);
    } else {
        reply.text("cut-says", "");
    }
}
