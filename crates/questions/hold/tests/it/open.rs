//! What waits for a number says how to get it.

use crate::{ask, find};

#[test]
fn every_open_finding_says_how() {
    let weighed = "[parts.a]\nkind = \"furniture\"\nmass = \"31 kg\"\n";
    let sized =
        format!("{weighed}size = {{ width = \"1 m\", height = \"1 m\", depth = \"0.5 m\" }}\n");
    let builds = [
        "about = \"empty\"\n".to_owned(),
        format!("{weighed}[items.a]\n"),
        "[parts.a]\nkind = \"drawer fridge\"\nmass = \"31 kg\"\n[items.a]\n".to_owned(),
        "[parts.a]\nkind = \"furniture\"\n[items.a]\nheld = { by = \"bolt\" }\n".to_owned(),
        format!("{weighed}[items.a]\nheld = {{ by = \"bolt\" }}\n"),
        format!("{sized}[items.a]\nheld = {{ by = \"bolt\" }}\n"),
        format!("{sized}[items.a]\nheld = {{ by = \"bolt\", size = \"M6\" }}\n"),
        format!("{sized}[items.a]\nheld = {{ by = \"bolt\", size = \"M6\", count = 4 }}\n"),
        format!("{sized}[items.a]\nheld = {{ by = \"strap\", count = 2 }}\n"),
        "[bank]\ncapacity = \"95 Ah\"\n".to_owned(),
    ];
    for text in builds {
        let answer = ask(&text);
        assert_eq!(answer.verdict().word(), "open", "{text}");
        for finding in &answer.findings {
            assert!(finding.asks.iter().any(|ask| ask.how.len() > 15), "{text}: {}", finding.id);
        }
    }
}

#[test]
fn light_things_are_left_alone() {
    let answer = ask("[parts.a]\nkind = \"furniture\"\nmass = \"2 kg\"\n[items.a]\n");
    assert_eq!(answer.findings.len(), 1);
    assert_eq!(find(&answer, "nothing").verdict.word(), "open");
}

#[test]
fn slips_in_how_a_thing_is_held_are_told_where_they_stand() {
    let slips = [
        ("by = \"bolt\", size = \"big\"", "size of a screw"),
        ("by = \"bolt\", size = \"M6\", class = \"9.9\"", "class `9.9`"),
        ("count = 4", "lacks `by`"),
        ("by = \"nails\"", "nails"),
        ("by = \"bolt\", latch = { by = \"bolt\" }", "latch"),
        ("by = \"bolt\", spacing = { width = \"400 mm\" }", "spacing"),
    ];
    for (held, told) in slips {
        let text = format!("[parts.a]\nkind = \"furniture\"\n[items.a]\nheld = {{ {held} }}\n");
        let problems =
            spile_build::Folder::from_texts([("build.toml", text.as_str())]).unwrap_err();
        assert_eq!(problems.list.len(), 1, "{held}");
        let problem = &problems.list[0];
        assert!(format!("{problem:?}").contains(told), "{held}: {problem:?}");
        let place = problems.files.line_column(problem.at.as_ref().unwrap());
        assert_eq!(place.line, 4, "{held}");
    }
}
