//! The room that is left on each side of a body.

use spile_answer::{Finding, Point, Step, Worse, swing};
use spile_build::file::PartKind;
use spile_build::{Build, Hindrance, Item};
use spile_quantity::Length;
use spile_solid::{Axis, Cuboid, Direction, Solid};

use crate::need::{Need, found, held, missing_m, mm, up_mm};
use crate::practice::PRACTICE;
use crate::scene::{Body, Extents, Kind, Room, Round, Thing};
use crate::sum::{Measures, Sum, Taken};

/// An item that is judged, with all that stands around it.
pub(crate) struct Case<'a, 'b> {
    pub(crate) build: &'b Build,
    pub(crate) room: &'a Room<'b>,
    pub(crate) name: &'b str,
    pub(crate) item: &'b Item,
    pub(crate) body: &'a Body,
    pub(crate) things: &'a [Thing<'b>],
    pub(crate) measures: &'a Measures,
}

/// The way from a body to what it meets in a direction.
pub(crate) struct Gap<'a, 'b> {
    pub(crate) what: String,
    pub(crate) thing: Option<&'a Thing<'b>>,
    pub(crate) likely_m: f64,
    pub(crate) sum: Sum,
    /// The body seen from the origin of a profile that stands in the way, and that profile.
    round: Option<(Extents, &'a Round)>,
    direction: Direction,
}

impl Gap<'_, '_> {
    fn sums(&self) -> Vec<&Sum> {
        match &self.round {
            None => vec![&self.sum],
            Some((body, round)) => body.low.iter().chain(&body.high).chain([&round.off]).collect(),
        }
    }

    /// The way \[m\]; infinite where the body passes by.
    fn at_m(&self, value: impl Fn(&Sum) -> f64) -> f64 {
        let Some((body, round)) = &self.round else { return value(&self.sum) };
        let Some(body) = body.cuboid(&value) else { return f64::INFINITY };
        let way = if round.solid.overlaps(&Solid::Cuboid(body)) {
            Some(-round.solid.way_clear(&body, self.direction.opposite()))
        } else {
            round.solid.free(&body, self.direction)
        };
        way.map_or(f64::INFINITY, |way| way.in_m() + value(&round.off))
    }
}

impl<'a, 'b> Case<'a, 'b> {
    pub(crate) fn likely_m(&self, sum: &Sum) -> f64 {
        self.measures.likely_m(sum)
    }

    pub(crate) fn id(&self, what: &str) -> String {
        format!("{}.{what}", self.name)
    }

    /// Whether it is built to its place, so that the slack of what is bought does not apply.
    pub(crate) fn is_furniture(&self) -> bool {
        self.item.part.kind == PartKind::Furniture
    }

    /// The measures of sums, and a figure over them.
    pub(crate) fn taken<'s>(&self, sums: impl IntoIterator<Item = &'s Sum>) -> Taken {
        self.measures.ledger(sums)
    }

    /// Whether a thing is part of this one's own standing: itself, what stands on it, furniture
    /// around or within it.
    pub(crate) fn is_own(&self, thing: &Thing<'_>) -> bool {
        let Kind::Item(name, item) = thing.kind else { return false };
        let inside = |a: &Extents, b: &Extents| {
            let value = |sum: &Sum| self.likely_m(sum);
            matches!((a.cuboid(value), b.cuboid(value)), (Some(a), Some(b)) if a.contains(&b))
        };
        name == self.name
            || item.place.as_ref().is_some_and(|place| place.on.as_deref() == Some(self.name))
            || (item.part.kind == PartKind::Furniture && inside(&thing.extents, &self.body.extents))
            || (self.is_furniture() && inside(&self.body.extents, &thing.extents))
    }

