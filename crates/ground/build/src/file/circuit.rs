//! The house circuit: runs, fuse block, bank, sources, and the body as a return.

use spile_quantity::{
    CableSize, Capacity, Current, Length, Power, Resistance, Temperature, Voltage,
};

use super::part::Chemistry;
use super::space::PlaceFile;
use super::{Q, Text};
use crate::read::{Keyed, Said, record, words};

words! {
    /// By which way a current returns to the bank.
    pub enum ReturnPath ("a way of return") {
        /// By a cable to the negative bus.
        Cable = "cable" | "bus",
        /// Through the body or the frame of the vehicle.
        Body = "body" | "frame" | "chassis",
    }
}

words! {
    /// Where the body is tied to the bank's negative.
    pub enum TiedTo ("a place where the body is tied") {
        /// At the negative bus, on the load's side of a monitor's shunt.
        Bus = "bus" | "negative bus",
        /// At the battery's own negative post.
        Post = "post" | "battery post" | "battery",
    }
}

words! {
    /// A family of fuses.
    pub enum FuseFamily ("a family of fuses") {
        /// A regular blade fuse.
        Blade = "blade",
        /// A miniature blade fuse.
        MiniBlade = "mini blade",
        /// A high-current blade fuse.
        MaxiBlade = "maxi blade",
        /// A small bolt-down strip fuse.
        SmallStrip = "small strip",
        /// A large bolt-down strip fuse.
        Strip = "strip",
        /// A Class T cartridge.
        ClassT = "class T",
        /// Any other.
        Other = "other",
    }
}

words! {
    /// What kind of source charges the bank.
    pub enum SourceKindWord ("a kind of source") {
        /// Solar panels and their controller.
        Solar = "solar",
        /// The engine's alternator.
        Alternator = "alternator",
        /// A charger on mains hook-up.
        HookUp = "hook-up" | "shore power",
        /// A generator.
        Generator = "generator",
    }
}

record! {
    /// The body or frame as an electrical return, from where a return is fixed to it to the negative bus.
    pub struct BodyFile ("the body as a return") {
        /// The sheet or frame itself.
        resistance: Q<Resistance>,
        /// The stud or bolt by which it is tied to the negative bus.
        stud: Q<Resistance>,
        /// The cable from that stud to the negative bus.
        cable: Option<Said<CableFile>>,
        /// Whether parts of the frame are insulated from each other: glued, painted or anodised joints.
        insulated: Option<Said<bool>>,
        /// Where it is tied to the bank's negative: `bus` or `post`.
        tied_to: Option<Said<TiedTo>>,
    }
}

record! {
    /// One conductor.
    pub struct CableFile ("a cable") {
        /// Its section: `1.5 mm2`, `16 AWG`, `16 SAE`, or `6 mm outside` where only that is known.
        section: Option<Said<CableSize>>,
        /// Its length, one way.
        length: Q<Length>,
        /// What its insulation stands: `70 °C`.
        insulation: Q<Temperature>,
        /// The warmest surroundings along its way.
        ambient: Q<Temperature>,
        /// How many current-carrying conductors lie in its bundle, itself and its return included.
        bundle: Option<Said<u32>>,
    }
}

record! {
    /// The way back.
    pub struct ReturnFile ("a return") {
        /// `cable` or `body`.
        by: Option<Said<ReturnPath>>,
        /// Its section.
        section: Option<Said<CableSize>>,
        /// Its length: to the bus, or to the stud on the body.
        length: Q<Length>,
        /// What its insulation stands.
        insulation: Q<Temperature>,
        /// The warmest surroundings along its way.
        ambient: Q<Temperature>,
        /// The stud by which it is fixed to the body.
        stud: Q<Resistance>,
    }
}

