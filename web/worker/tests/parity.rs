//! Native and WebAssembly agree bit for bit: what the worker tells of a can is held
//! against digests in both. The browser's half is `tests/browser/parity.test.mjs`.
#![allow(clippy::expect_used, reason = "a test may panic")]

use tinwave_maker::link;
use tinwave_protocol::cuts::BestCuts;
use tinwave_protocol::outside::SolveOutside;
use tinwave_protocol::{Question, Tell, Told, to_bytes};
use tinwave_worker::work;

/// Digest of bytes: FNV-1a of 64 bits (G. Fowler, L. C. Noll, K.-P. Vo; IETF
/// draft-eastlake-fnv).
fn digest(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

/// The last message that the worker tells of a question, as the page's first job.
fn told(question: impl Question) -> Vec<u8> {
    let answer = work::begin(question.into_job()).run();
    let told = Told::Done(answer.expect("new work has an end"));
    to_bytes(&Tell { id: 1, told })
}

#[test]
fn the_worker_tells_the_same_everywhere() {
    let mut found = String::new();
    for line in include_str!("digests.txt").lines() {
        let (name, _) = line.rsplit_once(' ').expect("a digest");
        let (kind, fragment) = name.split_once(' ').expect("a kind and a link");
        let design = link::decode(fragment).expect("a link").work.design;
        let told = match kind {
            "outside" => told(SolveOutside { design }),
            // With the outside, which the line above has left with the worker.
            "cuts" => told(BestCuts { design }),
            other => unreachable!("no such kind: {other}"),
        };
        found.push_str(&format!("{name} {:016x}\n", digest(&told)));
    }
    if std::env::var_os("TINWAVE_RENEW").is_some() {
        let file = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/digests.txt");
        std::fs::write(file, &found).expect("writable");
    }
    assert_eq!(found, include_str!("digests.txt"));
}
