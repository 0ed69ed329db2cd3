//! The vehicle, its spaces, and where things are in it.

use spile_quantity::{Conductance, Length, Mass, Time, Written};

use super::air::BayAirFile;
use super::{AxleTyresFile, LimitsFile, Q, TagFile, Text, TowingFile, UnladenFile};
use crate::read::{Keyed, Rows, Said, record, words};

words! {
    /// What kind of vehicle it is.
    pub enum VehicleKind ("a kind of vehicle") {
        /// A panel van.
        Van = "van",
        /// A lorry with a box body.
        TruckBox = "truck box" | "truck",
        /// A bus or coach.
        Bus = "bus",
        /// A trailer or caravan.
        Trailer = "trailer" | "caravan",
        /// A small boat.
        Boat = "boat",
    }
}

words! {
    /// A direction in the vehicle, as one sits in it facing forward.
    pub enum Direction ("a direction in the vehicle") {
        /// Towards the front.
        Front = "front",
        /// Towards the rear.
        Rear = "rear" | "back",
        /// To the left, seen facing forward.
        Left = "left",
        /// To the right, seen facing forward.
        Right = "right",
        /// Upwards.
        Up = "up" | "top",
        /// Downwards.
        Down = "down",
    }
}

words! {
    /// The finest mark of the owner's tape.
    pub enum Tape ("a tape's finest mark") {
        /// Sixteenths of an inch.
        Sixteenths = "1/16 in" | "1/16",
        /// Thirty-seconds of an inch.
        ThirtySeconds = "1/32 in" | "1/32",
        /// Sixty-fourths of an inch.
        SixtyFourths = "1/64 in" | "1/64",
    }
}

words! {
    /// Whose words are printed.
    pub enum Words ("a choice of words") {
        /// Words of the United Kingdom.
        Uk = "UK",
        /// Words of the United States.
        Us = "US",
    }
}

record! {
    /// The vehicle.
    pub struct VehicleFile ("the vehicle") {
        /// `van`, `truck box`, `bus`, `trailer` or `boat`.
        kind: Option<Said<VehicleKind>>,
        /// Outside length.
        length: Q<Length>,
        /// Outside width, without mirrors.
        width: Q<Length>,
        /// Outside height.
        height: Q<Length>,
        /// Height of the inside floor above the ground.
        floor: Q<Length>,
        /// From the front axle to the rear axle (of a trailer: from the coupling to the axle).
        wheelbase: Q<Length>,
        /// From the inside rear face forward to the rear axle.
        rear_axle: Q<Length>,
        /// From the middle of the left wheels to that of the right ones.
        track: Q<Length>,
        /// What the plate allows, axle by axle and together.
        limits: Option<Said<LimitsFile>>,
        /// The tyres, axle by axle.
        tyres: Option<Said<AxleTyresFile>>,
        /// A second rear axle that is not driven.
        tag: Option<Said<TagFile>>,
        /// What the bare vehicle weighs by its papers.
        unladen: Option<Said<UnladenFile>>,
        /// Of a trailer: the car that tows it.
        towing: Option<Said<TowingFile>>,
        /// The space inside that is fitted out.
        inside: Option<Said<InsideFile>>,
        /// Doors and hatches that things come in by.
        doors: Keyed<DoorFile>,
    }
}

record! {
    /// The space inside the vehicle that is fitted out, wall to wall.
    pub struct InsideFile ("the inside") {
        /// From the rear doors forward.
        length: Q<Length>,
        /// From side to side.
        width: Q<Length>,
        /// From the floor up.
        height: Q<Length>,
    }
}

record! {
    /// A door or hatch of the vehicle: the clear opening.
    pub struct DoorFile ("a door") {
        /// Which side of the vehicle it is on.
        side: Option<Said<Direction>>,
        /// Clear width.
        width: Q<Length>,
        /// Clear height.
        height: Q<Length>,
    }
}

record! {
    /// How big a thing is as one faces it.
    pub struct SizeFile ("a size") {
        /// From side to side of its face.
        width: Q<Length>,
        /// From bottom to top.
        height: Q<Length>,
        /// From its face back.
        depth: Q<Length>,
    }
}

record! {
    /// How big a thing is along the vehicle.
    pub struct SpanFile ("a size in the vehicle") {
        /// Fore and aft.
        length: Q<Length>,
        /// From side to side of the vehicle.
        width: Q<Length>,
        /// From bottom to top.
        height: Q<Length>,
    }
}

record! {
    /// Where a thing is: distances from faces of its bay, or of the inside of the vehicle.
    pub struct PlaceFile ("a place") {
        /// The bay whose faces the distances are taken from; without it, the inside of the vehicle.
        r#in: Text,
        /// The item it stands on, or `floor`.
        on: Text,
        /// Which way its face looks; without it, out of its bay.
        faces: Option<Said<Direction>>,
        /// From the rear face forward to its rear side.
        from_rear: Q<Length>,
        /// From the front face back to its front side.
        from_front: Q<Length>,
        /// From the left face to its left side.
        from_left: Q<Length>,
        /// From the right face to its right side.
        from_right: Q<Length>,
        /// From the floor up to its underside.
        above: Q<Length>,
        /// From the top down to its upper side.
        below: Q<Length>,
    }
}

