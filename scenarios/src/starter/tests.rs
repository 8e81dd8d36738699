use super::*;
use crate::Texts;
use crate::{Selection, read_text};

fn reads(text: &str) -> crate::Scenario {
    read_text(text, "new.toml", Texts::default(), &Selection::default())
        .unwrap_or_else(|refusal| panic!("{refusal}\n{text}"))
}

#[test]
fn a_starter_file_reads_back_without_a_problem_whatever_is_answered() {
    for units in [System::Us, System::Metric] {
        for rakers in [0, 1, 3] {
            for gate in [None, Some(usual::gate(units).to_owned())] {
                let title = "Bob's \"new\" bed \\ north".to_owned();
                let answers = Answers { rakers, gate, title, ..Answers::usual(units) };
                let scenario = reads(&starter(&answers));
                assert_eq!(scenario.title, answers.title);
                assert_eq!(scenario.units, units);
                assert_eq!(scenario.job.rakers.len(), rakers as usize);
                assert_eq!(scenario.job.passes.len(), usize::from(answers.gate.is_some()));
            }
        }
    }
}

/// Every line that is commented out is right as it stands, or it would mislead whoever takes the sign away.
#[test]
fn every_line_left_out_of_a_starter_file_may_be_let_in() {
    for units in [System::Us, System::Metric] {
        for rakers in [0, 2] {
            let text = starter(&Answers { rakers, gate: Some("3 m".into()), ..Answers::usual(units) });
            let keys = |line: &str| {
                let rest = line.strip_prefix("# ").unwrap_or_default();
                rest.starts_with('[') || rest.split_once(" = ").is_some_and(|(key, _)| !key.contains(' '))
            };
            let (comment, body) = text.split_once("title = ").unwrap();
            assert!(comment.lines().all(|line| line.is_empty() || line.starts_with('#')));
            let let_in: Vec<&str> =
                body.lines().map(|line| if keys(line) { &line[2..] } else { line }).collect();
            let scenario = reads(&format!("title = {}", let_in.join("\n")));
            assert_eq!(scenario.alternatives, ["a variant"]);
            assert!(!scenario.currency.is_empty());
        }
    }
}

#[test]
fn the_order_is_never_the_need_itself() {
    for (volume, ordered_m3) in
        [("24 m3", 30.0), ("30 m3", 45.0), ("3 m3", 3.5), ("110 m2 at 10 cm", 110.0 * 0.1 / 0.75 * 1.15)]
    {
        let answers = Answers { volume: volume.into(), ..Answers::usual(System::Metric) };
        let scenario = reads(&starter(&answers));
        let need: f64 = scenario.job.zones.iter().map(|zone| zone.need_m3).sum();
        assert!(scenario.ordered_m3 > 1.1 * need, "{volume}: {} of {need}", scenario.ordered_m3);
        assert!((scenario.ordered_m3 - ordered_m3).abs() <= 0.1, "{volume}: {}", scenario.ordered_m3);
        assert!(scenario.cautions.iter().all(|caution| caution.kind != "short-of-need"), "{volume}");
    }
}

#[test]
fn breaks_prices_and_the_figure_of_the_manual_are_in_the_file_as_answered() {
    let some = |text: &str| Some(text.to_owned());
    for figure in LiftFigure::ALL {
        let prices = AnsweredPrices {
            material: some("$20/yd3"),
            machine: some("$31/h"),
            operator: some("$36/h"),
            raker: some("$21/h"),
        };
        let breaks = "10:00-10:15, 12:30-13:00".to_owned();
        let answers =
            Answers { breaks, prices, lift: Some((figure, "1100 lb".into())), ..Answers::default() };
        let job = reads(&starter(&answers)).job;
        assert_eq!(job.shift.breaks.len(), 2);
        assert_eq!((job.loaders[0].machine_cost_per_h, job.loaders[0].operator_cost_per_h), (31.0, 36.0));
        assert_eq!(job.rakers[0].cost_per_h, 21.0);
        assert!(job.prices.material > 0.0);
        let may_kg = 1100.0 * 0.453_592_37 * figure.usual(false).value;
        assert!((job.loaders[0].lift_kg.unwrap() - may_kg).abs() < 1e-6, "{figure:?}");
    }
}

#[test]
fn nonsense_answered_is_found_when_the_file_is_read() {
    let answers = Answers { volume: "a lot".into(), ..Answers::default() };
    let refusal = read_text(&starter(&answers), "new.toml", Texts::default(), &Selection::default());
    assert!(refusal.unwrap_err().to_string().contains("does not begin with a number"));
}
