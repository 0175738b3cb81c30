//! Physical constants, SI.
//!
//! Source: BIPM, *The International System of Units*, 9th edition, 2019 (speed
//! of light, exact); CODATA 2018 (vacuum permeability).

/// Speed of light in vacuum, m/s (exact).
pub const SPEED_OF_LIGHT: f64 = 299_792_458.0;

/// Wave impedance of vacuum, ohm.
pub const ETA_0: f64 = 376.730_313_668;

/// Permeability of vacuum, H/m.
pub const MU_0: f64 = 1.256_637_062_12e-6;

/// Permittivity of vacuum, F/m.
pub const EPSILON_0: f64 = 8.854_187_812_8e-12;

/// First root of J1', the TE11 mode: cutoff wavenumber times radius.
pub const CHI_TE11: f64 = 1.841_183_781_340_659;

/// First root of J0, the TM01 mode: cutoff wavenumber times radius.
pub const CHI_TM01: f64 = 2.404_825_557_695_773;

/// First root of J2', the TE21 mode: cutoff wavenumber times radius.
pub const CHI_TE21: f64 = 3.054_236_928_227_14;

/// Wavenumber in free space, rad/m.
#[must_use]
pub fn wavenumber(frequency_hz: f64) -> f64 {
    2.0 * core::f64::consts::PI * frequency_hz / SPEED_OF_LIGHT
}
