//! The parts of a page below its answer: a contents list, parts that stand open, and parts that are opened by a touch.
//!
//! A folded part is a `details` element, so no script is needed; on paper every one is open.

use maud::{Markup, html};

/// One part of a page.
pub(crate) struct Part {
    id: &'static str,
    title: String,
    body: Markup,
    folded: bool,
}

impl Part {
    /// A part that stands open.
    pub(crate) fn open(id: &'static str, title: impl Into<String>, body: Markup) -> Self {
        Self { id, title: title.into(), body, folded: false }
    }

    /// A part of which a screen shows the heading alone until it is touched.
    pub(crate) fn folded(id: &'static str, title: impl Into<String>, body: Markup) -> Self {
        Self { folded: true, ..Self::open(id, title, body) }
    }

    /// A browser opens a folded part when a link leads to what is inside it, not when it leads to its heading.
    fn target(&self) -> String {
        if self.folded { format!("{}-inside", self.id) } else { self.id.to_owned() }
    }

    fn section(&self) -> Markup {
        html! {
            section id=(self.id) class=[self.folded.then_some("fold")] {
                @if self.folded {
                    details {
                        summary { h2 { (self.title) } }
                        div.inside id=(self.target()) { (self.body) }
                    }
                } @else {
                    h2 { (self.title) }
                    (self.body)
                }
            }
        }
    }
}

/// The contents list and all parts.
pub(crate) fn parts(all: &[Part]) -> Markup {
    html! {
        nav aria-label="Contents" {
            ul { @for part in all { li { a href=(format!("#{}", part.target())) { (part.title) } } } }
        }
        @for part in all { (part.section()) }
    }
}

/// Something within a part that a screen shows when it is asked for: the table behind a chart, a long list.
pub(crate) fn more(what: &str, body: Markup) -> Markup {
    html! { details.more { summary { (what) } div.inside { (body) } } }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_contents_lead_to_what_is_inside_a_folded_part_so_that_a_browser_opens_it() {
        let all = [
            Part::open("waits", "Who waits", html! { p { "a" } }),
            Part::folded("foot", "How", html! { p { "b" } }),
        ];
        let html = parts(&all).into_string();
        assert!(
            html.contains("<a href=\"#waits\">Who waits</a>")
                && html.contains("<a href=\"#foot-inside\">How</a>")
        );
        assert!(html.contains("<section id=\"waits\"><h2>Who waits</h2><p>a</p></section>"));
        let (summary, inside) = html.split_once("<div class=\"inside\" id=\"foot-inside\">").unwrap();
        assert!(
            summary.ends_with("<details><summary><h2>How</h2></summary>") && inside.starts_with("<p>b</p>")
        );
    }

    #[test]
    fn a_title_cannot_become_part_of_the_page() {
        let html = parts(&[Part::folded("foot", "<b>", html! {})]).into_string();
        assert!(!html.contains("<b>"));
    }
}
