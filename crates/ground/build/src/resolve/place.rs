//! Where things are: made typed.

use spile_answer::{Basis, Given};
use spile_quantity::{Length, Ranged};

use super::Resolver;
use super::plausible as p;
use crate::file::{BuildFile, PlaceFile, Q};
use crate::model::{Anchor, Place};
use crate::read::Said;

/// A place of which nothing is said.
pub(super) fn nowhere() -> Place {
    Place {
        bay: None,
        on: None,
        faces: None,
        x: Anchor::Unsaid,
        y: Anchor::Unsaid,
        z: Anchor::Unsaid,
    }
}

/// Where a thing is, or that nothing is said of it; `file` is for the bays there are.
pub(super) fn place(
    said: Option<&Said<PlaceFile>>,
    file: &BuildFile,
    r: &mut Resolver<'_>,
) -> Place {
    let Some(said) = said else { return nowhere() };
    r.known(said.value.r#in.as_ref(), "bay", &file.bays);
    one(&said.value, r)
}

/// Where a bay is: told from the inside of the vehicle alone.
pub(super) fn of_bay(said: Option<&Said<PlaceFile>>, r: &mut Resolver<'_>) -> Place {
    let Some(said) = said else { return nowhere() };
    if let Some(inside) = &said.value.r#in {
        r.reader.tell(
            &inside.at,
            "a bay is told from the inside of the vehicle",
            "a bay in a bay",
            "leave `in` out and measure from the vehicle's own faces",
        );
    }
    one(&said.value, r)
}

fn one(file: &PlaceFile, r: &mut Resolver<'_>) -> Place {
    let x = anchor(&file.from_rear, &file.from_front, "from_rear", "from_front", r);
    let y = anchor(&file.from_right, &file.from_left, "from_right", "from_left", r);
    let mut z = anchor(&file.above, &file.below, "above", "below", r);
    let on = file.on.as_ref().map(|said| said.value.clone());
    if let Some(on_said) = &file.on {
        if !matches!(z, Anchor::Unsaid) {
            r.reader.tell(
                &on_said.at,
                "a thing that stands on something needs no height",
                "told twice",
                "keep either `on` or `above`",
            );
        }
        if on_said.value == "floor" {
            z = Anchor::Low(Given {
                value: Ranged::exactly(Length::m(0.0)),
                basis: Basis::Measured,
                source: r.files.place(&on_said.at).into(),
                how: "It stands on the floor.".into(),
            });
        }
    }
    Place {
        bay: file.r#in.as_ref().map(|said| said.value.clone()),
        on: on.filter(|on| on != "floor"),
        faces: file.faces.as_ref().map(|said| said.value),
        x,
        y,
        z,
    }
}

fn anchor(
    low: &Q<Length>,
    high: &Q<Length>,
    low_key: &str,
    high_key: &str,
    r: &mut Resolver<'_>,
) -> Anchor {
    if let (Some(low), Some(high)) = (low, high) {
        let later = if low.at.span.start < high.at.span.start { high } else { low };
        r.reader.tell(
            &later.at,
            format!("both `{low_key}` and `{high_key}` are said"),
            "one too many",
            "keep the one you measured; the other follows from the size",
        );
    }
    match (r.taped(low, p::DISTANCE_M), r.taped(high, p::DISTANCE_M)) {
        (Some(low), _) => Anchor::Low(low),
        (None, Some(high)) => Anchor::High(high),
        (None, None) => Anchor::Unsaid,
    }
}

/// Checks what items are said to stand on: another item, and never in a ring.
pub(super) fn stands(file: &BuildFile, r: &mut Resolver<'_>) {
    let on = |name: &str| -> Option<&Said<String>> {
        file.items.get(name)?.place.as_ref()?.value.on.as_ref().filter(|on| on.value != "floor")
    };
    for (name, _) in file.items.iter() {
        let Some(first) = on(&name.value) else { continue };
        if !r.known(Some(first), "item", &file.items) {
            continue;
        }
        let mut under = first.value.as_str();
        for _ in 0..file.items.names().count() {
            if under == name.value {
                r.reader.tell(
                    &first.at,
                    format!("`{}` stands on itself", name.value),
                    "a ring",
                    "say what the lowest of them stands on: on = \"floor\"",
                );
                break;
            }
            let Some(next) = on(under) else { break };
            under = &next.value;
        }
    }
}
