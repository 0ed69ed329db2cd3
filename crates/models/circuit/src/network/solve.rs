//! From a circuit to its steady state, or to the reason why it has none.

use spile_quantity::Quantity;

use super::check::{NONE_BELOW_OHM, check};
use super::collapse::collapse;
use super::linear::{Factors, Matrix};
use super::{Draw, Element, Network, Node, Solution, Trouble, Wired};

/// A resistance below this is solved for its current instead of entering as a conductance: exact
/// down to 0 Ω, where a conductance would drown all others.
const IDEAL_BELOW_OHM: f64 = 1e-6;
/// Newton's steps are at their end when none is larger than this share of the voltages.
const SETTLED_SHARE: f64 = 1e-10;
/// Each of Newton's steps near a collapse halves the distance to it: 34 of them reach 1e-10.
const MOST_STEPS: usize = 60;
/// A collapse is certain when less than this share more of all constant powers has no solution.
const LEAST_CLIMB: f64 = 1e-9;

/// Finds the steady state in which every load that runs has at least its cut-out voltage.
///
/// Loads below their cut-out switch off one after the other, the one furthest below (as a share
/// of its cut-out) first; what has gone off stays off, as it does in life until it is reset or its
/// higher cut-in voltage is reached.
///
/// **Errors** every [`Trouble`]; a load with a cut-out never collapses, it switches off before.
///
/// **Source** modified nodal analysis after Ho, Ruehli and Brennan, IEEE Transactions on Circuits
/// and Systems 22 (1975) 504–509, from memory; Newton's method with companion conductances is how
/// every general circuit simulator solves a bent element.
///
/// **Example** 12 V behind 1 Ω give 27 W at 9 V, since 9 V · (12 V − 9 V) / 1 Ω = 27 W.
///
/// ```
/// use spile_circuit::network::{Draw, Network, solve};
/// use spile_quantity::{Power, Resistance, Voltage};
///
/// let mut net = Network::new("-");
/// let post = net.node("+");
/// net.battery("bank", post, net.reference(), Voltage::v(12.0), Resistance::ohm(1.0));
/// net.load("box", post, net.reference(), Draw::Power(Power::w(27.0)), None);
/// assert!((solve(&net).unwrap().voltage(post).in_v() - 9.0).abs() < 1e-9);
/// ```
pub fn solve(net: &Network) -> Result<Solution, Trouble> {
    run(net, true)
}

/// Finds the steady state in which every load runs, whatever its cut-out: the voltage that its
/// terminals have while it tries.
///
/// **Errors** every [`Trouble`]; a load of constant power may collapse here that would switch off
/// in [`solve`].
pub fn solve_as_if_running(net: &Network) -> Result<Solution, Trouble> {
    run(net, false)
}

fn run(net: &Network, cut_outs: bool) -> Result<Solution, Trouble> {
    check(net)?;
    let mut states = vec![State::Running; net.branches.len()];
    let mut iterations = 0;
    loop {
        let system = System::new(net, &states, cut_outs);
        let settled = system.settle();
        iterations += settled.iterations;
        if let Some(load) = system.next_to_cut_out(&settled) {
            states[load] = State::Off;
        } else if settled.whole && !system.drags_below_zero(&settled.unknowns) {
            return Ok(system.solution(&settled.unknowns, iterations));
        } else {
            return Err(collapse(net, &states, cut_outs));
        }
    }
}

/// What a load does in one attempt at the steady state.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum State {
    /// It takes its draw.
    Running,
    /// It takes nothing.
    Off,
    /// It takes this current, in ampere, instead of its draw.
    Drawing(f64),
}

/// The equations of a circuit with its loads in given states.
pub(super) struct System<'a> {
    net: &'a Network,
    states: &'a [State],
    cut_outs: bool,
    base: Matrix,
    right: Vec<f64>,
    /// The row of the current of each branch that is solved for its current.
    current_row: Vec<Option<usize>>,
    bends: Vec<Bend>,
}

/// A load that is no straight line of current over voltage: i = I + P/u.
struct Bend {
    branch: usize,
    current_a: f64,
    power_w: f64,
    /// Below this voltage it is taken as the resistance that it is just there: whether it has
    /// enough to run on can then be told from a solution that always exists.
    floor_v: Option<f64>,
}

