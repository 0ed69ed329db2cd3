//! Weight over a wheel arch: on the frame, not on bare sheet.

use spile_answer::{
    Class, Finding, Given, Ledger, Limit, Sense, Step, Unit, Verdict, Worse, swing,
};
use spile_build::{Anchor, Build, Item, Obstacle, Shape, typical};
use spile_quantity::{Length, Ranged};

use crate::called;

/// Things that stand higher than this above an arch are not over it for its sake.
const NEAR: Length = Length::m(0.15);

/// The air between a thing and the wheel arch below it in the same bay.
pub(crate) fn finding(build: &Build, name: &str, item: &Item) -> Option<Finding> {
    item.mass.as_ref()?;
    let place = item.place.as_ref()?;
    let bay = place.bay.as_ref()?;
    let (None, Anchor::Low(foot)) = (&place.on, &place.z) else { return None };
    let (arch_name, arch) = build.obstacles.iter().find(|(_, obstacle)| {
        obstacle.what.contains("arch") && obstacle.place.bay.as_ref() == Some(bay)
    })?;
    let top = top(arch)?;
    let gap = foot.likely() - top;
    if gap < Length::m(-0.02) || gap > NEAR {
        return None;
    }
    let practice = typical::<Length>("air-over-arch");
    let mut ledger = Ledger::new();
    let foot = ledger.take(format!("distance of {name} from the floor"), foot);
    let off = match &arch.shape {
        Shape::Profile { tolerance, .. } => {
            let off = tolerance.likely();
            let value = Ranged { low: -off, likely: Length::m(0.0), high: off };
            let either_way = Given { value, ..tolerance.clone() };
            Some(ledger.take(format!("error of the profile of {arch_name}"), &either_way))
        }
        Shape::Box(_) => None,
    };
    let figure = |point: &spile_answer::Point| {
        let off = off.map_or(Length::m(0.0), |handle| point.at(handle));
        (point.at(foot) - top + off).in_mm()
    };
    let [air] = swing(&ledger, [Worse::Lower], |point| [figure(point)]);
    let limit = Limit {
        value: practice.value.low.in_mm(),
        sense: Sense::AtLeast,
        class: Class::Practice,
        kind: "practice",
        source: "10 to 15 mm: common practice".into(),
        firm: false,
    };
    let found = Finding::measured(
        format!("{name}.arch"),
        "air over the wheel arch",
        Unit::Millimetre,
        &air,
        limit,
        &ledger,
    )
    .settling(&air, &ledger, figure);
    let good = found.verdict == Verdict::Good;
    let says = format!(
        "{:.0} mm of air are between the {} and the {}, whose bare sheet carries nothing.",
        air.likely,
        called(item),
        arch.what
    );
    let step = Step {
        what: "air over the arch".into(),
        formula: "z_foot − z_arch".into(),
        numbers: format!("top of the arch {:.0} mm; {:.0} mm of air", top.in_mm(), air.likely),
        source: "the build's own measures".into(),
    };
    let raise = (practice.value.low.in_mm() - air.unfavourable).ceil().max(1.0);
    let mend = format!(
        "Carry it {raise:.0} mm higher, on a frame that stands on the floor and the posts.",
    );
    Some(found.saying(says).worked(vec![step]).mended((!good).then_some(mend)))
}

/// The highest of an arch above the floor of its bay.
fn top(arch: &Obstacle) -> Option<Length> {
    let foot = match &arch.place.z {
        Anchor::Low(given) => given.likely(),
        Anchor::High(_) => return None,
        Anchor::Unsaid => Length::m(0.0),
    };
    let high = match &arch.shape {
        Shape::Box(sizes) => sizes[2].likely(),
        Shape::Profile { axes, points, .. } => {
            let up = axes.iter().position(|(axis, _)| *axis == 2)?;
            Length::m(points.iter().map(|point| point[up]).fold(f64::NEG_INFINITY, f64::max))
        }
    };
    Some(foot + high)
}
