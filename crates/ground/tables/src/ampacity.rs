//! Currents that conductors carry, and what takes away from them.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Area, Current, Length, Temperature};

use crate::Entry;
use crate::conductor::{gauge, same};
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("ampacity", include_str!("../data/ampacity.toml")));

/// The ambient that the current tables are written for: 30 °C.
pub const TABLE_AMBIENT: Temperature = Temperature::celsius(30.0);

/// A conductor by American wire gauge and what it carries by the rating of its insulation.
#[derive(Debug, Clone, PartialEq)]
pub struct AwgCurrents {
    /// The number of the gauge, with 0 for 1/0, -1 for 2/0, -2 for 3/0 and -3 for 4/0.
    pub awg: i32,
    /// Each temperature rating with its current, ascending.
    pub by_rating: Vec<(Temperature, Current)>,
}

/// A conductor by section and what it carries by the rating of its insulation.
#[derive(Debug, Clone, PartialEq)]
pub struct MetricCurrents {
    /// The nominal section.
    pub section: Area,
    /// Each temperature rating with its current, ascending.
    pub by_rating: Vec<(Temperature, Current)>,
}

/// How a cable of 70 °C PVC is laid, as IEC 60364-5-52 names it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Laid {
    /// Method B2: multicore in a conduit on a wall.
    InConduit,
    /// Method C: clipped to a wall.
    Clipped,
    /// Method G: single cores in free air, a diameter apart.
    FreeAir,
}

/// A range of conductors in one bundle and the factor on their currents.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bundle {
    /// The fewest conductors that carry current.
    pub from: u32,
    /// The most, where there is an upper end.
    pub to: Option<u32>,
    /// What to multiply each one's current by.
    pub factor: f64,
}

/// An ambient and the factors on the currents of PVC 70 °C and XLPE 90 °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AmbientFactors {
    /// The temperature of the air.
    pub ambient: Temperature,
    /// For PVC of 70 °C.
    pub pvc70: f64,
    /// For XLPE or EPR of 90 °C.
    pub xlpe90: f64,
}

/// The least sections and greatest spacing of supports by ISO 10133.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Laying {
    /// The least section of a single conductor longer than 200 mm.
    pub single: Area,
    /// The least section of a conductor in a multicore sheath.
    pub in_sheath: Area,
    /// The greatest distance between supports.
    pub support: Length,
    /// The same for a battery cable.
    pub support_battery_cable: Length,
}

/// Currents by gauge and insulation of 33 CFR 183.425 table 5, thinnest first: under 50 V,
/// 30 °C, outside engine spaces.
pub fn boat_currents() -> &'static [Entry<AwgCurrents>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        awg: String,
        c60: f64,
        c75: f64,
        c80: f64,
        c90: f64,
        c105: f64,
        c125: f64,
        c200: f64,
    }
    static ROWS: LazyLock<Vec<Entry<AwgCurrents>>> = LazyLock::new(|| {
        FILE.rows("cfr_183_425", |r: Row| AwgCurrents {
            awg: gauge(&r.awg),
            by_rating: rated(&[
                (60.0, r.c60),
                (75.0, r.c75),
                (80.0, r.c80),
                (90.0, r.c90),
                (105.0, r.c105),
                (125.0, r.c125),
                (200.0, r.c200),
            ]),
        })
    });
    &ROWS
}

/// What a conductor of that gauge carries with insulation of that rating, 30 °C, in free air.
///
/// A rating between two columns takes the lower one.
///
/// ```
/// use spile_quantity::Temperature;
/// let amps = spile_tables::ampacity::boat_current(10, Temperature::celsius(105.0)).unwrap();
/// assert_eq!(amps.value.in_a(), 60.0);
/// ```
pub fn boat_current(awg: i32, rating: Temperature) -> Option<Entry<Current>> {
    let row = boat_currents().iter().find(|e| e.value.awg == awg)?;
    let current = at_rating(&row.value.by_rating, rating)?;
    Some(row.map(|_| current))
}

/// Factors by the rating of the insulation on currents in an engine space of 50 °C, ascending.
pub fn engine_space_factors() -> &'static [Entry<(Temperature, f64)>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        rating: f64,
        factor: f64,
    }
    static ROWS: LazyLock<Vec<Entry<(Temperature, f64)>>> = LazyLock::new(|| {
        FILE.rows("engine_space", |r: Row| (Temperature::celsius(r.rating), r.factor))
    });
    &ROWS
}

/// Factors by the number of conductors that carry current in one bundle, ascending.
pub fn bundles() -> &'static [Entry<Bundle>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        from: u32,
        to: Option<u32>,
        factor: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Bundle>>> = LazyLock::new(|| {
        FILE.rows("bundle_boat", |Row { from, to, factor }: Row| Bundle { from, to, factor })
    });
    &ROWS
}

