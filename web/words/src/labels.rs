//! Plain labels of a design's numbers, with the trade's term beside them.

use tinwave_core::design_error::Field;

/// The label of one number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Label {
    /// In plain words.
    pub plain: &'static str,
    /// The trade's term; may be empty.
    pub trade: &'static str,
    /// How to measure or choose it.
    pub help: &'static str,
}

const fn words(plain: &'static str, trade: &'static str, help: &'static str) -> Label {
    Label { plain, trade, help }
}

/// The label of a number.
#[must_use]
pub const fn label(field: Field) -> Label {
    match field {
        Field::InsideDiameter
        | Field::OpenLength
        | Field::Wall
        | Field::BaseRecess
        | Field::MouthDiameter
        | Field::MouthAngle
        | Field::ChokeDepth => can(field),
        Field::WireDiameter
        | Field::ProbeLength
        | Field::BackshortDistance
        | Field::HoleDiameter
        | Field::SleeveDiameter
        | Field::SleevePermittivity => probe(field),
        Field::Reference => words(
            "Impedance of the cable",
            "reference impedance",
            "50 ohm for radio gear, 75 ohm for television cable.",
        ),
        Field::Shunt => words(
            "Stray capacitance at the hole",
            "shunt capacitance",
            "Of a solder blob or an insulator at the wall. Leave 0 if not known.",
        ),
        Field::BandLow => words(
            "Band from",
            "lower edge",
            "The lowest frequency to be used.",
        ),
        Field::BandHigh => words("Band to", "upper edge", "The highest frequency to be used."),
        Field::SweepLow => words("Chart from", "sweep start", "First frequency of the chart."),
        Field::SweepHigh => words("Chart to", "sweep stop", "Last frequency of the chart."),
        Field::SweepPoints => words(
            "Number of points",
            "sweep points",
            "How many frequencies the chart has.",
        ),
        Field::ScrewAxial
        | Field::ScrewDepth
        | Field::ScrewDiameter
        | Field::ScrewAngle
        | Field::ScrewCount => screw(field),
        _ => words("Number", "", "A number of the design."),
    }
}

const fn can(field: Field) -> Label {
    match field {
        Field::InsideDiameter => words(
            "Inside diameter",
            "guide diameter",
            "Across the inside, away from seams. An oval can: the mean of the widest and the narrowest.",
        ),
        Field::OpenLength => words(
            "Inside length",
            "guide length",
            "From the inside of the back wall to the rim of the mouth.",
        ),
        Field::Wall => words(
            "Wall thickness",
            "",
            "Of the sheet. Food cans are about 0.2 mm, ducts 0.5 mm.",
        ),
        Field::BaseRecess => words(
            "Recess of the base",
            "countersink",
            "How far the outside of the base lies in from the rim at the closed end.",
        ),
        Field::MouthDiameter => words(
            "Width at the mouth",
            "aperture diameter",
            "Inside diameter of a funnel or cup, outside diameter of a ring.",
        ),
        Field::MouthAngle => words(
            "Slope of the funnel",
            "half flare angle",
            "Between the funnel’s wall and the axis.",
        ),
        _ => words(
            "Depth of the cup",
            "choke depth",
            "From the rim to its bottom.",
        ),
    }
}

const fn probe(field: Field) -> Label {
    match field {
        Field::WireDiameter => words(
            "Wire diameter",
            "probe diameter",
            "Of the bare wire. A gauge such as SWG 18, AWG 16 or 1.5 mm² will do.",
        ),
        Field::ProbeLength => words(
            "Wire length inside the can",
            "probe length",
            "From the inner wall to the tip, cut off flat.",
        ),
        Field::BackshortDistance => words(
            "Distance from back wall",
            "backshort",
            "From the inside of the back wall to the middle of the wire.",
        ),
        Field::HoleDiameter => words(
            "Hole round the wire",
            "aperture of the coaxial line",
            "Where the connector’s insulator meets the inside of the can.",
        ),
        Field::SleeveDiameter => words(
            "Sleeve’s outside diameter",
            "insulation",
            "Of the insulation left on the wire.",
        ),
        _ => words(
            "Sleeve’s permittivity",
            "relative permittivity, εr",
            "About 2.1 for PTFE, 2.3 for polyethylene, 2.4 to 3 for shrink sleeve.",
        ),
    }
}

const fn screw(field: Field) -> Label {
    match field {
        Field::ScrewAxial => words(
            "Screw’s distance from back wall",
            "axial position",
            "From the inside of the back wall to the screw’s axis.",
        ),
        Field::ScrewDepth => words(
            "Screw’s depth",
            "insertion",
            "How far it sticks into the can.",
        ),
        Field::ScrewDiameter => words("Screw’s diameter", "", "Of its thread, outside."),
        Field::ScrewAngle => words(
            "Screw’s angle from the probe",
            "azimuth",
            "Round the can’s axis, 0° on the probe’s side.",
        ),
        _ => words("Number of screws", "tuning screws", "Usually none."),
    }
}
