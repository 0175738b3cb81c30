//! What the maker works on, between person and field computation: typed numbers,
//! the workpiece, its link, its history, what the device keeps, and the lists of
//! bands, sizes, wires and connectors. No browser.

pub mod bands;
pub mod bench;
pub mod can_log;
pub mod confidence;
pub mod connectors;
pub mod entry;
pub mod example;
pub mod feed;
pub mod file_name;
pub mod fits;
pub mod history;
pub mod link;
pub mod link_plan;
pub mod measured;
pub mod mode_role;
pub mod mouth_goal;
pub mod shelf;
pub mod station;
pub mod store;
pub mod threads;
pub mod trade_sizes;
pub mod wire_gauges;
pub mod workpiece;
