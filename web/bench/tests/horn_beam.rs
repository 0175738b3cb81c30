//! The beam in the part on funnels and dishes: gain over the band, cuts, the feed of a dish.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod horned;

use horned::*;
use std::f64::consts::PI;

use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::Mouth;
use tinwave_web::example::example;

#[test]
fn gain_over_the_band_is_that_of_finite_elements() {
    let reply = ask(&reference_funnel(), &[]);
    let table = words(place(&reply, "gain-table"));
    let row = table.split_once("2435 MHz").expect("the centre").1;
    // To one decimal, and what the solution itself may be off.
    assert_near("directivity", number_after(row, ""), FUNNEL_DBI, 0.13);
    let cells: Vec<&str> = row.split("dBi").collect();
    let gain = cells
        .get(1)
        .expect("gain")
        .rsplit(' ')
        .find(|w| !w.is_empty());
    let gain: f64 = gain.expect("gain").parse().expect("a number");
    assert_near("gain", gain, FUNNEL_GAIN_DBI, 0.13);
    let says = place(&reply, "gain-says");
    // The same calculation has 12.179 dBi of gain at 2350 MHz, the least of the band.
    assert!(says.contains("at 2350 MHz"), "{says}");
    assert_near("least", number_after(says, "included: "), 12.179, 0.13);
    assert!(place(&reply, "gain-chart").contains("pic-line-limit"));
}

#[test]
fn cuts_have_the_widths_of_finite_elements() {
    for (angle, width) in ["0", "90"].into_iter().zip(FUNNEL_WIDTHS_DEG) {
        let reply = ask(&reference_funnel(), &[("horn-azimuth", angle)]);
        let says = place(&reply, "cut-says");
        let text = says.split_once("dBi at ").expect("a peak").1;
        let text = text.split_once(", ").expect("a width").1;
        assert_near(angle, number_after(text, ""), width, 1.3);
    }
    // The same calculation: crossed polarisation in the H plane 36.85 dB below.
    let reply = ask(&reference_funnel(), &[("horn-azimuth", "90")]);
    let crossed = number_after(place(&reply, "cut-says"), "polarisation ahead ");
    assert_near("crossed", crossed, 36.85, 1.0);
    let reply = ask(&reference_funnel(), &[("horn-azimuth", "")]);
    assert!(place(&reply, "cut-says").contains("E plane"));
    let reply = ask(&reference_funnel(), &[("horn-azimuth", "-90")]);
    assert!(place(&reply, "cut-says").contains("H plane"));
}

#[test]
fn the_dish_keeps_to_its_handbook() {
    let work = reference_can(Mouth::Open, 150_000);
    let reply = ask(&work, &[]);
    let text = words(place(&reply, "dish-results"));
    let share = |what: &str| number_after(&text, what) / 100.0;
    let total = share("Efficiency in all");
    // Balanis section 15.4.1 (from memory): the shares multiply.
    let product = share("(spillover)") * share("(illumination)") * share("Left by uneven phase");
    assert_near("product", product, total, 0.016);
    // D. M. Pozar, Microwave Engineering, 4th ed. 2012, eqs. 14.10 and 14.12: gain of
    // an area is e 4πA/λ².
    let wavelength = SPEED_OF_LIGHT / 2.435e9;
    let wanted = 10.0 * (total * (PI * 0.6 / wavelength).powi(2)).log10();
    assert_near("gain", number_after(&text, "band centre"), wanted, 0.1);
    // Edge angle 2 atan(1/(4 f/D)), Balanis eq. 15-24 (from memory).
    let edge = 2.0 * (1.0_f64 / 1.6).atan().to_degrees();
    assert_near("edge", number_after(&text, "from the focus"), edge, 0.6);
    // Spreading loss to the edge of the dish, (1 + cos)/2 squared.
    let space = 20.0 * (0.5 * (1.0 + edge.to_radians().cos())).log10();
    let taper = number_after(&text, "(edge taper)");
    let on_dish = number_after(&text, "being farther");
    assert_near("taper", on_dish - taper, space, 0.11);
    // 2 D²/λ: IEEE Std 145, far-field region.
    let far = 2.0 * 0.36 / wavelength;
    assert_near("far", number_after(&text, "(far field, 2 D²/λ)"), far, 0.06);
    // Open cans serve dishes of f/D 0.3 to 0.5 (common practice, no source).
    let best = number_after(&text, "Best f/D");
    assert!((0.3..0.5).contains(&best), "{best}");
    assert!(share("Efficiency at that") >= total - 0.006);
}

#[test]
fn depth_and_focal_ratio_say_the_same() {
    let work = example();
    let by_ratio = ask(&work, &[]);
    // f = D²/(16 depth): 600 mm deep by 93.75 mm has f/D 0.4.
    let by_depth = ask(&work, &[("horn-dish-by", "depth"), ("horn-depth", "93.75")]);
    for name in ["dish-results", "dish-says", "focus-says"] {
        assert_eq!(place(&by_ratio, name), place(&by_depth, name), "{name}");
    }
    assert_eq!(
        (
            last(&by_depth, "?ratio-field"),
            last(&by_depth, "?depth-field")
        ),
        ("", "1")
    );
    let flat = ask(&work, &[("horn-dish-by", "depth"), ("horn-depth", "1")]);
    assert!(last(&flat, "~horn-depth").contains("from"));
    assert_eq!(place(&flat, "dish-results"), "");
    let steep = ask(&work, &[("horn-ratio", "0.1")]);
    assert!(last(&steep, "~horn-ratio").contains("0.2 to 2"));
}

#[test]
fn the_focus_is_told_with_its_side() {
    let open = ask(&example(), &[]);
    let says = place(&open, "focus-says");
    let focus = number_after(says, "dish: focus ");
    assert_near("focal length", focus, 240.0, 0.06);
    let off = number_after(says, "the can’s rim ");
    let rim = number_after(says, ", rim ");
    let signed = if says.contains("behind") { off } else { -off };
    assert_near("rim", rim, focus + signed, 0.11);
    // Phase centres of open round guides lie within a few millimetres of the mouth
    // (common practice, no source).
    assert!(off < 20.0, "{says}");

    let funnel = ask(&reference_funnel(), &[]);
    let says = place(&funnel, "focus-says");
    let (rim, mouth) = (
        number_after(says, ", rim "),
        number_after(says, "mouth of the funnel "),
    );
    assert_near("funnel's length", rim - mouth, 77.9, 0.11);
    // In a funnel it lies between throat and mouth.
    let off = number_after(says, "begins, ");
    assert!(says.contains("behind") && off > 0.0 && off < 77.9, "{says}");
}
