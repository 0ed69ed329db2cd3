//! The build as the questions see it: every reference resolved, every number with its basis.

use std::collections::BTreeMap;
use std::sync::Arc;

use spile_answer::Given;
use spile_quantity::{
    Angle, Area, CableSize, Charge, Conductance, Conductivity, Current, Energy, Flow, Length, Mass,
    Power, Pressure, Resistance, Share, Temperature, Time, Voltage, Volume,
};

use crate::axle::{Axles, LoadPlaces};
use crate::file::{
    Blows, Chemistry, Cooling, Cover, Direction, FuseFamily, Hinge, LeadsTo, PartKind,
    SourceKindWord, Tape, TiedTo, VehicleKind, Which, Words,
};
use crate::reading::Reading;

/// Things by their names, in the order of the names.
pub type Named<T> = BTreeMap<String, T>;

/// A vehicle as fitted out, with or without a job done.
#[derive(Debug, Clone, PartialEq)]
pub struct Build {
    /// What the vehicle is, in a line; empty where nothing is said.
    pub about: String,
    /// What marks are rounded to besides millimetres.
    pub tape: Tape,
    /// Whose words are printed.
    pub words: Words,
    /// Nominal voltage of the house circuit.
    pub system: Given<Voltage>,
    /// The vehicle itself.
    pub vehicle: Vehicle,
    /// The body or frame as an electrical return.
    pub body: Body,
    /// Spaces that things go into.
    pub bays: Named<Bay>,
    /// What is in the way, frame members and keep-out zones among it.
    pub obstacles: Named<Obstacle>,
    /// Sheets that close the opening of a bay.
    pub panels: Named<Panel>,
    /// Things in the vehicle.
    pub items: Named<Item>,
    /// Cables to items.
    pub runs: Named<Run>,
    /// The fuse block.
    pub block: Block,
    /// The house battery; `None` where nothing is said of it.
    pub bank: Option<Bank>,
    /// What charges the bank.
    pub sources: Named<Source>,
    /// What the answers are judged against.
    pub wants: Wants,
    /// Load states.
    pub loads: Named<LoadState>,
    /// Where that which is aboard sits, in every load state.
    pub load_places: LoadPlaces,
    /// The corner states that every build has.
    pub corners: Corners,
    /// How the vehicle is used over days.
    pub trips: Named<Trip>,
    /// Readings of a meter along a run.
    pub readings: Named<Reading>,
    /// Readings of a weighbridge.
    pub weighings: Named<Weighing>,
    /// Where this is a build before or after open jobs: the build as it stands, of which all
    /// readings were taken.
    pub stands: Option<Arc<Build>>,
}

/// The vehicle: what was said of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Vehicle {
    /// Its kind; a van where nothing is said.
    pub kind: VehicleKind,
    /// Outside length, width and height.
    pub outside: [Option<Given<Length>>; 3],
    /// Height of the inside floor above the ground.
    pub floor: Option<Given<Length>>,
    /// From axle to axle, or from coupling to axle.
    pub wheelbase: Option<Given<Length>>,
    /// From the inside rear face forward to the rear axle.
    pub rear_axle: Option<Given<Length>>,
    /// Its axles, their limits and tyres.
    pub axles: Axles,
    /// Inside length, width and height.
    pub inside: [Option<Given<Length>>; 3],
    /// Doors and hatches.
    pub doors: Named<Door>,
}

/// A clear opening of the vehicle's shell.
#[derive(Debug, Clone, PartialEq)]
pub struct Door {
    /// Which side of the vehicle it is on.
    pub side: Option<Direction>,
    /// Clear width.
    pub width: Given<Length>,
    /// Clear height.
    pub height: Given<Length>,
}

/// A size as one faces the thing.
#[derive(Debug, Clone, PartialEq)]
pub struct Size {
    /// From side to side of its face.
    pub width: Given<Length>,
    /// From bottom to top.
    pub height: Given<Length>,
    /// From its face back.
    pub depth: Given<Length>,
}

/// Where a thing's side is, along one axis of the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub enum Anchor {
    /// From the rear, the right or the floor.
    Low(Given<Length>),
    /// From the front, the left or the top.
    High(Given<Length>),
    /// Nothing is said: in the middle, or where the thing's kind has it.
    Unsaid,
}

