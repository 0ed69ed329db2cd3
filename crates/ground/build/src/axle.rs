//! What axles and tyres may carry, and where that which is aboard sits.

use spile_answer::Given;
use spile_quantity::{Length, Mass, Share, Volume};

/// What is known of a vehicle's axles.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Axles {
    /// From the middle of the left wheels to that of the right ones.
    pub track: Option<Given<Length>>,
    /// What the plate allows.
    pub limits: AxleLimits,
    /// The tyres of the front axle.
    pub front: Option<Tyres>,
    /// The tyres of the rear axle.
    pub rear: Option<Tyres>,
    /// The tyres of the tag axle.
    pub tag_tyres: Option<Tyres>,
    /// A second rear axle that is not driven.
    pub tag: Option<Tag>,
    /// What the bare vehicle weighs by its papers.
    pub unladen: Option<Unladen>,
    /// The car that tows it, where it is a trailer.
    pub towing: Option<Towing>,
}

/// What a plate allows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct AxleLimits {
    /// On the front axle.
    pub front: Option<Given<Mass>>,
    /// On the rear axle.
    pub rear: Option<Given<Mass>>,
    /// On the tag axle.
    pub tag: Option<Given<Mass>>,
    /// Of the whole vehicle.
    pub total: Option<Given<Mass>>,
    /// On the coupling of a trailer.
    pub nose: Option<Given<Mass>>,
}

/// The tyres of one axle.
#[derive(Debug, Clone, PartialEq)]
pub struct Tyres {
    /// The load index of a tyre by itself.
    pub index: Option<u32>,
    /// The load index of a tyre in a pair.
    pub twin_index: Option<u32>,
    /// How many there are; `None` where nothing is said.
    pub count: Option<u32>,
    /// What one carries at the pressure in use.
    pub load: Option<Given<Mass>>,
    /// Where they are told.
    pub source: String,
}

/// A second rear axle that is not driven.
#[derive(Debug, Clone, PartialEq)]
pub struct Tag {
    /// How far it is behind the driven one.
    pub behind: Option<Given<Length>>,
    /// The share of the load of both that it takes.
    pub share: Option<Given<Share>>,
}

/// What a bare vehicle weighs by its papers.
#[derive(Debug, Clone, PartialEq)]
pub struct Unladen {
    /// On the front axle.
    pub front: Given<Mass>,
    /// On the rear axle.
    pub rear: Given<Mass>,
    /// Fuel that is in these figures.
    pub fuel: Option<Given<Volume>>,
    /// The driver, where these figures have one in them.
    pub people: Option<Given<Mass>>,
}

/// A car that tows.
#[derive(Debug, Clone, PartialEq)]
pub struct Towing {
    /// What it is, in a line; empty where nothing is said.
    pub about: String,
    /// From its front axle to its rear axle.
    pub wheelbase: Option<Given<Length>>,
    /// From its rear axle back to the coupling.
    pub overhang: Option<Given<Length>>,
    /// On its front axle, without the trailer.
    pub front: Option<Given<Mass>>,
    /// On its rear axle, without the trailer.
    pub rear: Option<Given<Mass>>,
    /// What its plate allows.
    pub limits: AxleLimits,
}

/// Where the middle of a load is.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Middle {
    /// From the inside rear face forward.
    pub from_rear: Option<Given<Length>>,
    /// From the inside left face.
    pub from_left: Option<Given<Length>>,
    /// From the inside right face.
    pub from_right: Option<Given<Length>>,
}

/// Where that which is aboard sits, in every load state.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LoadPlaces {
    /// The water tanks.
    pub water: Middle,
    /// The people as they drive.
    pub people: Middle,
    /// The fuel tank.
    pub fuel: Middle,
    /// Food and drink that is not in the cold boxes.
    pub food: Middle,
}
