//! Sizes of units and readings against pint, an independent library of units: `units.json`, with
//! its generator and versions beside it in `tests/reference`. Exact fractions rounded once there,
//! so the same bits are expected here; where π comes in, twelve digits.

use serde_json::Value;
use spile_quantity::*;

#[test]
fn every_unit_has_the_size_that_pint_gives_it() {
    macro_rules! each { ($($kind:ident)*) => { $(units_of::<$kind>();)* } }
    each!(Length Area Volume Mass Force Time TemperatureDifference Voltage Current Resistance Power
        Energy Charge Flow Pressure Angle Conductance Conductivity);
}

#[test]
fn numbers_are_rounded_once_as_fractions_are_by_python() {
    macro_rules! each { ($($kind:ident)*) => { 0 $(+ readings_of::<$kind>())* } }
    let count: usize = each!(Length Area Volume Mass Force Time Temperature TemperatureDifference
        Voltage Current Resistance Power Energy Charge Flow Pressure Angle Conductance Conductivity);
    assert_eq!(count, reference()["readings"].as_array().unwrap().len());
}

fn units_of<Q: Readable>() {
    for unit in Q::UNITS {
        let reference = reference();
        let row = rows::<Q>(&reference, "units").find(|row| row["unit"] == unit.symbol());
        let si = row.unwrap_or_else(|| panic!("no row for {}", unit.symbol()))["si"].as_f64();
        let ours = read::<Q>(&format!("1 {}", unit.symbol())).unwrap().ranged.likely.si();
        assert!((ours / si.unwrap() - 1.0).abs() < 1e-12, "{}: {ours}, {si:?}", unit.symbol());
        assert_eq!(unit.of(1.0).map(Q::si), Some(ours));
        assert!((unit.number(Q::from_si(ours)) - 1.0).abs() < 1e-12);
    }
}

fn readings_of<Q: Readable>() -> usize {
    let reference = reference();
    let mut count = 0;
    for row in rows::<Q>(&reference, "readings") {
        let text = row["text"].as_str().unwrap();
        let ours = read::<Q>(text).unwrap().ranged.likely.si();
        assert_eq!(Ok(ours), row["si"].as_str().unwrap().parse(), "{text}");
        count += 1;
    }
    count
}

fn rows<'a, Q: Quantity>(reference: &'a Value, list: &str) -> impl Iterator<Item = &'a Value> {
    reference[list].as_array().unwrap().iter().filter(|row| row["kind"] == Q::NAME)
}

fn reference() -> Value {
    serde_json::from_str(include_str!("../reference/units.json")).unwrap()
}
