//! Each number of a plan: what it is, its range, how it is read and set.

use tinwave_core::radio_link::End;

use super::plan::LinkPlan;
use super::quantity::PlanQuantity;
use crate::entry::{EntryError, LengthUnit, shortened};

/// A number of a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PlanNumber {
    /// Distance between the ends.
    Distance,
    /// Margin wanted against fading.
    Fade,
    /// Power of an end's radio.
    Power(End),
    /// Gain of an end's stated antenna.
    Gain(End),
    /// Half-power width of an end's stated antenna.
    Width(End),
    /// Length of an end's cable.
    Cable(End),
    /// Mated pairs of connectors at an end.
    Pairs(End),
    /// How far an end looks past the other.
    Pointing(End),
    /// Height of an end.
    Height(End),
    /// Sensitivity of an end's receiver by its data sheet.
    Stated(End),
    /// Turn of the far antenna against this one.
    Turn,
    /// Bandwidth.
    Bandwidth,
    /// Noise figure.
    NoiseFigure,
    /// Signal over noise needed.
    Snr,
    /// Noise temperature of the antenna.
    AntennaNoise,
    /// Way through trees.
    Foliage,
    /// Any further loss.
    Other,
    /// Arm or tripod leg.
    Arm,
    /// Thickness of the wall with this place in the list.
    WallThickness(usize),
    /// Distance of the obstacle with this place from this end.
    ObstacleDistance(usize),
    /// Height of the obstacle with this place.
    ObstacleHeight(usize),
}

/// Why a number was refused.
#[derive(Clone, Debug, PartialEq)]
pub enum PlanRefusal {
    /// The text can't be read.
    Entry(EntryError),
    /// It was read, but is outside its range; all in the unit that is kept.
    OutOfRange {
        /// What it was understood as.
        value: f64,
        /// Lowest and highest, ends included.
        range: [f64; 2],
    },
}

impl PlanNumber {
    /// The numbers that every plan has once; for walls and obstacles there are as many
    /// more as the lists are long.
    pub const SINGLE: [Self; 26] = [
        Self::Distance,
        Self::Fade,
        Self::Power(End::A),
        Self::Power(End::B),
        Self::Gain(End::A),
        Self::Gain(End::B),
        Self::Width(End::A),
        Self::Width(End::B),
        Self::Cable(End::A),
        Self::Cable(End::B),
        Self::Pairs(End::A),
        Self::Pairs(End::B),
        Self::Pointing(End::A),
        Self::Pointing(End::B),
        Self::Height(End::A),
        Self::Height(End::B),
        Self::Stated(End::A),
        Self::Stated(End::B),
        Self::Turn,
        Self::Bandwidth,
        Self::NoiseFigure,
        Self::Snr,
        Self::AntennaNoise,
        Self::Foliage,
        Self::Other,
        Self::Arm,
    ];

    /// What kind of number it is.
    #[must_use]
    pub const fn quantity(self) -> PlanQuantity {
        match self {
            Self::Distance
            | Self::Cable(_)
            | Self::Height(_)
            | Self::Foliage
            | Self::Arm
            | Self::ObstacleDistance(_)
            | Self::ObstacleHeight(_) => PlanQuantity::Distance,
            Self::WallThickness(_) => PlanQuantity::Thickness,
            Self::Fade | Self::NoiseFigure | Self::Snr | Self::Other => PlanQuantity::Decibels,
            Self::Gain(_) => PlanQuantity::Gain,
            Self::Power(_) => PlanQuantity::Power,
            Self::Stated(_) => PlanQuantity::Level,
            Self::Width(_) | Self::Pointing(_) | Self::Turn => PlanQuantity::Angle,
            Self::Bandwidth => PlanQuantity::Bandwidth,
            Self::AntennaNoise => PlanQuantity::Temperature,
            Self::Pairs(_) => PlanQuantity::Count,
        }
    }

    /// Lowest and highest value, ends included, in the unit that is kept.
    #[must_use]
    pub const fn range(self) -> [f64; 2] {
        match self {
            Self::Distance => [1.0, 1e9],
            Self::Fade => [0.0, 60.0],
            Self::Power(_) => [-60.0, MOST_POWER_DBM],
            Self::Gain(_) => [-20.0, 60.0],
            Self::Width(_) => [0.1, 360.0],
            Self::Cable(_) => [0.0, 1_000.0],
            Self::Pairs(_) => [0.0, 20.0],
            Self::Pointing(_) => [0.0, 180.0],
            Self::Height(_) => [0.0, 10_000.0],
            Self::Stated(_) => [-180.0, 30.0],
            Self::Turn => [-180.0, 180.0],
            Self::Bandwidth => [1e3, 2e9],
            Self::NoiseFigure => [0.0, 40.0],
            Self::Snr => [-50.0, 60.0],
            Self::AntennaNoise => [2.0, 20_000.0],
            Self::Foliage => [0.0, 400.0],
            Self::Other => [0.0, 200.0],
            Self::Arm => [0.01, 100.0],
            Self::WallThickness(_) => [1e-4, 3.0],
            Self::ObstacleDistance(_) => [0.01, 1e6],
            Self::ObstacleHeight(_) => [-1_000.0, 10_000.0],
        }
    }

    /// Whether the number may be left out.
    #[must_use]
    pub const fn may_be_empty(self) -> bool {
        matches!(self, Self::Stated(End::B))
    }

