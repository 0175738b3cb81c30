//! The part's fields, each read with a message beside it where it can't be.

use tinwave_core::radio_link::LinkError;

use super::typed::{self, Units};
use crate::reply::Reply;
use crate::request::Request;

/// Reads fields and remembers whether all could be read.
pub(super) struct Form<'a> {
    request: &'a Request,
    reply: &'a mut Reply,
    first_wrong: Option<String>,
}

impl<'a> Form<'a> {
    pub(super) const fn new(request: &'a Request, reply: &'a mut Reply) -> Self {
        Self {
            request,
            reply,
            first_wrong: None,
        }
    }

    /// Whether everything so far could be read. What stands in place of an unreadable
    /// number is only to go on reading with.
    pub(super) const fn is_good(&self) -> bool {
        self.first_wrong.is_none()
    }

    /// What is wrong with the first field that can't be read, by its label.
    pub(super) fn first_wrong(self) -> Option<String> {
        self.first_wrong
    }

    /// A choice of a list.
    pub(super) fn choice(&self, name: &str) -> &'a str {
        self.request.get(name)
    }

    /// Whether a box is ticked.
    pub(super) fn is_on(&self, name: &str) -> bool {
        self.request.is_on(name)
    }

    /// Shows a place, or hides it.
    pub(super) fn show(&mut self, place: &str, shown: bool) {
        self.reply.show(place, shown);
    }

    /// A number in its range, both in the field's own unit.
    pub(super) fn number(&mut self, name: &str, units: Units, range: [f64; 2]) -> f64 {
        let text = self.request.get(name);
        let read = typed::number(text, units).and_then(|value| typed::within(value, range, units));
        self.or_wrong(name, read, range[0])
    }

    /// A number that may be left out.
    pub(super) fn number_if_any(
        &mut self,
        name: &str,
        units: Units,
        range: [f64; 2],
    ) -> Option<f64> {
        if self.request.get(name).trim().is_empty() {
            self.right(name);
            return None;
        }
        Some(self.number(name, units, range))
    }

    /// A transmitter's power, dBm.
    pub(super) fn power_dbm(&mut self, name: &str) -> f64 {
        let range = [-60.0, 70.0];
        let read = typed::power_dbm(self.request.get(name))
            .and_then(|value| typed::within(value, range, typed::DBM));
        self.or_wrong(name, read, range[0])
    }

    /// What was read, or a stand-in and a message beside the field.
    pub(super) fn or_wrong<T>(&mut self, name: &str, read: Result<T, String>, stand_in: T) -> T {
        match read {
            Ok(value) => {
                self.right(name);
                value
            }
            Err(sentence) => {
                self.wrong(name, &sentence);
                stand_in
            }
        }
    }

    /// Says what is wrong with a field.
    pub(super) fn wrong(&mut self, name: &str, sentence: &str) {
        if self.first_wrong.is_none() {
            self.first_wrong = Some([label(name), ": ", sentence].concat());
        }
        self.reply.wrong(name, sentence);
    }

    /// Nothing is wrong with a field, or it does not count now.
    pub(super) fn right(&mut self, name: &str) {
        self.reply.wrong(name, "");
    }
}

/// The label of a field in the part's markup.
fn label(name: &str) -> &'static str {
    let start = ["<label for=\"", name, "\">"].concat();
    let found = super::MARKUP.split_once(start.as_str());
    let label = found.and_then(|(_, after)| after.split_once("</label>"));
    label.map_or("A field", |(label, _)| label)
}

/// Why the link could not be computed, for the rare case that no field is to blame.
pub(super) fn link_error(error: &LinkError) -> String {
    let (LinkError::OutOfRange { value, range, .. } | LinkError::OutOfRangeAt { value, range, .. }) =
        error
    else {
        return "This link cannot be computed.".to_owned();
    };
    let [low, high] = *range;
    [
        "This link cannot be computed: ",
        &typed::short(*value),
        " is outside ",
        &typed::short(low),
        " to ",
        &typed::short(high),
        ".",
    ]
    .concat()
}
