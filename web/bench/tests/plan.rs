//! The part "Plan the link": what it answers to the form, against values from outside.

mod plan_form;

use plan_form::{AT_2437, STATED, ask, figure, near, number, result, step, text_of};

#[test]
fn a_newcomer_sees_everything_at_once() {
    let reply = ask(&[]);
    for place in [
        "#says",
        "#antennas",
        "#waterfall",
        "#steps",
        "#reach-chart",
        "#reach-says",
        "#improve",
        "#path-says",
        "#path-picture",
        "#path-table",
        "#aim-table",
        "#aim-says",
        "#lawful",
        "#safe",
        "#fall",
        "#cautions",
        "#receive",
        "#sum",
    ] {
        assert!(reply.get(place).is_some_and(|m| !m.is_empty()), "{place}");
    }
    assert_eq!(reply.get("#unread"), Some(""));
    assert_eq!(
        reply.get("#sum"),
        Some("margin 26 dB at 300 m; no rules chosen")
    );
}

/// ITU-R P.525, eq. 4: 32.4 + 20 log f(MHz) + 20 log d(km), by hand for 2442.25 MHz
/// (middle of 2401 to 2483.5) and 0.3 km: 32.4 + 67.76 - 10.46 = 89.7 dB.
#[test]
fn free_space_is_that_of_p525_and_the_budget_adds_up() {
    let reply = ask(&STATED);
    near("free space", step(&reply, "Free space"), -89.7, 0.051);
    let gain = number(&result(&reply, "#antennas", "Antenna here"));
    // 18 dBm, both gains, the loss; -82 dBm needed (IEEE Std 802.11-2020, Table 19-23,
    // MCS 0 at 20 MHz).
    let received = 18.0 + gain + 12.0 - 89.74;
    near(
        "received",
        figure(&reply, "#steps", "Received", 1),
        received,
        0.11,
    );
    near(
        "needed",
        figure(&reply, "#steps", "Needed (sensitivity)", 1),
        -82.0,
        0.0,
    );
    near("margin", step(&reply, "Margin"), received + 82.0, 0.11);
    // Both radios alike and nothing lost to one side: the same both ways.
    let [out, _, back, _] = [0, 1, 2, 3].map(|n| figure(&reply, "#steps", "Margin", n));
    near("both ways", out, back, 0.0);
    assert!(
        reply
            .get("#says")
            .is_some_and(|says| says.starts_with("Each end hears the other with "))
    );
}

#[test]
fn unlike_ends_are_told_apart() {
    let reply = ask(&[("plan-power-far", "8"), ("plan-fade", "20")]);
    near(
        "10 dB less from there",
        figure(&reply, "#steps", "Margin", 2),
        step(&reply, "Margin") - 10.0,
        0.11,
    );
    let says = reply.get("#says").unwrap_or_default();
    assert!(
        says.contains("The far end hears this end with 26 dB to spare, 6 more"),
        "{says}"
    );
    assert!(
        says.contains("This end hears the far end with 16 dB to spare, 4 less"),
        "{says}"
    );
    // The weaker direction is drawn and summed up unless another is chosen.
    assert!(
        reply
            .get("#sum")
            .is_some_and(|sum| sum.starts_with("margin 16 dB"))
    );
    assert!(
        reply
            .get("#waterfall")
            .is_some_and(|m| m.contains("From the far end"))
    );
    let other = ask(&[("plan-power-far", "8"), ("plan-way", "here")]);
    assert!(
        other
            .get("#waterfall")
            .is_some_and(|m| m.contains("From this end"))
    );
}

