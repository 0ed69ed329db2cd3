//! The holes that a thing is held by: what lies behind each of them, and whether anybody looked.

use spile_answer::{Ask, Finding, Reason, Verdict};
use spile_build::file::{HeldBy, HeldFace, HeldInto};
use spile_build::{Held, HeldPattern, Hindrance, columns};
use spile_solid::Direction;

use crate::clearance::{Case, called};
use crate::need::{Need, held, mm, up_mm};
use crate::practice::PRACTICE;
use crate::scene::{Kind, Thing};
use crate::sum::Sum;

/// How to look at the other side of a floor, an arch or a sheet.
const LOOK: &str = "Lamp and mirror on the other side: brake and fuel lines, cables, tanks, the tyre at full travel. Push a wire through a 2 mm pilot hole and find its end. Draw what is there as [keep_out.NAME], then write looked = true in its held.";

/// The face that is drilled, as one looks at it.
struct Drilled<'b> {
    held: &'b Held,
    right: Direction,
    up: Direction,
    /// The way the drill goes.
    into: Direction,
}

/// What is found of the holes that hold an item.
pub(crate) fn findings(case: &Case<'_, '_>) -> Vec<Finding> {
    let Some(drilled) = drilled(case) else { return Vec::new() };
    let keep_out = |what| what == Hindrance::KeepOut;
    let belt = |what| what == Hindrance::Frame { belt: true };
    let mut found: Vec<Finding> = [
        against(case, &drilled, "drilled", "keep-out", keep_out),
        against(case, &drilled, "drilled-belt", "belt", belt),
    ]
    .into_iter()
    .flatten()
    .collect();
    found.extend(look(case, &drilled));
    found
}

/// How an item is drilled; `None` where it is not, or where that is judged with its cut-out.
fn drilled<'b>(case: &Case<'_, 'b>) -> Option<Drilled<'b>> {
    let held = case.item.held.as_ref()?;
    if !matches!(
        held.by,
        HeldBy::Bolt | HeldBy::RivetNut | HeldBy::TappingScrew | HeldBy::WoodScrew
    ) {
        return None;
    }
    let facing = case.body.facing;
    let away = facing.out.opposite();
    let (up, into) = match held.face.unwrap_or(HeldFace::Below) {
        HeldFace::Below => (away, facing.up.opposite()),
        HeldFace::Above => (away, facing.up),
        HeldFace::Behind if case.item.panel.is_none() => (facing.up, away),
        HeldFace::Behind | HeldFace::Beside => return None,
    };
    Some(Drilled { held, right: facing.right, up, into })
}

impl Drilled<'_> {
    /// The middles of the holes along right and up; `None` where nothing is said of them.
    fn holes(&self, case: &Case<'_, '_>) -> Option<Vec<[Sum; 2]>> {
        let body = &case.body.extents;
        let along = [self.right, self.up];
        match &self.held.pattern {
            HeldPattern::Rows(rows) => {
                let hole = |row: &[spile_quantity::Length; 2]| {
                    [0, 1].map(|i| {
                        let off = Sum::fixed(row[i].in_m() * along[i].sign());
                        body.face(along[i].opposite()) + &off
                    })
                };
                Some(rows.iter().map(hole).collect())
            }
            HeldPattern::Spacing(spacing) => {
                let wide = [("width", 0), ("height", 1)].map(|(word, i)| {
                    let name = format!("{word} of the pattern that holds {}", case.name);
                    case.measures.take(name, &spacing[i])
                });
                let hole = |share: [f64; 2]| {
                    [0, 1].map(|i| {
                        let axis = along[i].axis().index();
                        let middle = &(&body.low[axis] + &body.high[axis]) * 0.5;
                        &middle + &(&wide[i] * (share[i] * along[i].sign()))
                    })
                };
                Some(columns(self.held.count.unwrap_or(4).max(1)).into_iter().map(hole).collect())
            }
            HeldPattern::Unsaid => None,
        }
    }

    /// What a drill reaches that goes in from the face, of one sort.
    fn reached<'a, 'b>(
        &self,
        case: &Case<'a, 'b>,
        wanted: impl Fn(Hindrance) -> bool,
    ) -> Vec<&'a Thing<'b>> {
        let face_m = case.likely_m(case.body.extents.face(self.into));
        let wall_m = self.held.wall.as_ref().map_or(0.0, |wall| wall.likely().in_m());
        let far_m = PRACTICE.blade_reach.likely().in_m() + wall_m;
        let ahead_m = |sum: &Sum| (case.likely_m(sum) - face_m) * self.into.sign();
        let touch_m = spile_solid::TOUCH.in_m();
        case.things
            .iter()
            .filter(|thing| matches!(thing.kind, Kind::Fixed(what) if wanted(what)))
            .filter(|thing| {
                ahead_m(thing.extents.face(self.into.opposite())) + touch_m < far_m
                    && ahead_m(thing.extents.face(self.into)) > touch_m
            })
            .collect()
    }

    /// How far a thing begins beyond a hole, and ends before it, along right and along up.
    fn gaps(&self, hole: &[Sum; 2], thing: &Thing<'_>) -> [[Sum; 2]; 2] {
        [0, 1].map(|i| {
            let axis = [self.right, self.up][i].axis().index();
            [&thing.extents.low[axis] - &hole[i], &hole[i] - &thing.extents.high[axis]]
        })
    }
}

