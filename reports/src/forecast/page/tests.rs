use super::crew_sheet::loads::load_plan;
use super::page;
use crate::chart::{Figure, Size};
use crate::example::{self, between};
use crate::forecast::figures::figures;
use crate::forecast::run::Forecast;

fn drawn(forecast: &Forecast) -> String {
    page(forecast, &all(forecast, Size::PAGE), &all(forecast, Size::PHONE))
}

fn all(forecast: &Forecast, size: Size) -> Vec<Figure> {
    figures(forecast, size).unwrap()
}

#[test]
fn the_page_stands_alone_and_every_link_leads_somewhere() {
    example::assert_stands_alone(&drawn(&example::forecast()));
}

#[test]
fn every_warning_caution_and_assumption_is_on_the_page() {
    let forecast = example::forecast();
    let html = drawn(&forecast);
    let said = |words: &str| {
        let escaped = maud::html! { (words) }.into_string();
        let rest: String = escaped.chars().skip(1).collect();
        assert!(html.contains(&rest), "{words}");
    };
    for caution in &forecast.scenario.cautions {
        said(&caution.cause);
        said(&caution.remedy);
    }
    for assumption in &forecast.scenario.assumptions {
        said(&assumption.words);
        said(&assumption.from);
        said(&assumption.key);
    }
    assert!(html.contains("Read <a href=\"#cautions\">the warning</a> first."));
}

#[test]
fn what_a_scenario_says_cannot_become_part_of_the_page() {
    const EVIL: &str = "<script>alert(\"1\")</script></style><img onerror='x'>&";
    let mut forecast = example::forecast();
    let scenario = &mut forecast.scenario;
    scenario.title = EVIL.into();
    scenario.alternative = Some(EVIL.into());
    scenario.currency = EVIL.into();
    scenario.job.material.name = EVIL.into();
    scenario.job.zones[0].name = EVIL.into();
    scenario.job.stockpiles[0].name = EVIL.into();
    scenario.job.loaders[0].name = EVIL.into();
    scenario.job.rakers[0].name = EVIL.into();
    scenario.job.passes.push(sim::Pass { name: EVIL.into(), width_m: 2.0, passing_s: 5.0, at_once: 1 });
    for caution in &mut scenario.cautions {
        (caution.cause, caution.remedy) = (EVIL.into(), EVIL.into());
    }
    for assumption in &mut scenario.assumptions {
        *assumption = scenarios::Assumption { key: EVIL.into(), words: EVIL.into(), from: EVIL.into() };
    }
    forecast.provenance.file = EVIL.into();
    forecast.provenance.command = EVIL.into();
    forecast.provenance.alternative = Some(EVIL.into());
    let html = drawn(&forecast);
    for markup in ["<script", "<img", "</style><img"] {
        assert!(!html.contains(markup), "{markup}");
    }
    assert_eq!(html.matches("</style>").count(), 1);
    assert!(html.contains("&lt;script&gt;alert"));
}

#[test]
fn the_sections_come_in_the_order_people_ask() {
    let html = drawn(&example::forecast());
    let headings = between(&html, "<h2>", "</h2>");
    assert_eq!(
        headings,
        [
            "Done by when",
            "How likely by when",
            "What holds it up",
            "What would help",
            "What it takes",
            "Cautions",
            "Crew sheet",
            "Half-way marks",
            "Handbook figure",
            "The job",
            "What was assumed",
            "How it was worked out",
        ]
    );
}

#[test]
fn no_heading_skips_a_level() {
    let html = drawn(&example::forecast());
    let levels: Vec<u32> = between(&html, "<h", ">").iter().filter_map(|name| name.parse().ok()).collect();
    assert_eq!(levels.iter().filter(|level| **level == 1).count(), 1);
    assert_eq!(levels[0], 1);
    assert!(levels.windows(2).all(|pair| pair[1] <= pair[0] + 1), "{levels:?}");
}

#[test]
fn the_range_stands_first_then_the_contents_the_chart_and_its_table() {
    let html = drawn(&example::forecast());
    let places = ["class=\"big\"", "<nav", "<figure>", "<table"].map(|part| html.find(part).expect(part));
    assert!(places.is_sorted(), "{places:?}");
}

#[test]
fn the_crew_sheet_totals_the_mean_loads_of_the_study() {
    let forecast = example::forecast();
    let mean = forecast.study.sorted(|o| f64::from(o.loads)).mean().value.round() as u64;
    assert_eq!(load_plan(&forecast).total, mean);
    let html = drawn(&forecast);
    let sheet = between(&html, "<div class=\"inside\" id=\"crew-sheet-inside\">", "</section>")[0];
    let foot = between(sheet, "<tfoot>", "</tfoot>")[0];
    assert!(foot.contains(&format!("<td>{mean}</td>")), "{foot}");
    assert_eq!(sheet.matches("<i></i>").count() as u64, mean.div_ceil(2), "a box for every 2 loads");
}

