//! Cold storage: insulation, surfaces, air, food and how long it keeps.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Conductivity, Share, Temperature, Time};

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("cold", include_str!("../data/cold.toml")));

/// An insulating or building material.
#[derive(Debug, Clone, PartialEq)]
pub struct Insulation {
    /// The name to ask for it by: `pir`, `xps`, `fridge-foam-aged`.
    pub key: String,
    /// What people call it.
    pub name: String,
    /// Its thermal conductivity \[W/(m·K)\].
    pub conductivity: Conductivity,
}

/// Heat transfer between a surface and the air.
#[derive(Debug, Clone, PartialEq)]
pub struct Surface {
    /// The name to ask for it by: `still-wall`, `iso-inside-wall`, `wind-3.4-m-s`.
    pub key: String,
    /// The coefficient \[W/(m²·K)\].
    pub w_per_m2_k: f64,
}

/// Dry air at 20 °C and 101.325 kPa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Density at 0 °C \[kg/m³\].
    pub density_0c_kg_per_m3: f64,
    /// Specific heat \[J/(kg·K)\].
    pub heat_capacity_j_per_kg_k: f64,
    /// Thermal conductivity \[W/(m·K)\].
    pub conductivity: Conductivity,
    /// Kinematic viscosity \[m²/s\].
    pub viscosity_m2_per_s: f64,
    /// Prandtl number \[1\].
    pub prandtl: f64,
}

/// Water and ice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Water {
    /// Specific heat of water \[J/(kg·K)\].
    pub liquid_j_per_kg_k: f64,
    /// Specific heat of ice \[J/(kg·K)\].
    pub ice_j_per_kg_k: f64,
    /// Heat of freezing \[J/kg\].
    pub fusion_j_per_kg: f64,
    /// Heat of evaporation at 0 °C \[J/kg\].
    pub evaporation_0c_j_per_kg: f64,
}

/// Heat in a food.
#[derive(Debug, Clone, PartialEq)]
pub struct Food {
    /// What it is, in English.
    pub key: String,
    /// The share of water by mass, where it is told.
    pub water: Option<Share>,
    /// Specific heat above freezing \[J/(kg·K)\].
    pub above_j_per_kg_k: f64,
    /// Specific heat below freezing \[J/(kg·K)\].
    pub below_j_per_kg_k: f64,
    /// Heat of freezing \[J/kg\].
    pub latent_j_per_kg: f64,
}

/// The ambients that a household fridge of one climate class is made for.
#[derive(Debug, Clone, PartialEq)]
pub struct ClimateClass {
    /// `SN`, `N`, `ST` or `T`.
    pub name: String,
    /// The coldest.
    pub low: Temperature,
    /// The warmest.
    pub high: Temperature,
}

/// How easily a crop is harmed by cold above freezing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Chill {
    /// Not at all.
    #[serde(rename = "I")]
    Insensitive,
    /// After a week or two.
    #[serde(rename = "M")]
    Moderate,
    /// Within days.
    #[serde(rename = "H")]
    High,
}

/// How long a crop keeps at its best temperature.
#[derive(Debug, Clone, PartialEq)]
pub struct ProduceLife {
    /// The crop.
    pub crop: String,
    /// Its best temperature, from and to.
    pub best: [Temperature; 2],
    /// How long it keeps, from and to.
    pub keeps: [Time; 2],
    /// How easily cold harms it, where that is told.
    pub chill: Option<Chill>,
}

/// How long a prepared or animal food keeps at 4 °C.
#[derive(Debug, Clone, PartialEq)]
pub struct PreparedLife {
    /// The food.
    pub food: String,
    /// How long it keeps, from and to.
    pub keeps: [Time; 2],
}

/// Insulating materials.
pub fn insulations() -> &'static [Entry<Insulation>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        name: String,
        conductivity: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Insulation>>> = LazyLock::new(|| {
        FILE.rows("insulation", |r: Row| Insulation {
            key: r.key,
            name: r.name,
            conductivity: Conductivity::w_per_m_k(r.conductivity),
        })
    });
    &ROWS
}

/// The insulating material of that key.
///
/// ```
/// let board = spile_tables::cold::insulation("xps").unwrap();
/// assert_eq!(board.value.conductivity.in_w_per_m_k(), 0.026);
/// ```
pub fn insulation(key: &str) -> Option<&'static Entry<Insulation>> {
    insulations().iter().find(|e| e.value.key == key)
}

/// Coefficients of heat transfer between surfaces and air.
pub fn surfaces() -> &'static [Entry<Surface>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        coefficient: Option<f64>,
        resistance: Option<f64>,
    }
    static ROWS: LazyLock<Vec<Entry<Surface>>> = LazyLock::new(|| {
        FILE.rows("surface", |r: Row| Surface {
            w_per_m2_k: match (r.coefficient, r.resistance) {
                (Some(coefficient), None) => coefficient,
                (None, Some(resistance)) => 1.0 / resistance,
                _ => panic!("surface {}: either a coefficient or a resistance", r.key),
            },
            key: r.key,
        })
    });
    &ROWS
}

/// The coefficient of that key.
pub fn surface(key: &str) -> Option<&'static Entry<Surface>> {
    surfaces().iter().find(|e| e.value.key == key)
}

