//! The part "Plan the link": what it says of the law, of safe distance and of listening.

mod plan_form;

use plan_form::{AT_2437, STATED, ask, cells, near, number, result, step, text_of};

#[test]
fn without_rules_nothing_is_claimed() {
    for changes in [
        &[][..],
        &[("plan-power-here", "30 dBm")],
        &[("plan-role", "listen-far")],
    ] {
        let reply = ask(changes);
        for (name, value) in reply.pairs() {
            let nothing = "nothing is said of what is lawful";
            let text = value.to_lowercase().replace(nothing, "");
            for claim in [
                "within the power limit",
                "judged for a channel",
                "chosen rules",
                "limit of the eirp",
                "limit at the transmitter",
                "47 cfr 15",
                "etsi",
                "erc/rec",
                "is lawful",
                "headroom",
                "turn the power down:",
            ] {
                assert!(!text.contains(claim), "{name}: {claim}");
            }
        }
        let sum = reply.get("#sum").unwrap_or_default();
        assert!(sum.ends_with("; no rules chosen"), "{sum}");
    }
}

/// 47 CFR 15.247(b)(4) and (c)(1)(i): 30 dBm, less 1 dB per dB, or per 3 dB between two
/// fixed stations, of gain above 6 dBi. ETSI EN 300 328: 20 dBm EIRP.
#[test]
fn limits_are_those_of_the_published_rules() {
    let far = |rules: &'static str, more: &[(&'static str, &'static str)]| {
        let changes = [STATED.as_slice(), &[("plan-rules", rules)], more].concat();
        let reply = ask(&changes);
        let markup = reply.get("#lawful").unwrap_or_default().to_owned();
        let end = markup
            .split("The far end")
            .nth(1)
            .unwrap_or_default()
            .to_owned();
        let what = "<dt>Most transmit power by that limit</dt><dd><span class=\"value\">";
        let limit = end.split(what).nth(1).map_or(f64::NAN, number);
        (limit, text_of(&markup), reply)
    };
    near("12 dBi, several", far("us", &[]).0, 24.0, 0.0);
    near(
        "12 dBi, two fixed",
        far("us", &[("plan-arrangement", "point")]).0,
        28.0,
        0.0,
    );
    let (limit, text, reply) = far("eu", &[]);
    near("20 - 12", limit, 8.0, 0.0);
    assert!(
        text.contains("over the chosen rules’ limit by 10.0 dB"),
        "{text}"
    );
    assert!(
        text.contains("Check with your own administration"),
        "{text}"
    );
    assert!(
        text.contains("EN 300 328 V2.2.2, 4.3.2.2, text of 2019-07; read."),
        "{text}"
    );
    assert!(text.contains("certified with may be forbidden"), "{text}");
    assert!(
        reply
            .get("#sum")
            .is_some_and(|sum| sum.ends_with("18 dBm is 10.0 dB over the chosen rules"))
    );
    let (_, _, low) = far("eu", &[("plan-power-here", "10"), ("plan-power-far", "8")]);
    assert!(
        low.get("#sum")
            .is_some_and(|sum| sum.ends_with("8 dBm is within the power limit of the chosen rules"))
    );
    let said = text_of(low.get("#lawful").unwrap_or_default());
    for wanted in [
        "Judged for a channel 20 MHz wide at 2442.25 MHz",
        "The conditions below must hold as well.",
    ] {
        assert!(said.contains(wanted), "{said}");
    }
    let (limit, text, _) = far("amateur", &[AT_2437]);
    assert!(
        limit.is_nan() && text.contains("licence of the station decides"),
        "{text}"
    );
    // 2442 ± 10 MHz ends above 2450 MHz, where no amateur band is (47 CFR 97.301).
    let (_, text, _) = far("amateur", &[]);
    assert!(text.contains("outside all bands"), "{text}");
    let (_, text, _) = far("receive", &[]);
    assert!(text.contains("must not send"), "{text}");
}

