//! What the diagram shows: every run before and after the job, in the order in which it is drawn.

use spile_answer::{Answer, Verdict};
use spile_build::file::FuseFamily;
use spile_build::{Build, Cable, Item, Return, Run};
use spile_circuit::conductor::section;
use spile_circuit::scene::{EverythingOn, RunOn, everything_on, family};
use spile_tables::fuse::{Family, ratings_of};

use crate::ink::figure;

/// The network of a build, with what the job changes.
pub(super) struct Net<'b> {
    pub(super) build: &'b Build,
    /// The runs: those that return by cable, then those that return through the body.
    pub(super) rows: Vec<Row<'b>>,
    /// Volts and amperes; `None` where the circuit cannot be computed.
    pub(super) found: Option<EverythingOn>,
}

/// What the job does to a conductor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Change {
    Stays,
    New,
    Gone,
}

/// One run.
#[derive(Debug, Clone)]
pub(super) struct Row<'b> {
    pub(super) name: &'b str,
    pub(super) run: &'b Run,
    /// What its item is called.
    pub(super) item: &'b str,
    /// What the item takes while it runs.
    pub(super) takes: Option<String>,
    /// What the job does to its cables.
    pub(super) change: Change,
    /// Whether the job brings the item.
    pub(super) item_new: bool,
    /// What it fed before the job.
    pub(super) instead_of: Option<&'b str>,
    pub(super) found: Option<RunOn>,
    pub(super) verdict: Option<Verdict>,
    /// Volts as it starts, from the answer, and the cut-out it is held against.
    pub(super) start: Option<[f64; 2]>,
}

impl<'b> Net<'b> {
    pub(super) fn of(before: &'b Build, after: Option<&'b Build>) -> Self {
        let build = after.unwrap_or(before);
        let found = everything_on(build);
        let answer = spile_wire::answer(build);
        let old = after.map(|_| before);
        let mut rows: Vec<Row<'b>> = build
            .runs
            .iter()
            .map(|(name, run)| row(build, old, name, run, found.as_ref(), &answer))
            .collect();
        let gone = old
            .into_iter()
            .flat_map(|old| &old.runs)
            .filter(|(name, _)| !build.runs.contains_key(*name));
        rows.extend(gone.map(|(name, run)| Row {
            change: Change::Gone,
            ..row(before, None, name, run, None, &Answer { findings: Vec::new(), ..answer.clone() })
        }));
        rows.sort_by_key(|row| (row.by_body(), row.change == Change::Gone, row.place(), row.name));
        Self { build, rows, found }
    }

    /// How many runs return by cable.
    pub(super) fn by_cable(&self) -> usize {
        self.rows.iter().filter(|row| !row.by_body()).count()
    }

    /// The bank in words, a line each.
    pub(super) fn bank_words(&self) -> Vec<String> {
        let Some(bank) = &self.build.bank else { return vec!["not said".to_owned()] };
        let many = if bank.count > 1 { format!("{} × ", bank.count) } else { String::new() };
        let capacity = bank
            .capacity
            .as_ref()
            .map_or_else(String::new, |charge| format!("{} Ah ", figure(charge.likely().in_ah())));
        let low = self.build.corners.low_charge.likely().in_percent();
        vec![format!("{many}{capacity}{}", bank.kind.word()), format!("at {low:.0} %")]
    }
}

