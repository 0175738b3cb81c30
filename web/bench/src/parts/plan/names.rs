//! Cables, materials, steps and changes by their names.

use tinwave_core::radio_link::{
    BudgetItemKind, BuildingMaterial, CoaxBasis, CoaxType, End, LARGER_ANTENNA_DB, LinkChange,
};

use super::link::{Plan, end_words};
use super::words;

/// A material in words.
pub(super) const fn material(material: BuildingMaterial) -> &'static str {
    match material {
        BuildingMaterial::Brick => "brick",
        BuildingMaterial::Concrete => "concrete",
        BuildingMaterial::Plasterboard => "plasterboard",
        BuildingMaterial::Wood => "wood",
        BuildingMaterial::Glass => "glass",
        BuildingMaterial::Chipboard => "chipboard",
        BuildingMaterial::Plywood => "plywood",
        BuildingMaterial::CeilingBoard => "ceiling board",
        BuildingMaterial::Marble => "marble",
        BuildingMaterial::Floorboard => "floorboard",
        BuildingMaterial::Metal => "metal sheet",
        _ => "wall",
    }
}

/// A cable in words.
pub(super) const fn cable(coax: CoaxType) -> &'static str {
    match coax {
        CoaxType::Rg58 => "RG-58",
        CoaxType::Rg213 => "RG-213",
        CoaxType::Rg174 => "RG-174",
        CoaxType::Rg316 => "RG-316",
        CoaxType::Rg8x => "RG-8X",
        CoaxType::Rg142 => "RG-142 or RG-303",
        CoaxType::Rg8Foam => "RG-8 with foam",
        CoaxType::Foam100 => "low-loss, class 100",
        CoaxType::Foam195 => "low-loss foam, class 195",
        CoaxType::Foam200 => "low-loss foam, class 200",
        CoaxType::Foam240 => "low-loss foam, class 240",
        CoaxType::Foam400 => "low-loss foam, class 400",
        CoaxType::Foam600 => "low-loss foam, class 600",
        CoaxType::Micro113 => "micro coax, 1.13 mm",
        CoaxType::Micro137 => "micro coax, 1.37 mm",
        CoaxType::Corrugated12 => "half-inch corrugated line",
        _ => "cable",
    }
}

/// How a cable's figures are known, at a frequency.
pub(super) fn cable_basis(coax: CoaxType, frequency_hz: f64) -> &'static str {
    let [low, high] = coax.published_range_hz();
    if !(low..=high).contains(&frequency_hz) {
        return "beyond the published points";
    }
    match coax.basis() {
        CoaxBasis::Table => "from a published table",
        CoaxBasis::Memory => "from memory, check it",
        CoaxBasis::Rough => "from memory, ±15 %",
    }
}

/// A step of the budget, short enough for the picture.
pub(super) fn step(plan: &Plan, kind: BudgetItemKind) -> String {
    let text = match kind {
        BudgetItemKind::TransmitPower => "Transmitter",
        BudgetItemKind::TransmitLine => "Sender’s cable",
        BudgetItemKind::TransmitConnectors => "Connectors",
        BudgetItemKind::TransmitMismatch => "Match, sender",
        BudgetItemKind::TransmitGain => "Gain, sender",
        BudgetItemKind::TransmitPointing => "Aim, sender",
        BudgetItemKind::FreeSpace => "Free space",
        BudgetItemKind::Wall(n) => return ["Wall, ", wall_material(plan, n)].concat(),
        BudgetItemKind::Foliage => "Trees",
        BudgetItemKind::Obstacle if plan.ground_loss_db().is_some() => "Ground",
        BudgetItemKind::Obstacle => "Obstacle",
        BudgetItemKind::Other => "Further loss",
        BudgetItemKind::Polarisation => "Polarisation",
        BudgetItemKind::ReceivePointing => "Aim, receiver",
        BudgetItemKind::ReceiveGain => "Gain, receiver",
        BudgetItemKind::ReceiveMismatch => "Match, receiver",
        BudgetItemKind::ReceiveConnectors => "Connectors",
        BudgetItemKind::ReceiveLine => "Receiver’s cable",
    };
    text.to_owned()
}

fn wall_material(plan: &Plan, n: usize) -> &'static str {
    let wall = plan.link.walls.get(n);
    wall.map_or("unknown stuff", |wall| material(wall.material))
}

/// A change of the link.
pub(super) fn change(plan: &Plan, change: LinkChange) -> String {
    let at = |what: &str, end: End| [what, " at ", end_words(end)].concat();
    match change {
        LinkChange::RemoveLine(end) => at("Put the radio at the antenna, no cable,", end),
        LinkChange::HalveLine(end) => at("Half the length of cable", end),
        LinkChange::BetterCable(end, coax) => {
            at(&["A better cable (", cable(coax), ")"].concat(), end)
        }
        LinkChange::Aim(end) => ["Aim ", end_words(end), " exactly"].concat(),
        LinkChange::BetterMatch(end) => at("A perfect match of the antenna", end),
        LinkChange::LargerAntenna(end) => at(
            &[
                "An antenna with ",
                &words::whole_db(LARGER_ANTENNA_DB),
                " more gain, such as a funnel,",
            ]
            .concat(),
            end,
        ),
        LinkChange::MatchPolarisation => "Turn one end so that both wires lie alike".to_owned(),
        LinkChange::AvoidWall(n) => ["Go round the wall of ", wall_material(plan, n)].concat(),
        LinkChange::AvoidFoliage => "Go over or round the trees".to_owned(),
        LinkChange::ClearObstacle if plan.ground_loss_db().is_some() => {
            "Rise until the ground is clear".to_owned()
        }
        LinkChange::ClearObstacle => "Rise over the obstacle".to_owned(),
        LinkChange::HalveDistance => "Half the distance".to_owned(),
    }
}
