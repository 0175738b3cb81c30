//! The match on a Smith chart.

use leptos::prelude::*;
use tinwave_drawing::smith::{LocusPath, RIM, SmithLabel, SmithScene, SmithSpec};
use tinwave_words::smith as words;

use crate::kit::{Part, new_id};
use crate::reactive::memo;

/// A Smith chart of one or more cuts, with the reading line's place on the first.
///
/// ```ignore
/// view! { <SmithPicture spec=move || spec() said=move || in_words() reading/> }
/// ```
#[component]
pub fn SmithPicture(
    /// What it shows.
    #[prop(into)]
    spec: Signal<SmithSpec>,
    /// The same in words.
    #[prop(into)]
    said: Signal<String>,
    /// Frequency that is read off, MHz; `None`: the band's middle.
    reading: RwSignal<Option<f64>>,
) -> impl IntoView {
    let spec = memo(move || spec.get());
    let scene = memo(move || spec.with(SmithSpec::scene));
    let note = move || {
        let inner = scene.with(|scene| scene.plane.is_inner());
        spec.with(|spec| words::note(inner, spec.band.low_khz, spec.band.high_khz))
    };
    let is_empty = memo(move || spec.with(SmithSpec::is_empty));
    let ring = move || {
        spec.with(|spec| {
            let khz = reading
                .get()
                .map_or_else(|| spec.band.centre_khz(), |mhz| (mhz * 1e3).round() as u32);
            let (x, y) = spec.place_at(scene.with(|scene| scene.plane), khz)?;
            Some(view! { <circle class="reading-ring" cx=units(x) cy=units(y) r="3.5"/> })
        })
    };
    view! {
        <Part title=words::title() note>
            <Show when=move || !is_empty.get() fallback=|| view! { <p class="chart-empty">{words::nothing()}</p> }>
                {chart(scene, said, ring)}
            </Show>
        </Part>
    }
}

fn chart<R, V>(scene: Memo<SmithScene>, said: Signal<String>, ring: R) -> AnyView
where
    R: Fn() -> V + Copy + Send + Sync + 'static,
    V: IntoView + 'static,
{
    let clip = new_id("rim");
    let clipped = format!("url(#{clip})");
    let rim = units(RIM);
    let circles = move || {
        let circle =
            |radius: &f64| view! { <circle class="ratio" cx="0" cy="0" r=units(*radius)/> };
        scene.with(|scene| scene.circles.iter().map(circle).collect_view())
    };
    // The first is drawn last, over the others.
    let loci = move || scene.with(|scene| scene.loci.iter().rev().map(locus).collect_view());
    let ends = move || {
        let [low, high] = scene.with(|scene| scene.ends)?;
        Some(view! {
            <circle class="end low" cx=units(low.0) cy=units(low.1) r="2.6"/>
            <circle class="end high" cx=units(high.0) cy=units(high.1) r="2.6"/>
        })
    };
    let labels = move || scene.with(|scene| scene.labels.iter().map(label).collect_view());
    view! {
        <div class="smith" role="img" aria-label=said>
            <svg class="smith-lines" viewBox="-102 -102 204 204" aria-hidden="true">
                <defs><clipPath id=clip><circle cx="0" cy="0" r=rim.clone()/></clipPath></defs>
                <g clip-path=clipped>
                    <path class="grid" d=move || scene.with(|scene| scene.grid.clone())/>
                    {circles}
                    {loci}
                    {ends}
                </g>
                <circle class="rim" cx="0" cy="0" r=rim/>
                {ring}
            </svg>
            <svg class="smith-letters" aria-hidden="true">{labels}</svg>
        </div>
    }
    .into_any()
}

fn locus(path: &LocusPath) -> impl IntoView + use<> {
    view! {
        <g class=path.style.class()>
            <path class="whole" d=path.whole.clone()/>
            <path class="band" d=path.band.clone()/>
        </g>
    }
}

fn label(label: &SmithLabel) -> impl IntoView + use<> {
    let class = label
        .style
        .map_or("grid-name", tinwave_drawing::chart::Style::class);
    // The letters' square is the rim's: the lines reach two units past it.
    let part = |share: f64| format!("{:.2}%", (share * 200.0 + 2.0) / 2.04);
    view! { <text class=class x=part(label.x) y=part(label.y) dy=".35em">{label.text.clone()}</text> }
}

fn units(value: f64) -> String {
    format!("{value:.1}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_core::complex::Complex;
    use tinwave_core::design::Band;
    use tinwave_core::match_band::SweepPoint;
    use tinwave_core::reflection::PointMatch;
    use tinwave_drawing::chart::Style;
    use tinwave_drawing::smith::Locus;

    fn picture(loci: Vec<Locus>) -> String {
        let spec = SmithSpec {
            loci,
            band: Band {
                low_khz: 2_400_000,
                high_khz: 2_483_500,
            },
            reference_milliohm: 50_000,
        };
        Owner::new().with(|| {
            view! { <SmithPicture spec=Signal::stored(spec) said="In words" reading=RwSignal::new(None)/> }.to_html()
        })
    }

    #[test]
    fn it_is_a_picture_with_words_and_tells_its_ends() {
        let sweep = (0..11_u32).map(|i| SweepPoint {
            frequency_khz: 2_390_000 + 10_000 * i,
            at: Some(PointMatch::from_admittance(
                Complex::new(0.02, 0.001 * f64::from(i)),
                50.0,
            )),
        });
        let html = picture(vec![Locus {
            name: "best".into(),
            style: Style::This,
            sweep: sweep.collect(),
        }]);
        assert!(
            html.contains("aria-label=\"In words\"") && html.contains("dot: 2483.5"),
            "{html}"
        );
        assert!(
            html.contains("reading-ring") && !html.contains(" style="),
            "{html}"
        );
    }

    #[test]
    fn nothing_computed_is_said_in_a_sentence() {
        assert!(picture(Vec::new()).contains("chart-empty"));
    }
}