/// Where an attempt ended.
pub(super) struct Settled {
    pub(super) unknowns: Vec<f64>,
    pub(super) iterations: usize,
    /// Whether all loads have what they want; else the unknowns are of the last state before the
    /// collapse.
    pub(super) whole: bool,
}

impl<'a> System<'a> {
    pub(super) fn new(net: &'a Network, states: &'a [State], cut_outs: bool) -> Self {
        let mut size = net.nodes.len() - 1;
        let mut current_row = vec![None; net.branches.len()];
        for (row, wired) in current_row.iter_mut().zip(&net.branches) {
            if wired.element.series_ohm().is_some_and(|ohm| ohm < IDEAL_BELOW_OHM) {
                *row = Some(size);
                size += 1;
            }
        }
        let base = Matrix::zeros(size);
        let right = vec![0.0; size];
        let mut system =
            Self { net, states, cut_outs, base, right, current_row, bends: Vec::new() };
        for index in 0..net.branches.len() {
            system.enter(index);
        }
        system
    }

    /// Enters one branch into the equations, or puts it among the bends.
    fn enter(&mut self, index: usize) {
        let wired = &self.net.branches[index];
        match (wired.element, self.states[index]) {
            (Element::Resistor(_) | Element::Battery { .. }, _) => self.enter_series(index, wired),
            (Element::Load { .. }, State::Off) => {}
            (Element::Load { .. }, State::Drawing(ampere)) => {
                inject(&mut self.right, wired, -ampere);
            }
            (Element::Load { draw: Draw::Resistance(resistance), .. }, State::Running) => {
                conduct(&mut self.base, wired, 1.0 / resistance.in_ohm());
            }
            (Element::Load { draw: Draw::Current(current), cut_out }, State::Running) => {
                match cut_out.filter(|_| self.cut_outs) {
                    Some(floor) => self.bend(index, current.in_a(), 0.0, Some(floor.in_v())),
                    None => inject(&mut self.right, wired, -current.in_a()),
                }
            }
            (Element::Load { draw: Draw::Power(power), cut_out }, State::Running) => {
                if power.in_w() > 0.0 {
                    let floor = cut_out.filter(|_| self.cut_outs).map(Quantity::si);
                    self.bend(index, 0.0, power.in_w(), floor);
                }
            }
        }
    }

    fn bend(&mut self, branch: usize, current_a: f64, power_w: f64, floor_v: Option<f64>) {
        self.bends.push(Bend { branch, current_a, power_w, floor_v });
    }

    /// Enters a resistor, or a battery as a resistor with an electromotive force.
    fn enter_series(&mut self, index: usize, wired: &Wired) {
        let ohm = wired.element.series_ohm().unwrap_or_default();
        let open_v = wired.element.open_v();
        let Some(row) = self.current_row[index] else {
            conduct(&mut self.base, wired, 1.0 / ohm);
            inject(&mut self.right, wired, open_v / ohm);
            return;
        };
        // v_from − v_to − R·i = E, with the current i from `from` to `to` through the branch
        for (node, sign) in [(wired.from, 1.0), (wired.to, -1.0)] {
            if let Some(at) = node_row(node) {
                self.base.add(at, row, sign);
                self.base.add(row, at, sign);
            }
        }
        self.base.add(row, row, if ohm < NONE_BELOW_OHM { 0.0 } else { -ohm });
        self.right[row] = open_v;
    }

    /// The steady state, as far as there is one.
    pub(super) fn settle(&self) -> Settled {
        let (mut settled, factors) = self.attempt();
        if !settled.whole {
            settled.whole = self.climb(&mut settled, &factors);
        }
        settled
    }

    /// The steady state by Newton's method alone, from the voltages without the bent loads. Where
    /// all voltages fall as the loads rise it arrives if anything does.
    pub(super) fn attempt(&self) -> (Settled, Factors) {
        let factors = self.base.clone().factor();
        let mut settled = Settled { unknowns: self.right.clone(), iterations: 1, whole: true };
        factors.solve(&mut settled.unknowns);
        if !self.bends.is_empty() {
            settled.whole = self.newton(&mut settled, factors.positive(), 1.0);
        }
        (settled, factors)
    }

