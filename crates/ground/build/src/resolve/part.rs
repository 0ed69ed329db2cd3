//! Parts made typed.

use std::collections::BTreeMap;

use spile_answer::{Basis, Given};
use spile_quantity::{Angle, Length};

use super::plausible as p;
use super::{Resolver, typical};
use crate::file::{
    AirFile, BuildFile, Cooling, CutoutFile, DoorSwingFile, FixingFile, FlangeFile, Hinge,
    PartFile, PartKind, PowerFile, Q, ServiceFile, SizeFile,
};
use crate::model::{
    Air, Consumption, Cutout, DoorSwing, Fixing, Flange, Part, PowerFigures, Service, Size,
};
use crate::read::{Record, Said};

/// Every part of the build.
pub(super) fn parts(file: &BuildFile, r: &mut Resolver<'_>) -> BTreeMap<String, Part> {
    super::named(&file.parts, |name, part| Some(one(name, part, r)))
}

fn one(name: &Said<String>, file: &PartFile, r: &mut Resolver<'_>) -> Part {
    let kind = file.kind.as_ref().map_or(PartKind::Other, |kind| kind.value);
    if !file.lacks(&["kind"]).is_empty() {
        r.reader.tell(
            &name.at,
            format!("the part `{}` does not say what kind of thing it is", name.value),
            "`kind` is missing",
            format!("add kind = \"furniture\", or another of: {}", PartKind::WORDS.join(", ")),
        );
    }
    // Whoever weighs an item asks for it again; here it is checked for a part without items too.
    r.papers(&file.mass, p::PART_KG);
    let size = file.size.as_ref().and_then(|said| size(said, p::PART_M, Basis::Papers, r));
    let cutout = file.cutout.as_ref().and_then(|said| cutout(said, r));
    let flange = file.flange.as_ref().and_then(|said| flange(said, r));
    if let (Some(said), Some(cutout), Some(flange)) = (&file.cutout, &cutout, &flange)
        && (cutout.width.value.low > flange.width.value.high
            || cutout.height.value.low > flange.height.value.high)
    {
        r.reader.tell(
            &said.at,
            "the cut-out is larger than the flange that is to cover it",
            "larger than the flange",
            "check cut-out and flange in the papers; one of them is the body's size",
        );
    }
    Part {
        name: name.value.clone(),
        kind,
        cutout,
        flange,
        fixing: file.fixing.as_ref().and_then(|said| fixing(said, size.as_ref(), r)),
        air: file.air.as_ref().map(|said| air(&said.value, r)).unwrap_or_default(),
        service: file.service.as_ref().map(|said| service(&said.value, r)).unwrap_or_default(),
        door: file.door.as_ref().map(|said| door(&said.value, r)),
        drawer: file.drawer.as_ref().and_then(|said| r.papers(&said.value.travel, p::PART_M)),
        power: file.power.as_ref().map(|said| power(&said.value, r)).unwrap_or_default(),
        cooling: file.cooling.as_ref().map(|cooling| cooling.value).or_else(|| {
            let cold = [PartKind::UprightFridge, PartKind::LiddedBox, PartKind::DrawerFridge];
            cold.contains(&kind).then_some(Cooling::Compressor)
        }),
        volume: r.papers(&file.volume, p::VOLUME_M3),
        insulation: r.papers(&file.insulation, p::WALL_M),
        conductivity: r.papers(&file.conductivity, p::CONDUCTIVITY),
        consumption: file
            .consumption
            .iter()
            .filter_map(|said| {
                let file = &said.value;
                let ambient = r.papers(&file.ambient, p::SURROUNDINGS_C);
                let inside = r.papers(&file.inside, p::COLD_C);
                let per_day = r.papers(&file.per_day, p::ENERGY_J);
                let missing = file.lacks(&["ambient", "inside", "per_day"]);
                r.lacking(&said.at, "a consumption", &missing);
                let (ambient, inside, per_day) = (ambient?, inside?, per_day?);
                if inside.likely() >= ambient.likely() {
                    r.reader.tell(
                        &said.at,
                        "a consumption is told of surroundings that are not warmer than the inside",
                        "nothing to cool",
                        "check `ambient` and `inside`; they may be the wrong way round",
                    );
                }
                Some(Consumption { ambient, inside, per_day })
            })
            .collect(),
        warmest: r.papers(&file.warmest, p::SURROUNDINGS_C),
        heat: file.heat.as_ref().map(|said| super::air::part(&said.value, r)).unwrap_or_default(),
        size,
    }
}

/// Width, height and depth; all three or none.
pub(super) fn size(
    said: &Said<SizeFile>,
    bounds: p::Bounds,
    basis: Basis,
    r: &mut Resolver<'_>,
) -> Option<Size> {
    let file = &said.value;
    let mut take = |q: &Q<Length>| match basis {
        Basis::Measured => r.taped(q, bounds),
        basis => r.given(q, basis, bounds),
    };
    let (width, height, depth) = (take(&file.width), take(&file.height), take(&file.depth));
    r.lacking(&said.at, "a size", &file.lacks(&["width", "height", "depth"]));
    Some(Size { width: width?, height: height?, depth: depth? })
}

