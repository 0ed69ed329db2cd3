//! Marking out: every mark of a cut-out from one datum corner, such that the opening comes right.

use spile_answer::Given;
use spile_build::file::Tape as Finest;
use spile_build::{Build, Hindrance};
use spile_quantity::{Length, Mark as OnTape, Marked, Ranged, Tape};
use spile_solid::Direction;

use crate::clearance::Case;
use crate::cut::{Apart, Cut};
use crate::practice::PRACTICE;
use crate::scene::{Extents, Kind, Thing};
use crate::stage::Stage;
use crate::sum::{Sum, clean_m};

/// The edge that a running dimension starts from; both meet in the datum corner, the lower left
/// one of the panel's face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum From {
    /// The panel's left edge.
    Left,
    /// The panel's lower edge.
    Below,
}

/// What a mark is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Purpose {
    /// An edge of the opening.
    Edge,
    /// The centres of two corner drillings.
    Corner,
    /// A row or column of fixing holes.
    Hole,
}

/// One mark: a line at a distance from an edge of the panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Its name: `1` to `4` for the edges, letters for corners and holes: `A`, `H1`.
    pub name: String,
    /// What it is for.
    pub purpose: Purpose,
    /// What it is, in words: `left edge`.
    pub what: String,
    /// Which edge of the panel it is taken from.
    pub from: From,
    /// Where it is meant to be.
    pub exact: Length,
    /// Where it may be drawn: the maker's tolerance less the hand's error.
    pub allowed: Ranged<Length>,
    /// The millimetre mark, whole or half.
    pub mm: OnTape,
    /// Whether no millimetre mark lies within what is allowed: this one leaves the opening on the
    /// small side, to be filed out to where it is meant to be.
    pub file: bool,
    /// The mark of the owner's inch tape, with what it is off by; `None` where that tape has none
    /// within what is allowed.
    pub inch: Option<Marked>,
}

/// Something to measure on the lines before the saw is taken up.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// What: `width between 1 and 2`.
    pub what: String,
    /// Between the millimetre marks.
    pub mm: Length,
    /// Between the inch marks, where there are both.
    pub inch: Option<Length>,
    /// What the papers allow the opening to be; of a diagonal, what both may be.
    pub allowed: Ranged<Length>,
}

/// A rectangle on the panel's face, from the datum corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outline {
    /// From the panel's left edge.
    pub left: Length,
    /// From the panel's lower edge.
    pub bottom: Length,
    /// Its width.
    pub width: Length,
    /// Its height.
    pub height: Length,
}

/// Something that lies behind the panel within reach of a blade or drill.
#[derive(Debug, Clone, PartialEq)]
pub struct Behind {
    /// What it is called.
    pub what: String,
    /// Whether nobody may cut or drill there.
    pub keep_out: bool,
    /// Where it lies behind the face.
    pub outline: Outline,
    /// How far it is from the opening's edge; negative where the opening goes into it.
    pub from_opening: Length,
}

/// What the saw does, and where it has to stop.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Saw {
    /// Diameter of the plunge saw's blade.
    pub blade: Length,
    /// How far the blade is set below the panel.
    pub through: Length,
    /// How much the cut in the face is ahead of the cut in the back at each end.
    pub ahead: Length,
    /// How far before the far edge the middle of the blade has to stop.
    pub stop: Length,
    /// Width of its cut, all of it on the waste side.
    pub kerf: Ranged<Length>,
}

/// Where a direction of the vehicle lies on the panel's face.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Points {
    /// Towards the face's left edge.
    Left,
    /// Towards its right edge.
    Right,
    /// Towards its upper edge.
    Up,
    /// Towards its lower edge.
    Down,
    /// Out of the face, towards whoever marks it.
    Outward,
    /// Into the face.
    Inward,
}

