//! The units at the end of names, held against NOMENCLATURE.md.
//!
//! The rule is about endings alone. A name of several words that ends in something that reads as a
//! unit (`drop_v`, `section_mm2`, `FLOW_M3_PER_S`) must end in one that the page lists; models
//! keep to the first of the page's two lists. A name that says a conversion (`in_mm`) or
//! asks a question (`is_inch`) may end as it likes, and so may a single word.

use std::collections::BTreeSet;

use crate::tokens::Token;

/// What reads as a unit at the end of a name, whether we use it or not. Left out are endings that
/// are words first: `in` (the way in), `min`, `bar`, `second`, `day`, and mathematics' `t`, `f`, `x`.
/// `sqrt` stands inside a unit: `a_sqrt_s`.
const UNITS: &str = "\
    m mm cm dm km um nm ft feet foot inch inches yd mils \
    m2 mm2 cm2 km2 m3 mm3 cm3 dm3 l ml dl litre litres liter liters gal gallon gallons \
    in2 ft2 in3 ft3 kcmil cmil \
    g kg mg lb lbs oz tonne tonnes n kn lbf kgf \
    s ms sec secs seconds mins minutes h hr hrs hours \
    v mv kv uv a ma ka ah mah a2 a2s w mw kw wh kwh j kj mj btu ohm ohms mohm uohm kohm va hz khz \
    k degc degf celsius fahrenheit kelvin c pa kpa mpa gpa mbar psi \
    rad deg degree degrees percent pct sqrt";

/// What NOMENCLATURE.md lists.
#[derive(Debug, Clone, Default)]
pub struct Nomenclature {
    /// Names of quantities as they stand in code, each with its unit.
    pub names: Vec<(String, String)>,
    /// Endings that any crate may use, each with its unit.
    pub everywhere: Vec<(String, String)>,
    /// Endings for reading and showing only.
    pub edge: Vec<(String, String)>,
}

/// Reads the page: the three tables below the headings `Quantities`, `Endings everywhere` and
/// `Endings at the edge`.
pub fn read(page: &str) -> Nomenclature {
    Nomenclature {
        names: rows(page, "## Quantities")
            .filter_map(|row| Some((row.first()?.clone(), row.get(3)?.clone())))
            .collect(),
        everywhere: pairs(page, "## Endings everywhere"),
        edge: pairs(page, "## Endings at the edge"),
    }
}

/// What is wrong with the page itself: an empty or doubled list, a quantity whose name does not
/// end in its unit.
pub fn unsound(page: &Nomenclature) -> Vec<String> {
    let mut problems = Vec::new();
    for (what, list) in
        [("quantities", &page.names), ("everywhere", &page.everywhere), ("edge", &page.edge)]
    {
        if list.is_empty() {
            problems.push(format!("NOMENCLATURE.md: nothing under {what}"));
        }
    }
    let mut seen = BTreeSet::new();
    for (name, _) in page.everywhere.iter().chain(&page.edge).chain(&page.names) {
        if !seen.insert(name) {
            problems.push(format!("NOMENCLATURE.md: `{name}` twice"));
        }
    }
    for (name, unit) in &page.names {
        let ends = endings(name);
        let says = |listed: &(String, String)| ends.contains(&listed.0) && listed.1 == *unit;
        let plain = ends.is_empty() && unit == "1";
        if !plain && !page.everywhere.iter().any(says) {
            problems.push(format!("NOMENCLATURE.md: `{name}` does not end in its unit, {unit}"));
        }
    }
    problems
}

/// Every name in `row` that ends in a unit which the page does not list for this floor; each name
/// once.
pub fn strangers(path: &str, floor: &str, row: &[Token], page: &Nomenclature) -> Vec<String> {
    let mut seen = BTreeSet::new();
    let mut problems = Vec::new();
    for token in row.iter().filter(|token| token.is_name) {
        let spoken = token.text.starts_with("in_") || token.text.starts_with("is_");
        if spoken || !seen.insert(&token.text) {
            continue;
        }
        let ends = endings(&token.text);
        let Some(end) = ends.first() else { continue };
        let listed = |list: &[(String, String)]| list.iter().any(|(one, _)| ends.contains(one));
        if listed(&page.everywhere) || (floor != "models" && listed(&page.edge)) {
            continue;
        }
        problems.push(format!(
            "{path}:{}: `{}` ends in `{end}`, which NOMENCLATURE.md does not list for {floor}",
            token.line, token.text
        ));
    }
    problems
}

