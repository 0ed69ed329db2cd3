//! Each command as it is typed: what goes where, and how it ends.

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Command as Process, Stdio};

use assert_cmd::Command;
use tempfile::TempDir;

use crate::fits;

/// What a command printed, and how it ended.
struct Ended {
    data: String,
    talk: String,
    status: i32,
}

fn spile(within: &Path, args: &[&str]) -> Ended {
    let output =
        Command::cargo_bin("spile").unwrap().current_dir(within).args(args).output().unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    let ended = Ended {
        data: text(output.stdout),
        talk: text(output.stderr),
        status: output.status.code().unwrap(),
    };
    fits(&ended.talk);
    assert!(!ended.talk.contains("panicked"), "{}", ended.talk);
    ended
}

fn folder() -> TempDir {
    tempfile::tempdir().unwrap()
}

/// A folder with a build in it, which has the jobs given, each with its file's text.
fn build(jobs: &[(&str, &str)]) -> TempDir {
    let temp = folder();
    let heron = temp.path().join("heron");
    fs::create_dir_all(heron.join("jobs")).unwrap();
    fs::write(
        heron.join("build.toml"),
        "about = \"a van\"\n[items.box]\npart = \"box\"\n[parts.box]\nkind = \"lidded box\"\n",
    )
    .unwrap();
    for (name, text) in jobs {
        fs::write(heron.join(format!("jobs/{name}.toml")), text).unwrap();
    }
    temp
}

const OUT: &str = "about = \"the box goes out\"\n[[remove]]\nwhat = \"items.box\"\n";

const NEW: [&str; 14] = [
    "new",
    "heron",
    "--kind",
    "upright fridge",
    "--size",
    "475 x 780 x 495 mm",
    "--bay",
    "520 x 1140 x 540 mm",
    "--cable",
    "7.2 m",
    "--section",
    "1.5 mm2",
    "--battery",
    "100 Ah",
];

#[test]
fn demo_writes_the_builds_and_answers_the_main_job() {
    let temp = folder();
    let ended = spile(temp.path(), &["demo"]);
    assert_eq!(ended.status, 0, "{}", ended.talk);
    fits(&ended.data);
    assert!(ended.data.starts_with("heron, job galley-fridge, option upright: before → after\n"));
    for word in ["fit", "air", "hold", "wire", "cold", "bank", "axle", "meter"] {
        assert!(ended.data.lines().any(|line| line.starts_with(word)), "{word}");
    }
    let heron = temp.path().join("spile-demo/heron");
    let there = fs::read_to_string(heron.join("build.toml")).unwrap();
    assert_eq!(there, include_str!("../../../../../demo/heron/build.toml"));
    assert!(heron.join("parts/upright-92.toml").is_file());
}

#[test]
fn demo_leaves_what_stands_already() {
    let temp = folder();
    spile(temp.path(), &["demo", "mine"]);
    let file = temp.path().join("mine/heron/build.toml");
    let mine = format!("# mine\n{}", fs::read_to_string(&file).unwrap());
    fs::write(&file, &mine).unwrap();
    fs::remove_file(temp.path().join("mine/heron/parts/bench.toml")).unwrap();
    let ended = spile(temp.path(), &["demo", "mine"]);
    assert_eq!(ended.status, 2, "the bench is missing, and is not put back");
    assert!(ended.talk.contains("stands already"), "{}", ended.talk);
    assert_eq!(fs::read_to_string(&file).unwrap(), mine);
    assert!(ended.data.is_empty());

    fs::write(temp.path().join("file"), "").unwrap();
    assert_eq!(spile(temp.path(), &["demo", "file"]).status, 2);
}

#[test]
fn new_makes_a_build_that_check_reads() {
    let temp = folder();
    let ended = spile(temp.path(), &NEW);
    assert_eq!((ended.status, ended.data.as_str()), (0, ""), "{}", ended.talk);
    let text = fs::read_to_string(temp.path().join("heron/build.toml")).unwrap();
    assert!(
        text.contains("size = { width = \"475 mm\", height = \"780 mm\", depth = \"495 mm\" }")
    );
    let ended = spile(temp.path(), &["check", "heron"]);
    assert!([0, 1, 3].contains(&ended.status), "{}", ended.talk);
    assert_eq!(ended.talk, "");
    fits(&ended.data);
}