/// Where a thing is.
#[derive(Debug, Clone, PartialEq)]
pub struct Place {
    /// The bay whose faces the distances are taken from; the vehicle's inside where `None`.
    pub bay: Option<String>,
    /// The item it stands on.
    pub on: Option<String>,
    /// Which way its face looks; `None` where nothing is said.
    pub faces: Option<Direction>,
    /// Along the vehicle: low is the rear.
    pub x: Anchor,
    /// Across the vehicle: low is the right.
    pub y: Anchor,
    /// Upwards: low is the floor.
    pub z: Anchor,
}

/// Something measured at a height above the bay's floor.
#[derive(Debug, Clone, PartialEq)]
pub struct AtHeight {
    /// The height above the bay's floor.
    pub height: Length,
    /// What was measured there.
    pub value: Given<Length>,
}

/// A space that things go into.
#[derive(Debug, Clone, PartialEq)]
pub struct Bay {
    /// What it is, in a line; empty where nothing is said.
    pub about: String,
    /// Which way its opening looks.
    pub opens: Direction,
    /// Clear size as one faces the opening.
    pub size: Size,
    /// Where it is in the vehicle.
    pub place: Place,
    /// Depth at several heights, by height; empty where the wall behind was not taken.
    pub depths: Vec<AtHeight>,
    /// Width at several heights, by height.
    pub widths: Vec<AtHeight>,
    /// The two diagonals of the opening.
    pub diagonals: Option<[Given<Length>; 2]>,
    /// The clear opening's width and height, where it is smaller than the space behind.
    pub opening: Option<[Given<Length>; 2]>,
    /// Free space in front of the opening.
    pub in_front: Option<Given<Length>>,
    /// Heat let through for each kelvin between the bay and the cabin.
    pub conductance: Option<Given<Conductance>>,
    /// How air goes through it; `None` where nothing is said.
    pub air: Option<BayAir>,
}

/// How air goes through a bay.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BayAir {
    /// The opening that lets cool air in; `None` where nothing is said.
    pub inlet: Option<Vent>,
    /// The opening that lets warm air out; `None` where nothing is said.
    pub outlet: Option<Vent>,
    /// The way round from one opening to the other, outside the bay.
    pub apart: Option<Given<Length>>,
    /// Its fan.
    pub fan: Option<Fan>,
}

/// An opening for air.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Vent {
    /// Free area; nothing where there is no opening.
    pub area: Option<Given<Area>>,
    /// Height of its middle above the bay's floor.
    pub above: Option<Given<Length>>,
    /// What covers it.
    pub cover: Option<Cover>,
    /// Where it leads.
    pub leads_to: Option<LeadsTo>,
}

/// A fan that moves the air of a bay.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Fan {
    /// Its flow without anything in its way.
    pub flow: Option<Given<Flow>>,
    /// Its pressure at no flow.
    pub pressure: Option<Given<Pressure>>,
    /// The opening it stands at.
    pub at: Option<Which>,
    /// Which way it blows.
    pub blows: Option<Blows>,
}

/// What a part turns into heat.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PartHeat {
    /// What comes out of it for what goes in.
    pub efficiency: Option<Given<Share>>,
    /// What it takes while it is on and nothing is asked of it.
    pub idle: Option<Given<Power>>,
}

/// The shape of a thing that is fixed to the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A box: its size along the vehicle, across it, and upwards.
    Box([Given<Length>; 3]),
    /// A profile carried along the third axis.
    Profile {
        /// The two axes of the points (0 along, 1 across, 2 up), and for each whether distances
        /// run from its low face.
        axes: [(usize, bool); 2],
        /// The corners \[m\], round the shape.
        points: Vec<[f64; 2]>,
        /// How far off each corner may be.
        tolerance: Given<Length>,
        /// How far the shape is carried along the third axis.
        carried: Given<Length>,
    },
}

/// What an obstacle is to somebody with a saw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hindrance {
    /// It is in the way.
    Obstacle,
    /// A member of the frame.
    Frame {
        /// It carries a belted seat or a belt anchorage and is never cut.
        belt: bool,
    },
    /// Nobody may drill or cut there.
    KeepOut,
}

/// What is in the way.
#[derive(Debug, Clone, PartialEq)]
pub struct Obstacle {
    /// What it is in plain words: `wheel arch`, `steel tube`, `brake line`.
    pub what: String,
    /// What it is to somebody with a saw.
    pub hindrance: Hindrance,
    /// Its shape.
    pub shape: Shape,
    /// Where it is.
    pub place: Place,
}

