//! The chart of what was measured and what is predicted.

use tinwave_core::reflection::{magnitude_of_vswr, return_loss_db};
use tinwave_core::si::hertz;

use super::compare::Curve;
use crate::chart::{Axis, Chart, LineKind};
use crate::request::Request;

/// The chart goes up to this VSWR, or to this return loss in dB: what is worse is
/// only worse, what is better only better.
const TOP_VSWR: f64 = 5.0;
const TOP_LOSS_DB: f64 = 40.0;

fn is_loss(request: &Request) -> bool {
    request.get("scale") == "loss"
}

/// What the lines are.
pub(super) fn says(request: &Request) -> &'static str {
    if is_loss(request) {
        "Full line: measured. Dashed: predicted for the drawing. Dotted: 9.5 and 14 dB (VSWR 2 and 1.5); more is better. The charts under Match show the measurement too."
    } else {
        "Full line: measured. Dashed: predicted for the drawing. Dotted: VSWR 1.5 and 2; less is better. The charts under Match show the measurement too."
    }
}

/// VSWR and return loss over frequency, as chosen.
pub(super) fn chart(
    request: &Request,
    summary: &str,
    measured: &Curve,
    predicted: &Curve,
) -> String {
    let sweep = request.design().effective_sweep();
    let (low, high) = (hertz(sweep.low_khz) / 1e6, hertz(sweep.high_khz) / 1e6);
    let loss = is_loss(request);
    let height = |vswr: f64| {
        if loss {
            return_loss_db(magnitude_of_vswr(vswr)).min(TOP_LOSS_DB)
        } else {
            vswr.min(TOP_VSWR)
        }
    };
    let line = |points: &Curve| -> Vec<(f64, f64)> {
        let points = points.iter();
        points.map(|(hz, vswr)| (hz / 1e6, height(*vswr))).collect()
    };
    let limit = |vswr: f64| {
        let ends = [low, high].map(|mhz| (mhz, height(vswr)));
        (LineKind::Limit, ends.to_vec())
    };
    let mut own = line(measured);
    if let [(mhz, height)] = own.as_slice() {
        // One point alone is drawn as a short stroke.
        let half = (high - low) * 0.012;
        own = if (low..=high).contains(mhz) {
            vec![(mhz - half, *height), (mhz + half, *height)]
        } else {
            Vec::new()
        };
    }
    let band = request.design().band;
    let (bottom, top, title) = if loss {
        (0.0, TOP_LOSS_DB, "Return loss, dB")
    } else {
        (1.0, TOP_VSWR, "VSWR")
    };
    Chart {
        id: "measure-compare",
        title: [title, " over frequency, measured and predicted"].concat(),
        description: summary.to_owned(),
        x: Axis {
            low,
            high,
            title: "MHz".to_owned(),
        },
        y: Axis {
            low: bottom,
            high: top,
            title: title.to_owned(),
        },
        lines: vec![
            limit(1.5),
            limit(2.0),
            (LineKind::Other, line(predicted)),
            (LineKind::Main, own),
        ],
        shaded: Some((hertz(band.low_khz) / 1e6, hertz(band.high_khz) / 1e6)),
        choices: Vec::new(),
    }
    .to_svg()
}
