//! A space that things go into, as it was measured with a tape.

use crate::error::{ShapeError, finite, positive};
use crate::rect::At;
use crate::{Axis, Direction, Point, Prism, Profile};
use spile_quantity::{Length, Ranged};

/// A measurement taken at one height above the bay's floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// The height above the floor.
    pub height: Length,
    /// What was measured there.
    pub measured: Ranged<Length>,
}

/// How well a stretch of height is covered by the rows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Covered {
    /// It lies between rows that were measured.
    Between,
    /// It reaches below the lowest or above the highest row: how the wall leans there is guessed.
    Beyond,
    /// There is one row only, at another height: nothing is known of the lean.
    OneRow,
}

/// The room there is over a stretch of height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// The least over the stretch.
    pub length: Ranged<Length>,
    /// Whether the rows cover it.
    pub covered: Covered,
    /// The height at which the likely value is least.
    pub height: Length,
}

/// Which of a range's three values to draw with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// The least.
    Low,
    /// The likely one.
    Likely,
    /// The greatest.
    High,
}

/// A bay: its height, its depth from the front to the back wall and its width, both at one or
/// several heights.
///
/// Between two rows a wall is straight. Beyond the last row it most likely leans in on as between
/// the last two rows, and does not lean out on. It might as well go straight up (or down), and,
/// since walls of vehicles curve, lean in (or out) twice as steeply, and that as steeply as the
/// rows' tolerances allow: the range there reaches from the one to the other. With one row nothing
/// is known of the lean, and the range is that row's. A depth or width that leans on never falls
/// below 0.
#[derive(Debug, Clone, PartialEq)]
pub struct Bay {
    height: Ranged<Length>,
    depth: Vec<Row>,
    width: Vec<Row>,
}

impl Bay {
    /// A bay by its rows, in any order.
    ///
    /// **Errors**: no row, two rows at one height, a figure that is not a positive number.
    pub fn new(height: Ranged<Length>, depth: &[Row], width: &[Row]) -> Result<Self, ShapeError> {
        positive(height.low, "the height of a bay [mm]")?;
        finite(height.likely, "the height of a bay")?;
        finite(height.high, "the height of a bay")?;
        Ok(Self {
            height,
            depth: in_order(depth, "the depth of a bay")?,
            width: in_order(width, "the width of a bay")?,
        })
    }

    /// Its height.
    pub const fn height(&self) -> Ranged<Length> {
        self.height
    }

    /// The rows of its depth, the lowest first.
    pub fn depth_rows(&self) -> &[Row] {
        &self.depth
    }

    /// The rows of its width, the lowest first.
    pub fn width_rows(&self) -> &[Row] {
        &self.width
    }

    /// The least depth from the front to the back wall over the heights `from` … `to`.
    ///
    /// ```
    /// use spile_quantity::{Length, Ranged};
    /// use spile_solid::{Bay, Covered, Row};
    /// let row = |height, measured| Row {
    ///     height: Length::mm(height),
    ///     measured: Ranged::exactly(Length::mm(measured)),
    /// };
    /// let rows = [row(100.0, 520.0), row(500.0, 500.0)];
    /// let bay = Bay::new(Ranged::exactly(Length::mm(900.0)), &rows, &[row(0.0, 450.0)])?;
    /// let low = bay.free_depth(Length::mm(100.0), Length::mm(300.0))?;
    /// assert_eq!((low.length.likely.in_mm(), low.covered), (510.0, Covered::Between));
    /// let high = bay.free_depth(Length::mm(400.0), Length::mm(900.0))?;
    /// assert_eq!((high.length.likely.in_mm().round(), high.covered), (480.0, Covered::Beyond));
    /// assert_eq!(high.length.low.in_mm().round(), 460.0); // if it leans in twice as steeply
    /// assert_eq!(high.length.high.in_mm().round(), 500.0); // if it goes straight up
    /// # Ok::<(), spile_solid::ShapeError>(())
    /// ```
    pub fn free_depth(&self, from: Length, to: Length) -> Result<Room, ShapeError> {
        room(&self.depth, from, to)
    }

    /// The least width over the heights `from` … `to`.
    pub fn free_width(&self, from: Length, to: Length) -> Result<Room, ShapeError> {
        room(&self.width, from, to)
    }

