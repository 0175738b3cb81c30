//! Three designs in every kind of file, byte for byte as they were looked at.
//!
//! After a change that is meant, `TINWAVE_RENEW=1 cargo test -p tinwave-print`
//! writes them anew: look at what changed.

mod common;

use tinwave_print::{Kind, print};

const KINDS: [(Kind, &str); 4] = [
    (Kind::Pdf, "pdf"),
    (Kind::Svg, "svg"),
    (Kind::Dxf, "dxf"),
    (Kind::Facts, "txt"),
];

#[test]
fn files_are_as_they_were() -> Result<(), String> {
    let renew = std::env::var_os("TINWAVE_RENEW").is_some();
    let mut differing = Vec::new();
    for name in common::JOBS {
        let job = common::job(name)?;
        for (kind, ending) in KINDS {
            let printed = print(&job, kind).map_err(|error| format!("{name}: {error}"))?;
            let file = common::folder("golden").join(format!("{name}.{ending}"));
            if renew {
                std::fs::write(&file, &printed.bytes).map_err(|error| error.to_string())?;
            }
            let kept = std::fs::read(&file).unwrap_or_default();
            if kept != printed.bytes {
                differing.push(file.display().to_string());
            }
        }
    }
    assert!(differing.is_empty(), "changed: {differing:#?}");
    Ok(())
}
