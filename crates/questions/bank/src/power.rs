//! Hours without power, the lowest charge, what comes in against what goes out, and the cold.

use spile_answer::{
    Ask, Basis, Class, Figure, Finding, Ledger, Limit, Point, Sense, Step, Unit, Verdict, judge,
};
use spile_build::Build;
use spile_quantity::Charge;

use crate::cell::coldest;
use crate::life::{Case, Life, NoYear, YEARS, Years};
use crate::open;
use crate::trip::{Calendar, how_to_say};

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// The most watts of panel \[W\] and amp-hours \[Ah\] more that are tried.
const MOST_MORE_W: f64 = 1600.0;
const MOST_MORE_AH: f64 = 800.0;
/// Halvings of what is tried.
const TRIES: usize = 5;

/// What the years of the trips come to, with the most used at `worse_loads` and the input that
/// moves it most; `sun` is the place of the sun's input.
pub(crate) fn findings(
    build: &Build,
    life: &Life<'_>,
    worse_loads: (Point, Option<usize>),
    sun: usize,
) -> Vec<Finding> {
    let point = life.ledger.likely();
    let worse = Worse::new(life, worse_loads, sun);
    let computed = (|| {
        let likely = life.years(&Case::at(&point))?;
        let all = life.years(&worse.all())?;
        let alone = [
            life.years(&worse.loads(&point))?,
            life.years(&worse.sources(&point))?,
            life.years(&worse.cells(&point))?,
        ];
        Ok::<_, NoYear>((likely, all, alone))
    })();
    let Ok((likely, all, alone)) = computed else { return vec![no_year()] };
    let mut findings = vec![
        without_power(build, life, &point, &worse, [&likely, &all], &alone),
        lowest(life, &point, &likely, &all),
        sources(life, &likely, &all),
    ];
    findings.extend(cold(life, &point, &likely));
    findings
}

/// The inputs at their worse ends.
struct Worse {
    loads: Point,
    strongest_load: Option<usize>,
    sun: usize,
    sources: Point,
    cells: Point,
}

impl Worse {
    fn new(
        life: &Life<'_>,
        (mut loads, strongest_load): (Point, Option<usize>),
        sun: usize,
    ) -> Self {
        move_ends(life, &mut loads, LOADS);
        let [sources, cells] = [SOURCES, CELLS].map(|ends| {
            let mut point = life.ledger.likely();
            move_ends(life, &mut point, ends);
            point
        });
        Self { loads, strongest_load, sun, sources, cells }
    }

    fn all(&self) -> Case<'_> {
        Case {
            loads: &self.loads,
            sources: &self.sources,
            cells: &self.cells,
            dull: true,
            ..Case::at(&self.loads)
        }
    }

    fn loads<'a>(&'a self, likely: &'a Point) -> Case<'a> {
        Case { loads: &self.loads, ..Case::at(likely) }
    }

    fn sources<'a>(&'a self, likely: &'a Point) -> Case<'a> {
        Case { sources: &self.sources, dull: true, ..Case::at(likely) }
    }

    fn cells<'a>(&'a self, likely: &'a Point) -> Case<'a> {
        Case { cells: &self.cells, ..Case::at(likely) }
    }
}

/// Moves inputs of these names to their worse ends.
fn move_ends(life: &Life<'_>, point: &mut Point, ends: &[(&str, End)]) {
    for (index, input) in life.ledger.inputs().iter().enumerate() {
        if let Some((_, end)) = ends.iter().find(|(name, _)| input.name == *name) {
            point.set(index, if *end == End::Low { input.low } else { input.high });
        }
    }
}

/// An end of an input's range.
#[derive(Clone, Copy, PartialEq)]
enum End {
    Low,
    High,
}

/// Inputs of the cabin that make fridges work harder, with their worse ends.
const LOADS: &[(&str, End)] = &[("cabin above outside", End::High), ("cabin, heated", End::High)];

/// Inputs of the sources that make a year worse, with their worse ends.
const SOURCES: &[(&str, End)] = &[
    ("dirt, wiring, mismatch and age of the panels", End::High),
    ("shade on the panels", End::High),
    ("charge controller", End::Low),
    ("volts at the battery while it charges", End::High),
];

