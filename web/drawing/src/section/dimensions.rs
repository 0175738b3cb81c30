//! The dimensions of the section drawing, and where each is written.

use tinwave_core::design_error::Field;
use tinwave_core::ruler::RulerFigures;
use tinwave_maker::entry::{LengthUnit, format_length_number};
use tinwave_words::section as words;

use super::drafting::{Anchor, Caption, Drafting, OVERRUN, Tone};
use super::outline::ProbePlace;
use super::scale::{SectionScale, first_row, next_row};
use super::{SectionFor, SectionSpec};

/// From the wire to the line of its dimension.
const BESIDE_WIRE: f64 = 26.0;

/// A design with its scale: all that dimensions need.
pub(super) struct Dimensions<'a> {
    pub(super) spec: &'a SectionSpec<'a>,
    pub(super) scale: &'a SectionScale,
    /// `None` where there is no cut.
    pub(super) probe: Option<&'a ProbePlace>,
}

impl Dimensions<'_> {
    fn number(&self, um: u32) -> String {
        format_length_number(um, self.spec.unit)
    }

    /// Blue where the station has its entry.
    fn of_can(&self) -> (Tone, fn(Field) -> Option<Field>) {
        match self.spec.shown_for {
            SectionFor::Can => (Tone::Blue, Some),
            SectionFor::Feed => (Tone::Ink, |_| None),
        }
    }

    /// All dimension lines and texts.
    pub(super) fn draft(&self) -> Drafting {
        let mut drafting = Drafting::new(self.scale.sheet.letter);
        self.open_length(&mut drafting);
        self.inside_diameter(&mut drafting);
        if let Some(probe) = self.probe {
            self.wire(&mut drafting, probe);
            self.distances(&mut drafting, probe);
        } else if let Some(um) = self.spec.would_do_um {
            self.would_do(&mut drafting, um);
        }
        drafting
    }

    fn open_length(&self, drafting: &mut Drafting) {
        let s = self.scale;
        let (tone, field) = self.of_can();
        let outer = s.far_wall_y - s.wall;
        let y = drafting.letter.figure + 7.0;
        for x in [s.back_x, s.mouth_x] {
            drafting.line(tone, (x, outer - 2.0), (x, y - OVERRUN));
        }
        drafting.horizontal(tone, s.back_x, s.mouth_x, y);
        let figure = self.number(self.spec.design.can.open_length_um);
        let caption = Caption {
            figure: &figure,
            words: words::long_inside(),
            short: "",
            tone,
            field: field(Field::OpenLength),
        };
        drafting.caption_on(s.back_x, s.mouth_x, y, s.sheet.width, caption);
    }

    fn inside_diameter(&self, drafting: &mut Drafting) {
        let s = self.scale;
        let (tone, field) = self.of_can();
        let letter = drafting.letter;
        let (past_rim, _) = s.mouth_extent(self.spec.design);
        let edge = s.mouth_x + past_rim;
        let x = if s.turned {
            edge + letter.figure + 12.0
        } else {
            edge + 12.0
        };
        for y in [s.far_wall_y, s.near_wall_y] {
            drafting.line(tone, (edge + 3.0, y), (x + OVERRUN, y));
        }
        drafting.vertical(tone, x, s.far_wall_y, s.near_wall_y);
        let figure = words::diameter(&self.number(self.spec.design.can.inside_diameter_um));
        let caption = Caption {
            figure: &figure,
            words: "",
            short: "",
            tone,
            field: field(Field::InsideDiameter),
        };
        let mut label = if s.turned {
            caption.label(x - 6.0, s.axis_y(), Anchor::Middle, &figure, "")
        } else {
            let y = s.axis_y() + letter.figure * 0.35;
            caption.label(x + 7.0, y, Anchor::Start, &figure, "")
        };
        label.turned = s.turned;
        drafting.labels.push(label);
    }

    /// The wire's length: from the connector's face where it is to be cut, from the
    /// inner wall where it is to be chosen.
    fn wire(&self, drafting: &mut Drafting, probe: &ProbePlace) {
        let s = self.scale;
        let ruler = RulerFigures::new(self.spec.design);
        let (um, foot, said, field) = match self.spec.shown_for {
            SectionFor::Can => {
                let face = self
                    .spec
                    .face_um
                    .unwrap_or(ruler.wire_from_connector_face_um);
                (face, s.near_wall_y + s.wall, words::from_the_face(), None)
            }
            SectionFor::Feed => (
                ruler.wire_from_inner_wall_um,
                s.near_wall_y,
                words::wire_inside(),
                Some(Field::ProbeLength),
            ),
        };
        let figure = self.number(um);
        let letter = drafting.letter;
        let caption = |words| Caption {
            figure: &figure,
            words,
            short: "",
            tone: Tone::Copper,
            field,
        };
        let width =
            |words| letter.width(&caption(words).label(0.0, 0.0, Anchor::Start, &figure, words));
        let (right, left) = (s.mouth_x - probe.x, probe.x - s.back_x);
        let needed = width(said) + BESIDE_WIRE + 10.0;
        let on_right = right >= needed || right >= left;
        let side = if on_right { 1.0 } else { -1.0 };
        let said = if right.max(left) >= needed { said } else { "" };
        let x = probe.x + side * BESIDE_WIRE;
        let start = probe.x + side * (probe.half_wire + 2.0);
        drafting.line(
            Tone::Copper,
            (start, probe.tip_y),
            (x + side * OVERRUN, probe.tip_y),
        );
        if foot > s.near_wall_y {
            // Past the plate of the connector, whose face it is.
            let start = probe.x + side * (probe.half_hole + 6.0).max(11.0);
            drafting.line(Tone::Copper, (start, foot), (x + side * OVERRUN, foot));
        }
        drafting.vertical(Tone::Copper, x, probe.tip_y, foot);
        let anchor = if on_right { Anchor::Start } else { Anchor::End };
        let y = self.clear_baseline((probe.tip_y + s.near_wall_y) / 2.0, letter.figure);
        let label = caption(said).label(x + side * 7.0, y, anchor, &figure, said);
        drafting.labels.push(label);
    }

    /// A baseline about `middle`, clear of the axis and above the near wall.
    fn clear_baseline(&self, middle: f64, figure: f64) -> f64 {
        let s = self.scale;
        let axis = s.axis_y();
        let wanted = middle + figure * 0.35;
        let crosses = wanted - figure < axis + 3.0 && wanted > axis - 4.0;
        let baseline = if crosses { axis + figure + 3.0 } else { wanted };
        baseline.min(s.near_wall_y - 5.0)
    }

    fn distances(&self, drafting: &mut Drafting, probe: &ProbePlace) {
        let s = self.scale;
        let letter = drafting.letter;
        let outer = s.near_wall_y + s.wall;
        let past = s.mouth_extent(self.spec.design).1;
        let first = outer + first_row(letter) + (past - s.wall).max(0.0);
        let inside = self.number(self.spec.design.probe.backshort_distance_um);
        let hole = RulerFigures::new(self.spec.design).hole_from_closed_rim_um;
        let outside = self.number(hole);
        let from_wall = Caption {
            figure: &inside,
            words: words::inside_from_back_wall(),
            short: words::from_back_wall(),
            tone: Tone::Blue,
            field: Some(Field::BackshortDistance),
        };
        let from_rim = Caption {
            figure: &outside,
            words: words::outside_from_closed_rim(),
            short: words::from_closed_rim(),
            tone: Tone::Ink,
            field: None,
        };
        let rows: &[(f64, Caption)] = match self.spec.shown_for {
            SectionFor::Can => &[(s.rim_x, from_rim)],
            SectionFor::Feed => &[(s.back_x, from_wall), (s.rim_x, from_rim)],
        };
        let rows = rows.iter().take(self.spec.rows_below() as usize);
        let mut y = first;
        let mut bottom = probe.stub_y + 2.0;
        for (from, caption) in rows {
            drafting.line(caption.tone, (*from, outer + 2.0), (*from, y + OVERRUN));
            drafting.line(caption.tone, (probe.x, bottom), (probe.x, y + OVERRUN));
            drafting.horizontal(caption.tone, *from, probe.x, y);
            drafting.caption(*from, probe.x, y, s.sheet.width, *caption);
            bottom = y + OVERRUN;
            y += next_row(letter);
        }
    }

    /// Written in the width that would do where it is narrower, else above it.
    fn would_do(&self, drafting: &mut Drafting, um: u32) {
        let s = self.scale;
        let figure = words::one_wave_at(&self.number(um), self.spec.unit.symbol());
        let caption = Caption {
            figure: &figure,
            words: "",
            short: "",
            tone: Tone::Ink,
            field: None,
        };
        let top = s.axis_y() - s.px(um) / 2.0;
        let y =
            (top + drafting.letter.figure + 3.0).max(s.far_wall_y + drafting.letter.figure + 3.0);
        let label = caption.label(s.back_x + 8.0, y, Anchor::Start, &figure, "");
        drafting.labels.push(label);
    }
}

/// What stands below the drawing.
#[must_use]
pub(super) fn note(scale: &SectionScale, unit: LengthUnit, endless: bool) -> String {
    words::note(unit, scale.wall_is_thickened, endless)
}
