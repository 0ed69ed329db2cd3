//! A battery by its charge: what it gives, keeps, accepts and refuses.

use spile_quantity::{Charge, Current, Share, Temperature, Time};

use crate::error::{EnergyError, not_negative, positive, within};

/// A battery as it is used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Battery {
    /// Capacity at its hour rate.
    pub capacity: Charge,
    /// The hour rate of that capacity.
    pub hour_rate: Time,
    /// Peukert's exponent; 1 where the capacity does not depend on the current.
    pub peukert: f64,
    /// The share of what is charged that comes out again.
    pub kept: Share,
    /// Near full, the charge missing over the current accepted.
    pub taper: Time,
    /// The greatest charging current.
    pub greatest_charge: Current,
    /// The coldest that it takes a charge.
    pub coldest_charge: Temperature,
    /// The charge at which the loads are switched off.
    pub floor: Share,
}

/// What happened in a step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// The charge at its end.
    pub charge: Charge,
    /// What went to the loads.
    pub served: Charge,
    /// The share of the step for which the loads were off.
    pub off: f64,
    /// What the sources gave, to loads and battery.
    pub used: Charge,
    /// What the battery kept less of than it was given, and gave less than it lost.
    pub lost: Charge,
    /// Whether the cold kept it from taking what was there to take.
    pub too_cold: bool,
}

/// How long a battery carries a current, t \[s\].
///
/// **Formula** t = H·(C/(I·H))^n
///
/// **Arguments** `capacity` C \[A·s\] at the `hour_rate` H \[s\], both above 0; `exponent` n, 1 to 2;
/// `current` I \[A\] above 0
///
/// **Validity** steady currents between some tenth of C/H and a few hours' rate, at 20 °C.
///
/// **Errors** an argument out of range.
///
/// **Source** Peukert, Elektrotechnische Zeitschrift 20 (1897) 287, in the form with an hour rate.
///
/// **Example** 100 Ah at 20 h, 10 A, n 1.2: 8.7 h; 250 Ah at 1 A, 20 A, n 1.3: 5.0886 h:
///
/// ```
/// use spile_energy::battery::lasts;
/// use spile_quantity::{Charge, Current, Time};
/// let t = lasts(Charge::ah(100.0), Time::hours(20.0), 1.2, Current::a(10.0))?;
/// assert!((t.in_hours() - 8.7).abs() < 0.05);
/// let t = lasts(Charge::ah(250.0), Time::hours(250.0), 1.3, Current::a(20.0))?;
/// assert!((t.in_hours() - 5.088_631_644).abs() < 1e-8);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn lasts(
    capacity: Charge,
    hour_rate: Time,
    exponent: f64,
    current: Current,
) -> Result<Time, EnergyError> {
    let capacity_a_s = positive("capacity", capacity.in_a_s(), "A·s")?;
    let rate_s = positive("hour rate", hour_rate.in_s(), "s")?;
    let exponent = within("Peukert's exponent", exponent, "", 1.0, 2.0)?;
    let current_a = positive("current", current.in_a(), "A")?;
    Ok(Time::s(rate_s * (capacity_a_s / (current_a * rate_s)).powf(exponent)))
}

impl Battery {
    /// The battery if its figures make sense.
    pub(crate) fn checked(&self) -> Result<Ready, EnergyError> {
        let capacity_a_s = positive("capacity", self.capacity.in_a_s(), "A·s")?;
        let rate_s = positive("hour rate", self.hour_rate.in_s(), "s")?;
        Ok(Ready {
            capacity_a_s,
            rated_a: capacity_a_s / rate_s,
            beyond: within("Peukert's exponent", self.peukert, "", 1.0, 2.0)? - 1.0,
            kept: within("share kept of a charge", self.kept.in_of_one(), "", 0.1, 1.0)?,
            taper_s: positive("time of the taper", self.taper.in_s(), "s")?,
            greatest_a: positive("greatest charge", self.greatest_charge.in_a(), "A")?,
            coldest_c: self.coldest_charge.in_celsius(),
            floor_a_s: capacity_a_s * within("floor", self.floor.in_of_one(), "", 0.0, 0.99)?,
        })
    }

