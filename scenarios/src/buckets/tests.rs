use super::*;

fn list(text: &str) -> BucketList {
    buckets_text(text, "b.csv").unwrap_or_else(|refusal| panic!("{refusal}"))
}

#[track_caller]
fn said(text: &str) -> Vec<String> {
    let refusal = buckets_text(text, "b.csv").unwrap_err();
    for problem in &refusal.problems {
        if let Some(span) = &problem.span {
            assert!(text.get(span.clone()).is_some() && problem.line > 0, "{problem}");
        }
    }
    refusal.problems.iter().map(ToString::to_string).collect()
}

#[test]
fn columns_may_stand_in_any_order_and_cells_may_be_blank() {
    let list = list(
        "\u{feff}# from the shed\nPrice, heaped ,mass,NAME,width,struck\n\n$950, 14 ft3 ,180 lb,\"wide, low\",\"58 in\",11 ft3\n,0.5 m3,,plain,,\n# end\n",
    );
    assert_eq!(list.currency, "$");
    let wide = &list.buckets[0];
    assert_eq!((wide.name.as_str(), wide.price), ("wide, low", Some(950.0)));
    assert!(
        (wide.mass_kg.unwrap() - 81.646_626_6).abs() < 1e-9
            && (wide.width_m.unwrap() - 1.473_2).abs() < 1e-12
    );
    let plain = &list.buckets[1];
    let none = (plain.struck_m3, plain.width_m, plain.mass_kg, plain.price);
    assert_eq!((plain.heaped_m3, none), (0.5, (None, None, None, None)));
    assert_eq!(self::list("name;heaped\nx;0,5 m3\n".replace("0,5", "0.5").as_str()).buckets.len(), 1);
    assert_eq!(self::list("name\theaped\r\nx\t2 m3\r\n,,\r\n").buckets[0].heaped_m3, 2.0);
    assert_eq!(list.hash.len(), 64);
}

#[test]
fn what_is_wrong_is_told_with_line_column_value_and_remedy() {
    for (text, expected) in [
        (
            "name,heaped\nx,9",
            "b.csv:2:3: bucket \"x\", heaped = 9: the unit is missing; a volume is wanted, such as \"14 ft3\" or \"0.4 m3\"",
        ),
        (
            "name,heaped\nx,\n",
            "b.csv:2:1: bucket \"x\": its heaped capacity is missing; write it with its unit, such as 14 ft3",
        ),
        ("name,heaped\n,8 ft3\n", "b.csv:2:1: name: this bucket has no name; give each a name of its own"),
        (
            "name,heaped\nx,8 ft3\nx,10 ft3\n",
            "b.csv:3:1: name = x: two buckets have this name; give each a name of its own",
        ),
        (
            "name,heaped,struck\nx,8 ft3,10 ft3\n",
            "b.csv:2:9: bucket \"x\", struck = 10 ft3: a bucket holds no more struck than heaped; check both; heaped is the larger figure",
        ),
        (
            "name,heapd\nx,8 ft3\n",
            "b.csv:1:6: heading = heapd: this column is not known; the nearest known is \"heaped\"; units stand in the cells, as in 14 ft3",
        ),
        (
            "name,heaped (ft3)\nx,9\n",
            "b.csv:1:6: heading = heaped (ft3): this column is not known; the nearest known is \"heaped\"; units stand in the cells, as in 14 ft3",
        ),
        (
            "name,heaped,colour\nx,8 ft3,red\n",
            "b.csv:1:13: heading = colour: this column is not known; known columns are name, struck, heaped, width, mass, price",
        ),
        (
            "name,heaped,heaped\nx,8 ft3,8 ft3\n",
            "b.csv:1:13: heading = heaped: this column stands here twice; keep one of the two",
        ),
        (
            "name,width\nx,58 in\n",
            "b.csv:1:1: heading: the column \"heaped\" is missing; begin with a heading line such as: name, struck, heaped, width, mass, price",
        ),
        (
            "name,heaped\nx,8 ft3,58 in\n",
            "b.csv:2:9: line = 58 in: this line has 3 cells where the heading has 2; put a cell with a comma in it in quotes",
        ),
        (
            "name,heaped\n\"x,8 ft3\n",
            "b.csv:2:1: line = \"x,8 ft3: a quote is opened and not closed; a quoted cell ends with a quote on the same line",
        ),
        (
            "name,heaped\n",
            "b.csv: there is no bucket in this list; write a line for each, such as: small, 8.5 ft3",
        ),
        (
            "# nothing\n",
            "b.csv: this list is empty; begin with a heading line: name, struck, heaped, width, mass, price",
        ),
        (
            "name,heaped,price\nx,8 ft3,$9\ny,8 ft3,9 EUR\n",
            "b.csv:3:9: bucket \"y\", price = 9 EUR: this is in EUR, but line 2 is in $; write all prices in one currency, such as $",
        ),
        (
            "name,heaped,width\nx,8 ft3,60 lb\n",
            "b.csv:2:9: bucket \"x\", width = 60 lb: this is a mass; a length is wanted, such as \"48 in\" or \"1.2 m\"",
        ),
        (
            "name,heaped,mass\nx,8 ft3,0 lb\n",
            "b.csv:2:9: bucket \"x\", mass = 0 lb: this may not be zero; it may be from 1 kg to 20 t, such as \"180 lb\" or \"80 kg\"",
        ),
    ] {
        assert_eq!(said(text), [expected], "{text}");
    }
}

#[test]
fn all_problems_come_at_once() {
    let text = "name,heaped,mass\nx,9 lb,1 in\n,8 ft3,\ny,nan ft3,\n";
    assert_eq!(said(text).len(), 4, "{:#?}", said(text));
}

#[test]
fn more_than_a_hundred_buckets_are_too_many() {
    let rows = |n: usize| (0..n).map(|i| format!("b{i},8 ft3\n")).collect::<String>();
    assert_eq!(list(&format!("name,heaped\n{}", rows(100))).buckets.len(), 100);
    let said = said(&format!("name,heaped\n{}", rows(101)));
    assert!(said[0].starts_with("b.csv:102:1: the list: there are more than 100"), "{said:#?}");
}

#[test]
fn a_bucket_is_found_by_its_name_or_the_nearest_is_told() {
    let list = list("name,heaped\nwide one,8 ft3\n");
    assert_eq!(list.find(" wide one ").unwrap().name, "wide one");
    let told = list.find("wide on").unwrap_err();
    assert_eq!(told, "b.csv has no bucket called \"wide on\"; the nearest is \"wide one\"");
}

#[test]
fn the_shipped_list_is_read_and_has_buckets_that_do_not_fit() {
    let (name, text) = crate::shipped_files()[0];
    let list = buckets_text(text, name).unwrap_or_else(|refusal| panic!("{refusal}"));
    assert!((5..=6).contains(&list.buckets.len()) && list.currency == "$");
}

/// Nothing cut off, spoilt or put in makes the reader panic.
#[test]
fn no_spoilt_list_makes_the_reader_panic() {
    let text = crate::shipped_files()[0].1;
    for end in (0..text.len()).filter(|end| text.is_char_boundary(*end)) {
        drop(buckets_text(&text[..end], "cut.csv"));
        for put in ["\"", ",", ";", "\n", "#", "é", "\0", "nan", "9e999", "\t"] {
            drop(buckets_text(&format!("{}{put}{}", &text[..end], &text[end..]), "spoilt.csv"));
        }
    }
}
