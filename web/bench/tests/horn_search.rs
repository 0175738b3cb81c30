//! Searches for funnels, rings and cups, and what is taken from them.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod horned;

use horned::*;
use std::f64::consts::PI;

use tinwave_bench::parts;
use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::Mouth;
use tinwave_web::example::example;

#[test]
fn the_best_funnel_is_no_worse_than_one_within_its_limits() {
    let work = reference_can(Mouth::Open, 150_000);
    // 45 mm over the tangent of 30 degrees is 77.9 mm.
    let limits = [
        ("horn-mouth", "180"),
        ("horn-length", "78"),
        ("job", "funnel"),
    ];
    let before = ask(&work, &limits);
    let says = place(&before, "funnel-says");
    assert!(says.starts_with("By a quick fit"), "{says}");
    assert_near("fit", number_after(says, "about "), FUNNEL_DBI, 0.5);
    assert!(place(&before, "length-chart").contains("pic-line-other"));

    let (so_far, end) = run(&request(&work, "mm", &limits));
    assert!(!so_far.is_empty());
    let says = place(&end, "funnel-says").to_owned();
    let gain = number_after(&says, "Computed: ");
    // An evenly lit mouth of that width has (π D/λ)² (C. A. Balanis, Antenna Theory,
    // 3rd ed. 2005, eq. 12-37, from memory): 13.24 dB.
    let even = 20.0 * (PI * 0.18 * 2.435e9 / SPEED_OF_LIGHT).log10();
    assert!(gain >= FUNNEL_DBI - 0.1 && gain <= even, "{says}");
    assert!(number_after(&says, "mouth ") <= 180.0, "{says}");
    assert!(number_after(&says, "wide, ") <= 78.05, "{says}");
    assert!(place(&end, "length-chart").contains("pic-line-main"));
    assert!(!place(&end, "mouth-chart").contains("about "));

    // Asked again, what was found is shown, and what was found for others is not.
    let again = ask(&work, &limits);
    assert_eq!(place(&again, "funnel-says"), says);
    let other = ask(&work, &[("horn-mouth", "170"), ("horn-length", "78")]);
    assert!(place(&other, "funnel-says").starts_with("By a quick fit"));
}

#[test]
fn the_flat_sheet_is_that_of_the_cone() {
    let reply = ask(&reference_funnel(), &[]);
    let text = words(place(&reply, "present-results"));
    // A cone of half angle 30 degrees unrolls into half a disc; radii over its sine.
    assert_near("inner", number_after(&text, "inner radius"), 90.0, 0.06);
    assert_near("outer", number_after(&text, "outer radius"), 180.0, 0.06);
    assert_near(
        "angle",
        number_after(&text, "without the seam"),
        180.0,
        0.06,
    );
    assert_near("chord", number_after(&text, "of the mouth"), 360.0, 0.06);
    assert_near("seam", number_after(&text, "along one edge"), 10.0, 0.06);
    assert_near("long", number_after(&text, "the axis"), 77.9, 0.06);
    let sheet = text.split_once("seam included").expect("the sheet").1;
    // Half a disc on its straight edge, the seam a strip under one half of it.
    assert_near("width", number_after(sheet, ""), 360.0, 0.06);
    assert_near("height", number_after(sheet, "by"), 190.0, 0.06);
    assert!(place(&reply, "present-says").contains("180.0 mm"));
    let open = ask(&example(), &[]);
    assert_eq!(place(&open, "present-says"), "");
    assert_eq!(last(&open, "?present-title"), "");
}

