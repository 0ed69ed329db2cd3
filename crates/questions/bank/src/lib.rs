//! "Will there still be light on the fourth day of rain?" — the question **bank**: does the battery
//! carry it, through the trips we really make?
//!
//! **Computed**: the amp-hours that everything takes in a day; the days that a full bank carries
//! them without sun; the greatest current that its sources can push into it; and of the build's
//! trips, through eight years of weather hour by hour: hours a year without power against what is
//! wanted, how low the charge gets, what comes in against what goes out in each month, and whether
//! lithium is ever too cold to be charged. What clears it is found by trying: watts of panel or
//! amp-hours more.
//!
//! **Not computed**: voltages and the fall of capacity with cold (wire's low battery stands for the
//! end of the charge), ageing, generators, absorption and thermoelectric boxes (*open*), weather
//! files.
//!
//! **Model**: [`spile_energy`] for sun, weather and battery, [`spile_heat`] for fridges, whose power
//! follows the warmth of the cabin hour by hour. The sun of a month is that of the nearest place of
//! the climate table, within 300 km and 2° of latitude; elsewhere a stand-in with a wide range.
//! Panels lie flat. Days of a trip: stays, then a drive from ten o'clock; days on hook-up evenly
//! spread. At home the bank is full.
//!
//! **Unfavourable end**: one case with what matters most at its worse end together: everything used
//! more, a dull year, bad panels, a tired battery; and one for each of the three alone, to say what
//! to measure. Of the years, the worst.
//!
//! **Limits**: the electronics of a battery (papers) and lithium below 0 °C (from a specification,
//! but the battery's warmth is a stand-in). **Practice**: depth for long life, charge for each
//! amp-hour, two days without sun. **Wishes**: hours without power.
//!
//! **Sources**: those of [`spile_energy`] and [`spile_heat`]; hours of use are common practice.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [bank]
//! kind = "AGM"
//! capacity = "100 Ah @ 20 h"
//! [parts.lamps]
//! kind = "light"
//! power = { running = "12 W" }
//! [items.lamps]
//! part = "lamps"
//! "#)]).unwrap();
//! let answer = spile_bank::answer(folder.build());
//! let used = answer.findings.iter().find(|finding| finding.id == "use").unwrap();
//! assert_eq!(used.figure.unwrap().likely, 4.0); // 12 W for 4 h at 12 V
//! let days = answer.findings.iter().find(|finding| finding.id == "autonomy").unwrap();
//! assert_eq!(days.figure.unwrap().likely, 12.5); // half of 100 Ah
//! ```

mod cell;
mod charge;
mod daily;
mod life;
mod load;
mod parallel;
mod picture;
mod power;
mod trip;

use spile_answer::{Answer, Ask, Finding, Question, Verdict};
use spile_build::file::SourceKindWord;
use spile_build::{Bank, Build};

pub use picture::{Day, Frontier, Picture, frontier, picture};

use crate::cell::Cells;
use crate::daily::Daily;
use crate::life::{Life, Sources};
use crate::trip::Calendar;

/// The answer of a build.
pub fn answer(build: &Build) -> Answer {
    let mut answer = Answer { question: Question::Bank, findings: Vec::new(), assumed: Vec::new() };
    let daily = Daily::new(build);
    answer.findings.extend(daily.findings());
    let Some(bank) = &build.bank else {
        answer.findings.push(no_bank());
        return answer;
    };
    if bank.kind_assumed {
        answer.assumed.push("the bank is AGM".into());
    }
    answer.findings.extend(parallel::beside(bank));
    let mut with_bank = daily.ledger.clone();
    let Some(cells) = Cells::new(build, bank, &mut with_bank) else {
        answer.findings.push(no_capacity());
        return answer;
    };
    let without_sun = daily.autonomy(build, bank, &cells, &with_bank);
    let sources = Sources::new(build, &mut with_bank);
    answer.assumed.extend(sources.left_out.iter().cloned());
    answer.findings.extend(unsaid(&sources));
    answer.findings.extend(charge::current(bank, &cells, &sources, &with_bank));
    if daily.loads.is_empty() {
        return answer;
    }
    answer.findings.extend(without_sun);
    let Ok(calendar) = Calendar::new(build) else {
        answer.findings.push(power::no_year());
        return answer;
    };
    answer.assumed.extend(calendar.assumed.iter().cloned());
    answer.findings.extend(power::unknown_trips(&calendar));
    if calendar.trips.is_empty() {
        if calendar.unknown.is_empty() {
            answer.findings.push(power::no_trips());
        }
        return answer;
    }
    answer.assumed.push("at home the bank is full".into());
    if build.sources.values().any(|source| source.kind == Some(SourceKindWord::Solar)) {
        answer.assumed.push("panels lie flat".into());
    }
    let (sun, given) = trip::sun(&calendar);
    let sun = with_bank.take(sun, &given).index();
    let worse_loads = (daily.worst(&with_bank), daily.strongest());
    match Life::new(with_bank, daily.loads, cells, sources, calendar) {
        Ok(life) => answer.findings.extend(power::findings(build, &life, worse_loads, sun)),
        Err(_) => answer.findings.push(power::no_year()),
    }
    answer
}

fn no_bank() -> Finding {
    open(
        "bank",
        "the house battery",
        "Nothing is said of a house battery, so nothing can be said of how long it lasts.",
        "the bank",
        "Read its kind and its amp-hours off the label: bank = { kind = \"AGM\", capacity = \"95 Ah @ 20 h\" }.",
    )
}

fn no_capacity() -> Finding {
    open(
        "capacity",
        "capacity of the bank",
        "The capacity of the bank is not said, so nothing can be said of how long it lasts.",
        "capacity of the bank",
        "Read the amp-hours and their hour rate off the label: capacity = \"95 Ah @ 20 h\".",
    )
}

/// Sources of which a figure is missing; they are counted as nothing.
fn unsaid(sources: &Sources) -> Vec<Finding> {
    let each = sources.unsaid.iter().map(|(name, how)| {
        let says = format!("The {name} is counted as nothing: what it gives is not said.");
        open(&format!("{name}.gives"), &format!("what the {name} gives"), &says, name, how)
    });
    each.collect()
}

/// A finding that waits for a number.
pub(crate) fn open(id: &str, label: &str, says: &str, input: &str, how: &str) -> Finding {
    let mut finding = Finding::plain(id, label, Verdict::Open, says);
    finding.asks.push(Ask::missing(input.to_owned(), how.to_owned(), label));
    finding
}

/// How a bank is called in a sentence: `190 Ah of AGM`.
pub(crate) fn bank_words(bank: &Bank, ah: f64) -> String {
    let kind = match cell::key(bank.kind) {
        "agm" => "AGM",
        "lfp" => "lithium iron phosphate",
        other => other,
    };
    format!("{ah:.0} Ah of {kind}")
}
