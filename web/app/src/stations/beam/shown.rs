//! What is known of the beam at present.

use leptos::prelude::*;
use tinwave_core::analysis::Analysis;
use tinwave_drawing::beam_scene::{BeamCuts, BeamWidth};

use crate::state::{Freshness, Workshop};

/// What the station shows.
#[derive(Clone, Debug, PartialEq)]
pub enum Shown {
    /// The beam.
    Beam(KnownBeam),
    /// The best cut of this can is still being searched for.
    Pending,
    /// There is none: this can will not do, or nothing can be computed.
    None,
}

/// The beam at the band's centre.
#[derive(Clone, Debug, PartialEq)]
pub struct KnownBeam {
    /// Straight ahead, match and walls counted, dB over isotropic.
    pub gain_dbi: f64,
    /// The same before match and walls.
    pub directivity_dbi: f64,
    /// Along the wire.
    pub e: BeamWidth,
    /// Width across the wire.
    pub h_deg: Option<f64>,
    /// Straight ahead over straight back.
    pub front_to_back_db: f64,
    /// Levels in both planes; not known of an estimate.
    pub cuts: Option<BeamCuts>,
}

impl KnownBeam {
    /// Whether it is that of an endless pipe, until the outside is known.
    pub const fn is_estimate(&self) -> bool {
        self.cuts.is_none()
    }

    fn of(analysis: &Analysis) -> Option<Self> {
        if let Some(beam) = &analysis.true_beam {
            let figures = &beam.figures;
            return Some(Self {
                gain_dbi: beam.realised_gain_dbi?,
                directivity_dbi: figures.directivity_dbi,
                e: BeamWidth {
                    width_deg: figures.beamwidth_e_deg,
                    peak_deg: figures.e_peak_angle_deg,
                },
                h_deg: figures.beamwidth_h_deg,
                front_to_back_db: figures.front_to_back_db,
                cuts: Some(BeamCuts::new(&beam.pattern)),
            });
        }
        let beam = analysis.beam.as_ref()?;
        Some(Self {
            gain_dbi: beam.realised_gain_dbi?,
            directivity_dbi: beam.directivity_dbi,
            e: BeamWidth {
                width_deg: Some(beam.beamwidth_e_deg),
                peak_deg: 0.0,
            },
            h_deg: Some(beam.beamwidth_h_deg),
            front_to_back_db: beam.front_to_back_db,
            cuts: None,
        })
    }
}

impl Shown {
    /// At present.
    pub fn of(workshop: Workshop) -> Self {
        let answers = workshop.answers;
        if !answers.has_cut() {
            return Self::None;
        }
        let known = answers
            .analysis
            .with(|analysis| analysis.as_deref().and_then(KnownBeam::of));
        match (answers.freshness.get(), known) {
            (Freshness::Pending, _) | (Freshness::Estimate, None) => Self::Pending,
            (_, Some(beam)) => Self::Beam(beam),
            (Freshness::Final, None) => Self::None,
        }
    }

    /// The beam, if it is known.
    pub const fn beam(&self) -> Option<&KnownBeam> {
        match self {
            Self::Beam(beam) => Some(beam),
            Self::Pending | Self::None => None,
        }
    }
}
