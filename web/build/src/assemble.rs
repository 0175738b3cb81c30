//! Puts the static files of the page together.
//!
//! Programs and styles get names that change with their content, so that any
//! host may let browsers keep them for good. The page, the service worker, the
//! manifest and the icons keep fixed names, because others refer to them.

use crate::bindings::Program;
use crate::failure::{Failure, Result};
use crate::fingerprint::fingerprint;
use crate::folders::workspace_folder;
use crate::policy::CONTENT_POLICY;
use crate::template::fill;
use std::fs;
use std::path::Path;

/// Files that go into the page as they are.
const FIXED: [&str; 3] = ["icon.svg", "icon-512.png", "manifest.webmanifest"];

/// The style sheets, in the order in which they apply.
const STYLES: [&str; 4] = ["style.css", "entries.css", "parts.css", "pictures.css"];

/// The programs of the page.
pub(crate) struct Programs {
    pub(crate) page: Program,
    /// Printing.
    pub(crate) print: Program,
    /// The workbench.
    pub(crate) bench: Program,
}

/// A built page: its version, and each file's name and content.
#[derive(Debug)]
pub(crate) struct Page {
    pub(crate) version: String,
    pub(crate) files: Vec<(String, Vec<u8>)>,
}

/// The hand-written parts of the page.
struct Sources {
    index: String,
    /// All style sheets in one: one request less before the first paint.
    style: String,
    /// The drawing that the page shows before its program has come.
    example: String,
    start: String,
    printer: String,
    worker: String,
    /// What runs in a thread of its own.
    thread: String,
    /// The workbench's parts in the page, and their looks.
    bench: String,
    bench_style: String,
    fixed: Vec<(String, Vec<u8>)>,
}

impl Sources {
    fn read() -> Result<Self> {
        let top = workspace_folder();
        let assets = top.join("web").join("assets");
        let fixed = FIXED.iter().map(|name| {
            let file = assets.join(name);
            let bytes = fs::read(&file).map_err(Failure::file("read", &file))?;
            Ok(((*name).to_owned(), bytes))
        });
        Ok(Self {
            index: text(&top.join("index.html"))?,
            style: STYLES
                .iter()
                .map(|name| text(&assets.join(name)))
                .collect::<Result<_>>()?,
            example: text(&assets.join("example-section.svg"))?,
            start: text(&assets.join("start.js"))?,
            printer: text(&assets.join("printer.js"))?,
            worker: text(&assets.join("sw.js"))?,
            thread: text(&assets.join("worker.js"))?,
            bench: text(&assets.join("bench.js"))?,
            bench_style: text(&assets.join("bench.css"))?,
            fixed: fixed.collect::<Result<_>>()?,
        })
    }

    /// One name for everything that the page is made of.
    fn version(&self, programs: &Programs, tag: &str) -> String {
        let mut parts: Vec<&[u8]> = vec![
            self.index.as_bytes(),
            self.style.as_bytes(),
            self.example.as_bytes(),
            self.start.as_bytes(),
            self.printer.as_bytes(),
            self.worker.as_bytes(),
            self.thread.as_bytes(),
            self.bench.as_bytes(),
            self.bench_style.as_bytes(),
            CONTENT_POLICY.as_bytes(),
            tag.as_bytes(),
        ];
        for program in [&programs.page, &programs.print, &programs.bench] {
            parts.extend([program.javascript.as_bytes(), &program.wasm]);
        }
        parts.extend(self.fixed.iter().map(|(_, bytes)| bytes.as_slice()));
        let content = fingerprint(&parts);
        let dash = if tag.is_empty() { "" } else { "-" };
        format!("{}-{content}{dash}{tag}", env!("CARGO_PKG_VERSION"))
    }
}

/// Files that have names after their content, and the values by which others name them.
struct Named {
    files: Vec<(String, Vec<u8>)>,
    values: Vec<(&'static str, String)>,
}

impl Named {
    /// Takes a file in; `key` is the value that others fill in.
    fn add(&mut self, key: &'static str, stem: &str, ending: &str, content: Vec<u8>) {
        let name = hashed(stem, ending, &content);
        self.values.push((key, name.clone()));
        self.files.push((name, content));
    }

    fn values(&self) -> Vec<(&str, &str)> {
        let values = self.values.iter();
        values.map(|(key, value)| (*key, value.as_str())).collect()
    }

