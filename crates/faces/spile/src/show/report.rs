//! The answers: what to measure next, the eight questions, what it comes to.

use spile_answer::{Expect, Finding, Reason, Verdict};
use spile_ask::{Asked, CAUTION, Hangs, Pair, Report, lead, measures, number};
use spile_build::JobInfo;

use super::page::{COLUMNS, Page, Text, Tone, tied};
use super::verdict::{self, TEXT, VERDICT};

/// What is to be shown of a report, and what its reader typed to get it.
#[derive(Debug, Clone, Copy)]
pub struct Shown<'a> {
    /// The build as it was named on the command line.
    pub build: &'a str,
    /// The flags that name the job and its option, as they are typed behind a command; empty
    /// without a job.
    pub flags: &'a str,
    /// The jobs of the build.
    pub jobs: &'a [JobInfo],
    /// Whether findings that are good are shown one by one.
    pub all: bool,
}

/// The answers as they are printed.
pub fn report(report: &Report, shown: &Shown<'_>) -> String {
    let mut page = Page::new();
    heading(&mut page, report, shown);
    measure_next(&mut page, report);
    questions(&mut page, report, shown);
    if report.job.is_none() {
        jobs(&mut page, shown);
    }
    summary(&mut page, report, shown);
    page.finish()
}

fn heading(page: &mut Page, report: &Report, shown: &Shown<'_>) {
    let mut text = Text::new().and(Tone::Strong, &report.build);
    match &report.job {
        Some(job) => {
            text = text.and(Tone::Plain, ", job ").and(Tone::Strong, job);
            if let Some(option) = &report.option {
                text = text.and(Tone::Plain, ", option ").and(Tone::Strong, option);
            }
            text = text.and(Tone::Plain, ": before → after");
        }
        None => text = text.and(Tone::Plain, ", as it stands"),
    }
    page.put(0, &text);
    if !report.about.is_empty() {
        page.put(0, &Text::new().and(Tone::Faint, &report.about));
    }
    let info = shown.jobs.iter().find(|info| Some(&info.name) == report.job.as_ref());
    if let Some(info) = info {
        let chosen = info.options.iter().find(|(name, _)| Some(name) == report.option.as_ref());
        let about = [Some(&info.about), chosen.map(|(_, about)| about)];
        let about: Vec<&str> =
            about.into_iter().flatten().map(String::as_str).filter(|s| !s.is_empty()).collect();
        if !about.is_empty() {
            page.put(0, &Text::new().and(Tone::Faint, &about.join(": ")));
        }
        if let Some(done) = &info.done {
            let text = format!("The job was finished on {done}, so both sides are the same.");
            page.put(0, &Text::plain(&text));
        }
        let others: Vec<&str> = info
            .options
            .iter()
            .map(|(name, _)| name.as_str())
            .filter(|name| Some(*name) != report.option.as_deref())
            .collect();
        if !others.is_empty() {
            let text = format!("other options: {}", others.join(", "));
            page.put(0, &Text::new().and(Tone::Faint, &text));
        }
    }
}

/// The measurements that decide the most verdicts.
fn measure_next(page: &mut Page, report: &Report) {
    let next = measures(report);
    if next.is_empty() {
        return;
    }
    page.gap();
    page.put(0, &Text::new().and(Tone::Strong, "measure next"));
    for (number, next) in next.into_iter().enumerate() {
        let mut text = Text::new().and(Tone::Strong, &next.input);
        let how = next.how.trim_end_matches('.');
        if !how.is_empty() {
            text = text.and(Tone::Plain, &format!(": {how}"));
        }
        let says = next.says.trim_end_matches('.');
        let says = if says.is_empty() { "." } else { &format!(". It settles {says}.") };
        text = text.and(Tone::Plain, says);
        text = text.and(Tone::Faint, &format!(" [{}]", hanging(&next.hangs)));
        page.hang(2, &Text::plain(&format!("{}", number + 1)), 4, &text);
    }
}

/// `cold.days: good at 5.6 L or less; air.galley.warm and 3 more`: what hangs on a measurement, and
/// where that turns.
fn hanging(hangs: &[Hangs]) -> String {
    let shown = if hangs.len() <= 3 { hangs.len() } else { 2 };
    let mut text = String::new();
    for one in &hangs[..shown] {
        let between = match (text.is_empty(), text.contains(':') || !one.turns.is_empty()) {
            (true, _) => "",
            (false, true) => "; ",
            (false, false) => ", ",
        };
        text.push_str(&format!("{between}{}.{}", one.question.word(), one.finding));
        if !one.turns.is_empty() {
            text.push_str(&format!(": {}", one.turns));
        }
    }
    if hangs.len() > shown {
        text.push_str(&format!(" and {} more", hangs.len() - shown));
    }
    text
}

