//! Every thing of a build in a form: what its owner wrote, good values, nonsense, and what was
//! written meanwhile.

use std::fs;

use axum::http::StatusCode;
use spile_build::Folder;

use crate::ask::{Open, build, heron};

impl Open {
    /// What can be changed, by the addresses that lead there from the page that lists it.
    async fn addresses(&self, verb: &str) -> Vec<String> {
        let page = self.page("/things?job=").await.text;
        let links = page.split("href=\"").skip(1).filter_map(|rest| rest.split('"').next());
        let links = links.filter(|link| link.starts_with(&format!("/{verb}/")));
        links.map(|link| link.replace("&amp;", "&")).collect()
    }
}

/// The value that a field of a page shows.
fn value(page: &str, name: &str) -> String {
    let input = page.split(&format!("name=\"{name}\"")).nth(1).unwrap();
    let tag = input.split('>').next().unwrap();
    let value = tag.split("value=\"").nth(1).unwrap_or_default();
    value.split('"').next().unwrap_or_default().to_owned()
}

#[tokio::test]
async fn every_thing_of_the_demo_has_a_form_in_its_owners_spelling() {
    let open = heron();
    let things = open.addresses("thing").await;
    for wanted in [
        "items.bank",
        "runs.fridge",
        "bays.garage",
        "block.ways.5",
        "trips.winter",
        "states.load.full",
        "vehicle.doors.rear",
        "weighings.spring",
        "parts.pump",
        "sources.roof",
        "bank",
        "wants",
        "block",
        "vehicle",
        "body",
    ] {
        assert!(things.contains(&format!("/thing/{wanted}?job=")), "{wanted}: {things:?}");
    }
    for address in &things {
        let page = open.page(address).await;
        assert_eq!(page.status, StatusCode::OK, "{address}");
        assert!(page.text.contains("name=\"token\""), "{address}");
        assert!(page.text.contains("<form class=\"start\" method=\"post\""), "{address}");
    }
    let garage = open.page("/thing/bays.galley-rear?job=").await.text;
    assert_eq!(value(&garage, "v.size.width"), "520 mm ± 1 mm");
    assert_eq!(value(&garage, "v.in_front"), "584 mm");
    let run = open.page("/thing/runs.fridge?job=").await.text;
    assert_eq!(value(&run, "v.section"), "1.5 mm2");
    assert!(run.contains("build.toml:"), "{run}");
    assert_eq!(open.page("/thing/nothing.here").await.status, StatusCode::NOT_FOUND);
    assert_eq!(open.page("/add/nothing").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_form_sent_as_it_came_changes_nothing() {
    let open = heron();
    let whole = open.file("build.toml");
    let page = open.page("/thing/runs.fridge?job=").await.text;
    let fields = "v.to=lidded-box&v.section=1.5+mm2&v.length=7.2+m&v.ambient=about+35+%C2%B0C+%C2%B1+10+%C2%B0C";
    assert!(page.contains("about 35 °C ± 10 °C"));
    let answer = open.form("/thing/runs.fridge", fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(open.file("build.toml"), whole);
}

#[tokio::test]
async fn what_people_write_is_taken_and_told_with_what_it_did() {
    let open = heron();
    let whole = open.file("build.toml");
    let body = "v.section=6+AWG&v.length=17+ft&back=%2Fthing%2Fruns.fridge%3Fjob%3D";
    let answer = open.form("/thing/runs.fridge", body).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let text = open.file("build.toml");
    assert!(text.contains("section = \"6 AWG\"\nlength = \"17 ft\"\n"), "{text}");
    Folder::open(&open.folder).unwrap();
    let page = open.page("/thing/runs.fridge?job=").await.text;
    assert_eq!(value(&page, "v.section"), "6 AWG");
    let did = page.split("class=\"did\"").nth(1).unwrap();
    assert!(did.contains("wire") && did.contains("action=\"/undo\""), "{did}");
    open.form("/undo", "").await;
    assert_eq!(open.file("build.toml"), whole);
    assert!(open.page("/things?job=").await.text.contains("action=\"/redo\""));
}

#[tokio::test]
async fn nonsense_is_told_at_its_field_in_the_words_of_the_files_and_kept() {
    let open = heron();
    let whole = open.file("build.toml");
    let answer = open.form("/thing/runs.fridge", "v.section=6+mm&v.length=7.5+m").await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(value(&answer.text, "v.section"), "6 mm");
    assert_eq!(value(&answer.text, "v.length"), "7.5 m");
    let why = answer.text.split("id=\"v.section-wrong\">").nth(1).unwrap();
    let why = why.split("</p>").next().unwrap();
    // The words are those that the file itself would be told with.
    let broken = whole.replacen(
        "section = \"1.5 mm2\"\nlength = \"7.2 m\"",
        "section = \"6 mm\"\nlength = \"7.5 m\"",
        1,
    );
    let problems = Folder::from_texts([("build.toml", broken.as_str())]).unwrap_err();
    let told = problems.list.iter().find(|one| one.label.contains("cable")).unwrap();
    assert!(why.contains(&maud::html! { (told.says) }.into_string()), "{why}");
    assert!(why.contains(&maud::html! { (told.hint) }.into_string()), "{why}");
    assert!(!answer.text.contains("id=\"v.length-wrong\""));
    assert_eq!(open.file("build.toml"), whole);
}

#[tokio::test]
async fn a_thing_is_added_named_anew_moved_and_taken_out() {
    let open = heron();
    let whole = open.file("build.toml");
    let part = "name=kettle&v.kind=load&v.mass=1.2+kg&v.size.width=200+mm&v.size.height=220+mm\
                &v.size.depth=200+mm";
    let answer = open.form("/add/parts", part).await;
    assert_eq!(answer.headers["location"], "/thing/parts.kettle?job=", "{}", answer.text);
    assert!(open.file("parts/kettle.toml").contains("mass = \"1.2 kg\""));
    let item = "name=kettle&v.part=kettle&v.place.in=galley-front&v.place.from_rear=300+mm\
                &v.place.from_left=0+mm&v.place.above=500+mm";
    assert_eq!(open.form("/add/items", item).await.status, StatusCode::SEE_OTHER);
    assert!(Folder::open(&open.folder).unwrap().build().items.contains_key("kettle"));
    // A name that is taken, and none at all, are told beside the fields.
    for wrong in [item, "name=&v.part=kettle", "name=a.b&v.part=kettle"] {
        let answer = open.form("/add/items", wrong).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{wrong}");
        assert!(answer.text.contains("value=\"kettle\""), "{wrong}");
    }
    let moved = open.form("/thing/items.kettle", "v.place.from_rear=12+3%2F16+in").await;
    assert_eq!(moved.status, StatusCode::SEE_OTHER, "{}", moved.text);
    assert!(open.file("build.toml").contains("12 3/16 in"));
    let named = open.form("/change", "do=rename&what=items.kettle&value=pot").await;
    assert_eq!(named.status, StatusCode::SEE_OTHER, "{}", named.text);
    assert!(Folder::open(&open.folder).unwrap().build().items.contains_key("pot"));
    let out = open.form("/change", "do=remove&what=items.pot&value=").await;
    assert_eq!(out.status, StatusCode::SEE_OTHER, "{}", out.text);
    for _ in 0..5 {
        assert_eq!(open.form("/undo", "").await.status, StatusCode::SEE_OTHER);
    }
    assert_eq!(open.file("build.toml"), whole);
    assert!(!open.folder.join("parts/kettle.toml").exists());
}

#[tokio::test]
async fn within_a_job_only_the_job_is_written() {
    let open = heron();
    let whole = open.file("build.toml");
    let body = "job=galley-fridge&option=upright&v.section=4+mm2";
    let answer = open.form("/thing/runs.fridge", body).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(open.file("build.toml"), whole);
    let job = open.file("jobs/galley-fridge.toml");
    assert!(job.contains("what = \"runs.fridge.section\""), "{job}");
    let path = "/thing/runs.fridge?job=galley-fridge&option=upright";
    assert_eq!(value(&open.page(path).await.text, "v.section"), "4 mm2");
    let other = "/thing/runs.fridge?job=galley-fridge&option=two-boxes";
    assert_eq!(value(&open.page(other).await.text, "v.section"), "1.5 mm2");
    let back = "do=take-back&what=runs.fridge.section&value=&job=galley-fridge&option=upright";
    assert_eq!(open.form("/change", back).await.status, StatusCode::SEE_OTHER);
    assert_eq!(value(&open.page(path).await.text, "v.section"), "1.5 mm2");
}

#[tokio::test]
async fn what_an_editor_wrote_meanwhile_stays_when_the_form_is_sent_on_purpose() {
    let open = heron();
    let since = open.version().await;
    let theirs = open.file("build.toml").replace("length = \"7.2 m\"", "length = \"7.9 m\"");
    fs::write(open.folder.join("build.toml"), &theirs).unwrap();
    let body = format!("v.section=4+mm2&v.length=7.2+m&since={since}");
    let answer = open.form("/thing/runs.fridge", &body).await;
    assert_eq!(answer.status, StatusCode::CONFLICT);
    assert!(answer.text.contains("7.9 m") && answer.text.contains("4 mm2"), "{}", answer.text);
    assert_eq!(open.file("build.toml"), theirs);
    // What is sent on is the one field that was changed.
    assert_eq!(answer.text.matches("name=\"what\"").count(), 1);
    assert_eq!(value(&answer.text, "what"), "runs.fridge.section");
    let since = value(&answer.text, "since");
    let again = format!("do=set&what=runs.fridge.section&value=4+mm2&since={since}");
    assert_eq!(open.form("/change", &again).await.status, StatusCode::SEE_OTHER);
    let text = open.file("build.toml");
    assert!(text.contains("section = \"4 mm2\"\nlength = \"7.9 m\""), "{text}");
}

#[tokio::test]
async fn readings_are_typed_in() {
    let open = heron();
    let body = "name=fridge&v.date=2026-03-14&v.state=running&v.battery=12.6+V&v.block=12.5+V\
                &v.appliance=12.1+V&v.current=4.2+A";
    let answer = open.form("/add/readings", body).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let text = open.file("build.toml");
    assert!(text.contains("battery = \"12.6 V\"") && text.contains("2026-03-14"), "{text}");
    let wrong = open
        .form("/add/readings", &body.replace("12.6+V", "12.6+mm").replace("fridge", "pump"))
        .await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(wrong.text.contains("id=\"v.battery-wrong\""), "{}", wrong.text);
}

#[tokio::test]
async fn a_job_is_begun_given_options_chosen_and_done() {
    let open = heron();
    let whole = open.file("build.toml");
    for (body, status) in [
        ("do=new&name=roof-rack&about=a+rack", StatusCode::SEE_OTHER),
        ("do=new&name=roof-rack&about=again", StatusCode::UNPROCESSABLE_ENTITY),
        ("do=new&name=..%2Frack&about=outside", StatusCode::UNPROCESSABLE_ENTITY),
        ("do=option&job=roof-rack&name=steel&about=of+steel", StatusCode::SEE_OTHER),
        ("do=option&job=roof-rack&name=alu&about=of+aluminium", StatusCode::SEE_OTHER),
        ("do=choose&job=roof-rack&option=alu", StatusCode::SEE_OTHER),
        ("do=burn&job=roof-rack", StatusCode::UNPROCESSABLE_ENTITY),
        ("do=done&job=roof-rack&option=alu&day=tomorrow", StatusCode::UNPROCESSABLE_ENTITY),
        ("do=done&job=roof-rack&option=alu&day=2026-04-01", StatusCode::SEE_OTHER),
    ] {
        let answer = open.form("/job", body).await;
        assert_eq!(answer.status, status, "{body}: {}", answer.text);
    }
    let job = open.file("jobs/roof-rack.toml");
    assert!(job.contains("2026-04-01") && job.contains("choice = \"alu\""), "{job}");
    assert!(!open.folder.join("../rack.toml").exists());
    for _ in 0..5 {
        open.form("/undo", "").await;
    }
    assert!(!open.folder.join("jobs/roof-rack.toml").exists());
    assert_eq!(open.file("build.toml"), whole);
}

#[tokio::test]
async fn an_empty_build_can_be_filled_by_forms_alone() {
    let open = build(Some(""));
    for (path, body) in [
        ("/thing/build", "v.about=a+trailer&v.system=12+V"),
        ("/thing/vehicle", "v.kind=trailer&v.wheelbase=3+m"),
        ("/add/bays", "name=nook&v.size.width=500+mm&v.size.height=800+mm&v.size.depth=500+mm"),
        ("/add/trips", "name=spring&v.latitude=45%C2%B0&v.months=april%2C+may"),
        ("/thing/wants", "v.people=2&v.away=4+days"),
    ] {
        let answer = open.form(path, body).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{path}: {}", answer.text);
    }
    let folder = Folder::open(&open.folder).unwrap();
    assert!(folder.build().bays.contains_key("nook"));
    assert_eq!(folder.build().wants.people, 2);
}

#[tokio::test]
async fn what_was_measured_is_put_in_beside_what_asks_for_it() {
    let open = heron();
    let next = open.page("/next?job=galley-fridge&option=upright").await.text;
    for (input, thing, field, text, stands) in [
        (
            "temperature inside",
            "wants",
            "v.inside",
            "4+%C2%B0C+%C2%B1+1+%C2%B0C",
            "inside = \"4 °C ± 1 °C\"",
        ),
        (
            "cold food, a person and day",
            "wants",
            "v.litres",
            "3+L+%C2%B1+0.3+L",
            "litres = \"3 L ± 0.3 L\"",
        ),
        (
            "cabin on a hot day",
            "states.corner.hot-day",
            "v.cabin",
            "104+%C2%B0F",
            "cabin = \"104 °F\"",
        ),
        (
            "cabin on an ordinary day",
            "states.corner.mild-day",
            "v.cabin",
            "22+%C2%B0C",
            "cabin = \"22 °C\"",
        ),
        (
            "heat from galley-rear to the cabin, a kelvin",
            "bays.galley-rear",
            "v.conductance",
            "3+W%2FK",
            "conductance = \"3 W/K\"",
        ),
    ] {
        let asked = next.split(&format!(">{input}</label>")).nth(1).unwrap();
        let form = asked.split("<form").nth(1).unwrap().split("</form>").next().unwrap();
        assert!(form.contains(&format!("action=\"/thing/{thing}\"")), "{input}: {form}");
        assert!(form.contains(&format!("name=\"{field}\"")), "{input}: {form}");
        let wrong = open.form(&format!("/thing/{thing}"), &format!("{field}=3+kg")).await;
        assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY, "{input}");
        assert!(wrong.text.contains(&format!("id=\"{field}-wrong\"")), "{input}");
        let answer = open.form(&format!("/thing/{thing}"), &format!("{field}={text}")).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{input}: {}", answer.text);
        assert!(open.file("build.toml").contains(stands), "{input}");
    }
    let assumed = open.page("/assumed?job=galley-fridge&option=upright").await.text;
    assert!(!assumed.contains(">temperature inside<"), "{assumed}");
}
