//! Doors, lids and drawers: what opens, against what stands in its way.

use spile_answer::{Basis, Finding, Given, Step, Verdict, Worse, swing};
use spile_build::DoorSwing;
use spile_build::file::Hinge;
use spile_quantity::{Angle, Length};
use spile_solid::{Axis, Cuboid, Direction, Point, Solid, Swing};

use crate::clearance::{Case, called};
use crate::need::{Need, found, held, missing_m, mm, sentence, up_mm};
use crate::practice::PRACTICE;
use crate::scene::{Extents, Kind, Thing};
use crate::sum::Sum;

/// How far a leaf reaches ahead of its pin while it opens: x \[m\].
///
/// **Formula**: at the angle θ the outer corner of the leaf's edge is x = w·sin θ + t·cos θ ahead
/// of the pin; the most of it up to the angle α is √(w² + t²) where tan α ≥ w/t, else it is at α.
/// **Arguments**: w, the leaf's width \[m\], > 0; t, its thickness \[m\], ≥ 0; α, how far it opens
/// \[rad\], 0 … π.
/// **Validity**: a leaf that is a rectangle, with its pin at the corner next to the body.
/// **Errors**: none within the arguments' ranges, which the build has checked.
/// **Source**: plane trigonometry.
///
/// **Example**: the triangle of sides 3, 4 and 5.
/// ```
/// use spile_quantity::{Angle, Length};
/// let (width, thickness) = (Length::mm(400.0), Length::mm(300.0));
/// let reach = spile_fit::reach_ahead(width, thickness, Angle::degrees(90.0));
/// assert!((reach.in_mm() - 500.0).abs() < 1e-9);
/// let half_open = spile_fit::reach_ahead(Length::mm(400.0), Length::mm(0.0), Angle::degrees(30.0));
/// assert!((half_open.in_mm() - 200.0).abs() < 1e-9);
/// ```
pub fn reach_ahead(width: Length, thickness: Length, angle: Angle) -> Length {
    let (width_m, thickness_m, angle_rad) = (width.in_m(), thickness.in_m(), angle.in_rad());
    let farthest_rad = width_m.atan2(thickness_m);
    if angle_rad >= farthest_rad {
        Length::m(width_m.hypot(thickness_m))
    } else {
        Length::m(width_m * angle_rad.sin() + thickness_m * angle_rad.cos())
    }
}

/// A leaf as it is closed.
pub(crate) struct Leaf {
    pub(crate) extents: Extents,
    /// From its middle to its pin.
    pub(crate) hinge: Direction,
    /// Where it sets off to.
    pub(crate) out: Direction,
    axis: Axis,
}

impl Leaf {
    pub(crate) fn of(case: &Case<'_, '_>, door: &DoorSwing) -> Self {
        let facing = case.body.facing;
        let (hinge, out) = match door.hinge {
            Hinge::Left => (facing.right.opposite(), facing.out),
            Hinge::Right => (facing.right, facing.out),
            Hinge::Top => (facing.up, facing.out),
            Hinge::Bottom => (facing.up.opposite(), facing.out),
            Hinge::Back => (facing.out.opposite(), facing.up),
        };
        let thickness =
            case.measures.take(format!("thickness of the door of {}", case.name), &door.thickness);
        let mut extents =
            if door.hinge == Hinge::Back { case.body.extents.clone() } else { case.front() };
        let face = extents.face(out).clone();
        if door.hinge == Hinge::Back {
            // The lid is part of the body's height.
            *extents.face_mut(out.opposite()) = &face - &(&thickness * out.sign());
        } else {
            *extents.face_mut(out.opposite()) = face.clone();
            *extents.face_mut(out) = &face + &(&thickness * out.sign());
        }
        let axis = Axis::ALL.into_iter().find(|axis| *axis != hinge.axis() && *axis != out.axis());
        Self { extents, hinge, out, axis: axis.unwrap_or(Axis::Z) }
    }

    /// Where its pin is: at the edge next to the hinge, on the side next to the body.
    fn pin(&self) -> (&Sum, &Sum) {
        (self.extents.face(self.hinge), self.extents.face(self.out.opposite()))
    }

    fn swing(&self, leaf: Cuboid, angle: Angle) -> Option<Swing> {
        let mut at = [0.0; 3];
        at[self.hinge.axis().index()] = leaf.face(self.hinge).in_m();
        at[self.out.axis().index()] = leaf.face(self.out.opposite()).in_m();
        let [x, y, z] = at.map(Length::m);
        Swing::new(leaf, self.axis, Point::new(x, y, z), self.out, angle).ok()
    }

