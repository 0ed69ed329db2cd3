//! Cold storage against physics and the printed pages.

use spile_quantity::{Share, Temperature};
use spile_tables::cold::{
    Chill, air, climate_class, climate_classes, food, food_temperature, foods, insulation,
    insulations, power_off, prepared_lives, produce_lives, surface, surfaces, water,
};
use spile_tables::{Class, Status};

use crate::near;

#[test]
fn conductivities_of_the_ashrae_table() {
    let cases =
        [("pir", 0.0235), ("pu-spray", 0.026), ("xps", 0.026), ("eps", 0.0355), ("plywood", 0.13)];
    for (key, expected) in cases {
        let entry = insulation(key).unwrap();
        near(key, entry.value.conductivity.in_w_per_m_k(), expected, 1e-12);
        assert_eq!(entry.status, Status::Verified);
    }
    assert!(insulation("straw").is_none());
}

#[test]
fn only_a_vacuum_insulates_better_than_gas_filled_foam() {
    // Still air conducts 0.0257 W/(m·K); foam full of heavier gas goes down to some 0.018.
    for entry in insulations() {
        let k = entry.value.conductivity.in_w_per_m_k();
        let vacuum = entry.value.key == "vacuum-panel";
        assert!(if vacuum { k < 0.01 } else { (0.018..=0.15).contains(&k) }, "{}", entry.value.key);
    }
    let foam = |key| insulation(key).unwrap().value.conductivity;
    assert!(foam("fridge-foam-fresh") < foam("fridge-foam-aged"), "foam ages for the worse");
}

#[test]
fn ashrae_and_iso_surface_coefficients_agree_within_a_tenth() {
    // ASHRAE 8.29, 9.26, 6.13 W/(m²·K) against 1/0.13, 1/0.10, 1/0.17 of ISO 6946.
    for way in ["wall", "heat-up", "heat-down"] {
        let ashrae = surface(&format!("still-{way}")).unwrap().value.w_per_m2_k;
        let iso = surface(&format!("iso-inside-{way}")).unwrap().value.w_per_m2_k;
        near(way, ashrae, iso, 0.10);
    }
    // ISO 6946 takes 4 m/s outside: 1/0.04 = 25 lies between ASHRAE's 3.4 and 6.7 m/s.
    let at = |key| surface(key).unwrap().value.w_per_m2_k;
    assert!(at("wind-3.4-m-s") < at("iso-outside") && at("iso-outside") < at("wind-6.7-m-s"));
    assert!(surfaces().iter().all(|e| e.status == Status::FromMemory));
}

#[test]
fn air_is_consistent_with_itself() {
    // Prandtl number is ν·ρ·c/k; ρ(20 °C) = 353/293 and ρ(0 °C) = 353/273 kg/m³.
    let a = air().value;
    near("density", a.density_0c_kg_per_m3, 353.0 / 273.0, 0.001);
    let density_20c = a.density_0c_kg_per_m3 * 273.15 / 293.15;
    let prandtl = a.viscosity_m2_per_s * density_20c * a.heat_capacity_j_per_kg_k
        / a.conductivity.in_w_per_m_k();
    near("Prandtl", prandtl, a.prandtl, 0.02);
    assert_eq!(air().status, Status::FromMemory, "worth as much as its weakest figure");
}

#[test]
fn water_against_the_fao_kilocalories() {
    // FAO Fisheries Technical Paper 436: 80 kcal/kg to melt ice; the 15 °C calorie is 4.1855 J.
    let w = water().value;
    near("fusion", w.fusion_j_per_kg, 80.0 * 4185.5, 0.005);
    near("liquid", w.liquid_j_per_kg_k, 4190.0, 1e-9);
    near("ice", w.ice_j_per_kg_k, 2050.0, 1e-9);
}

