//! The link budget as a picture: a row a step, each bar from the level before to the
//! level after it, on one axis; at its end what is received, what is needed, and the
//! margin between them.
//!
//! Places are per cent of the axis, so that the picture is drawn at any width with
//! letters of their own size.

use tinwave_core::radio_link::{Budget, BudgetItem, BudgetItemKind};
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::link_plan::PlanAnswer;
use tinwave_words::figures::{dbm, signed_db};
use tinwave_words::link_plan as words;

/// Least change that has a row in the picture, dB.
const LEAST_SEEN_DB: f64 = 0.05;

/// Share of the axis left free at either end, per cent.
const FREE: f64 = 3.0;

/// Narrowest bar, per cent: a step that is told is seen.
const LEAST_WIDTH: f64 = 0.6;

/// What a row shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LevelMark {
    /// A level: a full mark at a place.
    Level(f64),
    /// A level that is needed: an open mark.
    Needed(f64),
    /// A step that adds: filled, from a place on so wide.
    Gain(f64, f64),
    /// A step that takes: outlined and hatched.
    Loss(f64, f64),
}

/// A row.
#[derive(Clone, Debug, PartialEq)]
pub struct LevelRow {
    /// What it is.
    pub name: String,
    /// Its figure.
    pub figure: String,
    /// What is drawn.
    pub mark: LevelMark,
}

/// The margin: from the needed to the received level.
#[derive(Clone, Debug, PartialEq)]
pub struct MarginBracket {
    /// Its left end, per cent.
    pub left: f64,
    /// Its width, per cent.
    pub width: f64,
    /// Whether too little arrives.
    pub is_short: bool,
    /// Its figure in words.
    pub words: String,
}

/// The picture.
#[derive(Clone, Debug, PartialEq)]
pub struct LevelsScene {
    /// Its rows, from the transmitter on.
    pub rows: Vec<LevelRow>,
    /// The margin below them.
    pub bracket: MarginBracket,
    /// The picture in a sentence.
    pub description: String,
}

/// Levels of the axis.
struct Axis {
    low: f64,
    span: f64,
}

impl Axis {
    fn around(budget: &Budget) -> Self {
        let levels = budget.items.iter().map(|item| item.level_dbm);
        let ends = levels.chain([budget.sensitivity_dbm]);
        let (low, high) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), level| {
            (low.min(level), high.max(level))
        });
        Self {
            low,
            span: (high - low).max(1.0),
        }
    }

    /// Place of a level, per cent.
    fn place(&self, level_dbm: f64) -> f64 {
        FREE + (level_dbm - self.low) / self.span * (100.0 - 2.0 * FREE)
    }

    /// Left end and width between two levels.
    fn between(&self, one_dbm: f64, other_dbm: f64) -> (f64, f64) {
        let (one, other) = (self.place(one_dbm), self.place(other_dbm));
        (one.min(other), (one - other).abs().max(LEAST_WIDTH))
    }
}

/// Whether a step can be seen in the picture; the table has those too that can't.
fn is_seen(item: &BudgetItem) -> bool {
    item.kind == BudgetItemKind::TransmitPower || item.change_db.abs() >= LEAST_SEEN_DB
}

impl LevelsScene {
    /// The levels of one direction.
    #[must_use]
    pub fn new(answer: &PlanAnswer, budget: &Budget, unit: LengthUnit) -> Self {
        let axis = Axis::around(budget);
        let mut rows = Vec::new();
        let mut before_dbm = 0.0;
        // Steps without a row move the level all the same: bars join where it stands.
        for item in &budget.items {
            if is_seen(item) {
                let name = words::step(answer, budget.from, item.kind, unit);
                rows.push(row(&axis, name, before_dbm, item));
            }
            before_dbm = item.level_dbm;
        }
        let level = |name: &str, level_dbm: f64, mark: fn(f64) -> LevelMark| LevelRow {
            name: name.to_owned(),
            figure: dbm(level_dbm),
            mark: mark(axis.place(level_dbm)),
        };
        let (received, needed) = words::level_names();
        rows.push(level(received, budget.received_dbm, LevelMark::Level));
        rows.push(level(needed, budget.sensitivity_dbm, LevelMark::Needed));
        let (left, width) = axis.between(budget.sensitivity_dbm, budget.received_dbm);
        Self {
            rows,
            bracket: MarginBracket {
                left,
                width,
                is_short: budget.margin_db < 0.0,
                words: words::margin_bracket(budget.margin_db),
            },
            description: words::picture_description(budget),
        }
    }
}

fn row(axis: &Axis, name: String, before_dbm: f64, item: &BudgetItem) -> LevelRow {
    if item.kind == BudgetItemKind::TransmitPower {
        return LevelRow {
            name,
            figure: dbm(item.level_dbm),
            mark: LevelMark::Level(axis.place(item.level_dbm)),
        };
    }
    let (left, width) = axis.between(before_dbm, item.level_dbm);
    LevelRow {
        name,
        figure: signed_db(item.change_db),
        mark: if item.change_db > 0.0 {
            LevelMark::Gain(left, width)
        } else {
            LevelMark::Loss(left, width)
        },
    }
}
