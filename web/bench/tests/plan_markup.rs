//! The part "Plan the link": its markup, and that of its answers.

mod plan_form;

use std::collections::BTreeSet;

use plan_form::{ask, attribute, defaults, tags};
use tinwave_bench::parts;
use tinwave_core::radio_link::lawful::RuleSet;
use tinwave_core::radio_link::{BuildingMaterial, ChannelWidth, CoaxType, Coding, OlderRate};

fn markup() -> &'static str {
    parts::markup("plan")
}

/// Settings that make the answers long.
fn answers() -> Vec<tinwave_bench::Reply> {
    let full = [
        ("plan-obstacles", "100 3\n200 4"),
        ("plan-wall-1", "ceiling_board"),
        ("plan-wall-2", "plasterboard"),
        ("plan-wall-2-thickness", "12.5"),
        ("plan-foliage", "20"),
        ("plan-cable-here", "rg58"),
        ("plan-cable-far", "micro113"),
        ("plan-pointing-here", "10"),
        ("plan-pointing-far", "10"),
        ("plan-turn", "20"),
        ("plan-other", "3"),
        ("plan-rules", "eu"),
    ];
    let listens = [
        ("plan-role", "listen-here"),
        ("plan-distance", "36000 km"),
        ("unit", "in"),
    ];
    let blocked = [
        ("plan-obstacles", "150 60"),
        ("unit", "in"),
        ("plan-distance", "3 km"),
    ];
    vec![
        ask(&[]),
        ask(&full),
        ask(&listens),
        ask(&blocked),
        ask(&[("plan-foliage", "abc")]),
    ]
}

#[test]
fn ids_are_unique_and_begin_with_the_parts_name() {
    for whole in answers() {
        let mut seen = BTreeSet::new();
        let places = whole
            .pairs()
            .iter()
            .filter(|(name, _)| name.starts_with('#'));
        let all = std::iter::once(markup()).chain(places.map(|(_, value)| value.as_str()));
        for tag in all.flat_map(tags) {
            if let Some(id) = attribute(tag, "id") {
                assert!(id.starts_with("plan-"), "{id}");
                assert!(seen.insert(id.to_owned()), "{id} twice");
            }
        }
    }
}

#[test]
fn every_field_has_a_label_and_a_message() {
    let ids: BTreeSet<&str> = tags(markup())
        .filter_map(|tag| attribute(tag, "id"))
        .collect();
    let labelled: BTreeSet<&str> = tags(markup())
        .filter(|tag| tag.starts_with("label"))
        .filter_map(|tag| attribute(tag, "for"))
        .collect();
    for target in &labelled {
        assert!(ids.contains(target), "label for {target}");
    }
    let mut fields = 0;
    for tag in tags(markup()) {
        let is_field = ["input ", "select ", "textarea "]
            .iter()
            .any(|kind| tag.starts_with(kind));
        if !is_field {
            continue;
        }
        if let Some(into) = attribute(tag, "data-kept") {
            // It only fills in another field, and is no entry of its own.
            assert!(ids.contains(into), "no field {into}");
            assert!(labelled.contains(attribute(tag, "id").unwrap_or_default()));
            continue;
        }
        fields += 1;
        let name = attribute(tag, "name").unwrap_or_default();
        assert_eq!(attribute(tag, "id"), Some(name));
        if attribute(tag, "type") == Some("checkbox") {
            // It stands inside its label.
            continue;
        }
        assert!(labelled.contains(name), "no label for {name}");
        let message = [name, "-message"].concat();
        assert_eq!(attribute(tag, "aria-describedby"), Some(message.as_str()));
        // In the same field: no other begins between the two.
        let id = ["id=\"", name, "\""].concat();
        let after = markup().split(id.as_str()).nth(1).unwrap_or_default();
        let target = ["id=\"", &message, "\""].concat();
        let between = after.split(target.as_str()).next().unwrap_or_default();
        assert!(!between.contains("class=\"field"), "{message}");
        assert!(ids.contains(message.as_str()), "{message}");
    }
    assert!(fields > 40 && fields == defaults().len() + 1, "{fields}");
}