#[test]
fn foods_against_the_appendix_estimate_by_water() {
    // Earle, appendix 7: c = 4.19 w + 0.84 (1 − w), latent = 335 w. Printed rows within 10 %;
    // bread, ice cream and fish were measured on other samples than their water tells.
    for entry in foods() {
        let f = &entry.value;
        let Some(w) = f.water.map(Share::in_of_one) else { continue };
        if !["bread", "ice cream"].contains(&f.key.as_str()) {
            near(&f.key, f.above_j_per_kg_k, 4190.0 * w + 840.0 * (1.0 - w), 0.10);
        }
        if f.key != "fish" {
            near(&f.key, f.latent_j_per_kg, 335_000.0 * w, 0.07);
        }
        assert!(f.below_j_per_kg_k < f.above_j_per_kg_k, "{}: ice holds less", f.key);
    }
}

#[test]
fn printed_foods() {
    // Earle appendix 7 and ASHRAE Refrigeration 2006, chapter 9, table 3 [kJ/(kg·K), kJ/kg].
    let cases = [
        ("apples", 3.60, 1.88, 280.0),
        ("beef", 3.22, 1.67, 255.0),
        ("milk", 3.9, 2.05, 289.0),
        ("carrots", 3.60, 1.88, 293.0),
        ("carrots, 2006", 3.92, 2.00, 293.0),
        ("lettuce", 4.09, 1.65, 320.0),
    ];
    for (key, above, below, latent) in cases {
        let f = &food(key).unwrap().value;
        near(key, f.above_j_per_kg_k, above * 1000.0, 1e-9);
        near(key, f.below_j_per_kg_k, below * 1000.0, 1e-9);
        near(key, f.latent_j_per_kg, latent * 1000.0, 1e-9);
    }
}

#[test]
fn food_temperatures() {
    // FDA 40 °F and 0 °F; British advice 5 °C, law for businesses 8 °C.
    let c = |key| food_temperature(key).unwrap();
    near("40 °F", c("fridge-us").value.in_celsius(), (40.0 - 32.0) / 1.8, 0.011);
    near("0 °F", c("freezer").value.in_celsius(), -32.0 / 1.8, 0.013);
    assert!(c("fridge-uk-advice").value < c("fridge-uk-business").value);
    assert_eq!(c("fridge-us").class, Class::Practice);
    for (key, hours) in [("fridge", 4.0), ("freezer-full", 48.0), ("freezer-half", 24.0)] {
        near(key, power_off(key).unwrap().value.in_hours(), hours, 1e-12);
    }
}

#[test]
fn climate_classes_of_iec_62552() {
    for (name, low, high) in
        [("SN", 10.0, 32.0), ("N", 16.0, 32.0), ("ST", 16.0, 38.0), ("T", 16.0, 43.0)]
    {
        let class = climate_class(name).unwrap();
        assert_eq!(class.value.low, Temperature::celsius(low));
        assert_eq!(class.value.high, Temperature::celsius(high));
        assert_eq!(class.may_stop(), name != "T");
    }
    assert!(climate_classes().windows(2).all(|p| p[0].value.high <= p[1].value.high));
}

#[test]
fn storage_lives() {
    // New England vegetable guide table 16 (Handbook 66) and the University of California list.
    let life = |crop: &str| produce_lives().iter().find(|e| e.value.crop == crop).unwrap();
    let days = |crop| life(crop).value.keeps.map(|t| t.in_days().round());
    assert_eq!(days("peppers"), [14.0, 21.0]);
    assert_eq!(days("carrots, topped"), [180.0, 210.0]);
    assert_eq!(days("peas"), [6.0, 8.0]);
    assert_eq!(life("cucumbers").value.chill, Some(Chill::High));
    for entry in produce_lives() {
        let p = &entry.value;
        assert!(p.best[0] <= p.best[1] && p.keeps[0] <= p.keeps[1], "{}", p.crop);
        let harmed = matches!(p.chill, Some(Chill::Moderate | Chill::High));
        assert!(!harmed || p.best[0].in_celsius() >= 4.0, "{} is kept too cold", p.crop);
    }
    for entry in prepared_lives() {
        assert!(entry.value.keeps[0] < entry.value.keeps[1] && !entry.may_stop());
    }
}
