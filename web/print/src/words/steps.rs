//! The order of work, each step with its reason and the caution that arises
//! there. Common practice where no source is named.

use crate::mount::bracket_holes;
use tinwave_core::metal::Metal;
use tinwave_protocol::print::{Fixing, Mouth, PrintJob};

/// What a design must have for a sentence to hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum When {
    Always,
    Flange,
    /// Anything but a flange.
    NoFlange,
    Nut,
    Solder,
    /// Soldered to zinc or brass, which fumes.
    SolderPlated,
    /// Soldered to another metal.
    SolderPlain,
    Sleeve,
    Screws,
    MouthPart,
    MouthPlated,
    MouthPlain,
    Cap,
    Bracket,
}

impl When {
    /// Whether it holds for a job.
    pub(crate) fn holds(self, job: &PrintJob) -> bool {
        let fixing = job.panel.fixing;
        let plated = matches!(
            job.can.metal,
            Metal::Galvanised | Metal::Zinc | Metal::Brass
        );
        let flange = matches!(fixing, Fixing::Flange { .. });
        let solder = fixing == Fixing::Solder;
        let mouth = job.mouth != Mouth::Open;
        match self {
            Self::Always => true,
            Self::Flange => flange,
            Self::NoFlange => !flange,
            Self::Nut => fixing == Fixing::Nut,
            Self::Solder => solder,
            Self::SolderPlated => solder && plated,
            Self::SolderPlain => solder && !plated,
            Self::Sleeve => job.probe.sleeve_um.is_some(),
            Self::Screws => !job.screws.is_empty(),
            Self::MouthPart => mouth,
            Self::MouthPlated => mouth && plated,
            Self::MouthPlain => mouth && !plated,
            Self::Cap => job.cap.is_some(),
            Self::Bracket => bracket_holes(job).is_some(),
        }
    }
}

/// All steps in order: when they are due, what to do and why, what can hurt.
#[rustfmt::skip]
pub(crate) const STEP_LIST: &[(When, &str, &str)] = &[
    (When::Always,
     "Measure the can inside in three directions: {inside}. Every figure here holds for this can only.",
     "Cut rims are razor sharp: gloves."),
    (When::Always,
     "Cut out the drill template, stand the can on its {end}, wrap and tape the strip. If its ends don’t meet, the print or the diameter is wrong: find out now, not after drilling.",
     ""),
    (When::Always,
     "Punch every cross lightly through the paper, with wood behind the wall. A punched dot keeps the drill from wandering.",
     ""),
    (When::Flange,
     "Drill the four screw holes {screw hole} and all small holes first, then the large one {drill} from 3 mm up with a step drill. Big twist drills tear thin sheet, and small holes are drilled truer while the wall is still whole.",
     "Goggles: chips fly. Clamp the can over wood and never hold it by hand; thin sheet catches the drill and spins."),
    (When::NoFlange,
     "Drill 3 mm, then up to {drill} with a step drill, small holes first. Big twist drills tear thin sheet, and small holes are drilled truer while the wall is still whole.",
     "Goggles: chips fly. Clamp the can over wood and never hold it by hand; thin sheet catches the drill and spins."),
    (When::Always,
     "Take off the burrs inside and out, and rub the wall bright round the holes, lacquer and paint too. A burr changes the match, and lacquer breaks the contact.",
     "Chips and burrs cut: brush, don’t wipe by hand."),
    (When::Always,
     "Cut {start} of wire, longer than it will be, and straighten it. Metal comes off; it doesn’t go back on.",
     ""),
    (When::Always,
     "Tin both faces, the connector’s pin and the wire’s end, then join them with one short heat. Tinned faces flow together before the insulator softens.",
     "Pin, wire and can stay hot for minutes. Flux smoke harms the lungs: air the room. Use lead-free solder; with leaded, wash your hands."),
    (When::Always,
     "Trim on the cut gauge to {face} from the connector’s face, which is {length} from the inside wall, and file the tip flat. The length counts to the flat tip.",
     "Hold the loose end as you snip: it flies."),
    (When::Sleeve,
     "Slide the sleeve over the whole wire. The length was computed with it on.",
     ""),
    (When::Flange,
     "Screw the flange flat on the bright wall, wire through the middle of the hole. Current crosses here: a gap under the flange spoils the match.",
     ""),
    (When::Nut,
     "Draw up the nut with the toothed washer on bright metal, wire square to the wall. Current crosses here.",
     ""),
    (When::SolderPlated,
     "Tin the wall round the hole, spread the braid on it and solder all round. A gap in the ring leaks and shifts the match.",
     "Heated zinc gives off fumes that bring fever hours later: scrape it off first, iron only, outdoors."),
    (When::SolderPlain,
     "Tin the wall round the hole, spread the braid on it and solder all round. A gap in the ring leaks and shifts the match.",
     "Lining smokes when hot: rub it off first. The can stays hot for minutes."),
    (When::MouthPlated,
     "Make the {part} from its pattern and fix it round the rim, touching all round. Slits across the current radiate.",
     "Snips leave razor edges: gloves. Rivet zinc-coated sheet; soldered, its fumes bring fever."),
    (When::MouthPlain,
     "Make the {part} from its pattern and fix it round the rim, touching all round. Slits across the current radiate.",
     "Snips leave razor edges: gloves. Soldered sheet stays hot."),
    (When::Screws,
     "Put in the tuning screws, a nut on either side of the wall, to the depths of the list. The outer nut locks; the wall alone doesn’t hold a thread.",
     ""),
    (When::Always,
     "Seal the connector from outside with neutral-cure sealant, and drill a 3 mm drain at what will be the lowest point, away from the probe. Water inside detunes and rusts.",
     "The can is no vessel for food again."),
    (When::Cap,
     "Put on the cap of the stated sheet. A thicker cap, or a wet one, moves the match.",
     ""),
    (When::Bracket,
     "Fix the bracket, thread 1/4-20 (ISO 1222), with its middle {middle} from the closed end’s rim{place}. Without screws and bracket the whole weighs {weight} g and balances at {balance}. What is balanced stays where it points.{deepest}",
     ""),
    (When::Always,
     "Before you transmit or put it up: your country’s law counts the antenna’s gain, and local code decides on mast, bonding and lightning.",
     "Keep clear of power lines. Don’t look into a can that transmits. Two people on ladders and roofs, never in wind or thunder."),
];
