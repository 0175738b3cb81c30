//! Writing the design file. Every number of a design is a whole one of
//! thousandths, so its decimal text is exact.

use alloc::string::String;

use super::thousandths::push_thousandths;
use crate::design::{Design, Mouth, Probe, Screw, Sweep};

/// Writes a design file that [`super::design_from_tree`] reads back unchanged.
#[must_use]
pub fn design_to_json(design: &Design) -> String {
    let mut file = Writer {
        text: String::from("{\n"),
        first: true,
    };
    file.number("schema", 1000);
    file.word("name", &design.name);
    file.object("band", |file| {
        file.number("low_mhz", design.band.low_khz);
        file.number("high_mhz", design.band.high_khz);
    });
    file.object("can", |file| {
        let can = &design.can;
        file.number("inside_diameter_mm", can.inside_diameter_um);
        file.number("open_length_mm", can.open_length_um);
        file.number("wall_mm", can.wall_um);
        file.number("base_recess_mm", can.base_recess_um);
        file.word("metal", can.metal.key());
    });
    file.object("probe", |file| write_probe(file, &design.probe));
    file.object("mouth", |file| write_mouth(file, design.mouth));
    file.screws(&design.screws);
    if let Some(sweep) = design.sweep {
        file.object("sweep", |file| write_sweep(file, sweep));
    }
    file.text.push_str("\n}");
    file.text
}

fn write_probe(file: &mut Writer, probe: &Probe) {
    file.number("wire_diameter_mm", probe.wire_diameter_um);
    file.number("length_mm", probe.length_um);
    file.number("backshort_distance_mm", probe.backshort_distance_um);
    if let Some(hole) = probe.hole_diameter_um {
        file.number("hole_diameter_mm", hole);
    }
    file.number("reference_ohm", probe.reference_milliohm);
    file.number("shunt_pf", probe.shunt_ff);
    if let Some(sleeve) = probe.sleeve {
        file.object("sleeve", |file| {
            file.number("outside_diameter_mm", sleeve.outside_diameter_um);
            file.number("permittivity", sleeve.permittivity_milli);
        });
    }
}

fn write_mouth(file: &mut Writer, mouth: Mouth) {
    match mouth {
        Mouth::Open => file.word("kind", "open"),
        Mouth::Absorbing => file.word("kind", "absorbing"),
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => {
            file.word("kind", "funnel");
            file.number("mouth_diameter_mm", mouth_diameter_um);
            file.number("half_angle_deg", half_angle_millideg);
        }
        Mouth::Flange {
            outside_diameter_um,
        } => {
            file.word("kind", "flange");
            file.number("outside_diameter_mm", outside_diameter_um);
        }
        Mouth::Choke {
            outside_diameter_um,
            depth_um,
        } => {
            file.word("kind", "choke");
            file.number("outside_diameter_mm", outside_diameter_um);
            file.number("depth_mm", depth_um);
        }
    }
}

fn write_sweep(file: &mut Writer, sweep: Sweep) {
    file.number("low_mhz", sweep.low_khz);
    file.number("high_mhz", sweep.high_khz);
    file.number("points", sweep.points.saturating_mul(1000));
}

/// A file being written: one member a line, inner objects on a line of their own.
struct Writer {
    text: String,
    /// Whether the next member is its object's first.
    first: bool,
}

impl Writer {
    fn key(&mut self, key: &str) {
        if !core::mem::take(&mut self.first) {
            self.text.push_str(",\n");
        }
        self.text.push('"');
        self.text.push_str(key);
        self.text.push_str("\": ");
    }

    fn number(&mut self, key: &str, thousandths: u32) {
        self.key(key);
        push_thousandths(&mut self.text, f64::from(thousandths));
    }

    fn word(&mut self, key: &str, word: &str) {
        self.key(key);
        push_quoted(&mut self.text, word);
    }

    fn object(&mut self, key: &str, members: impl FnOnce(&mut Self)) {
        self.key(key);
        self.braces(members);
    }

    fn braces(&mut self, members: impl FnOnce(&mut Self)) {
        self.text.push_str("{\n");
        self.first = true;
        members(self);
        self.first = false;
        self.text.push_str("\n}");
    }

    fn screws(&mut self, screws: &[Screw]) {
        self.key("screws");
        self.text.push('[');
        for (index, screw) in screws.iter().enumerate() {
            if index > 0 {
                self.text.push_str(", ");
            }
            self.braces(|file| {
                file.number("axial_mm", screw.axial_um);
                file.key("angle_deg");
                push_thousandths(&mut file.text, f64::from(screw.angle_millideg));
                file.number("depth_mm", screw.depth_um);
                file.number("diameter_mm", screw.diameter_um);
            });
        }
        self.text.push(']');
    }
}

/// Writes a JSON string (RFC 8259, section 7).
fn push_quoted(text: &mut String, word: &str) {
    text.push('"');
    for character in word.chars() {
        match character {
            '"' | '\\' => {
                text.push('\\');
                text.push(character);
            }
            '\u{0}'..='\u{1f}' => {
                text.push_str("\\u00");
                for digit in [u32::from(character) / 16, u32::from(character) % 16] {
                    text.extend(char::from_digit(digit, 16));
                }
            }
            _ => text.push(character),
        }
    }
    text.push('"');
}
