//! Whole vehicles against SciPy: `tests/reference/vehicles.json`, made by `make_vehicles.py`.
//!
//! There every mass is laid on the beam and all balances are solved as one linear system; here
//! only a weighing is known, and what came and went since then.

use serde_json::Value;

use crate::{after, finding};

/// Kilograms and hundredths, as good as the printed digits of what was put in.
const TOLERANCE: f64 = 1e-4;

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

/// A limit far away, so that every finding has its figure.
const FAR: &str = "{ front = \"12000 kg\", rear = \"12000 kg\", tag = \"12000 kg\", total = \"12000 kg\", nose = \"12000 kg\" }";

fn part(name: &str, item: &Value) -> String {
    // A thing that looks left shows its width along the vehicle and its depth across it.
    format!(
        "[parts.{name}]\nkind = \"furniture\"\nmass = \"{} kg\"\nsize = {{ width = \"{} m\", depth = \"{} m\", height = \"1 m\" }}\n",
        item["mass"], item["length"], item["width"]
    )
}

fn place(item: &Value) -> String {
    format!(
        "place = {{ from_rear = \"{} m\", from_left = \"{} m\", faces = \"left\" }}\n",
        item["from_rear"], item["from_left"]
    )
}

fn build(v: &Value) -> String {
    let kind = if v["kind"] == "trailer" { "trailer" } else { "van" };
    let mut text = format!(
        "[vehicle]\nkind = \"{kind}\"\nwheelbase = \"{} m\"\nrear_axle = \"{} m\"\ntrack = \"{} m\"\ninside = {{ length = \"6 m\", width = \"{} m\" }}\nlimits = {FAR}\n",
        v["wheelbase"], v["rear_axle"], v["track"], v["width"]
    );
    if let Some(tag) = v["tag"].as_object() {
        let (behind, share) = (&tag["behind"], number(&tag["share"]) * 100.0);
        text += &format!("tag = {{ behind = \"{behind} m\", share = \"{share} %\" }}\n");
    }
    if let Some(car) = v["car"].as_object() {
        text += &format!(
            "[vehicle.towing]\nwheelbase = \"{} m\"\noverhang = \"{} m\"\nfront = \"{} kg\"\nrear = \"{} kg\"\nlimits = {FAR}\n",
            car["wheelbase"], car["overhang"], car["front"], car["rear"]
        );
    }
    for (what, at) in v["at"].as_object().unwrap() {
        text += &format!(
            "[states.at.{what}]\nfrom_rear = \"{} m\"\nfrom_left = \"{} m\"\n",
            at[0], at[1]
        );
    }
    for (name, state) in v["states"].as_object().unwrap() {
        text += &format!(
            "[states.load.{name}]\nwater = \"{} L\"\nfuel = \"{} L\"\npeople = \"{} kg\"\nfood = \"{} kg\"\n",
            state["water"], state["fuel"], state["people"], state["food"]
        );
    }
    let w = &v["weighed"];
    text += &format!(
        "[weighings.one]\nstate = \"touring\"\nfront = \"{} kg\"\nrear = \"{} kg\"\nleft = \"{} kg\"\nright = \"{} kg\"\n",
        w["front"], w["rear"], w["left"], w["right"]
    );
    for name in ["stays", "goes"] {
        text += &part(name, &v[name]);
        text += &format!("[items.{name}]\n{}", place(&v[name]));
    }
    text += &part("comes", &v["comes"]);
    text
}

#[test]
fn the_stand_in_of_fuel_is_that_of_the_reference() {
    let file: Value = serde_json::from_str(include_str!("../reference/vehicles.json")).unwrap();
    let (fuel, _) = spile_tables::typical_number("fuel-density").unwrap();
    assert_eq!(Some(fuel.ranged.likely), file["fuel"].as_f64(), "run make_vehicles.py again");
}

#[test]
fn loads_after_a_job_are_those_of_a_linear_solver() {
    let file: Value = serde_json::from_str(include_str!("../reference/vehicles.json")).unwrap();
    let vehicles = file["vehicles"].as_array().unwrap();
    assert_eq!(vehicles.len(), 24);
    let mut checked = 0;
    for (at, v) in vehicles.iter().enumerate() {
        let job =
            format!("[[remove]]\nwhat = \"items.goes\"\n[add.items.comes]\n{}", place(&v["comes"]));
        let answer = after(&build(v), &job);
        for id in v["expected"]["full"].as_object().unwrap().keys() {
            let found = finding(&answer, id);
            let state = ["touring", "full"].into_iter().find(|state| found.label.ends_with(state));
            let expected = number(&v["expected"][state.expect("a state")][id]);
            let got = found.figure.unwrap().likely;
            assert!((got - expected).abs() < TOLERANCE, "{at} {id}: {got}, SciPy {expected}");
            checked += 1;
        }
    }
    assert_eq!(checked, 12 * 4 + 4 * 5 + 8 * 8);
}
