//! Grid, band and curves on a canvas of the device's own pixels.

use plotters::coord::types::RangedCoordf64;
use plotters::element::{Circle, DashedPathElement, PathElement, Polygon, Rectangle};
use plotters::prelude::{Cartesian2d, ChartBuilder, ChartContext, IntoDrawingArea};
use plotters::series::LineSeries;
use plotters::style::{Color, RGBColor, ShapeStyle};
use plotters_canvas::CanvasBackend;
use tinwave_drawing::chart::{ChartLayout, ChartSpec, Range, Series, Style, runs};
use web_sys::HtmlCanvasElement;

type Chart<'a> = ChartContext<'a, CanvasBackend, Cartesian2d<RangedCoordf64, RangedCoordf64>>;
type Drawn = Option<()>;

/// How far the canvas reaches past the plot on every side, CSS px: lines at its edges
/// are not cut. The styles have the same.
const OVER: f64 = 4.0;
/// Canvas pixels per CSS px: at least two, because the plotting library puts lines on
/// whole pixels.
const LEAST_RATIO: f64 = 2.0;
/// More is not seen, only paid for.
const MOST_RATIO: f64 = 3.0;

/// The page's colours, which style sheets do not bring onto a canvas.
#[derive(Clone, Copy)]
struct Palette {
    ink: RGBColor,
    labels: RGBColor,
    hair: RGBColor,
    this: RGBColor,
    tint: RGBColor,
    band: RGBColor,
    band_edge: RGBColor,
}

impl Palette {
    /// Reads the colours off the canvas. The styles put each on a property that paints
    /// nothing there: such a property is resolved to plain RGB, a custom one is not.
    fn read(canvas: &HtmlCanvasElement) -> Option<Self> {
        let style = web_sys::window()?.get_computed_style(canvas).ok()??;
        let colour = |property: &str| {
            let text = style.get_property_value(property).unwrap_or_default();
            parse_rgb(&text)
        };
        Some(Self {
            ink: colour("color")?,
            labels: colour("border-bottom-color")?,
            hair: colour("border-top-color")?,
            this: colour("border-right-color")?,
            tint: colour("border-left-color")?,
            band: colour("outline-color")?,
            band_edge: colour("column-rule-color")?,
        })
    }
}

/// `rgb(1, 2, 3)` or `rgba(1, 2, 3, 0.5)`, as browsers resolve plain colours.
fn parse_rgb(text: &str) -> Option<RGBColor> {
    let (_, rest) = text.split_once('(')?;
    let mut parts = rest
        .split([',', ' ', ')'])
        .filter(|part| !part.is_empty())
        .map(|part| part.parse::<u8>().unwrap_or(0));
    Some(RGBColor(parts.next()?, parts.next()?, parts.next()?))
}

/// One drawing.
struct Plot<'a> {
    spec: &'a ChartSpec,
    layout: &'a ChartLayout,
    ratio: f64,
    palette: Palette,
}

/// Draws everything; `None` where the canvas cannot be drawn on.
pub(super) fn draw(canvas: HtmlCanvasElement, spec: &ChartSpec, layout: &ChartLayout) -> Drawn {
    let ratio = web_sys::window()?
        .device_pixel_ratio()
        .clamp(LEAST_RATIO, MOST_RATIO);
    let pixels = |css: f64| ((css + 2.0 * OVER).max(1.0) * ratio).round() as u32;
    // Setting the size also clears.
    canvas.set_width(pixels(layout.size.width));
    canvas.set_height(pixels(layout.size.height));
    let plot = Plot {
        spec,
        layout,
        ratio,
        palette: Palette::read(&canvas)?,
    };
    let root = CanvasBackend::with_canvas_object(canvas)?.into_drawing_area();
    // Shares of the axes: their scales are the data's own.
    let mut chart = ChartBuilder::on(&root)
        .margin(plot.px(OVER))
        .build_cartesian_2d(0.0..1.0, 0.0..1.0)
        .ok()?;
    plot.band(&mut chart)?;
    plot.grid(&mut chart)?;
    for range in &spec.ranges {
        plot.range(&mut chart, range)?;
    }
    plot.limits(&mut chart)?;
    plot.axes(&mut chart)?;
    for series in spec.series.iter().rev() {
        plot.curve(&mut chart, series)?;
    }
    plot.marks(&mut chart)?;
    root.present().ok()
}

