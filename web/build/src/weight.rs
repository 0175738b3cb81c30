//! What the page weighs on its way to the browser, file by file, and the bars.

use crate::assemble::Built;
use crate::failure::{Failure, Result};
use crate::manifest::When;
use crate::toolchain::Library;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fmt::Write as _;
use std::io::Write as _;

/// What is weighed together: when it is fetched, what that is called, and the most that
/// it may weigh after gzip, in bytes. The only place that says so.
const BARS: [(&[When], &str, usize); 3] = [
    (
        &[When::AtOnce, When::ByItself],
        "a first visit",
        FIRST_VISIT_BAR,
    ),
    (&[When::InUse], "the other stations", STATIONS_BAR),
    (&[When::ForWork], "long work and printing", 350_000),
];

/// 240 are aimed at.
const FIRST_VISIT_BAR: usize = 300_000;

/// Not part of a first visit; fetched when the page is first used. It may only come down.
const STATIONS_BAR: usize = 550_000;

/// The weight of a built page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Weight {
    /// Groups of files in the order in which they are fetched.
    pub groups: Vec<Group>,
    /// Whether the optimiser ran; the bars are for what it makes.
    optimised: bool,
}

/// Files that are fetched together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Group {
    /// What they are for.
    pub what: &'static str,
    /// The most that they may weigh together after gzip, in bytes.
    pub bar: usize,
    /// Name, bytes, bytes after gzip of each; the heaviest first.
    pub files: Vec<(String, usize, usize)>,
}

impl Group {
    fn gzip(&self) -> usize {
        self.files.iter().map(|(_, _, gzip)| gzip).sum()
    }
}

impl Weight {
    pub(crate) fn of(files: &[Built], library: Library, optimised: bool) -> Self {
        let groups = BARS.map(|(whens, what, bar)| {
            let counted = files.iter().filter(|file| whens.contains(&file.when));
            let weighed = counted.map(|file| {
                let bytes = &file.bytes;
                (file.name.clone(), bytes.len(), gzip(bytes).len())
            });
            let mut files: Vec<_> = weighed.collect();
            files.sort_by(|a, b| b.2.cmp(&a.2).then_with(|| a.0.cmp(&b.0)));
            Group {
                what,
                bar: bar + bar * library.allowed_percent() / 100,
                files,
            }
        });
        Self {
            groups: groups.into(),
            optimised,
        }
    }

    /// Compares with the bars. A page that was not optimised is let pass.
    ///
    /// # Errors
    /// [`Failure::TooHeavy`] for the first bar that is passed.
    pub fn check(&self) -> Result<()> {
        let mut groups = self.groups.iter();
        match groups.find(|group| group.gzip() > group.bar) {
            Some(group) if self.optimised => Err(Failure::TooHeavy {
                what: group.what,
                bytes: group.gzip(),
                bar: group.bar,
            }),
            _ => Ok(()),
        }
    }

    /// The table that a build ends with.
    pub fn table(&self) -> String {
        let mut table = format!("{:<36}{:>9}{:>9}{:>9}\n", "file", "bytes", "gzip", "bar");
        // Writing to a String cannot fail.
        for group in &self.groups {
            for (name, bytes, gzip) in &group.files {
                let _ = writeln!(table, "  {name:<34}{bytes:>9}{gzip:>9}");
            }
            let bytes: usize = group.files.iter().map(|(_, bytes, _)| bytes).sum();
            let (what, gzip, bar) = (group.what, group.gzip(), group.bar);
            let _ = writeln!(table, "{what:<36}{bytes:>9}{gzip:>9}{bar:>9}");
        }
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

    /// A page of one file of noise, which gzip can't shrink, in a group.
    fn weighing(when: When, bytes: usize, library: Library) -> Weight {
        let mut state = 1_u32;
        let noise = (0..bytes).map(|_| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            state.to_be_bytes()[0]
        });
        let file = Built {
            name: "a.wasm".to_owned(),
            when,
            bytes: noise.collect(),
        };
        Weight::of(&[file], library, true)
    }

    #[test]
    fn each_bar_is_held_against_its_own_files() {
        for (whens, _, bar) in BARS {
            for when in whens {
                let under = weighing(*when, bar * 9 / 10, Library::ForSize);
                assert!(under.check().is_ok(), "{when:?}");
                let mut over = weighing(*when, bar + 1, Library::ForSize);
                assert!(over.check().is_err(), "{when:?}");
                over.optimised = false;
                assert!(over.check().is_ok(), "not optimised");
            }
        }
    }

    #[test]
    fn a_library_for_speed_is_allowed_so_much_and_no_more() {
        let (_, _, bar) = BARS[0];
        let weighing = |bytes| weighing(When::AtOnce, bytes, Library::ForSpeed);
        assert!(weighing(bar * 21 / 20).check().is_ok(), "a twentieth more");
        assert!(weighing(bar * 23 / 20).check().is_err(), "too much");
    }

    #[test]
    fn gzip_has_the_magic_of_rfc_1952_and_shrinks_repetition() {
        let packed = gzip(&[7; 10_000]);
        assert_eq!(packed.get(..3), Some([0x1f, 0x8b, 8].as_slice()));
        assert!(packed.len() < 100, "{} bytes", packed.len());
    }
}
