//! What the Feed station says.

use tinwave_core::complex::Complex;
use tinwave_core::design::Band;
use tinwave_core::dimension::Dimension;
use tinwave_core::match_band::{FrequencyRange, MatchSummary, SweepPoint};
use tinwave_core::reflection::{magnitude_of_vswr, return_loss_db};
use tinwave_maker::entry::{
    LengthUnit, format_decimal, format_frequency, format_length, format_length_number,
    format_trimmed,
};
use tinwave_maker::feed::Opening;

use crate::section::fine_length;

/// A cut: wire inside the can and distance from the back wall, micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CutSaid {
    /// Wire inside the can.
    pub length_um: u32,
    /// From the back wall.
    pub distance_um: u32,
}

/// A VSWR: two decimals, above 10 only that it is.
#[must_use]
pub fn vswr(value: f64) -> String {
    if value > 10.0 {
        crate::chart::over("10")
    } else {
        format_decimal(value, 2)
    }
}

/// The answer.
#[must_use]
pub fn answer(cut: CutSaid, unit: LengthUnit) -> String {
    crate::section::tip(cut.length_um, cut.distance_um, unit)
}

/// The answer where there is no cut.
#[must_use]
pub const fn no_cut() -> &'static str {
    "No cut for this can"
}

/// Why there is none.
#[must_use]
pub const fn no_cut_reason() -> &'static str {
    "A cut can only be given for a can that carries one wave over the whole band. Can says what would do."
}

/// Below the answer, while the cut follows the best.
#[must_use]
pub const fn follows_reason() -> &'static str {
    "The best cut for this can, wire and band. Move the tip, or type, and it is yours."
}

/// Below the answer, while the best of another can is searched for.
#[must_use]
pub const fn searching_reason() -> &'static str {
    "The best cut is being searched for; until it is found the one before stands here."
}

/// Below the answer, for a cut that was made.
#[must_use]
pub fn as_cut_reason(
    vswr_as_cut: Option<f64>,
    best: Option<(CutSaid, f64)>,
    unit: LengthUnit,
) -> String {
    let mut text = match vswr_as_cut {
        Some(value) => ["As cut: VSWR ", &vswr(value), " at worst."].concat(),
        None => "As cut: nothing can be computed for it.".to_owned(),
    };
    if let Some((cut, value)) = best {
        text.push_str(" The best would be ");
        text.push_str(&pair(cut, unit));
        text.push_str(", VSWR ");
        text.push_str(&vswr(value));
        text.push('.');
    }
    text
}

/// Below the answer, for a cut that was made and is the best.
#[must_use]
pub fn as_cut_is_best(value: f64) -> String {
    [
        "As cut, and the best for this can: VSWR ",
        &vswr(value),
        " at worst.",
    ]
    .concat()
}

/// A cut in short, with its unit: `28.4 at 45.0 mm`.
#[must_use]
pub fn pair(cut: CutSaid, unit: LengthUnit) -> String {
    [&pair_bare(cut, unit), " ", unit.symbol()].concat()
}

/// A cut in short: `28.4 at 45.0`.
#[must_use]
pub fn pair_bare(cut: CutSaid, unit: LengthUnit) -> String {
    [
        &format_length_number(cut.length_um, unit),
        " at ",
        &format_length_number(cut.distance_um, unit),
    ]
    .concat()
}

/// Heading of the cut's entries.
#[must_use]
pub const fn the_cut() -> &'static str {
    "The cut"
}

/// State of a cut that follows the best.
#[must_use]
pub const fn follows() -> &'static str {
    "Follows the best"
}

/// What that means.
#[must_use]
pub const fn follows_means() -> &'static str {
    "Changes with can, wire and band"
}

/// State while the best is searched for.
#[must_use]
pub fn searching(done: f32) -> String {
    [
        "Searching for the best cut: ",
        &format_decimal(f64::from(done) * 100.0, 0),
        " %",
    ]
    .concat()
}

