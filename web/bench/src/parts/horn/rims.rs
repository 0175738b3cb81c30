//! Rings and cups as they stand on the page, and the job that finds them.

use tinwave_web::entry::{LengthUnit, format_decimal, format_length};

use super::can_key::{CanKey, Radiated};
use super::found;
use super::funnel::NOT_COVERED;
use super::rim_search::{Goal, RimSearch, RimSize, RimTable};
use crate::html::escaped;
use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;

fn name(goal: Goal) -> &'static str {
    match goal {
        Goal::RingForGain => "Ring (flange), most gain",
        Goal::CupForGain => "Cup (choke), most gain",
        Goal::CupForRear => "Cup (choke), least to the rear",
    }
}

fn act(size: RimSize, can: &CanKey) -> String {
    let outside = size.outside_um(can).to_string();
    if size.depth_mm == 0 {
        return ["take-flange ", &outside].concat();
    }
    let depth = size.depth_mm.saturating_mul(1_000).to_string();
    ["take-choke ", &outside, " ", &depth].concat()
}

fn size_text(size: RimSize, can: &CanKey, unit: LengthUnit) -> String {
    let outside = [&format_length(size.outside_um(can), unit), " outside"].concat();
    if size.depth_mm == 0 {
        return outside;
    }
    let depth = format_length(size.depth_mm.saturating_mul(1_000), unit);
    [&outside, ", ", &depth, " deep"].concat()
}

fn decibels(value: f64) -> String {
    [&format_decimal(value, 1), " dB"].concat()
}

fn push_cells(markup: &mut String, head: &str, cells: &[&str], last: &str) {
    markup.push_str("<tr><th scope=\"row\">");
    markup.push_str(&escaped(head));
    markup.push_str("</th>");
    for cell in cells {
        markup.push_str("<td>");
        markup.push_str(&escaped(cell));
        markup.push_str("</td>");
    }
    markup.push_str("<td>");
    markup.push_str(last);
    markup.push_str("</td></tr>");
}

fn push_row(markup: &mut String, head: &str, size: &str, of: &Radiated, more: &str, last: &str) {
    let gain = [&format_decimal(of.gain_dbi, 1), " dBi", more].concat();
    let (back, rear) = (decibels(of.front_to_back_db), decibels(of.front_to_rear_db));
    push_cells(markup, head, &[size, &gain, &back, &rear], last);
}

fn table(found: &RimTable, request: &Request, can: &CanKey) -> String {
    let mut markup = String::from(
        "<table class=\"sizes\"><thead><tr><th scope=\"col\">At the rim</th><th scope=\"col\">Size</th><th scope=\"col\">Gain</th><th scope=\"col\">Front over back</th><th scope=\"col\">Front over rear half</th><th scope=\"col\"><span class=\"unseen\">Use</span></th></tr></thead><tbody>",
    );
    push_row(&mut markup, "Nothing", "\u{2013}", &found.bare, "", "");
    for (goal, size, radiated) in &found.best {
        let more = radiated.gain_dbi - found.bare.gain_dbi;
        let sign = if more < 0.0 { " (" } else { " (+" };
        let more = [sign, &format_decimal(more, 1), ")"].concat();
        let last = if request.design().mouth == size.mouth(can) {
            "in the design".to_owned()
        } else {
            [
                "<button type=\"button\" data-act=\"",
                &act(*size, can),
                "\" aria-label=\"Use: ",
                name(*goal),
                "\">Use</button>",
            ]
            .concat()
        };
        let text = size_text(*size, can, request.unit);
        push_row(&mut markup, name(*goal), &text, radiated, &more, &last);
    }
    markup.push_str("</tbody></table>");
    markup
}

fn says(found: &RimTable) -> String {
    let gain = |wanted: Goal| {
        let best = found.best.iter().find(|(goal, ..)| *goal == wanted);
        best.map_or(f64::NAN, |(.., radiated)| {
            radiated.gain_dbi - found.bare.gain_dbi
        })
    };
    [
        "Found: the best ring adds ",
        &decibels(gain(Goal::RingForGain)),
        " over the bare can, the best cup ",
        &decibels(gain(Goal::CupForGain)),
        ". Sizes are whole millimetres beyond the can. Find the best cut of the wire anew with it on.",
    ]
    .concat()
}

/// Shows what was found, if anything was.
pub(super) fn show(request: &Request, reply: &mut Reply) {
    let can = CanKey::of(request.design());
    let found = found::rims(&can);
    let said = match &found {
        _ if !can.is_covered() => NOT_COVERED.to_owned(),
        Some(found) => says(found),
        None => String::new(),
    };
    reply.text("rims-says", &said);
    let markup = found.map(|found| table(&found, request, &can));
    reply.show("rims-table", markup.is_some());
    reply.place("rims-table", markup.unwrap_or_default());
}

/// The search as a job.
pub(super) struct RimJob {
    request: Request,
    can: CanKey,
    search: RimSearch,
}

impl RimJob {
    pub(super) fn new(request: &Request, can: CanKey) -> Self {
        Self {
            request: request.clone(),
            can,
            search: RimSearch::new(can),
        }
    }
}

impl Job for RimJob {
    fn total(&self) -> u32 {
        self.search.total()
    }

    fn step(&mut self) {
        self.search.step();
    }

    fn finish(self: Box<Self>) -> Reply {
        let mut reply = Reply::new();
        found::set_work(None);
        match self.search.table() {
            Some(table) => {
                found::keep_rims(self.can, table);
                let latest = found::latest();
                show(latest.as_ref().unwrap_or(&self.request), &mut reply);
            }
            None => reply.text("rims-says", NOT_COVERED),
        }
        reply
    }
}
