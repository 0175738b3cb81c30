//! (connectors)
