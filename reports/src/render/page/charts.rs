//! The figures, put into the page where they belong.

use super::fold::more;
use super::words::sentence;
use crate::chart::Figure;
use crate::chart::palette::of_the_page;
use maud::{Markup, PreEscaped, html};

/// Figures drawn for a page and for paper, and the same for a narrow screen.
pub(crate) struct Charts<'a> {
    pub(crate) wide: &'a [Figure],
    pub(crate) narrow: &'a [Figure],
}

impl Charts<'_> {
    /// The figure of this name; nothing if it was not drawn.
    pub(crate) fn figure(&self, name: &str) -> Markup {
        match (svg(self.wide, name), svg(self.narrow, name)) {
            (Some(wide), Some(narrow)) => html! {
                figure { div.on-wide { (wide) } div.on-phone { (pushed_sideways(narrow)) } }
            },
            (Some(only), None) | (None, Some(only)) => html! { figure { (only) } },
            (None, None) => html! {},
        }
    }

    /// The figure of this name where it is not too tall for a phone; its finding, and the figure when it is asked for (as
    /// `what`), where it is.
    pub(crate) fn shown(&self, name: &str, what: &str) -> Markup {
        self.shown_within(TALLEST, name, what)
    }

    /// The same with another height \[px\] that is not too tall.
    pub(crate) fn shown_within(&self, tallest: u32, name: &str, what: &str) -> Markup {
        let narrow = self.narrow.iter().find(|figure| figure.name == name);
        match narrow.filter(|figure| size(&figure.svg).is_some_and(|(_, height)| height > tallest)) {
            Some(tall) => html! {
                p.finding { (sentence(&tall.title)) }
                (more(what, self.figure(name)))
            },
            None => self.figure(name),
        }
    }

    pub(crate) fn has(&self, name: &str) -> bool {
        self.wide.iter().chain(self.narrow).any(|figure| figure.name == name)
    }
}

/// The tallest figure a phone shows unasked, about two thirds of its screen \[px\].
const TALLEST: u32 = 580;

/// Width and height a figure says it has \[px\].
fn size(svg: &str) -> Option<(u32, u32)> {
    let mut numbers = svg.split_once("viewBox=\"0 0 ")?.1.split(['"', ' ']).map(|n| n.parse().ok());
    Some((numbers.next()??, numbers.next()??))
}

/// A figure that had to be wider than a phone is not made smaller there, but can be pushed sideways.
fn pushed_sideways(figure: PreEscaped<String>) -> Markup {
    const PHONE: u32 = 450;
    let width = size(&figure.0).map(|(width, _)| width);
    match width.filter(|width| *width > PHONE) {
        Some(width) => html! { div.scrolls { div style=(format!("min-width: {width}px")) { (figure) } } },
        None => html! { (figure) },
    }
}

fn svg(figures: &[Figure], name: &str) -> Option<PreEscaped<String>> {
    let svg = &figures.iter().find(|figure| figure.name == name)?.svg;
    // Inside HTML an SVG element needs no namespace and may have no XML declaration before it.
    let svg = svg.get(svg.find("<svg")?..)?.replacen(" xmlns=\"http://www.w3.org/2000/svg\"", "", 1);
    Some(PreEscaped(of_the_page(&gathered(&svg))))
}

/// The same drawing with rectangles of one hatching drawn as one shape, where the first of them stood. Browsers store
/// the hatching once for every shape they print: a long run drawn rectangle by rectangle makes a document of hundreds of
/// megabytes that takes minutes. Rectangles of a figure do not overlap; lines lie under what is drawn after them, so
/// nothing is gathered across one.
fn gathered(svg: &str) -> String {
    let mut lines: Vec<String> = Vec::new();
    let mut open: Vec<(&str, usize)> = Vec::new();
    for line in svg.lines() {
        let Some((hatching, outline)) = hatched(line) else {
            if line.trim_start().starts_with("<polyline") || line.trim_start().starts_with("<line") {
                close(&mut lines, &mut open);
            }
            lines.push(line.to_owned());
            continue;
        };
        match open.iter().find(|(known, _)| *known == hatching) {
            Some((_, at)) => lines[*at].push_str(&outline),
            None => {
                open.push((hatching, lines.len()));
                lines.push(outline);
            }
        }
    }
    close(&mut lines, &mut open);
    lines.join("\n")
}

/// Makes shapes of the outlines gathered so far.
fn close(lines: &mut [String], open: &mut Vec<(&str, usize)>) {
    for (hatching, at) in open.drain(..) {
        lines[at] = format!("<path d=\"{}\" fill=\"{hatching}\"/>", lines[at]);
    }
}

/// The hatching and the outline of a hatched rectangle; nothing for any other line of a drawing.
fn hatched(line: &str) -> Option<(&str, String)> {
    let parts: Vec<&str> = line.trim().split('"').collect();
    let ["<rect x=", x, " y=", y, " width=", width, " height=", height, " fill=", fill, "/>"] = parts[..]
    else {
        return None;
    };
    fill.starts_with("url(#").then(|| (fill, format!("M{x} {y}h{width}v{height}h-{width}z")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tall_figure_is_folded_and_its_finding_said() {
        let drawn = |height: u32| {
            let svg =
                format!("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 390 {height}\"></svg>");
            [Figure { name: "saved", title: "A <b> saves".into(), svg }]
        };
        let page =
            |height| Charts { wide: &drawn(400), narrow: &drawn(height) }.shown("saved", "All").into_string();
        let short = page(TALLEST);
        assert!(short.starts_with("<figure>") && !short.contains("<details"), "{short}");
        let tall = page(TALLEST + 1);
        assert!(
            tall.starts_with("<p class=\"finding\">A &lt;b&gt; saves.</p><details class=\"more\">"),
            "{tall}"
        );
        assert_eq!(tall.matches("<figure>").count(), 1);
    }

    #[test]
    fn rectangles_of_one_hatching_become_one_shape_as_far_as_the_next_line() {
        let rect = |x: u32, fill: &str| {
            format!("<rect x=\"{x}\" y=\"2\" width=\"3\" height=\"4\" fill=\"{fill}\"/>")
        };
        let line = "<polyline points=\"1,2 3,4\"/>".to_owned();
        let svg = [
            rect(1, "url(#a)"),
            rect(5, "#FFFFFF"),
            rect(6, "url(#b)"),
            rect(9, "url(#a)"),
            line.clone(),
            rect(12, "url(#a)"),
        ];
        let expected = [
            "<path d=\"M1 2h3v4h-3zM9 2h3v4h-3z\" fill=\"url(#a)\"/>".to_owned(),
            rect(5, "#FFFFFF"),
            "<path d=\"M6 2h3v4h-3z\" fill=\"url(#b)\"/>".to_owned(),
            line,
            "<path d=\"M12 2h3v4h-3z\" fill=\"url(#a)\"/>".to_owned(),
        ];
        assert_eq!(gathered(&svg.join("\n")), expected.join("\n"));
    }
}
