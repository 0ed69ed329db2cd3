//! The air of a bay and the heat of a part, made typed.

use spile_answer::Basis;

use super::Resolver;
use super::plausible::{self as p, Bounds, bounds};
use crate::file::{BayAirFile, FanFile, HeatFile, VentFile};
use crate::model::{BayAir, Fan, PartHeat, Vent};

const VENT_M2: Bounds = bounds("the free area of an opening", 0.0, 10_000.0, "cm²", 1e-4);
const HEIGHT_M: Bounds = bounds("the height of an opening", 0.0, 4.0, "m", 1.0);
const FLOW_M3_PER_S: Bounds = bounds("the flow of a fan", 0.36, 3_600.0, "m³/h", 1.0 / 3_600.0);
const PRESSURE_PA: Bounds = bounds("the pressure of a fan", 0.5, 1_000.0, "Pa", 1.0);
const EFFICIENCY: Bounds = bounds("an efficiency", 5.0, 100.0, "%", 0.01);
const IDLE_W: Bounds = bounds("what a part takes at idle", 0.0, 500.0, "W", 1.0);

/// What is said of the air of a bay.
pub(super) fn bay(file: &BayAirFile, r: &mut Resolver<'_>) -> BayAir {
    BayAir {
        inlet: file.inlet.as_ref().map(|said| vent(&said.value, r)),
        outlet: file.outlet.as_ref().map(|said| vent(&said.value, r)),
        apart: r.given(&file.apart, Basis::Measured, p::BAY_M),
        fan: file.fan.as_ref().map(|said| fan(&said.value, r)),
    }
}

/// What is said of the heat of a part.
pub(super) fn part(file: &HeatFile, r: &mut Resolver<'_>) -> PartHeat {
    PartHeat {
        efficiency: r.papers(&file.efficiency, EFFICIENCY),
        idle: r.papers(&file.idle, IDLE_W),
    }
}

fn vent(file: &VentFile, r: &mut Resolver<'_>) -> Vent {
    Vent {
        area: r.given(&file.area, Basis::Measured, VENT_M2),
        above: r.given(&file.above, Basis::Measured, HEIGHT_M),
        cover: file.cover.as_ref().map(|said| said.value),
        leads_to: file.leads_to.as_ref().map(|said| said.value),
    }
}

fn fan(file: &FanFile, r: &mut Resolver<'_>) -> Fan {
    Fan {
        flow: r.papers(&file.flow, FLOW_M3_PER_S),
        pressure: r.papers(&file.pressure, PRESSURE_PA),
        at: file.at.as_ref().map(|said| said.value),
        blows: file.blows.as_ref().map(|said| said.value),
    }
}

#[cfg(test)]
mod tests {
    use crate::Folder;
    use crate::file::{Blows, Cover, LeadsTo, Which};

    #[test]
    fn the_air_of_a_bay_is_read() {
        let text = r#"
            [bays.locker]
            size = { width = "640 mm", height = "900 mm", depth = "560 mm" }
            [bays.locker.air]
            apart = "700 mm"
            inlet = { area = "160 cm2", above = "60 mm", cover = "mesh", leads_to = "cabin" }
            outlet = { area = "0 cm2", leads_to = "closed void" }
            fan = { flow = "60 m³/h", at = "outlet", blows = "in" }
            [parts.inverter]
            kind = "inverter"
            heat = { efficiency = "88 %", idle = "12 W" }
            [items.inverter]
            condenser_in = "locker"
            [bank]
            place = { in = "locker" }
        "#;
        let folder = Folder::from_texts([("build.toml", text)]).unwrap();
        let build = folder.build();
        let air = build.bays["locker"].air.as_ref().unwrap();
        let (inlet, outlet) = (air.inlet.as_ref().unwrap(), air.outlet.as_ref().unwrap());
        assert!((inlet.area.as_ref().unwrap().likely().in_m2() - 0.016).abs() < 1e-12);
        assert_eq!((inlet.cover, inlet.leads_to), (Some(Cover::Mesh), Some(LeadsTo::Cabin)));
        assert_eq!(outlet.leads_to, Some(LeadsTo::Void));
        assert_eq!(outlet.area.as_ref().unwrap().likely().in_m2(), 0.0);
        let fan = air.fan.as_ref().unwrap();
        assert_eq!((fan.at, fan.blows), (Some(Which::Outlet), Some(Blows::In)));
        let item = &build.items["inverter"];
        assert!((item.part.heat.idle.as_ref().unwrap().likely().in_w() - 12.0).abs() < 1e-12);
        assert_eq!(item.condenser_in.as_deref(), Some("locker"));
        assert_eq!(build.bank.as_ref().unwrap().bay.as_deref(), Some("locker"));
    }

    #[test]
    fn an_opening_of_ten_square_metres_is_a_slip() {
        let text = r#"
            [bays.locker]
            size = { width = "640 mm", height = "900 mm", depth = "560 mm" }
            air = { inlet = { area = "10 m2" } }
        "#;
        let problems = Folder::from_texts([("build.toml", text)]).unwrap_err();
        assert_eq!(problems.list.len(), 1);
    }
}