/// Everything to mark on a panel for one cut-out, and what to mind.
#[derive(Debug, Clone, PartialEq)]
pub struct MarkOut {
    /// The item's name.
    pub item: String,
    /// What the item is, in a line.
    pub about: String,
    /// The panel's name.
    pub panel: String,
    /// What the panel is of; empty where nothing is said.
    pub material: String,
    /// The panel's width and height.
    pub size: [Length; 2],
    /// The panel's thickness.
    pub thickness: Length,
    /// Where the front of the vehicle is, as one faces the panel.
    pub front: Points,
    /// Where up is.
    pub up: Points,
    /// The opening as it is meant to be.
    pub opening: Outline,
    /// The opening's width and height: least, meant and greatest, as the papers allow.
    pub limits: [Ranged<Length>; 2],
    /// Radius of its corners.
    pub radius: Length,
    /// The body behind it.
    pub body: Outline,
    /// The flange over it.
    pub flange: Option<Outline>,
    /// Diameter of the fixing holes.
    pub hole: Option<Length>,
    /// Where the fixing holes are, right of and above the datum corner.
    pub holes: Vec<[Length; 2]>,
    /// Where the corner drillings 5 to 8 are: lower left, upper left, lower right, upper right.
    pub corners: [[Length; 2]; 4],
    /// The marks, in the order in which they are drawn.
    pub marks: Vec<Mark>,
    /// What to measure on the lines.
    pub checks: Vec<Check>,
    /// The inch tape that the marks are rounded to.
    pub tape: Tape,
    /// What the hand is off by at most, either way, at each line.
    pub hand: Length,
    /// The plunge saw; `None` where the panel is too thick for it.
    pub saw: Option<Saw>,
    /// What lies behind the panel.
    pub behind: Vec<Behind>,
    /// What to mind.
    pub cautions: Vec<String>,
    /// What was taken for granted.
    pub assumed: Vec<String>,
}

/// Why there is nothing to mark.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoMarks {
    /// The build has no such item.
    NoItem,
    /// The item is in no bay, or its size is not known.
    NoPlace,
    /// It is not said which panel the cut-out is in.
    NoPanel,
    /// The panel closes another bay than the one the item is in.
    OtherBay,
    /// The papers of the part give no cut-out.
    NoCutout,
}

impl NoMarks {
    /// What is missing, and what to add.
    pub const fn words(&self) -> &'static str {
        match self {
            Self::NoItem => "there is no such item in the build",
            Self::NoPlace => {
                "the item has no known size or place: give it place = { in = \"the bay\" }"
            }
            Self::NoPanel => {
                "the item does not say which panel its cut-out is in: add panel = \"its name\""
            }
            Self::OtherBay => "the item's panel closes another bay than the one the item is in",
            Self::NoCutout => {
                "the papers of its part give no cut-out: add cutout = { width = \"482 mm +2/-1\", height = \"787 mm +2/-1\" }"
            }
        }
    }
}

/// The diameter of a usual plunge saw's blade.
pub const BLADE: Length = Length::m(0.16);

/// Half the length of the slot that a round blade cuts at a depth: c \[m\].
///
/// **Formula**: c = √(r² − (r − h)²), half the chord that lies r − h from the blade's middle.
/// **Arguments**: the blade's diameter 2·r \[m\], > 0; h, how deep it is set \[m\], 0 … r.
/// **Validity**: a blade that stands square to the sheet.
/// **Errors**: `None` outside of the arguments' ranges.
/// **Source**: Pythagoras; Euclid III.35.
///
/// **Example**: a blade of 100 mm set 10 mm deep; the triangle of sides 3, 4 and 5.
/// ```
/// use spile_quantity::Length;
/// let half = spile_fit::half_chord(Length::mm(100.0), Length::mm(10.0)).unwrap();
/// assert!((half.in_mm() - 30.0).abs() < 1e-9);
/// assert_eq!(spile_fit::half_chord(Length::mm(100.0), Length::mm(60.0)), None);
/// ```
pub fn half_chord(diameter: Length, depth: Length) -> Option<Length> {
    let (radius_m, depth_m) = (diameter.in_m() / 2.0, depth.in_m());
    let within = radius_m > 0.0 && (0.0..=radius_m).contains(&depth_m);
    within.then(|| Length::m((radius_m * radius_m - (radius_m - depth_m).powi(2)).sqrt()))
}