    fn names(&self, keys: &[&str]) -> String {
        let named = |key: &&str| self.values.iter().find(|(known, _)| known == key);
        let names: Vec<&str> = keys
            .iter()
            .filter_map(named)
            .map(|(_, name)| name.as_str())
            .collect();
        names.join(" ")
    }
}

/// Makes the page out of the programs and the hand-written files. The tag sets
/// apart two builds of the same content; empty for an ordinary build. `shrink`
/// makes a text of a kind (`js`, `css`) smaller.
pub(crate) fn assemble(
    programs: Programs,
    tag: &str,
    shrink: &dyn Fn(&str, &str) -> Result<String>,
) -> Result<Page> {
    let sources = Sources::read()?;
    let version = sources.version(&programs, tag);
    let mut named = Named {
        files: Vec::new(),
        values: vec![
            ("csp", CONTENT_POLICY.to_owned()),
            ("version", version.clone()),
            ("example", sources.example.clone()),
        ],
    };
    for (keys, stem, program) in [
        (("app", "wasm"), "app", programs.page),
        (("print", "print_wasm"), "print", programs.print),
        (("bench", "bench_wasm"), "bench", programs.bench),
    ] {
        let script = shrink("js", &program.javascript)?;
        named.add(keys.0, stem, "js", script.into_bytes());
        named.add(keys.1, stem, "wasm", program.wasm);
    }
    for (key, stem, style) in [
        ("style", "style", &sources.style),
        ("bench_style", "bench", &sources.bench_style),
    ] {
        named.add(key, stem, "css", shrink("css", style)?.into_bytes());
    }
    // Each names those before it.
    for (key, stem, script, needed) in [
        (
            "printer",
            "printer",
            &sources.printer,
            &["print", "print_wasm"][..],
        ),
        (
            "worker",
            "bench-worker",
            &sources.thread,
            &["bench", "bench_wasm"],
        ),
        (
            "parts",
            "bench-parts",
            &sources.bench,
            &["worker", "bench_style"],
        ),
        (
            "start",
            "start",
            &sources.start,
            &["app", "wasm", "printer", "worker", "parts"],
        ),
    ] {
        let text = fill(stem, script, &named.values(), needed)?;
        named.add(key, stem, "js", shrink("js", &text)?.into_bytes());
    }
    let required = ["csp", "version", "style", "start"];
    let index_text = fill("index.html", &sources.index, &named.values(), &required)?;

    // The page itself under the address that people open.
    let kept = [
        "./",
        &named.names(&["start", "app", "wasm", "style"]),
        &FIXED.join(" "),
    ]
    .join(" ");
    let later = named.names(&[
        "worker",
        "bench",
        "bench_wasm",
        "parts",
        "bench_style",
        "printer",
        "print",
        "print_wasm",
    ]);
    let needed = ["version", "files", "later"];
    let values = [
        ("version", version.as_str()),
        ("files", kept.as_str()),
        ("later", later.as_str()),
    ];
    let worker_text = shrink("js", &fill("sw.js", &sources.worker, &values, &needed)?)?;

    let mut files = sources.fixed;
    files.push(("index.html".to_owned(), index_text.into_bytes()));
    files.push(("sw.js".to_owned(), worker_text.into_bytes()));
    files.extend(named.files);
    Ok(Page { version, files })
}

/// Writes the page into a folder, all or nothing: the folder is replaced when
/// the new one is complete.
pub(crate) fn write(page: &Page, folder: &Path) -> Result<()> {
    refuse_foreign(folder)?;
    let partial = folder.with_extension(format!("partial-{}", std::process::id()));
    fs::create_dir_all(&partial).map_err(Failure::file("create", &partial))?;
    for (name, bytes) in &page.files {
        let file = partial.join(name);
        fs::write(&file, bytes).map_err(Failure::file("write", &file))?;
    }
    if folder.exists() {
        fs::remove_dir_all(folder).map_err(Failure::file("remove", folder))?;
    }
    fs::rename(&partial, folder).map_err(Failure::file("move", &partial))
}

/// A folder that is replaced must be empty or an earlier page.
fn refuse_foreign(folder: &Path) -> Result<()> {
    let Ok(mut entries) = fs::read_dir(folder) else {
        return Ok(());
    };
    let ours = fs::read_to_string(folder.join("sw.js")).is_ok_and(|w| w.contains("tinwave"));
    if ours || entries.next().is_none() {
        Ok(())
    } else {
        Err(Failure::NotOurs(folder.to_owned()))
    }
}

fn hashed(stem: &str, ending: &str, content: &[u8]) -> String {
    format!("{stem}-{}.{ending}", fingerprint(&[content]))
}

fn text(file: &Path) -> Result<String> {
    fs::read_to_string(file).map_err(Failure::file("read", file))
}
