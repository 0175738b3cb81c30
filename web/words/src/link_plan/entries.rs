//! Labels, helps and refusals of the entries.

use tinwave_core::radio_link::End;
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_maker::link_plan::{
    EndAntenna, Knowledge, LinkPlan, PlanAnswer, PlanNumber, PlanQuantity, PlanRefusal, Role,
};

use crate::figures::{dbm, entered_distance, trimmed, watts, whole_db};

/// What a number is.
#[must_use]
pub fn label(number: PlanNumber) -> String {
    match number {
        PlanNumber::Distance => "Distance".to_owned(),
        PlanNumber::Fade => "Keep against fading".to_owned(),
        PlanNumber::Power(End::A) => "Power here".to_owned(),
        PlanNumber::Power(End::B) => "Power, far end".to_owned(),
        PlanNumber::Gain(_) => "Gain".to_owned(),
        PlanNumber::Width(_) => "Half-power width".to_owned(),
        PlanNumber::Cable(_) => "Length of the cable".to_owned(),
        PlanNumber::Pairs(_) => "Pairs of connectors".to_owned(),
        PlanNumber::Pointing(End::A) => "This end looks past by".to_owned(),
        PlanNumber::Pointing(End::B) => "The far end looks past by".to_owned(),
        PlanNumber::Height(End::A) => "Height of this end".to_owned(),
        PlanNumber::Height(End::B) => "Height of the far end".to_owned(),
        PlanNumber::Stated(End::A) => "Needed here".to_owned(),
        PlanNumber::Stated(End::B) => "Needed at the far end".to_owned(),
        PlanNumber::Turn => "Wires turned by".to_owned(),
        PlanNumber::Bandwidth => "Bandwidth".to_owned(),
        PlanNumber::NoiseFigure => "Noise figure".to_owned(),
        PlanNumber::Snr => "Signal over noise".to_owned(),
        PlanNumber::AntennaNoise => "Noise of the antenna".to_owned(),
        PlanNumber::Foliage => "Way through trees".to_owned(),
        PlanNumber::Other => "Further loss".to_owned(),
        PlanNumber::Arm => "Arm that you push".to_owned(),
        PlanNumber::WallThickness(n) => format!("Thickness of wall {}", n + 1),
        PlanNumber::ObstacleDistance(n) => format!("Obstacle {}, from this end", n + 1),
        PlanNumber::ObstacleHeight(n) => format!("Height of obstacle {}", n + 1),
    }
}

/// How to measure or choose a number, in a sentence.
#[must_use]
pub const fn help(number: PlanNumber) -> &'static str {
    match number {
        PlanNumber::Distance => "From mouth to mouth; 1.2 km, 900 ft or 0.5 mi may be written.",
        PlanNumber::Fade => {
            "Weather, reflections and moving leaves take some now and then: 10 dB is usual on a short clear path, 20 dB where it must not fail (common practice, no source)."
        }
        PlanNumber::Power(_) => "At the radio’s socket; 63 mW may be written.",
        PlanNumber::Gain(_) => "As its data sheet has it.",
        PlanNumber::Width(_) => "Between the half-power points; 360 for one that sends all round.",
        PlanNumber::Cable(_) => "From the radio to the antenna.",
        PlanNumber::Pairs(_) => "A plug in its socket is one pair.",
        PlanNumber::Pointing(_) => "0 when it is aimed exactly.",
        PlanNumber::Height(_) => "Of the mouth above the ground.",
        PlanNumber::Stated(End::A) => "Sensitivity of the receiver here, by its data sheet.",
        PlanNumber::Stated(End::B) => {
            "Sensitivity of the far receiver; empty where it is the same."
        }
        PlanNumber::Turn => "0 when both wires lie alike, 90 when they are crossed.",
        PlanNumber::Bandwidth => "Of the channel; the noise in it counts, and the law asks for it.",
        PlanNumber::NoiseFigure => "Of the receiver, by its data sheet; 6 dB is usual.",
        PlanNumber::Snr => "What the receiver needs above the noise.",
        PlanNumber::AntennaNoise => {
            "Near the ground some 290 K; towards the cold sky 30 to 60 K (common practice, no source)."
        }
        PlanNumber::Foliage => {
            "Through the crowns of trees in leaf; the published formulas differ by a factor of two."
        }
        PlanNumber::Other => {
            "What is not counted here, such as rain: at 2.4 GHz it takes next to nothing, at 10 GHz the heaviest some 4 dB in a kilometre (ITU-R P.838, from memory)."
        }
        PlanNumber::Arm => "From the pivot to where your hand moves it.",
        PlanNumber::WallThickness(_) => {
            "Dry and plain, met straight on; steel bars, foil, coated glass and damp add 3 to 30 dB (common practice, no source)."
        }
        PlanNumber::ObstacleDistance(_) => "Along the path, between the ends.",
        PlanNumber::ObstacleHeight(_) => "Of its top above the level of both ends’ ground.",
    }
}