/// Inputs of the battery that make a year worse, with their worse ends.
const CELLS: &[(&str, End)] = &[
    ("capacity of the bank", End::Low),
    ("Peukert's exponent", End::High),
    ("amp-hours given back", End::Low),
    ("missing amp-hours over the amperes accepted", End::High),
    ("greatest charge for each amp-hour", End::Low),
];

fn without_power(
    build: &Build,
    life: &Life<'_>,
    point: &Point,
    worse: &Worse,
    [likely, all]: [&Years; 2],
    alone: &[Years; 3],
) -> Finding {
    let wanted = &build.wants.without_power;
    let limit = Limit {
        value: wanted.likely().in_hours(),
        sense: Sense::AtMost,
        class: Class::Wish,
        kind: "wish",
        source: wanted.source.clone(),
        firm: false,
    };
    let figure = Figure {
        likely: likely.off_hours,
        unfavourable: likely.worst_hours.max(all.off_hours),
        unit: Unit::Count,
    };
    let verdict = judge(&figure, &limit);
    let [sun, engine, hook_up] = likely.shares().map(|share| 100.0 * share);
    let says = format!(
        "On the trips the loads are off {:.0} h in a likely year and {:.0} h in the worst of \
         {YEARS}, with everything at its unfavourable end {:.0} h; {:.0} h are accepted. Sun gives \
         {sun:.0} %, engine {engine:.0} %, hook-up {hook_up:.0} %.",
        likely.off_hours, likely.worst_hours, all.off_hours, limit.value,
    );
    let mend = (figure.likely > limit.value).then(|| mend(life, point, &limit));
    let step = Step {
        what: "hours without power in a year".into(),
        formula: "hour by hour: q' = q + η·I·t while charged, q − I·t·max(1, (I·H/C)^(n − 1)) else"
            .into(),
        numbers: format!(
            "mean of {YEARS} years {:.1} h, worst {:.1} h; used more alone {:.1} h, dull sky and bad \
             panels alone {:.1} h, tired battery alone {:.1} h, all three {:.1} h",
            likely.off_hours,
            likely.worst_hours,
            alone[0].off_hours,
            alone[1].off_hours,
            alone[2].off_hours,
            all.off_hours
        ),
        source: "counting of coulombs; weather by Aguiar, Collares-Pereira and Conde (1988)".into(),
    };
    let mut finding =
        Finding::plain("without-power", "hours a year without power, on the trips", verdict, says);
    finding.asks = if verdict == Verdict::Good {
        Vec::new()
    } else {
        asks(life, worse, &figure, &limit, alone)
    };
    Finding {
        figure: Some(figure),
        limit: Some(limit),
        inputs: life.ledger.inputs().to_vec(),
        ..finding.mended(mend).worked(vec![step])
    }
}

/// What would clear it at the likely value: watts of panel, or amp-hours, found by halving.
fn mend(life: &Life<'_>, point: &Point, limit: &Limit) -> String {
    let clears = |more_w: f64, more_ah: f64| {
        let case = Case { more_w, more: Charge::ah(more_ah), ..Case::at(point) };
        life.years(&case).is_ok_and(|years| years.off_hours <= limit.value)
    };
    let watts = least(MOST_MORE_W, 10.0, |more| clears(more, 0.0));
    let ah = least(MOST_MORE_AH, 5.0, |more| clears(0.0, more));
    match (watts, ah) {
        (Some(watts), Some(ah)) => {
            format!("{watts:.0} W of panel more, or {ah:.0} Ah more.")
        }
        (Some(watts), None) => {
            format!("{watts:.0} W of panel more; {MOST_MORE_AH:.0} Ah more alone do not do it.")
        }
        (None, Some(ah)) => {
            format!("{ah:.0} Ah more; {MOST_MORE_W:.0} W of panel more alone do not do it.")
        }
        (None, None) => format!(
            "Drive or hook up more often, or use less: neither {MOST_MORE_W:.0} W of panel nor \
             {MOST_MORE_AH:.0} Ah more do it alone."
        ),
    }
}

