use super::*;
use tinwave_maker::history::Change;
use tinwave_maker::workpiece::Cut;

fn station(alter: impl FnOnce(Workshop)) -> String {
    Owner::new().with(|| {
        let workshop = Workshop::open();
        provide_context(workshop);
        alter(workshop);
        view! { <FeedStation/> }.to_html()
    })
}

#[test]
fn the_answer_is_the_cut_and_its_state_is_written() {
    let html = station(|_| {});
    assert_eq!(html.matches("<h1").count(), 1);
    assert!(
        html.contains("31.3\u{a0}mm of wire, 69.8\u{a0}mm from the back wall"),
        "{html}"
    );
    assert!(
        html.contains("Follows the best") && html.contains("I have cut it"),
        "{html}"
    );
}

#[test]
fn a_cut_of_ones_own_stands_put_and_can_follow_again() {
    let html = station(|workshop| {
        workshop.edit(Change::ProbeDrag, |work| {
            work.design.probe.length_um = 28_400;
            work.design.probe.backshort_distance_um = 45_000;
            work.cut = Cut::AsCut;
        });
    });
    assert!(
        html.contains("As cut, 28.4 at 45.0") && html.contains("Follow again"),
        "{html}"
    );
}

#[test]
fn a_can_that_will_not_do_shows_no_cut_and_no_figures() {
    let html = station(|workshop| {
        workshop.edit(Change::Diameter, |work| {
            work.design.can.inside_diameter_um = 155_000;
        });
    });
    assert!(
        html.contains("No cut for this can") && html.contains("To the can"),
        "{html}"
    );
    assert!(
        !html.contains("figure-value") && !html.contains("31.3"),
        "{html}"
    );
}
