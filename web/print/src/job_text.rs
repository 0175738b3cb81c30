//! A job as text: one `key=value` a line, in any order.
//!
//! Numbers are whole and in the unit of the job's structures: micrometres,
//! thousandths of a degree from 0 to 360000, milligrams. Several are separated by spaces, words
//! stand last. Empty lines are skipped. A key is given once at most, save
//! those marked *. Of `fixing` and `flange`, and of `funnel`, `ring` and
//! `choke`, the last one holds.
//!
//! | key | value | default |
//! |---|---|---|
//! | `name`, `link` | words | none |
//! | `unit` | `mm`, `in` | `mm` |
//! | `paper` | `a4`, `letter` | `a4` |
//! | `orientation` | `auto`, `portrait`, `landscape` | `auto` |
//! | `ruler-across`, `ruler-upright` | what the last print's 100 mm rulers measured | 100000 |
//! | `paper-thickness` | paper of the strip | 100 |
//! | `parts` | some of `build template gauge mouth cap` | all |
//! | `outside-diameter`, `wall`, `open-length` | the can | needed |
//! | `base-recess` | the can | 0 |
//! | `metal` | a metal's word of the design file | `tinplate` |
//! | `rim` | `closed`, `open`: the rim the strip is laid on | `closed` |
//! | `seam` | `opposite`, `through`, `none` | `opposite` |
//! | `wire`, `length`, `backshort` | the probe | needed |
//! | `gauge` | words | none |
//! | `sleeve` | outside diameter | none |
//! | `within-1.5`, `within-2` | shortest and longest wire | none |
//! | `connector` | words | none |
//! | `drill` | hole to drill for it | needed |
//! | `flange` | side, hole pitch, hole diameter | none |
//! | `fixing` | `nut`, `solder`: without a flange | `nut` |
//! | `connector-mass` | milligrams | 0 |
//! | `screw` * | from the back wall, angle, hole, depth | none |
//! | `bracket` | angle, hole, spacing, and the deepest a rivet may go or 0 | none |
//! | `funnel` | wide inside diameter, half angle, sheet | none |
//! | `ring` | outside diameter, sheet: a flange round the mouth | none |
//! | `choke` | inside diameter, depth, sheet | none |
//! | `cap` | sheet, permittivity in thousandths | none |
//! | `note` * | words | none |
//! | `image` * | em, baseline, width, height in pixels, rows in hexadecimal digits, then the words | none |

use crate::cut_text::{cut_at, next_piece, pieces, whole_number};
use crate::figure::LengthUnit;
use crate::job::{
    Bracket, Can, Cap, CutLimits, Fixing, Metal, Mouth, Panel, Part, PrintJob, Probe, Rim,
    SideSeam, WallHole,
};
use crate::paper::{Orientation, PaperSize, PrintedRulers};
use crate::print_error::PrintError;
use crate::text_image::TextImage;

/// Longest words that are taken, in bytes.
const LONGEST_WORDS: usize = 2_000;

/// Keys without which there is nothing to print.
const NEEDED: [&str; 7] = [
    "outside-diameter",
    "wall",
    "open-length",
    "wire",
    "length",
    "backshort",
    "drill",
];

/// Keys that may be given more than once.
const MANY: [&str; 3] = ["screw", "note", "image"];

/// Reads a job.
///
/// # Errors
/// [`PrintError`]: the line and key that can't be understood, the key that is
/// missing, or the number that is out of range.
pub fn read_job(text: &str) -> Result<PrintJob, PrintError> {
    read(text).map_err(|error| *error)
}

/// An error by its address: a long one in every result makes the program
/// heavy.
type Read<T> = Result<T, Box<PrintError>>;

fn read(text: &str) -> Read<PrintJob> {
    let mut job = empty_job();
    let mut given: Vec<&str> = Vec::new();
    for (index, line) in pieces(text, b'\n').into_iter().enumerate() {
        if line.is_empty() {
            continue;
        }
        let line_number = index + 1;
        let (key, value) = cut_at(line, b'=')
            .ok_or_else(|| Box::new(PrintError::NotALine { line: line_number }))?;
        let value = Value {
            line: line_number,
            key,
            text: value,
        };
        if given.contains(&key) && !MANY.contains(&key) {
            return Err(value.wrong("one line only"));
        }
        given.push(key);
        value.place(&mut job)?;
    }
    for key in NEEDED {
        if !given.contains(&key) {
            return Err(Box::new(PrintError::MissingKey(key)));
        }
    }
    job.check()?;
    Ok(job)
}

/// A line on its way into the job.
#[derive(Clone, Copy)]
struct Value<'a> {
    line: usize,
    key: &'a str,
    text: &'a str,
}

