//! The job asked for.

use super::*;

/// What a job says besides its sentence is that of the job asked for, not of the file as it stands.
#[test]
fn what_the_sentence_does_not_say_is_that_of_the_job_asked_for() {
    let further = |selection: &Selection| {
        let text = changed(&[])
            + "[[alternative]]\nname = \"slow to dump\"\nchange = { \"loader.tractor.dumping\" = \"14 s\" }\n";
        let file = JobFile::of_text(&text, "job.toml", Texts::default()).unwrap();
        let told = file.scenario(selection).unwrap().sentence.further;
        told.into_iter().map(|one| one.key).collect::<Vec<_>>()
    };
    let with = |alternative: Option<&str>, changes: &[&str]| Selection {
        alternative: alternative.map(str::to_owned),
        changes: changes.iter().map(|change| change.parse().unwrap()).collect(),
        ..Selection::default()
    };
    let (dumping, starting) = ("loader.tractor.dumping", "loader.tractor.start_and_stop");
    let change = "loader.tractor.start_and_stop = 6 s";
    assert_eq!(further(&with(None, &[])), Vec::<String>::new());
    assert_eq!(further(&with(Some("slow to dump"), &[])), [dumping]);
    assert_eq!(further(&with(None, &[change])), [starting]);
    let both = further(&with(Some("slow to dump"), &[change, "rakers = 2"]));
    assert!(
        both.len() == 2 && [dumping, starting].iter().all(|key| both.iter().any(|one| one == key)),
        "{both:?}"
    );
}
