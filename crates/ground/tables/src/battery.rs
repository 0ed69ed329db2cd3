//! Batteries: kinds, resting voltage by charge, and the gas that charging makes.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Area, Flow, Share, Voltage};

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("batteries", include_str!("../data/batteries.toml")));

/// What a battery is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Chemistry {
    /// Lead-acid with liquid electrolyte.
    Flooded,
    /// Lead-acid with glass mat.
    Agm,
    /// Lead-acid with gel.
    Gel,
    /// Lithium iron phosphate.
    Lfp,
}

impl Chemistry {
    /// Every kind.
    pub const ALL: [Self; 4] = [Self::Flooded, Self::Agm, Self::Gel, Self::Lfp];

    /// The name it goes by in files.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Flooded => "flooded",
            Self::Agm => "agm",
            Self::Gel => "gel",
            Self::Lfp => "lfp",
        }
    }

    /// The kind of that name.
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|c| c.key() == key)
    }
}

/// The resting voltage of a battery of nominally 12 V by its charge.
#[derive(Debug, Clone, PartialEq)]
pub struct RestingVoltage {
    /// The name of the curve.
    pub curve: String,
    /// What kind of battery it is for.
    pub chemistry: Chemistry,
    /// Charge and voltage, ascending; nothing is said outside them.
    pub points: Vec<(Share, Voltage)>,
}

/// The curves of resting voltage, the one to use first within a chemistry; none of gel was found.
///
/// Charts differ by 0.1 to 0.6 V at the same charge.
pub fn resting_voltages() -> &'static [Entry<RestingVoltage>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        curve: String,
        chemistry: Chemistry,
        charge: f64,
        voltage: f64,
    }
    static ALL: LazyLock<Vec<Entry<RestingVoltage>>> = LazyLock::new(|| {
        let mut all: Vec<Entry<RestingVoltage>> = Vec::new();
        for row in FILE.rows("ocv", |r: Row| r) {
            let point = (Share::percent(row.value.charge), Voltage::v(row.value.voltage));
            match all.last_mut() {
                Some(e) if e.value.curve == row.value.curve => e.value.points.push(point),
                _ => all.push(row.map(|r| RestingVoltage {
                    curve: r.curve.clone(),
                    chemistry: r.chemistry,
                    points: vec![point],
                })),
            }
        }
        all
    });
    &ALL
}

/// The curve to use for a kind of battery.
///
/// ```
/// use spile_tables::battery::{Chemistry, resting_voltage};
/// let agm = resting_voltage(Chemistry::Agm).unwrap();
/// assert_eq!(agm.value.points.last().unwrap().1.in_v(), 12.85);
/// ```
pub fn resting_voltage(chemistry: Chemistry) -> Option<&'static Entry<RestingVoltage>> {
    resting_voltages().iter().find(|e| e.value.chemistry == chemistry)
}

/// What ventilation against hydrogen is worked out from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasConstants {
    /// Air that a volume of hydrogen is to be thinned with.
    pub dilution: f64,
    /// Hydrogen for each ampere-hour of gas current in each cell \[m³/(A·h)\].
    pub hydrogen: f64,
    /// The factor of safety.
    pub safety: f64,
    /// The three together, as printed \[m³/(A·h)\].
    pub product: f64,
    /// The opening for one cubic metre an hour, at inlet and outlet each.
    pub opening: (Flow, Area),
    /// The share of hydrogen in air that can burn.
    pub explosive: Share,
}

/// The constants of IEC 62485-2.
///
/// ```
/// let gas = spile_tables::battery::gas_constants().value;
/// let product = gas.dilution * gas.hydrogen * gas.safety;
/// assert!((product - gas.product).abs() / product < 0.01);
/// ```
pub fn gas_constants() -> Entry<GasConstants> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        value: f64,
        #[serde(rename = "unit")]
        _unit: String,
    }
    let rows = FILE.rows("gas_constant", |r: Row| (r.key, r.value));
    let at = |key: &str| {
        let row = rows.iter().find(|e| e.value.0 == key);
        row.unwrap_or_else(|| panic!("data/batteries.toml has no {key} of gas")).value.1
    };
    rows[0].map(|_| GasConstants {
        dilution: at("dilution"),
        hydrogen: at("hydrogen"),
        safety: at("safety"),
        product: at("product"),
        opening: (Flow::m3_per_h(1.0), Area::cm2(at("opening"))),
        explosive: Share::percent(at("explosive")),
    })
}

/// How a battery's cells are closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Cells {
    /// With vents, to be topped up.
    Vented,
    /// With valves: glass mat or gel.
    Sealed,
}

/// A current that makes gas in each cell, for each ampere-hour of the battery.
#[derive(Debug, Clone, PartialEq)]
pub struct GasCurrent {
    /// How the cells are closed.
    pub cells: Cells,
    /// The mode of charging or the profile of the charger: `float`, `boost`, `IU`, `IUI`.
    pub charging: String,
    /// The current \[A for each A·h\].
    pub rate: f64,
}

/// The gas currents of stationary batteries (IEC 62485-2, table 1).
pub fn gas_stationary() -> &'static [Entry<GasCurrent>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        build: Cells,
        mode: String,
        current: f64,
    }
    static ROWS: LazyLock<Vec<Entry<GasCurrent>>> = LazyLock::new(|| {
        FILE.rows("gas_stationary", |r: Row| GasCurrent {
            cells: r.build,
            charging: r.mode,
            rate: r.current / 1000.0,
        })
    });
    &ROWS
}

/// The gas currents of traction batteries at the end of charge (IEC 62485-3).
///
/// ```
/// use spile_tables::battery::{Cells, gas_traction};
/// let sealed = gas_traction().iter().find(|e| e.value.cells == Cells::Sealed).unwrap();
/// assert_eq!((sealed.value.charging.as_str(), sealed.value.rate), ("IU", 0.01));
/// ```
pub fn gas_traction() -> &'static [Entry<GasCurrent>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        build: Cells,
        profile: String,
        current: f64,
    }
    static ROWS: LazyLock<Vec<Entry<GasCurrent>>> = LazyLock::new(|| {
        FILE.rows("gas_traction", |r: Row| GasCurrent {
            cells: r.build,
            charging: r.profile,
            rate: r.current / 100.0,
        })
    });
    &ROWS
}
