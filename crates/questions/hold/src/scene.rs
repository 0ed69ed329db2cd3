//! What is held, by what, and how it pushes.

use spile_answer::{Basis, Finding, Given, Handle, Ledger, Point};
use spile_build::file::{HeldBy, HeldFace, HeldInto};
use spile_build::{Anchor, Build, Held, HeldPattern, Item, columns};
use spile_quantity::{Force, Length, Mass, Pressure, Quantity, Ranged, Share};
use spile_strength::envelope::{Case, GRAVITY, Way};
use spile_strength::group::Push;
use spile_tables::fastener;

use crate::{called, open};

/// A thing with its fixing, every number of it in the ledger.
pub(crate) struct Scene<'b> {
    pub(crate) build: &'b Build,
    pub(crate) name: &'b str,
    pub(crate) item: &'b Item,
    pub(crate) held: &'b Held,
    pub(crate) ledger: Ledger,
    pub(crate) face: HeldFace,
    pub(crate) count: u32,
    /// Whether it stands on something beside being fixed to a wall.
    stands: bool,
    pub(crate) assumed: Vec<String>,
    /// Width and height of the face.
    pub(crate) face_size: [Length; 2],
    loads: Vec<Load>,
    spacing: Option<[Handle<Length>; 2]>,
    pub(crate) into: HeldInto,
    pub(crate) wall: Handle<Length>,
    wall_given: Given<Length>,
    pub(crate) washer: Handle<Length>,
    pub(crate) washer_given: Given<Length>,
    pub(crate) edge: Option<Handle<Length>>,
    /// Ultimate strength of the metal it is in.
    pub(crate) metal: Option<Handle<Pressure>>,
    /// Specific gravity of the wood it is in.
    pub(crate) gravity: Option<Handle<Share>>,
    /// What one screw in a thin wall, or one strap, may be used for.
    pub(crate) one: Option<Handle<Force>>,
    /// Lap shear of the glue.
    pub(crate) lap: Option<Handle<Pressure>>,
}

/// A mass and how far in front of the face it lies.
struct Load {
    mass: Handle<Mass>,
    contents: Option<Handle<Mass>>,
    lever: Handle<Length>,
}

