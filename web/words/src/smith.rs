//! Words of the Smith chart.

use tinwave_maker::entry::{format_decimal, format_frequency_exact};

/// Its heading.
#[must_use]
pub const fn title() -> &'static str {
    "The same on a Smith chart"
}

/// A resistance on the real axis.
#[must_use]
pub fn ohm(value: f64) -> String {
    let decimals = u8::from(value.fract() != 0.0);
    [&format_decimal(value, decimals), " Ω"].concat()
}

/// A circle of VSWR.
#[must_use]
pub fn circle(vswr: f64) -> String {
    let decimals = u8::from(vswr.fract() != 0.0);
    ["VSWR ", &format_decimal(vswr, decimals)].concat()
}

/// The line below the heading: how much of the chart, and what ring and dot are.
#[must_use]
pub fn note(is_inner_half: bool, low_khz: u32, high_khz: u32) -> String {
    [
        if is_inner_half {
            "Inner half. Ring: "
        } else {
            "Ring: "
        },
        &format_frequency_exact(low_khz),
        " MHz, dot: ",
        &format_frequency_exact(high_khz),
        " MHz.",
    ]
    .concat()
}

/// In place of the chart where nothing is computed.
#[must_use]
pub const fn nothing() -> &'static str {
    "The impedance is not computed for this design."
}
