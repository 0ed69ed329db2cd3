//! Whatever stands in a build's files: no panic, and either a build or a problem with its place.

use proptest::prelude::*;
use spile_build::{Folder, Problems};

use super::heron_texts;

/// Whether each problem has a place that there is, and none is told twice.
fn in_place(problems: &Problems) -> Result<(), TestCaseError> {
    prop_assert!(!problems.list.is_empty());
    for problem in &problems.list {
        let Some(at) = &problem.at else { continue };
        let text = &problems.files.file(at.file).text;
        let place = problems.files.line_column(at);
        prop_assert!(at.span.start <= at.span.end && at.span.end <= text.len());
        prop_assert!(text.get(at.span.clone()).is_some(), "{:?} cuts a letter in two", at.span);
        prop_assert!(place.line <= text.split('\n').count());
        prop_assert!(
            place.column <= text.split('\n').nth(place.line - 1).unwrap().chars().count() + 1
        );
        prop_assert!(
            !problem.says.is_empty() && !problem.label.is_empty() && !problem.hint.is_empty()
        );
    }
    let mut told: Vec<_> =
        problems.list.iter().map(|problem| (format!("{:?}", problem.at), &problem.says)).collect();
    let all = told.len();
    told.sort();
    told.dedup();
    prop_assert_eq!(told.len(), all);
    Ok(())
}

fn read(texts: &[(String, String)]) -> Result<(), TestCaseError> {
    match Folder::from_texts(texts.iter().map(|(name, text)| (name.as_str(), text.as_str()))) {
        Err(problems) => in_place(&problems),
        Ok(folder) => {
            for job in folder.jobs() {
                prop_assert!(folder.plan(&job.name, None).is_ok());
                for (option, _) in &job.options {
                    prop_assert!(folder.plan(&job.name, Some(option)).is_ok());
                }
            }
            folder.clashes();
            Ok(())
        }
    }
}

/// The place nearest to a share of a text at which it may be cut.
fn place(text: &str, share: f64) -> usize {
    let mut place = (text.len() as f64 * share) as usize;
    while !text.is_char_boundary(place) {
        place -= 1;
    }
    place
}

/// What people, editors and cats put into files.
const SCRAPS: [&str; 32] = [
    "\"",
    "'",
    "\"\"\"",
    "[",
    "]",
    "{",
    "}",
    "=",
    ",",
    ".",
    "#",
    "\n",
    "\r",
    "\r\n",
    "\t",
    "\\",
    "\u{feff}",
    "\u{0}",
    "é",
    "😀",
    "0",
    "-",
    "9999999999999999999999",
    "nan",
    "inf",
    " mm",
    "[[",
    "]]",
    "true",
    "\"\" = ",
    "\u{a0}",
    "\u{3000}ü",
];

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn a_build_with_pieces_lost_or_put_in_is_told_of(
        slips in prop::collection::vec((any::<prop::sample::Index>(), 0.0_f64..=1.0, 0_usize..60, any::<prop::sample::Index>(), any::<bool>()), 1..6),
        cut in prop::option::weighted(0.1, 0.0_f64..=1.0),
    ) {
        let mut texts = heron_texts();
        for (file, share, length, scrap, puts_in) in slips {
            let index = file.index(texts.len());
            let text = &mut texts[index].1;
            let start = place(text, share);
            let mut end = (start + length).min(text.len());
            while !text.is_char_boundary(end) {
                end += 1;
            }
            text.replace_range(start..end, if puts_in { SCRAPS[scrap.index(SCRAPS.len())] } else { "" });
        }
        if let Some(share) = cut {
            let text = &mut texts[0].1;
            text.truncate(place(text, share));
        }
        read(&texts)?;
    }

    /// A value of a quite different kind in the place of one that is right.
    #[test]
    fn a_build_with_values_changed_is_told_of(
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<prop::sample::Index>(), any::<prop::sample::Index>()), 1..4),
    ) {
        const VALUES: [&str; 16] = [
            "\"\"", "0", "-1", "1e308", "nan", "true", "[]", "{}", "[[]]", "\"0 mm\"", "\"-5 m\"", "\"1e300 kg\"",
            "\"ab\"", "2026-03-14", "[[1, 2], [1, 2]]", "\"floor\"",
        ];
        let mut texts = heron_texts();
        for (file, line, value) in changes {
            let index = file.index(texts.len());
            let mut lines: Vec<String> = texts[index].1.lines().map(ToOwned::to_owned).collect();
            let pairs: Vec<usize> = (0..lines.len()).filter(|line| lines[*line].contains(" = ")).collect();
            if pairs.is_empty() {
                continue;
            }
            let line = &mut lines[pairs[line.index(pairs.len())]];
            let key = line.split(" = ").next().unwrap().to_owned();
            *line = format!("{key} = {}", VALUES[value.index(VALUES.len())]);
            texts[index].1 = lines.join("\n");
        }
        read(&texts)?;
    }

    #[test]
    fn any_text_is_told_of(text in "[-a-z\"'\\[\\]{}=,.#\\n\\r\\\\ 0-9é\u{3000}]{0,200}") {
        read(&[("build.toml".to_owned(), text.clone()), ("jobs/a.toml".to_owned(), text)])?;
    }
}