impl<'b> Scene<'b> {
    pub(crate) fn new(
        build: &'b Build,
        name: &'b str,
        item: &'b Item,
        held: &'b Held,
    ) -> Result<Self, Box<Finding>> {
        let missing = |what: &str, how: &str| {
            let called = called(item);
            Box::new(open(
                format!("{name}.fixing"),
                what,
                format!("Nothing is said of the {what} that hold the {called}."),
                format!("{what} of the {called}"),
                how,
            ))
        };
        let Some(size) = &item.part.size else {
            return Err(missing(
                "size of the body and the fasteners",
                "A tape: size = { width = \"475 mm\", height = \"780 mm\", depth = \"495 mm\" } in its part.",
            ));
        };
        let screwed = !matches!(held.by, HeldBy::Adhesive | HeldBy::Strap);
        if screwed && held.size.is_none() {
            return Err(missing(
                "size of the screws",
                "A calliper across the thread: size = \"M6\".",
            ));
        }
        let count = match held.count {
            Some(count) if count > 0 => count,
            _ if held.by == HeldBy::Adhesive => 1,
            _ => return Err(missing("number of fasteners", "Count them: count = 4.")),
        };
        if screwed && held.into.is_none() {
            return Err(missing(
                "material behind the screws",
                "Look behind: into = \"steel tube\", \"aluminium tube\", \"plywood\", \"solid wood\" or \"body sheet\"; a magnet tells steel.",
            ));
        }
        let into = held.into.unwrap_or(HeldInto::SteelTube);
        let wooden = matches!(into, HeldInto::Plywood | HeldInto::SolidWood);
        if screwed && !suits(held.by, wooden) {
            return Err(missing(
                "right fasteners",
                "Look again what they are and what they are in: rivet nuts are for thin metal, wood screws for wood; through wood goes a bolt.",
            ));
        }
        let threaded = matches!(held.by, HeldBy::Bolt | HeldBy::RivetNut);
        if threaded && held.size.is_some_and(|size| fastener::thread(size).is_none()) {
            return Err(missing(
                "thread, M4 to M10, of the bolts",
                "A calliper across the thread, and the nearest of M4, M5, M6, M8 and M10: size = \"M6\".",
            ));
        }
        if held.by == HeldBy::Strap && held.holds.is_none() {
            return Err(missing(
                "load of the straps",
                "Read the label sewn to the strap: holds = \"1500 N\".",
            ));
        }
        let mut assumed = Vec::new();
        if held.by == HeldBy::Bolt && held.class.is_none() {
            assumed.push(format!("bolts of class 4.6 hold the {}", called(item)));
        }
        let mut ledger = Ledger::new();
        let face = held.face.unwrap_or_else(|| {
            assumed.push(format!("the {} is held from below", called(item)));
            HeldFace::Below
        });
        let [width, height, depth] = [&size.width, &size.height, &size.depth].map(Given::likely);
        let (face_size, out) = match face {
            HeldFace::Below | HeldFace::Above => ([width, depth], &size.height),
            HeldFace::Behind => ([width, height], &size.depth),
            HeldFace::Beside => ([depth, height], &size.width),
        };
        let stands = stands(item) && matches!(face, HeldFace::Behind | HeldFace::Beside);
        if stands {
            assumed.push(format!("what the {} stands on carries its weight", called(item)));
        }
        let lever = held.lever.clone().unwrap_or_else(|| {
            let part = |share| out.likely() * share;
            typical(
                [part(0.35), part(0.5), part(0.65)],
                "half of the body assumed",
                "Balance it on a batten and measure from the face that is held to the batten.",
            )
        });
        let mut loads = vec![load(&mut ledger, name, item, &lever)];
        stacked(build, name, face, height, &mut ledger, &mut loads);
        let spacing = match &held.pattern {
            HeldPattern::Rows(_) => None,
            HeldPattern::Spacing([right, above]) => Some([right.clone(), above.clone()]),
            HeldPattern::Unsaid => Some(face_size.map(|side| {
                typical(
                    [side * 0.6, side * 0.8, side * 0.95],
                    "four fifths of the body assumed",
                    "A tape between the outermost fasteners: spacing = { width = \"400 mm\", height = \"300 mm\" }.",
                )
            })),
        };
        let spacing = spacing.map(|[right, above]| {
            [
                ledger.take(format!("width of the pattern under {name}"), &right),
                ledger.take(format!("height of the pattern under {name}"), &above),
            ]
        });
        let wall = held.wall.clone().unwrap_or_else(|| wall(into));
        let wall_given = wall.clone();
        let wall =
            ledger.take(format!("thickness of the {} that holds {name}", into.word()), &wall);
        let nominal = held.size.unwrap_or(Length::mm(6.0));
        let washer = held.washer.clone().unwrap_or_else(|| {
            typical(
                [nominal * 1.6, nominal * 2.0, nominal * 2.2],
                "ordinary washers assumed",
                "A calliper across the washer, or the head where there is none.",
            )
        });
        let washer_given = washer.clone();
        let washer = ledger.take(format!("washers of {name}"), &washer);
        let edge = held
            .edge
            .as_ref()
            .map(|edge| ledger.take(format!("nearest edge to a hole of {name}"), edge));
        let metal = (!wooden && screwed).then(|| {
            let row = fastener::sheet_metals().iter().find(|row| row.value.0 == into.word());
            let row = row.expect("every metal is in the table");
            ledger.take(
                format!("strength of the {} that holds {name}", into.word()),
                &Given {
                    value: row.value.1,
                    basis: Basis::Typical,
                    source: row.source.title.as_str().into(),
                    how: "The papers of whoever sold the tube: its alloy or steel.".into(),
                },
            )
        });
        let gravity = (wooden && screwed).then(|| {
            let bounds =
                if into == HeldInto::Plywood { [0.36, 0.43, 0.6] } else { [0.36, 0.42, 0.5] };
            let given = typical(
                bounds.map(Share::of_one),
                "NDS 2018, species of light plywood and softwood",
                "Ask for the species; or weigh a dry piece and divide by its volume in litres.",
            );
            ledger
                .take(format!("specific gravity of the {} that holds {name}", into.word()), &given)
        });
        let one = one_screw(held, nominal).map(|given| {
            ledger.take(format!("what one fastener of {name} may be used for"), &given)
        });
        let lap = (held.by == HeldBy::Adhesive).then(|| {
            let given = typical(
                [1.0, 2.5, 4.5].map(Pressure::mpa),
                "one-part polyurethane, from memory",
                "The data sheet of the glue: lap shear on these two surfaces.",
            );
            ledger.take(format!("lap shear of the glue of {name}"), &given)
        });
        Ok(Self {
            build,
            name,
            item,
            held,
            ledger,
            face,
            count,
            stands,
            assumed,
            face_size,
            loads,
            spacing,
            into,
            wall,
            wall_given,
            washer,
            washer_given,
            edge,
            metal,
            gravity,
            one,
            lap,
        })
    }

