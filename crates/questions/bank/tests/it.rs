//! The question bank, against station years, against hand counts, and against itself.

use proptest::prelude::*;
use spile_answer::{Answer, Finding};
use spile_build::{Build, Folder};

#[track_caller]
fn build(text: &str) -> Build {
    match Folder::from_texts([("build.toml", text)]) {
        Ok(folder) => folder.build().clone(),
        Err(problems) => panic!("{:?}\n{text}", problems.list),
    }
}

#[track_caller]
fn ask(text: &str) -> Answer {
    spile_bank::answer(&build(text))
}

#[track_caller]
fn finding<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    answer.findings.iter().find(|finding| finding.id == id).unwrap_or_else(|| {
        let ids: Vec<&str> = answer.findings.iter().map(|finding| finding.id.as_str()).collect();
        panic!("no {id} among {ids:?}")
    })
}

#[track_caller]
fn likely(answer: &Answer, id: &str) -> f64 {
    finding(answer, id).figure.expect("a figure").likely
}

fn words(finding: &Finding) -> String {
    let reason = finding.verdict.reason().map_or("", |reason| reason.word());
    format!("{} {reason}", finding.verdict.word()).trim().to_owned()
}

/// A load of known watts, run 2 h a day by its kind.
fn load(watts: f64) -> String {
    format!(
        "[parts.thing]\nkind = \"load\"\npower = {{ running = \"{watts} W\" }}\n\
         [items.thing]\npart = \"thing\"\n"
    )
}

fn bank(kind: &str, ah: f64) -> String {
    format!("[bank]\nkind = \"{kind}\"\ncapacity = \"{ah} Ah @ 20 h\"\n")
}

fn trip(latitude: f64, longitude: f64, months: &str, more: &str) -> String {
    format!(
        "[trips.away]\nlatitude = \"{latitude}°\"\nlongitude = \"{longitude}°\"\n\
         months = [{months}]\n{more}\n"
    )
}

fn solar(watts: f64) -> String {
    format!("[sources.roof]\nkind = \"solar\"\npower = \"{watts} W\"\n")
}

/// Amp-hours a day that a source offers in the only month, from the working of `sources`.
fn offered(answer: &Answer, giver: &str) -> f64 {
    let numbers = &finding(answer, "sources").working[0].numbers;
    let after = numbers.split(&format!("{giver} ")).nth(1).unwrap_or_else(|| panic!("{numbers}"));
    after.split(',').next().unwrap().trim().parse().unwrap()
}

/// By hand: 120 W for 2 h at 12 V are 20 Ah; half of 100 Ah carries 2.5 days of them. Used
/// steadily, that is below the 20 h current, so Peukert takes nothing.
#[test]
fn a_day_and_the_days_without_sun_by_hand() {
    let answer = ask(&format!("{}{}", bank("AGM", 100.0), load(120.0)));
    assert!((likely(&answer, "use") - 20.0).abs() < 1e-9);
    assert!((likely(&answer, "autonomy") - 2.5).abs() < 1e-9);
    let days = finding(&answer, "autonomy").figure.unwrap();
    // 6 h a day are 60 Ah, a depth of 40 %.
    assert!((days.unfavourable - 40.0 / 60.0).abs() < 1e-9, "{}", days.unfavourable);
    assert_eq!(words(finding(&answer, "autonomy")), "care unsure");
}

#[test]
fn too_small_a_bank_is_against_practice_and_mended_by_hand() {
    let answer = ask(&format!("{}{}", bank("AGM", 60.0), load(120.0)));
    let days = finding(&answer, "autonomy");
    assert_eq!(words(days), "care practice");
    // Half of 60 Ah is 1.5 days; half a day more of 20 Ah takes 10 Ah, and 20 Ah of bank.
    assert_eq!(days.mend.as_deref(), Some("20 Ah more, used as deep, for 2 days."));
}

