//! A can as a small section, for a card: outline, mouth and wire as paths in
//! millimetres, so that all cards share one scale.

use tinwave_core::design::{Design, Mouth};

use crate::path_text::PathText;

/// A can's section in millimetres; the back wall's inside stands at x = 0, the axis at
/// y = 0.
#[derive(Clone, Debug, PartialEq)]
pub struct CardSection {
    /// Wall and back.
    pub outline: String,
    /// What stands at the mouth; empty where it is cut straight off.
    pub mouth: String,
    /// The wire, with a stub for its connector.
    pub wire: String,
    /// From the back wall to the farthest point, mm.
    pub length_mm: f64,
    /// From the axis to the farthest point, mm.
    pub radius_mm: f64,
}

/// The extent that holds every section of a list: the cards' common scale.
#[must_use]
pub fn common_extent<'a>(sections: impl Iterator<Item = &'a CardSection>) -> (f64, f64) {
    sections.fold((1.0, 1.0), |(length, radius), section| {
        (section.length_mm.max(length), section.radius_mm.max(radius))
    })
}

/// A drawing's box that holds such an extent, with room for strokes and the connector:
/// left, top, width, height.
#[must_use]
pub fn card_box((length_mm, radius_mm): (f64, f64)) -> [f64; 4] {
    const ROOM_MM: f64 = 8.0;
    [
        -ROOM_MM,
        -radius_mm - ROOM_MM,
        length_mm + 2.0 * ROOM_MM,
        2.0 * (radius_mm + ROOM_MM),
    ]
}

/// The small section of a design; `with_cut` says whether its wire is drawn.
#[must_use]
pub fn card_section(design: &Design, with_cut: bool) -> CardSection {
    let mm = |um: u32| f64::from(um) / 1e3;
    let (length, radius) = (
        mm(design.can.open_length_um),
        mm(design.can.inside_diameter_um) / 2.0,
    );
    let outline = path(&[&[
        (length, -radius),
        (0.0, -radius),
        (0.0, radius),
        (length, radius),
    ]]);
    let (mouth, far, wide) = mouth_lines(design.mouth, length, radius);
    let (at, deep) = (
        mm(design.probe.backshort_distance_um),
        mm(design.probe.length_um),
    );
    let wire = if with_cut {
        path(&[&[(at, radius + 4.0), (at, radius - deep)]])
    } else {
        String::new()
    };
    CardSection {
        outline,
        mouth: path(&mouth.iter().map(Vec::as_slice).collect::<Vec<_>>()),
        wire,
        length_mm: length.max(far),
        radius_mm: radius.max(wide),
    }
}

type Line = Vec<(f64, f64)>;

/// Lines of the mouth, how far they reach ahead and how far from the axis.
fn mouth_lines(mouth: Mouth, length: f64, radius: f64) -> (Vec<Line>, f64, f64) {
    let both = |line: Line| {
        let mirrored = line.iter().map(|&(x, y)| (x, -y)).collect();
        vec![line, mirrored]
    };
    let mm = |um: u32| f64::from(um) / 1e3;
    match mouth {
        Mouth::Open | Mouth::Absorbing => (Vec::new(), length, radius),
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => {
            let wide = mm(mouth_diameter_um) / 2.0;
            let slope = (f64::from(half_angle_millideg) / 1e3).to_radians().tan();
            let far = length + (wide - radius).max(0.0) / slope.max(1e-3);
            (both(vec![(length, radius), (far, wide)]), far, wide)
        }
        Mouth::Flange {
            outside_diameter_um,
        } => {
            let wide = mm(outside_diameter_um) / 2.0;
            (both(vec![(length, radius), (length, wide)]), length, wide)
        }
        Mouth::Choke {
            outside_diameter_um,
            depth_um,
        } => {
            let wide = mm(outside_diameter_um) / 2.0;
            let back = length - mm(depth_um);
            let cup = vec![(back, radius), (back, wide), (length, wide)];
            (both(cup), length, wide)
        }
    }
}

fn path(lines: &[&[(f64, f64)]]) -> String {
    let mut text = PathText::new();
    for line in lines {
        text.polyline(line.iter().copied());
    }
    text.into_text()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn example() -> Design {
        tinwave_maker::example::example().design
    }

    #[test]
    fn all_cards_share_one_scale() {
        let small = card_section(&example(), true);
        let mut wide = example();
        wide.can.inside_diameter_um = 120_000;
        let wide = card_section(&wide, true);
        let extent = common_extent([&small, &wide].into_iter());
        assert_eq!(extent, (190.0, 60.0));
    }

    #[test]
    fn no_wire_is_drawn_where_there_is_no_cut() {
        assert!(card_section(&example(), false).wire.is_empty());
        assert!(!card_section(&example(), true).wire.is_empty());
    }

    #[test]
    fn a_funnel_reaches_ahead_of_the_rim() {
        let mut design = example();
        design.mouth = Mouth::Funnel {
            mouth_diameter_um: 187_000,
            half_angle_millideg: 45_000,
        };
        let section = card_section(&design, true);
        // 50 mm wider on each side at 45° is 50 mm ahead.
        assert!((section.length_mm - 240.0).abs() < 1e-6);
        assert!((section.radius_mm - 93.5).abs() < 1e-9);
    }
}
