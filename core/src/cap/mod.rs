//! A cap over the mouth: what a plastic lid or weather cover does to the match.
//!
//! Model: each mode of the guide crosses the sheet as it would cross a section of the
//! same guide filled with the sheet's material, loaded by what the open mouth is to that
//! mode. To first order in thickness that is a shunt susceptance `k t (εr - 1)` across
//! the mouth (TE), for TM joined by a part from the axial field. It doesn't matter to
//! that order on which side of the rim the sheet lies.
//!
//! Left out: the modes below cutoff that the mouth excites besides, and with them the
//! field at the rim's edge, and every part of the cap outside the rim's circle (tabs,
//! overhang, a lid's skirt). Put into the reaction integral of a thin sheet, the exact
//! open pipe's modes of TE11's order (Weinstein, as in [`crate::mouth`]) change the
//! admittance that the sheet adds by 0.1 to 0.2 of itself at `k a` of 1.95 to 2.6 and
//! thicknesses of 0.01 to 0.05 radii, `εr` 2.25: so much the cap's effect, not the match
//! itself, is uncertain.
//!
//! Sources: R. E. Collin, *Field Theory of Guided Waves*, 2nd ed. 1991, section 3.4
//! (junction of transmission lines in the filled guide); D. M. Pozar, *Microwave
//! Engineering*, 4th ed. 2012, table 4.1 (ABCD matrix of a line) and section 3.4 (wave
//! admittances); both from memory.

mod effect;
mod error;
mod filled_section;
mod reflection;
mod sheet;

pub use effect::{CapEffect, cap_effect};
pub use error::{CapError, SheetField};
pub use reflection::{capped_reflection, dissipation_loss_db};
pub use sheet::Sheet;
