//! What measuring an input would settle: the value of it at which the verdict turns.

use crate::basis::Basis;
use crate::finding::{Ask, Figure, Finding, Limit};
use crate::ledger::{Input, Ledger, Point};
use crate::swing::{Swing, TOGETHER};
use crate::verdict::{Verdict, judge};

/// How much of the way to the limit an input must decide to be asked for.
const LEAST_WEIGHT: f64 = 0.2;

/// The inputs whose ranges decide a verdict: those that take the figure a good part of the way
/// from its likely value to the limit, or past it.
pub(crate) fn asks(verdict: Verdict, swing: &Swing, limit: &Limit, ledger: &Ledger) -> Vec<Ask> {
    if matches!(verdict, Verdict::Good | Verdict::Stop) && limit.firm {
        return Vec::new();
    }
    let weighed = swing
        .movers
        .iter()
        .map(|mover| (mover.input, weight(mover.worse_by, (limit.value - swing.likely).abs())));
    strongest(weighed, ledger)
}

impl Finding {
    /// The same with what each of its asks would settle, worked out from the figure itself: "good at
    /// 525 mm or more". `figure` is the one that was swung.
    ///
    /// Within the limit at the likely value, all other inputs are held at the ends that make it
    /// worst together, and the value of the one asked for is found at which the figure comes within
    /// its limit. Outside at the likely value, the inputs are asked for whose better end brings the
    /// figure nearer to its limit, and the others are held at their likely values. An ask that by
    /// itself settles nothing is left without a value.
    ///
    /// It costs some 25 evaluations of the figure for each of the three asks, and two for each input
    /// where the limit is passed at the likely value; none where nothing is to be settled. A figure
    /// that turns round inside the range of an input may come within its limit elsewhere too.
    #[must_use]
    pub fn settling(
        mut self,
        swing: &Swing,
        ledger: &Ledger,
        figure: impl Fn(&Point) -> f64,
    ) -> Self {
        let Some(limit) = self.limit.clone() else { return self };
        let unit = self.figure.map_or(crate::Unit::Count, |figure| figure.unit);
        let verdict_at =
            |value: f64| judge(&Figure { likely: value, unfavourable: value, unit }, &limit);
        let is_within = |value: f64| !value.is_nan() && !limit.is_passed_by(value);
        let is_good = |value: f64| verdict_at(value) == Verdict::Good;
        let likely = ledger.likely();
        if is_within(swing.likely) {
            let mut worst = likely;
            for mover in swing.movers.iter().take(TOGETHER) {
                worst.set(mover.input, mover.end);
            }
            for mover in &swing.movers {
                let input = &ledger.inputs()[mover.input];
                let Some(ask) = self.asks.iter_mut().find(|ask| ask.input == input.name) else {
                    continue;
                };
                let better = if mover.end == input.low { input.high } else { input.low };
                let at = |value: f64| {
                    let mut point = worst.clone();
                    point.set(mover.input, value);
                    figure(&point)
                };
                let ends = (better, mover.end);
                let says = turning(ends, |value| is_good(at(value)))
                    .map(|from| {
                        format!("good at {}", words(input, from, better, |v| is_good(at(v))))
                    })
                    .or_else(|| {
                        let from = turning(ends, |value| is_within(at(value)))?;
                        let words = words(input, from, better, |value| is_within(at(value)));
                        Some(format!("within the limit at {words}"))
                    });
                if let Some(says) = says {
                    add(ask, &says);
                }
            }
        } else if self.verdict != Verdict::Open {
            let at = |index: usize, value: f64| {
                let mut point = likely.clone();
                point.set(index, value);
                figure(&point)
            };
            // The end of each input that brings the figure nearer to its limit, and how near.
            let nearer = |index: usize, input: &Input| {
                let gain = |end: f64| {
                    (limit.missed_by(swing.likely) - limit.missed_by(at(index, end)), end)
                };
                let (low, high) = (gain(input.low), gain(input.high));
                if low.0 > high.0 { low } else { high }
            };
            let inputs = ledger.inputs().iter().enumerate();
            let nearer: Vec<(usize, (f64, f64))> = inputs
                .filter(|(_, input)| can_be_asked(input))
                .map(|(index, input)| (index, nearer(index, input)))
                .filter(|(_, (gain, _))| *gain > 0.0)
                .collect();
            let way = limit.missed_by(swing.likely);
            let mut weighed: Vec<(usize, f64)> =
                nearer.iter().map(|(index, (gain, _))| (*index, weight(*gain, way))).collect();
            weighed.sort_by(|a, b| b.1.total_cmp(&a.1));
            self.asks = strongest(weighed.into_iter(), ledger);
            for (index, (_, better)) in nearer {
                let input = &ledger.inputs()[index];
                let Some(ask) = self.asks.iter_mut().find(|ask| ask.input == input.name) else {
                    continue;
                };
                let holds = |value: f64| is_within(at(index, value));
                let worse = if better == input.low { input.high } else { input.low };
                if let Some(from) = turning((better, worse), holds) {
                    let words = words(input, from, better, holds);
                    add(ask, &format!("within the limit at {words}, if all else is as likely"));
                }
            }
        }
        self
    }
}

/// Asks for the three strongest of the inputs that can be asked for.
fn strongest(weighed: impl Iterator<Item = (usize, f64)>, ledger: &Ledger) -> Vec<Ask> {
    weighed
        .map(|(index, weight)| (&ledger.inputs()[index], weight))
        .filter(|(input, weight)| *weight >= LEAST_WEIGHT && can_be_asked(input))
        .take(3)
        .map(|(input, weight)| Ask {
            input: input.name.clone(),
            how: input.how.clone(),
            settles: String::new(),
            weight,
        })
        .collect()
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

fn add(ask: &mut Ask, says: &str) {
    ask.settles = match ask.settles.as_str() {
        "" => format!("this: {says}"),
        settles => format!("{settles}; {says}"),
    };
}

/// The value nearest to the worse end at which something still holds, if it holds at the better
/// end and not at the worse one.
fn turning((better, worse): (f64, f64), holds: impl Fn(f64) -> bool) -> Option<f64> {
    if !holds(better) || holds(worse) {
        return None;
    }
    let (mut inside, mut outside) = (better, worse);
    for _ in 0..16 {
        let middle = f64::midpoint(inside, outside);
        if holds(middle) {
            inside = middle;
        } else {
            outside = middle;
        }
    }
    Some(inside)
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
