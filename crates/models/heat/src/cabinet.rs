//! The cold box itself: heat through its walls and its gasket, heat that comes in when it is
//! opened, and how to measure its conductance with a bag of ice.
//!
//! Walls are one thickness of one insulation between two surface coefficients; cold bridges other
//! than the gasket (hinges, pipes, a condenser foamed into the wall) are not in them.

use spile_quantity::{
    Area, Conductance, Conductivity, Length, Mass, Power, Temperature, Time, Volume,
};

use crate::air::{self, FUSION_J_PER_KG, MoistAir};
use crate::error::{HeatError, not_negative, positive, within};

/// Shape factor of an edge where two walls meet, over its length.
const EDGE: f64 = 0.54;
/// Shape factor of a corner where three walls meet, over the wall's thickness.
const CORNER: f64 = 0.15;

/// An insulated box, as its papers and a tape measure give it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shell {
    /// Outside width, height and depth.
    pub outside: [Length; 3],
    /// Thickness of the insulated wall.
    pub wall: Length,
    /// Thermal conductivity of the insulation.
    pub insulation: Conductivity,
    /// Surface coefficient inside \[W/(m²·K)\], about 6 to 9 in still air.
    pub inside_film_w_per_m2_k: f64,
    /// Surface coefficient outside \[W/(m²·K)\], about 6 to 9 in still air.
    pub outside_film_w_per_m2_k: f64,
}

/// The conductance of a [`Shell`] and what it is made of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Walls {
    /// Through the flat faces, surface to surface.
    pub faces: Conductance,
    /// Through the twelve edges, surface to surface.
    pub edges: Conductance,
    /// Through the eight corners, surface to surface.
    pub corners: Conductance,
    /// From the air outside to the air inside.
    pub total: Conductance,
    /// The inner surface.
    pub inside_area: Area,
    /// The space enclosed.
    pub inside_volume: Volume,
}

/// The heat that openings bring in, spread over the day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Openings {
    /// All of it.
    pub heat: Power,
    /// The part that comes of moisture.
    pub latent: Power,
    /// Water left in the box each day; negative where the outer air is drier.
    pub water_per_day: Mass,
}

/// The conductance U·A \[W/K\] of an insulated box from outer to inner air.
///
/// **Formula** 1/UA = 1/(hi·Ai) + 1/(k·S) + 1/(ho·Ao), with the shape factor
/// S = Ai/x + 0.54·Σ edges + 8·0.15·x over the inner faces, the inner edges and the eight corners
/// of a wall of thickness x.
///
/// **Arguments** `shell`: outside sizes \[m\], wall x \[m\], conductivity k \[W/(m·K)\] 0.001 to 2,
/// films hi and ho \[W/(m²·K)\] 1 to 100.
///
/// **Validity** every inner size greater than a fifth of the wall's thickness; a wall of one
/// thickness. Against three-dimensional finite volumes it is right within 1 %.
///
/// **Errors** an argument outside those ranges, walls that leave no space inside.
///
/// **Source** Langmuir, Adams and Meikle, Trans. Am. Electrochem. Soc. 24 (1913), as in Holman,
/// Heat Transfer, table 3-1 (from memory) and Incropera and DeWitt, table 4.1, cases 8 and 9.
///
/// **Example** Incropera and DeWitt, problem on a cubical glass furnace (from memory, recomputed):
/// 5 m wide outside, brick of 0.35 m and 1.4 W/(m·K), 1100 °C inside surface, 25 °C and
/// 5 W/(m²·K) outside: 316 kW.
///
/// ```
/// use spile_heat::cabinet::{Shell, walls};
/// use spile_quantity::{Conductivity, Length};
/// let furnace = walls(&Shell {
///     outside: [Length::m(5.0); 3],
///     wall: Length::m(0.35),
///     insulation: Conductivity::w_per_m_k(1.4),
///     inside_film_w_per_m2_k: 100.0, // taken out again below: the surface is at 1100 °C
///     outside_film_w_per_m2_k: 5.0,
/// })?;
/// let film_k_per_w = 1.0 / (100.0 * furnace.inside_area.in_m2());
/// let heat_w = (1100.0 - 25.0) / (1.0 / furnace.total.in_w_per_k() - film_k_per_w);
/// assert!((heat_w / 1000.0 - 316.0).abs() < 0.5);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn walls(shell: &Shell) -> Result<Walls, HeatError> {
    let wall_m = positive("wall thickness", shell.wall.in_m(), "m")?;
    let k = within("conductivity", shell.insulation.in_w_per_m_k(), "W/(m·K)", 0.001, 2.0)?;
    let film_in = within("inside film", shell.inside_film_w_per_m2_k, "W/(m²·K)", 1.0, 100.0)?;
    let film_out = within("outside film", shell.outside_film_w_per_m2_k, "W/(m²·K)", 1.0, 100.0)?;
    let mut inner_m = [0.0; 3];
    for (inner_m, outer) in inner_m.iter_mut().zip(shell.outside) {
        let size_m = outer.in_m() - 2.0 * wall_m;
        *inner_m = within("size inside the walls", size_m, "m", wall_m / 5.0, f64::MAX)?;
    }
    let inside_m2 = surface(inner_m);
    let outside_m2 = surface(shell.outside.map(Length::in_m));
    let faces = k * inside_m2 / wall_m;
    let edges = k * EDGE * 4.0 * inner_m.iter().sum::<f64>();
    let corners = k * CORNER * 8.0 * wall_m;
    let resistance = 1.0 / (film_in * inside_m2)
        + 1.0 / (faces + edges + corners)
        + 1.0 / (film_out * outside_m2);
    Ok(Walls {
        faces: Conductance::w_per_k(faces),
        edges: Conductance::w_per_k(edges),
        corners: Conductance::w_per_k(corners),
        total: Conductance::w_per_k(1.0 / resistance),
        inside_area: Area::m2(inside_m2),
        inside_volume: Volume::m3(inner_m.iter().product()),
    })
}

