//! Drawings and charts.
