//! What is refused before anything is computed.

use super::{Draw, Element, Network, Node, Trouble};

/// A resistance below this is none: no wire is short enough to have it.
pub(super) const NONE_BELOW_OHM: f64 = 1e-9;

/// Refuses what has no answer: figures outside all reason (the limits also keep the equations far
/// from singular), loops without resistance, floating nodes.
pub(super) fn check(net: &Network) -> Result<(), Trouble> {
    check_figures(net)?;
    check_loops(net)?;
    check_ties(net)
}

fn check_figures(net: &Network) -> Result<(), Trouble> {
    for wired in &net.branches {
        for (quantity, unit, value, low, high, must_be) in figures(wired.element) {
            if !(low..=high).contains(&value) {
                let branch = wired.name.clone();
                return Err(Trouble::Input { branch, quantity, value, unit, must_be });
            }
        }
    }
    Ok(())
}

/// What a figure is, its unit, its value, its limits, and the limits in words.
type Figure = (&'static str, &'static str, f64, f64, f64, &'static str);

fn figures(element: Element) -> impl Iterator<Item = Figure> {
    let resistance = |name, value| (name, "Ω", value, 0.0, 1e7, "0 Ω to 10 MΩ");
    let both = match element {
        Element::Resistor(value) => [Some(resistance("resistance", value.in_ohm())), None],
        Element::Battery { open, inner } => {
            let open_v = open.in_v();
            let open = ("open-circuit voltage", "V", open_v, -1e6, 1e6, "within ±1 MV");
            [Some(open), Some(resistance("internal resistance", inner.in_ohm()))]
        }
        Element::Load { draw, cut_out } => {
            let draw = match draw {
                Draw::Current(i) => ("current", "A", i.in_a(), -1e6, 1e6, "within ±1 MA"),
                Draw::Resistance(r) => ("resistance", "Ω", r.in_ohm(), 1e-6, 1e7, "1 µΩ to 10 MΩ"),
                Draw::Power(p) => ("power", "W", p.in_w(), 0.0, 1e9, "0 W to 1 GW"),
            };
            let cut_out = cut_out
                .map(|v| ("cut-out voltage", "V", v.in_v(), 1e-3, 1e6, "between 1 mV and 1 MV"));
            [Some(draw), cut_out]
        }
    };
    both.into_iter().flatten()
}

/// Refuses a loop of ideal connections and ideal sources.
fn check_loops(net: &Network) -> Result<(), Trouble> {
    let mut joined = Joined::new(net);
    for wired in &net.branches {
        if wired.element.series_ohm().is_some_and(|ohm| ohm < NONE_BELOW_OHM)
            && !joined.join(wired.from, wired.to)
        {
            return Err(Trouble::NoResistance { branch: wired.name.clone() });
        }
    }
    Ok(())
}

/// Refuses nodes that nothing ties to the reference, whatever the loads do.
fn check_ties(net: &Network) -> Result<(), Trouble> {
    let mut joined = Joined::new(net);
    for wired in &net.branches {
        if let Element::Resistor(_)
        | Element::Battery { .. }
        | Element::Load { draw: Draw::Resistance(_), cut_out: None } = wired.element
        {
            joined.join(wired.from, wired.to);
        }
    }
    let reference = joined.root(0);
    match (0..net.nodes.len()).find(|node| joined.root(*node) != reference) {
        Some(node) => Err(Trouble::Floating {
            node: net.nodes[node].clone(),
            reference: net.nodes[0].clone(),
        }),
        None => Ok(()),
    }
}

/// Which nodes hang together.
struct Joined(Vec<usize>);

impl Joined {
    fn new(net: &Network) -> Self {
        Self((0..net.nodes.len()).collect())
    }

    fn root(&mut self, mut node: usize) -> usize {
        while self.0[node] != node {
            self.0[node] = self.0[self.0[node]];
            node = self.0[node];
        }
        node
    }

    /// Joins two nodes; false if they hung together before.
    fn join(&mut self, from: Node, to: Node) -> bool {
        let (from, to) = (self.root(from.0), self.root(to.0));
        self.0[from] = to;
        from != to
    }
}
