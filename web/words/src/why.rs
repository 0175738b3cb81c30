//! Where each result comes from: formula, inputs, published source, error bar.

/// A result that opens to its reasons.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Shown {
    /// Where modes begin to pass.
    Cutoff,
    /// Wavelength in the can.
    GuideWavelength,
    /// Loss in the wall.
    WallLoss,
    /// Impedance at the connector.
    ProbeImpedance,
    /// VSWR over the band.
    Vswr,
    /// The range of a good match.
    VswrBand,
    /// What the mouth sends back.
    MouthReflection,
    /// Gain.
    Gain,
    /// Beamwidths.
    Beamwidth,
    /// Front to back.
    FrontToBack,
    /// What only the full pattern shows.
    Pattern,
    /// The textbook's gain.
    TextbookGain,
    /// The best cut.
    BestCut,
    /// Diameters with one mode.
    OneModeDiameters,
    /// The quarter-wave rule.
    QuarterWaveRule,
    /// Where to drill.
    HolePosition,
    /// How long to cut.
    WireLength,
    /// How wide to drill.
    HoleSize,
    /// What fits.
    TradeSizes,
}

/// The reasons of a result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Why {
    /// The result's name.
    pub title: &'static str,
    /// The formula or method by its name.
    pub formula: &'static str,
    /// What goes into it.
    pub inputs: &'static str,
    /// Published source.
    pub source: &'static str,
    /// How far it may be off.
    pub error_bar: &'static str,
}

impl Shown {
    /// Every result.
    pub const ALL: [Self; 19] = [
        Self::Cutoff,
        Self::GuideWavelength,
        Self::WallLoss,
        Self::ProbeImpedance,
        Self::Vswr,
        Self::VswrBand,
        Self::MouthReflection,
        Self::Gain,
        Self::Beamwidth,
        Self::FrontToBack,
        Self::Pattern,
        Self::TextbookGain,
        Self::BestCut,
        Self::OneModeDiameters,
        Self::QuarterWaveRule,
        Self::HolePosition,
        Self::WireLength,
        Self::HoleSize,
        Self::TradeSizes,
    ];

    /// What a place for its reasons is called in the page.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Cutoff => "cutoff",
            Self::GuideWavelength => "guide-wavelength",
            Self::WallLoss => "wall-loss",
            Self::ProbeImpedance => "impedance",
            Self::Vswr => "vswr",
            Self::VswrBand => "vswr-band",
            Self::MouthReflection => "mouth",
            Self::Gain => "gain",
            Self::Beamwidth => "beamwidth",
            Self::FrontToBack => "front-to-back",
            Self::Pattern => "pattern",
            Self::TextbookGain => "textbook",
            Self::BestCut => "best-cut",
            Self::OneModeDiameters => "one-mode",
            Self::QuarterWaveRule => "rule",
            Self::HolePosition => "hole-position",
            Self::WireLength => "wire-length",
            Self::HoleSize => "hole-size",
            Self::TradeSizes => "trade-sizes",
        }
    }

    /// The result whose place is called so.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|shown| shown.key() == key)
    }
}

/// The reasons of a result.
#[must_use]
pub const fn why(shown: Shown) -> Why {
    match shown {
        Shown::Cutoff
        | Shown::GuideWavelength
        | Shown::WallLoss
        | Shown::OneModeDiameters
        | Shown::QuarterWaveRule => guide(shown),
        Shown::ProbeImpedance | Shown::Vswr | Shown::VswrBand | Shown::BestCut => feed(shown),
        Shown::MouthReflection
        | Shown::Gain
        | Shown::Beamwidth
        | Shown::FrontToBack
        | Shown::Pattern
        | Shown::TextbookGain => beam(shown),
        Shown::HolePosition | Shown::WireLength | Shown::HoleSize | Shown::TradeSizes => {
            workshop(shown)
        }
    }
}

