//! "What may that cable carry?" Continuous current by copper, insulation, ambient and bundle.

use std::sync::LazyLock;

use spile_quantity::{Awg, CableSize, Current, Temperature};
use spile_tables::Entry;
use spile_tables::ampacity::{AwgCurrents, TABLE_AMBIENT, boat_currents, bundle};

use crate::NoAnswer;
use crate::conductor::section;
use crate::no_answer::{log_log, within};

/// What a cable may carry for good, and how that came about.
#[derive(Debug, Clone, PartialEq)]
pub struct Allowed {
    /// What it may carry: the table's current times both factors.
    pub current: Current,
    /// What the table gives it by itself, in air of 30 °C.
    pub in_free_air: Entry<Current>,
    /// The factor for the air round it.
    pub ambient_factor: f64,
    /// The factor for the cables beside it.
    pub bundle_factor: Entry<f64>,
}

/// What a cable may carry for good where it lies, I \[A\].
///
/// **Formula** I = I₃₀ · √((Tᵣ − Tₐ)/(Tᵣ − 30 °C)) · f, with I₃₀ from [`in_free_air`] and f by the
/// number of conductors in the bundle
///
/// **Arguments** `size`; `rating` Tᵣ \[°C\], 60 to 200, taken as the next lower of 60, 75, 80, 90,
/// 105, 125 and 200; `ambient` Tₐ \[°C\], −40 to below Tᵣ; `bundled`, how many conductors that carry
/// current lie together, 1 or more.
///
/// **Validity** copper, under 50 V, not buried in foam (there no table holds; count it as a bundle
/// of the least favourable kind).
///
/// **Errors** those of [`in_free_air`] and [`ambient_factor`]; [`NoAnswer::NotInTables`] for a
/// bundle of none.
///
/// **Source** 33 CFR 183.425 table 5; bundles by makers of UL 1426 boat cable; both by the tables.
///
/// **Example** three 8 AWG cables of 105 °C in one bundle carry 56 A each (maker's table):
///
/// ```
/// use spile_circuit::ampacity::allowed;
/// use spile_quantity::{Awg, CableSize, Temperature};
///
/// let size = CableSize::Awg(Awg::new(8).unwrap());
/// let (rating, ambient) = (Temperature::celsius(105.0), Temperature::celsius(30.0));
/// assert!((allowed(size, rating, ambient, 3).unwrap().current.in_a() - 56.0).abs() < 1e-9);
/// ```
pub fn allowed(
    size: CableSize,
    rating: Temperature,
    ambient: Temperature,
    bundled: u32,
) -> Result<Allowed, NoAnswer> {
    let in_free_air = in_free_air(size, rating)?;
    let ambient_factor = ambient_factor(column(rating)?, TABLE_AMBIENT, ambient)?;
    let bundle_factor = bundle(bundled)
        .map(|entry| entry.map(|bundle| bundle.factor))
        .ok_or_else(|| NoAnswer::NotInTables { what: format!("a bundle of {bundled}") })?;
    let current = in_free_air.value * (ambient_factor * bundle_factor.value);
    Ok(Allowed { current, in_free_air, ambient_factor, bundle_factor })
}

