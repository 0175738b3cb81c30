//! The targets that the project is compiled for, besides the host.

use std::fmt;

/// A target without the host's operating system.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Target {
    /// What browsers run; it has a standard library.
    Browser,
    /// A microcontroller (Arm Cortex-M4F). It has no standard library at all,
    /// so what compiles for it uses none.
    BareMetal,
}

impl Target {
    /// Both of them.
    pub const ALL: [Self; 2] = [Self::Browser, Self::BareMetal];

    /// The compiler's name for it.
    pub fn triple(self) -> &'static str {
        match self {
            Self::Browser => "wasm32-unknown-unknown",
            Self::BareMetal => "thumbv7em-none-eabihf",
        }
    }

    /// Compiler flags of all crates.
    pub(crate) fn flags(self) -> Vec<String> {
        match self {
            // Leptos then takes each component's view for one type: a page of many
            // different views is a third lighter.
            Self::Browser => vec!["--cfg".to_owned(), "erase_components".to_owned()],
            Self::BareMetal => Vec::new(),
        }
    }

    /// A small crate that compiles only where the target's library is there.
    pub(crate) fn probe(self) -> &'static str {
        match self {
            Self::Browser => "#![crate_type = \"lib\"]\npub fn f() -> String { String::new() }\n",
            Self::BareMetal => {
                "#![crate_type = \"lib\"]\n#![no_std]\nextern crate alloc;\n\
                 pub fn f() -> alloc::string::String { alloc::string::String::new() }\n"
            }
        }
    }

    /// The crate of the library's source that brings all that the target can have.
    pub(crate) fn library(self) -> &'static str {
        match self {
            Self::Browser => "sysroot",
            Self::BareMetal => "alloc",
        }
    }
}

impl fmt::Display for Target {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.triple())
    }
}
