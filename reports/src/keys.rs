//! The keys of a scenario file: on the screen, and as one page to look things up in.

use crate::render::screen::Layout;
use scenarios::{KeyLine, KeyTable};

/// The names of all keys, table by table.
pub fn key_names(tables: &[KeyTable], columns: u16) -> String {
    let mut layout = Layout::new(columns);
    for table in tables {
        let names: Vec<&str> = table.keys.iter().map(|key| key.name).collect();
        layout.section(&heading(table), [table.means.to_owned(), names.join(", ")]).gap();
    }
    layout.section(
        "More",
        ["heapcast keys WORD tells what a key means, its limits, and what is taken without it.".to_owned()],
    );
    layout.text()
}

/// What each key means, what it holds, and what is taken without it.
pub fn keys(tables: &[KeyTable], columns: u16) -> String {
    let mut layout = Layout::new(columns);
    for table in tables {
        for (i, key) in table.keys.iter().enumerate() {
            let heading = if i == 0 { heading(table) } else { String::new() };
            layout.section(&heading, said(key)).gap();
        }
    }
    let note = "Figures carry their units in quotes, US and metric mixed as you like. What a file leaves out is listed as assumed \
                with every forecast.";
    layout.section("In a file", [note.to_owned()]);
    layout.text()
}

fn heading(table: &KeyTable) -> String {
    if table.heading.is_empty() { "at the top".into() } else { table.heading.clone() }
}

fn said(key: &KeyLine) -> [String; 4] {
    [
        format!("{} = {}", key.name, key.example),
        key.means.to_owned(),
        format!("holds: {}", key.holds),
        format!("left out: {}", left_out(key)),
    ]
}

fn left_out(key: &KeyLine) -> String {
    let from = key.from.map(|from| format!(" ({from})")).unwrap_or_default();
    format!("{}{from}", key.left_out)
}

/// All keys as a page in Markdown.
pub fn keys_page(tables: &[KeyTable]) -> String {
    let mut page = String::from(
        "# Keys of a scenario file\n\nMade from what the program itself knows of each key; on the screen: `heapcast keys`, `heapcast keys loader`, \
         `heapcast keys fuel`.\nFigures carry their units in quotes, US and metric mixed as you like: `\"24 yd3\"`, `\"0.4 m3\"`, `\"1 h 30 min\"`. What is \
         left out is listed as assumed with every forecast.\n",
    );
    for table in tables {
        let heading = match table.heading.as_str() {
            "" => "At the top".to_owned(),
            "a quantity" => "A quantity".to_owned(),
            heading => format!("`{heading}`"),
        };
        page += &format!(
            "\n## {heading}\n\n{}\n\n| key | meaning | holds | left out | example |\n|---|---|---|---|---|\n",
            table.means
        );
        for key in &table.keys {
            let KeyLine { name, means, holds, example, .. } = key;
            page += &format!("| `{name}` | {means} | {holds} | {} | `{name} = {example}` |\n", left_out(key));
        }
    }
    page
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_stands_on_the_screen_with_all_that_is_known_of_it() {
        let tables = scenarios::keys();
        let flat = |text: String| {
            let plain = anstream::adapter::strip_str(&text).to_string();
            assert!(plain.lines().all(|line| line.chars().count() <= 80), "{plain}");
            plain.split_whitespace().collect::<Vec<_>>().join(" ")
        };
        let names = flat(key_names(&tables, 80));
        for table in &tables {
            let all = flat(keys(std::slice::from_ref(table), 80));
            for key in &table.keys {
                assert!(names.contains(key.name), "{}", key.name);
                for words in [key.means, &key.holds, &left_out(key), key.example] {
                    let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
                    assert!(all.contains(&words), "{words} in {all}");
                }
            }
        }
    }
}
