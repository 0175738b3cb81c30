//! The dimensions of the section drawing, and where each is written.

use tinwave_core::design::{Design, Mouth};
use tinwave_core::ruler::RulerFigures;
use tinwave_core::si::SiDesign;

use super::dimension_line::{Anchor, Caption, Drafting, Label, OVERRUN, words_width};
use super::section_outline::ProbePlace;
use super::section_scale::{SectionScale, TURNED_FROM};
use tinwave_maker::entry::{LengthUnit, format_length_number, format_trimmed};

/// From the foot of the connector's stub to the first dimension.
const FIRST_ROW: f64 = 22.0;
/// From one dimension to the next.
const ROW: f64 = 25.0;

/// A design with its scale and its unit: all that dimensions need.
#[derive(Clone, Copy, Debug)]
pub struct SectionFigures<'a> {
    /// The design.
    pub design: &'a Design,
    /// Its scale.
    pub scale: &'a SectionScale,
    /// Its probe's place.
    pub probe: &'a ProbePlace,
    /// Unit of the figures.
    pub unit: LengthUnit,
}

/// Figure of a wire or a hole: wires are told apart by hundredths of a
/// millimetre.
#[must_use]
pub fn fine_number(um: u32, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Millimetre => format_trimmed(i64::from((um + 5) / 10), 2),
        LengthUnit::Inch => format_length_number(um, unit),
    }
}

