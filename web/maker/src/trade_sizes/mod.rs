//! Trade sizes of cans, ducts and tubes, with their inside diameters.
//!
//! Nominal sizes say what is sold, not what is held in the hand: measure.

mod list;

pub use list::TRADE_SIZES;

use tinwave_core::metal::Metal;

use crate::confidence::Confidence;

/// What kind of thing is sold in these sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SizeGroup {
    /// Food cans by the three-digit inch code.
    UsCan,
    /// Food cans by their nominal metric diameter.
    MetricCan,
    /// Round ventilation duct.
    Duct,
    /// Stove pipe.
    StovePipe,
    /// Round rain-water downpipe.
    Downpipe,
    /// Copper tube, metric.
    CopperTube,
    /// Copper tube, inch.
    CopperTubeInch,
    /// Steel tube.
    SteelTube,
    /// Stainless tube for food.
    StainlessTube,
}

/// One size. Lengths in micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TradeSize {
    /// What it is.
    pub group: SizeGroup,
    /// The size as it is sold.
    pub name: &'static str,
    /// Inside diameter, nominal or estimated.
    pub inside_um: u32,
    /// How much larger it may be.
    pub plus_um: u32,
    /// How much smaller it may be.
    pub minus_um: u32,
    /// Overall length over the seams, where the size fixes it. The inside of a
    /// can is 5 to 10 mm shorter.
    pub length_um: Option<u32>,
    /// Wall thickness, typical.
    pub wall_um: u32,
    /// Usual metal.
    pub metal: Metal,
    /// How sure the inside diameter is.
    pub confidence: Confidence,
}

impl TradeSize {
    /// Whether the inside diameter is worked out rather than stated.
    #[must_use]
    pub fn estimated(&self) -> bool {
        self.confidence == Confidence::Estimated
    }
}

impl SizeGroup {
    /// Every group, in the order a list should show them.
    pub const ALL: [Self; 9] = [
        Self::UsCan,
        Self::MetricCan,
        Self::Duct,
        Self::StovePipe,
        Self::Downpipe,
        Self::CopperTube,
        Self::CopperTubeInch,
        Self::SteelTube,
        Self::StainlessTube,
    ];

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::UsCan => "Food can, inch code",
            Self::MetricCan => "Food can, metric",
            Self::Duct => "Ventilation duct",
            Self::StovePipe => "Stove pipe",
            Self::Downpipe => "Rain-water downpipe",
            Self::CopperTube => "Copper tube, metric",
            Self::CopperTubeInch => "Copper tube, inch",
            Self::SteelTube => "Steel tube",
            Self::StainlessTube => "Stainless tube",
        }
    }

    /// Published source of the sizes.
    #[must_use]
    pub const fn source(self) -> &'static str {
        match self {
            Self::UsCan => {
                "CMI Voluntary Can and End Dimension Reference Manual (code, height, water capacity); inside diameter estimated from the capacity"
            }
            Self::MetricCan => "ISO 90-1, ISO 10653 (nominal diameters)",
            Self::Duct => "EN 1506 (nominal inside diameters and tolerance)",
            Self::StovePipe => "EN 1856-2 and inch practice (nominal inside diameters)",
            Self::Downpipe => "EN 612 (nominal diameters at the socket)",
            Self::CopperTube => "EN 1057 (outside diameter and wall)",
            Self::CopperTubeInch => "ASTM B88 types K, L, M; ASTM B306 type DWV",
            Self::SteelTube => "EN 10255, medium series",
            Self::StainlessTube => "EN 10357, series A",
        }
    }

    /// What to mind when measuring.
    #[must_use]
    pub const fn note(self) -> &'static str {
        match self {
            Self::UsCan => {
                "The code is whole inches and sixteenths: the diameter over the seam, then the height. It is not the inside diameter."
            }
            Self::MetricCan => "Necked cans are narrower at the ends than in the body.",
            Self::Duct => {
                "Fittings go inside the duct and are 1 to 2 mm smaller. A spiral seam is on the outside."
            }
            Self::StovePipe => "The crimped end is smaller.",
            Self::Downpipe => "The plain end is about 2 mm smaller than the socket end.",
            Self::CopperTube | Self::CopperTubeInch => "One size is sold with several walls.",
            Self::SteelTube => "Heavy. The weld may stand proud inside.",
            Self::StainlessTube => "The bore is smooth; drilling is slow.",
        }
    }
}
