//! Climate: monthly temperature and sun of 269 places.
//!
//! Temperature data © GeoRank.place, CC-BY-4.0, derived from CHELSA v2.1; sunshine data
//! © GeoRank.place, CC-BY-4.0; shape of the sun over the year by NASA MERRA-2.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Angle, Temperature};

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("climate", include_str!("../data/climate.toml")));

/// Monthly means of a place, January first.
#[derive(Debug, Clone, PartialEq)]
pub struct City {
    /// Its name.
    pub name: String,
    /// Its country, in two letters.
    pub country: String,
    /// Latitude, north positive.
    pub latitude: Angle,
    /// Longitude, east positive.
    pub longitude: Angle,
    /// Mean temperature of each month.
    pub temperature: [Temperature; 12],
    /// Sun on level ground, the mean of day and night of each month \[W/m²\].
    ///
    /// Within some 10 % over a year and 25 % in a month; worse in winters of high latitudes.
    pub sun_w_per_m2: [f64; 12],
}

/// Every place.
///
/// ```
/// let lisbon = spile_tables::climate::cities().iter().find(|c| c.value.name == "Lisbon").unwrap();
/// assert_eq!(lisbon.value.temperature[0].in_celsius(), 11.4);
/// assert_eq!(lisbon.value.sun_w_per_m2[6], 303.0);
/// ```
pub fn cities() -> &'static [Entry<City>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        name: String,
        country: String,
        latitude: f64,
        longitude: f64,
        temperature: [f64; 12],
        sun: [f64; 12],
    }
    static ALL: LazyLock<Vec<Entry<City>>> = LazyLock::new(|| {
        FILE.rows("city", |r: Row| City {
            name: r.name,
            country: r.country,
            latitude: Angle::degrees(r.latitude),
            longitude: Angle::degrees(r.longitude),
            temperature: r.temperature.map(Temperature::celsius),
            sun_w_per_m2: r.sun,
        })
    });
    &ALL
}
