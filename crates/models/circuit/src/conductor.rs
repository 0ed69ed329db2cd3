//! "How much does that cable lose?" The resistance of cables, bodies and frames, cold and hot.

use spile_quantity::{Area, CableSize, Current, Length, Ranged, Resistance, Temperature};
use spile_tables::conductor::{Material, material, metric_size, metric_sizes, sae_size};

use crate::NoAnswer;
use crate::no_answer::within;

/// A strand lies round the others and is longer than the cable, by this share.
const STRAND_LAY: f64 = 0.02;
/// Flexible cable by gauge may have up to this share more than its copper as solid wire.
const GAUGE_WORST: f64 = 0.05;
/// Sections in a cable of which only the outside diameter is known, as shares of its square: the
/// "6 mm" cable of the trade (4 to 4.6 mm², most of it insulation), and a thin-walled one.
const OUTSIDE_SHARES: [f64; 3] = [4.0 / 36.0, 4.3 / 36.0, 10.0 / 36.0];

/// The resistance of a length of any material at a temperature, R \[Ω\], as the range of its
/// resistivity.
///
/// **Formula** R = ρ₂₀ · (1 + α₂₀ · (T − 20 °C)) · L / A
///
/// **Arguments** `material` with ρ₂₀ \[Ω·m\] and α₂₀ \[1/K\]; `section` A \[mm²\], from
/// 0.001; `length` L \[m\], 0 to 10 000; `at` T \[°C\], −60 to 250.
///
/// **Validity** direct current; the straight line in T holds for copper and aluminium within 1 %
/// up to 200 °C. Aluminium alloys without a printed α₂₀ take that of conductor aluminium times the
/// ratio of resistivities (Matthiessen's rule: dρ/dT is that of the pure metal).
///
/// **Errors** [`NoAnswer::OutOfRange`] outside these ranges.
///
/// **Source** any textbook; ρ₂₀ and α₂₀ by the tables. (The annex of IEC 60228 rounds copper's
/// 0.00393 1/K to 0.004, half a per cent more at 100 °C.) Matthiessen's rule: from memory.
///
/// **Example** 10 AWG as solid wire has 0.9989 Ω in 1000 ft at 20 °C (public AWG tables):
///
/// ```
/// use spile_circuit::conductor::resistance;
/// use spile_quantity::{Area, Length, Temperature};
///
/// let copper = &spile_tables::conductor::material("copper").unwrap().value;
/// let (section, length) = (Area::mm2(5.261), Length::m(304.8));
/// let ohm = resistance(copper, section, length, Temperature::celsius(20.0)).unwrap().likely;
/// assert!((ohm.in_ohm() - 0.9989).abs() < 0.00005);
/// ```
pub fn resistance(
    material: &Material,
    section: Area,
    length: Length,
    at: Temperature,
) -> Result<Ranged<Resistance>, NoAnswer> {
    within("section", section.in_mm2(), "mm²", 1e-3, 1e6)?;
    let length_m = within("length", length.in_m(), "m", 0.0, 1e4)?;
    let factor = warming(alpha20_per_k(material), at)?;
    let of = |rho_ohm_m: f64| Resistance::ohm(rho_ohm_m * factor * length_m / section.in_m2());
    Ok(Ranged {
        low: of(material.rho20_low_ohm_m),
        likely: of(material.rho20_ohm_m),
        high: of(material.rho20_high_ohm_m),
    })
}

