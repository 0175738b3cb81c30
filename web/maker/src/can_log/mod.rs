//! The log of a can: its measurements, cuts and other changes, and what they have told
//! of the can.

mod known;
mod line;
mod log;
mod logs;
mod work_done;

pub use line::{Change, Day, Done, Figures, Line, Measured, milli};
pub use log::{CanLog, Prior};
pub use logs::{CanLogs, LOGS_KEY};
pub use work_done::{CUT_SD_M, Told, Work};