impl Plot<'_> {
    fn px(&self, css: f64) -> i32 {
        (css * self.ratio).round() as i32
    }

    fn stroke(&self, colour: RGBColor, css: f64) -> ShapeStyle {
        let width = (css * self.ratio).round().max(1.0);
        colour.stroke_width(width as u32)
    }

    fn at(&self, point: (f64, f64)) -> (f64, f64) {
        (self.spec.x.share(point.0), self.spec.y.share(point.1))
    }

    fn band(&self, chart: &mut Chart<'_>) -> Drawn {
        let Some((low, high)) = self.spec.band_shares() else {
            return Some(());
        };
        let area = Rectangle::new([(low, 0.0), (high, 1.0)], self.palette.band.filled());
        chart.draw_series([area]).ok()?;
        let edge = self.stroke(self.palette.band_edge, 1.0);
        let edges = [low, high].map(|x| PathElement::new([(x, 0.0), (x, 1.0)], edge));
        chart.draw_series(edges).ok()?;
        Some(())
    }

    fn grid(&self, chart: &mut Chart<'_>) -> Drawn {
        let hair = self.stroke(self.palette.hair, 1.0);
        let upright = self.layout.x_ticks.iter();
        let upright =
            upright.map(|tick| PathElement::new([(tick.share, 0.0), (tick.share, 1.0)], hair));
        chart.draw_series(upright).ok()?;
        let level = self.layout.y_ticks.iter();
        let level =
            level.map(|tick| PathElement::new([(0.0, tick.share), (1.0, tick.share)], hair));
        chart.draw_series(level).ok()?;
        Some(())
    }

    fn limits(&self, chart: &mut Chart<'_>) -> Drawn {
        let style = self.stroke(self.palette.labels, 1.0);
        for limit in &self.spec.limits {
            let y = self.spec.y.share(*limit);
            if (0.0..=1.0).contains(&y) {
                let dots =
                    DashedPathElement::new([(0.0, y), (1.0, y)], self.px(1.5), self.px(3.0), style);
                chart.draw_series([dots]).ok()?;
            }
        }
        Some(())
    }

    fn axes(&self, chart: &mut Chart<'_>) -> Drawn {
        let ink = self.stroke(self.palette.ink, 1.0);
        let corner = [(0.0, 1.0), (0.0, 0.0), (1.0, 0.0)];
        chart.draw_series([PathElement::new(corner, ink)]).ok()?;
        Some(())
    }

    fn range(&self, chart: &mut Chart<'_>, range: &Range) -> Drawn {
        let kept = |(x, y): (f64, f64)| (x.clamp(0.0, 1.0), y.clamp(0.0, 1.0));
        let upper = range
            .points
            .iter()
            .map(|(x, _, high)| kept(self.at((*x, *high))));
        let lower = range
            .points
            .iter()
            .rev()
            .map(|(x, low, _)| kept(self.at((*x, *low))));
        let outline: Vec<(f64, f64)> = upper.chain(lower).collect();
        chart
            .draw_series([Polygon::new(outline, self.palette.tint.filled())])
            .ok()?;
        Some(())
    }

    fn curve(&self, chart: &mut Chart<'_>, series: &Series) -> Drawn {
        let (colour, width, dash) = match series.style {
            Style::This => (self.palette.this, 2.5, None),
            Style::Measured => (self.palette.ink, 1.75, None),
            Style::Compared => (self.palette.labels, 1.5, Some((6.0, 4.0))),
            Style::Other => (self.palette.labels, 1.5, Some((2.0, 3.0))),
        };
        let style = self.stroke(colour, width);
        for run in runs(&series.points, &self.spec.x, &self.spec.y) {
            let run: Vec<(f64, f64)> = run.into_iter().map(|point| self.at(point)).collect();
            if let [single] = run.as_slice() {
                let point = Circle::new(*single, self.px(width + 1.0), colour.filled());
                chart.draw_series([point]).ok()?;
            } else if let Some((dash, gap)) = dash {
                let dashed = DashedPathElement::new(run, self.px(dash), self.px(gap), style);
                chart.draw_series([dashed]).ok()?;
            } else {
                chart.draw_series(LineSeries::new(run, style)).ok()?;
            }
        }
        Some(())
    }

    fn marks(&self, chart: &mut Chart<'_>) -> Drawn {
        let ring = self.stroke(self.palette.ink, 1.5);
        for mark in &self.spec.marks {
            let (x, y) = self.at(mark.at);
            if (0.0..=1.0).contains(&x) && (0.0..=1.0).contains(&y) {
                chart
                    .draw_series([Circle::new((x, y), self.px(4.0), ring)])
                    .ok()?;
            }
        }
        Some(())
    }
}
