//! A job as text: one `key=value` a line, in any order.
//!
//! Numbers are whole and in the unit of the job's structures: micrometres,
//! thousandths of a degree, milligrams. Several are separated by spaces, words
//! stand last. Empty lines are skipped. A key is given once at most, save
//! those marked *.
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
//! | `bracket` | angle, hole, spacing, and the deepest a rivet may go or `-` | none |
//! | `funnel` | wide inside diameter, half angle, sheet | none |
//! | `ring` | outside diameter, sheet: a flange round the mouth | none |
//! | `choke` | inside diameter, depth, sheet | none |
//! | `cap` | sheet, permittivity in thousandths | none |
//! | `note` * | words | none |
//! | `image` * | em, baseline, width, height in pixels, rows in hexadecimal digits, then the words | none |

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

/// A line's value on its way into the job.
#[derive(Clone, Copy)]
struct Value<'a> {
    line: usize,
    key: &'static str,
    text: &'a str,
}

impl<'a> Value<'a> {
    const fn wrong(self, expected: &'static str) -> PrintError {
        PrintError::WrongValue {
            line: self.line,
            key: self.key,
            expected,
        }
    }

    fn number<T: core::str::FromStr>(self) -> Result<T, PrintError> {
        let [number] = self.numbers("a whole number")?;
        Ok(number)
    }

    fn numbers<T: core::str::FromStr, const N: usize>(
        self,
        expected: &'static str,
    ) -> Result<[T; N], PrintError> {
        let parsed: Option<Vec<T>> = self
            .text
            .split_ascii_whitespace()
            .map(|word| word.parse().ok())
            .collect();
        let numbers = parsed.and_then(|numbers| numbers.try_into().ok());
        numbers.ok_or(self.wrong(expected))
    }

    /// Words on one line, without what can't be seen.
    fn words(self) -> Result<String, PrintError> {
        if self.text.len() > LONGEST_WORDS {
            return Err(self.wrong("at most 2000 bytes of words"));
        }
        let seen = self.text.chars().filter(|c| !c.is_control());
        Ok(seen.collect::<String>().trim().to_owned())
    }

    /// One of several words.
    fn choice<T: Copy>(
        self,
        choices: &[(&str, T)],
        expected: &'static str,
    ) -> Result<T, PrintError> {
        let found = choices.iter().find(|(word, _)| *word == self.text);
        found.map(|(_, value)| *value).ok_or(self.wrong(expected))
    }

    fn rest(self, count: usize) -> (Vec<&'a str>, &'a str) {
        let mut words = Vec::new();
        let mut rest = self.text;
        for _ in 0..count {
            let (word, after) = rest.split_once(' ').unwrap_or((rest, ""));
            words.push(word);
            rest = after;
        }
        (words, rest)
    }
}

/// Reads a job.
///
/// # Errors
/// [`PrintError`]: the line and key that can't be understood, the key that is
/// missing, or the number that is out of range.
pub fn read_job(text: &str) -> Result<PrintJob, PrintError> {
    let mut job = empty_job();
    let mut given: Vec<&'static str> = Vec::new();
    for (index, line) in text.lines().enumerate() {
        if line.is_empty() {
            continue;
        }
        let line_number = index + 1;
        let (key, value) = line
            .split_once('=')
            .ok_or(PrintError::NotALine { line: line_number })?;
        let known = KEYS.iter().find(|known| known.word == key);
        let Some(known) = known else {
            return Err(PrintError::UnknownKey {
                line: line_number,
                key: key.chars().take(40).collect(),
            });
        };
        let value = Value {
            line: line_number,
            key: known.word,
            text: value,
        };
        if given.contains(&known.word) && !known.many {
            return Err(value.wrong("one line only"));
        }
        given.push(known.word);
        (known.read)(&mut job, value)?;
    }
    let missing = KEYS.iter().find(|key| key.needed && !given.contains(&key.word));
    if let Some(key) = missing {
        return Err(PrintError::MissingKey(key.word));
    }
    job.check()?;
    Ok(job)
}

