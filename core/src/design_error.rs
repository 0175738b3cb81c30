//! What can be wrong with a design's numbers, and the range that would be right.

use core::fmt;

use crate::design::Design;

/// One number of a design.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Field {
    /// Inside diameter of the can, micrometres.
    InsideDiameter,
    /// Inside length of the can, micrometres.
    OpenLength,
    /// Wall thickness, micrometres.
    Wall,
    /// Recess of the base, micrometres.
    BaseRecess,
    /// Wire diameter, micrometres.
    WireDiameter,
    /// Probe length, micrometres.
    ProbeLength,
    /// Distance of the probe from the back wall, micrometres.
    BackshortDistance,
    /// Hole diameter, micrometres.
    HoleDiameter,
    /// Reference impedance, milliohm.
    Reference,
    /// Shunt capacitance, femtofarad.
    Shunt,
    /// Sleeve's outside diameter, micrometres.
    SleeveDiameter,
    /// Sleeve's relative permittivity, thousandths.
    SleevePermittivity,
    /// Band's lower edge, kilohertz.
    BandLow,
    /// Band's upper edge, kilohertz.
    BandHigh,
    /// First frequency of the sweep, kilohertz.
    SweepLow,
    /// Last frequency of the sweep, kilohertz.
    SweepHigh,
    /// Number of points of the sweep.
    SweepPoints,
    /// A screw's distance from the back wall, micrometres.
    ScrewAxial,
    /// A screw's depth, micrometres.
    ScrewDepth,
    /// A screw's diameter, micrometres.
    ScrewDiameter,
    /// A screw's angle, thousandths of a degree.
    ScrewAngle,
    /// Number of screws.
    ScrewCount,
    /// Outside diameter of a funnel's mouth, flange or choke, micrometres.
    MouthDiameter,
    /// Half angle of a funnel, thousandths of a degree.
    MouthAngle,
    /// Depth of a choke cup, micrometres.
    ChokeDepth,
}

/// A number outside its range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DesignError {
    /// Which number.
    pub field: Field,
    /// What it was, in the design's own whole units.
    pub value: i64,
    /// Smallest that would be right.
    pub low: i64,
    /// Largest that would be right.
    pub high: i64,
}

impl Field {
    /// The hard range: outside it nothing is computed.
    #[must_use]
    pub const fn range(self) -> (i64, i64) {
        match self {
            Self::InsideDiameter => (10_000, 500_000),
            Self::OpenLength => (5_000, 5_000_000),
            Self::Wall => (0, 20_000),
            Self::BaseRecess => (0, 200_000),
            Self::WireDiameter => (100, 12_000),
            Self::ProbeLength => (1_000, 500_000),
            Self::BackshortDistance => (500, 5_000_000),
            Self::HoleDiameter => (100, 60_000),
            Self::Reference => (5_000, 500_000),
            Self::Shunt => (0, 100_000),
            Self::SleeveDiameter => (100, 40_000),
            Self::SleevePermittivity => (1_000, 20_000),
            Self::BandLow | Self::BandHigh => (300_000, 15_000_000),
            Self::SweepLow | Self::SweepHigh => (1_000, 40_000_000),
            Self::SweepPoints => (2, 10_001),
            Self::ScrewAxial => (0, 5_000_000),
            Self::ScrewDepth => (0, 500_000),
            Self::ScrewDiameter => (100, 20_000),
            Self::ScrewAngle => (-360_000, 360_000),
            Self::ScrewCount => (0, 8),
            Self::MouthDiameter => (10_000, 5_000_000),
            Self::MouthAngle => (1_000, 89_000),
            Self::ChokeDepth => (500, 1_000_000),
        }
    }

    /// Checks a value against [`Field::range`].
    ///
    /// # Errors
    /// [`DesignError`] with the range that would be right.
    pub const fn check(self, value: i64) -> Result<(), DesignError> {
        let (low, high) = self.range();
        self.check_within(value, low, high)
    }

