//! What is entered of tolerances, limit and number of cans.

use leptos::prelude::*;
use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::{Spread, YieldSettings};
use tinwave_maker::entry::{
    LengthUnit, format_length_exact, format_trimmed, parse_count, parse_length, parse_picofarad,
};
use tinwave_words::{measure as measure_words, tolerance as words};

use crate::kit::{Action, Choice, Fault, Fold, NumberField, Pick};
use crate::reactive::live;
use crate::state::Workshop;

/// Largest tolerance of a length, micrometres, and of the capacitance, femtofarad.
const LARGEST_UM: u32 = 5_000;
const LARGEST_FF: u32 = 1_000;

/// A count: usual, fewest, most.
#[derive(Clone, Copy)]
pub struct CountRange {
    usual: u32,
    low: u32,
    high: u32,
}

pub(super) const SAMPLES: CountRange = CountRange {
    usual: 2_000,
    low: 100,
    high: 20_000,
};
pub(super) const BATCH: CountRange = CountRange {
    usual: 10,
    low: 1,
    high: 10_000,
};
pub(super) const SEED: CountRange = CountRange {
    usual: 1,
    low: 0,
    high: u32::MAX,
};

/// What is entered. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Tolerances {
    /// Of each dimension, in the order of [`Dimension::ALL`]: whole micrometres, or
    /// femtofarad.
    sizes: RwSignal<[u32; 7]>,
    /// Whether they are standard deviations.
    pub(super) normal: RwSignal<bool>,
    /// The VSWR up to which a can passes.
    pub(super) limit: RwSignal<f64>,
    /// Cans to draw.
    pub(super) samples: RwSignal<u32>,
    /// Seed of the random numbers.
    pub(super) seed: RwSignal<u32>,
    /// Cans that will be made.
    pub(super) batch: RwSignal<u32>,
}

fn usual_sizes() -> [u32; 7] {
    Dimension::ALL.map(|dimension| {
        let size = dimension.usual_tolerance();
        let whole = if dimension == Dimension::ShuntCapacitance {
            size * 1e15
        } else {
            size * 1e6
        };
        whole.round() as u32
    })
}

impl Tolerances {
    /// The usual ones.
    #[must_use]
    pub fn usual() -> Self {
        Self {
            sizes: RwSignal::new(usual_sizes()),
            normal: RwSignal::new(false),
            limit: RwSignal::new(1.5),
            samples: RwSignal::new(SAMPLES.usual),
            seed: RwSignal::new(SEED.usual),
            batch: RwSignal::new(BATCH.usual),
        }
    }

    /// Each dimension with its tolerance, in the unit of [`Dimension::of`].
    #[must_use]
    pub fn all(self) -> Vec<(Dimension, f64)> {
        let sizes = self.sizes.get();
        let pairs = Dimension::ALL.into_iter().zip(sizes);
        pairs
            .map(|(dimension, size)| {
                let unit = if dimension == Dimension::ShuntCapacitance {
                    1e-15
                } else {
                    1e-6
                };
                (dimension, f64::from(size) * unit)
            })
            .collect()
    }

    /// What is drawn and judged.
    #[must_use]
    pub fn settings(self) -> YieldSettings {
        let normal = self.normal.get();
        let spread = |size: f64| {
            if normal {
                Spread::Normal(size)
            } else {
                Spread::Uniform(size)
            }
        };
        let scattering = self.all().into_iter().filter(|(_, size)| *size > 0.0);
        YieldSettings {
            spreads: scattering.map(|(d, size)| (d, spread(size))).collect(),
            vswr_limit: self.limit.get(),
            samples: self.samples.get(),
            seed: u64::from(self.seed.get()),
        }
    }

    fn is_usual(self) -> bool {
        self.sizes.with(|sizes| *sizes == usual_sizes())
    }
}