    /// What is left between the leaf, as it opens, and a thing \[m\]: negative by what it lacks
    /// ahead, or along its edge's way, where it does not open all the way.
    fn left_m(&self, thing: &Thing<'_>, angle: Angle, value: &impl Fn(&Sum) -> f64) -> f64 {
        let (Some(leaf), Some(solid)) = (self.extents.cuboid(value), solid(thing, value)) else {
            return f64::INFINITY;
        };
        let (edge, plane) = self.pin();
        let around = solid.around();
        let across = self.hinge.axis().index();
        let (low, high) =
            (around.low().along(self.hinge.axis()), around.high().along(self.hinge.axis()));
        let at = Length::m(value(edge));
        let ahead = (around.face(self.out.opposite()).in_m() - value(plane)) * self.out.sign();
        // What lies beyond the leaf's ends along the pin, or behind the pin, is never met.
        let behind = (around.face(self.out).in_m() - value(plane)) * self.out.sign() <= TOUCH_M;
        let along = self.axis.directions();
        let beyond = along.iter().any(|side| leaf.gap(&around, *side).in_m() >= -TOUCH_M);
        if beyond || (behind && angle.in_rad() <= std::f64::consts::PI) {
            return f64::INFINITY;
        }
        if low <= at && at <= high && ahead >= 0.0 {
            let width =
                Length::m(value(&self.extents.high[across]) - value(&self.extents.low[across]));
            let thickness = leaf.size(self.out.axis());
            return ahead - reach_ahead(width, thickness, angle).in_m();
        }
        let Some(swing) = self.swing(leaf, angle) else { return f64::INFINITY };
        match swing.free_angle(&solid) {
            Some(free) => (free - angle).in_rad() * swing.reach().in_m(),
            None => swing.nearest(&solid).distance.in_m(),
        }
    }
}

fn solid(thing: &Thing<'_>, value: &impl Fn(&Sum) -> f64) -> Option<Solid> {
    // A thing with a profile is taken as the box around it: doors seldom come near an arch.
    Some(thing.extents.cuboid(value)?.into())
}

/// What counts as a touch \[m\].
const TOUCH_M: f64 = spile_solid::TOUCH.in_m();

/// What is further from a closed leaf than it can reach by this is left out \[m\].
const NEAR_M: f64 = 0.3;