#[test]
fn a_sheet_of_metal_is_kept_to() {
    let work = reference_can(Mouth::Open, 150_000);
    let limits = [
        ("horn-length", ""),
        ("horn-sheet-width", "400"),
        ("horn-sheet-height", "250"),
    ];
    let mut with_job = limits.to_vec();
    with_job.push(("job", "funnel"));
    for reply in [ask(&work, &limits), run(&request(&work, "mm", &with_job)).1] {
        let text = words(place(&reply, "funnel-results"));
        let sheet = text.split_once("seam included").expect("the sheet").1;
        let (one, other) = (number_after(sheet, ""), number_after(sheet, "by"));
        let (long, short) = (one.max(other), one.min(other));
        // Marked to 0.1 mm and 0.01 degrees after the search.
        assert!(long <= 400.3 && short <= 250.3, "{sheet}");
        assert!(long > 300.0 || short > 200.0, "little of it used: {sheet}");
    }
    let half = ask(&work, &[("horn-sheet-width", "400")]);
    assert!(last(&half, "~horn-sheet-height").contains("as well"));
    assert_eq!(place(&half, "funnel-results"), "");
}

#[test]
fn no_limit_or_an_impossible_one_is_said() {
    let work = example();
    let none = ask(&work, &[("horn-length", "")]);
    assert!(place(&none, "funnel-says").contains("at least one limit"));
    let mouth_only = ask(&work, &[("horn-length", ""), ("horn-mouth", "200")]);
    assert!(place(&mouth_only, "funnel-says").contains("mouth 200.0 mm"));
    assert!(place(&mouth_only, "funnel-says").contains("give a length"));
    // Narrower than the can.
    let narrow = [("horn-mouth", "50"), ("job", "funnel")];
    assert!(place(&ask(&work, &narrow), "funnel-says").contains("No funnel fits"));
    let (_, end) = run(&request(&work, "mm", &narrow));
    assert!(place(&end, "funnel-says").contains("No funnel fits"));
}

#[test]
fn every_point_of_the_trade_goes_into_the_design() {
    let work = example();
    let reply = ask(&work, &[]);
    let mut mouths = Vec::new();
    for chart in ["length-chart", "mouth-chart"] {
        let markup = place(&reply, chart);
        let acts = acts(markup);
        assert!(acts.len() >= 6, "{chart}: {acts:?}");
        assert_eq!(markup.matches("aria-label=\"").count(), acts.len());
        for act in acts {
            let pressed = ask(&work, &[("act", &act)]);
            let mouth = taken(&pressed).unwrap_or_else(|| panic!("{act} takes nothing"));
            assert!(matches!(mouth, Mouth::Funnel { .. }), "{mouth:?}");
            mouths.push(mouth);
        }
    }
    // The one in the design is the one that is pressed.
    let mut with = work;
    with.design.mouth = *mouths.first().expect("a funnel");
    let reply = ask(&with, &[]);
    let pressed = place(&reply, "length-chart").matches("aria-pressed=\"true\"");
    assert_eq!(pressed.count(), 1);
}

#[test]
fn other_acts_take_nothing() {
    for act in [
        "take-funnel",
        "take-funnel 180000",
        "take-funnel 99999999999 30000",
        "take-funnel 180000 95000",
        "take-funnel 1 30000",
        "take-choke 150000",
        "take-open 1 1",
        "take-funnel \u{3c}b> 1",
    ] {
        assert_eq!(taken(&ask(&example(), &[("act", act)])), None, "{act}");
    }
}

#[test]
fn rings_and_cups_are_found_and_taken() {
    let work = reference_can(Mouth::Open, 200_000);
    assert_eq!(place(&ask(&work, &[]), "rims-table"), "");
    let begun = ask(&work, &[("act", "rims")]);
    assert_eq!(begun.get("!begin"), Some("rims"));
    assert_eq!(
        (last(&begun, "?rims-work"), last(&begun, "?funnel-work")),
        ("1", "")
    );
    let (_, end) = run(&request(&work, "mm", &[("job", "rims")]));
    let table = place(&end, "rims-table").to_owned();
    let text = words(&table);
    let ring = text
        .split_once("Ring (flange), most gain")
        .expect("a ring")
        .1;
    let gain = number_after(ring, "outside");
    // The best is no worse than the ring that was solved by other means.
    assert!((RING_DBI - 0.12..11.0).contains(&gain), "{text}");
    let bare = number_after(&text, "Nothing");
    assert!(bare < gain - 0.5, "{text}");
    assert!(place(&end, "rims-says").starts_with("Found"));
    let acts = acts(&table);
    assert_eq!(acts.len(), 3, "{acts:?}");
    let mouths: Vec<_> = acts
        .iter()
        .map(|act| taken(&ask(&work, &[("act", act)])).expect("a mouth"))
        .collect();
    assert!(matches!(mouths[0], Mouth::Flange { .. }));
    assert!(matches!(mouths[1], Mouth::Choke { .. }));
    // With it in the design the table stands, and says which is there.
    let mut with = work;
    with.design.mouth = mouths[0];
    assert!(place(&ask(&with, &[]), "rims-table").contains("in the design"));
}

