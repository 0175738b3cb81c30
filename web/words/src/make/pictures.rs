//! Words in and about the pictures of the steps.

use tinwave_maker::bench::Step;

/// The can's closed end.
#[must_use]
pub const fn closed_end() -> &'static str {
    "closed end"
}

/// Its mouth.
#[must_use]
pub const fn mouth() -> &'static str {
    "mouth"
}

/// The connector's face.
#[must_use]
pub const fn face() -> &'static str {
    "face"
}

/// The wall of the can.
#[must_use]
pub const fn wall() -> &'static str {
    "wall"
}

/// The wire's end.
#[must_use]
pub const fn tip() -> &'static str {
    "flat tip"
}

/// Where metal is rubbed bright.
#[must_use]
pub const fn bright() -> &'static str {
    "bright"
}

/// The hole that lets water out.
#[must_use]
pub const fn drain() -> &'static str {
    "drain, lowest point"
}

/// The cap over the mouth.
#[must_use]
pub const fn cap_here() -> &'static str {
    "cap"
}

/// The inside of the can.
#[must_use]
pub const fn inside() -> &'static str {
    "inside"
}

/// What a step's picture shows, for those who don't see it; `figure` and `from` are the
/// step's own.
#[must_use]
pub fn shows(step: Step, figure: &str, from: &str) -> String {
    match step {
        Step::Mark => format!("The can from the side of the hole: {figure} {from}."),
        Step::Drill => format!("The hole from outside: {figure} {from}."),
        Step::RubOff => format!("The wall round the hole: bright metal, {figure} {from}."),
        Step::CutWire => format!("The connector with its wire: {figure} {from}."),
        Step::Solder => "The wire stands square on the socket’s face.".into(),
        Step::Sleeve => "The wire with its sleeve, from the wall to the tip.".into(),
        Step::Fix => "The socket on the wall in section, its wire inside the can.".into(),
        Step::Screws => "The can from the side, with its tuning screws.".into(),
        Step::MouthPart => format!("The can with what stands at its mouth: {figure} {from}."),
        Step::Cap => "The can with a cap over its mouth and a drain at its lowest point.".into(),
        Step::Before => String::new(),
    }
}
