//! Cables, materials, rates, steps and changes by their names.

use tinwave_core::radio_link::lawful::{Arrangement, RuleSet};
use tinwave_core::radio_link::{
    BudgetItemKind, BuildingMaterial, ChannelWidth, CoaxBasis, CoaxType, Coding, Connector, End,
    FoliageLoss, LARGER_ANTENNA_DB, LinkChange, OlderRate,
};
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_maker::link_plan::{PlanAnswer, Rate, Role, SensitivityBy, Spot, WallLoss};

use crate::figures::{db, entered_distance, trimmed, whole_db};

/// A material.
#[must_use]
pub const fn material(material: BuildingMaterial) -> &'static str {
    match material {
        BuildingMaterial::Brick => "brick",
        BuildingMaterial::Concrete => "concrete without bars",
        BuildingMaterial::Plasterboard => "plasterboard",
        BuildingMaterial::Wood => "wood",
        BuildingMaterial::Glass => "plain glass",
        BuildingMaterial::Chipboard => "chipboard",
        BuildingMaterial::Plywood => "plywood",
        BuildingMaterial::CeilingBoard => "ceiling board",
        BuildingMaterial::Marble => "marble",
        BuildingMaterial::Floorboard => "floorboard",
        BuildingMaterial::Metal => "metal sheet",
        _ => "another material",
    }
}

/// A cable by what it is made of and how thick it is; its class in the trade behind.
#[must_use]
pub const fn cable(coax: CoaxType) -> &'static str {
    match coax {
        CoaxType::Rg174 => "solid polyethylene, 2.8 mm (RG-174)",
        CoaxType::Rg58 => "solid polyethylene, 5 mm (RG-58)",
        CoaxType::Rg213 => "solid polyethylene, 10.3 mm (RG-213)",
        CoaxType::Rg316 => "PTFE, 2.5 mm (RG-316)",
        CoaxType::Rg142 => "PTFE, 5 mm (RG-142, RG-303)",
        CoaxType::Rg8x => "foam, 6.1 mm (RG-8X)",
        CoaxType::Rg8Foam => "foam, 10.3 mm (RG-8 foam)",
        CoaxType::Foam100 => "low loss, 2.8 mm",
        CoaxType::Foam195 => "low-loss foam, 5 mm, braid and foil",
        CoaxType::Foam200 => "low-loss foam, 5 mm, thicker core",
        CoaxType::Foam240 => "low-loss foam, 6.1 mm",
        CoaxType::Foam400 => "low-loss foam, 10.3 mm",
        CoaxType::Foam600 => "low-loss foam, 15 mm",
        CoaxType::Micro113 => "micro cable, 1.13 mm",
        CoaxType::Micro137 => "micro cable, 1.37 mm",
        CoaxType::Corrugated12 => "corrugated line, half an inch",
        _ => "another cable",
    }
}

/// How a cable's figures are known; `None` beyond their published points.
#[must_use]
pub const fn cable_basis(basis: Option<CoaxBasis>) -> &'static str {
    match basis {
        None => "beyond the published points",
        Some(CoaxBasis::Table) => "from a published table",
        Some(CoaxBasis::Memory) => "from memory, check it",
        Some(CoaxBasis::Rough) => "from memory, ±15 %",
    }
}

/// A family of connectors.
#[must_use]
pub const fn connector(connector: Connector) -> &'static str {
    match connector {
        Connector::Sma => "SMA",
        Connector::N => "N",
        Connector::Other => "another",
    }
}

/// Who sends.
#[must_use]
pub const fn role(role: Role) -> &'static str {
    match role {
        Role::Both => "both ends",
        Role::ListensHere => "only the far end",
        Role::ListensFar => "only this end",
    }
}

/// How a sensitivity is known.
#[must_use]
pub const fn sensitivity_by(by: SensitivityBy) -> &'static str {
    match by {
        SensitivityBy::Table => "rate",
        SensitivityBy::Stated => "data sheet",
        SensitivityBy::Noise => "noise",
    }
}

/// Width of a channel.
#[must_use]
pub fn width(width: ChannelWidth) -> String {
    format!("{} MHz", trimmed(width.hz() / 1e6, 0))
}

