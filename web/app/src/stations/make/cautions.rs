//! Which cautions belong to which step; every one belongs to one step alone.

use tinwave_maker::bench::{Step, steps};
use tinwave_maker::workpiece::Workpiece;
use tinwave_words::{Caution, CautionText, Occasion, cautions};

/// The step at which a caution is shown.
fn step_of(caution: &CautionText, work: &Workpiece) -> Step {
    match (caution.caution, caution.occasion) {
        (Caution::Coatings, _) => Step::RubOff,
        (Caution::FoodSafe, _) | (_, Occasion::Drill) => Step::Drill,
        (Caution::Water, _) => Step::Cap,
        // A cable that is soldered to the can is soldered as it is fixed.
        (_, Occasion::Solder) if steps(work).contains(&Step::Solder) => Step::Solder,
        (_, Occasion::Solder) => Step::Fix,
        _ => Step::Before,
    }
}

/// The cautions of a step, for the can's metal.
#[must_use]
pub fn cautions_of(step: Step, work: &Workpiece) -> Vec<CautionText> {
    let metal = work.design.can.metal;
    Occasion::ALL
        .into_iter()
        .flat_map(|occasion| cautions(occasion, metal))
        .filter(|caution| step_of(caution, work) == step)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_core::metal::Metal;
    use tinwave_maker::connectors::{ConnectorChoice, ConnectorKind, Mounting};
    use tinwave_maker::example::example;

    /// Every caution of a work, by its steps.
    fn all(work: &Workpiece) -> Vec<(Step, Caution)> {
        let steps = steps(work).into_iter();
        steps
            .flat_map(|step| {
                let cautions = cautions_of(step, work).into_iter();
                cautions.map(move |text| (step, text.caution))
            })
            .collect()
    }

    #[test]
    fn every_caution_of_the_metal_is_at_one_step_and_power_lines_at_the_last() {
        for (kind, mounting) in [
            (ConnectorKind::Sma, Mounting::Flange),
            (ConnectorKind::Cable, Mounting::Soldered),
        ] {
            for metal in [Metal::Tinplate, Metal::Galvanised, Metal::Brass] {
                let mut work = example();
                work.connector = ConnectorChoice { kind, mounting };
                work.design.can.metal = metal;
                let shown = all(&work);
                let due = Occasion::ALL.map(|occasion| cautions(occasion, metal).len());
                assert_eq!(shown.len(), due.iter().sum::<usize>(), "{metal:?}");
                for needed in [
                    (Step::Before, Caution::PowerLines),
                    (Step::Before, Caution::PowerNearEyes),
                    (Step::Drill, Caution::EyeProtection),
                ] {
                    assert!(shown.contains(&needed), "{needed:?}");
                }
            }
        }
    }
}
