//! One conductor of the way: its inputs, its resistance hot or cold, and what it may carry.

use crate::ampacity::{allowed, ambient_factor};
use crate::conductor::{cable_resistance, copper_warming, operating_temperature, section};
use spile_answer::{Handle, Ledger, Point};
use spile_build::Cable;
use spile_quantity::{Area, CableSize, Current, Length, Resistance, Temperature};
use spile_tables::Entry;
use spile_tables::ampacity::{TABLE_AMBIENT, bundle, metric_current};

use super::load::from_table;

/// The tables of currents know no insulation that stands more than this.
const HOTTEST: Temperature = Temperature::celsius(200.0);

/// A conductor's inputs, and how much its own current warms it.
#[derive(Debug, Clone, Copy)]
pub struct Conductor {
    /// Resistance of a metre at 20 °C.
    pub per_metre: Handle<Resistance>,
    /// Its length, one way.
    pub length: Handle<Length>,
    /// The surroundings along its way.
    pub at: Handle<Temperature>,
    /// What its insulation stands; of the run's own conductors only, since only they get hot.
    insulation: Option<Handle<Temperature>>,
    /// How much warmer than its surroundings it is while everything runs \[K\].
    rise_k: f64,
}

/// How warm the copper is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Copper {
    /// As its surroundings: it has just been switched on.
    Cool,
    /// Warmed by its own current.
    Warm,
    /// As hot as its insulation stands, the worst that comes before a fault; the shared cables
    /// from the bank as in `Warm`.
    Rated,
}

impl Conductor {
    /// Takes the inputs of one of the run's own cables in; `None` if its size is in no table.
    pub fn own(ledger: &mut Ledger, name: &str, cable: &Cable) -> Option<Self> {
        let shared = Self::shared(ledger, name, cable)?;
        let insulation = ledger.take(insulation_name(name), &cable.insulation);
        Some(Self { insulation: Some(insulation), ..shared })
    }

    /// The same of a cable between the bank and the block or the body.
    pub fn shared(ledger: &mut Ledger, name: &str, cable: &Cable) -> Option<Self> {
        let metre =
            cable_resistance(cable.section, Length::m(1.0), Temperature::celsius(20.0)).ok()?;
        let metre = from_table(metre, table_of(cable.section), how_to_tell(cable.section));
        Some(Self {
            per_metre: ledger.take(format!("a metre of {} at 20 °C", cable.section), &metre),
            length: ledger.take(format!("length of the {name}"), &cable.length),
            at: ledger.take(format!("temperature of the {name}"), &cable.ambient),
            insulation: None,
            rise_k: 0.0,
        })
    }

    /// Its temperature at one point of the inputs.
    pub fn temperature(&self, point: &Point, copper: Copper) -> Temperature {
        let around = point.at(self.at);
        match (copper, self.insulation) {
            (Copper::Cool, _) => around,
            (Copper::Rated, Some(rated)) => point.at(rated).min(HOTTEST).max(around),
            _ => Temperature::celsius(around.in_celsius() + self.rise_k),
        }
    }

    /// Its resistance at one point of the inputs, R \[Ω\] = R₂₀ · L · (1 + α · (T − 20 °C)).
    pub fn resistance(&self, point: &Point, copper: Copper) -> Resistance {
        let factor = copper_warming(self.temperature(point, copper)).unwrap_or(1.0);
        point.at(self.per_metre) * (point.at(self.length).in_m() * factor)
    }

    /// Settles how much a current warms it, at the likely point.
    ///
    /// One that carries more than one and a half times what it may counts as hot as its insulation
    /// stands: that it is overloaded is a finding of its own. Where no table says what it may
    /// carry, it counts as warm as its surroundings.
    pub fn warm(&mut self, likely: &Point, cable: &Cable, current: Current) {
        let (around, rated) = (likely.at(self.at), cable.insulation.likely());
        let least = section(cable.section).map(|area| area.low);
        let carried = least.ok().and_then(|area| carried(cable, area, rated, around));
        self.rise_k = carried.map_or(0.0, |carried| {
            operating_temperature(around, rated, current, carried.current)
                .unwrap_or(rated)
                .above(around)
                .in_k()
        });
    }
}

