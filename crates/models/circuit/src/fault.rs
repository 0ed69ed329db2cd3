//! "What flows when it touches metal?" Fault currents, and how long a conductor stands them.

use spile_quantity::{Area, Current, Resistance, Temperature, Time};
use spile_tables::fault::Metal;

use crate::NoAnswer;
use crate::network::{Branch, Draw, Element, Network, Node, Solution, Trouble, solve};
use crate::no_answer::within;

/// The adiabatic rule holds no longer than this: beyond, the conductor loses heat meanwhile.
pub const ADIABATIC_TO: Time = Time::s(5.0);

/// A fault and the state of the whole circuit while it lasts.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// The current through the fault itself.
    pub current: Current,
    /// Voltages and currents everywhere: what flows through each fuse on the way.
    pub state: Solution,
}

/// The current that a fault draws, I \[A\], from all sources together.
///
/// **Formula** the circuit is solved with the fault as one more resistance and without its loads;
/// with one source, I = E/(Rᵢ + R).
///
/// **Arguments** `net`; `from` and `to`, where the fault joins two nodes; `through` \[Ω\], 0 for a
/// bolted one. The **greatest** current comes of a circuit with full and cold batteries, cold
/// copper, clean joints and a bolted fault; the **least** of low batteries, hot copper, poor joints
/// and the resistance of the fault itself.
///
/// **Validity** the steady current. Loads are left out, since what a fault leaves them is next to
/// nothing; sources of constant current (chargers) stay in.
///
/// **Errors** those of [`solve`]; [`Trouble::NoResistance`] where nothing limits the current.
///
/// **Source** IEC 61660-1 for batteries in the steady state, from memory.
///
/// **Example** 12 V behind 5 mΩ drive 2400 A through a bolted fault (battery short-circuit page):
///
/// ```
/// use spile_circuit::{fault::prospective, network::Network};
/// use spile_quantity::{Resistance, Voltage};
///
/// let mut net = Network::new("-");
/// let (post, minus) = (net.node("+"), net.reference());
/// net.battery("bank", post, minus, Voltage::v(12.0), Resistance::mohm(5.0));
/// let bolted = prospective(&net, post, minus, Resistance::ohm(0.0)).unwrap();
/// assert!((bolted.current.in_a() - 2400.0).abs() < 1e-6);
/// ```
pub fn prospective(
    net: &Network,
    from: Node,
    to: Node,
    through: Resistance,
) -> Result<Fault, Trouble> {
    let mut faulty = net.clone();
    for branch in net.branches().filter(|branch| takes(net, *branch)) {
        let none = Draw::Current(Current::a(0.0));
        faulty.set(branch, Element::Load { draw: none, cut_out: None });
    }
    let fault = faulty.resistor("fault", from, to, through);
    let state = solve(&faulty)?;
    Ok(Fault { current: state.current(fault), state })
}

/// How long a conductor stands a fault current, t \[s\].
///
/// **Formula** t = (k · S / I)²
///
/// **Arguments** `k_a_sqrt_s_per_mm2` k \[A·√s/mm²\] by metal and insulation, 10 to 300; `section`
/// S \[mm²\], above 0; `current` I \[A\], above 0.
///
/// **Validity** up to 5 s: no heat leaves the conductor meanwhile.
///
/// **Errors** [`NoAnswer::OutOfRange`] where the time comes out longer, or a figure is none.
///
/// **Source** IEC 60364-4-43 clause 434.5.2.
///
/// **Example** 10 kA for 0.1 s want 27.5 mm² of copper in PVC (cable-sizing tutorial), so 27.5 mm²
/// stand 10 kA for 0.1 s:
///
/// ```
/// use spile_circuit::fault::withstand;
/// use spile_quantity::{Area, Current};
///
/// let time = withstand(115.0, Area::mm2(27.5), Current::a(10_000.0)).unwrap();
/// assert!((time.in_s() - 0.1).abs() < 0.0005);
/// ```
pub fn withstand(
    k_a_sqrt_s_per_mm2: f64,
    section: Area,
    current: Current,
) -> Result<Time, NoAnswer> {
    let k = within("k", k_a_sqrt_s_per_mm2, "A·√s/mm²", 10.0, 300.0)?;
    let section_mm2 = within("section", section.in_mm2(), "mm²", 1e-3, 1e4)?;
    let current_a = within("current", current.in_a(), "A", 1e-3, 1e6)?;
    let time_s = (k * section_mm2 / current_a).powi(2);
    within("time to the limit of the insulation", time_s, "s", 0.0, ADIABATIC_TO.in_s())
        .map(Time::s)
}

