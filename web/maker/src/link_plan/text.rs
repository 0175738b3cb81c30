//! A plan as one line of text, to be kept on the device.
//!
//! `plan1;role=both;distance=300;…;wall=brick,0.12;obstacle=120,8`: a word and a value
//! for each thing. Words that are not known, and values that can't be used, are passed
//! over and the usual value holds, so every version opens what another has kept.
//! Numbers are in the unit that they are kept in and come back exactly.

use tinwave_core::radio_link::lawful::{Arrangement, RuleSet};
use tinwave_core::radio_link::{
    BuildingMaterial, ChannelWidth, CoaxType, Coding, Connector, End, Obstacle, OlderRate, Wall,
};

use super::number::PlanNumber;
use super::plan::{
    EndAntenna, FarPolarisation, LinkPlan, MOST_OBSTACLES, MOST_WALLS, Rate, Role, SensitivityBy,
};

/// Whose text this is, and the version of its form.
const HEAD: &str = "plan1";
/// Longest text that is looked at.
const LONGEST: usize = 20_000;

/// Writes a plan.
#[must_use]
pub fn write(plan: &LinkPlan) -> String {
    let mut text = String::from(HEAD);
    let mut put = |key: &str, value: &str| {
        for part in [";", key, "=", value] {
            text.push_str(part);
        }
    };
    for (choice, key) in CHOICES.map(|choice| (choice, choice.key())) {
        if let Some(value) = choice.value(plan) {
            put(key, &value);
        }
    }
    for number in PlanNumber::SINGLE {
        if let Some(value) = number.value(plan) {
            put(number_key(number), &value.to_string());
        }
    }
    for wall in &plan.walls {
        let thickness = wall.thickness_m.to_string();
        put("wall", &[wall.material.key(), ",", &thickness].concat());
    }
    for one in &plan.obstacles {
        let pair = [&one.distance_m.to_string(), ",", &one.height_m.to_string()];
        put("obstacle", &pair.concat());
    }
    text
}

/// Reads what [`write`] wrote, in this version or another; `None` for any other text.
#[must_use]
pub fn read(text: &str) -> Option<LinkPlan> {
    let mut parts = text.get(..text.len().min(LONGEST))?.trim().split(';');
    if parts.next() != Some(HEAD) {
        return None;
    }
    let mut plan = LinkPlan::default();
    // Left out is left out, whatever is usual.
    plan.far.stated_dbm = None;
    for (key, value) in parts.filter_map(|part| part.split_once('=')) {
        take(&mut plan, key, value);
    }
    Some(plan)
}

fn take(plan: &mut LinkPlan, key: &str, value: &str) {
    if let Some(choice) = CHOICES.into_iter().find(|choice| choice.key() == key) {
        choice.take(plan, value);
        return;
    }
    match key {
        "wall" => {
            let Some((material, thickness)) = value.split_once(',') else {
                return;
            };
            let material = BuildingMaterial::from_key(material);
            if let (Some(material), Ok(thickness_m)) = (material, thickness.parse())
                && plan.walls.len() < MOST_WALLS
            {
                let place = plan.walls.len();
                let usual = Wall {
                    material,
                    thickness_m: 0.1,
                };
                plan.walls.push(usual);
                PlanNumber::WallThickness(place).set(plan, thickness_m);
            }
        }
        "obstacle" => {
            let numbers = value.split_once(',');
            let numbers = numbers.and_then(|(at, high)| at.parse().ok().zip(high.parse().ok()));
            if let Some((distance_m, height_m)) = numbers
                && plan.obstacles.len() < MOST_OBSTACLES
            {
                let place = plan.obstacles.len();
                let usual = Obstacle {
                    distance_m: 1.0,
                    height_m: 0.0,
                };
                plan.obstacles.push(usual);
                PlanNumber::ObstacleDistance(place).set(plan, distance_m);
                PlanNumber::ObstacleHeight(place).set(plan, height_m);
            }
        }
        _ => {
            let mut all = PlanNumber::SINGLE.into_iter();
            let number = all.find(|number| number_key(*number) == key);
            if let (Some(number), Ok(value)) = (number, value.parse()) {
                number.set(plan, value);
            }
        }
    }
}

