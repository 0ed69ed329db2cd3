//! The answers as JSON, for other programs, with a published schema.

use schemars::JsonSchema;
use serde::Serialize;
use spile_answer::{Finding, Input, Verdict};

use crate::report::{Pair, Report};

/// What `spile check --json` prints.
#[derive(Serialize, JsonSchema)]
struct Answers {
    /// The build's name.
    build: String,
    /// The job's name; null where none was asked of.
    job: Option<String>,
    /// The option of the job; null where it has none.
    option: Option<String>,
    /// The eight questions, in their order.
    answers: Vec<QuestionAnswer>,
    /// What to measure next, the most decisive first.
    measure_next: Vec<Measure>,
}

/// One question.
#[derive(Serialize, JsonSchema)]
struct QuestionAnswer {
    /// fit, air, hold, wire, cold, bank, axle or meter.
    question: &'static str,
    /// Its verdict before and after the job.
    verdict: Verdicts,
    /// What was found after the job, or as it stands where no job was asked of.
    findings: Vec<FindingOut>,
    /// What was taken for granted, in words.
    assumed: Vec<String>,
}

/// Verdicts before and after the job.
#[derive(Serialize, JsonSchema)]
struct Verdicts {
    /// As it stands: good, care, stop or open.
    before: &'static str,
    /// After the job; null where none was asked of.
    after: Option<&'static str>,
    /// The reason of a care that counts: tight, unsure, practice or wish.
    reason: Option<&'static str>,
}

/// One finding.
#[derive(Serialize, JsonSchema)]
struct FindingOut {
    /// Its name, unique within the question.
    id: String,
    /// good, care, stop or open.
    verdict: &'static str,
    /// The reason of a care: tight, unsure, practice or wish; else null.
    reason: Option<&'static str>,
    /// What the figure is, in a few words.
    label: String,
    /// What is, against what limit, in words.
    says: String,
    /// The figure; null where there is none.
    figure: Option<FigureOut>,
    /// The same figure before the job; null where there is none.
    before: Option<FigureOut>,
    /// What the figure is held against, in the figure's unit; null where there is none.
    limit: Option<f64>,
    /// `at most` or `at least`.
    sense: Option<&'static str>,
    /// limit, practice or wish.
    class: Option<&'static str>,
    /// What kind of rule it is: papers, cut-out, space, heat, practice, wish and the like.
    kind: Option<&'static str>,
    /// Where the limit comes from.
    limit_source: Option<String>,
    /// What would clear it, computed; null where it is good or nothing was found.
    mend: Option<String>,
    /// Every number put in.
    inputs: Vec<InputOut>,
    /// How the figure is worked out.
    working: Vec<StepOut>,
    /// What a meter should show, in the order in which to take it.
    expects: Vec<ExpectOut>,
}

/// A figure; null stands for one without bound, where the thing breaks down.
#[derive(Serialize, JsonSchema)]
struct FigureOut {
    /// With every input at its likely value.
    likely: Option<f64>,
    /// At the unfavourable end of what is known.
    unfavourable: Option<f64>,
    /// The unit of both.
    unit: &'static str,
}

/// One number put in.
#[derive(Serialize, JsonSchema)]
struct InputOut {
    /// What it is.
    name: String,
    /// Its likely value, in `unit`.
    value: f64,
    /// The least it can be.
    low: f64,
    /// The most it can be.
    high: f64,
    /// The unit of the three numbers, an SI unit.
    unit: &'static str,
    /// measured, papers, table or typical.
    basis: &'static str,
    /// Where it stands or was published.
    source: String,
}

/// What a meter should show in one place.
#[derive(Serialize, JsonSchema)]
struct ExpectOut {
    /// The place.
    place: String,
    /// How to take it.
    how: String,
    /// The least that is as it should be, the meter's own error counted in.
    low: f64,
    /// The likely reading.
    likely: f64,
    /// The most that is as it should be.
    high: f64,
    /// What it showed; null where it was not read.
    read: Option<f64>,
    /// The unit of all of them.
    unit: &'static str,
}

/// One line of a figure's working.
#[derive(Serialize, JsonSchema)]
struct StepOut {
    /// What is worked out.
    what: String,
    /// The formula.
    formula: String,
    /// The formula with its numbers.
    numbers: String,
    /// Where the formula is published.
    source: String,
}

