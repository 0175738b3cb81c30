//! What measurements have told of a can, kept as text.
//!
//! Deviations are from a drawing, and drawings change; what is kept is the can
//! itself: the expected size of each of the usual dimensions, then their covariance
//! (upper triangle, row by row).

use tinwave_core::design::Design;
use tinwave_core::diagnosis::Knowledge;
use tinwave_core::dimension::Dimension;
use tinwave_core::si::SiDesign;

/// A can whose expected size is off the drawing by more than so many usual
/// tolerances is another can.
const ANOTHER_CAN: f64 = 10.0;

/// Writes what is known of a can, as deviations from a design.
pub(super) fn write(knowledge: &Knowledge, design: &Design) -> String {
    let si = SiDesign::new(design);
    let means = knowledge.dimensions.iter().zip(&knowledge.means);
    let mut numbers: Vec<f64> = means.map(|(d, mean)| d.of(&si) + mean).collect();
    let count = knowledge.dimensions.len();
    for i in 0..count {
        numbers.extend((i..count).map(|k| knowledge.covariance.at(i, k)));
    }
    let words: Vec<String> = numbers.iter().map(|n| format!("{n:.9e}")).collect();
    words.join(" ")
}

/// Why a text tells nothing about a design's can.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unknown {
    /// There is no text, or it is damaged.
    Nothing,
    /// It is about a can of quite another size.
    AnotherCan,
}

/// Reads it, as deviations from a design.
pub(super) fn read(text: &str, design: &Design) -> Result<Knowledge, Unknown> {
    let (mut knowledge, sizes) = parsed(text).ok_or(Unknown::Nothing)?;
    let si = SiDesign::new(design);
    knowledge.means.clear();
    for (dimension, size) in knowledge.dimensions.iter().zip(sizes) {
        let off = size - dimension.of(&si);
        if off.abs() > ANOTHER_CAN * dimension.usual_tolerance() {
            return Err(Unknown::AnotherCan);
        }
        knowledge.means.push(off);
    }
    Ok(knowledge)
}

/// Knowledge with its covariance, and the sizes.
fn parsed(text: &str) -> Option<(Knowledge, Vec<f64>)> {
    let mut knowledge = Knowledge::usual();
    let count = knowledge.dimensions.len();
    let mut numbers = Vec::with_capacity(count * (count + 3) / 2);
    for word in text.split(' ') {
        numbers.push(word.parse().ok().filter(|n: &f64| n.is_finite())?);
    }
    if numbers.len() != count * (count + 3) / 2 {
        return None;
    }
    let triangle = numbers.split_off(count);
    let places = (0..count).flat_map(|i| (i..count).map(move |k| (i, k)));
    for ((i, k), value) in places.zip(triangle) {
        let add = value - knowledge.covariance.at(i, k);
        knowledge.covariance.add(i, k, add);
        if i != k {
            knowledge.covariance.add(k, i, add);
        }
    }
    // A variance is above zero, and a covariance can be inverted.
    let good = (0..count).all(|i| knowledge.covariance.at(i, i) > 0.0);
    (good && knowledge.covariance.inverse().is_some()).then_some((knowledge, numbers))
}

/// Standard deviation of the wire's length in a text, metres.
pub(super) fn length_sd(text: &str) -> Option<f64> {
    parsed(text)?.0.sd_of(Dimension::ProbeLength)
}

#[cfg(test)]
mod tests {
    use super::{Unknown, length_sd, read, write};
    use crate::example::example;
    use tinwave_core::design::Design;
    use tinwave_core::diagnosis::Knowledge;

    fn design(length_um: u32) -> Design {
        let mut design = example().design;
        design.probe.length_um = length_um;
        design
    }

    fn close(a: f64, b: f64, within: f64) -> bool {
        (a - b).abs() < within
    }

    #[test]
    fn what_is_known_comes_back_and_damage_is_refused() {
        let mut knowledge = Knowledge::usual();
        knowledge.means = vec![1.25e-4, -2e-5, 0.0, 1e-6, 3e-15];
        knowledge.covariance.add(0, 1, 1e-7);
        knowledge.covariance.add(1, 0, 1e-7);
        let drawn = design(28_400);
        let text = write(&knowledge, &drawn);
        let back = read(&text, &drawn);
        assert!(back.is_ok_and(|back| close(back.means[0], 1.25e-4, 1e-10)
            && close(back.covariance.at(1, 0), 1e-7, 1e-15)));
        assert!(length_sd(&text).is_some_and(|sd| close(sd, 0.5e-3, 1e-9)));
        for broken in ["", "1 2 3", "NaN", &text.replacen("e-", "x", 1)] {
            assert_eq!(read(broken, &drawn), Err(Unknown::Nothing), "{broken}");
        }
    }

    #[test]
    fn another_drawing_of_the_same_can_moves_what_is_expected() {
        let text = write(&Knowledge::usual(), &design(28_400));
        let back = read(&text, &design(29_900));
        assert!(back.is_ok_and(|back| close(back.means[0], -1.5e-3, 1e-9)));
        assert_eq!(read(&text, &design(38_000)), Err(Unknown::AnotherCan));
    }
}
