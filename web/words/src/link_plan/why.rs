//! How the station's figures are worked out, how sure they are, and by whom.

use tinwave_core::radio_link::End;
use tinwave_maker::link_plan::{PlanAnswer, SensitivityBy};

use super::answer::knowledge;

/// Why a figure is what it is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reasons {
    /// How it is worked out.
    pub how: String,
    /// How far it may be off.
    pub sure: String,
    /// The published source.
    pub source: String,
}

/// Of the margin.
#[must_use]
pub fn why_margin(answer: &PlanAnswer) -> Reasons {
    let gain = answer
        .end(End::A)
        .antenna
        .as_ref()
        .map_or("", |antenna| knowledge(antenna.knowledge));
    let needed = match answer.plan.sensitivity {
        SensitivityBy::Table => {
            "the least that the standard asks of every receiver; real ones are some 8 to 15 dB better (common practice, no source)"
        }
        SensitivityBy::Stated => "as the data sheet has it",
        SensitivityBy::Noise => "noise of the bandwidth, noise figure and the ratio wanted",
    };
    Reasons {
        how: format!(
            "Power, both gains and every loss from the radio’s socket to the other one’s, less what the receiver needs. Gain here: {gain}. Needed: {needed}."
        ),
        sure: "Over a clear path within some 3 dB; reflections move it by more from place to place. Ground that is not flat, and several obstacles, are not in it.".to_owned(),
        source: "D. M. Pozar, Microwave Engineering, 4th ed. 2012, section 14.2; ITU-R P.525; IEEE Std 802.11-2020".to_owned(),
    }
}

/// Of the reach.
#[must_use]
pub fn why_reach() -> Reasons {
    Reasons {
        how: "The distance at which the margin has fallen to what is kept against fading, if only the loss of free space grows: walls, trees and obstacles stay as they are.".to_owned(),
        sure: "The most that it can be: hills, the Earth’s curve and low ends take more the farther it goes. 3 dB in the margin are 40 % in the distance.".to_owned(),
        source: "ITU-R P.525".to_owned(),
    }
}

/// Of the aim.
#[must_use]
pub fn why_aim(answer: &PlanAnswer) -> Reasons {
    let of_pattern = answer.end(End::A).aim.is_some_and(|aim| aim.of_pattern);
    let how = if of_pattern {
        "The turn at which the computed pattern has fallen by 1 dB, to the worse side and in the plane where that comes first."
    } else {
        "The turn at which the law of the main lobe has fallen by 1 dB, 12 (turn/width)²."
    };
    Reasons {
        how: how.to_owned(),
        sure: "To a few degrees; walls and mast near the mouth bend the beam.".to_owned(),
        source: "Law of the main lobe: ITU-R F.1336, form from memory".to_owned(),
    }
}

/// Of the distance to keep.
#[must_use]
pub fn why_keep_away() -> Reasons {
    Reasons {
        how: "Where the power density has fallen to the limit for the general public, by the stricter of two standards and for the stronger end: sent all the time, straight ahead, all of it thrown back once more (four times the density). Close to the mouth the careful bound of its near field holds, and by the American rules nothing below 20 cm is said.".to_owned(),
        sure: "On the safe side. Never look into a can that transmits, whatever the figure. It is the can alone: with a dish round it far more distance is needed.".to_owned(),
        source: "ICNIRP 2020, Table 5, from memory; 47 CFR 1.1310; FCC OET Bulletin 65, ed. 97-01".to_owned(),
    }
}
