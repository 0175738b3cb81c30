//! The job's text: what is read, and what is refused with which words.

mod common;

use tinwave_print::{PrintError, read_job};

/// The message for a job in which a line was changed or added.
fn refusal(from: &str, to: &str) -> Result<String, String> {
    let text = common::job_text("orchard-gate")?;
    assert!(text.contains(from), "{from}");
    match read_job(&text.replacen(from, to, 1)) {
        Ok(_) => Err(format!("taken: {to}")),
        Err(error) => Ok(error.to_string()),
    }
}

#[test]
fn errors_name_the_line_and_what_would_be_right() -> Result<(), String> {
    let cases = [
        ("wall=200", "wall", "line 5: not key=value"),
        ("wall=200", "wall=0.2", "line 5: wall takes: a whole number"),
        ("wall=200", "wall=-1", "line 5: wall takes: a whole number"),
        ("wall=200", "wal=200", "line 5: no key is called wal"),
        ("wall=200\n", "", "the key wall is missing"),
        (
            "wall=200",
            "wall=41000",
            "wall: 41000 is outside 0 to 40700",
        ),
        (
            "wall=200",
            "wall=200\nwall=200",
            "line 6: wall takes: one line only",
        ),
        ("paper=a4", "paper=a3", "line 3: paper takes: a4 letter"),
        (
            "paper=a4",
            "ruler-across=80000",
            "ruler-across: 80000 is outside 90000 to 110000",
        ),
        (
            "flange=25400 18260",
            "flange=25400",
            "line 17: flange takes: side, pitch and hole",
        ),
        (
            "within-1.5=27700",
            "within-1.5=29700",
            "within-1.5: 29700 is outside 0 to 29100",
        ),
    ];
    for (from, to, message) in cases {
        assert_eq!(refusal(from, to)?, message);
    }
    Ok(())
}

#[test]
fn a_hole_beyond_the_rim_is_refused() -> Result<(), String> {
    let text = common::job_text("orchard-gate")?.replace("backshort=45000", "backshort=140000");
    let job = read_job(&text).map_err(|error| error.to_string())?;
    let printed = tinwave_print::print(&job, tinwave_print::Kind::Pdf);
    let expected = PrintError::OutOfRange {
        key: "backshort",
        value: 140_000,
        low: 0,
        high: 139_999,
    };
    assert_eq!(printed.err(), Some(expected));
    Ok(())
}

#[test]
fn control_signs_in_a_name_are_dropped() -> Result<(), String> {
    let text =
        common::job_text("orchard-gate")?.replace("Orchard gate", "Orchard\u{7}\u{1b} gate\r");
    let job = read_job(&text).map_err(|error| error.to_string())?;
    assert_eq!(job.name, "Orchard gate");
    Ok(())
}

#[test]
fn an_absurd_funnel_is_refused_by_its_number_of_sheets() -> Result<(), String> {
    let mut text = common::job_text("orchard-gate")?;
    text.push_str("funnel=5000000 1000 500\n");
    let job = read_job(&text).map_err(|error| error.to_string())?;
    match tinwave_print::print(&job, tinwave_print::Kind::Pdf) {
        Err(PrintError::TooManySheets { sheets, most }) => assert!(sheets > most),
        other => return Err(format!("{:?}", other.map(|file| file.bytes.len()))),
    }
    Ok(())
}
