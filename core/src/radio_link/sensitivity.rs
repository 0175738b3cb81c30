//! Minimum receiver sensitivity by IEEE Std 802.11.
//!
//! Source: IEEE Std 802.11-2020, Tables 17-18 (OFDM), 19-23 (HT), 21-25 (VHT), and
//! 802.11ax-2021, Table 27-51 (HE); the values at 20 to 160 MHz were read in a national
//! regulation that copies them, the older rates are from memory. Packet error ratio
//! 10 %. These are the least that a conforming receiver must do: real ones are some 8 to
//! 15 dB better (common practice, no source).

/// Modulation and coding of one spatial stream, slowest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Coding {
    /// BPSK, rate 1/2.
    Bpsk12,
    /// QPSK, rate 1/2.
    Qpsk12,
    /// QPSK, rate 3/4.
    Qpsk34,
    /// 16-QAM, rate 1/2.
    Qam16R12,
    /// 16-QAM, rate 3/4.
    Qam16R34,
    /// 64-QAM, rate 2/3.
    Qam64R23,
    /// 64-QAM, rate 3/4.
    Qam64R34,
    /// 64-QAM, rate 5/6.
    Qam64R56,
    /// 256-QAM, rate 3/4.
    Qam256R34,
    /// 256-QAM, rate 5/6.
    Qam256R56,
    /// 1024-QAM, rate 3/4.
    Qam1024R34,
    /// 1024-QAM, rate 5/6.
    Qam1024R56,
}

/// Width of a channel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum ChannelWidth {
    /// 20 MHz.
    Mhz20,
    /// 40 MHz.
    Mhz40,
    /// 80 MHz.
    Mhz80,
    /// 160 MHz.
    Mhz160,
}

impl ChannelWidth {
    /// Every width.
    pub const ALL: [Self; 4] = [Self::Mhz20, Self::Mhz40, Self::Mhz80, Self::Mhz160];

    /// Width, Hz.
    #[must_use]
    pub const fn hz(self) -> f64 {
        match self {
            Self::Mhz20 => 20e6,
            Self::Mhz40 => 40e6,
            Self::Mhz80 => 80e6,
            Self::Mhz160 => 160e6,
        }
    }

    /// Twice the width is 3 dB in whole decibels, as the standard counts.
    const fn step_db(self) -> f64 {
        match self {
            Self::Mhz20 => 0.0,
            Self::Mhz40 => 3.0,
            Self::Mhz80 => 6.0,
            Self::Mhz160 => 9.0,
        }
    }
}

impl Coding {
    /// Every coding, slowest first.
    pub const ALL: [Self; 12] = [
        Self::Bpsk12,
        Self::Qpsk12,
        Self::Qpsk34,
        Self::Qam16R12,
        Self::Qam16R34,
        Self::Qam64R23,
        Self::Qam64R34,
        Self::Qam64R56,
        Self::Qam256R34,
        Self::Qam256R56,
        Self::Qam1024R34,
        Self::Qam1024R56,
    ];

    /// The number that the standard gives it (MCS), 0 to 11.
    #[must_use]
    pub const fn index(self) -> u8 {
        self as u8
    }

    /// Minimum sensitivity, dBm, in a channel of a width.
    #[must_use]
    pub const fn minimum_sensitivity_dbm(self, width: ChannelWidth) -> f64 {
        let at_20_mhz = match self {
            Self::Bpsk12 => -82.0,
            Self::Qpsk12 => -79.0,
            Self::Qpsk34 => -77.0,
            Self::Qam16R12 => -74.0,
            Self::Qam16R34 => -70.0,
            Self::Qam64R23 => -66.0,
            Self::Qam64R34 => -65.0,
            Self::Qam64R56 => -64.0,
            Self::Qam256R34 => -59.0,
            Self::Qam256R56 => -57.0,
            Self::Qam1024R34 => -54.0,
            Self::Qam1024R56 => -52.0,
        };
        at_20_mhz + width.step_db()
    }

