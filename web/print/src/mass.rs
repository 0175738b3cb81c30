//! What the parts weigh and where the whole balances.

use std::f64::consts::PI;

use crate::cone::degrees;
use crate::turn::sin_cos;
use tinwave_core::metal::Metal;
use tinwave_protocol::print::{Mouth, PrintJob};

/// One part's mass and the place of its centre along the axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartMass {
    /// Mass in grams.
    pub grams: f64,
    /// Its centre from the closed end's outer rim, millimetres.
    pub axial_mm: f64,
}

/// Density in g/cm³; `None` for the perfect conductor, which is no stuff.
///
/// Steel: EN 1991-1-1 table A.4 (77 to 78.5 kN/m³), stainless 304: EN 10088-1
/// (7.9), aluminium 3004 and brass 70/30: ASM handbook (2.72, 8.53), copper and
/// zinc: CRC Handbook of Chemistry and Physics (8.96, 7.13). From memory. The
/// coating of tinplate and galvanised sheet is left out: below 1 and 7 %.
#[must_use]
pub const fn density(metal: Metal) -> Option<f64> {
    match metal {
        Metal::Tinplate | Metal::Galvanised | Metal::Steel => Some(7.85),
        Metal::Aluminium => Some(2.72),
        Metal::Copper => Some(8.96),
        Metal::Brass => Some(8.53),
        Metal::Zinc => Some(7.13),
        Metal::Stainless => Some(7.9),
        _ => None,
    }
}

/// Density of the wire, copper, g/cm³ (CRC Handbook, from memory).
const WIRE_DENSITY: f64 = 8.96;
/// Density of the cap, polyethylene, g/cm³ (0.91 to 0.97 by kind; polymer
/// handbooks, from memory).
const CAP_DENSITY: f64 = 0.95;

fn mm(um: u32) -> f64 {
    f64::from(um) / 1e3
}

/// Parts as they are added.
#[derive(Default)]
struct Parts(Vec<PartMass>);

impl Parts {
    /// Adds a part by its volume in mm³, its density and its place.
    #[inline(never)]
    fn add(&mut self, volume_mm3: f64, density: f64, axial_mm: f64) {
        self.0.push(PartMass {
            grams: volume_mm3 * density / 1e3,
            axial_mm,
        });
    }

    /// Adds a ring of sheet, or a disc where the inside is 0.
    #[inline(never)]
    fn add_ring(&mut self, (outer, inner): (f64, f64), sheet: f64, density: f64, axial: f64) {
        let area = PI / 4.0 * (outer * outer - inner * inner).max(0.0);
        self.add(area * sheet, density, axial);
    }

    /// Adds a tube by its diameter in the middle of the wall.
    #[inline(never)]
    fn add_tube(&mut self, diameter: f64, wall: f64, length: f64, density: f64, axial: f64) {
        self.add(PI * diameter * wall * length, density, axial);
    }
}

/// Every part: shell, base, wire, connector, what is at the mouth, cap. Screws,
/// solder and bracket are left out. `None` where the can is of no real metal.
#[must_use]
pub fn part_masses(job: &PrintJob) -> Option<Vec<PartMass>> {
    let density = density(job.can.metal)?;
    let can = &job.can;
    let (wall, inside) = (mm(can.wall_um), mm(can.inside_diameter_um()));
    let overall = mm(can.overall_um());
    let base = mm(can.base_recess_um) + wall / 2.0;
    let hole = mm(can.base_um()) + mm(job.probe.backshort_um);
    let wire = mm(job.probe.wire_diameter_um);
    let mut parts = Parts::default();
    parts.add_tube(inside + wall, wall, overall, density, overall / 2.0);
    parts.add_ring((inside, 0.0), wall, density, base);
    parts.add_ring((wire, 0.0), mm(job.probe.length_um), WIRE_DENSITY, hole);
    parts.add(f64::from(job.panel.mass_mg), 1.0, hole);
    add_mouth(&mut parts, job, density);
    if let Some(cap) = job.cap {
        let place = overall + funnel_height(job);
        let covered = (mouth_diameter(job), 0.0);
        parts.add_ring(covered, mm(cap.sheet_um), CAP_DENSITY, place);
    }
    Some(parts.0)
}

/// Diameter that a cap covers, millimetres.
fn mouth_diameter(job: &PrintJob) -> f64 {
    match job.mouth {
        Mouth::Funnel {
            mouth_diameter_um, ..
        } => mm(mouth_diameter_um),
        _ => mm(job.can.outside_diameter_um),
    }
}

/// Height of the funnel along the axis, millimetres; 0 without one.
fn funnel_height(job: &PrintJob) -> f64 {
    match job.mouth {
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
            ..
        } => {
            let flare = mm(mouth_diameter_um) - mm(job.can.outside_diameter_um);
            let angle = degrees(half_angle_millideg);
            let (sin, cos) = sin_cos(angle);
            (flare / 2.0 * cos / sin).max(0.0)
        }
        _ => 0.0,
    }
}

fn add_mouth(parts: &mut Parts, job: &PrintJob, density: f64) {
    let overall = mm(job.can.overall_um());
    let outside = mm(job.can.outside_diameter_um);
    match job.mouth {
        Mouth::Open => {}
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
            sheet_um,
        } => {
            let (small, wide) = (outside / 2.0, mm(mouth_diameter_um) / 2.0);
            let slant = ((wide - small) / sin_cos(degrees(half_angle_millideg)).0).max(0.0);
            // Centroid of a frustum's mantle: h/3 (r1 + 2 r2)/(r1 + r2).
            let place = funnel_height(job) / 3.0 * (small + 2.0 * wide) / (small + wide);
            parts.add_tube(small + wide, mm(sheet_um), slant, density, overall + place);
        }
        Mouth::Ring {
            outside_diameter_um,
            sheet_um,
        } => {
            let ring = (mm(outside_diameter_um), outside);
            parts.add_ring(ring, mm(sheet_um), density, overall);
        }
        Mouth::Choke {
            inside_diameter_um,
            depth_um,
            sheet_um,
        } => {
            let (inside, depth, sheet) = (mm(inside_diameter_um), mm(depth_um), mm(sheet_um));
            parts.add_ring((inside, outside), sheet, density, overall - depth);
            let middle = overall - depth / 2.0;
            parts.add_tube(inside + sheet, sheet, depth, density, middle);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::examples;

    #[test]
    fn a_plain_shell_weighs_what_its_sheet_weighs() {
        // By hand: 83.0 mm inside, wall 0.2 mm, 146 mm from rim to rim.
        // Shell: π × 83.2 × 0.2 × 146 = 7632.3 mm³, × 7.85 = 59.91 g.
        // Base: π/4 × 83² × 0.2 = 1082.1 mm³ = 8.49 g.
        let mut job = examples::plain_can();
        job.can.outside_diameter_um = 83_400;
        job.can.wall_um = 200;
        job.can.base_recess_um = 3_800;
        job.can.open_length_um = 142_000;
        let parts = part_masses(&job).unwrap_or_default();
        assert!((parts[0].grams - 59.91).abs() < 0.01, "{:?}", parts[0]);
        assert!((parts[1].grams - 8.49).abs() < 0.01, "{:?}", parts[1]);
        assert!((parts[0].axial_mm - 73.0).abs() < 1e-9);
        assert!((parts[1].axial_mm - 3.9).abs() < 1e-9);
    }
}
