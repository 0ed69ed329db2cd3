//! What axles and tyres may carry, what a bare vehicle weighs, what tows a trailer, and where
//! that which is aboard sits.

use spile_quantity::{Length, Mass, Share, Volume};

use super::{Q, Text};
use crate::read::{Said, record};

record! {
    /// What the plate allows.
    pub struct LimitsFile ("the limits of the plate") {
        /// Greatest load on the front axle.
        front: Q<Mass>,
        /// Greatest load on the rear axle (of a trailer: on its axles together; beside a tag axle: on the driven one).
        rear: Q<Mass>,
        /// Greatest load on the tag axle.
        tag: Q<Mass>,
        /// Greatest mass of the whole vehicle.
        total: Q<Mass>,
        /// Of a trailer: greatest load on the coupling.
        nose: Q<Mass>,
    }
}

record! {
    /// The tyres of one axle.
    pub struct TyresFile ("the tyres of an axle") {
        /// The load index, as on the tyre's side: of `121/119` the first.
        load_index: Option<Said<u32>>,
        /// The load index of a tyre in a pair: of `121/119` the second.
        load_index_twin: Option<Said<u32>>,
        /// How many tyres the axle has: 2, or 4 where they are twins.
        count: Option<Said<u32>>,
        /// What one tyre carries at the pressure in use, by the tyre maker's papers.
        load: Q<Mass>,
    }
}

record! {
    /// The tyres, axle by axle.
    pub struct AxleTyresFile ("the tyres") {
        /// Those of the front axle.
        front: Option<Said<TyresFile>>,
        /// Those of the rear axle (of a trailer: of its axles together).
        rear: Option<Said<TyresFile>>,
        /// Those of the tag axle.
        tag: Option<Said<TyresFile>>,
    }
}

record! {
    /// A second rear axle that is not driven.
    pub struct TagFile ("a tag axle") {
        /// How far it is behind the driven axle.
        behind: Q<Length>,
        /// The share of the load of both rear axles that it takes, by the vehicle's papers: `40 %`.
        share: Q<Share>,
    }
}

record! {
    /// What the bare vehicle weighs by its papers, before anything was built in.
    pub struct UnladenFile ("the bare vehicle") {
        /// On the front axle.
        front: Q<Mass>,
        /// On the rear axle.
        rear: Q<Mass>,
        /// Fuel that is in these figures.
        fuel: Q<Volume>,
        /// The driver, where these figures have one in them.
        people: Q<Mass>,
    }
}

record! {
    /// The car that tows a trailer.
    pub struct TowingFile ("the towing car") {
        /// What it is, in a line.
        about: Text,
        /// From its front axle to its rear axle.
        wheelbase: Q<Length>,
        /// From its rear axle back to the coupling.
        overhang: Q<Length>,
        /// Its front axle on the weighbridge, loaded as it tows, without the trailer.
        front: Q<Mass>,
        /// Its rear axle, the same.
        rear: Q<Mass>,
        /// What its plate allows.
        limits: Option<Said<LimitsFile>>,
    }
}

record! {
    /// Where the middle of something is, from faces of the inside of the vehicle.
    pub struct MiddleFile ("the place of a load") {
        /// From the inside rear face forward to its middle.
        from_rear: Q<Length>,
        /// From the inside left face to its middle.
        from_left: Q<Length>,
        /// From the inside right face to its middle.
        from_right: Q<Length>,
    }
}

record! {
    /// Where that which is aboard sits, in every load state.
    pub struct LoadPlacesFile ("the places of what is aboard") {
        /// The middle of the water tanks.
        water: Option<Said<MiddleFile>>,
        /// The middle of the people, seated as they drive.
        people: Option<Said<MiddleFile>>,
        /// The middle of the fuel tank.
        fuel: Option<Said<MiddleFile>>,
        /// Food and drink that is not in the cold boxes.
        food: Option<Said<MiddleFile>>,
    }
}
