//! Native and WebAssembly agree bit for bit: both are held against one digest of
//! the solved outside of a can. The browser's half is `tests/browser/parity.test.mjs`.
#![allow(clippy::expect_used, reason = "a test may panic")]

use tinwave_core::outside::OutsideSteps;
use tinwave_maker::link;

/// Digest of every number's bits: FNV-1a of 64 bits (G. Fowler, L. C. Noll,
/// K.-P. Vo; IETF draft-eastlake-fnv), the bytes from the lowest.
fn digest(numbers: &[f64]) -> u64 {
    let bytes = numbers
        .iter()
        .flat_map(|number| number.to_bits().to_le_bytes());
    bytes.fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

#[test]
fn the_solved_outside_is_the_same_everywhere() {
    let mut found = String::new();
    for line in include_str!("outside_digests.txt").lines() {
        let Some((fragment, _)) = line.split_once(' ') else {
            continue;
        };
        let design = link::decode(fragment).expect("a link").work.design;
        let steps = OutsideSteps::of_design(&design).expect("in range");
        let mut steps = steps.expect("not absorbing");
        while steps.step() {}
        let numbers = steps.finish().expect("all steps taken").to_numbers();
        let digits = digest(&numbers);
        found.push_str(&format!("{fragment} {digits:016x}\n"));
    }
    if std::env::var_os("TINWAVE_RENEW").is_some() {
        let file = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/outside_digests.txt");
        std::fs::write(file, &found).expect("writable");
    }
    assert_eq!(found, include_str!("outside_digests.txt"));
}
