//! The match as a table: the chart's data for those who want figures.

use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;

use super::figure::{Picture, follow, listen};
use super::followed::{Followed, Watched};
use crate::drawing::match_rows::{MatchRow, match_rows};
use crate::drawing::match_words::vswr_text;
use crate::entry::{format_decimal, format_frequency_exact};

/// Fills the fold's table while it is open.
pub(super) fn keep_table(
    picture: &Picture,
    sweep: Followed<Vec<SweepPoint>>,
    band: Followed<Band>,
) -> Option<()> {
    let fold = picture.part(".pic-fold")?;
    let body = picture.part("tbody")?;
    let open = Watched::new(false);
    let opened = fold.clone();
    let toggle = move |_| {
        open.set(opened.has_attribute("open"));
    };
    listen(&fold, "toggle", Box::new(toggle));
    follow(Box::new(move || {
        if open.get() {
            let rows = match_rows(&sweep.get(), band.get());
            body.set_inner_html(&rows_markup(&rows));
        }
    }));
    Some(())
}

/// Figures only: nothing in it needs escaping.
fn rows_markup(rows: &[MatchRow]) -> String {
    let mut markup = String::with_capacity(rows.len() * 120);
    for row in rows {
        let (class, edge) = if row.is_edge {
            (" class=\"pic-edge-row\"", " band edge")
        } else {
            ("", "")
        };
        let khz = format_frequency_exact(row.khz);
        for piece in ["<tr", class, "><th scope=\"row\">", &khz, edge, "</th>"] {
            markup.push_str(piece);
        }
        let cells = [
            row.at.map(|at| vswr_text(at.vswr)),
            row.return_loss_db().map(|db| format_decimal(db, 1)),
            row.at.map(|at| format_decimal(at.impedance_ohm.re, 1)),
            row.at.map(|at| format_decimal(at.impedance_ohm.im, 1)),
        ];
        for cell in cells {
            markup.push_str("<td>");
            markup.push_str(cell.as_deref().unwrap_or("–"));
            markup.push_str("</td>");
        }
        markup.push_str("</tr>");
    }
    markup
}
