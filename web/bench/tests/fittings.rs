//! What printing wants computed.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;

use common::{DESIGN, answer};

fn lines(cap: &str, bracket: &str) -> String {
    let reply = answer("fittings", DESIGN, &[("cap", cap), ("bracket", bracket)]);
    reply.get("!lines").unwrap().to_owned()
}

fn numbers(lines: &str, key: &str) -> Vec<u32> {
    let line = lines.lines().find_map(|line| line.strip_prefix(key));
    line.unwrap_or_default()
        .split(' ')
        .flat_map(str::parse)
        .collect()
}

#[test]
fn the_wire_has_limits_on_both_sides_and_the_wider_hold_the_narrower() {
    let lines = lines("", "");
    let (narrow, wide) = (numbers(&lines, "within-1.5="), numbers(&lines, "within-2="));
    assert!(narrow[0] <= 28_400 && narrow[1] >= 28_400, "{lines}");
    assert!(wide[0] < narrow[0] && wide[1] > narrow[1], "{lines}");
    assert!(!lines.contains("cap=") && !lines.contains("bracket="));
}

#[test]
fn cap_and_bracket_are_computed_and_said() {
    let lines = lines("800 2250 300", "180000");
    assert!(lines.contains("cap=800 2250\n"), "{lines}");
    assert!(
        lines.contains("note=With the cap the worst VSWR"),
        "{lines}"
    );
    let bracket = numbers(&lines, "bracket=");
    assert_eq!(bracket[..3], [180_000, 4_100, 40_000]);
    assert!(bracket[3] > 1_000 && bracket[3] < 87_000, "{lines}");
}
