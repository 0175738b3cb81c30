//! What the maker has entered about the link.

use tinwave_core::radio_link::lawful::{Arrangement, RuleSet};
use tinwave_core::radio_link::{
    BuildingMaterial, ChannelWidth, CoaxLine, CoaxType, Coding, Connector, Obstacle, OlderRate,
    Polarisation, Sense, Wall, sensitivity_from_noise_dbm,
};

use super::form::Form;
use super::obstacles;
use super::typed::{
    COUNT, DBI, DBM, DECIBELS, DEGREES, KELVIN, MEGAHERTZ, METRES, MILLIMETRES, Units,
};

/// Rows for walls in the part's markup.
pub(super) const WALLS: usize = 4;

/// Which ends send.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    Both,
    /// This end only listens.
    ListensHere,
    /// The far end only listens.
    ListensFar,
}

/// What stands at the far end.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum FarAntenna {
    /// A can like this one.
    Same,
    /// The can of another link.
    Link(String),
    /// Gain, dBi, and half-power width, degrees.
    Stated(f64, f64),
}

/// Radio and line of one end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct EndEntries {
    pub power_dbm: Option<f64>,
    pub line: Option<CoaxLine>,
    pub connector: Connector,
    pub pairs: u8,
    pub pointing_deg: f64,
    pub height_m: f64,
}

/// All of it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Entries {
    pub role: Role,
    pub distance_m: f64,
    pub fade_db: f64,
    pub here: EndEntries,
    pub far: EndEntries,
    pub far_antenna: FarAntenna,
    pub far_polarisation: Polarisation,
    pub walls: Vec<Wall>,
    pub foliage_m: f64,
    pub other_db: f64,
    pub sensitivity_here_dbm: f64,
    pub sensitivity_far_dbm: f64,
    pub bandwidth_hz: f64,
    pub noise_figure_db: f64,
    pub antenna_k: f64,
    pub obstacles: Vec<Obstacle>,
    pub arm_m: f64,
    pub rules: Option<RuleSet>,
    pub arrangement: Arrangement,
    pub power_control: bool,
    pub way: Way,
}

/// Which direction is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    Weaker,
    FromHere,
    FromFar,
}

/// Names of one end's fields.
struct EndNames {
    power: &'static str,
    power_place: &'static str,
    cable: &'static str,
    length: &'static str,
    length_place: &'static str,
    connector: &'static str,
    pairs: &'static str,
    pointing: &'static str,
    height: &'static str,
}

const HERE: EndNames = EndNames {
    power: "plan-power-here",
    power_place: "power-here",
    cable: "plan-cable-here",
    length: "plan-length-here",
    length_place: "length-here",
    connector: "plan-connector-here",
    pairs: "plan-pairs-here",
    pointing: "plan-pointing-here",
    height: "plan-height-here",
};

const FAR: EndNames = EndNames {
    power: "plan-power-far",
    power_place: "power-far",
    cable: "plan-cable-far",
    length: "plan-length-far",
    length_place: "length-far",
    connector: "plan-connector-far",
    pairs: "plan-pairs-far",
    pointing: "plan-pointing-far",
    height: "plan-height-far",
};

impl Entries {
    /// Reads them all; `None` where one can't be read, which then has a message.
    pub(super) fn read(form: &mut Form<'_>, frequency_hz: f64) -> Option<Self> {
        let role = match form.choice("plan-role") {
            "listen-here" => Role::ListensHere,
            "listen-far" => Role::ListensFar,
            _ => Role::Both,
        };
        let distance_m = form.number("plan-distance", METRES, [1.0, 1e9]);
        let noise = Noise::read(form, role);
        let (sensitivity_here_dbm, sensitivity_far_dbm) = sensitivities(form, &noise);
        let entries = Self {
            role,
            distance_m,
            fade_db: form.number("plan-fade", DECIBELS, [0.0, 60.0]),
            here: end(form, &HERE, role != Role::ListensHere),
            far: end(form, &FAR, role != Role::ListensFar),
            far_antenna: far_antenna(form),
            far_polarisation: far_polarisation(form),
            walls: walls(form, frequency_hz),
            foliage_m: form.number("plan-foliage", METRES, [0.0, 400.0]),
            other_db: form.number("plan-other", DECIBELS, [0.0, 200.0]),
            sensitivity_here_dbm,
            sensitivity_far_dbm,
            bandwidth_hz: noise.bandwidth_hz,
            noise_figure_db: noise.figure_db,
            antenna_k: noise.antenna_k,
            obstacles: obstacles::read(form, "plan-obstacles", distance_m),
            arm_m: form.number("plan-arm", METRES, [0.01, 100.0]),
            rules: RuleSet::from_key(form.choice("plan-rules")),
            arrangement: match form.choice("plan-arrangement") {
                "point" => Arrangement::FixedPointToPoint,
                _ => Arrangement::Other,
            },
            power_control: form.is_on("plan-power-control"),
            way: match form.choice("plan-way") {
                "here" => Way::FromHere,
                "far" => Way::FromFar,
                _ => Way::Weaker,
            },
        };
        form.show("rules-more", entries.rules.is_some());
        form.is_good().then_some(entries)
    }
}

