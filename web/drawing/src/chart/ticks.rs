//! Round figures for an axis.

/// The smallest of 1, 2, 2.5, 5, 10 … times a power of ten that is at least `wanted`;
/// 1 for what is no size at all.
#[must_use]
pub fn nice_step(wanted: f64) -> f64 {
    if !(wanted.is_finite() && wanted > 0.0) {
        return 1.0;
    }
    let decade = power_of_ten(wanted);
    let found = [1.0, 2.0, 2.5, 5.0]
        .into_iter()
        .find(|factor| factor * decade >= wanted * (1.0 - 1e-9));
    found.unwrap_or(10.0) * decade
}

/// The power of ten at or below a positive number.
fn power_of_ten(value: f64) -> f64 {
    let mut power = 1.0;
    while power > value && power > 1e-12 {
        power /= 10.0;
    }
    while power * 10.0 <= value && power < 1e12 {
        power *= 10.0;
    }
    power
}

/// Round values within a range, ends included, at most `most` of them (at least two are
/// asked for).
#[must_use]
pub fn nice_ticks(low: f64, high: f64, most: usize) -> Vec<f64> {
    let width = high - low;
    if !(width.is_finite() && width > 0.0) {
        return Vec::new();
    }
    let most = most.max(2);
    let mut step = nice_step(width / most as f64);
    loop {
        let ticks = multiples(low, high, step);
        if ticks.len() <= most {
            return ticks;
        }
        step = nice_step(step * 1.01);
    }
}

fn multiples(low: f64, high: f64, step: f64) -> Vec<f64> {
    let first = (low / step - 1e-6).ceil();
    let last = (high / step + 1e-6).floor();
    let count = (last - first + 1.0).clamp(0.0, 1_000.0);
    // Counted in whole steps: no error adds up.
    (0..count as u32)
        .map(|i| (first + f64::from(i)) * step)
        .collect()
}

/// Round values of a logarithmic axis: 1, 2, 5 of each decade, or powers of ten alone
/// where those would be too many.
#[must_use]
pub fn log_ticks(low: f64, high: f64, most: usize) -> Vec<f64> {
    if !(low > 0.0 && high > low && high.is_finite()) {
        return Vec::new();
    }
    let inside = |factors: &[f64]| {
        let mut ticks = Vec::new();
        let mut decade = power_of_ten(low);
        while decade <= high {
            ticks.extend(
                factors
                    .iter()
                    .map(|factor| factor * decade)
                    .filter(|value| *value >= low * (1.0 - 1e-9) && *value <= high * (1.0 + 1e-9)),
            );
            decade *= 10.0;
        }
        ticks
    };
    let full = inside(&[1.0, 2.0, 5.0]);
    if full.len() <= most.max(2) {
        full
    } else {
        inside(&[1.0])
    }
}

/// Decimals that tell every one of these values exactly, three at most.
#[must_use]
pub fn decimals_of(values: &[f64]) -> u8 {
    let whole_at = |decimals: u8| {
        let scale = [1.0, 10.0, 100.0, 1_000.0]
            .get(usize::from(decimals))
            .copied()
            .unwrap_or(1.0);
        values.iter().all(|value| {
            let scaled = value * scale;
            (scaled - scaled.round()).abs() < 1e-6
        })
    };
    (0..3).find(|decimals| whole_at(*decimals)).unwrap_or(3)
}

#[cfg(test)]
mod tests {
    use super::{decimals_of, log_ticks, nice_step, nice_ticks};

    #[test]
    fn steps_are_round() {
        let cases = [
            (0.7, 1.0),
            (1.0, 1.0),
            (1.1, 2.0),
            (2.1, 2.5),
            (3.0, 5.0),
            (7.0, 10.0),
            (0.03, 0.05),
            (260.0, 500.0),
        ];
        for (wanted, step) in cases {
            assert!(
                (nice_step(wanted) - step).abs() < 1e-9,
                "{wanted}: {}",
                nice_step(wanted)
            );
        }
        assert_eq!(nice_step(f64::NAN), 1.0);
        assert_eq!(nice_step(0.0), 1.0);
    }

    #[test]
    fn ticks_lie_within_and_are_few() {
        assert_eq!(nice_ticks(1.0, 2.0, 5), [1.0, 1.25, 1.5, 1.75, 2.0]);
        assert_eq!(
            nice_ticks(2_318.5, 2_566.0, 5),
            [2_350.0, 2_400.0, 2_450.0, 2_500.0, 2_550.0]
        );
        assert_eq!(nice_ticks(-90.0, 90.0, 5), [-50.0, 0.0, 50.0]);
        assert!(nice_ticks(3.0, 3.0, 5).is_empty());
        for most in 2..9 {
            for high in [0.004, 0.9, 7.3, 44.0, 1_234.0] {
                assert!(nice_ticks(-0.3 * high, high, most).len() <= most);
            }
        }
    }

    #[test]
    fn a_logarithmic_axis_counts_in_decades() {
        assert_eq!(
            log_ticks(10.0, 1_000.0, 9),
            [10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1_000.0]
        );
        assert_eq!(
            log_ticks(10.0, 100_000.0, 6),
            [10.0, 100.0, 1_000.0, 10_000.0, 100_000.0]
        );
        assert!(log_ticks(0.0, 10.0, 6).is_empty());
    }

    #[test]
    fn figures_have_the_decimals_they_need() {
        assert_eq!(decimals_of(&[1.0, 1.25, 1.5]), 2);
        assert_eq!(decimals_of(&[1.0, 1.5]), 1);
        assert_eq!(decimals_of(&[2_350.0, 2_400.0]), 0);
    }
}
