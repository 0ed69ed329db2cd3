//! What a build's files cannot say of axles: told with its place, and nothing is computed.

use spile_build::Folder;

/// The one problem of a text: its line, what it says and its hint.
#[track_caller]
fn problem(text: &str) -> (usize, String, String) {
    let problems = Folder::from_texts([("build.toml", text)]).expect_err("a problem");
    let [problem] = problems.list.as_slice() else { panic!("{:?}", problems.list) };
    let at = problem.at.as_ref().expect("a place");
    (problems.files.line_column(at).line, problem.says.clone(), problem.hint.clone())
}

#[test]
fn slips_of_the_pen_are_told_in_their_place() {
    let cases = [
        ("[vehicle.tyres]\nrear = { load_index = 225 }", 2, "225", "121"),
        ("[vehicle.tyres.rear]\ncount = 3", 2, "3 tyres", "twins"),
        ("[vehicle]\n\nlimits = { rear = \"21000 kg\" }", 3, "21000 kg", "check the number"),
        ("[vehicle]\nunladen = { front = \"1200 kg\" }", 2, "bare vehicle", "rear"),
        ("[vehicle]\ntag = { share = \"140 %\" }", 2, "140 %", "check the number"),
        ("[vehicle]\nlimits = { reer = \"2100 kg\" }", 2, "reer", "rear"),
        (
            "[states.at]\nwater = { from_left = \"1 m\", from_right = \"1 m\" }",
            2,
            "both sides",
            "from_left or from_right",
        ),
        ("[weighings.a]\nfront_left = \"700 mm\"", 2, "a mass is wanted", "kg"),
    ];
    for (text, line, says, hint) in cases {
        let told = problem(text);
        assert_eq!(told.0, line, "{text}: {told:?}");
        assert!(told.1.contains(says) || told.2.contains(says), "{text}: {told:?}");
        assert!(told.1.contains(hint) || told.2.contains(hint), "{text}: {told:?}");
    }
}
