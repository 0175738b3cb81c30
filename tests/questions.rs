//! Questions to the worker as the bytes that travel, for the scenarios that talk to it.

use std::fmt::Write;
use std::fs;
use tinwave::workspace_folder;
use tinwave_maker::link;
use tinwave_protocol::cuts::BestCuts;
use tinwave_protocol::outside::SolveOutside;
use tinwave_protocol::{Ask, Question, to_bytes};

/// A line for each line of the digests that the host's half is held against: the kind
/// of question, its design's link, its bytes in hexadecimal, the digest.
///
/// # Errors
/// In words, when the file can't be read or has a line that is none.
pub(crate) fn lines() -> Result<String, String> {
    let file = workspace_folder().join("web/worker/tests/digests.txt");
    let text = fs::read_to_string(&file).map_err(|e| format!("{}: {e}", file.display()))?;
    let mut lines = String::new();
    for line in text.lines() {
        let question = question(line).ok_or_else(|| format!("not a question: {line}"))?;
        let (name, digest) = line.rsplit_once(' ').unwrap_or_default();
        lines.push_str(&format!("{name} {} {digest}\n", hexadecimal(&question)));
    }
    Ok(lines)
}

/// The bytes by which the page asks, as its first job.
fn question(line: &str) -> Option<Vec<u8>> {
    let mut words = line.split(' ');
    let kind = words.next()?;
    let design = link::decode(words.next()?).ok()?.work.design;
    let job = match kind {
        "outside" => SolveOutside { design }.into_job(),
        "cuts" => BestCuts { design }.into_job(),
        _ => return None,
    };
    Some(to_bytes(&Ask::Begin {
        id: 1,
        job: Box::new(job),
    }))
}

/// The bytes by which the page stops its first job, in hexadecimal.
pub(crate) fn stop() -> String {
    hexadecimal(&to_bytes(&Ask::Stop { id: 1 }))
}

fn hexadecimal(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut hex, byte| {
        // Writing to a String cannot fail.
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}
