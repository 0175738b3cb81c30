//! What a first visit transfers, file by file.

use crate::failure::{Failure, Result};
use crate::toolchain::Library;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fmt::Write as _;
use std::io::Write as _;

/// The most that all files together may weigh after gzip, in bytes.
pub const TOTAL_BAR_BYTES: usize = 215_000;
/// The most that the WebAssembly may weigh of it after gzip, in bytes.
pub const WASM_BAR_BYTES: usize = 188_500;

/// What is fetched when it is needed: how the names of its files begin, what it is,
/// and the most that it may weigh after gzip, in bytes.
pub(crate) const FETCHED: [(&str, &str, usize); 2] = [
    ("print", "printing", 45_000),
    ("bench", "the workbench", 325_000),
];

/// The weight of a built page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Weight {
    /// How much more than a bar is let pass, in percent of the bar.
    pub allowed_percent: usize,
    /// File name, bytes, bytes after gzip; heaviest first.
    pub files: Vec<(String, usize, usize)>,
}

impl Weight {
    pub(crate) fn of(files: &[(String, Vec<u8>)], library: Library) -> Self {
        let mut files: Vec<_> = files
            .iter()
            .map(|(name, bytes)| (name.clone(), bytes.len(), gzip(bytes).len()))
            .collect();
        files.sort_by(|a, b| b.2.cmp(&a.2).then_with(|| a.0.cmp(&b.0)));
        Self {
            allowed_percent: library.allowed_percent(),
            files,
        }
    }

    /// All files of a first visit after gzip, in bytes.
    pub fn total_gzip(&self) -> usize {
        self.sum(is_first)
    }

    /// What one of [`FETCHED`] weighs after gzip, in bytes.
    pub fn fetched_gzip(&self, prefix: &str) -> usize {
        self.sum(|name| name.starts_with(prefix))
    }

    fn sum(&self, counts: impl Fn(&str) -> bool) -> usize {
        let counted = self.files.iter().filter(|(name, _, _)| counts(name));
        counted.map(|(_, _, gzip)| gzip).sum()
    }

    /// The WebAssembly after gzip, in bytes.
    pub fn wasm_gzip(&self) -> usize {
        self.sum(|name| name.ends_with(".wasm") && is_first(name))
    }

    /// Compares with the bars, and what is allowed beyond them.
    ///
    /// # Errors
    /// [`Failure::TooHeavy`] for the first bar that is passed.
    pub fn check(&self) -> Result<()> {
        let first = [
            ("the WebAssembly", self.wasm_gzip(), WASM_BAR_BYTES),
            ("a first visit", self.total_gzip(), TOTAL_BAR_BYTES),
        ];
        let fetched = FETCHED.map(|(prefix, what, bar)| (what, self.fetched_gzip(prefix), bar));
        match first
            .into_iter()
            .chain(fetched)
            .map(|(what, bytes, bar)| (what, bytes, bar + bar * self.allowed_percent / 100))
            .find(|(_, bytes, bar)| bytes > bar)
        {
            None => Ok(()),
            Some((what, bytes, bar)) => Err(Failure::TooHeavy { what, bytes, bar }),
        }
    }

    /// The table that a build ends with.
    pub fn table(&self) -> String {
        let mut table = format!("{:<24}{:>10}{:>10}\n", "file", "bytes", "gzip");
        let bytes = |counts: &dyn Fn(&str) -> bool| {
            let counted = self.files.iter().filter(|file| counts(&file.0));
            counted.map(|(_, bytes, _)| bytes).sum()
        };
        let first = (
            "a first visit".to_owned(),
            bytes(&is_first),
            self.total_gzip(),
        );
        let fetched = FETCHED.map(|(prefix, what, _)| {
            let counts = |name: &str| name.starts_with(prefix);
            let besides = format!("{what}, besides");
            (besides, bytes(&counts), self.fetched_gzip(prefix))
        });
        for (name, bytes, gzip) in self.files.iter().chain([&first]).chain(&fetched) {
            // Writing to a String cannot fail.
            let _ = writeln!(table, "{name:<24}{bytes:>10}{gzip:>10}");
        }
        table
    }
}

/// Whether a file belongs to a first visit.
fn is_first(name: &str) -> bool {
    !FETCHED
        .iter()
        .any(|(prefix, _, _)| name.starts_with(prefix))
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

    fn weighing(wasm: usize, rest: usize, allowed_percent: usize) -> Weight {
        let files = vec![
            ("a.wasm".to_owned(), 400_000, wasm),
            ("b.css".to_owned(), 1, rest),
        ];
        Weight {
            allowed_percent,
            files,
        }
    }

    #[test]
    fn bars_are_compared_with_the_gzip_size() {
        let rest = TOTAL_BAR_BYTES - WASM_BAR_BYTES;
        assert!(weighing(WASM_BAR_BYTES, rest, 0).check().is_ok(), "at both");
        let heavy_wasm = weighing(WASM_BAR_BYTES + 1, 0, 0);
        assert!(heavy_wasm.check().is_err(), "wasm past its bar");
        let heavy_all = weighing(WASM_BAR_BYTES, rest + 1, 0);
        assert!(heavy_all.check().is_err(), "everything past its bar");
    }

    #[test]
    fn a_library_for_speed_is_allowed_so_much_and_no_more() {
        let allowed = WASM_BAR_BYTES * 11 / 10;
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