const fn number_key(number: PlanNumber) -> &'static str {
    match number {
        PlanNumber::Distance => "distance",
        PlanNumber::Fade => "fade",
        PlanNumber::Power(End::A) => "power-here",
        PlanNumber::Power(End::B) => "power-far",
        PlanNumber::Gain(End::A) => "gain-here",
        PlanNumber::Gain(End::B) => "gain-far",
        PlanNumber::Width(End::A) => "beam-here",
        PlanNumber::Width(End::B) => "beam-far",
        PlanNumber::Cable(End::A) => "cable-length-here",
        PlanNumber::Cable(End::B) => "cable-length-far",
        PlanNumber::Pairs(End::A) => "pairs-here",
        PlanNumber::Pairs(End::B) => "pairs-far",
        PlanNumber::Pointing(End::A) => "off-here",
        PlanNumber::Pointing(End::B) => "off-far",
        PlanNumber::Height(End::A) => "height-here",
        PlanNumber::Height(End::B) => "height-far",
        PlanNumber::Stated(End::A) => "stated-here",
        PlanNumber::Stated(End::B) => "stated-far",
        PlanNumber::Turn => "turn",
        PlanNumber::Bandwidth => "bandwidth",
        PlanNumber::NoiseFigure => "noise-figure",
        PlanNumber::Snr => "snr",
        PlanNumber::AntennaNoise => "antenna-noise",
        PlanNumber::Foliage => "trees",
        PlanNumber::Other => "other",
        PlanNumber::Arm => "arm",
        // Kept with their lists.
        PlanNumber::WallThickness(_) => "wall",
        PlanNumber::ObstacleDistance(_) | PlanNumber::ObstacleHeight(_) => "obstacle",
    }
}

/// What is chosen from a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Choice {
    Role,
    Antenna(End),
    Cable(End),
    Connector(End),
    Polarisation,
    Sensitivity,
    Rate,
    Width,
    Rules,
    Arrangement,
    PowerControl,
}

const CHOICES: [Choice; 14] = [
    Choice::Role,
    Choice::Antenna(End::A),
    Choice::Antenna(End::B),
    Choice::Cable(End::A),
    Choice::Cable(End::B),
    Choice::Connector(End::A),
    Choice::Connector(End::B),
    Choice::Polarisation,
    Choice::Sensitivity,
    Choice::Rate,
    Choice::Width,
    Choice::Rules,
    Choice::Arrangement,
    Choice::PowerControl,
];

const ROLES: [(&str, Role); 3] = [
    ("both", Role::Both),
    ("listen-here", Role::ListensHere),
    ("listen-far", Role::ListensFar),
];
const CONNECTORS: [(&str, Connector); 3] = [
    ("sma", Connector::Sma),
    ("n", Connector::N),
    ("other", Connector::Other),
];
const POLARISATIONS: [(&str, FarPolarisation); 3] = [
    ("linear", FarPolarisation::Linear),
    ("right", FarPolarisation::RightHand),
    ("left", FarPolarisation::LeftHand),
];
const SENSITIVITIES: [(&str, SensitivityBy); 3] = [
    ("table", SensitivityBy::Table),
    ("stated", SensitivityBy::Stated),
    ("noise", SensitivityBy::Noise),
];
const WIDTHS: [(&str, ChannelWidth); 4] = [
    ("20", ChannelWidth::Mhz20),
    ("40", ChannelWidth::Mhz40),
    ("80", ChannelWidth::Mhz80),
    ("160", ChannelWidth::Mhz160),
];
const ARRANGEMENTS: [(&str, Arrangement); 2] = [
    ("other", Arrangement::Other),
    ("point", Arrangement::FixedPointToPoint),
];