/// State where the search could not be done.
#[must_use]
pub const fn search_refused() -> &'static str {
    "The search could not be fetched. Once the page is back on the network, any change tries again."
}

/// State where the search was stopped, or has not begun.
#[must_use]
pub const fn not_searched() -> &'static str {
    "The best cut is not searched for yet"
}

/// State of a cut that was made.
#[must_use]
pub fn as_cut(cut: CutSaid, unit: LengthUnit) -> String {
    ["As cut, ", &pair_bare(cut, unit)].concat()
}

/// What that means.
#[must_use]
pub const fn as_cut_means() -> &'static str {
    "Stays put when can, wire or band change"
}

/// On the button that makes a cut follow no more.
#[must_use]
pub const fn i_have_cut_it() -> &'static str {
    "I have cut it"
}

/// On the button that makes it follow again.
#[must_use]
pub const fn follow_again() -> &'static str {
    "Follow again"
}

/// On the button that ends the search.
#[must_use]
pub const fn stop() -> &'static str {
    "Stop"
}

/// Head of the column of a cut that was made.
#[must_use]
pub const fn column_as_cut() -> &'static str {
    "As cut"
}

/// Head of the column of the best.
#[must_use]
pub const fn column_best() -> &'static str {
    "The best"
}

/// A VSWR with its name, at worst.
#[must_use]
pub fn vswr_named(value: f64) -> String {
    ["VSWR ", &vswr(value)].concat()
}

/// Label of the wire's length.
#[must_use]
pub const fn wire_inside() -> &'static str {
    "Wire inside the can"
}

/// Its help.
#[must_use]
pub const fn wire_inside_help() -> &'static str {
    "From the inner wall to the tip, cut off flat."
}

/// Label of its distance.
#[must_use]
pub const fn from_back_wall() -> &'static str {
    "From the back wall"
}

/// Its help.
#[must_use]
pub const fn from_back_wall_help() -> &'static str {
    "From the inside of the back wall to the middle of the wire."
}

/// Heading of wire and connector.
#[must_use]
pub const fn wire_and_connector() -> &'static str {
    "Wire and connector"
}

/// Label of the wire's thickness.
#[must_use]
pub const fn wire_bare() -> &'static str {
    "Wire, bare"
}

/// Its help.
#[must_use]
pub const fn wire_bare_help() -> &'static str {
    "Across the metal, without its insulation. A gauge below will do."
}

/// Label of the list of gauges.
#[must_use]
pub const fn gauge() -> &'static str {
    "By gauge"
}

/// In that list, for a wire of no gauge.
#[must_use]
pub const fn no_gauge() -> &'static str {
    "of no gauge"
}

/// Label of the connector.
#[must_use]
pub const fn connector() -> &'static str {
    "Connector"
}

/// Label of its fixing.
#[must_use]
pub const fn fixed_by() -> &'static str {
    "Fixed by"
}

/// Headline of what speaks against a connector.
#[must_use]
pub const fn connector_warning() -> &'static str {
    "This connector does not suit"
}

/// The fold of hole, sleeve and capacitance.
#[must_use]
pub const fn hole_sleeve_stray() -> &'static str {
    "Hole, sleeve, stray capacitance"
}

/// What is drilled and what is computed with, micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HoleSaid {
    /// The drill for the hole in the wall; `None` where it is not known.
    pub drill_um: Option<u32>,
    /// The opening in the computation.
    pub opening_um: u32,
    /// Where that comes from.
    pub opening: Opening,
    /// Impedance of the cable.
    pub reference_milliohm: u32,
}

/// Both holes in short, for the fold's line.
#[must_use]
pub fn hole_line(hole: HoleSaid, unit: LengthUnit) -> String {
    let opening = [
        "opening in the computation ",
        &fine_length(hole.opening_um, unit),
    ]
    .concat();
    match hole.drill_um {
        Some(um) => ["drill ", &fine_length(um, unit), "; ", &opening].concat(),
        None => opening,
    }
}

