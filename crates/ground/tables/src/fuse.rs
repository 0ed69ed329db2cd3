//! Fuses: when they open, what they are made in, what they lose and what they can break.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Current, Length, Resistance, Temperature, Time, Voltage};

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("fuses", include_str!("../data/fuses.toml")));

/// A kind of fuse.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Family {
    /// Regular blade, 19 mm wide (ISO 8820-3 type C).
    Blade,
    /// Miniature blade, 11 mm wide (ISO 8820-3 type F).
    BladeMini,
    /// High-current blade, 29 mm wide (ISO 8820-3 type E).
    BladeHigh,
    /// Small bolt-down strip, 30 mm between the bolts (ISO 8820-5 SF30).
    #[serde(rename = "strip-30")]
    Strip30,
    /// Large bolt-down strip, 51 mm between the bolts (ISO 8820-5 SF51).
    #[serde(rename = "strip-51")]
    Strip51,
    /// Open bolt-down strip of the ANL pattern.
    Anl,
    /// Block on the battery's own post.
    Terminal,
    /// Cartridge of UL class T.
    ClassT,
    /// Glass cartridge, 6.3 × 32 mm.
    Glass,
}

impl Family {
    /// Every kind.
    pub const ALL: [Self; 9] = [
        Self::Blade,
        Self::BladeMini,
        Self::BladeHigh,
        Self::Strip30,
        Self::Strip51,
        Self::Anl,
        Self::Terminal,
        Self::ClassT,
        Self::Glass,
    ];

    /// The name it goes by in files.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Blade => "blade",
            Self::BladeMini => "blade-mini",
            Self::BladeHigh => "blade-high",
            Self::Strip30 => "strip-30",
            Self::Strip51 => "strip-51",
            Self::Anl => "anl",
            Self::Terminal => "terminal",
            Self::ClassT => "class-t",
            Self::Glass => "glass",
        }
    }

    /// The kind of that name.
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|f| f.key() == key)
    }
}

/// Between which times fuses of one kind open.
#[derive(Debug, Clone, PartialEq)]
pub struct Envelope {
    /// The kind of fuse.
    pub family: Family,
    /// The least rating that it speaks of.
    pub from: Current,
    /// The greatest rating that it speaks of.
    pub to: Current,
    /// By load, ascending; nothing is said below the first or above the last.
    pub points: Vec<EnvelopePoint>,
}

/// The times to open at one load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnvelopePoint {
    /// The load as a multiple of the rating: 1.35 is 135 %.
    pub multiple: f64,
    /// It carries that load for at least so long; `None` where no least time is given.
    pub at_least: Option<Time>,
    /// It has opened after so long; `None` where no greatest time is given.
    pub at_most: Option<Time>,
}

/// A rating that is made.
#[derive(Debug, Clone, PartialEq)]
pub struct Rating {
    /// The kind of fuse.
    pub family: Family,
    /// The rated current.
    pub current: Current,
    /// The colour of the body, where the standard gives one.
    pub colour: Option<String>,
}

/// The greatest current that a kind of fuse can break.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Breaking {
    /// The kind of fuse.
    pub family: Family,
    /// Up to this DC voltage.
    pub voltage: Voltage,
    /// The greatest current.
    pub current: Current,
}

/// A rule on how far a fuse may sit from what feeds it.
#[derive(Debug, Clone, PartialEq)]
pub struct Distance {
    /// `iso`, `boat`, `boat-sheathed` or `boat-sheathed-battery`.
    pub key: String,
    /// The greatest length of cable.
    pub length: Length,
    /// When it applies.
    pub says: String,
}

/// Rules between a fuse and the cable after it, as plain ratios.
#[derive(Debug, Clone, PartialEq)]
pub struct Protection {
    /// A blade has opened within 600 s at this multiple of its rating.
    pub tripping_blade: Entry<f64>,
    /// The current that surely opens the fuse may be this multiple of the cable's.
    pub tripping_over_cable: Entry<f64>,
    /// The rating itself may be this multiple of the cable's current, on boats.
    pub fuse_over_cable_boat: Entry<f64>,
}