record! {
    /// A length of cable to an item: its feed and its return.
    pub struct RunFile ("a run") {
        /// The item it goes to; without it, the item of the same name.
        to: Text,
        /// Section of the feed, and of the return where that has none of its own.
        section: Option<Said<CableSize>>,
        /// Length of the feed one way, and of the return where that has none of its own.
        length: Q<Length>,
        /// What the insulation stands.
        insulation: Q<Temperature>,
        /// The warmest surroundings along its way.
        ambient: Q<Temperature>,
        /// How many current-carrying conductors lie together along its worst stretch.
        bundle: Option<Said<u32>>,
        /// Joints of the feed, crimps and plug together.
        joints: Q<Resistance>,
        /// The switch or isolator in its feed, if there is one, in words: `at the door`.
        switch: Text,
        /// The way back, where it differs from the feed.
        r#return: Option<Said<ReturnFile>>,
        /// Which way it goes, in words.
        along: Text,
    }
}

record! {
    /// A fuse.
    pub struct FuseFile ("a fuse") {
        /// Its rated current.
        rating: Q<Current>,
        /// Its family.
        family: Option<Said<FuseFamily>>,
        /// Its resistance with its holder.
        resistance: Q<Resistance>,
        /// What it can break.
        breaks: Q<Current>,
        /// Length of cable between the post and the fuse.
        from_post: Q<Length>,
    }
}

record! {
    /// One position of the fuse block.
    pub struct WayFile ("a way") {
        /// Rated current of its fuse.
        fuse: Q<Current>,
        /// Family of its fuse; without it, a blade.
        family: Option<Said<FuseFamily>>,
        /// The run it feeds.
        run: Text,
    }
}

record! {
    /// The fuse block.
    pub struct BlockFile ("the fuse block") {
        /// Where it is.
        place: Option<Said<PlaceFile>>,
        /// How many ways it has.
        count: Option<Said<u32>>,
        /// The greatest current through the whole block, by its papers.
        total: Q<Current>,
        /// The greatest current of one way, by its papers.
        per_way: Q<Current>,
        /// The cable from the bank.
        feed: Option<Said<CableFile>>,
        /// The cable back to the bank, from the negative bus.
        r#return: Option<Said<CableFile>>,
        /// Bus, shunt and isolator together.
        joints: Q<Resistance>,
        /// Temperature where it is.
        ambient: Q<Temperature>,
        /// Its ways, by number.
        ways: Keyed<WayFile>,
    }
}

record! {
    /// Another battery on the same posts.
    pub struct BesideFile ("another battery on the bank's posts") {
        /// Its chemistry.
        kind: Option<Said<Chemistry>>,
        /// Its capacity: `100 Ah @ 20 h`.
        capacity: Option<Said<Capacity>>,
    }
}

record! {
    /// The house battery.
    pub struct BankFile ("the bank") {
        /// Its chemistry; without it, AGM.
        kind: Option<Said<Chemistry>>,
        /// How many batteries are in parallel; without it, one.
        count: Option<Said<u32>>,
        /// Capacity of each: `95 Ah @ 20 h`.
        capacity: Option<Said<Capacity>>,
        /// Nominal voltage of each.
        volts: Q<Voltage>,
        /// Internal resistance of each.
        resistance: Q<Resistance>,
        /// The greatest current that the electronics of each allow.
        limit: Q<Current>,
        /// Another battery that hangs on the same posts and is not like these.
        beside: Option<Said<BesideFile>>,
        /// The main fuse.
        fuse: Option<Said<FuseFile>>,
        /// Whether a battery monitor counts through a shunt at its negative post.
        shunt: Option<Said<bool>>,
        /// Where it is.
        place: Option<Said<PlaceFile>>,
        /// The part it is, for size and mass.
        part: Text,
    }
}

record! {
    /// What charges the bank.
    pub struct SourceSupplyFile ("a source") {
        /// What kind of source it is.
        kind: Option<Said<SourceKindWord>>,
        /// The greatest charging current.
        current: Q<Current>,
        /// Rated power of solar panels.
        power: Q<Power>,
    }
}