/// A sentence that reconciles both.
#[must_use]
pub fn hole_sentence(hole: HoleSaid, unit: LengthUnit) -> String {
    let opening = fine_length(hole.opening_um, unit);
    let ohm = format_trimmed(i64::from(hole.reference_milliohm), 3);
    let from = match hole.opening {
        Opening::Line => [" (with the wire it makes a ", &ohm, " Ω line in air)"].concat(),
        Opening::Connector => " (the connector’s insulator)".to_owned(),
        Opening::Typed => " (typed)".to_owned(),
    };
    let computed = ["the field is computed with an opening of ", &opening, &from].concat();
    match hole.drill_um {
        None => [
            "Drill what your connector needs; ",
            &computed,
            ". In a wall this thin the difference hardly moves the match.",
        ]
        .concat(),
        Some(um) if um == hole.opening_um => {
            ["Drill ", &fine_length(um, unit), "; ", &computed, ", the same."].concat()
        }
        Some(um) => [
            "Drill ",
            &fine_length(um, unit),
            " for the connector; ",
            &computed,
            ". In a wall this thin the difference hardly moves the match: ‘What each millimetre matters’ shows how much.",
        ]
        .concat(),
    }
}

/// Label of where the opening comes from.
#[must_use]
pub const fn opening() -> &'static str {
    "Opening in the computation"
}

/// A way to have it.
#[must_use]
pub fn opening_by(opening: Opening, reference_milliohm: u32) -> String {
    match opening {
        Opening::Line => {
            let ohm = format_trimmed(i64::from(reference_milliohm), 3);
            [&ohm, " Ω line"].concat()
        }
        Opening::Connector => "the connector’s".to_owned(),
        Opening::Typed => "typed".to_owned(),
    }
}

/// Help of a typed opening.
#[must_use]
pub const fn opening_help() -> &'static str {
    "Where the connector’s insulator meets the inside of the can."
}

/// Label of a sleeve.
#[must_use]
pub const fn sleeve() -> &'static str {
    "The wire keeps a sleeve"
}

/// Label of the sleeve's width.
#[must_use]
pub const fn sleeve_outside() -> &'static str {
    "Sleeve, outside"
}

/// Label of what it is made of.
#[must_use]
pub const fn sleeve_permittivity() -> &'static str {
    "Sleeve, permittivity"
}

/// Help of that.
#[must_use]
pub const fn sleeve_permittivity_help() -> &'static str {
    "About 2.1 for PTFE, 2.3 for polyethylene, 2.4 to 3 for shrink sleeve."
}

/// Label of the stray capacitance.
#[must_use]
pub const fn stray() -> &'static str {
    "Stray capacitance at the hole"
}

/// Help of that.
#[must_use]
pub const fn stray_help() -> &'static str {
    "Of a solder blob or an insulator at the wall. Leave 0 if not known."
}

/// Label of the cable's impedance.
#[must_use]
pub const fn cable() -> &'static str {
    "Cable"
}

/// Help of that.
#[must_use]
pub const fn cable_help() -> &'static str {
    "50 ohm for radio gear, 75 ohm for television cable."
}

/// Label of the first figure.
#[must_use]
pub const fn worst_label() -> &'static str {
    "VSWR, at worst"
}

/// Where the worst is: an edge of the band never past what it is.
#[must_use]
pub fn at_frequency(khz: u32, band: Band) -> String {
    ["at ", &frequency_in(khz, band)].concat()
}

/// A frequency in whole megahertz; an edge of the band never past what it is.
#[must_use]
pub fn frequency_in(khz: u32, band: Band) -> String {
    if khz == band.low_khz || khz == band.high_khz {
        [&format_trimmed(i64::from(khz), 3), " MHz"].concat()
    } else {
        format_frequency(khz)
    }
}

/// Label of the second figure.
#[must_use]
pub const fn comes_back_label() -> &'static str {
    "Comes back"
}

