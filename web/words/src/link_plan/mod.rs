//! What the Link station says: everything from the data of
//! [`tinwave_maker::link_plan`].

mod aim;
mod answer;
mod entries;
mod law;
mod names;
mod path;
mod receive;
mod safe;
mod why;

pub use aim::{aim_lean, aim_polarisation, aim_rows, aim_wrong};
pub use answer::{
    PartTitle, answer, directions_note, in_short, level_names, margin_bracket, margin_note,
    out_of_range, part_titles, picture_description, picture_title, reach_note, reason, waits,
    waits_far,
};
pub use entries::{ChoiceWord, Summary, antenna_note, choice_words, help, label, refusal, summary};
pub use law::{law_conditions, law_headline, law_lines, law_sources, law_text, no_rules};
pub use names::{
    arrangement, cable, cable_basis, change, connector, material, rate, role, rules,
    sensitivity_by, step, width,
};
pub use path::{PathLabels, clearance_rows, not_counted, path_headline, path_labels, path_text};
pub use receive::{receive_rows, receiver_rows};
pub use safe::{fall, safe_rows};
pub use why::{Reasons, why_aim, why_keep_away, why_margin, why_reach};
