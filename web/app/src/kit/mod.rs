//! The components that every station is made of, each tested alone.
//!
//! Texts are signals made from plain strings, closures or memos (`#[prop(into)]`);
//! an empty text means that there is nothing to say. What is pressed or typed comes
//! back through callbacks. Words are the caller's, out of `tinwave_words`; only what a
//! component always says is asked for here.

pub mod action;
pub mod caution_block;
pub mod chart;
pub mod check;
pub mod choice;
pub mod design_field;
pub mod empty;
pub mod entry_row;
pub mod entry_state;
pub mod figure;
pub mod file_drop;
pub mod finding_block;
pub mod fold;
pub mod icon;
pub mod id;
pub mod live_region;
pub mod number_field;
pub mod part;
pub mod pick;
pub mod picker;
pub mod progress_bar;
pub mod short_list;
pub mod side_heights;
pub mod state_line;
pub mod station_page;
pub mod table_fold;
pub mod term_hint;
pub mod text_field;
pub mod verdict_glyph;
pub mod waits;

pub use action::{Action, ActionKind, ActionLink};
pub use caution_block::CautionBlock;
pub use chart::XyChart;
pub use check::Check;
pub use choice::Choice;
pub use design_field::{DesignField, field_id};
pub use empty::Empty;
pub use entry_row::{EntryRow, Was};
pub use entry_state::{EntryState, Fault, Meant};
pub use figure::{Figure, FigureState, FigureText, FigureTone, Figures, WhyText};
pub use file_drop::{DroppedFile, FileDrop};
pub use finding_block::{FindingBlock, FindingTone};
pub use fold::Fold;
pub use icon::{Icon, IconName, station_icon};
pub use id::new_id;
pub use live_region::LiveRegion;
pub use number_field::NumberField;
pub use part::{EntryGroup, Part};
pub use pick::{Pick, PickGroup};
pub use picker::Picker;
pub use progress_bar::ProgressBar;
pub use short_list::ShortList;
pub use state_line::StateLine;
pub use station_page::StationPage;
pub use table_fold::{TableFold, TableText};
pub use term_hint::TermHint;
pub use text_field::TextField;
pub use verdict_glyph::VerdictGlyph;
pub use waits::Waits;
