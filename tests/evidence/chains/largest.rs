//! One loader and one raker without limit to room, times of any law: the larger of two, again and again.
//!
//! Source: `largest.csv`, status computed.

use super::*;

/// `lognormal 0.4`, `triangular 0.4 0.8 1.8`: a law of mean 1 as the table writes it, of which it is the only reader.
fn law(text: &str) -> Distribution {
    let mut words = text.split(' ');
    let family = words.next();
    let figures: Vec<f64> = words.map(|word| word.parse().unwrap()).collect();
    match (family, figures.as_slice()) {
        (Some("lognormal"), [cv]) => Distribution::Lognormal { mean: 1.0, cv: *cv },
        (Some("gamma"), [cv]) => Distribution::Gamma { mean: 1.0, cv: *cv },
        (Some("uniform"), [least, greatest]) => Distribution::Uniform { least: *least, greatest: *greatest },
        (Some("triangular"), [least, mode, greatest]) => {
            Distribution::Triangular { least: *least, mode: *mode, greatest: *greatest }
        }
        (Some("pert"), [least, mode, greatest]) => {
            Distribution::Pert { least: *least, mode: *mode, greatest: *greatest }
        }
        _ => panic!("no such law: {text}"),
    }
}

/// Few loads, no limit to room, lognormal, triangular, PERT, gamma and uniform times.
pub(crate) fn larger_of_two() -> Comparison {
    let mut comparison = Comparison::new(
        "Without limit to room a job takes the largest sum of loads driven and heaps raked, whatever the laws",
        "R_n = max(F_n, R_n-1) + W_n (Lindley 1952): joint law of both on a lattice with Richardson's extrapolation, compared with Gauss \
         quadrature for two loads (1e-8) and 16 scrambled Sobol nets (Owen 1998) for all",
        Status::Computed,
        MOST,
    );
    let table = table("largest.csv");
    for row in &table.rows {
        let f = |heading: &str| table.number(row, heading);
        let (loads, load_law, rake_law) =
            (f("loads") as u32, table.text(row, "load_law"), table.text(row, "rake_law"));
        let mut job = raking(loading(job(loads, 1), 1.0, law(load_law)), 1, 1.0 / f("rake"));
        job.chance.loads.raking = law(rake_law);
        let sample = study(&job, RUNS).sorted(completion);
        let what = format!("{loads} loads, loading {load_law}, raking {} x {rake_law}", f("rake"));
        percentiles(&mut comparison, &what, &sample, f, ROUNDING + f("moved_by_halving"));
    }
    comparison
}

#[test]
fn without_limit_to_room_a_job_takes_the_largest_sum_whatever_the_laws() {
    larger_of_two().judge(56);
}
