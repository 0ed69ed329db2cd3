//! Moist air against FAO 56 and `CoolProp`.

use serde::Deserialize;
use spile_heat::HeatError;
use spile_heat::air::{
    MoistAir, enthalpy_j_per_kg, exchange, humidity_ratio, pressure_at, saturation_pressure,
};
use spile_quantity::{Length, Pressure, Volume};

use crate::{celsius, near, read};

#[derive(Deserialize)]
struct Reference {
    states: Vec<State>,
}

#[derive(Deserialize)]
struct State {
    temperature_c: f64,
    relative_humidity: f64,
    pressure_pa: f64,
    humidity_ratio: f64,
    enthalpy_j_per_kg: f64,
    vapour_pressure_pa: f64,
    dry_air_kg_per_m3: f64,
}

impl State {
    fn air(&self) -> MoistAir {
        MoistAir {
            temperature: celsius(self.temperature_c),
            relative_humidity: self.relative_humidity,
            pressure: Pressure::pa(self.pressure_pa),
        }
    }
}

fn coolprop() -> Vec<State> {
    read::<Reference>(include_str!("../reference/air.json")).states
}

#[test]
fn saturation_and_altitude_are_those_of_fao_56() {
    let kpa = |t| saturation_pressure(celsius(t)).unwrap().in_pa() / 1000.0;
    // FAO 56 (1998), example 3: maximum 24.5 °C and minimum 15 °C.
    near("FAO 56 example 3, 24.5 °C", kpa(24.5), 3.075, 0.0005);
    near("FAO 56 example 3, 15 °C", kpa(15.0), 1.705, 0.0005);
    near("FAO 56 example 3, mean", f64::midpoint(kpa(24.5), kpa(15.0)), 2.39, 0.005);
    // FAO 56 (1998), example 2.
    let at_1800_m = pressure_at(Length::m(1800.0)).unwrap().in_pa() / 1000.0;
    near("FAO 56 example 2", at_1800_m, 81.8, 0.05);
}

#[test]
fn water_in_air_is_that_of_coolprop() {
    // Ideal gases leave out the enhancement factor, 0.4 to 0.5 % of the vapour pressure.
    for state in coolprop() {
        let name = format!("CoolProp, {} °C", state.temperature_c);
        let w = humidity_ratio(state.air()).unwrap();
        near(&name, w / state.humidity_ratio, 1.0, 0.008);
        let saturated = saturation_pressure(celsius(state.temperature_c)).unwrap().in_pa();
        let e_pa = state.relative_humidity * saturated;
        near(&name, e_pa / state.vapour_pressure_pa, 1.0, 0.007);
    }
}

#[test]
fn enthalpy_differences_are_those_of_coolprop() {
    // From every state to every cooler one of the same pressure: within 0.5 % of the difference
    // between the states furthest apart, and within 1 % of each that is above 20 kJ/kg.
    let states = coolprop();
    let mut compared = 0;
    for warm in &states {
        for cold in &states {
            let expected = warm.enthalpy_j_per_kg - cold.enthalpy_j_per_kg;
            if warm.pressure_pa != cold.pressure_pa || expected < 20_000.0 {
                continue;
            }
            let h = |state: &State| enthalpy_j_per_kg(state.air()).unwrap();
            let name = format!("CoolProp, {} to {} °C", warm.temperature_c, cold.temperature_c);
            near(&name, h(warm) - h(cold), expected, 0.01 * expected);
            compared += 1;
        }
    }
    assert!(compared > 60, "{compared}");
}

#[test]
fn exchanged_air_brings_the_heat_of_coolprops_states() {
    // m·(h1 − h2) less the heat left in the condensate, all from CoolProp's figures. Water keeps
    // 4.19 kJ/(kg·K); frost −333.6 kJ/kg and 2.05 kJ/(kg·K).
    let states = coolprop();
    let find = |t: f64, p: f64| {
        states.iter().find(|s| s.temperature_c == t && s.pressure_pa == p).expect("a state")
    };
    for (from, to, water_kj) in
        [(43.0, 4.0, 16.76), (35.0, 4.0, 16.76), (25.0, 0.5, 2.1), (32.0, -18.0, -370.5)]
    {
        for p in [101_325.0, 81_800.0] {
            let (warm, cold) = (find(from, p), find(to, p));
            let kg = 0.1 * cold.dry_air_kg_per_m3;
            let water = kg * (warm.humidity_ratio - cold.humidity_ratio);
            let expected =
                kg * (warm.enthalpy_j_per_kg - cold.enthalpy_j_per_kg) - water * water_kj * 1000.0;
            let got = exchange(Volume::litres(100.0), warm.air(), cold.air()).unwrap();
            let name = format!("CoolProp, {from} to {to} °C at {p} Pa");
            near(&name, got.heat.in_j(), expected, 0.01 * expected);
            near(&name, got.water.in_kg(), water, 0.01 * water);
        }
    }
}

#[test]
fn what_cannot_be_is_refused() {
    let air = |t, rh, p| MoistAir {
        temperature: celsius(t),
        relative_humidity: rh,
        pressure: Pressure::pa(p),
    };
    for bad in [
        air(70.0, 0.5, 101_325.0),
        air(20.0, 1.2, 101_325.0),
        air(20.0, -0.1, 101_325.0),
        air(20.0, 0.5, 1013.0),
        air(f64::NAN, 0.5, 101_325.0),
    ] {
        assert!(matches!(humidity_ratio(bad), Err(HeatError::OutOfRange { .. })), "{bad:?}");
    }
    let error = saturation_pressure(celsius(70.0)).unwrap_err().to_string();
    assert_eq!(error, "air temperature is 70 °C, and the formula holds from -40 to 60 °C");
}
