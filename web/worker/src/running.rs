//! Work of any kind on its way.

use tinwave_protocol::{Told, to_bytes};

use crate::Work;

/// Work of any kind: what it gives is bytes already.
pub struct Running(Box<dyn AnyWork>);

impl Running {
    /// Of one kind.
    #[must_use]
    pub fn new<W: Work + 'static>(work: W) -> Self {
        Self(Box::new(Begun {
            total: work.total(),
            done: 0,
            work: Some(work),
        }))
    }

    /// Takes a step; at the last one the end is told. `None` when it has ended.
    pub fn step(&mut self) -> Option<Told> {
        self.0.step()
    }

    /// Takes all steps that are left: for work that must not wait, and for tests.
    #[must_use]
    pub fn run(mut self) -> Option<Vec<u8>> {
        loop {
            if let Told::Done(answer) = self.step()? {
                return Some(answer);
            }
        }
    }
}

trait AnyWork {
    fn step(&mut self) -> Option<Told>;
}

struct Begun<W> {
    total: u32,
    done: u32,
    /// Taken at the end.
    work: Option<W>,
}

impl<W: Work> AnyWork for Begun<W> {
    fn step(&mut self) -> Option<Told> {
        if self.done < self.total {
            let work = self.work.as_mut()?;
            work.step();
            self.done += 1;
            if self.done < self.total {
                return Some(Told::Working {
                    done: self.done as f32 / self.total as f32,
                    so_far: work.so_far().map(|answer| to_bytes(&answer)),
                });
            }
        }
        let answer = self.work.take()?.finish();
        Some(Told::Done(to_bytes(&answer)))
    }
}
