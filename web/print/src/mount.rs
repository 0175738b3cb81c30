//! Where the finished antenna balances, and where its bracket goes.

use crate::geometry::{MM, nearest};
use crate::mass::part_masses;
use tinwave_protocol::print::{Balance, Bracket, PrintJob};

/// Mass and balance point: the parts' moments about the closed end's rim over
/// their mass. `None` where the can is of no real metal.
#[must_use]
pub fn balance(job: &PrintJob) -> Option<Balance> {
    let parts = part_masses(job)?;
    let mass: f64 = parts.iter().map(|part| part.grams).sum();
    if mass <= 0.0 {
        return None;
    }
    let moment: f64 = parts.iter().map(|part| part.grams * part.axial_mm).sum();
    Some(Balance {
        mass_mg: u32::try_from(nearest(mass * 1e3)).unwrap_or(0),
        from_closed_rim_um: u32::try_from(nearest(moment / mass * 1e3)).unwrap_or(0),
    })
}

/// Least wall between a hole's edge and the end of the can.
const LEAST_WALL_UM: u32 = 5 * MM as u32;

/// The bracket's two holes, from the inside of the back wall: either side of
/// the balance point, or as near as the can's length lets them be. `None`
/// without a bracket, or where the can is too short for it.
#[must_use]
pub fn bracket_holes(job: &PrintJob) -> Option<([u32; 2], Bracket)> {
    let bracket = job.bracket?;
    let half = bracket.spacing_um / 2;
    let clear = half
        .saturating_add(bracket.hole_um / 2)
        .saturating_add(LEAST_WALL_UM);
    let last = job.can.open_length_um.checked_sub(clear)?;
    if clear > last {
        return None;
    }
    let balanced = balance(job)?
        .from_closed_rim_um
        .saturating_sub(job.can.base_um());
    let middle = balanced.clamp(clear, last);
    Some(([middle - half, middle + half], bracket))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::examples;

    #[test]
    fn two_masses_balance_between_them() {
        // A weightless can (wall of 1 µm) leaves the connector's 25 g, which
        // sits at the hole.
        let mut job = examples::plain_can();
        job.can.wall_um = 1;
        job.probe.length_um = 1;
        let hole = f64::from(job.can.base_um() + job.probe.backshort_um);
        let found = balance(&job).map_or(0, |b| b.from_closed_rim_um);
        assert!((f64::from(found) - hole).abs() < 1_500.0, "{found} {hole}");
    }

    #[test]
    fn a_bracket_never_leaves_the_can() {
        let mut job = examples::plain_can();
        let bracket = Bracket {
            angle_millideg: 180_000,
            hole_um: 4_100,
            spacing_um: 30_000,
            deepest_um: None,
        };
        job.bracket = Some(bracket);
        job.can.open_length_um = 60_000;
        let holes = bracket_holes(&job).map(|(holes, _)| holes);
        assert!(holes.is_some_and(|[a, b]| a >= 7_000 && b <= 53_000 && b - a == 30_000));
        job.can.open_length_um = 40_000;
        assert_eq!(bracket_holes(&job), None);
    }
}
