//! What follows from a plan: plain data, worked out in well under a frame.

use tinwave_core::design::Band;
use tinwave_core::radio_link::lawful::{RuleSet, Transmission};
use tinwave_core::radio_link::{
    Budget, BuildingMaterial, CoaxBasis, CoaxLine, CoaxType, End, FoliageLoss, Link, LinkEnd,
    LinkError, Saving, Wall, foliage_loss,
};

use super::aim::AimAnswer;
use super::antenna::PlanAntenna;
use super::law::LawAnswer;
use super::path::PathAnswer;
use super::plan::{LinkPlan, Role, centre_hz};
use super::receiver::ReceiverAnswer;
use super::safe::{SafeAnswer, far_field_from_m, safe_answers};

/// Margins that differ by less than this are alike, dB.
const ALIKE_DB: f64 = 0.05;

/// A wall and what it takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallLoss {
    /// The wall.
    pub wall: Wall,
    /// Its loss, and that of like walls on average, dB; `None` where nothing is published
    /// of its material at this frequency: it is not counted.
    pub loss_db: Option<[f64; 2]>,
}

/// Trees and what they take.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TreesLoss {
    /// Way through them, m.
    pub depth_m: f64,
    /// The loss; `None` where the published forms do not reach: it is not counted.
    pub loss: Option<FoliageLoss>,
}

/// A cable and what it takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineLoss {
    /// The cable.
    pub coax: CoaxType,
    /// Its length, m.
    pub length_m: f64,
    /// Its loss, dB.
    pub loss_db: f64,
    /// How its figures are known; `None` beyond their published points.
    pub basis: Option<CoaxBasis>,
}

/// How far the link reaches in free space alone; what stands in the way now stays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// With the margin wanted against fading, m.
    pub kept_m: f64,
    /// Until nothing is to spare, m.
    pub out_m: f64,
}

/// The link, where both antennas are known.
#[derive(Clone, Debug, PartialEq)]
pub struct LinkAnswer {
    /// Both ends and what lies between.
    pub link: Link,
    /// Budgets of the directions that there are, this end's first.
    pub budgets: Vec<Budget>,
    /// The direction with the smaller margin.
    pub weaker: Budget,
    /// How far it reaches.
    pub reach: Reach,
    /// Which change buys most, the best first.
    pub savings: Vec<Saving>,
    /// Where an end's far field begins, m, if that is farther than the other end: figures
    /// do not hold there.
    pub near_field_m: Option<f64>,
    /// Figures of this end, where it only listens.
    pub receiver: Option<ReceiverAnswer>,
}

/// One end.
#[derive(Clone, Debug, PartialEq)]
pub struct EndAnswer {
    /// Its antenna; `None` while that is not known.
    pub antenna: Option<PlanAntenna>,
    /// Its power, dBm, where it sends.
    pub power_dbm: Option<f64>,
    /// Its cable.
    pub line: Option<LineLoss>,
    /// What aiming asks for.
    pub aim: Option<AimAnswer>,
    /// What the chosen rules say.
    pub law: Option<LawAnswer>,
    /// What each standard asks for in front of it; empty where it only listens.
    pub safe: Vec<SafeAnswer>,
}

/// What follows from a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanAnswer {
    /// The plan.
    pub plan: LinkPlan,
    /// Middle of the band, Hz.
    pub frequency_hz: f64,
    /// The link; `None` while an antenna is not known.
    pub link: Option<LinkAnswer>,
    /// The path; `None` where it is too long to lie along the ground.
    pub path: Option<PathAnswer>,
    /// This end and the far one.
    pub ends: [EndAnswer; 2],
    /// The walls.
    pub walls: Vec<WallLoss>,
    /// The trees, if any.
    pub trees: Option<TreesLoss>,
}

