//! What a can may receive without sending: named by what is received.

use tinwave_core::si::{SiDesign, hertz};
use tinwave_core::waveguide_mode::Mode;
use tinwave_web::bands::{BANDS, PublishedBand};
use tinwave_web::confidence::Confidence;
use tinwave_web::entry::format_frequency_exact;

use crate::html::escaped;
use crate::reply::Reply;
use crate::request::Request;

pub(super) fn show(request: &Request, reply: &mut Reply) {
    let mut markup = String::from(
        "<table class=\"sizes\"><caption class=\"unseen\">Bands that are only received</caption><thead><tr><th scope=\"col\">What is received</th><th scope=\"col\">MHz</th><th scope=\"col\">This can</th><th scope=\"col\">How sure</th></tr></thead><tbody>",
    );
    for band in BANDS.iter().filter(|band| band.receive_only) {
        let edges = [
            &format_frequency_exact(band.low_khz),
            "–",
            &format_frequency_exact(band.high_khz),
        ];
        for part in [
            "<tr><th scope=\"row\">",
            &escaped(band.name),
            "<small>",
            &escaped(band.note),
            "</small></th><td>",
            &edges.concat(),
            "</td><td>",
            this_can(request, band),
            "</td><td>",
            sure(band.confidence),
            "</td></tr>",
        ] {
            markup.push_str(part);
        }
    }
    markup.push_str("</tbody></table>");
    reply.place("receive", markup);
}

/// Whether the present can is for that band, or has the width for it.
fn this_can(request: &Request, band: &PublishedBand) -> &'static str {
    let design = request.design();
    let (low, high) = (hertz(band.low_khz), hertz(band.high_khz));
    if design.band.low_khz <= band.low_khz && band.high_khz <= design.band.high_khz {
        return "built for it";
    }
    let radius_m = SiDesign::new(design).radius_m;
    if low <= Mode::TE11.cutoff_frequency_hz(radius_m) {
        "too narrow"
    } else if high >= Mode::TM01.cutoff_frequency_hz(radius_m) {
        "too wide"
    } else {
        "its width would do"
    }
}

const fn sure(confidence: Confidence) -> &'static str {
    match confidence {
        Confidence::Seen => "from a published table",
        Confidence::FromMemory => "? uncertain: from memory, check it",
        Confidence::Estimated => "? uncertain: estimated",
    }
}
