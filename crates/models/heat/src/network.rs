//! A steady heat network: places, the conductances between them, the heat put into them.
//!
//! Each place is a node. Its temperature is either known (the weather, a heated cabin) or free,
//! and then it settles where as much heat leaves as arrives:
//!
//! Σ Gij·(Tj − Ti) + Qi = 0 for each free node i, with G \[W/K\], T \[°C\] and Q \[W\].
//!
//! The equations are linear and solved directly, so the balance closes to rounding. One place is
//! one temperature: air that is warmer at the top than at the bottom needs two nodes.

use nalgebra::{DMatrix, DVector};
use spile_quantity::{Conductance, Power, Temperature};

use crate::error::{HeatError, finite, not_negative};

/// A handle to a node of one [`Network`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Node(usize);

/// Places tied together by conductances.
#[derive(Debug, Clone, Default)]
pub struct Network {
    nodes: Vec<Place>,
    ties: Vec<Tie>,
}

/// The temperatures at which a [`Network`] settles.
#[derive(Debug, Clone)]
pub struct Settled {
    temperatures_c: Vec<f64>,
    network: Network,
}

#[derive(Debug, Clone)]
struct Place {
    name: String,
    fixed_c: Option<f64>,
    heat_w: f64,
}

#[derive(Debug, Clone, Copy)]
struct Tie {
    a: usize,
    b: usize,
    g_w_per_k: f64,
}

impl Network {
    /// A network without places.
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a place of known temperature.
    pub fn fixed(&mut self, name: &str, temperature: Temperature) -> Node {
        self.add(name, Some(temperature.in_celsius()))
    }

    /// Adds a place whose temperature is to be found.
    pub fn free(&mut self, name: &str) -> Node {
        self.add(name, None)
    }

    /// Lets heat pass between two places; several ties between the same two add up.
    ///
    /// **Errors** a negative or infinite conductance; a node of another network.
    pub fn tie(&mut self, a: Node, b: Node, conductance: Conductance) -> Result<(), HeatError> {
        let g_w_per_k = not_negative("conductance", conductance.in_w_per_k(), "W/K")?;
        if a.0.max(b.0) >= self.nodes.len() {
            return Err(HeatError::Stranger);
        }
        self.ties.push(Tie { a: a.0, b: b.0, g_w_per_k });
        Ok(())
    }

    /// Puts heat into a place; negative where heat is drawn from it. Repeated calls add up.
    ///
    /// **Errors** a heat that is not a finite number; a node of another network.
    pub fn heat(&mut self, node: Node, heat: Power) -> Result<(), HeatError> {
        let heat_w = finite("heat", heat.in_w(), "W")?;
        self.nodes.get_mut(node.0).ok_or(HeatError::Stranger)?.heat_w += heat_w;
        Ok(())
    }

