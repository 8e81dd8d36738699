use super::comparison_page;
use crate::chart::Size;
use crate::compare::Comparison;
use crate::compare::figures::rival_figures;
use crate::compare::findings::comparison;
use crate::compare::fixtures::three;
use crate::example::{assert_stands_alone, between};

fn drawn(of: &Comparison) -> String {
    let findings = comparison(of);
    let figures = |size| rival_figures(of, &findings, size).unwrap();
    comparison_page(of, &findings, &figures(Size::PAGE), &figures(Size::PHONE))
}

#[test]
fn the_verdict_stands_first_and_the_sections_come_in_the_order_people_ask() {
    let html = drawn(&three());
    assert_eq!(
        between(&html, "<h2>", "</h2>"),
        [
            "Which to take",
            "Done by when",
            "Against A, as it stands",
            "What it costs",
            "Cautions",
            "What holds each up",
            "The choices",
            "The job",
            "What was assumed",
            "How it was worked out",
        ]
    );
}

#[test]
fn the_page_stands_alone_and_every_link_leads_somewhere() {
    assert_stands_alone(&drawn(&three()));
}

#[test]
fn every_job_stands_in_every_table_and_every_caution_on_the_page() {
    let jobs = three();
    let html = drawn(&jobs);
    for section in ["times", "costs", "waits", "choices"] {
        let part = between(&html, &format!("<section id=\"{section}\""), "</section>")[0];
        for choice in &jobs.choices {
            assert!(part.contains(&choice.name), "{} in {section}", choice.name);
        }
    }
    for caution in &jobs.choices[0].scenario.cautions {
        assert!(html.contains(&caution.remedy[1..]), "{}", caution.remedy);
    }
    assert!(!between(&html, "<body>", "</body>")[0].to_lowercase().contains("safe"));
}

#[test]
fn what_names_say_cannot_become_part_of_the_page() {
    const EVIL: &str = "<script>alert(\"1\")</script></style><img onerror='x'>&";
    let mut jobs = three();
    for choice in &mut jobs.choices {
        choice.name = EVIL.into();
        choice.scenario.title = EVIL.into();
        choice.scenario.file = EVIL.into();
        choice.scenario.alternative = Some(EVIL.into());
        choice.scenario.currency = EVIL.into();
    }
    jobs.provenance.command = EVIL.into();
    let html = drawn(&jobs);
    for markup in ["<script", "<img", "</style><img"] {
        assert!(!html.contains(markup), "{markup}");
    }
    assert_eq!(html.matches("</style>").count(), 1);
}

#[test]
fn without_prices_no_costs_are_made_up() {
    let mut jobs = three();
    for choice in &mut jobs.choices {
        let job = &mut choice.scenario.job;
        job.prices = sim::Prices { fuel_per_l: 0.0, material: 0.0 };
        (job.loaders[0].machine_cost_per_h, job.loaders[0].operator_cost_per_h) = (0.0, 0.0);
        job.rakers[0].cost_per_h = 0.0;
    }
    let html = drawn(&jobs);
    assert!(!html.contains("id=\"costs\"") && !html.contains("cheaper"));
}
