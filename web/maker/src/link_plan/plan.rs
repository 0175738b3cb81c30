//! What the maker enters about a link.

use tinwave_core::design::Band;
use tinwave_core::radio_link::lawful::{Arrangement, RuleSet};
use tinwave_core::radio_link::{
    ChannelWidth, CoaxType, Coding, Connector, End, Obstacle, OlderRate, Polarisation, Sense, Wall,
    sensitivity_from_noise_dbm,
};
use tinwave_core::si::hertz;

/// Most walls of a plan.
pub const MOST_WALLS: usize = 8;
/// Most obstacles of a plan.
pub const MOST_OBSTACLES: usize = 100;

/// Which ends send.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Role {
    /// Both.
    #[default]
    Both,
    /// This end only listens.
    ListensHere,
    /// The far end only listens.
    ListensFar,
}

/// What stands at an end.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum EndAntenna {
    /// The can of the present design.
    #[default]
    ThisDesign,
    /// A design kept on this device, or of a link: the fragment of its link.
    Kept(String),
    /// Something else, of which gain and width are stated.
    Stated,
}

/// Polarisation of the far antenna.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FarPolarisation {
    /// Linear, turned by [`LinkPlan::turn_deg`].
    #[default]
    Linear,
    /// Right-hand circular.
    RightHand,
    /// Left-hand circular.
    LeftHand,
}

/// How a receiver's sensitivity is known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SensitivityBy {
    /// By the table of IEEE Std 802.11.
    #[default]
    Table,
    /// By its data sheet.
    Stated,
    /// By bandwidth, noise figure and the ratio needed.
    Noise,
}

/// A rate of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rate {
    /// Modulation and coding of one stream.
    Coded(Coding),
    /// An older rate, in 20 MHz only.
    Older(OlderRate),
}

/// Radio, line and antenna of one end.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanEnd {
    /// Power at the radio's socket, dBm; counts where the end sends.
    pub power_dbm: f64,
    /// The antenna.
    pub antenna: EndAntenna,
    /// Gain of a stated antenna, dBi.
    pub gain_dbi: f64,
    /// Half-power width of a stated antenna, degrees.
    pub width_deg: f64,
    /// Cable between radio and antenna, if any.
    pub cable: Option<CoaxType>,
    /// Its length, m.
    pub cable_m: f64,
    /// Family of the connectors.
    pub connector: Connector,
    /// Mated pairs of them.
    pub pairs: u8,
    /// How far it looks past the other end, degrees.
    pub pointing_deg: f64,
    /// Height above the ground, m.
    pub height_m: f64,
    /// Sensitivity by the data sheet, dBm; `None` where it is that of the other end.
    pub stated_dbm: Option<f64>,
}

/// All that is entered.
#[derive(Clone, Debug, PartialEq)]
pub struct LinkPlan {
    /// Which ends send.
    pub role: Role,
    /// Distance between the ends, m.
    pub distance_m: f64,
    /// Margin wanted against fading, dB.
    pub fade_db: f64,
    /// This end.
    pub here: PlanEnd,
    /// The far end.
    pub far: PlanEnd,
    /// How the far antenna is polarised; this one is linear.
    pub far_polarisation: FarPolarisation,
    /// Turn of a linear far antenna against this one, degrees.
    pub turn_deg: f64,
    /// How sensitivities are known.
    pub sensitivity: SensitivityBy,
    /// Rate by the table.
    pub rate: Rate,
    /// Width of the channel by the table.
    pub width: ChannelWidth,
    /// Bandwidth where the table does not say it, Hz.
    pub bandwidth_hz: f64,
    /// Noise figure of a receiver, dB.
    pub noise_figure_db: f64,
    /// Signal over noise that it needs, dB.
    pub snr_db: f64,
    /// Noise temperature of an antenna that only listens, K.
    pub antenna_k: f64,
    /// Walls in the way.
    pub walls: Vec<Wall>,
    /// Way through trees, m.
    pub foliage_m: f64,
    /// Any further loss, dB.
    pub other_db: f64,
    /// What stands in or near the path.
    pub obstacles: Vec<Obstacle>,
    /// Arm or tripod leg that is pushed to aim, m.
    pub arm_m: f64,
    /// The rules to go by; `None` where none are chosen.
    pub rules: Option<RuleSet>,
    /// What the stations are to each other.
    pub arrangement: Arrangement,
    /// Whether the transmitters control their power.
    pub power_control: bool,
}

impl Default for PlanEnd {
    fn default() -> Self {
        Self {
            power_dbm: 18.0,
            antenna: EndAntenna::ThisDesign,
            gain_dbi: 12.0,
            width_deg: 30.0,
            cable: None,
            cable_m: 2.0,
            connector: Connector::Sma,
            pairs: 1,
            pointing_deg: 0.0,
            height_m: 4.0,
            stated_dbm: None,
        }
    }
}

