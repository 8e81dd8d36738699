//! Places to tip, alone and two or three together, by the total driving time to all drop points.

/// Places chosen together, and what they cost.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// The places by their number, lowest first.
    pub places: Vec<usize>,
    /// The sum over drop points of loads times the driving time from the nearest of these places \[s\].
    pub total: f64,
}

/// The best choices of `count` places (1 to 3) for drop points, at most `keep` of them, the best first; of equally good ones those
/// with lower numbers first. All are tried: a p-median by enumeration.
///
/// `times[i][j]` is the driving time from place i to drop point j, infinite where no way leads there; `loads[j]` is how many loads go
/// there. Choices that leave a drop point without a way are left out. `room[i]` is how much place i holds, as loads: choices
/// without room for all loads together are left out; which of the places a load comes from is decided by the way alone.
///
/// ```
/// use site::screened;
/// let times = [vec![1.0, 9.0, 9.0], vec![5.0, 4.0, 6.0], vec![9.0, 9.0, 1.0]];
/// let best = screened(&times, &[1.0, 1.0, 1.0], &[9.0; 3], 1, 2);
/// assert_eq!((best[0].places.clone(), best[0].total), (vec![1], 15.0));
/// let best = screened(&times, &[1.0, 1.0, 1.0], &[9.0; 3], 2, 1);
/// assert_eq!((best[0].places.clone(), best[0].total), (vec![1, 2], 10.0));
/// assert_eq!(screened(&times, &[1.0, 1.0, 1.0], &[1.0; 3], 2, 1), []);
/// ```
pub fn screened(times: &[Vec<f64>], loads: &[f64], room: &[f64], count: usize, keep: usize) -> Vec<Choice> {
    let needed: f64 = loads.iter().sum();
    let mut best: Vec<Choice> = Vec::new();
    let mut search = |places: &[usize], nearest: &[f64]| {
        let held: f64 = places.iter().map(|place| room[*place]).sum();
        // The sum of many shares is right but for its last digits.
        if held < needed * (1.0 - 1e-9) {
            return;
        }
        let total = total(nearest, loads);
        if total.is_finite() && best.last().is_none_or(|last| best.len() < keep || total < last.total) {
            let after = best.partition_point(|choice| choice.total <= total);
            best.insert(after, Choice { places: places.to_vec(), total });
            best.truncate(keep);
        }
    };
    let far = vec![f64::INFINITY; loads.len()];
    if (1..=3).contains(&count) && keep > 0 {
        enumerate(times, &mut Vec::new(), &far, count, &mut search);
    }
    best
}

/// Calls for every set of `count` places with the time from the nearest of them to each drop point.
fn enumerate(
    times: &[Vec<f64>],
    chosen: &mut Vec<usize>,
    nearest: &[f64],
    count: usize,
    each: &mut dyn FnMut(&[usize], &[f64]),
) {
    if chosen.len() == count {
        each(chosen, nearest);
        return;
    }
    for place in chosen.last().map_or(0, |last| last + 1)..times.len() {
        let nearer: Vec<f64> = nearest.iter().zip(&times[place]).map(|(a, b)| a.min(*b)).collect();
        chosen.push(place);
        enumerate(times, chosen, &nearer, count, each);
        chosen.pop();
    }
}

/// Drop points to which no load goes cost nothing, also where no way leads to them.
fn total(nearest: &[f64], loads: &[f64]) -> f64 {
    nearest.iter().zip(loads).filter(|(_, loads)| **loads > 0.0).map(|(time, loads)| time * loads).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{Draw, close};

    #[test]
    fn the_best_two_on_a_grid_are_those_of_an_integer_program() {
        let at = |k: usize| ((k / 3 * 10) as f64, (k % 3 * 10) as f64);
        let distance = |a: usize, b: usize| (at(a).0 - at(b).0).hypot(at(a).1 - at(b).1);
        let times: Vec<Vec<f64>> = (0..12).map(|a| (0..12).map(|b| distance(a, b)).collect()).collect();
        let demand = [3.0, 1.0, 4.0, 1.0, 5.0, 9.0, 2.0, 6.0, 5.0, 3.0, 5.0, 8.0];
        let best = screened(&times, &demand, &[1e9; 12], 2, 3);
        assert_eq!(best[0].places, [5, 10]);
        close(best[0].total, 439.508_446_2, 1e-6);
        assert!(best[1].total >= best[0].total && best.len() == 3);
    }

    #[test]
    fn nothing_that_is_left_out_is_better_and_more_places_never_cost_more() {
        let mut draw = Draw::new(31);
        for _ in 0..20 {
            let times: Vec<Vec<f64>> =
                (0..9).map(|_| (0..15).map(|_| draw.between(1.0, 90.0)).collect()).collect();
            let loads: Vec<f64> = (0..15).map(|_| draw.between(0.0, 3.0)).collect();
            let best = |count| screened(&times, &loads, &[1e9; 9], count, 1)[0].total;
            let triple = |a: usize, b: usize, c: usize| -> f64 {
                (0..15).map(|j| loads[j] * times[a][j].min(times[b][j]).min(times[c][j])).sum()
            };
            let all = (0..9 * 9 * 9).map(|k| triple(k / 81, k / 9 % 9, k % 9));
            close(best(3), all.fold(f64::INFINITY, f64::min), 1e-9);
            assert!(best(1) >= best(2) && best(2) >= best(3));
        }
    }

    #[test]
    fn choices_that_leave_a_drop_point_without_a_way_are_left_out() {
        let times = [vec![1.0, f64::INFINITY], vec![f64::INFINITY, 1.0], vec![50.0, 50.0]];
        assert_eq!(screened(&times, &[1.0, 1.0], &[9.0; 3], 1, 9).len(), 1);
        assert_eq!(screened(&times, &[1.0, 1.0], &[9.0; 3], 2, 1)[0].places, [0, 1]);
        assert_eq!(screened(&times, &[1.0, 0.0], &[9.0; 3], 1, 1)[0].places, [0]);
        assert_eq!(screened(&times, &[1.0, 1.0], &[9.0; 3], 4, 1), []);
    }
}
