//! The worked example of the first visit: the north can at the orchard gate.

use tinwave_core::design::{Band, Can, Design, Mouth, Probe};
use tinwave_core::metal::Metal;

use crate::connectors::ConnectorChoice;
use crate::workpiece::Workpiece;

/// A 87 mm tinplate can for 2401 to 2483.5 MHz on 1.29 mm wire (AWG 16).
#[must_use]
pub fn example() -> Workpiece {
    Workpiece {
        design: Design {
            name: "Orchard gate, north can".into(),
            band: Band {
                low_khz: 2_401_000,
                high_khz: 2_483_500,
            },
            can: Can {
                inside_diameter_um: 87_000,
                open_length_um: 190_000,
                wall_um: 200,
                base_recess_um: 4_000,
                metal: Metal::Tinplate,
            },
            probe: Probe {
                wire_diameter_um: 1_290,
                length_um: 28_400,
                backshort_distance_um: 45_000,
                hole_diameter_um: None,
                reference_milliohm: 50_000,
                shunt_ff: 0,
                sleeve: None,
            },
            mouth: Mouth::Open,
            screws: Vec::new(),
            sweep: None,
        },
        connector: ConnectorChoice::default(),
    }
}
