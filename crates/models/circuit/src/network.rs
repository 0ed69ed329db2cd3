//! The circuit as people draw it: nodes that have names, and branches that join them.
//!
//! # The method
//! Modified nodal analysis. Every node but the reference has Kirchhoff's current law as its
//! equation; a branch without resistance (an ideal connection, an ideal source) brings one more
//! unknown, its current, and one more equation, the voltage across it. Loads of constant power
//! bend the equations: Newton's method replaces each, around its present voltage u, by the
//! conductance −P/u² beside a current source (its *companion*), starting from the voltages without
//! those loads. Where all voltages fall as the loads rise, which is every ordinary installation,
//! the steps come down on the upper, stable solution from above and never pass it.
//!
//! # Sign convention
//! `from` is the positive side of every branch. A current is positive that flows through a
//! resistor or a load from `from` to `to`, or out of a battery's `from` terminal into the circuit
//! (it discharges). Resistors and loads take power, batteries give it; the two sums are equal.

mod check;
mod collapse;
mod linear;
mod solution;
mod solve;
mod trouble;

use std::collections::BTreeMap;
use std::fmt;

use spile_quantity::{Current, Power, Resistance, Voltage};

pub use solution::Solution;
pub use solve::{solve, solve_as_if_running};
pub use trouble::Trouble;

/// A point of a [`Network`]; belongs to the network that made it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Node(usize);

/// One branch of a [`Network`]; belongs to the network that made it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Branch(usize);

/// What a load takes from the circuit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Draw {
    /// The same current at any voltage; a negative one is a charger in its current limit.
    Current(Current),
    /// A plain resistance: a heating wire, a filament lamp at its working point.
    Resistance(Resistance),
    /// The same power at any voltage, so more current the lower the voltage: whatever has a
    /// switching converter or an inverter in it.
    Power(Power),
}

/// What a branch is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Element {
    /// Cable, joint, fuse, holder, switch, bus bar, body or frame; 0 Ω is an ideal connection.
    Resistor(Resistance),
    /// A battery or another source that holds its voltage but for its own resistance.
    Battery {
        /// The voltage at its terminals without any current.
        open: Voltage,
        /// Its internal resistance.
        inner: Resistance,
    },
    /// Something that uses current.
    Load {
        /// What it takes while it runs.
        draw: Draw,
        /// The voltage at its terminals below which it switches itself off.
        cut_out: Option<Voltage>,
    },
}

/// A direct-current circuit of named nodes and named branches.
///
/// Several branches may join the same two nodes, and loops are as good as trees: a return through
/// both a cable and the body is drawn as it is.
///
/// ```
/// use spile_circuit::network::{Draw, Network, solve};
/// use spile_quantity::{Current, Resistance, Voltage};
///
/// let mut net = Network::new("battery -");
/// let post = net.node("battery +");
/// let plug = net.node("fridge +");
/// net.battery("bank", post, net.reference(), Voltage::v(12.6), Resistance::mohm(6.0));
/// let feed = net.resistor("feed", post, plug, Resistance::mohm(60.0));
/// net.load("fridge", plug, net.reference(), Draw::Current(Current::a(6.0)), None);
/// let found = solve(&net).unwrap();
/// assert!((found.voltage(plug).in_v() - (12.6 - 6.0 * 0.066)).abs() < 1e-9);
/// assert!((found.across(feed).in_mv() - 360.0).abs() < 1e-6);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Network {
    nodes: Vec<String>,
    by_name: BTreeMap<String, Node>,
    branches: Vec<Wired>,
}

/// A branch with its name and its two ends.
#[derive(Debug, Clone, PartialEq)]
struct Wired {
    name: String,
    from: Node,
    to: Node,
    element: Element,
}

impl Network {
    /// An empty circuit that has only its reference node, at 0 V: the bank's negative post.
    pub fn new(reference: &str) -> Self {
        let mut net = Self { nodes: Vec::new(), by_name: BTreeMap::new(), branches: Vec::new() };
        net.node(reference);
        net
    }

    /// The node that all voltages are told against.
    pub fn reference(&self) -> Node {
        Node(0)
    }

    /// The node of this name, made if it is not there yet.
    pub fn node(&mut self, name: &str) -> Node {
        if let Some(node) = self.by_name.get(name) {
            return *node;
        }
        let node = Node(self.nodes.len());
        self.nodes.push(name.to_owned());
        self.by_name.insert(name.to_owned(), node);
        node
    }

    /// The node of this name, if there is one.
    pub fn find(&self, name: &str) -> Option<Node> {
        self.by_name.get(name).copied()
    }

    /// Joins two nodes by a branch; `from` is its positive side.
    pub fn add(&mut self, name: &str, from: Node, to: Node, element: Element) -> Branch {
        let branch = Branch(self.branches.len());
        self.branches.push(Wired { name: name.to_owned(), from, to, element });
        branch
    }

    /// Joins two nodes by a resistance, 0 Ω included.
    pub fn resistor(&mut self, name: &str, from: Node, to: Node, value: Resistance) -> Branch {
        self.add(name, from, to, Element::Resistor(value))
    }

    /// Adds a battery between its positive and its negative post.
    pub fn battery(
        &mut self,
        name: &str,
        positive: Node,
        negative: Node,
        open: Voltage,
        inner: Resistance,
    ) -> Branch {
        self.add(name, positive, negative, Element::Battery { open, inner })
    }

    /// Adds a load between its feed and its return.
    pub fn load(
        &mut self,
        name: &str,
        feed: Node,
        back: Node,
        draw: Draw,
        cut_out: Option<Voltage>,
    ) -> Branch {
        self.add(name, feed, back, Element::Load { draw, cut_out })
    }

    /// What a branch is.
    pub fn element(&self, branch: Branch) -> Element {
        self.branches[branch.0].element
    }

    /// Makes a branch something else, its ends and its name kept: another state, another cable.
    pub fn set(&mut self, branch: Branch, element: Element) {
        self.branches[branch.0].element = element;
    }

    /// The name of a node.
    pub fn node_name(&self, node: Node) -> &str {
        &self.nodes[node.0]
    }

    /// The name of a branch.
    pub fn branch_name(&self, branch: Branch) -> &str {
        &self.branches[branch.0].name
    }

    /// The two ends of a branch, the positive side first.
    pub fn ends(&self, branch: Branch) -> (Node, Node) {
        let wired = &self.branches[branch.0];
        (wired.from, wired.to)
    }

    /// All nodes, the reference first, then as they were made.
    pub fn nodes(&self) -> impl Iterator<Item = Node> + use<> {
        (0..self.nodes.len()).map(Node)
    }

    /// All branches as they were added.
    pub fn branches(&self) -> impl Iterator<Item = Branch> + use<> {
        (0..self.branches.len()).map(Branch)
    }
}

impl fmt::Display for Draw {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Current(current) => write!(f, "{:.2} A", current.in_a()),
            Self::Resistance(resistance) => write!(f, "{:.3} Ω", resistance.in_ohm()),
            Self::Power(power) => write!(f, "{:.1} W", power.in_w()),
        }
    }
}
