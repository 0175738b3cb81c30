//! The components that every station is made of, each tested alone.