#[test]
fn new_writes_nothing_over_anything() {
    let temp = folder();
    fs::write(temp.path().join("heron"), "mine").unwrap();
    let ended = spile(temp.path(), &NEW);
    assert_eq!(ended.status, 2);
    assert!(ended.talk.contains("stands already"), "{}", ended.talk);
    assert_eq!(fs::read_to_string(temp.path().join("heron")).unwrap(), "mine");

    fs::remove_file(temp.path().join("heron")).unwrap();
    fs::create_dir(temp.path().join("heron")).unwrap();
    assert_eq!(spile(temp.path(), &NEW).status, 2);
    assert_eq!(fs::read_dir(temp.path().join("heron")).unwrap().count(), 0);
}

#[test]
fn new_without_a_terminal_says_what_is_missing() {
    let temp = folder();
    let ended = spile(temp.path(), &["new", "heron", "--kind", "fridge", "--cable", "7.2 m"]);
    assert_eq!(ended.status, 2);
    for flag in ["--size", "--bay", "--section", "--battery"] {
        assert!(ended.talk.contains(flag), "{flag}: {}", ended.talk);
    }
    assert!(!ended.talk.contains("--cable"), "{}", ended.talk);
    assert_eq!(fs::read_dir(temp.path()).unwrap().count(), 0);
}

#[test]
fn new_says_which_flag_cannot_be_read() {
    let temp = folder();
    let ended = spile(temp.path(), &["new", "heron", "--cable", "7.2"]);
    assert_eq!(ended.status, 2);
    assert!(ended.talk.contains("--cable"), "{}", ended.talk);
    assert_eq!(fs::read_dir(temp.path()).unwrap().count(), 0);
}

#[test]
fn desk_serves_the_build_at_the_address_that_it_prints() {
    let temp = build(&[]);
    let mut child = Process::new(assert_cmd::cargo::cargo_bin("spile"))
        .current_dir(temp.path())
        .args(["desk", "heron", "--no-open"])
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut address = String::new();
    BufReader::new(child.stdout.take().unwrap()).read_line(&mut address).unwrap();
    let host = address.trim().strip_prefix("http://").unwrap().trim_end_matches('/');
    let mut stream = TcpStream::connect(host).unwrap();
    write!(stream, "GET /parts HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n").unwrap();
    let mut page = String::new();
    stream.read_to_string(&mut page).unwrap();
    child.kill().unwrap();
    child.wait().unwrap();
    assert!(host.starts_with("127.0.0.1:"), "{address}");
    assert!(page.starts_with("HTTP/1.1 200") && page.contains("<h1>Parts</h1>"), "{page}");
}

#[test]
fn desk_opens_no_file() {
    let temp = build(&[]);
    let ended = spile(temp.path(), &["desk", "heron/build.toml", "--no-open"]);
    assert_eq!((ended.status, ended.data.as_str()), (2, ""));
    assert!(ended.talk.contains("name the folder"), "{}", ended.talk);
}

#[test]
fn check_answers_as_it_stands_and_lists_the_jobs() {
    let temp = build(&[("box-out", OUT)]);
    let ended = spile(temp.path(), &["check", "heron"]);
    fits(&ended.data);
    assert!(ended.data.starts_with("heron, as it stands\na van\n"), "{}", ended.data);
    assert!(ended.data.contains("box-out                the box goes out"), "{}", ended.data);
    assert!(ended.data.contains("spile check heron --job box-out"), "{}", ended.data);
    // Five of the questions are open in this version, so a build without a stop ends with 3.
    assert_eq!(ended.status, 3, "{}", ended.data);
}

