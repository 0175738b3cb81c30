//! Long work in steps, between which the worker hears what else is wanted.

use crate::reply::Reply;

/// Work in steps of some milliseconds each.
pub trait Job {
    /// Steps in all.
    fn total(&self) -> u32;
    /// Takes the next step.
    fn step(&mut self);
    /// What there is to show so far; asked after every step, most often nothing.
    fn so_far(&self) -> Option<Reply> {
        None
    }
    /// What came out, after the last step.
    fn finish(self: Box<Self>) -> Reply;
}
