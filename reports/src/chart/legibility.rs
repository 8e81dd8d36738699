//! Looks at a finished figure as a reader would: where every text stands, and whether any two touch.

use super::Size;
use super::letters::{Weight, width};

/// A text of a figure with the box it fills \[px\].
#[derive(Clone, Debug)]
pub(crate) struct Seen {
    pub(crate) text: String,
    pub(crate) left: f64,
    pub(crate) right: f64,
    pub(crate) top: f64,
    pub(crate) bottom: f64,
}

fn attribute<'a>(tag: &'a str, name: &str) -> &'a str {
    let from = tag.find(&format!(" {name}=\"")).map_or(0, |at| at + name.len() + 3);
    tag[from..].split('"').next().unwrap_or("")
}

fn number(tag: &str, name: &str) -> f64 {
    attribute(tag, name).parse().unwrap_or(f64::NAN)
}

/// Every text of a figure.
pub(crate) fn texts(svg: &str) -> Vec<Seen> {
    svg.split("<text ")
        .skip(1)
        .map(|piece| {
            let piece = format!(" {piece}");
            let (tag, rest) = piece.split_once('>').expect("a text tag ends");
            let text = rest.split("</text>").next().unwrap_or("").trim();
            let text =
                text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&apos;", "'");
            let text = text.replace("&amp;", "&");
            let px = number(tag, "font-size") / 10.0;
            let weight = if tag.contains("bold") { Weight::Bold } else { Weight::Plain };
            let (x, top, wide) = (number(tag, "x") / 10.0, number(tag, "y") / 10.0, width(&text, px, weight));
            let left = match attribute(tag, "text-anchor") {
                "start" => x,
                "middle" => x - wide / 2.0,
                _ => x - wide,
            };
            Seen { text, left, right: left + wide, top, bottom: top + 0.95 * px }
        })
        .collect()
}

/// Width and height a figure says it has.
pub(crate) fn size(svg: &str) -> Size {
    let mut numbers = attribute(svg, "viewBox").split(' ').skip(2).map(|n| n.parse().unwrap_or(0));
    let mut next = || numbers.next().unwrap_or(0);
    Size { width: next(), height: next() }
}

/// What is wrong with a figure: texts cut off or touching, things it must not hold, too many bytes.
pub(crate) fn faults(svg: &str) -> Vec<String> {
    let (texts, size) = (texts(svg), size(svg));
    let mut faults = Vec::new();
    for (i, a) in texts.iter().enumerate() {
        let inside = a.left >= 0.0
            && a.right <= f64::from(size.width)
            && a.top >= 0.0
            && a.bottom <= f64::from(size.height);
        if !inside {
            faults.push(format!("cut off: {a:?}"));
        }
        for b in &texts[..i] {
            let apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
            if !apart {
                faults.push(format!("{:?} touches {:?}", a.text, b.text));
            }
        }
    }
    for never in ["<script", "href", "http://", "https://", "NaN", "inf", "@import", "data:"] {
        if svg.replace("xmlns=\"http://www.w3.org/2000/svg\"", "").contains(never) {
            faults.push(format!("contains {never}"));
        }
    }
    for wanted in ["viewBox=\"0 0 ", "width=\"100%\"", "role=\"img\"", "aria-label=\"", "<title>", "<desc>"] {
        if !svg.contains(wanted) {
            faults.push(format!("lacks {wanted}"));
        }
    }
    if svg.len() > 300_000 {
        faults.push(format!("{} bytes", svg.len()));
    }
    faults
}

#[test]
fn touching_and_cut_off_labels_are_found() {
    let text = |x: i32, words: &str| {
        format!(
            "<text x=\"{x}\" y=\"100\" text-anchor=\"start\" font-size=\"160\" fill=\"#000000\">{words}</text>"
        )
    };
    let figure =
        |a: i32, b: i32| format!("<svg viewBox=\"0 0 100 50\">{}{}</svg>", text(a, "one"), text(b, "two"));
    let labels =
        |svg: String| faults(&svg).into_iter().filter(|f| !f.starts_with("lacks")).collect::<Vec<_>>();
    assert_eq!(labels(figure(0, 500)).len(), 0);
    assert_eq!(labels(figure(0, 100)), ["\"two\" touches \"one\""]);
    assert!(labels(figure(0, 900))[0].starts_with("cut off"));
}
