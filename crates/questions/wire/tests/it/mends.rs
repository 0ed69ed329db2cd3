//! A mend is right if the mended build, asked again, no longer has what it was to clear.

use proptest::prelude::*;
use spile_answer::{Finding, Verdict};
use spile_build::Folder;
use spile_quantity::CableSize;
use spile_wire::{Mends, NewReturn, Sized};

use crate::check::{answer, build, verdict};

/// One run as it is written in a build's file.
#[derive(Debug, Clone)]
struct Written {
    watts: f64,
    kind: &'static str,
    papers: String,
    feed: String,
    length: String,
    back: Back,
    fuse: Option<(String, &'static str)>,
    bank: &'static str,
}

#[derive(Debug, Clone)]
enum Back {
    Cable(String),
    Body { section: String, stud: &'static str },
}

impl Written {
    fn text(&self) -> String {
        let back = match &self.back {
            Back::Cable(section) => format!("section = \"{section}\""),
            Back::Body { section, stud } => {
                format!(
                    "by = \"body\", section = \"{section}\", length = \"0.8 m\", stud = \"{stud}\""
                )
            }
        };
        let way = self.fuse.as_ref().map_or(String::new(), |(fuse, kind)| {
            format!("[block.ways.1]\nfuse = \"{fuse}\"\nfamily = \"{kind}\"\nrun = \"it\"\n")
        });
        format!(
            "[bank]\nkind = \"{}\"\ncapacity = \"200 Ah\"\n[block]\nfeed = {{ section = \"35 mm2\", length = \"0.8 m\" }}\n{way}[parts.it]\nkind = \"{}\"\npower = {{ running = \"{:.0} W\"{} }}\n[items.it]\n[runs.it]\nsection = \"{}\"\nlength = \"{}\"\nreturn = {{ {back} }}\n",
            self.bank, self.kind, self.watts, self.papers, self.feed, self.length,
        )
    }

