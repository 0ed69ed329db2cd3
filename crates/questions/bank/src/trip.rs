//! Where and when the vehicle is away, and what the weather is there.

use spile_answer::Given;
use spile_build::{Build, Trip, typical, typical_number};
use spile_energy::EnergyError;
use spile_energy::calendar::{DAYS, MONTH_DAYS, days_of, month_of};
use spile_energy::sun::day_outside_air;
use spile_energy::weather::Normals;
use spile_quantity::{Angle, Temperature};
use spile_tables::climate::{City, cities};

/// How far a city may be for its climate to be taken \[m\]: some 300 km.
/// **Source** common practice, no source.
const FARTHEST_M: f64 = 300_000.0;
/// How much further north or south it may be \[°\].
const FARTHEST_DEGREES_NORTH: f64 = 2.0;
/// The earth's mean radius \[m\].
const EARTH_M: f64 = 6_371_000.0;

/// A trip of which place and months are known.
pub(crate) struct Away<'b> {
    pub(crate) name: &'b str,
    pub(crate) latitude: Angle,
    /// Whose climate it is; `None` where no place of the table is near.
    pub(crate) city: Option<&'static City>,
    pub(crate) normals: Normals,
}

/// What a day of the year is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Day {
    /// Which trip, by its place among the [`Away`]s.
    pub(crate) trip: usize,
    /// Hours of driving.
    pub(crate) drive_hours: f64,
    /// Whether it is spent on hook-up.
    pub(crate) hook_up: bool,
}

/// All trips of a build, day by day.
pub(crate) struct Calendar<'b> {
    pub(crate) trips: Vec<Away<'b>>,
    /// Trips without a latitude or without months.
    pub(crate) unknown: Vec<&'b str>,
    /// What was taken for granted.
    pub(crate) assumed: Vec<String>,
    /// Each day of the year; `None` at home.
    pub(crate) days: Vec<Option<Day>>,
    /// The day that a year of it begins with: the first at home, or New Year.
    pub(crate) first: usize,
}

impl<'b> Calendar<'b> {
    pub(crate) fn new(build: &'b Build) -> Result<Self, EnergyError> {
        let mut calendar = Self {
            trips: Vec::new(),
            unknown: Vec::new(),
            assumed: Vec::new(),
            days: vec![None; DAYS],
            first: 0,
        };
        let mut of_month: [Option<usize>; 12] = [None; 12];
        let mut told = Vec::new();
        for (name, trip) in &build.trips {
            let (Some(latitude), false) = (&trip.latitude, trip.months.is_empty()) else {
                calendar.unknown.push(name);
                continue;
            };
            let index = calendar.trips.len();
            calendar.trips.push(away(name, latitude.likely(), trip)?);
            told.push(trip);
            for month in &trip.months {
                let slot = &mut of_month[*month as usize - 1];
                match *slot {
                    None => *slot = Some(index),
                    Some(other) if other == index => {}
                    Some(other) => calendar.assumed.push(format!(
                        "one month is in two trips: it is taken as that of {}",
                        calendar.trips[other].name
                    )),
                }
            }
            calendar.assumed.extend(said_of(&calendar.trips[index], trip));
        }
        let free = (0..12).find(|month| of_month[*month].is_none());
        calendar.first = free.map_or(0, |month| days_of(month).start);
        let mut along = vec![0_usize; told.len()];
        for step in 0..DAYS {
            let day = (calendar.first + step) % DAYS;
            if let Some(trip) = of_month[month_of(day)] {
                calendar.days[day] = Some(one(told[trip], trip, along[trip]));
                along[trip] += 1;
            }
        }
        Ok(calendar)
    }

    /// The months of a trip in the calendar, counted from 0.
    pub(crate) fn months(&self, trip: usize) -> impl Iterator<Item = usize> {
        (0..12).filter(move |month| {
            days_of(*month).any(|day| self.days[day].is_some_and(|day| day.trip == trip))
        })
    }
}

fn away<'b>(name: &'b str, latitude: Angle, trip: &Trip) -> Result<Away<'b>, EnergyError> {
    let city = trip.longitude.as_ref().and_then(|east| nearest(latitude, east.likely()));
    let swing = typical("day-swing").likely();
    let normals = match city {
        Some(city) => Normals { clearness: clearness(city)?, temperature: city.temperature, swing },
        None => Normals {
            clearness: [typical_number("clearness").likely().in_of_one(); 12],
            temperature: [typical::<Temperature>("outside-mild-day").likely(); 12],
            swing,
        },
    };
    Ok(Away { name, latitude, city, normals })
}

/// The nearest place of the climate table, if it is near enough.
fn nearest(latitude: Angle, longitude: Angle) -> Option<&'static City> {
    let far = |city: &City| distance_m([latitude, longitude], [city.latitude, city.longitude]);
    let all = cities().iter().map(|entry| (far(&entry.value), &entry.value));
    let (distance_m, city) = all.min_by(|a, b| a.0.total_cmp(&b.0))?;
    let north = (city.latitude - latitude).in_degrees().abs();
    (distance_m <= FARTHEST_M && north <= FARTHEST_DEGREES_NORTH).then_some(city)
}