/// What a fuse should carry for hours, as shares of its rating.
#[derive(Debug, Clone, PartialEq)]
pub struct Continuous {
    /// At 25 °C.
    pub at_25c: Entry<f64>,
    /// For longer than three hours.
    pub over_3h: Entry<f64>,
}

/// The breaking capacity asked for by the cold-cranking current of a lead-acid bank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BreakingByBattery {
    /// Up to this cold-cranking current; `None` for all above.
    pub cranking_to: Option<Current>,
    /// The main fuse, at the bank.
    pub main: Current,
    /// Fuses behind it.
    pub branch: Current,
}

/// The envelope of every kind of fuse that has one.
pub fn envelopes() -> &'static [Entry<Envelope>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        family: Family,
        from: f64,
        to: f64,
        load: f64,
        t_min: Option<f64>,
        t_max: Option<f64>,
    }
    static ALL: LazyLock<Vec<Entry<Envelope>>> = LazyLock::new(|| {
        let mut all: Vec<Entry<Envelope>> = Vec::new();
        for row in FILE.rows("time_current", |r: Row| r) {
            let r = &row.value;
            let point = EnvelopePoint {
                multiple: r.load / 100.0,
                at_least: r.t_min.map(Time::s),
                at_most: r.t_max.map(Time::s),
            };
            let (from, to) = (Current::a(r.from), Current::a(r.to));
            match all.last_mut() {
                Some(e) if e.value.family == r.family && e.value.from == from => {
                    e.value.points.push(point);
                    e.status = e.status.max(row.status);
                }
                _ => all.push(row.map(|_| Envelope {
                    family: r.family,
                    from,
                    to,
                    points: vec![point],
                })),
            }
        }
        all
    });
    &ALL
}

/// The envelope of a fuse of that kind and rating; `None` where no table was found.
///
/// ```
/// use spile_quantity::Current;
/// use spile_tables::fuse::{Family, envelope};
/// let ten = envelope(Family::Blade, Current::a(10.0)).unwrap();
/// let double = ten.value.points.iter().find(|p| p.multiple == 2.0).unwrap();
/// assert_eq!(double.at_most.unwrap().in_s(), 5.0);
/// ```
pub fn envelope(family: Family, rating: Current) -> Option<&'static Entry<Envelope>> {
    envelopes()
        .iter()
        .find(|Entry { value: e, .. }| e.family == family && e.from <= rating && rating <= e.to)
}

/// Every rating of every kind, ascending within a kind.
pub fn ratings() -> &'static [Entry<Rating>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        family: Family,
        rating: f64,
        colour: Option<String>,
    }
    static ROWS: LazyLock<Vec<Entry<Rating>>> = LazyLock::new(|| {
        FILE.rows("rating", |r: Row| Rating {
            family: r.family,
            current: Current::a(r.rating),
            colour: r.colour,
        })
    });
    &ROWS
}

/// The ratings that a kind of fuse is made in, ascending.
pub fn ratings_of(family: Family) -> impl Iterator<Item = &'static Entry<Rating>> {
    ratings().iter().filter(move |e| e.value.family == family)
}

/// The resistance of a fuse when cold, where it is known.
pub fn cold_resistance(family: Family, rating: Current) -> Option<Entry<Resistance>> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        family: Family,
        rating: f64,
        resistance: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Row>>> =
        LazyLock::new(|| FILE.rows("cold_resistance", |r: Row| r));
    ROWS.iter()
        .find(|e| e.value.family == family && Current::a(e.value.rating) == rating)
        .map(|e| e.map(|row| Resistance::mohm(row.resistance)))
}

/// The voltage lost across a hot fuse at its rated current, where it is known.
pub fn rated_drop(family: Family, rating: Current) -> Option<Entry<Voltage>> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        family: Family,
        rating: f64,
        drop: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Row>>> = LazyLock::new(|| FILE.rows("rated_drop", |r: Row| r));
    ROWS.iter()
        .find(|e| e.value.family == family && Current::a(e.value.rating) == rating)
        .map(|e| e.map(|row| Voltage::mv(row.drop)))
}