    /// The temperatures T \[°C\] at which each free place loses as much heat as it gets.
    ///
    /// **Formula** Σ Gij·(Tj − Ti) + Qi = 0
    ///
    /// **Validity** steady state, conductances that do not depend on temperature.
    ///
    /// **Errors** [`HeatError::Untied`] when no heat path leads from a free node to a fixed one;
    /// a fixed temperature that is not a finite number.
    ///
    /// **Source** Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.1
    /// (thermal circuits), from memory.
    ///
    /// **Example** 60 W in a bay that loses 4 W/K to a cabin of 30 °C and 2 W/K to the outdoors at
    /// 24 °C: 4·(T − 30) + 2·(T − 24) = 60, so T = (60 + 120 + 48)/6 = 38 °C.
    ///
    /// ```
    /// use spile_heat::network::Network;
    /// use spile_quantity::{Conductance, Power, Temperature};
    /// let mut heat = Network::new();
    /// let cabin = heat.fixed("cabin", Temperature::celsius(30.0));
    /// let outdoors = heat.fixed("outdoors", Temperature::celsius(24.0));
    /// let bay = heat.free("bay");
    /// heat.tie(bay, cabin, Conductance::w_per_k(4.0))?;
    /// heat.tie(bay, outdoors, Conductance::w_per_k(2.0))?;
    /// heat.heat(bay, Power::w(60.0))?;
    /// let settled = heat.solve()?;
    /// assert!((settled.temperature(bay)?.in_celsius() - 38.0).abs() < 1e-9);
    /// # Ok::<(), spile_heat::HeatError>(())
    /// ```
    pub fn solve(&self) -> Result<Settled, HeatError> {
        for node in &self.nodes {
            finite("fixed temperature", node.fixed_c.unwrap_or(0.0), "°C")?;
        }
        self.check_ties()?;
        let mut row_of = vec![None; self.nodes.len()];
        let mut rows = 0;
        for (row, node) in row_of.iter_mut().zip(&self.nodes) {
            if node.fixed_c.is_none() {
                *row = Some(rows);
                rows += 1;
            }
        }
        let mut g = DMatrix::<f64>::zeros(rows, rows);
        let mut q = DVector::<f64>::zeros(rows);
        for (row, node) in row_of.iter().zip(&self.nodes) {
            if let Some(row) = *row {
                q[row] += node.heat_w;
            }
        }
        for tie in &self.ties {
            for (here, there) in [(tie.a, tie.b), (tie.b, tie.a)] {
                let Some(row) = row_of[here] else { continue };
                g[(row, row)] += tie.g_w_per_k;
                if let Some(column) = row_of[there] {
                    g[(row, column)] -= tie.g_w_per_k;
                } else if let Some(known_c) = self.nodes[there].fixed_c {
                    q[row] += tie.g_w_per_k * known_c;
                }
            }
        }
        let free_c = if rows == 0 {
            q
        } else {
            g.lu().solve(&q).ok_or_else(|| self.untied(|node| node.fixed_c.is_none()))?
        };
        let temperatures_c = self
            .nodes
            .iter()
            .zip(&row_of)
            .map(|(node, row)| row.map_or(node.fixed_c.unwrap_or(f64::NAN), |row| free_c[row]))
            .collect();
        Ok(Settled { temperatures_c, network: self.clone() })
    }

    fn add(&mut self, name: &str, fixed_c: Option<f64>) -> Node {
        self.nodes.push(Place { name: name.to_owned(), fixed_c, heat_w: 0.0 });
        Node(self.nodes.len() - 1)
    }

    /// Spreads from the fixed nodes along the ties; what is never reached has no temperature.
    fn check_ties(&self) -> Result<(), HeatError> {
        let mut reached: Vec<bool> = self.nodes.iter().map(|node| node.fixed_c.is_some()).collect();
        let mut spreading = true;
        while spreading {
            spreading = false;
            for tie in self.ties.iter().filter(|tie| tie.g_w_per_k > 0.0) {
                if reached[tie.a] != reached[tie.b] {
                    reached[tie.a] = true;
                    reached[tie.b] = true;
                    spreading = true;
                }
            }
        }
        if reached.iter().all(|&reached| reached) {
            return Ok(());
        }
        let mut reached = reached.into_iter();
        Err(self.untied(|_| reached.next() == Some(false)))
    }

    fn untied(&self, mut is_untied: impl FnMut(&Place) -> bool) -> HeatError {
        let untied = self.nodes.iter().filter(|node| is_untied(node));
        HeatError::Untied { nodes: untied.map(|node| node.name.clone()).collect() }
    }
}

impl Settled {
    /// The temperature of a place.
    ///
    /// **Errors** a node of another network.
    pub fn temperature(&self, node: Node) -> Result<Temperature, HeatError> {
        let found = self.temperatures_c.get(node.0).ok_or(HeatError::Stranger)?;
        Ok(Temperature::celsius(*found))
    }

    /// The heat that arrives at a place through all its ties; negative where it leaves.
    ///
    /// **Errors** a node of another network.
    pub fn arriving(&self, node: Node) -> Result<Power, HeatError> {
        let here_c = self.temperature(node)?.in_celsius();
        let mut arriving_w = 0.0;
        for tie in &self.network.ties {
            for (here, there) in [(tie.a, tie.b), (tie.b, tie.a)] {
                if here == node.0 {
                    arriving_w += tie.g_w_per_k * (self.temperatures_c[there] - here_c);
                }
            }
        }
        Ok(Power::w(arriving_w))
    }
}
