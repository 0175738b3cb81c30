//! The match with a cap beside that without.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::error::CapError;
use super::reflection::dissipation_loss_db;
use super::sheet::Sheet;
use crate::complex::Complex;
use crate::design::{Design, Kilohertz, Mouth};
use crate::match_band::{MatchSummary, SweepPoint};
use crate::match_band::{band_frequencies, summarise, sweep_frequencies};
use crate::outside::OutsideSpectrum;
use crate::si::{SiDesign, hertz};
use crate::waveguide_mode::Mode;
use crate::whole_can::{CanBody, WholeCan, probe_geometry};

/// How many points of the band join the sweep.
const BAND_POINTS: u32 = 11;
/// A dip is found to this.
const DIP_WITHIN_KHZ: u32 = 20;

/// A can's match without and with a cap.
#[derive(Clone, Debug, PartialEq)]
pub struct CapEffect {
    /// The match over the band without.
    pub without: MatchSummary,
    /// The match over the band with it.
    pub with: MatchSummary,
    /// The design's sweep and points of the band, without.
    pub sweep_without: Vec<SweepPoint>,
    /// The same with it.
    pub sweep_with: Vec<SweepPoint>,
    /// Where VSWR dips: the dip nearest to the band's centre without, and the one nearest
    /// to that with; `None` where the sweep holds no dip.
    pub dip_khz: Option<(Kilohertz, Kilohertz)>,
    /// Loss in the sheet for TE11 at the band's centre, dB; what more is reflected isn't
    /// in it. `None` where TE11 takes no power out.
    pub loss_db: Option<f64>,
}

impl CapEffect {
    /// How far the cap moves the best frequency, kHz.
    #[must_use]
    pub fn shift_khz(&self) -> Option<i64> {
        self.dip_khz
            .map(|(without, with)| i64::from(with) - i64::from(without))
    }
}

/// Computes a design without and with a cap over the can's mouth, the outside solved or,
/// without one, that of an endless pipe.
///
/// # Errors
/// [`CapError`]: a number out of range, a funnel, or a can that can't be computed.
pub fn cap_effect(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    sheet: &Sheet,
) -> Result<CapEffect, CapError> {
    design.check()?;
    sheet.check()?;
    if matches!(design.mouth, Mouth::Funnel { .. }) {
        return Err(CapError::Funnel);
    }
    let si = SiDesign::new(design);
    let body = CanBody::of(design, &si, outside)?;
    let capped = body.clone().with_cap(*sheet);
    let without = WholeCan::from_parts(body.clone(), &probe_geometry(&si), si.reference_ohm)?;
    let with = without.clone().with_body(capped, si.reference_ohm);
    let (sweep_without, sweep_with) = (sweep(design, &without), sweep(design, &with));
    let bare_dip = dip_khz(&without, &sweep_without, design.band.centre_khz());
    let dip_khz = bare_dip.and_then(|near| Some((near, dip_khz(&with, &sweep_with, near)?)));
    Ok(CapEffect {
        without: summarise(&sweep_without, design.band).ok_or(CapError::Band)?,
        with: summarise(&sweep_with, design.band).ok_or(CapError::Band)?,
        sweep_without,
        sweep_with,
        dip_khz,
        loss_db: loss_db(&body, &si, sheet),
    })
}

fn loss_db(body: &CanBody, si: &SiDesign, sheet: &Sheet) -> Option<f64> {
    let end = body.condition(si.centre_hz()).ok()?.end;
    let te11 = end.map_or(Complex::ZERO, |end| end.te11);
    dissipation_loss_db(Mode::TE11, si.radius_m, si.centre_hz(), te11, sheet)
}

/// The design's sweep with points of the band, ascending.
fn sweep(design: &Design, can: &WholeCan) -> Vec<SweepPoint> {
    let mut frequencies = sweep_frequencies(design.effective_sweep());
    frequencies.extend(band_frequencies(design.band, BAND_POINTS));
    frequencies.sort_unstable();
    frequencies.dedup();
    let at = |frequency_khz| SweepPoint {
        frequency_khz,
        at: can.match_at(hertz(frequency_khz)).ok(),
    };
    frequencies.into_iter().map(at).collect()
}

/// The dip of VSWR nearest to a frequency: a point of the sweep lower than its
/// neighbours, then ever nearer between the two.
fn dip_khz(can: &WholeCan, sweep: &[SweepPoint], near: Kilohertz) -> Option<Kilohertz> {
    let vswr = |point: &SweepPoint| point.at.map(|at| at.vswr);
    let (mut low, mut high) = sweep
        .iter()
        .zip(sweep.iter().skip(1))
        .zip(sweep.iter().skip(2))
        .filter_map(|((before, here), after)| {
            let lowest = vswr(here)?;
            let dips = lowest < vswr(before)? && lowest <= vswr(after)?;
            dips.then_some((
                here.frequency_khz,
                before.frequency_khz,
                after.frequency_khz,
            ))
        })
        .min_by_key(|(here, ..)| here.abs_diff(near))
        .map(|(_, before, after)| (before, after))?;
    let at = |khz| can.match_at(hertz(khz)).map_or(f64::INFINITY, |at| at.vswr);
    while high - low > DIP_WITHIN_KHZ {
        let third = (high - low) / 3;
        if at(low + third) <= at(high - third) {
            high -= third;
        } else {
            low += third;
        }
    }
    Some(low.midpoint(high))
}
