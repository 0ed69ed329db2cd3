//! Stand-ins from common practice for what was neither measured nor found in papers.
//!
//! They have no source: each is practice, from memory, with bounds, and whoever uses one says so.

use std::collections::BTreeMap;
use std::sync::{LazyLock, OnceLock};

use serde::Deserialize;
use spile_quantity::{Ranged, Readable, read};
use toml::Value;

use crate::file::TableInfo;
use crate::source::{Class, Source, Status, source};

/// A stand-in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Typical<Q> {
    /// The value with its bounds.
    pub ranged: Ranged<Q>,
    /// What it is, in plain words.
    pub what: &'static str,
    /// How to get the real one with a tape, a meter, a scale or the papers.
    pub how: &'static str,
    /// What else to know.
    pub note: Option<&'static str>,
}

/// The stand-in of that key; `None` if there is none or it is another kind of quantity.
///
/// ```
/// use spile_quantity::{Length, Resistance};
/// use spile_tables::typical;
/// let stud = typical::<Resistance>("stud-body").unwrap();
/// assert_eq!((stud.ranged.low.in_mohm(), stud.ranged.high.in_mohm()), (5.0, 50.0));
/// assert_eq!(stud.what, "return stud on the body");
/// assert!(typical::<Length>("stud-body").is_none());
/// ```
pub fn typical<Q: Readable>(key: &str) -> Option<Typical<Q>> {
    let raw = RAW.get(key).filter(|raw| raw.kind == Q::NAME)?;
    let read_once = || {
        let [low, likely, high] = [&raw.low, &raw.likely, &raw.high].map(|bound| {
            let written = read::<Q>(bound.as_str()?).ok()?;
            (!written.tolerance_given).then_some(written.ranged.likely.si())
        });
        Some([low?, likely?, high?])
    };
    let [low, likely, high] = (*raw.si.get_or_init(read_once))?.map(Q::from_si);
    Some(raw.with(Ranged::new(low, likely, high)?))
}

/// The stand-in of that key that is a plain number, a count or a ratio, with its unit (`1` for
/// none); `None` if there is none or it is a quantity.
///
/// ```
/// let (openings, unit) = spile_tables::typical_number("openings").unwrap();
/// assert_eq!((openings.ranged.likely, unit), (20.0, "1"));
/// ```
pub fn typical_number(key: &str) -> Option<(Typical<f64>, &'static str)> {
    let raw = RAW.get(key).filter(|raw| raw.kind == NUMBER)?;
    let [low, likely, high] = [&raw.low, &raw.likely, &raw.high]
        .map(|bound| bound.as_float().or(bound.as_integer().map(|whole| whole as f64)));
    let (low, likely, high) = (low?, likely?, high?);
    let ranged = (low <= likely && likely <= high).then_some(Ranged { low, likely, high })?;
    Some((raw.with(ranged), raw.unit.as_deref()?))
}

/// The key of every stand-in with its kind of quantity, [`Quantity::NAME`] or `number`, by key.
///
/// [`Quantity::NAME`]: spile_quantity::Quantity::NAME
pub fn typical_keys() -> impl Iterator<Item = (&'static str, &'static str)> {
    RAW.iter().map(|(key, raw)| (key.as_str(), raw.kind.as_str()))
}

/// The kind of a stand-in that is no quantity.
const NUMBER: &str = "number";

static RAW: LazyLock<BTreeMap<String, Raw>> = LazyLock::new(|| {
    let files = [
        ("typical", include_str!("../data/typical.toml")),
        ("typical_air", include_str!("../data/typical_air.toml")),
        ("typical_axle", include_str!("../data/typical_axle.toml")),
        ("typical_bank", include_str!("../data/typical_bank.toml")),
        ("typical_cold", include_str!("../data/typical_cold.toml")),
        ("typical_meter", include_str!("../data/typical_meter.toml")),
        ("typical_wire", include_str!("../data/typical_wire.toml")),
    ];
    let mut all = BTreeMap::new();
    for (name, text) in files {
        let some: BTreeMap<String, Raw> =
            toml::from_str(text).unwrap_or_else(|e| panic!("data/{name}.toml: {e}"));
        for (key, raw) in some {
            let before = all.insert(key, raw);
            assert!(before.is_none(), "data/{name}.toml has a key of another file");
        }
    }
    all
});

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Raw {
    kind: String,
    likely: Value,
    low: Value,
    high: Value,
    unit: Option<String>,
    what: String,
    how: String,
    note: Option<String>,
    /// The three bounds of a quantity in its SI unit, read from their texts when first asked for.
    #[serde(skip)]
    si: OnceLock<Option<[f64; 3]>>,
}

impl Raw {
    fn with<Q>(&'static self, ranged: Ranged<Q>) -> Typical<Q> {
        Typical { ranged, what: &self.what, how: &self.how, note: self.note.as_deref() }
    }
}

/// All stand-ins as one table.
pub(crate) fn info() -> TableInfo {
    TableInfo {
        file: "typical",
        name: "typical",
        title: "Stand-ins for what was neither measured nor found in papers",
        source: common_practice(),
        status: Status::FromMemory,
        class: Class::Practice,
        columns: ["low", "likely", "high"].map(|c| (c, "as its kind")).to_vec(),
        rows: RAW.len(),
        note: None,
    }
}

fn common_practice() -> &'static Source {
    source("common-practice").expect("sources.toml has common-practice")
}