    /// Where the fasteners are on the face, at a point.
    pub(crate) fn places(&self, point: &Point) -> Vec<[Length; 2]> {
        if let HeldPattern::Rows(rows) = &self.held.pattern {
            return rows.clone();
        }
        let Some(spacing) = self.spacing else { return Vec::new() };
        let [right, above] = spacing.map(|handle| point.at(handle));
        let middle = self.face_size.map(|side| side / 2.0);
        columns(self.count)
            .into_iter()
            .map(|[across, up]| [middle[0] + right * across, middle[1] + above * up])
            .collect()
    }

    /// Width and height of the pattern, or of the glued face.
    pub(crate) fn spacing(&self, point: &Point) -> [Length; 2] {
        self.spacing.map_or(self.face_size, |spacing| spacing.map(|handle| point.at(handle)))
    }

    /// All that pushes, and the mean distance of it from the face.
    pub(crate) fn pushing(&self, point: &Point) -> (Mass, Length) {
        let (mut mass, mut moment) = (0.0, 0.0);
        for load in &self.loads {
            let contents = load.contents.map_or(0.0, |handle| point.at(handle).in_kg());
            let one_kg = point.at(load.mass).in_kg() + contents;
            mass += one_kg;
            moment += one_kg * point.at(load.lever).in_m();
        }
        (Mass::kg(mass), Length::m(if mass > 0.0 { moment / mass } else { 0.0 }))
    }

    /// The wall or panel it is in.
    pub(crate) const fn wall_given(&self) -> &Given<Length> {
        &self.wall_given
    }

    /// How a load case pushes on the face.
    pub(crate) fn push(&self, case: &Case, mass: Mass) -> Push {
        let weight_n = mass.in_kg() * GRAVITY;
        let hard = case.times_gravity * weight_n;
        let down = if self.stands { 0.0 } else { case.weight * weight_n };
        let [right, above, away] = match self.face {
            HeldFace::Below => match case.way {
                Way::Down => [0.0, 0.0, -hard],
                Way::Up => [0.0, 0.0, hard],
                Way::Forward => [0.0, hard, -down],
                Way::Rearward => [0.0, -hard, -down],
                Way::Left => [-hard, 0.0, -down],
                Way::Right => [hard, 0.0, -down],
            },
            HeldFace::Above => match case.way {
                Way::Down => [0.0, 0.0, hard],
                Way::Up => [0.0, 0.0, -hard],
                Way::Forward => [0.0, hard, down],
                Way::Rearward => [0.0, -hard, down],
                Way::Left => [-hard, 0.0, down],
                Way::Right => [hard, 0.0, down],
            },
            HeldFace::Behind | HeldFace::Beside => match case.way {
                Way::Down if self.stands => [0.0; 3],
                Way::Down => [0.0, -hard, 0.0],
                Way::Up => [0.0, hard, 0.0],
                Way::Forward => [0.0, -down, hard],
                Way::Rearward => [0.0, -down, -hard],
                Way::Left => [-hard, -down, 0.0],
                Way::Right => [hard, -down, 0.0],
            },
        };
        Push { right: Force::n(right), above: Force::n(above), away: Force::n(away) }
    }

    /// A load case in words: which way the thing faces is not needed, for all level ways are tried.
    pub(crate) fn case_words(&self, case: &Case) -> String {
        let way = match (self.face, case.way) {
            (_, Way::Down) => "down",
            (_, Way::Up) => "up",
            (HeldFace::Below | HeldFace::Above, Way::Forward | Way::Rearward) => "along its depth",
            (HeldFace::Below | HeldFace::Above, Way::Left | Way::Right) => "along its width",
            (_, Way::Forward) => "away from the wall",
            (_, Way::Rearward) => "against the wall",
            (_, Way::Left | Way::Right) => "along the wall",
        };
        format!("{} g {way}", case.times_gravity)
    }

    /// The fasteners in words: `4 M6 bolts`.
    pub(crate) fn fasteners(&self) -> String {
        fasteners(self.held, self.count)
    }
}

/// Whether fasteners of that sort go into wood, or into metal.
const fn suits(by: HeldBy, wooden: bool) -> bool {
    matches!(
        (by, wooden),
        (HeldBy::Bolt | HeldBy::TappingScrew, _)
            | (HeldBy::RivetNut, false)
            | (HeldBy::WoodScrew, true)
    )
}

