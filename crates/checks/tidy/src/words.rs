//! Words that do not belong in the repository, files that grew too long, links that lead nowhere.

use crate::repository::File;

/// Marks of unfinished work, split so that this file does not hold them.
const UNFINISHED: [&str; 4] =
    [concat!("TO", "DO"), concat!("FIX", "ME"), concat!("XX", "X"), concat!("HA", "CK")];

/// Where the folders of one person or one machine begin.
const MACHINE: [&str; 4] = ["/home/", "/root/", "/Users/", "/tmp/"];

/// The most lines that a file of one subject has.
const LONGEST: usize = 800;

/// Every mark of unfinished work, as a word of its own in capitals.
pub fn unfinished(path: &str, text: &str) -> Vec<String> {
    let mut problems = Vec::new();
    for (at, line) in text.lines().enumerate() {
        let words = line.split(|c: char| !(c.is_alphanumeric() || c == '_'));
        for word in words.filter(|word| UNFINISHED.contains(word)) {
            problems.push(format!("{path}:{}: unfinished: `{word}`", at + 1));
        }
    }
    problems
}

/// Every absolute path of one machine. A path that goes on from a name (`crates/tmp/`) is none.
pub fn machine_paths(path: &str, text: &str) -> Vec<String> {
    let mut problems = Vec::new();
    for (at, line) in text.lines().enumerate() {
        for folder in MACHINE {
            let absolute = line.match_indices(folder).any(|(place, _)| {
                let before = line[..place].chars().next_back();
                !before.is_some_and(|c| c.is_alphanumeric() || "_-.~}*)".contains(c))
            });
            if absolute {
                problems.push(format!("{path}:{}: a path of one machine: `{folder}`", at + 1));
            }
        }
    }
    problems
}

/// A file of more lines than one subject needs.
pub fn too_long(path: &str, text: &str) -> Vec<String> {
    let lines = text.lines().count();
    if lines <= LONGEST {
        return Vec::new();
    }
    vec![format!("{path}: {lines} lines; above {LONGEST} there are two subjects in it")]
}

/// Every link of a page to a file or folder of the repository that is not there, pictures included;
/// `is_there` is asked for each, by its path below the root.
pub fn dead_links(page: &File, is_there: impl Fn(&str) -> bool) -> Vec<String> {
    let folder = page.path.rsplit_once('/').map_or("", |(folder, _)| folder);
    let targets = page.text.split("](").skip(1).filter_map(|rest| rest.split_once(')'));
    targets
        .map(|(target, _)| target.split('#').next().unwrap_or_default())
        .filter(|target| !target.is_empty() && !target.contains("://"))
        .filter(|target| !is_there(&join(folder, target)))
        .map(|target| format!("{}: a link to `{target}`, which is not there", page.path))
        .collect()
}

fn join(folder: &str, target: &str) -> String {
    let mut parts: Vec<&str> = folder.split('/').filter(|part| !part.is_empty()).collect();
    for part in target.split('/') {
        match part {
            "" | "." => {}
            ".." => {
                parts.pop();
            }
            name => parts.push(name),
        }
    }
    parts.join("/")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn unfinished_work_is_told() {
        let mark = UNFINISHED[0];
        let text = format!("done\n// {mark}: later\n");
        assert_eq!(unfinished("a.rs", &text), [format!("a.rs:2: unfinished: `{mark}`")]);
        assert!(unfinished("a.toml", "todo = \"deny\"").is_empty());
        assert!(unfinished("a.rs", &format!("MASTO{mark}N")).is_empty());
    }

    #[test]
    fn machine_paths_are_told_and_ours_are_not() {
        let bad = format!("cd \"{}ann\"\n", MACHINE[0]);
        assert_eq!(machine_paths("a.md", &bad), ["a.md:1: a path of one machine: `/home/`"]);
        assert!(machine_paths("a.md", "crates/results/tmp/src, ~/tmp/, {target}/tmp/").is_empty());
    }

    #[test]
    fn long_files_are_told() {
        assert!(too_long("a.rs", &"\n".repeat(LONGEST)).is_empty());
        assert_eq!(too_long("a.rs", &"\n".repeat(LONGEST + 1)).len(), 1);
    }

    #[test]
    fn dead_links_are_told() {
        let file = |path: &str, text: &str| File { path: path.to_owned(), text: text.to_owned() };
        let is_there = |path: &str| ["docs", "docs/a.md", "docs/a.png", "b.md"].contains(&path);
        let good =
            file("docs/c.md", "[a](a.md#top) [b](../b.md) [top](#top) [docs](../docs) ![a](a.png)");
        assert!(dead_links(&good, is_there).is_empty());
        let bad = file("docs/c.md", "[a](b.md)");
        assert_eq!(dead_links(&bad, is_there), ["docs/c.md: a link to `b.md`, which is not there"]);
    }
}
