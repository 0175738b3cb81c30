//! The entries of the page: how each one's text is read, shown and stepped.

use tinwave_core::design_error::Field;

use super::model::{DiameterBy, Model};
use crate::bands;
use crate::entry::{self, LengthUnit};
use crate::history::Change;
use crate::wire_gauges;
use crate::words;
use crate::workpiece::{LONGEST_NAME, Workpiece, clean_name};

/// One text entry.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Entry {
    /// A number of the design.
    Plain(Field),
    /// The can's outside diameter; the inside follows with the wall.
    OutsideDiameter,
    /// A paper strip round the outside; the inside follows with the wall.
    Circumference,
    /// A wire by gauge or diameter.
    Wire,
    /// Both edges of the band, or a channel.
    Band,
    /// What the maker calls the design.
    Name,
}

/// Thickness of the paper strip that is taken off: copy paper of 80 g/m² is
/// 0.1 mm thick (common practice, no source).
const STRIP_UM: u32 = 100;

/// Text that can't be used, and why.
pub(super) type Refusal = String;

impl Entry {
    /// Every entry of the page.
    pub(super) const ALL: [Self; 19] = [
        Self::Plain(Field::InsideDiameter),
        Self::OutsideDiameter,
        Self::Circumference,
        Self::Plain(Field::Wall),
        Self::Plain(Field::OpenLength),
        Self::Plain(Field::BaseRecess),
        Self::Band,
        Self::Plain(Field::ProbeLength),
        Self::Plain(Field::BackshortDistance),
        Self::Wire,
        Self::Plain(Field::HoleDiameter),
        Self::Plain(Field::SleeveDiameter),
        Self::Plain(Field::SleevePermittivity),
        Self::Plain(Field::Shunt),
        Self::Plain(Field::Reference),
        Self::Plain(Field::MouthDiameter),
        Self::Plain(Field::MouthAngle),
        Self::Plain(Field::ChokeDepth),
        Self::Name,
    ];