/// Dry air.
pub fn air() -> &'static Entry<Air> {
    static ALL: LazyLock<Entry<Air>> = LazyLock::new(|| {
        constants("air", |at| Air {
            density_0c_kg_per_m3: at("density-0c"),
            heat_capacity_j_per_kg_k: at("heat-capacity"),
            conductivity: Conductivity::w_per_m_k(at("conductivity")),
            viscosity_m2_per_s: at("viscosity"),
            prandtl: at("prandtl"),
        })
    });
    &ALL
}

/// Water and ice.
pub fn water() -> &'static Entry<Water> {
    static ALL: LazyLock<Entry<Water>> = LazyLock::new(|| {
        constants("water", |at| Water {
            liquid_j_per_kg_k: 1000.0 * at("liquid"),
            ice_j_per_kg_k: 1000.0 * at("ice"),
            fusion_j_per_kg: 1000.0 * at("fusion"),
            evaporation_0c_j_per_kg: 1000.0 * at("evaporation-0c"),
        })
    });
    &ALL
}

/// Foods.
pub fn foods() -> &'static [Entry<Food>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        water: Option<f64>,
        above: f64,
        below: f64,
        latent: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Food>>> = LazyLock::new(|| {
        FILE.rows("food", |r: Row| Food {
            key: r.key,
            water: r.water.map(Share::percent),
            above_j_per_kg_k: 1000.0 * r.above,
            below_j_per_kg_k: 1000.0 * r.below,
            latent_j_per_kg: 1000.0 * r.latent,
        })
    });
    &ROWS
}

/// The food of that key.
pub fn food(key: &str) -> Option<&'static Entry<Food>> {
    foods().iter().find(|e| e.value.key == key)
}

/// A temperature to keep food at: `fridge-us`, `fridge-uk-advice`, `fridge-uk-business`,
/// `freezer`, `danger-from`, `danger-to`.
pub fn food_temperature(key: &str) -> Option<Entry<Temperature>> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        temperature: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Row>>> =
        LazyLock::new(|| FILE.rows("food_temperature", |r: Row| r));
    let row = ROWS.iter().find(|e| e.value.key == key)?;
    Some(row.map(|r| Temperature::celsius(r.temperature)))
}

/// How long closed food keeps with the power off: `fridge`, `freezer-full`, `freezer-half`.
pub fn power_off(key: &str) -> Option<Entry<Time>> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        time: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Row>>> = LazyLock::new(|| FILE.rows("power_off", |r: Row| r));
    let row = ROWS.iter().find(|e| e.value.key == key)?;
    Some(row.map(|r| Time::hours(r.time)))
}

/// The climate classes of IEC 62552.
pub fn climate_classes() -> &'static [Entry<ClimateClass>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        class: String,
        low: f64,
        high: f64,
    }
    static ROWS: LazyLock<Vec<Entry<ClimateClass>>> = LazyLock::new(|| {
        FILE.rows("climate_class", |r: Row| ClimateClass {
            name: r.class,
            low: Temperature::celsius(r.low),
            high: Temperature::celsius(r.high),
        })
    });
    &ROWS
}

/// The climate class of that name.
pub fn climate_class(name: &str) -> Option<&'static Entry<ClimateClass>> {
    climate_classes().iter().find(|e| e.value.name == name)
}

/// How long produce keeps.
pub fn produce_lives() -> &'static [Entry<ProduceLife>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        crop: String,
        t_low: f64,
        t_high: f64,
        days_low: f64,
        days_high: f64,
        chill: Option<Chill>,
    }
    static ROWS: LazyLock<Vec<Entry<ProduceLife>>> = LazyLock::new(|| {
        FILE.rows("produce_life", |r: Row| ProduceLife {
            crop: r.crop,
            best: [r.t_low, r.t_high].map(Temperature::celsius),
            keeps: [r.days_low, r.days_high].map(Time::days),
            chill: r.chill,
        })
    });
    &ROWS
}

/// How long other food keeps at 4 °C.
pub fn prepared_lives() -> &'static [Entry<PreparedLife>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        food: String,
        days_low: f64,
        days_high: f64,
    }
    static ROWS: LazyLock<Vec<Entry<PreparedLife>>> = LazyLock::new(|| {
        FILE.rows("prepared_life", |r: Row| PreparedLife {
            food: r.food,
            keeps: [r.days_low, r.days_high].map(Time::days),
        })
    });
    &ROWS
}

/// A table of named constants as one value, worth as much as its weakest row.
fn constants<T>(table: &str, make: impl Fn(&dyn Fn(&str) -> f64) -> T) -> Entry<T> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        value: f64,
        #[serde(rename = "unit")]
        _unit: String,
    }
    let rows = FILE.rows(table, |r: Row| (r.key, r.value));
    let at = |key: &str| {
        let row = rows.iter().find(|e| e.value.0 == key);
        row.unwrap_or_else(|| panic!("data/cold.toml, {table} has no {key}")).value.1
    };
    let status = rows.iter().map(|e| e.status).max().expect("a table has rows");
    Entry { status, ..rows[0].map(|_| make(&at)) }
}