/// A sheet that closes the opening of a bay.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// The bay it closes.
    pub closes: String,
    /// What it is of; empty where nothing is said.
    pub material: String,
    /// Width and height as one faces it; depth is its thickness.
    pub size: Size,
    /// Where it is, from faces of its bay.
    pub place: Place,
    /// Whether it can be taken off.
    pub removable: bool,
}

/// A thing in the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// What it is, in a line: its own, else its part's, else its name.
    pub about: String,
    /// The kind of thing it is.
    pub part: Part,
    /// Where it is; `None` where nothing is said.
    pub place: Option<Place>,
    /// The panel that its cut-out is in.
    pub panel: Option<String>,
    /// The bay that its condenser stands in, where that is another than its own.
    pub condenser_in: Option<String>,
    /// What it weighs, empty.
    pub mass: Option<Given<Mass>>,
    /// What it holds when the vehicle is full.
    pub contents: Option<Given<Mass>>,
    /// How long it runs in a day; of an inverter, at its full load.
    pub hours: Option<Given<Time>>,
    /// Of an inverter: how long it is switched on in a day.
    pub on: Option<Given<Time>>,
    /// Whether it can be taken out without tools to make way.
    pub removable: bool,
    /// How it is held; `None` where nothing is said.
    pub held: Option<crate::Held>,
}

/// A kind of thing, with the figures from its papers.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Its name.
    pub name: String,
    /// What kind of thing it is.
    pub kind: PartKind,
    /// Its body as one faces it.
    pub size: Option<Size>,
    /// The rim that rests on the panel.
    pub flange: Option<Flange>,
    /// The hole that its papers ask for.
    pub cutout: Option<Cutout>,
    /// The screws that hold it.
    pub fixing: Option<Fixing>,
    /// Space that its papers ask for.
    pub air: Air,
    /// Space for plug, hose or latch.
    pub service: Service,
    /// Its door or lid.
    pub door: Option<DoorSwing>,
    /// How far its drawer comes out.
    pub drawer: Option<Given<Length>>,
    /// What it takes from the house circuit.
    pub power: PowerFigures,
    /// How it is cooled; `None` of a thing that is not cooled.
    pub cooling: Option<Cooling>,
    /// Nominal volume of the cold space.
    pub volume: Option<Given<Volume>>,
    /// Thickness of the insulation.
    pub insulation: Option<Given<Length>>,
    /// Conductivity of the insulation.
    pub conductivity: Option<Given<Conductivity>>,
    /// What its papers say it uses in a day.
    pub consumption: Vec<Consumption>,
    /// The warmest surroundings its papers allow.
    pub warmest: Option<Given<Temperature>>,
    /// What it turns into heat.
    pub heat: PartHeat,
}

/// The rim that rests on the panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Flange {
    /// Its whole width.
    pub width: Given<Length>,
    /// Its whole height.
    pub height: Given<Length>,
    /// How far it stands out in front of the panel.
    pub thickness: Option<Given<Length>>,
}

/// The hole that the papers ask for.
#[derive(Debug, Clone, PartialEq)]
pub struct Cutout {
    /// Its width; the bounds are the maker's.
    pub width: Given<Length>,
    /// Its height; the bounds are the maker's.
    pub height: Given<Length>,
    /// Radius of its corners.
    pub radius: Option<Given<Length>>,
}

/// The screws that hold a part.
#[derive(Debug, Clone, PartialEq)]
pub struct Fixing {
    /// Diameter of the screws.
    pub screw: Given<Length>,
    /// Diameter of the holes; the screw's where nothing is said.
    pub hole: Given<Length>,
    /// The holes, right of and above the body's lower left corner as one faces it.
    pub holes: Vec<[Length; 2]>,
}

/// Space that the papers ask for on each side.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Air {
    /// Behind it.
    pub behind: Option<Given<Length>>,
    /// On its left and on its right.
    pub beside: Option<Given<Length>>,
    /// Above it.
    pub above: Option<Given<Length>>,
    /// Below it.
    pub below: Option<Given<Length>>,
    /// Smallest area of the opening that lets cool air in.
    pub inlet: Option<Given<Area>>,
    /// Smallest area of the opening that lets warm air out.
    pub outlet: Option<Given<Area>>,
}

/// Space for plug, hose or latch.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Service {
    /// Behind it.
    pub behind: Option<Given<Length>>,
    /// On its left.
    pub left: Option<Given<Length>>,
    /// On its right.
    pub right: Option<Given<Length>>,
    /// Above it.
    pub above: Option<Given<Length>>,
    /// Cable that comes out with it.
    pub tail: Option<Given<Length>>,
}

