//! Bolts, threads, wood, thin metal and glue: what they hold.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Area, Force, Length, Pressure, Ranged};

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("fasteners", include_str!("../data/fasteners.toml")));

type Rows<T> = LazyLock<Vec<Entry<T>>>;

/// A property class of bolts.
#[derive(Debug, Clone, PartialEq)]
pub struct BoltClass {
    /// Its mark: `8.8`, `A2-70`.
    pub class: String,
    /// Least tensile strength: ultimate.
    pub ultimate: Pressure,
    /// Least yield or 0.2 % proof stress; `None` where it was not seen.
    pub yields: Option<Pressure>,
    /// Proof stress that a bolt stands without a set; `None` where the standard has none.
    pub proof: Option<Pressure>,
}

/// A coarse metric thread, with the limits of a 6g bolt and a 6H hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thread {
    /// The nominal diameter: 6 mm for M6.
    pub thread: Length,
    /// The pitch.
    pub pitch: Length,
    /// The stress area.
    pub stress_area: Area,
    /// The greatest minor diameter of the hole.
    pub minor_max: Length,
    /// The least pitch diameter of the bolt.
    pub pitch_min: Length,
    /// The least major diameter of the bolt.
    pub major_min: Length,
    /// The greatest pitch diameter of the hole.
    pub pitch_max: Length,
}

/// What a fastener in a thin wall of one thickness is trusted with: an allowable.
#[derive(Debug, Clone, PartialEq)]
pub struct PullOut {
    /// What it is: `tapping screw`, `rivet nut`.
    pub key: String,
    /// Its diameter.
    pub diameter: Length,
    /// The wall it is in.
    pub wall: Length,
    /// What is allowed of it.
    pub allowed: Ranged<Force>,
}

/// The bending strength and stiffness of a panel's material.
#[derive(Debug, Clone, PartialEq)]
pub struct Bending {
    /// Allowable stress.
    pub allowed: Ranged<Pressure>,
    /// Modulus of elasticity.
    pub stiffness: Pressure,
}

/// Something named with bounds.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Bounds {
    key: String,
    low: f64,
    likely: f64,
    high: f64,
}

impl Bounds {
    fn ranged<Q>(&self, make: impl Fn(f64) -> Q) -> Ranged<Q> {
        Ranged { low: make(self.low), likely: make(self.likely), high: make(self.high) }
    }
}

/// Property classes of carbon-steel and stainless bolts.
pub fn bolt_classes() -> &'static [Entry<BoltClass>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        class: String,
        ultimate: f64,
        yields: Option<f64>,
        proof: Option<f64>,
    }
    static ROWS: Rows<BoltClass> = LazyLock::new(|| {
        let rows = |table| {
            FILE.rows(table, |row: Row| BoltClass {
                class: row.class,
                ultimate: Pressure::mpa(row.ultimate),
                yields: row.yields.map(Pressure::mpa),
                proof: row.proof.map(Pressure::mpa),
            })
        };
        let mut all = rows("bolt_class");
        all.extend(rows("stainless_class"));
        all
    });
    &ROWS
}

/// The property class of that mark, in any case of letters.
///
/// ```
/// let class = spile_tables::fastener::bolt_class("8.8").unwrap();
/// assert_eq!(class.value.proof.unwrap().in_mpa(), 580.0);
/// assert!(class.may_stop());
/// ```
pub fn bolt_class(mark: &str) -> Option<&'static Entry<BoltClass>> {
    bolt_classes().iter().find(|entry| entry.value.class.eq_ignore_ascii_case(mark.trim()))
}

/// Coarse metric threads from M4 to M10.
pub fn threads() -> &'static [Entry<Thread>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        thread: f64,
        pitch: f64,
        stress_area: f64,
        minor_max: f64,
        pitch_min: f64,
        major_min: f64,
        pitch_max: f64,
    }
    static ROWS: Rows<Thread> = LazyLock::new(|| {
        FILE.rows("thread", |row: Row| Thread {
            thread: Length::mm(row.thread),
            pitch: Length::mm(row.pitch),
            stress_area: Area::mm2(row.stress_area),
            minor_max: Length::mm(row.minor_max),
            pitch_min: Length::mm(row.pitch_min),
            major_min: Length::mm(row.major_min),
            pitch_max: Length::mm(row.pitch_max),
        })
    });
    &ROWS
}

