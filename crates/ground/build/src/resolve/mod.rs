//! From records to the typed build: references resolved, defaults put in, plausibility checked.

mod air;
mod axle;
mod circuit;
mod hold;
mod life;
mod part;
mod place;
mod plausible;
mod reading;
mod shape;
mod space;

use std::borrow::Cow;

use spile_answer::{Basis, Given};
use spile_quantity::{Length, Ranged, Readable, Share, Voltage, Written};

use crate::file::{BuildFile, Q, Tape, Text, Words};
use crate::model::{Build, Named};
use crate::read::{Keyed, Reader, Said, suggestion};
use crate::source::{At, Files};

pub(crate) use plausible::Bounds;

/// What resolving needs at hand: the files, for saying where a number stands, and the reader,
/// for telling what is wrong.
pub(crate) struct Resolver<'a> {
    files: &'a Files,
    reader: &'a mut Reader,
}

/// Makes the typed build. It is to be used only where no problem was told.
pub(crate) fn resolve(file: &BuildFile, files: &Files, reader: &mut Reader) -> Build {
    let mut resolver = Resolver { files, reader };
    let r = &mut resolver;
    let system = r.given(&file.system, Basis::Measured, plausible::SYSTEM_V);
    if let (Some(said), Some(volts)) = (&file.system, &system)
        && ![12.0, 24.0, 48.0].contains(&volts.likely().in_v())
    {
        r.reader.tell(
            &said.at,
            "a house circuit is of 12 V, 24 V or 48 V",
            "not a nominal voltage",
            "write the nominal voltage, not what a meter shows: system = \"12 V\"",
        );
    }
    let bays = space::bays(file, r);
    let parts = part::parts(file, r);
    let items = space::items(file, &parts, r);
    let panels = space::panels(file, r);
    let obstacles = shape::obstacles(file, r);
    place::stands(file, r);
    let runs = circuit::runs(file, r);
    let wants = life::wants(file, r);
    let (loads, corners) = life::states(file, r);
    Build {
        about: text(&file.about),
        tape: file.tape.as_ref().map_or(Tape::ThirtySeconds, |tape| tape.value),
        words: file.words.as_ref().map_or(Words::Uk, |words| words.value),
        system: system.unwrap_or_else(|| typical::<Voltage>("system-volts")),
        vehicle: space::vehicle(file, r),
        body: circuit::body(file, r),
        block: circuit::block(file, r),
        bank: circuit::bank(file, r),
        sources: circuit::sources(file, r),
        trips: life::trips(file, r),
        readings: reading::readings(file, r),
        weighings: life::weighings(file, r),
        bays,
        obstacles,
        panels,
        items,
        runs,
        wants,
        load_places: axle::load_places(file, r),
        loads,
        corners,
        stands: None,
    }
}

