//! Thermal noise, and what a receive-only station hears.

use crate::math;

/// Boltzmann's constant, J/K (exact, SI 2019).
const BOLTZMANN: f64 = 1.380_649e-23;

/// Standard temperature of noise figures, K (IEEE).
pub const STANDARD_TEMPERATURE_K: f64 = 290.0;

/// Thermal noise power `kTB`, dBm. Bandwidth and temperature above zero.
#[must_use]
pub fn thermal_noise_dbm(bandwidth_hz: f64, temperature_k: f64) -> f64 {
    10.0 * math::log10(BOLTZMANN * temperature_k * bandwidth_hz) + 30.0
}

/// Sensitivity, dBm, of a receiver with a noise figure that needs a ratio of signal to
/// noise: `kT0B + NF + SNR`.
#[must_use]
pub fn sensitivity_from_noise_dbm(
    bandwidth_hz: f64,
    noise_figure_db: f64,
    needed_snr_db: f64,
) -> f64 {
    thermal_noise_dbm(bandwidth_hz, STANDARD_TEMPERATURE_K) + noise_figure_db + needed_snr_db
}

/// A station that only listens, from antenna to receiver.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReceiveStation {
    /// Gain of the antenna at its terminals, dBi.
    pub gain_dbi: f64,
    /// Noise temperature of the antenna, K, zero or more: near the ground some 290, at
    /// the cold sky with little spillover 30 to 60 (common practice, no source).
    pub antenna_temperature_k: f64,
    /// Loss between antenna and receiver, dB, zero or more.
    pub line_loss_db: f64,
    /// Physical temperature of that line, K.
    pub line_temperature_k: f64,
    /// Noise figure of the receiver, dB, zero or more.
    pub noise_figure_db: f64,
}

impl ReceiveStation {
    /// System noise temperature at the antenna's terminals, K:
    /// `T_A + (L - 1) T_L + L (F - 1) T_0`.
    ///
    /// Source: D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, section 10.1, eqs.
    /// 10.15 and 10.22, and section 14.2 (equation numbers from memory).
    #[must_use]
    pub fn system_temperature_k(&self) -> f64 {
        let line = math::pow(10.0, self.line_loss_db / 10.0);
        let noise = math::pow(10.0, self.noise_figure_db / 10.0);
        self.antenna_temperature_k
            + (line - 1.0) * self.line_temperature_k
            + line * (noise - 1.0) * STANDARD_TEMPERATURE_K
    }

    /// Figure of merit `G/T`, dB/K, referred to the antenna's terminals.
    #[must_use]
    pub fn g_over_t_db_per_k(&self) -> f64 {
        self.gain_dbi - 10.0 * math::log10(self.system_temperature_k())
    }

    /// Ratio of carrier to noise, dB, for a transmitter's EIRP, the path's loss and a
    /// bandwidth: `EIRP - L + G/T - 10 log10(kB)`.
    #[must_use]
    pub fn carrier_to_noise_db(&self, eirp_dbm: f64, path_loss_db: f64, bandwidth_hz: f64) -> f64 {
        let noise_of_one_kelvin = thermal_noise_dbm(bandwidth_hz, 1.0);
        eirp_dbm - path_loss_db + self.g_over_t_db_per_k() - noise_of_one_kelvin
    }
}
