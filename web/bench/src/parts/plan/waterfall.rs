//! The budget as a picture: one row per step, each bar from the level before to the
//! level after it, down to what is received; the sensitivity is an upright line.

use tinwave_core::radio_link::{Budget, BudgetItem, BudgetItemKind};
use tinwave_web::drawing::path_text::PathText;
use tinwave_web::entry::format_decimal;

use super::words::{dbm, signed_db};
use crate::sheet::{Anchor, Sheet, WIDTH, round_values};

const LEFT: f64 = 124.0;
const RIGHT: f64 = WIDTH - 10.0;
const TOP: f64 = 26.0;
const ROW: f64 = 24.0;
const BAR: f64 = 12.0;

/// Least change that has a row of its own, dB.
const LEAST_DB: f64 = 0.05;

/// Levels of the axis and where they stand.
struct Axis {
    low: f64,
    high: f64,
}

impl Axis {
    fn around(budget: &Budget) -> Self {
        let levels = budget.items.iter().map(|item| item.level_dbm);
        let ends = levels.chain([budget.sensitivity_dbm]);
        let (low, high) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), level| {
            (low.min(level), high.max(level))
        });
        Self {
            low: (low / 10.0).floor() * 10.0 - 5.0,
            high: (high / 10.0).ceil() * 10.0 + 5.0,
        }
    }

    fn x(&self, level_dbm: f64) -> f64 {
        LEFT + (level_dbm - self.low) / (self.high - self.low) * (RIGHT - LEFT)
    }
}

/// Whether a step is worth a row.
pub(super) fn has_row(item: &BudgetItem) -> bool {
    item.kind == BudgetItemKind::TransmitPower || item.change_db.abs() >= LEAST_DB
}

/// The picture. `name` says what a step is.
pub(super) fn picture(
    budget: &Budget,
    title: &str,
    description: &str,
    name: impl Fn(BudgetItemKind) -> String,
) -> String {
    let axis = Axis::around(budget);
    let rows: Vec<&BudgetItem> = budget.items.iter().filter(|item| has_row(item)).collect();
    let bottom = TOP + ROW * (rows.len() as f64 + 1.0);
    let mut sheet = Sheet::new("plan-waterfall", bottom + 46.0, title, description);
    grid(&mut sheet, &axis, bottom);
    let mut before = 0.0;
    for (n, item) in rows.iter().enumerate() {
        let y = TOP + ROW * n as f64;
        let name = name(item.kind);
        if item.kind == BudgetItemKind::TransmitPower {
            level(&mut sheet, &axis, y, &name, item.level_dbm);
        } else {
            step(&mut sheet, &axis, y, &name, before, item);
        }
        before = item.level_dbm;
    }
    let y = bottom - ROW;
    level(&mut sheet, &axis, y, "Received", budget.received_dbm);
    sensitivity(&mut sheet, &axis, bottom, budget.sensitivity_dbm);
    sheet.finish()
}

fn grid(sheet: &mut Sheet, axis: &Axis, bottom: f64) {
    let mut path = PathText::new();
    for (level, _) in round_values(axis.low, axis.high, 7.0) {
        let x = axis.x(level);
        path.segment(x, TOP - 4.0, x, bottom);
        let figure = format_decimal(level, 0);
        sheet.text(
            "pic-words pic-small",
            Anchor::Middle,
            (x, bottom + 14.0),
            &figure,
        );
    }
    sheet.path("pic-grid", &path.into_text());
    sheet.text(
        "pic-words pic-small",
        Anchor::Start,
        (2.0, 13.0),
        "Level, dBm; steps in dB",
    );
}

/// A step: full where it adds, outlined where it takes; its figure beside it.
fn step(sheet: &mut Sheet, axis: &Axis, y: f64, name: &str, before_dbm: f64, item: &BudgetItem) {
    let (from, to) = (axis.x(before_dbm), axis.x(item.level_dbm));
    let middle = y + 0.5 * ROW;
    let bar = PathText::of_rectangle(
        (from.min(to), middle - 0.5 * BAR),
        (from.max(to).max(from.min(to) + 1.5), middle + 0.5 * BAR),
    );
    let class = if item.change_db > 0.0 {
        "plan-gain"
    } else {
        "plan-loss"
    };
    sheet.path(class, &bar);
    let mut on = PathText::new();
    on.segment(to, middle + 0.5 * BAR, to, middle + ROW - 0.5 * BAR);
    sheet.path("plan-step", &on.into_text());
    sheet.text("pic-words", Anchor::Start, (2.0, middle + 4.0), name);
    // Its own change, as the table has it: steps without a row lie between the bars.
    let figure = signed_db(item.change_db);
    // The figure stands inside a long bar, else where there is room beside it.
    if (from - to).abs() > 90.0 {
        let centre = (0.5 * (from + to), middle + 4.0);
        sheet.text("pic-figure", Anchor::Middle, centre, &figure);
    } else if from.max(to) + 44.0 < RIGHT {
        let beside = (from.max(to) + 5.0, middle + 4.0);
        sheet.text("pic-figure", Anchor::Start, beside, &figure);
    } else {
        let beside = (from.min(to) - 5.0, middle + 4.0);
        sheet.text("pic-figure", Anchor::End, beside, &figure);
    }
}

/// A level: a mark and its figure.
fn level(sheet: &mut Sheet, axis: &Axis, y: f64, name: &str, level_dbm: f64) {
    let (x, middle) = (axis.x(level_dbm), y + 0.5 * ROW);
    let mut mark = PathText::new();
    mark.polygon(&[
        (x - 6.0, middle),
        (x, middle - 7.0),
        (x + 6.0, middle),
        (x, middle + 7.0),
    ]);
    sheet.path("plan-level", &mark.into_text());
    sheet.text("pic-figure", Anchor::Start, (2.0, middle + 4.0), name);
    let figure = dbm(level_dbm);
    if x + 76.0 < RIGHT {
        sheet.text(
            "pic-figure",
            Anchor::Start,
            (x + 10.0, middle + 4.0),
            &figure,
        );
    } else {
        sheet.text("pic-figure", Anchor::End, (x - 10.0, middle + 4.0), &figure);
    }
}

fn sensitivity(sheet: &mut Sheet, axis: &Axis, bottom: f64, sensitivity_dbm: f64) {
    let x = axis.x(sensitivity_dbm);
    let mut line = PathText::new();
    line.segment(x, TOP - 4.0, x, bottom + 20.0);
    sheet.path("pic-line-limit", &line.into_text());
    let words = ["needed: ", &dbm(sensitivity_dbm)].concat();
    let (anchor, at) = if x + 120.0 < RIGHT {
        (Anchor::Start, x)
    } else {
        (Anchor::End, x)
    };
    sheet.text("pic-words", anchor, (at, bottom + 34.0), &words);
}
