//! The way in and out: through the bay's opening, from the aisle, through the vehicle's door.

use spile_answer::{Ask, Finding, Point, Verdict};
use spile_quantity::Length;
use spile_solid::{Direction, Passage, passage};

use crate::clearance::Case;
use crate::need::{Need, held, missing_m, mm, up_mm};
use crate::practice::PRACTICE;
use crate::scene::Extents;
use crate::sum::Sum;

impl Case<'_, '_> {
    /// The body with its flange, as one faces it, without its door.
    pub(crate) fn front(&self) -> Extents {
        let mut extents = self.body.extents.clone();
        let Some(flange) = &self.item.part.flange else { return extents };
        let (facing, name) = (self.body.facing, self.name);
        let width = self.measures.take(format!("width of the flange of {name}"), &flange.width);
        let height = self.measures.take(format!("height of the flange of {name}"), &flange.height);
        for (direction, size) in [(facing.right, width), (facing.up, height)] {
            let i = direction.axis().index();
            let middle = &(&extents.low[i] + &extents.high[i]) * 0.5;
            extents.low[i] = &middle - &(&size * 0.5);
            extents.high[i] = &middle + &(&size * 0.5);
        }
        if let Some(thickness) = &flange.thickness {
            let thickness =
                self.measures.take(format!("thickness of the flange of {name}"), thickness);
            let face = extents.face(facing.out) + &(&thickness * facing.out.sign());
            *extents.face_mut(facing.out) = face;
        }
        extents
    }

    /// Its size from side to side, from bottom to top, and from its back to the front of its door.
    fn outer(&self) -> [Sum; 3] {
        let facing = self.body.facing;
        let front = self.front();
        let size = |direction: Direction| {
            let i = direction.axis().index();
            &front.high[i] - &front.low[i]
        };
        let mut depth = size(facing.out);
        if let Some(door) = self.item.part.door.as_ref().filter(|_| !self.has_lid()) {
            let name = format!("thickness of the door of {}", self.name);
            depth = &depth + &self.measures.take(name, &door.thickness);
        }
        [size(facing.right), size(facing.up), depth]
    }

    fn has_lid(&self) -> bool {
        let door = self.item.part.door.as_ref();
        door.is_some_and(|door| door.hinge == spile_build::file::Hinge::Back)
    }
}

/// What is found of the ways in and out of a body.
pub(crate) fn findings(case: &Case<'_, '_>) -> Vec<Finding> {
    let mut found = Vec::new();
    found.extend(opening(case));
    if !case.is_furniture() {
        found.extend(way_in(case));
        found.extend(vehicle_door(case));
    }
    found
}

/// The body against the opening of its bay.
fn opening(case: &Case<'_, '_>) -> Option<Finding> {
    let (room, body) = (case.room, &case.body.extents);
    let facing = room.facing;
    if case.body.facing != facing {
        return None;
    }
    let [across, up, _] = facing.axes();
    let clear = match &room.bay.opening {
        Some([width, height]) => [
            case.measures.take(format!("width of the opening of the bay {}", room.name), width),
            case.measures.take(format!("height of the opening of the bay {}", room.name), height),
        ],
        None => {
            let (from_m, to_m) = (case.likely_m(&body.low[2]), case.likely_m(&body.high[2]));
            [room.width(from_m, to_m, case.measures).0, room.size[up].clone()]
        }
    };
    let slack = [(across, &clear[0]), (up, &clear[1])]
        .map(|(axis, clear)| clear - &(&body.high[axis] - &body.low[axis]));
    let need = if case.is_furniture() {
        Need::space()
    } else {
        Need::rule(2.0 * PRACTICE.slack.likely().in_m(), "common practice, a side".to_owned())
    };
    let taken = case.taken(&slack);
    let label = format!("slack of {} in the opening", case.name);
    let finding = held(case.id("opening"), label, &need, &taken, |point| {
        taken.at_m(&slack[0], point).min(taken.at_m(&slack[1], point))
    });
    let [wide_m, high_m] = [case.likely_m(&slack[0]), case.likely_m(&slack[1])];
    let says = if wide_m.min(high_m) < 0.0 {
        let (by_m, word) = if wide_m < high_m { (wide_m, "wide") } else { (high_m, "high") };
        format!("It is {} mm too {word} for the opening of the bay {}.", mm(-by_m), room.name)
    } else {
        format!(
            "It passes the opening of the bay {} with {} mm to spare from side to side and {} mm in height.",
            room.name,
            mm(wide_m),
            mm(high_m)
        )
    };
    let mend = (missing_m(&finding) > 0.0).then(|| {
        let (word, size_m) = if wide_m < high_m {
            ("wide", case.likely_m(&clear[0]))
        } else {
            ("high", case.likely_m(&clear[1]))
        };
        format!(
            "One that is no more than {} mm {word} goes in.",
            mm(((size_m - need.least_m) * 1000.0).floor() / 1000.0)
        )
    });
    Some(finding.saying(says).mended(mend))
}

