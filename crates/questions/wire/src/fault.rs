//! The least fault at the item: the time in which it opens the fuse, against the time that the
//! conductors stand it.

use spile_answer::{Ask, Class, Finding, Ledger, Limit, Reason, Sense, Step, Unit, Verdict};
use spile_build::Cable;
use spile_circuit::conductor::section;
use spile_circuit::fuse::opening;
use spile_circuit::scene::{Fuse, OneRun, State, Way, likely_carried, weakest};
use spile_quantity::{Current, Temperature};
use spile_tables::fault::{Adiabatic, adiabatic};
use spile_tables::fuse::{Envelope, envelope, protection};
use spile_tables::{Entry, Status};

use crate::asked::Seen;
use crate::cable::carried_over;
use crate::words::{amps, seconds};

/// Up to this time no heat leaves a conductor (IEC 60364-4-43 clause 434.5.2).
const ADIABATIC_TO_S: f64 = 5.0;

/// The fuse's curve, and every conductor that it has to save.
#[derive(Debug, Clone)]
pub(crate) struct Clearing {
    curve: &'static Entry<Envelope>,
    rating: Current,
    conductors: Vec<Stands>,
}

/// What tells how long a conductor stands a current.
#[derive(Debug, Clone)]
struct Stands {
    name: &'static str,
    k: &'static Entry<Adiabatic>,
    section_mm2: f64,
    ambient_c: f64,
    rated_c: f64,
    carried_a: f64,
}

impl Clearing {
    /// `None` where no curve of the fuse is known, or nothing of what a conductor carries.
    pub(crate) fn of(asked: &OneRun<'_>, fuse: &Fuse) -> Option<Self> {
        let curve = envelope(fuse.family?, fuse.rating)?;
        // a curve that ends at the overload test says nothing of faults
        let overload = protection().tripping_over_cable.value;
        curve.value.points.iter().find(|point| point.multiple > overload)?;
        let conductors = asked.guarded().into_iter().map(|(name, cable)| Stands::of(name, cable));
        Some(Self { curve, rating: fuse.rating, conductors: conductors.collect::<Option<_>>()? })
    }

    /// The latest time in which the fuse opens, over what the weakest conductor stands, in percent.
    pub(crate) fn share_percent(&self, fault: Current) -> f64 {
        let opens_s = self.opens_s(fault);
        let share = |stands: &Stands| match opens_s {
            _ if fault.in_a() <= stands.carried_a => 0.0,
            Some(opens_s) => 100.0 * opens_s / stands.time_s(fault),
            None => f64::INFINITY,
        };
        self.conductors.iter().map(share).fold(0.0, f64::max)
    }

    /// The latest time in which the fuse opens \[s\]; `None` where it may never open.
    fn opens_s(&self, fault: Current) -> Option<f64> {
        Some(opening(&self.curve.value, self.rating, fault).ok()?.at_most?.in_s())
    }

    /// The conductor that stands a current for the shortest time, and that time \[s\].
    fn weakest(&self, fault: Current) -> Option<(&Stands, f64)> {
        let times = self.conductors.iter().map(|stands| (stands, stands.time_s(fault)));
        times.min_by(|a, b| a.1.total_cmp(&b.1))
    }
}

impl Stands {
    fn of(name: &'static str, cable: &Cable) -> Option<Self> {
        let rated = cable.insulation.likely();
        Some(Self {
            name,
            k: k_of(rated)?,
            section_mm2: section(cable.section).ok()?.low.in_mm2(),
            ambient_c: cable.ambient.likely().in_celsius(),
            rated_c: rated.in_celsius(),
            carried_a: likely_carried(cable)?.current.in_a(),
        })
    }

    /// How long the conductor stands a current from its rating on, t \[s\]; infinite where the heat
    /// that it loses meanwhile keeps it below what its insulation stands for the moment.
    ///
    /// **Formula** t₀ = (k · S / I)²; where that is more than 5 s,
    /// t = t₀ · (T_s − T_a)/(T_e − T_r) · ln((T_s − T_r)/(T_s − T_e)) with
    /// T_s = T_a + (T_r − T_a) · (I/I_z)², the temperature that it would settle at.
    ///
    /// **Arguments** k \[A·√s/mm²\] with the temperatures T_r and T_e \[°C\] between which it holds;
    /// S \[mm²\]; I \[A\], above I_z; T_a \[°C\]; I_z \[A\], what it carries for good.
    ///
    /// **Validity** one conductor with cooling in proportion to its excess temperature.
    ///
    /// **Source** t₀: IEC 60364-4-43 clause 434.5.2. Beyond 5 s: a body that heats and cools at
    /// once, T(t) = T_s − (T_s − T_r) · e^(−t/τ), with τ such that it begins as t₀ does; any
    /// textbook on heat.
    fn time_s(&self, current: Current) -> f64 {
        let k = self.k.value.k_a_sqrt_s_per_mm2;
        let adiabatic_s = (k * self.section_mm2 / current.in_a()).powi(2);
        if adiabatic_s <= ADIABATIC_TO_S {
            return adiabatic_s;
        }
        let over = (current.in_a() / self.carried_a).powi(2);
        let settles_c = self.ambient_c + (self.rated_c - self.ambient_c) * over;
        let (start_c, end_c) = (self.k.value.start.in_celsius(), self.k.value.end.in_celsius());
        if settles_c <= end_c {
            return f64::INFINITY;
        }
        let stretch = (settles_c - self.ambient_c) / (end_c - start_c)
            * ((settles_c - start_c) / (settles_c - end_c)).ln();
        adiabatic_s * stretch
    }
}

