//! Buttons that put a funnel, ring or cup into the design.

use tinwave_core::design::Mouth;

use crate::reply::Reply;
use crate::request::Request;

/// The mouth that a button names; `None` for any other text.
fn mouth(act: &str) -> Option<Mouth> {
    let mut words = act.split(' ');
    let kind = words.next()?;
    let mut number = || words.next()?.parse::<u32>().ok();
    let first = number()?;
    let mouth = match kind {
        "take-funnel" => Mouth::Funnel {
            mouth_diameter_um: first,
            half_angle_millideg: number()?,
        },
        "take-flange" => Mouth::Flange {
            outside_diameter_um: first,
        },
        "take-choke" => Mouth::Choke {
            outside_diameter_um: first,
            depth_um: number()?,
        },
        _ => return None,
    };
    Some(mouth)
}

/// Takes what was pressed into the design, if that makes a possible one.
pub(super) fn take(request: &Request, reply: &mut Reply) {
    if let Some(mouth) = mouth(request.act()) {
        let mut work = request.work.clone();
        work.design.mouth = mouth;
        if work.design.check().is_ok() {
            reply.take(&work);
        }
    }
}
