//! Lines that belong to a design, kept among those of others: each begins with the
//! design's name.

/// Between the name and the line. A name is clean of it: it holds no control signs.
const PART: char = '\u{1f}';

/// The lines of a design.
pub(super) fn of<'a>(all: &'a str, name: &'a str) -> impl Iterator<Item = &'a str> {
    all.lines().filter_map(move |line| {
        let (owner, text) = line.split_once(PART)?;
        (owner == name).then_some(text)
    })
}

/// All lines, those of one design replaced: at its end, the latest last. No more than
/// `most` are kept in all.
pub(super) fn with(all: &str, name: &str, own: &[&str], most: usize) -> String {
    let others = all.lines().filter(|line| {
        let owner = line.split_once(PART).map(|(owner, _)| owner);
        owner.is_some_and(|owner| owner != name)
    });
    let mut lines: Vec<String> = others.map(str::to_owned).collect();
    for text in own {
        let mut line = String::from(name);
        line.push(PART);
        line.push_str(text);
        lines.push(line);
    }
    let from = lines.len().saturating_sub(most);
    lines.split_off(from).join("\n")
}

#[cfg(test)]
mod tests {
    use super::{of, with};

    #[test]
    fn each_design_has_its_own_lines() {
        let all = with("", "north", &["a", "b"], 9);
        let all = with(&all, "south", &["c"], 9);
        assert_eq!(of(&all, "north").collect::<Vec<_>>(), ["a", "b"]);
        let all = with(&all, "north", &[], 9);
        assert_eq!(of(&all, "north").count(), 0);
        assert_eq!(of(&all, "south").collect::<Vec<_>>(), ["c"]);
        assert_eq!(of(&with(&all, "west", &["d", "e"], 2), "south").count(), 0);
    }
}
