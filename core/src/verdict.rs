//! The verdict on a can, as data: each finding carries the numbers that a
//! sentence about it needs, never the sentence.

use alloc::vec::Vec;

use crate::waveguide_mode::Mode;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// As it should be.
    Good,
    /// Worth knowing.
    Note,
    /// It will work less well, or needs care.
    Caution,
    /// It will not work, or can't be built.
    Stop,
}

/// A mode and where it begins to pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ModeEntry {
    /// The mode.
    pub mode: Mode,
    /// Its cutoff frequency, Hz.
    pub cutoff_hz: f64,
}

/// The range of inside diameters that carries exactly one mode over the band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DiameterRange {
    /// Smallest, metres: below it TE11 is cut off at the band's lower edge.
    pub low_m: f64,
    /// Largest, metres: above it TM01 passes at the band's upper edge.
    pub high_m: f64,
}

/// One finding about a design. Lengths in metres, frequencies in Hz, margins
/// as fractions (0.05 is 5 %), levels in dB.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Finding {
    /// No mode passes at (part of) the band: TE11's cutoff lies above its lower edge.
    NoMode {
        /// Cutoff of TE11.
        te11_cutoff_hz: f64,
        /// Lower edge of the band.
        band_low_hz: f64,
        /// Whether part of the band still passes.
        part_of_band_passes: bool,
        /// Diameters that would do; `None` where the band is too wide for one mode.
        one_mode_diameters: Option<DiameterRange>,
    },
    /// One mode passes, but the band lies so near its cutoff that every
    /// millimetre of diameter counts.
    NearCutoff {
        /// Band's lower edge over TE11's cutoff, less one.
        margin: f64,
        /// Guide wavelength at the band's centre.
        guide_wavelength_m: f64,
        /// Change of the guide wavelength per change of inside diameter (m/m), negative.
        wavelength_per_diameter: f64,
        /// Diameters that carry one mode.
        one_mode_diameters: Option<DiameterRange>,
    },
    /// Exactly one mode passes over the whole band.
    OneMode {
        /// Band's lower edge over TE11's cutoff, less one.
        lower_margin: f64,
        /// TM01's cutoff over the band's upper edge, less one.
        upper_margin: f64,
    },
    /// More than one mode passes in the band.
    SeveralModes {
        /// Those beside TE11, with where each begins.
        others: Vec<ModeEntry>,
        /// Largest share, over the band, of the power that reaches the mouth
        /// in TM01 (0 to 1); `None` where the match could not be computed.
        tm01_share: Option<f64>,
        /// Diameters that carry one mode.
        one_mode_diameters: Option<DiameterRange>,
    },
    /// The can is too short for TM01 to die out between probe and mouth.
    TooShort {
        /// How far TM01 has decayed at the mouth, at the band's upper edge, dB.
        tm01_decay_db: f64,
        /// Decay wanted, dB.
        wanted_db: f64,
        /// Open length that would give it.
        sufficient_length_m: f64,
    },
    /// The probe reaches (or passes) the far wall.
    ProbeTooDeep {
        /// Stated length.
        length_m: f64,
        /// Longest that leaves a wire's radius of air.
        longest_m: f64,
    },
    /// The probe stands so near the back wall that it is short-circuited or unbuildable.
    ProbeNearBack {
        /// Stated distance.
        distance_m: f64,
        /// Smallest distance that the computation and a drill allow.
        least_m: f64,
    },
    /// The probe stands too near the mouth (or beyond it).
    ProbeNearMouth {
        /// From the wire's axis to the rim.
        distance_m: f64,
        /// Smallest that the computation allows.
        least_m: f64,
    },
    /// The wire does not fit its hole.
    WireTooThickForHole {
        /// Wire diameter.
        wire_m: f64,
        /// Hole diameter.
        hole_m: f64,
    },
    /// The sleeve is not thicker than its wire.
    SleeveThinnerThanWire {
        /// Sleeve's outside diameter.
        sleeve_m: f64,
        /// Wire diameter.
        wire_m: f64,
    },
    /// Hole and wire make a line far from the reference impedance. Harmless in
    /// a thin wall; said because rules of thumb ask for it.
    HoleLineImpedance {
        /// Impedance of the air line that hole and wire make, ohm.
        line_ohm: f64,
        /// Reference, ohm.
        reference_ohm: f64,
    },
    /// A screw cannot be where it is stated (`index` from 0).
    ScrewImpossible {
        /// Which screw.
        index: usize,
    },
    /// The match over the band.
    Match {
        /// Worst VSWR in the band.
        worst_vswr: f64,
    },
    /// The mouth (funnel, flange, choke) needs a solver that is not there yet:
    /// match and beam are not given.
    MouthNotComputed,
    /// A choke's cup so deep that it is a cavity of its own: what the mouth does to
    /// TM01 and TE21 there is not to be relied on, and to TE11 only roughly.
    CupRings {
        /// Depth of the cup.
        depth_m: f64,
        /// Deepest that is computed well.
        deepest_m: f64,
    },
    /// The probe's solver refused the geometry; match and beam are not given.
    ProbeNotComputed,
    /// There is no beam: the guide is taken to go on for ever.
    NoBeam,
    /// The frequency is beyond what the mouth's solution covers: those points
    /// are not given.
    BeyondRange {
        /// Lowest frequency covered.
        low_hz: f64,
        /// Highest frequency covered.
        high_hz: f64,
    },
    /// The beam is TE11's alone although other modes pass or are close: the
    /// true beam is uneven.
    BeamOfOneModeOnly,
    /// The beam is that of an endless pipe: the finite can's outer wall moves
    /// gain and width by about this much.
    BeamOfEndlessPipe {
        /// Uncertainty of the gain, dB.
        gain_db: f64,
        /// Uncertainty of the beamwidths, degrees.
        beamwidth_deg: f64,
    },
}

