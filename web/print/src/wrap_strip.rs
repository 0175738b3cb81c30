//! The can's wall unrolled: where a place on the wall comes to lie on a strip
//! of paper that goes once round.

use std::f64::consts::PI;

use crate::geometry::{Point, Um, at, nearest, um};
use tinwave_protocol::print::PrintError;
use tinwave_protocol::print::{JobNumber, PrintJob, Rim};

/// The unrolled wall. The strip's lower edge (y = 0) lies on the rim, the
/// probe's hole is in the middle of its length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WrapStrip {
    /// Once round, measured in the middle of the paper's thickness.
    pub around: Um,
    /// Which way angles run.
    rim: Rim,
}

/// Length of a strip of paper that goes once round a body and meets its own
/// start. The paper's middle layer neither stretches nor shrinks, and lies half
/// a thickness outside the wall: `π (D + t)`.
#[must_use]
pub fn circumference(diameter_um: u32, paper_um: u32) -> Um {
    nearest((f64::from(diameter_um) + f64::from(paper_um)) * PI)
}

impl WrapStrip {
    /// The strip of a job.
    #[must_use]
    pub fn new(job: &PrintJob) -> Self {
        Self {
            around: circumference(job.can.outside_diameter_um, job.paper_thickness_um),
            rim: job.rim,
        }
    }

    /// Where a place on the wall lies. With the open rim below, the strip is
    /// seen turned by half a turn, and angles run the other way.
    ///
    /// # Errors
    /// [`PrintError::OutOfRange`] for a place beyond the open rim.
    pub fn place(
        self,
        job: &PrintJob,
        number: JobNumber,
        axial_um: u32,
        angle_millideg: u32,
    ) -> Result<Point, PrintError> {
        if axial_um >= job.can.open_length_um {
            return Err(PrintError::OutOfRange {
                number,
                value: axial_um,
                low: 0,
                high: job.can.open_length_um.saturating_sub(1),
            });
        }
        let angle = match self.rim {
            Rim::Closed => i64::from(angle_millideg),
            Rim::Open => -i64::from(angle_millideg),
        };
        let turn = (angle + 180_000).rem_euclid(360_000);
        let x = i64::from(self.around) * turn / 360_000;
        let y = u32::try_from(job.from_rim(axial_um)).unwrap_or(0);
        Ok(at(Um::try_from(x).unwrap_or(0), um(y)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paper_is_longer_than_the_wall_by_pi_times_its_thickness() {
        // 100 mm: 314.159 mm; paper of 0.1 mm adds 0.314 mm.
        assert_eq!(circumference(100_000, 0), 314_159);
        assert_eq!(circumference(100_000, 100), 314_473);
    }
}
