//! What is used in a day, and how many days a full bank carries it.

use spile_answer::{
    Basis, Class, Figure, Finding, Ledger, Limit, Point, Sense, Step, Swing, TOGETHER, Unit,
    Verdict, Worse, swing,
};
use spile_build::{Bank, Build, typical};
use spile_energy::year::autonomy;
use spile_quantity::{Charge, Temperature, Time};

use crate::bank_words;
use crate::cell::Cells;
use crate::load::Loads;
use crate::open;

/// The name of the input.
const CABIN: &str = "cabin on an ordinary day";

/// A day of everything.
pub(crate) struct Daily<'b> {
    pub(crate) loads: Loads<'b>,
    pub(crate) ledger: Ledger,
    mild: Temperature,
    hot: Temperature,
    /// Amp-hours of an ordinary day; `None` where it cannot be computed.
    swung: Option<Swing>,
}

impl<'b> Daily<'b> {
    pub(crate) fn new(build: &'b Build) -> Self {
        let (loads, mut ledger) = Loads::new(build);
        let cabin = ledger.take(CABIN, &build.corners.mild_cabin);
        let computed = loads.day_ah(&ledger.likely(), build.corners.mild_cabin.likely(), false);
        let swung = (computed.is_ok() && !loads.is_empty()).then(|| {
            let [swung] = swing(&ledger, [Worse::Higher], |point| {
                let day = loads.day_ah(point, point.at(cabin), false);
                [day.unwrap_or(f64::INFINITY)]
            });
            swung
        });
        Self {
            loads,
            ledger,
            mild: build.corners.mild_cabin.likely(),
            hot: build.corners.hot_cabin.likely(),
            swung,
        }
    }

    /// The use of a day, and what is left out of it.
    pub(crate) fn findings(&self) -> Vec<Finding> {
        let mut findings: Vec<Finding> = self.used().into_iter().collect();
        if self.loads.is_empty() {
            findings.push(open(
                "use",
                "amp-hours of a day",
                "Nothing in the build takes a current, as far as it says.",
                "what takes a current",
                "Give each lamp, pump, fan and fridge as an item with the watts from its label.",
            ));
        }
        for name in &self.loads.without_power {
            findings.push(open(
                &format!("{name}.power"),
                &format!("what the {name} takes"),
                &format!("The watts of the {name} are not said: it is left out of the day."),
                &format!("power of {name} while it runs"),
                "Read the watts off its label, or amperes times volts with a clamp meter.",
            ));
        }
        for name in &self.loads.cold_left_out {
            findings.push(open(
                &format!("{name}.power"),
                &format!("what the {name} takes"),
                &format!("What the {name} takes cannot be computed: it is left out of the day."),
                name,
                "A compressor box wants its outside sizes or the watt-hours a day of its papers; of \
                 another kind, a meter that counts amp-hours for a day.",
            ));
        }
        findings
    }

    fn used(&self) -> Option<Finding> {
        let swung = self.swung.as_ref()?;
        let point = self.ledger.likely();
        let hot = self.loads.day_ah(&point, self.hot, false).ok()?;
        let cold = self.loads.each.iter().any(|load| load.when_cold);
        let heated = if cold {
            let day = self.loads.day_ah(&point, self.mild, true).ok()?;
            format!("; a day that is heated {day:.0} Ah")
        } else {
            String::new()
        };
        let says = format!(
            "An ordinary day with {:.0} °C in the cabin takes {:.0} Ah at {} V, at the unfavourable \
             end {:.0} Ah; with {:.0} °C all day {hot:.0} Ah{heated}.",
            self.mild.in_celsius(),
            swung.likely,
            self.loads.system.in_v(),
            swung.unfavourable,
            self.hot.in_celsius(),
        );
        let figure = Figure {
            likely: swung.likely,
            unfavourable: swung.unfavourable,
            unit: Unit::AmpereHour,
        };
        let finding = Finding::plain("use", "amp-hours of an ordinary day", Verdict::Good, says);
        Some(Finding {
            figure: Some(figure),
            inputs: self.ledger.inputs().to_vec(),
            ..finding.worked(vec![self.working(&point, swung.likely)])
        })
    }