/// A door or lid that swings.
#[derive(Debug, Clone, PartialEq)]
pub struct DoorSwing {
    /// The side it is hinged on.
    pub hinge: Hinge,
    /// How far it must open.
    pub angle: Given<Angle>,
    /// How thick it is.
    pub thickness: Given<Length>,
}

/// What a part takes from the house circuit.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PowerFigures {
    /// Nominal voltage.
    pub volts: Option<Given<Voltage>>,
    /// While it runs.
    pub running: Option<Given<Power>>,
    /// As it starts.
    pub start: Option<Given<Current>>,
    /// Below this it switches itself off.
    pub cut_out: Option<Given<Voltage>>,
    /// The greatest fuse its papers allow.
    pub fuse: Option<Given<Current>>,
}

/// What a cold box uses in a day.
#[derive(Debug, Clone, PartialEq)]
pub struct Consumption {
    /// Temperature of the surroundings.
    pub ambient: Given<Temperature>,
    /// Temperature inside.
    pub inside: Given<Temperature>,
    /// Used in 24 hours.
    pub per_day: Given<Energy>,
}

/// One conductor.
#[derive(Debug, Clone, PartialEq)]
pub struct Cable {
    /// Its size.
    pub section: CableSize,
    /// Where the size was read, or why it was assumed.
    pub section_source: String,
    /// Whether the size was assumed.
    pub section_assumed: bool,
    /// Its length, one way.
    pub length: Given<Length>,
    /// What its insulation stands.
    pub insulation: Given<Temperature>,
    /// The warmest surroundings along its way.
    pub ambient: Given<Temperature>,
    /// How many current-carrying conductors lie together.
    pub bundle: u32,
}

/// The way back of a run.
#[derive(Debug, Clone, PartialEq)]
pub enum Return {
    /// By a cable to the negative bus.
    Cable(Cable),
    /// Through the body.
    Body {
        /// From the appliance to the stud.
        cable: Cable,
        /// The stud on the body.
        stud: Given<Resistance>,
    },
}

/// A cable to an item, there and back.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The item it goes to.
    pub to: String,
    /// The feed.
    pub feed: Cable,
    /// Joints of the feed: crimps and plug together.
    pub joints: Given<Resistance>,
    /// What switch is in its feed, in words; `None` where none is said.
    pub switch: Option<String>,
    /// The return.
    pub back: Return,
    /// Whether the return was assumed to be like the feed.
    pub back_assumed: bool,
    /// Which way it goes, in words; empty where nothing is said.
    pub along: String,
    /// The way of the fuse block that feeds it; `None` where none was given.
    pub way: Option<Way>,
}

/// One position of the fuse block.
#[derive(Debug, Clone, PartialEq)]
pub struct Way {
    /// Its number.
    pub number: String,
    /// Rated current of its fuse; `None` where nothing is said.
    pub fuse: Option<Given<Current>>,
    /// Family of its fuse.
    pub family: FuseFamily,
}

/// A fuse outside the block.
#[derive(Debug, Clone, PartialEq)]
pub struct Fuse {
    /// Its rated current; `None` where nothing is said.
    pub rating: Option<Given<Current>>,
    /// Its family; `None` where nothing is said.
    pub family: Option<FuseFamily>,
    /// Its resistance with its holder.
    pub resistance: Given<Resistance>,
    /// What it can break.
    pub breaks: Option<Given<Current>>,
    /// Cable between the post and the fuse.
    pub from_post: Option<Given<Length>>,
}

/// The fuse block.
#[derive(Debug, Clone, PartialEq)]
pub struct Block {
    /// How many ways it has.
    pub count: Option<u32>,
    /// The greatest current through the whole block.
    pub total: Option<Given<Current>>,
    /// The greatest current of one way.
    pub per_way: Option<Given<Current>>,
    /// The cable from the bank.
    pub feed: Cable,
    /// The cable back to the bank.
    pub back: Cable,
    /// Bus, shunt and isolator together.
    pub joints: Given<Resistance>,
    /// Temperature where it is.
    pub ambient: Given<Temperature>,
    /// Whether feed and return were assumed.
    pub assumed: bool,
}

