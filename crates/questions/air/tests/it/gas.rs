//! The bank's gas against IEC 62485, and lithium in the cold.

use spile_answer::Unit;

use crate::{ask, finding, likely, locker, words};

fn bank(kind: &str, air: &str, rest: &str) -> String {
    let bank = format!(
        "bank = {{ kind = \"{kind}\", capacity = \"100 Ah @ 20 h\", place = {{ in = \"locker\" }} }}\n"
    );
    format!("{bank}{}", locker(air, rest))
}

fn holes(area: &str, leads_to: &str) -> String {
    format!(
        "air.inlet = {{ area = \"{area}\" }}\n\
         air.outlet = {{ area = \"{area}\", leads_to = \"{leads_to}\" }}"
    )
}

#[test]
fn openings_for_gas_are_those_of_the_standard() {
    // (kind, cm² by hand at the likely end, at the unfavourable end)
    // Sealed: stationary boost 8 mA/Ah gives 0.24 m³/h and 6.7 cm²; traction IU of 1 A/100 Ah is
    // worse: 0.05·6·1 = 0.30 m³/h, 8.4 cm²; IUI 1.5 A/100 Ah: 12.6 cm².
    // Vented: 20 mA/Ah in both: 0.60 m³/h, 16.8 cm²; IUI 6 A/100 Ah: 1.8 m³/h, 50.4 cm².
    for (kind, by_hand, worst) in [("AGM", 8.4, 12.6), ("gel", 8.4, 12.6), ("flooded", 16.8, 50.4)]
    {
        let answer = ask(&bank(kind, &holes("60 cm2", "outdoors"), ""));
        let gas = finding(&answer, "bank.gas");
        let figure = gas.figure.unwrap();
        assert_eq!((words(gas).as_str(), figure.unit), ("good", Unit::SquareCentimetre), "{kind}");
        assert!((figure.likely - by_hand).abs() < 1e-9, "{kind}: {figure:?}");
        assert!((figure.unfavourable - worst).abs() < 1e-9, "{kind}: {figure:?}");
    }
}

#[test]
fn no_more_gas_than_current() {
    // A charger of 0.5 A cannot make more gas than that: 0.05·6·0.5 = 0.15 m³/h, 4.2 cm².
    let source = "[sources.solar]\nkind = \"solar\"\ncurrent = \"0.5 A\"\n";
    let answer = ask(&bank("AGM", &holes("60 cm2", "outdoors"), source));
    assert!((likely(&answer, "bank.gas") - 4.2).abs() < 1e-9);
}

#[test]
fn every_verdict_on_gas() {
    // Sealed, 100 Ah: 8.4 cm² likely, 12.6 at worst; a fifth of 8.4 is 1.68.
    let cases = [
        ("AGM", "20 cm2", "good"),
        ("AGM", "10 cm2", "care unsure"),
        ("AGM", "5 cm2", "care practice"),
        ("AGM", "1 cm2", "stop"),
        ("AGM", "0 cm2", "stop"),
    ];
    for (kind, area, expected) in cases {
        let answer = ask(&bank(kind, &holes(area, "outdoors"), ""));
        let gas = finding(&answer, "bank.gas");
        assert_eq!(words(gas), expected, "{area}");
        assert_eq!(gas.mend.is_some(), expected != "good", "{area}");
    }
    let tight = ask(&bank("AGM", &holes("5 cm2", "outdoors"), ""));
    let mend = finding(&tight, "bank.gas").mend.clone().unwrap();
    assert!(mend.contains("13 cm² each"), "{mend}");
    let void = ask(&bank("AGM", &holes("60 cm2", "closed void"), ""));
    assert_eq!(words(finding(&void, "bank.gas")), "stop");
}

#[test]
fn liquid_acid_in_the_living_space_is_against_practice() {
    let answer = ask(&bank("flooded", &holes("90 cm2", "cabin"), ""));
    let gas = finding(&answer, "bank.gas");
    assert_eq!(words(gas), "care practice");
    assert!(gas.says.contains("living space"), "{}", gas.says);
}

#[test]
fn what_is_missing_is_asked_for() {
    let nowhere = ask("bank = { kind = \"AGM\", capacity = \"95 Ah\" }\n");
    let gas = finding(&nowhere, "bank.gas");
    assert_eq!((words(gas).as_str(), gas.asks[0].input.as_ref()), ("open", "place of the bank"));
    assert!(gas.figure.is_some());
    let closed = ask(&bank("AGM", "", ""));
    let gas = finding(&closed, "bank.gas");
    assert_eq!(words(gas), "open");
    assert!(gas.asks[0].how.contains("Width times height"));
    let blank = ask("bank = { kind = \"AGM\" }\n");
    let gas = finding(&blank, "bank.gas");
    assert_eq!((words(gas).as_str(), gas.asks.len()), ("open", 1));
}

#[test]
fn lithium_needs_no_opening_but_no_charge_in_the_cold() {
    let answer = ask(&bank("lifepo4", "", ""));
    assert_eq!(words(finding(&answer, "bank.gas")), "good");
    let cold = finding(&answer, "bank.cold");
    assert_eq!(words(cold), "care unsure");
    assert_eq!(cold.limit.as_ref().unwrap().value, 0.0);
    assert!(
        cold.asks[0].how.contains("thermometer") || cold.asks[0].how.contains("Thermometer"),
        "{:?}",
        cold.asks
    );
    assert!(cold.mend.as_deref().unwrap().contains("below 0 °C"));
    assert_eq!(words(finding(&answer, "bank.warm")), "good");
}
