//! What measuring an input would settle: the value of it at which the verdict turns.

use crate::basis::Basis;
use crate::finding::{Ask, Figure, Finding, Limit};
use crate::ledger::{Input, Ledger, Point};
use crate::swing::{Swing, TOGETHER};
use crate::verdict::{Verdict, judge};

/// How much of the way to the limit an input must decide to be asked for.
const LEAST_WEIGHT: f64 = 0.2;
/// How often a range is halved for the value at which a verdict turns: finer than it is told.
const HALVINGS: usize = 11;

/// How many inputs that decide nothing alone are asked for.
const MOST_ASKS: usize = 3;

/// The inputs whose ranges decide a verdict: those that take the figure a good part of the way
/// from its likely value to the limit, or past it.
pub(crate) fn asks(verdict: Verdict, swing: &Swing, limit: &Limit, ledger: &Ledger) -> Vec<Ask> {
    if matches!(verdict, Verdict::Good | Verdict::Stop) && limit.firm {
        return Vec::new();
    }
    let way = (limit.value - swing.likely).abs();
    let asks = swing
        .movers
        .iter()
        .map(|mover| (&ledger.inputs()[mover.input], weight(mover.worse_by, way)))
        .filter(|(input, _)| can_be_asked(input))
        .map(|(input, weight)| ask(input, weight))
        .collect();
    strongest(asks)
}

impl Finding {
    /// The same with the value of each of its asks at which the verdict turns, worked out from the
    /// figure itself: "good at 525 mm or more". `figure` is the one that was swung.
    ///
    /// Within the limit at the likely value, all other inputs are held at the ends that make it
    /// worst together, and the value of the one asked for is found at which the figure comes within
    /// its limit. Outside at the likely value, the inputs are asked for whose better end brings the
    /// figure nearer to its limit, and the others are held at their likely values. What by itself
    /// turns the verdict has a weight of 1; an ask that by itself settles nothing is left without a
    /// value. What was said of the asks before is lost.
    ///
    /// It costs two evaluations of the figure for each input that can be asked for, and some 15 more
    /// for each that turns the verdict; none where nothing is to be settled. A figure that turns
    /// round inside the range of an input may come within its limit elsewhere too.
    #[must_use]
    pub fn settling(
        mut self,
        swing: &Swing,
        ledger: &Ledger,
        figure: impl Fn(&Point) -> f64,
    ) -> Self {
        let Some(limit) = self.limit.clone() else { return self };
        if matches!(self.verdict, Verdict::Good | Verdict::Open) {
            return self;
        }
        let unit = self.figure.map_or(crate::Unit::Count, |figure| figure.unit);
        let is_within = |value: f64| !value.is_nan() && !limit.is_passed_by(value);
        let is_good = |value: f64| {
            judge(&Figure { likely: value, unfavourable: value, unit }, &limit) == Verdict::Good
        };
        self.asks = if is_within(swing.likely) {
            within(self.asks, swing, ledger, &figure, [&is_good, &is_within])
        } else {
            outside(swing.likely, &limit, ledger, &figure)
        };
        self
    }
}

/// What brings a figure that may pass its limit surely within it.
fn within(
    mut asks: Vec<Ask>,
    swing: &Swing,
    ledger: &Ledger,
    figure: &impl Fn(&Point) -> f64,
    [is_good, is_within]: [&dyn Fn(f64) -> bool; 2],
) -> Vec<Ask> {
    let mut worst = ledger.likely();
    for mover in swing.movers.iter().take(TOGETHER) {
        worst.set(mover.input, mover.end);
    }
    for mover in &swing.movers {
        let input = &ledger.inputs()[mover.input];
        if !can_be_asked(input) {
            continue;
        }
        let better = if mover.end == input.low { input.high } else { input.low };
        let at = |value: f64| {
            let mut point = worst.clone();
            point.set(mover.input, value);
            figure(&point)
        };
        let [at_better, at_worse] = [better, mover.end].map(at);
        let turns = [("good", is_good), ("within the limit", is_within)].into_iter().find_map(
            |(word, holds)| {
                (holds(at_better) && !holds(at_worse))
                    .then(|| turning(word, input, (better, mover.end), |value| holds(at(value))))
            },
        );
        let Some(turns) = turns else { continue };
        let known = asks.iter().position(|ask| ask.input == input.name);
        let known = known.unwrap_or_else(|| {
            asks.push(ask(input, 1.0));
            asks.len() - 1
        });
        asks[known].weight = 1.0;
        asks[known].turns = turns;
    }
    strongest(asks)
}

