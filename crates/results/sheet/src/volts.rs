//! Where the volts go: what is lost along the way there and back, each metre as long as it is.

use spile_answer::{Worse, swing};
use spile_build::Build;
use spile_circuit::scene::{Lost, OneRun, State, Way};
use spile_tables::conductor::greatest_drop;

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Box2, Ink, Line};
use crate::plot::{Axis, Plot};

/// What is lost on the way of one run.
struct Profile<'b> {
    item: &'b str,
    state: State,
    parts: Vec<Lost>,
    worst_v: f64,
    /// What may be lost, and by what.
    limit_v: f64,
    by: &'static str,
}

/// The plot for the run nearest to its limit, of those that the job changes where there are any;
/// none where nothing can be computed.
pub(crate) fn drawing(before: &Build, after: Option<&Build>, width: Width) -> Option<Drawing> {
    let build = after.unwrap_or(before);
    let changed = |name: &&String| before.runs.get(*name) != build.runs.get(*name);
    let mut names: Vec<&String> = build.runs.keys().filter(changed).collect();
    if names.is_empty() {
        names = build.runs.keys().collect();
    }
    let found = names.into_iter().filter_map(|name| Some((name, Profile::of(build, name)?)));
    let (name, now) = found.max_by(|(_, a), (_, b)| a.share().total_cmp(&b.share()))?;
    let was = after.and_then(|_| Profile::of(before, name));
    Some(drawn(was.as_ref(), &now, after.is_some(), width))
}

impl<'b> Profile<'b> {
    /// At start where a cut-out and a start are known, else while everything runs.
    fn of(build: &'b Build, name: &'b str) -> Option<Self> {
        let (bank, run) = (build.bank.as_ref()?, build.runs.get(name)?);
        let asked = OneRun::of(build, bank, name, run)?;
        let way = Way::new(&asked, &asked.fuse()?)?;
        let likely = way.ledger.likely();
        let cut_out = way.cut_out.filter(|_| way.starts());
        let state = if cut_out.is_some() { State::Start } else { State::Running };
        let parts = way.lost(&likely, state)?;
        let posts_v = way.solve(&likely, state)?.posts.in_v();
        let (limit_v, by) = match cut_out {
            Some(volts) => (posts_v - likely.at(volts).in_v(), "cut-out"),
            None => (asked.nominal().in_v() * greatest_drop(asked.load.service).value, "practice"),
        };
        let [swung] = swing(&way.ledger, [Worse::Higher], |point| {
            [way.lost(point, state).map_or(f64::INFINITY, |parts| total_v(&parts))]
        });
        let worst_v = swung.unfavourable;
        Some(Self { item: asked.item, state, parts, worst_v, limit_v, by })
    }

    fn share(&self) -> f64 {
        self.worst_v / self.limit_v.max(1e-3)
    }

    /// Metres from the bank and volts lost, before the first part and after each.
    fn points(&self) -> Vec<[f64; 2]> {
        let mut at = [0.0, 0.0];
        let mut points = vec![at];
        for part in &self.parts {
            at = [at[0] + part.length.in_m(), at[1] + part.volts.in_v()];
            points.push(at);
        }
        points
    }

    fn end(&self) -> [f64; 2] {
        self.points().last().copied().unwrap_or_default()
    }
}

fn total_v(parts: &[Lost]) -> f64 {
    parts.iter().map(|part| part.volts.in_v()).sum()
}

fn drawn(was: Option<&Profile<'_>>, now: &Profile<'_>, is_after: bool, width: Width) -> Drawing {
    let state = if now.state == State::Start { "at start" } else { "everything on" };
    let title = format!("Where the volts go: {}, {state}, battery low", now.item);
    let both = || was.into_iter().chain([now]);
    let metres = both().map(|one| one.end()[0]).fold(0.1, f64::max);
    let reached = |one: &Profile<'_>| {
        let worst_v = if one.worst_v.is_finite() { one.worst_v } else { 0.0 };
        one.end()[1].max(worst_v).max(one.limit_v)
    };
    let most = both().map(reached).fold(0.1, f64::max);
    let (wide, right) = match width {
        Width::Wide => (1200.0, 1030.0),
        Width::Narrow => (width.units(), width.units() - 14.0),
    };
    let mut ink = Ink::new(wide);
    let frame = Box2 { left: 52.0, top: 44.0, right, bottom: 300.0 };
    let x = Axis::over([0.0, metres * 1.04], 8, "m there and back");
    let y = Axis::over([0.0, most * 1.08], 5, "V lost");
    let mut plot = Plot::new(&mut ink, frame, x, y);
    let there: f64 =
        now.parts.iter().filter(|part| !part.is_back).map(|part| part.length.in_m()).sum();
    plot.upright(there, now.item);
    plot.at_most(now.limit_v, &format!("{:.2} V, {}", now.limit_v, now.by));
    if let Some(was) = was {
        plot.line(Line::Seen, &was.points(), "as it stands");
    }
    let line = if is_after { Line::Added } else { Line::Seen };
    plot.line(line, &now.points(), "volts lost so far");
    let end = now.end();
    if now.worst_v.is_finite() {
        plot.line(line, &[end, [end[0], now.worst_v]], "to the unfavourable end");
    }
    if let Some(was) = was {
        let words = format!("{:.2} V as it stands", was.end()[1]);
        plot.mark(was.end(), false, &words, &words);
    }
    let worst = worst_words(now);
    let words = format!("{:.2} V, {worst}", end[1]);
    plot.mark(end, is_after, &words, &words);
    let points = now.points();
    let mut steps: Vec<(&[[f64; 2]], &Lost)> = points.windows(2).zip(&now.parts).collect();
    steps.sort_by(|(_, a), (_, b)| b.volts.in_v().total_cmp(&a.volts.in_v()));
    let named = if width == Width::Wide { 7 } else { 3 };
    for (ends, part) in steps.into_iter().take(named) {
        plot.name(is_after, ends, &format!("{}: {:.2}", part.part, part.volts.in_v()));
    }
    let says = format!("{:.2} volts are lost there and back, {worst}.", end[1]);
    let class = if width == Width::Wide { "wide" } else { "narrow" };
    Drawing {
        svg: ink.finish(class, &title, &says, None),
        title,
        scale: None,
        table: Some(table(was, now)),
    }
}

fn worst_words(now: &Profile<'_>) -> String {
    if now.worst_v.is_finite() {
        format!("at worst {:.2}", now.worst_v)
    } else {
        "at worst nothing arrives".to_owned()
    }
}

fn table(was: Option<&Profile<'_>>, now: &Profile<'_>) -> Rows {
    let mut head = vec!["part", "way", "metres", "volts lost"];
    if was.is_some() {
        head.push("as it stands");
    }
    let row = |part: &Lost| {
        let metres = part.length.in_m();
        let mut cells = vec![
            part.part.to_owned(),
            if part.is_back { "back" } else { "there" }.to_owned(),
            if metres > 0.0 { format!("{metres:.1}") } else { String::new() },
            format!("{:.3}", part.volts.in_v()),
        ];
        if let Some(was) = was {
            let same = was.parts.iter().find(|other| other.part == part.part);
            cells.push(same.map_or_else(String::new, |one| format!("{:.3}", one.volts.in_v())));
        }
        cells
    };
    Rows {
        head: head.into_iter().map(str::to_owned).collect(),
        rows: now.parts.iter().map(row).collect(),
    }
}
