use super::*;
use crate::testing::changed;
use crate::{Selection, read_text};

const LIST: &str = "loading\n20\n25\n30\n";

/// What is said of a job whose loading times stand in one of these files.
fn said(files: &[(&str, &str)], file: &str, column: &str) -> Result<(), String> {
    let heaped = "heaped = \"14 ft3\"";
    let law = format!("{{ family = \"observed\", file = '{file}', column = '{column}', unit = \"s\" }}");
    let text = changed(&[(heaped, &format!("{heaped}\nloading = {law}"))]);
    let files: Texts = files.iter().copied().collect();
    let read = read_text(&text, "job.toml", files, &Selection::default());
    read.map(drop).map_err(|refusal| refusal.to_string())
}

#[test]
fn files_in_memory_are_named_as_on_disk() {
    let files = [("a.csv", LIST), ("times/./b.csv", LIST), ("../outside.csv", LIST)];
    for name in ["a.csv", "./a.csv", "times/b.csv", "times/../a.csv"] {
        assert_eq!(said(&files, name, "loading"), Ok(()), "{name}");
    }
    for (name, words) in [
        ("../outside.csv", "outside the folder of the scenario"),
        ("times/../../a.csv", "outside the folder of the scenario"),
        ("/a.csv", "outside the folder of the scenario"),
        ("b.csv", "there is no such file"),
        ("times", "this is a folder"),
        (".", "this is a folder"),
    ] {
        let said = said(&files, name, "loading").unwrap_err();
        assert!(said.contains(words), "{name}: {said}");
    }
}

/// Files of every shape that keep something to themselves: none of it is ever told, whatever column is asked for.
#[test]
fn nothing_is_told_of_a_file_that_is_no_list_of_figures() {
    let secret = "hunter2";
    for (name, text) in [
        ("key.txt", "-----BEGIN KEY-----\n8hunter2AAAB\nhunter2+x9\n-----END KEY-----\n"),
        ("settings.ini", "token=hunter2\nother=9hunter2\n"),
        ("people.csv", "name,note\nann,hunter2\nbob,3 hunter2 s\n"),
        ("headless.csv", "9hunter2\n20\n30\n"),
        ("crooked.csv", "a,b\nhunter2\nc,d,hunter2\n"),
    ] {
        let first = text.lines().next().unwrap();
        for column in ["loading", "note", "name", "a", first.split(',').next().unwrap()] {
            if column.contains(secret) {
                continue;
            }
            let said = said(&[(name, text)], name, column).unwrap_err();
            let told = said.replace(column, "");
            assert!(
                !told.contains(secret) && !told.contains("BEGIN") && !told.contains("token"),
                "{name} {column}: {said}"
            );
        }
    }
    // A list of figures with one that is none is told of, or nobody could put it right.
    let list = [("list.csv", "loading\n20\nlong\n30\n")];
    assert!(said(&list, "list.csv", "loading").unwrap_err().contains("line 3, \"long\""));
}

#[test]
fn two_equal_headings_are_refused() {
    let twice = [("a.csv", "loading,loading\n1,2\n")];
    assert!(said(&twice, "a.csv", "loading").unwrap_err().contains("two columns of this name"));
}

#[test]
fn a_file_that_is_too_large_is_refused_with_the_limit() {
    let said = said(&[("a.csv", &LIST.repeat(400_000))], "a.csv", "loading").unwrap_err();
    assert!(said.contains("larger than 4 MB, the most that is read; keep the column"), "{said}");
}