/// Along the great circle, by the haversine.
fn distance_m(from: [Angle; 2], to: [Angle; 2]) -> f64 {
    let half_sin2 = |a: Angle, b: Angle| ((b - a).in_rad() / 2.0).sin().powi(2);
    let across = from[0].in_rad().cos() * to[0].in_rad().cos() * half_sin2(from[1], to[1]);
    2.0 * EARTH_M * (half_sin2(from[0], to[0]) + across).min(1.0).sqrt().asin()
}

/// The sun of each month over that outside the air.
fn clearness(city: &City) -> Result<[f64; 12], EnergyError> {
    let mut months = [0.0; 12];
    for (month, share) in months.iter_mut().enumerate() {
        let mut outside_j_per_m2 = 0.0;
        for day in days_of(month) {
            outside_j_per_m2 += day_outside_air(day, city.latitude)?.0;
        }
        let mean = outside_j_per_m2 / (MONTH_DAYS[month] as f64 * 86_400.0);
        *share = city.sun_w_per_m2[month] / mean;
    }
    Ok(months)
}

/// A day of a trip, the days of which are counted from 0.
fn one(trip: &Trip, index: usize, along: usize) -> Day {
    let stays = trip.stays.as_ref().map_or(0.0, |stays| stays.likely().in_days());
    let every = (stays.round() as usize).max(1);
    let drives = trip.drives.as_ref().filter(|_| trip.stays.is_some());
    let share = trip.hook_up.as_ref().map_or(0.0, |share| share.likely().in_of_one());
    let hooked = |days: usize| (days as f64 * share).floor();
    Day {
        trip: index,
        drive_hours: match drives {
            Some(drives) if along % every == every - 1 => drives.likely().in_hours().min(24.0),
            _ => 0.0,
        },
        hook_up: hooked(along + 1) > hooked(along),
    }
}

fn said_of(away: &Away<'_>, trip: &Trip) -> Vec<String> {
    let mut said = Vec::new();
    let name = away.name;
    match away.city {
        Some(city) => said.push(format!(
            "the weather of {name} is that of {} ({}): temperature and sunshine © GeoRank.place, \
             CC-BY-4.0",
            city.name, city.country
        )),
        None => said.push(format!(
            "no place of the climate table is near the trip {name}: {:.0} % of the sun above the \
             air reaches the ground, and it is {:.0} °C, whatever the month",
            away.normals.clearness[0] * 100.0,
            away.normals.temperature[0].in_celsius()
        )),
    }
    let driven = trip.drives.is_some() && trip.stays.is_some();
    if !driven {
        said.push(format!("{name} has no drives that charge: stays or drives are not said"));
    }
    said
}

/// The latitude or the months that a trip wants.
pub(crate) fn how_to_say() -> &'static str {
    "Read latitude and longitude off a map, and name the months: latitude = \"37°\", \
     longitude = \"-8°\", months = [\"december\"]."
}

/// The sun of the trips' months as an input, with what is typical of it.
pub(crate) fn sun(calendar: &Calendar<'_>) -> (&'static str, Given<spile_quantity::Share>) {
    if calendar.trips.iter().any(|trip| trip.city.is_none()) {
        ("sun of the trips' months, of that outside the air", typical_number("clearness"))
    } else {
        ("sun of the trips' months over that of the table", typical_number("sun-of-month"))
    }
}

/// What is typical of the sun where no place is near, over its likely value, at its worse end.
pub(crate) fn worse_sun(away: &Away<'_>) -> f64 {
    let share = |given: Given<spile_quantity::Share>| {
        given.value.low.in_of_one() / given.value.likely.in_of_one()
    };
    match away.city {
        Some(_) => share(typical_number("sun-of-month")),
        None => share(typical_number("clearness")),
    }
}

#[cfg(test)]
mod tests {
    use super::{Angle, distance_m, nearest};

    #[test]
    fn distances_are_those_of_an_atlas() {
        // One degree along a meridian is 111.2 km on this sphere; a quarter of the equator 10 007 km.
        let at = |north: f64, east: f64| [Angle::degrees(north), Angle::degrees(east)];
        assert!((distance_m(at(10.0, 5.0), at(11.0, 5.0)) - 111_195.0).abs() < 1.0);
        assert!((distance_m(at(0.0, 170.0), at(0.0, -100.0)) - 10_007_543.0).abs() < 10.0);
    }

    #[test]
    fn a_place_is_near_or_is_not_taken() {
        let name = |north: f64, east: f64| {
            nearest(Angle::degrees(north), Angle::degrees(east)).map(|city| city.name.as_str())
        };
        assert_eq!(name(37.0, -8.0), Some("Algarve"));
        assert_eq!(name(68.0, 17.0), None);
        assert_eq!(name(0.0, -30.0), None);
    }
}
