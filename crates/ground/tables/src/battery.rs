//! Batteries: kinds, and resting voltage by charge.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Share, Voltage};

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
