//! What to measure next: the inputs whose ranges decide most.

use spile_answer::{Question, Verdict};

use crate::report::Asked;

/// An input that would be worth measuring.
#[derive(Debug, Clone, PartialEq)]
pub struct Next {
    /// What it is, in plain words.
    pub input: String,
    /// How to get it with a tape, a meter, a scale or the papers.
    pub how: String,
    /// The findings it would help to settle, each as question and name.
    pub settles: Vec<(Question, String)>,
    /// What it would settle, in words.
    pub says: String,
    /// How much hangs on it; only the order matters.
    pub weight: f64,
}

/// The inputs that decide the verdicts that count, the most decisive first.
///
/// An input weighs as much as the findings it decides together: 1 for each verdict that it alone
/// can turn, less where it goes only part of the way; an *open* finding counts twice, since
/// nothing at all can be said without its input.
pub fn measure_next(answers: &[Asked]) -> Vec<Next> {
    let mut all: Vec<Next> = Vec::new();
    for asked in answers {
        for finding in &asked.now().findings {
            for ask in &finding.asks {
                let weight = if finding.verdict == Verdict::Open { 2.0 } else { ask.weight };
                let settled = (asked.question, finding.id.clone());
                if let Some(known) = all.iter_mut().find(|known| known.input == ask.input) {
                    known.weight += weight;
                    known.settles.push(settled);
                } else {
                    all.push(Next {
                        input: ask.input.to_string(),
                        how: ask.how.to_string(),
                        settles: vec![settled],
                        says: ask.settles.clone(),
                        weight,
                    });
                }
            }
        }
    }
    all.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    all
}
