//! What was found: voltages, currents, powers.

use spile_quantity::{Current, Power, Voltage};

use super::{Branch, Node};

/// The steady state of a [`Network`](super::Network); nodes and branches are those of that network.
#[derive(Debug, Clone, PartialEq)]
pub struct Solution {
    pub(super) node_v: Vec<f64>,
    pub(super) branch_a: Vec<f64>,
    pub(super) branch_v: Vec<f64>,
    pub(super) off: Vec<bool>,
    pub(super) iterations: usize,
}

impl Solution {
    /// The voltage of a node against the reference \[V\].
    pub fn voltage(&self, node: Node) -> Voltage {
        Voltage::v(self.node_v[node.0])
    }

    /// The voltage between two nodes \[V\], positive if `from` is the higher.
    pub fn between(&self, from: Node, to: Node) -> Voltage {
        self.voltage(from) - self.voltage(to)
    }

    /// The voltage across a branch \[V\], its positive side against the other.
    pub fn across(&self, branch: Branch) -> Voltage {
        Voltage::v(self.branch_v[branch.0])
    }

    /// The current of a branch \[A\]: through a resistor or a load from its positive side to the
    /// other, out of a battery's positive post into the circuit.
    pub fn current(&self, branch: Branch) -> Current {
        Current::a(self.branch_a[branch.0])
    }

    /// The power of a branch \[W\]: what a resistor or a load takes, what a battery gives at its
    /// terminals (its own heat is not in it).
    pub fn power(&self, branch: Branch) -> Power {
        self.across(branch) * self.current(branch)
    }

    /// Whether a load has switched itself off because its voltage fell below its cut-out.
    pub fn is_off(&self, branch: Branch) -> bool {
        self.off[branch.0]
    }

    /// The loads that have switched themselves off.
    pub fn cut_out(&self) -> impl Iterator<Item = Branch> + '_ {
        self.off.iter().enumerate().filter(|(_, off)| **off).map(|(branch, _)| Branch(branch))
    }

    /// How many sets of linear equations were solved on the way.
    pub fn iterations(&self) -> usize {
        self.iterations
    }
}
