//! Draws the match chart on a canvas.
//!
//! Tick texts are placed here rather than by the plotting library's mesh, which
//! would measure each of them with an element of its own.

use plotters::coord::Shift;
use plotters::coord::types::RangedCoordf64;
use plotters::element::{Circle, DashedPathElement, PathElement, Rectangle, Text};
use plotters::prelude::{Cartesian2d, ChartBuilder, ChartContext, DrawingArea, IntoDrawingArea};
use plotters::series::LineSeries;
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{Color, FontDesc, FontFamily, FontStyle, RGBColor, ShapeStyle, TextStyle};
use plotters_canvas::CanvasBackend;
use tinwave_core::match_band::SweepPoint;
use web_sys::HtmlCanvasElement;

use super::palette::Palette;
use crate::drawing::match_scale::{LIMITS, MatchScale, Quantity};
use crate::drawing::match_words::vswr_text;
use crate::drawing::plot_frame::{PLOT_BOTTOM, PLOT_LEFT, PLOT_RIGHT, PLOT_TOP, PlotFrame};
use crate::entry::format_decimal;

type Root = DrawingArea<CanvasBackend, Shift>;
type Plane = Cartesian2d<RangedCoordf64, RangedCoordf64>;
type Chart<'a> = ChartContext<'a, CanvasBackend, Plane>;
type Drawn = Option<()>;

/// What one drawing of the chart shows.
pub(super) struct MatchPlot<'a> {
    pub(super) frame: PlotFrame,
    /// Pixels of the canvas per CSS px.
    pub(super) ratio: f64,
    pub(super) palette: Palette,
    pub(super) scale: MatchScale,
    pub(super) sweep: &'a [SweepPoint],
    pub(super) compare: &'a [SweepPoint],
    /// Band edges, kHz.
    pub(super) band: (f64, f64),
    /// Worst point in the band: kHz and VSWR.
    pub(super) worst: Option<(f64, f64)>,
}

