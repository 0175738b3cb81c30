//! Drawings and charts as components.