    /// Newton's method from where `settled` is, with all constant powers at `share`; moves
    /// `settled` only if it arrives.
    fn newton(&self, settled: &mut Settled, upright: bool, share: f64) -> bool {
        let nodes = self.net.nodes.len() - 1;
        let mut at = settled.unknowns.clone();
        let mut next = vec![0.0; at.len()];
        for _ in 0..MOST_STEPS {
            let mut matrix = self.base.clone();
            next.copy_from_slice(&self.right);
            for bend in &self.bends {
                let wired = &self.net.branches[bend.branch];
                let volt = across(&at, wired);
                let Some((ampere, siemens)) = bend.companion(volt, share) else {
                    return false;
                };
                conduct(&mut matrix, wired, siemens);
                inject(&mut next, wired, siemens * volt - ampere);
            }
            settled.iterations += 1;
            let factors = matrix.factor();
            // past the collapse the determinant turns over: the lower, unstable solutions
            if factors.positive() != upright || !factors.solve(&mut next) {
                return false;
            }
            let damping = self.damping(&at, &next);
            let (mut step, mut scale) = (0.0_f64, 0.0_f64);
            for (old, new) in at.iter().zip(&next).take(nodes) {
                step = step.max((new - old).abs());
                scale = scale.max(new.abs());
            }
            for (old, new) in at.iter_mut().zip(&next) {
                *old += damping * (new - *old);
            }
            if damping == 1.0 && step <= SETTLED_SHARE * scale {
                settled.unknowns = next;
                return true;
            }
        }
        false
    }

    /// The share of Newton's step by which no constant power without a floor loses more than half
    /// its voltage.
    fn damping(&self, at: &[f64], next: &[f64]) -> f64 {
        let mut damping = 1.0_f64;
        for bend in self.bends.iter().filter(|bend| bend.floor_v.is_none()) {
            let wired = &self.net.branches[bend.branch];
            let (old_v, new_v) = (across(at, wired), across(next, wired));
            if new_v < 0.5 * old_v {
                damping = damping.min(0.5 * old_v / (old_v - new_v));
            }
        }
        damping
    }

    /// Raises all constant powers together from nothing, as far as it goes; whether it reached the
    /// whole. `settled` is left at the highest state that was reached.
    fn climb(&self, settled: &mut Settled, factors: &Factors) -> bool {
        let upright = factors.positive();
        settled.unknowns.copy_from_slice(&self.right);
        factors.solve(&mut settled.unknowns);
        let (mut share, mut step) = (0.0, 0.5);
        while share < 1.0 {
            let next = f64::min(share + step, 1.0);
            if self.newton(settled, upright, next) {
                share = next;
            } else {
                step *= 0.5;
                if step < LEAST_CLIMB {
                    return false;
                }
            }
        }
        true
    }

    /// The running load furthest below its cut-out, if any is; where there is no steady state,
    /// the one nearest to its cut-out, since it goes first.
    fn next_to_cut_out(&self, settled: &Settled) -> Option<usize> {
        if !self.cut_outs {
            return None;
        }
        let mut next = None;
        let mut least = if settled.whole { 1.0 } else { f64::INFINITY };
        for (index, wired) in self.net.branches.iter().enumerate() {
            if let Element::Load { cut_out: Some(cut_out), .. } = wired.element
                && self.states[index] == State::Running
                && across(&settled.unknowns, wired) / cut_out.in_v() < least
            {
                least = across(&settled.unknowns, wired) / cut_out.in_v();
                next = Some(index);
            }
        }
        next
    }

    /// Whether a load's constant current has turned the voltage at its terminals over.
    pub(super) fn drags_below_zero(&self, unknowns: &[f64]) -> bool {
        self.net.branches.iter().zip(self.states).any(|(wired, state)| {
            matches!(wired.element, Element::Load { draw: Draw::Current(i), .. } if i.in_a() > 0.0)
                && *state == State::Running
                && across(unknowns, wired) <= 0.0
        })
    }