#[test]
fn check_ends_with_1_on_a_stop() {
    // 60 m of thin cable take some 5 V of 12 at the fridge's 5 A, and it cuts out under 10.9 V.
    let temp = build(&[]);
    let text = "[parts.fridge]
kind = \"upright fridge\"
power = { volts = \"12 V\", running = \"58 W\", start = \"8.5 A\", cut_out = \"10.9 V\" }
[items.fridge]
[runs.fridge]
length = \"30 m\"
section = \"1 mm2\"
[bank]
capacity = \"100 Ah\"
";
    fs::write(temp.path().join("heron/build.toml"), text).unwrap();
    let ended = spile(temp.path(), &["check", "heron"]);
    assert_eq!(ended.status, 1, "{}{}", ended.data, ended.talk);
    assert!(ended.data.contains("Do not cut, do not switch on."), "{}", ended.data);
}

#[test]
fn check_takes_the_file_for_its_folder() {
    let temp = build(&[]);
    let heron = temp.path().join("heron");
    assert_eq!(spile(&heron, &["check", "."]).data.lines().next(), Some("heron, as it stands"));
    let by_file = spile(&heron, &["check", "build.toml"]);
    assert_eq!(by_file.data.lines().next(), Some("heron, as it stands"));
}

#[test]
fn check_names_the_job() {
    let temp = build(&[("box-out", OUT)]);
    let ended = spile(temp.path(), &["check", "heron", "--job", "box-out", "--all"]);
    fits(&ended.data);
    assert!(ended.data.starts_with("heron, job box-out: before → after\n"), "{}", ended.data);
}

#[test]
fn check_notes_jobs_that_touch_one_thing() {
    let temp = build(&[("a", OUT), ("b", OUT)]);
    let ended = spile(temp.path(), &["check", "heron"]);
    assert!(ended.talk.starts_with("note: the jobs a and b both touch"), "{}", ended.talk);
    assert!(!ended.data.is_empty());
}

#[test]
fn check_prints_json_by_its_schema() {
    let temp = build(&[("box-out", OUT)]);
    let ended = spile(temp.path(), &["check", "heron", "--json", "--job", "box-out"]);
    let answers: serde_json::Value = serde_json::from_str(&ended.data).unwrap();
    assert_eq!(answers["build"], "heron");
    assert_eq!(answers["job"], "box-out");
    assert_eq!(answers["answers"].as_array().unwrap().len(), 8);
    let schema = spile(temp.path(), &["schema", "answers"]);
    let schema: serde_json::Value = serde_json::from_str(&schema.data).unwrap();
    for key in schema["required"].as_array().unwrap() {
        assert!(answers.get(key.as_str().unwrap()).is_some(), "{key}");
    }
}

#[test]
fn unknown_names_end_with_2_and_the_nearest() {
    let temp = build(&[("box-out", OUT)]);
    let cases: [(&[&str], &str); 5] = [
        (&["check", "heron", "--job", "box-uot"], "did you mean `box-out`?"),
        (&["check", "heron", "--job", "box-out", "--option", "x"], "there is no option `x`"),
        (&["check", "heron", "--option", "x"], "--job"),
        (&["why", "heron", "meter.nothing-at"], "meter.nothing"),
        (&["why", "heron", "no"], "can be each of these"),
    ];
    for (args, told) in cases {
        let ended = spile(temp.path(), args);
        assert_eq!((ended.status, ended.data.as_str()), (2, ""), "{args:?}");
        assert!(ended.talk.contains(told), "{args:?}: {}", ended.talk);
    }
}

#[test]
fn why_takes_a_name_or_its_beginning() {
    let temp = build(&[("box-out", OUT)]);
    for finding in ["meter.nothing", "meter.n", "meter"] {
        let ended = spile(temp.path(), &["why", "heron", finding, "--job", "box-out"]);
        assert_eq!(ended.status, 0, "{}", ended.talk);
        assert!(ended.data.contains("meter.nothing   ◌ open"), "{}", ended.data);
        fits(&ended.data);
    }
}

#[test]
fn problems_are_told_in_place_and_nothing_else_is() {
    let temp = build(&[]);
    let heron = temp.path().join("heron");
    let text = "about = \"a van\"\n[bank]\ncapacity = \"95\"\nvolts = \"12 A\"\n";
    fs::write(heron.join("build.toml"), text).unwrap();
    for command in ["check", "why"] {
        let mut args = vec![command, "heron"];
        args.extend((command == "why").then_some("fit"));
        let ended = spile(temp.path(), &args);
        assert_eq!((ended.status, ended.data.as_str()), (2, ""));
        assert!(ended.talk.contains("[heron/build.toml:3:13]"), "{}", ended.talk);
        assert!(ended.talk.contains("[heron/build.toml:4:13]"), "{}", ended.talk);
        assert!(ended.talk.ends_with("2 problems in 1 file; nothing was computed\n"));
    }
    let ended = spile(temp.path(), &["check", "heron", "--json"]);
    assert_eq!((ended.status, ended.data.as_str()), (2, ""));
}

#[test]
fn what_is_no_build_ends_with_2() {
    let temp = build(&[]);
    fs::write(temp.path().join("notes.toml"), "").unwrap();
    fs::write(temp.path().join("heron/jobs/bad.toml"), [0xff, 0xfe, 0x00]).unwrap();
    fs::create_dir_all(temp.path().join("odd/build.toml")).unwrap();
    fs::create_dir(temp.path().join("empty")).unwrap();
    let long = "x".repeat(300);
    for build in ["nowhere", "notes.toml", "heron", "odd", "empty", long.as_str(), "\u{1b}[31m"] {
        let ended = spile(temp.path(), &["check", build]);
        assert_eq!((ended.status, ended.data.as_str()), (2, ""), "{build}");
        assert!(!ended.talk.is_empty(), "{build}");
    }
}

#[test]
fn sources_tell_what_was_seen() {
    let ended = spile(&PathBuf::from("."), &["sources"]);
    assert_eq!(ended.status, 0);
    fits(&ended.data);
    for source in spile_tables::sources() {
        assert!(ended.data.lines().any(|line| line.split(' ').next() == Some(&source.key)));
    }
    assert!(ended.data.contains("seen in print:") && ended.data.contains("from memory:"));
}

#[test]
fn schemas_and_completions_are_printed() {
    let here = PathBuf::from(".");
    for of in [&["schema"][..], &["schema", "part"], &["schema", "job"], &["schema", "answers"]] {
        let ended = spile(&here, of);
        let schema: serde_json::Value = serde_json::from_str(&ended.data).unwrap();
        assert!(schema["properties"].is_object(), "{of:?}");
    }
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let ended = spile(&here, &["completions", shell]);
        assert_eq!(ended.status, 0);
        assert!(ended.data.contains("check"), "{shell}");
    }
}

