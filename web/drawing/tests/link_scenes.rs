//! The pictures of a link, for stated antennas: where bars, marks and labels stand.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use tinwave_core::design::Band;
use tinwave_core::radio_link::Obstacle;
use tinwave_drawing::levels_scene::{LevelMark, LevelsScene};
use tinwave_drawing::path_scene::{LabelKind, PathScene};
use tinwave_maker::entry::LengthUnit::{Inch, Millimetre};
use tinwave_maker::link_plan::{LinkPlan, PlanAnswer, PlanAntenna};

fn answer(change: impl FnOnce(&mut LinkPlan)) -> PlanAnswer {
    let mut plan = LinkPlan::default();
    plan.here.pairs = 0;
    plan.far.pairs = 0;
    change(&mut plan);
    let band = Band {
        low_khz: 2_400_000,
        high_khz: 2_483_500,
    };
    let end = PlanAntenna::stated(8.0, 70.0);
    PlanAnswer::new(&plan, band, [Some(&end), Some(&end)]).expect("an answer")
}

fn levels(answer: &PlanAnswer) -> LevelsScene {
    let link = answer.link.as_ref().expect("a link");
    LevelsScene::new(answer, &link.weaker, Millimetre)
}

#[test]
fn each_bar_begins_where_the_one_before_ends() {
    let scene = levels(&answer(|plan| plan.foliage_m = 5.0));
    let mut level: Option<f64> = None;
    for row in &scene.rows {
        let next = match (row.mark, level) {
            (LevelMark::Level(at), None) => at,
            (LevelMark::Gain(left, width), Some(before)) => {
                assert!((left - before).abs() < 1e-9, "{row:?}");
                left + width
            }
            (LevelMark::Loss(left, width), Some(before)) => {
                assert!((left + width - before).abs() < 1e-9, "{row:?}");
                left
            }
            (LevelMark::Level(at), Some(before)) => {
                assert!((at - before).abs() < 1e-9, "{row:?}");
                at
            }
            (LevelMark::Needed(at), _) => at,
            other => panic!("{other:?}"),
        };
        assert!((0.0..=100.0).contains(&next), "{row:?}");
        level = Some(next);
    }
    // Transmitter, two gains, free space, trees, received, needed.
    assert_eq!(scene.rows.len(), 7);
}

#[test]
fn the_bracket_spans_the_margin_and_says_when_it_is_short() {
    let good = levels(&answer(|_| {}));
    let places: Vec<f64> = good
        .rows
        .iter()
        .filter_map(|row| match row.mark {
            LevelMark::Level(at) | LevelMark::Needed(at) => Some(at),
            _ => None,
        })
        .collect();
    let [_, received, needed] = places.as_slice() else {
        panic!("{places:?}");
    };
    assert!((good.bracket.left - needed).abs() < 1e-9);
    assert!((good.bracket.left + good.bracket.width - received).abs() < 1e-9);
    assert!(!good.bracket.is_short);
    let short = levels(&answer(|plan| plan.distance_m = 300e3));
    assert!(short.bracket.is_short);
}

fn path(obstacles: &[(f64, f64)], distance_m: f64) -> PathScene {
    let answer = answer(|plan| {
        plan.distance_m = distance_m;
        plan.obstacles = obstacles
            .iter()
            .map(|&(distance_m, height_m)| Obstacle {
                distance_m,
                height_m,
            })
            .collect();
    });
    let path = answer.path.as_ref().expect("a path");
    PathScene::new(path, Some("26 dB to spare"), Millimetre)
}

#[test]
fn everything_lies_in_the_plot_and_ticks_are_few() {
    for (obstacles, distance) in [
        (&[][..], 300.0),
        (&[(150.0, 12.0)][..], 300.0),
        (&[(10.0, -3.0), (280.0, 5.0)][..], 300.0),
        (&[][..], 30e3),
        (&[][..], 1.0),
    ] {
        let scene = path(obstacles, distance);
        for ticks in [&scene.heights, &scene.distances] {
            assert!((2..=8).contains(&ticks.len()), "{ticks:?}");
            assert!(ticks.iter().all(|tick| (-0.1..=100.1).contains(&tick.at)));
        }
        for label in &scene.labels {
            let inside = (0.0..=100.0).contains(&label.left) && (5.0..=100.0).contains(&label.top);
            assert!(inside, "{label:?}");
        }
    }
}

#[test]
fn labels_keep_off_obstacles() {
    let clear = path(&[], 300.0);
    let kinds: Vec<LabelKind> = clear.labels.iter().map(|label| label.kind).collect();
    assert_eq!(kinds, [LabelKind::Line, LabelKind::Zone]);
    // A barn in the middle moves the margin aside; one at each place leaves it out.
    let barn = path(&[(150.0, 12.0)], 300.0);
    let line = barn
        .labels
        .iter()
        .find(|label| label.kind == LabelKind::Line);
    assert_eq!(line.map(|label| label.left), Some(25.0));
    let town = path(&[(75.0, 12.0), (150.0, 12.0), (225.0, 12.0)], 300.0);
    assert!(
        town.labels
            .iter()
            .all(|label| label.kind == LabelKind::Obstacle)
    );
    assert!(town.is_blocked && !clear.is_blocked);
}

#[test]
fn axes_are_in_the_makers_unit() {
    let answer = answer(|_| {});
    let path = answer.path.as_ref().expect("a path");
    let scene = PathScene::new(path, None, Inch);
    assert_eq!((scene.distance_unit, scene.height_unit), ("ft", "ft"));
}