/// The straight way from the aisle, and the same way out with the cable's tail.
fn way_in(case: &Case<'_, '_>) -> Vec<Finding> {
    let out = case.room.facing.out;
    let Some(gaps) = case.gaps(&case.front(), &[out]).pop() else { return Vec::new() };
    let Some(nearest) = gaps.first() else {
        let says = format!("Nothing stands before the opening of the bay {}.", case.room.name);
        let label = format!("left in front, {} drawn right out", case.name);
        return vec![Finding::plain(case.id("way-in"), label, Verdict::Good, says)];
    };
    // From the opening to what stands opposite, less the body with flange and door.
    let before = &(case.front().face(out) - &case.room.opening()) * out.sign();
    let free = &nearest.sum + &before;
    let depth = if case.body.facing.out == out {
        case.outer()[2].clone()
    } else {
        let i = out.axis().index();
        &case.body.extents.high[i] - &case.body.extents.low[i]
    };
    let left = &free - &depth;
    let (free_m, depth_m) = (case.likely_m(&free), case.likely_m(&depth));
    let smallest_m = smallest_m(case);
    let taken = case.taken([&left]);
    let label = format!("left in front, {} drawn right out", case.name);
    let mut found = Vec::new();
    if free_m < depth_m && free_m >= smallest_m {
        let says = format!(
            "Straight out it needs {} mm before the opening, and there are {} mm, to {}. No straight way was found at this step; lifted over or turned it may still go, which only a trial with a box of its size can tell.",
            mm(depth_m),
            mm(free_m),
            nearest.what
        );
        let mut finding = Finding::plain(case.id("way-in"), label, Verdict::Open, says);
        finding.inputs = taken.ledger.inputs().to_vec();
        finding.mend =
            Some(format!("It goes straight in with {} mm more in front.", up_mm(depth_m - free_m)));
        finding.asks.push(Ask::missing(
            format!("free space in front of the bay {}", case.room.name),
            PRACTICE.aisle.how.clone(),
            format!("whether {} goes straight in", case.name),
        ));
        found.push(finding);
        return found;
    }
    if free_m < smallest_m {
        let over = &free - &Sum::fixed(smallest_m);
        let taken = case.taken([&over]);
        let finding = held(case.id("way-in"), label, &Need::space(), &taken, |point| {
            taken.at_m(&over, point)
        });
        let says = format!(
            "Even its smallest side, {} mm, is more than the {} mm that are free before the opening.",
            mm(smallest_m),
            mm(free_m)
        );
        let mend =
            format!("It goes straight in with {} mm more in front.", up_mm(depth_m - free_m));
        found.push(finding.saying(says).mended(Some(mend)));
        return found;
    }
    let need = Need::practice(&PRACTICE.hand_room);
    let finding = held(case.id("way-in"), label, &need, &taken, |point| taken.at_m(&left, point));
    let says = format!(
        "Drawn right out it takes {} mm of the {} mm before the opening; {} mm are left, to {}.",
        mm(depth_m),
        mm(free_m),
        mm(free_m - depth_m),
        nearest.what
    );
    let mend = (missing_m(&finding) > 0.0).then(|| {
        format!(
            "Take its door off first, or make {} mm more room in front.",
            up_mm(missing_m(&finding))
        )
    });
    found.push(finding.saying(says).mended(mend));
    found.extend(with_tail(case, &free, &depth));
    found
}

/// The way out with the cable's tail, of what hangs on a cable and is fixed.
fn with_tail(case: &Case<'_, '_>, free: &Sum, depth: &Sum) -> Option<Finding> {
    let part = &case.item.part;
    let powered =
        part.power.running.is_some() || part.power.volts.is_some() || part.service.tail.is_some();
    if !powered || case.item.removable {
        return None;
    }
    let tail = part.service.tail.as_ref().unwrap_or(&PRACTICE.tail);
    let tail = case.measures.take(format!("cable tail of {}", case.name), tail);
    let left = &(free - depth) - &tail;
    let taken = case.taken([&left]);
    let need = Need::rule(0.0, "common practice".to_owned()).on("practice");
    let label = format!("left in front, {} drawn out with its tail", case.name);
    let mut finding =
        held(case.id("way-out"), label, &need, &taken, |point| taken.at_m(&left, point));
    let (tail_m, left_m) = (case.likely_m(&tail), case.likely_m(&left));
    finding.says = if left_m < 0.0 {
        format!(
            "With {} mm of cable tail behind it, it lacks {} mm before the opening: it cannot come right out plugged in.",
            mm(tail_m),
            mm(-left_m)
        )
    } else {
        format!(
            "It comes right out with {} mm of cable tail behind it; {} mm are left.",
            mm(tail_m),
            mm(left_m)
        )
    };
    finding.mend = (left_m < 0.0).then(|| {
        let depth_m = case.likely_m(&case.body.extents.high[case.body.facing.axes()[2]])
            - case.likely_m(&case.body.extents.low[case.body.facing.axes()[2]]);
        format!("Unplug it first: keep a way to the plug from elsewhere, or leave a tail of {} mm, so that it can be unplugged in the aisle.", up_mm(depth_m + HAND_M))
    });
    Some(finding)
}

