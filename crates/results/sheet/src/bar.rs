//! The limit bar: how near, which way it moved, and how sure.
//!
//! [`Scale`] says where marks stand, for the bar in SVG ([`limit_bar`]) and for the one in
//! characters. The scale runs from nought to 1.5 × the limit, so that the limits of all bars stand
//! on one line at two thirds; a limit of nought or below, and so a scale that cannot begin at
//! nought, keeps its place too. The limit is a heavy tick with its wall on the side where it may
//! not be, and that side is dotted. *Before* is hollow, *after* is filled, and a heavy line runs
//! from *after* to the unfavourable end. What lies off the scale is a chevron at its end.
//! Positions are in per cent of the bar's width, weights and letters in pixels.

use maud::{Markup, html};
use spile_answer::{Figure, Finding, Limit, Sense, Unit};

use crate::ink::{Letter, number as units, text_width};
use spile_ask::number;

/// How much of a bar there is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BarSize {
    /// 44 px high: limit and marks.
    Compact,
    /// 78 px high: numbers too; the scale stretches to hold its farthest mark.
    Full,
}

/// The scale of a bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    start: f64,
    end: f64,
    limit: f64,
}

impl Scale {
    /// The scale of a limit, with the marks that a scale about nought has to hold; `None` where
    /// the limit is no number.
    pub fn new(limit: f64, marks: impl IntoIterator<Item = f64>) -> Option<Self> {
        if !limit.is_finite() {
            return None;
        }
        let half = if limit > 0.0 { limit / 2.0 } else { reach(limit, marks) };
        Some(Self { start: limit - 2.0 * half, end: limit + half, limit })
    }

    /// The same, going at least as far as `end`.
    #[must_use]
    pub fn stretched(self, end: f64) -> Self {
        if end.is_finite() { Self { end: self.end.max(end), ..self } } else { self }
    }

    /// The number at its beginning.
    pub const fn start(&self) -> f64 {
        self.start
    }

    /// The number at its end.
    pub const fn end(&self) -> f64 {
        self.end
    }

    /// Where a number lies, as a share of the way from beginning to end: below 0 and above 1 off
    /// the scale. `None` of what is no number.
    pub fn share(&self, value: f64) -> Option<f64> {
        // A limit above nought is a share of itself, so that no digit is lost on the way.
        let share = if self.start == 0.0 {
            value / self.end
        } else {
            (value - self.start) / (self.end - self.start)
        };
        (!value.is_nan()).then_some(share)
    }

    /// Where the limit lies.
    pub fn limit_share(&self) -> f64 {
        self.share(self.limit).unwrap_or(2.0 / 3.0)
    }
}

/// Half the way from the beginning of a scale about nought to its limit.
fn reach(limit: f64, marks: impl IntoIterator<Item = f64>) -> f64 {
    let reach = marks
        .into_iter()
        .map(|mark| if mark < limit { (limit - mark) / 2.0 } else { mark - limit })
        .filter(|reach| reach.is_finite())
        .fold(0.0, f64::max);
    rounded_up(reach)
}