/// Something worth measuring.
#[derive(Serialize, JsonSchema)]
struct Measure {
    /// What it is.
    input: String,
    /// How to get it with a tape, a meter, a scale or the papers.
    how: String,
    /// The verdicts that it alone can turn.
    decides: usize,
    /// The verdicts that hang on it, those first that it decides.
    hangs: Vec<HangsOut>,
    /// What it would settle, in words.
    says: String,
}

/// A verdict that hangs on something.
#[derive(Serialize, JsonSchema)]
struct HangsOut {
    /// Which, as `question.finding`.
    finding: String,
    /// What is said of it now: good, care, stop or open.
    verdict: &'static str,
    /// Whether it alone can turn the verdict.
    decides: bool,
    /// At which value the verdict turns: `good at 525 mm or more`; null where that is not known.
    turns: Option<String>,
}

/// The report as JSON.
pub fn json(report: &Report) -> serde_json::Value {
    let answers = report
        .answers
        .iter()
        .map(|asked| QuestionAnswer {
            question: asked.question.word(),
            verdict: Verdicts {
                before: asked.before.verdict().word(),
                after: asked.after.as_ref().map(|after| after.verdict().word()),
                reason: reason(asked.now().verdict()),
            },
            findings: asked.pairs().iter().map(finding).collect(),
            assumed: asked.now().assumed.clone(),
        })
        .collect();
    let answers = Answers {
        build: report.build.clone(),
        job: report.job.clone(),
        option: report.option.clone(),
        answers,
        measure_next: report
            .measure_next
            .iter()
            .map(|next| Measure {
                input: next.input.clone(),
                how: next.how.clone(),
                decides: next.decided(),
                hangs: next
                    .hangs
                    .iter()
                    .map(|hangs| HangsOut {
                        finding: format!("{}.{}", hangs.question.word(), hangs.finding),
                        verdict: hangs.verdict.word(),
                        decides: hangs.is_decided(),
                        turns: (!hangs.turns.is_empty()).then(|| hangs.turns.clone()),
                    })
                    .collect(),
                says: next.says.clone(),
            })
            .collect(),
    };
    serde_json::to_value(answers).unwrap_or(serde_json::Value::Null)
}

/// The JSON Schema of what [`json`] gives.
pub fn json_schema() -> serde_json::Value {
    schemars::schema_for!(Answers).to_value()
}

fn reason(verdict: Verdict) -> Option<&'static str> {
    verdict.reason().map(spile_answer::Reason::word)
}

fn figure(finding: &Finding) -> Option<FigureOut> {
    let bounded = |value: f64| value.is_finite().then_some(value);
    finding.figure.as_ref().map(|figure| FigureOut {
        likely: bounded(figure.likely),
        unfavourable: bounded(figure.unfavourable),
        unit: figure.unit.symbol(),
    })
}

fn finding(pair: &Pair<'_>) -> FindingOut {
    let Pair { before, now } = pair;
    let limit = now.limit.as_ref();
    FindingOut {
        id: now.id.clone(),
        verdict: now.verdict.word(),
        reason: reason(now.verdict),
        label: now.label.clone(),
        says: now.says.clone(),
        figure: figure(now),
        before: before.and_then(figure),
        limit: limit.map(|limit| limit.value),
        sense: limit.map(|limit| limit.sense.words()),
        class: limit.map(|limit| limit.class.word()),
        kind: limit.map(|limit| limit.kind),
        limit_source: limit.map(|limit| limit.source.to_string()),
        mend: now.mend.clone(),
        inputs: now.inputs.iter().map(input).collect(),
        expects: now
            .expects
            .iter()
            .map(|expect| ExpectOut {
                place: expect.place.to_string(),
                how: expect.how.to_string(),
                low: expect.low,
                likely: expect.likely,
                high: expect.high,
                read: expect.read,
                unit: expect.unit.symbol(),
            })
            .collect(),
        working: now
            .working
            .iter()
            .map(|step| StepOut {
                what: step.what.to_string(),
                formula: step.formula.to_string(),
                numbers: step.numbers.clone(),
                source: step.source.to_string(),
            })
            .collect(),
    }
}

fn input(input: &Input) -> InputOut {
    InputOut {
        name: input.name.to_string(),
        value: input.likely,
        low: input.low,
        high: input.high,
        unit: input.unit,
        basis: input.basis.word(),
        source: input.source.to_string(),
    }
}