fn flange(said: &Said<FlangeFile>, r: &mut Resolver<'_>) -> Option<Flange> {
    let file = &said.value;
    let thickness = r.papers(&file.thickness, p::SMALL_M);
    let width = r.papers(&file.width, p::PART_M);
    let height = r.papers(&file.height, p::PART_M);
    r.lacking(&said.at, "a flange", &file.lacks(&["width", "height"]));
    Some(Flange { width: width?, height: height?, thickness })
}

fn cutout(said: &Said<CutoutFile>, r: &mut Resolver<'_>) -> Option<Cutout> {
    let file = &said.value;
    let radius = r.papers(&file.radius, p::RADIUS_M);
    let width = r.papers(&file.width, p::PART_M);
    let height = r.papers(&file.height, p::PART_M);
    r.lacking(&said.at, "a cut-out", &file.lacks(&["width", "height"]));
    Some(Cutout { width: width?, height: height?, radius })
}

fn fixing(said: &Said<FixingFile>, size: Option<&Size>, r: &mut Resolver<'_>) -> Option<Fixing> {
    let file = &said.value;
    let screw = r.papers(&file.screw, p::SCREW_M);
    let hole = r.papers(&file.hole, p::SCREW_M);
    r.lacking(&said.at, "a fixing", &file.lacks(&["screw"]));
    let mut holes = Vec::new();
    if let Some(rows) = &file.rows {
        r.reader.lacking(
            &said.at,
            "a fixing with rows",
            &file.lacks(&["unit"]),
            "add unit = \"mm\" beside the rows",
        );
        let scale = super::shape::row_unit(file.unit.as_ref()?, r)?;
        let widest = size.map_or(Length::m(4.0), |size| size.width.likely() * 2.0);
        let highest = size.map_or(Length::m(4.0), |size| size.height.likely() * 2.0);
        for row in &rows.value.0 {
            let [x, y] = row.value.map(scale);
            if x.abs() > widest || y.abs() > highest {
                r.reader.tell(
                    &row.at,
                    "this hole lies far outside the part",
                    "outside the part",
                    "holes are told right of and above the body's lower left corner; check the unit",
                );
            }
            holes.push([x, y]);
        }
    }
    let screw = screw?;
    Some(Fixing { hole: hole.unwrap_or_else(|| screw.clone()), screw, holes })
}

fn air(file: &AirFile, r: &mut Resolver<'_>) -> Air {
    Air {
        behind: r.papers(&file.behind, p::SMALL_M),
        beside: r.papers(&file.beside, p::SMALL_M),
        above: r.papers(&file.above, p::SMALL_M),
        below: r.papers(&file.below, p::SMALL_M),
        inlet: r.papers(&file.inlet, p::AREA_M2),
        outlet: r.papers(&file.outlet, p::AREA_M2),
    }
}

fn service(file: &ServiceFile, r: &mut Resolver<'_>) -> Service {
    Service {
        behind: r.papers(&file.behind, p::SMALL_M),
        left: r.papers(&file.left, p::SMALL_M),
        right: r.papers(&file.right, p::SMALL_M),
        above: r.papers(&file.above, p::SMALL_M),
        tail: r.papers(&file.tail, p::SMALL_M),
    }
}

fn door(file: &DoorSwingFile, r: &mut Resolver<'_>) -> DoorSwing {
    DoorSwing {
        hinge: file.hinge.as_ref().map_or(Hinge::Left, |hinge| hinge.value),
        angle: r
            .papers(&file.angle, p::ANGLE_RAD)
            .unwrap_or_else(|| typical::<Angle>("door-angle")),
        thickness: r
            .papers(&file.thickness, p::SMALL_M)
            .unwrap_or_else(|| typical::<Length>("door-thickness")),
    }
}

fn power(file: &PowerFile, r: &mut Resolver<'_>) -> PowerFigures {
    let volts = r.papers(&file.volts, p::VOLT_V);
    let cut_out = r.papers(&file.cut_out, p::VOLT_V);
    if let (Some(volts), Some(cut_out), Some(said)) = (&volts, &cut_out, &file.cut_out)
        && likely(cut_out) >= likely(volts)
    {
        r.reader.tell(
            &said.at,
            "it would switch itself off at its own nominal voltage",
            "not below the nominal voltage",
            "the cut-out of a 12 V part is mostly between 9.6 V and 11.8 V, of a 24 V part twice that",
        );
    }
    PowerFigures {
        volts,
        running: r.papers(&file.running, p::POWER_W),
        start: r.papers(&file.start, p::CURRENT_A),
        cut_out,
        fuse: r.papers(&file.fuse, p::CURRENT_A),
    }
}

fn likely<T: spile_quantity::Quantity>(given: &Given<T>) -> f64 {
    given.likely().si()
}
