//! What drawings of a year show: the charge day by day, and what panels and batteries would do.

use spile_build::Build;
use spile_energy::calendar::DAYS;
use spile_energy::year::{DayOf, Outcome};
use spile_quantity::{Charge, Power, Share, Time};

use crate::cell::Cells;
use crate::life::{Case, Life, Sources, Years};
use crate::load::Loads;
use crate::trip::Calendar;

/// How many panels and how many capacities of a frontier are tried.
const PANELS: usize = 7;
const BANKS: usize = 4;
/// The least watts of panel that a frontier reaches to.
const LEAST_W: f64 = 400.0;

/// The years of a build, every input at its likely value.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// The trips, by name.
    pub trips: Vec<String>,
    /// Each day of the year; `None` at home.
    pub days: Vec<Option<Day>>,
    /// How many years of weather were tried.
    pub years: usize,
    /// Time a year without power: the mean, and the worst of the years.
    pub off: [Time; 2],
    /// The share of sun, engine and hook-up in what was used.
    pub shares: [Share; 3],
    /// The charge at which the loads are switched off.
    pub floor: Share,
    /// The charge that a long life asks to keep.
    pub kept: Share,
}

/// One day of the trips.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Day {
    /// Which trip, by its place among [`Picture::trips`].
    pub trip: usize,
    /// Lowest charge of the day: the median of the years.
    pub median: Share,
    /// In the worst of the years.
    pub worst: Share,
    /// Time without power, the mean of the years.
    pub off: Time,
    /// Time of driving.
    pub driven: Time,
    /// Whether it is spent on hook-up.
    pub hook_up: bool,
}

/// Hours a year without power over watts of panel and amp-hours of bank.
#[derive(Debug, Clone, PartialEq)]
pub struct Frontier {
    /// Rated watts of all panels, rising.
    pub panels: Vec<Power>,
    /// Capacities of the bank, rising.
    pub banks: Vec<Charge>,
    /// For each capacity and each of the panels the mean time without power in a year.
    pub off: Vec<Vec<Time>>,
    /// What the build has.
    pub has: (Power, Charge),
    /// The time that is accepted.
    pub wanted: Time,
}

/// The years of a build; `None` where bank, loads or trips are missing.
pub fn picture(build: &Build) -> Option<Picture> {
    let life = life(build)?;
    let point = life.ledger.likely();
    let years = life.years(&Case::at(&point)).ok()?;
    Some(Picture {
        trips: life.calendar.trips.iter().map(|trip| trip.name.to_owned()).collect(),
        days: (0..DAYS).map(|at| day(&life, &years, at)).collect(),
        years: years.all.len(),
        off: [years.off_hours, years.worst_hours].map(Time::hours),
        shares: years.shares().map(Share::of_one),
        floor: point.at(life.cells.floor),
        kept: life.cells.left(&point),
    })
}

/// What more or less of panel and bank would do, on a coarse grid from half of what there is to
/// twice as much; `None` where the years cannot be computed.
pub fn frontier(build: &Build) -> Option<Frontier> {
    let life = life(build)?;
    let point = life.ledger.likely();
    let has_w = life.sources.watts(&point);
    let has_ah = point.at(life.cells.capacity).in_ah();
    let step = |count: usize, from: f64, most: f64| -> Vec<f64> {
        (0..count).map(|at| from + (most - from) * at as f64 / (count - 1) as f64).collect()
    };
    let panels_w = step(PANELS, 0.0, (2.0 * has_w).max(LEAST_W));
    let banks_ah = step(BANKS, has_ah / 2.0, 2.0 * has_ah);
    let one = |panels_w: f64, bank_ah: f64| {
        let more = Charge::ah(bank_ah - has_ah);
        let case = Case { more_w: panels_w - has_w, more, ..Case::at(&point) };
        Some(Time::hours(life.years(&case).ok()?.off_hours))
    };
    let row = |bank_ah: &f64| panels_w.iter().map(|watts| one(*watts, *bank_ah)).collect();
    let off: Option<Vec<Vec<Time>>> = banks_ah.iter().map(row).collect();
    Some(Frontier {
        off: off?,
        panels: panels_w.into_iter().map(Power::w).collect(),
        banks: banks_ah.into_iter().map(Charge::ah).collect(),
        has: (Power::w(has_w), Charge::ah(has_ah)),
        wanted: build.wants.without_power.likely(),
    })
}

/// All that the years hang on.
fn life(build: &Build) -> Option<Life<'_>> {
    let (loads, mut ledger) = Loads::new(build);
    let cells = Cells::new(build, build.bank.as_ref()?, &mut ledger)?;
    let sources = Sources::new(build, &mut ledger);
    let calendar = Calendar::new(build).ok()?;
    if loads.is_empty() || calendar.trips.is_empty() {
        return None;
    }
    Life::new(ledger, loads, cells, sources, calendar).ok()
}

fn day(life: &Life<'_>, years: &Years, at: usize) -> Option<Day> {
    let of = life.calendar.days[at]?;
    let each: Option<Vec<DayOf>> = years.all.iter().map(|year: &Outcome| year.days[at]).collect();
    let each = each?;
    let mut lowest: Vec<f64> = each.iter().map(|day| day.lowest.in_of_one()).collect();
    lowest.sort_by(f64::total_cmp);
    let median = f64::midpoint(lowest[(lowest.len() - 1) / 2], lowest[lowest.len() / 2]);
    let off: f64 = each.iter().map(|day| day.off.in_hours()).sum();
    Some(Day {
        trip: of.trip,
        median: Share::of_one(median),
        worst: Share::of_one(lowest[0]),
        off: Time::hours(off / each.len() as f64),
        driven: Time::hours(of.drive_hours),
        hook_up: of.hook_up,
    })
}