/// The least that clears, rounded up to whole steps; `None` where the most does not.
fn least(most: f64, step: f64, clears: impl Fn(f64) -> bool) -> Option<f64> {
    if !clears(most) {
        return None;
    }
    let (mut low, mut high) = (0.0, most);
    for _ in 0..TRIES {
        let middle = ((low + high) / 2.0 / step).ceil() * step;
        if clears(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Some(high)
}

/// What to measure: stand-ins of the group that alone moves the hours most.
///
/// One case of the years takes more than a millisecond, so that the value at which the verdict turns
/// is not searched for: a group is taken to move the hours as far to the better as to the worse.
fn asks(
    life: &Life<'_>,
    worse: &Worse,
    figure: &Figure,
    limit: &Limit,
    alone: &[Years; 3],
) -> Vec<Ask> {
    let way = (limit.value - figure.likely).abs().max(1.0);
    let groups = [
        (Some(worse.sun), 1),
        (worse.strongest_load, 0),
        (widest(&life.ledger, &worse.sources), 1),
        (widest(&life.ledger, &worse.cells), 2),
    ];
    let mut asks = Vec::new();
    for (input, group) in groups {
        let moved = (alone[group].off_hours - figure.likely).abs() / way;
        if let Some(input) = input {
            let input = &life.ledger.inputs()[input];
            asks.push(Ask {
                input: input.name.clone(),
                how: input.how.clone(),
                settles: "hours without power".into(),
                turns: String::new(),
                weight: moved.min(1.0),
            });
        }
    }
    asks.retain(|ask| ask.weight >= 0.2);
    asks.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    asks.truncate(3);
    asks
}

/// Of the stand-ins that a point moves from their likely values, the one whose range is the widest
/// share of itself.
fn widest(ledger: &Ledger, point: &Point) -> Option<usize> {
    let moved = ledger.inputs().iter().enumerate().filter_map(|(index, input)| {
        let mut back = point.clone();
        back.set(index, input.likely);
        let width = (input.high - input.low) / input.likely.abs().max(f64::MIN_POSITIVE);
        (back != *point && input.basis == Basis::Typical).then_some((index, width))
    });
    moved.max_by(|a, b| a.1.total_cmp(&b.1)).map(|(index, _)| index)
}

fn lowest(life: &Life<'_>, point: &Point, likely: &Years, all: &Years) -> Finding {
    let of = |years: &Years, at: usize| {
        let months = years.lowest.iter().enumerate();
        let known = months.filter_map(|(month, low)| low.map(|low| (month, low[at])));
        known.min_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or((0, 1.0))
    };
    let (month, low) = of(likely, 0);
    let worst = of(likely, 1).1.min(of(all, 0).1);
    let left = life.cells.left(point);
    let figure = Figure { likely: 100.0 * low, unfavourable: 100.0 * worst, unit: Unit::Percent };
    let limit = Limit {
        value: left.in_percent(),
        sense: Sense::AtLeast,
        class: Class::Practice,
        kind: "practice",
        source: "depth for long life: common practice, no source".into(),
        firm: false,
    };
    let verdict = judge(&figure, &limit);
    let each: Vec<String> = likely
        .lowest
        .iter()
        .enumerate()
        .filter_map(|(month, low)| {
            low.map(|low| format!("{} {:.0} %", MONTHS[month], 100.0 * low[0]))
        })
        .collect();
    let says = format!(
        "The charge gets down to {:.0} % in {}, the worst month, at the unfavourable end to {:.0} %; \
         for a long life it stays above {:.0} %.",
        figure.likely, MONTHS[month], figure.unfavourable, limit.value
    );
    let step = Step {
        what: "lowest charge of each month".into(),
        formula: "the least of q/C, hour by hour".into(),
        numbers: format!("mean of {YEARS} years: {}", each.join(", ")),
        source: "as for the hours without power".into(),
    };
    let finding = Finding::plain("lowest", "lowest charge of the trips", verdict, says);
    Finding {
        figure: Some(figure),
        limit: Some(limit),
        inputs: life.ledger.inputs().to_vec(),
        ..finding.worked(vec![step])
    }
}

fn sources(life: &Life<'_>, likely: &Years, all: &Years) -> Finding {
    let share =
        |[wanted, sun, engine, hook_up]: [f64; 4]| 100.0 * (sun + engine + hook_up) / wanted;
    let mut lines = Vec::new();
    let mut worst: Option<(usize, f64)> = None;
    for (trip, away) in life.calendar.trips.iter().enumerate() {
        for month in life.calendar.months(trip) {
            let sums = likely.month(month);
            if sums[0] <= 0.0 {
                continue;
            }
            let days = spile_energy::calendar::MONTH_DAYS[month] as f64;
            let [wanted, sun, engine, hook_up] = sums.map(|sum| sum / days);
            lines.push(format!(
                "{}, {}: out {wanted:.0}, sun {sun:.0}, engine {engine:.0}, hook-up {hook_up:.0}",
                away.name, MONTHS[month]
            ));
            if worst.is_none_or(|(_, least)| share(sums) < least) {
                worst = Some((month, share(sums)));
            }
        }
    }
    let Some((month, balance)) = worst else {
        return Finding::plain("sources", "what comes in", Verdict::Good, "Nothing is used.");
    };
    let figure =
        Figure { likely: balance, unfavourable: share(all.month(month)), unit: Unit::Percent };
    let limit = Limit {
        value: 100.0,
        sense: Sense::AtLeast,
        class: Class::Practice,
        kind: "practice",
        source: "what goes out has to come in: common practice, no source".into(),
        firm: false,
    };
    let verdict = judge(&figure, &limit);
    let says = format!(
        "In {}, the leanest month, sun, engine and hook-up offer {:.0} % of what is used, at the \
         unfavourable end {:.0} %.",
        MONTHS[month], figure.likely, figure.unfavourable
    );
    let step = Step {
        what: "amp-hours a day, by trip and month".into(),
        formula: "offered / used".into(),
        numbers: lines.join("; "),
        source: "as for the hours without power".into(),
    };
    let finding = Finding::plain("sources", "what comes in, of what goes out", verdict, says);
    Finding {
        figure: Some(figure),
        limit: Some(limit),
        inputs: life.ledger.inputs().to_vec(),
        ..finding.worked(vec![step])
    }
}

/// Whether lithium is too cold to be charged on the coldest day of the trips.
fn cold(life: &Life<'_>, point: &Point, likely: &Years) -> Option<Finding> {
    let limit_c = coldest(life.cells.kind)?.in_celsius();
    let mut colder = point.clone();
    let over = life.over_outside();
    colder.set(over, life.ledger.inputs()[over].low);
    let figure = Figure {
        likely: life.coldest_bank(point)?.in_celsius(),
        unfavourable: life.coldest_bank(&colder)?.in_celsius(),
        unit: Unit::Celsius,
    };
    let limit = Limit {
        value: limit_c,
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "papers",
        source: "specification of an iron-phosphate cell; the battery's warmth is a stand-in"
            .into(),
        firm: false,
    };
    let verdict = judge(&figure, &limit);
    let says = format!(
        "On the coldest days of the trips, as they usually are, the battery has {:.0} °C, at the \
         unfavourable end {:.0} °C; below {limit_c:.0} °C it must not be charged. The cold costs \
         {:.0} h of charge a year. A cold spell is colder than the usual day.",
        figure.likely,
        figure.unfavourable,
        likely.too_cold_hours()
    );
    let mend = (verdict != Verdict::Good)
        .then(|| "Let the battery share the warmth of the cabin, or heat it.".to_owned());
    let mut finding =
        Finding::plain("charge.cold", "battery on the coldest days", verdict, says).mended(mend);
    if verdict != Verdict::Good {
        let input = &life.ledger.inputs()[over];
        finding.asks.push(Ask::missing(
            input.name.clone(),
            input.how.clone(),
            "whether it may be charged",
        ));
    }
    Some(Finding {
        figure: Some(figure),
        limit: Some(limit),
        inputs: life.ledger.inputs().to_vec(),
        ..finding
    })
}

/// Trips of which place or months are missing.
pub(crate) fn unknown_trips(calendar: &Calendar<'_>) -> Vec<Finding> {
    let each = calendar.unknown.iter().map(|name| {
        open(
            &format!("{name}.where"),
            &format!("where and when {name} is"),
            &format!("The trip {name} is left out: its latitude or its months are not said."),
            "where and when",
            how_to_say(),
        )
    });
    each.collect()
}

/// A build without trips.
pub(crate) fn no_trips() -> Finding {
    open(
        "without-power",
        "hours a year without power, on the trips",
        "Hours without power hang on where and when one travels, and no trip is said.",
        "where and when",
        how_to_say(),
    )
}

/// A year that cannot be computed.
pub(crate) fn no_year() -> Finding {
    open(
        "without-power",
        "hours a year without power, on the trips",
        "The year cannot be computed: a figure of a fridge or of the place is outside what the \
         formulas hold for.",
        "the fridge's figures and the place",
        "Look at the sizes and watts of the fridges, and at the latitudes of the trips.",
    )
}
