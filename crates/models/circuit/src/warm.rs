//! "And when it is warm?" The circuit with its conductors at the temperature that they reach.

use spile_quantity::{Current, Resistance, Temperature, Voltage};
use thiserror::Error;

use crate::NoAnswer;
use crate::conductor::{copper_warming, operating_temperature};
use crate::network::{Branch, Element, Network, Solution, Trouble, solve};

/// Each round brings the temperatures at least a third nearer to rest; far fewer are needed.
const MOST_ROUNDS: usize = 100;

/// A copper conductor whose resistance follows its own temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conductor {
    /// Its branch, a resistor.
    pub branch: Branch,
    /// Its resistance at 20 °C.
    pub at_20: Resistance,
    /// The air round it.
    pub ambient: Temperature,
    /// What its insulation stands for good.
    pub rated: Temperature,
    /// What it may carry there.
    pub allowed: Current,
}

/// A circuit with its conductors as warm as their currents make them.
#[derive(Debug, Clone, PartialEq)]
pub struct Warm {
    /// The steady state.
    pub solution: Solution,
    /// The temperature of each conductor, in the order given.
    pub temperatures: Vec<Temperature>,
}

/// Why there is no warm state.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum TooWarm {
    /// The circuit has no steady state.
    #[error(transparent)]
    Circuit(#[from] Trouble),
    /// A conductor is loaded beyond what its temperature can be told for.
    #[error("{branch}: {because}")]
    Conductor {
        /// The name of the conductor's branch.
        branch: String,
        /// What is beyond its range.
        because: NoAnswer,
    },
}

/// Solves a circuit together with the temperatures of its conductors.
///
/// **Formula** in turn the circuit with each R = R₂₀ · (1 + α₂₀ · (T − 20 °C)) and each T from its
/// current by [`operating_temperature`], until no T moves by more than 0.01 K; it begins with every
/// conductor at its ambient. A load that has switched off on the way stays off.
///
/// **Arguments** `net`, whose resistances of `conductors` are replaced; `conductors` with R₂₀ \[Ω\],
/// ambient and rating \[°C\], allowed current \[A\] at that ambient and bundle.
///
/// **Validity** steady loads; each conductor at most at 1.5 times its allowed current.
///
/// **Errors** [`TooWarm`]: a trouble of the circuit, or a conductor out of range, named.
///
/// **Source** [`operating_temperature`]; alternating the two is a contraction, since a kelvin more
/// adds but 0.4 % of resistance.
///
/// **Example** 20 m of 10 AWG at what it may carry is at its rating:
///
/// ```
/// use spile_circuit::network::{Draw, Network};
/// use spile_circuit::warm::{Conductor, solve_warm};
/// use spile_quantity::{Current, Resistance, Temperature, Voltage};
///
/// let mut net = Network::new("-");
/// let (post, end, minus) = (net.node("+"), net.node("end"), net.reference());
/// net.battery("bank", post, minus, Voltage::v(12.8), Resistance::mohm(5.0));
/// let at_20 = Resistance::mohm(66.8);
/// let branch = net.resistor("feed", post, end, at_20);
/// net.load("load", end, minus, Draw::Current(Current::a(60.0)), None);
/// let [ambient, rated] = [30.0, 105.0].map(Temperature::celsius);
/// let feed = Conductor { branch, at_20, ambient, rated, allowed: Current::a(60.0) };
/// let warm = solve_warm(&net, &[feed]).unwrap();
/// assert!((warm.temperatures[0].in_celsius() - 105.0).abs() < 1e-6);
/// assert!((warm.solution.across(branch).in_v() - 60.0 * 0.0668 * 1.33405).abs() < 1e-6);
/// ```
pub fn solve_warm(net: &Network, conductors: &[Conductor]) -> Result<Warm, TooWarm> {
    let mut net = net.clone();
    let mut temperatures: Vec<Temperature> = conductors.iter().map(|c| c.ambient).collect();
    let mut rounds = 0;
    loop {
        for (conductor, at) in conductors.iter().zip(&temperatures) {
            let factor =
                copper_warming(*at).map_err(|because| out_of_range(&net, conductor, because))?;
            net.set(conductor.branch, Element::Resistor(conductor.at_20 * factor));
        }
        let solution = solve(&net)?;
        rounds += 1;
        for branch in solution.cut_out() {
            keep_off(&mut net, branch);
        }
        let mut moved_k = 0.0_f64;
        for (conductor, at) in conductors.iter().zip(&mut temperatures) {
            let Conductor { branch, ambient, rated, allowed, .. } = *conductor;
            let next = operating_temperature(ambient, rated, solution.current(branch), allowed)
                .map_err(|because| out_of_range(&net, conductor, because))?;
            moved_k = moved_k.max(next.above(*at).in_k().abs());
            *at = next;
        }
        if moved_k < 0.01 || rounds == MOST_ROUNDS {
            return Ok(Warm { solution, temperatures });
        }
    }
}

/// Raises a load's cut-out beyond reach: a load that has switched off does not come back because its
/// cable has cooled.
fn keep_off(net: &mut Network, branch: Branch) {
    if let Element::Load { draw, .. } = net.element(branch) {
        net.set(branch, Element::Load { draw, cut_out: Some(Voltage::v(1e6)) });
    }
}

fn out_of_range(net: &Network, conductor: &Conductor, because: NoAnswer) -> TooWarm {
    TooWarm::Conductor { branch: net.branch_name(conductor.branch).to_owned(), because }
}
