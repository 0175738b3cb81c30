//! Cautions, each at the work where it arises.
//!
//! They defer to local codes and licensed practice.

use tinwave_core::metal::Metal;

/// A caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Caution {
    /// Sharp edges and chips.
    DrillEdges,
    /// Eyes while drilling and cutting.
    EyeProtection,
    /// Fumes of zinc and other platings.
    PlatedFumes,
    /// Fumes of flux, and lead.
    SolderFlux,
    /// Smoke of lacquers and linings.
    Coatings,
    /// Never food again.
    FoodSafe,
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
    /// Roofs, ladders, wind.
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
    /// Every caution, by occasion.
    pub const ALL: [Self; 13] = [
        Self::EyeProtection,
        Self::DrillEdges,
        Self::PlatedFumes,
        Self::SolderFlux,
        Self::Coatings,
        Self::FoodSafe,
        Self::PowerNearEyes,
        Self::LegalLimits,
        Self::CertifiedDevice,
        Self::PowerLines,
        Self::Lightning,
        Self::Mounting,
        Self::Water,
    ];
}

impl Occasion {
    /// Every occasion, in the order of the work.
    pub const ALL: [Self; 4] = [Self::Drill, Self::Solder, Self::Power, Self::Mount];
}

/// A caution in words.
#[must_use]
pub const fn caution(caution: Caution) -> CautionText {
    let (occasion, headline, text, source) = match caution {
        Caution::DrillEdges | Caution::EyeProtection => drill(caution),
        Caution::PlatedFumes | Caution::SolderFlux | Caution::Coatings | Caution::FoodSafe => {
            solder(caution)
        }
        Caution::PowerNearEyes | Caution::LegalLimits | Caution::CertifiedDevice => power(caution),
        Caution::PowerLines | Caution::Lightning | Caution::Mounting | Caution::Water => {
            mount(caution)
        }
    };
    CautionText {
        caution,
        occasion,
        headline,
        text,
        source,
    }
}

type Words = (Occasion, &'static str, &'static str, &'static str);

const fn drill(caution: Caution) -> Words {
    match caution {
        Caution::EyeProtection => (
            Occasion::Drill,
            "Protect your eyes",
            "Drills and shears throw chips. Wear eye protection, and clamp the can over a block of wood; never hold thin sheet by hand while drilling.",
            "EN 166 (eye protection); common practice",
        ),
        _ => (
            Occasion::Drill,
            "Cut sheet is razor sharp",
            "Rims and drilled holes cut skin. Wear cut-resistant gloves, take off the burrs inside and out, and fold or tape the open rim. Sweep up the chips.",
            "EN 388 (gloves); common practice",
        ),
    }
}

const fn solder(caution: Caution) -> Words {
    match caution {
        Caution::PlatedFumes => (
            Occasion::Solder,
            "Heated zinc gives off fumes that make you ill",
            "Galvanised and zinc sheet gives off zinc oxide when it is heated hard: fever hours later. Scrape the plating off round the joint, use an iron and no torch, and work outdoors or with extraction. Better: screw the connector on.",
            "Published guidance on welding fume (metal fume fever)",
        ),
        Caution::SolderFlux => (
            Occasion::Solder,
            "Don’t breathe flux smoke",
            "Smoke of rosin flux can cause asthma. Air the room or draw the smoke off. Wash your hands after leaded solder.",
            "Workplace guidance on rosin flux fume, from memory",
        ),
        Caution::Coatings => (
            Occasion::Solder,
            "Paint and lining smoke, and insulate",
            "Food cans are lacquered inside, often without colour. Hot lacquer smokes, and under a connector it breaks the contact. Rub it off to bright metal first, outside and inside.",
            "Common practice, no source",
        ),
        _ => (
            Occasion::Solder,
            "Never food again",
            "Once soldered or drilled the can is no vessel for food or drink. Mark it so.",
            "Common practice, no source",
        ),
    }
}

const fn power(caution: Caution) -> Words {
    match caution {
        Caution::PowerNearEyes => (
            Occasion::Power,
            "Never look into a can that transmits",
            "The can gathers the power in front of its mouth, and eyes are harmed by heat first. Switch the transmitter off before you touch the probe or look inside. Keep people out of the beam near the mouth.",
            "ICNIRP guidelines 2020 (10 W/m² for the public above 2 GHz, from memory); 47 CFR 1.1310",
        ),
        Caution::LegalLimits => (
            Occasion::Power,
            "The law counts the antenna’s gain",
            "Limits are mostly on power times gain. An antenna with gain may mean that you must turn the power down. Limits differ by country and band, and amateur bands need a licence: look up yours before you transmit.",
            "47 CFR 15.247, 15.407; ETSI EN 300 328, EN 301 893; national rules",
        ),
        _ => (
            Occasion::Power,
            "A certified device may not take any antenna",
            "Some rules forbid another antenna than the one a device was certified with, even at low power. Receiving is not touched by this. Check the rules where you live.",
            "47 CFR 15.203, 15.204(c), in the USA; other countries have their own",
        ),
    }
}

const fn mount(caution: Caution) -> Words {
    match caution {
        Caution::PowerLines => (
            Occasion::Mount,
            "Stay clear of power lines",
            "A mast or cable that touches an overhead line kills. Choose a place from which nothing can reach a line even if it falls.",
            "NFPA 70 article 810; local code decides",
        ),
        Caution::Lightning => (
            Occasion::Mount,
            "Bond the mast, and the cable’s screen",
            "Outdoor antennas need bonding and a discharge unit where the cable enters. Local codes say how, and in many places a licensed electrician must do it. Stop work when thunder is heard.",
            "NFPA 70 article 810; IEC 60728-11; IEC 62305; local code decides",
        ),
        Caution::Mounting => (
            Occasion::Mount,
            "Ladders, roofs, wind",
            "Work with a second person, never in wind or wet. A loose can falls like a tool: fix it for the strongest wind of the place.",
            "Common practice, no source",
        ),
        _ => (
            Occasion::Mount,
            "Keep water out, and let it out",
            "Water in the can spoils the match and rusts it. Close the mouth with a thin plastic cap and drill a small drain at the lowest point, away from the probe’s side.",
            "Common practice, no source",
        ),
    }
}

/// The cautions of an occasion, for that metal: zinc fumes only where there
/// is, or may be, a plating; linings only on cans.
#[must_use]
pub fn cautions(occasion: Occasion, metal: Metal) -> Vec<CautionText> {
    let arises = |of: Caution| match of {
        Caution::PlatedFumes => matches!(metal, Metal::Galvanised | Metal::Zinc | Metal::Brass),
        Caution::Coatings => matches!(metal, Metal::Tinplate | Metal::Aluminium | Metal::Steel),
        Caution::FoodSafe => matches!(
            metal,
            Metal::Tinplate | Metal::Aluminium | Metal::Stainless | Metal::Copper
        ),
        _ => true,
    };
    Caution::ALL
        .into_iter()
        .filter(|&of| arises(of))
        .map(caution)
        .filter(|text| text.occasion == occasion)
        .collect()
}