/// The least section that stands a fault current for a time, S \[m²\].
///
/// **Formula** S = I · √t / k
///
/// **Arguments** `k_a_sqrt_s_per_mm2` k \[A·√s/mm²\], 10 to 300; `current` I \[A\], 0 or more; `time`
/// t \[s\], 0 to 5.
///
/// **Validity** up to 5 s, as [`withstand`].
///
/// **Errors** [`NoAnswer::OutOfRange`] outside these ranges.
///
/// **Source** IEC 60364-4-43 clause 434.5.2.
///
/// **Example** 12 kA for 20 ms want 11.9 mm² of copper in XLPE (cable-sizing tutorial):
///
/// ```
/// use spile_circuit::fault::least_section;
/// use spile_quantity::{Current, Time};
///
/// let least = least_section(143.0, Current::a(12_000.0), Time::s(0.02)).unwrap();
/// assert!((least.in_mm2() - 11.9).abs() < 0.05);
/// ```
pub fn least_section(
    k_a_sqrt_s_per_mm2: f64,
    current: Current,
    time: Time,
) -> Result<Area, NoAnswer> {
    let k = within("k", k_a_sqrt_s_per_mm2, "A·√s/mm²", 10.0, 300.0)?;
    let current_a = within("current", current.in_a(), "A", 0.0, 1e6)?;
    let time_s = within("time", time.in_s(), "s", 0.0, ADIABATIC_TO.in_s())?;
    Ok(Area::mm2(current_a * time_s.sqrt() / k))
}

/// The adiabatic constant of a conductor between two temperatures, k \[A·√s/mm²\].
///
/// **Formula** k = K · √(ln((β + θ₂)/(β + θ₁)))
///
/// **Arguments** `metal` with K \[A·√s/mm²\] and β \[K\]; `start` θ₁ \[°C\], −40 to 250; `end` θ₂ \[°C\],
/// from θ₁ to 300.
///
/// **Validity** as [`withstand`].
///
/// **Errors** [`NoAnswer::OutOfRange`] outside these ranges.
///
/// **Source** IEC 60364-5-54 annex A, IEC 60949; K and β by the tables.
///
/// **Example** copper in 70 °C PVC, which stands 160 °C for the moment: 115 (cable-sizing tables):
///
/// ```
/// use spile_circuit::fault::adiabatic_k;
/// use spile_quantity::Temperature;
///
/// let copper = &spile_tables::fault::metal("copper").unwrap().value;
/// let k = adiabatic_k(copper, Temperature::celsius(70.0), Temperature::celsius(160.0)).unwrap();
/// assert!((k - 115.0).abs() < 0.5);
/// ```
pub fn adiabatic_k(metal: &Metal, start: Temperature, end: Temperature) -> Result<f64, NoAnswer> {
    let start_c = within("temperature at the start", start.in_celsius(), "°C", -40.0, 250.0)?;
    let end_c = within("temperature at the end", end.in_celsius(), "°C", start_c, 300.0)?;
    let ratio = (metal.beta_k + end_c) / (metal.beta_k + start_c);
    Ok(metal.k_a_sqrt_s_per_mm2 * ratio.ln().sqrt())
}

/// Whether a branch is a load that takes current, no charger.
fn takes(net: &Network, branch: Branch) -> bool {
    match net.element(branch) {
        Element::Load { draw: Draw::Current(current), .. } => current.in_a() > 0.0,
        Element::Load { .. } => true,
        _ => false,
    }
}
