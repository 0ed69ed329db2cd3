//! Years of trips, hour by hour, with every number that they hang on.

use spile_answer::{Handle, Ledger, Point};
use spile_build::file::SourceKindWord;
use spile_build::{Build, typical, typical_number};
use spile_energy::EnergyError;
use spile_energy::calendar::HOURS;
use spile_energy::panel::{Array, Plane, losses};
use spile_energy::weather::{self, Weather};
use spile_energy::year::{self, Hour, Outcome, Sky};
use spile_heat::HeatError;
use spile_quantity::{
    Charge, Current, Power, Share, Temperature, TemperatureDifference, Time, Voltage,
};

use crate::cell::Cells;
use crate::load::Loads;
use crate::trip::Calendar;

/// Years of weather that are tried.
pub(crate) const YEARS: u64 = 8;
/// When the first kilometre of a day is driven \[h\].
const DRIVE_FROM: usize = 10;
/// Warmths of the cabin \[°C\] for which fridges are computed; between them their power is a
/// straight line.
const CABINS_C: [f64; 7] = [0.0, 10.0, 18.0, 25.0, 32.0, 39.0, 46.0];

/// What can go wrong in a year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct NoYear;

impl From<EnergyError> for NoYear {
    fn from(_: EnergyError) -> Self {
        Self
    }
}

impl From<HeatError> for NoYear {
    fn from(_: HeatError) -> Self {
        Self
    }
}

/// What charges the bank, and what is lost on the way.
pub(crate) struct Sources {
    pub(crate) sun: Vec<Handle<Power>>,
    pub(crate) engine: Vec<Handle<Current>>,
    pub(crate) hook_up: Vec<Handle<Current>>,
    /// Sources of which a figure is missing, with what.
    pub(crate) unsaid: Vec<(String, &'static str)>,
    /// Sources that are not counted.
    pub(crate) left_out: Vec<String>,
    losses: [Handle<Share>; 2],
    efficiency: Handle<Share>,
    per_kelvin: Handle<Share>,
    cooling: Handle<Share>,
    volts: Handle<Voltage>,
    over_outside: Handle<TemperatureDifference>,
    cabin_over: Handle<TemperatureDifference>,
    cabin_heated: Handle<Temperature>,
    series: f64,
}

impl Sources {
    pub(crate) fn new(build: &Build, ledger: &mut Ledger) -> Self {
        let (mut sun, mut engine, mut hook_up) = (Vec::new(), Vec::new(), Vec::new());
        let (mut unsaid, mut left_out) = (Vec::new(), Vec::new());
        for (name, source) in &build.sources {
            let amperes = format!("greatest current of {name}");
            match (source.kind, &source.power, &source.current) {
                (Some(SourceKindWord::Solar), Some(power), _) => {
                    sun.push(ledger.take(format!("rated power of {name}"), power));
                }
                (Some(SourceKindWord::Alternator), _, Some(current)) => {
                    engine.push(ledger.take(amperes, current));
                }
                (Some(SourceKindWord::HookUp), _, Some(current)) => {
                    hook_up.push(ledger.take(amperes, current));
                }
                (Some(SourceKindWord::Solar), None, _) => {
                    unsaid.push((name.clone(), "Its rated watts are on the back of the panel."));
                }
                (Some(SourceKindWord::Alternator | SourceKindWord::HookUp), _, None) => unsaid
                    .push((name.clone(), "Its greatest current is on the charger, in amperes.")),
                (Some(SourceKindWord::Generator), ..) => {
                    left_out.push(format!("{name} is not counted: nobody says when it runs"));
                }
                (None, ..) => unsaid
                    .push((name.clone(), "Say its kind: solar, alternator, hook-up or generator.")),
            }
        }
        Self {
            sun,
            engine,
            hook_up,
            unsaid,
            left_out,
            losses: [
                ledger
                    .take("dirt, wiring, mismatch and age of the panels", &typical("panel-losses")),
                ledger.take("shade on the panels", &typical("panel-shading")),
            ],
            efficiency: ledger.take("charge controller", &typical("controller-efficiency")),
            per_kelvin: ledger
                .take("power lost for each kelvin", &typical_number("panel-per-kelvin")),
            cooling: ledger.take("heat that the panels give off", &typical_number("panel-cooling")),
            volts: ledger.take("volts at the battery while it charges", &typical("charging-volts")),
            over_outside: ledger
                .take("battery above the mean of the day outside", &typical("bank-over-outside")),
            cabin_over: ledger.take("cabin above outside", &typical("cabin-over-outside")),
            cabin_heated: ledger.take("cabin, heated", &typical("cabin-heated")),
            series: build.system.likely().in_v() / 12.0,
        }
    }

    /// Rated watts of all panels.
    pub(crate) fn watts(&self, point: &Point) -> f64 {
        self.sun.iter().fold(0.0, |sum, handle| sum + point.at(*handle).in_w())
    }

    /// Amperes of all chargers on the engine, and of all on hook-up.
    pub(crate) fn amperes(&self, point: &Point) -> [f64; 2] {
        [&self.engine, &self.hook_up]
            .map(|all| all.iter().fold(0.0, |sum, handle| sum + point.at(*handle).in_a()))
    }

