//! Threads of screws that are easy to get.
//!
//! Sources, from memory: ISO 261:1998, *ISO general purpose metric screw threads,
//! general plan* (coarse series: diameter and pitch); ASME B1.1, *Unified inch screw
//! threads*, table of the coarse series (UNC: number, threads per inch; number n is
//! 0.060 in + n times 0.013 in wide).

/// A thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thread {
    /// The word of the field.
    pub key: &'static str,
    /// Its name.
    pub name: &'static str,
    /// Outside diameter, micrometres.
    pub diameter_um: u32,
    /// Way of one turn, micrometres.
    pub pitch_um: u32,
}

const fn thread(key: &'static str, name: &'static str, diameter_um: u32, pitch_um: u32) -> Thread {
    Thread {
        key,
        name,
        diameter_um,
        pitch_um,
    }
}

/// The first is taken where none is chosen.
pub const THREADS: [Thread; 6] = [
    thread("m4", "M4 \u{d7} 0.7", 4_000, 700),
    thread("m3", "M3 \u{d7} 0.5", 3_000, 500),
    thread("m5", "M5 \u{d7} 0.8", 5_000, 800),
    thread("6-32", "6-32 UNC", 3_505, 794),
    thread("8-32", "8-32 UNC", 4_166, 794),
    thread("10-24", "10-24 UNC", 4_826, 1_058),
];

/// The thread of a word; the first where there is none.
#[must_use]
pub fn of_key(key: &str) -> Thread {
    let found = THREADS.iter().find(|thread| thread.key == key);
    *found.unwrap_or(&THREADS[0])
}

impl Thread {
    /// Whole quarter turns nearest to a depth.
    #[must_use]
    pub const fn quarter_turns(&self, depth_um: u32) -> u32 {
        (depth_um.saturating_mul(8) / self.pitch_um).saturating_add(1) / 2
    }
}

/// Quarter turns as turns: `25 ¼`.
#[must_use]
pub fn turns(quarter_turns: u32) -> String {
    let whole = quarter_turns / 4;
    let part = match quarter_turns % 4 {
        0 => "",
        1 => "\u{bc}",
        2 => "\u{bd}",
        _ => "\u{be}",
    };
    if whole == 0 && !part.is_empty() {
        return part.to_owned();
    }
    [&whole.to_string(), part].concat()
}

#[cfg(test)]
mod tests {
    use super::{THREADS, of_key, turns};

    #[test]
    fn inch_threads_follow_from_their_numbers() {
        for (key, number, per_inch) in [
            ("6-32", 6.0, 32.0),
            ("8-32", 8.0, 32.0),
            ("10-24", 10.0, 24.0),
        ] {
            let thread = of_key(key);
            let diameter = 25_400.0 * (0.060 + 0.013 * number);
            assert!(
                (f64::from(thread.diameter_um) - diameter).abs() <= 0.5,
                "{key}"
            );
            let pitch = 25_400.0 / per_inch;
            assert!((f64::from(thread.pitch_um) - pitch).abs() <= 0.5, "{key}");
        }
        assert_eq!(of_key("no such"), THREADS[0]);
    }

    #[test]
    fn a_depth_is_the_nearest_whole_quarter_turns() {
        let m4 = of_key("m4");
        let depths = [(0, 0), (87, 0), (88, 1), (262, 1), (263, 2), (7_000, 40)];
        for (depth_um, quarters) in depths {
            assert_eq!(m4.quarter_turns(depth_um), quarters, "{depth_um}");
        }
        let said = [0, 1, 4, 6, 103].map(turns);
        assert_eq!(said, ["0", "\u{bc}", "1", "1\u{bd}", "25\u{be}"]);
    }
}