/// Share of the power that comes back at a VSWR, per cent.
#[must_use]
pub fn comes_back(value: f64) -> String {
    let share = magnitude_of_vswr(value.max(1.0)).powi(2) * 100.0;
    let decimals = if share < 9.95 { 1 } else { 0 };
    format_decimal(share, decimals)
}

/// Below that.
#[must_use]
pub const fn comes_back_note() -> &'static str {
    "of the power, at worst"
}

/// Why that is so: (how, how sure).
#[must_use]
pub const fn comes_back_why() -> (&'static str, &'static str) {
    (
        "The square of the reflection |Γ| = (S − 1) / (S + 1) at the worst VSWR S over the band. What comes back does not go out; a radio may turn its power down because of it.",
        "As sure as the VSWR.",
    )
}

/// Label of the third figure.
#[must_use]
pub const fn length_leeway_label() -> &'static str {
    "Length, leeway"
}

/// Label of the fourth figure.
#[must_use]
pub const fn distance_leeway_label() -> &'static str {
    "Distance, leeway"
}

/// How far a dimension may be off: `−1.9 +2.5`, without the unit. A way whose end was
/// not found is said to be more.
#[must_use]
pub fn leeway(less: (u32, bool), more: (u32, bool), unit: LengthUnit) -> String {
    let way = |sign: &str, (um, at_least): (u32, bool)| {
        let over = if at_least { "over " } else { "" };
        [over, sign, &format_length_number(um, unit)].concat()
    };
    [&way("−", less), " ", &way("+", more)].concat()
}

/// Below that.
#[must_use]
pub fn leeway_note(limit: f64) -> String {
    [
        "before VSWR passes ",
        &format_trimmed((limit * 10.0).round() as i64, 1),
    ]
    .concat()
}

/// In place of a leeway where there is none.
#[must_use]
pub const fn no_leeway() -> &'static str {
    "none"
}

/// Below that.
#[must_use]
pub const fn no_leeway_note() -> &'static str {
    "VSWR is over 2 already"
}

/// What a figure waits for.
#[must_use]
pub const fn waits_for_computation() -> &'static str {
    "being worked out"
}

/// What a figure waits for where nothing runs.
#[must_use]
pub const fn waits_for_touch() -> &'static str {
    "worked out at the first touch"
}

/// Below figures of the can before.
#[must_use]
pub const fn of_the_cut_before() -> &'static str {
    "of the cut before; searching"
}

/// Why a leeway is what it is: (how, how sure).
#[must_use]
pub const fn leeway_why() -> (&'static str, &'static str) {
    (
        "The match over the band, computed anew with this one dimension shorter and longer, up to where the worst VSWR passes the limit; all else stays as drawn.",
        "Of one dimension alone: two that are off at once add up. Measure lists what is likely to be off in all.",
    )
}

/// Heading of the match chart.
#[must_use]
pub const fn match_title() -> &'static str {
    "Match over the band"
}

/// What stands in place of an empty chart.
#[must_use]
pub const fn no_match() -> &'static str {
    "The match is not computed for this design; the findings say why."
}

/// The line below the heading: what is shown, and where VSWR stays under 1.5. A range
/// that ends only because the chart does says so.
#[must_use]
pub fn match_note(summary: Option<&MatchSummary>, chart_khz: (u32, u32)) -> String {
    let shown = "VSWR, lower is better.";
    let Some(summary) = summary else {
        return shown.to_owned();
    };
    let under = match (summary.vswr_1_5_khz, summary.vswr_2_khz) {
        (Some(range), _) => range_under("1.5", range, chart_khz),
        (None, Some(range)) => range_under("2", range, chart_khz),
        (None, None) => "Over 2 at the band’s middle.".to_owned(),
    };
    [shown, " ", &under].concat()
}