    /// Whether a thing reaches into the bay or the space before its opening. What lies beyond a
    /// side of the bay is kept off by the bay's own clear size, however its place was taped.
    pub(crate) fn is_here(&self, thing: &Thing<'_>) -> bool {
        let out = self.room.facing.out;
        Axis::ALL.into_iter().flat_map(Axis::directions).filter(|side| *side != out).all(|side| {
            let i = side.axis().index();
            let (low_m, high_m) =
                (self.likely_m(&thing.extents.low[i]), self.likely_m(&thing.extents.high[i]));
            let touch_m = spile_solid::TOUCH.in_m();
            if side.sign() > 0.0 {
                low_m + touch_m < self.likely_m(&self.room.size[i])
            } else {
                high_m > touch_m
            }
        })
    }

    /// What a body meets in each direction, the nearest first; nothing that is far beyond it.
    pub(crate) fn gaps(&self, body: &Extents, directions: &[Direction]) -> Vec<Vec<Gap<'a, 'b>>> {
        let mut all: Vec<Vec<Gap<'a, 'b>>> = directions.iter().map(|_| Vec::new()).collect();
        let value = |sum: &Sum| self.likely_m(sum);
        let Some(likely) = body.cuboid(value) else { return all };
        for thing in self.things.iter().filter(|thing| !self.is_own(thing) && self.is_here(thing)) {
            let Some((solid, seen)) = self.solid(thing, body, &likely) else { continue };
            let back = solid.overlaps(&Solid::Cuboid(seen)).then(|| {
                let way = |direction: &Direction| solid.way_clear(&seen, *direction).in_m();
                let least = Direction::ALL.into_iter().min_by(|a, b| way(a).total_cmp(&way(b)));
                least.map(Direction::opposite)
            });
            for (found, &direction) in all.iter_mut().zip(directions) {
                let stands = direction == Direction::Down
                    && matches!(thing.kind, Kind::Item(name, _) if self.body.on.as_deref() == Some(name));
                let meets = match back {
                    Some(way) => way == Some(direction),
                    None => solid.free(&seen, direction).is_some(),
                };
                if !meets || stands {
                    continue;
                }
                let along = match &solid {
                    Solid::Cuboid(_) => true,
                    Solid::Prism(prism) => prism.axis() == direction.axis(),
                };
                let round = thing.round.as_ref().filter(|_| !along);
                let mut gap = Gap {
                    what: called(thing),
                    thing: Some(thing),
                    likely_m: 0.0,
                    sum: body.gap(&thing.extents, direction),
                    round: round.map(|round| (body.seen_from(&round.origin, 1.0), round)),
                    direction,
                };
                gap.likely_m = gap.at_m(value);
                found.push(gap);
            }
        }
        for (found, &direction) in all.iter_mut().zip(directions) {
            found.extend(self.face_of_bay(body, direction));
            found.sort_by(|a, b| a.likely_m.total_cmp(&b.likely_m));
            let near_m = found.first().map_or(0.0, |first| first.likely_m) + NEAR_M;
            found.retain(|gap| gap.likely_m <= near_m);
            found.truncate(3);
        }
        all
    }

    /// A thing as a solid at its likely place, and the body as seen from it.
    fn solid(&self, thing: &Thing<'_>, body: &Extents, likely: &Cuboid) -> Option<(Solid, Cuboid)> {
        let value = |sum: &Sum| self.likely_m(sum);
        match &thing.round {
            Some(round) => {
                Some((round.solid.clone(), body.seen_from(&round.origin, 1.0).cuboid(value)?))
            }
            None => Some((thing.extents.cuboid(value)?.into(), *likely)),
        }
    }