/// Breaking capacities, by kind and ascending voltage.
pub fn breakings() -> &'static [Entry<Breaking>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        family: Family,
        volts: f64,
        amps: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Breaking>>> = LazyLock::new(|| {
        FILE.rows("breaking", |r: Row| Breaking {
            family: r.family,
            voltage: Voltage::v(r.volts),
            current: Current::a(r.amps),
        })
    });
    &ROWS
}

/// What a kind of fuse can break at a DC voltage; `None` above its highest, and for glass.
///
/// ```
/// use spile_quantity::Voltage;
/// use spile_tables::fuse::{Family, breaking};
/// let blade = breaking(Family::Blade, Voltage::v(14.6)).unwrap();
/// assert_eq!(blade.value.current.in_a(), 1000.0);
/// assert!(breaking(Family::Glass, Voltage::v(12.0)).is_none());
/// ```
pub fn breaking(family: Family, voltage: Voltage) -> Option<&'static Entry<Breaking>> {
    breakings().iter().find(|e| e.value.family == family && voltage <= e.value.voltage)
}

/// What a fuse should carry for hours.
pub fn continuous() -> &'static Continuous {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        share: f64,
    }
    static ALL: LazyLock<Continuous> = LazyLock::new(|| {
        let rows = FILE.rows("continuous", |r: Row| (r.key, r.share));
        Continuous { at_25c: pick(&rows, "at-25c"), over_3h: pick(&rows, "over-3h") }
    });
    &ALL
}

/// The share of its rating that a high-current blade carries by the temperature round it,
/// ascending; the only such curve found, so a stand-in for other kinds.
pub fn ambient_shares() -> &'static [Entry<(Temperature, f64)>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        ambient: f64,
        share: f64,
    }
    static ROWS: LazyLock<Vec<Entry<(Temperature, f64)>>> =
        LazyLock::new(|| FILE.rows("ambient", |r: Row| (Temperature::celsius(r.ambient), r.share)));
    &ROWS
}

/// Rules between a fuse and the cable after it.
pub fn protection() -> &'static Protection {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        value: f64,
        #[serde(rename = "unit")]
        _unit: String,
    }
    static ALL: LazyLock<Protection> = LazyLock::new(|| {
        let rows = FILE.rows("protection", |r: Row| (r.key, r.value));
        Protection {
            tripping_blade: pick(&rows, "tripping-blade"),
            tripping_over_cable: pick(&rows, "tripping-over-cable"),
            fuse_over_cable_boat: pick(&rows, "fuse-over-cable-boat"),
        }
    });
    &ALL
}

/// How far a fuse may sit from what feeds it, by each rule.
pub fn distances() -> &'static [Entry<Distance>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        length: f64,
        says: String,
    }
    static ROWS: LazyLock<Vec<Entry<Distance>>> = LazyLock::new(|| {
        FILE.rows("distance", |r: Row| Distance {
            key: r.key,
            length: Length::mm(r.length),
            says: r.says,
        })
    });
    &ROWS
}

/// Breaking capacity asked for by the size of a lead-acid bank, ascending.
pub fn breaking_by_battery() -> &'static [Entry<BreakingByBattery>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        cranking_to: Option<f64>,
        main: f64,
        branch: f64,
    }
    static ROWS: LazyLock<Vec<Entry<BreakingByBattery>>> = LazyLock::new(|| {
        FILE.rows("breaking_by_battery", |r: Row| BreakingByBattery {
            cranking_to: r.cranking_to.map(Current::a),
            main: Current::a(r.main),
            branch: Current::a(r.branch),
        })
    });
    &ROWS
}

fn pick(rows: &[Entry<(String, f64)>], key: &str) -> Entry<f64> {
    let row = rows.iter().find(|e| e.value.0 == key);
    row.unwrap_or_else(|| panic!("data/fuses.toml has no {key}")).map(|(_, value)| *value)
}