/// The copper in a cable, A \[m²\].
///
/// **Formula** metric: as named. American gauge: A = π/4 · d², d = 0.127 mm · 92^((36 − n)/39). SAE
/// gauge: by table. Known by its outside diameter D alone: 4/36 · D² to 10/36 · D², likely
/// 4.3/36 · D².
///
/// **Arguments** `size`; a metric section \[mm²\] from 0.05 to 500, an outside diameter \[mm\] from
/// 1.5 to 20.
///
/// **Validity** copper cable as sold. The lower end for a diameter is cable sold by it, whose wall
/// takes more than half of the diameter ("6 mm" is 4 to 4.6 mm²); the upper end is a thin-walled
/// cable that measures as much over its insulation.
///
/// **Errors** [`NoAnswer::OutOfRange`] outside these ranges, [`NoAnswer::NotInTables`] for an SAE
/// gauge that is not made.
///
/// **Source** ASTM B258 for the American gauge; the SAE areas by the tables; diameters: common
/// practice, no source.
///
/// **Example** a cable bought as "6 mm" has 4 mm² for certain:
///
/// ```
/// use spile_circuit::conductor::section;
/// use spile_quantity::{CableSize, Length};
///
/// let bought = section(CableSize::Outside(Length::mm(6.0))).unwrap();
/// assert!((bought.low.in_mm2() - 4.0).abs() < 1e-9 && bought.likely.in_mm2() < 4.6);
/// ```
pub fn section(size: CableSize) -> Result<Ranged<Area>, NoAnswer> {
    match size {
        CableSize::Metric(section) => {
            within("section", section.in_mm2(), "mm²", 0.05, 500.0)?;
            Ok(Ranged::exactly(section))
        }
        CableSize::Awg(gauge) => Ok(Ranged::exactly(gauge.area())),
        CableSize::Sae(gauge) => match sae_size(gauge.number()) {
            Some(entry) => Ok(Ranged::exactly(entry.value.area)),
            None => Err(NoAnswer::NotInTables { what: format!("cable by SAE gauge {gauge}") }),
        },
        CableSize::Outside(diameter) => {
            within("outside diameter", diameter.in_mm(), "mm", 1.5, 20.0)?;
            let [low, likely, high] = OUTSIDE_SHARES.map(|share| diameter * diameter * share);
            Ok(Ranged { low, likely, high })
        }
    }
}

/// The resistance of a length of copper cable at a temperature, R \[Ω\].
///
/// **Formula** R = f · ρ₂₀ · (1 + α₂₀ · (T − 20 °C)) · L / A, with f from low over likely to high:
/// metric 1, 1 and the maximum of IEC 60228 class 5 (for a section that it does not name, the
/// greatest excess of any that it names); by gauge or diameter 1, 1.02 for the lay of the strands,
/// and 1.05. Where A is a range, its largest goes with the low and its smallest with the high.
///
/// **Arguments** `size` as for [`section`]; `length` L \[m\], one way, 0 or more; `at` T \[°C\],
/// −60 to 250.
///
/// **Validity** plain flexible copper; direct current.
///
/// **Errors** those of [`section`] and [`resistance`].
///
/// **Source** IEC 60228 class 5 and ASTM B258 by the tables; the lay of 2 % reproduces NEC chapter
/// 9 table 8 within 1 %; 5 % is common practice, no source.
///
/// **Example** NEC chapter 9 table 8 gives 14 AWG stranded 3.14 Ω in 1000 ft at 75 °C:
///
/// ```
/// use spile_circuit::conductor::cable_resistance;
/// use spile_quantity::{Awg, CableSize, Length, Temperature};
///
/// let size = CableSize::Awg(Awg::new(14).unwrap());
/// let hot = cable_resistance(size, Length::m(304.8), Temperature::celsius(75.0)).unwrap();
/// assert!((hot.likely.in_ohm() / 3.14 - 1.0).abs() < 0.01);
/// ```
pub fn cable_resistance(
    size: CableSize,
    length: Length,
    at: Temperature,
) -> Result<Ranged<Resistance>, NoAnswer> {
    let section = section(size)?;
    let copper = copper();
    let solid = |section| resistance(copper, section, length, at).map(|ohm| ohm.likely);
    let (low, likely, high) = (solid(section.high)?, solid(section.likely)?, solid(section.low)?);
    Ok(match size {
        CableSize::Metric(section) => {
            Ranged { low, likely, high: high * class5_over_solid(section) }
        }
        CableSize::Awg(_) | CableSize::Sae(_) | CableSize::Outside(_) => {
            Ranged { low, likely: likely * (1.0 + STRAND_LAY), high: high * (1.0 + GAUGE_WORST) }
        }
    })
}

