//! A cut-out on its panel: what is left around it, and where the holes fall.

use crate::error::{ShapeError, finite, positive};
use crate::rect::{At, Rect};
use spile_quantity::Length;

/// A side of a panel, seen from its face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// The left edge.
    Left,
    /// The right edge.
    Right,
    /// The lower edge.
    Bottom,
    /// The upper edge.
    Top,
}

/// A rectangle on the panel's face, by its distances from the panel's lower left corner, the datum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// From the panel's left edge to its own.
    pub left: Length,
    /// From the panel's lower edge to its own.
    pub bottom: Length,
    /// Its width.
    pub width: Length,
    /// Its height.
    pub height: Length,
}

/// A rectangular cut with round corners on a rectangular panel, and what lies behind the panel.
///
/// ```
/// use spile_quantity::Length;
/// use spile_solid::{Cutout, Patch, Side};
/// let [left, bottom, width, height] = [80.0, 100.0, 440.0, 500.0].map(Length::mm);
/// let cut = Patch { left, bottom, width, height };
/// let cutout = Cutout::new([Length::mm(600.0), Length::mm(700.0)], cut, Length::mm(10.0))?;
/// assert_eq!(cutout.strips().map(|(_, w)| w.in_mm().round()), [80.0, 80.0, 100.0, 100.0]);
/// // A hole 6 mm left of the cut, half way up: 80 − 74 = 6.
/// let hole = cutout.hole([Length::mm(74.0), Length::mm(350.0)])?;
/// assert_eq!((hole.to_cut.in_mm().round(), hole.to_panel_edge.in_mm().round()), (6.0, 74.0));
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Cutout {
    panel: Rect,
    cut: Rect,
    radius_m: f64,
    behind: Vec<(String, Rect)>,
}

/// Where the centre of a hole lies.
#[derive(Debug, Clone, PartialEq)]
pub struct HolePlace<'a> {
    /// From the centre to the nearest point of the cut's edge; negative inside the cut.
    pub to_cut: Length,
    /// From the centre to the nearest point of the panel's edge; negative off the panel.
    pub to_panel_edge: Length,
    /// The things behind the panel that the centre lies over, in the order in which they were put
    /// there, each with the distance from the centre to that thing's nearest edge.
    pub over: Vec<(&'a str, Length)>,
}

impl Cutout {
    /// The cut on a panel of the given width and height.
    ///
    /// **Errors**: a size that is not positive, a negative radius, a radius above half the cut's
    /// shorter side. A cut that reaches beyond the panel is not an error: its strips are negative.
    pub fn new(panel: [Length; 2], cut: Patch, radius: Length) -> Result<Self, ShapeError> {
        let high = [
            positive(panel[0], "the width of a panel [mm]")?,
            positive(panel[1], "the height of a panel [mm]")?,
        ];
        let cut = rect(&cut, "a cut", "the width of a cut [mm]", "the height of a cut [mm]")?;
        let radius_m = finite(radius, "a corner radius")?;
        if radius_m < 0.0 {
            let what = "a corner radius [mm]";
            return Err(ShapeError::NotPositive { what, value: radius.in_mm() });
        }
        let most_m = (cut.high[0] - cut.low[0]).min(cut.high[1] - cut.low[1]) / 2.0;
        if radius_m > most_m + crate::TOUCH_M {
            return Err(ShapeError::RadiusTooLarge { radius, most: Length::m(most_m) });
        }
        let panel = Rect { low: [0.0; 2], high };
        Ok(Self { panel, cut, radius_m: radius_m.min(most_m), behind: Vec::new() })
    }

    /// Puts something behind the panel: a frame member, a backer, a cable, a keep-out zone.
    pub fn put_behind(&mut self, name: impl Into<String>, patch: Patch) -> Result<(), ShapeError> {
        let what = "what lies behind a panel";
        let patch = rect(&patch, what, "its width [mm]", "its height [mm]")?;
        self.behind.push((name.into(), patch));
        Ok(())
    }