#[test]
fn groups_have_legends_and_tags_are_balanced() {
    let legends = markup().matches("<legend>").count();
    assert_eq!(markup().matches("<fieldset").count(), legends);
    let places = answers();
    let places = places.iter().flat_map(|reply| reply.pairs());
    let places = places.filter(|(name, _)| name.starts_with('#'));
    for whole in std::iter::once(markup()).chain(places.map(|(_, value)| value.as_str())) {
        let mut open = Vec::new();
        for tag in tags(whole) {
            let name = tag
                .split([' ', '/'])
                .find(|word| !word.is_empty())
                .unwrap_or_default();
            if tag.starts_with('/') {
                assert_eq!(open.pop(), Some(name), "{whole}");
            } else if name != "input" && !tag.ends_with('/') {
                open.push(name);
            }
        }
        assert!(open.is_empty(), "{open:?}");
    }
}

#[test]
fn every_place_that_is_answered_exists() {
    let known: BTreeSet<&str> = tags(markup())
        .filter_map(|tag| attribute(tag, "data-place"))
        .chain(["sum"])
        .collect();
    let fields: BTreeSet<String> = defaults().into_iter().map(|(name, _)| name).collect();
    let mut filled = BTreeSet::new();
    for reply in answers() {
        for (name, _) in reply.pairs() {
            let (sign, rest) = name.split_at(1);
            match sign {
                "#" | "?" => assert!(known.contains(rest), "{name}"),
                "~" => assert!(fields.contains(rest), "{name}"),
                _ => assert_eq!(name, "a known sign"),
            }
            filled.insert(rest.to_owned());
        }
    }
    for place in known {
        assert!(filled.contains(place), "{place} is never answered");
    }
}

#[test]
fn tables_have_captions_and_headers() {
    for reply in answers() {
        for (name, value) in reply.pairs() {
            let tables = value.matches("<table").count();
            assert_eq!(value.matches("<caption").count(), tables, "{name}");
            assert_eq!(value.matches("<th>").count(), 0, "{name}");
            assert!(
                tables == 0 || value.contains("<th scope=\"col\">"),
                "{name}"
            );
        }
    }
}

/// What is drawn keeps inside its 340 px, with letters of 0.56 em (a usual mean of
/// system fonts; common practice, no source).
#[test]
fn no_text_of_a_picture_leaves_it() {
    let mut texts = 0;
    for reply in answers() {
        for (name, value) in reply.pairs() {
            for piece in value.split("<text ").skip(1) {
                let tag = [" ", piece.split('>').next().unwrap_or_default()].concat();
                let text = piece.split('>').nth(1).and_then(|t| t.split('<').next());
                let text = text.unwrap_or_default();
                let size = if tag.contains("pic-small") {
                    11.0
                } else {
                    12.0
                };
                let long = 0.56 * size * text.chars().count() as f64;
                let x: f64 = attribute(&tag, "x")
                    .and_then(|x| x.parse().ok())
                    .unwrap_or(f64::NAN);
                let (from, to) = match attribute(&tag, "text-anchor") {
                    Some("start") => (x, x + long),
                    Some("end") => (x - long, x),
                    _ => (x - 0.5 * long, x + 0.5 * long),
                };
                assert!(
                    from >= -1.0 && to <= 341.0,
                    "{name}: {text} from {from} to {to}"
                );
                texts += 1;
            }
        }
    }
    assert!(texts > 50);
}

#[test]
fn the_lists_hold_everything_that_can_be_reckoned() {
    let has = |value: &str| markup().contains(&["<option value=\"", value, "\">"].concat());
    for coax in CoaxType::ALL {
        assert!(has(coax.key()), "{}", coax.key());
    }
    for material in BuildingMaterial::ALL {
        // Floorboard has figures from 50 GHz up only.
        let [low, _] = material.frequency_range_hz();
        assert_eq!(has(material.key()), low < 10e9, "{}", material.key());
    }
    for set in RuleSet::ALL {
        assert!(has(set.key()), "{}", set.key());
    }
    for (n, coding) in Coding::ALL.into_iter().enumerate() {
        let rate = coding.data_rate_mbps(ChannelWidth::Mhz20);
        let rate = format!("{rate:.1}");
        let rate = rate.trim_end_matches(".0");
        let option = format!("<option value=\"mcs{n}\">{rate} Mbit/s: MCS {n}, ");
        assert!(markup().contains(&option), "{option}");
    }
    for n in 0..OlderRate::ALL.len() {
        assert!(has(&["older", &n.to_string()].concat()));
    }
}
