//! Tuning screws: where and how deep one or two of them make the worst VSWR over the
//! band least, and VSWR against depth by quarter turns.
//!
//! Probe and screws are solved together ([`crate::probe`]). The search computes a grid
//! of places and depths, then lets the best of it walk downhill (compass search:
//! R. Hooke and T. A. Jeeves, *J. ACM* 8 (1961) 212-229).

mod depth_curve;
mod search;

pub use depth_curve::{DepthPoint, depth_curve, depth_curve_part, depth_points};
pub(crate) use search::{Band, DEEPEST, worst_vswr};
pub use search::{ScrewProgress, ScrewSearch, ScrewSettings, ScrewSettingsError, TunedScrews};
