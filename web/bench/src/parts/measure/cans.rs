//! Which can a log belongs to: each name has its own, the others wait on a shelf.

use super::desk::nameless_link;
use crate::form_data;
use crate::reply::Reply;
use crate::request::Request;

/// So many other cans are kept.
const MOST_CANS: usize = 24;

/// The log of the design's can. Under a new name the same design is the same can;
/// another design under another name is another.
pub(super) fn log_of(request: &Request, reply: &mut Reply) -> String {
    let name = request.design().name.as_str();
    let drawn = nameless_link(request);
    let (of, was_drawn) = (request.get("can"), request.get("can-drawn"));
    if drawn != was_drawn {
        reply.field("can-drawn", &drawn);
    }
    if of != name {
        reply.field("can", name);
    }
    let log = request.get("log");
    if of == name || was_drawn.is_empty() || drawn == was_drawn {
        return log.to_owned();
    }
    let mut shelf = form_data::read(request.get("shelf"));
    let found = shelf.iter().position(|(known, _)| known == name);
    let fetched = found.map_or_else(String::new, |place| shelf.remove(place).1);
    shelf.retain(|(known, _)| known != of);
    if !log.is_empty() {
        shelf.push((of.to_owned(), log.to_owned()));
    }
    let over = shelf.len().saturating_sub(MOST_CANS);
    shelf.drain(..over);
    reply.field("shelf", &form_data::write(&shelf));
    reply.field("log", &fetched);
    reply.field("log-was", "");
    fetched
}
