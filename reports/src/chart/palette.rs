//! The colours of a page by name, each for a light screen and for a dark one: a figure inside a page takes its colours
//! from there, so that it is legible on both.

use super::doing::Doing;
use super::ink;
use plotters::style::RGBColor;
use std::fmt::Write as _;

/// A colour of a page.
struct Named {
    name: &'static str,
    light: RGBColor,
    dark: RGBColor,
}

const fn named(name: &'static str, light: RGBColor, (r, g, b): (u8, u8, u8)) -> Named {
    Named { name, light, dark: RGBColor(r, g, b) }
}

const fn doing(name: &'static str, doing: Doing, dark: (u8, u8, u8)) -> Named {
    named(name, ink::of(doing).background, dark)
}

/// What is not named keeps its colour on a dark screen too: waiting is light with dark hatching on both.
const ALL: [Named; 22] = [
    named("paper", ink::PAPER, (18, 25, 31)),
    named("ink", ink::TEXT, (233, 238, 242)),
    named("soft", ink::SOFT_TEXT, (175, 188, 198)),
    named("strong-line", ink::AXIS, (127, 141, 152)),
    named("grid", ink::GRID, (44, 54, 62)),
    named("break", ink::BREAK, (52, 63, 72)),
    named("night", ink::NIGHT, (95, 108, 118)),
    named("main", ink::MAIN, (140, 192, 234)),
    named("bar", ink::BAR, (78, 140, 187)),
    named("range", ink::RANGE, (44, 82, 110)),
    named("against", ink::AGAINST, (243, 154, 100)),
    named("delivery", ink::DELIVERY, (226, 178, 126)),
    doing("loading", Doing::Loading, (30, 90, 144)),
    doing("hauling", Doing::Hauling, (62, 130, 188)),
    doing("passing", Doing::Passing, (90, 148, 196)),
    doing("dumping", Doing::Dumping, (112, 176, 188)),
    doing("returning", Doing::Returning, (176, 212, 238)),
    doing("working", Doing::Working, (52, 116, 170)),
    doing("raking", Doing::Raking, (88, 134, 66)),
    doing("walking", Doing::Walking, (170, 200, 150)),
    doing("stopped", Doing::Stopped, (74, 66, 70)),
    doing("done", Doing::Done, (24, 32, 39)),
];

/// The colours as custom properties of a style sheet. Paper is always light.
pub(crate) fn style_sheet() -> String {
    let all = |pick: fn(&Named) -> RGBColor| {
        ALL.iter().fold(String::new(), |mut out, one| {
            // Writing to a String cannot fail.
            let _ = write!(out, "--{}:{};", one.name, hex(pick(one)));
            out
        })
    };
    format!(
        ":root{{color-scheme:light dark;{}}}\n@media screen and (prefers-color-scheme:dark){{:root{{{}}}}}\n",
        all(|one| one.light),
        all(|one| one.dark)
    )
}

/// A figure with the colours of the page it stands in.
pub(crate) fn of_the_page(svg: &str) -> String {
    // No text of a figure holds a quotation mark, so only the values of attributes are replaced.
    ALL.iter().fold(svg.to_owned(), |svg, one| {
        svg.replace(&format!("=\"{}\"", hex(one.light)), &format!("=\"var(--{})\"", one.name))
    })
}

/// `#1C262E`.
pub(super) fn hex(RGBColor(r, g, b): RGBColor) -> String {
    format!("#{r:02X}{g:02X}{b:02X}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::ink::{Hatch, tests::lightness};

    /// Lightness of a fill on a dark screen.
    fn dark(doing: Doing) -> f64 {
        let background = ink::of(doing).background;
        lightness(ALL.iter().find(|one| one.light == background).map_or(background, |one| one.dark))
    }

    #[test]
    fn no_colour_has_two_names() {
        for (i, a) in ALL.iter().enumerate() {
            assert!(ALL[..i].iter().all(|b| a.name != b.name && a.light != b.light), "{}", a.name);
        }
    }

    #[test]
    fn on_a_dark_screen_too_activities_that_can_meet_stay_apart_in_grey() {
        for row in
            [Doing::OF_A_LOADER, Doing::OF_A_LOADER_BRIEFLY, Doing::OF_A_RAKER, Doing::OF_A_RAKER_BRIEFLY]
        {
            for (i, a) in row.iter().enumerate() {
                for b in &row[..i] {
                    let apart =
                        ink::of(*a).hatch != ink::of(*b).hatch || (dark(*a) - dark(*b)).abs() >= ink::STEP;
                    assert!(apart, "{a:?} {} and {b:?} {}", dark(*a), dark(*b));
                }
            }
        }
    }

    #[test]
    fn on_a_dark_screen_text_and_fills_show_on_the_ground() {
        let y = |colour: RGBColor| ((lightness(colour) + 16.0) / 116.0).powi(3);
        let of = |name: &str| ALL.iter().find(|one| one.name == name).unwrap().dark;
        let contrast = |colour: RGBColor| (y(colour) + 0.05) / (y(of("paper")) + 0.05);
        for name in ["ink", "soft", "main", "against", "delivery"] {
            assert!(contrast(of(name)) >= 4.5, "{name}");
        }
        for doing in Doing::ALL
            .iter()
            .filter(|doing| ink::of(**doing).hatch == Hatch::Plain && **doing != Doing::OnBreak)
        {
            assert!(dark(*doing) - lightness(of("paper")) >= 20.0, "{doing:?}");
        }
    }

    #[test]
    fn a_figure_takes_the_colours_of_its_page_and_no_word_is_changed() {
        let svg = "<rect fill=\"#FFFFFF\"/><text fill=\"#1C262E\">#FFFFFF</text>";
        assert_eq!(of_the_page(svg), "<rect fill=\"var(--paper)\"/><text fill=\"var(--ink)\">#FFFFFF</text>");
    }
}