    /// The widths of what is left of the panel on the four sides of the cut, negative where the
    /// cut reaches beyond the panel.
    pub fn strips(&self) -> [(Side, Length); 4] {
        let (panel, cut) = (&self.panel, &self.cut);
        [
            (Side::Left, Length::m(cut.low[0] - panel.low[0])),
            (Side::Right, Length::m(panel.high[0] - cut.high[0])),
            (Side::Bottom, Length::m(cut.low[1] - panel.low[1])),
            (Side::Top, Length::m(panel.high[1] - cut.high[1])),
        ]
    }

    /// The four corners at which the cut's straight lines meet, counter-clockwise from the lower
    /// left.
    pub fn corners(&self) -> [[Length; 2]; 4] {
        self.cut.corners().map(|at| at.map(Length::m))
    }

    /// The four centres of the corner arcs, where a drill of twice the radius goes through,
    /// counter-clockwise from the lower left; the corners themselves where the radius is 0.
    pub fn drill_centres(&self) -> [[Length; 2]; 4] {
        self.core().corners().map(|at| at.map(Length::m))
    }

    /// The diagonal between two opposite corners; both are alike in a cut that is square.
    pub fn diagonal(&self) -> Length {
        let cut = &self.cut;
        Length::m((cut.high[0] - cut.low[0]).hypot(cut.high[1] - cut.low[1]))
    }

    /// Where the centre of a hole lies, exact at the round corners too.
    pub fn hole(&self, centre: [Length; 2]) -> Result<HolePlace<'_>, ShapeError> {
        let what = "the centre of a hole";
        let at = [finite(centre[0], what)?, finite(centre[1], what)?];
        let over = self.behind.iter().filter_map(|(name, patch)| {
            let inside_m = -outside_m(patch, at);
            (inside_m >= 0.0).then_some((name.as_str(), Length::m(inside_m)))
        });
        Ok(HolePlace {
            to_cut: Length::m(outside_m(&self.core(), at) - self.radius_m),
            to_panel_edge: Length::m(-outside_m(&self.panel, at)),
            over: over.collect(),
        })
    }

    /// The distance from the cut to each thing behind the panel; 0 for a touch, and `None` where
    /// the cut goes into it.
    pub fn to_what_is_behind(&self) -> Vec<(&str, Option<Length>)> {
        let core = self.core();
        self.behind
            .iter()
            .map(|(name, patch)| {
                let apart_m = core.distance_squared(patch).sqrt() - self.radius_m;
                let crossed = if self.radius_m > 0.0 {
                    apart_m < -crate::TOUCH_M
                } else {
                    self.cut.overlaps(patch)
                };
                (name.as_str(), (!crossed).then(|| Length::m(apart_m.max(0.0))))
            })
            .collect()
    }

    /// The cut without the reach of its corner radius: the cut is all that lies within the radius
    /// of it.
    fn core(&self) -> Rect {
        Rect {
            low: self.cut.low.map(|c| c + self.radius_m),
            high: self.cut.high.map(|c| c - self.radius_m),
        }
    }
}

/// The distance \[m\] from `at` to the rectangle's edge, negative inside.
fn outside_m(rect: &Rect, at: At) -> f64 {
    let beyond = |i: usize| (rect.low[i] - at[i]).max(at[i] - rect.high[i]);
    let (across, up) = (beyond(0), beyond(1));
    across.max(0.0).hypot(up.max(0.0)) + across.max(up).min(0.0)
}

fn rect(
    patch: &Patch,
    place: &'static str,
    width: &'static str,
    height: &'static str,
) -> Result<Rect, ShapeError> {
    let low = [finite(patch.left, place)?, finite(patch.bottom, place)?];
    let high = [low[0] + positive(patch.width, width)?, low[1] + positive(patch.height, height)?];
    Ok(Rect { low, high })
}
