//! Tyres and balance: what a tyre carries by its load index, and how a load should sit.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Mass, Share};

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("axle", include_str!("../data/axle.toml")));

/// What one tyre carries.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TyreLoad {
    /// The load index printed on its side.
    pub index: u32,
    /// What one tyre carries at its maker's pressure.
    pub load: Mass,
}

/// Which side of a rule of balance is good.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sense {
    /// No more than it says.
    AtMost,
    /// No less than it says.
    AtLeast,
}

/// A rule of practice on how a load sits.
#[derive(Debug, Clone, PartialEq)]
pub struct Balance {
    /// The name to ask for it by: `side`, `nose`.
    pub key: String,
    /// Which side of it is good.
    pub sense: Sense,
    /// The share of the whole.
    pub share: Share,
}

/// The loads of all indices that are known, by index.
pub fn tyre_loads() -> &'static [Entry<TyreLoad>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        index: u32,
        load: f64,
    }
    static ALL: LazyLock<Vec<Entry<TyreLoad>>> = LazyLock::new(|| {
        FILE.rows("load_index", |r: Row| TyreLoad { index: r.index, load: Mass::kg(r.load) })
    });
    &ALL
}

/// What a tyre of that load index carries; `None` where the table does not reach.
///
/// ```
/// use spile_tables::axle::tyre_load;
/// assert_eq!(tyre_load(121).unwrap().value.load.in_kg(), 1450.0);
/// assert!(tyre_load(20).is_none());
/// ```
pub fn tyre_load(index: u32) -> Option<&'static Entry<TyreLoad>> {
    tyre_loads().iter().find(|e| e.value.index == index)
}

/// The rules of practice on how a load sits.
pub fn balances() -> &'static [Entry<Balance>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        sense: Sense,
        share: f64,
    }
    static ALL: LazyLock<Vec<Entry<Balance>>> = LazyLock::new(|| {
        FILE.rows("balance", |r: Row| Balance {
            key: r.key,
            sense: r.sense,
            share: Share::percent(r.share),
        })
    });
    &ALL
}

/// The rule of that name.
///
/// ```
/// assert_eq!(spile_tables::axle::balance("side").unwrap().value.share.in_percent(), 5.0);
/// ```
pub fn balance(key: &str) -> Option<&'static Entry<Balance>> {
    balances().iter().find(|e| e.value.key == key)
}