/// The next 1, 2 or 5 of a power of ten; 1 of nought.
fn rounded_up(reach: f64) -> f64 {
    if reach < 1e-9 {
        return 1.0;
    }
    let ten = 10_f64.powf(reach.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().find(|step| step * ten >= reach).unwrap_or(10.0);
    if (step * ten * 2.0).is_finite() { step * ten } else { f64::MAX / 4.0 }
}

/// How much further than its farthest mark a full bar goes.
const ROOM: f64 = 1.12;

/// What lies beyond so many limits is off even a full bar.
const FARTHEST: f64 = 10.0;

/// The narrowest bar that numbers are set apart for, in pixels.
const NARROWEST: f64 = 300.0;

/// A finding's limit bar; empty where it has neither a figure nor anything open.
///
/// `before` is the finding before the job and `after` the one that counts; where only `before` is
/// given, it is the one that counts. `scale_to` is the end of a scale that a list of bars shares.
pub fn limit_bar(
    before: Option<&Finding>,
    after: Option<&Finding>,
    size: BarSize,
    scale_to: Option<f64>,
) -> Markup {
    let (before, now) = match (before, after) {
        (before, Some(after)) => (before, after),
        (Some(before), None) => (None, before),
        (None, None) => return html! {},
    };
    let Some((figure, limit)) = now.figure.as_ref().zip(now.limit.as_ref()) else {
        return open(size, now);
    };
    let old = before.and_then(|before| before.figure).filter(|old| old.unit == figure.unit);
    let marks = [Some(figure.likely), Some(figure.unfavourable), old.map(|old| old.likely)];
    let marks: Vec<f64> = marks.into_iter().flatten().filter(|mark| !mark.is_nan()).collect();
    let Some(scale) = Scale::new(limit.value, marks.iter().copied()) else {
        return open(size, now);
    };
    if figure.likely.is_nan() {
        return open(size, now);
    }
    let scale = scale_to.map_or(scale, |end| scale.stretched(end));
    let scale = match size {
        BarSize::Compact => scale,
        BarSize::Full => stretched_to(scale, &marks),
    };
    let bar = Bar { scale, figure, limit, old: old.map(|old| old.likely), size };
    bar.drawn()
}

/// A scale that holds its marks.
fn stretched_to(scale: Scale, marks: &[f64]) -> Scale {
    let within = |mark: &&f64| mark.is_finite() && **mark <= scale.limit.abs() * FARTHEST;
    let most = marks.iter().filter(within).copied().fold(f64::NEG_INFINITY, f64::max);
    if most > scale.end {
        scale.stretched(scale.start + (most - scale.start) * ROOM)
    } else {
        scale
    }
}

/// What is open: dashed, without a limit.
fn open(size: BarSize, finding: &Finding) -> Markup {
    let words = format!("open: {}", finding.label);
    let [high, middle] = match size {
        BarSize::Compact => [44, 28],
        BarSize::Full => [78, 46],
    };
    html! {
        svg xmlns="http://www.w3.org/2000/svg" class=(class(size)) height=(high) role="img" aria-label=(words) {
            line class="b-none" x1="0" x2="100%" y1=(middle) y2=(middle) {}
            circle class="b-ring" cx="50%" cy=(middle) r="5.5" {}
        }
    }
}

const fn class(size: BarSize) -> &'static str {
    match size {
        BarSize::Compact => "bar",
        BarSize::Full => "bar full",
    }
}

struct Bar<'a> {
    scale: Scale,
    figure: &'a Figure,
    limit: &'a Limit,
    old: Option<f64>,
    size: BarSize,
}