/// What a hand needs to get at a plug behind a body \[m\]; common practice, no source.
const HAND_M: f64 = 0.1;

fn smallest_m(case: &Case<'_, '_>) -> f64 {
    let extents = &case.body.extents;
    (0..3)
        .map(|i| case.likely_m(&(&extents.high[i] - &extents.low[i])))
        .fold(f64::INFINITY, f64::min)
}

/// The body against the doors of the vehicle.
fn vehicle_door(case: &Case<'_, '_>) -> Option<Finding> {
    let body = &case.body.extents;
    let sides: [Sum; 3] = std::array::from_fn(|i| &body.high[i] - &body.low[i]);
    let outer = case.outer();
    let doors: Vec<(&str, [Sum; 2])> = case
        .build
        .vehicle
        .doors
        .iter()
        .map(|(name, door)| {
            let width = case.measures.take(format!("clear width of the door {name}"), &door.width);
            let height =
                case.measures.take(format!("clear height of the door {name}"), &door.height);
            (name.as_str(), [width, height])
        })
        .collect();
    let pass =
        |sides: &[Sum; 3], door: &[Sum; 2], value: &dyn Fn(&Sum) -> f64| -> Option<Passage> {
            let [a, b, c] = [&sides[0], &sides[1], &sides[2]].map(|sum| Length::m(value(sum)));
            passage([a, b, c], Length::m(value(&door[0])), Length::m(value(&door[1]))).ok()
        };
    let best_m = |passage: &Passage| {
        let [wide, high] = passage.straight.map(Length::in_m);
        wide.min(high).max(passage.rolled.in_m())
    };
    // What the necessary conditions lack; the area as a strip along the opening's longer side.
    let never_m = |passage: &Passage, door: [f64; 2]| {
        let strip_m = passage.area.in_m2() / door[0].max(door[1]);
        passage.thinnest.in_m().min(passage.diagonal.in_m()).min(strip_m)
    };
    let likely = |sum: &Sum| case.likely_m(sum);
    let label = format!("slack of {} in the vehicle's door", case.name);
    let (_, name, door) = doors
        .iter()
        .filter_map(|(name, door)| Some((best_m(&pass(&outer, door, &likely)?), *name, door)))
        .max_by(|a, b| a.0.total_cmp(&b.0))?;
    let taken = case.taken(outer.iter().chain(&sides).chain(door));
    let at = |sides: &[Sum; 3], point: &Point, figure: &dyn Fn(&Passage) -> f64| {
        pass(sides, door, &|sum| taken.at_m(sum, point))
            .map_or(f64::NAN, |passage| figure(&passage))
    };
    let slack_m = best_m(&pass(&outer, door, &likely)?);
    if slack_m >= 0.0 {
        let finding = held(case.id("vehicle-door"), label, &Need::space(), &taken, |point| {
            at(&outer, point, &best_m)
        });
        let says = format!("It comes in by the {name} door, with {} mm to spare.", mm(slack_m));
        return Some(finding.saying(says));
    }
    let proven = doors.iter().all(|(_, door)| {
        pass(&sides, door, &likely)
            .is_some_and(|passage| never_m(&passage, [likely(&door[0]), likely(&door[1])]) < 0.0)
    });
    if proven {
        let finding = held(case.id("vehicle-door"), label, &Need::space(), &taken, |point| {
            let clear = [taken.at_m(&door[0], point), taken.at_m(&door[1], point)];
            at(&sides, point, &|passage| never_m(passage, clear))
        });
        let says = format!(
            "It passes no door of the vehicle, however it is turned; the {name} door comes nearest."
        );
        return Some(finding.saying(says));
    }
    let says = format!(
        "With its flange and door on, it lacks {} mm in the {name} door, straight or rolled. No way was found at this step; with its door off or tipped it may pass.",
        mm(-slack_m)
    );
    Some(Finding::plain(case.id("vehicle-door"), label, Verdict::Open, says))
}
