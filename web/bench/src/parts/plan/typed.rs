//! Numbers as a maker types them: a decimal or a fraction, and a unit.

use tinwave_web::entry::{EntryError, format_decimal, parse_degrees, plainly};

/// Units that a field takes, each with its worth in the field's own; the first is the
/// one that a bare number is in.
pub(super) type Units = &'static [(&'static str, f64)];

/// Distances and heights, m.
pub(super) const METRES: Units = &[
    ("m", 1.0),
    ("km", 1e3),
    ("ft", 0.3048),
    ("feet", 0.3048),
    ("mi", 1609.344),
    ("mile", 1609.344),
    ("miles", 1609.344),
    ("yd", 0.9144),
    ("cm", 0.01),
    ("mm", 1e-3),
    ("in", 0.0254),
];

/// Thicknesses, mm.
pub(super) const MILLIMETRES: Units = &[
    ("mm", 1.0),
    ("cm", 10.0),
    ("m", 1e3),
    ("in", 25.4),
    ("inch", 25.4),
    ("\"", 25.4),
    ("ft", 304.8),
];

/// Angles, degrees.
pub(super) const DEGREES: Units = &[("°", 1.0), ("deg", 1.0), ("degrees", 1.0)];

/// Gains and losses.
pub(super) const DECIBELS: Units = &[("dB", 1.0)];

/// Gains over an isotropic antenna.
pub(super) const DBI: Units = &[("dBi", 1.0), ("dB", 1.0)];

/// Levels that are not powers of a transmitter.
pub(super) const DBM: Units = &[("dBm", 1.0)];

/// Widths of channels, MHz.
pub(super) const MEGAHERTZ: Units = &[("MHz", 1.0), ("kHz", 1e-3), ("GHz", 1e3), ("Hz", 1e-6)];

/// Noise temperatures, K.
pub(super) const KELVIN: Units = &[("K", 1.0)];

/// Plain numbers.
pub(super) const COUNT: Units = &[("", 1.0)];

/// A number and what stood after it.
fn split(text: &str) -> Result<(f64, &str), String> {
    let text = text.trim();
    let begins_unit = |c: char| c.is_ascii_alphabetic() || matches!(c, '"' | '°' | 'µ' | 'μ' | '%');
    let at = text.find(begins_unit).unwrap_or(text.len());
    let (number, unit) = text.split_at(at);
    if number.is_empty() && !unit.is_empty() {
        let text = unit.chars().take(20).collect();
        return Err(EntryError::NoNumber { text }.to_string());
    }
    let value = match parse_degrees(number) {
        // What is written well is read once more, without its limits and its rounding.
        Ok(_) | Err(EntryError::TooLarge | EntryError::TooManyDigits) => value(number),
        Err(EntryError::UnknownUnit { unit, .. }) => {
            return Err(["“", &unit, "” does not belong in a number."].concat());
        }
        Err(other) => return Err(other.to_string()),
    };
    let value = value.ok_or_else(|| "This can’t be read as a number.".to_owned())?;
    Ok((value, unit.trim()))
}

/// A decimal, a fraction, or whole units and a fraction, with a sign.
fn value(text: &str) -> Option<f64> {
    let plain = plainly(text).replace(',', ".");
    let plain = plain.trim();
    let (sign, rest) = match plain.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim()),
        None => (1.0, plain.strip_prefix('+').unwrap_or(plain).trim()),
    };
    let Some((before, below)) = rest.split_once('/') else {
        return Some(sign * decimal(rest)?);
    };
    let below = decimal(below.trim()).filter(|below| *below > 0.0)?;
    let before = before.trim();
    let (units, above) = match before.rsplit_once([' ', '-']) {
        Some((units, above)) => (
            decimal(units.trim_end_matches([' ', '-']))?,
            decimal(above)?,
        ),
        None => (0.0, decimal(before)?),
    };
    Some(sign * (units + above / below))
}

/// Digits with one decimal sign at most.
fn decimal(text: &str) -> Option<f64> {
    let is_plain = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    is_plain.then(|| text.parse().ok()).flatten()
}

/// Reads a number in the field's own unit.
pub(super) fn number(text: &str, units: Units) -> Result<f64, String> {
    let (value, unit) = split(text)?;
    if unit.is_empty() {
        return Ok(value);
    }
    let found = units
        .iter()
        .find(|(known, _)| known.eq_ignore_ascii_case(unit));
    found
        .map(|(_, worth)| value * worth)
        .ok_or_else(|| unknown(unit, units))
}

