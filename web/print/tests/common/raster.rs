//! A PDF page as pixels, by poppler's `pdftoppm`.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

/// Pixels to the inch.
pub(crate) const RESOLUTION: u32 = 600;

/// A page in shades of grey.
pub(crate) struct Raster {
    width: usize,
    height: usize,
    grey: Vec<u8>,
}

/// The program: one on the search path, else Debian's, installed where that
/// can be done unasked.
fn pdftoppm() -> Result<PathBuf, String> {
    static FOUND: OnceLock<Result<PathBuf, String>> = OnceLock::new();
    FOUND
        .get_or_init(|| {
            let found = tinwave::apt::program(&["pdftoppm"], "poppler-utils");
            let found = found.map_err(|error| error.to_string())?;
            found.ok_or_else(|| {
                "the scale tests need poppler's pdftoppm, and none was found: install it \
                 (on Debian: sudo apt-get install poppler-utils)"
                    .to_owned()
            })
        })
        .clone()
}

/// One page of a PDF, pages counted from 1. `name` tells files of tests apart
/// that run at the same time.
pub(crate) fn raster(pdf: &[u8], page: usize, name: &str) -> Result<Raster, String> {
    let work = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let file = work.join(format!("{name}.pdf"));
    std::fs::write(&file, pdf).map_err(|error| error.to_string())?;
    let page = page.to_string();
    let output = Command::new(pdftoppm()?)
        .args([
            "-gray",
            "-r",
            &RESOLUTION.to_string(),
            "-f",
            &page,
            "-l",
            &page,
        ])
        .arg(&file)
        .output()
        .map_err(|error| error.to_string())?;
    if !output.status.success() {
        return Err(String::from_utf8_lossy(&output.stderr).into_owned());
    }
    Raster::read(&output.stdout).ok_or_else(|| "not a portable graymap".to_owned())
}

impl Raster {
    /// Reads a binary graymap (PGM, magic `P5`, 8 bits).
    fn read(bytes: &[u8]) -> Option<Self> {
        let mut words = Vec::new();
        let mut at = 0;
        while words.len() < 4 {
            let end = at + bytes.get(at..)?.iter().position(u8::is_ascii_whitespace)?;
            words.push(std::str::from_utf8(bytes.get(at..end)?).ok()?);
            at = end + 1;
        }
        let [magic, width, height, depth] = words.try_into().ok()?;
        let (width, height) = (width.parse().ok()?, height.parse().ok()?);
        let grey = bytes.get(at..)?.to_vec();
        let sound = magic == "P5" && depth == "255" && grey.len() == width * height;
        sound.then_some(Self {
            width,
            height,
            grey,
        })
    }

    /// Size in millimetres.
    pub(crate) fn size_mm(&self) -> (f64, f64) {
        (mm(self.width as f64), mm(self.height as f64))
    }

    /// How dark a place is, 0 to 255; millimetres from the lower left corner.
    fn ink(&self, x: usize, row: usize) -> f64 {
        let grey = self.grey.get(row * self.width + x);
        255.0 - f64::from(grey.copied().unwrap_or(255))
    }

    /// Middles of the dark runs along a line across at a height, between two
    /// places, in millimetres. Shades count by their darkness.
    pub(crate) fn across(&self, y_mm: f64, from_mm: f64, to_mm: f64) -> Vec<f64> {
        let row = self.row(y_mm);
        let (from, to) = (pixel(from_mm), pixel(to_mm));
        middles((from..to).map(|x| self.ink(x, row)), from)
    }

    /// The same along a line upright, upwards.
    pub(crate) fn upright(&self, x_mm: f64, from_mm: f64, to_mm: f64) -> Vec<f64> {
        let column = pixel(x_mm);
        let (from, to) = (pixel(from_mm), pixel(to_mm));
        // Heights count from the lower edge of the lowest row of pixels.
        let rows = (from..to).map(|up| self.ink(column, self.height.saturating_sub(1 + up)));
        middles(rows, from)
    }

    fn row(&self, y_mm: f64) -> usize {
        self.height.saturating_sub(1 + pixel(y_mm))
    }
}

fn mm(pixels: f64) -> f64 {
    pixels * 25.4 / f64::from(RESOLUTION)
}

fn pixel(mm: f64) -> usize {
    (mm / 25.4 * f64::from(RESOLUTION)) as usize
}

fn middles(inks: impl Iterator<Item = f64>, first: usize) -> Vec<f64> {
    let mut found = Vec::new();
    let (mut weight, mut moment) = (0.0, 0.0);
    for (index, ink) in inks.chain([0.0]).enumerate() {
        if ink > 12.0 {
            weight += ink;
            moment += ink * ((first + index) as f64 + 0.5);
        } else if weight > 0.0 {
            found.push(mm(moment / weight));
            (weight, moment) = (0.0, 0.0);
        }
    }
    found
}
