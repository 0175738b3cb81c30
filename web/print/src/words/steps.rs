//! The order of work, each step with its reason and the caution that arises
//! there. Common practice where no source is named.

use super::parts::length_from_face;
use super::{SPARE_WIRE_UM, diameter, length, metal};
use crate::figure::{rounded, whole};
use crate::fill::fill;
use crate::job::{Fixing, Metal, Mouth, PrintJob, Rim};
use crate::mount::{balance, bracket_holes};

/// A step in words.
pub(crate) struct Step {
    /// What to do and why.
    pub(crate) words: String,
    /// What can hurt; may be empty.
    pub(crate) caution: String,
}

fn step(words: impl Into<String>, caution: impl Into<String>) -> Step {
    Step {
        words: words.into(),
        caution: caution.into(),
    }
}

/// Whether heating the metal gives off fumes of zinc.
const fn is_plated(metal: Metal) -> bool {
    matches!(metal, Metal::Galvanised | Metal::Zinc | Metal::Brass)
}

/// All steps in order.
pub(crate) fn steps(job: &PrintJob) -> Vec<Step> {
    let mut steps = marking(job);
    steps.extend(drilling(job));
    steps.extend(soldering(job));
    steps.extend(mouth(job));
    steps.extend(finishing(job));
    steps
}

fn marking(job: &PrintJob) -> Vec<Step> {
    let rim = match job.rim {
        Rim::Closed => "closed end",
        Rim::Open => "mouth",
    };
    vec![
        step(
            fill(
                "Measure the can inside in three directions: {}. Every figure here holds for this can only.",
                &[&diameter(job, job.can.inside_diameter_um())],
            ),
            "Cut rims are razor sharp: gloves.",
        ),
        step(
            fill(
                "Cut out the drill template, stand the can on its {}, wrap and tape the strip. If its ends don’t meet, the print or the diameter is wrong: find out now, not after drilling.",
                &[rim],
            ),
            "",
        ),
        step(
            "Punch every cross lightly through the paper, with wood behind the wall. A punched dot keeps the drill from wandering.",
            "",
        ),
    ]
}

fn drilling(job: &PrintJob) -> Vec<Step> {
    let screws = match job.panel.fixing {
        Fixing::Flange { hole_um, .. } => fill(
            "Drill the four screw holes {} and all small holes first, then the large one {} from 3 mm up with a step drill",
            &[&diameter(job, hole_um), &diameter(job, job.panel.drill_um)],
        ),
        Fixing::Nut | Fixing::Solder => fill(
            "Drill 3 mm, then up to {} with a step drill, small holes first",
            &[&diameter(job, job.panel.drill_um)],
        ),
    };
    vec![
        step(
            fill(
                "{}. Big twist drills tear thin sheet, and small holes are drilled truer while the wall is still whole.",
                &[&screws],
            ),
            "Goggles: chips fly. Clamp the can over wood and never hold it by hand; thin sheet catches the drill and spins.",
        ),
        step(
            fill(
                "Take off the burrs inside and out, and rub the {} bright round the holes, lacquer and paint too. A burr changes the match, and lacquer breaks the contact.",
                &[metal(job.can.metal)],
            ),
            "Chips and burrs cut: brush, don’t wipe by hand.",
        ),
    ]
}

fn soldering(job: &PrintJob) -> Vec<Step> {
    let face = length_from_face(job);
    let mut steps = vec![
        step(
            fill(
                "Cut {} of wire, longer than it will be, and straighten it. Metal comes off; it doesn’t go back on.",
                &[&length(job, face.saturating_add(SPARE_WIRE_UM))],
            ),
            "",
        ),
        step(
            "Tin both faces, the connector’s pin and the wire’s end, then join them with one short heat. Tinned faces flow together before the insulator softens.",
            "Pin, wire and can stay hot for minutes. Flux smoke harms the lungs: air the room. Use lead-free solder; with leaded, wash your hands.",
        ),
        step(
            fill(
                "Trim on the cut gauge to {} from the connector’s face, which is {} from the inside wall, and file the tip flat. The length counts to the flat tip.",
                &[
                    &job.unit.fine_length(i64::from(face)),
                    &job.unit.fine_length(i64::from(job.probe.length_um)),
                ],
            ),
            "Hold the loose end as you snip: it flies.",
        ),
    ];
    if job.probe.sleeve_um.is_some() {
        steps.push(step(
            "Slide the sleeve over the whole wire. The length was computed with it on.",
            "",
        ));
    }
    steps.push(fixing(job));
    steps
}