impl MatchPlot<'_> {
    /// Draws everything; `None` where the canvas cannot be drawn on.
    pub(super) fn draw(&self, canvas: HtmlCanvasElement) -> Drawn {
        let root = CanvasBackend::with_canvas_object(canvas)?.into_drawing_area();
        root.fill(&self.palette.paper).ok()?;
        let axis = self.frame.axis;
        let mut chart = ChartBuilder::on(&root)
            .margin_left(self.px(PLOT_LEFT))
            .margin_right(self.px(PLOT_RIGHT))
            .margin_top(self.px(PLOT_TOP))
            .margin_bottom(self.px(PLOT_BOTTOM))
            .build_cartesian_2d(axis.low_khz..axis.high_khz, 0.0..1.0)
            .ok()?;
        self.band(&mut chart)?;
        self.grid(&root, &mut chart)?;
        self.limits(&mut chart)?;
        self.lines(&mut chart)?;
        self.worst(&mut chart)?;
        root.present().ok()
    }

    fn px(&self, css: f64) -> i32 {
        (css * self.ratio).round() as i32
    }

    fn stroke(&self, colour: RGBColor, css: f64) -> ShapeStyle {
        let width = (css * self.ratio).round().max(1.0);
        colour.stroke_width(width as u32)
    }

    fn text(&self, colour: RGBColor, h_pos: HPos, v_pos: VPos) -> TextStyle<'static> {
        TextStyle {
            // By name, a family would be looked up with the tables of all letters' cases.
            font: FontDesc::new(FontFamily::SansSerif, 12.0 * self.ratio, FontStyle::Normal),
            color: colour.to_backend_color(),
            pos: Pos::new(h_pos, v_pos),
        }
    }

    fn band(&self, chart: &mut Chart<'_>) -> Drawn {
        let axis = self.frame.axis;
        let low = self.band.0.max(axis.low_khz).min(axis.high_khz);
        let high = self.band.1.max(axis.low_khz).min(axis.high_khz);
        let area = Rectangle::new([(low, 0.0), (high, 1.0)], self.palette.band.filled());
        chart.draw_series([area]).ok()?;
        let edge = self.stroke(self.palette.ink_soft, 1.0);
        let edges = [low, high].map(|khz| PathElement::new([(khz, 0.0), (khz, 1.0)], edge));
        chart.draw_series(edges).ok()?;
        Some(())
    }

    fn grid(&self, root: &Root, chart: &mut Chart<'_>) -> Drawn {
        let axis = self.frame.axis;
        let thin = self.stroke(self.palette.line, 1.0);
        let bottom = self.px(self.frame.height - PLOT_BOTTOM);
        let below = self.text(self.palette.ink, HPos::Center, VPos::Top);
        for tick in self.frame.ticks() {
            let khz = f64::from(tick.mhz) * 1e3;
            chart
                .draw_series([PathElement::new([(khz, 0.0), (khz, 1.0)], thin)])
                .ok()?;
            let place = (self.px(tick.x), bottom + self.px(6.0));
            root.draw(&Text::new(tick.mhz.to_string(), place, below.clone()))
                .ok()?;
        }
        let beside = self.text(self.palette.ink, HPos::Right, VPos::Center);
        for value in self.scale.ticks() {
            let height = self.scale.tick_height(value);
            let ends = [(axis.low_khz, height), (axis.high_khz, height)];
            chart.draw_series([PathElement::new(ends, thin)]).ok()?;
            let says = format_decimal(value, u8::from(value.fract() != 0.0));
            let y = self.frame.y(height);
            let place = (self.px(PLOT_LEFT - 6.0), self.px(y));
            root.draw(&Text::new(says, place, beside.clone())).ok()?;
        }
        let unit = (
            self.px((axis.left + axis.right) / 2.0),
            bottom + self.px(21.0),
        );
        root.draw(&Text::new("Frequency, MHz", unit, below)).ok()?;
        let shown = match self.scale.quantity {
            Quantity::Vswr => "VSWR",
            Quantity::ReturnLoss => "Return loss, dB",
        };
        let above = self.text(self.palette.ink, HPos::Left, VPos::Top);
        let corner = (self.px(4.0), self.px(2.0));
        root.draw(&Text::new(shown, corner, above)).ok()?;
        let frame = self.stroke(self.palette.ink, 1.0);
        let corner = [
            (axis.low_khz, 1.0),
            (axis.low_khz, 0.0),
            (axis.high_khz, 0.0),
        ];
        chart.draw_series([PathElement::new(corner, frame)]).ok()?;
        Some(())
    }

    fn limits(&self, chart: &mut Chart<'_>) -> Drawn {
        let axis = self.frame.axis;
        let style = self.stroke(self.palette.ink_soft, 1.2);
        let (dash, gap) = (self.px(7.0), self.px(4.0));
        for vswr in LIMITS {
            let height = self.scale.height(vswr);
            let ends = [(axis.low_khz, height), (axis.high_khz, height)];
            chart
                .draw_series([DashedPathElement::new(ends, dash, gap, style)])
                .ok()?;
            let text = self.text(self.palette.ink_soft, HPos::Left, VPos::Bottom);
            let says = ["VSWR ", &format_decimal(vswr, 1)].concat();
            let at = (axis.frequency(axis.left + 4.0), height);
            chart.draw_series([Text::new(says, at, text)]).ok()?;
        }
        Some(())
    }

    /// Stretches of a sweep without a gap, as plane coordinates.
    fn stretches(&self, points: &[SweepPoint]) -> Vec<Vec<(f64, f64)>> {
        let axis = self.frame.axis;
        points
            .split(|point| point.at.is_none())
            .map(|part| {
                part.iter()
                    .filter_map(|point| {
                        let khz = f64::from(point.frequency_khz);
                        let inside = khz >= axis.low_khz && khz <= axis.high_khz;
                        let at = point.at.filter(|_| inside)?;
                        Some((khz, self.scale.height(at.vswr)))
                    })
                    .collect()
            })
            .filter(|part: &Vec<(f64, f64)>| part.len() > 1)
            .collect()
    }

    fn lines(&self, chart: &mut Chart<'_>) -> Drawn {
        let ghost = self.stroke(self.palette.ink_soft, 2.0);
        let (dash, gap) = (self.px(2.0), self.px(5.0));
        for part in self.stretches(self.compare) {
            chart
                .draw_series([DashedPathElement::new(part, dash, gap, ghost)])
                .ok()?;
        }
        let line = self.stroke(self.palette.accent, 2.5);
        for part in self.stretches(self.sweep) {
            chart.draw_series(LineSeries::new(part, line)).ok()?;
        }
        Some(())
    }

    fn worst(&self, chart: &mut Chart<'_>) -> Drawn {
        let Some((khz, vswr)) = self.worst else {
            return Some(());
        };
        let axis = self.frame.axis;
        let height = self.scale.height(vswr);
        let ring = self.stroke(self.palette.caution, 2.0);
        let radius = self.px(5.0);
        chart
            .draw_series([Circle::new((khz, height), radius, ring)])
            .ok()?;
        let says = ["worst ", &vswr_text(vswr)].concat();
        // Towards the middle, above the point unless it stands at the top.
        let is_left = axis.place(khz) < (axis.left + axis.right) / 2.0;
        let h_pos = if is_left { HPos::Left } else { HPos::Right };
        let v_pos = if height > 0.85 {
            VPos::Top
        } else {
            VPos::Bottom
        };
        let lift = if height > 0.85 { -0.03 } else { 0.03 };
        let shift = if is_left { 8.0 } else { -8.0 };
        let at = (axis.frequency(axis.place(khz) + shift), height + lift);
        let text = self.text(self.palette.ink, h_pos, v_pos);
        chart.draw_series([Text::new(says, at, text)]).ok()?;
        Some(())
    }
}