/// The house battery.
#[derive(Debug, Clone, PartialEq)]
pub struct Bank {
    /// Its chemistry.
    pub kind: Chemistry,
    /// Whether the chemistry was assumed.
    pub kind_assumed: bool,
    /// How many batteries are in parallel.
    pub count: u32,
    /// The bay it stands in; `None` where none is said.
    pub bay: Option<String>,
    /// Capacity of each; `None` where nothing is said.
    pub capacity: Option<Given<Charge>>,
    /// The hour rate of that capacity.
    pub hour_rate: Option<Time>,
    /// Internal resistance of each.
    pub resistance: Option<Given<Resistance>>,
    /// The greatest current that the electronics of each allow.
    pub limit: Option<Given<Current>>,
    /// Whether a battery monitor counts through a shunt at the negative post.
    pub shunt: bool,
    /// Another battery on the same posts, which is not counted in.
    pub beside: Option<Beside>,
    /// The main fuse.
    pub fuse: Fuse,
    /// Whether the main fuse was assumed.
    pub fuse_assumed: bool,
}

/// Another battery on the posts of the bank.
#[derive(Debug, Clone, PartialEq)]
pub struct Beside {
    /// Its chemistry.
    pub kind: Chemistry,
    /// Its capacity; `None` where nothing is said.
    pub capacity: Option<Given<Charge>>,
}

/// The body or frame as an electrical return.
#[derive(Debug, Clone, PartialEq)]
pub struct Body {
    /// The sheet or frame itself.
    pub resistance: Given<Resistance>,
    /// The stud that ties it to the negative bus.
    pub stud: Given<Resistance>,
    /// The cable from that stud to the bus.
    pub cable: Cable,
    /// Whether parts of the frame are insulated from each other.
    pub insulated: bool,
    /// Where it is tied to the bank's negative; `None` where nothing is said.
    pub tied_to: Option<TiedTo>,
}

/// What charges the bank.
#[derive(Debug, Clone, PartialEq)]
pub struct Source {
    /// Its kind; `None` where nothing is said.
    pub kind: Option<SourceKindWord>,
    /// The greatest charging current.
    pub current: Option<Given<Current>>,
    /// Rated power of solar panels.
    pub power: Option<Given<Power>>,
}

/// What the answers are judged against.
#[derive(Debug, Clone, PartialEq)]
pub struct Wants {
    /// How many people eat from it.
    pub people: u32,
    /// How long they stay away from shops.
    pub away: Given<Time>,
    /// Cold food each of them needs in a day.
    pub litres: Given<Volume>,
    /// Acceptable time without power in a year.
    pub without_power: Given<Time>,
    /// Temperature wanted in the fridge.
    pub inside: Given<Temperature>,
    /// Which of these were not said, in words.
    pub assumed: Vec<String>,
}

/// What is aboard.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadState {
    /// Water in the tanks.
    pub water: Option<Given<Volume>>,
    /// Everybody aboard, together.
    pub people: Option<Given<Mass>>,
    /// Fuel in the tank.
    pub fuel: Option<Given<Volume>>,
    /// Food and drink.
    pub food: Option<Given<Mass>>,
}

/// The corner states that several questions share.
#[derive(Debug, Clone, PartialEq)]
pub struct Corners {
    /// The cabin on a hot day.
    pub hot_cabin: Given<Temperature>,
    /// The cabin on an ordinary day.
    pub mild_cabin: Given<Temperature>,
    /// State of charge of a low battery.
    pub low_charge: Given<Share>,
}

/// How the vehicle is used over days.
#[derive(Debug, Clone, PartialEq)]
pub struct Trip {
    /// What it is, in a line; empty where nothing is said.
    pub about: String,
    /// Latitude, north positive.
    pub latitude: Option<Given<Angle>>,
    /// Longitude, east positive.
    pub longitude: Option<Given<Angle>>,
    /// The months, 1 to 12.
    pub months: Vec<u32>,
    /// How long one stays in a place.
    pub stays: Option<Given<Time>>,
    /// How long one drives between two places.
    pub drives: Option<Given<Time>>,
    /// Share of the days on hook-up.
    pub hook_up: Option<Given<Share>>,
    /// How many people.
    pub people: Option<u32>,
}

/// Readings of a weighbridge.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighing {
    /// When.
    pub date: Option<String>,
    /// The load state it was in.
    pub state: Option<String>,
    /// Front, rear, left and right.
    pub readings: [Option<Given<Mass>>; 4],
    /// Front left, front right, rear left and rear right, where each wheel was weighed.
    pub corners: [Option<Given<Mass>>; 4],
}