/// All questions, set apart where there is more than a row to one of them.
fn questions(page: &mut Page, report: &Report, shown: &Shown<'_>) {
    let mut told = Vec::new();
    let mut above_is_row = false;
    for asked in &report.answers {
        let mut answer = Page::new();
        question(&mut answer, asked, shown, &mut told);
        let is_row = answer.lines() == 1;
        if !(is_row && above_is_row) {
            page.gap();
        }
        page.append(&answer);
        above_is_row = is_row;
    }
}

/// One question: its leading finding in full, the others that are not good in brief.
fn question(page: &mut Page, asked: &Asked, shown: &Shown<'_>, told: &mut Vec<String>) {
    let answer = asked.now();
    let pairs = asked.pairs();
    let leading = answer.leading();
    let leading =
        pairs.iter().find(|pair| leading.is_some_and(|leading| leading.id == pair.now.id));
    let word = Text::new().and(Tone::Strong, &format!("{:<VERDICT$}", asked.question.word()));
    let Some(leading) = leading else {
        let text = Text::plain("no answer").and(Tone::Faint, &format!(" {}", verdict::NO_BAR));
        row(page, 0, word, Verdict::Open, &text);
        return;
    };
    row(page, 0, word, leading.now.verdict, &verdict::headline(leading));
    verdict::bar(page, leading);
    details(page, asked, leading, told);
    table(page, leading, shown);
    let mut others: Vec<&Pair<'_>> = pairs
        .iter()
        .filter(|pair| pair.now.id != leading.now.id)
        .filter(|pair| shown.all || pair.now.verdict != Verdict::Good)
        .collect();
    others.sort_by_key(|pair| std::cmp::Reverse(pair.now.verdict));
    for pair in &others {
        brief(page, asked, pair);
        table(page, pair, shown);
    }
    let good = pairs.len() - 1 - others.len();
    if good > 0 {
        let text = format!("and {good} more good");
        page.put(VERDICT, &Text::new().and(Tone::Faint, &text));
    }
    if !answer.assumed.is_empty() {
        let assumed = answer.assumed.iter().map(|one| one.trim_end_matches('.'));
        let text = assumed.collect::<Vec<_>>().join("; ");
        page.hang(
            VERDICT,
            &Text::new().and(Tone::Faint, "assumed:"),
            VERDICT + 9,
            &Text::new().and(Tone::Faint, &text),
        );
    }
}

fn row(page: &mut Page, at: usize, lead: Text, verdict: Verdict, text: &Text) {
    let lead = lead.and(verdict::tone(verdict), &verdict::in_words(verdict));
    page.hang(at, &lead, TEXT, text);
}

/// What a leading finding says, and what would clear it. What was told word for word further up
/// is not told again.
fn details(page: &mut Page, asked: &Asked, pair: &Pair<'_>, told: &mut Vec<String>) {
    let now = pair.now;
    let mut text = Text::new();
    let before = asked.before.verdict();
    if asked.after.is_some() && before.word() != now.verdict.word() {
        text = text.and(Tone::Plain, &format!("Before the job: {}. ", before.word()));
    }
    let is_plain = now.figure.is_none() && now.mend.is_none() && text.is_empty();
    if is_plain && told.contains(&now.says) {
        return;
    }
    told.push(now.says.clone());
    text = text
        .and(Tone::Plain, &format!("{} ", now.says))
        .and(Tone::Faint, &format!("[{}]", full_name(asked, now)));
    page.put(VERDICT, &text);
    mend(page, now);
}

/// `wire.fridge.drop`.
fn full_name(asked: &Asked, finding: &Finding) -> String {
    format!("{}.{}", asked.question.word(), finding.id)
}

fn brief(page: &mut Page, asked: &Asked, pair: &Pair<'_>) {
    let now = pair.now;
    let text = verdict::headline(pair).and(Tone::Faint, &format!(" [{}]", full_name(asked, now)));
    row(page, VERDICT, Text::new(), now.verdict, &text);
    verdict::bar(page, pair);
    if now.figure.is_none() && now.verdict != Verdict::Good && !now.says.is_empty() {
        page.put(TEXT, &Text::plain(&now.says));
    }
    if now.verdict == Verdict::Stop {
        mend(page, now);
    }
}

