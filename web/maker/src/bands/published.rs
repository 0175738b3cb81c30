//! Published bands between 0.3 and 15 GHz.

use tinwave_core::design::Band;

use crate::confidence::Confidence;
use crate::confidence::Confidence::{FromMemory, Seen};

/// Which part of the list a band stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BandGroup {
    /// Wireless networks (IEEE 802.11).
    WirelessLan,
    /// Industrial, scientific and medical bands.
    Ism,
    /// Short-range and long-range low-power devices.
    ShortRange,
    /// Amateur radio.
    Amateur,
    /// Received only.
    Receive,
}

/// One published band.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PublishedBand {
    /// The word it is kept under.
    pub key: &'static str,
    /// Its name; a receive-only band is named by what is received.
    pub name: &'static str,
    /// Its part of the list.
    pub group: BandGroup,
    /// Lower edge.
    pub low_khz: u32,
    /// Upper edge.
    pub high_khz: u32,
    /// Whether it is only to be received.
    pub receive_only: bool,
    /// Published source.
    pub source: &'static str,
    /// How sure the edges are.
    pub confidence: Confidence,
    /// Licence and use; may be empty.
    pub note: &'static str,
}

impl BandGroup {
    /// Every group, in the order a list should show them.
    pub const ALL: [Self; 5] = [
        Self::WirelessLan,
        Self::Ism,
        Self::ShortRange,
        Self::Amateur,
        Self::Receive,
    ];

    /// Its heading.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::WirelessLan => "Wireless networks (802.11)",
            Self::Ism => "Industrial, scientific, medical (ISM)",
            Self::ShortRange => "Low-power devices",
            Self::Amateur => "Amateur radio (licence required)",
            Self::Receive => "Receive only",
        }
    }
}

impl PublishedBand {
    /// Its edges.
    #[must_use]
    pub const fn band(&self) -> Band {
        Band {
            low_khz: self.low_khz,
            high_khz: self.high_khz,
        }
    }
}

const LICENCE: &str = "Transmitting needs an amateur licence.";
const NO_LICENCE: &str = "Usually free of licence, within power limits that count the antenna’s gain. Local rules decide.";

const fn wireless(
    key: &'static str,
    name: &'static str,
    edges: (u32, u32),
    source: &'static str,
    note: &'static str,
) -> PublishedBand {
    PublishedBand {
        key,
        name,
        group: BandGroup::WirelessLan,
        low_khz: edges.0,
        high_khz: edges.1,
        receive_only: false,
        source,
        confidence: Seen,
        note,
    }
}

const fn amateur(
    key: &'static str,
    name: &'static str,
    edges: (u32, u32),
    source: &'static str,
    note: &'static str,
) -> PublishedBand {
    PublishedBand {
        key,
        name,
        group: BandGroup::Amateur,
        low_khz: edges.0,
        high_khz: edges.1,
        receive_only: false,
        source,
        confidence: Seen,
        note,
    }
}

const fn device(
    key: &'static str,
    name: &'static str,
    group: BandGroup,
    edges: (u32, u32),
    source: &'static str,
    confidence: Confidence,
) -> PublishedBand {
    PublishedBand {
        key,
        name,
        group,
        low_khz: edges.0,
        high_khz: edges.1,
        receive_only: false,
        source,
        confidence,
        note: NO_LICENCE,
    }
}

const fn received(
    key: &'static str,
    name: &'static str,
    edges: (u32, u32),
    source: &'static str,
    confidence: Confidence,
    note: &'static str,
) -> PublishedBand {
    PublishedBand {
        key,
        name,
        group: BandGroup::Receive,
        low_khz: edges.0,
        high_khz: edges.1,
        receive_only: true,
        source,
        confidence,
        note,
    }
}

const CIRCULAR: &str = "Sent with right-hand circular polarisation: a straight probe loses 3 dB.";

