//! Working out what to do, in steps.

use tinwave_core::diagnosis::AdviceSteps;

use super::desk::{self, Found, Stage};
use super::{advice_words, cut_field};
use crate::html::escaped;
use crate::job::Job;
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;

/// Shows the advice at hand; asks for it where it was not worked out yet.
pub(super) fn want(request: &Request, found: &Found, reply: &mut Reply) {
    if found.told().is_none() {
        let said = found.diagnosis.as_ref().map_or("", |_| UNEXPLAINED);
        reply.place("advice", item(said));
        reply.stop();
        desk::drop_job();
        return;
    }
    let stage = match (desk::stage(), request.act()) {
        (Stage::Begun, "stop") => {
            reply.stop();
            Stage::Stopped
        }
        (Stage::Wanted, _) | (Stage::Stopped, "advise") => {
            reply.begin("advice");
            Stage::Begun
        }
        (stage, _) => stage,
    };
    match &stage {
        Stage::Ready(advice) => {
            reply.place("advice", advice_words::list(request, advice));
        }
        Stage::Stopped => reply.place("advice", STOPPED.to_owned()),
        Stage::Impossible => reply.place("advice", item(IMPOSSIBLE)),
        Stage::Wanted | Stage::Begun => reply.place("advice", String::new()),
    }
    desk::set_stage(stage);
}

const STOPPED: &str = "<li>Stopped before anything could be advised. <button type=\"button\" data-act=\"advise\">Work out what to do</button></li>";

const IMPOSSIBLE: &str =
    "Nothing can be advised: the can as found is outside what can be computed.";
const UNEXPLAINED: &str = "Don\u{2019}t cut on the strength of this measurement: it isn\u{2019}t explained. Look for the cause first, and measure again.";

fn item(text: &str) -> String {
    if text.is_empty() {
        return String::new();
    }
    ["<li>", &escaped(text), "</li>"].concat()
}

/// Progress is told in so many parts; the work in each is a few model evaluations.
const PARTS: u32 = 50;
const PIECES: u32 = 8;

struct AdviceJob {
    steps: AdviceSteps,
    request: Request,
    key: String,
}

impl Job for AdviceJob {
    fn total(&self) -> u32 {
        PARTS
    }

    fn step(&mut self) {
        for _ in 0..PIECES {
            if !self.steps.step() {
                break;
            }
        }
    }

    fn finish(self: Box<Self>) -> Reply {
        let Self {
            mut steps,
            request,
            key,
        } = *self;
        let mut reply = Reply::new();
        while steps.step() {}
        if desk::present_key() != key {
            // Something else was measured meanwhile.
            return reply;
        }
        let advice = steps.finish();
        reply.place("advice", advice_words::list(&request, &advice));
        let cut = cut_field::offer(&request, &advice, &mut reply);
        cut_field::show(&request, cut, &advice, &mut reply);
        desk::set_stage(Stage::Ready(Box::new(advice)));
        reply
    }
}

/// Begins the work for the measurement in hand.
pub(super) fn begin(request: &Request) -> Option<Box<dyn Job>> {
    let Some(diagnosis) = desk::present(request) else {
        desk::drop_job();
        return None;
    };
    let design = request.design();
    match AdviceSteps::new(design, outside_of(design).as_ref(), &diagnosis) {
        Ok(steps) => Some(Box::new(AdviceJob {
            steps,
            request: request.clone(),
            key: desk::present_key(),
        })),
        Err(_) => {
            desk::set_stage(Stage::Impossible);
            None
        }
    }
}
