//! A measured can: its file, why it differs from the drawing, what to do.

mod advise;
mod diagnose;
mod read_file;

pub use advise::AdviseWork;
pub use diagnose::DiagnoseWork;
pub use read_file::ReadFileWork;
