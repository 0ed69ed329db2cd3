//! Charging: temperatures between which a battery takes a charge.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::Temperature;

use crate::Entry;
use crate::battery::Chemistry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("charging", include_str!("../data/charging.toml")));

/// Between which temperatures a kind of battery may be charged.
#[derive(Debug, Clone, PartialEq)]
pub struct ChargeTemperature {
    /// The kind of battery.
    pub chemistry: Chemistry,
    /// The coldest that its cells may be.
    pub coldest: Temperature,
    /// The warmest.
    pub warmest: Temperature,
}

/// Every kind that has such limits.
pub fn charge_temperatures() -> &'static [Entry<ChargeTemperature>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        chemistry: Chemistry,
        coldest: f64,
        warmest: f64,
    }
    static ALL: LazyLock<Vec<Entry<ChargeTemperature>>> = LazyLock::new(|| {
        FILE.rows("charge_temperature", |r: Row| ChargeTemperature {
            chemistry: r.chemistry,
            coldest: Temperature::celsius(r.coldest),
            warmest: Temperature::celsius(r.warmest),
        })
    });
    &ALL
}

/// The limits of that kind; `None` where none is carried.
///
/// ```
/// use spile_tables::{battery::Chemistry, charging::charge_temperature};
/// let lfp = charge_temperature(Chemistry::Lfp).unwrap();
/// assert!(lfp.may_stop() && lfp.value.coldest.in_celsius() == 0.0);
/// assert!(charge_temperature(Chemistry::Agm).is_none());
/// ```
pub fn charge_temperature(chemistry: Chemistry) -> Option<&'static Entry<ChargeTemperature>> {
    charge_temperatures().iter().find(|e| e.value.chemistry == chemistry)
}