/// The place of a key that takes one length or the like.
fn number_place<'a>(job: &'a mut PrintJob, key: &str) -> Option<&'a mut u32> {
    Some(match key {
        "ruler-across" => &mut job.rulers.across_um,
        "ruler-upright" => &mut job.rulers.upright_um,
        "paper-thickness" => &mut job.paper_thickness_um,
        "outside-diameter" => &mut job.can.outside_diameter_um,
        "wall" => &mut job.can.wall_um,
        "open-length" => &mut job.can.open_length_um,
        "base-recess" => &mut job.can.base_recess_um,
        "wire" => &mut job.probe.wire_diameter_um,
        "length" => &mut job.probe.length_um,
        "backshort" => &mut job.probe.backshort_um,
        "sleeve" => job.probe.sleeve_um.insert(0),
        "drill" => &mut job.panel.drill_um,
        "connector-mass" => &mut job.panel.mass_mg,
        _ => return None,
    })
}

/// The place of a key that takes words.
fn words_place<'a>(job: &'a mut PrintJob, key: &str) -> Option<&'a mut String> {
    Some(match key {
        "name" => &mut job.name,
        "link" => &mut job.link,
        "gauge" => &mut job.probe.gauge,
        "connector" => &mut job.panel.name,
        "note" => {
            job.notes.push(String::new());
            return job.notes.last_mut();
        }
        _ => return None,
    })
}

impl Value<'_> {
    #[inline(never)]
    fn wrong(&self, expected: &'static str) -> Box<PrintError> {
        Box::new(PrintError::WrongValue {
            line: self.line,
            key: self.key.to_owned(),
            expected,
        })
    }

    /// So many numbers that are not negative, then zeros up to four.
    #[inline(never)]
    fn numbers(&self, count: usize, expected: &'static str) -> Read<[u32; 4]> {
        let mut numbers = [0; 4];
        let words = pieces(self.text, b' ');
        if words.len() != count {
            return Err(self.wrong(expected));
        }
        for (place, word) in numbers.iter_mut().zip(words) {
            *place = whole_number(word).ok_or_else(|| self.wrong(expected))?;
        }
        Ok(numbers)
    }

    /// Words on one line, without what can't be seen.
    fn words(&self) -> Read<String> {
        if self.text.len() > LONGEST_WORDS {
            return Err(self.wrong("at most 2000 bytes of words"));
        }
        let seen = self.text.chars().filter(|c| !c.is_control());
        Ok(seen.collect())
    }

    /// Which of several words.
    fn choice(&self, words: &'static str) -> Read<usize> {
        let found = pieces(words, b' ')
            .into_iter()
            .position(|word| word == self.text);
        found.ok_or_else(|| self.wrong(words))
    }

    /// Puts it into its place.
    fn place(&self, job: &mut PrintJob) -> Read<()> {
        if let Some(place) = number_place(job, self.key) {
            *place = self.numbers(1, "a whole number")?[0];
            return Ok(());
        }
        if let Some(place) = words_place(job, self.key) {
            *place = self.words()?;
            return Ok(());
        }
        match self.key {
            "parts" => job.parts = self.parts()?,
            "metal" => {
                job.can.metal = Metal::from_key(self.text).ok_or_else(|| self.wrong("a metal"))?
            }
            "within-1.5" => job.probe.within_1_5 = Some(self.limits()?),
            "within-2" => job.probe.within_2 = Some(self.limits()?),
            "flange" => job.panel.fixing = self.flange()?,
            "screw" => job.screws.push(self.screw()?),
            "bracket" => job.bracket = Some(self.bracket()?),
            "funnel" | "ring" | "choke" => job.mouth = self.mouth()?,
            "cap" => {
                let [sheet_um, permittivity_milli, ..] =
                    self.numbers(2, "sheet and permittivity")?;
                job.cap = Some(Cap {
                    sheet_um,
                    permittivity_milli,
                });
            }
            "image" => job.images.push(self.image()?),
            _ => return self.place_choice(job),
        }
        Ok(())
    }

    fn place_choice(&self, job: &mut PrintJob) -> Read<()> {
        match self.key {
            "unit" => {
                job.unit = match self.choice("mm in")? {
                    0 => LengthUnit::Millimetre,
                    _ => LengthUnit::Inch,
                };
            }
            "paper" => {
                job.paper = match self.choice("a4 letter")? {
                    0 => PaperSize::A4,
                    _ => PaperSize::Letter,
                };
            }
            "orientation" => {
                job.orientation = match self.choice("auto portrait landscape")? {
                    0 => Orientation::Automatic,
                    1 => Orientation::Portrait,
                    _ => Orientation::Landscape,
                };
            }
            "rim" => {
                job.rim = match self.choice("closed open")? {
                    0 => Rim::Closed,
                    _ => Rim::Open,
                };
            }
            "seam" => {
                job.seam = match self.choice("opposite through none")? {
                    0 => SideSeam::Opposite,
                    1 => SideSeam::Through,
                    _ => SideSeam::None,
                };
            }
            "fixing" => {
                job.panel.fixing = match self.choice("nut solder")? {
                    0 => Fixing::Nut,
                    _ => Fixing::Solder,
                };
            }
            _ => {
                return Err(Box::new(PrintError::UnknownKey {
                    line: self.line,
                    key: self.key.chars().take(40).collect(),
                }));
            }
        }
        Ok(())
    }

    fn parts(&self) -> Read<Vec<Part>> {
        let mut parts = Vec::new();
        for text in pieces(self.text, b' ') {
            let part = Value { text, ..*self }.choice("build template gauge mouth cap")?;
            parts.extend(Part::ALL.get(part));
        }
        Ok(parts)
    }

    fn limits(&self) -> Read<CutLimits> {
        let [shortest_um, longest_um, ..] = self.numbers(2, "shortest and longest")?;
        Ok(CutLimits {
            shortest_um,
            longest_um,
        })
    }

    fn flange(&self) -> Read<Fixing> {
        let [square_um, pitch_um, hole_um, _] = self.numbers(3, "side, pitch and hole")?;
        Ok(Fixing::Flange {
            square_um,
            pitch_um,
            hole_um,
        })
    }

    fn screw(&self) -> Read<WallHole> {
        let [axial_um, angle_millideg, hole_um, depth_um] =
            self.numbers(4, "distance, angle, hole and depth")?;
        Ok(WallHole {
            axial_um,
            angle_millideg,
            hole_um,
            depth_um,
        })
    }

    fn bracket(&self) -> Read<Bracket> {
        let [angle_millideg, hole_um, spacing_um, deepest] =
            self.numbers(4, "angle, hole, spacing and deepest")?;
        Ok(Bracket {
            angle_millideg,
            hole_um,
            spacing_um,
            deepest_um: Some(deepest).filter(|deepest| *deepest > 0),
        })
    }

    fn mouth(&self) -> Read<Mouth> {
        Ok(match self.key {
            "funnel" => {
                let [mouth_diameter_um, half_angle_millideg, sheet_um, _] =
                    self.numbers(3, "wide diameter, half angle and sheet")?;
                Mouth::Funnel {
                    mouth_diameter_um,
                    half_angle_millideg,
                    sheet_um,
                }
            }
            "ring" => {
                let [outside_diameter_um, sheet_um, ..] =
                    self.numbers(2, "outside diameter and sheet")?;
                Mouth::Flange {
                    outside_diameter_um,
                    sheet_um,
                }
            }
            _ => {
                let [inside_diameter_um, depth_um, sheet_um, _] =
                    self.numbers(3, "inside diameter, depth and sheet")?;
                Mouth::Choke {
                    inside_diameter_um,
                    depth_um,
                    sheet_um,
                }
            }
        })
    }

    fn image(&self) -> Read<TextImage> {
        let wrong = || self.wrong("em, baseline, width, height, hexadecimal rows and words");
        let mut rest = Some(self.text);
        let mut pixels = [0; 4];
        for place in &mut pixels {
            let field = next_piece(&mut rest, b' ').and_then(whole_number);
            *place = field.ok_or_else(wrong)?;
        }
        let [em_px, baseline_px, width_px, height_px] = pixels;
        let image = TextImage {
            em_px,
            baseline_px,
            width_px,
            height_px,
            bits: next_piece(&mut rest, b' ')
                .and_then(bytes_of_hex)
                .ok_or_else(wrong)?,
            words: rest.unwrap_or_default().to_owned(),
        };
        if image.is_sound() {
            Ok(image)
        } else {
            Err(wrong())
        }
    }
}