/// A year away without any source: a full bank of 100 Ah gives 80 Ah down to 20 %, four days of
/// 20 Ah; the load runs 8 to 22 h, and after that every hour of it is off.
#[test]
fn without_a_source_the_rest_of_the_month_is_dark() {
    let away = trip(38.72, -9.14, "\"may\"", "");
    let answer = ask(&format!("{}{}{away}", bank("AGM", 100.0), load(120.0)));
    let off = likely(&answer, "without-power");
    assert!((off - 27.0 * 14.0).abs() < 1e-6, "{off}");
    assert_eq!(words(finding(&answer, "without-power")), "care wish");
    assert!((likely(&answer, "lowest") - 20.0).abs() < 1e-9);
    assert_eq!(words(finding(&answer, "lowest")), "care practice");
}

/// Sun on level ground of typical-year files (IWEC 061800 Copenhagen, TMY2 12839 Miami, IWEC
/// 062400 Amsterdam) [kWh/m² a day], turned to amp-hours by hand: 1 kW, 10 % and 3 % lost, 96 %
/// through the controller, 13.6 V, cells colder or warmer than 25 °C left out. A month of the
/// climate table is good to 25 %, and warm cells take some 10 % in Miami.
#[test]
fn the_sun_of_a_month_is_that_of_a_station() {
    let cases = [
        ("Copenhagen in May", 55.68, 12.57, "may", 4.93),
        ("Amsterdam in March", 52.37, 4.9, "march", 2.48),
        ("Amsterdam in July", 52.37, 4.9, "july", 4.93),
        ("Miami in April", 25.76, -80.19, "april", 6.16),
        ("Miami in November", 25.76, -80.19, "november", 3.57),
    ];
    for (what, north, east, month, kwh) in cases {
        let away = trip(north, east, &format!("\"{month}\""), "");
        let answer = ask(&format!("{}{}{}{away}", bank("AGM", 100.0), load(12.0), solar(1000.0)));
        let expected = kwh * 1000.0 * 0.90 * 0.97 * 0.96 / 13.6;
        let got = offered(&answer, "sun");
        assert!((got / expected - 1.0).abs() < 0.27, "{what}: {got} Ah, {expected:.0} by hand");
    }
}

/// By hand: stays of three days, 2 h of driving on every third, 30 A: 20 Ah a day; hook-up on one
/// day in five, 10 A for 24 h: 48 Ah a day.
#[test]
fn drives_and_hook_up_by_hand() {
    let away =
        trip(38.72, -9.14, "\"june\"", "stays = \"3 days\"\ndrives = \"2 h\"\nhook_up = \"20 %\"");
    let answer = ask(&format!(
        "{}{}{away}[sources.engine]\nkind = \"alternator\"\ncurrent = \"30 A\"\n\
         [sources.mains]\nkind = \"hook-up\"\ncurrent = \"10 A\"\n",
        bank("AGM", 200.0),
        load(60.0)
    ));
    assert!((offered(&answer, "engine") - 20.0).abs() < 0.51);
    assert!((offered(&answer, "hook-up") - 48.0).abs() < 0.51);
    assert_eq!(words(finding(&answer, "sources")), "good");
}

#[test]
fn what_mends_it_does() {
    let with = |watts: f64| {
        let away =
            trip(52.37, 4.9, "\"november\", \"december\"", "stays = \"4 days\"\ndrives = \"1 h\"");
        ask(&format!(
            "{}{}{}{away}[sources.engine]\nkind = \"alternator\"\ncurrent = \"15 A\"\n",
            bank("AGM", 100.0),
            load(90.0),
            solar(watts)
        ))
    };
    let before = with(100.0);
    let off = finding(&before, "without-power");
    assert_eq!(words(off), "care wish");
    let mend = off.mend.as_ref().unwrap();
    let more: f64 = mend.split(" W of panel more").next().unwrap().parse().unwrap();
    assert!(more >= 50.0, "{mend}");
    assert!(likely(&with(100.0 + more), "without-power") <= 24.0);
    assert!(likely(&with(100.0 + more - 60.0), "without-power") > 24.0);
}

