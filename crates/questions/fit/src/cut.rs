//! The cut-out on its panel: what is left of the panel, what lies behind it, where the holes fall.

use spile_answer::{Finding, Point};
use spile_build::{Anchor, Fixing, Hindrance, Panel};
use spile_quantity::Length;
use spile_solid::{Cutout, Direction, Patch};
use spile_tables::workshop::edge_distance;

use crate::clearance::{Case, called};
use crate::need::{Need, held, missing_m, mm, sentence, up_mm};
use crate::practice::PRACTICE;
use crate::scene::{Extents, Kind, Thing};
use crate::sum::{Measures, Sum};

/// A cut-out on its panel, in the axes of the bay.
pub(crate) struct Cut<'b> {
    pub(crate) name: &'b str,
    pub(crate) panel: &'b Panel,
    /// The panel, from its outer face back through its thickness.
    pub(crate) sheet: Extents,
    /// The opening, through the panel and as far behind it as a blade reaches.
    pub(crate) opening: Extents,
    pub(crate) width: Sum,
    pub(crate) height: Sum,
    pub(crate) radius_m: f64,
}

impl<'b> Cut<'b> {
    /// The cut-out of an item, centred on its body; `None` without panel or cut-out.
    pub(crate) fn of(case: &Case<'_, 'b>) -> Option<Self> {
        let (name, panel) = case.build.panels.get_key_value(case.item.panel.as_ref()?)?;
        let cutout = case.item.part.cutout.as_ref()?;
        let facing = case.room.facing;
        let sheet = sheet(case, name, panel);
        let width =
            case.measures.take(format!("width of the cut-out of {}", case.name), &cutout.width);
        let height =
            case.measures.take(format!("height of the cut-out of {}", case.name), &cutout.height);
        let mut opening = case.body.extents.clone();
        for (direction, size) in [(facing.right, &width), (facing.up, &height)] {
            let i = direction.axis().index();
            let middle = &(&case.body.extents.low[i] + &case.body.extents.high[i]) * 0.5;
            opening.low[i] = &middle - &(size * 0.5);
            opening.high[i] = &middle + &(size * 0.5);
        }
        let reach =
            case.measures.take("reach of the blade behind the panel", &PRACTICE.blade_reach);
        *opening.face_mut(facing.out) = sheet.face(facing.out).clone();
        let back = sheet.face(facing.out.opposite()) - &(&reach * facing.out.sign());
        *opening.face_mut(facing.out.opposite()) = back;
        let radius_m = cutout.radius.as_ref().unwrap_or(&PRACTICE.radius).likely().in_m();
        Some(Self { name, panel, sheet, opening, width, height, radius_m })
    }

    /// The four sides, as one faces the panel.
    pub(crate) fn sides(case: &Case<'_, '_>) -> [(Direction, &'static str); 4] {
        let facing = case.room.facing;
        [
            (facing.right.opposite(), "left"),
            (facing.right, "right"),
            (facing.up.opposite(), "bottom"),
            (facing.up, "top"),
        ]
    }

    /// From the opening to the panel's edge on a side.
    pub(crate) fn strip(&self, side: Direction) -> Sum {
        &(self.sheet.face(side) - self.opening.face(side)) * side.sign()
    }

    /// How far a face of something in the bay's axes is from the panel's left or lower edge.
    pub(crate) fn datum_to(&self, at: &Sum, along: Direction) -> Sum {
        &(at - self.sheet.face(along.opposite())) * along.sign()
    }

    /// What places the cut on its panel.
    fn laid(&self, case: &Case<'_, '_>) -> Laid {
        let facing = case.room.facing;
        let [across, up, _] = facing.axes();
        Laid {
            panel: [across, up].map(|axis| &self.sheet.high[axis] - &self.sheet.low[axis]),
            left: self.strip_from(facing.right),
            bottom: self.strip_from(facing.up),
            width: self.width.clone(),
            height: self.height.clone(),
            radius: Length::m(self.radius_m),
        }
    }

    fn strip_from(&self, along: Direction) -> Sum {
        self.strip(along.opposite())
    }

    /// Where the fixing holes are from the panel's lower left corner.
    pub(crate) fn holes(&self, case: &Case<'_, '_>, fixing: &Fixing) -> Vec<[Sum; 2]> {
        let facing = case.room.facing;
        let body = &case.body.extents;
        let corner = |along: Direction| self.datum_to(body.face(along.opposite()), along);
        let (left, bottom) = (corner(facing.right), corner(facing.up));
        fixing
            .holes
            .iter()
            .map(|[x, y]| [&left + &Sum::fixed(x.in_m()), &bottom + &Sum::fixed(y.in_m())])
            .collect()
    }

    /// What lies behind the panel within reach of a blade, of one sort.
    pub(crate) fn behind<'a>(
        &self,
        case: &Case<'a, 'b>,
        wanted: impl Fn(Hindrance) -> bool,
    ) -> Vec<&'a Thing<'b>> {
        let i = case.room.facing.out.axis().index();
        let likely = |sum: &Sum| case.likely_m(sum);
        let touch_m = spile_solid::TOUCH.in_m();
        case.things
            .iter()
            .filter(|thing| matches!(thing.kind, Kind::Fixed(what) if wanted(what)))
            .filter(|thing| {
                likely(&thing.extents.low[i]) + touch_m < likely(&self.opening.high[i])
                    && likely(&self.opening.low[i]) + touch_m < likely(&thing.extents.high[i])
            })
            .collect()
    }
}