    /// The side of the bay in a direction; its opening is none.
    fn face_of_bay(&self, body: &Extents, direction: Direction) -> Option<Gap<'a, 'b>> {
        let (room, axis) = (self.room, direction.axis().index());
        if direction == room.facing.out {
            return None;
        }
        let sum = if direction.sign() > 0.0 {
            &room.size[axis] - body.face(direction)
        } else {
            body.face(direction).clone()
        };
        let (from_m, to_m) = (self.likely_m(&body.low[2]), self.likely_m(&body.high[2]));
        let across = room.facing.axes();
        let (least, height) = if axis == across[2] {
            room.depth(from_m, to_m, self.measures)
        } else if axis == across[0] && axis != 2 {
            room.width(from_m, to_m, self.measures)
        } else {
            (room.size[axis].clone(), None)
        };
        let sum = sum.with(&room.size[axis], &least);
        let what = match room.facing.words(direction) {
            "behind" => leaning(height, to_m),
            "above" if direction == Direction::Up => "the top of the bay".to_owned(),
            "below" if direction == Direction::Down => "the floor of the bay".to_owned(),
            side => format!("the {side} side of the bay"),
        };
        let likely_m = self.likely_m(&sum);
        Some(Gap { what, thing: None, likely_m, sum, round: None, direction })
    }

    /// The least of some ways, held against what is needed.
    fn least(&self, id: String, label: String, need: &Need, gaps: &[Gap<'_, '_>]) -> Finding {
        let taken = self.taken(gaps.iter().flat_map(Gap::sums));
        let figure = |point: &Point| {
            let ways = gaps.iter().map(|gap| gap.at_m(|sum| taken.at_m(sum, point)));
            ways.fold(f64::INFINITY, f64::min)
        };
        held(id, label, need, &taken, figure).worked(self.working(gaps))
    }

    fn working(&self, gaps: &[Gap<'_, '_>]) -> Vec<Step> {
        gaps.iter()
            .map(|gap| Step {
                what: format!("from {} to {}", self.name, gap.what).into(),
                formula: if gap.round.is_some() {
                    "the straight way from the body to the profile".into()
                } else {
                    "the face met less the face of the body".into()
                },
                numbers: format!("{} mm", mm(gap.likely_m)),
                source: "plane geometry".into(),
            })
            .collect()
    }
}

/// What is further away than the nearest by more than this cannot become the nearest \[m\].
const NEAR_M: f64 = 0.04;

fn leaning(height: Option<Length>, top_m: f64) -> String {
    match height {
        Some(height) if (height.in_m() - top_m).abs() < 1e-6 => {
            "the wall, which leans in behind its top edge".to_owned()
        }
        _ => "the wall behind".to_owned(),
    }
}

pub(crate) fn called(thing: &Thing<'_>) -> String {
    match thing.kind {
        Kind::Opposite if thing.what.contains(' ') => thing.what.to_owned(),
        Kind::Fixed(Hindrance::Obstacle) | Kind::Opposite => format!("the {}", thing.what),
        Kind::Fixed(Hindrance::Frame { .. }) => format!("the frame ({})", thing.name),
        Kind::Fixed(Hindrance::KeepOut) => format!("the keep-out zone ({})", thing.what),
        Kind::Item(name, _) => format!("the {name}"),
    }
}

/// The room that is left around a body.
pub(crate) fn findings(case: &Case<'_, '_>) -> Vec<Finding> {
    let facing = case.body.facing;
    let (air, service) = (&case.item.part.air, &case.item.part.service);
    let behind = facing.out.opposite();
    let directions =
        [behind, facing.right.opposite(), facing.right, facing.up, facing.up.opposite()];
    let [at_back, on_left, on_right, at_top, at_bottom] =
        <[_; 5]>::try_from(case.gaps(&case.body.extents, &directions))
            .unwrap_or_else(|_| std::array::from_fn(|_| Vec::new()));
    let typical = |given| if warm(case.item.part.kind) { Some(given) } else { None };
    let mut found = Vec::new();
    if !at_back.is_empty() {
        let need = need(case, [&air.behind, &service.behind], typical(&PRACTICE.air_behind));
        let finding =
            case.least(case.id("behind"), format!("left behind {}", case.name), &need, &at_back);
        let mend = (missing_m(&finding) > 0.0).then(|| forward(case, &finding));
        found.push(
            said(finding, &format!("left behind {}", case.name), &need, &at_back[0].what)
                .mended(mend),
        );
    }
    let need_left = need(case, [&air.beside, &service.left], typical(&PRACTICE.air_side));
    let need_right = need(case, [&air.beside, &service.right], typical(&PRACTICE.air_side));
    found.extend(beside(case, (&on_left, &need_left), (&on_right, &need_right)));
    if !at_top.is_empty() {
        let need = need(case, [&air.above, &service.above], typical(&PRACTICE.air_above));
        let finding =
            case.least(case.id("above"), format!("left above {}", case.name), &need, &at_top);
        let mend = (missing_m(&finding) > 0.0).then(|| {
            format!(
                "Set it {} mm lower, or take one that is so much lower.",
                up_mm(missing_m(&finding))
            )
        });
        found.push(
            said(finding, &format!("left above {}", case.name), &need, &at_top[0].what)
                .mended(mend),
        );
    }
    found.extend(below(case, &at_bottom));
    found
}

