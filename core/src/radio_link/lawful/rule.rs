//! One row of a rule set.

/// What the stations of a link are to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Arrangement {
    /// Two fixed stations that serve each other only.
    FixedPointToPoint,
    /// Anything else: one station to several, mobile, all round.
    Other,
}

/// How a row's text is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Basis {
    /// The text, or a quotation of it, was read.
    Read,
    /// The figures come from a database of national limits, not from the text itself.
    SecondHand,
    /// From memory.
    Memory,
}

/// Where a row comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// The place in the published rules.
    pub citation: &'static str,
    /// Year, and month if known, of the text; `None` where the copy had no date.
    pub date: Option<(u16, Option<u8>)>,
    /// How it is known.
    pub basis: Basis,
}

/// What a row limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PowerLimit {
    /// Power radiated, as from an isotropic antenna.
    Eirp {
        /// Most, dBm.
        dbm: f64,
        /// Most without transmitter power control, dBm.
        without_power_control_dbm: f64,
    },
    /// Power at the transmitter's output, less with an antenna of high gain.
    Conducted {
        /// Most, dBm.
        dbm: f64,
        /// If given, also this plus `10 log10` of the bandwidth in MHz, dBm.
        per_mhz_dbm: Option<f64>,
        /// Gain up to which nothing is taken off, dBi.
        free_gain_dbi: f64,
        /// Taken off per dB of gain above that, dB.
        reduction_db_per_db: f64,
    },
    /// The licence of the station decides.
    StationLicence,
    /// No transmission.
    NoTransmission,
}

/// What else a row asks, or warns of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Conditions {
    /// An antenna other than the one the device was approved with may be forbidden even
    /// where the power is inside the limit.
    pub changed_antenna_may_be_forbidden: bool,
    /// The operator needs a licence.
    pub needs_licence: bool,
    /// The device must make way for radar (dynamic frequency selection).
    pub dynamic_frequency_selection: bool,
    /// The device must control its power, or stay lower.
    pub transmitter_power_control: bool,
    /// Indoors only.
    pub indoor_only: bool,
    /// Only for two fixed stations that serve each other only.
    pub fixed_point_to_point_only: bool,
    /// Less is allowed upwards: 21 dBm EIRP above 30 degrees of elevation.
    pub steep_beams_limited: bool,
    /// The time on the air, or its share, is limited.
    pub duty_cycle_limited: bool,
    /// Edges and powers differ from country to country.
    pub national_limits_differ: bool,
    /// Listening to, or telling of, what is not meant for the public may be forbidden.
    pub listening_may_be_restricted: bool,
}

impl Conditions {
    /// None.
    pub const NONE: Self = Self {
        changed_antenna_may_be_forbidden: false,
        needs_licence: false,
        dynamic_frequency_selection: false,
        transmitter_power_control: false,
        indoor_only: false,
        fixed_point_to_point_only: false,
        steep_beams_limited: false,
        duty_cycle_limited: false,
        national_limits_differ: false,
        listening_may_be_restricted: false,
    };

    /// Those of either.
    pub(super) const fn with(self, other: Self) -> Self {
        Self {
            changed_antenna_may_be_forbidden: self.changed_antenna_may_be_forbidden
                | other.changed_antenna_may_be_forbidden,
            needs_licence: self.needs_licence | other.needs_licence,
            dynamic_frequency_selection: self.dynamic_frequency_selection
                | other.dynamic_frequency_selection,
            transmitter_power_control: self.transmitter_power_control
                | other.transmitter_power_control,
            indoor_only: self.indoor_only | other.indoor_only,
            fixed_point_to_point_only: self.fixed_point_to_point_only
                | other.fixed_point_to_point_only,
            steep_beams_limited: self.steep_beams_limited | other.steep_beams_limited,
            duty_cycle_limited: self.duty_cycle_limited | other.duty_cycle_limited,
            national_limits_differ: self.national_limits_differ | other.national_limits_differ,
            listening_may_be_restricted: self.listening_may_be_restricted
                | other.listening_may_be_restricted,
        }
    }
}

/// A row: frequencies, arrangement, limit, conditions, source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    /// First and last frequency, kHz.
    pub band_khz: [u32; 2],
    /// The arrangement it is for; `None` for any.
    pub arrangement: Option<Arrangement>,
    /// Least width of the channel, Hz; `None` for any.
    pub least_bandwidth_hz: Option<f64>,
    /// The limit.
    pub limit: PowerLimit,
    /// What else.
    pub conditions: Conditions,
    /// Where it is written.
    pub source: Source,
}

/// Listening: ITU Radio Regulations, Art. 17 (secrecy), from memory.
pub(super) const RECEIVE_ONLY: &[Rule] = &[Rule {
    band_khz: [0, u32::MAX],
    arrangement: None,
    least_bandwidth_hz: None,
    limit: PowerLimit::NoTransmission,
    conditions: Conditions {
        listening_may_be_restricted: true,
        ..Conditions::NONE
    },
    source: Source {
        citation: "ITU-R RR Art. 17",
        date: None,
        basis: Basis::Memory,
    },
}];
