//! The sheets on the browser's own paper.

use leptos::prelude::*;
use tinwave_protocol::print::SheetDrawn;

use super::bench::Bench;
use crate::browser;

/// The sheets alone, while the browser prints them; else nothing.
#[component]
pub fn PaperSheets() -> impl IntoView {
    let bench = Bench::of_page();
    browser::on_window("afterprint", move |_| bench.on_paper.set(None));
    let sheet = |sheet: SheetDrawn| {
        let class = format!("paper-sheet {}", page_of(&sheet));
        view! { <div class=class inner_html=sheet.svg></div> }
    };
    move || {
        bench.on_paper.get().map(|sheets| {
            view! {
                <div class="paper-sheets">{sheets.into_iter().map(sheet).collect_view()}</div>
            }
        })
    }
}

/// The page of the styles that is as large as the sheet.
fn page_of(sheet: &SheetDrawn) -> &'static str {
    match (
        sheet.width_um > sheet.height_um,
        sheet.width_um.max(sheet.height_um),
    ) {
        (false, 297_000) => "a4-upright",
        (true, 297_000) => "a4-lying",
        (false, _) => "letter-upright",
        (true, _) => "letter-lying",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_paper_has_its_page_either_way() {
        let sheet = |width_um, height_um| SheetDrawn {
            svg: String::new(),
            parts: Vec::new(),
            width_um,
            height_um,
        };
        assert_eq!(page_of(&sheet(210_000, 297_000)), "a4-upright");
        assert_eq!(page_of(&sheet(297_000, 210_000)), "a4-lying");
        assert_eq!(page_of(&sheet(215_900, 279_400)), "letter-upright");
        assert_eq!(page_of(&sheet(279_400, 215_900)), "letter-lying");
    }
}
