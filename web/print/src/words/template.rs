//! Words on the drill template, the cut gauge and the sheet patterns.

use super::{When, count, diameter, length, say};
use crate::figure::{Figures, fixed, rounded};
use crate::fill::fill;
use tinwave_protocol::print::{Bracket, PrintJob, WallHole};

pub(crate) const MOUTH_THIS_WAY: &str = "mouth this way";
pub(crate) const SEAM_AT_ENDS: &str = "can’s seam here";
pub(crate) const SEAM_THROUGH_HOLE: &str = "can’s seam";
pub(crate) const EDGE_ON_CLOSED_RIM: &str = "this edge level with the closed end’s rim";
pub(crate) const EDGE_ON_OPEN_RIM: &str = "this edge level with the rim of the mouth";
pub(crate) const ENDS_MEET: &str = "Stand the can on a flat table and wrap the strip round it, lower edge on the table all round. \
Edge A must fall on line B. Each mark by which it misses is 1 mm round, 0.3 mm in diameter: measure the can again.";

pub(crate) const TIP: &str = "tip";
pub(crate) const WITHIN_1_5: &str = "VSWR under 1.5";
pub(crate) const WITHIN_2: &str = "VSWR under 2";
pub(crate) const NO_LIMITS: &str = "no length in reach";
pub(crate) const GAUGE_USE: &str = "Lay the wire on the bar, its zero on the thick line, and cut at the tip line. Cut long, then file.";

pub(crate) const CUT_LINE: &str = "cut";
pub(crate) const FOLD_LINE: &str = "bend";
pub(crate) const RING_USE: &str = "Bend the tabs square and fix them to the can’s outside, the ring flush with the rim of the mouth.";
pub(crate) const CAP_USE: &str =
    "Cut of thin plastic sheet. Bend the tabs back over the wall and tape them all round.";

/// "2", the number of a hole from its index.
pub(crate) fn hole_number(index: usize) -> String {
    count(index + 1)
}

fn from_rim(job: &PrintJob, axial_um: u32) -> String {
    let from = job.unit.length(job.from_rim(axial_um));
    from + &say(job, " from {rim}")
}

/// An angle as the strip shows it: with the open rim below, angles run to the
/// left.
fn beside(job: &PrintJob, millideg: u32) -> String {
    let degrees = fixed(rounded(i64::from(millideg), 100), 1);
    degrees + &say(job, "° to the {side}")
}

/// What the template is for.
pub(crate) const TEMPLATE_OF: &str = "Drill template for a can of {outside} outside.";

/// Hole 1 in the list.
pub(crate) fn probe_hole_listed(job: &PrintJob) -> String {
    let from = from_rim(job, job.probe.backshort_um);
    let words = say(job, "drill {drill} for {connector}, ") + &from;
    if When::Flange.holds(job) {
        return words + &say(job, "; four screw holes {screw hole}");
    }
    words
}

/// A tuning screw in the list.
pub(crate) fn screw_hole_listed(job: &PrintJob, screw: &WallHole) -> String {
    fill(
        "drill {} for a tuning screw, {}, {} of hole 1; it sticks in {}",
        &[
            &diameter(job, screw.hole_um),
            &from_rim(job, screw.axial_um),
            &beside(job, screw.angle_millideg),
            &length(job, screw.depth_um),
        ],
    )
}

/// A hole of the bracket in the list.
pub(crate) fn bracket_hole_listed(job: &PrintJob, axial_um: u32, bracket: Bracket) -> String {
    fill(
        "drill {} for the bracket, {}, {} of hole 1",
        &[
            &diameter(job, bracket.hole_um),
            &from_rim(job, axial_um),
            &beside(job, bracket.angle_millideg),
        ],
    )
}

/// What the wire of the gauge is.
pub(crate) const WIRE_OF: &str = "Wire {wire} {gauge}";

/// The rows of the gauge.
pub(crate) const GAUGE_ROWS: [&str; 2] = [
    "{length} from the inside wall",
    "{face} from the connector’s face",
];

/// The funnel's sentence: how it goes together, and how to check it.
pub(crate) fn funnel_use(job: &PrintJob, flat: crate::cone::Development) -> String {
    let figure = |um: f64| job.unit.length(i64::from(crate::geometry::nearest(um)));
    let sector = crate::geometry::nearest(flat.sector_deg * 100.0);
    fill(
        "Radii {} and {}, {}°. Roll it, lay the straight edge on the thin line over the seam tab, rivet or solder. Bend the small tabs along the can’s outside and fix them, the bending line on the rim.",
        &[
            &figure(flat.inner),
            &figure(flat.outer),
            &fixed(i64::from(sector), 2),
        ],
    )
}

/// The choke cup's sentence.
pub(crate) fn choke_use(job: &PrintJob, strip_um: i32) -> String {
    fill(
        "Strip {} long without its seam tab. Roll it, bend its tabs inwards and fix the ring on them. The ring’s own tabs go along the can’s outside; the cup’s rim is flush with the mouth.",
        &[&job.unit.length(i64::from(strip_um))],
    )
}

/// What the cap is cut of.
pub(crate) fn cap_of(job: &PrintJob, cap: tinwave_protocol::print::Cap) -> String {
    let permittivity = fixed(i64::from(cap.permittivity_milli) / 10, 2);
    say(job, "Cap for {covered}, sheet of {cap}, permittivity ") + &permittivity
}
