//! The part "Plan the link": answers to what the form sends.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

#[test]
fn show() {
    let t = std::time::Instant::now();
    let reply = plan_form::ask(&[]);
    println!("first {:?}", t.elapsed());
    for _ in 0..3 {
    let t = std::time::Instant::now();
    let _ = plan_form::ask(&[]);
    println!("later {:?}", t.elapsed());
    }
    for (name, value) in reply.pairs() {
        println!("{name} = {value}\n");
    }
}
mod plan_form;
