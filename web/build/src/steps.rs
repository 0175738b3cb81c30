//! Says what is being done, and how long each step took.

use crate::failure::Result;
use std::io::Write;
use std::time::Instant;

/// The progress report of one build, on standard error.
#[derive(Debug)]
pub struct Steps {
    begun: Instant,
}

impl Default for Steps {
    fn default() -> Self {
        Self::new()
    }
}

impl Steps {
    /// Starts the clock.
    pub fn new() -> Self {
        Self {
            begun: Instant::now(),
        }
    }

    /// Runs one step: its title before, its time after.
    ///
    /// # Errors
    /// Those of the step.
    pub fn step<T>(&self, title: &str, work: impl FnOnce() -> Result<T>) -> Result<T> {
        self.say(&format!("{title} ..."));
        let begun = Instant::now();
        let result = work();
        let seconds = begun.elapsed().as_secs_f64();
        let ending = if result.is_ok() { "done" } else { "failed" };
        self.say(&format!("{title}: {ending} in {seconds:.1} s"));
        result
    }

    /// Prints one line with the time since the start.
    pub fn say(&self, text: &str) {
        let seconds = self.begun.elapsed().as_secs_f64();
        // A closed standard error must not stop a build.
        let _ = writeln!(std::io::stderr(), "[{seconds:6.1} s] {text}");
    }
}