/// The list, in the order of [`BandGroup::ALL`].
pub const BANDS: &[PublishedBand] = &[
    wireless(
        "wlan2g4",
        "Wireless LAN 2.4 GHz",
        (2_400_000, 2_483_500),
        "47 CFR 15.247; ETSI EN 300 328",
        NO_LICENCE,
    ),
    wireless(
        "wlan5low",
        "Wireless LAN 5 GHz, lower part",
        (5_150_000, 5_350_000),
        "ETSI EN 301 893; 47 CFR 15.407",
        "Indoors only in many countries; from 5250 MHz the device must give way to radar.",
    ),
    wireless(
        "wlan5up",
        "Wireless LAN 5 GHz, upper part",
        (5_470_000, 5_725_000),
        "ETSI EN 301 893; 47 CFR 15.407",
        "The device must give way to radar. Power limits count the antenna’s gain.",
    ),
    wireless(
        "wlan5g8",
        "Wireless LAN 5.8 GHz (USA)",
        (5_725_000, 5_850_000),
        "47 CFR 15.407(a)(3)",
        NO_LICENCE,
    ),
    wireless(
        "wlan6us",
        "Wireless LAN 6 GHz (USA)",
        (5_925_000, 7_125_000),
        "47 CFR 15.407",
        "Most devices are allowed at low power indoors only. An antenna with gain is generally not allowed.",
    ),
    wireless(
        "wlan6eu",
        "Wireless LAN 6 GHz (Europe)",
        (5_945_000, 6_425_000),
        "National entries of the public wireless regulatory database",
        "Low power indoors only.",
    ),
    device(
        "ism2g4",
        "ISM 2450 MHz",
        BandGroup::Ism,
        (2_400_000, 2_500_000),
        "ITU Radio Regulations 5.150",
        FromMemory,
    ),
    device(
        "ism5g8",
        "ISM 5800 MHz",
        BandGroup::Ism,
        (5_725_000, 5_875_000),
        "ITU Radio Regulations 5.150",
        FromMemory,
    ),
    device(
        "ism915",
        "ISM 915 MHz (the Americas)",
        BandGroup::Ism,
        (902_000, 928_000),
        "ITU Radio Regulations 5.150",
        FromMemory,
    ),
    device(
        "ism433",
        "ISM 433.92 MHz (parts of Europe and Africa)",
        BandGroup::Ism,
        (433_050, 434_790),
        "ITU Radio Regulations 5.138, 5.280",
        FromMemory,
    ),
    device(
        "srd868",
        "Low-power devices 863–870 MHz (Europe)",
        BandGroup::ShortRange,
        (863_000, 870_000),
        "ERC/REC 70-03; ETSI EN 300 220",
        FromMemory,
    ),
    device(
        "lpd915",
        "Low-power devices 902–928 MHz (USA)",
        BandGroup::ShortRange,
        (902_000, 928_000),
        "47 CFR 15.247",
        Seen,
    ),
    device(
        "personal2g4",
        "Sensor networks 2.4 GHz (802.15.4)",
        BandGroup::ShortRange,
        (2_403_500, 2_481_500),
        "IEEE 802.15.4, channels 11 to 26",
        FromMemory,
    ),
    amateur(
        "ham33cm",
        "33 cm (the Americas)",
        (902_000, 928_000),
        "47 CFR 97.301",
        LICENCE,
    ),
    amateur(
        "ham23cm",
        "23 cm",
        (1_240_000, 1_300_000),
        "47 CFR 97.301; ITU Radio Regulations article 5",
        "Transmitting needs an amateur licence; satellite navigation must not be disturbed.",
    ),
    amateur(
        "ham13cm",
        "13 cm",
        (2_300_000, 2_450_000),
        "47 CFR 97.301; ITU Radio Regulations article 5",
        "Transmitting needs an amateur licence. National parts differ widely (USA: 2300–2310 and 2390–2450 MHz).",
    ),
    amateur(
        "ham9cm1",
        "9 cm (Europe and Africa, some countries)",
        (3_400_000, 3_475_000),
        "47 CFR 97.301 (2009)",
        LICENCE,
    ),
    amateur(
        "ham9cm2",
        "9 cm (the Americas, Asia, Pacific)",
        (3_300_000, 3_500_000),
        "47 CFR 97.301 (2009)",
        "Transmitting needs an amateur licence. The band is being withdrawn in several countries.",
    ),
    amateur(
        "ham6cm",
        "6 cm",
        (5_650_000, 5_850_000),
        "47 CFR 97.301",
        LICENCE,
    ),
    amateur(
        "ham6cm2",
        "6 cm (the Americas)",
        (5_650_000, 5_925_000),
        "47 CFR 97.301",
        LICENCE,
    ),
    amateur(
        "ham3cm",
        "3 cm",
        (10_000_000, 10_500_000),
        "47 CFR 97.301",
        LICENCE,
    ),
    PublishedBand {
        key: "satup13cm",
        name: "Amateur satellite uplink 2.4 GHz",
        group: BandGroup::Amateur,
        low_khz: 2_400_050,
        high_khz: 2_409_500,
        receive_only: false,
        source: "Band plan of the geostationary amateur transponder",
        confidence: FromMemory,
        note: "Transmitting needs an amateur licence. The satellite listens to right-hand circular polarisation.",
    },
    received(
        "aircraft1090",
        "Aircraft positions, 1090 MHz",
        (1_089_000, 1_091_000),
        "ICAO Annex 10, volume IV",
        FromMemory,
        "Vertical polarisation.",
    ),
    received(
        "aircraft978",
        "Aircraft positions, 978 MHz (USA)",
        (977_000, 979_000),
        "ICAO Annex 10, volume III",
        FromMemory,
        "Vertical polarisation.",
    ),
    received(
        "navl5",
        "Satellite navigation L5/E5a",
        (1_166_220, 1_186_680),
        "IS-GPS-705 (1176.45 MHz)",
        FromMemory,
        CIRCULAR,
    ),
    received(
        "navl2",
        "Satellite navigation L2",
        (1_226_577, 1_228_623),
        "IS-GPS-200 (1227.60 MHz)",
        FromMemory,
        CIRCULAR,
    ),
    received(
        "hydrogen",
        "Hydrogen line, 21 cm",
        (1_420_000, 1_421_000),
        "1420.406 MHz: H. Hellwig et al., IEEE Trans. Instrum. Meas. 19 (1970) 200",
        Seen,
        "No one may transmit here (ITU Radio Regulations 5.340).",
    ),
    received(
        "satmobile",
        "Geostationary mobile-satellite downlink",
        (1_525_000, 1_559_000),
        "ITU Radio Regulations 5.351A",
        Seen,
        CIRCULAR,
    ),
    received(
        "navl1",
        "Satellite navigation L1/E1",
        (1_574_397, 1_576_443),
        "IS-GPS-200 (1575.42 MHz)",
        FromMemory,
        CIRCULAR,
    ),
    received(
        "navg1",
        "Satellite navigation G1 (FDMA)",
        (1_598_060, 1_605_380),
        "Interface control document of the system (centre 1602 MHz)",
        FromMemory,
        CIRCULAR,
    ),
    received(
        "leomobile",
        "Low-orbit mobile-satellite downlink",
        (1_616_000, 1_626_500),
        "ITU Radio Regulations article 5",
        FromMemory,
        CIRCULAR,
    ),
    received(
        "weathergrb",
        "Weather pictures, geostationary, fast downlink",
        (1_680_900, 1_692_300),
        "Satellite operator’s specification (1686.6 MHz, both circular polarisations)",
        FromMemory,
        "A straight probe loses 3 dB.",
    ),
    received(
        "weatherhrit",
        "Weather pictures, geostationary, slow downlink",
        (1_693_500, 1_694_700),
        "Satellite operator’s reception notes (1694.1 MHz, linear)",
        Seen,
        "Linear polarisation: turn the can for the strongest signal.",
    ),
    received(
        "weatherhrpt",
        "Weather pictures, polar orbit",
        (1_696_500, 1_708_500),
        "Satellite status bulletins (1698.0, 1702.5, 1707.0 MHz)",
        Seen,
        "Some of these satellites have been switched off: check which still send. Circular polarisation.",
    ),
    received(
        "weatherahrpt",
        "Weather pictures, polar orbit, 1701.3 MHz",
        (1_699_000, 1_704_000),
        "Satellite operator’s specification (1701.3 MHz)",
        FromMemory,
        CIRCULAR,
    ),
    received(
        "cordless",
        "Cordless telephones (Europe), measuring only",
        (1_880_000, 1_900_000),
        "ETSI EN 301 406",
        FromMemory,
        "Some countries forbid listening to what is not meant for you.",
    ),
    received(
        "satdown3cm",
        "Amateur satellite downlink 10 GHz",
        (10_489_500, 10_499_000),
        "Band plan of the geostationary amateur transponder",
        FromMemory,
        "",
    ),
];

/// The band of a key.
#[must_use]
pub fn band_by_key(key: &str) -> Option<&'static PublishedBand> {
    BANDS.iter().find(|band| band.key == key)
}

/// The first published band with exactly these edges.
#[must_use]
pub fn named(band: Band) -> Option<&'static PublishedBand> {
    BANDS.iter().find(|published| published.band() == band)
}
