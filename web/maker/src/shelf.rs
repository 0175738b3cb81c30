//! What is kept beside a design on the shelf, and the names there.

use tinwave_core::grade::Grade;

/// What was known of a design when it was kept. Each where it was known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct KeptFigures {
    /// The day, counted from 1970-01-01 (UTC).
    pub day: Option<u32>,
    /// The grade of can and band.
    pub grade: Option<Grade>,
    /// Worst VSWR over the band, thousandths.
    pub vswr_milli: Option<u32>,
    /// Gain in hundredths of a dBi.
    pub gain_centi: Option<i32>,
}

impl KeptFigures {
    /// As one word of the device's storage; `-` where a figure is not known.
    #[must_use]
    pub fn word(&self) -> String {
        let part = |known: Option<String>| known.unwrap_or_else(|| "-".to_owned());
        [
            part(self.day.map(|day| day.to_string())),
            part(self.grade.map(|grade| grade_key(grade).to_owned())),
            part(self.vswr_milli.map(|vswr| vswr.to_string())),
            part(self.gain_centi.map(|gain| gain.to_string())),
        ]
        .join(",")
    }

    /// The figures of such a word; what is not understood is not known.
    #[must_use]
    pub fn from_word(word: &str) -> Self {
        let mut parts = word.split(',');
        let mut next = || parts.next().unwrap_or_default();
        Self {
            day: next().parse().ok(),
            grade: grade_of(next()),
            vswr_milli: next().parse().ok(),
            gain_centi: next().parse().ok(),
        }
    }
}

const fn grade_key(grade: Grade) -> &'static str {
    match grade {
        Grade::WillDo => "do",
        Grade::WithCare => "care",
        Grade::WillNotDo => "not",
    }
}

fn grade_of(key: &str) -> Option<Grade> {
    [Grade::WillDo, Grade::WithCare, Grade::WillNotDo]
        .into_iter()
        .find(|grade| grade_key(*grade) == key)
}

/// A name like `wanted` that none of `taken` has: itself, or with the next free number.
#[must_use]
pub fn free_name(wanted: &str, taken: &[&str]) -> String {
    if !taken.contains(&wanted) {
        return wanted.to_owned();
    }
    let stem = match wanted.rsplit_once(' ') {
        Some((stem, number))
            if !stem.is_empty() && number.parse::<u32>().is_ok_and(|number| number > 1) =>
        {
            stem
        }
        _ => wanted,
    };
    (2..)
        .map(|number: u32| format!("{stem} {number}"))
        .find(|name| !taken.contains(&name.as_str()))
        .unwrap_or_else(|| wanted.to_owned())
}

/// Year, month and day of the month of a day counted from 1970-01-01.
#[must_use]
pub fn date_of(day: u32) -> (u32, u32, u32) {
    // Counted in eras of 400 years from 0000-03-01, so that a leap day ends its year.
    let shifted = u64::from(day) + 719_468;
    let (era, of_era) = (shifted / 146_097, shifted % 146_097);
    let year_of_era = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month_from_march = (5 * of_year + 2) / 153;
    let of_month = of_year - (153 * month_from_march + 2) / 5 + 1;
    let month = if month_from_march < 10 {
        month_from_march + 3
    } else {
        month_from_march - 9
    };
    let year = year_of_era + era * 400 + u64::from(month <= 2);
    let small = |number: u64| u32::try_from(number).unwrap_or(u32::MAX);
    (small(year), small(month), small(of_month))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_come_back_as_they_were_kept() {
        let known = KeptFigures {
            day: Some(20_419),
            grade: Some(Grade::WithCare),
            vswr_milli: Some(1_061),
            gain_centi: Some(-30),
        };
        assert_eq!(KeptFigures::from_word(&known.word()), known);
        let unknown = KeptFigures::default();
        assert_eq!(KeptFigures::from_word(&unknown.word()), unknown);
        assert_eq!(KeptFigures::from_word("x"), unknown);
    }

    #[test]
    fn a_name_in_use_gets_the_next_free_number() {
        assert_eq!(free_name("North can", &[]), "North can");
        assert_eq!(free_name("North can", &["North can"]), "North can 2");
        assert_eq!(
            free_name("North can 2", &["North can", "North can 2"]),
            "North can 3"
        );
        assert_eq!(free_name("Can 1", &["Can 1"]), "Can 1 2");
    }

    #[test]
    fn days_are_dates() {
        // 1970-01-01; the leap day of 2000; 2025-11-27.
        assert_eq!(date_of(0), (1970, 1, 1));
        assert_eq!(date_of(11_016), (2000, 2, 29));
        assert_eq!(date_of(20_419), (2025, 11, 27));
    }
}
