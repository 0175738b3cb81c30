//! Three designs in every kind of file, byte for byte as they were looked at.
//!
//! After a change that is meant, `TINWAVE_RENEW=1 cargo test -p tinwave-print`
//! writes them anew: look at what changed.

mod common;

use tinwave_print::wrap_strip::WrapStrip;
use tinwave_print::{PrintJob, draw_sheets, write_file};
use tinwave_protocol::print::FileKind;

const KINDS: [FileKind; 3] = [FileKind::Pdf, FileKind::Svg, FileKind::Dxf];

/// How many sheets, how they lie, once round, mass and balance point.
fn facts(job: &PrintJob) -> Result<Vec<u8>, String> {
    let drawn = draw_sheets(job).map_err(|error| error.to_string())?;
    let first = drawn.sheets.first().ok_or("no sheet")?;
    let balance = drawn.balance.ok_or("no balance")?;
    let facts = [
        ("sheets", drawn.sheets.len().to_string()),
        (
            "landscape",
            u8::from(first.width_um > first.height_um).to_string(),
        ),
        ("circumference_um", WrapStrip::new(job).around.to_string()),
        ("mass_mg", balance.mass_mg.to_string()),
        ("balance_um", balance.from_closed_rim_um.to_string()),
    ];
    let lines = facts.map(|(key, value)| format!("{key}={value}\n"));
    Ok(lines.concat().into_bytes())
}

#[test]
fn files_are_as_they_were() -> Result<(), String> {
    let renew = std::env::var_os("TINWAVE_RENEW").is_some();
    let mut differing = Vec::new();
    for (name, job) in common::JOBS {
        let job = job();
        let mut files = vec![("txt", facts(&job)?)];
        for kind in KINDS {
            let written = write_file(&job, kind).map_err(|error| format!("{name}: {error}"))?;
            files.push((kind.extension(), written.bytes));
        }
        for (ending, bytes) in files {
            let file = common::folder("golden").join(format!("{name}.{ending}"));
            if renew {
                std::fs::write(&file, &bytes).map_err(|error| error.to_string())?;
            }
            if std::fs::read(&file).unwrap_or_default() != bytes {
                differing.push(file.display().to_string());
            }
        }
    }
    assert!(differing.is_empty(), "changed: {differing:#?}");
    Ok(())
}