#[test]
fn help_is_short_and_slips_are_told() {
    let here = PathBuf::from(".");
    let commands = ["demo", "new", "check", "why", "sources", "schema", "completions"];
    for command in commands {
        for help in ["-h", "--help"] {
            let ended = spile(&here, &[command, help]);
            assert_eq!(ended.status, 0);
            assert!(ended.data.lines().count() <= 40, "{command}");
            fits(&ended.data);
        }
    }
    fits(&spile(&here, &["--help"]).data);
    assert_eq!(
        spile(&here, &["--version"]).data,
        concat!("spile ", env!("CARGO_PKG_VERSION"), "\n")
    );
    let long = "y".repeat(200);
    for slip in [&[][..], &["checks"], &["check"], &["check", "heron", "--jbo"], &["schema", &long]]
    {
        let ended = spile(&here, slip);
        assert_eq!((ended.status, ended.data.as_str()), (2, ""), "{slip:?}");
    }
}

#[test]
fn colour_is_for_terminals_that_want_it() {
    let run = |name: &str, value: &str| {
        let mut command = Command::cargo_bin("spile").unwrap();
        let output =
            command.arg("sources").env_remove("NO_COLOR").env(name, value).output().unwrap();
        String::from_utf8(output.stdout).unwrap()
    };
    assert!(!run("NO_COLOR", "1").contains('\u{1b}'));
    assert!(!run("TERM", "xterm-256color").contains('\u{1b}'), "not a terminal");
    let coloured = run("CLICOLOR_FORCE", "1");
    assert!(coloured.contains('\u{1b}'));
    assert_eq!(anstream::adapter::strip_str(&coloured).to_string(), run("NO_COLOR", "1"));
}

