//! One dish with this can as its feed: gain, place, and what makes the figures rough.

use tinwave_core::design::Mouth;
use tinwave_core::dish::{DishEfficiency, dish_gain_dbi};
use tinwave_core::si::metres;
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_words::beam::{self as words, DishDoubt};
use tinwave_words::figures::{db, degrees, distance, hand_length, percent};

use super::funnel::funnel_length_m;

/// Narrower dishes than so many wavelengths are beyond the optics that is used.
const NARROWEST: f64 = 5.0;
/// A lean that is told, degrees, and a shade that is, of the dish's area.
const LEAN_DEG: f64 = 3.0;
const SHADE: f64 = 0.005;

/// What is known of the dish.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DishFacts {
    /// How the can lights it.
    pub lit: DishEfficiency,
    /// Across its rim.
    pub diameter_um: u32,
    /// At the band's centre.
    pub wavelength_m: f64,
    /// What match and walls take.
    pub lost_db: f64,
    /// How far the feed's beam points off its axis.
    pub leans_deg: f64,
    /// Inside diameter of the can.
    pub can_um: u32,
    /// What stands at its mouth.
    pub mouth: Mouth,
}

impl DishFacts {
    fn diameter_m(&self) -> f64 {
        metres(self.diameter_um)
    }

    /// Before match and walls, dB over isotropic.
    pub fn gain_dbi(&self) -> f64 {
        dish_gain_dbi(self.diameter_m(), self.wavelength_m, self.lit.total)
    }

    /// From the middle of the dish to the can's rim.
    fn rim_m(&self) -> f64 {
        self.lit.focal_ratio * self.diameter_m() + self.lit.focus_m
    }

    /// From there to the funnel's mouth; `None` without a funnel.
    fn mouth_m(&self) -> Option<f64> {
        Some(self.rim_m() - funnel_length_m(self.mouth, self.can_um)?)
    }

    /// Share of the dish's area behind the can and what stands at its mouth.
    fn shade(&self) -> f64 {
        let at_mouth_um = match self.mouth {
            Mouth::Open | Mouth::Absorbing => 0,
            Mouth::Funnel {
                mouth_diameter_um, ..
            } => mouth_diameter_um,
            Mouth::Flange {
                outside_diameter_um,
            }
            | Mouth::Choke {
                outside_diameter_um,
                ..
            } => outside_diameter_um,
        };
        let widest = metres(at_mouth_um.max(self.can_um));
        (widest / self.diameter_m()).powi(2).min(1.0)
    }

    /// What makes the figures rough, the gravest first.
    pub fn doubts(&self) -> Vec<DishDoubt> {
        let mut doubts = Vec::new();
        if self.mouth_m().is_some_and(|mouth| mouth <= 0.0) {
            doubts.push(DishDoubt::TooLong);
        }
        if self.diameter_m() < NARROWEST * self.wavelength_m {
            doubts.push(DishDoubt::Small);
        }
        if self.leans_deg.abs() >= LEAN_DEG {
            doubts.push(DishDoubt::Leans);
        }
        if self.shade() >= SHADE {
            doubts.push(DishDoubt::Shade(self.shade()));
        }
        doubts
    }
}

/// Names and values.
pub fn rows(facts: &DishFacts, unit: LengthUnit) -> Vec<Vec<String>> {
    let (lit, dish_m, wavelength_m) = (&facts.lit, facts.diameter_m(), facts.wavelength_m);
    // 70 degrees times wavelength over diameter: common practice, no source.
    let width = 70.0 * wavelength_m / dish_m;
    let gain = format_decimal(facts.gain_dbi() - facts.lost_db, 1);
    let values = [
        Some([&gain, " dBi"].concat()),
        Some(percent(lit.spillover)),
        Some(percent(lit.illumination)),
        Some(percent(lit.phase)),
        Some(db(lit.edge_taper_on_dish_db)),
        Some(degrees(width)),
        // IEEE Std 145: the far-field region.
        Some(distance(2.0 * dish_m * dish_m / wavelength_m, unit)),
        Some(hand_length(lit.focal_ratio * dish_m, unit)),
        Some(words::focus_place(lit.focus_m, unit)),
        facts
            .mouth_m()
            .filter(|mouth| *mouth > 0.0)
            .map(|mouth| hand_length(mouth, unit)),
    ];
    words::dish_names()
        .into_iter()
        .zip(values)
        .filter_map(|(name, value)| Some(vec![name.to_owned(), value?]))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn facts(mouth: Mouth, diameter_um: u32) -> DishFacts {
        DishFacts {
            lit: DishEfficiency {
                focal_ratio: 0.4,
                edge_angle_rad: 1.1,
                spillover: 0.9,
                illumination: 0.8,
                phase: 0.99,
                total: 0.7128,
                edge_taper_db: -8.0,
                edge_taper_on_dish_db: -11.0,
                focus_m: 0.0,
            },
            diameter_um,
            wavelength_m: 0.123,
            lost_db: 0.1,
            leans_deg: 0.0,
            can_um: 87_000,
            mouth,
        }
    }

    fn funnel(mouth_diameter_um: u32, half_angle_millideg: u32) -> Mouth {
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        }
    }

    #[test]
    fn a_small_dish_and_its_shade_are_doubted() {
        // 600 mm is 4.9 wavelengths of 123 mm; 87 mm shade (87/600)² of it, 2.1 %.
        let doubts = facts(Mouth::Open, 600_000).doubts();
        assert!(matches!(
            doubts.as_slice(),
            [DishDoubt::Small, DishDoubt::Shade(share)] if (share - 0.021).abs() < 1e-3
        ));
        assert_eq!(facts(Mouth::Open, 2_000_000).doubts(), []);
    }

    #[test]
    fn the_mouth_of_a_funnel_has_its_place() {
        // From the focus at 240 mm a funnel of 56.5 mm over tan 30 degrees, 97.9 mm.
        let short = facts(funnel(200_000, 30_000), 600_000);
        assert!(
            short
                .mouth_m()
                .is_some_and(|mouth| (mouth - 0.142_1).abs() < 1e-4)
        );
        assert_eq!(rows(&short, LengthUnit::Millimetre).len(), 10);
        // The same mouth over tan 10 degrees is 320 mm: past the dish.
        let long = facts(funnel(200_000, 10_000), 600_000);
        assert_eq!(long.doubts().first(), Some(&DishDoubt::TooLong));
        assert_eq!(rows(&long, LengthUnit::Millimetre).len(), 9);
    }
}
