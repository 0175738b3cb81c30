//! The ranges of a job's numbers.

use crate::job::{Fixing, Mouth, PrintJob};
use crate::paper::PRINTED_RANGE_UM;
use crate::print_error::PrintError;

/// The first number that is outside its range, if any.
#[derive(Default)]
struct Ranges {
    error: Option<PrintError>,
}

impl Ranges {
    #[inline(never)]
    fn within(&mut self, key: &'static str, value: u32, low: u32, high: u32) {
        if self.error.is_none() && !(low..=high).contains(&value) {
            self.error = Some(PrintError::OutOfRange {
                key,
                value,
                low,
                high,
            });
        }
    }
}

impl PrintJob {
    /// Checks every number against its range. The keys are those of the job's
    /// text.
    ///
    /// # Errors
    /// [`PrintError::OutOfRange`] for the first that is outside.
    pub fn check(&self) -> Result<(), PrintError> {
        let ranges = &mut Ranges::default();
        let (least, most) = PRINTED_RANGE_UM;
        ranges.within("ruler-across", self.rulers.across_um, least, most);
        ranges.within("ruler-upright", self.rulers.upright_um, least, most);
        ranges.within("paper-thickness", self.paper_thickness_um, 0, 1_000);
        let can = &self.can;
        ranges.within("outside-diameter", can.outside_diameter_um, 10_000, 540_000);
        ranges.within(
            "wall",
            can.wall_um,
            0,
            (can.outside_diameter_um / 2).saturating_sub(1_000),
        );
        ranges.within("open-length", can.open_length_um, 5_000, 5_000_000);
        ranges.within("base-recess", can.base_recess_um, 0, 200_000);
        self.check_probe(ranges);
        for hole in &self.screws {
            ranges.within("screw", hole.hole_um, 100, 20_000);
            ranges.within("screw", hole.depth_um, 0, 500_000);
            ranges.within("screw", hole.angle_millideg, 0, 360_000);
        }
        if let Some(bracket) = self.bracket {
            ranges.within("bracket", bracket.hole_um, 100, 20_000);
            ranges.within("bracket", bracket.spacing_um, 5_000, 500_000);
            ranges.within("bracket", bracket.angle_millideg, 0, 360_000);
        }
        self.check_mouth(ranges);
        ranges.error.take().map_or(Ok(()), Err)
    }

    fn check_probe(&self, ranges: &mut Ranges) {
        let probe = &self.probe;
        ranges.within("wire", probe.wire_diameter_um, 100, 12_000);
        ranges.within("length", probe.length_um, 1_000, 500_000);
        ranges.within("backshort", probe.backshort_um, 500, 5_000_000);
        if let Some(sleeve) = probe.sleeve_um {
            ranges.within("sleeve", sleeve, 100, 40_000);
        }
        for (key, limits) in [
            ("within-1.5", probe.within_1_5),
            ("within-2", probe.within_2),
        ] {
            if let Some(limits) = limits {
                ranges.within(key, limits.longest_um, 0, 500_000);
                ranges.within(key, limits.shortest_um, 0, limits.longest_um);
            }
        }
        ranges.within("drill", self.panel.drill_um, 100, 60_000);
        ranges.within("connector-mass", self.panel.mass_mg, 0, 10_000_000);
        if let Fixing::Flange {
            square_um,
            pitch_um,
            hole_um,
        } = self.panel.fixing
        {
            ranges.within("flange", square_um, 1_000, 100_000);
            ranges.within("flange", pitch_um, 500, square_um);
            ranges.within("flange", hole_um, 100, 20_000);
        }
    }

    fn check_mouth(&self, ranges: &mut Ranges) {
        const WIDEST: u32 = 5_000_000;
        let sheet = match self.mouth {
            Mouth::Open => 0,
            Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg,
                sheet_um,
            } => {
                ranges.within("funnel", mouth_diameter_um, 10_000, WIDEST);
                ranges.within("funnel", half_angle_millideg, 1_000, 89_000);
                sheet_um
            }
            Mouth::Flange {
                outside_diameter_um,
                sheet_um,
            } => {
                ranges.within("ring", outside_diameter_um, 10_000, WIDEST);
                sheet_um
            }
            Mouth::Choke {
                inside_diameter_um,
                depth_um,
                sheet_um,
            } => {
                ranges.within("choke", inside_diameter_um, 10_000, WIDEST);
                ranges.within("choke", depth_um, 500, 1_000_000);
                sheet_um
            }
        };
        ranges.within("sheet", sheet, 0, 10_000);
        if let Some(cap) = self.cap {
            ranges.within("cap", cap.sheet_um, 10, 20_000);
            ranges.within("cap", cap.permittivity_milli, 1_000, 20_000);
        }
    }
}
