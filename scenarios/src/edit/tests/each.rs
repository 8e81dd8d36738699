//! Every value and every clause of every job.

use super::*;

#[test]
fn a_value_set_to_what_it_is_changes_nothing() {
    each_value(|text, value| {
        let after = done(text, &set(&value.key, &value.typed))?;
        ensure(value.usual || after == text, || format!("{} is other text:\n{after}", value.typed))?;
        ensure(lines_changed(text, &after) <= 1, || after.clone())?;
        let told = sentence(&after)?;
        let words = &value_of(&told, &value.key)?.words;
        ensure(*words == value.words, || format!("{words}, not {}", value.words))
    });
}

#[test]
fn each_step_reads_without_a_problem_and_the_sentence_says_it() {
    each_value(|text, value| {
        for new in [&value.less, &value.more].into_iter().flatten() {
            let after = done(text, &set(&value.key, new))?;
            let told = sentence(&after).map_err(|words| format!("{} to {new}: {words}", value.typed))?;
            let now = value_of(&told, &value.key)?;
            ensure(now.typed == *new && now.words != value.words, || {
                format!("{new} is told as {} {}", now.typed, now.words)
            })?;
            // Struck follows heaped; who spreads follows who rakes; room is that of each zone.
            let most = match value.key.as_str() {
                "room" => text.matches("[[zone]]").count(),
                key if key == "rakers" || key.ends_with(".heaped") => 2,
                _ => 1,
            };
            ensure(lines_changed(text, &after) <= most, || after.clone())?;
        }
        Ok(())
    });
}

#[test]
fn each_choice_is_understood() {
    // What cannot be together with the rest of the job is told.
    let apart = [
        "hours",
        "break",
        "day ends",
        "get there",
        "fits through",
        "no loader",
        "would both be called",
        "begins after",
    ];
    each_value(|text, value| {
        if !["New job", "Riding arena", "Limestone"].iter().any(|title| text.contains(title)) {
            return Ok(());
        }
        value.choices.iter().try_for_each(|choice| match read(&done(text, &set(&value.key, choice))?) {
            Err(said) if !apart.iter().any(|words| said.contains(words)) => Err(format!("{choice}: {said}")),
            _ => Ok(()),
        })
    });
}

#[test]
fn a_value_unset_is_the_usual_one() {
    each_value(|text, value| {
        if value.key.ends_with(".name") && value.key != "material.name" {
            return Ok(());
        }
        let after = done(text, &Edit::Unset { key: value.key.clone() })?;
        let told = sentence(&after)?;
        let now = value_of(&told, &value.key).ok();
        let is_entry = value.key.starts_with("shift.breaks.");
        ensure(is_entry || now.is_none_or(|now| now.usual), || format!("{now:?}"))?;
        let same = !value.usual || now.map(|now| &now.words) == Some(&value.words);
        ensure(same, || format!("was usual, {}; is {now:?}", value.words))
    });
}

#[test]
fn what_is_added_can_be_removed_and_the_job_is_the_same() {
    each_clause(|text, clause| {
        let Some(add) = &clause.add else { return Ok(()) };
        let more = done(text, &Edit::Add { kind: add.kind.clone() })?;
        let was = job(text)?;
        let now = job(&more).map_err(|words| format!("{words}\n{more}"))?;
        ensure(now != was, || "nothing is added".into())?;
        let told = sentence(&more)?;
        let kind = add.kind.split('.').next().unwrap_or_default().to_owned();
        let removals = told.clauses.iter().filter(|clause| clause.can_remove);
        let mut names =
            removals.filter(|clause| clause.kind.trim_end_matches('s') == kind || clause.kind == kind);
        let back = names.any(|clause| {
            let name = clause.name.clone().unwrap_or_default();
            let less = done(&more, &Edit::Remove { kind: kind.clone(), name });
            less.and_then(|less| job(&less)).is_ok_and(|job| job == was)
        });
        // Whoever rakes alone is said by the number of people.
        let none = kind == "raker"
            && done(&more, &set("rakers", "0")).and_then(|less| job(&less)).is_ok_and(|job| job == was);
        ensure(back || none, || format!("it does not come back\n{more}"))
    });
}

#[test]
fn what_is_removed_leaves_nothing_that_names_it() {
    each_clause(|text, clause| {
        let Some(thing) = clause.name.clone().filter(|_| clause.can_remove) else { return Ok(()) };
        let kind = if clause.kind == "breaks" { "break" } else { clause.kind };
        let less = done(text, &Edit::Remove { kind: kind.into(), name: thing.clone() })?;
        read(&less).map_err(|words| format!("{words}\n{less}"))?;
        let values: String = less.lines().filter_map(|line| line.split('#').next()).collect();
        let is_named = !["delivery", "break"].contains(&kind) && values.contains(&format!("\"{thing}\""));
        ensure(!is_named, || less.clone())
    });
}
