//! What the Link station says: everything from the data of
//! [`tinwave_maker::link_plan`].

mod aim;
mod answer;
mod budget;
mod entries;
mod four_figures;
mod law;
mod names;
mod parts;
mod path;
mod receive;
mod safe;
mod why;

pub use aim::{aim_lean, aim_polarisation, aim_rows, aim_wrong};
pub use answer::{
    answer, directions_note, in_short, kept_unusable, level_names, margin_bracket, out_of_range,
    picture_description, picture_title, reason, waits,
};
pub use budget::budget_rows;
pub use entries::{ChoiceWord, Summary, antenna_note, choice_words, help, label, refusal, summary};
pub use four_figures::{
    FigureLabels, aim_note, aims_all_round, direction, does_not_reach, figure_labels,
    keep_away_note, keep_away_unknown, kept_mark, margin_note, reach_axes, reach_mark, reach_note,
    waits_note,
};
pub use law::{
    conditions_summary, conditions_title, law_conditions, law_headline, law_lines, law_sources,
    law_text, no_rules,
};
pub use names::{
    arrangement, axis_name, cable, cable_basis, cable_note, change, connector, connectors_of,
    material, rate, rate_groups, rate_note, remove_obstacle, remove_wall, role, rules,
    sensitivity_by, step, trees_note, wall_note, wall_of, width,
};
pub use parts::{
    PartTitle, aim_summary, part_titles, safe_summary, savings_summary, steps_summary,
};
pub use path::{PathLabels, clearance_rows, not_counted, path_headline, path_labels, path_text};
pub use receive::{Received, received, receiver_rows};
pub use safe::{fall, safe_rows};
pub use why::{Reasons, why_aim, why_keep_away, why_margin, why_reach};
