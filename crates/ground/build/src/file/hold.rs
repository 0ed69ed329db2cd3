//! How things are held, key by key.

use spile_quantity::{Force, Length};

use super::space::SizeFile;
use super::{Q, Text};
use crate::read::{Rows, Said, record, words};

words! {
    /// What holds a thing.
    pub enum HeldBy ("a way of holding") {
        /// Bolts through the wall or panel, with nuts.
        Bolt = "bolt" | "bolts" | "through-bolt",
        /// Bolts in rivet nuts.
        RivetNut = "rivet nut" | "rivet nuts",
        /// Tapping screws in metal.
        TappingScrew = "tapping screw" | "tapping screws" | "self-tapping screw",
        /// Screws in wood or plywood.
        WoodScrew = "wood screw" | "wood screws",
        /// Glue.
        Adhesive = "adhesive" | "glue",
        /// Straps.
        Strap = "strap" | "straps",
        /// A magnet or ball catch, which opens when it is pulled.
        MagnetLatch = "magnet latch" | "magnet" | "magnets",
        /// A latch that opens by hand only.
        PositiveLatch = "positive latch" | "latch",
    }
}

words! {
    /// What a thing is fixed to.
    pub enum HeldInto ("a thing to fix to") {
        /// Tube or section of steel.
        SteelTube = "steel tube" | "steel",
        /// Tube or extrusion of aluminium.
        AluminiumTube = "aluminium tube" | "aluminum tube" | "aluminium" | "aluminum",
        /// Plywood.
        Plywood = "plywood" | "ply",
        /// Boards and battens.
        SolidWood = "solid wood" | "wood",
        /// The vehicle's own sheet.
        BodySheet = "body sheet" | "sheet",
    }
}

words! {
    /// The face of a thing that its fasteners are on.
    pub enum HeldFace ("a face") {
        /// It stands on them.
        Below = "below" | "floor",
        /// It hangs on the wall behind it, or by its flange in a panel.
        Behind = "behind" | "wall" | "flange",
        /// It hangs from them.
        Above = "above" | "ceiling",
        /// They are on its left or right.
        Beside = "beside" | "side",
    }
}

record! {
    /// How a thing is held in its place.
    pub struct HeldFile ("how a thing is held") {
        /// What holds it: `bolt`, `rivet nut`, `tapping screw`, `wood screw`, `adhesive`, `strap`, `magnet latch` or `positive latch`.
        by: Option<Said<HeldBy>>,
        /// Size of the screws: `M6`, `4.8 mm`.
        size: Text,
        /// Property class of bolts: `8.8`, `A2-70`.
        class: Text,
        /// How many there are.
        count: Option<Said<u32>>,
        /// Diameter of the washers, or of the heads where there are none.
        washer: Q<Length>,
        /// What they are in: `steel tube`, `aluminium tube`, `plywood`, `solid wood` or `body sheet`.
        into: Option<Said<HeldInto>>,
        /// Thickness of the wall or panel; of wood, the length of thread in it.
        wall: Q<Length>,
        /// The unit of the rows: `mm`, `cm` or `in`.
        unit: Text,
        /// Rows of [right of, above] the lower left corner of the face, as one looks at it from the thing's front, or from above.
        rows: Option<Said<Rows>>,
        /// Width and height of the pattern, instead of rows; for adhesive, of the glued face.
        spacing: Option<Said<SizeFile>>,
        /// Which face of the thing they are on: `below`, `behind`, `above` or `beside`.
        face: Option<Said<HeldFace>>,
        /// From that face to the middle of the thing's mass; half of its body where nothing is said.
        lever: Q<Length>,
        /// From the middle of the outermost hole to the nearest edge of what it is in.
        edge: Q<Length>,
        /// Whether somebody has looked at the other side of what is drilled: under the floor, behind the sheet.
        looked: Option<Said<bool>>,
        /// What one latch or strap holds, by spring balance or papers; of a screw, what one may be used for.
        holds: Q<Force>,
        /// What keeps its drawer or door shut.
        latch: Option<Said<LatchFile>>,
    }
}

record! {
    /// What keeps a drawer or door shut, or what slides in its place.
    pub struct LatchFile ("a latch") {
        /// `magnet latch` or `positive latch`.
        by: Option<Said<HeldBy>>,
        /// How many there are.
        count: Option<Said<u32>>,
        /// What one of them holds, by spring balance or papers.
        holds: Q<Force>,
        /// The screws that hold each latch: `bolt`, `tapping screw` and so on.
        screws: Option<Said<HeldBy>>,
        /// Their size: `M5`, `4.8 mm`.
        size: Text,
        /// Their property class, of bolts.
        class: Text,
        /// How many screws each latch has; two where nothing is said.
        each: Option<Said<u32>>,
        /// What they are in.
        into: Option<Said<HeldInto>>,
        /// Thickness of the wall they are in.
        wall: Q<Length>,
        /// What one screw may be used for, where it is known.
        screw_holds: Q<Force>,
    }
}
