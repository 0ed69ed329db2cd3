//! What a build's files may hold, key by key, as it stands in them.
//!
//! Each record mirrors one table of the files; its fields' comments are what the JSON Schema
//! says of them. Nothing here is checked against anything else: that is done when the typed
//! [`Build`](crate::Build) is made.

mod air;
mod axle;
mod circuit;
mod hold;
mod job;
mod life;
mod part;
mod reading;
mod space;

pub use air::{BayAirFile, Blows, Cover, FanFile, HeatFile, LeadsTo, VentFile, Which};
pub use axle::{
    AxleTyresFile, LimitsFile, LoadPlacesFile, MiddleFile, TagFile, TowingFile, TyresFile,
    UnladenFile,
};
pub use circuit::{
    BankFile, BesideFile, BlockFile, BodyFile, CableFile, FuseFamily, FuseFile, ReturnFile,
    ReturnPath, RunFile, SourceKindWord, SourceSupplyFile, TiedTo, WayFile,
};
pub use hold::{HeldBy, HeldFace, HeldFile, HeldInto, LatchFile};
pub use job::{AddFile, ChangeFile, JobFile, MoveFile, OptionFile, Raw, RemoveFile};
pub use life::{CornerFile, LoadFile, StatesFile, TripFile, WantsFile, WeighingFile};
pub use part::{
    AirFile, Chemistry, ConsumptionFile, Cooling, CutoutFile, DoorSwingFile, DrawerFile,
    FixingFile, FlangeFile, Hinge, PartFile, PartKind, PowerFile, ServiceFile,
};
pub use reading::{Behaviour, ItemState, MeterFile, ReadingFile};
pub use space::{
    BayFile, Direction, DoorFile, FrameFile, InsideFile, ItemFile, KeepOutFile, MeasuredAt,
    ObstacleFile, PanelFile, PlaceFile, ProfileFile, SizeFile, SpanFile, Tape, VehicleFile,
    VehicleKind, Words,
};

use spile_quantity::{Voltage, Written};

pub use crate::date::Day;

use crate::read::{Keyed, Said, record};

/// A quantity of the files, which may be missing.
pub type Q<T> = Option<Said<Written<T>>>;
/// A text of the files, which may be missing.
pub type Text = Option<Said<String>>;

record! {
    /// A build: the vehicle as it stands.
    pub struct BuildFile ("a build") {
        /// What the vehicle is, in a line.
        about: Text,
        /// What marks are rounded to besides millimetres: `1/16 in`, `1/32 in` or `1/64 in`.
        tape: Option<Said<Tape>>,
        /// Which words are printed where UK and US differ: `UK` or `US`.
        words: Option<Said<Words>>,
        /// Nominal voltage of the house circuit: `12 V` or `24 V`.
        system: Q<Voltage>,
        /// The vehicle itself.
        vehicle: Option<Said<VehicleFile>>,
        /// The body or frame as an electrical return.
        body: Option<Said<BodyFile>>,
        /// Spaces that things go into.
        bays: Keyed<BayFile>,
        /// What is in the way: wheel arches, ribs, filler pipes.
        obstacles: Keyed<ObstacleFile>,
        /// Sheets fixed to the frame.
        panels: Keyed<PanelFile>,
        /// Members of the frame.
        frame: Keyed<FrameFile>,
        /// Where nobody may drill or cut: brake lines, fuel lines, tanks, cables.
        keep_out: Keyed<KeepOutFile>,
        /// Kinds of thing, with the figures from their papers; each may have a file of its own in parts/.
        parts: Keyed<PartFile>,
        /// Things in the vehicle.
        items: Keyed<ItemFile>,
        /// Lengths of cable, each a feed and a return.
        runs: Keyed<RunFile>,
        /// The fuse block and its ways.
        block: Option<Said<BlockFile>>,
        /// The house battery.
        bank: Option<Said<BankFile>>,
        /// What charges the bank.
        sources: Keyed<SourceSupplyFile>,
        /// What the answers are judged against.
        wants: Option<Said<WantsFile>>,
        /// Load states and corner states, shared by all questions.
        states: Option<Said<StatesFile>>,
        /// How the vehicle is used over days.
        trips: Keyed<TripFile>,
        /// Readings of a meter along a run.
        readings: Keyed<ReadingFile>,
        /// Readings of a weighbridge.
        weighings: Keyed<WeighingFile>,
    }
}
