//! Leptos' own memos, signals, effects and live views, made here once for a type of value.
//! Made where they stand they are compiled once more for every closure, and the page has
//! hundreds.

use leptos::prelude::*;

/// [`Memo::new`], for a value that does not look at the one before.
pub fn memo<T>(value: impl Fn() -> T + Send + Sync + 'static) -> Memo<T>
where
    T: PartialEq + Send + Sync + 'static,
{
    #[inline(never)]
    fn of<T: PartialEq + Send + Sync + 'static>(
        value: Box<dyn Fn() -> T + Send + Sync>,
    ) -> Memo<T> {
        Memo::new(move |_| value())
    }
    of(Box::new(value))
}

/// [`Signal::derive`].
pub fn derived<T>(value: impl Fn() -> T + Send + Sync + 'static) -> Signal<T>
where
    T: Send + Sync + 'static,
{
    #[inline(never)]
    fn of<T: Send + Sync + 'static>(value: Box<dyn Fn() -> T + Send + Sync>) -> Signal<T> {
        Signal::derive(value)
    }
    of(Box::new(value))
}

/// [`Effect::new`], for what does not look at its run before.
pub fn effect(run: impl FnMut() + 'static) {
    #[inline(never)]
    fn of(mut run: Box<dyn FnMut()>) {
        Effect::new(move |_| run());
    }
    of(Box::new(run));
}

/// A view that is made anew when what it reads has changed.
pub fn live<V: IntoView + 'static>(
    view: impl Fn() -> V + Send + 'static,
) -> Box<dyn FnMut() -> AnyView + Send> {
    Box::new(move || view().into_any())
}