/// A cut on its panel, from the panel's lower left corner.
struct Laid {
    panel: [Sum; 2],
    left: Sum,
    bottom: Sum,
    width: Sum,
    height: Sum,
    radius: Length,
}

impl Laid {
    fn sums(&self) -> impl Iterator<Item = &Sum> {
        self.panel.iter().chain([&self.left, &self.bottom, &self.width, &self.height])
    }

    /// As the solids have it, with the measures at `value`.
    fn cutout(&self, value: &dyn Fn(&Sum) -> f64) -> Option<Cutout> {
        let length = |sum: &Sum| Length::m(value(sum));
        let patch = Patch {
            left: length(&self.left),
            bottom: length(&self.bottom),
            width: length(&self.width),
            height: length(&self.height),
        };
        Cutout::new([length(&self.panel[0]), length(&self.panel[1])], patch, self.radius).ok()
    }
}

/// How far two rectangles are apart in the panel's plane: along each of its two axes, how far the
/// second begins beyond the first, and how far it ends before it.
pub(crate) struct Apart {
    gaps: [[Sum; 2]; 2],
}

impl Apart {
    /// Of the opening and a thing behind the panel.
    pub(crate) fn of(case: &Case<'_, '_>, cut: &Cut<'_>, thing: &Thing<'_>) -> Self {
        let [across, up, _] = case.room.facing.axes();
        let gaps = [across, up].map(|axis| {
            [
                &thing.extents.low[axis] - &cut.opening.high[axis],
                &cut.opening.low[axis] - &thing.extents.high[axis],
            ]
        });
        Self { gaps }
    }

    /// Of the middle of a hole, from the datum, and a thing behind the panel.
    fn of_hole(case: &Case<'_, '_>, cut: &Cut<'_>, hole: &[Sum; 2], thing: &Thing<'_>) -> Self {
        let facing = case.room.facing;
        let gaps = [(facing.right, &hole[0]), (facing.up, &hole[1])].map(|(along, at)| {
            let [near, far] =
                [along.opposite(), along].map(|side| cut.datum_to(thing.extents.face(side), along));
            [&near - at, at - &far]
        });
        Self { gaps }
    }

    /// The distance \[m\]; negative by the least that one would have to move to come clear.
    pub(crate) fn at_m(&self, value: &dyn Fn(&Sum) -> f64) -> f64 {
        let [across_m, up_m] =
            [&self.gaps[0], &self.gaps[1]].map(|[beyond, before]| value(beyond).max(value(before)));
        if across_m > 0.0 && up_m > 0.0 { across_m.hypot(up_m) } else { across_m.max(up_m) }
    }
}

