//! Words of every chart.

/// Name of an axis of frequency.
#[must_use]
pub const fn frequency() -> &'static str {
    "Frequency"
}

/// A value that is larger than is worth telling.
#[must_use]
pub fn over(limit: &str) -> String {
    ["over ", limit].concat()
}

/// Head of a table's column.
#[must_use]
pub fn column(name: &str, unit: &str) -> String {
    if unit.is_empty() {
        name.to_owned()
    } else {
        [name, ", ", unit].concat()
    }
}

/// What stands in a table or readout where a curve has no value.
#[must_use]
pub const fn no_value() -> &'static str {
    "not computed"
}

/// The reading line's place in words: its place, and the value of each curve there.
#[must_use]
pub fn reading<'a>(place: &str, values: impl IntoIterator<Item = (&'a str, &'a str)>) -> String {
    let mut text = String::from(place);
    for (index, (name, value)) in values.into_iter().enumerate() {
        text.push_str(if index == 0 { ": " } else { "; " });
        if !name.is_empty() {
            text.push_str(name);
            text.push(' ');
        }
        text.push_str(value);
    }
    text
}

/// Name of the reading line of a chart.
#[must_use]
pub fn reading_line(title: &str, axis: &str) -> String {
    [axis, " to read off: ", title].concat()
}

/// In place of a grid without a curve.
#[must_use]
pub const fn nothing() -> &'static str {
    "There is nothing to draw yet."
}

/// Name of a table that says the same as a picture, or more, of that title.
#[must_use]
pub fn table_of(title: &str) -> String {
    [title, ", as a table"].concat()
}

/// Above the shaded stretch of a chart of frequency.
#[must_use]
pub const fn your_band() -> &'static str {
    "your band"
}