impl PlanAnswer {
    /// Works it out at the middle of a band, for the antennas of this end and of the far
    /// one as far as they are known.
    ///
    /// # Errors
    /// A number that the formulas do not take.
    pub fn new(
        plan: &LinkPlan,
        band: Band,
        antennas: [Option<&PlanAntenna>; 2],
    ) -> Result<Self, LinkError> {
        let frequency_hz = centre_hz(band);
        let path = PathAnswer::new(plan, frequency_hz)?;
        let walls = wall_losses(plan, frequency_hz);
        let trees = (plan.foliage_m > 0.0).then(|| TreesLoss {
            depth_m: plan.foliage_m,
            loss: foliage_loss(plan.foliage_m, frequency_hz).ok(),
        });
        let [here, far] = antennas;
        let mut answer = Self {
            ends: [
                end_answer(plan, End::A, here, frequency_hz)?,
                end_answer(plan, End::B, far, frequency_hz)?,
            ],
            plan: plan.clone(),
            frequency_hz,
            link: None,
            path,
            walls,
            trees,
        };
        if let (Some(here), Some(far)) = (here, far) {
            answer.link = LinkAnswer::new(&answer, [here, far])?;
        }
        Ok(answer)
    }

    /// One of the ends.
    #[must_use]
    pub const fn end(&self, end: End) -> &EndAnswer {
        let [here, far] = &self.ends;
        match end {
            End::A => here,
            End::B => far,
        }
    }

    /// Whether the margin is the most that can be: something in the way takes more than
    /// is counted, or was not counted.
    #[must_use]
    pub fn is_at_best(&self) -> bool {
        self.path.as_ref().is_some_and(PathAnswer::is_at_best)
            || self.walls.iter().any(|wall| wall.loss_db.is_none())
            || self.trees.is_some_and(|trees| trees.loss.is_none())
    }

    /// The distance to keep from a mouth, m: the longest of all ends and standards;
    /// `None` where none sends, or one can't be given.
    #[must_use]
    pub fn keep_away_m(&self) -> Option<f64> {
        let all = self.ends.iter().flat_map(|end| &end.safe);
        all.map(|safe| safe.keep_m)
            .reduce(|a, b| Some(a?.max(b?)))
            .flatten()
    }
}

impl LinkAnswer {
    fn new(answer: &PlanAnswer, antennas: [&PlanAntenna; 2]) -> Result<Option<Self>, LinkError> {
        let plan = &answer.plan;
        let [here, far] = antennas;
        let frequency_hz = answer.frequency_hz;
        let link = Link {
            a: link_end(plan, End::A, here),
            b: link_end(plan, End::B, far),
            frequency_hz,
            distance_m: plan.distance_m,
            walls: answer.walls.iter().filter_map(counted).collect(),
            foliage_depth_m: answer
                .trees
                .filter(|trees| trees.loss.is_some())
                .map_or(0.0, |trees| trees.depth_m),
            obstacle_loss_db: answer
                .path
                .as_ref()
                .map_or(0.0, |path| path.clearance.diffraction_loss_db()),
            other_loss_db: plan.other_db,
            required_fade_margin_db: plan.fade_db,
        };
        let budgets = link.budgets()?;
        let (Some(weaker), Some(kept_m), Some(out_m)) = (
            link.weaker_budget()?,
            link.reach_both_ways_m(plan.fade_db)?,
            link.reach_both_ways_m(0.0)?,
        ) else {
            return Ok(None);
        };
        let near_field_m = antennas
            .map(|antenna| far_field_from_m(antenna, frequency_hz))
            .into_iter()
            .fold(0.0, f64::max);
        let receiver = if plan.role == Role::ListensHere {
            let feed = link.a.feed_loss_db(frequency_hz)?;
            Some(ReceiverAnswer::new(plan, here, feed, budgets.first()))
        } else {
            None
        };
        Ok(Some(Self {
            savings: link.what_buys_most()?,
            budgets,
            weaker,
            reach: Reach { kept_m, out_m },
            near_field_m: (near_field_m > plan.distance_m).then_some(near_field_m),
            receiver,
            link,
        }))
    }

    /// The budget of what an end sends, if it does.
    #[must_use]
    pub fn from(&self, end: End) -> Option<&Budget> {
        self.budgets.iter().find(|budget| budget.from == end)
    }

    /// Whether both directions there are have the same margin.
    #[must_use]
    pub fn is_alike(&self) -> bool {
        match self.budgets.as_slice() {
            [one, other] => (one.margin_db - other.margin_db).abs() < ALIKE_DB,
            _ => true,
        }
    }

    /// Margin of a direction at another distance, dB: in free space, all else as it is.
    #[must_use]
    pub fn margin_at_db(&self, from: End, distance_m: f64) -> Option<f64> {
        let here_m = self.link.distance_m;
        let budget = self.from(from)?;
        Some(budget.margin_db - 20.0 * (distance_m / here_m).log10())
    }
}