/// What a side needs: what the papers ask for, else air for what gives off heat, else slack; what
/// is built to its place needs nothing but the space.
fn need(
    case: &Case<'_, '_>,
    papers: [&Option<spile_answer::Given<Length>>; 2],
    air: Option<&spile_answer::Given<Length>>,
) -> Need {
    let asked =
        papers.into_iter().flatten().max_by(|a, b| a.likely().in_m().total_cmp(&b.likely().in_m()));
    match (asked, air) {
        (Some(asked), _) => Need::papers(asked),
        (None, _) if case.is_furniture() => Need::space(),
        (None, Some(air)) => Need::practice(air),
        (None, None) => Need::practice(&PRACTICE.slack),
    }
}

/// Whether a kind of part gives off heat through its sides.
const fn warm(kind: PartKind) -> bool {
    matches!(
        kind,
        PartKind::UprightFridge
            | PartKind::LiddedBox
            | PartKind::DrawerFridge
            | PartKind::Inverter
            | PartKind::Charger
            | PartKind::Heater
    )
}

/// `34 mm are left behind it, to the wall; its papers ask for 30 mm.`
fn said(finding: Finding, what: &str, need: &Need, nearest: &str) -> Finding {
    let Some(figure) = finding.figure else { return finding };
    let likely_m = figure.likely / 1000.0;
    let says = if likely_m < 0.0 {
        format!("It runs {} mm into {nearest}.", mm(-likely_m))
    } else {
        let worst = worst(figure.likely, figure.unfavourable);
        let asks = if need.least_m > 0.0 { format!("; {}", need.words()) } else { String::new() };
        format!("{} mm are {what}, to {nearest}{asks}.{worst}", mm(likely_m))
    };
    finding.saying(says)
}

/// The unfavourable end in words, where there is one; both in millimetres.
fn worst(likely: f64, unfavourable: f64) -> String {
    if unfavourable < likely {
        format!(" At the unfavourable end {}.", left(unfavourable / 1000.0))
    } else {
        String::new()
    }
}

/// `29 mm are left`, `it runs 3 mm into it`.
pub(crate) fn left(length_m: f64) -> String {
    if length_m < 0.0 {
        format!("it is {} mm too much", mm(-length_m))
    } else {
        format!("{} mm are left", mm(length_m))
    }
}

/// How far it has to come forward, and what holds it there.
fn forward(case: &Case<'_, '_>, finding: &Finding) -> String {
    let by = up_mm(missing_m(finding));
    if case.item.part.flange.is_some() {
        format!(
            "A packer {by} mm thick behind its flange clears it, even at the unfavourable end; its face and its door then stand {by} mm further into the aisle."
        )
    } else {
        format!("Bring it {by} mm forward, or take one that is {by} mm less deep.")
    }
}

type Side<'g, 'a, 'b> = (&'g Vec<Gap<'a, 'b>>, &'g Need);