#[test]
fn charge_is_held_against_papers_and_practice() {
    let engine = "[sources.engine]\nkind = \"alternator\"\ncurrent = \"40 A\"\n";
    // 30 A for each 100 Ah of AGM is usual.
    let answer = ask(&format!("{}{engine}", bank("AGM", 100.0)));
    assert_eq!(words(finding(&answer, "charge.current")), "care practice");
    assert_eq!(likely(&answer, "charge.current"), 40.0);
    let answer = ask(&format!("{}{engine}", bank("AGM", 200.0)));
    assert_eq!(words(finding(&answer, "charge.current")), "good");
    let limited = format!("{}limit = \"30 A\"\n{engine}", bank("LiFePO4", 100.0));
    assert_eq!(words(finding(&ask(&limited), "charge.current")), "stop");
}

#[test]
fn lithium_in_the_north_is_not_charged_in_the_cold() {
    let with = |kind: &str, north: f64, east: f64, month: &str| {
        let away = trip(north, east, month, "");
        ask(&format!("{}{}{}{away}", bank(kind, 100.0), load(24.0), solar(200.0)))
    };
    // Helsinki has −5 °C in January (normals 1981 to 2010 −3.9 °C, from memory).
    let cold = with("LiFePO4", 60.17, 24.94, "\"january\", \"february\"");
    assert_eq!(words(finding(&cold, "charge.cold")), "care unsure");
    let warm = with("LiFePO4", 38.72, -9.14, "\"july\"");
    assert_eq!(words(finding(&warm, "charge.cold")), "good");
    let lead = with("AGM", 60.17, 24.94, "\"january\"");
    assert!(lead.findings.iter().all(|finding| finding.id != "charge.cold"));
}

#[test]
fn each_open_says_how() {
    let away = "[trips.away]\nmonths = [\"may\"]\n";
    let cases = [
        (load(12.0), "bank"),
        (format!("bank = {{ kind = \"AGM\" }}\n{}", load(12.0)), "capacity"),
        (format!("{}{}", bank("AGM", 100.0), load(12.0)), "without-power"),
        (format!("{}{}{away}", bank("AGM", 100.0), load(12.0)), "away.where"),
        (bank("AGM", 100.0), "use"),
        (
            format!("{}{}[sources.roof]\nkind = \"solar\"\n", bank("AGM", 100.0), load(12.0)),
            "roof.gives",
        ),
        (
            format!(
                "{}[parts.box]\nkind = \"fridge\"\ncooling = \"absorption\"\n[items.box]\npart = \"box\"\n",
                bank("AGM", 100.0)
            ),
            "box.power",
        ),
        (
            format!(
                "{}[parts.lamp]\nkind = \"light\"\n[items.lamp]\npart = \"lamp\"\n",
                bank("AGM", 9.0)
            ),
            "lamp.power",
        ),
    ];
    for (text, id) in cases {
        let answer = ask(&text);
        let open = finding(&answer, id);
        assert_eq!(words(open), "open", "{id}");
        assert!(!open.asks.is_empty() && open.asks[0].how.len() > 20, "{id}");
    }
}

/// Its papers: 430 Wh a day at 25 °C, door shut. Used, with what people put in and let in, a
/// fridge takes more, and not twice as much; and more the warmer it is.
#[test]
fn a_fridge_takes_what_its_papers_say_and_what_people_do() {
    let with = |cabin: f64| {
        let text = format!(
            "states.corner.mild-day.cabin = \"{cabin} °C\"\nwants = {{ inside = \"5 °C\" }}\n\
             [parts.box]\nkind = \"fridge\"\nvolume = \"92 L\"\n\
             size = {{ width = \"475 mm\", height = \"780 mm\", depth = \"495 mm\" }}\n\
             power = {{ running = \"58 W\" }}\n\
             [[parts.box.consumption]]\nambient = \"25 °C\"\ninside = \"5 °C\"\nper_day = \"430 Wh\"\n\
             [items.box]\npart = \"box\"\n"
        );
        likely(&ask(&text), "use")
    };
    let at_25 = with(25.0);
    assert!((430.0 / 12.0..2.0 * 430.0 / 12.0).contains(&at_25), "{at_25}");
    assert!(with(20.0) < at_25 && at_25 < with(32.0));
}

