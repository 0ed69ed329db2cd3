//! `spile check`: the answers, before and after a job.

use spile_answer::Verdict;

use super::open::{flags, open};
use super::{Outcome, Status, note};
use crate::args::Check;
use crate::show::{self, Shown};

/// Answers the eight questions.
pub fn check(args: &Check) -> Outcome {
    let answered = open(&args.build).and_then(|opened| {
        let report = opened.ask(args.job.as_deref(), args.option.as_deref())?;
        Ok((opened, report))
    });
    let (opened, report) = match answered {
        Ok(answered) => answered,
        Err(outcome) => return outcome,
    };
    let data = if args.json {
        format!("{:#}\n", spile_ask::json(&report))
    } else {
        let jobs = opened.folder.jobs();
        let flags = flags(args.job.as_deref(), args.option.as_deref());
        let (build, all) = (opened.typed.as_str(), args.all);
        show::report(&report, &Shown { build, flags: &flags, jobs: &jobs, all })
    };
    let talk = opened.folder.clashes().iter().map(|clash| note(clash)).collect();
    Outcome { data, talk, status: status(report.verdict()) }
}

/// How the program ends on a verdict.
fn status(verdict: Verdict) -> Status {
    match verdict {
        Verdict::Good | Verdict::Care(_) => Status::Fine,
        Verdict::Stop => Status::Stop,
        Verdict::Open => Status::Open,
    }
}

#[cfg(test)]
mod tests {
    use spile_answer::Reason;

    use super::*;

    #[test]
    fn each_verdict_has_its_status() {
        let status = |verdict| status(verdict) as u8;
        assert_eq!(status(Verdict::Good), 0);
        assert_eq!(status(Verdict::Care(Reason::Wish)), 0);
        assert_eq!(status(Verdict::Stop), 1);
        assert_eq!(status(Verdict::Open), 3);
    }
}