fn bytes_of_hex(digits: &str) -> Option<Vec<u8>> {
    let digit = |byte: u8| char::from(byte).to_digit(16);
    let mut bytes = Vec::new();
    for pair in digits.as_bytes().chunks(2) {
        let [high, low] = *pair else { return None };
        bytes.push(u8::try_from(digit(high)? * 16 + digit(low)?).ok()?);
    }
    Some(bytes)
}

fn empty_job() -> PrintJob {
    PrintJob {
        name: String::new(),
        link: String::new(),
        unit: LengthUnit::default(),
        paper: PaperSize::default(),
        orientation: Orientation::default(),
        rulers: PrintedRulers::default(),
        paper_thickness_um: 100,
        parts: Part::ALL.to_vec(),
        can: Can {
            outside_diameter_um: 0,
            wall_um: 0,
            open_length_um: 0,
            base_recess_um: 0,
            metal: Metal::Tinplate,
        },
        rim: Rim::default(),
        seam: SideSeam::default(),
        probe: Probe {
            wire_diameter_um: 0,
            length_um: 0,
            backshort_um: 0,
            gauge: String::new(),
            sleeve_um: None,
            within_1_5: None,
            within_2: None,
        },
        panel: Panel {
            name: String::new(),
            drill_um: 0,
            fixing: Fixing::Nut,
            mass_mg: 0,
        },
        screws: Vec::new(),
        bracket: None,
        mouth: Mouth::Open,
        cap: None,
        notes: Vec::new(),
        images: Vec::new(),
    }
}