#[test]
fn everybody_on_the_job_stands_on_the_crew_sheet() {
    let forecast = example::forecast();
    let html = drawn(&forecast);
    let sheet = between(&html, "<div class=\"inside\" id=\"crew-sheet-inside\">", "</section>")[0];
    for name in ["compact tractor", "helper", "arena", "pile"] {
        assert!(sheet.contains(&format!(">{name}<")), "{name}");
    }
}

#[test]
fn without_figures_the_findings_are_said_in_words() {
    let forecast = example::forecast();
    let html = page(&forecast, &[], &[]);
    assert!(!html.contains("<figure>"));
    assert!(html.contains(&crate::findings::who_waits(&forecast).title));
    assert!(html.contains(&crate::findings::relief(&forecast).title));
}

#[test]
fn the_page_never_calls_anything_safe() {
    let html = drawn(&example::forecast()).to_lowercase();
    let body = between(&html, "<body>", "</body>")[0];
    assert!(!body.contains("safe"), "{:?}", body.find("safe"));
}

#[test]
fn seed_version_hash_runs_and_definitions_stand_at_the_foot() {
    let forecast = example::forecast();
    let html = drawn(&forecast);
    let foot = between(&html, "<div class=\"inside\" id=\"foot-inside\">", "</section>")[0];
    let from = &forecast.provenance;
    for words in [&from.version, &from.scenario_hash, &from.file, &from.command] {
        assert!(foot.contains(words.as_str()), "{words}");
    }
    assert!(foot.contains("type 7") && foot.contains("95 %"));
}

#[test]
fn a_job_without_chance_has_one_answer_and_no_table_of_chances() {
    let mut forecast = example::forecast();
    let one = forecast.study.outcomes[50].clone();
    forecast.study.outcomes.fill(one);
    let html = drawn(&forecast);
    let range = between(&html, "<section id=\"range\">", "</section>")[0];
    assert!(!range.contains("<table"), "{range}");
    assert!(range.contains("Nothing here is left to chance."));
}

#[test]
fn the_marks_of_the_day_are_those_of_the_progress_of_the_runs() {
    let forecast = example::forecast();
    let html = drawn(&forecast);
    let progress = between(&html, "<div class=\"inside\" id=\"progress-inside\">", "</section>")[0];
    // Half of a run of 120 to 169.5 min: after 62.475 min (P10) to 82.275 min (P90), from 8:00 on, said to 5 min.
    assert!(progress.contains("9:05\u{a0}am to 9:25\u{a0}am"), "{progress}");
}

#[test]
fn on_paper_the_crew_sheet_has_pages_of_its_own_and_each_page_bears_the_title() {
    let html = drawn(&example::forecast());
    assert!(html.contains("#crew-sheet { break-before: page; break-after: page; }"));
    assert!(html.contains("content: \"Riding arena\\00002C  new footing\""));
}

#[test]
fn the_hatched_parts_of_a_long_run_are_few_shapes_so_that_the_page_prints_quickly() {
    let mut forecast = example::forecast();
    let plan = sim::Plan::new(&forecast.scenario.job).unwrap();
    forecast.typical = sim::Replay::new(&plan, 1, 0).unwrap();
    let drawn_alone = all(&forecast, Size::PAGE);
    let timeline = drawn_alone.iter().find(|figure| figure.name == "timeline").unwrap();
    let rectangles = timeline.svg.matches("fill=\"url(#").count();
    assert!(rectangles > 100, "the example has a long run: {rectangles}");
    let html = page(&forecast, &drawn_alone, &[]);
    let typical = between(&html, "<div class=\"inside\" id=\"typical-inside\">", "</section>")[0];
    let shapes = typical.matches("fill=\"url(#").count();
    assert!(shapes <= rectangles / 5, "{shapes} shapes of {rectangles} rectangles");
}

#[test]
fn the_large_range_ends_with_the_days_that_the_sentence_below_it_names() {
    let mut forecast = example::forecast();
    forecast.percentiles = vec![0.1, 0.5, 0.8, 0.9, 0.95];
    let done = crate::findings::done_by(&forecast);
    let large = format!("<span>{}</span> to <span>{}</span>", done.rows[0].clock, done.rows[3].clock);
    assert!(done.rows[3].clock != done.rows[4].clock && done.range.contains("(P90)"), "{}", done.range);
    assert!(drawn(&forecast).contains(&large), "{large}");
}