/// The marks of an item's cut-out on its panel.
///
/// The opening as it results between two marks is never smaller than its least size nor larger
/// than its greatest, with the hand's error at both lines; the saw's side runs along the line, so
/// that the whole kerf, however wide, falls into the waste.
///
/// # Errors
/// What the build lacks to mark the item out.
pub fn mark_out(build: &Build, item: &str) -> Result<MarkOut, NoMarks> {
    let (name, known) = build.items.get_key_value(item).ok_or(NoMarks::NoItem)?;
    let panel =
        known.panel.as_ref().and_then(|panel| build.panels.get(panel)).ok_or(NoMarks::NoPanel)?;
    let cutout = known.part.cutout.as_ref().ok_or(NoMarks::NoCutout)?;
    let bay = known.place.as_ref().and_then(|place| place.bay.as_ref()).ok_or(NoMarks::NoPlace)?;
    if panel.closes != *bay {
        return Err(NoMarks::OtherBay);
    }
    let stage = Stage::new(build);
    let (mut assumed, mut of_things) = (Vec::new(), Vec::new());
    let room = stage.room(bay).ok_or(NoMarks::NoPlace)?;
    let (things, body) = (
        stage.things(room, &mut of_things),
        stage.body(room, name, known, &mut assumed).ok_or(NoMarks::NoPlace)?,
    );
    let case = Case {
        build,
        room,
        name,
        item: known,
        body: &body,
        things: &things,
        measures: &stage.measures,
    };
    let cut = Cut::of(&case).ok_or(NoMarks::NoPanel)?;
    // How other things stand matters here where they lie behind the cut, or may.
    let behind_it = cut.behind(&case, |_| true);
    assumed.extend(of_things.into_iter().filter(|note| {
        let is_named = |thing: &&Thing<'_>| note.split(' ').any(|word| word == thing.name);
        note.ends_with("it is left out.") || behind_it.iter().any(is_named)
    }));

    let hand = PRACTICE.marking.likely();
    let tape = match build.tape {
        Finest::Sixteenths => Tape::Sixteenth,
        Finest::ThirtySeconds => Tape::ThirtySecond,
        Finest::SixtyFourths => Tape::SixtyFourth,
    };
    let limits = [("width", &cutout.width), ("height", &cutout.height)]
        .map(|(word, given)| tolerance(word, given, hand, &mut assumed));
    if cutout.radius.is_none() {
        assumed.push(format!(
            "The papers give no radius for the corners: {} mm is taken.",
            PRACTICE.radius.likely().in_mm()
        ));
    }
    let marking = Marking { tape, hand };
    let (opening, body_outline) =
        (outline(&case, &cut, &cut.opening), outline(&case, &cut, &body.extents));
    let radius = Length::m(cut.radius_m);
    let mut marks = edges(&marking, &opening, &limits);
    marks.extend(corner_marks(&marking, &marks, radius));
    let fixing = known.part.fixing.as_ref();
    let mut holes: Vec<[Length; 2]> = fixing
        .map(|fixing| cut.holes(&case, fixing))
        .unwrap_or_default()
        .iter()
        .map(|at| [&at[0], &at[1]].map(|sum| Length::m(stage.measures.likely_m(sum))))
        .collect();
    holes.sort_by(|a, b| {
        a[0].in_m().total_cmp(&b[0].in_m()).then(a[1].in_m().total_cmp(&b[1].in_m()))
    });
    marks.extend(hole_marks(&marking, &holes));
    let thickness = panel.size.depth.likely();
    let behind = behind(&case, &cut);
    let cautions = cautions(&case, &limits, hand, &behind, &marks);
    let facing = room.facing;
    let (right, top) = (opening.left + opening.width, opening.bottom + opening.height);
    let inner = [opening.left + radius, right - radius, opening.bottom + radius, top - radius];
    Ok(MarkOut {
        item: name.clone(),
        about: known.about.clone(),
        panel: cut.name.to_owned(),
        material: panel.material.clone(),
        size: [panel.size.width.likely(), panel.size.height.likely()],
        thickness,
        front: points(facing, Direction::Front),
        up: points(facing, Direction::Up),
        opening,
        limits,
        radius,
        body: body_outline,
        flange: known.part.flange.as_ref().map(|_| outline(&case, &cut, &case.front())),
        hole: fixing.map(|fixing| fixing.hole.likely()),
        holes,
        corners: [
            [inner[0], inner[2]],
            [inner[0], inner[3]],
            [inner[1], inner[2]],
            [inner[1], inner[3]],
        ],
        checks: checks(&marks, &limits),
        marks,
        tape,
        hand,
        saw: saw(thickness),
        behind,
        cautions,
        assumed,
    })
}