/// The panel in the axes of its bay.
fn sheet(case: &Case<'_, '_>, name: &str, panel: &Panel) -> Extents {
    let (room, measures) = (case.room, case.measures);
    let facing = room.facing;
    let take = |measures: &Measures, word: &str, given| {
        measures.take(format!("{word} of the panel {name}"), given)
    };
    let sizes = [
        take(measures, "width", &panel.size.width),
        take(measures, "height", &panel.size.height),
        take(measures, "thickness", &panel.size.depth),
    ];
    let mut extents = Extents { low: Default::default(), high: Default::default() };
    let anchors = [&panel.place.x, &panel.place.y, &panel.place.z];
    for (axis, size) in facing.axes().into_iter().zip(&sizes) {
        let within = &room.size[axis];
        let place = |side: &str, given| {
            measures.take(format!("distance of the panel {name} from the {side}"), given)
        };
        extents.low[axis] = match anchors[axis] {
            _ if axis == facing.axes()[2] => {
                if facing.out.sign() > 0.0 {
                    within - size
                } else {
                    Sum::default()
                }
            }
            Anchor::Low(given) => place(["rear", "right", "floor"][axis], given),
            Anchor::High(given) => &(within - &place(["front", "left", "top"][axis], given)) - size,
            Anchor::Unsaid if axis == 2 => Sum::default(),
            Anchor::Unsaid => &(within - size) * 0.5,
        };
        extents.high[axis] = &extents.low[axis] + size;
    }
    extents
}

/// What is found of a body's cut-out.
pub(crate) fn findings(case: &Case<'_, '_>, assumed: &mut Vec<String>) -> Vec<Finding> {
    let Some(cut) = Cut::of(case) else { return Vec::new() };
    let mut found = vec![through(case, &cut), strips(case, &cut)];
    found.extend(hindered(case, &cut, "cut-frame", "frame", |what| {
        what == Hindrance::Frame { belt: false }
    }));
    found.extend(hindered(case, &cut, "cut-belt", "belt", |what| {
        what == Hindrance::Frame { belt: true }
    }));
    found.extend(hindered(case, &cut, "cut-keep-out", "keep-out", |what| {
        what == Hindrance::KeepOut
    }));
    found.extend(holes(case, &cut, assumed));
    found.extend(flange(case, &cut));
    found
}

/// The body through its own cut-out.
fn through(case: &Case<'_, '_>, cut: &Cut<'_>) -> Finding {
    let [across, up, _] = case.room.facing.axes();
    let body = &case.body.extents;
    let slack = [(&cut.width, across), (&cut.height, up)]
        .map(|(size, axis)| &(size - &(&body.high[axis] - &body.low[axis])) * 0.5);
    let taken = case.taken(&slack);
    let need = Need::physics("cut-out", "a body does not pass a smaller hole");
    let label = format!("slack of {} in its cut-out, a side", case.name);
    let finding = held(case.id("cut-body"), label, &need, &taken, |point| {
        taken.at_m(&slack[0], point).min(taken.at_m(&slack[1], point))
    });
    let [wide_m, high_m] = [case.likely_m(&slack[0]), case.likely_m(&slack[1])];
    let says = format!(
        "The cut-out of {} × {} mm leaves {} mm each side of the body and {} mm above and below.",
        mm(case.likely_m(&cut.width)),
        mm(case.likely_m(&cut.height)),
        mm(wide_m),
        mm(high_m)
    );
    finding.saying(says)
}

/// What is left of the panel on the four sides.
fn strips(case: &Case<'_, '_>, cut: &Cut<'_>) -> Finding {
    let strips = Cut::sides(case).map(|(side, word)| (cut.strip(side), word));
    let taken = case.taken(strips.iter().map(|(sum, _)| sum));
    let need = Need::practice(&PRACTICE.panel_strip).on("panel");
    let label = format!("strip of the panel {} beside the cut-out", cut.name);
    let finding = held(case.id("cut-strips"), label, &need, &taken, |point| {
        strips.iter().map(|(sum, _)| taken.at_m(sum, point)).fold(f64::INFINITY, f64::min)
    });
    let words: Vec<String> =
        strips.iter().map(|(sum, word)| format!("{word} {}", mm(case.likely_m(sum)))).collect();
    let says = format!("Of the panel {} are left, in mm: {}.", cut.name, words.join(", "));
    let short = strips.iter().min_by(|a, b| case.likely_m(&a.0).total_cmp(&case.likely_m(&b.0)));
    let mend = short.filter(|_| missing_m(&finding) > 0.0).map(|(_, word)| {
        let away = towards(case, opposite(word));
        format!(
            "Move body and cut-out {} mm {away}, or take a larger panel.",
            up_mm(missing_m(&finding))
        )
    });
    finding.saying(says).mended(mend)
}