/// A rate of the table, with what carries it.
#[must_use]
pub fn rate(rate: Rate, width: ChannelWidth) -> (String, String) {
    match rate {
        Rate::Coded(coding) => (
            format!("{} Mbit/s", trimmed(coding.data_rate_mbps(width), 1)),
            format!("MCS {}, {}", coding.index(), modulation(coding)),
        ),
        Rate::Older(older) => {
            let kind = match older {
                OlderRate::Dsss2 => "DSSS",
                OlderRate::Cck11 => "CCK",
                _ => "OFDM",
            };
            (
                format!("{} Mbit/s", trimmed(older.data_rate_mbps(), 1)),
                format!("older: {kind}, in 20 MHz"),
            )
        }
    }
}

const fn modulation(coding: Coding) -> &'static str {
    match coding {
        Coding::Bpsk12 => "BPSK 1/2, slowest",
        Coding::Qpsk12 => "QPSK 1/2",
        Coding::Qpsk34 => "QPSK 3/4",
        Coding::Qam16R12 => "16-QAM 1/2",
        Coding::Qam16R34 => "16-QAM 3/4",
        Coding::Qam64R23 => "64-QAM 2/3",
        Coding::Qam64R34 => "64-QAM 3/4",
        Coding::Qam64R56 => "64-QAM 5/6",
        Coding::Qam256R34 => "256-QAM 3/4",
        Coding::Qam256R56 => "256-QAM 5/6",
        Coding::Qam1024R34 => "1024-QAM 3/4",
        Coding::Qam1024R56 => "1024-QAM 5/6",
    }
}

/// A set of rules; `None` where none are chosen.
#[must_use]
pub const fn rules(set: Option<RuleSet>) -> (&'static str, &'static str) {
    match set {
        None => ("none chosen", "no claim"),
        Some(RuleSet::UsUnlicensed) => ("United States, without a licence", "47 CFR part 15"),
        Some(RuleSet::EuLicenceExempt) => ("Europe, without a licence", "ETSI, ERC/REC 70-03"),
        Some(RuleSet::Amateur) => ("Amateur service", "with a licence"),
        Some(RuleSet::ReceiveOnly) => ("Listening only", "nothing is sent"),
        Some(_) => ("other rules", ""),
    }
}

/// What the stations are to each other.
#[must_use]
pub const fn arrangement(arrangement: Arrangement) -> &'static str {
    match arrangement {
        Arrangement::Other => "anything",
        Arrangement::FixedPointToPoint => "two fixed ends",
    }
}

/// An end, in a sentence.
pub(super) const fn end(end: End) -> &'static str {
    match end {
        End::A => "this end",
        End::B => "the far end",
    }
}

/// A step of the budget of what `from` sends, short enough for the picture.
#[must_use]
pub fn step(answer: &PlanAnswer, from: End, kind: BudgetItemKind, unit: LengthUnit) -> String {
    let (sender, receiver) = match from {
        End::A => ("here", "there"),
        End::B => ("there", "here"),
    };
    match kind {
        BudgetItemKind::TransmitPower => "Transmitter".to_owned(),
        BudgetItemKind::TransmitLine => format!("Cable {sender}"),
        BudgetItemKind::TransmitConnectors => format!("Connectors {sender}"),
        BudgetItemKind::TransmitMismatch => format!("Match {sender}"),
        BudgetItemKind::TransmitGain => format!("Gain {sender}"),
        BudgetItemKind::TransmitPointing => format!("Aim {sender}"),
        BudgetItemKind::FreeSpace => {
            format!(
                "Free space, {}",
                entered_distance(answer.plan.distance_m, unit)
            )
        }
        BudgetItemKind::Wall(n) => format!("Wall of {}", counted_wall(answer, n)),
        BudgetItemKind::Foliage => "Trees".to_owned(),
        BudgetItemKind::Obstacle if ground_decides(answer) => "Ground in the way".to_owned(),
        BudgetItemKind::Obstacle => "Obstacle".to_owned(),
        BudgetItemKind::Other => "Further loss".to_owned(),
        BudgetItemKind::Polarisation => "Wires not alike".to_owned(),
        BudgetItemKind::ReceivePointing => format!("Aim {receiver}"),
        BudgetItemKind::ReceiveGain => format!("Gain {receiver}"),
        BudgetItemKind::ReceiveMismatch => format!("Match {receiver}"),
        BudgetItemKind::ReceiveConnectors => format!("Connectors {receiver}"),
        BudgetItemKind::ReceiveLine => format!("Cable {receiver}"),
    }
}

