//! Cautions, each at the work where it arises.
//!
//! They defer to local codes and licensed practice.

use tinwave_core::metal::Metal;

/// A caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Caution {
    /// Closed and pressurised cans.
    PressurisedCan,
    /// Cans that held fuel or solvent.
    FuelCan,
    /// Eyes while drilling and cutting.
    EyeProtection,
    /// Sharp edges and chips.
    DrillEdges,
    /// Fumes of zinc platings.
    PlatedFumes,
    /// Fumes of brass.
    BrassFumes,
    /// Cadmium on old hardware.
    Cadmium,
    /// Fumes of flux, and lead.
    SolderFlux,
    /// Insulators of PTFE that get too hot.
    HotInsulator,
    /// Smoke of lacquers and linings.
    Coatings,
    /// Never food again.
    FoodSafe,
    /// An analyser that gets power.
    Analyser,
    /// Transmit power near eyes.
    PowerNearEyes,
    /// Legal limits of power.
    LegalLimits,
    /// Certified devices and their antennas.
    CertifiedDevice,
    /// Overhead power lines.
    PowerLines,
    /// Lightning and bonding.
    Lightning,
    /// Falls from ladders and roofs.
    Falls,
    /// Wind, and what falls down.
    Mounting,
    /// Water in the can.
    Water,
}

/// The work at which a caution arises.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Occasion {
    /// Cutting and drilling.
    Drill,
    /// Soldering.
    Solder,
    /// Measuring.
    Measure,
    /// Transmitting.
    Power,
    /// Putting it up.
    Mount,
}

/// A caution in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CautionText {
    /// Which.
    pub caution: Caution,
    /// Where it arises.
    pub occasion: Occasion,
    /// A few words.
    pub headline: &'static str,
    /// What happens and what to do.
    pub text: &'static str,
    /// Where it is from.
    pub source: &'static str,
}

impl Caution {
    /// Every caution, by occasion, the gravest first.
    pub const ALL: [Self; 20] = [
        Self::PressurisedCan,
        Self::FuelCan,
        Self::EyeProtection,
        Self::DrillEdges,
        Self::PlatedFumes,
        Self::BrassFumes,
        Self::Cadmium,
        Self::HotInsulator,
        Self::SolderFlux,
        Self::Coatings,
        Self::FoodSafe,
        Self::Analyser,
        Self::PowerNearEyes,
        Self::LegalLimits,
        Self::CertifiedDevice,
        Self::PowerLines,
        Self::Lightning,
        Self::Falls,
        Self::Mounting,
        Self::Water,
    ];
}

impl Occasion {
    /// Every occasion, in the order of the work.
    pub const ALL: [Self; 5] = [
        Self::Drill,
        Self::Solder,
        Self::Measure,
        Self::Power,
        Self::Mount,
    ];
}

/// An occasion's name, as a heading.
#[must_use]
pub const fn occasion(occasion: Occasion) -> &'static str {
    match occasion {
        Occasion::Drill => "Before you drill or cut",
        Occasion::Solder => "Before you solder",
        Occasion::Measure => "Before you measure",
        Occasion::Power => "Before you transmit",
        Occasion::Mount => "Before you put it up",
    }
}

/// A caution in words.
#[must_use]
pub const fn caution(caution: Caution) -> CautionText {
    let (occasion, (headline, text, source)) = match caution {
        Caution::PressurisedCan
        | Caution::FuelCan
        | Caution::EyeProtection
        | Caution::DrillEdges => (Occasion::Drill, drill(caution)),
        Caution::PlatedFumes
        | Caution::BrassFumes
        | Caution::Cadmium
        | Caution::HotInsulator
        | Caution::SolderFlux
        | Caution::Coatings
        | Caution::FoodSafe => (Occasion::Solder, solder(caution)),
        Caution::Analyser => (Occasion::Measure, measure()),
        Caution::PowerNearEyes | Caution::LegalLimits | Caution::CertifiedDevice => {
            (Occasion::Power, power(caution))
        }
        Caution::PowerLines
        | Caution::Lightning
        | Caution::Falls
        | Caution::Mounting
        | Caution::Water => (Occasion::Mount, mount(caution)),
    };
    CautionText {
        caution,
        occasion,
        headline,
        text,
        source,
    }
}

