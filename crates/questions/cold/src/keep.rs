//! Litres against days, and how cold food should be.

use spile_answer::{
    Ask, Class, Figure, Finding, Given, Ledger, Limit, Reason, Sense, Step, Swing, Unit, Verdict,
    Worse, swing,
};
use spile_build::file::Words;
use spile_build::{Build, Item, typical_number};
use spile_heat::keeping::{days_of_food, volume_needed};
use spile_heat::scene::STOCK;
use spile_quantity::{Time, Volume};
use spile_tables::cold::food_temperature;

/// Nothing in the build is cooled.
pub(crate) fn nothing(build: &Build) -> Finding {
    let wants = &build.wants;
    let needed = needed(build).map_or_else(String::new, |nominal| {
        format!(
            " {} for {} take about {:.0} L nominal.",
            capital(&days_in_words(wants.away.likely().in_days())),
            in_words(wants.people),
            up(nominal.in_litres()),
        )
    });
    let says = format!("Nothing in the build keeps food cold.{needed}");
    let mend = "Add the fridge or box there is, or the one to buy: a part with its kind, size and \
                volume, and an item of that part.";
    let mut finding = Finding::plain("none", "cold food", Verdict::Open, says);
    finding.asks.push(Ask {
        input: "what keeps food cold".into(),
        how: "Its label or papers: kind, litres, watts; else a tape: width, height and depth."
            .into(),
        settles: "how many days of food keep".to_owned(),
        turns: String::new(),
        weight: 1.0,
    });
    finding.mended(Some(mend.to_owned()))
}

/// The days of food that all cold items together hold.
pub(crate) fn days(build: &Build) -> Finding {
    let wants = &build.wants;
    let label = format!("days of food for {}", in_words(wants.people));
    let unknown: Vec<&str> = crate::cold_items(build)
        .filter(|(_, item)| nominal(item).is_none())
        .map(|(name, _)| name)
        .collect();
    let mut ledger = Ledger::new();
    let volumes: Vec<_> = crate::cold_items(build)
        .filter_map(|(name, item)| {
            Some(ledger.take(format!("nominal volume of {name}"), &nominal(item)?))
        })
        .collect();
    let each = ledger.take("cold food, a person and day", &wants.litres);
    let packed = ledger.take("share of the nominal volume that packs", &STOCK.packed_share);
    let people = ledger.take("people", &spile_heat::scene::people(build));
    let figure = |point: &spile_answer::Point| {
        let volume = volumes.iter().map(|volume| point.at(*volume)).sum();
        let (people, packed) = (point.at(people).in_of_one(), point.at(packed).in_of_one());
        days_of_food(volume, people, point.at(each), packed).map_or(f64::NAN, Time::in_days)
    };
    let [swung] = swing(&ledger, [Worse::Lower], |point| [figure(point)]);
    let limit = Limit {
        value: wants.away.likely().in_days(),
        sense: Sense::AtLeast,
        class: Class::Wish,
        kind: "wish",
        source: wants.away.source.clone(),
        firm: true,
    };
    let mut finding = Finding::measured("days", label.clone(), Unit::Day, &swung, limit, &ledger)
        .settling(&swung, &ledger, figure);
    if !unknown.is_empty() && finding.verdict != Verdict::Good {
        return volume_unknown(label, &unknown);
    }
    for ask in &mut finding.asks {
        let wanted = number(wants.away.likely().in_days());
        ask.settles = format!(
            "whether the food lasts {wanted} days: {:.1} likely, {:.1} at the unfavourable end",
            swung.likely, swung.unfavourable
        );
    }
    let nominal: Volume = crate::cold_items(build)
        .filter_map(|(_, item)| nominal(item).map(|volume| volume.likely()))
        .sum();
    let mut says = days_says(build, nominal, &swung, finding.verdict);
    if !unknown.is_empty() {
        says = format!("{says} Not counting the {}.", unknown.join(" and the "));
    }
    let mend = days_mend(build, nominal, finding.verdict);
    finding.saying(says).mended(mend).worked(vec![days_step(build, nominal, swung.likely)])
}

/// `64 L nominal, `: the least volume of all cold things, where it is not known exactly.
fn least_nominal(build: &Build) -> String {
    let volumes = || crate::cold_items(build).filter_map(|(_, item)| nominal(item));
    let least: Volume = volumes().map(|volume| volume.value.low).sum();
    if volumes().all(|volume| volume.value.is_exact()) {
        String::new()
    } else {
        format!("{:.0} L nominal, ", least.in_litres())
    }
}

/// The nominal volume of a cold thing: by its papers, else the typical share of its outside
/// volume; nothing where its size is not known either.
///
/// **Source** common practice, no source.
fn nominal(item: &Item) -> Option<Given<Volume>> {
    item.part.volume.clone().or_else(|| {
        let size = item.part.size.as_ref()?;
        let outside = size.width.likely() * size.height.likely() * size.depth.likely();
        let share = typical_number("nominal-share");
        Some(share.map(|share| outside * share.in_of_one()))
    })
}

