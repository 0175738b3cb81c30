//! Attenuation of coaxial lines and of their connectors.
//!
//! Each type has the two-term law of its conductors and its dielectric,
//! `k1 sqrt(f) + k2 f` (the form of the tables in MIL-C-17), fitted to published
//! points. The same type from two makers differs by 20 to 40 %, and attenuation rises by
//! about 0.2 % per kelvin.
//!
//! Sources: RG-213, RG-142/303, RG-8 foam and the corrugated line: a public training
//! guide for repeater systems, appendix H, 50 to 850 MHz. RG-58: a table in wide use
//! among amateurs, 144 to 5800 MHz. RG-8X: cable table of a county's amateur emergency
//! service, 50 to 450 MHz. RG-174 and RG-316: usual makers' data, from memory. Low-loss
//! classes: their makers' two coefficients, from memory; classes 240, 400 and 600 agree
//! with a public table to 0.16 dB per 100 m at 50 to 450 MHz. Micro coax: from memory,
//! ±15 %.

use super::error::{FREQUENCIES_HZ, LinkError, LinkQuantity, within};
use crate::math;

/// Type of a coaxial line, by the class it is sold under.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[non_exhaustive]
pub enum CoaxType {
    /// RG-58 C/U class: solid polyethylene, 5 mm.
    Rg58,
    /// RG-213/U: solid polyethylene, 10.3 mm.
    Rg213,
    /// RG-174/U: solid polyethylene, 2.8 mm.
    Rg174,
    /// RG-316/U: PTFE, 2.5 mm.
    Rg316,
    /// RG-8X: foam polyethylene, 6.1 mm.
    Rg8x,
    /// RG-142 and RG-303: PTFE, 4.3 to 5 mm.
    Rg142,
    /// RG-8 with foam, 10.3 mm.
    Rg8Foam,
    /// Low-loss, 2.8 mm, class 100.
    Foam100,
    /// Low-loss foam, 4.95 mm, class 195.
    Foam195,
    /// Low-loss foam, 4.95 mm, class 200.
    Foam200,
    /// Low-loss foam, 6.1 mm, class 240.
    Foam240,
    /// Low-loss foam, 10.3 mm, class 400.
    Foam400,
    /// Low-loss foam, 15 mm, class 600.
    Foam600,
    /// Micro coax 1.13 mm, as on radio modules.
    Micro113,
    /// Micro coax 1.37 mm.
    Micro137,
    /// Half-inch corrugated line with foam.
    Corrugated12,
}

/// How a type's figures are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CoaxBasis {
    /// Fitted to a published table.
    Table,
    /// Makers' figures, from memory.
    Memory,
    /// From memory, ±15 %.
    Rough,
}

/// Figures of a type.
struct Row {
    key: &'static str,
    /// dB per 100 m and root of MHz; dB per 100 m and MHz.
    law: [f64; 2],
    /// First and last published point, MHz.
    points_mhz: [f64; 2],
    basis: CoaxBasis,
}

const fn row(key: &'static str, law: [f64; 2], points_mhz: [f64; 2], basis: CoaxBasis) -> Row {
    Row {
        key,
        law,
        points_mhz,
        basis,
    }
}

impl CoaxType {
    /// Every type, in the order a list should show them.
    pub const ALL: [Self; 16] = [
        Self::Rg58,
        Self::Rg174,
        Self::Rg316,
        Self::Rg142,
        Self::Rg8x,
        Self::Rg8Foam,
        Self::Rg213,
        Self::Foam100,
        Self::Foam195,
        Self::Foam200,
        Self::Foam240,
        Self::Foam400,
        Self::Foam600,
        Self::Micro113,
        Self::Micro137,
        Self::Corrugated12,
    ];