impl Finding {
    /// How much it matters.
    #[must_use]
    pub fn severity(&self) -> Severity {
        match self {
            Self::OneMode { .. } => Severity::Good,
            Self::Match { worst_vswr } if *worst_vswr <= 1.5 => Severity::Good,
            Self::Match { worst_vswr } if *worst_vswr <= 2.0 => Severity::Note,
            Self::HoleLineImpedance { .. }
            | Self::BeamOfEndlessPipe { .. }
            | Self::NoBeam
            | Self::BeyondRange { .. } => Severity::Note,
            Self::NearCutoff { .. }
            | Self::SeveralModes { .. }
            | Self::TooShort { .. }
            | Self::Match { .. }
            | Self::MouthNotComputed
            | Self::CupRings { .. }
            | Self::BeamOfOneModeOnly => Severity::Caution,
            Self::NoMode {
                part_of_band_passes,
                ..
            } => {
                if *part_of_band_passes {
                    Severity::Caution
                } else {
                    Severity::Stop
                }
            }
            Self::ProbeTooDeep { .. }
            | Self::ProbeNearBack { .. }
            | Self::ProbeNearMouth { .. }
            | Self::WireTooThickForHole { .. }
            | Self::SleeveThinnerThanWire { .. }
            | Self::ProbeNotComputed
            | Self::ScrewImpossible { .. } => Severity::Stop,
        }
    }

    /// The word of the report file.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoMode { .. } => "no_mode",
            Self::NearCutoff { .. } => "near_cutoff",
            Self::OneMode { .. } => "one_mode",
            Self::SeveralModes { .. } => "several_modes",
            Self::TooShort { .. } => "too_short",
            Self::ProbeTooDeep { .. } => "probe_too_deep",
            Self::ProbeNearBack { .. } => "probe_near_back",
            Self::ProbeNearMouth { .. } => "probe_near_mouth",
            Self::WireTooThickForHole { .. } => "wire_too_thick_for_hole",
            Self::SleeveThinnerThanWire { .. } => "sleeve_thinner_than_wire",
            Self::HoleLineImpedance { .. } => "hole_line_impedance",
            Self::ScrewImpossible { .. } => "screw_impossible",
            Self::Match { .. } => "match",
            Self::MouthNotComputed => "mouth_not_computed",
            Self::CupRings { .. } => "cup_rings",
            Self::ProbeNotComputed => "probe_not_computed",
            Self::NoBeam => "no_beam",
            Self::BeyondRange { .. } => "beyond_range",
            Self::BeamOfOneModeOnly => "beam_of_one_mode_only",
            Self::BeamOfEndlessPipe { .. } => "beam_of_endless_pipe",
        }
    }
}
