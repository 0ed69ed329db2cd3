//! Conductors: resistance by size, materials, and the trade's rules for voltage drop.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::{Area, Resistance};

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("conductors", include_str!("../data/conductors.toml")));

const METRES_IN_1000_FT: f64 = 304.8;

/// A copper conductor sold by its section: the greatest resistance of one metre at 20 °C \[Ω\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MetricSize {
    /// The nominal section.
    pub section: Area,
    /// Flexible (class 5), plain copper.
    pub class5: Resistance,
    /// Flexible (class 5), tinned copper.
    pub class5_tinned: Resistance,
    /// Stranded for fixed wiring (class 2), plain copper.
    pub class2: Resistance,
}

/// A stranded, uncoated copper conductor by American wire gauge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AwgSize {
    /// The number of the gauge, with 0 for 1/0, -1 for 2/0, -2 for 3/0 and -3 for 4/0.
    pub awg: i32,
    /// The resistance of one metre at 75 °C \[Ω\].
    pub stranded_75c: Resistance,
}

/// Cable sold by SAE gauge, which holds less copper than AWG cable of the same number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SaeSize {
    /// The number of the gauge, counted as [`AwgSize::awg`].
    pub gauge: i32,
    /// The area of copper.
    pub area: Area,
}

/// What a conductor or a vehicle's frame is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    /// The name to ask for it by: `copper`, `mild-steel`, `aluminium-6063`.
    pub key: String,
    /// What people call it.
    pub name: String,
    /// The least resistivity at 20 °C \[Ω·m\].
    pub rho20_low_ohm_m: f64,
    /// The likeliest resistivity at 20 °C \[Ω·m\].
    pub rho20_ohm_m: f64,
    /// The greatest resistivity at 20 °C \[Ω·m\].
    pub rho20_high_ohm_m: f64,
    /// The temperature coefficient of resistance at 20 °C \[1/K\], where one is given.
    pub alpha20_per_k: Option<f64>,
}

/// The constant of a trade rule for voltage drop, in the unit that the rule is printed in.
#[derive(Debug, Clone, PartialEq)]
pub struct DropConstant {
    /// `circular-mil-boat`, `circular-mil-75c` or `metric`.
    pub key: String,
    /// The constant.
    pub constant: f64,
    /// Its unit: `Ω·cmil/ft` or `Ω·mm²/m`.
    pub unit: String,
}

/// How much a circuit minds a low voltage.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Service {
    /// Panel feeders, pumps, and whatever cuts out at low voltage.
    Critical,
    /// All else.
    Other,
}

/// The sizes of IEC 60228 from 0.5 to 120 mm², ascending.
pub fn metric_sizes() -> &'static [Entry<MetricSize>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        section: f64,
        class5: f64,
        class5_tinned: f64,
        class2: f64,
    }
    static ROWS: LazyLock<Vec<Entry<MetricSize>>> = LazyLock::new(|| {
        FILE.rows("iec60228", |row: Row| MetricSize {
            section: Area::mm2(row.section),
            class5: Resistance::mohm(row.class5),
            class5_tinned: Resistance::mohm(row.class5_tinned),
            class2: Resistance::mohm(row.class2),
        })
    });
    &ROWS
}

/// The size of that section, where IEC 60228 has it.
///
/// ```
/// use spile_quantity::Area;
/// let cable = spile_tables::conductor::metric_size(Area::mm2(1.5)).unwrap();
/// assert_eq!(cable.value.class5.in_mohm(), 13.3); // of one metre
/// ```
pub fn metric_size(section: Area) -> Option<&'static Entry<MetricSize>> {
    metric_sizes().iter().find(|e| same(e.value.section, section))
}

/// The stranded sizes of NEC chapter 9 table 8 from 18 AWG to 4/0, thinnest first.
pub fn awg_sizes() -> &'static [Entry<AwgSize>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        awg: String,
        stranded: f64,
    }
    static ROWS: LazyLock<Vec<Entry<AwgSize>>> = LazyLock::new(|| {
        FILE.rows("nec_table8", |row: Row| AwgSize {
            awg: gauge(&row.awg),
            stranded_75c: Resistance::ohm(row.stranded / METRES_IN_1000_FT),
        })
    });
    &ROWS
}

/// The sizes sold by SAE gauge from 18 to 4/0, thinnest first.
pub fn sae_sizes() -> &'static [Entry<SaeSize>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        gauge: String,
        area: f64,
    }
    static ROWS: LazyLock<Vec<Entry<SaeSize>>> = LazyLock::new(|| {
        FILE.rows("sae_gauge", |row: Row| SaeSize {
            gauge: gauge(&row.gauge),
            area: circular_mils(row.area),
        })
    });
    &ROWS
}

/// The copper in cable sold by that SAE gauge (0 for 1/0, -3 for 4/0).
pub fn sae_size(number: i32) -> Option<&'static Entry<SaeSize>> {
    sae_sizes().iter().find(|e| e.value.gauge == number)
}

/// What conductors and frames are made of.
pub fn materials() -> &'static [Entry<Material>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        name: String,
        low: f64,
        likely: f64,
        high: f64,
        alpha: Option<f64>,
    }
    static ROWS: LazyLock<Vec<Entry<Material>>> = LazyLock::new(|| {
        FILE.rows("material", |row: Row| Material {
            key: row.key,
            name: row.name,
            rho20_low_ohm_m: row.low * 1e-6,
            rho20_ohm_m: row.likely * 1e-6,
            rho20_high_ohm_m: row.high * 1e-6,
            alpha20_per_k: row.alpha,
        })
    });
    &ROWS
}

/// The material of that key.
pub fn material(key: &str) -> Option<&'static Entry<Material>> {
    materials().iter().find(|e| e.value.key == key)
}

/// The constants of the trade's voltage-drop rules, to check hand-worked figures with.
pub fn drop_constants() -> &'static [Entry<DropConstant>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        constant: f64,
        unit: String,
    }
    static ROWS: LazyLock<Vec<Entry<DropConstant>>> = LazyLock::new(|| {
        FILE.rows("drop_constant", |Row { key, constant, unit }: Row| DropConstant {
            key,
            constant,
            unit,
        })
    });
    &ROWS
}

/// The greatest share of its voltage that a circuit should lose on the way (0.03 is 3 %).
pub fn greatest_drop(service: Service) -> Entry<f64> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        kind: Service,
        share: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Row>>> =
        LazyLock::new(|| FILE.rows("drop_practice", |r: Row| r));
    let row = ROWS.iter().find(|e| e.value.kind == service);
    row.expect("drop_practice has a row a service").map(|r| r.share / 100.0)
}

/// Whether two sections are the same size as sold.
pub(crate) fn same(a: Area, b: Area) -> bool {
    (a - b).abs() <= a * 1e-6
}

/// The gauge number of `18` to `1/0`, `2/0`, `3/0`, `4/0`.
pub(crate) fn gauge(text: &str) -> i32 {
    let number = match text.split_once("/0") {
        Some((noughts, "")) => noughts.parse::<i32>().map(|n| 1 - n),
        _ => text.parse(),
    };
    number.unwrap_or_else(|_| panic!("{text:?} is no gauge"))
}

fn circular_mils(count: f64) -> Area {
    let mil_mm = 0.0254;
    Area::mm2(count * std::f64::consts::FRAC_PI_4 * mil_mm * mil_mm)
}