/// The wall with this place among those that are counted.
fn counted_wall(answer: &PlanAnswer, n: usize) -> &'static str {
    let mut counted = answer.walls.iter().filter(|wall| wall.loss_db.is_some());
    counted
        .nth(n)
        .map_or("unknown stuff", |one| material(one.wall.material))
}

fn ground_decides(answer: &PlanAnswer) -> bool {
    let loss = answer.path.as_ref().and_then(|path| path.loss);
    loss.is_some_and(|loss| loss.by == Spot::Ground)
}

/// A change of the link that would buy something.
#[must_use]
pub fn change(answer: &PlanAnswer, change: LinkChange) -> String {
    match change {
        LinkChange::RemoveLine(at) => {
            format!("The radio at the antenna of {}, without cable", end(at))
        }
        LinkChange::HalveLine(at) => format!("Half the cable at {}", end(at)),
        LinkChange::BetterCable(at, coax) => {
            format!("A better cable at {}: {}", end(at), cable(coax))
        }
        LinkChange::Aim(at) => format!("Aim {} exactly", end(at)),
        LinkChange::BetterMatch(at) => format!("A perfect match at {}", end(at)),
        LinkChange::LargerAntenna(at) => format!(
            "An antenna with {} more gain at {}, such as a funnel",
            whole_db(LARGER_ANTENNA_DB),
            end(at)
        ),
        LinkChange::MatchPolarisation => "Turn one end so that both wires lie alike".to_owned(),
        LinkChange::AvoidWall(n) => format!("Go round the wall of {}", counted_wall(answer, n)),
        LinkChange::AvoidFoliage => "Go over or round the trees".to_owned(),
        LinkChange::ClearObstacle if ground_decides(answer) => {
            "Rise until the ground is clear".to_owned()
        }
        LinkChange::ClearObstacle => "Rise over the obstacle".to_owned(),
        LinkChange::HalveDistance => "Half the distance".to_owned(),
    }
}

/// Headings of the rates: of one stream, and the older ones.
#[must_use]
pub const fn rate_groups() -> (&'static str, &'static str) {
    ("One stream", "Older")
}

/// Below the rate.
#[must_use]
pub const fn rate_note() -> &'static str {
    "Needed is the least that the standard asks of every receiver: real ones are some 8 to 15 dB better. Of the rate about half arrives (both common practice, no source)."
}

/// Below a cable: its loss, and how that is known.
#[must_use]
pub fn cable_note(loss: &str, basis: Option<CoaxBasis>) -> String {
    format!("{loss}, {}", cable_basis(basis))
}

/// The connectors of an end.
#[must_use]
pub const fn connectors_of(end: End) -> &'static str {
    match end {
        End::A => "Connectors here",
        End::B => "Connectors, far end",
    }
}

/// A wall by its number.
#[must_use]
pub fn wall_of(n: usize) -> String {
    format!("Wall {} is of", n + 1)
}

/// Below a wall: what it takes.
#[must_use]
pub fn wall_note(wall: &WallLoss) -> String {
    match wall.loss_db {
        Some([exact, averaged]) => {
            format!("{}; {} on average of like walls", db(exact), db(averaged))
        }
        None => "not counted at this frequency".to_owned(),
    }
}

/// Below the trees: the span of the published forms.
#[must_use]
pub fn trees_note(loss: &FoliageLoss) -> String {
    format!(
        "{}; {} to {} by other published forms",
        db(loss.usual_db),
        format_decimal(loss.low_db, 0),
        whole_db(loss.high_db)
    )
}

/// Removes a wall, for those who hear the button alone.
#[must_use]
pub fn remove_wall(n: usize) -> String {
    format!("Remove wall {}", n + 1)
}

/// Removes an obstacle, for those who hear the button alone.
#[must_use]
pub fn remove_obstacle(n: usize) -> String {
    format!("Remove obstacle {}", n + 1)
}

/// An axis with its unit.
#[must_use]
pub fn axis_name(name: &str, unit: &str) -> String {
    format!("{name}, {unit}")
}
