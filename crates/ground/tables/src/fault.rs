//! Short circuits: what a conductor stands.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::Temperature;

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("faults", include_str!("../data/faults.toml")));

/// The constants of a metal in k = K·√(ln((β + θ_end)/(β + θ_start))).
#[derive(Debug, Clone, PartialEq)]
pub struct Metal {
    /// `copper`, `aluminium` or `steel`.
    pub name: String,
    /// K \[A·√s/mm²\].
    pub k_a_sqrt_s_per_mm2: f64,
    /// β, the reciprocal of the temperature coefficient at 0 °C \[K\].
    pub beta_k: f64,
}

/// The constant k of I²·t = k²·S², valid up to about 5 s.
#[derive(Debug, Clone, PartialEq)]
pub struct Adiabatic {
    /// The name to ask for it by: `copper-pvc70`, `copper-pvc105`.
    pub key: String,
    /// `copper` or `aluminium`.
    pub metal: String,
    /// The insulation, in words.
    pub insulation: String,
    /// The temperature of the conductor when the fault begins.
    pub start: Temperature,
    /// The temperature that its insulation stands for the moment.
    pub end: Temperature,
    /// k \[A·√s/mm²\].
    pub k_a_sqrt_s_per_mm2: f64,
}

/// The constants of the metals.
pub fn metals() -> &'static [Entry<Metal>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        metal: String,
        big_k: f64,
        beta: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Metal>>> = LazyLock::new(|| {
        FILE.rows("adiabatic_metal", |r: Row| Metal {
            name: r.metal,
            k_a_sqrt_s_per_mm2: r.big_k,
            beta_k: r.beta,
        })
    });
    &ROWS
}

/// The metal of that name.
pub fn metal(name: &str) -> Option<&'static Entry<Metal>> {
    metals().iter().find(|e| e.value.name == name)
}

/// All printed k.
pub fn adiabatics() -> &'static [Entry<Adiabatic>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        metal: String,
        insulation: String,
        start: f64,
        end: f64,
        k: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Adiabatic>>> = LazyLock::new(|| {
        FILE.rows("adiabatic_k", |r: Row| Adiabatic {
            key: r.key,
            metal: r.metal,
            insulation: r.insulation,
            start: Temperature::celsius(r.start),
            end: Temperature::celsius(r.end),
            k_a_sqrt_s_per_mm2: r.k,
        })
    });
    &ROWS
}

/// The k of that key.
///
/// ```
/// let pvc = spile_tables::fault::adiabatic("copper-pvc70").unwrap();
/// assert_eq!(pvc.value.k_a_sqrt_s_per_mm2, 115.0);
/// ```
pub fn adiabatic(key: &str) -> Option<&'static Entry<Adiabatic>> {
    adiabatics().iter().find(|e| e.value.key == key)
}
