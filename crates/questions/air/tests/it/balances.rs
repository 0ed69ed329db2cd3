//! Bays whose balance can be written down.

use crate::{INVERTER, ask, finding, likely, locker};

/// A locker with an inverter that only idles, of so many watts.
fn idling(air: &str, cabin: &str, idle: &str) -> String {
    let inverter = INVERTER.replace("88 %", "100 %").replace("15 W", idle);
    format!("states.corner.hot-day.cabin = \"{cabin}\"\n{}", locker(air, &inverter))
}

#[test]
fn bays_settle_where_they_are_reckoned_by_hand() {
    // (what, text, °C by hand, tolerance)
    let stack = r#"
        air.inlet = { area = "160 cm2", above = "60 mm" }
        air.outlet = { area = "160 cm2", above = "560 mm" }
    "#;
    let fan = |blows: &str| {
        format!(
            "air.inlet = {{ area = \"1000 cm2\" }}\nair.outlet = {{ area = \"1000 cm2\" }}\n\
             air.fan = {{ flow = \"40 m³/h\", pressure = \"1000 Pa\", at = \"outlet\", \
             blows = \"{blows}\" }}"
        )
    };
    let cases = [
        // Measured as a whole: 30 + 42/6 = 37 °C.
        ("measured", idling("conductance = \"6 W/K\"", "30 °C", "42 W"), 37.0, 1e-9),
        // Furniture 3 and skin 1 W/K: 30 + 42/4 = 40.5 °C.
        ("closed", idling("", "30 °C", "42 W"), 40.5, 1e-9),
        // A fan that nothing slows: 40 m³/h are 12.81 W/K at 35 °C; 5 % of it are drawn in again, and
        // with 4 W/K of walls 110 W make 110/16.17 = 6.80 K. Blowing in at the top half of it goes
        // round: 110/10.40 = 10.57 K.
        ("fan", idling(&fan("out"), "35 °C", "110 W"), 41.80, 0.02),
        ("fan turned", idling(&fan("in"), "35 °C", "110 W"), 45.57, 0.02),
        // Ae = 0.62·160/√2 = 70.1 cm²; 10 K over 0.5 m at 318.15 K drive
        // 70.1e-4·√(2·9.807·0.5·10/318.15) = 3.892 L/s, which carry 353/308·1006·3.892e-3 = 4.488 W/K,
        // 5 % of it drawn in again: 4.263. (4 + 4.263)·10 = 82.6 W.
        ("stack", idling(stack, "35 °C", "82.6 W"), 45.0, 0.02),
    ];
    for (what, text, by_hand, tolerance) in cases {
        let got = likely(&ask(&text), "locker.warm");
        assert!((got - by_hand).abs() <= tolerance, "{what}: {got} against {by_hand}");
    }
}

#[test]
fn an_inverter_at_part_of_its_load_by_hand() {
    // 2273 W × 10 % of the afternoon × (1 − 88 %) + 15 W idle = 42.276 W over 4 W/K: 10.569 K.
    let text = format!("states.corner.hot-day.cabin = \"30 °C\"\n{}", locker("", INVERTER));
    let got = likely(&ask(&text), "locker.warm");
    assert!((got - 40.569).abs() < 1e-3, "{got}");
}

#[test]
fn the_bank_warms_its_bay_by_i_squared_r() {
    // 100 A through two batteries of 4 mΩ side by side: 10 000 × 0.002 = 20 W; 5 more with the
    // inverter at idle: 25 W over 5 W/K.
    let rest = format!(
        "{}\nbank = {{ kind = \"lifepo4\", count = 2, capacity = \"100 Ah\", resistance = \"4 mΩ\", \
         place = {{ in = \"locker\" }} }}\nsources.alternator = {{ kind = \"alternator\", \
         current = \"100 A\" }}\n",
        "states.corner.hot-day.cabin = \"30 °C\""
    );
    let text =
        format!("{rest}{}", locker("conductance = \"5 W/K\"", &INVERTER.replace("88 %", "100 %")))
            .replace("15 W", "5 W");
    let answer = ask(&text);
    assert!((likely(&answer, "locker.warm") - 35.0).abs() < 1e-9);
    // The same air round the bank.
    assert!((likely(&answer, "bank.warm") - 35.0).abs() < 1e-9);
    assert!(!finding(&answer, "locker.warm").working.is_empty());
}

#[test]
fn a_condenser_in_a_space_of_its_own_leaves_the_cabinets_bay_cold() {
    // The cabinet's walls draw heat from their own bay, which so is colder than the cabin; the
    // condenser's bay gets the whole.
    let fridge = crate::FRIDGE.replace("place = ", "condenser_in = \"recess\"\n    place = ");
    let recess =
        "[bays.recess]\nsize = { width = \"300 mm\", height = \"300 mm\", depth = \"300 mm\" }\n";
    let text = format!(
        "states.corner.hot-day.cabin = \"33 °C\"\n{}",
        locker("", &format!("{recess}{fridge}"))
    );
    let answer = ask(&text);
    assert!(likely(&answer, "locker.warm") < 33.0);
    assert!(likely(&answer, "recess.warm") > 33.0);
}
