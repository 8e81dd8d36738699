//! A corner from tape measurements: its distances from two or more known points.

use crate::point::Point;

/// Steps of the adjustment at most.
const MOST_STEPS: usize = 100;

/// One tape: from a known point to the corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tape {
    /// The known point, such as an end of the base line \[m\].
    pub post: Point,
    /// What was measured, above 0 \[m\].
    pub length: f64,
}

/// On which side of the line from the first post to the last the corner lies; asked only where the tapes leave it open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// To the left.
    Left,
    /// To the right.
    Right,
}

/// A corner found.
#[derive(Clone, Debug, PartialEq)]
pub struct Fixed {
    /// Where it is \[m\].
    pub at: Point,
    /// By how much each tape is longer than the distance found \[m\].
    pub over: Vec<f64>,
    /// Their root mean square: 0 for two tapes, which always meet \[m\].
    pub misfit: f64,
}

/// Why tapes fix no corner.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TapeError {
    /// Fewer than two.
    #[error("{count} tape fixes no corner; measure from two known points or more")]
    TooFew {
        /// How many.
        count: usize,
    },
    /// A tape that is no length.
    #[error("tape {number} is {length} m; it must be above 0")]
    NoLength {
        /// Which, from 1.
        number: usize,
        /// As given.
        length: f64,
    },
    /// All known points in one place.
    #[error("all tapes start from one point; measure from two that are apart")]
    OnePost,
    /// Two tapes too short to meet.
    #[error("the tapes are {short:.2} m too short to meet; check both, and the distance of their posts")]
    TooShort {
        /// What is missing \[m\].
        short: f64,
    },
    /// One of two tapes reaches beyond the other's whole circle.
    #[error(
        "tape {number} is {long:.2} m too long for the other to reach its end; check both, and the distance of their posts"
    )]
    TooLong {
        /// Which, from 1.
        number: usize,
        /// By how much \[m\].
        long: f64,
    },
}

/// The corner that tapes meet at. Two fix it; of three or more the sum of the squares by which they miss is the least (Gauss & Newton).
///
/// # Errors
///
/// Where there are fewer than two tapes or known points, a length is none, or two tapes do not meet.
///
/// ```
/// use site::{Point, Side, Tape, fixed_by_tapes};
/// let tape = |x, length| Tape { post: Point::new(x, 0.0), length };
/// let corner = fixed_by_tapes(&[tape(0.0, 14.450_346), tape(30.0, 18.942_347)], Side::Left).unwrap();
/// assert!(corner.at.distance(Point::new(12.5, 7.25)) < 1e-6);
/// ```
pub fn fixed_by_tapes(tapes: &[Tape], side: Side) -> Result<Fixed, TapeError> {
    if tapes.len() < 2 {
        return Err(TapeError::TooFew { count: tapes.len() });
    }
    let is_length = |tape: &Tape| tape.length > 0.0 && tape.length.is_finite();
    if let Some(k) = tapes.iter().position(|tape| !is_length(tape)) {
        return Err(TapeError::NoLength { number: k + 1, length: tapes[k].length });
    }
    let (first, last) = farthest_apart(tapes);
    let [left, right] = meetings(tapes, first, last)?;
    if tapes.len() == 2 {
        let at = if side == Side::Left { left } else { right };
        return Ok(fixed(tapes, at));
    }
    let [left, right] = [left, right].map(|start| adjusted(tapes, start));
    // Posts in one line leave both sides open.
    let alike = (left.misfit - right.misfit).abs() <= 1e-9 * (left.misfit + right.misfit + 1e-3);
    let take_left = if alike { side == Side::Left } else { left.misfit < right.misfit };
    Ok(if take_left { left } else { right })
}

/// The two tapes whose posts are farthest apart; of two, both in their order.
fn farthest_apart(tapes: &[Tape]) -> (usize, usize) {
    let pairs = (0..tapes.len()).flat_map(|a| (a + 1..tapes.len()).map(move |b| (a, b)));
    let apart = |(a, b): (usize, usize)| tapes[a].post.distance(tapes[b].post);
    pairs.fold((0, 1), |best, pair| if apart(pair) > apart(best) { pair } else { best })
}

/// Where two tapes meet, to the left and to the right of the line between their posts. Where there are more than these two, those that
/// do not meet begin the adjustment half-way.
fn meetings(tapes: &[Tape], first: usize, last: usize) -> Result<[Point; 2], TapeError> {
    let (a, b) = (tapes[first], tapes[last]);
    let apart = a.post.distance(b.post);
    if apart <= 1e-9 {
        return Err(TapeError::OnePost);
    }
    let along = (b.post - a.post) * (1.0 / apart);
    let on = (apart * apart + a.length * a.length - b.length * b.length) / (2.0 * apart);
    let square = a.length * a.length - on * on;
    // Rounded to the millimetre, tapes that meet on the line itself may miss.
    let short = apart - a.length - b.length;
    let long = (a.length - b.length).abs() - apart;
    if tapes.len() == 2 && short > 1e-3 {
        return Err(TapeError::TooShort { short });
    }
    if tapes.len() == 2 && long > 1e-3 {
        let number = if a.length > b.length { first + 1 } else { last + 1 };
        return Err(TapeError::TooLong { number, long });
    }
    let least = if tapes.len() == 2 { 0.0 } else { 1e-4 * apart * apart };
    let off = Point::new(-along.y, along.x) * libm::sqrt(square.max(least));
    let foot = a.post + along * on;
    Ok([foot + off, foot - off])
}