/// The conductance G \[W/K\] of a door's or lid's gasket and rim.
///
/// **Formula** G = ψ·L
///
/// **Arguments** `length` L \[m\] of the gasket, 0 or more; `psi` ψ \[W/(m·K)\], 0 to 1, the heat
/// that passes a metre of rim for each kelvin beyond what the wall itself lets through.
///
/// **Validity** a gasket that closes; air drawn through a gap is not in it.
///
/// **Errors** an argument outside those ranges.
///
/// **Source** the linear transmittance of ISO 14683, from memory; ψ of a fridge's rim is common
/// practice, no source.
///
/// **Example** worked by hand: 3 m of rim at 0.05 W/(m·K) are 0.15 W/K.
///
/// ```
/// use spile_heat::cabinet::gasket;
/// use spile_quantity::{Conductivity, Length};
/// let rim = gasket(Length::m(3.0), Conductivity::w_per_m_k(0.05))?;
/// assert!((rim.in_w_per_k() - 0.15).abs() < 1e-12);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn gasket(length: Length, psi: Conductivity) -> Result<Conductance, HeatError> {
    let length_m = not_negative("gasket length", length.in_m(), "m")?;
    let psi = within("gasket transmittance", psi.in_w_per_m_k(), "W/(m·K)", 0.0, 1.0)?;
    Ok(Conductance::w_per_k(psi * length_m))
}

/// The mean heat Q \[W\] that openings bring into a box.
///
/// **Formula** Q = n·q/86 400 s, with q \[J\] by [`air::exchange`] for the share s of the volume V
///
/// **Arguments** `per_day` n, openings in 24 hours, 0 or more; `share` s of the air changed at each
/// opening, 0 to 1; `volume` V of air in the box; `cabin`, `inside` the two states of air.
///
/// **Validity** as for [`air::exchange`].
///
/// **Errors** an argument outside those ranges.
///
/// **Source** [`air::exchange`]; s is common practice, no source: a lid changes little, a drawer
/// about half, an upright door nearly all.
///
/// **Example** ten openings that each change 100 litres, at 7.2 kJ each (see [`air::exchange`]),
/// are 72 kJ a day or 0.83 W.
///
/// ```
/// use spile_heat::{air::MoistAir, cabinet::openings};
/// use spile_quantity::{Pressure, Temperature, Volume};
/// let air = |t, relative_humidity| MoistAir {
///     temperature: Temperature::celsius(t),
///     relative_humidity,
///     pressure: Pressure::pa(101_325.0),
/// };
/// let got = openings(10.0, 1.0, Volume::litres(100.0), air(30.0, 0.6), air(4.0, 0.8))?;
/// assert!((got.heat.in_w() - 0.83).abs() < 0.01);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn openings(
    per_day: f64,
    share: f64,
    volume: Volume,
    cabin: MoistAir,
    inside: MoistAir,
) -> Result<Openings, HeatError> {
    let per_day = not_negative("openings", per_day, "a day")?;
    let share = within("share of air changed", share, "of 1", 0.0, 1.0)?;
    let once = air::exchange(volume * share, cabin, inside)?;
    let day = Time::days(1.0);
    Ok(Openings {
        heat: once.heat * per_day / day,
        latent: once.latent * per_day / day,
        water_per_day: once.water * per_day,
    })
}