    /// The same with a mend written into it.
    fn mended(&self, sized: &Sized) -> Self {
        let mut mended = self.clone();
        if let Some(feed) = sized.feed {
            mended.feed = size(feed);
        }
        match (sized.back, &mut mended.back) {
            (NewReturn::Cable(new), _) => mended.back = Back::Cable(size(new)),
            (NewReturn::BrightStud, Back::Body { stud, .. }) => *stud = "1 mΩ +2/-0.7",
            _ => {}
        }
        if let Some(fuse) = sized.fuse {
            mended.fuse = Some((format!("{} A", fuse.in_a()), sized.fuse_kind));
        }
        mended
    }
}

fn size(size: CableSize) -> String {
    size.to_string()
}

/// The findings of the run itself.
fn of_run(text: &str) -> Vec<Finding> {
    answer(text).findings.into_iter().filter(|finding| finding.id.starts_with("it.")).collect()
}

/// Asks again after each of the mends and holds them to what they promise.
fn hold(written: &Written) -> Result<(), TestCaseError> {
    let text = written.text();
    let found = of_run(&text);
    let mends: Mends = spile_wire::mends(&build(&text), "it").unwrap();
    let stops = |found: &[Finding]| found.iter().any(|f| f.verdict == Verdict::Stop);
    if let Some(sized) = &mends.no_stop {
        let after = of_run(&written.mended(sized).text());
        prop_assert!(stops(&found) && !stops(&after), "{written:?} {sized:?}");
    }
    if let Some(sized) = &mends.likely {
        for finding in of_run(&written.mended(sized).text()) {
            let fine = matches!(verdict(&finding).as_str(), "good" | "care tight" | "care unsure");
            prop_assert!(fine, "{written:?} {sized:?}: {} {}", finding.id, finding.says);
        }
    }
    for (id, sized) in &mends.sure {
        let after = of_run(&written.mended(sized).text());
        prop_assert!(!stops(&after), "{written:?} {sized:?}");
        let finding = after.iter().find(|finding| finding.id == *id);
        let good = finding.is_none_or(|finding| finding.verdict == Verdict::Good);
        prop_assert!(good, "{written:?} {sized:?}: {:?}", finding);
    }
    // whatever is amiss has something said of how to mend it
    for finding in &found {
        let amiss = matches!(finding.verdict, Verdict::Stop) || verdict(finding) == "care practice";
        prop_assert!(!amiss || finding.mend.is_some(), "{} has no mend", finding.id);
    }
    Ok(())
}

fn any_run() -> impl Strategy<Value = Written> {
    let section = prop::sample::select(vec![
        "1 mm2",
        "1.5 mm2",
        "2.5 mm2",
        "4 mm2",
        "18 AWG",
        "14 AWG",
        "5 mm outside",
    ]);
    let back = (
        prop::sample::select(vec!["1 mm2", "1.5 mm2", "2.5 mm2", "16 AWG"]),
        prop::sample::select(vec!["20 mΩ +30/-15", "60 mΩ ± 30 mΩ", "2 mΩ"]),
        any::<bool>(),
    );
    let fridge = prop::sample::select(vec!["upright fridge", "water pump", "light", "heater"]);
    let fuse = prop::option::of(prop::sample::select(vec!["5 A", "7.5 A", "10 A", "15 A", "30 A"]));
    let papers = prop::sample::select(vec![
        "",
        ", start = \"9 A\"",
        ", cut_out = \"10.8 V\"",
        ", start = \"9 A\", cut_out = \"10.9 V\", fuse = \"15 A\"",
    ]);
    let bank = prop::sample::select(vec!["AGM", "LiFePO4", "gel"]);
    (20.0..160.0_f64, fridge, papers, section, 1.0..9.0_f64, back, fuse, bank).prop_map(
        |(watts, kind, papers, feed, metres, (section, stud, by_body), fuse, bank)| Written {
            watts,
            kind,
            papers: papers.to_owned(),
            feed: feed.to_owned(),
            length: format!("{metres:.1} m"),
            back: if by_body {
                Back::Body { section: section.to_owned(), stud }
            } else {
                Back::Cable(section.to_owned())
            },
            fuse: fuse.map(|fuse| (fuse.to_owned(), "blade")),
            bank,
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 32, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn mends_keep_what_they_promise(written in any_run()) {
        hold(&written)?;
    }
}

/// The demo build, before its job and after: the mends of the fridge's run, written into its files.
#[test]
fn heron_is_mended() {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/../../../demo/heron");
    let folder = Folder::open(std::path::Path::new(root)).unwrap();
    let planned = folder.plan("galley-fridge", Some("upright")).unwrap();
    let verdict_of = |build: &spile_build::Build, id: &str| {
        let answer = spile_wire::answer(build);
        let finding = answer.findings.iter().find(|finding| finding.id == id).unwrap();
        (finding.verdict, finding.mend.clone())
    };
    let (stop, mend) = verdict_of(&planned.after, "fridge.start");
    assert_eq!(stop, Verdict::Stop);
    let mend = mend.unwrap();
    assert!(mend.starts_with("For the stop alone: "), "{mend}");
    assert!(mend.contains("For every rule at the likely figures: "), "{mend}");
    for build in [&planned.before, &planned.after] {
        let mends = spile_wire::mends(build, "fridge").unwrap();
        for sized in [&mends.no_stop, &mends.likely].into_iter().flatten() {
            let mut mended = build.clone();
            let run = mended.runs.get_mut("fridge").unwrap();
            if let Some(feed) = sized.feed {
                run.feed.section = feed;
            }
            match (sized.back, &mut run.back) {
                (NewReturn::Cable(_), _) => run.back = spile_build::Return::Cable(run.feed.clone()),
                (NewReturn::BrightStud, spile_build::Return::Body { stud, .. }) => {
                    *stud = spile_build::typical("stud-body-clean");
                }
                _ => {}
            }
            let answer = spile_wire::answer(&mended);
            let stops = answer.findings.iter().filter(|f| f.verdict == Verdict::Stop).count();
            assert_eq!(stops, 0, "{sized:?}");
            if Some(sized) == mends.likely.as_ref() {
                let drop = answer.findings.iter().find(|f| f.id == "fridge.drop").unwrap();
                assert!(drop.figure.unwrap().likely <= 3.0);
            }
        }
    }
}
