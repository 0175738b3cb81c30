//! What the page weighs on its way to the browser, file by file, and the bars.

use crate::assemble::Built;
use crate::failure::{Failure, Result};
use crate::manifest::When;
use crate::toolchain::Library;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fmt::Write as _;
use std::io::Write as _;

/// The most that a first visit may weigh after gzip, all its files, in bytes.
///
/// Far over what the page is to weigh ([`FIRST_AIM`]): all seven stations come with the
/// first visit. It has to come down to 300 kB, by fetching what a first visit does not
/// show when it is wanted, and by fewer types of memos and views.
const FIRST_BAR: usize = 840_000;
/// What is aimed at for it.
const FIRST_AIM: usize = 240_000;
/// The most that what is fetched later, for long work and printing, may weigh after
/// gzip, in bytes.
const LATER_BAR: usize = 350_000;

/// The weight of a built page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Weight {
    /// The files, the heaviest first.
    pub files: Vec<Weighed>,
    /// How much more than a bar is let pass, in percent of the bar.
    allowed_percent: usize,
    /// Whether the optimiser ran; the bars are for what it makes.
    optimised: bool,
}

/// What a file weighs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Weighed {
    /// Its name.
    pub name: String,
    /// Whether it is fetched later than on the first visit.
    pub later: bool,
    /// As it is, in bytes.
    pub bytes: usize,
    /// After gzip, in bytes.
    pub gzip: usize,
}

impl Weight {
    pub(crate) fn of(files: &[Built], library: Library, optimised: bool) -> Self {
        let weigh = |file: &Built| Weighed {
            name: file.name.clone(),
            later: file.when == When::Later,
            bytes: file.bytes.len(),
            gzip: gzip(&file.bytes).len(),
        };
        let mut files: Vec<Weighed> = files.iter().map(weigh).collect();
        files.sort_by(|a, b| b.gzip.cmp(&a.gzip).then_with(|| a.name.cmp(&b.name)));
        Self {
            files,
            allowed_percent: library.allowed_percent(),
            optimised,
        }
    }

    /// The most that a first visit may weigh after gzip with this compiler, in bytes.
    pub fn first_bar(&self) -> usize {
        self.allowed(FIRST_BAR)
    }

    /// The most that what is fetched later may weigh after gzip, in bytes.
    pub fn later_bar(&self) -> usize {
        self.allowed(LATER_BAR)
    }

    fn allowed(&self, bar: usize) -> usize {
        bar + bar * self.allowed_percent / 100
    }

    /// Compares with the bars, and what is allowed beyond them. A page that was not
    /// optimised is let pass.
    ///
    /// # Errors
    /// [`Failure::TooHeavy`] for the first bar that is passed.
    pub fn check(&self) -> Result<()> {
        let weighed = [
            (
                "a first visit",
                self.sum(false, |file| file.gzip),
                self.first_bar(),
            ),
            (
                "what is fetched later",
                self.sum(true, |file| file.gzip),
                self.later_bar(),
            ),
        ];
        match weighed.into_iter().find(|(_, bytes, bar)| bytes > bar) {
            Some((what, bytes, bar)) if self.optimised => {
                Err(Failure::TooHeavy { what, bytes, bar })
            }
            _ => Ok(()),
        }
    }

    fn sum(&self, later: bool, size: impl Fn(&Weighed) -> usize) -> usize {
        let counted = self.files.iter().filter(|file| file.later == later);
        counted.map(size).sum()
    }

    /// The table that a build ends with.
    pub fn table(&self) -> String {
        let mut table = format!("{:<32}{:>10}{:>10}\n", "file", "bytes", "gzip");
        let mut line = |name: &str, bytes: usize, gzip: usize| {
            // Writing to a String cannot fail.
            let _ = writeln!(table, "{name:<32}{bytes:>10}{gzip:>10}");
        };
        for (later, title) in [(false, "a first visit"), (true, "fetched later")] {
            for file in self.files.iter().filter(|file| file.later == later) {
                line(&file.name, file.bytes, file.gzip);
            }
            let sum = |size: fn(&Weighed) -> usize| self.sum(later, size);
            line(title, sum(|file| file.bytes), sum(|file| file.gzip));
        }
        let (first, later) = (self.first_bar(), self.later_bar());
        let _ = writeln!(table, "bars: {first} (aim {FIRST_AIM}) and {later}");
        table
    }
}

/// Compresses as a static host would, at the highest level.
pub(crate) fn gzip(bytes: &[u8]) -> Vec<u8> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    let written = encoder.write_all(bytes).and_then(|()| encoder.finish());
    // Writing to memory cannot fail; uncompressed would be the safe answer.
    written.unwrap_or_else(|_| bytes.to_vec())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weighing(first: usize, later: usize, allowed_percent: usize) -> Weight {
        let file = |name: &str, later, gzip| Weighed {
            name: name.to_owned(),
            later,
            bytes: 2 * gzip,
            gzip,
        };
        Weight {
            files: vec![file("a.wasm", false, first), file("b.wasm", true, later)],
            allowed_percent,
            optimised: true,
        }
    }

    #[test]
    fn each_bar_is_compared_with_its_own_files() {
        assert!(weighing(FIRST_BAR, LATER_BAR, 0).check().is_ok(), "at both");
        assert!(
            weighing(FIRST_BAR + 1, 0, 0).check().is_err(),
            "first visit"
        );
        let mut heavy = weighing(0, LATER_BAR + 1, 0);
        assert!(heavy.check().is_err(), "later");
        heavy.optimised = false;
        assert!(heavy.check().is_ok(), "not optimised");
    }

    #[test]
    fn a_library_for_speed_is_allowed_so_much_and_no_more() {
        let allowed = FIRST_BAR * 11 / 10;
        assert!(weighing(allowed, 0, 10).check().is_ok(), "a tenth more");
        assert!(weighing(allowed + 1, 0, 10).check().is_err(), "past that");
    }

    #[test]
    fn gzip_has_the_magic_of_rfc_1952_and_shrinks_repetition() {
        let packed = gzip(&[7; 10_000]);
        assert_eq!(packed.get(..3), Some([0x1f, 0x8b, 8].as_slice()));
        assert!(packed.len() < 100, "{} bytes", packed.len());
    }
}
