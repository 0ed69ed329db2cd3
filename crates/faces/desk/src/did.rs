//! What the last change did to the eight answers.

use spile_answer::{Question, Verdict};
use spile_ask::{Asked, Report, number};

use crate::desk::Desk;
use crate::view::Choice;

/// What the last change did, as long as the files are as it left them: a sentence for each answer
/// that it turned, or that it turned none, and the headline figures that moved.
pub(crate) fn did(desk: &Desk, choice: &Choice) -> Option<Vec<String>> {
    let (before, after) = desk.last()?;
    let told = |report: &Report| -> Vec<(Question, Verdict, Option<String>)> {
        report.answers.iter().map(|one| (one.question, one.now().verdict(), head(one))).collect()
    };
    // Before, the job that is shown may not have been there.
    let stood = Choice { job: None, option: None };
    let was = before.answer(choice).or_else(|_| before.answer(&stood)).ok()?;
    let now = after.answer(choice).ok()?;
    let (was, now) = (told(&was.report), told(&now.report));
    let mut says = Vec::new();
    let mut turned = false;
    for ((question, old, old_head), (_, new, new_head)) in was.iter().zip(&now) {
        let word = question.word();
        if old.word() != new.word() {
            turned = true;
            says.push(format!("It turned {word} from {} to {}.", old.word(), new.word()));
        } else if let (Some(old), Some(new)) = (old_head, new_head)
            && old != new
        {
            says.push(format!("{word}: {old} → {new}."));
        }
    }
    if !turned {
        says.insert(0, "It turned none of the eight answers.".to_owned());
    }
    Some(says)
}

/// The headline figure of an answer.
fn head(asked: &Asked) -> Option<String> {
    let leading = asked.now().leading()?;
    let figure = leading.figure.as_ref()?;
    Some(number::change(None, figure, leading.limit.as_ref()))
}
