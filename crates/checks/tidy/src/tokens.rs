//! Rust source as a row of tokens: comments gone, strings kept apart, tests left out on demand.

use proc_macro2::{Delimiter, TokenStream, TokenTree};

/// One token with the line it stands in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Token {
    /// Its line, from 1.
    pub line: usize,
    /// Whether it is a name or keyword; a word inside a string is not.
    pub is_name: bool,
    /// Its text; a bracket is `(`, `)`, `[`, `]`, `{` or `}`.
    pub text: String,
}

/// The tokens of `source`, doc comments as `#[doc = "..."]`.
///
/// # Errors
/// Source that does not break into tokens.
pub fn tokens(source: &str) -> Result<Vec<Token>, String> {
    let stream: TokenStream = source.parse().map_err(|error| format!("{error}"))?;
    let mut row = Vec::new();
    flatten(stream, &mut row);
    Ok(row)
}

fn flatten(stream: TokenStream, row: &mut Vec<Token>) {
    for tree in stream {
        let line = tree.span().start().line;
        match tree {
            TokenTree::Group(group) => {
                let (open, close) = match group.delimiter() {
                    Delimiter::Parenthesis => ("(", ")"),
                    Delimiter::Bracket => ("[", "]"),
                    Delimiter::Brace => ("{", "}"),
                    Delimiter::None => ("", ""),
                };
                row.push(Token { line, is_name: false, text: open.to_owned() });
                let end = group.span_close().end().line;
                flatten(group.stream(), row);
                row.push(Token { line: end, is_name: false, text: close.to_owned() });
            }
            TokenTree::Ident(name) => {
                row.push(Token { line, is_name: true, text: name.to_string() });
            }
            other => row.push(Token { line, is_name: false, text: other.to_string() }),
        }
    }
}

/// `row` without the items marked `#[cfg(test)]`.
pub fn without_tests(row: &[Token]) -> Vec<Token> {
    let mut kept = Vec::new();
    let mut at = 0;
    while at < row.len() {
        if starts(&row[at..], &["#", "[", "cfg", "(", "test", ")", "]"]) {
            at = end_of_item(row, at + 7);
        } else {
            kept.push(row[at].clone());
            at += 1;
        }
    }
    kept
}

/// Whether `row` starts with exactly these texts.
pub fn starts(row: &[Token], texts: &[&str]) -> bool {
    row.len() >= texts.len() && row.iter().zip(texts).all(|(token, text)| token.text == *text)
}

/// One past the last token of the item that begins at `from`: its closing brace, its `;` or both.
fn end_of_item(row: &[Token], from: usize) -> usize {
    let mut depth = 0_usize;
    for (at, token) in row.iter().enumerate().skip(from) {
        match token.text.as_str() {
            "(" | "[" | "{" => depth += 1,
            ")" | "]" => depth = depth.saturating_sub(1),
            "}" => {
                depth = depth.saturating_sub(1);
                if depth == 0 {
                    let semicolon = starts(&row[at + 1..], &[";"]);
                    return at + 1 + usize::from(semicolon);
                }
            }
            ";" if depth == 0 => return at + 1,
            _ => {}
        }
    }
    row.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(row: &[Token]) -> String {
        row.iter().map(|token| token.text.as_str()).collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn comments_go_and_words_in_strings_are_no_names() {
        let row = tokens("// HashMap\nlet a = \"HashMap\";").unwrap();
        assert!(row.iter().all(|token| !(token.is_name && token.text == "HashMap")));
        assert_eq!(row[0], Token { line: 2, is_name: true, text: "let".to_owned() });
    }

    #[test]
    fn items_for_tests_are_left_out_and_nothing_else() {
        let row = tokens("fn a() {}\n#[cfg(test)]\nmod tests { fn b() {} }\nfn c() {}").unwrap();
        assert_eq!(texts(&without_tests(&row)), "fn a ( ) { } fn c ( ) { }");
        let row = tokens("#[cfg(test)] use a::{b, c}; fn d() {}").unwrap();
        assert_eq!(texts(&without_tests(&row)), "fn d ( ) { }");
    }
}