/// Reads a transmitter's power in dBm; `mW` and `W` are turned into it.
pub(super) fn power_dbm(text: &str) -> Result<f64, String> {
    let (value, unit) = split(text)?;
    let milliwatts = match unit {
        "" => return Ok(value),
        _ if unit.eq_ignore_ascii_case("dbm") => return Ok(value),
        _ if unit.eq_ignore_ascii_case("mw") => value,
        _ if unit.eq_ignore_ascii_case("w") => value * 1e3,
        _ => return Err(unknown(unit, &[("dBm", 1.0), ("mW", 1.0), ("W", 1.0)])),
    };
    if milliwatts > 0.0 {
        Ok(10.0 * milliwatts.log10())
    } else {
        Err("A power must be above zero, such as 63 mW.".to_owned())
    }
}

fn unknown(unit: &str, units: Units) -> String {
    let unit: String = unit.chars().take(20).collect();
    let mut text = ["“", &unit, "” is no unit that is known here. "].concat();
    let names: Vec<&str> = units.iter().map(|known| known.0).collect();
    text.push_str(if names == [""] {
        "This is a plain number."
    } else {
        "Write one of these: "
    });
    if names != [""] {
        text.push_str(&names.join(", "));
        text.push('.');
    }
    text
}

/// A number as short as it can be, to three decimals.
pub(super) fn short(value: f64) -> String {
    let text = format_decimal(value, 3);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// A number with the field's unit behind it.
pub(super) fn with_unit(value: f64, units: Units) -> String {
    let unit = units.first().map_or("", |unit| unit.0);
    let gap = if matches!(unit, "" | "°") { "" } else { " " };
    [&short(value), gap, unit].concat()
}

/// Whether a value lies in its range; else what would be right.
pub(super) fn within(value: f64, range: [f64; 2], units: Units) -> Result<f64, String> {
    let [low, high] = range;
    if value >= low && value <= high {
        return Ok(value);
    }
    let which = if value < low { "small" } else { "large" };
    Err([
        &with_unit(value, units),
        " is too ",
        which,
        ". It can be ",
        &short(low),
        " to ",
        &with_unit(high, units),
        ".",
    ]
    .concat())
}

#[cfg(test)]
mod tests {
    use super::{DECIBELS, METRES, MILLIMETRES, number, power_dbm, within};

    #[test]
    fn units_are_turned_into_the_fields_own() {
        assert_eq!(number("1,5 km", METRES), Ok(1500.0));
        assert_eq!(number("1000 ft", METRES), Ok(304.8));
        assert_eq!(number("4 1/2 in", MILLIMETRES), Ok(114.3));
        assert_eq!(number("−82", DECIBELS), Ok(-82.0));
        // 100 mW and 1 W are 20 and 30 dBm by definition.
        let mw = power_dbm("100 mW").unwrap_or(f64::NAN);
        assert!((mw - 20.0).abs() < 1e-9);
        assert_eq!(power_dbm("1W"), Ok(30.0));
    }

    #[test]
    fn no_digit_is_rounded_away_and_no_number_is_too_long() {
        assert_eq!(number("0.0001 km", METRES), Ok(0.0001 * 1e3));
        assert_eq!(number("12.34567", METRES), Ok(12.34567));
        assert_eq!(number("36000000", METRES), Ok(3.6e7));
        assert_eq!(number("4½ in", MILLIMETRES), Ok(114.3));
        assert_eq!(number("-3-1/4", DECIBELS), Ok(-3.25));
        assert_eq!(number("1/3", DECIBELS), Ok(1.0 / 3.0));
        assert_eq!(number(",5", DECIBELS), Ok(0.5));
    }

    #[test]
    fn what_is_wrong_is_said() {
        for bad in ["", "abc", "5 parsec", "1.2.3", "<b>", "0 mW"] {
            assert!(power_dbm(bad).is_err(), "{bad}");
        }
        let said = within(400.0, [0.0, 100.0], METRES)
            .err()
            .unwrap_or_default();
        assert_eq!(said, "400 m is too large. It can be 0 to 100 m.");
    }
}