fn range_under(limit: &str, (low, high): FrequencyRange, chart: (u32, u32)) -> String {
    let whole = |khz: u32| format_decimal(f64::from(khz) / 1e3, 0);
    let range = [&whole(low), " to ", &whole(high), " MHz"].concat();
    match (low <= chart.0, high >= chart.1) {
        (true, true) => ["Under ", limit, " over the whole chart, ", &range, "."].concat(),
        (true, false) => [
            "Under ",
            limit,
            " from ",
            &whole(low),
            ", the chart’s end, to ",
            &whole(high),
            " MHz.",
        ]
        .concat(),
        (false, true) => ["Under ", limit, " from ", &range, ", the chart’s end."].concat(),
        (false, false) => ["Under ", limit, " from ", &range, "."].concat(),
    }
}

/// Name of the best cut's curve.
#[must_use]
pub const fn curve_best() -> &'static str {
    "best"
}

/// Name of a measured curve.
#[must_use]
pub const fn curve_measured() -> &'static str {
    "measured"
}

/// An impedance, ohm; its spaces do not break.
#[must_use]
pub fn impedance(ohm: Complex) -> String {
    let sign = if ohm.im < 0.0 {
        "\u{a0}−\u{a0}j"
    } else {
        "\u{a0}+\u{a0}j"
    };
    [
        &format_decimal(ohm.re, 0),
        sign,
        &format_decimal(ohm.im.abs(), 0),
        "\u{a0}Ω",
    ]
    .concat()
}

/// More of a point of the match: return loss and impedance at the wall.
#[must_use]
pub fn point(point: &SweepPoint) -> String {
    let Some(at) = point.at else {
        return String::new();
    };
    let loss = return_loss_db(at.reflection.abs());
    let loss = if loss > 40.0 {
        crate::chart::over("40")
    } else {
        format_decimal(loss, 1)
    };
    [
        "return loss ",
        &loss,
        "\u{a0}dB, ",
        &impedance(at.impedance_ohm),
    ]
    .concat()
}

/// The Smith chart in words: impedance at the band's edges and middle.
#[must_use]
pub fn locus(points: [Option<(u32, Complex)>; 3]) -> String {
    let [Some(low), Some(centre), Some(high)] = points else {
        return "The impedance is not computed over the whole band.".to_owned();
    };
    let say = |(khz, ohm): (u32, Complex)| {
        [
            &impedance(ohm),
            " at ",
            &format_trimmed(i64::from(khz), 3),
            " MHz",
        ]
        .concat()
    };
    [
        "Impedance at the wall: ",
        &say(low),
        ", ",
        &say(centre),
        ", ",
        &say(high),
        ".",
    ]
    .concat()
}

/// Headline of the rule of thumb.
#[must_use]
pub const fn rule_headline() -> &'static str {
    "The quarter-wave rule"
}

/// The rule of thumb beside the cut.
#[must_use]
pub fn rule(cut: CutSaid, worst_vswr: Option<f64>, unit: LengthUnit) -> String {
    let gives = ["A quarter of the wavelength for the wire, a quarter of the can’s for the distance: it would give ", &pair(cut, unit)].concat();
    match worst_vswr {
        Some(value) => [&gives, ", VSWR ", &vswr(value), "."].concat(),
        None => [&gives, ", which can’t be computed in this can."].concat(),
    }
}

/// Where it comes from.
#[must_use]
pub const fn rule_source() -> &'static str {
    "Common practice, no source. It leaves out the wire’s diameter and the mouth."
}

/// Heading of the bars.
#[must_use]
pub const fn matters_title() -> &'static str {
    "What each millimetre matters"
}

/// The line below it.
#[must_use]
pub fn matters_note(as_drawn: f64) -> String {
    [
        "From ",
        &vswr(as_drawn),
        " as drawn to the worst VSWR in the band if one thing alone is off by that much.",
    ]
    .concat()
}

/// A dimension.
#[must_use]
pub const fn dimension(dimension: Dimension) -> &'static str {
    crate::measure::dimension_head(dimension)
}