/// Whether a thing stands on the floor or on another thing.
fn stands(item: &Item) -> bool {
    item.place.as_ref().is_some_and(|place| {
        let on_floor = matches!(&place.z, Anchor::Low(foot) if foot.likely() < Length::mm(5.0));
        place.on.is_some() || on_floor
    })
}

/// Fasteners in words.
pub(crate) fn fasteners(held: &Held, count: u32) -> String {
    let many = if count == 1 { "" } else { "s" };
    let (by, class) = (held.by.word(), held.class.as_deref());
    match (held.by, held.size) {
        (HeldBy::Adhesive, _) => "the glue".to_owned(),
        (HeldBy::Bolt | HeldBy::RivetNut, Some(size)) => {
            let class = class.map(|class| format!(" of class {class}")).unwrap_or_default();
            format!("{count} {by}{many} M{}{class}", size.in_mm())
        }
        (HeldBy::Strap, _) | (_, None) => format!("{count} {by}{many}"),
        (_, Some(size)) => format!("{count} {by}{many} of {} mm", size.in_mm()),
    }
}

/// A stand-in of common practice.
pub(crate) fn typical<Q: Quantity>(
    [low, likely, high]: [Q; 3],
    source: &'static str,
    how: &'static str,
) -> Given<Q> {
    Given {
        value: Ranged { low, likely, high },
        basis: Basis::Typical,
        source: source.into(),
        how: how.into(),
    }
}

fn load(ledger: &mut Ledger, name: &str, item: &Item, lever: &Given<Length>) -> Load {
    let nothing = || typical([Mass::kg(0.0); 3], "not said", "Weigh it.");
    let mass = item.mass.clone().unwrap_or_else(nothing);
    Load {
        mass: ledger.take(format!("mass of {name}"), &mass),
        contents: item
            .contents
            .as_ref()
            .map(|given| ledger.take(format!("contents of {name}"), given)),
        lever: ledger.take(format!("middle of the mass of {name}, from its fixing"), lever),
    }
}

/// What stands on a thing that stands on its fasteners: it pushes at least from the top of it.
fn stacked(
    build: &Build,
    under: &str,
    face: HeldFace,
    top: Length,
    ledger: &mut Ledger,
    loads: &mut Vec<Load>,
) {
    if face != HeldFace::Below {
        return;
    }
    for (name, item) in &build.items {
        let on = item.place.as_ref().and_then(|place| place.on.as_deref());
        if on != Some(under) || item.mass.is_none() {
            continue;
        }
        let height = item.part.size.as_ref().map_or(Length::m(0.0), |size| size.height.likely());
        let own = item.held.is_some();
        let middle = |share: f64| if own { top } else { top + height * share };
        let lever = typical(
            [middle(0.35), middle(0.5), middle(0.65)],
            "half of the body assumed; at the top of what it stands on where it is held itself",
            "Balance it on a batten and measure from its foot to the batten.",
        );
        loads.push(load(ledger, name, item, &lever));
        stacked(build, name, face, top + height, ledger, loads);
    }
}

/// A typical wall.
fn wall(into: HeldInto) -> Given<Length> {
    let bounds = match into {
        HeldInto::SteelTube => [1.0, 1.5, 2.0],
        HeldInto::AluminiumTube => [1.5, 2.0, 3.0],
        HeldInto::Plywood => [9.0, 12.0, 15.0],
        HeldInto::SolidWood => [15.0, 25.0, 40.0],
        HeldInto::BodySheet => [0.7, 0.8, 1.0],
    };
    typical(bounds.map(Length::mm), "common practice", "A calliper at an end or a hole.")
}

/// What one tapping screw, rivet nut or strap may be used for: said, else the trade's figure scaled
/// with diameter and wall in `modes`.
fn one_screw(held: &Held, nominal: Length) -> Option<Given<Force>> {
    if let Some(said) = &held.holds {
        return Some(said.clone());
    }
    let row = fastener::pull_outs().iter().find(|row| row.value.key == held.by.word())?;
    let scale = nominal / row.value.diameter;
    Some(Given {
        value: row.value.allowed.map(|force| force * scale),
        basis: Basis::Typical,
        source: "common practice".into(),
        how: "Drive one into a scrap of the same wall and pull with a spring balance until it lets go; a quarter of that may be used: holds = \"250 N\".".into(),
    })
}
