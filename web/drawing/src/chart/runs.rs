//! A curve cut to what its axes show.

use super::Axis;

/// A stretch of a curve without a gap, in the units of its axes; a single point is a
/// stretch of one.
pub type Run = Vec<(f64, f64)>;

/// The stretches of a curve that lie on the plot: cut where it leaves it, broken where a
/// value is missing.
#[must_use]
pub fn runs(points: &[(f64, f64)], x: &Axis, y: &Axis) -> Vec<Run> {
    points
        .split(|(x, y)| !(x.is_finite() && y.is_finite()))
        .flat_map(|part| clipped(part, x, y))
        .collect()
}

fn clipped(part: &[(f64, f64)], x: &Axis, y: &Axis) -> Vec<Run> {
    let on_plot = |(px, py): (f64, f64)| x.kept(px) == px && y.kept(py) == py;
    if let [single] = part {
        return if on_plot(*single) {
            vec![vec![*single]]
        } else {
            Vec::new()
        };
    }
    let mut runs: Vec<Run> = Vec::new();
    let mut run = Run::new();
    for pair in part.windows(2) {
        let [from, to] = pair else { continue };
        let Some((start, end)) = segment(*from, *to, x, y) else {
            runs.extend(take_long(&mut run));
            continue;
        };
        if run.last() != Some(&start) {
            runs.extend(take_long(&mut run));
            run.push(start);
        }
        run.push(end);
        if end != *to {
            runs.extend(take_long(&mut run));
        }
    }
    runs.extend(take_long(&mut run));
    runs
}

fn take_long(run: &mut Run) -> Option<Run> {
    let taken = core::mem::take(run);
    (taken.len() > 1).then_some(taken)
}

/// The part of a straight line on the plot (after Liang and Barsky).
fn segment(
    from: (f64, f64),
    to: (f64, f64),
    x: &Axis,
    y: &Axis,
) -> Option<((f64, f64), (f64, f64))> {
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for (a, b, axis) in [(from.0, to.0, x), (from.1, to.1, y)] {
        let (low, high) = (axis.low.min(axis.high), axis.low.max(axis.high));
        let run = b - a;
        if run == 0.0 {
            if a < low || a > high {
                return None;
            }
            continue;
        }
        let (enter, leave) = if run > 0.0 {
            ((low - a) / run, (high - a) / run)
        } else {
            ((high - a) / run, (low - a) / run)
        };
        (first, last) = (first.max(enter), last.min(leave));
    }
    if first > last {
        return None;
    }
    let at = |share: f64| {
        (
            from.0 + share * (to.0 - from.0),
            from.1 + share * (to.1 - from.1),
        )
    };
    let start = if first > 0.0 { at(first) } else { from };
    let end = if last < 1.0 { at(last) } else { to };
    Some((start, end))
}

#[cfg(test)]
mod tests {
    use super::runs;
    use crate::chart::Axis;

    fn axes() -> (Axis, Axis) {
        (Axis::new("x", "", 0.0, 10.0), Axis::new("y", "", 0.0, 1.0))
    }

    #[test]
    fn a_curve_is_cut_where_it_leaves_the_plot() {
        let (x, y) = axes();
        let seen = runs(&[(0.0, 0.5), (2.0, 1.5), (4.0, 0.5), (6.0, -0.5)], &x, &y);
        assert_eq!(
            seen,
            [
                vec![(0.0, 0.5), (1.0, 1.0)],
                vec![(3.0, 1.0), (4.0, 0.5), (5.0, 0.0)]
            ]
        );
        assert!(runs(&[(0.0, 2.0), (10.0, 3.0)], &x, &y).is_empty());
    }

    #[test]
    fn a_missing_value_breaks_it_and_a_single_point_stays() {
        let (x, y) = axes();
        let seen = runs(
            &[(1.0, 0.2), (2.0, f64::NAN), (3.0, 0.4), (4.0, 0.5)],
            &x,
            &y,
        );
        assert_eq!(seen, [vec![(1.0, 0.2)], vec![(3.0, 0.4), (4.0, 0.5)]]);
        assert!(runs(&[(1.0, 9.0)], &x, &y).is_empty());
    }
}
