//! What a maker can measure on a closed can: the outside, or the way round.

/// π as a fraction good to 3e-16.
const PI: (u128, u128) = (245_850_922, 78_256_779);

/// Thickness of the paper strip that is taken off: copy paper of 80 g/m² is 0.1 mm
/// thick (common practice, no source).
pub const PAPER_UM: u32 = 100;

/// A strip is read to a tenth of a millimetre at best.
const STRIP_GRAIN_UM: u32 = 100;

/// What a strip of paper round an outside diameter would measure, to what can be read.
#[must_use]
pub fn strip_round(outside_um: u32) -> u32 {
    let round = circumference_of(outside_um.saturating_add(PAPER_UM));
    round.saturating_add(STRIP_GRAIN_UM / 2) / STRIP_GRAIN_UM * STRIP_GRAIN_UM
}

/// Inside diameter from the outside diameter and the wall; `None` where the
/// walls leave nothing.
#[must_use]
pub const fn inside_from_outside(outside_um: u32, wall_um: u32) -> Option<u32> {
    match outside_um.checked_sub(wall_um.saturating_mul(2)) {
        Some(0) | None => None,
        inside => inside,
    }
}

/// Outside diameter from a strip of paper wrapped once round the can.
/// The strip's length is right at the middle of its thickness, so the can is
/// one thickness smaller than the circle of that length.
#[must_use]
pub fn outside_from_circumference(circumference_um: u32, strip_um: u32) -> u32 {
    let middle = (u128::from(circumference_um) * PI.1 + PI.0 / 2) / PI.0;
    u32::try_from(middle)
        .unwrap_or(u32::MAX)
        .saturating_sub(strip_um)
}

/// The way round a circle of that diameter.
#[must_use]
pub fn circumference_of(diameter_um: u32) -> u32 {
    let round = (u128::from(diameter_um) * PI.0 + PI.1 / 2) / PI.1;
    u32::try_from(round).unwrap_or(u32::MAX)
}
