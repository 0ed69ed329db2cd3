//! The unfavourable end: what a figure can become within the ranges of its inputs.

use crate::ledger::{Ledger, Point};

/// Which way a figure gets worse.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Worse {
    /// A greater figure is worse, as with a loss or a temperature.
    Higher,
    /// A smaller figure is worse, as with a distance or days of food.
    Lower,
}

impl Worse {
    /// By how much `b` is worse than `a`; never negative. Nothing is worse than what is not known.
    fn by(self, a: f64, b: f64) -> f64 {
        if b.is_nan() && !a.is_nan() {
            return f64::INFINITY;
        }
        let difference = match self {
            Self::Higher => b - a,
            Self::Lower => a - b,
        };
        if difference > 0.0 { difference } else { 0.0 }
    }
}

/// A figure's likely value, its unfavourable end, and what moves it there.
#[derive(Debug, Clone, PartialEq)]
pub struct Swing {
    /// The figure with every input at its likely value.
    pub likely: f64,
    /// The worst of the points tried.
    pub unfavourable: f64,
    /// The inputs that make it worse, the strongest first.
    pub movers: Vec<Mover>,
}

/// One input that makes a figure worse.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mover {
    /// The input's place in the ledger.
    pub input: usize,
    /// The input's value at its worse end, in its SI unit.
    pub end: f64,
    /// The figure with this input alone at its worse end.
    pub alone: f64,
    /// How much worse than likely that is; infinite where the figure breaks down.
    pub worse_by: f64,
}

/// How many inputs are moved to their worse ends together.
pub const TOGETHER: usize = 8;

/// Evaluates `N` figures at the likely point, with each uncertain input at both ends in turn, and
/// then, for each figure, with the inputs that matter most at their worse ends together.
///
/// Discrete outcomes (a collapsing node, a saturated duty) are evaluated like any other, never
/// extrapolated from a slope; a figure that has broken down is given as an infinity on its worse
/// side. One that is not a number anywhere among the points tried is not known at its unfavourable
/// end either. An input whose effect turns round inside its range is tried at its ends only.
///
/// **Source**: the rule for the unfavourable end in the project's own design; one-at-a-time
/// bounding followed by a combined worst case is common practice, no source.
pub fn swing<const N: usize>(
    ledger: &Ledger,
    worse: [Worse; N],
    figures: impl Fn(&Point) -> [f64; N],
) -> [Swing; N] {
    let mut point = ledger.likely();
    let likely = figures(&point);
    let mut movers: [Vec<Mover>; N] = std::array::from_fn(|_| Vec::new());
    for (index, input) in ledger.inputs().iter().enumerate() {
        let ends = [input.low, input.high].map(|end| {
            (end != input.likely).then(|| {
                point.set(index, end);
                let at_end = figures(&point);
                point.set(index, input.likely);
                (end, at_end)
            })
        });
        for (figure, movers) in movers.iter_mut().enumerate() {
            let worst = ends
                .iter()
                .flatten()
                .map(|(end, at_end)| Mover {
                    input: index,
                    end: *end,
                    alone: at_end[figure],
                    worse_by: worse[figure].by(likely[figure], at_end[figure]),
                })
                .filter(|mover| mover.worse_by > 0.0)
                .max_by(|a, b| a.worse_by.total_cmp(&b.worse_by));
            movers.extend(worst);
        }
    }
    std::array::from_fn(|figure| {
        let mut movers = std::mem::take(&mut movers[figure]);
        movers.sort_by(|a, b| b.worse_by.total_cmp(&a.worse_by));
        for mover in movers.iter().take(TOGETHER) {
            point.set(mover.input, mover.end);
        }
        let together = if movers.len() > 1 { figures(&point)[figure] } else { likely[figure] };
        for mover in movers.iter().take(TOGETHER) {
            point.set(mover.input, ledger.inputs()[mover.input].likely);
        }
        let unfavourable = movers.iter().map(|mover| mover.alone).chain([together]).fold(
            likely[figure],
            |worst, tried| {
                if worse[figure].by(worst, tried) > 0.0 { tried } else { worst }
            },
        );
        Swing { likely: likely[figure], unfavourable, movers }
    })
}
