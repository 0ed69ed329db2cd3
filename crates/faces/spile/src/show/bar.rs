//! The limit bar in characters: how near, which way it moved, and how sure.
//!
//! Where marks stand is said by the scale that bars in drawings have too ([`Scale`]): the limits of
//! all bars stand in one column. The limit is a heavy tick with its wall on the side where it may not be, and that
//! side is dotted. *Before* is hollow, *after* is filled, and a heavy line runs from *after* to the
//! unfavourable end. What lies off the scale is a chevron at its end.

use spile_answer::Sense;
use spile_sheet::bar::Scale;

/// How many columns the scale has.
pub const CELLS: usize = 43;

/// The column of the limit, two thirds along.
pub const TICK: usize = 28;

/// What is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// The figure before the job.
    pub before: Option<f64>,
    /// The figure after it, or as it stands.
    pub after: f64,
    /// The unfavourable end.
    pub worst: f64,
    /// What it is held against.
    pub limit: f64,
    /// Which side of the limit is allowed.
    pub sense: Sense,
}

/// A bar as characters.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawn {
    /// The number at the scale's beginning.
    pub start: f64,
    /// The scale with its marks, [`CELLS`] characters.
    pub cells: String,
    /// Whether something lies off the scale on its left.
    pub off_left: bool,
    /// Whether something lies off the scale on its right.
    pub off_right: bool,
}

/// Where a number lies on the scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Spot {
    /// Off the scale, below its beginning.
    OffLeft,
    /// In that column of the scale.
    At(usize),
    /// Off the scale, past its end.
    OffRight,
}

/// Draws a bar; `None` where there is no limit or no figure to draw.
pub fn draw(bar: &Bar) -> Option<Drawn> {
    let scale = bar.scale()?;
    let after = bar.spot(bar.after)?;
    let worst = bar.spot(bar.worst).unwrap_or(after);
    let before = bar.before.and_then(|before| bar.spot(before));
    let mut cells: Vec<char> = (0..CELLS).map(|cell| bar.ground(cell)).collect();
    let (from, to) = (after.min(worst).cell(), after.max(worst).cell());
    for cell in cells.iter_mut().take(to + 1).skip(from) {
        if after != worst && *cell != bar.tick() {
            *cell = '━';
        }
    }
    if let Some(Spot::At(cell)) = before {
        cells[cell] = '○';
    }
    if let Spot::At(cell) = after {
        cells[cell] = if before == Some(after) { '◉' } else { '●' };
    }
    let spots = [Some(after), Some(worst), before];
    Some(Drawn {
        start: scale.start(),
        cells: cells.into_iter().collect(),
        off_left: spots.contains(&Some(Spot::OffLeft)),
        off_right: spots.contains(&Some(Spot::OffRight)),
    })
}

impl Bar {
    /// Where a number lies; `None` of what is no number.
    ///
    /// A number that is allowed never lies in or past the limit's column, and one that is not never
    /// short of it.
    pub fn spot(&self, value: f64) -> Option<Spot> {
        let share = self.scale()?.share(value)?;
        if share < 0.0 {
            return Some(Spot::OffLeft);
        }
        if share > 1.0 {
            return Some(Spot::OffRight);
        }
        let cell = (share * 1.5 * TICK as f64).round() as usize;
        let below = match self.sense {
            Sense::AtMost => value <= self.limit,
            Sense::AtLeast => value < self.limit,
        };
        let range = if below { 0..=TICK - 1 } else { TICK + 1..=CELLS - 1 };
        Some(Spot::At(cell.clamp(*range.start(), *range.end())))
    }

    /// The scale that holds its marks.
    fn scale(&self) -> Option<Scale> {
        let marks = [self.before, Some(self.after), Some(self.worst)];
        Scale::new(self.limit, marks.into_iter().flatten())
    }

    fn ground(&self, cell: usize) -> char {
        let allowed = match self.sense {
            Sense::AtMost => cell < TICK,
            Sense::AtLeast => cell > TICK,
        };
        match cell {
            TICK => self.tick(),
            _ if allowed => '─',
            _ => '┄',
        }
    }

    const fn tick(&self) -> char {
        match self.sense {
            Sense::AtMost => '┫',
            Sense::AtLeast => '┣',
        }
    }
}