/// What a key does.
struct Key {
    word: &'static str,
    needed: bool,
    many: bool,
    read: fn(&mut PrintJob, Value<'_>) -> Result<(), PrintError>,
}

type Reader = fn(&mut PrintJob, Value<'_>) -> Result<(), PrintError>;

const fn may(word: &'static str, read: Reader) -> Key {
    Key {
        word,
        needed: false,
        many: false,
        read,
    }
}

const fn must(word: &'static str, read: Reader) -> Key {
    Key {
        needed: true,
        ..may(word, read)
    }
}

const fn many(word: &'static str, read: Reader) -> Key {
    Key {
        many: true,
        ..may(word, read)
    }
}

/// A reader that puts what `$method` gives into one place of the job.
macro_rules! into {
    ($($place:ident).+, $method:ident) => {
        |job, value| {
            job.$($place).+ = value.$method()?;
            Ok(())
        }
    };
}

const KEYS: &[Key] = &[
    may("name", into!(name, words)),
    may("link", into!(link, words)),
    may("unit", into!(unit, unit)),
    may("paper", into!(paper, paper)),
    may("orientation", into!(orientation, orientation)),
    may("ruler-across", into!(rulers.across_um, number)),
    may("ruler-upright", into!(rulers.upright_um, number)),
    may("paper-thickness", into!(paper_thickness_um, number)),
    may("parts", into!(parts, parts)),
    must("outside-diameter", into!(can.outside_diameter_um, number)),
    must("wall", into!(can.wall_um, number)),
    must("open-length", into!(can.open_length_um, number)),
    may("base-recess", into!(can.base_recess_um, number)),
    may("metal", into!(can.metal, metal)),
    may("rim", into!(rim, rim)),
    may("seam", into!(seam, seam)),
    must("wire", into!(probe.wire_diameter_um, number)),
    must("length", into!(probe.length_um, number)),
    must("backshort", into!(probe.backshort_um, number)),
    may("gauge", into!(probe.gauge, words)),
    may("sleeve", into!(probe.sleeve_um, some_number)),
    may("within-1.5", into!(probe.within_1_5, limits)),
    may("within-2", into!(probe.within_2, limits)),
    may("connector", into!(panel.name, words)),
    must("drill", into!(panel.drill_um, number)),
    may("flange", into!(panel.fixing, flange)),
    may("fixing", into!(panel.fixing, fixing)),
    may("connector-mass", into!(panel.mass_mg, number)),
    many("screw", |job, value| {
        job.screws.push(value.screw()?);
        Ok(())
    }),
    may("bracket", into!(bracket, bracket)),
    may("funnel", into!(mouth, funnel)),
    may("ring", into!(mouth, ring)),
    may("choke", into!(mouth, choke)),
    may("cap", into!(cap, cap)),
    many("note", |job, value| {
        job.notes.push(value.words()?);
        Ok(())
    }),
    many("image", |job, value| {
        job.images.push(value.image()?);
        Ok(())
    }),
];

impl Value<'_> {
    fn some_number(self) -> Result<Option<u32>, PrintError> {
        self.number().map(Some)
    }

    fn unit(self) -> Result<LengthUnit, PrintError> {
        let units = [("mm", LengthUnit::Millimetre), ("in", LengthUnit::Inch)];
        self.choice(&units, "mm or in")
    }

    fn paper(self) -> Result<PaperSize, PrintError> {
        let sizes = [("a4", PaperSize::A4), ("letter", PaperSize::Letter)];
        self.choice(&sizes, "a4 or letter")
    }

    fn orientation(self) -> Result<Orientation, PrintError> {
        let ways = [
            ("auto", Orientation::Automatic),
            ("portrait", Orientation::Portrait),
            ("landscape", Orientation::Landscape),
        ];
        self.choice(&ways, "auto, portrait or landscape")
    }

    fn parts(self) -> Result<Vec<Part>, PrintError> {
        let known = [
            ("build", Part::BuildSheet),
            ("template", Part::DrillTemplate),
            ("gauge", Part::CutGauge),
            ("mouth", Part::MouthPattern),
            ("cap", Part::Cap),
        ];
        self.text
            .split_ascii_whitespace()
            .map(|text| {
                Value { text, ..self }.choice(&known, "some of build, template, gauge, mouth, cap")
            })
            .collect()
    }

    fn metal(self) -> Result<Metal, PrintError> {
        Metal::from_key(self.text).ok_or(self.wrong("a metal"))
    }

    fn rim(self) -> Result<Rim, PrintError> {
        self.choice(&[("closed", Rim::Closed), ("open", Rim::Open)], "closed or open")
    }

    fn seam(self) -> Result<SideSeam, PrintError> {
        let places = [
            ("opposite", SideSeam::Opposite),
            ("through", SideSeam::Through),
            ("none", SideSeam::None),
        ];
        self.choice(&places, "opposite, through or none")
    }

    fn limits(self) -> Result<Option<CutLimits>, PrintError> {
        let [shortest_um, longest_um] = self.numbers("shortest and longest")?;
        Ok(Some(CutLimits {
            shortest_um,
            longest_um,
        }))
    }

    fn flange(self) -> Result<Fixing, PrintError> {
        let [square_um, pitch_um, hole_um] = self.numbers("side, pitch and hole")?;
        Ok(Fixing::Flange {
            square_um,
            pitch_um,
            hole_um,
        })
    }

    fn fixing(self) -> Result<Fixing, PrintError> {
        let ways = [("nut", Fixing::Nut), ("solder", Fixing::Solder)];
        self.choice(&ways, "nut or solder")
    }

    fn screw(self) -> Result<WallHole, PrintError> {
        let expected = "distance, angle, hole and depth";
        let [axial, angle, hole, depth]: [i32; 4] = self.numbers(expected)?;
        let length = |number: i32| u32::try_from(number).map_err(|_| self.wrong(expected));
        Ok(WallHole {
            axial_um: length(axial)?,
            angle_millideg: angle,
            hole_um: length(hole)?,
            depth_um: length(depth)?,
        })
    }

    fn bracket(self) -> Result<Option<Bracket>, PrintError> {
        let wrong = || self.wrong("angle, hole, spacing, and deepest or -");
        let words: Vec<&str> = self.text.split_ascii_whitespace().collect();
        let [angle, hole, spacing, deepest] = words.as_slice() else {
            return Err(wrong());
        };
        let length = |word: &str| word.parse().map_err(|_| wrong());
        Ok(Some(Bracket {
            angle_millideg: angle.parse().map_err(|_| wrong())?,
            hole_um: length(hole)?,
            spacing_um: length(spacing)?,
            deepest_um: match *deepest {
                "-" => None,
                word => Some(length(word)?),
            },
        }))
    }

    fn funnel(self) -> Result<Mouth, PrintError> {
        let [mouth_diameter_um, half_angle_millideg, sheet_um] =
            self.numbers("wide diameter, half angle and sheet")?;
        Ok(Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
            sheet_um,
        })
    }