impl Bar<'_> {
    fn drawn(&self) -> Markup {
        let middle = self.middle();
        let limit = percent(self.scale.limit_share());
        let (free, barred) = match self.limit.sense {
            Sense::AtMost => (["0", limit.as_str()], [limit.as_str(), "100%"]),
            Sense::AtLeast => ([limit.as_str(), "100%"], ["0", limit.as_str()]),
        };
        html! {
            svg xmlns="http://www.w3.org/2000/svg" class=(class(self.size)) height=(self.high()) role="img" aria-label=(self.words()) {
                line class="b-base" x1=(free[0]) x2=(free[1]) y1=(middle) y2=(middle) {}
                line class="b-past" x1=(barred[0]) x2=(barred[1]) y1=(middle) y2=(middle) {}
                line class="b-tick" x1="0" x2="0" y1=(middle - 4) y2=(middle + 4) {}
                (self.numbers())
                (self.whisker())
                (self.wall(&limit))
                (self.limit_words())
                (self.marks())
                @if self.size == BarSize::Full { (self.values()) }
            }
        }
    }

    const fn high(&self) -> i32 {
        match self.size {
            BarSize::Compact => 44,
            BarSize::Full => 78,
        }
    }

    /// Where the scale's line lies.
    const fn middle(&self) -> i32 {
        match self.size {
            BarSize::Compact => 28,
            BarSize::Full => 46,
        }
    }

    /// The number at the beginning, or round numbers along the scale.
    fn numbers(&self) -> Markup {
        let middle = self.middle();
        let start = number::limit(self.scale.start, Unit::Count).replace('-', "−");
        if self.size == BarSize::Compact {
            return html! { text class="b-num" x="0" y=(middle + 14) { (start) } };
        }
        let limit = self.scale.limit_share();
        html! {
            @for (share, text) in self.round_numbers() {
                @let anchor = if share < 0.01 { None } else if share > 0.96 { Some("end") } else { Some("middle") };
                line class="b-tick" x1=(percent(share)) x2=(percent(share)) y1=(middle) y2=(middle + 4) {}
                @if (share - limit).abs() > 0.06 {
                    text class="b-num" x=(percent(share)) y=(middle + 27) text-anchor=[anchor] { (text) }
                }
            }
        }
    }

    /// Round numbers along the scale, each with its share of the way; at most seven.
    fn round_numbers(&self) -> Vec<(f64, String)> {
        let (start, end) = (self.scale.start, self.scale.end);
        let ten = 10_f64.powf(((end - start) / 6.0).log10().floor());
        let steps = [1.0, 2.0, 5.0, 10.0].map(|step| step * ten);
        let step = steps.into_iter().find(|step| (end - start) / step <= 6.0 + 1e-9);
        let Some(step) = step.filter(|step| step.is_normal()) else { return Vec::new() };
        let first = (start / step).ceil();
        (0..8)
            .map(|place| (first + f64::from(place)) * step)
            .filter(|value| *value <= end + step * 1e-9)
            .filter_map(|value| {
                // Free of the last digits' rounding, as 3 × 0.1 is not 0.3.
                let clean = (value / ten).round() * ten;
                let decimals = (-ten.log10().round()).clamp(0.0, 6.0) as usize;
                Some((self.scale.share(value)?, format!("{clean:.decimals$}").replace('-', "−")))
            })
            .collect()
    }

    /// From *after* to the unfavourable end.
    fn whisker(&self) -> Markup {
        let shares =
            (self.scale.share(self.figure.likely), self.scale.share(self.figure.unfavourable));
        let (Some(from), Some(to)) = shares else { return html! {} };
        let middle = self.middle();
        let (ends, is_on) = ((held(from), held(to)), (0.0..=1.0).contains(&to));
        html! {
            @if (ends.0 - ends.1).abs() > 1e-6 {
                line class="b-whisk" x1=(percent(ends.0)) x2=(percent(ends.1)) y1=(middle) y2=(middle) {}
                @if is_on {
                    line class="b-cap" x1=(percent(to)) x2=(percent(to)) y1=(middle - 6) y2=(middle + 6) {}
                }
            }
        }
    }

    /// The limit, hatched like a wall on the side where it may not be.
    fn wall(&self, limit: &str) -> Markup {
        let (out, first, strokes) = match self.size {
            BarSize::Compact => ([15, 39], 22.0, 3),
            BarSize::Full => ([20, 59], 27.0, 6),
        };
        let side = match self.limit.sense {
            Sense::AtMost => 1.0,
            Sense::AtLeast => -1.0,
        };
        let wall: String = (0..strokes)
            .map(|stroke| {
                let y = first + 6.2 * f64::from(stroke);
                format!("M{} {}l{} -6", units(1.75 * side), units(y), units(6.0 * side))
            })
            .collect();
        html! {
            svg x=(limit) y="0" overflow="visible" {
                path class="b-wall" d=(wall) {}
                line class="b-limit" x1="0" x2="0" y1=(out[0]) y2=(out[1]) {}
            }
        }
    }

    fn limit_words(&self) -> Markup {
        let share = self.scale.limit_share();
        let value = number::limit(self.limit.value, self.figure.unit);
        let value = match self.size {
            BarSize::Compact => value,
            BarSize::Full => format!("{} {value}", self.limit.sense.words()),
        };
        let whole = format!("{value}, {}", self.limit.kind);
        let half = text_width(&whole, 12.0, true) / 2.0 / NARROWEST;
        let (x, anchor) = if share < half {
            (0.0, None)
        } else if share > 1.0 - half {
            (1.0, Some("end"))
        } else {
            (share, Some("middle"))
        };
        let y = match self.size {
            BarSize::Compact => 10,
            BarSize::Full => 14,
        };
        html! {
            text class="b-lab" x=(percent(x)) y=(y) text-anchor=[anchor] {
                (value) tspan { ", " (self.limit.kind) }
            }
        }
    }

    /// *Before* and *after*; beyond an end a chevron.
    fn marks(&self) -> Markup {
        let middle = self.middle();
        let after = self.scale.share(self.figure.likely);
        let before = self.old.and_then(|old| self.scale.share(old));
        let worst = self.scale.share(self.figure.unfavourable);
        let is_one = after.zip(before).is_some_and(|(a, b)| (a - b).abs() * NARROWEST < 5.0);
        html! {
            @for (share, old) in [(before, true), (after, false), (worst, false)] {
                @if let Some(share) = share.filter(|share| !(0.0..=1.0).contains(share)) {
                    (chevron(share > 1.0, old, middle))
                }
            }
            @if let Some(share) = before.filter(|share| (0.0..=1.0).contains(share)) {
                circle class="b-before" cx=(percent(share)) cy=(middle) r=(if is_one { "8.5" } else { "5.25" }) {}
            }
            @if let Some(share) = after.filter(|share| (0.0..=1.0).contains(share)) {
                circle class="b-after" cx=(percent(share)) cy=(middle) r="6" {}
            }
        }
    }

    /// The numbers of the marks, set apart where they would touch.
    fn values(&self) -> Markup {
        let mut all = vec![("b-va", self.figure.likely)];
        let said = |value| number::bare(value, self.figure.unit).replace('-', "−");
        if said(self.figure.unfavourable) != said(self.figure.likely) {
            all.push(("b-vw", self.figure.unfavourable));
        }
        if let Some(old) = self.old.filter(|old| said(*old) != said(self.figure.likely)) {
            all.push(("b-vb", old));
        }
        let mut all: Vec<(&str, f64, String)> = all
            .into_iter()
            .filter_map(|(class, value)| {
                let share = self.scale.share(value)?;
                let text = if value.is_finite() {
                    said(value)
                } else {
                    number::with_unit(value, self.figure.unit)
                };
                Some((class, held(share), text))
            })
            .collect();
        all.sort_by(|a, b| a.1.total_cmp(&b.1));
        let wide = |text: &str| text_width(text, Letter::PLAIN.size, true) + 5.0;
        let mut at: Vec<f64> = all.iter().map(|(_, share, _)| share * NARROWEST).collect();
        set_apart(&mut at, &all.iter().map(|(_, _, text)| wide(text)).collect::<Vec<_>>());
        let y = self.middle() - 14;
        html! {
            @for ((class, share, text), at) in all.iter().zip(at) {
                svg x=(percent(*share)) y="0" overflow="visible" {
                    text class=(class) x=(units(at - share * NARROWEST)) y=(y) text-anchor="middle" { (text) }
                }
            }
        }
    }

    /// The bar in words.
    fn words(&self) -> String {
        let unit = self.figure.unit;
        let limit = format!(
            "{} {}, {}",
            self.limit.sense.words(),
            number::limit(self.limit.value, unit),
            self.limit.kind
        );
        let change = number::with_unit(self.figure.likely, unit);
        let after = match self.old {
            Some(old) => format!("Before {}, after {change}", number::with_unit(old, unit)),
            None => change,
        };
        let worst = number::worst(self.figure, Some(self.limit))
            .map_or_else(String::new, |worst| format!(" {worst}"));
        format!("{after}{worst}; {limit}.")
    }
}