/// What the papers allow an opening to be. Papers without a tolerance are taken to mean at least
/// that much, and no more over it than a hand needs.
fn tolerance(
    word: &str,
    given: &Given<Length>,
    hand: Length,
    assumed: &mut Vec<String>,
) -> Ranged<Length> {
    let value = given.value;
    if !value.is_exact() {
        return value;
    }
    let high = value.likely + hand * 4.0;
    assumed.push(format!(
        "The papers give the cut-out's {word} no tolerance: {} mm to {} mm is taken.",
        value.likely.in_mm(),
        high.in_mm()
    ));
    Ranged { low: value.likely, likely: value.likely + hand * 2.0, high }
}

/// On which side of a line the opening is the smaller.
#[derive(Debug, Clone, Copy)]
enum Smaller {
    /// Further from the datum, as at a left or bottom edge.
    Beyond,
    /// Nearer to the datum.
    Before,
}

/// How lines are drawn.
struct Marking {
    tape: Tape,
    hand: Length,
}

impl Marking {
    fn mark(
        &self,
        name: String,
        what: String,
        (purpose, from, small): (Purpose, From, Smaller),
        exact: Length,
        allowed: Ranged<Length>,
    ) -> Option<Mark> {
        let whole = Tape::Millimetre.within(&allowed).filter(|at| at.error.abs() <= ON_A_WHOLE);
        let within = whole.or_else(|| Tape::HalfMillimetre.within(&allowed));
        let file = within.is_none();
        let small = match small {
            Smaller::Beyond => Tape::HalfMillimetre.up(allowed.likely),
            Smaller::Before => Tape::HalfMillimetre.down(allowed.likely),
        };
        let mm = within.or(small)?.mark;
        let inch = self.tape.within(&allowed);
        Some(Mark { name, purpose, what, from, exact, allowed, mm, file, inch })
    }
}

/// How far off a whole millimetre may be to be taken rather than a half.
const ON_A_WHOLE: Length = Length::m(0.3e-3);

/// How far off a drilled corner or a hole may be, where nothing asks for more.
const DRILLED: Length = Length::m(0.5e-3);

/// The four edges of the opening. Each may be off by half of what the papers allow the opening,
/// less the hand's error, so that any two of them keep it.
fn edges(marking: &Marking, opening: &Outline, limits: &[Ranged<Length>; 2]) -> Vec<Mark> {
    let hand = marking.hand;
    let room = limits.map(|limit| {
        let inward = (limit.likely - limit.low) / 2.0 - hand;
        let outward = (limit.high - limit.likely) / 2.0 - hand;
        // Tighter than a hand can mark: nothing but the exact place.
        if inward + outward < Length::m(0.0) { [Length::m(0.0); 2] } else { [inward, outward] }
    });
    let [across, up] = room;
    let (right, top) = (opening.left + opening.width, opening.bottom + opening.height);
    let low = |exact: Length, [inward, outward]: [Length; 2]| (exact - outward, exact + inward);
    let high = |exact: Length, [inward, outward]: [Length; 2]| (exact - inward, exact + outward);
    [
        ("1", "left edge", From::Left, opening.left, low(opening.left, across)),
        ("2", "right edge", From::Left, right, high(right, across)),
        ("3", "bottom edge", From::Below, opening.bottom, low(opening.bottom, up)),
        ("4", "top edge", From::Below, top, high(top, up)),
    ]
    .into_iter()
    .filter_map(|(name, what, from, exact, (least, most))| {
        let allowed = Ranged { low: least, likely: exact.max(least).min(most), high: most };
        marking.mark(
            name.to_owned(),
            what.to_owned(),
            (Purpose::Edge, from, smaller(name)),
            exact,
            allowed,
        )
    })
    .collect()
}

/// The left and the bottom edge, 1 and 3, make the opening smaller as they move away from the datum.
fn smaller(edge: &str) -> Smaller {
    if matches!(edge, "1" | "3") { Smaller::Beyond } else { Smaller::Before }
}