/// Why what was typed is refused, and what would be right.
#[must_use]
pub fn refusal(number: PlanNumber, refusal: &PlanRefusal, unit: LengthUnit) -> String {
    let (value, [low, high]) = match refusal {
        PlanRefusal::Entry(error) => return error.to_string(),
        PlanRefusal::OutOfRange { value, range } => (*value, *range),
    };
    if let PlanNumber::Power(_) = number {
        return if value > high {
            format!(
                "No station may send {} W: the most that any rules here know is {}.",
                trimmed(10_f64.powf(value / 10.0) / 1e3, 0),
                watts(high)
            )
        } else {
            format!("That is next to no power. It can be {} or more.", dbm(low))
        };
    }
    let quantity = number.quantity();
    let shown = |value: f64| amount(quantity, value, unit);
    if value > high {
        format!(
            "{} is too large. It can be at most {}.",
            shown(value),
            shown(high)
        )
    } else {
        format!(
            "{} is too small. It must be at least {}.",
            shown(value),
            shown(low)
        )
    }
}

/// A number with its unit, as far as it needs to be told.
fn amount(quantity: PlanQuantity, value: f64, unit: LengthUnit) -> String {
    if quantity == PlanQuantity::Distance && value.abs() >= 1.0 {
        return entered_distance(value, unit);
    }
    let number = trimmed(value / quantity.worth(unit), 3);
    match quantity.symbol(unit) {
        "" => number,
        "°" => format!("{number}°"),
        symbol => format!("{number} {symbol}"),
    }
}

/// A word of the entries that is no number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChoiceWord {
    /// What stands here.
    AntennaHere,
    /// What stands at the far end.
    AntennaFar,
    /// This design, here.
    ThisCan,
    /// This design, at the far end.
    CanLikeThis,
    /// Something else.
    SomethingElse,
    /// Heads the designs kept on the device.
    KeptDesigns,
    /// Heads what is always there.
    Usual,
    /// Who sends.
    WhoSends,
    /// How the sensitivity is known.
    KnownBy,
    /// The rate.
    Rate,
    /// Width of the channel.
    ChannelWidth,
    /// The cable here.
    CableHere,
    /// The far cable.
    CableFar,
    /// No cable.
    NoCable,
    /// The connectors.
    Connectors,
    /// Wave of the far antenna.
    FarWave,
    /// Linear.
    Straight,
    /// Right-hand circular.
    TurnsRight,
    /// Left-hand circular.
    TurnsLeft,
    /// What a wall is made of.
    WallOf,
    /// Adds a wall.
    AddWall,
    /// Adds an obstacle.
    AddObstacle,
    /// Removes one.
    Remove,
    /// The rules.
    Rules,
    /// What the stations are to each other.
    Stations,
    /// The transmitters control their power.
    PowerControl,
    /// A design that no list has.
    DesignOfLink,
}

/// A word of the entries.
#[must_use]
pub const fn choice_words(word: ChoiceWord) -> &'static str {
    match word {
        ChoiceWord::AntennaHere => "This end has",
        ChoiceWord::AntennaFar => "The far end has",
        ChoiceWord::ThisCan => "this can",
        ChoiceWord::CanLikeThis => "a can like this one",
        ChoiceWord::SomethingElse => "something else",
        ChoiceWord::KeptDesigns => "Kept on this device",
        ChoiceWord::Usual => "Always there",
        ChoiceWord::WhoSends => "Who sends",
        ChoiceWord::KnownBy => "Needed level by",
        ChoiceWord::Rate => "Rate",
        ChoiceWord::ChannelWidth => "Channel",
        ChoiceWord::CableHere => "Cable here",
        ChoiceWord::CableFar => "Cable, far end",
        ChoiceWord::NoCable => "none: the radio sits at the antenna",
        ChoiceWord::Connectors => "Connectors",
        ChoiceWord::FarWave => "The far antenna’s wave",
        ChoiceWord::Straight => "straight",
        ChoiceWord::TurnsRight => "turns right",
        ChoiceWord::TurnsLeft => "turns left",
        ChoiceWord::WallOf => "Wall",
        ChoiceWord::AddWall => "Add a wall",
        ChoiceWord::AddObstacle => "Add an obstacle",
        ChoiceWord::Remove => "Remove",
        ChoiceWord::Rules => "Go by",
        ChoiceWord::Stations => "The stations are",
        ChoiceWord::PowerControl => "The radio controls its power (TPC)",
        ChoiceWord::DesignOfLink => "a design that is no longer kept",
    }
}