#[test]
fn a_place_far_from_any_city_is_assumed_and_asked_for() {
    let away = trip(68.0, 17.0, "\"march\"", "");
    let answer = ask(&format!("{}{}{}{away}", bank("AGM", 100.0), load(90.0), solar(150.0)));
    assert!(answer.assumed.iter().any(|what| what.contains("no place of the climate table")));
    let off = finding(&answer, "without-power");
    assert!(
        off.asks.iter().any(|ask| ask.input.starts_with("sun of the trips' months")),
        "{:?}",
        off.asks
    );
}

#[test]
fn the_same_build_has_the_same_answer() {
    let away = trip(38.72, -9.14, "\"december\"", "");
    let text = format!("{}{}{}{away}", bank("AGM", 100.0), load(90.0), solar(150.0));
    assert_eq!(ask(&text), ask(&text));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4))]
    #[test]
    fn more_of_panel_or_bank_is_never_more_hours_off(
        watts in 20.0..200.0_f64, more in 0.0..300.0_f64, ah in 30.0..120.0_f64,
    ) {
        let off = |watts: f64, ah: f64| {
            let away = trip(38.72, -9.14, "\"december\"", "");
            likely(&ask(&format!("{}{}{}{away}", bank("AGM", ah), load(120.0), solar(watts))), "without-power")
        };
        let before = off(watts, ah);
        prop_assert!(off(watts + more, ah) <= before + 1e-6);
        prop_assert!(off(watts, ah + more) <= before + 1e-6);
    }
}

/// What the drawing of the year shows is the year of the answer.
#[test]
fn the_days_of_a_picture_are_those_of_the_year() {
    let text = format!(
        "{}{}{}{}",
        bank("AGM", 100.0),
        load(120.0),
        solar(100.0),
        trip(37.0, -8.0, "\"december\", \"january\"", "stays = \"4 days\"\ndrives = \"2 h\"")
    );
    let picture = spile_bank::picture(&build(&text)).expect("a year");
    let off: f64 = picture.days.iter().flatten().map(|day| day.off.in_hours()).sum();
    assert!((off - picture.off[0].in_hours()).abs() < 1e-6 * off.max(1.0));
    assert!((off - likely(&ask(&text), "without-power")).abs() < 1e-6 * off.max(1.0));
    assert_eq!(picture.days.iter().flatten().count(), 62);
    let drives = picture.days.iter().flatten().filter(|day| day.driven.in_hours() > 0.0);
    assert_eq!(drives.count(), 15, "every fourth day of 62");
    for day in picture.days.iter().flatten() {
        assert!(day.worst <= day.median && day.worst >= picture.floor);
    }
    let given: f64 = picture.shares.iter().map(|share| share.in_of_one()).sum();
    assert!((given - 1.0).abs() < 1e-9);
}

/// More panel and more battery never mean more hours without power; where the grid has what there
/// is, it says what the answer says.
#[test]
fn a_frontier_falls_both_ways() {
    let text = format!(
        "{}{}{}{}",
        bank("AGM", 100.0),
        load(120.0),
        solar(200.0),
        trip(37.0, -8.0, "\"december\"", "")
    );
    let frontier = spile_bank::frontier(&build(&text)).expect("a frontier");
    let hours: Vec<Vec<f64>> =
        frontier.off.iter().map(|row| row.iter().map(|off| off.in_hours()).collect()).collect();
    for row in &hours {
        assert!(row.windows(2).all(|pair| pair[1] <= pair[0] + 1e-9), "{row:?}");
    }
    for rows in hours.windows(2) {
        assert!(rows[0].iter().zip(&rows[1]).all(|(less, more)| *more <= less + 1e-9));
    }
    let near = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let column = frontier.panels.iter().position(|w| near(w.in_w(), 200.0)).expect("200 W");
    let row = frontier.banks.iter().position(|c| near(c.in_ah(), 100.0)).expect("100 Ah");
    assert!(near(hours[row][column], likely(&ask(&text), "without-power")));
}
