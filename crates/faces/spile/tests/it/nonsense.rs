//! Nonsense in every place where something is typed: an answer with 2, never a panic.

use std::fs;

use assert_cmd::Command;
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

use crate::fits;

/// Any text that can be an argument.
fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![
        "[^\0]{0,60}",
        "[-a-z.]{1,12}",
        "[ -~]{100,400}",
        Just("--".to_owned()),
        Just("-".to_owned()),
        Just("../..".to_owned()),
    ]
}

fn ends_with_2(within: &std::path::Path, args: &[&str]) {
    let output =
        Command::cargo_bin("spile").unwrap().current_dir(within).args(args).output().unwrap();
    let talk = String::from_utf8(output.stderr).unwrap();
    let asked_for_help = output.status.code() == Some(0)
        && args.iter().any(|arg| arg.starts_with('-') && (arg.contains('h') || arg.contains('V')));
    assert!(output.status.code() == Some(2) || asked_for_help, "{args:?}: {talk}");
    assert!(!talk.contains("panicked"), "{args:?}: {talk}");
    fits(&talk);
}

#[test]
fn in_every_argument() {
    let temp = tempfile::tempdir().unwrap();
    let heron = temp.path().join("heron");
    fs::create_dir(&heron).unwrap();
    fs::write(heron.join("build.toml"), "about = \"a van\"\n").unwrap();
    let before: Vec<_> = fs::read_dir(temp.path()).unwrap().collect();
    let config = Config { cases: 48, failure_persistence: None, ..Config::default() };
    TestRunner::new(config)
        .run(&any_text(), |text| {
            let text = text.as_str();
            let job = format!("--job={text}");
            let option = format!("--option={text}");
            ends_with_2(temp.path(), &["check", "heron", &job]);
            ends_with_2(temp.path(), &["check", "heron", "--job=x", &option]);
            ends_with_2(temp.path(), &["why", "heron", &format!("no {text}")]);
            ends_with_2(temp.path(), &["why", "heron", "air", &job]);
            ends_with_2(temp.path(), &["schema", text, "x"]);
            ends_with_2(temp.path(), &["completions", &format!("x{text}")]);
            for flag in ["kind", "size", "bay", "cable", "battery"] {
                let flag = format!("--{flag}={text}");
                ends_with_2(temp.path(), &["new", "made", &flag, "--section=nonsense"]);
            }
            Ok(())
        })
        .unwrap();
    assert_eq!(fs::read_dir(temp.path()).unwrap().count(), before.len());
}

#[test]
fn in_the_name_of_a_build() {
    let temp = tempfile::tempdir().unwrap();
    let config = Config { cases: 48, failure_persistence: None, ..Config::default() };
    TestRunner::new(config)
        .run(&"[^\0]{1,120}", |text| {
            ends_with_2(temp.path(), &["check", &format!("no {text}")]);
            ends_with_2(temp.path(), &["why", &format!("no {text}"), "fit"]);
            Ok(())
        })
        .unwrap();
}