/// What a cable may carry for good, and how that came about.
#[derive(Debug, Clone)]
pub struct Carried {
    /// The current itself.
    pub current: Current,
    /// By itself, in air of 30 °C.
    pub in_free_air: Entry<Current>,
    /// The factor for the air round it.
    pub ambient_factor: f64,
    /// The factor for the cables beside it.
    pub bundle_factor: f64,
}

/// What a cable with that much copper may carry where it lies.
///
/// By 33 CFR 183.425 where it has the size; else by ISO 10133 annex A, which is known from memory
/// and goes on to 0.75 and 150 mm². `None` beyond both, and where it is as hot round it as its
/// insulation stands.
pub fn carried(
    cable: &Cable,
    copper: Area,
    rating: Temperature,
    around: Temperature,
) -> Option<Carried> {
    let size = match cable.section {
        CableSize::Outside(_) => CableSize::Metric(copper),
        known => known,
    };
    if let Ok(found) = allowed(size, rating, around, cable.bundle) {
        return Some(Carried {
            current: found.current,
            in_free_air: found.in_free_air,
            ambient_factor: found.ambient_factor,
            bundle_factor: found.bundle_factor.value,
        });
    }
    let CableSize::Metric(area) = size else { return None };
    let in_free_air = metric_current(area, rating)?;
    let ambient_factor = ambient_factor(rating, TABLE_AMBIENT, around).ok()?;
    let bundle_factor = bundle(cable.bundle)?.value.factor;
    let current = in_free_air.value * (ambient_factor * bundle_factor);
    Some(Carried { current, in_free_air, ambient_factor, bundle_factor })
}

/// The inputs of what a cable may carry.
#[derive(Debug, Clone)]
pub struct Carrier<'b> {
    cable: &'b Cable,
    /// Its copper.
    pub copper: Handle<Area>,
    insulation: Handle<Temperature>,
    around: Handle<Temperature>,
}

impl<'b> Carrier<'b> {
    /// Takes a cable's inputs in; `None` if its size is in no table.
    pub fn take(ledger: &mut Ledger, name: &'static str, cable: &'b Cable) -> Option<Self> {
        let copper = section(cable.section).ok()?;
        let copper = from_table(copper, table_of(cable.section), how_to_tell(cable.section));
        Some(Self {
            cable,
            copper: ledger.take(format!("copper of the {name}"), &copper),
            insulation: ledger.take(insulation_name(name), &cable.insulation),
            around: ledger.take(format!("temperature of the {name}"), &cable.ambient),
        })
    }

    /// What it may carry at one point of the inputs.
    pub fn at(&self, point: &Point) -> Option<Carried> {
        carried(self.cable, point.at(self.copper), point.at(self.insulation), point.at(self.around))
    }
}

/// What a cable may carry at the likely values of its inputs.
pub fn likely_carried(cable: &Cable) -> Option<Carried> {
    let copper = section(cable.section).ok()?.likely;
    carried(cable, copper, cable.insulation.likely(), cable.ambient.likely())
}

fn insulation_name(name: &str) -> String {
    format!("what the insulation of the {name} stands")
}

/// Where the resistance of a size is published.
pub fn table_of(size: CableSize) -> String {
    match size {
        CableSize::Metric(_) => "copper of 0.017241 Ω·mm²/m (IEC 60028); at most IEC 60228 class 5",
        CableSize::Awg(_) => "ASTM B258 with a stranding lay of 2 %; NEC chapter 9 table 8",
        CableSize::Sae(_) => "SAE areas of a marine cable catalogue, with a stranding lay of 2 %",
        CableSize::Outside(_) => "common practice: 4 to 10 mm² in 6 mm of outside diameter",
    }
    .to_owned()
}

/// How to tell the size of a cable.
pub const fn how_to_tell(size: CableSize) -> &'static str {
    match size {
        CableSize::Outside(_) => {
            "The print along the cable, in mm² or AWG; without print, count its strands and measure one: number times π/4 times diameter squared."
        }
        _ => "The print along the cable; without print, the diameter of its copper.",
    }
}
