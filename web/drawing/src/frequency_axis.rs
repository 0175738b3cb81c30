//! A horizontal axis of frequency: places, and round figures for its ticks.

/// A range of frequencies laid along px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrequencyAxis {
    /// Left end, kHz.
    pub low_khz: f64,
    /// Right end, above `low_khz`, kHz.
    pub high_khz: f64,
    /// px of the left end.
    pub left: f64,
    /// px of the right end.
    pub right: f64,
}

/// A tick: its frequency and its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tick {
    /// Whole MHz.
    pub mhz: u32,
    /// px.
    pub x: f64,
}

impl FrequencyAxis {
    /// Place of a frequency, kept between the ends.
    #[must_use]
    pub fn place(&self, khz: f64) -> f64 {
        let width = (self.high_khz - self.low_khz).max(1.0);
        let part = ((khz - self.low_khz) / width).clamp(0.0, 1.0);
        self.left + part * (self.right - self.left)
    }

    /// Frequency at a place, kept between the ends.
    #[must_use]
    pub fn frequency(&self, x: f64) -> f64 {
        let width = (self.right - self.left).max(1.0);
        let part = ((x - self.left) / width).clamp(0.0, 1.0);
        self.low_khz + part * (self.high_khz - self.low_khz)
    }

    /// Ticks at round MHz, at least `least_px` apart.
    #[must_use]
    pub fn ticks(&self, least_px: f64) -> Vec<Tick> {
        let px_per_mhz = (self.right - self.left) / (self.high_khz - self.low_khz).max(1.0) * 1e3;
        let step = f64::from(round_step(least_px / px_per_mhz.max(1e-9)));
        let first = (self.low_khz / 1e3 / step - 1e-9).ceil() * step;
        let count = ((self.high_khz / 1e3 - first) / step + 1e-9).floor();
        if count < 0.0 {
            return Vec::new();
        }
        // A plot is at most some thousand px wide.
        (0..=count.min(200.0) as u32)
            .map(|i| {
                let mhz = first + step * f64::from(i);
                Tick {
                    mhz: mhz.round() as u32,
                    x: self.place(mhz * 1e3),
                }
            })
            .collect()
    }
}

/// The smallest of 1, 2, 5, 10, 20 ... that is at least `wanted`.
fn round_step(wanted: f64) -> u32 {
    let mut decade = 1_u32;
    loop {
        for factor in [1, 2, 5] {
            let step = decade.saturating_mul(factor);
            if f64::from(step) >= wanted {
                return step;
            }
        }
        if decade >= 100_000_000 {
            return decade;
        }
        decade *= 10;
    }
}

#[cfg(test)]
mod tests {
    use super::FrequencyAxis;

    const AXIS: FrequencyAxis = FrequencyAxis {
        low_khz: 2_318_500.0,
        high_khz: 2_566_000.0,
        left: 40.0,
        right: 340.0,
    };

    #[test]
    fn ticks_are_round_and_stand_where_their_frequency_is() {
        let seen: Vec<u32> = AXIS.ticks(55.0).iter().map(|tick| tick.mhz).collect();
        assert_eq!(seen, [2350, 2400, 2450, 2500, 2550]);
        for tick in AXIS.ticks(55.0) {
            let back = AXIS.frequency(tick.x);
            assert!((back - f64::from(tick.mhz) * 1e3).abs() < 1e-3);
        }
    }

    #[test]
    fn nothing_stands_outside_the_ends() {
        assert_eq!(AXIS.place(0.0), 40.0);
        assert_eq!(AXIS.place(9e9), 340.0);
        assert_eq!(AXIS.frequency(-5.0), 2_318_500.0);
    }

    #[test]
    fn an_empty_range_gives_few_ticks_and_no_hang() {
        let axis = FrequencyAxis {
            high_khz: AXIS.low_khz,
            ..AXIS
        };
        assert!(axis.ticks(50.0).len() <= 1);
    }
}