/// What brings a figure that passes its limit at the likely value nearer to it.
fn outside(
    likely: f64,
    limit: &Limit,
    ledger: &Ledger,
    figure: &impl Fn(&Point) -> f64,
) -> Vec<Ask> {
    let likely_point = ledger.likely();
    let way = limit.missed_by(likely);
    let asks = ledger.inputs().iter().enumerate().filter(|(_, input)| can_be_asked(input));
    let asks = asks.filter_map(|(index, input)| {
        let missed = |value: f64| {
            let mut point = likely_point.clone();
            point.set(index, value);
            limit.missed_by(figure(&point))
        };
        let [at_low, at_high] = [input.low, input.high].map(missed);
        let (better, worse, left) = if at_low < at_high {
            (input.low, input.high, at_low)
        } else {
            (input.high, input.low, at_high)
        };
        let mut ask = (left < way).then(|| ask(input, weight(way - left, way)))?;
        if left == 0.0 && at_low.max(at_high) > 0.0 {
            let holds = |value: f64| missed(value) == 0.0;
            let turns = turning("within the limit", input, (better, worse), holds);
            ask.turns = format!("{turns}, if all else is as likely");
        }
        Some(ask)
    });
    strongest(asks.collect())
}

/// The strongest asks first: all that decide by themselves, and a few of the others.
fn strongest(mut asks: Vec<Ask>) -> Vec<Ask> {
    asks.retain(|ask| ask.weight >= LEAST_WEIGHT);
    asks.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    let deciding = asks.iter().filter(|ask| ask.decides()).count();
    asks.truncate(deciding.max(MOST_ASKS));
    asks
}

fn ask(input: &Input, weight: f64) -> Ask {
    Ask {
        input: input.name.clone(),
        how: input.how.clone(),
        settles: String::new(),
        turns: String::new(),
        weight,
    }
}

/// How much of a way is gone: 1 where all of it or more.
fn weight(gone: f64, way: f64) -> f64 {
    if gone >= way { 1.0 } else { gone / way }
}

/// Whether the owner can get an input, or get it better: what papers and tables give as a range
/// stays one, and some stand-ins are known not to be worth the trouble.
fn can_be_asked(input: &Input) -> bool {
    matches!(input.basis, Basis::Measured | Basis::Typical)
        && input.low < input.high
        && !input.how.starts_with("Not worth measuring")
}

/// `good at 525 mm or more`: the value nearest to the worse end at which something still holds that
/// holds at the better end and not at the worse one.
fn turning(
    word: &str,
    input: &Input,
    (better, worse): (f64, f64),
    holds: impl Fn(f64) -> bool,
) -> String {
    let (mut inside, mut beyond) = (better, worse);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(inside, beyond);
        if holds(middle) {
            inside = middle;
        } else {
            beyond = middle;
        }
    }
    format!("{word} at {}", words(input, inside, better, holds))
}

/// `525 mm or more`: a value of an input in the unit in which people say it, rounded to a step of a
/// tenth to a hundredth of its range, or a finer one where that would no longer hold.
fn words(input: &Input, value: f64, better: f64, holds: impl Fn(f64) -> bool) -> String {
    let (symbol, size) = unit(input);
    let more = better > value;
    let coarsest = -((input.high - input.low) / size / 10.0).log10().floor();
    let rounded = (0..4).find_map(|finer| {
        let decimals = coarsest + f64::from(finer);
        let step = 10_f64.powf(-decimals);
        let steps = value / size / step;
        let towards_better = if more { steps.ceil() } else { steps.floor() };
        let shown =
            [steps.round(), towards_better].map(|steps| steps * step).into_iter().find(|shown| {
                (input.low..=input.high).contains(&(shown * size)) && holds(shown * size)
            });
        Some((shown?, decimals))
    });
    let (shown, decimals) = rounded.unwrap_or((value / size, coarsest + 4.0));
    let digits = (0..12_usize).find(|digits| *digits as f64 >= decimals).unwrap_or(12);
    // Adding nought takes the sign from a nought that has one.
    let number = format!("{:.digits$}", shown + 0.0);
    let space = if symbol.is_empty() || symbol == "°" { "" } else { " " };
    format!("{number}{space}{symbol} or {}", if more { "more" } else { "less" })
}

/// The unit in which people say an input, with its size in the input's own.
fn unit(input: &Input) -> (&'static str, f64) {
    let greatest = input.low.abs().max(input.high.abs());
    match input.kind {
        "length" if greatest < 5.0 => ("mm", 0.001),
        "area" if greatest < 1e-4 => ("mm²", 1e-6),
        "area" => ("cm²", 1e-4),
        "volume" => ("L", 0.001),
        "time" if greatest >= 2.0 * 86_400.0 => ("days", 86_400.0),
        "time" if greatest >= 3_600.0 => ("h", 3_600.0),
        "resistance" if greatest < 1.0 => ("mΩ", 0.001),
        "energy" => ("Wh", 3_600.0),
        "charge" => ("Ah", 3_600.0),
        "flow" => ("m³/h", 1.0 / 3_600.0),
        "angle" => ("°", std::f64::consts::PI / 180.0),
        // A plain number, a count or a ratio, is kept as a share too.
        "share" if greatest > 1.0 => ("", 1.0),
        "share" => ("%", 0.01),
        _ => (input.unit, 1.0),
    }
}
