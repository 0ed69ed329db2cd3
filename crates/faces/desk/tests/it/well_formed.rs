//! Pages that can be read by machines: whole, without inline style or script, names for all.

use std::collections::BTreeSet;

use roxmltree::{Document, Node, ParsingOptions};

use crate::ask::{build, heron, paths};

/// Elements that have no end of their own.
const EMPTY: [&str; 6] = ["meta", "link", "input", "br", "use", "hr"];

/// The page as a tree: our pages are XML but for elements without an end and attributes without a
/// value.
fn xml(page: &str) -> String {
    let mut text = page.replace("<!DOCTYPE html>", "");
    for name in EMPTY {
        let mut whole = String::new();
        let mut rest = text.as_str();
        while let Some(at) =
            rest.find(&format!("<{name} ")).or_else(|| rest.find(&format!("<{name}>")))
        {
            let end = at + rest[at..].find('>').unwrap();
            whole.push_str(rest[..end].trim_end_matches('/'));
            whole.push_str("/>");
            rest = &rest[end + 1..];
        }
        whole.push_str(rest);
        text = whole;
    }
    for word in [" defer", " required", " selected", " checked"] {
        text = text.replace(&format!("{word}>"), &format!("{word}=\"\">"));
        text = text.replace(&format!("{word} "), &format!("{word}=\"\" "));
    }
    text
}

fn check(path: &str, page: &str) {
    let text = xml(page);
    let options = ParsingOptions { allow_dtd: false, ..ParsingOptions::default() };
    let tree = Document::parse_with_options(&text, options)
        .unwrap_or_else(|error| panic!("{path}: {error}"));
    let mut ids = BTreeSet::new();
    for node in tree.descendants().filter(Node::is_element) {
        if let Some(id) = node.attribute("id") {
            assert!(ids.insert(id), "{path}: the id {id} stands twice");
        }
        for attribute in node.attributes() {
            let name = attribute.name();
            assert!(name != "style" && !name.starts_with("on"), "{path}: {name}");
            let leads = matches!(name, "href" | "src" | "action");
            let value = attribute.value();
            assert!(
                !leads
                    || value.starts_with('/') && !value.starts_with("//")
                    || value.starts_with('#'),
                "{path}: {value}"
            );
        }
        let name = node.tag_name().name();
        assert!(name != "style", "{path}: a style within the page");
        assert!(
            name != "script" || node.attribute("src").is_some(),
            "{path}: a script within the page"
        );
    }
    for node in tree.descendants().filter(Node::is_element) {
        for attribute in ["aria-labelledby", "aria-describedby", "for"] {
            for id in node.attribute(attribute).unwrap_or_default().split_whitespace() {
                assert!(ids.contains(id), "{path}: {attribute} names {id}, which is not there");
            }
        }
        let field = matches!(node.tag_name().name(), "input" | "select" | "textarea");
        if field && node.attribute("type") != Some("hidden") {
            let id =
                node.attribute("id").unwrap_or_else(|| panic!("{path}: a field without an id"));
            let labels = tree.descendants().filter(|label| label.attribute("for") == Some(id));
            assert_eq!(labels.count(), 1, "{path}: {id}");
        }
        if let Some(local) = node.attribute("href").and_then(|href| href.strip_prefix('#')) {
            assert!(ids.contains(local), "{path}: #{local} is not there");
        }
    }
    let count = |name: &str| tree.descendants().filter(|node| node.has_tag_name(name)).count();
    assert_eq!((count("main"), count("h1")), (1, 1), "{path}");
}

#[tokio::test]
async fn every_page_of_the_demo_is_whole() {
    let open = heron();
    for path in paths() {
        check(&path, &open.page(&path).await.text);
    }
}

#[tokio::test]
async fn every_page_of_an_empty_build_is_whole() {
    let open = build(Some(""));
    for path in paths() {
        check(&path, &open.page(&path).await.text);
    }
}

#[tokio::test]
async fn pages_of_what_is_not_there_are_whole() {
    let open = build(None);
    check("/start", &open.page("/start").await.text);
    check("wrong", &open.form("/start", "kind=load&size=3").await.text);
    check("nothing", &open.page("/nothing").await.text);
    let broken = build(Some("a = \"<\n[[x]]\n"));
    check("problems", &broken.page("/").await.text);
}
