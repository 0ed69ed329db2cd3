//! What to measure next: the inputs that decide the most verdicts.

use spile_answer::{Ask, Basis, Finding, Input, Question, Reason, Verdict};

use crate::report::Asked;

/// An input that would be worth measuring.
#[derive(Debug, Clone, PartialEq)]
pub struct Next {
    /// What it is, in plain words.
    pub input: String,
    /// How to get it with a tape, a meter, a scale or the papers.
    pub how: String,
    /// The verdicts that hang on it: first those that it decides alone, the worst of them first.
    pub hangs: Vec<Hangs>,
    /// What it would settle, in words; empty where no question says so.
    pub says: String,
}

/// A verdict that hangs on an input.
#[derive(Debug, Clone, PartialEq)]
pub struct Hangs {
    /// Whose.
    pub question: Question,
    /// The finding's name.
    pub finding: String,
    /// What is said of it now.
    pub verdict: Verdict,
    /// How much of the way to another verdict the input decides: 1 where it alone turns this one.
    pub weight: f64,
    /// At which value of the input the verdict turns: `good at 525 mm or more`; empty where it does
    /// not alone, or where that was not worked out.
    pub turns: String,
}

impl Hangs {
    /// Whether the input alone can turn this verdict.
    pub const fn is_decided(&self) -> bool {
        self.weight >= 1.0
    }
}

impl Next {
    /// The verdicts that it alone can turn.
    pub fn decided(&self) -> usize {
        self.hangs.iter().filter(|hangs| hangs.is_decided()).count()
    }
}

/// The inputs that decide verdicts, those first that decide the most of them.
///
/// What counts is every finding of every question after the job, or of the build as it stands where
/// there is none, that is *open* or *unsure*, or whose care rests on this input as a stand-in. An
/// input that several findings share, of the same name, numbers and source, stands once with all
/// that hangs on it. Of
/// two that decide as many verdicts, the one that decides a worse one comes first, then the one that
/// goes further towards those that it does not decide alone, then the one that is asked first.
pub fn measure_next(answers: &[Asked]) -> Vec<Next> {
    let mut all: Vec<Next> = Vec::new();
    let mut inputs: Vec<Option<&Input>> = Vec::new();
    for asked in answers {
        for finding in &asked.now().findings {
            for ask in finding.asks.iter().filter(|ask| counts(finding, ask)) {
                let hangs = Hangs {
                    question: asked.question,
                    finding: finding.id.clone(),
                    verdict: finding.verdict,
                    weight: ask.weight,
                    turns: ask.turns.clone(),
                };
                let input = finding.inputs.iter().find(|input| input.name == ask.input);
                let known = all
                    .iter()
                    .zip(&inputs)
                    .position(|(known, taken)| known.input == ask.input && is_one(*taken, input));
                let known = known.unwrap_or_else(|| {
                    all.push(Next {
                        input: ask.input.to_string(),
                        how: ask.how.to_string(),
                        hangs: Vec::new(),
                        says: String::new(),
                    });
                    inputs.push(input);
                    all.len() - 1
                });
                let next = &mut all[known];
                if next.says.is_empty() {
                    next.says.clone_from(&ask.settles);
                }
                next.hangs.push(hangs);
            }
        }
    }
    for next in &mut all {
        next.hangs.sort_by_key(|hangs| std::cmp::Reverse((hangs.is_decided(), hangs.verdict)));
    }
    let further = |next: &Next| next.hangs.iter().map(|hangs| hangs.weight).sum::<f64>();
    all.sort_by(|a, b| {
        let rank = |next: &Next| (next.decided(), next.hangs.first().map(|hangs| hangs.verdict));
        rank(b).cmp(&rank(a)).then(further(b).total_cmp(&further(a)))
    });
    all
}

/// Whether two inputs of one name are one thing: what is missing is the same as what is known of it.
fn is_one(a: Option<&Input>, b: Option<&Input>) -> bool {
    let (Some(a), Some(b)) = (a, b) else { return true };
    a.source == b.source && [a.low, a.likely, a.high] == [b.low, b.likely, b.high]
}

/// Whether better knowledge of an input can make a verdict surer.
fn counts(finding: &Finding, ask: &Ask) -> bool {
    let is_stand_in = || {
        let input = finding.inputs.iter().find(|input| input.name == ask.input);
        input.is_none_or(|input| input.basis == Basis::Typical)
    };
    match finding.verdict {
        Verdict::Open | Verdict::Care(Reason::Unsure) => true,
        Verdict::Care(_) => is_stand_in(),
        Verdict::Good | Verdict::Stop => false,
    }
}