fn word<T: PartialEq>(list: &[(&'static str, T)], value: &T) -> Option<String> {
    let found = list.iter().find(|(_, one)| one == value);
    found.map(|(word, _)| (*word).to_owned())
}

fn choose<T: Copy>(list: &[(&str, T)], word: &str, place: &mut T) {
    if let Some((_, value)) = list.iter().find(|(known, _)| *known == word) {
        *place = *value;
    }
}

impl Choice {
    const fn key(self) -> &'static str {
        match self {
            Self::Role => "role",
            Self::Antenna(End::A) => "antenna-here",
            Self::Antenna(End::B) => "antenna-far",
            Self::Cable(End::A) => "cable-here",
            Self::Cable(End::B) => "cable-far",
            Self::Connector(End::A) => "connector-here",
            Self::Connector(End::B) => "connector-far",
            Self::Polarisation => "polarisation",
            Self::Sensitivity => "sensitivity",
            Self::Rate => "rate",
            Self::Width => "width",
            Self::Rules => "rules",
            Self::Arrangement => "arrangement",
            Self::PowerControl => "power-control",
        }
    }

    /// Its word; `None` where nothing is chosen.
    fn value(self, plan: &LinkPlan) -> Option<String> {
        match self {
            Self::Role => word(&ROLES, &plan.role),
            Self::Antenna(end) => Some(match &plan.end(end).antenna {
                EndAntenna::ThisDesign => "this".to_owned(),
                EndAntenna::Stated => "stated".to_owned(),
                EndAntenna::Kept(link) => ["kept:", link].concat(),
            }),
            Self::Cable(end) => plan.end(end).cable.map(|cable| cable.key().to_owned()),
            Self::Connector(end) => word(&CONNECTORS, &plan.end(end).connector),
            Self::Polarisation => word(&POLARISATIONS, &plan.far_polarisation),
            Self::Sensitivity => word(&SENSITIVITIES, &plan.sensitivity),
            Self::Rate => Some(rate_key(plan.rate)),
            Self::Width => word(&WIDTHS, &plan.width),
            Self::Rules => plan.rules.map(|rules| rules.key().to_owned()),
            Self::Arrangement => word(&ARRANGEMENTS, &plan.arrangement),
            Self::PowerControl => plan.power_control.then(|| "yes".to_owned()),
        }
    }

    fn take(self, plan: &mut LinkPlan, value: &str) {
        match self {
            Self::Role => choose(&ROLES, value, &mut plan.role),
            Self::Antenna(end) => {
                let antenna = &mut plan.end_mut(end).antenna;
                match value {
                    "this" => *antenna = EndAntenna::ThisDesign,
                    "stated" => *antenna = EndAntenna::Stated,
                    _ => {
                        if let Some(link) = value.strip_prefix("kept:") {
                            *antenna = EndAntenna::Kept(link.to_owned());
                        }
                    }
                }
            }
            Self::Cable(end) => plan.end_mut(end).cable = CoaxType::from_key(value),
            Self::Connector(end) => {
                choose(&CONNECTORS, value, &mut plan.end_mut(end).connector);
            }
            Self::Polarisation => choose(&POLARISATIONS, value, &mut plan.far_polarisation),
            Self::Sensitivity => choose(&SENSITIVITIES, value, &mut plan.sensitivity),
            Self::Rate => {
                if let Some(rate) = rate_of_key(value) {
                    plan.rate = rate;
                }
            }
            Self::Width => choose(&WIDTHS, value, &mut plan.width),
            Self::Rules => plan.rules = RuleSet::from_key(value),
            Self::Arrangement => choose(&ARRANGEMENTS, value, &mut plan.arrangement),
            Self::PowerControl => plan.power_control = value == "yes",
        }
    }
}

/// A rate by the number that the standard gives it, or by its place among the older.
fn rate_key(rate: Rate) -> String {
    match rate {
        Rate::Coded(coding) => ["mcs", &coding.index().to_string()].concat(),
        Rate::Older(older) => {
            let place = OlderRate::ALL.iter().position(|one| *one == older);
            ["older", &place.unwrap_or_default().to_string()].concat()
        }
    }
}

fn rate_of_key(key: &str) -> Option<Rate> {
    let numbered = |prefix: &str| key.strip_prefix(prefix)?.parse::<usize>().ok();
    if let Some(place) = numbered("mcs") {
        return Coding::ALL.get(place).copied().map(Rate::Coded);
    }
    numbered("older").and_then(|place| OlderRate::ALL.get(place).copied().map(Rate::Older))
}