    /// Its id in the page.
    pub(super) const fn id(self) -> &'static str {
        match self {
            Self::OutsideDiameter => "outside-diameter",
            Self::Circumference => "circumference",
            Self::Wire => "wire",
            Self::Band => "band-edges",
            Self::Name => "name",
            Self::Plain(field) => match field {
                Field::InsideDiameter => "inside-diameter",
                Field::OpenLength => "open-length",
                Field::Wall => "wall",
                Field::BaseRecess => "base-recess",
                Field::ProbeLength => "probe-length",
                Field::BackshortDistance => "backshort-distance",
                Field::HoleDiameter => "hole-diameter",
                Field::Reference => "reference",
                Field::Shunt => "stray-capacitance",
                Field::SleeveDiameter => "sleeve-diameter",
                Field::SleevePermittivity => "sleeve-permittivity",
                Field::MouthDiameter => "mouth-diameter",
                Field::MouthAngle => "mouth-angle",
                Field::ChokeDepth => "choke-depth",
                _ => "other",
            },
        }
    }

    /// What it is called, and a line of help.
    pub(super) fn label(self) -> (&'static str, &'static str, &'static str) {
        match self {
            Self::Plain(field) => {
                let label = words::label(field);
                (label.plain, label.trade, label.help)
            }
            Self::OutsideDiameter => (
                "Outside diameter",
                "",
                "Across the straight part of the wall, not across the seams at the ends. Twice the wall is taken off.",
            ),
            Self::Circumference => (
                "Paper strip, once round",
                "outside circumference",
                "Wrap a strip of paper round the outside, mark where it meets, measure it flat. The paper's thickness (0.1 mm) and twice the wall are taken off.",
            ),
            Self::Wire => (
                "Wire",
                "diameter or gauge",
                "A diameter, or a gauge such as SWG 18, AWG 16, 1.5 mm2. Measure the bare wire.",
            ),
            Self::Band => (
                "Band edges",
                "or a channel",
                "For example 2401-2483.5, or ch 6, or 5 GHz ch 36.",
            ),
            Self::Name => (
                "Name of this design",
                "",
                "Goes into the link and the files.",
            ),
        }
    }

    /// Whether a phone should offer its number pad: not where letters belong.
    pub(super) const fn is_decimal(self) -> bool {
        !matches!(self, Self::Wire | Self::Band | Self::Name)
    }

    /// Whether it is in the page at present.
    pub(super) fn shown(self, model: &Model) -> bool {
        match self {
            Self::Plain(Field::InsideDiameter) => model.diameter_by == DiameterBy::Inside,
            Self::OutsideDiameter => model.diameter_by == DiameterBy::Outside,
            Self::Circumference => model.diameter_by == DiameterBy::Circumference,
            Self::Plain(Field::HoleDiameter) => {
                super::feed::hole(model) == super::feed::Hole::Typed
            }
            Self::Plain(
                field @ (Field::SleeveDiameter
                | Field::SleevePermittivity
                | Field::MouthDiameter
                | Field::MouthAngle
                | Field::ChokeDepth),
            ) => model.work.field(field).is_some(),
            _ => true,
        }
    }

    /// The unit its numbers are in, as a sign.
    pub(super) fn unit_symbol(self, unit: LengthUnit) -> &'static str {
        match self {
            Self::Plain(field) => entry::unit_symbol(entry::quantity(field, unit)),
            Self::OutsideDiameter | Self::Circumference | Self::Wire => unit.symbol(),
            Self::Band => "MHz",
            Self::Name => "",
        }
    }

    /// How the history names a change of it.
    pub(super) const fn change(self) -> Change {
        match self {
            Self::Plain(Field::InsideDiameter) | Self::OutsideDiameter | Self::Circumference => {
                Change::Diameter
            }
            Self::Plain(field) => Change::Field(field),
            Self::Wire => Change::Field(Field::WireDiameter),
            Self::Band => Change::Band,
            Self::Name => Change::Name,
        }
    }

    /// The exact text for the present work.
    pub(super) fn text(self, work: &Workpiece, unit: LengthUnit) -> String {
        let length = |um: u32| entry::format_length_exact(um, unit);
        match self {
            Self::Plain(field) => work
                .field(field)
                .map_or_else(String::new, |value| entry::field_text(field, value, unit)),
            Self::OutsideDiameter => length(outside_of(work)),
            Self::Circumference => length(entry::circumference_of(
                outside_of(work).saturating_add(STRIP_UM),
            )),
            Self::Wire => length(work.design.probe.wire_diameter_um),
            Self::Band => {
                let band = work.design.band;
                [
                    &entry::format_frequency_exact(band.low_khz),
                    "-",
                    &entry::format_frequency_exact(band.high_khz),
                ]
                .concat()
            }
            Self::Name => work.design.name.clone(),
        }
    }

    /// Reads a text into the work. Gives a remark where the text was finer
    /// than a micrometre or a kilohertz.
    ///
    /// # Errors
    /// A sentence that says what is wrong; the work is then as it was.
    pub(super) fn read(
        self,
        text: &str,
        unit: LengthUnit,
        by: DiameterBy,
        work: &mut Workpiece,
    ) -> Result<Option<String>, Refusal> {
        match self {
            Self::Plain(field) => {
                let entered = entry::parse_field(field, text, unit).map_err(|e| e.to_string())?;
                set(work, field, entered.value, by, unit)?;
                let taken = || entry::field_text(field, entered.value, unit);
                Ok(entered.rounded.then(|| self.taken_as(&taken(), unit)))
            }
            Self::OutsideDiameter | Self::Circumference => {
                let entered = entry::parse_length(text, unit).map_err(|e| e.to_string())?;
                let outside = match self {
                    Self::Circumference => {
                        entry::outside_from_circumference(entered.value, STRIP_UM)
                    }
                    _ => entered.value,
                };
                let inside = entry::inside_from_outside(outside, work.design.can.wall_um)
                    .ok_or_else(|| {
                        "That leaves no inside: the wall is thicker than the can. Check the wall's thickness.".to_owned()
                    })?;
                set(
                    work,
                    Field::InsideDiameter,
                    i64::from(inside),
                    DiameterBy::Inside,
                    unit,
                )?;
                Ok(entered
                    .rounded
                    .then(|| self.taken_as(&entry::format_length_exact(entered.value, unit), unit)))
            }
            Self::Wire => {
                let entered = wire_gauges::parse_wire(text, unit).map_err(|e| e.to_string())?;
                set(
                    work,
                    Field::WireDiameter,
                    i64::from(entered.value),
                    by,
                    unit,
                )?;
                // A gauge's diameter is worth saying: the maker can check it.
                let is_gauge = text.chars().any(|letter| letter.is_ascii_alphabetic())
                    && entry::parse_length(text, unit).is_err();
                let say = entered.rounded || is_gauge;
                Ok(say
                    .then(|| self.taken_as(&entry::format_length_exact(entered.value, unit), unit)))
            }
            Self::Band => {
                let band = bands::parse_band(text).map_err(|e| e.to_string())?;
                let mut next = work.clone();
                next.design.band = band;
                next.design
                    .check()
                    .map_err(|e| words::design_error(&e, unit))?;
                *work = next;
                Ok(None)
            }
            Self::Name => {
                let name = clean_name(text);
                let shortened = text.trim().chars().count() > LONGEST_NAME;
                work.design.name = name;
                Ok(shortened.then(|| {
                    [
                        "Shortened: a link has room for ",
                        &LONGEST_NAME.to_string(),
                        " characters.",
                    ]
                    .concat()
                }))
            }
        }
    }

    fn taken_as(self, value: &str, unit: LengthUnit) -> String {
        ["Taken as ", value, " ", self.unit_symbol(unit), "."].concat()
    }

    /// Moves the number by whole steps.
    ///
    /// # Errors
    /// A sentence, where the step would leave the range.
    pub(super) fn step(
        self,
        steps: i64,
        unit: LengthUnit,
        by: DiameterBy,
        work: &mut Workpiece,
    ) -> Result<(), Refusal> {
        let step = self.step_size(unit).saturating_mul(steps);
        match self {
            Self::Plain(field) => {
                let value = work.field(field).unwrap_or(0);
                set(work, field, value.saturating_add(step), by, unit)
            }
            Self::OutsideDiameter => {
                let value = i64::from(work.design.can.inside_diameter_um);
                set(
                    work,
                    Field::InsideDiameter,
                    value.saturating_add(step),
                    DiameterBy::Inside,
                    unit,
                )
            }
            Self::Circumference => {
                let round = entry::circumference_of(outside_of(work).saturating_add(STRIP_UM));
                let stepped = i64::from(round).saturating_add(step).max(0);
                let outside = entry::outside_from_circumference(
                    u32::try_from(stepped).unwrap_or(round),
                    STRIP_UM,
                );
                let inside = i64::from(outside) - 2 * i64::from(work.design.can.wall_um);
                set(
                    work,
                    Field::InsideDiameter,
                    inside,
                    DiameterBy::Inside,
                    unit,
                )
            }
            Self::Wire => {
                let value = i64::from(work.design.probe.wire_diameter_um);
                set(
                    work,
                    Field::WireDiameter,
                    value.saturating_add(step),
                    by,
                    unit,
                )
            }
            Self::Band | Self::Name => Ok(()),
        }
    }

    /// One step: half a millimetre or a hundredth of an inch where a ruler is
    /// the tool, finer for wires and walls.
    fn step_size(self, unit: LengthUnit) -> i64 {
        let coarse = |millimetre: i64, inch: i64| match unit {
            LengthUnit::Millimetre => millimetre,
            LengthUnit::Inch => inch,
        };
        match self {
            Self::Wire | Self::Plain(Field::Wall | Field::HoleDiameter | Field::SleeveDiameter) => {
                coarse(100, 127)
            }
            Self::Circumference | Self::Plain(Field::OpenLength) => coarse(1_000, 1_270),
            Self::Plain(Field::SleevePermittivity) => 100,
            Self::Plain(Field::Shunt) => 10,
            Self::Plain(Field::Reference | Field::MouthAngle) => 1_000,
            _ => coarse(500, 254),
        }
    }
}

fn outside_of(work: &Workpiece) -> u32 {
    let can = work.design.can;
    can.inside_diameter_um
        .saturating_add(can.wall_um.saturating_mul(2))
}

/// Sets a number. A new wall keeps the diameter that was measured.
fn set(
    work: &mut Workpiece,
    field: Field,
    value: i64,
    by: DiameterBy,
    unit: LengthUnit,
) -> Result<(), Refusal> {
    let say = |error| words::design_error(&error, unit);
    let outside = i64::from(outside_of(work));
    let mut next = work.clone();
    next.set_field(field, value).map_err(say)?;
    if field == Field::Wall && by != DiameterBy::Inside {
        next.set_field(Field::InsideDiameter, outside - 2 * value)
            .map_err(say)?;
    }
    *work = next;
    Ok(())
}
