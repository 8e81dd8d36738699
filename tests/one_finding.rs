//! One finding, one sentence: wherever screen, page, charts and files speak of the same thing they say the same, with the
//! same figures. What is said is gathered from every place and compared with `summary.json`.

use crate::program::{Bench, names};
use serde_json::Value;
use std::fs;

/// Everything a command says, place by place, in plain words.
struct Places {
    summary: Value,
    /// Name of the place and its text.
    texts: Vec<(String, String)>,
}

/// With every shipped scenario and its lists.
fn bench() -> Bench {
    let bench = Bench::empty();
    for (name, text) in scenarios::shipped() {
        fs::write(bench.path(&format!("{name}.toml")), text).expect("a shipped file");
    }
    for (name, text) in scenarios::shipped_files() {
        fs::write(bench.path(name), text).expect("a shipped list");
    }
    bench
}

/// Words with single spaces, whatever spaces and lines they were written with.
fn level(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn decoded(text: &str) -> String {
    [("&quot;", "\""), ("&#39;", "'"), ("&apos;", "'"), ("&lt;", "<"), ("&gt;", ">"), ("&amp;", "&")]
        .into_iter()
        .fold(text.to_owned(), |text, (from, to)| text.replace(from, to))
}

/// The text between tags, and the title of every drawing within.
fn words_of(page: &str) -> (String, Vec<String>) {
    let (mut words, mut titles, mut rest) = (String::new(), Vec::new(), page);
    for (from, to) in [("<style", "</style>"), ("<script", "</script>")] {
        assert!(page.matches(from).count() == page.matches(to).count());
    }
    while let Some(at) = rest.find('<') {
        words.push_str(&rest[..at]);
        words.push(' ');
        let skipped = [("<svg", "</svg>"), ("<style", "</style>"), ("<script", "</script>")];
        let block = skipped.into_iter().find(|(tag, _)| rest[at..].starts_with(tag));
        let end = match block {
            Some((tag, close)) => {
                let end = rest[at..].find(close).expect("a block that ends") + at;
                if tag == "<svg" {
                    titles.extend(title_of(&rest[at..end]));
                }
                end + close.len()
            }
            None => rest[at..].find('>').expect("a tag that ends") + at + 1,
        };
        rest = &rest[end..];
    }
    (level(&decoded(&(words + rest))), titles)
}

fn title_of(drawing: &str) -> Option<String> {
    let from = drawing.find("<title")?;
    let from = from + drawing[from..].find('>')? + 1;
    let to = from + drawing[from..].find("</title>")?;
    Some(level(&decoded(&drawing[from..to])))
}

/// Runs a command and gathers what it says in all places.
fn places(bench: &Bench, typed: &[&str], folder: &str) -> Places {
    let said = bench.heapcast(typed.iter().copied().chain(["--runs", "200", "--out", folder]));
    assert_eq!(said.code, Some(0), "{typed:?}: {}", said.err);
    let mut texts = vec![("the screen".to_owned(), level(&said.out))];
    let mut summary = Value::Null;
    for name in names(&bench.path(folder)) {
        let text = || bench.read(&format!("{folder}/{name}"));
        if name.ends_with(".html") {
            let (words, titles) = words_of(&text());
            texts.push((name.clone(), words));
            texts.extend(titles.into_iter().map(|title| (format!("a chart in {name}"), title)));
        } else if name.ends_with(".svg") {
            texts.push((name.clone(), title_of(&text()).unwrap_or_default()));
        } else if name.ends_with(".json") {
            summary = serde_json::from_str(&text()).expect("JSON");
        }
    }
    Places { summary, texts }
}

impl Places {
    fn text(&self, pointer: &str) -> String {
        let value = self.summary.pointer(pointer);
        level(value.and_then(Value::as_str).unwrap_or_else(|| panic!("{pointer} is no text: {value:?}")))
    }

    /// Wherever these words stand, they stand within one of these findings, word for word as far as the finding reaches.
    fn assert_only(&self, words: &str, findings: &[String]) -> usize {
        let mut seen = 0;
        for (place, text) in &self.texts {
            for (at, _) in text.match_indices(words) {
                seen += 1;
                let whole = findings.iter().any(|finding| {
                    let finding = finding.trim_end_matches('.');
                    finding.match_indices(words).any(|(within, _)| {
                        at >= within
                            && text
                                .get(at - within..at - within + finding.len())
                                .is_some_and(|said| said.to_lowercase() == finding.to_lowercase())
                    })
                });
                let around: String =
                    text.chars().skip(text[..at].chars().count().saturating_sub(90)).take(200).collect();
                assert!(
                    whole,
                    "{place} says \"{words}\" in its own way: ...{around}...\nnot one of {findings:#?}"
                );
            }
        }
        seen
    }
}

fn stems() -> Vec<String> {
    scenarios::shipped().iter().map(|(name, _)| (*name).to_owned()).collect()
}

/// A shipped scenario with alternatives and a shipped list of buckets in its currency.
fn with_buckets(bench: &Bench) -> (String, String) {
    let lists = scenarios::shipped_files().iter().filter(|(_, text)| text.contains("heaped"));
    let list = lists.map(|(name, _)| *name).next().expect("a list of buckets");
    let fits = |file: &String| {
        bench.read(file).contains("[[alternative]]")
            && bench.heapcast(["buckets", file, list, "--runs", "100", "--out", "tried", "--quiet"]).code
                == Some(0)
    };
    let file = stems().iter().map(|stem| format!("{stem}.toml")).find(fits).expect("a scenario for it");
    (file, list.to_owned())
}

#[test]
fn who_waits_and_what_helps_are_said_alike_with_the_same_figures_on_screen_page_and_charts() {
    let bench = bench();
    for stem in stems() {
        let file = format!("{stem}.toml");
        let all = places(&bench, &["forecast", &file], &stem);
        let waits = [all.text("/who_waits/title"), all.text("/who_waits/sentence")];
        all.assert_only("of the time", &waits);
        let mut pace = waits.to_vec();
        pace.push(all.text("/relief/title"));
        assert!(
            all.assert_only("the pace", &pace) + all.assert_only("keep pace", &pace) > 0,
            "{stem}: no pace"
        );
        let relief = all.text("/relief/title");
        all.assert_only("helps most", std::slice::from_ref(&relief));
        for (name, finding) in [("waiting.svg", &waits[0]), ("relief.svg", &relief)] {
            let title = all.texts.iter().find(|(place, _)| place == name);
            assert!(title.is_none_or(|(_, title)| title == finding), "{stem}: {name} says {title:?}");
        }
        what_is_saved_is_the_same_figure(&all, &stem);
    }
}

fn what_is_saved_is_the_same_figure(all: &Places, stem: &str) {
    let page = &all.texts.iter().find(|(place, _)| place == "report.html").expect("a page").1;
    for line in all.summary["relief"]["lines"].as_array().expect("a list") {
        let [what, saves, interval] =
            ["what", "saves", "interval"].map(|key| level(line[key].as_str().unwrap()));
        assert!(page.to_lowercase().contains(&what.to_lowercase()), "{stem}: {what}");
        assert!(
            page.contains(&saves) && page.contains(&interval),
            "{stem}: {what} saves {saves}, {interval}"
        );
    }
}

#[test]
fn a_loss_is_said_in_words_and_never_by_a_sign_beside_them() {
    let bench = bench();
    let (file, list) = with_buckets(&bench);
    for typed in [
        vec!["compare", &file],
        vec!["buckets", &file, &list],
        vec!["sweep", &file, "--vary", "rakers 1..3"],
        vec!["forecast", &file],
    ] {
        let all = places(&bench, &typed, typed[0]);
        for (place, text) in
            all.texts.iter().filter(|(place, _)| place == "the screen" || place.ends_with(".html"))
        {
            for sign in [" -$", " \u{2212}$", "to -"] {
                let at = text.find(sign).map(|at| {
                    text.chars()
                        .skip(text[..at].chars().count().saturating_sub(60))
                        .take(120)
                        .collect::<String>()
                });
                assert_eq!(at, None, "{typed:?}: {place}");
            }
        }
    }
}

#[test]
fn the_answer_is_one_sentence_on_the_screen_on_the_page_and_in_the_file() {
    let bench = bench();
    let (file, list) = with_buckets(&bench);
    for (typed, answer) in [
        (vec!["forecast", &file], "/done_by/plan_on"),
        (vec!["sweep", &file, "--vary", "rakers 1..3"], "/sweep/knee/sentence"),
        (vec!["buckets", &file, &list], "/verdict/answer"),
        (vec!["compare", &file], "/verdict/take"),
        (vec!["quote", &file], "/quote/offer/verdict"),
    ] {
        let all = places(&bench, &typed, typed[0]);
        let answer = all.text(answer);
        for place in ["the screen", "report.html"] {
            let text = &all
                .texts
                .iter()
                .find(|(name, _)| name == place)
                .unwrap_or_else(|| panic!("{typed:?}: {place}"))
                .1;
            assert!(
                text.contains(answer.trim_end_matches('.')),
                "{typed:?}: {place} does not say \"{answer}\":\n{text}"
            );
        }
    }
}
