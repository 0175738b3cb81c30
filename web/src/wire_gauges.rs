//! (wire_gauges)