    /// The back wall as a solid, `thickness` thick at its thinnest, with one `end` of each range.
    ///
    /// `corner` is a point where the bay's front meets its floor, `back` the level direction from
    /// the front to the back wall, and `width` how far the wall reaches from `corner` towards the
    /// front or the left of the vehicle.
    pub fn back_wall(
        &self,
        corner: Point,
        back: Direction,
        width: Length,
        thickness: Length,
        end: End,
    ) -> Result<Prism, ShapeError> {
        if back.axis() == Axis::Z {
            return Err(ShapeError::BackNotLevel { back });
        }
        let pick = |range: Ranged<Length>| match end {
            End::Low => range.low.in_m(),
            End::Likely => range.likely.in_m(),
            End::High => range.high.in_m(),
        };
        let height_m = pick(self.height);
        let thickness_m = positive(thickness, "the thickness of a wall [mm]")?;
        positive(width, "the width of a wall [mm]")?;
        finite(corner.along(back.axis()), "the corner of a bay")?;
        finite(corner.z, "the corner of a bay")?;
        let inner = self.depth.iter().map(|row| row.height.in_m());
        let mut heights_m = vec![0.0];
        heights_m.extend(inner.filter(|&h| h > crate::TOUCH_M && h < height_m - crate::TOUCH_M));
        heights_m.push(height_m);
        let depth_at = |h: f64| pick(at_height(&self.depth, h));
        let outside_m = heights_m.iter().map(|&h| depth_at(h)).fold(0.0, f64::max) + thickness_m;
        let place = |depth_m: f64, h: f64| -> At {
            [corner.along(back.axis()).in_m() + back.sign() * depth_m, corner.z.in_m() + h]
        };
        let mut outline = vec![place(outside_m, height_m), place(outside_m, 0.0)];
        outline.extend(heights_m.iter().map(|&h| place(depth_at(h), h)));
        let along = if back.axis() == Axis::X { Axis::Y } else { Axis::X };
        let from = corner.along(along);
        Prism::new(along, Profile::from_simple(outline), from, from + width)
    }
}

/// Rows from the lowest to the highest.
fn in_order(rows: &[Row], what: &'static str) -> Result<Vec<Row>, ShapeError> {
    for row in rows {
        finite(row.height, what)?;
        positive(row.measured.low, what)?;
        finite(row.measured.likely, what)?;
        finite(row.measured.high, what)?;
    }
    let mut rows = rows.to_vec();
    rows.sort_by(|a, b| a.height.in_m().total_cmp(&b.height.in_m()));
    if rows.is_empty() {
        return Err(ShapeError::NoRows { what });
    }
    match rows
        .windows(2)
        .find(|pair| pair[1].height.in_m() - pair[0].height.in_m() < crate::TOUCH_M)
    {
        Some(pair) => Err(ShapeError::RepeatedRow { what, height: pair[1].height }),
        None => Ok(rows),
    }
}

/// The least of what was measured, over the heights `from` … `to`.
fn room(rows: &[Row], from: Length, to: Length) -> Result<Room, ShapeError> {
    let (from_m, to_m) = (finite(from, "a height")?, finite(to, "a height")?);
    if from_m > to_m {
        return Err(ShapeError::UpsideDown { from, to });
    }
    let (lowest, highest) = (rows[0].height.in_m(), rows[rows.len() - 1].height.in_m());
    let between = lowest - crate::TOUCH_M <= from_m && to_m <= highest + crate::TOUCH_M;
    let covered = match rows.len() {
        _ if between => Covered::Between,
        1 => Covered::OneRow,
        _ => Covered::Beyond,
    };
    // Each of the three lines is straight between these heights, so that its least is at one.
    let inner = rows.iter().map(|row| row.height.in_m()).filter(|&h| from_m < h && h < to_m);
    let (mut length, mut height_m) = (at_height(rows, from_m), from_m);
    for h in inner.chain([to_m]) {
        let here = at_height(rows, h);
        if here.likely < length.likely {
            height_m = h;
        }
        length = Ranged {
            low: length.low.min(here.low),
            likely: length.likely.min(here.likely),
            high: length.high.min(here.high),
        };
    }
    Ok(Room { length, covered, height: Length::m(height_m) })
}

/// What would be measured at the height `h_m`.
fn at_height(rows: &[Row], h_m: f64) -> Ranged<Length> {
    let (first, last) = (rows[0], rows[rows.len() - 1]);
    if h_m <= first.height.in_m() {
        return beyond(first, rows.get(1), h_m);
    }
    if h_m >= last.height.in_m() {
        return beyond(last, rows.len().checked_sub(2).map(|i| &rows[i]), h_m);
    }
    let above = rows.iter().position(|row| row.height.in_m() > h_m).unwrap_or(rows.len() - 1);
    let (a, b) = (rows[above - 1], rows[above]);
    let share = (h_m - a.height.in_m()) / (b.height - a.height).in_m();
    let mix = |p: Length, q: Length| p + (q - p) * share;
    Ranged {
        low: mix(a.measured.low, b.measured.low),
        likely: mix(a.measured.likely, b.measured.likely),
        high: mix(a.measured.high, b.measured.high),
    }
}

/// At or beyond the `end` row, whose neighbour is `inner`.
fn beyond(end: Row, inner: Option<&Row>, h_m: f64) -> Ranged<Length> {
    let Some(inner) = inner else { return end.measured };
    // How many times the stretch between the two rows the height lies further out.
    let times = ((h_m - end.height.in_m()) / (end.height - inner.height).in_m()).max(0.0);
    let steepest_in = (end.measured.low - inner.measured.high) * times;
    let steepest_out = (end.measured.high - inner.measured.low) * times;
    let lean = (end.measured.likely - inner.measured.likely) * times;
    let nothing = Length::m(0.0);
    Ranged {
        low: (end.measured.low + (steepest_in * CURVED).min(nothing)).max(nothing),
        likely: (end.measured.likely + lean.min(nothing)).max(nothing),
        high: end.measured.high + (steepest_out * CURVED).max(nothing),
    }
}

/// How many times as steep as between the last two rows a curved wall may be beyond them.
/// From memory: no source.
const CURVED: f64 = 2.0;
