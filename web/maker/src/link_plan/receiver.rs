//! The figures of an end that only listens.

use tinwave_core::radio_link::{Budget, ReceiveStation, STANDARD_TEMPERATURE_K};

use super::antenna::PlanAntenna;
use super::plan::LinkPlan;

/// What a station that only listens is worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReceiverAnswer {
    /// Figure of merit, dB/K.
    pub g_over_t_db: f64,
    /// System noise temperature, K.
    pub system_k: f64,
    /// Signal over noise in the plan's bandwidth, dB; `None` where nothing is heard of.
    pub carrier_to_noise_db: Option<f64>,
    /// That bandwidth, Hz.
    pub bandwidth_hz: f64,
}

impl ReceiverAnswer {
    pub(super) fn new(
        plan: &LinkPlan,
        antenna: &PlanAntenna,
        feed_loss_db: f64,
        budget: Option<&Budget>,
    ) -> Self {
        let station = ReceiveStation {
            gain_dbi: antenna.realised_gain_dbi(),
            antenna_temperature_k: plan.antenna_k,
            line_loss_db: feed_loss_db,
            line_temperature_k: STANDARD_TEMPERATURE_K,
            noise_figure_db: plan.noise_figure_db,
        };
        let bandwidth_hz = plan.channel_hz();
        let carrier_to_noise_db = budget.map(|budget| {
            // All between the sender's mouth and this end's terminals, its gain apart.
            let path = budget.eirp_dbm - budget.received_dbm + station.gain_dbi - feed_loss_db;
            station.carrier_to_noise_db(budget.eirp_dbm, path, bandwidth_hz)
        });
        Self {
            g_over_t_db: station.g_over_t_db_per_k(),
            system_k: station.system_temperature_k(),
            carrier_to_noise_db,
            bandwidth_hz,
        }
    }
}