fn fixed(tapes: &[Tape], at: Point) -> Fixed {
    let over: Vec<f64> = tapes.iter().map(|tape| tape.length - tape.post.distance(at)).collect();
    let square: f64 = over.iter().map(|over| over * over).sum();
    Fixed { at, misfit: libm::sqrt(square / tapes.len() as f64), over }
}

/// Least squares from a start: Newton's step on the normal equations, shortened where it does not lead down.
fn adjusted(tapes: &[Tape], start: Point) -> Fixed {
    let mut best = fixed(tapes, start);
    for _ in 0..MOST_STEPS {
        let (mut xx, mut xy, mut yy, mut right) = (0.0, 0.0, 0.0, Point::default());
        for (tape, over) in tapes.iter().zip(&best.over) {
            let unit = (best.at - tape.post).unit();
            (xx, xy, yy) = (xx + unit.x * unit.x, xy + unit.x * unit.y, yy + unit.y * unit.y);
            right = right + unit * *over;
        }
        let mut damping = 0.0;
        let next = loop {
            let determinant = (xx + damping) * (yy + damping) - xy * xy;
            let step =
                Point::new((yy + damping) * right.x - xy * right.y, (xx + damping) * right.y - xy * right.x);
            let next = fixed(tapes, best.at + step * (1.0 / determinant));
            // The last digits of the misfit say nothing of the last step.
            if next.misfit <= best.misfit * (1.0 + 1e-12) || damping > 1e9 {
                break next;
            }
            damping = f64::max(1e-3, damping * 10.0);
        };
        let moved = next.at.distance(best.at);
        if next.misfit <= best.misfit * (1.0 + 1e-12) {
            best = next;
        }
        if moved.is_nan() || moved <= 1e-12 {
            break;
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{Draw, close};

    const P: fn(f64, f64) -> Point = Point::new;

    fn tape(x: f64, y: f64, length: f64) -> Tape {
        Tape { post: P(x, y), length }
    }

    #[test]
    fn three_tapes_fix_a_corner_and_show_by_how_much_they_miss() {
        let exact = [tape(0.0, 0.0, 14.450_346), tape(30.0, 0.0, 18.942_347), tape(0.0, 20.0, 17.855_321)];
        let corner = fixed_by_tapes(&exact, Side::Right).unwrap();
        close(corner.at.distance(P(12.5, 7.25)), 0.0, 1e-6);
        close(corner.misfit, 0.0, 1e-6);
        let rough = [tape(0.0, 0.0, 14.5), tape(30.0, 0.0, 18.9), tape(0.0, 20.0, 18.0)];
        let corner = fixed_by_tapes(&rough, Side::Left).unwrap();
        close(corner.at.y, 7.179_275_265, 1e-8);
        assert!(corner.misfit > 0.01 && corner.misfit < 0.1, "{corner:?}");
    }

    #[test]
    fn two_tapes_meet_on_the_side_that_is_asked_for() {
        let two = [tape(0.0, 0.0, 5.0), tape(6.0, 0.0, 5.0)];
        assert_eq!(fixed_by_tapes(&two, Side::Left).unwrap().at, P(3.0, 4.0));
        assert_eq!(fixed_by_tapes(&two, Side::Right).unwrap().at, P(3.0, -4.0));
        let back = [two[1], two[0]];
        assert_eq!(fixed_by_tapes(&back, Side::Left).unwrap().at, P(3.0, -4.0));
        // Three from one line as well.
        let three = [two[0], tape(3.0, 0.0, 4.0), two[1]];
        close(fixed_by_tapes(&three, Side::Right).unwrap().at.distance(P(3.0, -4.0)), 0.0, 1e-9);
    }

    #[test]
    fn tapes_that_fix_nothing_are_told() {
        let why = |tapes: &[Tape]| fixed_by_tapes(tapes, Side::Left).unwrap_err();
        assert_eq!(why(&[tape(0.0, 0.0, 5.0)]), TapeError::TooFew { count: 1 });
        let none = why(&[tape(0.0, 0.0, 5.0), tape(1.0, 0.0, 0.0)]);
        assert_eq!(none, TapeError::NoLength { number: 2, length: 0.0 });
        assert_eq!(why(&[tape(0.0, 0.0, 5.0), tape(0.0, 0.0, 4.0)]), TapeError::OnePost);
        let short = why(&[tape(0.0, 0.0, 3.0), tape(10.0, 0.0, 4.0)]);
        assert!(matches!(short, TapeError::TooShort { short } if (short - 3.0).abs() < 1e-9));
        let long = why(&[tape(0.0, 0.0, 3.0), tape(10.0, 0.0, 20.0)]);
        assert!(matches!(long, TapeError::TooLong { number: 2, long } if (long - 7.0).abs() < 1e-9));
    }

    #[test]
    fn the_adjusted_corner_is_the_best_one_around() {
        let mut draw = Draw::new(51);
        for _ in 0..200 {
            let corner = P(draw.between(-30.0, 30.0), draw.between(-30.0, 30.0));
            let mut measured = || {
                let post = P(draw.between(-40.0, 40.0), draw.between(-40.0, 40.0));
                Tape { post, length: post.distance(corner) + draw.between(-0.2, 0.2) + 0.3 }
            };
            let tapes: Vec<Tape> = (0..5).map(|_| measured()).collect();
            let found = fixed_by_tapes(&tapes, Side::Left).unwrap();
            assert!(found.at.distance(corner) < 3.0, "{found:?} {corner:?}");
            for (x, y) in [(0.01, 0.0), (-0.01, 0.0), (0.0, 0.01), (0.0, -0.01)] {
                assert!(fixed(&tapes, found.at + P(x, y)).misfit >= found.misfit);
            }
        }
    }
}