    /// The charge \[A·s\] after a step in which sources offer one current and loads draw another.
    ///
    /// **Formula** what is drawn beyond what is offered takes I·max(1, (I·H/C)^(n−1)) out, down to
    /// the floor; what is offered beyond what is drawn brings η·min(I·t, Imax·t,
    /// m·(1 − exp(−η·t/τ))/η), m what is missing
    ///
    /// **Arguments** `charge` \[A·s\] 0 to the capacity; `offered`, `drawn` \[A\] 0 or more; `at`
    /// \[°C\]; `time` t \[s\] above 0
    ///
    /// **Validity** steady currents within the step. Below the rated current no more than the
    /// capacity is counted. The taper is that of a step that is all taper, or all constant current,
    /// whichever lets less in.
    ///
    /// **Errors** an argument out of range.
    ///
    /// **Source** counting of coulombs; Peukert (1897); the taper is common practice, no source.
    ///
    /// **Example** 100 Ah, half full, 10 A for an hour at the 10 h rate: 40 Ah:
    ///
    /// ```
    /// use spile_energy::battery::Battery;
    /// use spile_quantity::{Charge, Current, Share, Temperature, Time};
    /// let battery = Battery {
    ///     capacity: Charge::ah(100.0), hour_rate: Time::hours(10.0), peukert: 1.1,
    ///     kept: Share::percent(95.0), taper: Time::hours(1.5), greatest_charge: Current::a(30.0),
    ///     coldest_charge: Temperature::celsius(-20.0), floor: Share::percent(20.0),
    /// };
    /// let (none, ten) = (Current::a(0.0), Current::a(10.0));
    /// let warm = Temperature::celsius(20.0);
    /// let step = battery.step(Charge::ah(50.0), none, ten, warm, Time::hours(1.0))?;
    /// assert!((step.charge.in_ah() - 40.0).abs() < 1e-9);
    /// # Ok::<(), spile_energy::EnergyError>(())
    /// ```
    pub fn step(
        &self,
        charge: Charge,
        offered: Current,
        drawn: Current,
        at: Temperature,
        time: Time,
    ) -> Result<Step, EnergyError> {
        let ready = self.checked()?;
        let charge_a_s = within("charge", charge.in_a_s(), "A·s", 0.0, self.capacity.in_a_s())?;
        let offered_a = not_negative("offered current", offered.in_a(), "A")?;
        let drawn_a = not_negative("drawn current", drawn.in_a(), "A")?;
        let time_s = positive("length of the step", time.in_s(), "s")?;
        let at_c = within("temperature of the battery", at.in_celsius(), "°C", -60.0, 90.0)?;
        let room = ready.room(time_s);
        Ok(ready.step(charge_a_s, offered_a, drawn_a, at_c, time_s, room).into())
    }
}

/// A battery whose figures were looked at, in SI.
pub(crate) struct Ready {
    pub(crate) capacity_a_s: f64,
    rated_a: f64,
    beyond: f64,
    kept: f64,
    taper_s: f64,
    greatest_a: f64,
    coldest_c: f64,
    floor_a_s: f64,
}

/// A step in SI: charges \[A·s\].
pub(crate) struct RawStep {
    pub(crate) charge: f64,
    pub(crate) served: f64,
    pub(crate) off: f64,
    pub(crate) used: f64,
    pub(crate) lost: f64,
    pub(crate) too_cold: bool,
}

impl From<RawStep> for Step {
    fn from(raw: RawStep) -> Self {
        Self {
            charge: Charge::a_s(raw.charge),
            served: Charge::a_s(raw.served),
            off: raw.off,
            used: Charge::a_s(raw.used),
            lost: Charge::a_s(raw.lost),
            too_cold: raw.too_cold,
        }
    }
}

impl Ready {
    /// The share of what is missing that a step of that length can bring at most.
    pub(crate) fn room(&self, time_s: f64) -> f64 {
        (1.0 - (-self.kept * time_s / self.taper_s).exp()) / self.kept
    }

    pub(crate) fn step(
        &self,
        charge: f64,
        offered_a: f64,
        drawn_a: f64,
        at_c: f64,
        time_s: f64,
        room: f64,
    ) -> RawStep {
        let surplus_a = offered_a - drawn_a;
        if surplus_a >= 0.0 {
            let too_cold = at_c < self.coldest_c;
            let missing = (self.capacity_a_s - charge).max(0.0);
            let taken = if too_cold {
                0.0
            } else {
                (surplus_a.min(self.greatest_a) * time_s).min(missing * room)
            };
            let served = drawn_a * time_s;
            return RawStep {
                charge: (charge + self.kept * taken).min(self.capacity_a_s),
                served,
                off: 0.0,
                used: served + taken,
                lost: (1.0 - self.kept) * taken,
                too_cold: too_cold && surplus_a > 0.0 && missing > 0.0,
            };
        }
        let deficit_a = -surplus_a;
        let over = deficit_a / self.rated_a;
        let factor = if over > 1.0 && self.beyond > 0.0 { over.powf(self.beyond) } else { 1.0 };
        let wanted = deficit_a * factor * time_s;
        let usable = (charge - self.floor_a_s).max(0.0);
        let on = if wanted <= usable { 1.0 } else { usable / wanted };
        let drained = wanted * on;
        RawStep {
            charge: charge - drained,
            served: drawn_a * time_s * on,
            off: 1.0 - on,
            used: offered_a * time_s * on,
            lost: drained - deficit_a * time_s * on,
            too_cold: false,
        }
    }
}
