//! The worked example of the first visit. It has no name, so that none is ever taken
//! for that of the maker's can.

use tinwave_core::design::{Band, Can, Design, Mouth, Probe};
use tinwave_core::metal::Metal;

use crate::connectors::ConnectorChoice;
use crate::workpiece::{Cut, Workpiece};

/// A 87 mm tinplate can for 2400 to 2483.5 MHz on 1.29 mm wire (AWG 16), with its best
/// cut: a test of the worker searches for it anew.
#[must_use]
pub fn example() -> Workpiece {
    Workpiece {
        design: Design {
            name: String::new(),
            band: Band {
                low_khz: 2_400_000,
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
                length_um: 31_250,
                backshort_distance_um: 69_810,
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
        cut: Cut::FollowsBest,
    }
}
