//! What can go wrong, in words for the person who started the build.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

/// Result of everything in this crate.
pub type Result<T> = std::result::Result<T, Failure>;

/// Why a build or the server stopped.
#[derive(Debug)]
pub enum Failure {
    /// A file or folder could not be read, written, moved or removed.
    File {
        /// What was tried: "read", "write".
        action: &'static str,
        /// On which file or folder.
        path: PathBuf,
        /// What the system answered.
        source: io::Error,
    },
    /// A program could not be started, or ended with an error.
    Program {
        /// The command line.
        command: String,
        /// What it said, or why it did not start.
        said: String,
    },
    /// Something this machine lacks and the build cannot bring.
    Missing {
        /// What is lacking.
        what: String,
        /// What the person can do about it.
        remedy: String,
    },
    /// The bindings generator refused the compiled page.
    Bindings(String),
    /// A template names a placeholder that nothing fills, or lacks one that it needs.
    Template {
        /// The template's file name.
        file: &'static str,
        /// What is wrong with it.
        fault: String,
    },
    /// The folder to write to holds something that is not a Tinwave page.
    NotOurs(PathBuf),
    /// The page weighs more than its bar.
    TooHeavy {
        /// Which bar.
        what: &'static str,
        /// The page's weight after gzip, in bytes.
        bytes: usize,
        /// The most it may weigh, in bytes.
        bar: usize,
    },
    /// No address to serve on.
    NoPort {
        /// First port tried.
        first: u16,
        /// Last port tried.
        last: u16,
        /// What the system answered for the last one.
        source: io::Error,
    },
    /// The command line was not understood.
    Usage(String),
}

impl Failure {
    /// Makes a closure for `map_err` that names the action and the file.
    pub(crate) fn file(action: &'static str, path: &Path) -> impl FnOnce(io::Error) -> Self {
        let path = path.to_owned();
        move |source| Self::File {
            action,
            path,
            source,
        }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::File {
                action,
                path,
                source,
            } => write!(f, "cannot {action} {}: {source}", path.display()),
            Self::Program { command, said } => write!(f, "`{command}` failed: {said}"),
            Self::Missing { what, remedy } => write!(f, "{what}\n  What to do: {remedy}"),
            Self::Bindings(said) => write!(f, "the bindings generator stopped: {said}"),
            Self::Template { file, fault } => write!(f, "{file}: {fault}"),
            Self::NotOurs(path) => write!(
                f,
                "{} holds files that are not a built page; name an empty or new folder with --out",
                path.display()
            ),
            Self::TooHeavy { what, bytes, bar } => {
                write!(f, "{what}: {bytes} bytes after gzip, the bar is {bar}")
            }
            Self::NoPort {
                first,
                last,
                source,
            } => write!(f, "no free port from {first} to {last}: {source}"),
            Self::Usage(fault) => write!(f, "{fault}\n\n{}", crate::cli::USAGE),
        }
    }
}

impl std::error::Error for Failure {}