/// By how much it is off.
#[must_use]
pub fn tolerance(dimension: Dimension, change: f64, unit: LengthUnit) -> String {
    match dimension {
        Dimension::ShuntCapacitance => ["±", &format_decimal(change * 1e12, 2), " pF"].concat(),
        _ => {
            // A tolerance of a can is at most some millimetres.
            let um = (change * 1e6).round() as u32;
            ["±", &fine_length(um, unit)].concat()
        }
    }
}

/// In place of a bar where the can would be impossible.
#[must_use]
pub const fn impossible() -> &'static str {
    "not buildable"
}

/// A bar in words.
#[must_use]
pub fn matter(name: &str, tolerance: &str, worst: &str) -> String {
    [name, " ", tolerance, ": VSWR ", worst].concat()
}

/// The first figure of the bars' axis.
#[must_use]
pub fn vswr_tick(figure: &str) -> String {
    ["VSWR ", figure].concat()
}

/// Where the bars' tolerances come from.
#[must_use]
pub const fn matters_source() -> &'static str {
    "What a careful maker with hand tools is off by: common practice, no source."
}

/// The cut in one sentence, for the live region.
#[must_use]
pub fn told(cut: CutSaid, worst_vswr: f64, unit: LengthUnit) -> String {
    [
        &format_length(cut.length_um, unit),
        " of wire, ",
        &format_length(cut.distance_um, unit),
        " from the back wall: VSWR ",
        &vswr(worst_vswr),
        " at worst.",
    ]
    .concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    const BAND: Band = Band {
        low_khz: 2_400_000,
        high_khz: 2_483_500,
    };

    #[test]
    fn a_range_that_only_the_chart_ends_says_so() {
        let summary = |range| MatchSummary {
            worst_vswr_in_band: 1.06,
            worst_khz: 2_472_000,
            vswr_1_5_khz: range,
            vswr_2_khz: Some((2_300_000, 2_566_000)),
        };
        let chart = (2_318_000, 2_566_000);
        let said = |range| match_note(Some(&summary(range)), chart);
        assert!(
            said(Some((2_329_400, 2_566_000))).contains("from 2329 to 2566 MHz, the chart’s end")
        );
        assert!(!said(Some((2_329_400, 2_500_000))).contains("chart"));
        assert!(said(Some((2_318_000, 2_566_000))).contains("whole chart"));
        assert!(said(None).contains("Under 2"));
    }

    #[test]
    fn a_bands_edge_is_never_shown_past_what_it_is() {
        assert_eq!(at_frequency(2_483_500, BAND), "at 2483.5 MHz");
        assert_eq!(at_frequency(2_471_600, BAND), "at 2472 MHz");
    }

    /// VSWR 2 sends back a ninth of the power, 1.5 a twenty-fifth.
    #[test]
    fn what_comes_back_is_the_square_of_the_reflection() {
        assert_eq!(comes_back(2.0), "11");
        assert_eq!(comes_back(1.5), "4.0");
        assert_eq!(comes_back(1.0), "0.0");
    }

    #[test]
    fn leeways_have_signs_and_say_where_no_end_was_found() {
        let mm = LengthUnit::Millimetre;
        assert_eq!(leeway((1_900, false), (2_500, false), mm), "−1.9 +2.5");
        assert!(leeway((1_900, false), (6_000, true), mm).contains("over +6.0"));
        assert_eq!(leeway_note(1.5), "before VSWR passes 1.5");
        assert_eq!(leeway_note(2.0), "before VSWR passes 2");
    }

    #[test]
    fn both_holes_have_their_own_word() {
        let hole = HoleSaid {
            drill_um: Some(4_100),
            opening_um: 2_970,
            opening: Opening::Line,
            reference_milliohm: 50_000,
        };
        let mm = LengthUnit::Millimetre;
        assert_eq!(
            hole_line(hole, mm),
            "drill 4.1 mm; opening in the computation 2.97 mm"
        );
        let said = hole_sentence(hole, mm);
        assert!(said.contains("4.1 mm") && said.contains("2.97 mm") && said.contains("50 Ω"));
    }
}
