//! The field of a mode, seen from the end of the can: lines of the electric field
//! across a circle of radius 1, the wire coming in from below.
//!
//! In a TE mode they are the level lines of the axial magnetic field, in a TM mode
//! they run along the gradient of the axial electric field (N. Marcuvitz, Waveguide
//! Handbook, 1951, section 2.3, from memory).

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use tinwave_core::waveguide_mode::{Family, Mode};

/// One step along a line.
const STEP: f64 = 0.03;
/// Most steps in one direction.
const MOST_STEPS: usize = 260;
/// Where lines of TE modes begin, as shares of the radius: those of the wanted mode,
/// and of the others, which have more rays.
const TE11_RADII: &[f64] = &[0.38, 0.72];
const TE_RADII: &[f64] = &[0.5];
/// How far from a maximum the lines of TM modes begin.
const TM_CLEARANCE: f64 = 0.12;
/// The closest to the wall that a line begins.
const NEAR_WALL: f64 = 0.985;

/// A line of the field, as points.
pub type FieldLine = Vec<(f64, f64)>;

/// Lines of a mode's electric field; none of a mode without a root.
#[must_use]
pub fn field_lines(mode: Mode) -> Vec<FieldLine> {
    let Some(root) = mode.root() else {
        return Vec::new();
    };
    let field = AxialField { mode, root };
    seeds(&field)
        .into_iter()
        .map(|seed| field.line(seed))
        .filter(|line| line.len() > 2)
        .collect()
}

/// J_n by its power series: good to ten digits up to arguments of 12.
fn bessel_j(order: u8, x: f64) -> f64 {
    let half = x / 2.0;
    let order = f64::from(order);
    let mut term = (1..=order as u32).fold(1.0, |term, k| term * half / f64::from(k));
    let mut sum = term;
    for k in 1..60 {
        let k = f64::from(k);
        term *= -half * half / (k * (order + k));
        sum += term;
    }
    sum
}

struct AxialField {
    mode: Mode,
    root: f64,
}

impl AxialField {
    fn order(&self) -> f64 {
        f64::from(self.mode.order)
    }

    /// The axial field; turned so that the wire below drives the mode.
    fn at(&self, (x, y): (f64, f64)) -> f64 {
        let angle = self.order() * (y.atan2(x) + FRAC_PI_2);
        let round = match self.mode.family {
            _ if self.mode.order == 0 => 1.0,
            Family::Te => angle.sin(),
            Family::Tm => angle.cos(),
        };
        bessel_j(self.mode.order, self.root * x.hypot(y)) * round
    }

    /// Direction of the electric field across the can; `None` where there is none.
    fn direction(&self, (x, y): (f64, f64)) -> Option<(f64, f64)> {
        const H: f64 = 1e-4;
        let dx = self.at((x + H, y)) - self.at((x - H, y));
        let dy = self.at((x, y + H)) - self.at((x, y - H));
        let size = dx.hypot(dy);
        if size < 1e-2 * H {
            return None;
        }
        Some(match self.mode.family {
            Family::Te => (-dy / size, dx / size),
            Family::Tm => (dx / size, dy / size),
        })
    }

    /// The line through a point, both ways, to the wall or back to itself.
    fn line(&self, seed: (f64, f64)) -> FieldLine {
        let (ahead, closed) = self.trace(seed, 1.0);
        if closed {
            return ahead;
        }
        let (mut line, _) = self.trace(seed, -1.0);
        line.reverse();
        line.extend(ahead.into_iter().skip(1));
        line
    }

    fn trace(&self, seed: (f64, f64), way: f64) -> (FieldLine, bool) {
        let mut line = vec![seed];
        let mut here = seed;
        for count in 0..MOST_STEPS {
            let Some(next) = self.step(here, way) else {
                break;
            };
            let radius = next.0.hypot(next.1);
            if radius >= 1.0 {
                line.push((next.0 / radius, next.1 / radius));
                break;
            }
            let from_seed = (next.0 - seed.0).hypot(next.1 - seed.1);
            if count > 8 && from_seed < 0.8 * STEP {
                line.push(seed);
                return (line, true);
            }
            line.push(next);
            here = next;
        }
        (line, false)
    }

    /// A step by the midpoint rule.
    fn step(&self, (x, y): (f64, f64), way: f64) -> Option<(f64, f64)> {
        let half = way * STEP / 2.0;
        let first = self.direction((x, y))?;
        let middle = self.direction((x + half * first.0, y + half * first.1))?;
        Some((x + way * STEP * middle.0, y + way * STEP * middle.1))
    }
}

fn polar(radius: f64, angle: f64) -> (f64, f64) {
    (radius * angle.cos(), radius * angle.sin())
}

