//! The figures, put into the page where they belong.

use crate::chart::Figure;
use maud::{Markup, PreEscaped, html};

/// Figures drawn for a page and for paper, and the same for a narrow screen.
pub(super) struct Charts<'a> {
    pub(super) wide: &'a [Figure],
    pub(super) narrow: &'a [Figure],
}

impl Charts<'_> {
    /// The figure of this name; nothing if it was not drawn.
    pub(super) fn figure(&self, name: &str) -> Markup {
        match (svg(self.wide, name), svg(self.narrow, name)) {
            (Some(wide), Some(narrow)) => html! {
                figure { div.on-wide { (wide) } div.on-phone { (narrow) } }
            },
            (Some(only), None) | (None, Some(only)) => html! { figure { (only) } },
            (None, None) => html! {},
        }
    }

    pub(super) fn has(&self, name: &str) -> bool {
        self.wide.iter().chain(self.narrow).any(|figure| figure.name == name)
    }
}

fn svg(figures: &[Figure], name: &str) -> Option<Markup> {
    let svg = &figures.iter().find(|figure| figure.name == name)?.svg;
    // Inside HTML an SVG element needs no namespace and may have no XML declaration before it.
    let svg = svg.get(svg.find("<svg")?..)?.replacen(" xmlns=\"http://www.w3.org/2000/svg\"", "", 1);
    Some(PreEscaped(svg))
}