fn counted(wall: &WallLoss) -> Option<Wall> {
    wall.loss_db.map(|_| wall.wall)
}

fn wall_losses(plan: &LinkPlan, frequency_hz: f64) -> Vec<WallLoss> {
    let loss = |wall: &Wall| {
        let exact = wall.loss_db(frequency_hz).ok()?;
        Some([exact, wall.averaged_loss_db(frequency_hz).ok()?])
    };
    plan.walls
        .iter()
        .map(|wall| WallLoss {
            wall: *wall,
            loss_db: loss(wall),
        })
        .collect()
}

fn link_end(plan: &LinkPlan, end: End, antenna: &PlanAntenna) -> LinkEnd {
    let entered = plan.end(end);
    LinkEnd {
        transmit_power_dbm: plan.power_dbm(end),
        sensitivity_dbm: plan.receives(end).then(|| plan.needed_dbm(end)),
        line: line(plan, end),
        connector: entered.connector,
        connector_pairs: entered.pairs,
        mismatch_loss_db: antenna.mismatch_loss_db,
        gain_dbi: antenna.gain_dbi,
        pointing_loss_db: antenna.pointing_loss_db(entered.pointing_deg),
        polarisation: plan.polarisation(end),
    }
}

fn line(plan: &LinkPlan, end: End) -> Option<CoaxLine> {
    let entered = plan.end(end);
    entered.cable.map(|coax| CoaxLine {
        coax,
        length_m: entered.cable_m,
    })
}

fn end_answer(
    plan: &LinkPlan,
    end: End,
    antenna: Option<&PlanAntenna>,
    frequency_hz: f64,
) -> Result<EndAnswer, LinkError> {
    let power_dbm = plan.power_dbm(end);
    let line_loss = match line(plan, end) {
        Some(line) => Some(line_loss(line, frequency_hz)?),
        None => None,
    };
    let pair_db = plan.end(end).connector.pair_loss_db(frequency_hz)?;
    let feed_db =
        line_loss.map_or(0.0, |line| line.loss_db) + f64::from(plan.end(end).pairs) * pair_db;
    // By rules for listening, an end that only listens stands well too.
    let is_judged = power_dbm.is_some() || plan.rules == Some(RuleSet::ReceiveOnly);
    let law = antenna.filter(|_| is_judged).and_then(|antenna| {
        let sent = Transmission {
            frequency_hz,
            bandwidth_hz: plan.channel_hz(),
            // The strongest direction counts, and a loss by reflection is no excuse.
            gain_dbi: antenna.peak_gain_dbi,
            line_loss_db: feed_db,
            transmit_power_dbm: power_dbm,
            arrangement: plan.arrangement,
            power_control: plan.power_control,
        };
        LawAnswer::new(plan.rules, &sent, line_loss.is_some())
    });
    let safe = antenna
        .zip(power_dbm)
        .map(|(antenna, power_dbm)| safe_answers(antenna, power_dbm - feed_db, frequency_hz));
    Ok(EndAnswer {
        aim: antenna.map(|antenna| AimAnswer::new(antenna, plan.arm_m, plan.distance_m)),
        antenna: antenna.cloned(),
        power_dbm,
        line: line_loss,
        law,
        safe: safe.unwrap_or_default(),
    })
}

fn line_loss(line: CoaxLine, frequency_hz: f64) -> Result<LineLoss, LinkError> {
    let [low, high] = line.coax.published_range_hz();
    Ok(LineLoss {
        coax: line.coax,
        length_m: line.length_m,
        loss_db: line.loss_db(frequency_hz)?,
        basis: (low..=high)
            .contains(&frequency_hz)
            .then(|| line.coax.basis()),
    })
}

/// The materials that a list should offer at a frequency: those of which something is
/// published there.
#[must_use]
pub fn materials_at(frequency_hz: f64) -> Vec<BuildingMaterial> {
    let covers = |material: &BuildingMaterial| {
        let [low, high] = material.frequency_range_hz();
        (low..=high).contains(&frequency_hz)
    };
    BuildingMaterial::ALL.into_iter().filter(covers).collect()
}
