//! The reasons behind the figures: each is asked for when it is opened.

use tinwave_web::words::{self, Shown};

use crate::html::escaped;
use crate::reply::Reply;
use crate::request::Request;

/// The reasons of a result as markup.
#[must_use]
pub fn markup(shown: Shown) -> String {
    let why = words::why(shown);
    let mut html = ["<p class=\"why-title\">", &escaped(why.title), "</p>"].concat();
    for (head, text) in [
        ("Formula", why.formula),
        ("From", why.inputs),
        ("Source", why.source),
        ("How sure", why.error_bar),
    ] {
        for part in ["<p><b>", head, "</b> <span>", &escaped(text), "</span></p>"] {
            html.push_str(part);
        }
    }
    html
}

/// The reasons of the result that the request names (`of`).
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    if let Some(shown) = Shown::from_key(request.get("of")) {
        reply.place("why", markup(shown));
    }
    reply
}