/// Walls: ITU-R P.2040-3, section 2.2.2.2, worked apart from the project's code for
/// brick of 102.5 mm at 2437 MHz: 3.524 dB, 3.303 dB averaged over the phases.
#[test]
fn a_brick_wall_is_that_of_p2040() {
    let reply = ask(&[
        AT_2437,
        ("plan-wall-1", "brick"),
        ("plan-wall-1-thickness", "102.5"),
    ]);
    near("brick", step(&reply, "Wall, brick"), -3.5, 0.051);
    let both = result(&reply, "#antennas", "Wall 1, brick, 102.5 mm");
    assert_eq!(both, "3.5 dB; 3.3 dB on average of like walls");
    // The next row comes into sight, and no further one.
    assert_eq!(
        (reply.get("?wall-2"), reply.get("?wall-3")),
        (Some("1"), Some(""))
    );
    let twice = ask(&[
        AT_2437,
        ("plan-wall-1", "brick"),
        ("plan-wall-1-thickness", "102.5"),
        ("plan-wall-3", "glass"),
        ("plan-wall-3-thickness", "4 mm"),
    ]);
    // The same source: glass of 4 mm, 1.092 dB.
    near("glass", step(&twice, "Wall, glass"), -1.1, 0.051);
    near(
        "both",
        step(&reply, "Margin") - step(&twice, "Margin"),
        1.09,
        0.11,
    );
}

#[test]
fn trees_turns_and_circular_waves_cost_what_the_handbooks_say() {
    // Weissberger: 0.45 · 2.44225^0.284 · 10 m = 5.80 dB.
    let trees = ask(&[("plan-foliage", "10")]);
    near("trees", step(&trees, "Trees"), -5.8, 0.051);
    // cos² 45° and a linear antenna in a circular wave: a half each, 3.01 dB.
    near(
        "45°",
        step(&ask(&[("plan-turn", "45")]), "Polarisation"),
        -3.0,
        0.051,
    );
    let circular = ask(&[("plan-far-polarisation", "right"), ("plan-turn", "abc")]);
    near("circular", step(&circular, "Polarisation"), -3.0, 0.051);
    // No turn of a wire makes up for that.
    let best = |reply: &tinwave_bench::Reply| text_of(reply.get("#improve").unwrap_or_default());
    assert!(!best(&circular).contains("Turn one end"));
    let crossed = ask(&[("plan-turn", "90")]);
    assert!(best(&crossed).contains("Turn one end"));
    assert!(
        crossed
            .get("#aim-says")
            .is_some_and(|m| m.contains("or more are lost"))
    );
}

/// -174 dBm/Hz + 10 log 20 MHz = -101.0 dBm of noise; with 6 dB of noise figure and 5 dB
/// wanted over it -90.0 dBm.
#[test]
fn sensitivity_by_noise_by_table_and_as_stated() {
    let noise = ask(&[("plan-sensitivity", "noise")]);
    near(
        "noise",
        figure(&noise, "#steps", "Needed (sensitivity)", 1),
        -90.0,
        0.051,
    );
    // IEEE Std 802.11-2020, Table 19-23: MCS 7 at 40 MHz, -61 dBm.
    let table = ask(&[("plan-rate", "mcs7"), ("plan-width", "40")]);
    near(
        "table",
        figure(&table, "#steps", "Needed (sensitivity)", 1),
        -61.0,
        0.0,
    );
    let older = ask(&[("plan-rate", "older9")]);
    near(
        "54 Mbit/s",
        figure(&older, "#steps", "Needed (sensitivity)", 1),
        -65.0,
        0.0,
    );
    let wide = ask(&[("plan-rate", "older9"), ("plan-width", "40")]);
    assert!(wide.get("~plan-rate").is_some_and(|m| m.contains("20 MHz")));
    let stated = ask(&[
        ("plan-sensitivity", "stated"),
        ("plan-sensitivity-here", "-95"),
        ("plan-sensitivity-far", "-91.5"),
    ]);
    near(
        "far",
        figure(&stated, "#steps", "Needed (sensitivity)", 1),
        -91.5,
        0.0,
    );
    near(
        "here",
        figure(&stated, "#steps", "Needed (sensitivity)", 3),
        -95.0,
        0.0,
    );
}