fn end(form: &mut Form<'_>, names: &EndNames, sends: bool) -> EndEntries {
    let power_dbm = if sends {
        Some(form.power_dbm(names.power))
    } else {
        form.right(names.power);
        None
    };
    form.show(names.power_place, sends);
    let coax = CoaxType::from_key(form.choice(names.cable));
    form.show(names.length_place, coax.is_some());
    let line = match coax {
        Some(coax) => Some(CoaxLine {
            coax,
            length_m: form.number(names.length, METRES, [0.0, 1000.0]),
        }),
        None => {
            form.right(names.length);
            None
        }
    };
    let pairs = form.number(names.pairs, COUNT, [0.0, 20.0]);
    EndEntries {
        power_dbm,
        line,
        connector: match form.choice(names.connector) {
            "n" => Connector::N,
            "other" => Connector::Other,
            _ => Connector::Sma,
        },
        pairs: pairs.round() as u8,
        pointing_deg: form.number(names.pointing, DEGREES, [0.0, 180.0]),
        height_m: form.number(names.height, METRES, [0.0, 10_000.0]),
    }
}

fn far_antenna(form: &mut Form<'_>) -> FarAntenna {
    let kind = form.choice("plan-far");
    let (link, stated) = (kind == "link", kind == "stated");
    form.show("far-link", link);
    form.show("far-stated", stated);
    if link {
        // Whether it can be read is said where it is read.
        let text = form.choice("plan-far-link").trim();
        let fragment = text.split_once('#').map_or(text, |(_, after)| after);
        return FarAntenna::Link(fragment.to_owned());
    }
    form.right("plan-far-link");
    if stated {
        let gain_dbi = form.number("plan-far-gain", DBI, [-20.0, 60.0]);
        let width_deg = form.number("plan-far-width", DEGREES, [0.1, 360.0]);
        return FarAntenna::Stated(gain_dbi, width_deg);
    }
    form.right("plan-far-gain");
    form.right("plan-far-width");
    FarAntenna::Same
}

fn far_polarisation(form: &mut Form<'_>) -> Polarisation {
    let kind = form.choice("plan-far-polarisation");
    form.show("turn", !matches!(kind, "right" | "left"));
    let sense = match kind {
        "right" => Sense::RightHand,
        "left" => Sense::LeftHand,
        _ => {
            let turn_deg = form.number("plan-turn", DEGREES, [-180.0, 180.0]);
            return Polarisation::Linear {
                tilt_rad: turn_deg.to_radians(),
            };
        }
    };
    form.right("plan-turn");
    Polarisation::Circular { sense }
}

/// Markup names of one row of walls.
const WALL_NAMES: [(&str, &str, &str); WALLS] = [
    ("plan-wall-1", "plan-wall-1-thickness", "wall-1"),
    ("plan-wall-2", "plan-wall-2-thickness", "wall-2"),
    ("plan-wall-3", "plan-wall-3-thickness", "wall-3"),
    ("plan-wall-4", "plan-wall-4-thickness", "wall-4"),
];

