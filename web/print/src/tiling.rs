//! A pattern that is larger than a sheet, cut into windows that overlap.

use crate::drawing::{Drawing, Text};
use crate::fill::fill;
use crate::geometry::{MM, Point, Rect, Um, at};
use crate::layer::Layer;
use crate::pattern::Pattern;
use crate::words;

/// How much neighbouring sheets share.
pub const OVERLAP: Um = 10 * MM;
/// Room outside the windows for register marks.
pub const MARK_ROOM: Um = 8 * MM;
/// Arm of a register mark.
const ARM: Um = 3 * MM;
/// A joint this far from a hole's centre does no harm.
const CLEAR: Um = 25 * MM;
/// Most windows that are looked at.
const MOST_WINDOWS: i64 = 900;

/// One window of a tiled pattern.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tile {
    /// Column, from the left.
    pub column: Um,
    /// Row, from the top.
    pub row: Um,
    /// The window in the pattern's coordinates.
    pub window: Rect,
}

/// The windows along one axis: where the first starts, how wide each is, how
/// many there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Windows {
    start: Um,
    length: Um,
    count: Um,
}

impl Windows {
    /// Windows over `low` to `high`, their joints as far as may be from the
    /// places to keep whole.
    #[inline(never)]
    fn new(low: Um, high: Um, length: Um, keep: &[Um]) -> Self {
        let step = length - OVERLAP;
        let span = high - low;
        let count = ((span - OVERLAP).max(1) + step - 1) / step;
        let slack = count * step + OVERLAP - span;
        let clearance = |start: Um| {
            let mut nearest = if keep.is_empty() { 0 } else { Um::MAX };
            for n in 1..count {
                let joint = start + n * step + OVERLAP / 2;
                for place in keep {
                    nearest = nearest.min((joint - place).abs());
                }
            }
            nearest
        };
        // The pattern's own edge where that is clear enough, else the clearest.
        let mut start = low;
        for part in 1..=8 {
            let other = low - slack * part / 8;
            if clearance(start) < CLEAR && clearance(other) > clearance(start) {
                start = other;
            }
        }
        Self {
            start,
            length,
            count,
        }
    }

    const fn window(self, index: Um) -> (Um, Um) {
        let low = self.start + index * (self.length - OVERLAP);
        (low, low + self.length)
    }
}

/// The room that a body leaves for windows: less where register marks stand.
#[must_use]
pub fn window_size(pattern: Rect, body: Rect) -> (Um, Um) {
    let (mut width, mut height) = (body.width(), body.height());
    let (mut columns, mut rows) = (false, false);
    // Marks of one axis may make the other axis too long in turn.
    for _ in 0..2 {
        if pattern.width() > width && !columns {
            columns = true;
            height -= 2 * MARK_ROOM;
        }
        if pattern.height() > height && !rows {
            rows = true;
            width -= 2 * MARK_ROOM;
        }
    }
    (width, height)
}

/// The windows of a pattern on a body, those that are empty left out. `Err`
/// with their number where it is beyond all reason.
pub(crate) fn tiles(pattern: &Pattern, body: Rect) -> Result<Vec<Tile>, i64> {
    let bounds = pattern.drawing.bounds();
    let (width, height) = window_size(bounds, body);
    let keep = &pattern.keep_whole;
    let across = Windows::new(
        bounds.low.x,
        bounds.high.x,
        width,
        &keep.iter().map(|place| place.x).collect::<Vec<_>>(),
    );
    let upright = Windows::new(
        bounds.low.y,
        bounds.high.y,
        height,
        &keep.iter().map(|place| place.y).collect::<Vec<_>>(),
    );
    let all = i64::from(across.count) * i64::from(upright.count);
    if all > MOST_WINDOWS {
        return Err(all);
    }
    let mut tiles = Vec::new();
    for row in 0..upright.count {
        let (low_y, high_y) = upright.window(upright.count - 1 - row);
        for column in 0..across.count {
            let (low_x, high_x) = across.window(column);
            let window = Rect::new(at(low_x, low_y), at(high_x, high_y));
            let items = &pattern.drawing.items;
            if items.iter().any(|item| item.shape.enters(window)) {
                tiles.push(Tile {
                    column,
                    row,
                    window,
                });
            }
        }
    }
    Ok(tiles)
}

/// Draws the register marks of a tile whose window lies at `place` on its
/// sheet. `neighbour` gives the number of the sheet in a column and row.
pub(crate) fn register_marks(
    drawing: &mut Drawing,
    tile: Tile,
    place: Rect,
    neighbour: impl Fn(Um, Um) -> Option<usize>,
) {
    let inset = OVERLAP / 2;
    let off = MARK_ROOM / 2;
    let Rect { low, high } = place;
    let beside = [(-1, low.x + inset), (1, high.x - inset)];
    for (side, x) in beside {
        if let Some(number) = neighbour(tile.column + side, tile.row) {
            for y in [low.y - off, high.y + off] {
                mark(drawing, at(x, y));
            }
            let words = fill("{}{}", &[words::JOIN, &words::count(number)]);
            let text = Text::new(at(x - side * 5 * MM, high.y + off - MM), 1_800, &words);
            drawing.text(if side > 0 { text.end() } else { text });
        }
    }
    let above = [(-1, high.y - inset), (1, low.y + inset)];
    for (side, y) in above {
        if let Some(number) = neighbour(tile.column, tile.row + side) {
            for x in [low.x - off, high.x + off] {
                mark(drawing, at(x, y));
            }
            let words = fill("{}{}", &[words::JOIN, &words::count(number)]);
            let text = Text::new(at(low.x - off + MM, y + side * 5 * MM), 1_800, &words).turned();
            drawing.text(if side < 0 { text.end() } else { text });
        }
    }
}

fn mark(drawing: &mut Drawing, centre: Point) {
    drawing.circle(Layer::Register, centre, ARM / 2);
    drawing.cross(Layer::Register, centre, ARM);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn windows_cover_all_and_keep_their_joint_off_the_hole() {
        // 480 mm on sheets of 250 mm: two windows of 250 with 10 shared reach
        // 490; the joint may stand between 245 - 10 and 245. The hole at 240
        // leaves at most 5.
        let windows = Windows::new(0, 480_000, 250_000, &[240_000]);
        assert_eq!(windows.count, 2);
        let (first_low, first_high) = windows.window(0);
        let (last_low, last_high) = windows.window(1);
        assert!(first_low <= 0 && last_high >= 480_000);
        assert_eq!(first_high - last_low, OVERLAP);
        let joint = last_low + OVERLAP / 2;
        assert!((joint - 240_000).abs() >= 5_000, "{joint}");
    }
}
