//! Problems of a scenario file: one line for each, and on a terminal the place in the file.

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use scenarios::{Problem, Refusal, escaped, escaped_lines};
use std::fmt::Write;

/// Whether the lines of the file are shown below each problem.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Snippets {
    /// For people at a terminal.
    Shown,
    /// For programs that read the messages.
    Hidden,
}

/// Every problem on a line of its own, then how many there are.
pub fn problems(refusal: &Refusal, snippets: Snippets) -> String {
    let mut text = String::new();
    for problem in &refusal.problems {
        // Writing to a string cannot fail.
        let _ = writeln!(text, "{problem}");
        if let (Snippets::Shown, Some(snippet)) = (snippets, snippet(refusal, problem)) {
            let _ = writeln!(text, "{snippet}\n");
        }
    }
    let count = match refusal.problems.len() {
        1 => "1 problem".to_owned(),
        n => format!("{n} problems"),
    };
    let _ = writeln!(text, "heapcast: {count} in {}; nothing was written", escaped(&refusal.file));
    text
}

fn snippet(refusal: &Refusal, problem: &Problem) -> Option<String> {
    let span = problem.span.clone()?;
    let label = if problem.right.is_empty() { &problem.what } else { &problem.right };
    // What cannot be seen is shown as its code point, which moves what follows.
    let shown = |part: &str| escaped_lines(&part.replace('\r', "").replace('\t', " "));
    let before = shown(refusal.text.get(..span.start)?);
    let marked = shown(refusal.text.get(span.clone())?);
    let text = format!("{before}{marked}{}", shown(refusal.text.get(span.end..)?));
    let (span, label) = (before.len()..before.len() + marked.len(), escaped(label));
    let place =
        Snippet::source(text.as_str()).annotation(AnnotationKind::Primary.span(span).label(label.as_str()));
    Some(Renderer::styled().render(&[Group::with_level(Level::ERROR).element(place)]))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn refusal() -> Refusal {
        let text = "title = \"x\"\n\n[[zone]]\nname = \"north\"\ndepth = \"4 lb\"\n".to_owned();
        let start = text.find("\"4 lb\"").unwrap();
        let problem = Problem {
            file: "orchard.toml".into(),
            span: Some(start..start + 6),
            line: 5,
            column: 9,
            key: "zone \"north\".depth".into(),
            value: "\"4 lb\"".into(),
            what: "this is a mass".into(),
            right: "write a length, such as \"4 in\"".into(),
        };
        let whole = Problem { span: None, line: 0, column: 0, ..problem.clone() };
        Refusal { file: "orchard.toml".into(), text, problems: vec![problem, whole] }
    }

    #[test]
    fn one_line_a_problem_and_a_count() {
        let refusal = refusal();
        let text = problems(&refusal, Snippets::Hidden);
        let expected = [refusal.problems[0].to_string(), refusal.problems[1].to_string()].join("\n")
            + "\nheapcast: 2 problems";
        assert!(text.starts_with(&expected), "{text}");
        assert_eq!(text.lines().count(), 3);
    }

    #[test]
    fn on_a_terminal_the_line_and_the_place_in_it_are_shown() {
        let text = anstream::adapter::strip_str(&problems(&refusal(), Snippets::Shown)).to_string();
        assert!(text.contains("5 | depth = \"4 lb\""), "{text}");
        assert!(text.contains("^^^^^^ write a length, such as \"4 in\""), "{text}");
    }

    #[test]
    fn what_cannot_be_seen_reaches_no_terminal() {
        let mut refusal = refusal();
        refusal.text = refusal.text.replace("title = \"x\"", "title = \"x\u{202e}\u{1b}[2J\u{200b}\"");
        refusal.file = "or\u{1b}[31mchard.toml".into();
        let start = refusal.text.find("\"4 lb\"").unwrap();
        for problem in &mut refusal.problems {
            problem.span = Some(9..start + 6);
            problem.what = "a\u{2066}b".into();
            problem.file.clone_from(&refusal.file);
        }
        let text = anstream::adapter::strip_str(&problems(&refusal, Snippets::Shown)).to_string();
        assert_eq!(escaped_lines(&text), text);
        assert!(text.contains("\\u{202e}") && text.contains("or\\u{1b}[31mchard.toml"), "{text}");
    }

    #[test]
    fn a_place_outside_the_text_is_left_out() {
        let mut refusal = refusal();
        refusal.problems[0].span = Some(90..99);
        assert_eq!(problems(&refusal, Snippets::Shown), problems(&refusal, Snippets::Hidden));
    }
}
