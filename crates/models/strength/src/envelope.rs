//! How a mass pushes: the load cases that nobody can pick milder ones from.

use spile_quantity::{Force, Mass};
use spile_tables::Entry;
use spile_tables::load::{LoadCase, load_case};

/// Standard gravity \[m/s²\].
///
/// **Source** ISO 80000-3, exact by definition.
pub const GRAVITY: f64 = 9.806_65;

/// Which way a load case pushes, in the vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// Downward.
    Down,
    /// Upward.
    Up,
    /// Forward.
    Forward,
    /// Rearward.
    Rearward,
    /// To the left.
    Left,
    /// To the right.
    Right,
}

impl Way {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Down => "down",
            Self::Up => "up",
            Self::Forward => "forward",
            Self::Rearward => "rearward",
            Self::Left => "to the left",
            Self::Right => "to the right",
        }
    }

    /// Whether it is along the floor.
    pub const fn is_level(self) -> bool {
        !matches!(self, Self::Up | Self::Down)
    }
}

/// One push of an envelope.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Case {
    /// Which way.
    pub way: Way,
    /// How hard, in times of gravity \[1\].
    pub times_gravity: f64,
    /// The weight that acts beside it, downward, in times of gravity \[1\].
    pub weight: f64,
}

impl Case {
    /// The push itself.
    pub fn force(&self, mass: Mass) -> Force {
        push(mass, self.times_gravity)
    }
}

/// A force of so many times the weight of a mass, F \[N\].
///
/// **Formula** F = m · g · c
///
/// **Arguments** `mass` m \[kg\], 0 or more; `times_gravity` c \[1\].
///
/// **Validity** a rigid thing, its acceleration that of its base.
///
/// **Source** EN 12195-1, the inertia force F = m·c·g.
///
/// **Example** 37 kg push with 363 N at 1 g:
/// ```
/// use spile_quantity::Mass;
/// let force = spile_strength::envelope::push(Mass::kg(37.0), 1.0);
/// assert_eq!(force.in_n().round(), 363.0);
/// ```
pub fn push(mass: Mass, times_gravity: f64) -> Force {
    Force::n(mass.in_kg() * GRAVITY * times_gravity)
}

/// The envelope of the road: 3 g down, 2 g up, 1 g along the floor each way beside the weight.
pub fn road() -> Entry<Vec<Case>> {
    named("road")
}

/// What a battery is held for: 2 g in any direction.
pub fn battery() -> Entry<Vec<Case>> {
    named("battery")
}

/// What equipment near people is kept from flying at: 10 g in any direction.
pub fn crash() -> Entry<Vec<Case>> {
    named("crash")
}

/// The pushes of a table's row. What it asks for along the floor acts beside the weight, as in
/// EN 12195-1; where gravity is left aside by the rule (a battery's hold-down, a crash) it is here.
fn named(key: &str) -> Entry<Vec<Case>> {
    let row = load_case(key).unwrap_or_else(|| panic!("the tables have the load case {key}"));
    row.map(|case| cases(case, if key == "road" { 1.0 } else { 0.0 }))
}

/// The pushes that a row of the table makes, with the weight beside those along the floor.
pub fn cases(case: &LoadCase, weight: f64) -> Vec<Case> {
    let level = [
        (Way::Forward, case.forward),
        (Way::Rearward, case.rearward),
        (Way::Left, case.sideways),
        (Way::Right, case.sideways),
    ];
    let upright = [(Way::Down, case.down), (Way::Up, case.up)];
    let upright = upright
        .into_iter()
        .filter_map(|(way, times)| Some(Case { way, times_gravity: times?, weight: 0.0 }));
    let level = level.map(|(way, times_gravity)| Case { way, times_gravity, weight });
    upright.chain(level).collect()
}