/// Every hole against what nobody may drill into, within the reach of the drill.
fn against(
    case: &Case<'_, '_>,
    drilled: &Drilled<'_>,
    id: &str,
    ground: &'static str,
    wanted: impl Fn(Hindrance) -> bool,
) -> Option<Finding> {
    let reached = drilled.reached(case, wanted);
    let Some(holes) = drilled.holes(case) else {
        return (!reached.is_empty()).then(|| unsaid(case, id, &reached));
    };
    let radius_m = drilled.held.size.map_or(0.0, |size| size.in_m() / 2.0);
    let least_m = |gaps: &[[[Sum; 2]; 2]], value: &dyn Fn(&Sum) -> f64| {
        let each = gaps.iter().map(|[across, up]| {
            let [across_m, up_m] =
                [across, up].map(|[beyond, before]| value(beyond).max(value(before)));
            let both = across_m > 0.0 && up_m > 0.0;
            (if both { across_m.hypot(up_m) } else { across_m.max(up_m) }) - radius_m
        });
        each.fold(f64::INFINITY, f64::min)
    };
    let likely = |sum: &Sum| case.likely_m(sum);
    let (nearest_m, gaps, nearest) = reached
        .into_iter()
        .map(|thing| {
            let gaps: Vec<_> = holes.iter().map(|hole| drilled.gaps(hole, thing)).collect();
            (least_m(&gaps, &likely), gaps, thing)
        })
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let what = called(nearest);
    let taken = case.taken(gaps.iter().flatten().flatten());
    let need = Need::practice(&PRACTICE.slack).on(ground);
    let label = format!("from a drilled hole to {what}");
    let finding = held(case.id(id), label, &need, &taken, |point| {
        least_m(&gaps, &|sum| taken.at_m(sum, point))
    });
    let through = mm(PRACTICE.blade_reach.likely().in_m());
    let says = if nearest_m >= 0.0 {
        format!("{} mm are between a hole that holds {} and {what}.", mm(nearest_m), case.name)
    } else if ground == "belt" {
        format!(
            "A hole that holds {} falls on {what}, which carries a belt or a seat: it is never drilled.",
            case.name
        )
    } else {
        format!(
            "A hole that holds {} falls on {what}, which lies within the {through} mm that a drill reaches: nobody may drill there.",
            case.name
        )
    };
    let mend = (finding.verdict != Verdict::Good).then(|| {
        let by = up_mm(PRACTICE.slack.value.high.in_m() - nearest_m);
        format!("Bore it {by} mm further away, or glue it on there; and put a stop on the drill.")
    });
    Some(finding.saying(says).mended(mend))
}

/// Something lies within reach of the drill, and where the holes are is not said.
fn unsaid(case: &Case<'_, '_>, id: &str, reached: &[&Thing<'_>]) -> Finding {
    let what: Vec<String> = reached.iter().map(|thing| called(thing)).collect();
    let says = format!(
        "{} lies within reach of the drill behind what {} is screwed to, and where its holes are is not said.",
        what.join(", "),
        case.name
    );
    let label = format!("from a drilled hole to {}", what[0]);
    let mut finding = Finding::plain(case.id(id), label, Verdict::Open, says);
    finding.asks.push(Ask {
        input: format!("holes of {}", case.name).into(),
        how: "A tape between the outermost fasteners: spacing = { width = \"400 mm\", height = \"300 mm\" } in its held.".into(),
        settles: "whether a hole meets it".to_owned(),
        turns: String::new(),
        weight: 1.0,
    });
    finding
}

/// Whether somebody has looked under the floor, or behind the body's sheet, before it is drilled.
fn look(case: &Case<'_, '_>, drilled: &Drilled<'_>) -> Option<Finding> {
    let sheet = drilled.held.into == Some(HeldInto::BodySheet);
    let floor = drilled.into == Direction::Down
        && case.body.on.as_deref() == Some("floor")
        && matches!(
            drilled.held.into,
            None | Some(HeldInto::Plywood | HeldInto::SolidWood | HeldInto::BodySheet)
        );
    if !(floor || sheet) || drilled.held.looked {
        return None;
    }
    let (what, side) =
        if floor { ("the floor", "underneath") } else { ("the body's sheet", "behind it") };
    let says = format!(
        "{} is screwed through {what}. Look {side} first: brake and fuel lines, cables, tanks and the tyre's travel do not show from inside.",
        crate::need::sentence(case.name)
    );
    let label = format!("what lies behind the holes of {}", case.name);
    let practice = Verdict::Care(Reason::Practice);
    let mut finding = Finding::plain(case.id("look-first"), label, practice, says);
    finding.asks.push(Ask {
        input: format!("the other side of the holes of {}", case.name).into(),
        how: LOOK.into(),
        settles: "whether the drill meets anything".to_owned(),
        turns: String::new(),
        weight: 0.5,
    });
    let mend = "Look on the other side, draw what is there as a keep-out zone, and put a stop on the drill.";
    Some(finding.mended(Some(mend.to_owned())))
}
