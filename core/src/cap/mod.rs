//! A cap over the mouth: what a plastic lid or weather cover does to the match.
//!
//! Model: each mode of the guide crosses the sheet as it would cross a section of the
//! same guide filled with the sheet's material, loaded by what the open mouth is to that
//! mode. To first order in thickness that is a shunt susceptance `k t (εr - 1)` across
//! the mouth (TE), for TM joined by a part from the axial field. It doesn't matter to
//! that order on which side of the rim the sheet lies.
//!
//! Left out: what the sheet does to the field in the edge of the rim, coupling between
//! modes in the sheet, and every part of the cap outside the rim's circle (tabs,
//! overhang, a lid's skirt).
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
