//! What travels between the page and its worker: typed questions and answers, as
//! postcard bytes.
//!
//! The page sends an [`Ask`], the worker answers with [`Tell`]s of the same number.
//! A [`Question`] names the type of its answer, so both sides agree on it by type.

pub mod beam;
pub mod cuts;
pub mod fits;
pub mod job;
pub mod matters;
pub mod measure;
pub mod outside;
pub mod print;
pub mod screws;
pub mod tolerance;

pub use job::Job;

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

/// What the page says to the worker.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub enum Ask {
    /// Begin a job.
    Begin {
        /// Its number, told back with every answer.
        id: u32,
        /// What is to be done.
        job: Box<Job>,
    },
    /// Stop a job; nothing more is told of it.
    Stop {
        /// Its number.
        id: u32,
    },
}

/// What the worker tells of a job.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Tell {
    /// Number of the job.
    pub id: u32,
    /// How it stands.
    pub told: Told,
}

/// How a job stands. Answers are bytes of [`Question::Answer`].
#[derive(Clone, Debug, Serialize, Deserialize)]
pub enum Told {
    /// Still at it.
    Working {
        /// Share done, 0 to 1.
        done: f32,
        /// What there is to show so far.
        so_far: Option<Vec<u8>>,
    },
    /// The end.
    Done(Vec<u8>),
}

/// A question with an answer of its own type.
pub trait Question {
    /// What comes back.
    type Answer: Serialize + DeserializeOwned;

    /// The same as a job for the worker.
    fn into_job(self) -> Job;
}

/// Bytes of a message; empty only if it can't be written, which no type here can cause.
#[must_use]
pub fn to_bytes<T: Serialize>(message: &T) -> Vec<u8> {
    postcard::to_allocvec(message).unwrap_or_default()
}

/// A message out of its bytes; `None` for bytes of another version.
#[must_use]
pub fn from_bytes<T: DeserializeOwned>(bytes: &[u8]) -> Option<T> {
    postcard::from_bytes(bytes).ok()
}