/// Headline, text, source.
type Words = (&'static str, &'static str, &'static str);

const fn drill(caution: Caution) -> Words {
    match caution {
        Caution::PressurisedCan => (
            "Never open a can under pressure",
            "Spray cans, gas cartridges and any can that is still closed can burst when they are drilled or warmed. Use only a can that is open already, with nothing left in it.",
            "Common practice, no source",
        ),
        Caution::FuelCan => (
            "No can that held fuel, solvent or poison",
            "Vapour stays in seams and lacquer: a drill’s spark or a soldering iron sets it off, even in a can that smells of nothing. Rinsing does not make it safe. Take another can.",
            "Workplace guidance on hot work on drums and tanks, from memory",
        ),
        Caution::EyeProtection => (
            "Protect your eyes",
            "Drills and shears throw chips. Wear eye protection, and clamp the can over a block of wood; never hold thin sheet by hand while drilling.",
            "EN ISO 16321, before it EN 166 (eye protection); common practice",
        ),
        _ => (
            "Cut sheet is razor sharp",
            "Rims and drilled holes cut skin. Wear cut-resistant gloves, but none near a turning drill; take off the burrs inside and out, and fold or tape the open rim. Sweep up the chips.",
            "EN 388 (gloves); common practice",
        ),
    }
}

const fn solder(caution: Caution) -> Words {
    match caution {
        Caution::PlatedFumes => (
            "Heated zinc gives off fumes that make you ill",
            "Galvanised and zinc sheet gives off zinc oxide when it is heated hard: fever hours later. Scrape the plating off round the joint, use an iron and no torch, and work outdoors or with extraction. Better: screw the connector on.",
            "Published guidance on welding fume (metal fume fever)",
        ),
        Caution::BrassFumes => (
            "Overheated brass gives off zinc and lead",
            "An iron at soldering heat does no harm. A torch that makes brass glow drives zinc out of it, and free-cutting brass holds lead as well. Use an iron, and work outdoors or with extraction.",
            "Published guidance on welding fume (metal fume fever); EN 12164 (lead in free-cutting brass, from memory)",
        ),
        Caution::Cadmium => (
            "Old plated hardware may be cadmium",
            "Old screws, nuts and sockets of a yellowish or dull silver plating may carry cadmium; its fume can kill days later. Don’t heat, sand or file them: take new ones.",
            "Published guidance on cadmium fume, from memory",
        ),
        Caution::HotInsulator => (
            "Don’t overheat the socket’s white insulator",
            "PTFE gives off poisonous fumes from about 260 °C upwards, far worse when it glows, and they make you ill with fever. Solder quickly, keep the iron off the insulator, never use a torch, and air the room.",
            "Published guidance on polymer fume fever, from memory",
        ),
        Caution::SolderFlux => (
            "Don’t breathe flux smoke",
            "Smoke of rosin flux can cause asthma. Air the room or draw the smoke off. Wash your hands after leaded solder.",
            "Workplace guidance on rosin flux fume, from memory",
        ),
        Caution::Coatings => (
            "Paint and lining smoke, and insulate",
            "Food cans are lacquered inside, often without colour. Hot lacquer smokes, and under a connector it breaks the contact. Rub it off to bright metal first, outside and inside.",
            "Common practice, no source",
        ),
        _ => (
            "Never food again",
            "Once soldered or drilled the can is no vessel for food or drink. Mark it so.",
            "Common practice, no source",
        ),
    }
}

const fn measure() -> Words {
    (
        "The analyser can be destroyed",
        "An analyser’s socket takes hardly any power. Never join it to a transmitter, nor to an antenna near one that transmits, and discharge a long cable before it is joined.",
        "Common practice, no source; the analyser’s manual says how much it takes",
    )
}

const fn power(caution: Caution) -> Words {
    match caution {
        Caution::PowerNearEyes => (
            "Never look into a can that transmits",
            "The can gathers the power in front of its mouth, and eyes are harmed by heat first. Switch the transmitter off before you touch the wire or look inside. Keep people out of the beam near the mouth.",
            "ICNIRP guidelines 2020 (10 W/m² for the public above 2 GHz, from memory); 47 CFR 1.1310",
        ),
        Caution::LegalLimits => (
            "The law counts the antenna’s gain",
            "Limits are mostly on power times gain. An antenna with gain may mean that you must turn the power down. Limits differ by country and band, and amateur bands need a licence: look up yours before you transmit.",
            "47 CFR 15.247, 15.407; ETSI EN 300 328, EN 301 893; national rules",
        ),
        _ => (
            "A certified device may not take any antenna",
            "Some rules forbid another antenna than the one a device was certified with, even at low power. Receiving is not touched by this. Check the rules where you live.",
            "47 CFR 15.203, 15.204(c), in the USA; other countries have their own",
        ),
    }
}

const fn mount(caution: Caution) -> Words {
    match caution {
        Caution::PowerLines => (
            "Stay clear of power lines",
            "A mast or cable that touches an overhead line kills. Choose a place from which nothing can reach a line even if it falls.",
            "NFPA 70 article 810; local code decides",
        ),
        Caution::Lightning => (
            "Bond the mast, and the cable’s screen",
            "Outdoor antennas need bonding and a discharge unit where the cable enters. Local codes say how, and in many places a licensed electrician must do it. Stop work when thunder is heard.",
            "NFPA 70 article 810; IEC 60728-11; IEC 62305; local code decides",
        ),
        Caution::Falls => (
            "A fall from a roof kills",
            "Work with a second person, on a ladder that is held and footed, tied on above the eaves, never in wind, wet or dark. If the place can’t be reached safely, choose another or have it done.",
            "EN 131 (ladders); local rules for work at height decide",
        ),
        Caution::Mounting => (
            "A loose can falls like a tool",
            "Fix it for the strongest wind of the place, with two fixings that hold each by itself, and look at them every year.",
            "Common practice, no source",
        ),
        _ => (
            "Keep water out, and let it out",
            "Water in the can spoils the match and rusts it. Close the mouth with a thin plastic cap and drill a small drain at the lowest point, away from the wire’s side.",
            "Common practice, no source",
        ),
    }
}

/// The cautions of an occasion, for that metal: zinc's fumes only where there is, or may
/// be, a plating; linings and what was in it only on cans.
#[must_use]
pub fn cautions(occasion: Occasion, metal: Metal) -> Vec<CautionText> {
    let is_can = matches!(
        metal,
        Metal::Tinplate | Metal::Aluminium | Metal::Steel | Metal::Stainless
    );
    let arises = |of: Caution| match of {
        Caution::PlatedFumes => matches!(metal, Metal::Galvanised | Metal::Zinc),
        Caution::BrassFumes => metal == Metal::Brass,
        Caution::Coatings | Caution::PressurisedCan | Caution::FuelCan => is_can,
        Caution::FoodSafe => is_can || metal == Metal::Copper,
        _ => true,
    };
    Caution::ALL
        .into_iter()
        .filter(|&of| arises(of))
        .map(caution)
        .filter(|text| text.occasion == occasion)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_caution_stands_once_and_says_more_than_its_headline() {
        let all: Vec<_> = Caution::ALL.map(caution).to_vec();
        for (index, text) in all.iter().enumerate() {
            assert!(
                all[index + 1..]
                    .iter()
                    .all(|other| other.headline != text.headline)
            );
            assert!(!text.text.contains(text.headline), "{}", text.headline);
            assert!(!text.source.is_empty());
        }
    }

    #[test]
    fn brass_and_zinc_have_texts_of_their_own() {
        let has = |metal, of| {
            let said = cautions(Occasion::Solder, metal);
            said.iter().any(|text| text.caution == of)
        };
        assert!(has(Metal::Brass, Caution::BrassFumes) && !has(Metal::Brass, Caution::PlatedFumes));
        assert!(has(Metal::Galvanised, Caution::PlatedFumes));
        assert!(!has(Metal::Tinplate, Caution::PlatedFumes));
    }

    #[test]
    fn every_occasion_has_cautions_for_every_can() {
        for occasion in Occasion::ALL {
            assert!(!cautions(occasion, Metal::Tinplate).is_empty());
        }
    }
}
