//! The question axle, against what others computed, published and hold for usual.

mod heron;
mod picture;
mod published;
mod reference;
mod refused;
mod rules;
mod verdicts;

use spile_answer::{Answer, Finding};
use spile_build::Folder;

/// What the question answers of a text.
#[track_caller]
fn ask(text: &str) -> Answer {
    match Folder::from_texts([("build.toml", text)]) {
        Ok(folder) => spile_axle::answer(folder.build()),
        Err(problems) => panic!("{:?}\n{text}", problems.list),
    }
}

/// What the question answers of a text after a job.
#[track_caller]
fn after(text: &str, job: &str) -> Answer {
    let folder = Folder::from_texts([("build.toml", text), ("jobs/job.toml", job)]);
    let folder = folder.unwrap_or_else(|problems| panic!("{:?}\n{text}\n{job}", problems.list));
    spile_axle::answer(&folder.plan("job", None).expect("the job can be planned").after)
}

/// The finding of that name.
#[track_caller]
fn finding<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    let found = answer.findings.iter().find(|finding| finding.id == id);
    found.unwrap_or_else(|| {
        let ids: Vec<&str> = answer.findings.iter().map(|finding| finding.id.as_str()).collect();
        panic!("no {id} among {ids:?}")
    })
}

/// The likely value of the figure of that finding.
#[track_caller]
fn likely(answer: &Answer, id: &str) -> f64 {
    finding(answer, id).figure.expect("a figure").likely
}

/// The unfavourable end of the figure of that finding.
#[track_caller]
fn worst(answer: &Answer, id: &str) -> f64 {
    finding(answer, id).figure.expect("a figure").unfavourable
}

/// `good`, `care unsure`, `stop`.
fn words(finding: &Finding) -> String {
    let verdict = finding.verdict;
    let reason = verdict.reason().map_or_else(String::new, |why| format!(" {}", why.word()));
    format!("{}{reason}", verdict.word())
}
