//! Long work in steps.

use tinwave_core::best_cut::FreeDimensions;
use tinwave_protocol::Job;

use crate::Running;
use crate::beam::{DishWork, FunnelWork, MouthWork, OverBandWork};
use crate::cuts::CutsWork;
use crate::fits::FitsWork;
use crate::fittings::FittingsWork;
use crate::matters::MattersWork;
use crate::measure::{AdviseWork, DiagnoseWork, ReadFileWork};
use crate::outside::OutsideWork;
use crate::print::{FileWork, SheetsWork};
use crate::screws::ScrewsWork;
use crate::tolerance::{DrawWork, RankWork};

/// Work in steps of some milliseconds each, 20 at most.
pub trait Work {
    /// What comes out.
    type Answer: serde::Serialize;

    /// Steps in all.
    fn total(&self) -> u32;

    /// Takes the next step.
    fn step(&mut self);

    /// What there is to show so far; asked after every step, most often nothing.
    fn so_far(&self) -> Option<Self::Answer> {
        None
    }

    /// What came out, after the last step.
    fn finish(self) -> Self::Answer;
}

/// Begins the work that a job asks for.
#[must_use]
pub fn begin(job: Job) -> Running {
    match job {
        Job::BeamOverBand(question) => Running::new(OverBandWork::new(question)),
        Job::FeedDish(question) => Running::new(DishWork::new(question)),
        Job::MouthChoices(question) => Running::new(MouthWork::new(&question)),
        Job::SearchFunnel(question) => Running::new(FunnelWork::new(&question)),
        Job::ReadFile(question) => Running::new(ReadFileWork(question)),
        Job::Diagnose(question) => Running::new(DiagnoseWork::new(question)),
        Job::Advise(question) => Running::new(AdviseWork::new(question)),
        Job::RankDimensions(question) => Running::new(RankWork::new(question)),
        Job::DrawCans(question) => Running::new(DrawWork::new(question)),
        Job::SearchScrews(question) => Running::new(ScrewsWork::new(question)),
        Job::SolveOutside(question) => Running::new(OutsideWork::new(question)),
        Job::BestCuts(question) => Running::new(CutsWork::new(
            &question.design,
            FreeDimensions::LengthAndDistance,
        )),
        Job::BestLength(question) => {
            Running::new(CutsWork::new(&question.design, FreeDimensions::Length))
        }
        Job::Fittings(question) => Running::new(FittingsWork::new(question)),
        Job::DrawSheets(question) => Running::new(SheetsWork(question)),
        Job::WriteFile(question) => Running::new(FileWork(question)),
        Job::WhatMatters(question) => Running::new(MattersWork::new(&question)),
        Job::MatchSizes(question) => Running::new(FitsWork::sizes(&question)),
        Job::MatchBands(question) => Running::new(FitsWork::bands(&question)),
    }
}