/// The coarse thread of that nominal diameter.
pub fn thread(nominal: Length) -> Option<&'static Entry<Thread>> {
    threads().iter().find(|entry| (entry.value.thread - nominal).abs() < Length::mm(1e-3))
}

/// Species of wood, each with its specific gravity \[1\].
pub fn woods() -> &'static [Entry<(String, f64)>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        species: String,
        gravity: f64,
    }
    static ROWS: Rows<(String, f64)> =
        LazyLock::new(|| FILE.rows("wood", |row: Row| (row.species, row.gravity)));
    &ROWS
}

/// Ultimate strength of metals by what they are made into: `steel tube`, `body sheet`.
pub fn sheet_metals() -> &'static [Entry<(String, Ranged<Pressure>)>] {
    static ROWS: Rows<(String, Ranged<Pressure>)> = LazyLock::new(|| {
        FILE.rows("sheet_metal", |row: Bounds| {
            let ranged = row.ranged(Pressure::mpa);
            (row.key, ranged)
        })
    });
    &ROWS
}

/// Aluminium alloys with their least ultimate and yield strength.
pub fn aluminium() -> &'static [Entry<(String, [Pressure; 2])>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        alloy: String,
        ultimate: f64,
        yields: f64,
    }
    static ROWS: Rows<(String, [Pressure; 2])> = LazyLock::new(|| {
        FILE.rows("aluminium", |row: Row| {
            (row.alloy, [row.ultimate, row.yields].map(Pressure::mpa))
        })
    });
    &ROWS
}

/// What panels of `plywood` or `solid wood` bear in bending.
pub fn bendings() -> &'static [Entry<(String, Bending)>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        low: f64,
        likely: f64,
        high: f64,
        stiffness: f64,
    }
    static ROWS: Rows<(String, Bending)> = LazyLock::new(|| {
        FILE.rows("bending", |row: Row| {
            let [low, likely, high] = [row.low, row.likely, row.high].map(Pressure::mpa);
            let allowed = Ranged { low, likely, high };
            (row.key, Bending { allowed, stiffness: Pressure::mpa(row.stiffness) })
        })
    });
    &ROWS
}

/// What fasteners in thin walls are trusted with.
pub fn pull_outs() -> &'static [Entry<PullOut>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        diameter: f64,
        wall: f64,
        low: f64,
        likely: f64,
        high: f64,
    }
    static ROWS: Rows<PullOut> = LazyLock::new(|| {
        FILE.rows("pull_out", |row: Row| {
            let [low, likely, high] = [row.low, row.likely, row.high].map(Force::n);
            PullOut {
                key: row.key,
                diameter: Length::mm(row.diameter),
                wall: Length::mm(row.wall),
                allowed: Ranged { low, likely, high },
            }
        })
    });
    &ROWS
}

/// What one latch holds before it opens: `magnet latch`, `positive latch`.
pub fn latches() -> &'static [Entry<(String, Ranged<Force>)>] {
    static ROWS: Rows<(String, Ranged<Force>)> = LazyLock::new(|| {
        FILE.rows("latch", |row: Bounds| {
            let ranged = row.ranged(Force::n);
            (row.key, ranged)
        })
    });
    &ROWS
}

/// Lap shear of adhesives: the least and the most \[Pa\].
pub fn adhesives() -> &'static [Entry<(String, [Pressure; 2])>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        low: f64,
        high: f64,
    }
    static ROWS: Rows<(String, [Pressure; 2])> = LazyLock::new(|| {
        FILE.rows("adhesive", |row: Row| (row.key, [row.low, row.high].map(Pressure::mpa)))
    });
    &ROWS
}