/// A fold of the entries with its values in its line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Summary {
    /// The receiver.
    Receiver,
    /// Cables and connectors.
    Cables,
    /// Walls, trees, aim, further loss.
    InTheWay,
    /// Heights and obstacles.
    Path,
}

/// Title and values of a fold.
#[must_use]
pub fn summary(fold: Summary, plan: &LinkPlan, unit: LengthUnit) -> (&'static str, String) {
    match fold {
        Summary::Receiver => ("Receiver, fading", receiver(plan)),
        Summary::Cables => ("Cables and connectors", cables(plan, unit)),
        Summary::InTheWay => ("Walls, trees, aim", in_the_way(plan, unit)),
        Summary::Path => ("Heights and obstacles", path(plan, unit)),
    }
}

fn receiver(plan: &LinkPlan) -> String {
    let kept = format!("{} kept", whole_db(plan.fade_db));
    let who = match plan.role {
        Role::Both => "",
        Role::ListensHere => ", this end listens",
        Role::ListensFar => ", the far end listens",
    };
    format!("{}, {kept}{who}", needed(plan))
}

fn needed(plan: &LinkPlan) -> String {
    let (here, far) = (plan.needed_dbm(End::A), plan.needed_dbm(End::B));
    if here == far || !plan.receives(End::A) {
        format!("{} needed", level(far))
    } else if plan.receives(End::B) {
        format!("{} needed here, {} there", level(here), level(far))
    } else {
        format!("{} needed", level(here))
    }
}

fn level(value: f64) -> String {
    format!("{} dBm", trimmed(value, 1))
}

fn cables(plan: &LinkPlan, unit: LengthUnit) -> String {
    let of = |end: End| {
        let end = plan.end(end);
        end.cable.map(|_| entered_distance(end.cable_m, unit))
    };
    match (of(End::A), of(End::B)) {
        (None, None) => "no cable: the radios sit at the antennas".to_owned(),
        (Some(here), Some(far)) if here == far => format!("{here} of cable each"),
        (Some(here), Some(far)) => format!("{here} of cable here, {far} there"),
        (Some(here), None) => format!("{here} of cable here, none there"),
        (None, Some(far)) => format!("no cable here, {far} there"),
    }
}

fn in_the_way(plan: &LinkPlan, unit: LengthUnit) -> String {
    let walls = match plan.walls.len() {
        0 => "no walls".to_owned(),
        1 => "one wall".to_owned(),
        n => format!("{n} walls"),
    };
    let trees = if plan.foliage_m > 0.0 {
        format!("{} of trees", entered_distance(plan.foliage_m, unit))
    } else {
        "no trees".to_owned()
    };
    let is_aimed = plan.here.pointing_deg == 0.0 && plan.far.pointing_deg == 0.0;
    let aim = if is_aimed {
        "aimed exactly"
    } else {
        "not aimed exactly"
    };
    [walls, trees, aim.to_owned()].join(", ")
}

fn path(plan: &LinkPlan, unit: LengthUnit) -> String {
    let (here, far) = (plan.here.height_m, plan.far.height_m);
    let heights = if here == far {
        format!("both ends at {}", entered_distance(here, unit))
    } else {
        let of = |height| entered_distance(height, unit);
        format!("{} here, {} there", of(here), of(far))
    };
    let obstacles = match plan.obstacles.len() {
        0 => "no obstacles".to_owned(),
        1 => "one obstacle".to_owned(),
        n => format!("{n} obstacles"),
    };
    [heights, obstacles].join(", ")
}

/// Gain and widths of an end's antenna, below its choice.
#[must_use]
pub fn antenna_note(answer: &PlanAnswer, end: End) -> String {
    let Some(antenna) = &answer.end(end).antenna else {
        return String::new();
    };
    if answer.plan.end(end).antenna == EndAntenna::Stated {
        return String::new();
    }
    let gain = format_decimal(antenna.realised_gain_dbi(), 1);
    match antenna.knowledge {
        Knowledge::Computed | Knowledge::Stated => format!("{gain} dBi"),
        Knowledge::WithoutProbe => format!("{gain} dBi, match apart"),
        Knowledge::Estimated => format!("{gain} dBi, estimate"),
    }
}