/// What is found of the door or lid of a body.
pub(crate) fn door(case: &Case<'_, '_>) -> Option<Finding> {
    let door = case.item.part.door.as_ref()?;
    let leaf = Leaf::of(case, door);
    let angle = door.angle.likely();
    let value = |sum: &Sum| case.likely_m(sum);
    let closed = leaf.extents.cuboid(value)?;
    let reach_m = leaf.swing(closed, angle)?.reach().in_m() + NEAR_M;
    let walls = walls(case, &leaf);
    let mut ways: Vec<(f64, &Thing<'_>)> = case
        .things
        .iter()
        .filter(|thing| !case.is_own(thing) && case.is_here(thing))
        .chain(&walls)
        .filter(|thing| {
            let around = thing.extents.cuboid(value);
            around.is_some_and(|around| closed.nearest(&around).distance.in_m() < reach_m)
        })
        .map(|thing| (leaf.left_m(thing, angle, &value), thing))
        .filter(|(left_m, _)| *left_m < NEAR_M)
        .collect();
    ways.sort_by(|a, b| a.0.total_cmp(&b.0));
    let word = if door.hinge == Hinge::Back { "lid" } else { "door" };
    let degrees = format!("{:.0}°", angle.in_degrees());
    let label = format!("left as the {word} of {} opens", case.name);
    let Some(&(nearest_m, nearest)) = ways.first() else {
        let says = format!("The {word} opens to {degrees} and meets nothing.");
        return Some(Finding::plain(case.id("door"), label, Verdict::Good, says));
    };
    ways.truncate(2);
    let need = if nearest_m < 0.0 && door.angle.basis == Basis::Typical {
        Need { firm: false, ..Need::space() }
    } else {
        Need::practice(&PRACTICE.finger_room)
    };
    let faces =
        |extents: &Extents| extents.low.iter().chain(&extents.high).cloned().collect::<Vec<_>>();
    let sums: Vec<Sum> = ways
        .iter()
        .flat_map(|(_, thing)| faces(&thing.extents))
        .chain(faces(&leaf.extents))
        .collect();
    let mut taken = case.taken(&sums);
    let opened = taken.ledger.take(format!("angle of the {word} of {}", case.name), &door.angle);
    let figure = |point: &spile_answer::Point| {
        let at = |sum: &Sum| taken.at_m(sum, point);
        let angle = point.at(opened);
        let left = ways.iter().map(|(_, thing)| leaf.left_m(thing, angle, &at));
        crate::sum::clean_m(left.fold(f64::INFINITY, f64::min)) * 1000.0
    };
    let [swung] = swing(&taken.ledger, [Worse::Lower], |point| [figure(point)]);
    let finding = found(case.id("door"), label, &need, &taken, &swung, figure);
    let against = called(nearest);
    let says = if nearest_m < 0.0 {
        let free = solid(nearest, &value)
            .and_then(|solid| leaf.swing(closed, angle)?.free_angle(&solid))
            .map_or(0.0, Angle::in_degrees);
        format!("The {word} meets {against} at {free:.0}°; it must open to {degrees}.")
    } else {
        format!("The {word} opens to {degrees} and passes {against} by {} mm.", mm(nearest_m))
    };
    let mend = (missing_m(&finding) > 0.0).then(|| {
        format!(
            "{} would have to be {} mm further away.",
            sentence(&against),
            up_mm(missing_m(&finding))
        )
    });
    let step = Step {
        what: format!("how far the {word} reaches ahead of its pin").into(),
        formula: "x = √(w² + t²), or w·sin α + t·cos α where it opens less".into(),
        numbers: {
            let (w, t) = (closed.size(leaf.hinge.axis()), closed.size(leaf.out.axis()));
            let reach = reach_ahead(w, t, angle);
            format!(
                "w = {} mm, t = {} mm, α = {degrees}: {} mm",
                mm(w.in_m()),
                mm(t.in_m()),
                mm(reach.in_m())
            )
        },
        source: "plane trigonometry".into(),
    };
    Some(finding.saying(says).mended(mend).worked(vec![step]))
}

/// The sides of the bay as things, for a leaf that is still within the bay.
fn walls<'b>(case: &Case<'_, 'b>, leaf: &Leaf) -> Vec<Thing<'b>> {
    let (room, out) = (case.room, case.room.facing.out);
    let (_, plane) = leaf.pin();
    let beyond = &(plane - &room.opening()) * out.sign();
    if leaf.out == out && case.likely_m(&beyond) > -1e-3 {
        return Vec::new();
    }
    Direction::ALL
        .into_iter()
        .filter(|side| *side != out && *side != Direction::Down)
        .map(|side| {
            let i = side.axis().index();
            let mut extents = Extents { low: Default::default(), high: room.size.clone() };
            let top_m = case.likely_m(&leaf.extents.high[2]);
            let face = if side == out.opposite() {
                let (depth, _) = room.depth(top_m, top_m, case.measures);
                &room.opening() - &(&depth * out.sign())
            } else if side.sign() > 0.0 {
                room.size[i].clone()
            } else {
                Sum::default()
            };
            *extents.face_mut(side) = &face + &Sum::fixed(side.sign());
            *extents.face_mut(side.opposite()) = face;
            let what = match room.facing.words(side) {
                "behind" => "the wall behind",
                "above" => "the top of the bay",
                _ => "the side of the bay",
            };
            Thing { name: what, what, kind: Kind::Opposite, extents, round: None }
        })
        .collect()
}

/// What is found of a body's drawer.
pub(crate) fn drawer(case: &Case<'_, '_>) -> Option<Finding> {
    let travel: &Given<Length> = case.item.part.drawer.as_ref()?;
    let front = case.front();
    let out = case.body.facing.out;
    let gaps = case.gaps(&front, &[out]).pop()?;
    let travel = case.measures.take(format!("travel of the drawer of {}", case.name), travel);
    let Some(nearest) = gaps.first() else {
        let says = "The drawer comes out and meets nothing.";
        return Some(Finding::plain(
            case.id("drawer"),
            "left before the drawer",
            Verdict::Good,
            says,
        ));
    };
    let left = &nearest.sum - &travel;
    let need = Need::practice(&PRACTICE.finger_room);
    let taken = case.taken([&left]);
    let label = format!("left before the drawer of {}", case.name);
    let finding = held(case.id("drawer"), label, &need, &taken, |point| taken.at_m(&left, point));
    let left_m = case.likely_m(&left);
    let says = if left_m < 0.0 {
        format!("The drawer lacks {} mm of its travel, for {}.", mm(-left_m), nearest.what)
    } else {
        format!(
            "{} mm are left between the drawer, pulled right out, and {}.",
            mm(left_m),
            nearest.what
        )
    };
    let mend = (missing_m(&finding) > 0.0).then(|| {
        format!(
            "It needs {} mm more in front, or a drawer of so much less travel.",
            up_mm(missing_m(&finding))
        )
    });
    Some(finding.saying(says).mended(mend))
}