record! {
    /// Measures taken at several heights.
    pub struct MeasuredAt ("measures at several heights") {
        /// The unit of the rows: `mm`, `cm` or `in`.
        unit: Text,
        /// How far off each measure may be: `2 mm`.
        tolerance: Q<Length>,
        /// Rows of [height above the bay's floor, what was measured there].
        rows: Option<Said<Rows>>,
    }
}

record! {
    /// A space that things go into, as it was measured, seen as one faces its opening.
    pub struct BayFile ("a bay") {
        /// What it is, in a line.
        about: Text,
        /// Which way its opening looks; without it, left.
        opens: Option<Said<Direction>>,
        /// Clear width and height of the space, and depth from the face of the opening to the wall behind.
        size: Option<Said<SizeFile>>,
        /// Where it is in the vehicle.
        place: Option<Said<PlaceFile>>,
        /// Depth at several heights, where the wall behind leans.
        depths: Option<Said<MeasuredAt>>,
        /// Width at several heights.
        widths: Option<Said<MeasuredAt>>,
        /// The two diagonals of the opening, to see whether it is square.
        diagonals: Vec<Said<Written<Length>>>,
        /// The clear opening, where it is smaller than the space behind.
        opening: Option<Said<SizeFile>>,
        /// Free space in front of the opening, square to it: the aisle.
        in_front: Q<Length>,
        /// Heat that its walls and openings let through for each kelvin between it and the cabin.
        conductance: Q<Conductance>,
        /// How air goes through it: openings and fan.
        air: Option<Said<BayAirFile>>,
    }
}

record! {
    /// A shape drawn on one plane and carried along the third direction.
    pub struct ProfileFile ("a profile") {
        /// What the two columns of the rows are: `["from_rear", "above"]`.
        columns: Vec<Said<String>>,
        /// The unit of the rows: `mm`, `cm` or `in`.
        unit: Text,
        /// How far off each point may be: `2 mm`.
        tolerance: Q<Length>,
        /// The corners, one after the other round the shape.
        rows: Option<Said<Rows>>,
        /// How far the shape is carried along the third direction.
        carried: Q<Length>,
    }
}

record! {
    /// What is in the way.
    pub struct ObstacleFile ("an obstacle") {
        /// What it is: `wheel arch`, `filler pipe`.
        kind: Text,
        /// Where it is.
        place: Option<Said<PlaceFile>>,
        /// Its size, if it is a box.
        size: Option<Said<SpanFile>>,
        /// Its shape, if it is not.
        profile: Option<Said<ProfileFile>>,
    }
}

record! {
    /// A member of the frame.
    pub struct FrameFile ("a member of the frame") {
        /// What it is of: `steel tube`.
        material: Text,
        /// Where it is.
        place: Option<Said<PlaceFile>>,
        /// Its size.
        size: Option<Said<SpanFile>>,
        /// Its shape, if it is not a box.
        profile: Option<Said<ProfileFile>>,
        /// Thickness of the tube's wall.
        wall: Q<Length>,
        /// Whether it carries a belted seat or a belt anchorage. Such a member is never cut.
        belt: Option<Said<bool>>,
    }
}

record! {
    /// Where nobody may drill or cut.
    pub struct KeepOutFile ("a keep-out zone") {
        /// What is there: `brake line`, `fuel tank`, `cable 3`.
        what: Text,
        /// Where it is.
        place: Option<Said<PlaceFile>>,
        /// Its size.
        size: Option<Said<SpanFile>>,
        /// Its shape, if it is not a box.
        profile: Option<Said<ProfileFile>>,
    }
}

record! {
    /// A sheet that closes the opening of a bay.
    pub struct PanelFile ("a panel") {
        /// The bay it closes.
        closes: Text,
        /// What it is of: `poplar plywood`.
        material: Text,
        /// Its width and height as one faces it; its depth is its thickness.
        size: Option<Said<SizeFile>>,
        /// Where it is, from faces of the bay it closes.
        place: Option<Said<PlaceFile>>,
        /// Whether it can be taken off.
        removable: Option<Said<bool>>,
    }
}

record! {
    /// A thing in the vehicle.
    pub struct ItemFile ("an item") {
        /// What it is, in a line.
        about: Text,
        /// The kind of thing it is; without it, the part of the same name.
        part: Text,
        /// Where it is.
        place: Option<Said<PlaceFile>>,
        /// The panel that its cut-out is in.
        panel: Text,
        /// The bay that its condenser stands in, where that is another than its own.
        condenser_in: Text,
        /// What it weighs, where it was weighed; without it, what its part weighs.
        mass: Q<Mass>,
        /// What it holds when the vehicle is full.
        contents: Q<Mass>,
        /// How long it runs in a day, of 24 hours: `20 min`. Of an inverter, at its full load.
        hours: Q<Time>,
        /// Of an inverter: how long it is switched on in a day.
        on: Q<Time>,
        /// Whether it can be taken out without tools to make way.
        removable: Option<Said<bool>>,
        /// How it is held in its place.
        held: Option<Said<super::hold::HeldFile>>,
    }
}