/// Moves middles of texts of some widths apart until none touch, from the middle outwards; all of
/// them stay on the bar where there is room.
fn set_apart(at: &mut [f64], wide: &[f64]) {
    for _ in 0..8 {
        for place in 1..at.len() {
            let need = f64::midpoint(wide[place - 1], wide[place]);
            let missing = need - (at[place] - at[place - 1]);
            if missing > 0.0 {
                at[place - 1] -= missing / 2.0;
                at[place] += missing / 2.0;
            }
        }
    }
    for place in 0..at.len() {
        let floor = if place == 0 {
            0.0
        } else {
            at[place - 1] + f64::midpoint(wide[place - 1], wide[place])
        };
        at[place] = at[place].max(floor);
    }
}

fn chevron(right: bool, old: bool, middle: i32) -> Markup {
    let class = if old { "b-off old" } else { "b-off" };
    let (x, path) = if right { ("100%", "M2 -6l6 6l-6 6") } else { ("0", "M-2 -6l-6 6l6 6") };
    html! {
        svg x=(x) y=(middle) overflow="visible" { path class=(class) d=(path) {} }
    }
}

const fn held(share: f64) -> f64 {
    share.clamp(0.0, 1.0)
}

fn percent(share: f64) -> String {
    let text = format!("{:.2}", share * 100.0);
    format!("{}%", text.trim_end_matches('0').trim_end_matches('.'))
}