    /// Amperes that a watt gives the battery.
    pub(crate) fn amperes_of_watt(&self, point: &Point) -> f64 {
        point.at(self.efficiency).in_of_one() / (point.at(self.volts).in_v() * self.series)
    }

    /// What reaches the controller of what the panels could give.
    fn left(&self, point: &Point) -> f64 {
        losses(&self.losses.map(|handle| point.at(handle)))
            .map_or(0.0, |lost| 1.0 - lost.in_of_one())
    }
}

/// All that the years of a build are computed from.
pub(crate) struct Life<'b> {
    pub(crate) ledger: Ledger,
    pub(crate) loads: Loads<'b>,
    pub(crate) cells: Cells,
    pub(crate) sources: Sources,
    pub(crate) calendar: Calendar<'b>,
    /// For each trip its weather without chance, and what a watt of panel gives in each year.
    places: Vec<Place>,
}

struct Place {
    weather: Weather,
    sun: Vec<Vec<f64>>,
}

/// A case: which values, and what more than the build has.
pub(crate) struct Case<'p> {
    pub(crate) loads: &'p Point,
    pub(crate) sources: &'p Point,
    pub(crate) cells: &'p Point,
    /// Whether the months have less sun than is likely.
    pub(crate) dull: bool,
    pub(crate) more_w: f64,
    pub(crate) more: Charge,
}

impl<'p> Case<'p> {
    /// The build as it is, at one point.
    pub(crate) fn at(point: &'p Point) -> Self {
        Self {
            loads: point,
            sources: point,
            cells: point,
            dull: false,
            more_w: 0.0,
            more: Charge::ah(0.0),
        }
    }
}

/// Some years.
pub(crate) struct Years {
    /// Hours without power in a year, the mean.
    pub(crate) off_hours: f64,
    /// In the worst of them.
    pub(crate) worst_hours: f64,
    /// Lowest charge of each month, the mean of the years and the least.
    pub(crate) lowest: [Option<[f64; 2]>; 12],
    /// Each of them.
    pub(crate) all: Vec<Outcome>,
}

impl<'b> Life<'b> {
    pub(crate) fn new(
        ledger: Ledger,
        loads: Loads<'b>,
        cells: Cells,
        sources: Sources,
        calendar: Calendar<'b>,
    ) -> Result<Self, NoYear> {
        let point = ledger.likely();
        let array = Array {
            plane: Plane::FLAT,
            cooling_w_per_m2_k: point.at(sources.cooling).in_of_one(),
            per_kelvin: -point.at(sources.per_kelvin).in_of_one(),
            losses: Share::percent(0.0),
        };
        let mut places = Vec::with_capacity(calendar.trips.len());
        for (index, trip) in calendar.trips.iter().enumerate() {
            let sky: Sky = year::sky(trip.latitude)?;
            let on = |day: usize| calendar.days[day].is_some_and(|day| day.trip == index);
            let mut sun = Vec::new();
            let mut weather = None;
            for seed in 0..YEARS {
                let one = weather::year(&sky, &trip.normals, seed)?;
                sun.push(year::sun_on(&array, &sky, &one, on)?);
                weather = Some(one);
            }
            places.extend(weather.map(|weather| Place { weather, sun }));
        }
        Ok(Self { ledger, loads, cells, sources, calendar, places })
    }

    /// The years of a case.
    pub(crate) fn years(&self, case: &Case<'_>) -> Result<Years, NoYear> {
        let floor = case.cells.at(self.cells.floor);
        let battery = self.cells.battery(case.cells, floor, case.more);
        let (mut hours, factors) = self.hours(case)?;
        let first = self.calendar.first * 24;
        let mut all = Vec::new();
        for index in 0..YEARS as usize {
            for (at, hour) in hours.iter_mut().enumerate() {
                if let (Some(hour), Some(day)) = (hour, self.calendar.days[at / 24]) {
                    let sun = self.places[day.trip].sun[index][at];
                    hour.offered[0] = Current::a(sun * factors[day.trip]);
                }
            }
            all.push(year::run(&battery, &hours, first)?);
        }
        Ok(Years::of(all))
    }

