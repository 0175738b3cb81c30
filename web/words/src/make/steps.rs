//! The steps of the work: one figure each, the face that it is measured from, and how it
//! is checked.

use tinwave_core::design::Mouth;
use tinwave_core::ruler::RulerFigures;
use tinwave_maker::bench::{CapSheet, Clamp, Step, clamp_of, screw_for_hole};
use tinwave_maker::connectors::{Mounting, connector};
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::workpiece::Workpiece;

use super::{cap_sheet_in_words, drill, drilled, ruled, ruler};

/// What the words of a step are made from.
#[derive(Clone, Copy, Debug)]
pub struct BenchFacts<'a> {
    /// The work.
    pub work: &'a Workpiece,
    /// The unit that people read.
    pub unit: LengthUnit,
    /// The cap that was chosen.
    pub cap: Option<CapSheet>,
}

/// A step in words.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StepWords {
    /// What is to be done: the heading.
    pub title: &'static str,
    /// The same, short, for the list.
    pub short: &'static str,
    /// Its one figure, without its unit; empty where it has none.
    pub value: String,
    /// The figure's unit.
    pub unit: &'static str,
    /// The face that it is measured from, and which way.
    pub from: String,
    /// A way to check it, in a few words; may be empty.
    pub check: String,
    /// What that means, or how it is done.
    pub how: String,
    /// What is on the button: that it is done.
    pub done: &'static str,
    /// The figure for the list.
    pub line: String,
}

/// A step in words.
#[must_use]
pub fn step(step: Step, facts: &BenchFacts) -> StepWords {
    match step {
        Step::Mark => mark(facts),
        Step::Drill => drill_hole(facts),
        Step::RubOff => rub_off(facts),
        Step::CutWire => cut_wire(facts),
        Step::Solder => solder(facts),
        Step::Sleeve => sleeve(facts),
        Step::Fix => fix(facts),
        Step::Screws => screws(facts),
        Step::MouthPart => mouth_part(facts),
        Step::Cap => cap(facts),
        Step::Before => before(),
    }
}

fn mark(facts: &BenchFacts) -> StepWords {
    let figures = RulerFigures::new(&facts.work.design);
    let um = figures.hole_from_closed_rim_um;
    let whole = ruled(figures.overall_length_um, facts.unit);
    let other = figures.hole_from_open_rim_um;
    let check = |um| format!("Check from the mouth: {}.", ruled(um, facts.unit));
    StepWords {
        title: "Mark the middle of the hole",
        short: "Mark the hole",
        value: ruler(um, facts.unit),
        unit: facts.unit.symbol(),
        from: "from the closed end’s outer rim, where a ruler touches".into(),
        check: other.map_or_else(String::new, check),
        how: format!(
            "The whole can, rim to rim, is {whole}. If the two don’t meet, measure the recess again. Punch the mark lightly, so that the drill does not wander."
        ),
        done: "Marked",
        line: ruled(um, facts.unit),
    }
}

fn drill_hole(facts: &BenchFacts) -> StepWords {
    let work = facts.work;
    let name = connector(work.connector.kind).name;
    let base = StepWords {
        title: "Drill the hole",
        short: "Drill it",
        done: "Drilled",
        ..StepWords::default()
    };
    let Some(um) = work.connector.drill_um() else {
        return StepWords {
            from: "This connector’s hole is not known: measure the part that goes through the wall, or choose another fixing under Feed.".into(),
            ..base
        };
    };
    let (from, check, how) = match clamp_of(work.connector) {
        Clamp::Screws(flange) => (
            format!("across, for the insulator of the {name}"),
            format!(
                "Four screw holes: {} across, {} apart in a square round it.",
                drilled(flange.hole_um, facts.unit),
                drilled(flange.hole_pitch_um, facts.unit)
            ),
            "Drill the small holes first, while the wall is whole. Then the middle from 3 mm (1/8 in) up with a step drill: big twist drills tear thin sheet.",
        ),
        Clamp::Nut => (
            format!("across, for the thread of the {name}"),
            String::new(),
            "Drill 3 mm (1/8 in) first, then up with a step drill: big twist drills tear thin sheet.",
        ),
        Clamp::Solder => (
            "across, for the cable’s insulator; the braid stays outside".into(),
            String::new(),
            "Drill from 2 mm (5/64 in) up. The insulator should just go through.",
        ),
    };
    StepWords {
        value: drill(um, facts.unit),
        unit: facts.unit.symbol(),
        from,
        check,
        how: how.into(),
        line: drilled(um, facts.unit),
        ..base
    }
}

