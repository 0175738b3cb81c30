//! Funnel and dish: the gain over the band, what a funnel would add, and the can as
//! a feed.

mod band_gain;

use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;

/// What the part shows.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    band_gain::show(request, &mut reply);
    reply
}

/// The part has no long job yet.
#[must_use]
pub fn begin(_request: &Request) -> Option<Box<dyn Job>> {
    None
}
