//! What the SVG backend leaves undone: the figure scales to the width it is given, tells people who cannot see it what
//! it shows, and its fills carry their hatchings.

use super::Size;
use super::doing::Doing;
use super::ink::{self, Hatch};
use super::palette::hex;
use std::fmt::Write as _;

/// Units of the drawing in a pixel.
pub(super) const GRAIN: u32 = 10;

/// What a figure says of itself.
#[derive(Clone, Copy, Debug)]
pub(super) struct About<'a> {
    /// Its name, of lower-case letters: part of the names of its hatchings.
    pub(super) figure: &'static str,
    /// Its title.
    pub(super) title: &'a str,
    /// What it shows, in words, for people who cannot see it.
    pub(super) description: &'a str,
    /// The activities whose fills it uses.
    pub(super) fills: &'a [Doing],
}

/// Puts a drawing of the backend into its final frame.
///
/// Hatchings are patterns, which the backend does not know: the background colour of each hatched fill belongs to it alone,
/// so it is replaced by its pattern wherever it fills something. The names of the patterns hold the figure and its width,
/// so that several figures can stand in one page.
pub(super) fn seal(drawn: &str, size: Size, about: &About<'_>) -> String {
    let body = drawn.split_once('\n').map_or("", |(_, rest)| rest);
    let body = body.trim_end().strip_suffix("</svg>").unwrap_or(body);
    let mut body =
        body.replace(" opacity=\"1\"", "").replace(" stroke=\"none\"", "").replace("\n</text>", "</text>");
    let mut patterns = String::new();
    for doing in about.fills {
        let fill = ink::of(*doing);
        if fill.hatch == Hatch::Plain {
            continue;
        }
        let (name, background) = (format!("{}-{}-{doing:?}", about.figure, size.width), hex(fill.background));
        body = body.replace(&format!("fill=\"{background}\""), &format!("fill=\"url(#{name})\""));
        pattern(&mut patterns, &name, fill, size);
    }
    let (title, description) = (escaped(about.title), escaped(about.description));
    let (width, height) = (size.width, size.height);
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"100%\" role=\"img\" \
         aria-label=\"{title}\">\n<title>{title}</title>\n<desc>{description}</desc>\n<defs>\n{patterns}</defs>\n\
         <g transform=\"scale({})\">\n{body}</g>\n</svg>\n",
        1.0 / f64::from(GRAIN)
    )
}

fn pattern(out: &mut String, name: &str, fill: ink::Fill, size: Size) {
    // Sized with the letters, so that a hatching looks the same at every size.
    let t = (size.text() * 0.5 * f64::from(GRAIN)).round();
    let half = t / 2.0;
    let quarter = t / 4.0;
    let (out_low, out_high) = (-quarter, t + quarter);
    let rising = format!(
        "M0 {t}L{t} 0M{out_low} {quarter}L{quarter} {out_low}M{} {out_high}L{out_high} {}",
        t - quarter,
        t - quarter
    );
    let falling = format!(
        "M0 0L{t} {t}M{out_low} {}L{quarter} {out_high}M{} {out_low}L{out_high} {quarter}",
        t - quarter,
        t - quarter
    );
    let (upright, level) = (format!("M{half} 0V{t}"), format!("M0 {half}H{t}"));
    let path = match fill.hatch {
        Hatch::Plain | Hatch::Dots | Hatch::Rings => String::new(),
        Hatch::Chevrons => format!("M0 {}L{half} {quarter}L{t} {}", t - quarter, t - quarter),
        Hatch::Rising => rising,
        Hatch::Falling => falling,
        Hatch::Crossed => rising + &falling,
        Hatch::Upright => upright,
        Hatch::Level => level,
        Hatch::Grid => upright + &level,
    };
    let over = hex(fill.over);
    let (pen, dot) = (t * 0.16, t * 0.2);
    let marks = match fill.hatch {
        Hatch::Dots => format!("<circle cx=\"{half}\" cy=\"{half}\" r=\"{pen}\" fill=\"{over}\"/>"),
        Hatch::Rings => format!(
            "<circle cx=\"{half}\" cy=\"{half}\" r=\"{dot}\" fill=\"none\" stroke=\"{over}\" stroke-width=\"{pen}\"/>"
        ),
        _ => format!("<path d=\"{path}\" fill=\"none\" stroke=\"{over}\" stroke-width=\"{pen}\"/>"),
    };
    // Writing to a String cannot fail.
    let _ = writeln!(
        out,
        "<pattern id=\"{name}\" width=\"{t}\" height=\"{t}\" patternUnits=\"userSpaceOnUse\">\
         <rect width=\"{t}\" height=\"{t}\" fill=\"{}\"/>{marks}</pattern>",
        hex(fill.background)
    );
}

fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    const DRAWN: &str = "<svg width=\"7200\">\n<rect opacity=\"1\" fill=\"#F2C486\" stroke=\"none\"/>\n\
                         <rect fill=\"#103454\"/>\n<text x=\"1\">\na &amp; b\n</text>\n</svg>\n";

    fn sealed(size: Size) -> String {
        let fills = [Doing::WaitingForRoom, Doing::Loading];
        let about = About {
            figure: "waiting",
            title: "A \"barrow\" & <rake>",
            description: "one\u{7}two",
            fills: &fills,
        };
        seal(DRAWN, size, &about)
    }

    #[test]
    fn a_figure_scales_and_says_what_it_shows() {
        let svg = sealed(Size::PAGE);
        assert!(
            svg.starts_with(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 720 460\" width=\"100%\""
            )
        );
        let title = "A &quot;barrow&quot; &amp; &lt;rake&gt;";
        assert!(
            svg.contains(&format!("aria-label=\"{title}\">\n<title>{title}</title>\n<desc>one two</desc>"))
        );
        assert_eq!((svg.matches("<svg").count(), svg.matches("</svg>").count()), (1, 1));
    }

    #[test]
    fn hatched_fills_get_their_pattern_and_plain_ones_stay() {
        let svg = sealed(Size::PAGE);
        assert!(svg.contains("<rect fill=\"url(#waiting-720-WaitingForRoom)\"/>"), "{svg}");
        assert!(svg.contains("<pattern id=\"waiting-720-WaitingForRoom\""));
        assert!(svg.contains("<rect fill=\"#103454\"/>") && !svg.contains("720-Loading"));
        assert_eq!(svg.matches("#F2C486").count(), 1, "the background colour stands in its pattern alone");
    }

    #[test]
    fn figures_of_two_sizes_share_no_names() {
        assert!(sealed(Size::PHONE).contains("id=\"waiting-390-WaitingForRoom\""));
        assert!(!sealed(Size::PHONE).contains("720"));
    }
}