/// A published table has RG-58 at 105.6 dB per 100 m at 2400 MHz; makes differ by 20 %.
#[test]
fn a_cable_costs_what_tables_say_and_leaving_it_out_is_offered() {
    let reply = ask(&[("plan-cable-here", "rg58"), ("plan-length-here", "10")]);
    near("10 m", step(&reply, "Sender’s cable"), -10.6, 1.0);
    near(
        "the other way",
        figure(&reply, "#steps", "Receiver’s cable", 2),
        step(&reply, "Sender’s cable"),
        0.0,
    );
    let best = reply.get("#improve").unwrap_or_default();
    assert!(
        best.starts_with("<li>Put the radio at the antenna, no cable, at this end"),
        "{best}"
    );
    // Half the distance is 20 log 2 = 6.02 dB.
    assert!(
        text_of(best).contains("Half the distance:  6.0 dB"),
        "{}",
        text_of(best)
    );
}

#[test]
fn the_reach_is_where_the_margin_is_used_up() {
    let reply = ask(&[]);
    let out_m = 300.0 * 10_f64.powf(step(&reply, "Margin") / 20.0);
    let says = reply.get("#reach-says").unwrap_or_default();
    let told = says.split("used up at ").nth(1).map_or(f64::NAN, number);
    near("km", told, out_m / 1e3, 0.01 * out_m / 1e3);
}

/// ITU-R P.526: the first Fresnel radius 550 sqrt(d1 d2/(f (d1 + d2))) m (km, MHz) in the
/// middle of 0.3 km at 2442 MHz is 3.05 m; an edge on the line costs 6.0 dB; the bulge
/// of a middle of 5 km to either side at k = 4/3 is 25/(12.74 · 4/3) = 1.47 m.
#[test]
fn the_path_is_that_of_p526() {
    let reply = ask(&[("plan-obstacles", "150 4\n50 1")]);
    near(
        "60 % of the zone",
        figure(&reply, "#path-table", "Obstacle 1", 2),
        0.6 * 3.05,
        0.015,
    );
    near(
        "edge on the line",
        figure(&reply, "#path-table", "Obstacle 1", 3),
        6.0,
        0.051,
    );
    near("in the budget", step(&reply, "Obstacle"), -6.0, 0.051);
    let says = reply.get("#path-says").unwrap_or_default();
    assert!(says.contains("obstacle 1 at 150 m"), "{says}");
    // 8 m + 1 mm of bulge + 1.83 m over the line at 4 m.
    let high = ask(&[("plan-obstacles", "150 8")]);
    let says = high.get("#path-says").unwrap_or_default();
    assert!(
        says.starts_with("Blocked by obstacle 1") && says.contains("Raise both ends by 5.82 m"),
        "{says}"
    );
    assert!(
        says.contains("below its top") && says.contains("reckoned with"),
        "{says}"
    );
    let far = ask(&[("plan-distance", "10 km")]);
    let says = far.get("#path-says").unwrap_or_default();
    assert!(says.contains("takes 1.47 m"), "{says}");
    assert!(
        far.get("#path-picture")
            .is_some_and(|m| m.contains("plan-ground"))
    );
}

/// ITU-R P.526 worked apart: over 30 km at k = 4/3 the Earth stands 225/(12.74 · 4/3) =
/// 13.25 m high in the middle, 9.25 m over the line between masts of 4 m; the radius of
/// the first zone is 30.35 m, so v = 9.25 · sqrt 2/30.35 = 0.431 and the edge's loss
/// 6.9 + 20 log(sqrt(0.331² + 1) + 0.331) = 9.7 dB.
#[test]
fn ground_in_the_way_is_counted_and_said_to_be_too_little() {
    let reply = ask(&[("plan-distance", "30 km")]);
    let path = reply.get("#path-says").unwrap_or_default();
    assert!(path.starts_with("Blocked by the ground"), "{path}");
    assert!(path.contains("below the curve of the Earth"), "{path}");
    near("ground", step(&reply, "Ground"), -9.7, 0.3);
    let says = reply.get("#says").unwrap_or_default();
    assert!(
        says.ends_with("weaker than it says, or not there at all."),
        "{says}"
    );
    let sum = reply.get("#sum").unwrap_or_default();
    assert!(sum.contains(" at 30.0 km, path blocked; "), "{sum}");
    let clear = ask(&[]);
    assert!(
        clear
            .get("#says")
            .is_some_and(|m| !m.contains("not there at all"))
    );
    assert!(
        clear
            .get("#path-says")
            .is_some_and(|m| m.contains("has all of the first Fresnel zone free"))
    );
}

