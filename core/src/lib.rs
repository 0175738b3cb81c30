//! Field computation for antennas made of cans: short circular waveguides,
//! closed at the back, fed by a wire probe, open at the front.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;

pub mod analysis;
pub mod beam;
pub mod bessel_roots;
pub mod best_cut;
pub mod cap;
pub mod changed_can;
pub mod chebyshev;
pub mod complex;
pub mod constants;
pub mod design;
pub mod design_error;
pub mod diagnosis;
pub mod dimension;
pub mod dish;
pub mod elliptic;
pub mod fit;
pub mod funnel;
pub mod grade;
pub mod intrusion;
pub mod json;
pub mod judge;
pub mod least_squares;
pub mod match_band;
pub mod math;
pub mod metal;
pub mod mouth;
pub mod one_mode_diameter;
pub mod outside;
pub mod phasor;
pub mod probe;
pub mod quadrature;
pub mod radiation;
pub mod radio_link;
pub mod random;
pub mod reflection;
pub mod ruler;
pub mod screw_search;
pub mod si;
pub mod tolerance;
pub mod touchstone;
pub mod verdict;
pub mod wall_loss;
pub mod waveguide_mode;
pub mod whole_can;