impl Default for LinkPlan {
    fn default() -> Self {
        Self {
            role: Role::Both,
            distance_m: 300.0,
            fade_db: 10.0,
            here: PlanEnd {
                stated_dbm: Some(-90.0),
                ..PlanEnd::default()
            },
            far: PlanEnd::default(),
            far_polarisation: FarPolarisation::Linear,
            turn_deg: 0.0,
            sensitivity: SensitivityBy::Table,
            rate: Rate::Coded(Coding::Bpsk12),
            width: ChannelWidth::Mhz20,
            bandwidth_hz: 20e6,
            noise_figure_db: 6.0,
            snr_db: 5.0,
            antenna_k: 290.0,
            walls: Vec::new(),
            foliage_m: 0.0,
            other_db: 0.0,
            obstacles: Vec::new(),
            arm_m: 0.5,
            rules: None,
            arrangement: Arrangement::Other,
            power_control: false,
        }
    }
}

/// Middle of a band, Hz: the frequency that a plan is worked out at.
#[must_use]
pub(super) fn centre_hz(band: Band) -> f64 {
    0.5 * (hertz(band.low_khz) + hertz(band.high_khz))
}

impl LinkPlan {
    /// What was entered of an end.
    #[must_use]
    pub const fn end(&self, end: End) -> &PlanEnd {
        match end {
            End::A => &self.here,
            End::B => &self.far,
        }
    }

    /// The same, to be changed.
    pub const fn end_mut(&mut self, end: End) -> &mut PlanEnd {
        match end {
            End::A => &mut self.here,
            End::B => &mut self.far,
        }
    }

    /// Whether an end sends.
    #[must_use]
    pub const fn sends(&self, end: End) -> bool {
        !matches!(
            (self.role, end),
            (Role::ListensHere, End::A) | (Role::ListensFar, End::B)
        )
    }

    /// Whether an end receives: any end to which the other sends.
    #[must_use]
    pub const fn receives(&self, end: End) -> bool {
        self.sends(end.other())
    }

    /// Power that an end sends, dBm; `None` where it only listens.
    #[must_use]
    pub const fn power_dbm(&self, end: End) -> Option<f64> {
        if self.sends(end) {
            Some(self.end(end).power_dbm)
        } else {
            None
        }
    }

    /// Width of the channel, Hz.
    #[must_use]
    pub const fn channel_hz(&self) -> f64 {
        match self.sensitivity {
            SensitivityBy::Table => self.table_width().hz(),
            SensitivityBy::Stated | SensitivityBy::Noise => self.bandwidth_hz,
        }
    }

    /// Width of the channel by the table: the older rates exist in 20 MHz only.
    #[must_use]
    pub const fn table_width(&self) -> ChannelWidth {
        match self.rate {
            Rate::Older(_) => ChannelWidth::Mhz20,
            Rate::Coded(_) => self.width,
        }
    }

    /// Least level that an end's receiver needs, dBm.
    #[must_use]
    pub fn needed_dbm(&self, end: End) -> f64 {
        match self.sensitivity {
            SensitivityBy::Table => match self.rate {
                Rate::Older(rate) => rate.minimum_sensitivity_dbm(),
                Rate::Coded(coding) => coding.minimum_sensitivity_dbm(self.width),
            },
            SensitivityBy::Noise => {
                sensitivity_from_noise_dbm(self.bandwidth_hz, self.noise_figure_db, self.snr_db)
            }
            SensitivityBy::Stated => {
                let other = self.end(end.other()).stated_dbm;
                let of_end = self.end(end).stated_dbm.or(other);
                of_end.unwrap_or(USUAL_SENSITIVITY_DBM)
            }
        }
    }

    /// Polarisation of an end's antenna; this end's wire is the line that turns are
    /// measured from.
    #[must_use]
    pub const fn polarisation(&self, end: End) -> Polarisation {
        match (end, self.far_polarisation) {
            (End::A, _) => Polarisation::VERTICAL,
            (End::B, FarPolarisation::Linear) => Polarisation::Linear {
                tilt_rad: self.turn_deg.to_radians(),
            },
            (End::B, FarPolarisation::RightHand) => Polarisation::Circular {
                sense: Sense::RightHand,
            },
            (End::B, FarPolarisation::LeftHand) => Polarisation::Circular {
                sense: Sense::LeftHand,
            },
        }
    }
}

/// Where a data sheet's figure is left out at both ends, dBm (common practice, no
/// source).
const USUAL_SENSITIVITY_DBM: f64 = -90.0;
