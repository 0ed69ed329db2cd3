//! A change on disk meanwhile: both texts side by side, and the owner chooses.

use maud::{Markup, html};
use spile_ask::clean;
use spile_build::edit::Underneath;

use crate::change::back;
use crate::desk::Desk;
use crate::page::shell::bare;
use crate::typed::Typed;

/// How many lines are shown above and below those that differ.
const AROUND: usize = 2;

/// The page; `path` is where the change was asked for.
pub(crate) fn page(desk: &Desk, typed: &Typed, files: &[Underneath], path: &str) -> Markup {
    let version = desk.now().version();
    let again = path == "/change";
    let main = html! {
        div.answer {
            h1 { "The files changed meanwhile." }
            p {
                "Somebody, an editor or another page, wrote "
                @for (at, one) in files.iter().enumerate() {
                    @if at > 0 { " and " }
                    b { (clean(&one.file)) }
                }
                " since this page was made. Nothing was written over it."
            }
        }
        @for one in files { (both(one)) }
        form.act method="post" action=(path) {
            @for (name, value) in typed.fields() {
                @if name != "since" && name != crate::safe::TOKEN {
                    input type="hidden" name=(name) value=(value);
                }
            }
            input type="hidden" name="since" value=(version);
            input type="hidden" name="token" value=(desk.token());
            a.btn.main href=(back(typed)) { "Keep what stands on disk" }
            @if again {
                " " button.btn type="submit" { "Make my change in it" }
            }
        }
        p.small.quiet {
            @if again {
                "My change is made in the file as it stands on disk now; all else that was written \
                 there stays."
            } @else {
                "A step can be undone only while the files are as it left them."
            }
        }
    };
    bare(desk, &version, &format!("changed meanwhile: {}", desk.name()), &main)
}

fn both(one: &Underneath) -> Markup {
    let ours: Vec<&str> = one.ours.as_deref().unwrap_or_default().lines().collect();
    let theirs: Vec<&str> = one.theirs.as_deref().unwrap_or_default().lines().collect();
    let same = ours.iter().zip(&theirs).take_while(|(a, b)| a == b).count();
    let rest = ours.len().min(theirs.len()) - same;
    let end = ours.iter().rev().zip(theirs.iter().rev()).take(rest);
    let end = end.take_while(|(a, b)| a == b).count();
    html! {
        section.both aria-label=(clean(&one.file)) {
            h2 { (clean(&one.file)) }
            div.twin {
                (side("on disk", &theirs, same, end, one.theirs.is_some()))
                (side("with your change", &ours, same, end, one.ours.is_some()))
            }
        }
    }
}

fn side(name: &str, lines: &[&str], same: usize, end: usize, is_there: bool) -> Markup {
    let (from, to) = (same.saturating_sub(AROUND), (lines.len() - end + AROUND).min(lines.len()));
    html! {
        div {
            h3 { (name) }
            @if is_there {
                pre.lines-of tabindex="0" role="region" aria-label=(name) {
                    @for (number, text) in lines.iter().enumerate().take(to).skip(from) {
                        span.no aria-hidden="true" { (number + 1) }
                        code {
                            @if number >= same && number < lines.len() - end {
                                mark { (clean(text)) }
                            } @else { (clean(text)) }
                        }
                        "\n"
                    }
                }
            } @else { p { "There is no such file." } }
        }
    }
}
