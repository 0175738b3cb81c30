use tinwave_core::design::Mouth;
use tinwave_maker::history::Change;

use super::*;

fn station(alter: impl FnOnce(Workshop)) -> String {
    Owner::new().with(|| {
        let workshop = Workshop::open();
        provide_context(workshop);
        alter(workshop);
        view! { <BeamStation/> }.to_html()
    })
}

fn diameter(um: u32) -> impl FnOnce(Workshop) {
    move |workshop| {
        workshop.edit(Change::Diameter, |work| {
            work.design.can.inside_diameter_um = um;
        });
    }
}

#[test]
fn the_answer_is_gain_and_widths_with_its_cautions() {
    let html = station(|_| {});
    assert_eq!(html.matches("<h1").count(), 1);
    assert!(html.contains("dBi ahead"), "{html}");
    assert_eq!(html.matches("class=\"figure-value").count(), 4, "{html}");
    let eyes = caution(Caution::PowerNearEyes).headline;
    let edges = caution(Caution::DrillEdges).headline;
    assert!(html.contains(eyes) && html.contains(edges), "{html}");
}

#[test]
fn before_the_outside_is_solved_it_is_an_estimate() {
    let html = station(|_| {});
    assert!(
        html.contains("An estimate") && html.contains("figure estimate"),
        "{html}"
    );
}

#[test]
fn a_can_that_will_not_do_shows_no_gain() {
    for um in [65_000, 155_000] {
        let html = station(diameter(um));
        assert!(html.contains(words::unknown().0), "{html}");
        assert!(
            !html.contains("figure-value") && !html.contains("dBi"),
            "{um}: {html}"
        );
        // Nothing waits beside the one block that says so.
        assert!(
            !html.contains("mouth-choice") && !html.contains('…'),
            "{html}"
        );
        assert!(html.contains(tinwave_words::frame::to_the_can()), "{html}");
    }
}

#[test]
fn the_fields_are_those_of_what_stands_at_the_mouth() {
    let with = |mouth: Mouth| {
        station(move |workshop| {
            workshop.edit(Change::Mouth, |work| work.design.mouth = mouth);
        })
    };
    let [_, angle, depth] = words::size_labels(Mouth::Open);
    let open = with(Mouth::Open);
    assert!(!open.contains(depth.0), "{open}");
    let funnel = with(Mouth::Funnel {
        mouth_diameter_um: 180_000,
        half_angle_millideg: 30_000,
    });
    assert!(
        funnel.contains(angle.0) && !funnel.contains(depth.0),
        "{funnel}"
    );
    let cup = with(Mouth::Choke {
        outside_diameter_um: 150_000,
        depth_um: 31_000,
    });
    assert!(cup.contains(depth.0), "{cup}");
    assert_eq!(cup.matches("aria-pressed=\"true\"").count(), 1, "{cup}");
}