/// The k of PVC for an insulation's rating, the next hotter where there is none of its own: what
/// vehicles are wired with, and less than that of rubber or XLPE.
fn k_of(rating: Temperature) -> Option<&'static Entry<Adiabatic>> {
    adiabatic(match rating.in_celsius() {
        ..=70.0 => "copper-pvc70",
        ..=90.0 => "copper-pvc90",
        _ => "copper-pvc105",
    })
}

/// The fault finding of a run.
pub(crate) fn fault(
    asked: &OneRun<'_>,
    way: &Way,
    seen: &Seen,
    clearing: Option<&Clearing>,
    fuse: &Fuse,
) -> Finding {
    let fault = way.solve(&way.ledger.likely(), State::Fault);
    let (Some(clearing), Some(fault)) = (clearing, fault) else {
        return by_overload(asked, fuse);
    };
    let fault = fault.current;
    let curve = clearing.curve;
    let known = |status: Status| status != Status::FromMemory;
    let firm =
        known(curve.status) && clearing.conductors.iter().all(|stands| known(stands.k.status));
    let limit = Limit {
        value: 100.0,
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "cable",
        source: format!("{}; {}", curve.source.title, "IEC 60364-4-43").into(),
        firm,
    };
    let words = fuse.words();
    let draws = format!("A fault at the plug draws {} on a low battery.", amps(fault));
    let weakest = clearing.weakest(fault);
    let says = match (clearing.opens_s(fault), weakest) {
        (Some(opens_s), Some((stands, time_s))) if time_s.is_finite() => format!(
            "{draws} The {words} opens within {}; the {} stands it for {}.",
            seconds(opens_s),
            stands.name,
            seconds(time_s)
        ),
        (Some(opens_s), _) => {
            format!(
                "{draws} The {words} opens within {}, before any cable is too hot.",
                seconds(opens_s)
            )
        }
        (None, _) if seen.fault.likely == 0.0 => {
            format!("{draws} That may not open the {words}, and the cables carry it for good.")
        }
        (None, _) => format!("{draws} Nothing says that the {words} ever opens at that."),
    };
    let mut working = vec![Step {
        what: "least fault current at the plug".into(),
        formula: "I = E / ΣR, battery low and cold, copper as hot as its insulation stands".into(),
        numbers: format!(
            "{:.1} A, {:.1} times the fuse's rating",
            fault.in_a(),
            fault.in_a() / fuse.rating.in_a()
        ),
        source: "IEC 61660-1 for batteries in the steady state, from memory".into(),
    }];
    if let Some((stands, time_s)) = weakest {
        working.push(Step {
            what: format!("what the {} stands", stands.name).into(),
            formula: "t = (k · S / I)²; beyond 5 s with the heat that it loses".into(),
            numbers: format!(
                "({} A·√s/mm² × {:.2} mm² / {:.1} A)² gives {time_s:.2} s",
                stands.k.value.k_a_sqrt_s_per_mm2,
                stands.section_mm2,
                fault.in_a()
            ),
            source: "IEC 60364-4-43 clause 434.5.2".into(),
        });
    }
    let label = "time to open, of what the cable stands";
    Finding::measured(asked.id("fault"), label, Unit::Percent, &seen.fault, limit, &way.ledger)
        .saying(says)
        .worked(working)
}

/// Where no curve of the fuse is known for faults: a fuse that guards a cable against overload
/// guards it against faults too.
///
/// **Source** IEC 60364-4-43 clause 435.1, from memory: so where the fuse can break the fault,
/// which is asked of the bank's.
fn by_overload(asked: &OneRun<'_>, fuse: &Fuse) -> Finding {
    let id = asked.id("fault");
    let label = "fault at the plug";
    let words = fuse.words();
    let carried = weakest(asked.guarded()).and_then(|(name, cable)| {
        let mut ledger = Ledger::new();
        let (swung, _) = carried_over(&mut ledger, name, cable, |_| 0.0)?;
        Some((name, swung))
    });
    if let Some((name, swung)) = carried
        && swung.likely >= fuse.rating.in_a()
    {
        let sure = swung.unfavourable >= fuse.rating.in_a();
        let verdict = if sure { Verdict::Good } else { Verdict::Care(Reason::Unsure) };
        let says = format!(
            "No curve of the {words} is known for faults. It is no more than the {name} carries, so it guards it in a fault too."
        );
        return Finding::plain(id, label, verdict, says);
    }
    let says = format!(
        "No curve of the {words} is known for faults, so nothing says that it opens before a cable is too hot."
    );
    let mut finding = Finding::plain(id, label, Verdict::Open, says);
    finding.asks.push(Ask::missing(
        format!("kind of the fuse of the run {}", asked.name),
        "Read the kind on the fuse or in its papers: blade, mini blade, maxi blade, small strip, strip or class T. Any other has no curve here.",
        "",
    ));
    finding
}