/// The corner drillings: no further out than the edge may be, and a little further in.
fn corner_marks(marking: &Marking, edges: &[Mark], radius: Length) -> Vec<Mark> {
    [("5, 6", "left pair"), ("7, 8", "right pair"), ("5, 7", "lower pair"), ("6, 8", "upper pair")]
        .into_iter()
        .zip(edges)
        .filter_map(|((name, what), edge)| {
            let inward = if matches!(edge.name.as_str(), "1" | "3") { radius } else { -radius };
            let exact = edge.exact + inward;
            let (a, b) = (
                exact + DRILLED * inward.in_m().signum(),
                if inward.in_m() > 0.0 { edge.allowed.low } else { edge.allowed.high } + inward,
            );
            let allowed =
                Ranged { low: a.min(b), likely: exact.max(a.min(b)).min(a.max(b)), high: a.max(b) };
            marking.mark(
                name.to_owned(),
                what.to_owned(),
                (Purpose::Corner, edge.from, smaller(&edge.name)),
                exact,
                allowed,
            )
        })
        .collect()
}

/// The columns and the rows of the fixing holes; the holes are numbered from 9, column by column.
fn hole_marks(marking: &Marking, holes: &[[Length; 2]]) -> Vec<Mark> {
    let mut marks = Vec::new();
    for (axis, from) in [(0, From::Left), (1, From::Below)] {
        let mut lines: Vec<(Length, Vec<usize>)> = Vec::new();
        for (index, hole) in holes.iter().enumerate() {
            match lines.iter_mut().find(|(at, _)| (*at - hole[axis]).abs() < Length::mm(0.05)) {
                Some((_, on)) => on.push(index + FIRST_HOLE),
                None => lines.push((hole[axis], vec![index + FIRST_HOLE])),
            }
        }
        lines.sort_by(|a, b| a.0.in_m().total_cmp(&b.0.in_m()));
        let many = lines.len();
        for (place, (exact, on)) in lines.into_iter().enumerate() {
            let name = on.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
            let what = line_words(from, place, many);
            let allowed = Ranged { low: exact - DRILLED, likely: exact, high: exact + DRILLED };
            marks.extend(marking.mark(
                name,
                what,
                (Purpose::Hole, from, Smaller::Before),
                exact,
                allowed,
            ));
        }
    }
    marks
}

/// The number of the first fixing hole: after four edges and four corners.
pub const FIRST_HOLE: usize = 9;

fn line_words(from: From, place: usize, many: usize) -> String {
    let words = match (from, place) {
        (From::Left, _) if many == 1 => "the one column",
        (From::Below, _) if many == 1 => "the one row",
        (From::Left, 0) => "left column",
        (From::Left, place) if place + 1 == many => "right column",
        (From::Below, 0) => "lowest row",
        (From::Below, place) if place + 1 == many => "highest row",
        (From::Left, _) if many == 3 => "middle column",
        (From::Below, _) if many == 3 => "middle row",
        (From::Left, place) => return format!("column {}", place + 1),
        (From::Below, place) => return format!("row {}", place + 1),
    };
    words.to_owned()
}

/// Width, height and both diagonals, on the lines.
fn checks(marks: &[Mark], limits: &[Ranged<Length>; 2]) -> Vec<Check> {
    let edge =
        |name: &str| marks.iter().find(|mark| mark.purpose == Purpose::Edge && mark.name == name);
    let (Some(left), Some(right), Some(bottom), Some(top)) =
        (edge("1"), edge("2"), edge("3"), edge("4"))
    else {
        return Vec::new();
    };
    let between = |a: &Mark, b: &Mark| b.mm.length() - a.mm.length();
    let inches = |a: &Mark, b: &Mark| Some(b.inch?.mark.length() - a.inch?.mark.length());
    let sides = [between(left, right), between(bottom, top)];
    let diagonal = |[across, up]: [Length; 2]| Length::m(across.in_m().hypot(up.in_m()));
    let likely = diagonal(sides);
    let half = PRACTICE.square.likely() / 2.0;
    vec![
        Check {
            what: "width between 1 and 2".to_owned(),
            mm: sides[0],
            inch: inches(left, right),
            allowed: limits[0],
        },
        Check {
            what: "height between 3 and 4".to_owned(),
            mm: sides[1],
            inch: inches(bottom, top),
            allowed: limits[1],
        },
        Check {
            what: "corner to corner, both ways".to_owned(),
            mm: likely,
            inch: inches(left, right)
                .zip(inches(bottom, top))
                .map(|(across, up)| diagonal([across, up])),
            allowed: Ranged { low: likely - half, likely, high: likely + half },
        },
    ]
}