fn seeds(field: &AxialField) -> Vec<(f64, f64)> {
    match (field.mode.family, field.mode.order) {
        (Family::Te, 0) => [0.25, 0.55, 0.82].map(|radius| (radius, 0.0)).to_vec(),
        (Family::Te, order) => te_seeds(order),
        (Family::Tm, 0) => (0..8)
            .map(|k| polar(TM_CLEARANCE, TAU * f64::from(k) / 8.0))
            .collect(),
        (Family::Tm, order) => tm_seeds(field, order),
    }
}

/// On the rays on which the axial magnetic field is largest.
fn te_seeds(order: u8) -> Vec<(f64, f64)> {
    let n = f64::from(order);
    let radii = if order == 1 { TE11_RADII } else { TE_RADII };
    let mut seeds: Vec<(f64, f64)> = (0..2 * u32::from(order))
        .flat_map(|k| {
            let angle = (FRAC_PI_2 + PI * f64::from(k)) / n - FRAC_PI_2;
            radii.iter().map(move |radius| polar(*radius, angle))
        })
        .collect();
    if order == 1 {
        // The line through the middle.
        seeds.push((0.0, 0.0));
    }
    seeds
}

/// Round each place where the axial electric field is largest.
fn tm_seeds(field: &AxialField, order: u8) -> Vec<(f64, f64)> {
    let radius = largest_at(field);
    (0..2 * u32::from(order))
        .flat_map(|k| {
            let angle = PI * f64::from(k) / f64::from(order) - FRAC_PI_2;
            let (x, y) = polar(radius, angle);
            (0..6).map(move |k| {
                let (dx, dy) = polar(TM_CLEARANCE, TAU * (f64::from(k) + 0.5) / 6.0 + angle);
                (x + dx, y + dy)
            })
        })
        .filter(|(x, y)| x.hypot(*y) < NEAR_WALL)
        .collect()
}

/// The radius at which J_n is largest inside the can.
fn largest_at(field: &AxialField) -> f64 {
    let value = |k: u32| {
        let radius = f64::from(k) / 50.0;
        bessel_j(field.mode.order, field.root * radius).abs()
    };
    let best = (0..50).max_by(|a, b| value(*a).total_cmp(&value(*b)));
    f64::from(best.unwrap_or_default()) / 50.0
}

#[cfg(test)]
#[allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]
mod tests {
    use super::*;

    #[test]
    fn the_series_has_the_published_roots() {
        // Abramowitz and Stegun 1964, table 9.5: zeros of J0 and J1.
        for (order, zero) in [
            (0, 2.404_825_557_7),
            (1, 3.831_705_970_2),
            (0, 8.653_727_912_9),
        ] {
            assert!(bessel_j(order, zero).abs() < 1e-9, "J{order}({zero})");
        }
        // J0(1) and J2(2), table 9.1.
        assert!((bessel_j(0, 1.0) - 0.765_197_686_6).abs() < 1e-9);
        assert!((bessel_j(2, 2.0) - 0.352_834_028_6).abs() < 1e-9);
    }

    #[test]
    fn lines_end_at_the_wall_upright_or_close() {
        for mode in [
            Mode::TE11,
            Mode::TM01,
            Mode::TE21,
            Mode::TM11,
            Mode::TE01,
            Mode::te(3, 1),
        ] {
            let lines = field_lines(mode);
            assert!(lines.len() >= 3, "{mode}");
            for line in lines {
                let inside = |(x, y): &(f64, f64)| x.hypot(*y) <= 1.0 + 1e-9;
                assert!(line.iter().all(inside), "{mode}");
                let last = line[line.len() - 1];
                if last.0.hypot(last.1) > 0.999 {
                    // The electric field meets metal at a right angle.
                    let before = line[line.len() - 2];
                    let (dx, dy) = (last.0 - before.0, last.1 - before.1);
                    let along = (dx * -last.1 + dy * last.0).abs() / dx.hypot(dy).max(1e-12);
                    assert!(along < 0.25 || dx.hypot(dy) < 0.01, "{mode}: {along}");
                }
            }
        }
    }

    #[test]
    fn the_wanted_mode_runs_straight_up_from_the_wire() {
        let lines = field_lines(Mode::TE11);
        let middle = lines
            .iter()
            .find(|line| line.iter().all(|(x, _)| x.abs() < 1e-6));
        let middle = middle.expect("a line through the middle");
        let ends = [middle[0].1, middle[middle.len() - 1].1];
        assert!((ends[0].abs() - 1.0).abs() < 1e-9 && (ends[0] + ends[1]).abs() < 1e-9);
    }

    #[test]
    fn the_ring_mode_closes_on_itself() {
        for line in field_lines(Mode::TE01) {
            assert_eq!(line[0], line[line.len() - 1]);
            let radius = line[0].0.hypot(line[0].1);
            assert!(
                line.iter()
                    .all(|(x, y)| (x.hypot(*y) - radius).abs() < 0.01)
            );
        }
    }
}