fn row<'b>(
    build: &'b Build,
    old: Option<&'b Build>,
    name: &'b str,
    run: &'b Run,
    found: Option<&EverythingOn>,
    answer: &Answer,
) -> Row<'b> {
    let item = build.items.get(&run.to);
    let was = old.and_then(|old| old.runs.get(name));
    let same = was.is_some_and(|was| was.feed == run.feed && was.back == run.back);
    let instead_of = was.filter(|was| was.to != run.to).map(|was| {
        old.and_then(|old| old.items.get(&was.to)).map_or(was.to.as_str(), |item| called(item))
    });
    let own = format!("{name}.");
    let findings = || answer.findings.iter().filter(|finding| finding.id.starts_with(&own));
    let start = findings().find(|finding| finding.id == format!("{name}.start"));
    Row {
        name,
        run,
        item: item.map_or(run.to.as_str(), called),
        takes: item
            .and_then(|item| item.part.power.running.as_ref())
            .map(|power| format!("{} W", figure(power.likely().in_w()))),
        change: if old.is_none() || same { Change::Stays } else { Change::New },
        item_new: old.is_some_and(|old| !old.items.contains_key(&run.to)),
        instead_of,
        found: found.and_then(|found| found.runs.iter().find(|one| one.name == name).cloned()),
        verdict: findings().map(|finding| finding.verdict).max(),
        start: start
            .and_then(|start| Some([start.figure?.likely, start.limit.as_ref()?.value]))
            .filter(|[volts, _]| volts.is_finite()),
    }
}

fn called(item: &Item) -> &str {
    &item.about
}

impl Row<'_> {
    pub(super) fn by_body(&self) -> bool {
        matches!(self.run.back, Return::Body { .. })
    }

    /// The cable of the return.
    pub(super) fn back(&self) -> &Cable {
        match &self.run.back {
            Return::Cable(cable) | Return::Body { cable, .. } => cable,
        }
    }

    /// The number of its way, to sort by.
    fn place(&self) -> (u32, String) {
        let number = self.run.way.as_ref().map_or("", |way| &way.number);
        (number.parse().unwrap_or(u32::MAX), number.to_owned())
    }

    /// `way 5` and `10 A, red`, as far as they are said.
    pub(super) fn way_words(&self) -> Vec<String> {
        let Some(way) = &self.run.way else { return vec!["way not said".to_owned()] };
        let rating = match &way.fuse {
            Some(fuse) => {
                let amps = fuse.likely().in_a();
                let colour =
                    colour(way.family, amps).map_or_else(String::new, |word| format!(", {word}"));
                format!("{} A{colour}", figure(amps))
            }
            None => "fuse not said".to_owned(),
        };
        vec![format!("way {}", way.number), rating]
    }

    /// The published colour of its fuse.
    pub(super) fn colour(&self) -> Option<&'static str> {
        let way = self.run.way.as_ref()?;
        colour(way.family, way.fuse.as_ref()?.likely().in_a())
    }

    /// `1.5 mm²`, `7.2 m`.
    pub(super) fn feed_words(&self) -> Vec<String> {
        cable_words(&self.run.feed)
    }

    /// `1.5 mm²`, `1.4 m`, and by what it returns.
    pub(super) fn back_words(&self) -> Vec<String> {
        let mut words = cable_words(self.back());
        if self.by_body() {
            words.push("stud on the body".to_owned());
        }
        words
    }
}

/// Size and length of a cable.
pub(super) fn cable_words(cable: &Cable) -> Vec<String> {
    let about = if cable.section_assumed { "about " } else { "" };
    let length_m = cable.length.likely().in_m();
    let length = format!("{length_m:.1}");
    vec![
        format!("{about}{}", cable.section),
        format!("{} m", length.strip_suffix(".0").unwrap_or(&length)),
    ]
}

/// How thick its copper is \[mm\]; the least line where that is not known.
pub(super) fn thickness(cable: &Cable) -> f64 {
    let area_mm2 = section(cable.section).map_or(0.0, |area| area.likely.in_mm2());
    (4.0 * area_mm2 / std::f64::consts::PI).sqrt().max(1.2)
}

/// The colour that the standard gives a fuse of that rating.
fn colour(kind: FuseFamily, rating_a: f64) -> Option<&'static str> {
    let family: Family = family(kind)?;
    let found =
        ratings_of(family).find(|entry| (entry.value.current.in_a() - rating_a).abs() < 1e-9)?;
    found.value.colour.as_deref()
}