fn walls(form: &mut Form<'_>, frequency_hz: f64) -> Vec<Wall> {
    let mut walls = Vec::new();
    // The first empty row stays in sight.
    let mut shown = true;
    for (material_name, thickness_name, place) in WALL_NAMES {
        let material = BuildingMaterial::from_key(form.choice(material_name));
        form.show(place, shown || material.is_some());
        shown = material.is_some();
        let Some(material) = material else {
            form.right(material_name);
            form.right(thickness_name);
            continue;
        };
        let [low, high] = material.frequency_range_hz();
        if (low..=high).contains(&frequency_hz) {
            form.right(material_name);
        } else {
            let sentence = "This material’s figures do not hold at this frequency.";
            form.wrong(material_name, sentence);
        }
        let thickness_mm = form.number(thickness_name, MILLIMETRES, [0.0, 3000.0]);
        walls.push(Wall {
            material,
            thickness_m: thickness_mm / 1e3,
        });
    }
    walls
}

/// A number that counts only where its field is shown.
fn used(form: &mut Form<'_>, shown: bool, name: &str, units: Units, range: [f64; 2]) -> f64 {
    if shown {
        form.number(name, units, range)
    } else {
        form.right(name);
        range[0]
    }
}

/// Bandwidth and noise of a receiver.
struct Noise {
    bandwidth_hz: f64,
    figure_db: f64,
    antenna_k: f64,
    width: ChannelWidth,
}

impl Noise {
    fn read(form: &mut Form<'_>, role: Role) -> Self {
        let by = form.choice("plan-sensitivity");
        let (stated, noise) = (by == "stated", by == "noise");
        let table = !stated && !noise;
        let listens = role == Role::ListensHere;
        form.show("by-table", table);
        form.show("by-stated", stated);
        form.show("by-noise", noise || listens);
        form.show("bandwidth", !table);
        form.show("antenna-noise", listens);
        let width = match form.choice("plan-width") {
            "40" => ChannelWidth::Mhz40,
            "80" => ChannelWidth::Mhz80,
            "160" => ChannelWidth::Mhz160,
            _ => ChannelWidth::Mhz20,
        };
        let bandwidth_hz = if table {
            form.right("plan-bandwidth");
            width.hz()
        } else {
            form.number("plan-bandwidth", MEGAHERTZ, [0.001, 2000.0]) * 1e6
        };
        if by != "noise" {
            form.right("plan-snr");
        }
        if !stated {
            form.right("plan-sensitivity-here");
            form.right("plan-sensitivity-far");
        }
        Self {
            bandwidth_hz,
            figure_db: used(
                form,
                noise || listens,
                "plan-noise-figure",
                DECIBELS,
                [0.0, 40.0],
            ),
            antenna_k: used(form, listens, "plan-antenna-noise", KELVIN, [2.0, 20_000.0]),
            width,
        }
    }
}

/// Sensitivities of this end and of the far one, dBm.
fn sensitivities(form: &mut Form<'_>, noise: &Noise) -> (f64, f64) {
    match form.choice("plan-sensitivity") {
        "stated" => {
            let range = [-180.0, 30.0];
            form.right("plan-rate");
            let here = form.number("plan-sensitivity-here", DBM, range);
            let far = form.number_if_any("plan-sensitivity-far", DBM, range);
            (here, far.unwrap_or(here))
        }
        "noise" => {
            form.right("plan-rate");
            let snr_db = form.number("plan-snr", DECIBELS, [-50.0, 60.0]);
            let both = sensitivity_from_noise_dbm(noise.bandwidth_hz, noise.figure_db, snr_db);
            (both, both)
        }
        _ => {
            let both = table_sensitivity_dbm(form, noise.width);
            (both, both)
        }
    }
}

fn table_sensitivity_dbm(form: &mut Form<'_>, width: ChannelWidth) -> f64 {
    let rate = form.choice("plan-rate");
    let numbered = |prefix: &str| rate.strip_prefix(prefix)?.parse::<usize>().ok();
    let older = numbered("older").and_then(|n| OlderRate::ALL.get(n));
    let coding = numbered("mcs").and_then(|n| Coding::ALL.get(n)).copied();
    let read = match older {
        Some(_) if width != ChannelWidth::Mhz20 => Err(OLDER_RATES.to_owned()),
        Some(older) => Ok(older.minimum_sensitivity_dbm()),
        None => Ok(coding
            .unwrap_or(Coding::Bpsk12)
            .minimum_sensitivity_dbm(width)),
    };
    form.or_wrong("plan-rate", read, 0.0)
}

/// Where an older rate is wanted in a wider channel.
const OLDER_RATES: &str = "The older rates exist in a channel of 20 MHz only. Choose 20 MHz.";