/// The opening, and the holes, against what may not be cut.
fn hindered(
    case: &Case<'_, '_>,
    cut: &Cut<'_>,
    id: &str,
    kind: &'static str,
    wanted: impl Fn(Hindrance) -> bool,
) -> Option<Finding> {
    let likely = |sum: &Sum| case.likely_m(sum);
    let fixing = case.item.part.fixing.as_ref().filter(|_| kind != "frame");
    let holes = fixing.map(|fixing| cut.holes(case, fixing)).unwrap_or_default();
    let radius_m = fixing.map_or(0.0, |fixing| fixing.hole.likely().in_m() / 2.0);
    // The opening first, then each hole that is bored, with half of its diameter.
    let aparts = |thing: &Thing<'_>| -> Vec<(Apart, f64)> {
        let bored = holes.iter().map(|hole| (Apart::of_hole(case, cut, hole, thing), radius_m));
        std::iter::once((Apart::of(case, cut, thing), 0.0)).chain(bored).collect()
    };
    let least_m = |aparts: &[(Apart, f64)], value: &dyn Fn(&Sum) -> f64| {
        let each = aparts.iter().map(|(apart, radius_m)| apart.at_m(value) - radius_m);
        each.fold(f64::INFINITY, f64::min)
    };
    let (nearest_m, aparts, nearest) = cut
        .behind(case, wanted)
        .into_iter()
        .map(|thing| (aparts(thing), thing))
        .map(|(aparts, thing)| (least_m(&aparts, &likely), aparts, thing))
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let taken = case.taken(aparts.iter().flat_map(|(apart, _)| apart.gaps.iter().flatten()));
    let belt = kind == "belt";
    let need = Need::practice(&PRACTICE.slack).on(kind);
    let what = called(nearest);
    let finding =
        held(case.id(id), format!("from the cut-out to {what}"), &need, &taken, |point| {
            least_m(&aparts, &|sum| taken.at_m(sum, point))
        });
    let opening_m = aparts[0].0.at_m(&likely);
    let says = if opening_m < 0.0 && belt {
        format!("The cut-out crosses {what}, which carries a belt or a seat: it is never cut.")
    } else if opening_m >= 0.0 && nearest_m < 0.0 && belt {
        format!(
            "A fixing hole falls on {what}, which carries a belt or a seat: it is never drilled."
        )
    } else if opening_m < 0.0 {
        format!("The cut-out crosses {what} behind the panel.")
    } else if nearest_m < 0.0 {
        format!("A fixing hole falls on {what} behind the panel: nobody may drill there.")
    } else {
        format!("{} mm are between the cut-out and {what}.", mm(nearest_m))
    };
    let mend = if opening_m < 0.0 {
        Some(moved_clear(case, cut, nearest, -opening_m))
    } else if nearest_m < 0.0 {
        let by = up_mm(PRACTICE.slack.likely().in_m() - nearest_m);
        Some(format!("Leave that hole out, or bore it {by} mm further away."))
    } else {
        None
    };
    Some(finding.saying(says).mended(mend))
}

/// Where the cut-out would come clear, if the panel has room for it there.
fn moved_clear(case: &Case<'_, '_>, cut: &Cut<'_>, thing: &Thing<'_>, over_m: f64) -> String {
    let likely = |sum: &Sum| case.likely_m(sum);
    let slack_m = PRACTICE.slack.likely().in_m();
    let way = Cut::sides(case)
        .into_iter()
        .map(|(side, word)| {
            // To move towards a side, the opening's other edge must pass the thing's face there.
            let by = &(thing.extents.face(side) - cut.opening.face(side.opposite())) * side.sign();
            (likely(&by) + slack_m, likely(&cut.strip(side)), word)
        })
        .filter(|(by_m, strip_m, _)| strip_m - by_m >= 0.0)
        .min_by(|a, b| a.0.total_cmp(&b.0));
    match way {
        Some((by_m, _, word)) => {
            let towards = towards(case, word);
            format!(
                "Move it {} mm {towards}: it then clears {}; look again what it meets there.",
                up_mm(by_m),
                called(thing)
            )
        }
        None => format!(
            "It cannot be moved clear on this panel: it takes another place, or one that is {} mm smaller on that side.",
            up_mm(over_m.max(0.0) + slack_m)
        ),
    }
}

/// A way on the panel, in words: what lies flat has its top towards the front of the vehicle.
fn towards(case: &Case<'_, '_>, side: &str) -> &'static str {
    let upright = case.room.facing.up == Direction::Up;
    match (side, upright) {
        ("left", _) => "to the left",
        ("right", _) => "to the right",
        ("bottom", true) => "down",
        ("bottom", false) => "to the rear",
        (_, true) => "up",
        (_, false) => "to the front",
    }
}

