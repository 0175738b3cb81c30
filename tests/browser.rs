//! The page in a real browser: one test for each file of `tests/browser`.
//!
//! `cargo test -p tinwave-tests offline` runs one of them.

use std::path::Path;
use std::sync::OnceLock;
use tinwave_tests::{Sharing, Stage, scenario_names};

/// Sets the stage once; a test that comes later finds it set, or why not.
fn stage() -> Result<&'static Stage, String> {
    static STAGE: OnceLock<Result<Stage, String>> = OnceLock::new();
    let work = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let server = Path::new(env!("CARGO_BIN_EXE_tinwave-test-server"));
    STAGE
        .get_or_init(|| Stage::set_up(work, server).map_err(|failure| failure.to_string()))
        .as_ref()
        .map_err(Clone::clone)
}

/// One test for each named file, and the list of the names.
macro_rules! scenarios {
    ($($name:ident: $sharing:ident,)*) => {
        $(
            #[test]
            fn $name() -> Result<(), String> {
                stage()?.run(stringify!($name), Sharing::$sharing)
            }
        )*
        const LISTED: &[&str] = &[$(stringify!($name)),*];
    };
}

scenarios! {
    axe: Shared,
    csp: Shared,
    engines: Shared,
    first_paint: Shared,
    keyboard: Shared,
    lighthouse: Alone,
    no_script: Shared,
    offline: Shared,
    parity: Shared,
    print: Shared,
    speed: Alone,
    story: Shared,
    subpath: Shared,
    trouble: Shared,
    update: Shared,
    weight: Shared,
    worker: Shared,
}

#[test]
fn every_scenario_file_is_listed() -> std::io::Result<()> {
    let mut listed = LISTED.to_vec();
    listed.sort_unstable();
    assert_eq!(listed, scenario_names()?, "the list in tests/browser.rs");
    Ok(())
}
