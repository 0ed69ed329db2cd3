//! Readings of a meter: made typed.

use spile_answer::Basis;
use spile_quantity::{Current, Share, Temperature, Voltage};

use super::plausible as p;
use super::{Resolver, named};
use crate::file::{BuildFile, ItemState, Q, ReadingFile};
use crate::model::Named;
use crate::reading::{Meter, Reading};

/// Readings of a meter along a run, which must be there.
pub(super) fn readings(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Reading> {
    named(&file.readings, |name, reading: &ReadingFile| {
        let run = reading.run.as_ref().unwrap_or(name);
        if !r.known(Some(run), "run", &file.runs) {
            return None;
        }
        let meter = reading.meter.as_ref().map(|said| said.value.clone()).unwrap_or_default();
        let meter = Meter {
            volts: r.or_typical::<Share>(&meter.volts, p::SHARE, "meter-volts"),
            clamp: r.or_typical::<Share>(&meter.clamp, p::SHARE, "meter-clamp"),
            zero: r.or_typical::<Current>(&meter.zero, p::READ_A, "meter-clamp-zero"),
        };
        let mut volts = |q: &Q<Voltage>| r.given(q, Basis::Measured, p::READ_V);
        Some(Reading {
            run: run.value.clone(),
            date: reading.date.as_ref().map(|said| said.value.0.clone()),
            state: reading.state.as_ref().map_or(ItemState::Running, |said| said.value),
            others_on: reading.others_on.as_ref().is_some_and(|said| said.value),
            behaves: reading.behaves.as_ref().map(|said| said.value),
            battery: volts(&reading.battery),
            block: volts(&reading.block),
            appliance: volts(&reading.appliance),
            main_drop: volts(&reading.main_drop),
            fuse_drop: volts(&reading.fuse_drop),
            feed_drop: volts(&reading.feed_drop),
            return_drop: volts(&reading.return_drop),
            negative_drop: volts(&reading.negative_drop),
            on_for: r.given(&reading.on_for, Basis::Measured, p::TIME_S),
            current: r.given(&reading.current, Basis::Measured, p::READ_A),
            monitor: r.given(&reading.monitor, Basis::Measured, p::READ_A),
            joint: r.given::<Temperature>(&reading.joint, Basis::Measured, p::READ_C),
            bay: r.given::<Temperature>(&reading.bay, Basis::Measured, p::READ_C),
            meter,
        })
    })
}
