//! Thin metal round a fastener: bearing, tear-out, pull-through.

use spile_quantity::{Force, Length, Pressure};

use crate::no_answer::within;
use crate::{NoAnswer, Ultimate};

/// The pull across a bolt at which its hole in a wall gives, F \[N\].
///
/// **Formula** F = 2.5 · α · R_m · d · t / 1.25, α = min(e/(3·d₀), 1)
///
/// **Arguments** `bolt` d, `hole` d₀, `edge` e from the hole's middle to the edge pulled at, `wall`
/// t \[m\]; `ultimate` R_m \[Pa\] of the wall.
///
/// **Validity** e at least 1.2·d₀; bolts no weaker than the wall.
///
/// **Errors** [`NoAnswer::OutOfRange`] nearer to the edge than 1.2 holes.
///
/// **Source** EN 1993-1-8:2005 table 3.4 with k₁ = 2.5, γ_M2 = 1.25; for factored loads.
///
/// **Example** at e = 3·d₀ the hole has its full 2·R_m·d·t:
/// ```
/// use spile_quantity::{Length, Pressure};
/// use spile_strength::{Ultimate, sheet::bearing};
/// let [d, hole, edge, wall] = [6.0, 6.6, 19.8, 1.5].map(Length::mm);
/// let load = bearing(d, hole, edge, wall, Ultimate(Pressure::mpa(360.0))).unwrap();
/// assert!((load.0.in_n() - 2.0 * 360.0 * 6.0 * 1.5).abs() < 1e-6);
/// ```
pub fn bearing(
    bolt: Length,
    hole: Length,
    edge: Length,
    wall: Length,
    ultimate: Ultimate<Pressure>,
) -> Result<Ultimate<Force>, NoAnswer> {
    let hole_m = within("hole", hole.in_m(), "m", 1e-3, 0.1)?;
    let edge_m = within("distance to the edge", edge.in_m(), "m", 1.2 * hole_m, 100.0)?;
    let wall_m = within("wall", wall.in_m(), "m", 1e-4, 0.1)?;
    let share = (edge_m / (3.0 * hole_m)).min(1.0);
    Ok(Ultimate(Force::n(2.0 * share * ultimate.0.in_pa() * bolt.in_m() * wall_m)))
}

/// The pull at which a washer is drawn through sheet metal, F \[N\].
///
/// **Formula** F = 1.5 · t · d_w · R_m, d_w no more than 19 mm
///
/// **Arguments** `wall` t, 0.2 to 6 mm; `washer` d_w \[m\], above 0; `ultimate` R_m \[Pa\].
///
/// **Validity** the washer is stiffer than the sheet. A wider washer counts as one of 19 mm.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** AISI S100, pull-over, from memory.
pub fn pull_through(
    wall: Length,
    washer: Length,
    ultimate: Ultimate<Pressure>,
) -> Result<Ultimate<Force>, NoAnswer> {
    let wall_m = within("wall", wall.in_m(), "m", 2e-4, 6e-3)?;
    let washer_m = within("washer", washer.in_m(), "m", 1e-3, 0.2)?.min(0.019);
    Ok(Ultimate(Force::n(1.5 * wall_m * washer_m * ultimate.0.in_pa())))
}

/// The pull at which a tapping screw comes out of the wall it is driven into, F \[N\].
///
/// **Formula** F = 0.85 · t · d · R_m
///
/// **Arguments** `screw` d, 2 to 8 mm; `wall` t \[m\], 0.2 to 6 mm; `ultimate` R_m \[Pa\].
///
/// **Validity** one driving into a right pilot hole; shaken for years it holds a quarter.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** AISI S100, pull-out, from memory.
///
/// **Example** 4.8 mm in 1.5 mm of aluminium of 165 MPa: 1.0 kN, as in the trade's tests:
/// ```
/// use spile_quantity::{Length, Pressure};
/// use spile_strength::{Ultimate, sheet::pull_out};
/// let strength = Ultimate(Pressure::mpa(165.0));
/// let load = pull_out(Length::mm(4.8), Length::mm(1.5), strength).unwrap();
/// assert!((load.0.in_n() - 1010.0).abs() < 1.0);
/// ```
pub fn pull_out(
    screw: Length,
    wall: Length,
    ultimate: Ultimate<Pressure>,
) -> Result<Ultimate<Force>, NoAnswer> {
    let screw_m = within("screw", screw.in_m(), "m", 2e-3, 8e-3)?;
    let wall_m = within("wall", wall.in_m(), "m", 2e-4, 6e-3)?;
    Ok(Ultimate(Force::n(0.85 * wall_m * screw_m * ultimate.0.in_pa())))
}
