//! Node voltages and battery currents against ngspice; `tests/reference/networks.py` wrote the
//! file, runs ngspice and has SciPy as a second opinion.

use std::collections::BTreeMap;

use serde::Deserialize;
use spile_circuit::network::{Branch, Draw, Network, solve};
use spile_quantity::{Current, Power, Resistance, Voltage};

#[derive(Deserialize)]
pub struct Reference {
    ngspice: String,
    reference: String,
    pub networks: Vec<Case>,
}

#[derive(Deserialize)]
pub struct Case {
    pub name: String,
    pub elements: Vec<Part>,
    node_v: BTreeMap<String, f64>,
    battery_a: BTreeMap<String, f64>,
    /// How far ngspice and SciPy are apart at most.
    apart_v: f64,
}

#[derive(Deserialize, Clone)]
pub struct Part {
    kind: String,
    pub name: String,
    from: String,
    to: String,
    #[serde(default)]
    ohm: f64,
    #[serde(default)]
    open_v: f64,
    #[serde(default)]
    inner_ohm: f64,
    #[serde(default)]
    current_a: f64,
    #[serde(default)]
    power_w: f64,
}

pub fn reference() -> Reference {
    serde_json::from_str(include_str!("../reference/networks.json")).unwrap()
}

/// The network of these elements, and its branches in their order.
pub fn network(reference: &str, elements: &[Part]) -> (Network, Vec<Branch>) {
    let mut net = Network::new(reference);
    let branches = elements.iter().map(|part| {
        let (from, to) = (net.node(&part.from), net.node(&part.to));
        let draw = match part.kind.as_str() {
            "battery" => {
                let (open, inner) = (Voltage::v(part.open_v), Resistance::ohm(part.inner_ohm));
                return net.battery(&part.name, from, to, open, inner);
            }
            "resistor" => return net.resistor(&part.name, from, to, Resistance::ohm(part.ohm)),
            "current" => Draw::Current(Current::a(part.current_a)),
            "resistance" => Draw::Resistance(Resistance::ohm(part.ohm)),
            "power" => Draw::Power(Power::w(part.power_w)),
            other => panic!("no such element: {other}"),
        };
        net.load(&part.name, from, to, draw, None)
    });
    let branches = branches.collect();
    (net, branches)
}

#[test]
fn node_voltages_are_those_of_ngspice() {
    let reference = reference();
    assert_eq!(reference.ngspice, "39");
    assert!(reference.networks.len() >= 30);
    for case in &reference.networks {
        let (net, branches) = network(&reference.reference, &case.elements);
        let found = solve(&net).unwrap_or_else(|trouble| panic!("{}: {trouble}", case.name));
        for (name, expected_v) in &case.node_v {
            let volt = found.voltage(net.find(name).unwrap()).in_v();
            assert!(
                (volt - expected_v).abs() <= 1e-9 + 2.0 * case.apart_v,
                "{}, {name}: {volt} V, ngspice {expected_v} V",
                case.name
            );
        }
        for (part, branch) in case.elements.iter().zip(&branches) {
            if let Some(expected_a) = case.battery_a.get(&part.name) {
                let ampere = found.current(*branch).in_a();
                assert!(
                    (ampere - expected_a).abs() <= 1e-6 * expected_a.abs().max(1.0),
                    "{}, {}: {ampere} A, ngspice {expected_a} A",
                    case.name,
                    part.name
                );
            }
        }
    }
}
