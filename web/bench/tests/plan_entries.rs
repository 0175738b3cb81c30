//! The part "Plan the link": entries that can't be read, and hostile ones.

mod plan_form;

use plan_form::{ask, defaults};

/// Choices that bring every hidden field of the form into use, some at a time.
const SETTINGS: [&[(&str, &str)]; 3] = [
    &[
        ("plan-far", "stated"),
        ("plan-cable-here", "rg58"),
        ("plan-cable-far", "foam400"),
        ("plan-sensitivity", "noise"),
        ("plan-wall-1", "brick"),
        ("plan-wall-2", "wood"),
        ("plan-wall-3", "glass"),
        ("plan-wall-4", "metal"),
        ("plan-rules", "us"),
    ],
    &[
        ("plan-far", "link"),
        ("plan-sensitivity", "stated"),
        ("plan-rules", "eu"),
    ],
    &[("plan-role", "listen-here"), ("plan-rules", "receive")],
];

const HOSTILE: &str = "\"><script>alert(1)</script><img src=x onerror=y>&amp;";

fn is_text(name: &str) -> bool {
    // Lists are left out: what is in no list counts as its first line.
    const LISTS: [&str; 13] = [
        "role",
        "far",
        "far-polarisation",
        "sensitivity",
        "rate",
        "width",
        "way",
        "rules",
        "arrangement",
        "cable-here",
        "cable-far",
        "connector-here",
        "connector-far",
    ];
    let plain = name.strip_prefix("plan-").unwrap_or(name);
    let is_wall = plain.starts_with("wall-") && !plain.ends_with("thickness");
    !LISTS.contains(&plain) && !is_wall
}

#[test]
fn a_wrong_entry_has_a_message_and_keeps_the_last_results() {
    let mut never = Vec::new();
    for (field, _) in defaults().iter().filter(|(name, _)| is_text(name)) {
        let mut used = false;
        for setting in SETTINGS {
            let changes = [setting, &[(field.as_str(), "abc")]].concat();
            let reply = ask(&changes);
            let message = ["~", field].concat();
            let said = reply.get(&message).unwrap_or_default();
            // A field that does not count has no message.
            if said.is_empty() {
                continue;
            }
            used = true;
            assert!(
                reply.get("#says").is_none() && reply.get("#sum").is_none(),
                "{field}"
            );
            assert!(
                reply.get("#unread").is_some_and(|m| !m.is_empty()),
                "{field}"
            );
        }
        if !used {
            never.push(field.clone());
        }
    }
    assert!(never.is_empty(), "{never:?}");
}

#[test]
fn the_message_names_the_field_and_what_would_be_right() {
    let reply = ask(&[("plan-foliage", "500")]);
    assert_eq!(
        reply.get("~plan-foliage"),
        Some("500 m is too large. It can be 0 to 400 m.")
    );
    let unread = reply.get("#unread").unwrap_or_default();
    assert!(
        unread.starts_with("Way through trees: 500 m is too large."),
        "{unread}"
    );
    // And it goes when the entry is put right.
    assert_eq!(ask(&[]).get("~plan-foliage"), Some(""));
    let line = ask(&[("plan-obstacles", "100 3\n120\n")]);
    assert!(
        line.get("~plan-obstacles")
            .is_some_and(|m| m.starts_with("Line 2: "))
    );
    let outside = ask(&[("plan-obstacles", "300 3")]);
    assert!(
        outside
            .get("~plan-obstacles")
            .is_some_and(|m| m.contains("not between the ends"))
    );
}

#[test]
fn hostile_text_never_becomes_markup() {
    for (field, _) in defaults() {
        for setting in SETTINGS {
            let reply = ask(&[setting, &[(field.as_str(), HOSTILE)]].concat());
            for (name, value) in reply.pairs() {
                let is_markup = name.starts_with('#');
                let harmful = value.contains("<script") || value.contains("<img");
                assert!(!(is_markup && harmful), "{field} in {name}: {value}");
            }
        }
    }
}

#[test]
fn odd_numbers_are_refused_or_bounded() {
    let odd = [
        "",
        " ",
        "NaN",
        "inf",
        "1e999",
        "-1",
        "0",
        "9999999999999",
        "1/0",
        "0.0000001",
        "-0",
        "½",
        "1.2.3",
        "٣",
        "100000 km",
        "1e-300",
    ];
    for (field, _) in defaults().iter().filter(|(name, _)| is_text(name)) {
        for text in odd {
            for setting in SETTINGS {
                let reply = ask(&[setting, &[(field.as_str(), text)]].concat());
                for (name, value) in reply.pairs() {
                    // What is no number is shown as a dash.
                    let bad = [">–<", "– dB", "– m", "– km", "–°", ">– ", "–dBm"]
                        .iter()
                        .any(|dash| value.contains(dash));
                    let quoted = name.starts_with('~') || name == "#unread";
                    assert!(quoted || !bad, "{field} = {text}: {name}: {value}");
                }
            }
        }
    }
}

#[test]
fn an_answer_is_quick_once_the_beam_is_known() {
    let _first = ask(&[]);
    let begin = std::time::Instant::now();
    for _ in 0..20 {
        let _again = ask(&[("plan-obstacles", "100 3\n200 4"), ("plan-rules", "us")]);
    }
    // 10 ms each are allowed in a browser; a plain build without optimising may be slow.
    assert!(
        begin.elapsed().as_millis() < 20 * 10,
        "{:?}",
        begin.elapsed()
    );
}
