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
const STYLES: [&str; 2] = ["style.css", "pictures.css"];

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
            fixed: fixed.collect::<Result<_>>()?,
        })
    }

    /// One name for everything that the page is made of.
    fn version(&self, programs: [&Program; 2], tag: &str) -> String {
        let mut parts: Vec<&[u8]> = vec![
            self.index.as_bytes(),
            self.style.as_bytes(),
            self.example.as_bytes(),
            self.start.as_bytes(),
            self.printer.as_bytes(),
            self.worker.as_bytes(),
            self.thread.as_bytes(),
            CONTENT_POLICY.as_bytes(),
            tag.as_bytes(),
        ];
        for program in programs {
            parts.extend([program.javascript.as_bytes(), &program.wasm]);
        }
        parts.extend(self.fixed.iter().map(|(_, bytes)| bytes.as_slice()));
        let content = fingerprint(&parts);
        let dash = if tag.is_empty() { "" } else { "-" };
        format!("{}-{content}{dash}{tag}", env!("CARGO_PKG_VERSION"))
    }
}

/// Makes the page out of the program and the hand-written files. The tag sets
/// apart two builds of the same content; empty for an ordinary build. `shrink`
/// makes a text of a kind (`js`, `css`) smaller.
pub(crate) fn assemble(
    program: Program,
    print: Program,
    tag: &str,
    shrink: &dyn Fn(&str, &str) -> Result<String>,
) -> Result<Page> {
    let sources = Sources::read()?;
    let version = sources.version([&program, &print], tag);
    let javascript = shrink("js", &program.javascript)?;
    let style_text = shrink("css", &sources.style)?;
    let app = hashed("app", "js", javascript.as_bytes());
    let wasm = hashed("app", "wasm", &program.wasm);
    let style = hashed("style", "css", style_text.as_bytes());

    let mut values = vec![
        ("csp", CONTENT_POLICY),
        ("version", version.as_str()),
        ("app", app.as_str()),
        ("wasm", wasm.as_str()),
        ("style", style.as_str()),
    ];
    let print_javascript = shrink("js", &print.javascript)?;
    let print_script = hashed("print", "js", print_javascript.as_bytes());
    let print_wasm = hashed("print", "wasm", &print.wasm);
    let printer_values = [
        ("print", print_script.as_str()),
        ("print_wasm", print_wasm.as_str()),
    ];
    let needed = ["print", "print_wasm"];
    let printer_text = fill("printer.js", &sources.printer, &printer_values, &needed)?;
    let printer_text = shrink("js", &printer_text)?;
    let printer = hashed("printer", "js", printer_text.as_bytes());
    values.push(("printer", printer.as_str()));
    let start_text = fill(
        "start.js",
        &sources.start,
        &values,
        &["app", "wasm", "printer"],
    )?;
    let start_text = shrink("js", &start_text)?;
    let start = hashed("start", "js", start_text.as_bytes());
    let thread_text = fill("worker.js", &sources.thread, &values, &["app", "wasm"])?;
    let thread_text = shrink("js", &thread_text)?;
    let thread = hashed("worker", "js", thread_text.as_bytes());
    values.extend([
        ("start", start.as_str()),
        ("worker", thread.as_str()),
        ("example", &sources.example),
    ]);
    let required = ["csp", "version", "style", "start", "worker"];
    let index_text = fill("index.html", &sources.index, &values, &required)?;

    // The page itself under the address that people open.
    let mut kept = vec!["./", &start, &thread, &app, &wasm, &style];
    kept.extend(FIXED);
    let kept = kept.join(" ");
    let later = [printer.as_str(), &print_script, &print_wasm].join(" ");
    let worker_values = [
        ("version", version.as_str()),
        ("files", kept.as_str()),
        ("later", later.as_str()),
    ];
    let worker_text = fill(
        "sw.js",
        &sources.worker,
        &worker_values,
        &["version", "files", "later"],
    )?;
    let worker_text = shrink("js", &worker_text)?;

    let mut files = sources.fixed;
    files.extend([
        ("index.html".to_owned(), index_text.into_bytes()),
        ("sw.js".to_owned(), worker_text.into_bytes()),
        (start, start_text.into_bytes()),
        (thread, thread_text.into_bytes()),
        (style, style_text.into_bytes()),
        (printer, printer_text.into_bytes()),
        (print_script, print_javascript.into_bytes()),
        (print_wasm, print.wasm),
        (app, javascript.into_bytes()),
        (wasm, program.wasm),
    ]);
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
