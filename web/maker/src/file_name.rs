//! Names of saved files: they carry the design's name.

/// What files of a design without a name begin with.
const UNNAMED: &str = "tinwave";

/// A file's name: the design's and the ending. Signs that a folder may not take become
/// hyphens.
#[must_use]
pub fn file_name(design: &str, ending: &str) -> String {
    let mut stem = String::new();
    for sign in design.chars() {
        if sign.is_alphanumeric() {
            stem.push(sign);
        } else if !stem.is_empty() && !stem.ends_with('-') {
            stem.push('-');
        }
    }
    let stem = stem.trim_end_matches('-');
    let stem = if stem.is_empty() { UNNAMED } else { stem };
    format!("{stem}.{ending}")
}

#[cfg(test)]
mod tests {
    use super::file_name;

    #[test]
    fn a_file_carries_the_designs_name() {
        assert_eq!(
            file_name("Orchard gate, north", "pdf"),
            "Orchard-gate-north.pdf"
        );
        assert_eq!(file_name("日本 é", "dxf"), "日本-é.dxf");
        assert_eq!(file_name("../..", "svg"), "tinwave.svg");
        assert_eq!(file_name("", "s1p"), "tinwave.s1p");
    }
}