/// What a meter should show, where all is to be shown.
fn table(page: &mut Page, pair: &Pair<'_>, shown: &Shown<'_>) {
    if shown.all {
        for (number, expect) in pair.now.expects.iter().enumerate() {
            let lead = Text::plain(&format!("{}", number + 1));
            page.hang(VERDICT, &lead, VERDICT + 2, &expected(expect));
        }
    }
}

/// `volts at the plug       12.31 V   12.02 to 12.55 V  read 11.90 V`.
pub(super) fn expected(expect: &Expect) -> Text {
    let shown = |value: f64| number::bare(value, expect.unit);
    let text = format!(
        "{:<24}{:>8}   {} to {}",
        expect.place,
        number::with_unit(expect.likely, expect.unit),
        shown(expect.low),
        number::with_unit(expect.high, expect.unit)
    );
    let text = Text::plain(&tied(&text));
    let Some(read) = expect.read else { return text };
    let is_expected = (expect.low..=expect.high).contains(&read);
    let tone = if is_expected { Tone::Plain } else { Tone::Strong };
    text.and(tone, &tied(&format!("  read {}", number::with_unit(read, expect.unit))))
}

fn mend(page: &mut Page, finding: &Finding) {
    if let (Some(mend), false) = (&finding.mend, finding.verdict == Verdict::Good) {
        let lead = Text::new().and(Tone::Strong, "to clear it:");
        page.hang(VERDICT, &lead, VERDICT + 13, &Text::plain(mend));
    }
}

fn jobs(page: &mut Page, shown: &Shown<'_>) {
    if shown.jobs.is_empty() {
        return;
    }
    page.gap();
    page.put(0, &Text::new().and(Tone::Strong, "jobs"));
    let entry = |page: &mut Page, at: usize, name: &str, about: &str| {
        page.hang(at, &Text::plain(name), TEXT, &Text::new().and(Tone::Faint, about));
    };
    for job in shown.jobs {
        let done = job.done.as_ref().map(|done| format!("finished on {done}; in the build"));
        let about = [Some(job.about.clone()), done].into_iter().flatten();
        let about: Vec<String> = about.filter(|text| !text.is_empty()).collect();
        entry(page, 2, &job.name, &about.join(", "));
        for (option, about) in &job.options {
            entry(page, 4, option, about);
        }
    }
    if let Some(job) = shown.jobs.iter().find(|job| job.done.is_none()) {
        let command = format!("spile check {} --job {}", shown.build, job.name);
        page.put(2, &Text::plain("before and after a job: ").and(Tone::Strong, &command));
    }
}

/// What it comes to, how to see the working, and what comes before anything said here.
fn summary(page: &mut Page, report: &Report, shown: &Shown<'_>) {
    page.gap();
    let mut text = Text::new();
    for (word, verdict) in IN_ALL {
        let is_it = |asked: &&Asked| asked.now().verdict().word() == word;
        let questions: Vec<&str> =
            report.answers.iter().filter(is_it).map(|asked| asked.question.word()).collect();
        if questions.is_empty() {
            continue;
        }
        let comma = if text.is_empty() { "" } else { "; " };
        text = text
            .and(Tone::Plain, comma)
            .and(verdict::tone(verdict), &tied(&format!("{} {word}:", verdict::shape(verdict))))
            .and(Tone::Plain, &format!(" {}", questions.join(", ")));
    }
    page.put(0, &text.and(Tone::Plain, "."));
    if report.verdict() == Verdict::Stop {
        page.put(0, &Text::new().and(Tone::Strong, lead(report.verdict())));
    }
    let finding = report
        .answers
        .iter()
        .filter_map(|asked| Some((asked, asked.now().leading()?)))
        .filter(|(_, finding)| !finding.working.is_empty() || !finding.inputs.is_empty())
        .max_by_key(|(_, finding)| finding.verdict);
    if let Some((asked, finding)) = finding {
        let name = full_name(asked, finding);
        let command = format!("spile why {} {name}{}", shown.build, shown.flags);
        let lead = Text::plain("how it was worked out:");
        let command = Text::new().and(Tone::Strong, &tied(&command));
        let fits = lead.columns() + 1 + command.columns() <= COLUMNS;
        page.hang(0, &lead, if fits { lead.columns() + 1 } else { 2 }, &command);
    }
    page.put(0, &Text::new().and(Tone::Faint, CAUTION));
}

/// The verdicts, the worst first.
const IN_ALL: [(&str, Verdict); 4] = [
    ("stop", Verdict::Stop),
    ("open", Verdict::Open),
    ("care", Verdict::Care(Reason::Tight)),
    ("good", Verdict::Good),
];
