//! Which change buys most.

use tinwave_core::radio_link::LinkError;

use super::link::Plan;
use super::names;
use super::words::db;
use crate::html::escaped;
use crate::reply::Reply;

/// So many are listed.
const MOST: usize = 10;

pub(super) fn show(plan: &Plan, reply: &mut Reply) -> Result<(), LinkError> {
    let mut markup = String::new();
    for saving in plan.link.what_buys_most()?.into_iter().take(MOST) {
        for part in [
            "<li>",
            &escaped(&names::change(plan, saving.change)),
            ": <span class=\"value\">",
            &db(saving.gained_db),
            "</span></li>",
        ] {
            markup.push_str(part);
        }
    }
    reply.place("improve", markup);
    Ok(())
}