/// A box in the bay's axes, as it lies on the panel's face.
fn outline(case: &Case<'_, '_>, cut: &Cut<'_>, extents: &Extents) -> Outline {
    let facing = case.room.facing;
    let length = |sum: &Sum| Length::m(case.likely_m(sum));
    let side = |along: Direction| {
        let near = cut.datum_to(extents.face(along.opposite()), along);
        let far = cut.datum_to(extents.face(along), along);
        (length(&near), length(&(&far - &near)))
    };
    let ((left, width), (bottom, height)) = (side(facing.right), side(facing.up));
    Outline { left, bottom, width, height }
}

fn behind(case: &Case<'_, '_>, cut: &Cut<'_>) -> Vec<Behind> {
    cut.behind(case, |what| what != Hindrance::Obstacle)
        .into_iter()
        .map(|thing: &Thing<'_>| Behind {
            what: thing_words(thing),
            keep_out: thing.kind == Kind::Fixed(Hindrance::KeepOut),
            outline: outline(case, cut, &thing.extents),
            from_opening: Length::m(clean_m(
                Apart::of(case, cut, thing).at_m(&|sum| case.likely_m(sum)),
            )),
        })
        .collect()
}

fn thing_words(thing: &Thing<'_>) -> String {
    if thing.what == thing.name {
        thing.name.to_owned()
    } else {
        format!("{} ({})", thing.name, thing.what)
    }
}

fn saw(thickness: Length) -> Option<Saw> {
    let through = PRACTICE.blade_through.likely();
    let face = half_chord(BLADE, thickness + through)?;
    let back = half_chord(BLADE, through)?;
    Some(Saw { blade: BLADE, through, ahead: face - back, stop: face, kerf: PRACTICE.kerf.value })
}

fn cautions(
    case: &Case<'_, '_>,
    limits: &[Ranged<Length>; 2],
    hand: Length,
    behind: &[Behind],
    marks: &[Mark],
) -> Vec<String> {
    let mut said = vec!["Before the first hole look at what is behind the panel: cables, pipes, tank, the vehicle's own lines. Never drill blind.".to_owned()];
    for thing in behind.iter().filter(|thing| thing.keep_out) {
        said.push(format!(
            "Keep out: {} lies behind the panel, {} mm from the opening.",
            thing.what,
            crate::need::mm(thing.from_opening.in_m())
        ));
    }
    for thing in behind.iter().filter(|thing| thing.from_opening < Length::m(0.0)) {
        said.push(format!("Do not cut: the opening crosses {}.", thing.what));
    }
    if case
        .item
        .panel
        .as_ref()
        .and_then(|panel| case.build.panels.get(panel))
        .is_some_and(|panel| panel.removable)
    {
        said.push("Take the panel off, and mark and cut it on trestles, its face up.".to_owned());
    }
    if limits.iter().any(|limit| limit.high - limit.low < hand * 4.0)
        || marks.iter().any(|mark| mark.file)
    {
        said.push(
            "The papers allow less than a hand can mark: cut inside the line and file to fit."
                .to_owned(),
        );
    }
    if marks.iter().any(|mark| mark.inch.is_none()) {
        said.push("Where no inch is given, no mark of that tape lies within what is allowed: use the millimetre.".to_owned());
    }
    said
}

const fn places(facing: crate::facing::Facing) -> [(Direction, Points); 6] {
    [
        (facing.right, Points::Right),
        (facing.right.opposite(), Points::Left),
        (facing.up, Points::Up),
        (facing.up.opposite(), Points::Down),
        (facing.out, Points::Outward),
        (facing.out.opposite(), Points::Inward),
    ]
}

/// Where a direction of the vehicle lies on a face.
fn points(facing: crate::facing::Facing, direction: Direction) -> Points {
    places(facing)
        .into_iter()
        .find(|(side, _)| *side == direction)
        .map_or(Points::Up, |(_, points)| points)
}