impl Spot {
    const fn cell(self) -> usize {
        match self {
            Self::OffLeft => 0,
            Self::At(cell) => cell,
            Self::OffRight => CELLS - 1,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn bar(before: Option<f64>, after: f64, worst: f64, limit: f64, sense: Sense) -> Bar {
        Bar { before, after, worst, limit, sense }
    }

    fn cells(bar: &Bar) -> String {
        draw(bar).unwrap().cells
    }

    #[test]
    fn at_most() {
        let drawn = draw(&bar(Some(1.2), 2.4, 3.2, 3.0, Sense::AtMost)).unwrap();
        assert_eq!(drawn.cells, "───────────○──────────●━━━━━┫━━┄┄┄┄┄┄┄┄┄┄┄┄");
        assert_eq!((drawn.start, drawn.off_left, drawn.off_right), (0.0, false, false));
    }

    #[test]
    fn at_least() {
        let drawn = cells(&bar(Some(12.15), 11.41, 10.62, 10.9, Sense::AtLeast));
        assert_eq!(drawn, format!("{}━┣●─○{}", "┄".repeat(27), "─".repeat(11)));
    }

    #[test]
    fn two_marks_in_one_place_are_one() {
        assert_eq!(cells(&bar(Some(1.0), 1.0, 1.0, 3.0, Sense::AtMost)).chars().nth(9), Some('◉'));
    }

    #[test]
    fn off_the_scale_is_a_chevron() {
        let drawn =
            draw(&bar(Some(1.0), f64::INFINITY, f64::INFINITY, 3.0, Sense::AtMost)).unwrap();
        assert!(drawn.off_right && !drawn.off_left && !drawn.cells.contains('●'));
        let below = draw(&bar(None, 5.0, -2.0, 10.0, Sense::AtLeast)).unwrap();
        assert!(below.off_left && below.cells.starts_with("━━━"));
    }

    #[test]
    fn a_limit_of_nought_keeps_its_column() {
        let drawn = draw(&bar(Some(8.0), 4.0, -3.0, 0.0, Sense::AtLeast)).unwrap();
        assert_eq!((drawn.start, drawn.cells.chars().nth(TICK)), (-20.0, Some('┣')));
        assert!(!drawn.off_left && !drawn.off_right);
    }

    #[test]
    fn no_limit_no_bar() {
        assert_eq!(draw(&bar(None, 1.0, 1.0, f64::INFINITY, Sense::AtMost)), None);
        assert_eq!(draw(&bar(None, f64::NAN, 1.0, 1.0, Sense::AtMost)), None);
    }

    fn any_sense() -> impl Strategy<Value = Sense> {
        prop_oneof![Just(Sense::AtMost), Just(Sense::AtLeast)]
    }

    fn any_number() -> impl Strategy<Value = f64> {
        prop_oneof![any::<u64>().prop_map(f64::from_bits), -50.0..50.0_f64]
    }

    fn any_bar() -> impl Strategy<Value = Bar> {
        let before = prop_oneof![Just(None), any_number().prop_map(Some)];
        (before, any_number(), any_number(), any_number(), any_sense()).prop_map(
            |(before, after, worst, limit, sense)| Bar { before, after, worst, limit, sense },
        )
    }

    proptest! {
        #[test]
        fn a_bar_has_all_its_columns_and_its_limit_in_place(bar in any_bar()) {
            let Some(drawn) = draw(&bar) else { return Ok(()) };
            prop_assert_eq!(drawn.cells.chars().count(), CELLS);
            prop_assert_eq!(drawn.cells.chars().nth(TICK), Some(bar.tick()));
            let after = drawn.cells.chars().filter(|c| matches!(c, '●' | '◉')).count();
            let off = matches!(bar.spot(bar.after), Some(Spot::OffLeft | Spot::OffRight));
            prop_assert_eq!(after, usize::from(!off));
        }

        #[test]
        fn marks_stand_in_the_order_of_their_numbers(bar in any_bar(), a in any_number(), b in any_number()) {
            prop_assume!(bar.limit.is_finite() && !a.is_nan() && !b.is_nan());
            let (a, b) = (a.min(b), a.max(b));
            prop_assert!(bar.spot(a) <= bar.spot(b));
        }

        #[test]
        fn a_mark_stands_on_its_side_of_the_limit(bar in any_bar()) {
            prop_assume!(bar.limit.is_finite());
            let allowed = match bar.sense {
                Sense::AtMost => bar.after <= bar.limit,
                Sense::AtLeast => bar.after >= bar.limit,
            };
            if let Some(spot) = bar.spot(bar.after) {
                let below = spot < Spot::At(TICK);
                prop_assert_ne!(spot, Spot::At(TICK));
                prop_assert_eq!(below == (bar.sense == Sense::AtMost), allowed);
            }
        }

        #[test]
        fn a_mark_is_within_a_column_of_its_number(limit in 0.1..1e6_f64, share in 0.0..1.5_f64) {
            let bar = bar(None, limit * share, limit * share, limit, Sense::AtMost);
            let Some(Spot::At(cell)) = bar.spot(bar.after) else { panic!("off the scale") };
            prop_assert!((cell as f64 - share * TICK as f64).abs() <= 1.0 + 1e-9);
        }

        #[test]
        fn nothing_finite_is_off_a_scale_about_nought(after in -1e6..1e6_f64, worst in -1e6..1e6_f64) {
            let drawn = draw(&bar(None, after, worst, 0.0, Sense::AtLeast)).unwrap();
            prop_assert!(!drawn.off_left && !drawn.off_right);
        }
    }
}
