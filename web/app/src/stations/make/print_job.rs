//! From the work to a job for the printer.

use tinwave_core::design::Mouth as DesignMouth;
use tinwave_maker::bench::{Clamp, clamp_of};
use tinwave_maker::connectors::connector;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::wire_gauges::{GaugeSystem, gauges};
use tinwave_maker::workpiece::Workpiece;
use tinwave_protocol::print::{
    Can, Cap, CapFound, FittingsFound, Fixing, Mouth, Orientation, Panel, PrintJob, Probe,
    RivetDepth, WallHole,
};
use tinwave_words::make as words;

use super::choices::PrintChoices;

/// Thickness of office paper of 80 g/m² (common practice, no source).
const PAPER_UM: u32 = 100;

/// A wire this near to a gauge is named by it.
const SAME_WIRE_UM: u32 = 5;

/// What is to be printed of a work: with what was computed for it, as its maker chose.
/// `None` where the connector has no hole of a known size.
#[must_use]
pub fn print_job(
    work: &Workpiece,
    fittings: &FittingsFound,
    choices: &PrintChoices,
    link: &str,
    unit: LengthUnit,
) -> Option<PrintJob> {
    let (can, probe) = (&work.design.can, &work.design.probe);
    let walls = can.wall_um.saturating_mul(2);
    Some(PrintJob {
        name: work.design.name.clone(),
        link: link.to_owned(),
        unit,
        paper: choices.paper,
        orientation: Orientation::Automatic,
        rulers: choices.rulers,
        paper_thickness_um: PAPER_UM,
        parts: choices.parts.clone(),
        can: Can {
            outside_diameter_um: can.inside_diameter_um.saturating_add(walls),
            wall_um: can.wall_um,
            open_length_um: can.open_length_um,
            base_recess_um: can.base_recess_um,
            metal: can.metal,
        },
        rim: choices.rim,
        seam: choices.seam,
        probe: Probe {
            wire_diameter_um: probe.wire_diameter_um,
            length_um: probe.length_um,
            backshort_um: probe.backshort_distance_um,
            gauge: gauge_of(probe.wire_diameter_um),
            sleeve_um: probe.sleeve.map(|sleeve| sleeve.outside_diameter_um),
            within_1_5: fittings.within_1_5,
            within_2: fittings.within_2,
        },
        panel: Panel {
            name: connector(work.connector.kind).name.to_owned(),
            drill_um: work.connector.drill_um()?,
            fixing: match clamp_of(work.connector) {
                Clamp::Screws(flange) => Fixing::Flange {
                    square_um: flange.square_um,
                    pitch_um: flange.hole_pitch_um,
                    hole_um: flange.hole_um,
                },
                Clamp::Nut => Fixing::Nut,
                Clamp::Solder => Fixing::Solder,
            },
            mass_mg: 0,
        },
        screws: work
            .design
            .screws
            .iter()
            .map(|screw| WallHole {
                axial_um: screw.axial_um,
                // A whole turn has no negative angles.
                angle_millideg: screw.angle_millideg.rem_euclid(360_000).unsigned_abs(),
                hole_um: screw.diameter_um,
                depth_um: screw.depth_um,
            })
            .collect(),
        bracket: fittings.bracket.map(|found| found.bracket),
        mouth: mouth(work.design.mouth, can.wall_um),
        cap: choices.cap.map(|cap| Cap {
            sheet_um: cap.sheet().thickness_um,
            permittivity_milli: cap.sheet().permittivity_milli,
        }),
        notes: notes(fittings, unit),
        images: Vec::new(),
    })
}

fn gauge_of(wire_um: u32) -> String {
    let all = GaugeSystem::ALL
        .into_iter()
        .flat_map(|system| gauges(system).iter());
    all.copied()
        .find(|gauge| gauge.diameter_um.abs_diff(wire_um) <= SAME_WIRE_UM)
        .map_or_else(String::new, |gauge| gauge.label())
}

/// What stands at the mouth, of sheet as thick as the can's wall.
fn mouth(mouth: DesignMouth, sheet_um: u32) -> Mouth {
    match mouth {
        DesignMouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
            sheet_um,
        },
        DesignMouth::Flange {
            outside_diameter_um,
        } => Mouth::Ring {
            outside_diameter_um,
            sheet_um,
        },
        DesignMouth::Choke {
            outside_diameter_um,
            depth_um,
        } => Mouth::Choke {
            inside_diameter_um: outside_diameter_um,
            depth_um,
            sheet_um,
        },
        DesignMouth::Open | DesignMouth::Absorbing => Mouth::Open,
    }
}