    const fn check_within(self, value: i64, low: i64, high: i64) -> Result<(), DesignError> {
        if value < low || value > high {
            return Err(DesignError {
                field: self,
                value,
                low,
                high,
            });
        }
        Ok(())
    }
}

impl fmt::Display for DesignError {
    /// For logs: field, value and range in whole units.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:?}: {} is outside {}..={}",
            self.field, self.value, self.low, self.high
        )
    }
}

impl core::error::Error for DesignError {}

impl Design {
    /// Checks every number against its hard range. Geometry that is odd but
    /// stated in range (a probe longer than the can is wide) is no error: the
    /// verdict speaks of it.
    ///
    /// # Errors
    /// The first number that is out of range.
    pub fn check(&self) -> Result<(), DesignError> {
        let can = &self.can;
        let probe = &self.probe;
        Field::BandLow.check(i64::from(self.band.low_khz))?;
        Field::BandHigh.check(i64::from(self.band.high_khz))?;
        let least = i64::from(self.band.low_khz) + 1;
        Field::BandHigh.check_within(
            i64::from(self.band.high_khz),
            least,
            Field::BandHigh.range().1,
        )?;
        Field::InsideDiameter.check(i64::from(can.inside_diameter_um))?;
        Field::OpenLength.check(i64::from(can.open_length_um))?;
        Field::Wall.check(i64::from(can.wall_um))?;
        Field::BaseRecess.check(i64::from(can.base_recess_um))?;
        Field::WireDiameter.check(i64::from(probe.wire_diameter_um))?;
        Field::ProbeLength.check(i64::from(probe.length_um))?;
        Field::BackshortDistance.check(i64::from(probe.backshort_distance_um))?;
        if let Some(hole) = probe.hole_diameter_um {
            Field::HoleDiameter.check(i64::from(hole))?;
        }
        Field::Reference.check(i64::from(probe.reference_milliohm))?;
        Field::Shunt.check(i64::from(probe.shunt_ff))?;
        if let Some(sleeve) = probe.sleeve {
            Field::SleeveDiameter.check(i64::from(sleeve.outside_diameter_um))?;
            Field::SleevePermittivity.check(i64::from(sleeve.permittivity_milli))?;
        }
        self.check_screws()?;
        self.check_mouth()?;
        self.check_sweep()
    }

    fn check_screws(&self) -> Result<(), DesignError> {
        let count = i64::try_from(self.screws.len()).unwrap_or(i64::MAX);
        Field::ScrewCount.check(count)?;
        for screw in &self.screws {
            Field::ScrewAxial.check(i64::from(screw.axial_um))?;
            Field::ScrewDepth.check(i64::from(screw.depth_um))?;
            Field::ScrewDiameter.check(i64::from(screw.diameter_um))?;
            Field::ScrewAngle.check(i64::from(screw.angle_millideg))?;
        }
        Ok(())
    }

    fn check_mouth(&self) -> Result<(), DesignError> {
        use crate::design::Mouth;
        match self.mouth {
            Mouth::Open | Mouth::Absorbing => Ok(()),
            Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg,
            } => {
                Field::MouthDiameter.check(i64::from(mouth_diameter_um))?;
                Field::MouthAngle.check(i64::from(half_angle_millideg))
            }
            Mouth::Flange {
                outside_diameter_um,
            } => Field::MouthDiameter.check(i64::from(outside_diameter_um)),
            Mouth::Choke {
                outside_diameter_um,
                depth_um,
            } => {
                Field::MouthDiameter.check(i64::from(outside_diameter_um))?;
                Field::ChokeDepth.check(i64::from(depth_um))
            }
        }
    }

    fn check_sweep(&self) -> Result<(), DesignError> {
        let Some(sweep) = self.sweep else {
            return Ok(());
        };
        Field::SweepLow.check(i64::from(sweep.low_khz))?;
        let least = i64::from(sweep.low_khz) + 1;
        Field::SweepHigh.check_within(
            i64::from(sweep.high_khz),
            least,
            Field::SweepHigh.range().1,
        )?;
        Field::SweepPoints.check(i64::from(sweep.points))
    }
}
