//! What is asked of a job: the ranges of its numbers, the length of its words.

use tinwave_protocol::print::{
    Fixing, JobNumber, Mouth, PRINTED_RANGE_UM, PrintError, PrintJob, TextImage,
};

/// The first number that is outside its range, if any.
#[derive(Default)]
struct Ranges {
    error: Option<PrintError>,
}

impl Ranges {
    #[inline(never)]
    fn within(&mut self, number: JobNumber, value: u32, low: u32, high: u32) {
        if self.error.is_none() && !(low..=high).contains(&value) {
            self.error = Some(PrintError::OutOfRange {
                number,
                value,
                low,
                high,
            });
        }
    }
}

/// Longest words that are taken, in bytes.
const LONGEST_WORDS: u32 = 2_000;

/// Checks every number against its range, and the words.
///
/// # Errors
/// [`PrintError`]: the first number that is outside, or what is wrong with the words.
pub fn check(job: &PrintJob) -> Result<(), PrintError> {
    check_words(job)?;
    let ranges = &mut Ranges::default();
    let (least, most) = PRINTED_RANGE_UM;
    ranges.within(JobNumber::RulerAcross, job.rulers.across_um, least, most);
    ranges.within(JobNumber::RulerUpright, job.rulers.upright_um, least, most);
    ranges.within(JobNumber::PaperThickness, job.paper_thickness_um, 0, 1_000);
    let can = &job.can;
    ranges.within(
        JobNumber::OutsideDiameter,
        can.outside_diameter_um,
        10_000,
        540_000,
    );
    ranges.within(
        JobNumber::Wall,
        can.wall_um,
        0,
        (can.outside_diameter_um / 2).saturating_sub(1_000),
    );
    ranges.within(JobNumber::OpenLength, can.open_length_um, 5_000, 5_000_000);
    ranges.within(JobNumber::BaseRecess, can.base_recess_um, 0, 200_000);
    check_probe(job, ranges);
    for hole in &job.screws {
        ranges.within(JobNumber::Screw, hole.hole_um, 100, 20_000);
        ranges.within(JobNumber::Screw, hole.depth_um, 0, 500_000);
        ranges.within(JobNumber::Screw, hole.angle_millideg, 0, 360_000);
    }
    if let Some(bracket) = job.bracket {
        ranges.within(JobNumber::Bracket, bracket.hole_um, 100, 20_000);
        ranges.within(JobNumber::Bracket, bracket.spacing_um, 5_000, 500_000);
        ranges.within(JobNumber::Bracket, bracket.angle_millideg, 0, 360_000);
    }
    check_mouth(job, ranges);
    ranges.error.take().map_or(Ok(()), Err)
}

fn check_probe(job: &PrintJob, ranges: &mut Ranges) {
    let probe = &job.probe;
    ranges.within(JobNumber::Wire, probe.wire_diameter_um, 100, 12_000);
    ranges.within(JobNumber::Length, probe.length_um, 1_000, 500_000);
    ranges.within(JobNumber::Backshort, probe.backshort_um, 500, 5_000_000);
    if let Some(sleeve) = probe.sleeve_um {
        ranges.within(JobNumber::Sleeve, sleeve, 100, 40_000);
    }
    for (key, limits) in [
        (JobNumber::CutLimits, probe.within_1_5),
        (JobNumber::CutLimits, probe.within_2),
    ] {
        if let Some(limits) = limits {
            ranges.within(key, limits.longest_um, 0, 500_000);
            ranges.within(key, limits.shortest_um, 0, limits.longest_um);
        }
    }
    ranges.within(JobNumber::Drill, job.panel.drill_um, 100, 60_000);
    ranges.within(JobNumber::ConnectorMass, job.panel.mass_mg, 0, 10_000_000);
    if let Fixing::Flange {
        square_um,
        pitch_um,
        hole_um,
    } = job.panel.fixing
    {
        ranges.within(JobNumber::Flange, square_um, 1_000, 100_000);
        ranges.within(JobNumber::Flange, pitch_um, 500, square_um);
        ranges.within(JobNumber::Flange, hole_um, 100, 20_000);
    }
}

fn check_mouth(job: &PrintJob, ranges: &mut Ranges) {
    const WIDEST: u32 = 5_000_000;
    let sheet = match job.mouth {
        Mouth::Open => 0,
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
            sheet_um,
        } => {
            ranges.within(JobNumber::Mouth, mouth_diameter_um, 10_000, WIDEST);
            ranges.within(JobNumber::Mouth, half_angle_millideg, 1_000, 89_000);
            sheet_um
        }
        Mouth::Ring {
            outside_diameter_um,
            sheet_um,
        } => {
            ranges.within(JobNumber::Mouth, outside_diameter_um, 10_000, WIDEST);
            sheet_um
        }
        Mouth::Choke {
            inside_diameter_um,
            depth_um,
            sheet_um,
        } => {
            ranges.within(JobNumber::Mouth, inside_diameter_um, 10_000, WIDEST);
            ranges.within(JobNumber::Mouth, depth_um, 500, 1_000_000);
            sheet_um
        }
    };
    ranges.within(JobNumber::Sheet, sheet, 0, 10_000);
    if let Some(cap) = job.cap {
        ranges.within(JobNumber::Cap, cap.sheet_um, 10, 20_000);
        ranges.within(JobNumber::Cap, cap.permittivity_milli, 1_000, 20_000);
    }
}
fn check_words(job: &PrintJob) -> Result<(), PrintError> {
    let words = [&job.name, &job.link, &job.probe.gauge, &job.panel.name];
    let too_long = |words: &&String| words.len() > LONGEST_WORDS as usize;
    if words.iter().any(too_long) || job.notes.iter().any(|note| too_long(&note)) {
        return Err(PrintError::WordsTooLong {
            most: LONGEST_WORDS,
        });
    }
    if job.images.iter().all(TextImage::is_sound) {
        Ok(())
    } else {
        Err(PrintError::UnsoundImage)
    }
}

/// The same without signs that can't be seen.
pub(crate) fn seen(mut job: PrintJob) -> PrintJob {
    let words = [
        &mut job.name,
        &mut job.link,
        &mut job.probe.gauge,
        &mut job.panel.name,
    ];
    for words in words.into_iter().chain(&mut job.notes) {
        words.retain(|sign| !sign.is_control());
    }
    job
}