/// The side of the panel across from one.
fn opposite(side: &str) -> &'static str {
    match side {
        "left" => "right",
        "right" => "left",
        "bottom" => "top",
        _ => "bottom",
    }
}

/// Which rule of thumb counts for a panel's material.
fn rule(case: &Case<'_, '_>, cut: &Cut<'_>, assumed: &mut Vec<String>) -> (&'static str, f64) {
    let material = cut.panel.material.to_lowercase();
    let is = |words: &[&str]| words.iter().any(|word| material.contains(word));
    let key = if is(&["alumin", "steel", "metal"]) { "metal" } else { "plywood" };
    if key == "plywood" && !is(&["ply", "wood", "mdf", "board", "birch", "poplar", "oak", "beech"])
    {
        assumed.push(format!("The panel of {} is taken to be of plywood.", case.name));
    }
    (key, edge_distance(key).map_or(4.0, |row| row.value.diameters))
}

/// The fixing holes against the edges of the cut and of the panel.
fn holes(case: &Case<'_, '_>, cut: &Cut<'_>, assumed: &mut Vec<String>) -> Option<Finding> {
    let fixing = case.item.part.fixing.as_ref().filter(|fixing| !fixing.holes.is_empty())?;
    let places = cut.holes(case, fixing);
    let laid = cut.laid(case);
    let edges_m = |value: &dyn Fn(&Sum) -> f64| -> Vec<[f64; 2]> {
        let Some(cutout) = laid.cutout(value) else { return Vec::new() };
        places
            .iter()
            .filter_map(|[x, y]| {
                let hole = cutout.hole([Length::m(value(x)), Length::m(value(y))]).ok()?;
                Some([hole.to_cut.in_m(), hole.to_panel_edge.in_m()])
            })
            .collect()
    };
    let least_m =
        |edges: &[[f64; 2]]| edges.iter().flatten().copied().fold(f64::INFINITY, f64::min);
    let (material, diameters) = rule(case, cut, assumed);
    let screw = case.measures.take(format!("screw of {}", case.name), &fixing.screw);
    let need_m = diameters * fixing.screw.likely().in_m();
    let need =
        Need::rule(need_m, format!("{diameters} screw diameters in {material}, common practice"))
            .on("panel");
    let taken = case.taken(places.iter().flatten().chain(laid.sums()).chain([&screw]));
    let label = format!("from a fixing hole of {} to the nearest edge", case.name);
    let finding = held(case.id("cut-holes"), label, &need, &taken, |point: &Point| {
        least_m(&edges_m(&|sum| taken.at_m(sum, point)))
    });
    let likely = |sum: &Sum| case.likely_m(sum);
    let edges = edges_m(&likely);
    let nearest_m = least_m(&edges);
    let near = edges.iter().filter(|edge| least_m(&[**edge]) < need_m).count();
    let all = edges.len();
    let says = if nearest_m < 0.0 {
        format!(
            "A fixing hole falls in the air, {} mm inside the cut or off the panel.",
            mm(-nearest_m)
        )
    } else if near > 0 {
        format!(
            "{near} of {all} fixing holes lie {} mm from an edge of the cut or of the panel; in {material} {diameters} screw diameters, {} mm, are practice.",
            mm(nearest_m),
            mm(need_m)
        )
    } else {
        format!("All {all} fixing holes lie {} mm or more from every edge.", mm(nearest_m))
    };
    let mend = (near > 0 && nearest_m >= 0.0).then(|| backers(case, cut, fixing, &edges, need_m));
    Some(finding.saying(says).mended(mend))
}