#[test]
fn a_reader_that_goes_away_is_no_fault() {
    let temp = folder();
    for args in [&["sources"][..], &["schema"], &["demo"], &["completions", "zsh"], &["--help"]] {
        let mut child = Process::new(assert_cmd::cargo::cargo_bin("spile"))
            .current_dir(temp.path())
            .args(args)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        drop(child.stdout.take());
        let output = child.wait_with_output().unwrap();
        let talk = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(0), "{args:?}: {talk}");
        assert!(!talk.contains("panicked"), "{talk}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn what_cannot_be_written_ends_with_2() {
    let full = fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
    let mut program = Process::new(assert_cmd::cargo::cargo_bin("spile"));
    let output = program.arg("sources").stdout(full).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(output.stderr, b"spile: the answer could not be written\n");
}

#[cfg(unix)]
#[test]
fn names_that_are_no_text_end_with_2() {
    use std::ffi::OsStr;
    use std::os::unix::ffi::OsStrExt;
    let temp = build(&[]);
    let odd = OsStr::from_bytes(b"\xff\xfe");
    let heron = OsStr::new("heron");
    let cases: [&[&OsStr]; 4] = [
        &[OsStr::new("check"), odd],
        &[OsStr::new("check"), heron, OsStr::new("--job"), odd],
        &[OsStr::new("why"), heron, odd],
        &[odd],
    ];
    for args in cases {
        let mut command = Command::cargo_bin("spile").unwrap();
        let output = command.current_dir(temp.path()).args(args).output().unwrap();
        assert_eq!(output.status.code(), Some(2), "{args:?}");
        fits(&String::from_utf8(output.stderr).unwrap());
    }
    let mut command = Command::cargo_bin("spile").unwrap();
    let made = command.current_dir(temp.path()).args(&NEW[2..]).arg("new").output().unwrap();
    assert_eq!(made.status.code(), Some(2));
}

#[test]
fn marks_prints_a_table_and_writes_a_drawing_once() {
    let temp = folder();
    spile(temp.path(), &["demo"]);
    let job = ["marks", "spile-demo/heron", "--job", "galley-fridge"];
    let ended = spile(temp.path(), &job);
    assert_eq!(ended.status, 0, "{}", ended.talk);
    fits(&ended.data);
    // The opening of the demo's papers, 482 +2/−1 by 787 +2/−1, and the panel's thickness.
    for part in ["481 to 484", "786 to 789", "560 × 1140 × 12 mm", "FRONT", "Never drill blind"] {
        assert!(ended.data.contains(part), "{part} is missing in\n{}", ended.data);
    }
    let with_svg: Vec<&str> = job.into_iter().chain(["--svg", "upright.svg"]).collect();
    assert_eq!(spile(temp.path(), &with_svg).status, 0);
    let drawing = fs::read_to_string(temp.path().join("upright.svg")).unwrap();
    assert!(drawing.starts_with("<svg") && drawing.contains("mm\""), "no size in millimetres");
    fs::write(temp.path().join("upright.svg"), "mine").unwrap();
    let again = spile(temp.path(), &with_svg);
    assert_eq!(again.status, 2);
    assert_eq!(fs::read_to_string(temp.path().join("upright.svg")).unwrap(), "mine");
}

#[test]
fn marks_says_what_is_lacking() {
    let temp = folder();
    spile(temp.path(), &["demo"]);
    let heron = "spile-demo/heron";
    for (args, says) in [
        (vec!["marks", heron], "has a cut-out to mark"),
        (vec!["marks", heron, "--item", "bench"], "which panel"),
        (vec!["marks", heron, "--item", "\u{202e}nothing"], "no such item"),
        (vec!["marks", heron, "--job", "nothing"], "no job"),
        (vec!["marks", "nowhere"], "no folder"),
        (
            vec!["marks", heron, "--job", "galley-fridge", "--svg", "no/such/folder.svg"],
            "cannot be written",
        ),
    ] {
        let ended = spile(temp.path(), &args);
        assert_eq!(ended.status, 2, "{args:?}");
        assert!(ended.data.is_empty(), "{args:?}");
        let talk = ended.talk.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(talk.contains(says), "{args:?}: {talk}");
    }
}

/// Every broken build of the corpus beside the reader of builds.
#[test]
fn a_build_that_cannot_be_read_ends_with_2_and_prints_nothing() {
    let corpus = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../ground/build/tests/broken");
    let mut tried = 0;
    for entry in fs::read_dir(&corpus).unwrap() {
        let path = entry.unwrap().path();
        if !path.join("build.toml").is_file() {
            continue;
        }
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        let ended = spile(&corpus, &["check", &name]);
        assert_eq!(ended.status, 2, "{name}: {}", ended.talk);
        assert!(ended.data.is_empty(), "{name}: {}", ended.data);
        assert!(ended.talk.contains("problem"), "{name}: {}", ended.talk);
        tried += 1;
    }
    assert!(tried >= 60, "{tried}");
}