/// Left and right in one: the side with the less to spare.
fn beside(
    case: &Case<'_, '_>,
    on_left: Side<'_, '_, '_>,
    on_right: Side<'_, '_, '_>,
) -> Option<Finding> {
    let sums = on_left.0.iter().chain(on_right.0).flat_map(Gap::sums);
    let taken = case.taken(sums);
    if on_left.0.is_empty() && on_right.0.is_empty() {
        return None;
    }
    let least = |gaps: &[Gap<'_, '_>], point: &Point| {
        let ways = gaps.iter().map(|gap| gap.at_m(|sum| taken.at_m(sum, point)));
        ways.fold(f64::INFINITY, f64::min) * 1000.0
    };
    let [at_left, at_right] = swing(&taken.ledger, [Worse::Lower; 2], |point| {
        [least(on_left.0, point), least(on_right.0, point)]
    });
    let spare =
        |swung: &spile_answer::Swing, need: &Need| swung.unfavourable - need.least_m * 1000.0;
    let left_governs = spare(&at_left, on_left.1) <= spare(&at_right, on_right.1);
    let (side, word, swung) =
        if left_governs { (on_left, "left", &at_left) } else { (on_right, "right", &at_right) };
    let (gaps, need) = side;
    let (id, label) = (case.id("beside"), format!("left beside {}", case.name));
    let finding = found(id, label, need, &taken, swung, |point| least(gaps, point)).worked(
        [on_left.0.as_slice(), on_right.0]
            .into_iter()
            .flat_map(|gaps| case.working(gaps))
            .collect(),
    );
    let both = [(at_left.likely, "left"), (at_right.likely, "right")]
        .into_iter()
        .filter(|(way, _)| way.is_finite())
        .map(|(way, word)| format!("{} mm on its {word}", mm(way / 1000.0)))
        .collect::<Vec<_>>()
        .join(" and ");
    let mend = (missing_m(&finding) > 0.0).then(|| {
        let missing_m = missing_m(&finding);
        let other =
            if left_governs { spare(&at_right, on_right.1) } else { spare(&at_left, on_left.1) };
        let towards =
            if left_governs { case.body.facing.right } else { case.body.facing.right.opposite() };
        if other / 1000.0 >= missing_m {
            format!("Shift it {} mm towards the {towards}.", up_mm(missing_m))
        } else {
            let over_m = missing_m - other.max(-1e3) / 1000.0;
            format!("It takes one that is {} mm less wide, in the middle.", up_mm(over_m))
        }
    });
    let finding = said(finding, &format!("left on its {word}"), need, &gaps[0].what);
    let says = if swung.likely < 0.0 {
        finding.says.clone()
    } else {
        let asks = if need.least_m > 0.0 { format!("; {}", need.words()) } else { String::new() };
        format!("There are {both}{asks}.{}", worst(swung.likely, swung.unfavourable))
    };
    Some(finding.saying(says).mended(mend))
}

/// What is under a body that hangs or stands on something: a bare arch wants air over it.
fn below(case: &Case<'_, '_>, gaps: &[Gap<'_, '_>]) -> Option<Finding> {
    let nearest = gaps.first()?;
    let papers = case.item.part.air.below.as_ref();
    let stands = case.body.on.is_some() && nearest.likely_m >= 0.0;
    let fixed = nearest.thing.is_some();
    if stands || (papers.is_none() && !fixed && nearest.likely_m >= 0.0) {
        return None;
    }
    let need = papers.map_or_else(|| Need::practice(&PRACTICE.over_arch), Need::papers);
    let finding = case.least(case.id("below"), format!("left below {}", case.name), &need, gaps);
    let mend = (missing_m(&finding) > 0.0)
        .then(|| format!("Raise it by {} mm, carried on the frame.", up_mm(missing_m(&finding))));
    Some(said(finding, &format!("left below {}", case.name), &need, &nearest.what).mended(mend))
}
