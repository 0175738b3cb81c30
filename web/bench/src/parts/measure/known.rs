//! What earlier measurements have told of this can, kept as text: numbers in the
//! order means, covariance row by row.

use tinwave_core::diagnosis::Knowledge;

/// Writes knowledge of the usual dimensions.
pub(super) fn write(knowledge: &Knowledge) -> String {
    let count = knowledge.dimensions.len();
    let mut numbers = knowledge.means.clone();
    for i in 0..count {
        numbers.extend((0..count).map(|k| knowledge.covariance.at(i, k)));
    }
    let words: Vec<String> = numbers.iter().map(|number| format!("{number:e}")).collect();
    words.join(" ")
}

/// Reads it; `None` where there is none, or the text is damaged.
pub(super) fn read(text: &str) -> Option<Knowledge> {
    let numbers: Vec<f64> = text
        .split(' ')
        .map(|word| word.parse().ok().filter(|number: &f64| number.is_finite()))
        .collect::<Option<_>>()?;
    let mut knowledge = Knowledge::usual();
    let count = knowledge.dimensions.len();
    if numbers.len() != count * (count + 1) {
        return None;
    }
    let (means, rest) = numbers.split_at(count);
    knowledge.means = means.to_vec();
    for (i, row) in rest.chunks(count).enumerate() {
        for (k, value) in row.iter().enumerate() {
            let usual = knowledge.covariance.at(i, k);
            knowledge.covariance.add(i, k, value - usual);
        }
        // A variance is above zero.
        if knowledge.covariance.at(i, i) <= 0.0 {
            return None;
        }
    }
    Some(knowledge)
}

#[cfg(test)]
mod tests {
    use super::{read, write};
    use tinwave_core::diagnosis::Knowledge;

    #[test]
    fn what_is_known_comes_back_and_damage_is_refused() {
        let mut knowledge = Knowledge::usual();
        knowledge.means = vec![1.25e-4, -2e-5, 0.0, 1e-6, 3e-15];
        let text = write(&knowledge);
        assert_eq!(
            read(&text).as_ref().map(|k| &k.means),
            Some(&knowledge.means)
        );
        let back = read(&text).map(|k| k.covariance.at(1, 1) / knowledge.covariance.at(1, 1));
        assert!((back.unwrap_or_default() - 1.0).abs() < 1e-12);
        for broken in ["", "1 2 3", "NaN", &text.replacen("e-", "x", 1)] {
            assert!(read(broken).is_none(), "{broken}");
        }
    }
}
