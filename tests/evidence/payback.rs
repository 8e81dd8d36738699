//! Present value and payback against a general-purpose library and the textbook's annuity.
//!
//! Sources: numpy-financial 1.0.0 (`npv`, `pv`, `irr`) and numpy 2.4.6 (`cumsum`, `interp`), values kept in `payback/values.csv` with the script that makes
//! them, status computed; the annuity formula of Brealey, Myers & Allen, Principles of Corporate Finance, ch. 2, from memory.

use super::comparison::{Comparison, Status};
use super::kept::at_home;
use sim::Purchase;

/// One line of the table: what is bought, what a job saves, and the library's answers.
struct Case {
    name: String,
    purchase: Purchase,
    per_job: f64,
    npv: f64,
    annuity: f64,
    back: f64,
    irr: Option<f64>,
}

fn cases() -> Vec<Case> {
    let text = std::fs::read_to_string(at_home().join("evidence/payback/values.csv")).unwrap();
    let case = |row: csv::StringRecord| {
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        let jobs = number(2) as u32;
        Case {
            name: format!("{} for {} jobs of {} in {} years at {}", &row[0], jobs, &row[1], &row[3], &row[4]),
            purchase: Purchase {
                price: number(0),
                jobs_per_year: (jobs, jobs),
                years: number(3) as u32,
                interest: number(4),
            },
            per_job: number(1),
            npv: number(5),
            annuity: number(6),
            back: number(7),
            irr: row[8].parse().ok(),
        }
    };
    csv::Reader::from_reader(text.as_bytes()).records().map(|row| case(row.unwrap())).collect()
}

/// What is left of the last digits of a sum of so many terms.
fn last_digits(of: f64) -> f64 {
    1e-10 * of.abs().max(1.0)
}

pub(super) fn against_a_library() -> Comparison {
    let mut comparison = Comparison::new(
        "Present value, payback and the interest at which nothing is gained are a general-purpose library's",
        "numpy-financial 1.0.0: npv, pv, irr; numpy 2.4.6: interp of the running sum (payback/values.csv)",
        Status::Computed,
        4.5,
    );
    for case in cases() {
        let played = case.purchase.payback(&[case.per_job], 3, 1);
        let worth =
            |purchase: Purchase| purchase.payback(&[case.per_job], 3, 1).present_value.percentile(0.5).value;
        let value = played.present_value.percentile(0.5).value;
        let named = |what: &str| format!("{}: {what}", case.name);
        comparison.exact(named("present value by npv"), value, case.npv, last_digits(case.npv));
        comparison.exact(
            named("present value by the annuity"),
            value,
            case.annuity,
            last_digits(case.annuity),
        );
        let years = played.years.percentile(0.5).value;
        if case.back.is_finite() {
            comparison.exact(named("years to pay back"), years, case.back, last_digits(case.back));
        } else {
            assert_eq!(years, f64::INFINITY, "{}", case.name);
        }
        if let Some(irr) = case.irr {
            let at = worth(Purchase { interest: irr, ..case.purchase });
            // The library's own root is good to some eight digits.
            comparison.exact(
                named("present value at the interest of irr"),
                at,
                0.0,
                1e-6 * case.purchase.price,
            );
        }
    }
    uneven(&mut comparison);
    comparison
}

/// Jobs and years that differ: the mean present value is the annuity of the mean year.
fn uneven(comparison: &mut Comparison) {
    const FUTURES: u32 = 20_000;
    let case = &cases()[0];
    let jobs = case.purchase.jobs_per_year.0;
    let purchase = Purchase { jobs_per_year: (jobs - 9, jobs + 9), ..case.purchase };
    let saved = [case.per_job - 12.0, case.per_job, case.per_job + 12.0];
    let mean = purchase.payback(&saved, FUTURES, 5).present_value.mean();
    let error = mean.sd / f64::from(FUTURES).sqrt();
    comparison.compare(
        format!("{}, uneven: mean present value", case.name),
        mean.value,
        error,
        case.npv,
        0.0,
    );
}

#[test]
fn present_value_and_payback_are_those_of_a_library() {
    against_a_library().judge(35);
}
