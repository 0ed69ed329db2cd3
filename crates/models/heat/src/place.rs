//! Where the appliance stands: the air round its cabinet and the air at its condenser, for the
//! heat that it gives to each.
//!
//! The chain of [`crate::chain`] asks only for a function from [`Standing`] to [`Air`]. The places
//! here are the ones closed but for what leaks through their walls, each a small
//! [`Network`]; any other function will do as well.

use spile_quantity::{Conductance, Power, Temperature, TemperatureDifference};

use crate::error::HeatError;
use crate::network::{Network, Node};
use crate::root::root;

/// A difference of temperatures \[K\] that counts as nothing.
const SMALL_K: f64 = 1e-11;

/// Heat that an appliance gives to its surroundings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Given {
    /// To the air round the cabinet; negative, since the cabinet's walls draw heat in.
    pub cabinet: Power,
    /// To the air at the condenser.
    pub condenser: Power,
}

/// An appliance that stands in its surroundings: what its cabinet draws depends on the air there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// Conductance of the cabinet's walls.
    pub walls: Conductance,
    /// The temperature behind them.
    pub inside: Temperature,
    /// Heat to the air at the condenser.
    pub condenser: Power,
}

impl Standing {
    /// What it gives to its surroundings with air of that temperature round its cabinet.
    pub fn given(&self, cabinet: Temperature) -> Given {
        Given { cabinet: -(self.walls * cabinet.above(self.inside)), condenser: self.condenser }
    }
}

/// The air an appliance has round it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// At the cabinet's walls.
    pub cabinet: Temperature,
    /// At the condenser.
    pub condenser: Temperature,
}

/// A vehicle and the place of an appliance in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surroundings {
    /// The weather.
    pub outdoors: Temperature,
    /// How much warmer than the weather the cabin is: parked in the sun 10 to 25 K, heated in
    /// winter whatever makes about 18 °C.
    pub cabin_excess: TemperatureDifference,
    /// What stands between cabin and appliance.
    pub housing: Housing,
}

/// What an appliance is built into.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Housing {
    /// Nothing: the cabin's air is all round it.
    Free,
    /// A bay that holds cabinet and condenser.
    Bay(Bay),
    /// A bay for the cabinet, and a recess apart from it for the condenser.
    Recess {
        /// Round the cabinet.
        bay: Bay,
        /// Round the condenser.
        recess: Bay,
        /// Through what parts the two.
        between: Conductance,
    },
}

/// A closed space: what its walls let through, and what else is warm in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bay {
    /// To the cabin, through furniture and the leaks of its doors.
    pub to_cabin: Conductance,
    /// To the weather, through the vehicle's skin.
    pub to_outdoors: Conductance,
    /// Heat of other things in it: an inverter, a pump.
    pub other_heat: Power,
}

impl Surroundings {
    /// The cabin's temperature.
    pub fn cabin(&self) -> Temperature {
        self.outdoors.warmer(self.cabin_excess)
    }

    /// The air round an appliance whose cabinet draws what the air there makes it draw.
    ///
    /// **Formula** [`Surroundings::air`] for the heat that [`Standing::given`] tells of that very
    /// air
    ///
    /// **Arguments** as for [`Surroundings::air`]; conductance of the walls \[W/K\], 0 or more
    ///
    /// **Validity**, **Errors**, **Source** as for it; solved by regula falsi.
    ///
    /// **Example** see [`crate::chain::steady_day`].
    pub fn round(&self, standing: Standing) -> Result<Air, HeatError> {
        let at = |cabinet: Temperature| self.air(standing.given(cabinet));
        // Without walls it would be at `most`; drawing heat brings it towards the inside.
        let most = at(standing.inside)?.cabinet;
        let cabinet_c = root(
            "bay temperature",
            "°C",
            |c| Ok(at(Temperature::celsius(c))?.cabinet.in_celsius() - c),
            standing.inside.in_celsius(),
            most.in_celsius(),
            SMALL_K,
        )?;
        at(Temperature::celsius(cabinet_c))
    }

    /// The air round an appliance that gives off `given`.
    ///
    /// **Formula** the steady balance of each space:
    /// heat = Gcabin·(T − Tcabin) + Gout·(T − Tout) + Gbetween·(T − Tother)
    ///
    /// **Arguments** temperatures \[°C\], conductances \[W/K\] 0 or more, heat \[W\]
    ///
    /// **Validity** steady; each space of one temperature, its conductances constant. The appliance
    /// is too small to warm the cabin.
    ///
    /// **Errors** a space through whose walls no heat can leave; an argument that is not a finite
    /// number or out of range.
    ///
    /// **Source** see [`Network::solve`].
    ///
    /// **Example** worked by hand: a bay of 5 W/K to a cabin of 35 °C, in which 40 W leave the
    /// condenser and the cabinet draws 25 W, is at 35 + (40 − 25)/5 = 38 °C.
    ///
    /// ```
    /// use spile_heat::place::{Bay, Given, Housing, Surroundings};
    /// use spile_quantity::{Conductance, Power, Temperature, TemperatureDifference};
    /// let bay = Bay {
    ///     to_cabin: Conductance::w_per_k(5.0),
    ///     to_outdoors: Conductance::w_per_k(0.0),
    ///     other_heat: Power::w(0.0),
    /// };
    /// let van = Surroundings {
    ///     outdoors: Temperature::celsius(30.0),
    ///     cabin_excess: TemperatureDifference::k(5.0),
    ///     housing: Housing::Bay(bay),
    /// };
    /// let air = van.air(Given { cabinet: Power::w(-25.0), condenser: Power::w(40.0) })?;
    /// assert!((air.condenser.in_celsius() - 38.0).abs() < 1e-9);
    /// assert_eq!(air.cabinet, air.condenser);
    /// # Ok::<(), spile_heat::HeatError>(())
    /// ```
    pub fn air(&self, given: Given) -> Result<Air, HeatError> {
        let mut network = Network::new();
        let outdoors = network.fixed("outdoors", self.outdoors);
        let cabin = network.fixed("cabin", self.cabin());
        let add = |network: &mut Network, name, bay: &Bay| -> Result<Node, HeatError> {
            let node = network.free(name);
            network.tie(node, cabin, bay.to_cabin)?;
            network.tie(node, outdoors, bay.to_outdoors)?;
            network.heat(node, bay.other_heat)?;
            Ok(node)
        };
        let (at_cabinet, at_condenser) = match &self.housing {
            Housing::Free => (cabin, cabin),
            Housing::Bay(bay) => {
                let bay = add(&mut network, "bay", bay)?;
                (bay, bay)
            }
            Housing::Recess { bay, recess, between } => {
                let bay = add(&mut network, "bay", bay)?;
                let recess = add(&mut network, "condenser recess", recess)?;
                network.tie(bay, recess, *between)?;
                (bay, recess)
            }
        };
        network.heat(at_cabinet, given.cabinet)?;
        network.heat(at_condenser, given.condenser)?;
        let settled = network.solve()?;
        Ok(Air {
            cabinet: settled.temperature(at_cabinet)?,
            condenser: settled.temperature(at_condenser)?,
        })
    }
}
