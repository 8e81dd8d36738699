use super::*;
use crate::testing::SOUND;

/// What must stand beside a key so that its example is accepted, and what must go.
fn beside(heading: &str, name: &str) -> (&'static str, &'static [&'static str]) {
    match (heading, name) {
        ("[[zone]]", "area" | "diameter") => ("depth = \"4 in\"", &["volume"]),
        ("[[zone]]", "length") => ("width = \"30 ft\"\ndepth = \"4 in\"", &["volume"]),
        ("[[zone]]", "width") => ("length = \"40 ft\"\ndepth = \"4 in\"", &["volume"]),
        ("[[zone]]", "depth") => ("area = \"1200 ft2\"", &["volume"]),
        ("[[zone]]", "ways") => ("", &["distance"]),
        ("[[loader]]", "hydraulic_lift_share") => ("hydraulic_lift = \"1100 lb\"", &[]),
        ("[[loader]]", "rated_operating_capacity_share") => ("rated_operating_capacity = \"1100 lb\"", &[]),
        ("[[loader]]", "tipping_load_share") => ("tipping_load = \"1100 lb\"", &[]),
        ("[crew]", "crowding") => ("together = true", &[]),
        ("[finish]", "surplus") => ("rule = \"pile cleared\"", &[]),
        ("[[alternative]]", "change") => ("name = \"two\"", &[]),
        ("[[alternative]]", "name") => ("change = { \"raker.helper.count\" = 2 }", &[]),
        _ => ("", &[]),
    }
}

/// The small job, with a second zone and a gate that examples name, and this in place of what a table says.
fn with(heading: &str, name: &str, example: &str) -> String {
    let more = "[[zone]]\nname = \"south\"\nvolume = \"4 yd3\"\ndistance = \"20 yd\"\n[[pass]]\nname = \"gate\"\nwidth = \"3 m\"\n";
    let text = format!("{SOUND}{more}");
    let (also, gone) = beside(heading, name);
    let line = format!("{name} = {example}\n{also}\n");
    if heading.is_empty() {
        return format!("{line}{text}");
    }
    let Some(start) = text.find(heading) else {
        let its_name = if heading.starts_with("[[") && name != "name" && also.is_empty() {
            "name = \"x\"\n"
        } else {
            ""
        };
        return format!("{text}{heading}\n{its_name}{line}");
    };
    let start = start + heading.len() + 1;
    let end = text[start..].find("\n[").map_or(text.len(), |end| start + end + 1);
    let stays = |typed: &&str| {
        let key = typed.split(" = ").next().unwrap_or_default();
        key != name && !gone.contains(&key) && !also.contains(&format!("{key} = "))
    };
    let kept: String = text[start..end].lines().filter(stays).map(|typed| format!("{typed}\n")).collect();
    // What is called by its name elsewhere keeps it.
    let named = if name == "name" { text[start..end].to_owned() } else { format!("{kept}{line}") };
    format!("{}{named}{}", &text[..start], &text[end..])
}

#[test]
fn every_example_is_accepted_where_it_belongs() {
    for table in keys() {
        let nested = table.heading.contains(' '); // The examples of those are tried below, all of a table together.
        for key in table.keys.iter().filter(|_| !nested) {
            let text = with(&table.heading, key.name, key.example);
            let read = crate::testing::read(&text);
            assert!(read.is_ok(), "{} {}: {}\n{text}", table.heading, key.name, read.unwrap_err());
        }
    }
}

/// The examples of tables within tables, all of one table together.
#[test]
fn the_examples_of_inner_tables_are_accepted_together() {
    for table in keys() {
        let Some((outer, name)) = table
            .heading
            .split_once(' ')
            .filter(|(outer, name)| outer.starts_with('[') && !name.contains(' '))
        else {
            continue;
        };
        let inner: Vec<String> =
            table.keys.iter().map(|key| format!("{} = {}", key.name, key.example)).collect();
        let inner = format!("{{ {} }}", inner.join(", "));
        let listed = keys()
            .iter()
            .filter(|t| t.heading == outer)
            .flat_map(|t| t.keys.clone())
            .any(|key| key.name == name && key.holds.starts_with("a list"));
        let text = with(outer, name, &if listed { format!("[ {inner} ]") } else { inner });
        let read = crate::testing::read(&text);
        assert!(read.is_ok(), "{}: {}\n{text}", table.heading, read.unwrap_err());
    }
}

#[test]
fn the_examples_of_each_family_are_accepted_together() {
    let tables = keys();
    let lines = &tables.last().unwrap().keys;
    let example = |name: &str| lines.iter().find(|line| line.name == name).unwrap().example;
    let said = |keys: &[&str]| {
        keys.iter().map(|key| format!("{key} = {}", example(key))).collect::<Vec<_>>().join(", ")
    };
    let three = format!("{{ {} }}", said(&quantity::keys::THREE));
    let mut all = vec![three];
    for (family, its_keys) in quantity::FAMILIES {
        let its_keys: Vec<&str> =
            its_keys.iter().copied().filter(|key| !["file", "column"].contains(key)).collect();
        all.push(format!("{{ family = \"{family}\", by = \"days\", {} }}", said(&its_keys)));
        assert!(tables.last().unwrap().means.contains(family));
    }
    for value in all {
        let text = with("[[loader]]", "loading", &value);
        let read = crate::testing::read(&text);
        assert!(read.is_ok(), "{value}: {}", read.unwrap_err());
    }
}

#[test]
fn every_key_of_a_quantity_that_the_reader_knows_has_its_line() {
    let known = quantity::FAMILIES.iter().flat_map(|(_, keys)| keys.iter());
    for key in known.chain(&quantity::keys::THREE).chain(&["family", "by"]) {
        assert!(quantity::keys::KEYS.iter().any(|line| line.name == *key), "{key}");
    }
}

#[test]
fn a_value_beyond_its_limits_is_refused_with_the_limits_of_the_reference() {
    let mut tried = 0;
    for table in keys() {
        for key in table.keys.iter().filter(|_| !table.heading.contains(' ')) {
            let Some((_, limits)) = key.holds.split_once("one figure; ") else { continue };
            let unit = key
                .example
                .trim_matches('"')
                .trim_start_matches('$')
                .trim_start_matches(|c: char| !c.is_alphabetic() && !"/%".contains(c));
            let sign = if key.example.contains('$') { "$" } else { "" };
            let text = with(&table.heading, key.name, &format!("\"{sign}9e12 {unit}\""));
            let refusal = crate::testing::read(&text).unwrap_err().to_string();
            assert!(
                refusal.contains(&format!("it may be {limits}")),
                "{} {}: {refusal}",
                table.heading,
                key.name
            );
            tried += 1;
        }
    }
    assert!(tried > 25, "only {tried} figures were tried");
}

#[test]
fn every_key_is_said_in_words_that_make_a_line() {
    let tables = keys();
    assert!(tables.len() > 18 && tables.iter().map(|table| table.keys.len()).sum::<usize>() > 90);
    for key in tables.iter().flat_map(|table| &table.keys) {
        for words in [key.means, &key.holds, &key.left_out, key.example] {
            assert!(
                !words.is_empty() && !words.contains('\n') && !words.contains('|'),
                "{}: {words}",
                key.name
            );
        }
        assert!(key.means.ends_with('.'), "{}: {}", key.name, key.means);
        assert!(
            key.from.is_none_or(|from| from.contains("no source") || from.contains("from memory")),
            "{}",
            key.name
        );
    }
}

#[test]
fn common_words_find_their_keys() {
    let count = |words: &str| keys_called(words).iter().map(|table| table.keys.len()).sum::<usize>();
    assert_eq!(count("loader.heaped"), 1);
    assert_eq!(count("width"), 3);
    assert!(count("loader") > 20);
    assert!(count("fuel") >= 3);
    assert_eq!((count(""), count(".")), (0, 0));
}
