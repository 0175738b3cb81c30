//! What a maker chooses for the print, kept on the device between visits.

use tinwave_core::design::Micrometres;
use tinwave_maker::bench::{BracketPlace, CapSheet};
use tinwave_protocol::print::{PRINTED_RANGE_UM, PaperSize, Part, PrintedRulers, Rim, SideSeam};

/// The key of the device's own storage.
pub const CHOICES_KEY: &str = "tinwave-print";

/// The choices.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PrintChoices {
    /// The paper.
    pub paper: PaperSize,
    /// The rim that the strip is laid on.
    pub rim: Rim,
    /// Where the can's seam goes.
    pub seam: SideSeam,
    /// What the last print's rulers measured.
    pub rulers: PrintedRulers,
    /// The sheets that are printed.
    pub parts: Vec<Part>,
    /// The cap over the mouth.
    pub cap: Option<CapSheet>,
    /// Where the bracket goes.
    pub bracket: Option<BracketPlace>,
}

impl Default for PrintChoices {
    fn default() -> Self {
        Self {
            paper: PaperSize::A4,
            rim: Rim::Closed,
            seam: SideSeam::Opposite,
            rulers: PrintedRulers::default(),
            // A can most often has a lid of its own: the cap's pattern is asked for.
            parts: Part::ALL
                .into_iter()
                .filter(|part| *part != Part::Cap)
                .collect(),
            cap: Some(CapSheet::Polyethylene),
            bracket: None,
        }
    }
}

/// The word that a paper is kept under.
pub(super) const fn paper_key(paper: PaperSize) -> &'static str {
    match paper {
        PaperSize::A4 => "a4",
        PaperSize::Letter => "letter",
    }
}

/// The word that a rim is kept under.
pub(super) const fn rim_key(rim: Rim) -> &'static str {
    match rim {
        Rim::Closed => "closed",
        Rim::Open => "open",
    }
}

/// The word that a seam is kept under.
pub(super) const fn seam_key(seam: SideSeam) -> &'static str {
    match seam {
        SideSeam::Opposite => "opposite",
        SideSeam::Through => "through",
        SideSeam::None => "none",
    }
}

/// The word that a part is kept under.
pub(super) const fn part_key(part: Part) -> &'static str {
    match part {
        Part::BuildSheet => "build",
        Part::DrillTemplate => "template",
        Part::CutGauge => "gauge",
        Part::MouthPattern => "mouth",
        Part::Cap => "cap",
    }
}

/// The one of several that goes by a word.
pub(super) fn by_key<T: Copy, const N: usize>(
    all: [T; N],
    key_of: fn(T) -> &'static str,
    key: &str,
) -> Option<T> {
    all.into_iter().find(|one| key_of(*one) == key)
}

/// Every paper.
pub(super) const PAPERS: [PaperSize; 2] = [PaperSize::A4, PaperSize::Letter];
/// Every rim.
pub(super) const RIMS: [Rim; 2] = [Rim::Closed, Rim::Open];
/// Every seam.
pub(super) const SEAMS: [SideSeam; 3] = [SideSeam::Opposite, SideSeam::Through, SideSeam::None];

impl PrintChoices {
    /// Reads a kept text: a word and its value a line. What makes no sense stays as it
    /// is at first.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let mut choices = Self::default();
        for (word, value) in text.lines().filter_map(|line| line.split_once(' ')) {
            choices.read_line(word, value.trim());
        }
        choices
    }

    fn read_line(&mut self, word: &str, value: &str) {
        match word {
            "paper" => self.paper = by_key(PAPERS, paper_key, value).unwrap_or(self.paper),
            "rim" => self.rim = by_key(RIMS, rim_key, value).unwrap_or(self.rim),
            "seam" => self.seam = by_key(SEAMS, seam_key, value).unwrap_or(self.seam),
            "across" => self.rulers.across_um = ruler(value).unwrap_or(self.rulers.across_um),
            "upright" => self.rulers.upright_um = ruler(value).unwrap_or(self.rulers.upright_um),
            "parts" => {
                let words = value.split(' ');
                self.parts = words
                    .filter_map(|word| by_key(Part::ALL, part_key, word))
                    .collect();
            }
            "cap" => self.cap = CapSheet::from_key(value),
            "bracket" => self.bracket = BracketPlace::from_key(value),
            _ => {}
        }
    }

    /// The text to be kept.
    #[must_use]
    pub fn write(&self) -> String {
        let parts: Vec<_> = self.parts.iter().copied().map(part_key).collect();
        format!(
            "paper {}\nrim {}\nseam {}\nacross {}\nupright {}\nparts {}\ncap {}\nbracket {}\n",
            paper_key(self.paper),
            rim_key(self.rim),
            seam_key(self.seam),
            self.rulers.across_um,
            self.rulers.upright_um,
            parts.join(" "),
            self.cap.map_or("none", CapSheet::key),
            self.bracket.map_or("none", BracketPlace::key),
        )
    }

    /// Whether a part is printed.
    #[must_use]
    pub fn has(&self, part: Part) -> bool {
        self.parts.contains(&part)
    }

    /// Puts a part in, or leaves it out; the order is always that of the sheets.
    pub fn set_part(&mut self, part: Part, on: bool) {
        let chosen: Vec<_> = Part::ALL
            .into_iter()
            .filter(|one| {
                if *one == part {
                    on
                } else {
                    self.parts.contains(one)
                }
            })
            .collect();
        self.parts = chosen;
    }
}

/// A ruler's length that a printer may make of 100 mm.
fn ruler(text: &str) -> Option<Micrometres> {
    let (low, high) = PRINTED_RANGE_UM;
    text.parse().ok().filter(|um| (low..=high).contains(um))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn choices_are_read_back_as_they_were() {
        let mut choices = PrintChoices {
            paper: PaperSize::Letter,
            rim: Rim::Open,
            seam: SideSeam::None,
            cap: None,
            bracket: Some(BracketPlace::Left),
            ..PrintChoices::default()
        };
        choices.rulers.across_um = 98_500;
        choices.set_part(Part::Cap, true);
        choices.set_part(Part::CutGauge, false);
        assert_eq!(PrintChoices::read(&choices.write()), choices);
        assert!(choices.has(Part::Cap) && !choices.has(Part::CutGauge));
    }

    #[test]
    fn nonsense_leaves_things_as_they_are_at_first() {
        let read = PrintChoices::read("paper a3\nacross 80000\nupright x\nfly me\n\n");
        assert_eq!(read, PrintChoices::default());
    }
}