const fn guide(shown: Shown) -> Why {
    match shown {
        Shown::Cutoff => Why {
            title: "Cutoff frequency",
            formula: "fc = χ c / (π D). χ is the mode’s root: 1.8412 for TE11 (first zero of J1′), 2.4048 for TM01 (first zero of J0).",
            inputs: "Inside diameter D; speed of light c.",
            source: "D. M. Pozar, Microwave Engineering, 4th ed. 2012, section 3.4; roots: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 1964, table 9.5.",
            error_bar: "Exact for a round, smooth can. 1 % of diameter moves it by 1 %; a can that is 1 % oval splits it by about 0.5 %.",
        },
        Shown::GuideWavelength => Why {
            title: "Guide wavelength",
            formula: "λg = λ / √(1 − (fc/f)²): the wavelength inside the can, always longer than in air.",
            inputs: "Frequency at the band’s centre; cutoff of TE11.",
            source: "D. M. Pozar, Microwave Engineering, 4th ed. 2012, section 3.4.",
            error_bar: "Exact for a round can. Near cutoff it moves much more than the diameter does; the verdict says how much.",
        },
        Shown::WallLoss => Why {
            title: "Loss in the wall",
            formula: "α = Rs / (a η √(1 − (fc/f)²)) · [(fc/f)² + 1/(χ² − 1)] for TE11, with surface resistance Rs = √(π f µ/σ).",
            inputs: "Radius a, frequency, metal. Tinplate counts as its steel: the tin is thinner than the skin depth. Galvanised steel counts as zinc.",
            source: "D. M. Pozar, Microwave Engineering, 4th ed. 2012, eq. 3.133 and appendix F.",
            error_bar: "A few per cent for copper and aluminium. For steel up to seven times less than shown: its permeability at these frequencies is uncertain, and the worst published value is used. In a can it stays below a few hundredths of a dB.",
        },
        Shown::OneModeDiameters => Why {
            title: "Diameters that carry one mode",
            formula: "From χ(TE11) c / (π f low) to χ(TM01) c / (π f high): TE11 passes over the whole band, TM01 nowhere in it.",
            inputs: "Lower and upper edge of the band.",
            source: "D. M. Pozar, Microwave Engineering, 4th ed. 2012, section 3.4.",
            error_bar: "Exact for a round can. Keep some millimetres off the lower end: near cutoff every millimetre counts.",
        },
        _ => Why {
            title: "Quarter-wave rule",
            formula: "Wire λ/4 long, λg/4 from the back wall.",
            inputs: "Frequency at the band’s centre; guide wavelength.",
            source: "Common practice, no source. Shown beside the computed cut as what it is: a rule of thumb.",
            error_bar: "It leaves out the wire’s diameter, higher modes and the mouth. Often 10 % off in length, more in distance.",
        },
    }
}

const fn feed(shown: Shown) -> Why {
    match shown {
        Shown::ProbeImpedance => Why {
            title: "Impedance of the probe",
            formula: "Field computation: Galerkin method of moments for the current on the wire, with the can’s modal Green’s function, modes below cutoff included; fed by a magnetic frill at the hole; the back wall and each mode’s reflection at the mouth are part of it.",
            inputs: "Can, wire, hole, sleeve, screws, stray capacitance, frequency. At the plane of the inner wall.",
            source: "R. E. Collin, Field Theory of Guided Waves, 2nd ed. 1991, chapter 7; R. F. Harrington, Field Computation by Moment Methods, 1968.",
            error_bar: "Checked against finite-element results: the reflection is within 0.006 in an endless guide, 0.010 in open cans with one mode, 0.03 with two. Solder blobs, dents and seams are not in it.",
        },
        Shown::Vswr => Why {
            title: "VSWR",
            formula: "S = (1 + |Γ|) / (1 − |Γ|), with Γ = (Z − Z0) / (Z + Z0).",
            inputs: "Impedance Z of the probe; impedance Z0 of the cable.",
            source: "D. M. Pozar, Microwave Engineering, 4th ed. 2012, section 2.3.",
            error_bar: "Where S is near 1.5, an error of 0.01 in the reflection moves it by 0.03. Half a millimetre in the cut moves it more.",
        },
        Shown::VswrBand => Why {
            title: "Range of a good match",
            formula: "The unbroken range round the band’s centre where VSWR stays under 1.5, and under 2.",
            inputs: "VSWR over the chart’s frequencies.",
            source: "Limits of 1.5 and 2: common practice, no source. At 2, 11 % of the power comes back.",
            error_bar: "As exact as the VSWR. A range that reaches the end of the chart may go on beyond it.",
        },
        _ => Why {
            title: "Best cut",
            formula: "Search for the wire length, or length and distance, with the lowest worst VSWR over the band; every trial is the full field computation.",
            inputs: "Can, wire, hole, band. Where two good pairs exist, both are shown.",
            source: "The search is our own; the field computation is that of the impedance.",
            error_bar: "How far length and distance may each be off before VSWR passes 1.5 and 2 is stated beside it. Cut a little long and file down.",
        },
    }
}