/// What was computed, in sentences for the build sheet.
fn notes(fittings: &FittingsFound, unit: LengthUnit) -> Vec<String> {
    let cap = fittings.cap.as_ref().map(cap_note);
    let bracket = fittings.bracket.as_ref();
    // A limit that was found stands at the bracket's own step.
    let bracket = bracket.and_then(|found| match found.depth {
        RivetDepth::Within(_) => None,
        depth => Some(rivet_note(depth, unit)),
    });
    cap.into_iter().chain(bracket).collect()
}

/// What a cap does, in a sentence.
#[must_use]
pub fn cap_note(found: &CapFound) -> String {
    match *found {
        CapFound::NotComputed => words::cap_not_computed().into(),
        CapFound::Computed {
            vswr_without,
            vswr_with,
            shift_khz,
            loss_db,
        } => words::cap_does(vswr_with, vswr_without, shift_khz, loss_db),
    }
}

/// How deep the bracket's rivets may go, in a sentence.
#[must_use]
pub fn rivet_note(depth: RivetDepth, unit: LengthUnit) -> String {
    match depth {
        RivetDepth::Within(um) => words::rivets_within(um, unit),
        RivetDepth::Beyond(um) => words::rivets_beyond(um, unit),
        RivetDepth::NotComputed => words::rivets_not_computed().into(),
    }
}

#[cfg(test)]
#[allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]
mod tests {
    use super::*;
    use tinwave_core::design::Screw;
    use tinwave_maker::connectors::{ConnectorChoice, ConnectorKind, Mounting};
    use tinwave_maker::example::example;
    use tinwave_protocol::print::{Bracket, BracketFound, CutLimits, Part};

    fn job(work: &Workpiece, fittings: &FittingsFound) -> Option<PrintJob> {
        let choices = PrintChoices::default();
        print_job(
            work,
            fittings,
            &choices,
            "https://example.org/#v=1",
            LengthUnit::Millimetre,
        )
    }

    #[test]
    fn the_can_and_its_cut_go_into_the_job() {
        let mut work = example();
        work.design.name = "Orchard gate".into();
        let limits = CutLimits {
            shortest_um: 30_600,
            longest_um: 32_000,
        };
        let found = FittingsFound {
            within_1_5: Some(limits),
            ..FittingsFound::default()
        };
        let job = job(&work, &found).expect("a job");
        assert_eq!(job.name, "Orchard gate");
        assert_eq!(job.can.outside_diameter_um, 87_400);
        assert_eq!(job.probe.length_um, work.design.probe.length_um);
        assert_eq!(job.probe.gauge, "AWG 16");
        assert_eq!(job.probe.within_1_5, Some(limits));
        assert!(matches!(
            job.panel.fixing,
            Fixing::Flange { hole_um: 2_600, .. }
        ));
        assert!(!job.parts.contains(&Part::Cap));
    }

    #[test]
    fn a_choke_and_a_screw_behind_the_probe_are_taken_over() {
        let mut work = example();
        work.design.mouth = DesignMouth::Choke {
            outside_diameter_um: 120_000,
            depth_um: 30_000,
        };
        work.design.screws = vec![Screw {
            axial_um: 90_000,
            angle_millideg: -90_000,
            depth_um: 4_000,
            diameter_um: 3_000,
        }];
        let job = job(&work, &FittingsFound::default()).expect("a job");
        assert_eq!(
            job.mouth,
            Mouth::Choke {
                inside_diameter_um: 120_000,
                depth_um: 30_000,
                sheet_um: 200,
            }
        );
        assert_eq!(job.screws[0].angle_millideg, 270_000);
    }

    #[test]
    fn a_connector_without_a_known_hole_is_not_printed() {
        let mut work = example();
        work.connector = ConnectorChoice {
            kind: ConnectorKind::F,
            mounting: Mounting::Soldered,
        };
        assert_eq!(job(&work, &FittingsFound::default()), None);
    }

    #[test]
    fn what_was_computed_is_said_once() {
        let bracket = |depth| BracketFound {
            bracket: Bracket {
                angle_millideg: 180_000,
                hole_um: 4_100,
                spacing_um: 40_000,
                deepest_um: None,
            },
            depth,
        };
        let with = |depth| FittingsFound {
            cap: Some(CapFound::NotComputed),
            bracket: Some(bracket(depth)),
            ..FittingsFound::default()
        };
        let mm = LengthUnit::Millimetre;
        assert_eq!(notes(&with(RivetDepth::Within(4_000)), mm).len(), 1);
        assert_eq!(notes(&with(RivetDepth::Beyond(4_000)), mm).len(), 2);
    }
}
