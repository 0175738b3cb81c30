//! What the Link station says: everything from the data of
//! [`tinwave_maker::link_plan`].

mod aim;
mod answer;
mod budget;
mod entries;
mod law;
mod names;
mod path;
mod receive;
mod safe;
mod why;

pub use aim::{aim_lean, aim_polarisation, aim_rows, aim_wrong};
pub use answer::{
    FigureLabels, PartTitle, aim_note, aim_summary, aims_all_round, answer, direction,
    directions_note, does_not_reach, figure_labels, in_short, keep_away_note, keep_away_unknown,
    kept_mark, kept_unusable, level_names, margin_bracket, margin_note, out_of_range, part_titles,
    picture_description, picture_title, reach_axes, reach_mark, reach_note, reason, safe_summary,
    savings_summary, steps_summary, waits, waits_note,
};
pub use budget::budget_rows;
pub use entries::{ChoiceWord, Summary, antenna_note, choice_words, help, label, refusal, summary};
pub use law::{
    conditions_summary, conditions_title, law_conditions, law_headline, law_lines, law_sources,
    law_text, no_rules,
};
pub use names::{
    arrangement, axis_name, cable, cable_basis, cable_note, change, connector, connectors_of,
    material, rate, rate_groups, rate_note, remove_obstacle, remove_wall, role, rules,
    sensitivity_by, step, trees_note, wall_note, wall_of, width,
};
pub use path::{PathLabels, clearance_rows, not_counted, path_headline, path_labels, path_text};
pub use receive::{Received, received, receiver_rows};
pub use safe::{fall, safe_rows};
pub use why::{Reasons, why_aim, why_keep_away, why_margin, why_reach};
