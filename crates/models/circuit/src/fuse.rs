//! "Does the fuse hold, and does it blow?" Melting and clearing times, ratings, resistance.

use spile_quantity::{Current, Ranged, Resistance, Temperature, Time, Voltage};
use spile_tables::fuse::{
    Envelope, EnvelopePoint, Family, Rating, ambient_shares, cold_resistance, continuous,
    rated_drop, ratings_of,
};
use spile_tables::{Class, Entry, Status, source};

use crate::NoAnswer;
use crate::no_answer::{log_log, within};

/// Between which times a fuse opens.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Opening {
    /// It carries the current for at least so long; `None` where nothing is known.
    pub at_least: Option<Time>,
    /// It has opened after so long; `None` where nothing is known, or where it may never open.
    pub at_most: Option<Time>,
}

/// When a fuse opens at a steady current, from t\_min to t\_max \[s\].
///
/// **Formula** between two points of the envelope, each curve by itself,
/// log t = log t₁ + (log t₂ − log t₁) · log(m/m₁)/log(m₂/m₁), with m = I/Iₙ.
///
/// **Arguments** `envelope`, the fuse's own points or those of its family; `rating` Iₙ \[A\], above 0;
/// `current` I \[A\], 0 or more.
///
/// **Validity** from cold, at 20 to 25 °C. Nothing is carried on beyond the ends of the envelope: a
/// smaller current than that of the first point opens no sooner than there, and a greater one than
/// that of the last no later than there; all else beyond the ends is not known.
///
/// **Errors** [`NoAnswer::OutOfRange`] for a rating or current that is none.
///
/// **Source** ISO 8820-3 and others by the tables; straight lines between the points in logarithms
/// as such curves are printed.
///
/// **Example** a 40 A blade at 80 A opens within 0.15 to 5 s (maker's data sheet):
///
/// ```
/// use spile_circuit::fuse::opening;
/// use spile_quantity::Current;
/// use spile_tables::fuse::{Family, envelope};
///
/// let forty = Current::a(40.0);
/// let blade = &envelope(Family::Blade, forty).unwrap().value;
/// let times = opening(blade, forty, Current::a(80.0)).unwrap();
/// assert!((times.at_least.unwrap().in_s() - 0.15).abs() < 1e-12);
/// assert!((times.at_most.unwrap().in_s() - 5.0).abs() < 1e-12);
/// ```
pub fn opening(
    envelope: &Envelope,
    rating: Current,
    current: Current,
) -> Result<Opening, NoAnswer> {
    let rating_a = within("fuse rating", rating.in_a(), "A", 1e-3, 1e5)?;
    let multiple = within("current", current.in_a(), "A", 0.0, 1e6)? / rating_a;
    let points = |time: fn(&EnvelopePoint) -> Option<Time>| {
        let known = envelope.points.iter().filter_map(|p| Some((p.multiple, time(p)?.in_s())));
        known.collect::<Vec<_>>()
    };
    let (least, most) = (points(|p| p.at_least), points(|p| p.at_most));
    let first_or_between = match least.first() {
        Some((first, time_s)) if multiple < *first => Some(*time_s),
        _ => between(&least, multiple),
    };
    let between_or_last = match most.last() {
        Some((last, time_s)) if multiple > *last => Some(*time_s),
        _ => between(&most, multiple),
    };
    Ok(Opening { at_least: first_or_between.map(Time::s), at_most: between_or_last.map(Time::s) })
}

/// The smallest rating of a family that is made and is not below a current.
///
/// ```
/// use spile_circuit::fuse::next_up;
/// use spile_quantity::Current;
/// use spile_tables::fuse::Family;
///
/// assert_eq!(next_up(Family::Blade, Current::a(8.75)).unwrap().value.current, Current::a(10.0));
/// ```
pub fn next_up(family: Family, at_least: Current) -> Option<&'static Entry<Rating>> {
    ratings_of(family).find(|entry| entry.value.current >= at_least)
}

/// The largest rating of a family that is made and is not above a current.
///
/// ```
/// use spile_circuit::fuse::next_down;
/// use spile_quantity::Current;
/// use spile_tables::fuse::Family;
///
/// assert_eq!(next_down(Family::Blade, Current::a(8.75)).unwrap().value.current, Current::a(7.5));
/// ```
pub fn next_down(family: Family, at_most: Current) -> Option<&'static Entry<Rating>> {
    ratings_of(family).filter(|entry| entry.value.current <= at_most).last()
}

