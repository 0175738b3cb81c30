//! Values that a picture follows.

use std::cell::Cell;

use leptos::prelude::{RwSignal, Track, Update, untrack};

/// Reads a value; within an effect, reading it makes the effect run again when
/// the value changes.
///
/// A picture stands as long as the page, so its readers are never given back.
pub struct Followed<T: 'static>(&'static dyn Fn() -> T);

impl<T> Clone for Followed<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Followed<T> {}

impl<T> Followed<T> {
    /// Follows what `read` reads.
    pub fn new(read: impl Fn() -> T + 'static) -> Self {
        Self(Box::leak(Box::new(read)))
    }

    /// The value now.
    pub(super) fn get(self) -> T {
        (self.0)()
    }

    /// The value now, without following it.
    pub(super) fn get_untracked(self) -> T {
        untrack(|| self.get())
    }
}

/// A value that a picture changes and follows.
///
/// One kind of signal tells of the change whatever the value is: each further
/// kind of signal costs the page a kilobyte or two.
pub struct Watched<T: 'static> {
    value: &'static Cell<T>,
    changes: RwSignal<u32>,
}

impl<T> Clone for Watched<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Watched<T> {}

impl<T: Copy + PartialEq> Watched<T> {
    /// Begins with a value.
    pub fn new(value: T) -> Self {
        Self {
            value: Box::leak(Box::new(Cell::new(value))),
            changes: RwSignal::new(0),
        }
    }

    /// The value now.
    pub(super) fn get(self) -> T {
        self.changes.track();
        self.value.get()
    }

    /// The value now, without following it.
    pub(super) fn get_untracked(self) -> T {
        self.value.get()
    }

    /// Changes the value; nothing happens where it is the same.
    pub(super) fn set(self, value: T) {
        if self.value.replace(value) != value {
            self.changes.update(|count| *count = count.wrapping_add(1));
        }
    }
}
