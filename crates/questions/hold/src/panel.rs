//! The panel that a thing hangs in: the strips beside its cut-out, or the whole sheet.

use spile_answer::{Basis, Class, Finding, Given, Limit, Sense, Step, Unit, Verdict, Worse, swing};
use spile_build::file::{HeldFace, HeldInto};
use spile_quantity::Length;
use spile_strength::beam::{Held, Section, stress};
use spile_strength::envelope::push;
use spile_strength::plate::{Panel, supported_middle};
use spile_strength::{Allowable, NoAnswer};
use spile_tables::fastener::bendings;

use crate::called;
use crate::scene::Scene;

/// The bending stress of the panel that a thing is fixed to, at 1 g out of it.
///
/// With a cut-out each strip beside it carries half as a beam from edge to edge of the panel;
/// without one the whole sheet does, the push on a circle as wide as a third of the pattern.
pub(crate) fn finding(scene: &Scene<'_>) -> Option<Finding> {
    let (of, panel) = scene.build.panels.get_key_value(scene.item.panel.as_ref()?)?;
    let wooden = matches!(scene.held.into, Some(HeldInto::Plywood | HeldInto::SolidWood));
    if !wooden || scene.face != HeldFace::Behind {
        return None;
    }
    let row = bendings().iter().find(|row| row.value.0 == scene.into.word())?;
    let mut ledger = scene.ledger.clone();
    let width = ledger.take(format!("width of the panel {of}"), &panel.size.width);
    let height = ledger.take(format!("height of the panel {of}"), &panel.size.height);
    let thickness = ledger.take(format!("thickness of the panel {of}"), &panel.size.depth);
    let allowed = ledger.take(
        format!("bending stress that {} bears", row.value.0),
        &Given {
            value: row.value.1.allowed,
            basis: Basis::Typical,
            source: row.source.title.as_str().into(),
            how: "The maker's sheet of the panel; or load an offcut on two battens until it breaks, and take a quarter.".into(),
        },
    );
    let cut = scene.item.part.cutout.as_ref();
    let cut =
        cut.map(|cut| ledger.take(format!("width of the cut-out in the panel {of}"), &cut.width));
    let stiffness = row.value.1.stiffness;
    let at = |point: &spile_answer::Point| -> Result<f64, NoAnswer> {
        let (mass, _) = scene.pushing(point);
        let force = push(mass, 1.0);
        let [width, height, thickness] = [width, height, thickness].map(|h| point.at(h));
        let bent = match cut {
            Some(cut) => {
                let strip = (width - point.at(cut)) / 2.0;
                let section = Section::rectangle(strip, thickness)?;
                stress(Held::RestingSpread, force / 2.0, height, &section)?
            }
            None => {
                let [right, above] = scene.spacing(point);
                let radius = right.min(above).max(Length::mm(1.0)) / 6.0;
                let sheet = Panel { width, height, thickness, stiffness };
                supported_middle(&sheet, force, radius)?.stress
            }
        };
        Ok(Allowable::by_rule(point.at(allowed)).used(bent) * 100.0)
    };
    let figure = |point: &spile_answer::Point| at(point).unwrap_or(f64::NAN);
    let [used] = swing(&ledger, [Worse::Higher], |point| [figure(point)]);
    let limit = Limit {
        value: 100.0,
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "strength",
        source: row.source.title.as_str().into(),
        firm: false,
    };
    let (what, formula, source) = if cut.is_some() {
        ("strip beside the cut-out", "σ = (F/2)·L/(8·b·t²/6)", "elementary beam theory")
    } else {
        (
            "sheet it hangs on",
            "σ = 3F/(2π·t²)·((1+ν)·ln(2b/(π·r)) + β)",
            "Roark, table 11.4 case 1b",
        )
    };
    let found = Finding::measured(
        format!("{}.panel", scene.name),
        format!("bending of the {what}, 1 g out of the panel"),
        Unit::Percent,
        &used,
        limit,
        &ledger,
    )
    .settling(&used, &ledger, figure);
    let good = found.verdict == Verdict::Good;
    let edges = if cut.is_some() {
        "held at top and bottom; screwed to posts along its sides it bears more"
    } else {
        "resting on all four edges"
    };
    let says = format!(
        "At 1 g out of the panel the {what} of the {}, {edges}, is bent to {:.0} % of what it may bear.",
        called(scene.item),
        used.likely
    );
    let step = Step {
        what: what.into(),
        formula: formula.into(),
        numbers: format!("{:.0} % used, {:.0} % at worst", used.likely, used.unfavourable),
        source: source.into(),
    };
    let thicker = [12.0, 15.0, 18.0, 21.0, 24.0].map(Length::mm).into_iter().find(|sheet| {
        let mut point = ledger.likely();
        for mover in &used.movers {
            point.set(mover.input, mover.end);
        }
        point.set(thickness.index(), sheet.in_m());
        at(&point).is_ok_and(|used| used <= 98.0)
    });
    let mend = thicker.map_or_else(
        || {
            "Screw battens of 30 × 20 mm along the panel's edges, or carry the thing on the frame."
                .to_owned()
        },
        |sheet| format!("A panel of {:.0} mm bears it.", sheet.in_mm()),
    );
    Some(found.saying(says).worked(vec![step]).mended((!good).then_some(mend)))
}