fn days_says(build: &Build, nominal: Volume, swung: &Swing, verdict: Verdict) -> String {
    let wants = &build.wants;
    let packed = nominal * STOCK.packed_share.likely().in_of_one();
    let eaten = wants.litres.likely() * f64::from(wants.people);
    let wanted = wants.away.likely().in_days();
    let start = format!(
        "{:.0} L nominal pack to {:.0} L, and {} {} {:.1} L of it a day: {:.1} days",
        nominal.in_litres(),
        packed.in_litres(),
        in_words(wants.people),
        if wants.people == 1 { "eats" } else { "eat" },
        eaten.in_litres(),
        swung.likely,
    );
    let unsure = if verdict == Verdict::Care(Reason::Unsure) {
        format!(
            " With {}{} L each and {:.0} % packed it is {:.1}.",
            least_nominal(build),
            number(wants.litres.value.high.in_litres()),
            STOCK.packed_share.value.low.in_percent(),
            swung.unfavourable
        )
    } else {
        String::new()
    };
    format!("{start}, {} wanted.{unsure}", number(wanted))
}

/// What would be enough: a greater volume, or the share of a day that the volume is enough for.
fn days_mend(build: &Build, nominal: Volume, verdict: Verdict) -> Option<String> {
    let wants = &build.wants;
    let packed = STOCK.packed_share.likely().in_of_one();
    let person_days = f64::from(wants.people) * wants.away.likely().in_days();
    match verdict {
        Verdict::Care(Reason::Wish) => {
            let needed = needed(build)?;
            Some(format!(
                "{} for {} need {:.0} L packed, so about {:.0} L nominal: {:.0} L more.",
                capital(&days_in_words(wants.away.likely().in_days())),
                in_words(wants.people),
                (needed * packed).in_litres(),
                up(needed.in_litres()),
                up((needed - nominal).in_litres()),
            ))
        }
        Verdict::Care(Reason::Unsure) => Some(format!(
            "It lasts where each needs no more than {:.1} L a day.",
            ((nominal * packed / person_days).in_litres() * 10.0).floor() / 10.0
        )),
        _ => None,
    }
}

fn days_step(build: &Build, nominal: Volume, days: f64) -> Step {
    let wants = &build.wants;
    Step {
        what: "days of food".into(),
        formula: "d = V·p / (n·v)".into(),
        numbers: format!(
            "{} L × {:.0} % / ({} × {} L a day) = {days:.2} days",
            number(nominal.in_litres()),
            STOCK.packed_share.likely().in_percent(),
            wants.people,
            number(wants.litres.likely().in_litres()),
        ),
        source: "arithmetic; litres and packing are common practice, no source".into(),
    }
}

fn volume_unknown(label: String, unknown: &[&str]) -> Finding {
    let says = format!(
        "The papers of the {} give no litres here, so the days of food cannot be said.",
        unknown.join(" and the ")
    );
    let mut finding = Finding::plain("days", label, Verdict::Open, says);
    finding.asks = unknown
        .iter()
        .map(|name| {
            Ask::missing(
                format!("nominal volume of {name}"),
                "Its papers, in litres; else width, height and depth inside with a tape, less the \
                 step over the compressor.",
                "how many days of food it holds",
            )
        })
        .collect();
    finding
}

/// The temperature wanted inside, where it is warmer than food should be kept.
pub(crate) fn inside(build: &Build) -> Option<Finding> {
    let wanted = &build.wants.inside;
    let (key, whose) = match build.words {
        Words::Uk => ("fridge-uk-advice", "United Kingdom"),
        Words::Us => ("fridge-us", "USA"),
    };
    let advice = food_temperature(key).expect("the table of food temperatures has both");
    let figure = Figure {
        likely: wanted.likely().in_celsius(),
        unfavourable: wanted.likely().in_celsius(),
        unit: Unit::Celsius,
    };
    let most = advice.value.in_celsius();
    if figure.likely <= most {
        return None;
    }
    let mut ledger = Ledger::new();
    ledger.take("temperature inside", wanted);
    let swung =
        Swing { likely: figure.likely, unfavourable: figure.unfavourable, movers: Vec::new() };
    let limit = Limit {
        value: most,
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: format!("{}, {}", advice.source.title, advice.source.edition).into(),
        firm: true,
    };
    let finding =
        Finding::measured("inside", "wanted inside", Unit::Celsius, &swung, limit, &ledger);
    let says = format!(
        "You want {} °C inside. Advice in the {whose} is {} °C at most: above it, what spoils grows \
         fast.",
        number(figure.likely),
        number(most)
    );
    Some(
        finding
            .saying(says)
            .mended(Some(format!("Set it to {} °C or less.", number(most.floor())))),
    )
}

/// The nominal litres that the wish takes.
fn needed(build: &Build) -> Option<Volume> {
    let wants = &build.wants;
    let packed = STOCK.packed_share.likely().in_of_one();
    let people = f64::from(wants.people);
    volume_needed(people, wants.away.likely(), wants.litres.likely(), packed).ok()
}

/// A whole number upwards, forgiving what rounding adds.
fn up(value: f64) -> f64 {
    (value - 1e-6).ceil()
}

/// As few digits as the number has, at most two behind the point.
pub(crate) fn number(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A count in words up to twelve.
pub(crate) fn in_words(count: u32) -> String {
    const WORDS: [&str; 13] = [
        "nobody", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
        "eleven", "twelve",
    ];
    let word = usize::try_from(count).ok().and_then(|count| WORDS.get(count));
    word.map_or_else(|| count.to_string(), |word| (*word).to_owned())
}

/// `six days`, `2.5 days`.
fn days_in_words(days: f64) -> String {
    let whole =
        (days.fract() == 0.0 && (0.0..=12.0).contains(&days)).then(|| in_words(days as u32));
    let count = whole.unwrap_or_else(|| number(days));
    format!("{count} {}", if days == 1.0 { "day" } else { "days" })
}

/// The same with its first letter large.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
