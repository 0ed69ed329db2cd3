//! Litres against days: how long the food lasts that goes in.

use spile_quantity::{Time, Volume};

use crate::error::{HeatError, not_negative, positive, within};

/// The nominal litres V a box needs for the food of a number of people and days.
///
/// **Formula** V = n·d·v/p
///
/// **Arguments** `people` n, 0 or more; `days` d, 0 or more; `per_person_day` v, the volume a person
/// eats and drinks cold in a day, 0 or more; `packed_share` p of the nominal volume that food really
/// fills, above 0 to 1.
///
/// **Validity** all food goes in at the start; no shopping on the way.
///
/// **Errors** an argument outside those ranges.
///
/// **Source** common practice, no source: v and p are typical until the owner has their own.
///
/// **Example** worked by hand: two people for 6 days at 4 litres, packed to 0.6 of the nominal
/// volume: 2·6·4/0.6 = 80 litres.
///
/// ```
/// use spile_heat::keeping::volume_needed;
/// use spile_quantity::{Time, Volume};
/// let v = volume_needed(2.0, Time::days(6.0), Volume::litres(4.0), 0.6)?;
/// assert!((v.in_litres() - 80.0).abs() < 1e-9);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn volume_needed(
    people: f64,
    days: Time,
    per_person_day: Volume,
    packed_share: f64,
) -> Result<Volume, HeatError> {
    let people = not_negative("people", people, "people")?;
    let days = not_negative("days", days.in_days(), "days")?;
    let each = not_negative("volume a person-day", per_person_day.in_litres(), "litres")?;
    let packed_share = packed(packed_share)?;
    Ok(Volume::litres(people * days * each / packed_share))
}

/// The days d for which a box of nominal volume V holds food.
///
/// **Formula** d = V·p/(n·v)
///
/// **Arguments** `volume` V, 0 or more; `people` n, above 0; `per_person_day` v, above 0;
/// `packed_share` p, above 0 to 1.
///
/// **Validity** as for [`volume_needed`]; whether each food keeps that long is another question.
///
/// **Errors** an argument outside those ranges.
///
/// **Source** [`volume_needed`] turned round.
///
/// **Example** worked by hand: 92 litres for two people: 92·0.6/(2·4) = 6.9 days.
///
/// ```
/// use spile_heat::keeping::days_of_food;
/// use spile_quantity::Volume;
/// let days = days_of_food(Volume::litres(92.0), 2.0, Volume::litres(4.0), 0.6)?;
/// assert!((days.in_days() - 6.9).abs() < 1e-9);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn days_of_food(
    volume: Volume,
    people: f64,
    per_person_day: Volume,
    packed_share: f64,
) -> Result<Time, HeatError> {
    let litres = not_negative("volume", volume.in_litres(), "litres")?;
    let people = positive("people", people, "people")?;
    let each = positive("volume a person-day", per_person_day.in_litres(), "litres")?;
    let packed_share = packed(packed_share)?;
    Ok(Time::days(litres * packed_share / (people * each)))
}

fn packed(share: f64) -> Result<f64, HeatError> {
    within("packed share", share, "of 1", f64::MIN_POSITIVE, 1.0)
}