/// ETSI EN 300 328: 20 dBm EIRP, so 8 dBm to 12 dBi; a cable helps there and not where
/// the transmitter's output is limited (47 CFR 15.247).
#[test]
fn a_little_too_much_and_a_cable_that_helps_are_said() {
    let just = [
        STATED.as_slice(),
        &[("plan-rules", "eu"), ("plan-power-far", "8.02")],
    ]
    .concat();
    let reply = ask(&just);
    let text = text_of(reply.get("#lawful").unwrap_or_default());
    assert!(text.contains("limit by less than 0.1 dB"), "{text}");
    assert!(!text.contains("counted in your favour"), "{text}");
    for (rules, said) in [("eu", true), ("us", false)] {
        let reply = ask(&[("plan-rules", rules), ("plan-cable-here", "rg58")]);
        let text = text_of(reply.get("#lawful").unwrap_or_default());
        assert_eq!(text.contains("counted in your favour"), said, "{text}");
    }
}

/// ICNIRP 2020 and 47 CFR 1.1310: 10 W/m² at 2.4 GHz. 30 dBm and 12 dBi are 15.85 W EIRP;
/// with the power density fourfold sqrt(4 · 15.85/(4π · 10)) = 0.710 m, rounded up.
#[test]
fn the_safe_distance_is_that_of_oet_65() {
    let changes = [STATED.as_slice(), &[("plan-power-far", "1 W")]].concat();
    let reply = ask(&changes);
    for standard in ["ICNIRP 2020, general public", "47 CFR 1.1310, uncontrolled"] {
        let what = ["In front of the far end: ", standard].concat();
        let value = result(&reply, "#safe", &what);
        assert_eq!(value, "at least 72 cm (10.0 W/m²; far field)");
    }
    // 0.7103 m is 27.97 in.
    let inches = ask(&[changes.as_slice(), &[("unit", "in")]].concat());
    let value = result(
        &inches,
        "#safe",
        "In front of the far end: ICNIRP 2020, general public",
    );
    assert!(value.starts_with("at least 28 in"), "{value}");
}

#[test]
fn receive_only_bands_are_marked_where_they_are_uncertain() {
    let reply = ask(&[]);
    let heading = "Hydrogen line, 21 cm<small>No one may transmit here (ITU Radio Regulations 5.340).</small>";
    let seen = cells(&reply, "#receive", heading);
    assert_eq!(
        seen.get(2).map(String::as_str),
        Some("from a published table")
    );
    let text = text_of(reply.get("#receive").unwrap_or_default());
    assert!(text.contains("? uncertain: from memory, check it"));
    assert!(text.contains("Aircraft positions, 1090 MHz"));
}

/// G/T: 290 K at the antenna and 6 dB of noise figure are 290 · 3.981 = 1154.5 K.
#[test]
fn a_station_that_only_listens_has_a_figure_of_merit() {
    let reply = ask(&[
        ("plan-role", "listen-here"),
        ("plan-sensitivity", "noise"),
        ("plan-pairs-here", "0"),
        ("plan-power-here", "not read"),
    ]);
    let kelvin = number(&result(&reply, "#receiver", "System noise temperature"));
    near("K", kelvin, 1154.5, 0.6);
    let gain = number(&result(&reply, "#antennas", "Antenna here"));
    let merit = number(&result(
        &reply,
        "#receiver",
        "Figure of merit of this end, G/T",
    ));
    near("dB/K", merit, gain - 30.62, 0.11);
    // Noise of 290 K and noise figure together are what the sensitivity counts, so the
    // ratio is 5 dB (the one wanted) more than the margin.
    let ratio = number(&result(
        &reply,
        "#receiver",
        "Signal over noise (C/N) in 20.000 MHz",
    ));
    near("C/N", ratio, step(&reply, "Margin") + 5.0, 0.11);
    assert_eq!(cells(&reply, "#steps", "Margin").len(), 2);
    assert_eq!(reply.get("?power-here"), Some(""));
}

/// ITU-R P.525 worked apart: 1694.1 MHz over 36,000 km is 188.15 dB.
#[test]
fn a_path_from_orbit_has_no_ground() {
    let reply = ask(&[
        (
            "design",
            "v=1&b=1693.5-1694.7&d=127&l=250&w=0.2&pw=2&pl=38&pd=60",
        ),
        ("plan-distance", "36000 km"),
        ("plan-role", "listen-here"),
        ("plan-far", "stated"),
        ("plan-far-gain", "15"),
        ("plan-power-far", "40"),
    ]);
    near("free space", step(&reply, "Free space"), -188.15, 0.06);
    assert!(
        reply
            .get("#path-says")
            .is_some_and(|m| m.contains("no path along the ground"))
    );
    assert!(
        reply
            .get("#receive")
            .is_some_and(|m| m.contains("built for it"))
    );
}
