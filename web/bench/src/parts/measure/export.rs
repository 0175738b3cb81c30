//! The prediction as a Touchstone file.

use tinwave_core::touchstone::write_one_port;

use super::compare::predicted;
use crate::reply::Reply;
use crate::request::Request;

/// Hands the maker the file.
pub(super) fn save(request: &Request, reply: &mut Reply) {
    let reference = f64::from(request.design().probe.reference_milliohm) / 1e3;
    let points = predicted(request);
    if points.is_empty() {
        reply.text(
            "measured-notes",
            "Nothing is predicted for this design yet: see the verdict.",
        );
        return;
    }
    let text = [
        "! Predicted by computation, not measured. Reference plane: inner wall of the can.\n",
        &write_one_port(&points, reference),
    ]
    .concat();
    reply.save("predicted.s1p", &text);
}