/// A backer for each side of the cut whose holes lie too near its edge.
fn backers(
    case: &Case<'_, '_>,
    cut: &Cut<'_>,
    fixing: &Fixing,
    edges: &[[f64; 2]],
    need_m: f64,
) -> String {
    let likely = |sum: &Sum| case.likely_m(sum);
    let facing = case.room.facing;
    let frames = cut.behind(case, |what| matches!(what, Hindrance::Frame { .. }));
    let places = cut.holes(case, fixing);
    let mut words = Vec::new();
    for (side, word) in Cut::sides(case) {
        let level = side.axis() == facing.right.axis();
        let (edge, along) = (
            cut.datum_to(cut.opening.face(side), if level { facing.right } else { facing.up }),
            usize::from(level),
        );
        let beyond = |hole: &[Sum; 2]| {
            let off_m = likely(&hole[1 - along]) - likely(&edge);
            if side == facing.right || side == facing.up { off_m } else { -off_m }
        };
        let run: Vec<f64> = places
            .iter()
            .zip(edges)
            .filter(|(hole, edge)| beyond(hole) > 0.0 && edge[0].min(edge[1]) < need_m)
            .map(|(hole, _)| likely(&hole[along]))
            .collect();
        if run.is_empty() {
            continue;
        }
        // From the cut out to the frame member there, or to the panel's edge.
        let to_frame = frames
            .iter()
            .map(|thing| {
                &(thing.extents.face(side.opposite()) - cut.opening.face(side)) * side.sign()
            })
            .map(|gap| likely(&gap))
            .filter(|gap_m| *gap_m > 0.0)
            .fold(f64::INFINITY, f64::min);
        let width_m = likely(&cut.strip(side)).min(to_frame);
        let frame = frames.iter().find(|thing| {
            let gap = &(thing.extents.face(side.opposite()) - cut.opening.face(side)) * side.sign();
            (likely(&gap) - to_frame).abs() < 1e-9
        });
        let i = facing.out.axis().index();
        let thick_m = frame
            .map_or(BACKER_M, |thing| likely(&(&thing.extents.high[i] - &thing.extents.low[i])));
        let end_m = edge_distance("wood-end-loaded").map_or(7.0, |row| row.value.diameters)
            * fixing.screw.likely().in_m();
        let (first_m, last_m) =
            run.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(first, last), at| {
                (first.min(*at), last.max(*at))
            });
        let long_m = ((last_m - first_m + 2.0 * end_m) * 100.0).ceil() / 100.0;
        let to = frame.map_or_else(|| "the panel's edge".to_owned(), |thing| called(thing));
        words.push(format!(
            "on the {word} one of {} × {} × {} mm, from the cut to {to}",
            mm(width_m),
            mm(thick_m),
            mm(long_m)
        ));
    }
    let bite_m = BACKER_M.min(0.02)
        + case.likely_m(
            &(&cut.sheet.high[facing.out.axis().index()]
                - &cut.sheet.low[facing.out.axis().index()]),
        );
    sentence(&format!(
        "glue and screw hardwood strips behind the panel: {}. The screws then have {} mm to bite.",
        words.join("; "),
        mm(bite_m)
    ))
}

/// The thickness of a backer where no frame member gives it \[m\]; common practice, no source.
const BACKER_M: f64 = 0.02;

/// The flange: it covers the cut and rests on the panel.
fn flange(case: &Case<'_, '_>, cut: &Cut<'_>) -> Vec<Finding> {
    if case.item.part.flange.is_none() {
        return Vec::new();
    }
    let front = case.front();
    let each =
        |of: &dyn Fn(Direction) -> Sum| Cut::sides(case).map(|(side, word)| (of(side), word));
    let least = |id: &str, label: String, need: &Need, sums: &[(Sum, &str); 4]| {
        let taken = case.taken(sums.iter().map(|(sum, _)| sum));
        held(case.id(id), label, need, &taken, |point| {
            sums.iter().map(|(sum, _)| taken.at_m(sum, point)).fold(f64::INFINITY, f64::min)
        })
    };
    let least_m = |sums: &[(Sum, &str); 4]| {
        sums.iter().map(|(sum, _)| case.likely_m(sum)).fold(f64::INFINITY, f64::min)
    };
    let covers = each(&|side| &(front.face(side) - cut.opening.face(side)) * side.sign());
    let rests = each(&|side| &(cut.sheet.face(side) - front.face(side)) * side.sign());
    let need = Need::physics("cover", "a flange that is smaller than its hole falls through");
    let cover = least(
        "flange",
        format!("cover of the flange of {} beyond the cut", case.name),
        &need,
        &covers,
    )
    .saying(format!(
        "The flange covers the edge of the cut by {} mm at least.",
        mm(least_m(&covers))
    ));
    let need = Need::rule(0.0, "a flange rests on its panel all round, common practice".to_owned())
        .on("practice");
    let edge = least(
        "flange-edge",
        format!("panel left beyond the flange of {}", case.name),
        &need,
        &rests,
    );
    let edge_m = least_m(&rests);
    let edge = edge.saying(if edge_m < 0.0 {
        format!("The flange stands out beyond the panel by {} mm.", mm(-edge_m))
    } else {
        format!(
            "The flange rests on the panel all round; {} mm of panel are beyond it at least.",
            mm(edge_m)
        )
    });
    vec![cover, edge]
}