    fn ring(self) -> Result<Mouth, PrintError> {
        let [outside_diameter_um, sheet_um] = self.numbers("outside diameter and sheet")?;
        Ok(Mouth::Flange {
            outside_diameter_um,
            sheet_um,
        })
    }

    fn choke(self) -> Result<Mouth, PrintError> {
        let [inside_diameter_um, depth_um, sheet_um] =
            self.numbers("inside diameter, depth and sheet")?;
        Ok(Mouth::Choke {
            inside_diameter_um,
            depth_um,
            sheet_um,
        })
    }

    fn cap(self) -> Result<Option<Cap>, PrintError> {
        let [sheet_um, permittivity_milli] = self.numbers("sheet and permittivity")?;
        Ok(Some(Cap {
            sheet_um,
            permittivity_milli,
        }))
    }

    fn image(self) -> Result<TextImage, PrintError> {
        let wrong = || self.wrong("em, baseline, width, height, hexadecimal rows and words");
        let (fields, words) = self.rest(5);
        let [em, baseline, width, height, rows] = fields.as_slice() else {
            return Err(wrong());
        };
        let pixels = |word: &str| word.parse().map_err(|_| wrong());
        let image = TextImage {
            words: words.to_owned(),
            em_px: pixels(em)?,
            baseline_px: pixels(baseline)?,
            width_px: pixels(width)?,
            height_px: pixels(height)?,
            bits: bytes_of_hex(rows).ok_or(wrong())?,
        };
        if image.is_sound() { Ok(image) } else { Err(wrong()) }
    }
}

fn bytes_of_hex(digits: &str) -> Option<Vec<u8>> {
    let digit = |byte: u8| char::from(byte).to_digit(16);
    digits
        .as_bytes()
        .chunks(2)
        .map(|pair| match pair {
            [high, low] => u8::try_from(digit(*high)? * 16 + digit(*low)?).ok(),
            _ => None,
        })
        .collect()
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
