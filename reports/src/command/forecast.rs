//! `heapcast forecast`: the main job.

use super::{folder, plan, read, with_threads};
use crate::cli::{ForecastArgs, MOST_RUNS};
use crate::failure::Failure;
use crate::findings::{Estimate, done_by, warnings};
use crate::forecast::{Forecast, Wanted, runs_in_all};
use crate::progress::{Progress, Telling};
use crate::provenance::command_line;
use crate::{documents, say, text};
use scenarios::Scenario;
use scenarios::units::duration;
use sim::Runs;

pub(super) fn run(args: &ForecastArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    plan(&scenario)?;
    let folder = folder(&args.out, &documents::FORECAST, std::slice::from_ref(&args.job.file), [&scenario])?;
    let forecast = with_threads(args.luck.threads, || make(args, scenario))??;
    let documents = documents::of_forecast(&forecast)?;
    folder.replace(&documents)?;
    tell(args, &forecast)
}

/// Makes all runs.
fn make(args: &ForecastArgs, scenario: Scenario) -> Result<Forecast, Failure> {
    let runs = match args.within {
        Some(half_width_s) => Runs::UntilP80Within { half_width_s, most: MOST_RUNS },
        None => Runs::Exactly(args.luck.runs),
    };
    let wanted =
        Wanted { seed: args.luck.seed, runs, percentiles: args.percentiles.0.clone(), by_s: args.by };
    let telling = if args.say.quiet { Telling::Never } else { Telling::OnTerminal };
    let progress = Progress::new(runs_in_all(runs, &scenario.job), telling);
    // The same number of runs, however it was arrived at, gives the same answer.
    let command = |runs: u32| command_line("forecast", &args.job, &args.luck, &[("runs", runs.to_string())]);
    let forecast = Forecast::new(scenario, &wanted, command, |n| progress.made(n));
    progress.finish();
    forecast
}

/// What to say where even the most runs do not know the P80 as closely as was wanted.
fn missed(within_s: f64, p80: Estimate) -> Option<String> {
    let reached = p80.high.zip(p80.low).map(|(high, low)| (high - p80.value).max(p80.value - low));
    (reached.is_none_or(|half| half > within_s)).then(|| {
        let reached =
            reached.map_or_else(|| "not at all".to_owned(), |half| format!("to {}", duration(half)));
        format!("heapcast: {MOST_RUNS} runs know the P80 {reached}, not to {}\n", duration(within_s))
    })
}

fn tell(args: &ForecastArgs, forecast: &Forecast) -> Result<(), Failure> {
    let p80 = done_by(forecast).plan.finish_working_s;
    if let Some(words) = args.within.and_then(|within_s| missed(within_s, p80)) {
        say::aside(&words);
    }
    if args.say.quiet {
        return say::out(&format!("{}\n", done_by(forecast).plan_on));
    }
    if args.say.json {
        for warning in warnings(&forecast.scenario.cautions).doubtful {
            say::aside(&format!("warning: {} {}\n", warning.cause, warning.remedy));
        }
        return say::out_bytes(&documents::summary(forecast)?);
    }
    let width = say::width();
    if !args.say.full {
        return say::out(&text::forecast_first(forecast, &args.out, width));
    }
    say::out(&text::summary(forecast, width))?;
    say::out(&text::files(forecast, &args.out, width))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_precision_that_is_not_reached_is_said() {
        let p80 = Estimate { value: 7_200.0, low: Some(7_190.0), high: Some(7_212.0) };
        assert_eq!(missed(12.0, p80), None);
        assert_eq!(
            missed(5.0, p80).as_deref(),
            Some("heapcast: 1000000 runs know the P80 to 12 s, not to 5 s\n")
        );
        assert!(
            missed(5.0, Estimate { high: None, ..p80 }).is_some_and(|words| words.contains("not at all"))
        );
    }
}