/// What a cable may carry by itself in air of 30 °C, I₃₀ \[A\].
///
/// **Formula** by the table at the gauges that it has; between two of them
/// log I = log I₁ + (log I₂ − log I₁) · log(A/A₁)/log(A₂/A₁), A the area of copper.
///
/// **Arguments** `size`, with copper from 18 AWG (0.823 mm²) to 4/0 (107.2 mm²); where the section
/// is a range, its least counts; `rating` \[°C\], 60 to 200, taken as the next lower column.
///
/// **Validity** as the table: single conductors or pairs, under 50 V, outside engine spaces. Between
/// its rows the current of copper cables of one kind follows a power of the area closely.
///
/// **Errors** [`NoAnswer::OutOfRange`] beyond the ends of the table.
///
/// **Source** 33 CFR 183.425 table 5 by the tables; the interpolation for metric and SAE sizes is
/// common practice, no source.
///
/// **Example**
///
/// ```
/// use spile_circuit::ampacity::in_free_air;
/// use spile_quantity::{Area, CableSize, Temperature};
///
/// let four = in_free_air(CableSize::Metric(Area::mm2(4.0)), Temperature::celsius(105.0)).unwrap();
/// assert!(four.value.in_a() > 45.0 && four.value.in_a() < 60.0); // between 12 and 10 AWG
/// assert!(in_free_air(CableSize::Metric(Area::mm2(0.75)), Temperature::celsius(105.0)).is_err());
/// ```
pub fn in_free_air(size: CableSize, rating: Temperature) -> Result<Entry<Current>, NoAnswer> {
    let column = column(rating)?;
    let area_mm2 = section(size)?.low.in_mm2();
    let rows = &*ROWS;
    within("copper", area_mm2, "mm²", rows[0].area_mm2, rows[rows.len() - 1].area_mm2)?;
    let above = rows.partition_point(|row| row.area_mm2 < area_mm2).clamp(1, rows.len() - 1);
    let point = |row: &Row| {
        let found = row.of.value.by_rating.iter().find(|(of, _)| *of == column);
        let not_there = || NoAnswer::NotInTables { what: format!("copper of {area_mm2} mm²") };
        found.map(|(_, current)| (row.area_mm2, current.in_a())).ok_or_else(not_there)
    };
    let (thin, thick) = (point(&rows[above - 1])?, point(&rows[above])?);
    Ok(rows[above].of.map(|_| Current::a(log_log(thin, thick, area_mm2))))
}

/// A row of the table with the area of its gauge.
struct Row {
    area_mm2: f64,
    of: &'static Entry<AwgCurrents>,
}

/// The table by area of copper, worked out once.
static ROWS: LazyLock<Vec<Row>> = LazyLock::new(|| {
    let rows = boat_currents().iter();
    rows.filter_map(|of| Some(Row { area_mm2: Awg::new(of.value.awg)?.area().in_mm2(), of }))
        .collect()
});

/// The factor on a current for another ambient than that of the table.
///
/// **Formula** f = √((Tᵣ − Tₐ)/(Tᵣ − T₀))
///
/// **Arguments** `rating` Tᵣ \[°C\], above T₀; `table` T₀ \[°C\]; `ambient` Tₐ \[°C\], −40 to below Tᵣ.
///
/// **Validity** cooling in proportion to the difference in temperature.
///
/// **Errors** [`NoAnswer::OutOfRange`] where the ambient is not below the rating.
///
/// **Source** IEC 60364-5-52; reproduces the factors of that standard, of 33 CFR and of IEC 60092.
///
/// **Example** 90 °C insulation at 40 °C has 0.91 of its current at 30 °C (IEC 60364-5-52):
///
/// ```
/// use spile_circuit::ampacity::ambient_factor;
/// use spile_quantity::Temperature;
///
/// let [rating, table, ambient] = [90.0, 30.0, 40.0].map(Temperature::celsius);
/// assert!((ambient_factor(rating, table, ambient).unwrap() - 0.91).abs() < 0.005);
/// ```
pub fn ambient_factor(
    rating: Temperature,
    table: Temperature,
    ambient: Temperature,
) -> Result<f64, NoAnswer> {
    let (rating_c, table_c) = (rating.in_celsius(), table.in_celsius());
    within("insulation rating", rating_c, "°C", table_c + 1.0, 300.0)?;
    let ambient_c = within("ambient", ambient.in_celsius(), "°C", -40.0, rating_c - 0.1)?;
    Ok(((rating_c - ambient_c) / (rating_c - table_c)).sqrt())
}

/// The column of the table that a rating counts as: its own, else the next lower.
fn column(rating: Temperature) -> Result<Temperature, NoAnswer> {
    let columns = &boat_currents()[0].value.by_rating;
    let (least, most) = (columns[0].0, columns[columns.len() - 1].0);
    let rating_c = within(
        "insulation rating",
        rating.in_celsius(),
        "°C",
        least.in_celsius(),
        most.in_celsius(),
    )?;
    let found = columns.iter().rev().find(|(of, _)| of.in_celsius() <= rating_c);
    Ok(found.map_or(least, |(of, _)| *of))
}