impl SectionFigures<'_> {
    fn number(&self, um: u32) -> String {
        format_length_number(um, self.unit)
    }

    fn diameter(&self, um: u32) -> String {
        let mut text = String::from("⌀\u{2009}");
        text.push_str(&self.number(um));
        text
    }

    /// All dimension lines and texts.
    #[must_use]
    pub fn draft(&self) -> Drafting {
        let mut drafting = Drafting::default();
        self.open_length(&mut drafting);
        self.inside_diameter(&mut drafting);
        self.probe_length(&mut drafting);
        self.wire_and_hole(&mut drafting);
        self.distances(&mut drafting);
        self.note(&mut drafting);
        drafting
    }

    fn open_length(&self, drafting: &mut Drafting) {
        let s = self.scale;
        let outer = s.far_wall_y - s.wall;
        let (_, past_wall) = s.mouth_extent(self.design);
        let y = (outer - 13.0).min(s.far_wall_y - past_wall - s.wall - 8.0);
        drafting.extension(s.back_x, outer - 2.0, s.back_x, y - OVERRUN);
        drafting.extension(s.mouth_x, outer - 2.0, s.mouth_x, y - OVERRUN);
        drafting.horizontal(s.back_x, s.mouth_x, y);
        let figure = self.number(self.design.can.open_length_um);
        let caption = Caption {
            figure: &figure,
            words: "length inside",
            short: "length",
        };
        drafting.caption(s.back_x, s.mouth_x, y, 0.0, s.width, caption);
    }

    fn inside_diameter(&self, drafting: &mut Drafting) {
        let s = self.scale;
        let (past_rim, _) = s.mouth_extent(self.design);
        let x = s.mouth_x + past_rim + 24.0;
        for y in [s.far_wall_y, s.near_wall_y] {
            drafting.extension(s.mouth_x + past_rim + 3.0, y, x + OVERRUN, y);
        }
        drafting.vertical(x, s.far_wall_y, s.near_wall_y);
        let height = s.near_wall_y - s.far_wall_y;
        let mut text = self.diameter(self.design.can.inside_diameter_um);
        if height < TURNED_FROM {
            drafting.label(x + 7.0, s.axis_y() + 4.0, Anchor::Start, true, text);
            return;
        }
        if height > 110.0 {
            text.push_str(" inside");
        }
        drafting.labels.push(Label {
            x: x - 5.0,
            y: s.axis_y(),
            anchor: Anchor::Middle,
            is_figure: true,
            turned: true,
            text,
        });
    }

    fn probe_length(&self, drafting: &mut Drafting) {
        const OFFSET: f64 = 27.0;
        let (s, p) = (self.scale, self.probe);
        let (right, left) = (s.mouth_x - p.x, p.x - s.back_x);
        let needed = words_width("probe length") + OFFSET + 8.0;
        let on_right = right >= needed || right >= left;
        let words = if right.max(left) >= needed {
            "probe length"
        } else {
            "probe"
        };
        let side = if on_right { 1.0 } else { -1.0 };
        let x = p.x + side * OFFSET;
        let start = p.x + side * (p.half_wire + 3.0);
        drafting.extension(start, p.tip_y, x + side * OVERRUN, p.tip_y);
        drafting.vertical(x, p.tip_y, s.near_wall_y);
        let anchor = if on_right { Anchor::Start } else { Anchor::End };
        let text_x = x + side * 7.0;
        let middle = (p.tip_y + s.near_wall_y) / 2.0;
        // Clear of the axis, which runs through the can's middle.
        let baseline = if (middle - s.axis_y()).abs() < 14.0 {
            s.axis_y() + 16.0
        } else {
            middle
        };
        // And above the near wall, where the wire's note begins.
        let baseline = baseline.min(s.near_wall_y - 20.0);
        let figure = self.number(self.design.probe.length_um);
        drafting.label(text_x, baseline, anchor, true, figure);
        drafting.label(text_x, baseline + 14.0, anchor, false, words.into());
    }

    /// Wire, sleeve and hole, beside the connector on the side with more room:
    /// on one line, else wire over hole with the sleeve across.
    fn wire_and_hole(&self, drafting: &mut Drafting) {
        let (s, p) = (self.scale, self.probe);
        let probe = &self.design.probe;
        let say = |name: &str, um: u32| [name, "⌀\u{2009}", &fine_number(um, self.unit)].concat();
        let wire = say("wire ", probe.wire_diameter_um);
        let sleeve = probe
            .sleeve
            .map(|sleeve| say("sleeve ", sleeve.outside_diameter_um));
        // In range: a hole's radius is at most tens of millimetres.
        let hole_um = (SiDesign::new(self.design).hole_radius_m * 2e6).round() as u32;
        let hole = say("hole ", hole_um);
        let mut whole = wire.clone();
        for piece in sleeve.iter().chain([&hole]) {
            whole.push_str(", ");
            whole.push_str(piece);
        }
        let clear = (p.half_hole + 9.0).max(13.0) + 13.0;
        let on_right = s.width - p.x >= p.x;
        let side = if on_right { 1.0 } else { -1.0 };
        let anchors = if on_right {
            (Anchor::Start, Anchor::End)
        } else {
            (Anchor::End, Anchor::Start)
        };
        // A funnel or a cup outside the wall is no ground to write on.
        let end = match self.design.mouth {
            Mouth::Choke { depth_um, .. } => s.mouth_x - s.px(depth_um) - s.wall - 4.0,
            _ if s.mouth_extent(self.design).1 > 0.0 => s.mouth_x,
            _ => s.width,
        };
        let room = if on_right { end - p.x } else { p.x } - clear;
        let x = p.x + side * clear;
        let outer = s.near_wall_y + s.wall;
        let foot = (p.x + side * p.half_wire, s.near_wall_y - 5.0);
        if words_width(&whole) <= room {
            drafting.leader((x - side * 4.0, outer + 13.0), foot);
            drafting.label(x, outer + 17.0, anchors.0, false, whole);
            return;
        }
        drafting.leader((x - side * 4.0, outer + 9.0), foot);
        drafting.label(x, outer + 13.0, anchors.0, false, wire);
        drafting.label(x, outer + 26.0, anchors.0, false, hole);
        if let Some(sleeve) = sleeve {
            let across = p.x - side * clear;
            drafting.label(across, outer + 13.0, anchors.1, false, sleeve);
        }
    }

    fn distances(&self, drafting: &mut Drafting) {
        let (s, p) = (self.scale, self.probe);
        let outer = s.near_wall_y + s.wall;
        let first = p.stub_y + FIRST_ROW;
        let second = first + ROW;
        drafting.extension(s.back_x, outer + 2.0, s.back_x, first + OVERRUN);
        drafting.extension(s.rim_x, outer + 2.0, s.rim_x, second + OVERRUN);
        drafting.extension(p.x, p.stub_y + 8.0, p.x, second + OVERRUN);
        drafting.horizontal(s.back_x, p.x, first);
        drafting.horizontal(s.rim_x, p.x, second);
        let distance = self.number(self.design.probe.backshort_distance_um);
        let inside = Caption {
            figure: &distance,
            words: "inside, from the back wall",
            short: "from back wall",
        };
        drafting.caption(s.back_x, p.x, first, 0.0, s.width, inside);
        let hole = self.number(RulerFigures::new(self.design).hole_from_closed_rim_um);
        let outside = Caption {
            figure: &hole,
            words: "outside, from the rim",
            short: "from the rim",
        };
        drafting.caption(s.rim_x, p.x, second, 0.0, s.width, outside);
    }

    fn note(&self, drafting: &mut Drafting) {
        let s = self.scale;
        let mut text = String::from(match self.unit {
            LengthUnit::Millimetre => "In mm, to scale",
            LengthUnit::Inch => "In inches, to scale",
        });
        if s.wall_is_thickened {
            text.push_str("; the wall is drawn thicker");
        }
        if self.design.mouth == Mouth::Absorbing {
            text.push_str("; endless");
        }
        drafting.label(2.0, s.height - 5.0, Anchor::Start, false, text);
    }
}