/// The tolerances, folded: the usual ones serve most.
#[component]
pub fn ToleranceEntries(
    /// What is entered.
    tolerances: Tolerances,
) -> impl IntoView {
    let (label, [uniform, normal]) = words::kinds();
    let picks = vec![Pick::new("uniform", uniform), Pick::new("normal", normal)];
    let chosen = move || {
        let key = if tolerances.normal.get() {
            "normal"
        } else {
            "uniform"
        };
        key.to_owned()
    };
    let fields = Dimension::ALL
        .into_iter()
        .enumerate()
        .map(|(place, dimension)| view! { <SizeField tolerances place dimension/> })
        .collect_view();
    view! {
        <Fold title=words::tolerances_title()
            summary=move || words::tolerances_summary(tolerances.is_usual()).to_owned()>
            <p class="note">{words::tolerances_note()}</p>
            {fields}
            <Choice label labelled=true picks=picks chosen=chosen
                on_choose=move |key: String| tolerances.normal.set(key == "normal")/>
            <p class="note">{live(move || words::kind_note(tolerances.normal.get()))}</p>
            <Action text=words::usual_again() on_press=move |()| tolerances.sizes.set(usual_sizes())/>
        </Fold>
    }
}

#[component]
fn SizeField(tolerances: Tolerances, place: usize, dimension: Dimension) -> impl IntoView {
    let unit = expect_context::<Workshop>().unit;
    let is_capacitance = dimension == Dimension::ShuntCapacitance;
    let size = move || {
        tolerances
            .sizes
            .with(|sizes| sizes.get(place).copied().unwrap_or(0))
    };
    let value = move || {
        if is_capacitance {
            format_trimmed(i64::from(size()), 3)
        } else {
            format_length_exact(size(), unit.get())
        }
    };
    let symbol = move || {
        let symbol = if is_capacitance {
            "pF"
        } else {
            unit.get().symbol()
        };
        symbol.to_owned()
    };
    let take = move |text: String| -> Result<(), Fault> {
        let (read, most, said) = if is_capacitance {
            (parse_picofarad(&text)?.value, LARGEST_FF, "1 pF".to_owned())
        } else {
            let unit = unit.get_untracked();
            let read = parse_length(&text, unit)?.value;
            (read, LARGEST_UM, words::fine_length(LARGEST_UM, unit))
        };
        if read > most {
            return Err(words::beyond("0", &said).into());
        }
        tolerances.sizes.update(|sizes| {
            if let Some(size) = sizes.get_mut(place) {
                *size = read;
            }
        });
        Ok(())
    };
    view! {
        <NumberField label=measure_words::dimension_head(dimension) help=words::tolerance_help(dimension)
            unit=symbol value=value take=take
            full_keyboard=move || !is_capacitance && unit.get() == LengthUnit::Inch/>
    }
}

/// A whole number in a range.
#[component]
pub fn CountField(
    /// What it is, and its help.
    said: (&'static str, &'static str),
    /// Where it goes.
    count: RwSignal<u32>,
    /// Its range.
    range: CountRange,
) -> impl IntoView {
    let take = move |text: String| -> Result<(), Fault> {
        let read = parse_count(&text)?;
        if !(range.low..=range.high).contains(&read) {
            return Err(words::beyond(&range.low.to_string(), &range.high.to_string()).into());
        }
        count.set(read);
        Ok(())
    };
    view! { <NumberField label=said.0 help=said.1 value=move || count.get().to_string() take=take/> }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_tolerances_are_those_of_the_core() {
        Owner::new().with(|| {
            let tolerances = Tolerances::usual();
            for (dimension, size) in tolerances.all() {
                let usual = dimension.usual_tolerance();
                assert!((size / usual - 1.0).abs() < 1e-9, "{dimension:?}");
            }
            let settings = tolerances.settings();
            assert_eq!(settings.spreads.len(), 7);
            assert!(matches!(settings.spreads[0].1, Spread::Uniform(_)));
        });
    }

    #[test]
    fn what_is_exact_does_not_scatter() {
        Owner::new().with(|| {
            let tolerances = Tolerances::usual();
            tolerances.sizes.update(|sizes| sizes[6] = 0);
            tolerances.normal.set(true);
            let settings = tolerances.settings();
            assert_eq!(settings.spreads.len(), 6);
            assert!(matches!(settings.spreads[0].1, Spread::Normal(_)));
            assert!(!tolerances.is_usual());
        });
    }
}