fn rub_off(facts: &BenchFacts) -> StepWords {
    let base = StepWords {
        title: "Rub the wall bright",
        short: "Rub off the lacquer",
        check: "Take off the burrs, inside and out.".into(),
        how: "A burr changes the match. Under lacquer or paint the connector touches nothing: rub until the metal shines, and fix it the same day.".into(),
        done: "Bright",
        line: "bright metal".into(),
        ..StepWords::default()
    };
    match clamp_of(facts.work.connector) {
        Clamp::Screws(flange) => StepWords {
            value: drill(flange.square_um, facts.unit),
            unit: facts.unit.symbol(),
            from: "square round the hole, outside, where the flange lies; and the hole’s edge inside".into(),
            ..base
        },
        Clamp::Nut => StepWords {
            from: "Round the hole, on both sides of the wall: under the nut, the toothed washer and the socket’s shoulder".into(),
            ..base
        },
        Clamp::Solder => StepWords {
            value: ruler(10_000, facts.unit),
            unit: facts.unit.symbol(),
            from: "all round the hole, outside, where the braid is soldered".into(),
            ..base
        },
    }
}

/// Wire that is held while it is trimmed. Common practice, no source.
const SPARE_WIRE_UM: u32 = 10_000;

fn cut_wire(facts: &BenchFacts) -> StepWords {
    let figures = RulerFigures::new(&facts.work.design);
    let um = figures.wire_from_connector_face_um;
    let inside = ruled(figures.wire_from_inner_wall_um, facts.unit);
    let start = ruled(um.saturating_add(SPARE_WIRE_UM), facts.unit);
    StepWords {
        title: "Cut the wire to length",
        short: "Cut the wire",
        value: ruler(um, facts.unit),
        unit: facts.unit.symbol(),
        from: match facts.work.connector.mounting {
            Mounting::Flange => "from the flange’s face, which lies on the can, to the flat tip",
            Mounting::SingleHole => "from the shoulder, which seats on the can, to the flat tip",
            Mounting::Soldered => {
                "from the end of the braid, which lies on the can, to the flat tip"
            }
        }
        .into(),
        check: format!("Check from the inner wall: {inside}."),
        how: format!(
            "Begin with {start} of straight wire and come down to it with a file: what is off is off. The length counts to the flat tip."
        ),
        done: "Cut",
        line: ruled(um, facts.unit),
    }
}

fn solder(facts: &BenchFacts) -> StepWords {
    let wire = drilled(facts.work.design.probe.wire_diameter_um, facts.unit);
    StepWords {
        title: "Solder the wire to the socket",
        short: "Solder wire to socket",
        value: "90".into(),
        unit: "°",
        from: "between the wire and the socket’s face, seen from two sides".into(),
        check: format!("The wire is {wire} thick."),
        how: "Tin the pin and the wire’s end first, then join them with one short heat: long heat softens the insulator. Then measure the length again.".into(),
        done: "Soldered",
        line: "upright".into(),
    }
}

fn sleeve(facts: &BenchFacts) -> StepWords {
    let probe = &facts.work.design.probe;
    let across = probe.sleeve.map_or(0, |sleeve| sleeve.outside_diameter_um);
    StepWords {
        title: "Slide the sleeve over the wire",
        short: "Slide the sleeve on",
        value: ruler(probe.length_um, facts.unit),
        unit: facts.unit.symbol(),
        from: "of sleeve, from the inner wall to the tip: over the whole wire".into(),
        check: format!("The sleeve is {} across.", drilled(across, facts.unit)),
        how: "The wire’s length was worked out with it on: without it the match is elsewhere."
            .into(),
        done: "On",
        line: ruled(probe.length_um, facts.unit),
    }
}

