//! Funnel and dish as the page asks, and the bodies that finite elements were run for.
#![allow(dead_code, reason = "each test program uses its share")]

use tinwave_bench::{Reply, Request, form_data, parts};
use tinwave_core::design::{Design, Mouth};
use tinwave_web::example::example;
use tinwave_web::link;
use tinwave_web::workpiece::Workpiece;

/// What the fields hold when the part is first opened.
pub(crate) const FIRST: [(&str, &str); 11] = [
    ("horn-unit", "mm"),
    ("horn-azimuth", "45"),
    ("horn-mouth", ""),
    ("horn-length", "200"),
    ("horn-sheet-width", ""),
    ("horn-sheet-height", ""),
    ("horn-seam", "10"),
    ("horn-dish", "600"),
    ("horn-dish-by", "ratio"),
    ("horn-ratio", "0.4"),
    ("horn-depth", "94"),
];

/// A question about a design, some fields other than at first.
pub(crate) fn request(work: &Workpiece, unit: &str, changed: &[(&str, &str)]) -> Request {
    let design = link::encode(work);
    let mut pairs: Vec<(String, String)> = FIRST
        .iter()
        .filter(|(name, _)| changed.iter().all(|(other, _)| other != name))
        .chain([&("part", "horn"), &("unit", unit), &("design", &design)])
        .chain(changed)
        .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()))
        .collect();
    pairs.retain(|(_, value)| !value.is_empty());
    Request::read(&form_data::write(&pairs)).expect("a design")
}

/// The answer in millimetres, the design's own field solved for where that takes a
/// job.
pub(crate) fn ask(work: &Workpiece, changed: &[(&str, &str)]) -> Reply {
    let reply = parts::answer(&request(work, "mm", changed));
    if reply.get("!begin") != Some("beams") {
        return reply;
    }
    let _ = run(&request(work, "mm", &[("job", "beams")]));
    parts::answer(&request(work, "mm", changed))
}

/// The last word of a reply on something.
pub(crate) fn last<'a>(reply: &'a Reply, name: &str) -> &'a str {
    let found = reply.pairs().iter().rev().find(|(known, _)| known == name);
    found.map_or("", |(_, value)| value.as_str())
}

pub(crate) fn place<'a>(reply: &'a Reply, name: &str) -> &'a str {
    last(reply, &["#", name].concat())
}

/// Markup to words, a space for each tag.
pub(crate) fn words(markup: &str) -> String {
    let mut text = String::new();
    let mut within = false;
    for letter in markup.chars() {
        match letter {
            '<' => {
                within = true;
                text.push(' ');
            }
            '>' => within = false,
            other if !within => text.push(other),
            _ => {}
        }
    }
    text
}

/// The first number after some words.
pub(crate) fn number_after(text: &str, before: &str) -> f64 {
    let (_, rest) = text
        .split_once(before)
        .unwrap_or_else(|| panic!("no “{before}” in “{text}”"));
    let digits: String = rest
        .chars()
        .map(|c| if c == '\u{2212}' { '-' } else { c })
        .skip_while(|c| !c.is_ascii_digit() && *c != '-')
        .take_while(|c| c.is_ascii_digit() || matches!(c, '.' | '-'))
        .collect();
    digits
        .trim_end_matches('.')
        .parse()
        .unwrap_or_else(|_| panic!("“{digits}” after “{before}” in “{text}”"))
}

pub(crate) fn assert_near(what: &str, got: f64, wanted: f64, most: f64) {
    assert!((got - wanted).abs() <= most, "{what}: {got}, not {wanted}");
}

/// The reference can: 90 mm inside, 150 mm long, wire 1 mm thick, 29.5 mm long,
/// 50 mm from the back wall, band 2350 to 2520 MHz.
pub(crate) fn reference_can(mouth: Mouth, open_length_um: u32) -> Workpiece {
    let mut work = example();
    let Design {
        band, can, probe, ..
    } = &mut work.design;
    (band.low_khz, band.high_khz) = (2_350_000, 2_520_000);
    can.inside_diameter_um = 90_000;
    can.open_length_um = open_length_um;
    probe.wire_diameter_um = 1_000;
    probe.length_um = 29_500;
    probe.backshort_distance_um = 50_000;
    work.design.mouth = mouth;
    work
}

/// Its funnel of 180 mm and 30 degrees.
pub(crate) fn reference_funnel() -> Workpiece {
    let mouth = Mouth::Funnel {
        mouth_diameter_um: 180_000,
        half_angle_millideg: 30_000,
    };
    reference_can(mouth, 150_000)
}

/// Runs a job to its end; the replies on its way and the last.
pub(crate) fn run(request: &Request) -> (Vec<Reply>, Reply) {
    let mut job = parts::begin(request).expect("a job");
    let mut so_far = Vec::new();
    for _ in 0..job.total() {
        job.step();
        so_far.extend(job.so_far());
    }
    (so_far, job.finish())
}

// Finite elements (general-purpose library, curved tetrahedra of order 3; our own
// calculation, no measurement): the can above with that funnel at 2435 MHz has
// directivity 12.626 dBi (±0.03), gain 12.591 dBi, half-power widths 39.88 and 46.59
// degrees (±0.5).
pub(crate) const FUNNEL_DBI: f64 = 12.626;

pub(crate) const FUNNEL_GAIN_DBI: f64 = 12.591;

pub(crate) const FUNNEL_WIDTHS_DEG: [f64; 2] = [39.88, 46.59];

// The same for a can 200 mm long with a flat ring of 145 mm.
pub(crate) const RING_DBI: f64 = 9.356;

/// What the buttons of some markup send.
pub(crate) fn acts(markup: &str) -> Vec<String> {
    let parts = markup.split("data-act=\"").skip(1);
    parts
        .map(|part| part.split('"').next().unwrap_or_default().to_owned())
        .collect()
}

pub(crate) fn taken(reply: &Reply) -> Option<Mouth> {
    let text = reply.get("!take")?;
    Some(link::decode(text).expect("a design").work.design.mouth)
}
