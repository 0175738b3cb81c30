//! Obstacles as lines of text: distance and height.

use tinwave_core::radio_link::Obstacle;

use super::form::Form;
use super::typed::{self, METRES};

/// Most lines that are looked at.
const MOST: usize = 100;

/// Reads the lines; the message names the first that can't be read.
pub(super) fn read(form: &mut Form<'_>, name: &str, distance_m: f64) -> Vec<Obstacle> {
    let read = lines(form.choice(name), distance_m);
    form.or_wrong(name, read, Vec::new())
}

fn lines(text: &str, distance_m: f64) -> Result<Vec<Obstacle>, String> {
    let mut found = Vec::new();
    for (n, line) in text.lines().enumerate() {
        if line.trim().is_empty() {
            continue;
        }
        let number = (n + 1).to_string();
        let of_line = |why: String| ["Line ", &number, ": ", &why].concat();
        if found.len() == MOST {
            return Err(of_line("100 obstacles are the most.".to_owned()));
        }
        found.push(obstacle(line, distance_m).map_err(of_line)?);
    }
    Ok(found)
}

fn obstacle(line: &str, distance_m: f64) -> Result<Obstacle, String> {
    // A unit set off from its number belongs to it.
    let mut numbers: Vec<String> = Vec::new();
    for word in line
        .split([' ', '\t', ';', '\u{a0}'])
        .filter(|word| !word.is_empty())
    {
        let is_unit = word.starts_with(|c: char| c.is_ascii_alphabetic() || c == '"');
        match numbers.last_mut() {
            Some(last) if is_unit => last.push_str(word),
            _ => numbers.push(word.to_owned()),
        }
    }
    let [distance, height] = numbers.as_slice() else {
        return Err("write two numbers, distance and height, such as 120 8.".to_owned());
    };
    let inside = [0.01, (distance_m - 0.01).max(0.01)];
    let distance = typed::number(distance, METRES)?;
    if !(distance >= inside[0] && distance <= inside[1]) {
        let far = typed::with_unit(distance_m, METRES);
        let said = typed::with_unit(distance, METRES);
        return Err([
            &said,
            " is not between the ends. The distance is from this end, more than 0 and less than ",
            &far,
            ".",
        ]
        .concat());
    }
    let height = typed::number(height, METRES)?;
    Ok(Obstacle {
        distance_m: distance,
        height_m: typed::within(height, [-1000.0, 10_000.0], METRES)?,
    })
}

#[cfg(test)]
mod tests {
    use super::lines;

    #[test]
    fn lines_are_distance_and_height() {
        let read = lines("120 8\n\n 0.1 km;20 ft\n50 m  3 m", 300.0).unwrap_or_default();
        let pairs: Vec<_> = read.iter().map(|o| (o.distance_m, o.height_m)).collect();
        assert_eq!(pairs.first(), Some(&(120.0, 8.0)));
        // 20 ft of 0.3048 m.
        let (distance, height) = pairs.get(1).copied().unwrap_or_default();
        assert!((distance - 100.0).abs() < 1e-9 && (height - 6.096).abs() < 1e-9);
        assert_eq!(pairs.get(2), Some(&(50.0, 3.0)));
    }

    #[test]
    fn the_bad_line_is_named() {
        for (text, line) in [
            ("120 8\nabc", "Line 2: "),
            ("\n\n400 8", "Line 3: "),
            ("1 2 3", "Line 1: "),
        ] {
            let said = lines(text, 300.0).err().unwrap_or_default();
            assert!(said.starts_with(line), "{said}");
        }
    }
}