/// The factor for that many conductors that carry current in one bundle; `None` for none.
pub fn bundle(conductors: u32) -> Option<&'static Entry<Bundle>> {
    bundles().iter().find(|e| {
        conductors >= e.value.from && e.value.to.is_none_or(|greatest| conductors <= greatest)
    })
}

/// Currents by section and insulation as remembered of ISO 10133 annex A, ascending.
pub fn metric_currents() -> &'static [Entry<MetricCurrents>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        section: f64,
        c60: f64,
        c70: f64,
        c90: f64,
        c105: f64,
        c125: f64,
        c200: f64,
    }
    static ROWS: LazyLock<Vec<Entry<MetricCurrents>>> = LazyLock::new(|| {
        FILE.rows("iso10133_annex_a", |r: Row| MetricCurrents {
            section: Area::mm2(r.section),
            by_rating: rated(&[
                (60.0, r.c60),
                (70.0, r.c70),
                (90.0, r.c90),
                (105.0, r.c105),
                (125.0, r.c125),
                (200.0, r.c200),
            ]),
        })
    });
    &ROWS
}

/// What a conductor of that section carries with insulation of that rating, 30 °C, in free air.
///
/// A rating between two columns takes the lower one.
pub fn metric_current(section: Area, rating: Temperature) -> Option<Entry<Current>> {
    let row = metric_currents().iter().find(|e| same(e.value.section, section))?;
    let current = at_rating(&row.value.by_rating, rating)?;
    Some(row.map(|_| current))
}

/// What a cable of 70 °C PVC carries by section and the way it is laid, 30 °C, ascending.
pub fn pvc_currents(laid: Laid) -> impl Iterator<Item = Entry<(Area, Current)>> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        section: f64,
        b2: Option<f64>,
        c: Option<f64>,
        g: Option<f64>,
    }
    static ROWS: LazyLock<Vec<Entry<Row>>> = LazyLock::new(|| FILE.rows("iec60364", |r: Row| r));
    ROWS.iter().filter_map(move |e| {
        let amps = match laid {
            Laid::InConduit => e.value.b2,
            Laid::Clipped => e.value.c,
            Laid::FreeAir => e.value.g,
        }?;
        Some(e.map(|row| (Area::mm2(row.section), Current::a(amps))))
    })
}

/// The ambient factors of IEC 60364-5-52, ascending by ambient.
pub fn ambient_factors() -> &'static [Entry<AmbientFactors>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        ambient: f64,
        pvc70: f64,
        xlpe90: f64,
    }
    static ROWS: LazyLock<Vec<Entry<AmbientFactors>>> = LazyLock::new(|| {
        FILE.rows("iec60364_ambient", |r: Row| AmbientFactors {
            ambient: Temperature::celsius(r.ambient),
            pvc70: r.pvc70,
            xlpe90: r.xlpe90,
        })
    });
    &ROWS
}

/// The grouping factors of IEC 60364-5-52: circuits bunched together, and the factor.
pub fn grouping_factors() -> &'static [Entry<(u32, f64)>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        circuits: u32,
        factor: f64,
    }
    static ROWS: LazyLock<Vec<Entry<(u32, f64)>>> =
        LazyLock::new(|| FILE.rows("iec60364_grouping", |r: Row| (r.circuits, r.factor)));
    &ROWS
}

/// What ISO 10133 asks of the laying of cables.
pub fn laying() -> &'static Entry<Laying> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        value: f64,
        #[serde(rename = "unit")]
        _unit: String,
    }
    static ALL: LazyLock<Entry<Laying>> = LazyLock::new(|| {
        let rows = FILE.rows("iso10133_rules", |r: Row| (r.key, r.value));
        let at = |key: &str| {
            let row = rows.iter().find(|e| e.value.0 == key);
            row.unwrap_or_else(|| panic!("iso10133_rules has no {key}")).value.1
        };
        rows[0].map(|_| Laying {
            single: Area::mm2(at("single-over-200mm")),
            in_sheath: Area::mm2(at("in-a-sheath")),
            support: Length::mm(at("support")),
            support_battery_cable: Length::mm(at("support-battery-cable")),
        })
    });
    &ALL
}

fn rated(figures: &[(f64, f64)]) -> Vec<(Temperature, Current)> {
    figures.iter().map(|&(t, a)| (Temperature::celsius(t), Current::a(a))).collect()
}

fn at_rating(columns: &[(Temperature, Current)], rating: Temperature) -> Option<Current> {
    columns.iter().rev().find(|(column, _)| *column <= rating).map(|&(_, current)| current)
}
