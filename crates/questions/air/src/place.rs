//! A bay with everything warm in it: one temperature at any value of the inputs.

use spile_answer::{Handle, Ledger};
use spile_build::file::PartKind;
use spile_build::{Bay, Build, Item};
use spile_heat::HeatError;
use spile_heat::chain::Day;
use spile_heat::scene::{
    BayInputs, BayIs, BayPlace, Cold, MachineInputs, Scene, Values, Weather, compressors,
};
use spile_quantity::{Power, Quantity, Temperature};

/// A bay that something warms.
pub(crate) struct Place<'b> {
    pub(crate) name: &'b str,
    pub(crate) bay: &'b Bay,
    pub(crate) inputs: BayInputs,
    of: Of<'b>,
}

/// What is computed together with it.
enum Of<'b> {
    /// Cold boxes, in it or beside those in it.
    Boxes(Box<Scene<'b>>),
    /// Nothing cold.
    Machines { ledger: Ledger, cabin: Handle<Temperature> },
}

impl<'b> Place<'b> {
    /// The bay of that name; `None` where nothing in it can be computed.
    pub(crate) fn new(build: &'b Build, name: &'b str, bay: &'b Bay) -> Option<Self> {
        let computable = || compressors(build).filter(Cold::is_computable);
        let here: Vec<Cold<'b>> = computable().filter(|cold| cold.touches(name)).collect();
        if here.is_empty() {
            let mut ledger = Ledger::new();
            let cabin = ledger.take("cabin on a hot day", &build.corners.hot_cabin);
            let inputs = BayInputs::new(build, name, bay, &mut ledger);
            let warm = !inputs.machines.is_empty();
            return warm.then_some(Self { name, bay, inputs, of: Of::Machines { ledger, cabin } });
        }
        let beside = computable()
            .filter(|cold| !cold.touches(name) && here.iter().any(|one| one.shares_bay(cold)));
        let boxes = here.iter().copied().chain(beside).collect();
        let mut scene = Scene::new(build, boxes, false)?;
        let inputs = BayInputs::new(build, name, bay, &mut scene.ledger);
        Some(Self { name, bay, inputs, of: Of::Boxes(Box::new(scene)) })
    }

    /// Every input.
    pub(crate) fn ledger(&self) -> &Ledger {
        match &self.of {
            Of::Boxes(scene) => &scene.ledger,
            Of::Machines { ledger, .. } => ledger,
        }
    }

    /// The cabin on a hot afternoon.
    pub(crate) fn cabin(&self, values: &impl Values) -> Temperature {
        match &self.of {
            Of::Boxes(scene) => scene.cabin(values, Weather::HotAfternoon),
            Of::Machines { cabin, .. } => values.at(*cabin),
        }
    }

    /// What leads heat out of it, and its machines.
    pub(crate) fn place(&self, values: &impl Values) -> Result<BayPlace, HeatError> {
        self.inputs.place(values)
    }

    /// How warm it gets.
    pub(crate) fn temperature(&self, values: &impl Values) -> Result<Temperature, HeatError> {
        self.place(values)?.settles(self.of_boxes(values, BayIs::Balanced)?, self.cabin(values))
    }

    /// The heat of boxes and machines while it is kept at a temperature.
    pub(crate) fn heat_at(
        &self,
        values: &impl Values,
        bay: Temperature,
    ) -> Result<Power, HeatError> {
        Ok(self.of_boxes(values, BayIs::KeptAt(bay))? + self.place(values)?.machines)
    }

    /// The heat that cold boxes give to it.
    pub(crate) fn of_boxes(&self, values: &impl Values, bay_is: BayIs) -> Result<Power, HeatError> {
        let Of::Boxes(scene) = &self.of else { return Ok(Power::w(0.0)) };
        let days: Vec<Day> = scene.coming_days(values, Weather::HotAfternoon, bay_is)?;
        Ok(scene.heat_into(self.name, &days))
    }

    /// Whether a condenser warms it.
    pub(crate) fn has_condenser(&self) -> bool {
        let Of::Boxes(scene) = &self.of else { return false };
        let mut boxes = scene.boxes.iter();
        boxes.any(|cold| cold.condenser_bay().is_some_and(|(bay, _)| bay == self.name))
    }

    /// Whether an inverter or charger is in it.
    pub(crate) fn has_converter(&self) -> bool {
        self.inputs.machines.iter().any(|one| matches!(one, MachineInputs::Converter { .. }))
    }
}

/// Values with some of them replaced.
pub(crate) struct But<'v, V> {
    pub(crate) base: &'v V,
    /// The place of each in the ledger, with its value in its SI unit.
    pub(crate) with: Vec<(usize, f64)>,
}

impl<V: Values> Values for But<'_, V> {
    fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q {
        let replaced = self.with.iter().find(|(index, _)| *index == handle.index());
        replaced.map_or_else(|| self.base.at(handle), |(_, value)| Q::from_si(*value))
    }
}

/// The items that stand in a bay.
pub(crate) fn items_in<'b>(
    build: &'b Build,
    bay: &'b str,
) -> impl Iterator<Item = (&'b str, &'b Item)> {
    let here = move |item: &Item| item.place.as_ref().and_then(|at| at.bay.as_deref()) == Some(bay);
    build.items.iter().filter(move |(_, item)| here(item)).map(|(name, item)| (name.as_str(), item))
}

/// Whether anything in a bay gives off heat that a bay has to be rid of.
pub(crate) fn is_warm(build: &Build, bay: &str) -> bool {
    let machine = |item: &Item| {
        matches!(item.part.kind, PartKind::Inverter | PartKind::Charger)
            || item.part.cooling.is_some()
    };
    items_in(build, bay).any(|(_, item)| machine(item))
        || compressors(build).any(|cold| cold.touches(bay))
}
