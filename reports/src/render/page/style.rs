//! How the page looks, on a screen and on paper.

use crate::chart::palette;
use maud::{Markup, PreEscaped, html};
use std::fmt::Write as _;

const STYLE: &str = include_str!("style.css");
/// Most letters of the title at the head of each printed page.
const RUNNING: usize = 64;

/// The style sheet, with the title at the head of every printed page.
pub(crate) fn style(title: &str) -> Markup {
    let sheet = palette::style_sheet() + &STYLE.replace("{title}", &css_text(title));
    html! { style { (PreEscaped(sheet)) } }
}

/// Text inside the quotes of a style sheet: every letter that could mean anything there by its number.
fn css_text(text: &str) -> String {
    let mut out = String::new();
    let long = text.chars().count() > RUNNING;
    for letter in text.chars().take(if long { RUNNING - 1 } else { RUNNING }) {
        if letter.is_ascii_alphanumeric() || letter == ' ' {
            out.push(letter);
        } else {
            // The space ends the number and is not shown. Writing to a String cannot fail.
            let _ = write!(out, "\\{:06X} ", u32::from(letter));
        }
    }
    if long {
        out.push_str("\\002026 ");
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_title_cannot_leave_the_quotes_of_the_style_sheet() {
        let text = css_text("a\"; } </style><b>\\ ü");
        assert!(!text.contains(['"', '<', '>', ';', '}', '/']), "{text}");
        assert_eq!(css_text("Arena 2"), "Arena 2");
        assert_eq!(css_text("ü"), "\\0000FC ");
    }

    #[test]
    fn a_long_title_is_cut_at_the_head_of_printed_pages() {
        assert!(css_text(&"long ".repeat(30)).ends_with("\\002026 "));
    }
}