/// The temperature that a conductor settles at under a steady current, T \[°C\].
///
/// **Formula** T = Tₐ + (Tᵣ − Tₐ) · (I/Iₐ)² · r, where r = (1 + α·(T − 20))/(1 + α·(Tᵣ − 20)) is how
/// much less a cooler conductor heats than one at its rating; solved for T.
///
/// **Arguments** `ambient` Tₐ \[°C\], below Tᵣ; `rated` Tᵣ \[°C\], the temperature that the insulation
/// stands for good, 40 to 250; `load` I \[A\]; `allowed` Iₐ \[A\], above 0, what the conductor may
/// carry at that ambient and in that bundle.
///
/// **Validity** steady state, cooling in proportion to the difference in temperature; up to
/// I/Iₐ = 1.5, beyond which neither the cooling nor the insulation is as assumed.
///
/// **Errors** [`NoAnswer::OutOfRange`] outside these ranges.
///
/// **Source** common practice: the rule by which ampacities are corrected for ambient
/// (IEC 60364-5-52, √((Tᵣ − Tₐ)/(Tᵣ − T₀))) read backwards; without r it is a few kelvin too warm.
///
/// **Example** at what it may carry, a conductor is at its rating:
///
/// ```
/// use spile_circuit::conductor::operating_temperature;
/// use spile_quantity::{Current, Temperature};
///
/// let (ambient, rated) = (Temperature::celsius(30.0), Temperature::celsius(105.0));
/// let at = |ampere| operating_temperature(ambient, rated, Current::a(ampere), Current::a(60.0));
/// assert!((at(60.0).unwrap().in_celsius() - 105.0).abs() < 1e-9);
/// assert!(at(30.0).unwrap().in_celsius() < 30.0 + 75.0 / 4.0);
/// ```
pub fn operating_temperature(
    ambient: Temperature,
    rated: Temperature,
    load: Current,
    allowed: Current,
) -> Result<Temperature, NoAnswer> {
    let rated_c = within("insulation rating", rated.in_celsius(), "°C", 40.0, 250.0)?;
    let ambient_c = within("ambient", ambient.in_celsius(), "°C", -60.0, rated_c - 0.1)?;
    let allowed_a = within("allowed current", allowed.in_a(), "A", 1e-3, 1e5)?;
    let share =
        within("load over allowed current", load.in_a().abs() / allowed_a, "times", 0.0, 1.5)?;
    let alpha = alpha20_per_k(copper());
    // the heat rises with T along a straight line, so the balance is one linear equation in T
    let heat_k = (rated_c - ambient_c) * share * share / (1.0 + alpha * (rated_c - 20.0));
    let rise_k = heat_k * (1.0 + alpha * (ambient_c - 20.0)) / (1.0 - heat_k * alpha);
    Ok(Temperature::celsius(ambient_c + rise_k))
}

/// How many times its resistance at 20 °C copper has at a temperature.
///
/// **Formula** 1 + α₂₀ · (T − 20 °C), α₂₀ = 0.00393 1/K
///
/// **Arguments** `at` T \[°C\], −60 to 250.
///
/// **Validity** annealed copper, within 1 % up to 200 °C.
///
/// **Errors** [`NoAnswer::OutOfRange`] outside the range.
///
/// **Source** IEC 60028, by the tables.
///
/// **Example** NEC chapter 9 table 8 turns from 75 °C to another temperature by 0.00323 1/K:
///
/// ```
/// use spile_quantity::Temperature;
/// let at = |c| spile_circuit::conductor::copper_warming(Temperature::celsius(c)).unwrap();
/// assert!((at(90.0) / at(75.0) - (1.0 + 0.00323 * 15.0)).abs() < 1e-4);
/// ```
pub fn copper_warming(at: Temperature) -> Result<f64, NoAnswer> {
    warming(alpha20_per_k(copper()), at)
}

fn warming(alpha20_per_k: f64, at: Temperature) -> Result<f64, NoAnswer> {
    let at_c = within("conductor temperature", at.in_celsius(), "°C", -60.0, 250.0)?;
    Ok(1.0 + alpha20_per_k * (at_c - 20.0))
}

fn alpha20_per_k(of: &Material) -> f64 {
    of.alpha20_per_k.unwrap_or_else(|| {
        let pure = table_material("aluminium-1350");
        pure.alpha20_per_k.unwrap_or_default() * pure.rho20_ohm_m / of.rho20_ohm_m
    })
}

fn copper() -> &'static Material {
    table_material("copper")
}

fn table_material(key: &str) -> &'static Material {
    &material(key).expect("the tables have copper and conductor aluminium").value
}

/// How many times the resistance of solid copper the maximum of class 5 is.
fn class5_over_solid(section: Area) -> f64 {
    let over = |section: Area, class5: Resistance| {
        class5.in_ohm() * section.in_m2() / copper().rho20_ohm_m
    };
    match metric_size(section) {
        Some(entry) => over(section, entry.value.class5),
        None => {
            let all = metric_sizes().iter().map(|e| over(e.value.section, e.value.class5));
            all.fold(1.0, f64::max)
        }
    }
}