/// The resistance of a fuse while it carries a current, R \[Ω\], from cold to hot.
///
/// **Formula** low R₀ (cold); high Rₙ = Uₙ/Iₙ, with Uₙ the drop at the rated current, or 1.4 · R₀
/// where that is not known; likely R₀ + (Rₙ − R₀) · (I/Iₙ)². Where neither is known, Uₙ is
/// 50 to 180 mV, likely 100 mV.
///
/// **Arguments** `family`; `rating` Iₙ \[A\], above 0; `load` I \[A\], 0 to Iₙ.
///
/// **Validity** the fuse alone; its holder and its screws have their own resistance.
///
/// **Errors** [`NoAnswer::OutOfRange`] where the load is above the rating.
///
/// **Source** R₀ and Uₙ by the tables (data sheets); heating with the square of the current: common
/// practice; 50 to 180 mV: the span of the blades' printed drops, for other families from memory.
///
/// **Example** a 10 A blade has 7.70 mΩ cold and loses 109 mV at 10 A (data sheet):
///
/// ```
/// use spile_circuit::fuse::resistance;
/// use spile_quantity::Current;
/// use spile_tables::fuse::Family;
///
/// let ten = Current::a(10.0);
/// let blade = resistance(Family::Blade, ten, ten).unwrap().value;
/// assert_eq!((blade.low.in_mohm(), blade.high * ten), (7.70, spile_quantity::Voltage::mv(109.0)));
/// ```
pub fn resistance(
    family: Family,
    rating: Current,
    load: Current,
) -> Result<Entry<Ranged<Resistance>>, NoAnswer> {
    let rating_a = within("fuse rating", rating.in_a(), "A", 1e-3, 1e5)?;
    let share = within("load", load.in_a(), "A", 0.0, rating_a)? / rating_a;
    let cold = cold_resistance(family, rating);
    let hot = rated_drop(family, rating).map(|entry| entry.map(|drop| *drop / rating));
    let ranged = |low: Resistance, high: Resistance| {
        let high = high.max(low);
        Ranged { low, likely: low + (high - low) * (share * share), high }
    };
    Ok(match (cold, hot) {
        (Some(cold), Some(hot)) => {
            let status = cold.status.max(hot.status);
            Entry { status, ..cold.map(|low| ranged(*low, hot.value)) }
        }
        (Some(cold), None) => cold.map(|low| ranged(*low, *low * HOT_OVER_COLD)),
        (None, Some(hot)) => hot.map(|high| ranged(*high / HOT_OVER_COLD, *high)),
        (None, None) => {
            let [low, likely, high] = TYPICAL_DROPS_V.map(|drop| Voltage::v(drop) / rating);
            Entry {
                value: Ranged { low, likely, high },
                source: source("fuse-memory").expect("the tables name what is from memory"),
                status: Status::FromMemory,
                class: Class::Property,
            }
        }
    })
}

/// Hot over cold resistance of a blade, where only one of the two is known.
const HOT_OVER_COLD: f64 = 1.4;
/// Drops at the rated current of fuses that no table has.
const TYPICAL_DROPS_V: [f64; 3] = [0.05, 0.1, 0.18];

/// What a fuse should carry for hours at most, I \[A\].
///
/// **Formula** I = 0.80 · s(T) · Iₙ, s the share of its current that a fuse keeps at T, between the
/// points of its curve along straight lines, 1 up to the first of them
///
/// **Arguments** `rating` Iₙ \[A\]; `block` T \[°C\], the temperature round the fuse, −40 to 125.
///
/// **Validity** practice, not a limit. The only curve found is that of one high-current blade; it
/// stands in for all. Below 20 °C a fuse carries rather more: not counted on.
///
/// **Errors** [`NoAnswer::OutOfRange`] outside the range of temperatures.
///
/// **Source** 80 %: common practice; the curve from a maker's data sheet; both by the tables.
///
/// **Example** 0.85 of 40 A are left at 65 °C (data sheet: 34 A), of which 80 % are 27.2 A:
///
/// ```
/// use spile_circuit::fuse::carries;
/// use spile_quantity::{Current, Temperature};
///
/// let hours = carries(Current::a(40.0), Temperature::celsius(65.0)).unwrap();
/// assert!((hours.value.in_a() - 27.2).abs() < 1e-9);
/// ```
pub fn carries(rating: Current, block: Temperature) -> Result<Entry<Current>, NoAnswer> {
    let share = share_kept(block)?;
    Ok(continuous().over_3h.map(|practice| rating * (*practice * share)))
}

/// The least rating for a load that runs for hours, Iₙ \[A\]: [`carries`] the other way round.
///
/// ```
/// use spile_circuit::fuse::least_rating;
/// use spile_quantity::{Current, Temperature};
///
/// // the water pump of 7 A wants 8.75 A, so a 10 A fuse (NEC's 125 % rule says the same)
/// let least = least_rating(Current::a(7.0), Temperature::celsius(20.0)).unwrap();
/// assert!((least.value.in_a() - 8.75).abs() < 1e-9);
/// ```
///
/// **Errors** those of [`carries`].
pub fn least_rating(load: Current, block: Temperature) -> Result<Entry<Current>, NoAnswer> {
    let share = share_kept(block)?;
    Ok(continuous().over_3h.map(|practice| load / (*practice * share)))
}

/// The share of its current that a fuse keeps at a temperature.
fn share_kept(block: Temperature) -> Result<f64, NoAnswer> {
    let curve: Vec<(f64, f64)> =
        ambient_shares().iter().map(|e| (e.value.0.in_celsius(), e.value.1)).collect();
    let (first, last) = (curve[0], curve[curve.len() - 1]);
    let block_c = within("fuse block temperature", block.in_celsius(), "°C", -40.0, last.0)?;
    if block_c <= first.0 {
        return Ok(1.0);
    }
    let above = curve.partition_point(|(at, _)| *at < block_c);
    let ((cool_c, more), (warm_c, less)) = (curve[above - 1], curve[above]);
    Ok(more + (less - more) * (block_c - cool_c) / (warm_c - cool_c))
}

/// The time at a multiple of the rating, between two points of a curve; `None` beyond its ends.
fn between(curve: &[(f64, f64)], multiple: f64) -> Option<f64> {
    let above = curve.partition_point(|(at, _)| *at < multiple);
    let next = curve.get(above)?;
    if next.0 == multiple {
        return Some(next.1);
    }
    let before = curve.get(above.checked_sub(1)?)?;
    Some(log_log(*before, *next, multiple))
}
