//! What was weighed and no item tells of: how much, and where it must lie.

use spile_answer::{Figure, Finding, Given, Reason, Step, Unit, Verdict};
use spile_quantity::Mass;

use crate::Case;
use crate::aboard::in_unladen;
use crate::scene::{Base, Scene, Sides};
use crate::statics::{Supports, centre};

/// The weighing against the bare vehicle with all that is listed; `None` where one of them is not
/// there.
pub(crate) fn finding(case: &Case<'_>) -> Option<Finding> {
    let stands = case.stands;
    let unladen = stands.vehicle.axles.unladen.as_ref().filter(|_| case.base.weighed)?;
    let (name, state) = case.base.state?;
    let listed = Base {
        about: "bare vehicle and all that is listed".to_owned(),
        aboard: in_unladen(stands, unladen),
        axles: [vec![unladen.front.clone()], vec![unladen.rear.clone()]],
        sides: Sides::Unsaid,
        state: case.base.state,
        weighed: true,
    };
    let wheelbase = stands.vehicle.wheelbase.as_ref()?;
    let scene = Scene::new(stands, &listed, wheelbase, (name, state));
    let likely = scene.ledger.likely();
    let loads = scene.loads(&likely)?;
    let weighed = |axle: usize| case.base.axles[axle].iter().map(Given::likely).sum::<Mass>();
    let missing = Supports { front: weighed(0) - loads.front, rear: weighed(1) - loads.rear };
    let mass = missing.front + missing.rear;
    let off: Mass =
        case.base.axles.iter().flatten().map(|given| given.value.high - given.likely()).sum();
    let total = (loads.front + loads.rear).in_kg();
    let numbers = format!(
        "({:.0} + {:.0}) − ({:.0} + {:.0}) = {:.0} kg",
        weighed(0).in_kg(),
        weighed(1).in_kg(),
        loads.front.in_kg(),
        loads.rear.in_kg(),
        mass.in_kg()
    );
    let (verdict, says) = match centre(missing, scene.between(&likely)) {
        _ if mass < -off => (
            Verdict::Care(Reason::Unsure),
            format!(
                "The bare vehicle and all that is listed come to {total:.0} kg, {:.0} kg more than was weighed in the state {name}: a mass, the papers or the weighing is wrong.",
                -mass.in_kg()
            ),
        ),
        Ok((mass, forward)) if mass > off => {
            let from_rear = forward + scene.rear_axle(&likely);
            (
                Verdict::Good,
                format!(
                    "{:.0} kg were weighed that no item tells of; their middle is {:.1} m from the inside rear face. The weighing has them in it, so they count.",
                    mass.in_kg(),
                    from_rear.in_m()
                ),
            )
        }
        _ => (
            Verdict::Good,
            "The bare vehicle and all that is listed come to what was weighed.".to_owned(),
        ),
    };
    let step = Step {
        what: "weighed and not listed".into(),
        formula: "(R_f + R_r)weighed − (R_f + R_r)listed".into(),
        numbers,
        source: "the sum of the axles is the weight".into(),
    };
    let figure =
        Figure { likely: mass.in_kg(), unfavourable: (mass + off).in_kg(), unit: Unit::Kilogram };
    let finding = Finding::plain("unlisted", "weighed, and not listed", verdict, says);
    Some(Finding {
        figure: Some(figure),
        inputs: scene.ledger.inputs().to_vec(),
        ..finding.worked(vec![step])
    })
}
