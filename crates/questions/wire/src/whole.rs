//! Everything on at once: what flows out of the bank and through the body.

use spile_answer::{Basis, Given, Ledger, Point, Swing, Worse, swing};
use spile_build::{Bank, Build};
use spile_circuit::network::{Network, solve_as_if_running};
use spile_circuit::scene::{Copper, Others, Supply};
use spile_quantity::{Current, Ranged};

/// The currents with everything on, on a low battery.
#[derive(Debug, Clone)]
pub(crate) struct Whole {
    /// Out of the bank.
    pub(crate) bank: Given<Current>,
    /// Through the body to the negative bus; `None` where nothing returns through it.
    pub(crate) body: Option<Given<Current>>,
}

/// The name of the current out of the bank in ledgers.
pub(crate) const TOGETHER: &str = "everything together";

/// What flows with everything on; `None` where nothing is known to take anything, or a shared
/// cable is of a size that no table has.
///
/// Where the circuit has no steady state with everything on, the currents at the nominal voltage
/// count: that it collapses is told of the run that does.
pub(crate) fn whole(build: &Build, bank: &Bank) -> Option<Whole> {
    let others = Others::of(build, "");
    if others.names.is_empty() {
        return None;
    }
    let mut ledger = Ledger::new();
    let supply = Supply::take(&mut ledger, build, bank, &others, false)?;
    let mut net = Network::new("bank -");
    let drawn = supply.draw(&mut net);
    let net = std::cell::RefCell::new(net);
    let [bank_a, body_a] = swing(&ledger, [Worse::Higher, Worse::Higher], |point: &Point| {
        let net = &mut *net.borrow_mut();
        supply.set(net, &drawn, point, Copper::Cool, true);
        solve_as_if_running(net)
            .map_or([f64::INFINITY; 2], |found| drawn.currents(&found).map(Current::in_a))
    });
    let nominal = others.nominal(build.system.likely());
    let given = |swung: &Swing, nominal: Current| {
        let finite = |current_a: f64| current_a.is_finite().then_some(Current::a(current_a));
        let likely = finite(swung.likely).unwrap_or(nominal);
        let high = finite(swung.unfavourable).unwrap_or(likely).max(likely);
        Given {
            value: Ranged { low: likely, likely, high },
            basis: Basis::Typical,
            source: "by the circuit, everything on, on a low battery".into(),
            how: "Clamp the meter round the cable from the bank with everything on.".into(),
        }
    };
    let [bank_nominal, body_nominal] = nominal;
    Some(Whole {
        bank: given(&bank_a, bank_nominal),
        body: others.by_body().then(|| given(&body_a, body_nominal)),
    })
}
