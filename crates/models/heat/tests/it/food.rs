//! Food's heat against tables.

use spile_heat::food::{Food, by_water, heat_to_cool};
use spile_quantity::Mass;

use crate::{celsius, near};

#[test]
fn the_estimate_meets_the_table_of_its_source() {
    // Earle, Unit Operations in Food Processing, appendix 7: water, c, frozen c [kJ/(kg·K)], latent
    // heat [kJ/kg]. The rule is an estimate: 5 % above freezing, 12 % below, 10 % of latent heat.
    // The table's carrots (3.60) are left out: ASHRAE corrected them to 3.92, below.
    for (food, water, cp, cp_frozen, latent) in [
        ("apples", 0.84, 3.60, 1.88, 280.0),
        ("cabbage", 0.92, 3.93, 1.97, 306.0),
        ("tomatoes", 0.95, 3.98, 2.01, 310.0),
        ("beef", 0.75, 3.22, 1.67, 255.0),
        ("pork", 0.60, 2.85, 1.59, 197.0),
        ("milk", 0.875, 3.90, 2.05, 289.0),
    ] {
        let got = by_water(water, celsius(-1.0)).unwrap();
        near(food, got.cp_j_per_kg_k / 1000.0 / cp, 1.0, 0.05);
        near(food, got.cp_frozen_j_per_kg_k / 1000.0 / cp_frozen, 1.0, 0.12);
        near(food, got.latent_j_per_kg / 1000.0 / latent, 1.0, 0.10);
    }
    // ASHRAE Handbook Refrigeration (2006), chapter 9, table 3: within 5 % above freezing.
    for (food, water, cp) in
        [("asparagus", 0.924, 4.03), ("carrots", 0.8779, 3.92), ("cucumber", 0.9601, 4.09)]
    {
        let got = by_water(water, celsius(-1.0)).unwrap();
        near(food, got.cp_j_per_kg_k / 1000.0 / cp, 1.0, 0.05);
    }
}

#[test]
fn lean_fish_has_the_heat_of_fao_331() {
    // FAO Fisheries Technical Paper 331 (1992), chapter 3: c = 0.5·fat + 0.3·solids + 1.0·water in
    // kcal/(kg·°C); fish of 80 % water, 1 % fat and 19 % solids: 0.862, that is 3.61 kJ/(kg·K).
    let fish = by_water(0.80, celsius(-1.0)).unwrap();
    near("FAO 331", fish.cp_j_per_kg_k, 0.862 * 4186.8, 0.03 * 3609.0);
}

#[test]
fn warm_shopping_holds_what_the_trade_reckons() {
    // Common practice: 20 kg from 35 to 5 °C are 0.65 kWh, mixed food of 85 to 95 % water.
    let heat = |water| {
        let food = by_water(water, celsius(-1.0)).unwrap();
        heat_to_cool(&food, Mass::kg(20.0), celsius(35.0), celsius(5.0)).unwrap().in_wh()
    };
    assert!(heat(0.85) < 650.0 && 650.0 < heat(0.95), "{} {}", heat(0.85), heat(0.95));
}

#[test]
fn freezing_water_takes_its_latent_heat() {
    // By hand: 1 kg of water from 20 to −10 °C: 4.19·20 + 335 + 2.1·10 = 439.8 kJ. With the exact
    // 4.182, 333.6 and 2.05 of the steam tables 437.7 kJ, 0.5 % apart.
    let water = by_water(1.0, celsius(0.0)).unwrap();
    let heat = heat_to_cool(&water, Mass::kg(1.0), celsius(20.0), celsius(-10.0)).unwrap();
    near("by hand", heat.in_j(), 439_800.0, 1e-6);
    near("steam tables", heat.in_j(), 437_740.0, 0.005 * 437_740.0);
    let back = heat_to_cool(&water, Mass::kg(1.0), celsius(-10.0), celsius(20.0)).unwrap();
    near("there and back", (heat + back).in_j(), 0.0, 1e-9);
}

#[test]
fn impossible_food_is_refused() {
    assert!(by_water(1.1, celsius(-1.0)).is_err());
    assert!(by_water(0.8, celsius(3.0)).is_err());
    let food = by_water(0.8, celsius(-1.0)).unwrap();
    let bad = Food { latent_j_per_kg: -1.0, ..food };
    assert!(heat_to_cool(&bad, Mass::kg(1.0), celsius(20.0), celsius(4.0)).is_err());
    assert!(heat_to_cool(&food, Mass::kg(1.0), celsius(120.0), celsius(4.0)).is_err());
    assert!(heat_to_cool(&food, Mass::kg(-1.0), celsius(20.0), celsius(4.0)).is_err());
}
