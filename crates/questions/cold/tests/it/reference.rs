//! Whole days against SciPy and `CoolProp`: `tests/reference/days.json`, made by `make_days.py`.
//!
//! Nothing is shared with the program but the stand-ins, and whether those are still the ones that
//! the reference was made with is checked first.

use serde_json::Value;

use crate::{ask, finding, likely};

/// Moist air is `CoolProp`'s there and a Magnus form here, which differ by 0.3 % in what vapour there
/// is; openings are a few per cent of the heat.
const TOLERANCE: f64 = 0.001;

fn file() -> Value {
    serde_json::from_str(include_str!("../reference/days.json")).unwrap()
}

fn near(got: f64, wanted: f64) -> bool {
    (got / wanted - 1.0).abs() < TOLERANCE
}

#[test]
fn the_stand_ins_are_those_of_the_reference() {
    let file = file();
    let used = file["typical"].as_object().unwrap();
    assert!(used.len() >= 15);
    for (key, value) in used {
        let Some(text) = value.as_str() else {
            let (row, _) = spile_tables::typical_number(key).unwrap();
            assert_eq!(Some(row.ranged.likely), value.as_f64(), "{key}: run make_days.py again");
            continue;
        };
        assert!(likelies(key).contains(&text.replace(' ', "")), "{key}: run make_days.py again");
    }
}

/// The likely value of a stand-in, as it may be written.
fn likelies(key: &str) -> Vec<String> {
    use spile_quantity as q;
    fn one<Q: q::Readable>(key: &str, found: &mut Vec<String>) {
        if let Some(row) = spile_tables::typical::<Q>(key) {
            let in_unit = |unit: &q::Unit<Q>| {
                let number = format!("{:.6}", unit.number(row.ranged.likely));
                format!("{}{}", number.trim_end_matches('0').trim_end_matches('.'), unit.symbol())
            };
            found.extend(Q::UNITS.iter().map(in_unit));
            found.push(format!("{}{}", row.ranged.likely.si(), Q::SI_UNIT));
        }
    }
    let mut found = Vec::new();
    one::<q::Power>(key, &mut found);
    one::<q::Share>(key, &mut found);
    one::<q::TemperatureDifference>(key, &mut found);
    one::<q::Conductance>(key, &mut found);
    one::<q::Conductivity>(key, &mut found);
    one::<q::Flow>(key, &mut found);
    one::<q::Mass>(key, &mut found);
    found
}

#[test]
fn days_are_those_that_scipy_finds() {
    let file = file();
    let cases = file["cases"].as_array().unwrap();
    assert!(cases.len() >= 10);
    let (mut saturated, mut settled, mut shared) = (0, 0, 0);
    for (index, case) in cases.iter().enumerate() {
        let answer = ask(case["build"].as_str().unwrap());
        let duties = case["duty"].as_array().unwrap();
        for (i, duty) in duties.iter().enumerate() {
            let wanted = duty.as_f64().unwrap();
            let got = likely(&answer, &format!("b{i}.duty")) / 100.0;
            assert!(near(got, wanted), "case {index}: duty {got}, SciPy {wanted}");
            saturated += usize::from(wanted > 1.0);
            let steps = &finding(&answer, &format!("b{i}.duty")).working;
            let walls = format!("= {:.3} W/K", case["conductance"][i].as_f64().unwrap());
            assert!(
                steps[0].numbers.contains(&walls),
                "case {index}: {} {walls}",
                steps[0].numbers
            );
            if let Some(step) = steps.iter().find(|step| step.what == "air in the bay") {
                let bay = format!("= {:.1} °C", case["bay"].as_f64().unwrap());
                assert!(step.numbers.contains(&bay), "case {index}: {} {bay}", step.numbers);
            }
        }
        // A box that warms past 25 °C is no longer computed as one.
        let insides = case["settled_inside"].as_array().unwrap();
        if insides.iter().all(|inside| inside.as_f64().unwrap() < 25.0) {
            let wanted = case["settled_bay"].as_f64().unwrap();
            let got = likely(&answer, "b0.warmest");
            assert!((got - wanted).abs() < 0.05, "case {index}: {got} °C, SciPy {wanted}");
            settled += duties.iter().filter(|duty| duty.as_f64().unwrap() > 1.0).count();
        }
        shared += usize::from(duties.len() > 1);
        let hot = likely(&answer, "use");
        let wanted = case["hot_ah"].as_f64().unwrap();
        assert!(near(hot, wanted), "case {index}: {hot} Ah, SciPy {wanted}");
        let mild = &finding(&answer, "use").working[1].numbers;
        let wanted = format!("= {:.1} Ah", case["mild_ah"].as_f64().unwrap());
        assert!(mild.ends_with(&wanted), "case {index}: {mild}, SciPy {wanted}");
    }
    assert!(saturated >= 3 && settled >= 2 && shared >= 2, "the reference lacks the hard cases");
}
