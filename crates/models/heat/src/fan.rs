//! A fan against openings: its papers say what it moves with nothing in its way.

use spile_quantity::{Area, Flow, Pressure};

use crate::error::{HeatError, finite, not_negative, positive};

/// A fan of two figures, with a straight line between them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fan {
    /// What it moves with nothing in its way.
    pub free_flow: Flow,
    /// What it pushes with when nothing can pass.
    pub greatest_pressure: Pressure,
}

impl Fan {
    /// The flow V̇ \[m³/s\] at which the fan, and what helps it, push as much as openings hold back.
    ///
    /// **Formula** p0·(1 − V̇/V̇0) + Δp = ρ/2·(V̇/Ae)²
    ///
    /// **Arguments** `effective` Ae \[m²\], 0 or more, see [`crate::openings::effective_area`];
    /// `helps` Δp \[Pa\], the warmth's pressure in the direction of the fan, negative against it;
    /// `density` ρ \[kg/m³\] above 0; free flow V̇0 and pressure p0 above 0.
    ///
    /// **Validity** real curves of small axial fans sag in the middle, so a straight one flatters
    /// by up to a third there. The line goes on past both ends: where warmth overcomes the fan, air
    /// goes the other way, and this is its amount.
    ///
    /// **Errors** an argument out of range.
    ///
    /// **Source** common practice, no source (fan line); orifice equation (openings).
    ///
    /// **Example** worked by hand: 60 m³/h free and 25 Pa behind Ae = 70 cm²: at 48 m³/h the fan
    /// pushes 25·0.2 = 5 Pa; 1.15/2·(0.01333/0.007)² = 2.1 Pa are held back there, at 52.9 m³/h
    /// 2.5 Pa against 25·(1 − 52.9/60) = 3.0, at 53.6 m³/h 2.6 against 2.7. It moves some 53.8.
    ///
    /// ```
    /// use spile_heat::fan::Fan;
    /// use spile_quantity::{Area, Flow, Pressure};
    /// let fan = Fan { free_flow: Flow::m3_per_h(60.0), greatest_pressure: Pressure::pa(25.0) };
    /// let flow = fan.flow(Area::cm2(70.0), Pressure::pa(0.0), 1.15)?;
    /// assert!((flow.in_m3_per_h() - 53.8).abs() < 0.2);
    /// # Ok::<(), spile_heat::HeatError>(())
    /// ```
    pub fn flow(
        &self,
        effective: Area,
        helps: Pressure,
        density_kg_per_m3: f64,
    ) -> Result<Flow, HeatError> {
        let free_m3_per_s = positive("free flow", self.free_flow.in_m3_per_s(), "m³/s")?;
        let most_pa = positive("fan pressure", self.greatest_pressure.in_pa(), "Pa")?;
        let area_m2 = not_negative("free area", effective.in_m2(), "m²")?;
        let helps_pa = finite("pressure", helps.in_pa(), "Pa")?;
        let density = positive("density", density_kg_per_m3, "kg/m³")?;
        if area_m2 == 0.0 {
            return Ok(Flow::m3_per_s(0.0));
        }
        // a·V̇² + b·V̇ = |p0 + Δp|, in the form that does not cancel.
        let a = density / (2.0 * area_m2 * area_m2);
        let b = most_pa / free_m3_per_s;
        let push_pa = (most_pa + helps_pa).abs();
        Ok(Flow::m3_per_s(2.0 * push_pa / (b + (b * b + 4.0 * a * push_pa).sqrt())))
    }
}
