//! A can that will not do, and the folds.

/// What the station waits for.
#[must_use]
pub const fn waits() -> (&'static str, &'static str, &'static str) {
    (
        "Nothing to measure yet",
        "There is no cut for this can, so nothing is predicted that a measurement could be laid over.",
        crate::frame::to_the_can(),
    )
}
