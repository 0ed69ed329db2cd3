//! The bank as the year counts it.

use spile_answer::{Given, Handle, Ledger};
use spile_build::file::Chemistry;
use spile_build::{Bank, Build, typical, typical_number};
use spile_energy::battery::Battery;
use spile_heat::scene::Values;
use spile_quantity::{Charge, Current, Ranged, Share, Temperature, Time};
use spile_tables::battery as table;
use spile_tables::charging::charge_temperature;

/// The inputs of a bank whose capacity is known.
pub(crate) struct Cells {
    pub(crate) kind: Chemistry,
    pub(crate) capacity: Handle<Charge>,
    hour_rate: Time,
    peukert: Handle<Share>,
    kept: Handle<Share>,
    taper: Handle<Time>,
    charge_share: Handle<Share>,
    pub(crate) depth: Handle<Share>,
    pub(crate) floor: Handle<Share>,
}

impl Cells {
    /// `None` where the capacity is not said.
    pub(crate) fn new(build: &Build, bank: &Bank, ledger: &mut Ledger) -> Option<Self> {
        let each = bank.capacity.as_ref()?;
        let all = each.map(|charge| charge * f64::from(bank.count));
        let key = key(bank.kind);
        let lead = bank.kind != Chemistry::Lfp;
        Some(Self {
            kind: bank.kind,
            capacity: ledger.take("capacity of the bank", &all),
            hour_rate: bank.hour_rate.unwrap_or(Time::hours(if lead { 20.0 } else { 5.0 })),
            peukert: ledger.take("Peukert's exponent", &typical_number(&format!("peukert-{key}"))),
            kept: ledger.take("amp-hours given back", &typical(&format!("charge-kept-{key}"))),
            taper: ledger.take(
                "missing amp-hours over the amperes accepted",
                &typical(&format!("charge-taper-{key}")),
            ),
            charge_share: ledger.take(
                "greatest charge for each amp-hour",
                &typical(&format!("charge-share-{key}")),
            ),
            depth: ledger.take("depth for long life", &typical(&format!("usable-depth-{key}"))),
            floor: ledger.take("charge at which the loads go off", &low_charge(build)),
        })
    }

    /// The bank down to a charge left, with some amp-hours more.
    pub(crate) fn battery(&self, values: &impl Values, left: Share, more: Charge) -> Battery {
        let capacity = values.at(self.capacity) + more;
        Battery {
            capacity,
            hour_rate: self.hour_rate,
            peukert: values.at(self.peukert).in_of_one(),
            kept: values.at(self.kept),
            taper: values.at(self.taper),
            greatest_charge: self.greatest_charge(values, capacity),
            coldest_charge: coldest(self.kind).unwrap_or(Temperature::celsius(-60.0)),
            floor: left,
        }
    }

    /// The greatest charge that is good for it, by its capacity.
    pub(crate) fn greatest_charge(&self, values: &impl Values, capacity: Charge) -> Current {
        Current::a(capacity.in_ah() * values.at(self.charge_share).in_of_one())
    }

    /// The charge left at the depth for long life.
    pub(crate) fn left(&self, values: &impl Values) -> Share {
        Share::of_one(1.0 - values.at(self.depth).in_of_one())
    }
}

/// The coldest that a charge is taken, where the table has it.
pub(crate) fn coldest(kind: Chemistry) -> Option<Temperature> {
    let kind = table::Chemistry::from_key(key(kind))?;
    charge_temperature(kind).map(|entry| entry.value.coldest)
}

/// The charge at which the loads go off, without its range: one lets it go so low and no lower.
fn low_charge(build: &Build) -> Given<Share> {
    let low = &build.corners.low_charge;
    Given { value: Ranged::exactly(low.likely()), ..low.clone() }
}

/// The chemistry's word in the keys of the stand-ins.
pub(crate) const fn key(kind: Chemistry) -> &'static str {
    match kind {
        Chemistry::Flooded => "flooded",
        Chemistry::Agm => "agm",
        Chemistry::Gel => "gel",
        Chemistry::Lfp => "lfp",
    }
}