    /// Hours without their sun, and the amperes of each trip for a watt in the sun.
    fn hours(&self, case: &Case<'_>) -> Result<(Vec<Option<Hour>>, Vec<f64>), NoYear> {
        let sources = &self.sources;
        let [engine_a, hook_up_a] = sources.amperes(case.sources);
        let watts = sources.watts(case.sources) + case.more_w;
        let of_watt = sources.amperes_of_watt(case.sources) * sources.left(case.sources) * watts;
        let factors = self
            .calendar
            .trips
            .iter()
            .map(|trip| of_watt * if case.dull { crate::trip::worse_sun(trip) } else { 1.0 })
            .collect();
        let curve = self.curve(case.loads)?;
        let day_a = [false, true].map(|cold| self.loads.amperes_by_hour(case.loads, cold));
        let below_c = case.loads.at(self.loads.heats_below).in_celsius();
        let (over_k, heated_c) = (
            case.loads.at(sources.cabin_over).in_k(),
            case.loads.at(sources.cabin_heated).in_celsius(),
        );
        let bank_over_k = case.sources.at(sources.over_outside).in_k();
        let one = |at: usize| {
            let day = self.calendar.days[at / 24]?;
            let weather = &self.places[day.trip].weather;
            let day_c = weather.day_c[at / 24];
            let cabin_c = (weather.air_c[at] + over_k).max(heated_c);
            let cold = usize::from(day_c < below_c);
            let driven = (day.drive_hours - (at % 24) as f64 + DRIVE_FROM as f64).clamp(0.0, 1.0);
            let driving = if at % 24 >= DRIVE_FROM { driven } else { 0.0 };
            let hooked = if day.hook_up { hook_up_a } else { 0.0 };
            Some(Hour {
                drawn: Current::a(day_a[cold][at % 24] + at_warmth(&curve, cabin_c)),
                offered: [Current::a(0.0), Current::a(engine_a * driving), Current::a(hooked)],
                at: Temperature::celsius(day_c + bank_over_k),
            })
        };
        Ok(((0..HOURS).map(one).collect(), factors))
    }

    /// Amperes of all fridges for each warmth of the cabin.
    fn curve(&self, point: &Point) -> Result<[f64; CABINS_C.len()], NoYear> {
        let mut curve = [0.0; CABINS_C.len()];
        for (amperes, cabin_c) in curve.iter_mut().zip(CABINS_C) {
            let watts = self.loads.fridges_w(point, Temperature::celsius(cabin_c))?;
            *amperes = watts.iter().sum::<f64>() / self.loads.system.in_v();
        }
        Ok(curve)
    }

    /// The coldest day of the trips, as the battery feels it.
    pub(crate) fn coldest_bank(&self, point: &Point) -> Option<Temperature> {
        let over_k = point.at(self.sources.over_outside).in_k();
        let days = self.calendar.days.iter().enumerate();
        let cold = days
            .filter_map(|(day, on)| on.map(|on| self.places[on.trip].weather.day_c[day] + over_k));
        cold.min_by(f64::total_cmp).map(Temperature::celsius)
    }

    /// The place of the input that says how much warmer the battery is than the air.
    pub(crate) fn over_outside(&self) -> usize {
        self.sources.over_outside.index()
    }
}

/// The curve of the fridges at a warmth, straight between its points, its ends held: colder than
/// 0 °C a cabin does not get with people in it, and above 46 °C none is computed.
fn at_warmth(curve: &[f64; CABINS_C.len()], cabin_c: f64) -> f64 {
    let at = CABINS_C.iter().position(|c| *c >= cabin_c).unwrap_or(CABINS_C.len() - 1).max(1);
    let share = (cabin_c - CABINS_C[at - 1]) / (CABINS_C[at] - CABINS_C[at - 1]);
    curve[at - 1] + (curve[at] - curve[at - 1]) * share.clamp(0.0, 1.0)
}

impl Years {
    fn of(all: Vec<Outcome>) -> Self {
        let hours: Vec<f64> = all.iter().map(|year| year.off.in_hours()).collect();
        let count = all.len() as f64;
        let lowest = std::array::from_fn(|month| {
            let each: Option<Vec<f64>> =
                all.iter().map(|year| year.lowest[month].map(Share::in_of_one)).collect();
            let each = each?;
            let least = each.iter().copied().fold(f64::INFINITY, f64::min);
            Some([each.iter().sum::<f64>() / count, least])
        });
        Self {
            off_hours: hours.iter().sum::<f64>() / count,
            worst_hours: hours.iter().copied().fold(0.0, f64::max),
            lowest,
            all,
        }
    }

    /// Of a month, a mean of the years \[Ah\]: wanted, and what sun, engine and hook-up offered.
    pub(crate) fn month(&self, month: usize) -> [f64; 4] {
        let count = self.all.len() as f64;
        let sum = |of: &dyn Fn(&Outcome) -> Charge| -> f64 {
            self.all.iter().map(|year| of(year).in_ah()).sum::<f64>() / count
        };
        [
            sum(&|year| year.wanted[month]),
            sum(&|year| year.offered[month][0]),
            sum(&|year| year.offered[month][1]),
            sum(&|year| year.offered[month][2]),
        ]
    }

    /// The share of each giver in what was used.
    pub(crate) fn shares(&self) -> [f64; 3] {
        let mut given = [0.0; 3];
        for year in &self.all {
            for (sum, charge) in given.iter_mut().zip(year.given) {
                *sum += charge.in_ah();
            }
        }
        let all: f64 = given.iter().sum();
        given.map(|one| if all > 0.0 { one / all } else { 0.0 })
    }

    /// Hours in which the cold kept the battery from a charge, the mean of the years.
    pub(crate) fn too_cold_hours(&self) -> f64 {
        let all: Time = self.all.iter().map(|year| year.too_cold).sum();
        all.in_hours() / self.all.len() as f64
    }
}