    const fn row(self) -> Row {
        use CoaxBasis::{Memory, Rough, Table};
        match self {
            Self::Rg58 => row("rg58", [1.51355, 0.010449], [144.0, 5800.0], Table),
            Self::Rg213 => row("rg213", [0.6434, 0.006609], [50.0, 850.0], Table),
            Self::Rg174 => row("rg174", [2.40595, 0.035427], [100.0, 1000.0], Memory),
            Self::Rg316 => row("rg316", [2.67468, 0.007166], [100.0, 3000.0], Memory),
            Self::Rg8x => row("rg8x", [0.96754, 0.018371], [50.0, 450.0], Table),
            Self::Rg142 => row("rg142", [1.22708, 0.001962], [50.0, 850.0], Table),
            Self::Rg8Foam => row("rg8_foam", [0.55678, 0.00149], [50.0, 850.0], Table),
            Self::Foam100 => row("foam100", [2.32657, 0.005709], [50.0, 5800.0], Memory),
            Self::Foam195 => row("foam195", [1.1708, 0.001542], [50.0, 5800.0], Memory),
            Self::Foam200 => row("foam200", [1.05282, 0.001083], [50.0, 5800.0], Memory),
            Self::Foam240 => row("foam240", [0.79423, 0.001083], [50.0, 5800.0], Memory),
            Self::Foam400 => row("foam400", [0.40121, 0.000853], [50.0, 5800.0], Memory),
            Self::Foam600 => row("foam600", [0.24787, 0.000853], [50.0, 5800.0], Memory),
            Self::Micro113 => row("micro113", [5.82685, 0.017021], [1000.0, 5800.0], Rough),
            Self::Micro137 => row("micro137", [4.36355, 0.011504], [1000.0, 5800.0], Rough),
            Self::Corrugated12 => row(
                "corrugated_half_inch",
                [0.22456, 0.000486],
                [50.0, 850.0],
                Table,
            ),
        }
    }

    /// Attenuation, dB/m, of the line alone, matched, at about 20 °C.
    ///
    /// Used from 30 MHz to 100 GHz; outside [`Self::published_range_hz`] it is the
    /// law's extrapolation.
    ///
    /// # Errors
    /// A frequency outside 30 MHz to 100 GHz.
    pub fn attenuation_db_per_m(self, frequency_hz: f64) -> Result<f64, LinkError> {
        let hz = within(LinkQuantity::FrequencyHz, frequency_hz, FREQUENCIES_HZ)?;
        let mhz = hz / 1e6;
        let [conductor, dielectric] = self.row().law;
        Ok((conductor * math::sqrt(mhz) + dielectric * mhz) / 100.0)
    }

    /// Frequencies of the published points that the law rests on, Hz.
    #[must_use]
    pub const fn published_range_hz(self) -> [f64; 2] {
        let [low, high] = self.row().points_mhz;
        [low * 1e6, high * 1e6]
    }

    /// How its figures are known.
    #[must_use]
    pub const fn basis(self) -> CoaxBasis {
        self.row().basis
    }

    /// Short word for links and files (`"rg58"`).
    #[must_use]
    pub const fn key(self) -> &'static str {
        self.row().key
    }

    /// The type of a short word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.key() == key)
    }
}

/// Family of a connector.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Connector {
    /// SMA, also with exchanged centre contacts.
    Sma,
    /// N.
    N,
    /// Any other, or of unknown make: 0.15 dB at 2.4 GHz.
    Other,
}

impl Connector {
    /// Every family.
    pub const ALL: [Self; 3] = [Self::Sma, Self::N, Self::Other];

    /// Loss of a mated pair, dB, straight and sound; rises as the root of frequency.
    ///
    /// Source: `0.03 sqrt(f)` for SMA and `0.05 sqrt(f)` for N, `f` in GHz, as the most
    /// that MIL-PRF-39012 allows (from memory); good pairs at 2.4 GHz have 0.05 to
    /// 0.15 dB (common practice, no source), the upper end of which stands for others.
    ///
    /// # Errors
    /// A frequency outside 30 MHz to 100 GHz.
    pub fn pair_loss_db(self, frequency_hz: f64) -> Result<f64, LinkError> {
        let hz = within(LinkQuantity::FrequencyHz, frequency_hz, FREQUENCIES_HZ)?;
        let factor = match self {
            Self::Sma => 0.03,
            Self::N => 0.05,
            Self::Other => 0.15 / math::sqrt(2.4),
        };
        Ok(factor * math::sqrt(hz / 1e9))
    }
}

/// A cable of one type.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoaxLine {
    /// Its type.
    pub coax: CoaxType,
    /// Its length, m, up to 1000.
    pub length_m: f64,
}

impl CoaxLine {
    /// Loss of the whole length without connectors, dB.
    ///
    /// # Errors
    /// A length outside 0 to 1000 m or a frequency outside 30 MHz to 100 GHz.
    pub fn loss_db(&self, frequency_hz: f64) -> Result<f64, LinkError> {
        let length_m = within(LinkQuantity::LineLengthM, self.length_m, [0.0, 1000.0])?;
        Ok(length_m * self.coax.attenuation_db_per_m(frequency_hz)?)
    }
}