    /// Coded bits of a subcarrier times the coding rate.
    const fn bits(self) -> f64 {
        match self {
            Self::Bpsk12 => 0.5,
            Self::Qpsk12 => 1.0,
            Self::Qpsk34 => 1.5,
            Self::Qam16R12 => 2.0,
            Self::Qam16R34 => 3.0,
            Self::Qam64R23 => 4.0,
            Self::Qam64R34 => 4.5,
            Self::Qam64R56 => 5.0,
            Self::Qam256R34 => 6.0,
            Self::Qam256R56 => 20.0 / 3.0,
            Self::Qam1024R34 => 7.5,
            Self::Qam1024R56 => 25.0 / 3.0,
        }
    }

    /// Data rate of one spatial stream with a guard interval of 0.8 µs, Mbit/s: HT and
    /// VHT for codings to 256-QAM, HE for 1024-QAM, which the others lack.
    ///
    /// Data subcarriers 52, 108, 234, 468 in 4 µs, or 234, 468, 980, 1960 in 13.6 µs
    /// (IEEE Std 802.11-2020, Tables 19-6 and 21-5; 802.11ax-2021, Table 27-15; from
    /// memory). The VHT tables leave a few combinations out.
    #[must_use]
    pub const fn data_rate_mbps(self, width: ChannelWidth) -> f64 {
        let he = matches!(self, Self::Qam1024R34 | Self::Qam1024R56);
        let carriers = match (he, width) {
            (false, ChannelWidth::Mhz20) => 52.0,
            (false, ChannelWidth::Mhz40) => 108.0,
            (true, ChannelWidth::Mhz20) | (false, ChannelWidth::Mhz80) => 234.0,
            (true, ChannelWidth::Mhz40) | (false, ChannelWidth::Mhz160) => 468.0,
            (true, ChannelWidth::Mhz80) => 980.0,
            (true, ChannelWidth::Mhz160) => 1960.0,
        };
        carriers * self.bits() / if he { 13.6 } else { 4.0 }
    }
}

/// The older rates in a channel of 20 MHz.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum OlderRate {
    /// DSSS, 2 Mbit/s (frame error ratio 8 %, 1024 octets).
    Dsss2,
    /// CCK, 11 Mbit/s.
    Cck11,
    /// OFDM, 6 Mbit/s.
    Ofdm6,
    /// OFDM, 9 Mbit/s.
    Ofdm9,
    /// OFDM, 12 Mbit/s.
    Ofdm12,
    /// OFDM, 18 Mbit/s.
    Ofdm18,
    /// OFDM, 24 Mbit/s.
    Ofdm24,
    /// OFDM, 36 Mbit/s.
    Ofdm36,
    /// OFDM, 48 Mbit/s.
    Ofdm48,
    /// OFDM, 54 Mbit/s.
    Ofdm54,
}

impl OlderRate {
    /// Every rate, in the standard's order.
    pub const ALL: [Self; 10] = [
        Self::Dsss2,
        Self::Cck11,
        Self::Ofdm6,
        Self::Ofdm9,
        Self::Ofdm12,
        Self::Ofdm18,
        Self::Ofdm24,
        Self::Ofdm36,
        Self::Ofdm48,
        Self::Ofdm54,
    ];

    const fn row(self) -> (f64, f64) {
        match self {
            Self::Dsss2 => (2.0, -80.0),
            Self::Cck11 => (11.0, -76.0),
            Self::Ofdm6 => (6.0, -82.0),
            Self::Ofdm9 => (9.0, -81.0),
            Self::Ofdm12 => (12.0, -79.0),
            Self::Ofdm18 => (18.0, -77.0),
            Self::Ofdm24 => (24.0, -74.0),
            Self::Ofdm36 => (36.0, -70.0),
            Self::Ofdm48 => (48.0, -66.0),
            Self::Ofdm54 => (54.0, -65.0),
        }
    }

    /// Data rate, Mbit/s.
    #[must_use]
    pub const fn data_rate_mbps(self) -> f64 {
        self.row().0
    }

    /// Minimum sensitivity, dBm. DSSS and CCK: IEEE Std 802.11, clauses 15.4.6.2 and
    /// 16.3.8.2.
    #[must_use]
    pub const fn minimum_sensitivity_dbm(self) -> f64 {
        self.row().1
    }
}