const fn beam(shown: Shown) -> Why {
    match shown {
        Shown::MouthReflection => Why {
            title: "Reflection at the mouth",
            formula: "At first the exact solution for an endless open pipe (Wiener-Hopf method); then the currents on the whole can and what stands at its mouth, by the method of moments for bodies of revolution.",
            inputs: "Inside diameter, length, what stands at the mouth, frequency.",
            source: "L. A. Weinstein, The Theory of Diffraction and the Factorization Method, 1969; J. R. Mautz and R. F. Harrington, Radiation and scattering from bodies of revolution, Applied Scientific Research 20 (1969).",
            error_bar: "The reflection is within 0.005. The wall’s thickness and a rolled rim are not in it.",
        },
        Shown::Gain => Why {
            title: "Gain",
            formula: "The far field of all modes that the wire excites, summed and held against their power; less mismatch and wall loss.",
            inputs: "All of the can, the wire and the mouth.",
            source: "R. F. Harrington, Field Computation by Moment Methods, 1968; the estimate: L. A. Weinstein, 1969.",
            error_bar: "Computed: within 0.15 dB of full-wave finite elements. Estimated: ±0.4 dB for a narrow can, ±0.02 dB for a wide one.",
        },
        Shown::Beamwidth => Why {
            title: "Beamwidth",
            formula: "Angle between the half-power points (−3 dB) round the highest level: E plane along the wire, H plane across it.",
            inputs: "All of the can, the wire and the mouth.",
            source: "IEEE Std 145, half-power beamwidth; the pattern as for the gain.",
            error_bar: "Computed: within half a degree. Estimated: ±6° for a can of usual length, less for a wide one.",
        },
        Shown::Pattern => Why {
            title: "The whole pattern",
            formula: "Far field of the currents on the can’s outside and inside. Crossed polarisation after Ludwig’s third definition; the phase centre fits the phase over the half-power beam by least squares.",
            inputs: "All of the can, the wire and the mouth.",
            source: "A. C. Ludwig, The definition of cross polarization, IEEE Trans. Antennas and Propagation 21 (1973).",
            error_bar: "Within 0.3 dB in the top 10 dB. The cable, the mast and whatever is near are not in it; they show most at the back.",
        },
        Shown::TextbookGain => Why {
            title: "The textbook’s gain",
            formula: "10.5 π (a/λ)², the directivity of a large opening of radius a that carries TE11. It leaves out the rim, the outside and the funnel.",
            inputs: "Inside diameter, frequency.",
            source: "C. A. Balanis, Antenna Theory, 3rd ed. 2005, table 12.2.",
            error_bar: "For openings of several wavelengths. A can is less than one; here it stands for comparison.",
        },
        _ => Why {
            title: "Front to back",
            formula: "Power sent straight ahead against straight back.",
            inputs: "All of the can, the wire and the mouth.",
            source: "As for the gain.",
            error_bar: "Rough: a real can’s cable, connector and mast change it by several dB.",
        },
    }
}

const fn workshop(shown: Shown) -> Why {
    match shown {
        Shown::HolePosition => Why {
            title: "Where to drill",
            formula: "From the outer rim of the closed end: distance from the back wall, plus the wall’s thickness of the base, plus its recess. From the open rim: inside length less that distance.",
            inputs: "Distance from back wall, recess, wall, inside length.",
            source: "Plain addition.",
            error_bar: "As good as the recess and the length were measured. Mark from one rim and check from the other.",
        },
        Shown::WireLength => Why {
            title: "How long to cut",
            formula: "Length inside the can, plus the wall from the connector’s face.",
            inputs: "Probe length, wall, connector.",
            source: "Plain addition.",
            error_bar: "The tip is taken as cut off flat. A blob of solder at the root or a burr at the tip acts like extra length.",
        },
        Shown::HoleSize => Why {
            title: "Hole",
            formula: "Z = (60 Ω / √εr) ln(hole / wire) for the short line that wire and hole make.",
            inputs: "Wire diameter, insulator, cable impedance.",
            source: "D. M. Pozar, Microwave Engineering, 4th ed. 2012, table 2.1. Sizes of connectors: the named standards, from memory.",
            error_bar: "In a thin wall the hole matters little. Measure your connector before drilling.",
        },
        _ => Why {
            title: "What fits",
            formula: "Trade sizes whose diameter lies between the one-mode limits, ordered by how well a probe could be matched there.",
            inputs: "Band, wire, hole and what stands at the mouth; nominal or estimated inside diameters, each solved with its own mouth.",
            source: "The standard named beside each group.",
            error_bar: "Nominal sizes differ from what is sold by up to 2 %. Measure before drilling.",
        },
    }
}
