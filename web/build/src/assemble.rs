//! Puts the files of the page together, row by row of the manifest.

use crate::bound::{Bound, LATER};
use crate::failure::{Failure, Result};
use crate::fingerprint::fingerprint;
use crate::first_paint::FirstPaint;
use crate::folders::workspace_folder;
use crate::manifest::{FILES, FIRST_STYLES, File, Name, STATIONS, Source, When};
use crate::policy::CONTENT_POLICY;
use crate::program::Program;
use crate::template::{Values, fill};
use std::fs;
use std::path::{Path, PathBuf};

/// What is made before the files are put together.
#[derive(Debug)]
pub(crate) struct Parts {
    pub(crate) app: Bound,
    pub(crate) worker: Bound,
    pub(crate) first_paint: FirstPaint,
}

/// A built page: its version and its files.
#[derive(Debug)]
pub(crate) struct Page {
    pub(crate) version: String,
    pub(crate) files: Vec<Built>,
}

/// A file of a built page.
#[derive(Debug)]
pub(crate) struct Built {
    pub(crate) name: String,
    pub(crate) when: When,
    pub(crate) bytes: Vec<u8>,
}

impl Parts {
    const fn of(&self, program: Program) -> &Bound {
        match program {
            Program::App => &self.app,
            Program::Worker => &self.worker,
        }
    }

    /// What a file is made of, before names are filled in; nothing for a file that this
    /// page does without.
    fn source(&self, source: Source) -> Result<Option<Vec<u8>>> {
        let bytes = match source {
            Source::Bindings(program) => self.of(program).javascript.clone().into_bytes(),
            Source::Wasm(program) => self.of(program).wasm.clone(),
            Source::LaterWasm(program) => return Ok(self.of(program).later.clone()),
            Source::Styles(list) => {
                let mut styles = String::new();
                if list == FIRST_STYLES {
                    styles.push_str(&self.first_paint.styles);
                }
                for name in text(&asset(list))?.split_whitespace() {
                    styles.push_str(&text(&asset(name))?);
                }
                styles.into_bytes()
            }
            Source::Page => read(&workspace_folder().join("index.html"))?,
            Source::Text(name) | Source::Asset(name) => read(&asset(name))?,
        };
        Ok(Some(bytes))
    }
}

/// Makes the page. The tag sets apart two builds of the same content; empty for an
/// ordinary build. `shrink` makes a text of a kind (`js`, `css`) smaller.
pub(crate) fn assemble(
    parts: &Parts,
    tag: &str,
    shrink: &dyn Fn(&str, &str) -> Result<String>,
) -> Result<Page> {
    let mut sources = Vec::new();
    for file in &FILES {
        if let Some(source) = parts.source(file.source)? {
            sources.push((file, source));
        }
    }
    let version = version(&sources, &parts.first_paint, tag);
    let mut values = Values::default();
    values.add("csp", CONTENT_POLICY);
    values.add("version", &version);
    values.add("first_paint", &parts.first_paint.markup);

    let mut files: Vec<Built> = Vec::new();
    for (file, source) in sources {
        let bytes = made(file, source, &files, &mut values, shrink)?;
        let name = match file.name {
            Name::Fixed(name) => name.to_owned(),
            Name::ByContent { key, stem, ending } => {
                let name = format!("{stem}-{}.{ending}", fingerprint(&[&bytes]));
                values.add(key, &name);
                name
            }
        };
        files.push(Built {
            name,
            when: file.when,
            bytes,
        });
    }
    values.check_all_used()?;
    Ok(Page { version, files })
}

/// A file's content, with names filled in where it names others.
fn made(
    file: &File,
    source: Vec<u8>,
    above: &[Built],
    values: &mut Values,
    shrink: &dyn Fn(&str, &str) -> Result<String>,
) -> Result<Vec<u8>> {
    let kind = file.name.ending();
    let utf8 = |bytes| String::from_utf8(bytes).map_err(|_| not_a_text(kind));
    Ok(match file.source {
        Source::Wasm(_) | Source::LaterWasm(_) | Source::Asset(_) => source,
        Source::Styles(_) => shrink(kind, &utf8(source)?)?.into_bytes(),
        Source::Bindings(_) => {
            // Not a template: scripts may have its marks by chance.
            let mut script = utf8(source)?;
            if script.contains(LATER) {
                script = script.replace(LATER, values.take(STATIONS).unwrap_or_default());
            }
            shrink(kind, &script)?.into_bytes()
        }
        Source::Page => fill("index.html", &utf8(source)?, values)?.into_bytes(),
        Source::Text(name) => {
            values.add("files", &addresses(above, |when| when == When::AtOnce));
            values.add("later", &addresses(above, When::is_later));
            let filled = fill(name, &utf8(source)?, values)?;
            shrink(kind, &filled)?.into_bytes()
        }
    })
}

/// The addresses of files, as the service worker keeps them: the page itself under
/// the one that people open.
fn addresses(files: &[Built], counts: fn(When) -> bool) -> String {
    let kept = files.iter().filter(|file| counts(file.when));
    let addresses: Vec<&str> = kept
        .map(|file| match file.name.as_str() {
            "index.html" => "./",
            name => name,
        })
        .collect();
    addresses.join(" ")
}

/// One name for everything that the page is made of.
fn version(sources: &[(&File, Vec<u8>)], first_paint: &FirstPaint, tag: &str) -> String {
    let mut parts: Vec<&[u8]> = sources.iter().map(|(_, bytes)| bytes.as_slice()).collect();
    parts.extend([
        first_paint.markup.as_bytes(),
        CONTENT_POLICY.as_bytes(),
        tag.as_bytes(),
    ]);
    let dash = if tag.is_empty() { "" } else { "-" };
    let content = fingerprint(&parts);
    format!("{}-{content}{dash}{tag}", env!("CARGO_PKG_VERSION"))
}

/// Writes the page into a folder, all or nothing: the folder is replaced when
/// the new one is complete.
pub(crate) fn write(page: &Page, folder: &Path) -> Result<()> {
    refuse_foreign(folder)?;
    let partial = folder.with_extension(format!("partial-{}", std::process::id()));
    fs::create_dir_all(&partial).map_err(Failure::file("create", &partial))?;
    for built in &page.files {
        let file = partial.join(&built.name);
        fs::write(&file, &built.bytes).map_err(Failure::file("write", &file))?;
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

fn asset(name: &str) -> PathBuf {
    workspace_folder().join("web").join("assets").join(name)
}

fn read(file: &Path) -> Result<Vec<u8>> {
    fs::read(file).map_err(Failure::file("read", file))
}

fn text(file: &Path) -> Result<String> {
    fs::read_to_string(file).map_err(Failure::file("read", file))
}

fn not_a_text(file: &'static str) -> Failure {
    Failure::Template {
        file,
        fault: "not a text".to_owned(),
    }
}
