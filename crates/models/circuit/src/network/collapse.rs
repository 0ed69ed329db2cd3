//! Which load a collapse is to be put to, and the most that could have reached it.

use spile_quantity::{Current, Power};

use super::solve::{State, System, across};
use super::{Draw, Element, Network, Trouble};

/// A circuit in which some load has no steady state, with its other loads as they are.
#[derive(Clone, Copy)]
struct Attempt<'a> {
    net: &'a Network,
    states: &'a [State],
    cut_outs: bool,
}

/// Names the load that a circuit without a steady state is to be put to: of those whose absence
/// alone would let the rest run, the one that wants most.
pub(super) fn collapse(net: &Network, states: &[State], cut_outs: bool) -> Trouble {
    let attempt = Attempt { net, states, cut_outs };
    let mut wanting = attempt.wanting();
    wanting.sort_by(|a, b| b.1.total_cmp(&a.1));
    let alone = wanting.iter().find(|(load, _)| attempt.runs_without(*load));
    let (load, _) = *alone.or(wanting.first()).unwrap_or(&(0, 0.0));
    let wired = &net.branches[load];
    let (wanted, greatest) = match wired.element {
        Element::Load { draw: draw @ Draw::Current(_), .. } => {
            let most_a = alone.map_or(0.0, |_| attempt.most_current_a(load));
            (draw, Draw::Current(Current::a(most_a)))
        }
        Element::Load { draw, .. } => {
            let most_w = alone.map_or(0.0, |_| attempt.most_power_w(load));
            (draw, Draw::Power(Power::w(most_w)))
        }
        _ => (Draw::Power(Power::w(0.0)), Draw::Power(Power::w(0.0))),
    };
    let node = net.nodes[wired.from.0].clone();
    Trouble::Collapse { node, load: wired.name.clone(), wanted, greatest }
}

impl Attempt<'_> {
    /// The running loads that can bring a collapse about, each with what it wants \[W\].
    fn wanting(&self) -> Vec<(usize, f64)> {
        let highest_v = self.net.branches.iter().map(|wired| wired.element.open_v());
        let highest_v = highest_v.fold(0.0, f64::max);
        let wants_w = |(index, state): (usize, &State)| match self.net.branches[index].element {
            _ if *state != State::Running => None,
            Element::Load { draw: Draw::Power(power), .. } => Some((index, power.in_w())),
            Element::Load { draw: Draw::Current(current), .. } if current.in_a() > 0.0 => {
                Some((index, current.in_a() * highest_v))
            }
            _ => None,
        };
        self.states.iter().enumerate().filter_map(wants_w).collect()
    }

    fn with(&self, load: usize, state: State) -> Vec<State> {
        let mut states = self.states.to_vec();
        states[load] = state;
        states
    }

    fn runs_without(&self, load: usize) -> bool {
        let states = self.with(load, State::Off);
        let system = System::new(self.net, &states, self.cut_outs);
        let (settled, _) = system.attempt();
        settled.whole && !system.drags_below_zero(&settled.unknowns)
    }

    /// The voltage \[V\] at a load while it draws a current \[A\]; `None` if there is no such state
    /// or it is below zero.
    fn while_drawing_v(&self, load: usize, ampere: f64) -> Option<f64> {
        let states = self.with(load, State::Drawing(ampere));
        let system = System::new(self.net, &states, self.cut_outs);
        let (settled, _) = system.attempt();
        let volt = across(&settled.unknowns, &self.net.branches[load]);
        let stands = settled.whole && !system.drags_below_zero(&settled.unknowns);
        (stands && volt >= 0.0).then_some(volt)
    }

    /// The current \[A\] that would turn a load's voltage over, by halving.
    fn most_current_a(&self, load: usize) -> f64 {
        let (mut carried, mut lost) = (0.0, self.short_circuit_a(load));
        for _ in 0..60 {
            let middle = 0.5 * (carried + lost);
            match self.while_drawing_v(load, middle) {
                Some(_) => carried = middle,
                None => lost = middle,
            }
        }
        carried
    }

    /// The most power \[W\] that can reach a load: the summit of voltage times current over the
    /// current, V²/4R where nothing else is bent, by golden section.
    fn most_power_w(&self, load: usize) -> f64 {
        let power_w = |ampere: f64| {
            self.while_drawing_v(load, ampere).map_or(f64::NEG_INFINITY, |volt| volt * ampere)
        };
        let golden = 0.5 * (5.0_f64.sqrt() - 1.0);
        let (mut left, mut right) = (0.0, self.short_circuit_a(load));
        let (mut low, mut high) = ((1.0 - golden) * right, golden * right);
        let (mut low_w, mut high_w) = (power_w(low), power_w(high));
        for _ in 0..60 {
            if low_w >= high_w {
                (right, high, high_w) = (high, low, low_w);
                low = right - golden * (right - left);
                low_w = power_w(low);
            } else {
                (left, low, low_w) = (low, high, high_w);
                high = left + golden * (right - left);
                high_w = power_w(high);
            }
        }
        low_w.max(high_w).max(0.0)
    }

    /// The current \[A\] between a load's terminals joined directly, with all other loads off that
    /// do not follow the voltage: none that it draws can be greater.
    fn short_circuit_a(&self, load: usize) -> f64 {
        let mut states = self.states.to_vec();
        for (other, _) in self.wanting() {
            states[other] = State::Off;
        }
        let alone = Attempt { states: &states, ..*self };
        let volt = |ampere| {
            let states = alone.with(load, State::Drawing(ampere));
            let (settled, _) = System::new(self.net, &states, self.cut_outs).attempt();
            across(&settled.unknowns, &self.net.branches[load])
        };
        let (open_v, loaded_v) = (volt(0.0), volt(1.0));
        if open_v > 0.0 && open_v > loaded_v { open_v / (open_v - loaded_v) } else { 0.0 }
    }
}