    fn solution(&self, unknowns: &[f64], iterations: usize) -> Solution {
        let node_v: Vec<f64> = self.net.nodes().map(|node| volts(unknowns, node)).collect();
        let mut branch_a = Vec::with_capacity(self.net.branches.len());
        let mut branch_v = Vec::with_capacity(self.net.branches.len());
        for (index, wired) in self.net.branches.iter().enumerate() {
            let mut volt = across(unknowns, wired);
            branch_a.push(match (wired.element, self.current_row[index]) {
                (Element::Resistor(resistance), Some(row)) => {
                    // the difference of two nearly equal voltages is worse than R·i
                    volt = resistance.in_ohm() * unknowns[row];
                    unknowns[row]
                }
                (Element::Resistor(resistance), None) => volt / resistance.in_ohm(),
                (Element::Battery { .. }, Some(row)) => -unknowns[row],
                (Element::Battery { open, inner }, None) => (open.in_v() - volt) / inner.in_ohm(),
                (Element::Load { draw, .. }, _) => match (self.states[index], draw) {
                    (State::Off, _) => 0.0,
                    (State::Drawing(ampere), _) => ampere,
                    (State::Running, Draw::Current(current)) => current.in_a(),
                    (State::Running, Draw::Resistance(resistance)) => volt / resistance.in_ohm(),
                    (State::Running, Draw::Power(power)) if power.in_w() == 0.0 => 0.0,
                    (State::Running, Draw::Power(power)) => power.in_w() / volt,
                },
            });
            branch_v.push(volt);
        }
        let off = self.states.iter().map(|state| *state == State::Off).collect();
        Solution { node_v, branch_a, branch_v, off, iterations }
    }
}

impl Bend {
    /// The current \[A\] at a voltage and its slope over the voltage \[S\]; `None` where a constant
    /// power has none.
    fn companion(&self, volt: f64, share: f64) -> Option<(f64, f64)> {
        let current_a = |volt: f64| self.current_a + share * self.power_w / volt;
        match self.floor_v {
            Some(floor_v) if volt < floor_v => {
                let siemens = current_a(floor_v) / floor_v;
                Some((siemens * volt, siemens))
            }
            _ if volt > 0.0 => Some((current_a(volt), -share * self.power_w / (volt * volt))),
            _ => None,
        }
    }
}

impl Element {
    /// The resistance \[Ω\] in series with the branch's own voltage; a load has none.
    pub(super) fn series_ohm(self) -> Option<f64> {
        match self {
            Self::Resistor(ohm) | Self::Battery { inner: ohm, .. } => Some(ohm.in_ohm()),
            Self::Load { .. } => None,
        }
    }

    /// The branch's own voltage \[V\].
    pub(super) fn open_v(self) -> f64 {
        match self {
            Self::Battery { open, .. } => open.in_v(),
            _ => 0.0,
        }
    }
}

/// The voltage \[V\] across a branch.
pub(super) fn across(unknowns: &[f64], wired: &Wired) -> f64 {
    volts(unknowns, wired.from) - volts(unknowns, wired.to)
}

fn volts(unknowns: &[f64], node: Node) -> f64 {
    node_row(node).map_or(0.0, |row| unknowns[row])
}

/// The row of a node's equation; the reference has none.
fn node_row(node: Node) -> Option<usize> {
    node.0.checked_sub(1)
}

/// Enters a conductance \[S\] between the ends of a branch.
fn conduct(matrix: &mut Matrix, wired: &Wired, siemens: f64) {
    let (from, to) = (node_row(wired.from), node_row(wired.to));
    for row in [from, to].into_iter().flatten() {
        matrix.add(row, row, siemens);
    }
    if let (Some(from), Some(to)) = (from, to) {
        matrix.add(from, to, -siemens);
        matrix.add(to, from, -siemens);
    }
}

/// Enters a current \[A\] that comes out of the `from` end of a branch and goes in at its `to` end.
fn inject(right: &mut [f64], wired: &Wired, ampere: f64) {
    if let Some(row) = node_row(wired.from) {
        right[row] += ampere;
    }
    if let Some(row) = node_row(wired.to) {
        right[row] -= ampere;
    }
}