/// The mass m \[kg\] of ice that melts in a box kept at 0 °C.
///
/// **Formula** m = UA·(T − 0 °C)·t/L, L = 333.6 kJ/kg
///
/// **Arguments** `conductance` UA \[W/K\], 0 or more; `outside` T \[°C\], 0 to 60; `over` t \[s\], 0
/// or more.
///
/// **Validity** ice and water both present all the time, so that the inside stays at 0 °C.
///
/// **Errors** an argument outside those ranges.
///
/// **Source** FAO Fisheries Technical Paper 436 (2003), section 7.1: K1 = U·A/L \[kg/(h·K)\] with
/// L = 80 kcal/kg (334.9 kJ/kg).
///
/// **Example** worked by hand: 1 W/K at 30 °C over a day is 30·86 400 J = 2592 kJ, which melts
/// 7.77 kg.
///
/// ```
/// use spile_heat::cabinet::ice_melted;
/// use spile_quantity::{Conductance, Temperature, Time};
/// let ua = Conductance::w_per_k(1.0);
/// let ice = ice_melted(ua, Temperature::celsius(30.0), Time::days(1.0))?;
/// assert!((ice.in_kg() - 7.77).abs() < 0.005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn ice_melted(
    conductance: Conductance,
    outside: Temperature,
    over: Time,
) -> Result<Mass, HeatError> {
    let ua_w_per_k = not_negative("conductance", conductance.in_w_per_k(), "W/K")?;
    let outside_c = within("outside temperature", outside.in_celsius(), "°C", 0.0, 60.0)?;
    let over_s = not_negative("time", over.in_s(), "s")?;
    Ok(Mass::kg(ua_w_per_k * outside_c * over_s / FUSION_J_PER_KG))
}

/// The conductance UA \[W/K\] of a box, measured by the ice that melts in it.
///
/// **Formula** UA = m·L/((T − 0 °C)·t), L = 333.6 kJ/kg
///
/// **Arguments** `melted` m \[kg\], 0 or more: the water poured off; `outside` T \[°C\], the mean over
/// the test, 5 to 60; `over` t \[s\], above 0.
///
/// **Validity** counted after the first water runs, with ice left at the end and the box shut.
///
/// **Errors** an argument outside those ranges.
///
/// **Source** as for [`ice_melted`], which it turns round.
///
/// **Example** worked by hand: 5.2 kg in 24 hours at 25 °C: 5.2·333 600/(25·86 400) = 0.803 W/K.
///
/// ```
/// use spile_heat::cabinet::conductance_by_ice;
/// use spile_quantity::{Mass, Temperature, Time};
/// let ua = conductance_by_ice(Mass::kg(5.2), Temperature::celsius(25.0), Time::hours(24.0))?;
/// assert!((ua.in_w_per_k() - 0.803).abs() < 0.0005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn conductance_by_ice(
    melted: Mass,
    outside: Temperature,
    over: Time,
) -> Result<Conductance, HeatError> {
    let melted_kg = not_negative("ice melted", melted.in_kg(), "kg")?;
    let outside_c = within("outside temperature", outside.in_celsius(), "°C", 5.0, 60.0)?;
    let over_s = positive("time", over.in_s(), "s")?;
    Ok(Conductance::w_per_k(melted_kg * FUSION_J_PER_KG / (outside_c * over_s)))
}

fn surface([a, b, c]: [f64; 3]) -> f64 {
    2.0 * (a * b + b * c + c * a)
}
