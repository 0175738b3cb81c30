//! Which steps are done, kept with the design on the device.
//!
//! A tick belongs to a piece (its name, width, length) and remembers the figures that
//! the step was done to.

use super::steps::{Stamp, Step};
use crate::workpiece::Workpiece;

/// The key of the device's own storage.
pub const TICKS_KEY: &str = "tinwave-ticks";

/// Pieces that are remembered; the oldest go first.
const MOST_PIECES: usize = 50;

/// All ticks that the device keeps, the newest piece first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ticks {
    pieces: Vec<Piece>,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Piece {
    key: String,
    done: Vec<(Step, Stamp)>,
}

/// What a piece goes by.
fn key_of(work: &Workpiece) -> String {
    let can = &work.design.can;
    format!(
        "{} {} {}",
        can.inside_diameter_um, can.open_length_um, work.design.name
    )
}

impl Ticks {
    /// Reads a kept text: a line a piece, its ticks and its key apart by a tab. Lines
    /// that make no sense are left out.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let pieces = text.lines().filter_map(read_piece).take(MOST_PIECES);
        Self {
            pieces: pieces.collect(),
        }
    }

    /// The text to be kept.
    #[must_use]
    pub fn write(&self) -> String {
        let mut text = String::new();
        for piece in &self.pieces {
            for (index, (step, Stamp(figures))) in piece.done.iter().enumerate() {
                if index > 0 {
                    text.push(' ');
                }
                text.push_str(step.key());
                for figure in figures {
                    text.push_str(&format!(":{figure}"));
                }
            }
            text.push('\t');
            text.push_str(&piece.key);
            text.push('\n');
        }
        text
    }

    /// What a step was done to, if it was done to this piece.
    #[must_use]
    pub fn done(&self, work: &Workpiece, step: Step) -> Option<&Stamp> {
        let key = key_of(work);
        let piece = self.pieces.iter().find(|piece| piece.key == key)?;
        let done = piece.done.iter().find(|(known, _)| *known == step);
        done.map(|(_, stamp)| stamp)
    }

    /// Whether a step is done to what is asked now.
    #[must_use]
    pub fn holds(&self, work: &Workpiece, step: Step) -> bool {
        self.done(work, step) == Some(&step.stamp(work))
    }

    /// Ticks a step, or takes its tick away.
    pub fn set(&mut self, work: &Workpiece, step: Step, done: bool) {
        let key = key_of(work);
        let found = self.pieces.iter().position(|piece| piece.key == key);
        let mut piece = match found {
            Some(place) => self.pieces.remove(place),
            None => Piece {
                key,
                done: Vec::new(),
            },
        };
        piece.done.retain(|(known, _)| *known != step);
        if done {
            piece.done.push((step, step.stamp(work)));
        }
        if !piece.done.is_empty() {
            self.pieces.insert(0, piece);
            self.pieces.truncate(MOST_PIECES);
        }
    }
}

fn read_piece(line: &str) -> Option<Piece> {
    let (ticks, key) = line.split_once('\t')?;
    let done: Option<Vec<_>> = ticks.split(' ').map(read_tick).collect();
    Some(Piece {
        key: key.to_owned(),
        done: done?,
    })
}

fn read_tick(text: &str) -> Option<(Step, Stamp)> {
    let mut parts = text.split(':');
    let step = Step::from_key(parts.next()?)?;
    let figures: Result<Vec<u32>, _> = parts.map(str::parse).collect();
    Some((step, Stamp(figures.ok()?)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example::example;

    #[test]
    fn ticks_are_kept_with_the_piece_and_its_figures() {
        let mut work = example();
        work.design.name = "Orchard gate".into();
        let mut ticks = Ticks::default();
        ticks.set(&work, Step::Mark, true);
        ticks.set(&work, Step::CutWire, true);
        let ticks = Ticks::read(&ticks.write());
        assert!(ticks.holds(&work, Step::Mark) && ticks.holds(&work, Step::CutWire));
        assert!(!ticks.holds(&work, Step::Drill));

        let mut other = work.clone();
        other.design.name = "Barn roof".into();
        assert!(!ticks.holds(&other, Step::Mark));

        work.design.probe.backshort_distance_um += 500;
        assert!(!ticks.holds(&work, Step::Mark), "the figure has changed");
        assert!(ticks.done(&work, Step::Mark).is_some(), "but it is known");
        assert!(ticks.holds(&work, Step::CutWire));
    }

    #[test]
    fn a_tick_can_be_taken_away() {
        let work = example();
        let mut ticks = Ticks::default();
        ticks.set(&work, Step::Drill, true);
        ticks.set(&work, Step::Drill, false);
        assert_eq!(ticks, Ticks::default());
    }

    #[test]
    fn lines_that_make_no_sense_are_left_out() {
        let text = "mark:74000\t87000 190000 x\nnonsense\nfly:1\t1 2 y\nmark:a\t1 2 z\n";
        assert_eq!(Ticks::read(text).write(), "mark:74000\t87000 190000 x\n");
    }
}