    fn working(&self, point: &Point, sum_ah: f64) -> Step {
        let volts = self.loads.system.in_v();
        let mut each: Vec<String> = Vec::new();
        for load in self.loads.each.iter().filter(|load| !load.when_cold) {
            each.push(format!(
                "{}: {:.0} W × {:.2} h",
                load.name,
                point.at(load.power).in_w(),
                point.at(load.hours).in_hours()
            ));
        }
        let boxes = self.loads.fridges.iter().flat_map(|scene| &scene.boxes);
        let watts = self.loads.fridges_w(point, self.mild).unwrap_or_default();
        for (cold, watts) in boxes.zip(watts) {
            each.push(format!("{}: {watts:.1} W × 24 h", cold.name));
        }
        Step {
            what: "amp-hours of an ordinary day".into(),
            formula: "q = Σ P·t / U".into(),
            numbers: format!("({}) / {volts} V = {sum_ah:.1} Ah", each.join(" + ")),
            source: "power times hours; fridges by the heat balance of a steady day".into(),
        }
    }

    /// The point at which the most is used.
    pub(crate) fn worst(&self, ledger: &Ledger) -> Point {
        let mut point = ledger.likely();
        let movers = self.swung.iter().flat_map(|swung| swung.movers.iter().take(TOGETHER));
        for mover in movers {
            point.set(mover.input, mover.end);
        }
        point
    }

    /// The stand-in that moves the use of a day most, the cabin's warmth left out: the year has its
    /// own.
    pub(crate) fn strongest(&self) -> Option<usize> {
        let inputs = self.ledger.inputs();
        let movers = self.swung.iter().flat_map(|swung| &swung.movers);
        movers
            .map(|mover| mover.input)
            .filter(|input| inputs[*input].name != CABIN)
            .find(|input| inputs[*input].basis == Basis::Typical)
    }

    /// The days that a full bank carries it without sun.
    pub(crate) fn autonomy(
        &self,
        build: &Build,
        bank: &Bank,
        cells: &Cells,
        ledger: &Ledger,
    ) -> Option<Finding> {
        let mild = self.mild;
        let days = |point: &Point, used_ah: f64| {
            let battery = cells.battery(point, cells.left(point), Charge::ah(0.0));
            autonomy(&battery, Charge::ah(used_ah)).map_or(f64::NAN, Time::in_days)
        };
        self.swung.as_ref()?;
        let point = ledger.likely();
        let used_ah = self.loads.day_ah(&point, mild, false).ok()?;
        let cabin = build.corners.mild_cabin.clone();
        let mut with_cabin = ledger.clone();
        let cabin = with_cabin.take(CABIN, &cabin);
        let figure = |point: &Point| {
            let used = self.loads.day_ah(point, point.at(cabin), false);
            used.map_or(0.0, |used_ah| days(point, used_ah))
        };
        let [swung] = swing(&with_cabin, [Worse::Lower], |point| [figure(point)]);
        let wanted = typical::<Time>("days-without-sun").likely();
        let limit = Limit {
            value: wanted.in_days(),
            sense: Sense::AtLeast,
            class: Class::Practice,
            kind: "practice",
            source: "common practice, no source".into(),
            firm: false,
        };
        let capacity = point.at(cells.capacity);
        let left = cells.left(&point);
        let usable_ah = capacity.in_ah() * (1.0 - left.in_of_one());
        let heats = self.loads.each.iter().any(|load| load.when_cold);
        let heated = if heats {
            self.loads.day_ah(&point, mild, true).ok().map(|used_ah| days(&point, used_ah))
        } else {
            None
        };
        let says = format!(
            "{} give {usable_ah:.0} Ah down to {:.0} % charge. Without sun or engine that is {:.1} \
             days, at the unfavourable end {:.1}{}.",
            bank_words(bank, capacity.in_ah()),
            left.in_percent(),
            swung.likely,
            swung.unfavourable,
            heated.map_or_else(String::new, |days| format!("; while it is heated {days:.1}"))
        );
        let short_ah = (wanted.in_days() - swung.likely) * used_ah;
        let mend = (short_ah > 0.0).then(|| {
            let more = short_ah / (1.0 - left.in_of_one());
            format!("{:.0} Ah more, used as deep, for {:.0} days.", more.ceil(), wanted.in_days())
        });
        let step = Step {
            what: "days without sun".into(),
            formula: "t = C·d / (q·max(1, (I·H/C)^(n − 1)))".into(),
            numbers: format!(
                "{:.0} Ah × {:.0} % / {used_ah:.1} Ah a day = {:.2} days",
                capacity.in_ah(),
                100.0 - left.in_percent(),
                swung.likely
            ),
            source: "counting of coulombs; Peukert (1897); depth is common practice".into(),
        };
        let label = "days without sun";
        let finding = Finding::measured("autonomy", label, Unit::Day, &swung, limit, &with_cabin)
            .settling(&swung, &with_cabin, figure);
        Some(finding.saying(says).mended(mend).worked(vec![step]))
    }
}
