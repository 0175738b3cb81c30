//! What the page wants to know of a job without printing it.

use crate::figure::push_whole;
use crate::fill::Put;
use crate::job::PrintJob;
use crate::mount::balance;
use crate::sheet::Layout;
use crate::text_image::image_of;
use crate::wrap_strip::WrapStrip;

/// `key=value` lines: `sheets`, `landscape` (0 or 1), `circumference_um` with
/// the paper's share, and, for a can of real metal, `mass_mg` and
/// `balance_um` from the closed end's outer rim. Then `image=` lines: the texts
/// that a PDF needs images of.
pub(crate) fn facts(job: &PrintJob, layout: &Layout, missing: &[String]) -> String {
    let mut out = String::new();
    let mut say = |key: &str, value: i64| {
        out.put(key);
        push_whole(&mut out, value);
        out.put("\n");
    };
    say("sheets=", i64::try_from(layout.sheets.len()).unwrap_or(0));
    let paper = layout.sheets.first().map(|sheet| sheet.paper);
    say(
        "landscape=",
        i64::from(paper.is_some_and(|p| p.width > p.height)),
    );
    say("circumference_um=", i64::from(WrapStrip::new(job).around));
    if let Some(balance) = balance(job) {
        say("mass_mg=", i64::from(balance.mass_mg));
        say("balance_um=", i64::from(balance.from_closed_rim_um));
    }
    for text in missing {
        if image_of(&job.images, text).is_none() {
            out.put("image=");
            out.put(text);
            out.put("\n");
        }
    }
    out
}