/// What can be read as the unit at the end of a name of several words, the longest first: its last
/// words, as far as they read as units or stand around `per`. In `end_a_v` the letter `a` is a
/// label as likely as a unit, so both readings are given.
fn endings(name: &str) -> Vec<String> {
    let name = name.to_lowercase();
    let words: Vec<&str> = name.split('_').collect();
    if words.len() < 2 {
        return Vec::new();
    }
    let is_unit = |word: &str| UNITS.split(' ').any(|unit| unit == word);
    let mut from = words.len();
    while from > 0 {
        let divides = from >= 2 && words[from - 2] == "per";
        if divides && from >= 3 && is_unit(words[from - 3]) {
            from -= 3;
        } else if !divides && is_unit(words[from - 1]) {
            from -= 1;
        } else {
            break;
        }
    }
    let mut found = Vec::new();
    while from < words.len() {
        found.push(words[from..].join("_"));
        if words[from].len() > 1 || words.get(from + 1).is_none_or(|next| next.len() > 1) {
            break;
        }
        from += 1;
    }
    found
}

fn pairs(page: &str, heading: &str) -> Vec<(String, String)> {
    rows(page, heading)
        .filter_map(|row| Some((row.first()?.clone(), row.get(1)?.clone())))
        .collect()
}

/// The cells of the table under a heading, header and rule left out, code marks gone.
fn rows(page: &str, heading: &str) -> impl Iterator<Item = Vec<String>> {
    let below = page.lines().skip_while(move |line| *line != heading).skip(1);
    let section = below.take_while(|line| !line.starts_with("## "));
    section.filter(|line| line.starts_with('|')).skip(2).map(|line| {
        let cells = line.trim_matches('|').split('|');
        cells.map(|cell| cell.trim().replace('`', "")).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tokens::tokens;

    const PAGE: &str = "\
## Quantities
| name | quantity | symbol | unit | sign |
|---|---|---|---|---|
| `drop_v` | voltage drop | ΔU | V | |
| `duty` | share of time | – | 1 | |
## Endings everywhere
| ending | unit |
|---|---|
| `v` | V |
| `ohm_m` | Ω·m |
| `m3_per_s` | m³/s |
## Endings at the edge
| ending | unit |
|---|---|
| `mm` | mm |
";

    fn told(floor: &str, source: &str) -> Vec<String> {
        strangers("a.rs", floor, &tokens(source).unwrap(), &read(PAGE))
    }

    #[test]
    fn endings_are_found() {
        assert_eq!(endings("drop_v"), ["v"]);
        assert_eq!(endings("FLOW_M3_PER_S"), ["m3_per_s"]);
        assert_eq!(endings("resistivity_ohm_m"), ["ohm_m"]);
        assert_eq!(endings("charge_ah_per_day"), ["ah_per_day"]);
        assert_eq!(endings("conductivity_w_per_m_k"), ["w_per_m_k"]);
        assert_eq!(endings("end_a_v"), ["a_v", "v"]);
        assert_eq!(endings("k_a_sqrt_s_per_m2"), ["k_a_sqrt_s_per_m2", "a_sqrt_s_per_m2"]);
        for word in ["v", "way_in", "limit_bar", "turns_per_bend", "hot_day", "as_str"] {
            assert!(endings(word).is_empty(), "{word}");
        }
    }

    #[test]
    fn strangers_are_told() {
        assert_eq!(
            told("models", "\nlet width_cm = 1.0;"),
            ["a.rs:2: `width_cm` ends in `cm`, which NOMENCLATURE.md does not list for models"]
        );
        assert_eq!(told("ground", "const A_KCMIL: f64 = 1.0;").len(), 1);
        assert_eq!(told("models", "let width_mm = 1.0; f(width_mm)").len(), 1);
        assert!(told("questions", "let width_mm = 1.0; f(width_mm)").is_empty());
        assert_eq!(told("models", "fn f(flow_m3_per_h: f64) {}").len(), 1);
    }

    #[test]
    fn what_the_page_lists_passes() {
        assert!(told("results", "let width_mm = 1.0;").is_empty());
        assert!(
            told("models", "let drop_v = rho_ohm_m * a.in_mm() * is_inch; // width_cm").is_empty()
        );
    }

    #[test]
    fn an_unsound_page_is_told() {
        assert!(unsound(&read(PAGE)).is_empty());
        assert_eq!(unsound(&Nomenclature::default()).len(), 3);
        let wrong = PAGE.replace("| ΔU | V |", "| ΔU | A |");
        assert_eq!(
            unsound(&read(&wrong)),
            ["NOMENCLATURE.md: `drop_v` does not end in its unit, A"]
        );
        assert_eq!(unsound(&read(&PAGE.replace("`mm`", "`v`"))).len(), 1);
    }
}
