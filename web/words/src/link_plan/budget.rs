//! The budget as a table.

use tinwave_core::radio_link::{Budget, BudgetItem, BudgetItemKind, End};
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_maker::link_plan::{LinkAnswer, PlanAnswer};

use super::names::step;
use crate::figures::{signed_db, small_signed_db};

/// The budget as a table, both ways side by side: heads, then a row each.
#[must_use]
pub fn budget_rows(
    answer: &PlanAnswer,
    link: &LinkAnswer,
    unit: LengthUnit,
) -> (Vec<String>, Vec<Vec<String>>) {
    let mut head = vec!["Step".to_owned()];
    for budget in &link.budgets {
        let who = match budget.from {
            End::A => "this end sends",
            End::B => "the far end sends",
        };
        head.extend([format!("dB, {who}"), format!("dBm, {who}")]);
    }
    let mut rows = Vec::new();
    let Some(first) = link.budgets.first() else {
        return (head, rows);
    };
    for (n, item) in first.items.iter().enumerate() {
        let same: Vec<_> = link
            .budgets
            .iter()
            .filter_map(|one| one.items.get(n))
            .collect();
        let is_power = item.kind == BudgetItemKind::TransmitPower;
        if !same.iter().any(|item| has_row(item)) {
            continue;
        }
        // The name of an end's step is of the one that sends, in either direction.
        let mut row = vec![table_step(answer, item.kind, unit)];
        for item in same {
            let change = if is_power {
                String::new()
            } else {
                small_signed_db(item.change_db)
            };
            row.extend([change, format_decimal(item.level_dbm, 1)]);
        }
        rows.push(row);
    }
    type Of = fn(&Budget) -> f64;
    let levels: [(&str, Of); 2] = [
        ("Received", |budget| budget.received_dbm),
        ("Needed (sensitivity)", |budget| budget.sensitivity_dbm),
    ];
    for (name, of) in levels {
        let mut row = vec![name.to_owned()];
        for budget in &link.budgets {
            row.extend([String::new(), format_decimal(of(budget), 1)]);
        }
        rows.push(row);
    }
    let margins: [(&str, Of); 2] = [
        ("Margin", |budget| budget.margin_db),
        ("Margin over the one kept", |budget| budget.spare_db),
    ];
    for (name, of) in margins {
        let mut row = vec![name.to_owned()];
        for budget in &link.budgets {
            row.extend([signed_db(of(budget)), String::new()]);
        }
        rows.push(row);
    }
    (head, rows)
}

/// Least change that has a row, dB: what is less would be told as nothing.
const LEAST_DB: f64 = 0.005;

/// Whether a step is worth a row. The levels beside it are of every step, so each that
/// counts is shown.
fn has_row(item: &BudgetItem) -> bool {
    item.kind == BudgetItemKind::TransmitPower || item.change_db.abs() >= LEAST_DB
}

/// A step of the table, whichever end sends.
fn table_step(answer: &PlanAnswer, kind: BudgetItemKind, unit: LengthUnit) -> String {
    let name = match kind {
        BudgetItemKind::TransmitLine => "Sender’s cable",
        BudgetItemKind::TransmitConnectors => "Sender’s connectors",
        BudgetItemKind::TransmitMismatch => "Sender’s match",
        BudgetItemKind::TransmitGain => "Sender’s gain",
        BudgetItemKind::TransmitPointing => "Sender’s aim",
        BudgetItemKind::ReceivePointing => "Receiver’s aim",
        BudgetItemKind::ReceiveGain => "Receiver’s gain",
        BudgetItemKind::ReceiveMismatch => "Receiver’s match",
        BudgetItemKind::ReceiveConnectors => "Receiver’s connectors",
        BudgetItemKind::ReceiveLine => "Receiver’s cable",
        _ => return step(answer, End::A, kind, unit),
    };
    name.to_owned()
}