    /// Its value; `None` where it is left out or not there.
    #[must_use]
    pub fn value(self, plan: &LinkPlan) -> Option<f64> {
        Some(match self {
            Self::Distance => plan.distance_m,
            Self::Fade => plan.fade_db,
            Self::Power(end) => plan.end(end).power_dbm,
            Self::Gain(end) => plan.end(end).gain_dbi,
            Self::Width(end) => plan.end(end).width_deg,
            Self::Cable(end) => plan.end(end).cable_m,
            Self::Pairs(end) => f64::from(plan.end(end).pairs),
            Self::Pointing(end) => plan.end(end).pointing_deg,
            Self::Height(end) => plan.end(end).height_m,
            Self::Stated(end) => return plan.end(end).stated_dbm,
            Self::Turn => plan.turn_deg,
            Self::Bandwidth => plan.bandwidth_hz,
            Self::NoiseFigure => plan.noise_figure_db,
            Self::Snr => plan.snr_db,
            Self::AntennaNoise => plan.antenna_k,
            Self::Foliage => plan.foliage_m,
            Self::Other => plan.other_db,
            Self::Arm => plan.arm_m,
            Self::WallThickness(n) => plan.walls.get(n)?.thickness_m,
            Self::ObstacleDistance(n) => plan.obstacles.get(n)?.distance_m,
            Self::ObstacleHeight(n) => plan.obstacles.get(n)?.height_m,
        })
    }

    /// Changes it; a value outside its range, or of a thing that is not there, is left
    /// alone.
    pub fn set(self, plan: &mut LinkPlan, value: f64) {
        if self.check(value).is_err() {
            return;
        }
        let place = match self {
            Self::Distance => &mut plan.distance_m,
            Self::Fade => &mut plan.fade_db,
            Self::Power(end) => &mut plan.end_mut(end).power_dbm,
            Self::Gain(end) => &mut plan.end_mut(end).gain_dbi,
            Self::Width(end) => &mut plan.end_mut(end).width_deg,
            Self::Cable(end) => &mut plan.end_mut(end).cable_m,
            Self::Pairs(end) => {
                plan.end_mut(end).pairs = value.round() as u8;
                return;
            }
            Self::Pointing(end) => &mut plan.end_mut(end).pointing_deg,
            Self::Height(end) => &mut plan.end_mut(end).height_m,
            Self::Stated(end) => {
                plan.end_mut(end).stated_dbm = Some(value);
                return;
            }
            Self::Turn => &mut plan.turn_deg,
            Self::Bandwidth => &mut plan.bandwidth_hz,
            Self::NoiseFigure => &mut plan.noise_figure_db,
            Self::Snr => &mut plan.snr_db,
            Self::AntennaNoise => &mut plan.antenna_k,
            Self::Foliage => &mut plan.foliage_m,
            Self::Other => &mut plan.other_db,
            Self::Arm => &mut plan.arm_m,
            Self::WallThickness(n) => match plan.walls.get_mut(n) {
                Some(wall) => &mut wall.thickness_m,
                None => return,
            },
            Self::ObstacleDistance(n) => match plan.obstacles.get_mut(n) {
                Some(obstacle) => &mut obstacle.distance_m,
                None => return,
            },
            Self::ObstacleHeight(n) => match plan.obstacles.get_mut(n) {
                Some(obstacle) => &mut obstacle.height_m,
                None => return,
            },
        };
        *place = value;
    }

    /// Leaves out a number that may be.
    pub const fn clear(self, plan: &mut LinkPlan) {
        if let Self::Stated(End::B) = self {
            plan.far.stated_dbm = None;
        }
    }

    /// Reads the number from a text; `None` where it may be left out and is.
    ///
    /// # Errors
    /// [`PlanRefusal`]: what is wrong with it.
    pub fn read(self, text: &str, unit: LengthUnit) -> Result<Option<f64>, PlanRefusal> {
        if self.may_be_empty() && text.trim().is_empty() {
            return Ok(None);
        }
        if self == Self::Distance
            && let Some(suggestion) = without_comma(text)
        {
            let text = shortened(text);
            let unclear = EntryError::TwoDecimalSigns { text, suggestion };
            return Err(PlanRefusal::Entry(unclear));
        }
        let value = self.quantity().parse(text, unit);
        self.check(value.map_err(PlanRefusal::Entry)?).map(Some)
    }

    /// The value, if it lies in its range.
    fn check(self, value: f64) -> Result<f64, PlanRefusal> {
        let range = self.range();
        if value >= range[0] && value <= range[1] {
            Ok(value)
        } else {
            Err(PlanRefusal::OutOfRange { value, range })
        }
    }
}

/// `20,000` as `20000`: nobody gives a distance to the millimetre, so the comma is hardly
/// a decimal one; but it is not for us to say, a thousandfold apart.
fn without_comma(text: &str) -> Option<String> {
    let (before, after) = text.trim().split_once(',')?;
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let is_group = (1..=3).contains(&before.len())
        && digits(before) == before.len()
        && !before.starts_with('0')
        && digits(after) == 3;
    is_group.then(|| [before, after].concat())
}

/// 1500 W: the most that any rules known here let a station send (47 CFR 97.313, from
/// memory).
pub(super) const MOST_POWER_DBM: f64 = 61.760_912_590_556_81;