fn fix(facts: &BenchFacts) -> StepWords {
    let base = StepWords {
        title: "Fix the socket",
        short: "Fix the socket",
        done: "Fixed",
        ..StepWords::default()
    };
    match clamp_of(facts.work.connector) {
        Clamp::Screws(flange) => StepWords {
            value: "4".into(),
            unit: "screws",
            from: format!(
                "{}, with nuts and toothed washers, through the {} holes",
                screw_for_hole(flange.hole_um),
                drilled(flange.hole_um, facts.unit)
            ),
            check: "The wire stands in the middle of the hole.".into(),
            how: "Draw the screws up crosswise, the flange flat on bright metal. Current crosses here: a gap under the flange spoils the match.".into(),
            line: "four screws".into(),
            ..base
        },
        Clamp::Nut => StepWords {
            value: "1".into(),
            unit: "nut",
            from: "with its toothed washer, on bright metal".into(),
            check: "The wire stands square to the wall.".into(),
            how: "Draw it up firmly. Current crosses here: what turns by hand, leaks.".into(),
            line: "one nut".into(),
            ..base
        },
        Clamp::Solder => StepWords {
            title: "Solder the cable to the can",
            short: "Solder the cable on",
            from: "The braid spread out flat, soldered all round the hole".into(),
            check: "The wire stands in the middle of the hole, square to the wall.".into(),
            how: "Tin the wall and the braid first. A gap in the ring leaks and shifts the match."
                .into(),
            done: "Soldered",
            line: "all round".into(),
            ..base
        },
    }
}

fn screws(facts: &BenchFacts) -> StepWords {
    let screws = &facts.work.design.screws;
    let rim = RulerFigures::new(&facts.work.design);
    let base_um = rim
        .hole_from_closed_rim_um
        .saturating_sub(facts.work.design.probe.backshort_distance_um);
    let places: Vec<String> = screws
        .iter()
        .map(|screw| {
            format!(
                "{} deep, {} from the closed end’s outer rim",
                ruled(screw.depth_um, facts.unit),
                ruled(screw.axial_um.saturating_add(base_um), facts.unit)
            )
        })
        .collect();
    let depth = screws.first().map_or(0, |screw| screw.depth_um);
    StepWords {
        title: "Put the tuning screws in",
        short: "Tuning screws",
        value: ruler(depth, facts.unit),
        unit: facts.unit.symbol(),
        from: "deep, from the inner wall to the screw’s flat end".into(),
        check: format!("{}.", places.join("; ")),
        how:
            "A nut on either side of the wall: the outer one locks. The wall alone holds no thread."
                .into(),
        done: "In",
        line: ruled(depth, facts.unit),
    }
}

fn mouth_part(facts: &BenchFacts) -> StepWords {
    let (short, um, from) = match facts.work.design.mouth {
        Mouth::Funnel {
            mouth_diameter_um, ..
        } => (
            "Make the funnel",
            mouth_diameter_um,
            "across its wide end, inside",
        ),
        Mouth::Flange {
            outside_diameter_um,
        } => (
            "Make the ring",
            outside_diameter_um,
            "across the ring, outside",
        ),
        Mouth::Choke {
            outside_diameter_um,
            ..
        } => (
            "Make the cup",
            outside_diameter_um,
            "across the cup, inside",
        ),
        Mouth::Open | Mouth::Absorbing => ("Make the mouth’s part", 0, ""),
    };
    StepWords {
        title: match facts.work.design.mouth {
            Mouth::Funnel { .. } => "Make the funnel and fix it",
            Mouth::Flange { .. } => "Make the ring and fix it",
            _ => "Make the cup and fix it",
        },
        short,
        value: ruler(um, facts.unit),
        unit: facts.unit.symbol(),
        from: from.into(),
        check: "It touches the rim all round.".into(),
        how: "Its pattern is among the printed sheets. Rivet or solder it; slits across the current radiate.".into(),
        done: "Fixed",
        line: ruled(um, facts.unit),
    }
}

fn cap(facts: &BenchFacts) -> StepWords {
    let base = StepWords {
        title: "Cap the mouth, and let water out",
        short: "Cap the mouth",
        check: "Drill a drain of 3 mm (1/8 in) at what will be the lowest point, away from the wire.".into(),
        how: "Seal the connector from outside with neutral-cure sealant. A cap that is thicker or wet moves the match.".into(),
        done: "Capped",
        ..StepWords::default()
    };
    match facts.cap {
        Some(sheet) => {
            let um = sheet.sheet().thickness_um;
            StepWords {
                value: ruler(um, facts.unit),
                unit: facts.unit.symbol(),
                from: cap_sheet_in_words(sheet).into(),
                line: ruled(um, facts.unit),
                ..base
            }
        }
        None => StepWords {
            from: "No cap is chosen: indoors none is needed. Choose one below and its effect is worked out.".into(),
            line: "none".into(),
            ..base
        },
    }
}

fn before() -> StepWords {
    StepWords {
        title: "Before you transmit or put it up",
        short: "Before you transmit or put it up",
        from:
            "Power, law, height and weather: read these once more with the finished piece in hand."
                .into(),
        done: "Seen to",
        ..StepWords::default()
    }
}
