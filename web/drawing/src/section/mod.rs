//! The can in section, to scale, with its dimensions: everything a view has to draw.

mod dimensions;
pub mod drafting;
pub mod knob;
mod outline;
mod scale;

pub use outline::{ProbePlace, SectionOutline};
pub use scale::{SectionScale, SheetSize};

use tinwave_core::design::{Design, Mouth};
use tinwave_core::ruler::RulerFigures;
use tinwave_maker::entry::LengthUnit;
use tinwave_words::section as words;

use crate::path_text::PathText;
use dimensions::Dimensions;
use drafting::Drafting;
use knob::Tip;

/// Which station shows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SectionFor {
    /// Can: width and length are entries; the hole from the rim, the wire from the face.
    Can,
    /// Feed: wire and distance are entries, both also from inside.
    Feed,
}

/// What a section drawing shows.
#[derive(Clone, Copy, Debug)]
pub struct SectionSpec<'a> {
    /// The design.
    pub design: &'a Design,
    /// Unit of the figures.
    pub unit: LengthUnit,
    /// Which station shows it.
    pub shown_for: SectionFor,
    /// Whether it has a cut: not where no cut will do.
    pub has_cut: bool,
    /// Without a cut: an inside diameter that would do.
    pub would_do_um: Option<u32>,
    /// Another cut, dashed.
    pub other: Option<Tip>,
    /// Wire from the connector's face; by the wall's thickness where nothing is said.
    pub face_um: Option<u32>,
}

impl<'a> SectionSpec<'a> {
    /// A design with its cut.
    #[must_use]
    pub const fn new(design: &'a Design, unit: LengthUnit, shown_for: SectionFor) -> Self {
        Self {
            design,
            unit,
            shown_for,
            has_cut: true,
            would_do_um: None,
            other: None,
            face_um: None,
        }
    }

    /// Dimension lines below the can.
    const fn rows_below(&self) -> u32 {
        match (self.has_cut, self.shown_for) {
            (false, _) => 0,
            (true, SectionFor::Can) => 1,
            (true, SectionFor::Feed) => 2,
        }
    }
}

/// The drawing of one design on one sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionScene {
    /// Scale and place.
    pub scale: SectionScale,
    /// The wire's place; `None` where there is no cut.
    pub probe: Option<ProbePlace>,
    /// Outlines of the parts.
    pub outline: SectionOutline,
    /// Dimension lines and texts.
    pub drafting: Drafting,
    /// What stands below it.
    pub note: String,
    /// The drawing in words.
    pub description: String,
}

impl SectionScene {
    /// Lays out a design on a sheet.
    #[must_use]
    pub fn new(spec: &SectionSpec, sheet: SheetSize) -> Self {
        let design = spec.design;
        let scale = SectionScale::new(design, sheet, spec.rows_below());
        let probe = spec.has_cut.then(|| ProbePlace::new(design, &scale));
        let mut outline = probe.as_ref().map_or_else(
            || SectionOutline::uncut(design, &scale),
            |probe| SectionOutline::new(design, &scale, probe),
        );
        if let (Some(other), true) = (spec.other, spec.has_cut) {
            outline.add_other(&scale, &ProbePlace::of_tip(design, other, &scale));
        }
        if let (Some(um), false) = (spec.would_do_um, spec.has_cut) {
            outline.add_would_do(&scale, um);
        }
        let drafting = Dimensions {
            spec,
            scale: &scale,
            probe: probe.as_ref(),
        }
        .draft();
        let note = dimensions::note(&scale, spec.unit, design.mouth == Mouth::Absorbing);
        Self {
            scale,
            probe,
            outline,
            drafting,
            note,
            description: describe(spec),
        }
    }
}

/// A can with its cut and nothing else, at a given scale: for a shelf, and for laying
/// two over each other.
#[derive(Clone, Debug, PartialEq)]
pub struct BareSection {
    /// Width and height, px.
    pub size: (f64, f64),
    /// Outlines of the parts.
    pub outline: SectionOutline,
}

impl BareSection {
    /// Draws a design at so many px per millimetre.
    #[must_use]
    pub fn new(design: &Design, px_per_mm: f64, has_cut: bool) -> Self {
        let scale = SectionScale::bare(design, px_per_mm / 1_000.0);
        let mut outline = if has_cut {
            SectionOutline::new(design, &scale, &ProbePlace::new(design, &scale))
        } else {
            SectionOutline::uncut(design, &scale)
        };
        outline.centre = PathText::new();
        Self {
            size: (scale.sheet.width, scale.sheet.height),
            outline,
        }
    }
}

/// What the drawing shows, for those who can't see it.
fn describe(spec: &SectionSpec) -> String {
    let design = spec.design;
    let can = words::can_in_words(
        design.can.inside_diameter_um,
        design.can.open_length_um,
        spec.unit,
    );
    if !spec.has_cut {
        return words::no_cut_in_words(&can, spec.would_do_um, spec.unit);
    }
    let probe = &design.probe;
    words::cut_in_words(
        &can,
        words::CutInWords {
            wire_um: probe.wire_diameter_um,
            length_um: probe.length_um,
            distance_um: probe.backshort_distance_um,
            from_rim_um: RulerFigures::new(design).hole_from_closed_rim_um,
        },
        spec.unit,
    )
}

#[cfg(test)]
#[allow(clippy::expect_used, reason = "a test may stop")]
pub(crate) mod tests;
