//! Parts: the kinds of thing, with the figures from their papers.

use spile_quantity::{
    Angle, Area, Conductivity, Current, Energy, Length, Mass, Power, Temperature, Voltage, Volume,
};

use super::air::HeatFile;
use super::space::SizeFile;
use super::{Q, Text};
use crate::read::{Rows, Said, record, words};

words! {
    /// What kind of thing a part is.
    pub enum PartKind ("a kind of part") {
        /// A fridge with an upright door.
        UprightFridge = "upright fridge" | "fridge",
        /// A box opened by a lid.
        LiddedBox = "lidded box" | "cool box" | "chest fridge",
        /// A fridge that pulls out.
        DrawerFridge = "drawer fridge",
        /// A battery.
        Battery = "battery",
        /// An inverter.
        Inverter = "inverter",
        /// A charger of any sort.
        Charger = "charger",
        /// A heater.
        Heater = "heater",
        /// A roof fan.
        RoofFan = "roof fan" | "fan",
        /// A water pump.
        Pump = "water pump" | "pump",
        /// A hob.
        Hob = "hob" | "cooktop",
        /// A light.
        Light = "light",
        /// A solar panel.
        SolarPanel = "solar panel",
        /// Furniture: a bench, a wardrobe, a platform, a drawer.
        Furniture = "furniture" | "platform" | "drawer",
        /// A tank.
        Tank = "tank",
        /// Something that takes a current.
        Load = "load" | "appliance",
        /// Anything else.
        Other = "other",
    }
}

words! {
    /// How a cold box is cooled.
    pub enum Cooling ("a way of cooling") {
        /// By a compressor.
        Compressor = "compressor",
        /// By absorption, from gas or a heater.
        Absorption = "absorption",
        /// By a thermoelectric block.
        Thermoelectric = "thermoelectric",
    }
}

words! {
    /// What a battery is made of.
    pub enum Chemistry ("a battery's chemistry") {
        /// Lead with liquid acid, to be topped up.
        Flooded = "flooded" | "lead" | "wet",
        /// Lead with the acid in glass mat.
        Agm = "AGM",
        /// Lead with the acid in gel.
        Gel = "gel",
        /// Lithium iron phosphate.
        Lfp = "LiFePO4" | "lithium iron phosphate" | "lithium" | "lfp",
    }
}

words! {
    /// The side that a door or lid is hinged on, as one faces it.
    pub enum Hinge ("a hinged side") {
        /// Hinged on the left.
        Left = "left",
        /// Hinged on the right.
        Right = "right",
        /// Hinged at the top.
        Top = "top",
        /// Hinged at the bottom.
        Bottom = "bottom",
        /// A lid on top, hinged at the back.
        Back = "back" | "rear",
    }
}

record! {
    /// A kind of thing, with the figures from its papers.
    pub struct PartFile ("a part") {
        /// What it is, in a line.
        about: Text,
        /// What kind of thing it is.
        kind: Option<Said<PartKind>>,
        /// Its body as one faces it, without the flange.
        size: Option<Said<SizeFile>>,
        /// What it weighs, empty.
        mass: Q<Mass>,
        /// The rim that rests on the panel.
        flange: Option<Said<FlangeFile>>,
        /// The hole that its papers ask for.
        cutout: Option<Said<CutoutFile>>,
        /// The screws that hold it.
        fixing: Option<Said<FixingFile>>,
        /// Space that its papers ask for, side by side.
        air: Option<Said<AirFile>>,
        /// Space for plug, hose or latch, beyond the body.
        service: Option<Said<ServiceFile>>,
        /// Its door or lid.
        door: Option<Said<DoorSwingFile>>,
        /// Its drawer.
        drawer: Option<Said<DrawerFile>>,
        /// What it takes from the house circuit.
        power: Option<Said<PowerFile>>,
        /// How it is cooled.
        cooling: Option<Said<Cooling>>,
        /// Nominal volume of the cold space.
        volume: Q<Volume>,
        /// Thickness of the insulation.
        insulation: Q<Length>,
        /// Conductivity of the insulation.
        conductivity: Q<Conductivity>,
        /// What its papers say it uses in a day, at which temperatures.
        consumption: Vec<Said<ConsumptionFile>>,
        /// The warmest surroundings its papers allow.
        warmest: Q<Temperature>,
        /// What it turns into heat.
        heat: Option<Said<HeatFile>>,
    }
}

record! {
    /// The rim that rests on the panel.
    pub struct FlangeFile ("a flange") {
        /// Its whole width.
        width: Q<Length>,
        /// Its whole height.
        height: Q<Length>,
        /// How far it stands out in front of the panel.
        thickness: Q<Length>,
    }
}

record! {
    /// The hole that the papers ask for.
    pub struct CutoutFile ("a cut-out") {
        /// Its width, with the maker's tolerance: `482 mm +2/-1`.
        width: Q<Length>,
        /// Its height, with the maker's tolerance.
        height: Q<Length>,
        /// Radius of its corners.
        radius: Q<Length>,
    }
}

record! {
    /// The screws that hold a part.
    pub struct FixingFile ("a fixing") {
        /// Diameter of the screws.
        screw: Q<Length>,
        /// Diameter of the holes to drill.
        hole: Q<Length>,
        /// The unit of the rows: `mm`, `cm` or `in`.
        unit: Text,
        /// Rows of [right of, above] the body's lower left corner as one faces it.
        rows: Option<Said<Rows>>,
    }
}

record! {
    /// Free space that the papers ask for on each side of the body.
    pub struct AirFile ("air spaces") {
        /// Behind it.
        behind: Q<Length>,
        /// On its left and on its right as one faces it.
        beside: Q<Length>,
        /// Above it.
        above: Q<Length>,
        /// Below it.
        below: Q<Length>,
        /// Smallest area of the opening that lets cool air in.
        inlet: Q<Area>,
        /// Smallest area of the opening that lets warm air out.
        outlet: Q<Area>,
    }
}

record! {
    /// Space for plug, hose or latch, beyond the body.
    pub struct ServiceFile ("service spaces") {
        /// Behind it.
        behind: Q<Length>,
        /// On its left as one faces it.
        left: Q<Length>,
        /// On its right as one faces it.
        right: Q<Length>,
        /// Above it.
        above: Q<Length>,
        /// Length of cable that must be pulled out with it before the plug can be reached.
        tail: Q<Length>,
    }
}

record! {
    /// A door or lid that swings.
    pub struct DoorSwingFile ("a door") {
        /// The side it is hinged on.
        hinge: Option<Said<Hinge>>,
        /// How far it must open.
        angle: Q<Angle>,
        /// How thick it is.
        thickness: Q<Length>,
    }
}

record! {
    /// A drawer that is pulled out.
    pub struct DrawerFile ("a drawer") {
        /// How far it comes out.
        travel: Q<Length>,
    }
}

record! {
    /// What a part takes from the house circuit.
    pub struct PowerFile ("a part's power") {
        /// Nominal voltage.
        volts: Q<Voltage>,
        /// While it runs.
        running: Q<Power>,
        /// As it starts.
        start: Q<Current>,
        /// Below this voltage at its terminals it switches itself off.
        cut_out: Q<Voltage>,
        /// The greatest fuse its papers allow.
        fuse: Q<Current>,
    }
}

record! {
    /// What a cold box uses in a day.
    pub struct ConsumptionFile ("a consumption") {
        /// Temperature of the surroundings.
        ambient: Q<Temperature>,
        /// Temperature inside.
        inside: Q<Temperature>,
        /// Used in 24 hours: `480 Wh`.
        per_day: Q<Energy>,
    }
}
