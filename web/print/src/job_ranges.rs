//! The ranges of a job's numbers.

use crate::job::{Fixing, Mouth, PrintJob};
use crate::paper::PRINTED_RANGE_UM;
use crate::print_error::PrintError;

fn within(key: &'static str, value: u32, low: u32, high: u32) -> Result<(), PrintError> {
    if (low..=high).contains(&value) {
        return Ok(());
    }
    Err(PrintError::OutOfRange {
        key,
        value: i64::from(value),
        low: i64::from(low),
        high: i64::from(high),
    })
}

impl PrintJob {
    /// Checks every number against its range. The keys are those of the job's
    /// text.
    ///
    /// # Errors
    /// [`PrintError::OutOfRange`] for the first that is outside.
    pub fn check(&self) -> Result<(), PrintError> {
        let (least, most) = PRINTED_RANGE_UM;
        within("ruler-across", self.rulers.across_um, least, most)?;
        within("ruler-upright", self.rulers.upright_um, least, most)?;
        within("paper-thickness", self.paper_thickness_um, 0, 1_000)?;
        let can = &self.can;
        within("outside-diameter", can.outside_diameter_um, 10_000, 540_000)?;
        within("wall", can.wall_um, 0, can.outside_diameter_um / 2 - 1_000)?;
        within("open-length", can.open_length_um, 5_000, 5_000_000)?;
        within("base-recess", can.base_recess_um, 0, 200_000)?;
        self.check_probe()?;
        for hole in &self.screws {
            within("screw", hole.hole_um, 100, 20_000)?;
            within("screw", hole.depth_um, 0, 500_000)?;
            within("screw", hole.angle_millideg.unsigned_abs(), 0, 360_000)?;
        }
        if let Some(bracket) = self.bracket {
            within("bracket", bracket.hole_um, 100, 20_000)?;
            within("bracket", bracket.spacing_um, 5_000, 500_000)?;
            within("bracket", bracket.angle_millideg.unsigned_abs(), 0, 360_000)?;
        }
        self.check_mouth()
    }

    fn check_probe(&self) -> Result<(), PrintError> {
        let probe = &self.probe;
        within("wire", probe.wire_diameter_um, 100, 12_000)?;
        within("length", probe.length_um, 1_000, 500_000)?;
        within("backshort", probe.backshort_um, 500, 5_000_000)?;
        if let Some(sleeve) = probe.sleeve_um {
            within("sleeve", sleeve, 100, 40_000)?;
        }
        for (key, limits) in [
            ("within-1.5", probe.within_1_5),
            ("within-2", probe.within_2),
        ] {
            if let Some(limits) = limits {
                within(key, limits.longest_um, 0, 500_000)?;
                within(key, limits.shortest_um, 0, limits.longest_um)?;
            }
        }
        within("drill", self.panel.drill_um, 100, 60_000)?;
        within("connector-mass", self.panel.mass_mg, 0, 10_000_000)?;
        if let Fixing::Flange {
            square_um,
            pitch_um,
            hole_um,
        } = self.panel.fixing
        {
            within("flange", square_um, 1_000, 100_000)?;
            within("flange", pitch_um, 500, square_um)?;
            within("flange", hole_um, 100, 20_000)?;
        }
        Ok(())
    }

    fn check_mouth(&self) -> Result<(), PrintError> {
        const WIDEST: u32 = 5_000_000;
        let sheet = match self.mouth {
            Mouth::Open => 0,
            Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg,
                sheet_um,
            } => {
                within("funnel", mouth_diameter_um, 10_000, WIDEST)?;
                within("funnel", half_angle_millideg, 1_000, 89_000)?;
                sheet_um
            }
            Mouth::Flange {
                outside_diameter_um,
                sheet_um,
            } => {
                within("ring", outside_diameter_um, 10_000, WIDEST)?;
                sheet_um
            }
            Mouth::Choke {
                inside_diameter_um,
                depth_um,
                sheet_um,
            } => {
                within("choke", inside_diameter_um, 10_000, WIDEST)?;
                within("choke", depth_um, 500, 1_000_000)?;
                sheet_um
            }
        };
        within("sheet", sheet, 0, 10_000)?;
        match self.cap {
            None => Ok(()),
            Some(cap) => {
                within("cap", cap.sheet_um, 10, 20_000)?;
                within("cap", cap.permittivity_milli, 1_000, 20_000)
            }
        }
    }
}
