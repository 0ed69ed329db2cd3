//! A planned change: what it adds, removes, moves and changes.

use schemars::{Schema, SchemaGenerator, json_schema};

use super::Text;
use super::circuit::{RunFile, SourceSupplyFile, WayFile};
use super::life::TripFile;
use super::part::PartFile;
use super::reading::ReadingFile;
use super::space::{BayFile, FrameFile, ItemFile, KeepOutFile, ObstacleFile, PanelFile};
use crate::date::Day;
use crate::kind::Kind;
use crate::node::Node;
use crate::read::{Keyed, Read, Reader, Said, record};

/// Any value of a build's files, kept as it stands until it is put into the build.
#[derive(Debug, Clone, PartialEq)]
pub struct Raw(pub(crate) Node);

impl Read for Raw {
    fn read(node: &Node, _: &mut Reader) -> Option<Self> {
        Some(Self(node.clone()))
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({})
    }
    fn kind() -> Kind {
        Kind::Any
    }
}

record! {
    /// A job: one planned change to the vehicle.
    pub struct JobFile ("a job") {
        /// What it is, in a line.
        about: Text,
        /// Jobs that come before it.
        after: Vec<Said<String>>,
        /// When it was finished, as 2026-03-14. A finished job is part of the build as it stands.
        done: Option<Said<Day>>,
        /// What it takes out.
        remove: Vec<Said<RemoveFile>>,
        /// What it puts elsewhere.
        r#move: Vec<Said<MoveFile>>,
        /// What it changes.
        change: Vec<Said<ChangeFile>>,
        /// What it brings.
        add: Option<Said<AddFile>>,
        /// The option taken when none is named; without it, the first.
        choice: Text,
        /// What may be chosen between; each is done besides what the job itself says.
        options: Keyed<OptionFile>,
    }
}

record! {
    /// One option of a job.
    pub struct OptionFile ("an option") {
        /// What it is, in a line.
        about: Text,
        /// What it takes out.
        remove: Vec<Said<RemoveFile>>,
        /// What it puts elsewhere.
        r#move: Vec<Said<MoveFile>>,
        /// What it changes.
        change: Vec<Said<ChangeFile>>,
        /// What it brings.
        add: Option<Said<AddFile>>,
    }
}

record! {
    /// A thing that a job takes out.
    pub struct RemoveFile ("a removal") {
        /// The thing, by its key: `items.lidded-box`.
        what: Text,
        /// What of it is counted on, as it stands: `{ part = "lidded-32" }`.
        found: Option<Said<Raw>>,
    }
}

record! {
    /// A thing that a job puts elsewhere.
    pub struct MoveFile ("a move") {
        /// The thing, by its key: `items.lidded-box`.
        what: Text,
        /// Its place as it stands.
        found: Option<Said<Raw>>,
        /// Its new place.
        to: Option<Said<Raw>>,
    }
}

record! {
    /// A value that a job changes.
    pub struct ChangeFile ("a change") {
        /// The value, by its key: `runs.fridge.section`.
        what: Text,
        /// The value as it stands; without it, there is none yet.
        found: Option<Said<Raw>>,
        /// The new value.
        to: Option<Said<Raw>>,
    }
}

record! {
    /// What a job brings; each under a name that is not taken yet.
    pub struct AddFile ("an addition") {
        /// Bays.
        bays: Keyed<BayFile>,
        /// Obstacles.
        obstacles: Keyed<ObstacleFile>,
        /// Panels.
        panels: Keyed<PanelFile>,
        /// Members of the frame.
        frame: Keyed<FrameFile>,
        /// Keep-out zones.
        keep_out: Keyed<KeepOutFile>,
        /// Parts.
        parts: Keyed<PartFile>,
        /// Items.
        items: Keyed<ItemFile>,
        /// Runs.
        runs: Keyed<RunFile>,
        /// Ways of the fuse block.
        ways: Keyed<WayFile>,
        /// Sources.
        sources: Keyed<SourceSupplyFile>,
        /// Trips.
        trips: Keyed<TripFile>,
        /// Readings of a meter along a run.
        readings: Keyed<ReadingFile>,
    }
}