impl Resolver<'_> {
    /// A quantity of the files with its basis, if it was said and lies within the bounds of what
    /// is plausible. A quantity written with `about` is a guess, and so `typical`.
    fn given<T: Readable>(
        &mut self,
        said: &Q<T>,
        basis: Basis,
        bounds: Bounds,
    ) -> Option<Given<T>> {
        let said = said.as_ref()?;
        let ranged = said.value.ranged;
        if !bounds.hold(&ranged) {
            self.reader.tell(
                &said.at,
                format!("{} cannot be {}", bounds.what, said.value.text.trim()),
                "not plausible",
                format!("expected {}; check the number and its unit", bounds.expected()),
            );
            return None;
        }
        Some(self.with_source(said, ranged, basis))
    }

    /// A length taken with a tape: without a tolerance of its own it has the tape's typical one.
    fn taped(&mut self, said: &Q<Length>, bounds: Bounds) -> Option<Given<Length>> {
        let given = self.given(said, Basis::Measured, bounds)?;
        let written = &said.as_ref()?.value;
        Some(if written.tolerance_given || given.basis == Basis::Typical {
            given
        } else {
            with_tape_tolerance(given)
        })
    }

    fn with_source<T: Readable>(
        &self,
        said: &Said<Written<T>>,
        ranged: Ranged<T>,
        basis: Basis,
    ) -> Given<T> {
        let (basis, how) = match basis {
            _ if said.value.about => {
                (Basis::Typical, "It was written as a guess: take it, and write what was found.")
            }
            Basis::Measured => (basis, "Take it again, more exactly."),
            other => (other, "See the part's papers."),
        };
        Given {
            value: ranged,
            basis,
            source: Cow::Owned(self.files.place(&said.at)),
            how: how.into(),
        }
    }

    /// A quantity from the papers of a part.
    fn papers<T: Readable>(&mut self, said: &Q<T>, bounds: Bounds) -> Option<Given<T>> {
        self.given(said, Basis::Papers, bounds)
    }

    /// A measured quantity, or its stand-in.
    fn or_typical<T: Readable>(&mut self, said: &Q<T>, bounds: Bounds, key: &str) -> Given<T> {
        let stand_in = typical(key);
        match self.given(said, Basis::Measured, bounds) {
            Some(given) => Given { how: stand_in.how, ..given },
            None => stand_in,
        }
    }

    /// Tells where a text names nothing that there is; whether it may be used.
    fn known<T>(&mut self, said: Option<&Said<String>>, what: &str, things: &Keyed<T>) -> bool {
        let Some(said) = said else { return true };
        let known = things.knows(&said.value);
        if !known {
            let names: Vec<&str> = things.names().collect();
            self.reader.tell(
                &said.at,
                format!("there is no {what} `{}`", said.value),
                "not in the build",
                suggestion(&said.value, &names),
            );
        }
        known
    }

    /// Tells that a record lacks keys without which the rest of it says nothing.
    fn lacking(&mut self, at: &At, what: &str, keys: &[&str]) {
        self.reader.lacking(at, what, keys, "add what is missing, or leave the whole of it out");
    }
}

/// The stand-in of that name.
///
/// # Panics
/// If the program's own table has no such row: a fault of the program, not of a build.
pub fn typical<T: Readable>(key: &str) -> Given<T> {
    let row = spile_tables::typical::<T>(key)
        .unwrap_or_else(|| panic!("the table of typical values has no row `{key}`"));
    Given {
        value: row.ranged,
        basis: Basis::Typical,
        source: Cow::Borrowed("common practice"),
        how: Cow::Borrowed(row.how),
    }
}

/// The stand-in of that name that is a plain number: a count, a ratio, a factor.
///
/// # Panics
/// As [`typical`].
pub fn typical_number(key: &str) -> Given<Share> {
    let (row, _) = spile_tables::typical_number(key)
        .unwrap_or_else(|| panic!("the table of typical values has no number `{key}`"));
    let number = |value| Share::of_one(value);
    Given {
        value: Ranged {
            low: number(row.ranged.low),
            likely: number(row.ranged.likely),
            high: number(row.ranged.high),
        },
        basis: Basis::Typical,
        source: Cow::Borrowed("common practice"),
        how: Cow::Borrowed(row.how),
    }
}

/// A length that a tape was laid to, with the tape's typical tolerance.
fn with_tape_tolerance(given: Given<Length>) -> Given<Length> {
    let tolerance = typical::<Length>("tape-tolerance").likely();
    let likely = given.value.likely;
    let low = if likely >= tolerance { likely - tolerance } else { Length::m(0.0) };
    Given {
        value: Ranged { low, likely, high: likely + tolerance },
        source: Cow::Owned(format!("{}, ± {} mm assumed", given.source, tolerance.in_mm())),
        ..given
    }
}

/// A text, empty where nothing is said.
fn text(said: &Text) -> String {
    said.as_ref().map(|said| said.value.clone()).unwrap_or_default()
}

/// Each named thing made typed.
fn named<'f, T: 'f, M>(
    things: &'f Keyed<T>,
    mut make: impl FnMut(&'f Said<String>, &'f T) -> Option<M>,
) -> Named<M> {
    things
        .iter()
        .filter_map(|(name, thing)| make(name, thing).map(|made| (name.value.clone(), made)))
        .collect()
}
