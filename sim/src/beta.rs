//! The beta law, and Student's by it, from functions that give the same bits on every machine: what a page in a browser says of a
//! sample is what the terminal says.

/// Steps after which a fraction or a search ends in any case.
const MOST_STEPS: usize = 2_000;

/// The chance that a beta law of shapes `a` and `b`, both above 0, is at most `x`: its regularised incomplete function.
pub(crate) fn below(x: f64, a: f64, b: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    if x >= 1.0 {
        return 1.0;
    }
    let front = front(x, a, b);
    // The fraction is quick on this side of about the mean; on the other side it is that of what is above.
    if x * (a + b + 2.0) < a + 1.0 {
        front * fraction(x, a, b) / a
    } else {
        1.0 - front * fraction(1.0 - x, b, a) / b
    }
}

/// The value that such a law is below with this chance, 0 to 1.
pub(crate) fn quantile(chance: f64, a: f64, b: f64) -> f64 {
    let (mut least, mut most) = (0.0, 1.0);
    let mut x = a / (a + b);
    for _ in 0..MOST_STEPS {
        let over = below(x, a, b) - chance;
        if over > 0.0 {
            most = x
        } else {
            least = x
        }
        // Newton's step, or half-way where that leads out of what is known to hold it.
        let slope = front(x, a, b) / (x * (1.0 - x));
        let stepped = x - over / slope;
        let next = if stepped > least && stepped < most { stepped } else { f64::midpoint(least, most) };
        let moved = (next - x).abs();
        x = next;
        if moved <= f64::EPSILON * x {
            break;
        }
    }
    x
}

/// The value that Student's law of so many degrees of freedom is below with this chance, from one half up.
pub(crate) fn student(chance: f64, freedom: f64) -> f64 {
    let y = quantile(2.0 * chance - 1.0, 0.5, freedom / 2.0);
    libm::sqrt(freedom * y / (1.0 - y))
}

/// `x^a (1 - x)^b / B(a, b)`.
pub(crate) fn front(x: f64, a: f64, b: f64) -> f64 {
    let scale = libm::lgamma(a + b) - libm::lgamma(a) - libm::lgamma(b);
    libm::exp(scale + a * libm::log(x) + b * libm::log1p(-x))
}

/// The continued fraction of the incomplete beta function (Abramowitz & Stegun 26.5.8), from the front by Lentz's way.
fn fraction(x: f64, a: f64, b: f64) -> f64 {
    let some = |v: f64| if v.abs() < f64::MIN_POSITIVE { f64::MIN_POSITIVE } else { v };
    let mut c = 1.0;
    let mut d = 1.0 / some(1.0 - (a + b) * x / (a + 1.0));
    let mut all = d;
    for step in 1..MOST_STEPS {
        let m = step as f64;
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        let before = all;
        for part in [even, odd] {
            d = 1.0 / some(1.0 + part * d);
            c = some(1.0 + part / c);
            all *= c * d;
        }
        if (all - before).abs() <= f64::EPSILON * all.abs() {
            break;
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use statrs::distribution::{Beta, ContinuousCDF, StudentsT};

    const SHAPES: [(f64, f64); 9] = [
        (1.0, 5.0),
        (3.0, 3.0),
        (4.7, 1.3),
        (1.0, 10_000.0),
        (30.0, 471.0),
        (8_001.0, 2_000.0),
        (0.5, 249.5),
        (0.5, 0.5),
        (999_999.0, 2.0),
    ];

    #[test]
    fn it_is_the_law_that_another_library_knows() {
        for (a, b) in SHAPES {
            let law = Beta::new(a, b).unwrap();
            let (mean, sd) = (a / (a + b), (a * b / (a + b + 1.0)).sqrt() / (a + b));
            for step in -30..=30 {
                let x = mean + f64::from(step) * sd / 6.0;
                let (own, other) = (below(x, a, b), law.cdf(x.clamp(0.0, 1.0)));
                assert!((own - other).abs() < 1e-9, "{a} {b} at {x}: {own} {other}");
            }
        }
        // 1/2 by symmetry, and the arc sine law, exactly.
        assert!((below(0.5, 3.0, 3.0) - 0.5).abs() < 1e-15);
        assert!((below(0.25, 0.5, 0.5) - 1.0 / 3.0).abs() < 1e-15);
    }

    #[test]
    fn a_quantile_leads_back_to_its_chance() {
        for (a, b) in SHAPES {
            for chance in [1e-6, 0.025, 0.1, 0.5, 0.9, 0.975, 1.0 - 1e-6] {
                let back = below(quantile(chance, a, b), a, b);
                assert!((back - chance).abs() < 1e-9, "{a} {b}: {back} for {chance}");
            }
        }
    }

    #[test]
    fn students_law_is_the_one_that_another_library_knows() {
        for freedom in [1.0, 2.0, 9.0, 99.0, 1_999.0] {
            let other = StudentsT::new(0.0, 1.0, freedom).unwrap().inverse_cdf(0.975);
            let own = student(0.975, freedom);
            assert!((own / other - 1.0).abs() < 1e-8, "{freedom}: {own} {other}");
        }
        // Of many degrees it is the normal law's with the first term of its expansion (Abramowitz & Stegun 26.7.5).
        let (z, freedom): (f64, f64) = (1.959_963_984_540_054, 999_999.0);
        assert!((student(0.975, freedom) - z - (z.powi(3) + z) / (4.0 * freedom)).abs() < 1e-9);
        // By hand: of one degree of freedom it is the tangent.
        assert!((student(0.975, 1.0) - (0.475 * std::f64::consts::PI).tan()).abs() < 1e-9);
    }
}