#[test]
fn a_search_that_is_out_of_date_is_stopped() {
    let work = example();
    let begun = ask(&work, &[("act", "funnel")]);
    assert_eq!(begun.get("!begin"), Some("funnel"));
    assert_eq!(last(&begun, "?funnel-work"), "1");
    let _job = parts::begin(&request(&work, "mm", &[("job", "funnel")])).expect("a job");
    // The dish is nothing to it, the length is.
    assert_eq!(ask(&work, &[("horn-dish", "900")]).get("!stop"), None);
    let mut with = work.clone();
    with.design.mouth = Mouth::Flange {
        outside_diameter_um: 95_000,
    };
    let taken = ask(&with, &[]);
    assert_eq!((taken.get("!stop"), taken.get("!begin")), (None, None));
    assert!(ask(&work, &[("horn-length", "150")]).get("!stop").is_some());
    assert_eq!(ask(&work, &[("horn-length", "150")]).get("!stop"), None);
    assert!(ask(&work, &[("act", "stop")]).get("!stop").is_some());
    let nothing = request(&work, "mm", &[("job", "other")]);
    assert!(parts::begin(&nothing).is_none());
}

#[test]
fn a_large_body_is_solved_for_in_a_job() {
    let work = reference_funnel();
    let question = request(&work, "mm", &[("act", "funnel")]);
    let reply = parts::answer(&question);
    assert_eq!(reply.get("!begin"), Some("beams"));
    assert!(place(&reply, "gain-says").starts_with("Being computed"));
    assert_eq!(reply.get("#gain-chart"), None);
    // Asked again it is not begun again.
    assert_eq!(parts::answer(&question).get("!begin"), None);
    let (_, end) = run(&request(&work, "mm", &[("job", "beams")]));
    assert!(place(&end, "gain-says").starts_with("Least gain"));
    assert!(place(&end, "gain-chart").starts_with("<svg"));
    // What was pressed meanwhile comes after it.
    assert_eq!(end.get("!begin"), Some("funnel"));
    let after = parts::answer(&request(&work, "mm", &[]));
    assert_eq!(after.get("!begin"), None);
    assert!(place(&after, "gain-says").starts_with("Least gain"));
    // A can without funnel is quick.
    assert_eq!(
        parts::answer(&request(&example(), "mm", &[])).get("!begin"),
        None
    );
}

#[test]
fn a_search_goes_on_after_the_field_of_a_new_mouth() {
    let work = example();
    let mut job = parts::begin(&request(&work, "mm", &[("job", "funnel")])).expect("a job");
    let _ = ask(&work, &[]);
    for _ in 0..30 {
        job.step();
    }
    let mut with = work;
    with.design.mouth = Mouth::Funnel {
        mouth_diameter_um: 300_000,
        half_angle_millideg: 30_000,
    };
    let reply = parts::answer(&request(&with, "mm", &[]));
    assert_eq!(reply.get("!begin"), Some("beams"));
    let (_, end) = run(&request(&with, "mm", &[("job", "beams")]));
    assert_eq!(end.get("!begin"), Some("funnel"));
    // It goes on where it was: the best is known from the first step.
    let (so_far, _) = run(&request(&with, "mm", &[("job", "funnel")]));
    assert!(so_far.len() < 16, "{}", so_far.len());
}
