//! What a cut would do to the can as it most likely is.

use tinwave_core::changed_can::ChangedCan;
use tinwave_core::design::Design;
use tinwave_core::match_band::band_frequencies;
use tinwave_core::reflection::vswr;
use tinwave_core::si::hertz;

use crate::outsides::outside_of;
use crate::request::Request;

/// Points over the band.
const POINTS: u32 = 11;

/// Worst VSWR over the band of a can that is much like the drawn one.
pub(super) fn worst_vswr(request: &Request, built: &Design) -> Option<f64> {
    let outside = outside_of(request.design());
    let mut can = ChangedCan::new(built, outside.as_ref()).ok()??;
    let band = band_frequencies(built.band, POINTS);
    let frequencies: Vec<f64> = band.into_iter().map(hertz).collect();
    let si = can.nominal().clone();
    let all = can.reflections(&si, &frequencies).ok()?;
    Some(vswr(all.iter().map(|s| s.abs()).fold(0.0, f64::max)))
}

/// The same with so much wire off.
pub(super) fn after_cut(request: &Request, built: &Design, cut_um: u32) -> Option<f64> {
    let mut cut = built.clone();
    cut.probe.length_um = cut.probe.length_um.checked_sub(cut_um)?;
    worst_vswr(request, &cut)
}