fn fixing(job: &PrintJob) -> Step {
    let plated = is_plated(job.can.metal);
    match job.panel.fixing {
        Fixing::Flange { .. } => step(
            "Screw the flange flat on the bright wall, wire through the middle of the hole. Current crosses here: a gap under the flange spoils the match.",
            "",
        ),
        Fixing::Nut => step(
            "Draw up the nut with the toothed washer on bright metal, wire square to the wall. Current crosses here.",
            "",
        ),
        Fixing::Solder => step(
            "Tin the wall round the hole, spread the braid on it and solder all round. A gap in the ring leaks and shifts the match.",
            if plated {
                "Heated zinc gives off fumes that bring fever hours later: scrape it off first, iron only, outdoors."
            } else {
                "Lining smokes when hot: rub it off first. The can stays hot for minutes."
            },
        ),
    }
}

fn mouth(job: &PrintJob) -> Vec<Step> {
    let what = match job.mouth {
        Mouth::Open => return tuning(job),
        Mouth::Funnel { .. } => "funnel",
        Mouth::Flange { .. } => "flange",
        Mouth::Choke { .. } => "choke cup",
    };
    let caution = if is_plated(job.can.metal) {
        "Snips leave razor edges: gloves. Rivet zinc-coated sheet; soldered, its fumes bring fever."
    } else {
        "Snips leave razor edges: gloves. Soldered sheet stays hot."
    };
    let words = fill(
        "Make the {} from its pattern and fix it round the rim, touching all round. Slits across the current radiate.",
        &[what],
    );
    let mut steps = vec![step(words, caution)];
    steps.extend(tuning(job));
    steps
}

fn tuning(job: &PrintJob) -> Vec<Step> {
    if job.screws.is_empty() {
        return Vec::new();
    }
    vec![step(
        "Put in the tuning screws, a nut on either side of the wall, to the depths of the list. The outer nut locks; the wall alone doesn’t hold a thread.",
        "",
    )]
}

fn finishing(job: &PrintJob) -> Vec<Step> {
    let mut steps = vec![step(
        "Seal the connector from outside with neutral-cure sealant, and drill a 3 mm drain at what will be the lowest point, away from the probe. Water inside detunes and rusts.",
        "The can is no vessel for food again.",
    )];
    if job.cap.is_some() {
        steps.push(step(
            "Put on the cap of the stated sheet. A thicker cap, or a wet one, moves the match.",
            "",
        ));
    }
    if let Some(step) = bracket(job) {
        steps.push(step);
    }
    steps
}

fn bracket(job: &PrintJob) -> Option<Step> {
    let ([lower, upper], bracket) = bracket_holes(job)?;
    let balance = balance(job)?;
    let middle = lower.midpoint(upper).saturating_add(job.can.base_um());
    let near = if middle.abs_diff(balance.from_closed_rim_um) < 1_000 {
        ". "
    } else {
        ", as near the balance point as the can’s length lets it be. "
    };
    let mut words = fill(
        "Fix the bracket, thread 1/4-20 (ISO 1222), with its middle {} from the closed end’s rim{}Without screws and bracket the whole weighs {} g and balances at {}. What is balanced stays where it points.",
        &[
            &length(job, middle),
            near,
            &whole(rounded(i64::from(balance.mass_mg), 1_000)),
            &length(job, balance.from_closed_rim_um),
        ],
    );
    if let Some(deepest) = bracket.deepest_um {
        words.push_str(" Nothing may stick in deeper than ");
        words.push_str(&length(job, deepest));
        words.push_str(", or the VSWR moves by 0.1.");
    }
    let caution = "Keep clear of power lines; don’t look into a can that transmits.";
    Some(step(words, caution))
}