#[test]
fn aiming_off_costs_what_the_pattern_says() {
    let straight = ask(&[]);
    let off = ask(&[("plan-pointing-here", "30")]);
    // The computed pattern's own half-power widths: 30° is inside half of either, so the
    // loss is above none and below 3 dB.
    let width = figure(&straight, "#aim-table", "Half-power width", 0);
    assert!(width > 60.0, "{width}");
    let loss = -step(&off, "Aim, sender");
    assert!(loss > 1.0 && loss < 3.0, "{loss}");
    near(
        "both ways",
        figure(&off, "#steps", "Aim, receiver", 2),
        -loss,
        0.0,
    );
    // 2 d tan(width/2) is the spot; atan(1 mm/190 mm) is the turn per mm of this can.
    let spot = 600.0 * (0.5 * width).to_radians().tan();
    near(
        "spot",
        figure(&straight, "#aim-table", "Spot at the far end", 0),
        spot,
        2.0,
    );
    near(
        "turn",
        figure(&straight, "#aim-table", "Turn per mm at the mouth", 0),
        0.302,
        0.0006,
    );
    // At half the width of a stated antenna 3 dB are lost by the meaning of the width.
    let stated = [
        STATED.as_slice(),
        &[("plan-far-width", "30"), ("plan-pointing-far", "15")],
    ]
    .concat();
    near("3 dB", step(&ask(&stated), "Aim, receiver"), -3.0, 0.0);
    let round = [STATED.as_slice(), &[("plan-far-width", "360")]].concat();
    let says = ask(&round).get("#aim-says").unwrap_or_default().to_owned();
    assert!(says.contains("sends to all sides"), "{says}");
}

#[test]
fn another_can_comes_by_its_link() {
    let whole = "https://example.org/#v=1&b=5150-5350&d=87&l=190&w=0.2&pw=1.29&pl=28.4&pd=45";
    let reply = ask(&[("plan-far", "link"), ("plan-far-link", whole)]);
    // The same can: reckoned at this design's band, not at its own.
    assert_eq!(
        result(&reply, "#antennas", "Antenna at the far end"),
        result(&reply, "#antennas", "Antenna here")
    );
    for bad in ["", "v=1&b=2401", "<b>"] {
        let reply = ask(&[("plan-far", "link"), ("plan-far-link", bad)]);
        assert!(
            reply.get("~plan-far-link").is_some_and(|m| !m.is_empty()),
            "{bad}"
        );
        assert!(reply.get("#says").is_none());
    }
}

#[test]
fn feet_and_inches_where_they_are_chosen() {
    let reply = ask(&[("unit", "in")]);
    assert!(
        reply
            .get("#sum")
            .is_some_and(|sum| sum.contains("at 984 ft (300 m)"))
    );
    assert!(
        reply
            .get("#reach-chart")
            .is_some_and(|m| m.contains("Distance, mi"))
    );
    // The fields stay as they were typed, in metres unless a unit is written.
    let feet = ask(&[("plan-distance", "1000 ft")]);
    assert!(feet.get("#sum").is_some_and(|sum| sum.contains("at 305 m")));
}

#[test]
fn a_can_without_a_beam_is_said_and_nothing_else() {
    let reply = ask(&[("design", "v=1&b=2401-2483.5&d=30&l=100&pw=1&pl=10&pd=20")]);
    assert!(
        reply
            .get("#unread")
            .is_some_and(|m| m.contains("wider can"))
    );
    assert_eq!(reply.get("#says"), Some(""));
}
