//! Whether something bought pays: years of jobs played with what it saves in each.
//!
//! Present value and payback are the textbook's (Brealey, Myers & Allen, Principles of Corporate Finance, chs. 2 and 5, from
//! memory): savings fall at the end of each year and are discounted yearly; payback is simple, without interest.

use crate::percentile::{Share, Sorted, share};
use crate::streams::Series;

/// What is bought, and how it will be used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Purchase {
    /// Price \[money\], at least 0.
    pub price: f64,
    /// Fewest and most jobs in a year; every number between is equally likely.
    pub jobs_per_year: (u32, u32),
    /// Years it is used.
    pub years: u32,
    /// Yearly interest as a share: 0.06 for 6 %; above -1.
    pub interest: f64,
}

/// What the purchase comes to, over many futures.
#[derive(Clone, Debug, PartialEq)]
pub struct Payback {
    /// Saved in a year \[money\]: mean over the years of each future.
    pub yearly: Sorted,
    /// Years of savings until the price is back; infinite where nothing is saved.
    pub years: Sorted,
    /// Jobs until the price is back, at what a job saves on average in each future; infinite where nothing is saved.
    pub jobs: Sorted,
    /// Present value of all savings less the price \[money\].
    pub present_value: Sorted,
    /// Chance that the present value is above 0.
    pub pays: Share,
}

/// One future: what a year and a job save on average, and the present value.
struct Future {
    yearly: f64,
    per_job: f64,
    worth: f64,
}

impl Purchase {
    /// Plays so many futures. What a job saves \[money\] is each time one of `saved`, equally likely: jobs differ as the runs
    /// do. The same seed gives the same futures for every purchase with the same use, so that two can be compared.
    ///
    /// Nothing is saved where `saved` is empty.
    ///
    /// ```
    /// use sim::Purchase;
    /// let bucket = Purchase { price: 1_000.0, jobs_per_year: (10, 10), years: 5, interest: 0.05 };
    /// let payback = bucket.payback(&[30.0], 100, 1);
    /// assert_eq!(payback.yearly.percentile(0.5).value, 300.0);
    /// // An annuity of 300 for five years at 5 % is worth 300 x 4.329477 today.
    /// assert!((payback.present_value.percentile(0.5).value - 298.843).abs() < 1e-3);
    /// ```
    pub fn payback(&self, saved: &[f64], futures: u32, seed: u64) -> Payback {
        let played: Vec<Future> = (0..futures).map(|future| self.future(saved, seed, future)).collect();
        // How many it takes of what saves so much.
        let until_back = |saving: f64| {
            if self.price <= 0.0 {
                0.0
            } else if saving > 0.0 {
                self.price / saving
            } else {
                f64::INFINITY
            }
        };
        let pays = played.iter().filter(|future| future.worth > 0.0).count();
        let sorted = |figure: &dyn Fn(&Future) -> f64| Sorted::new(played.iter().map(figure));
        Payback {
            yearly: sorted(&|future| future.yearly),
            years: sorted(&|future| until_back(future.yearly)),
            jobs: sorted(&|future| until_back(future.per_job)),
            present_value: sorted(&|future| future.worth),
            pays: share(pays, played.len()),
        }
    }

    fn future(&self, saved: &[f64], seed: u64, future: u32) -> Future {
        let (fewest, most) = self.jobs_per_year;
        let mut series = Series::new(seed, future);
        let (mut sum, mut all, mut worth, mut discount) = (0.0, 0, -self.price, 1.0);
        for _ in 0..self.years {
            discount /= 1.0 + self.interest;
            let jobs = fewest + series.below(u64::from(most.saturating_sub(fewest)) + 1) as u32;
            let year: f64 = match saved.len() {
                0 => 0.0,
                n => (0..jobs).map(|_| saved[series.below(n as u64) as usize]).sum(),
            };
            sum += year;
            all += u64::from(jobs);
            worth += year * discount;
        }
        let mean = |of: f64| if of > 0.0 { sum / of } else { 0.0 };
        Future { yearly: mean(f64::from(self.years)), per_job: mean(all as f64), worth }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(got: f64, expected: f64) {
        assert!((got - expected).abs() < 1e-9 * expected.abs().max(1.0), "{got}, expected {expected}");
    }

    #[test]
    fn constant_savings_are_an_annuity() {
        // Present value of an annuity: A (1 - (1 + i)^-n) / i.
        for (jobs, years, interest) in [(12, 8, 0.06), (1, 1, 0.1), (30, 15, 0.035), (5, 3, 0.0)] {
            let purchase = Purchase { price: 950.0, jobs_per_year: (jobs, jobs), years, interest };
            let payback = purchase.payback(&[14.5], 3, 1);
            let yearly = 14.5 * f64::from(jobs);
            let factor = match interest {
                0.0 => f64::from(years),
                i => (1.0 - (1.0_f64 + i).powi(-(years as i32))) / i,
            };
            close(payback.yearly.percentile(0.5).value, yearly);
            close(payback.years.percentile(0.1).value, 950.0 / yearly);
            close(payback.jobs.percentile(0.5).value, 950.0 / 14.5);
            close(payback.present_value.percentile(0.9).value, yearly * factor - 950.0);
            assert_eq!(payback.pays.value, f64::from(u8::from(yearly * factor > 950.0)));
        }
    }

    #[test]
    fn uneven_jobs_and_years_have_the_mean_and_the_spread_of_a_random_sum() {
        // Jobs n of 10 to 20 (mean 15, variance 10), savings of 0 or 40 alike (mean 20, variance 400): a year has mean 300
        // and variance 15 x 400 + 10 x 20^2 = 10,000; four years averaged have a quarter of it. 4.5 standard errors.
        let purchase = Purchase { price: 0.0, jobs_per_year: (10, 20), years: 4, interest: 0.0 };
        let payback = purchase.payback(&[0.0, 40.0], 20_000, 7);
        let mean = payback.yearly.mean();
        let error = 50.0 / 20_000.0_f64.sqrt();
        assert!((mean.value - 300.0).abs() < 4.5 * error, "{}", mean.value);
        assert!((mean.sd - 50.0).abs() < 4.5 * error / 2.0_f64.sqrt(), "{}", mean.sd);
        close(payback.present_value.mean().value, 4.0 * mean.value);
        assert_eq!(payback.years.percentile(0.9).value, 0.0);
    }

    #[test]
    fn what_saves_nothing_never_pays_back() {
        let purchase = Purchase { price: 500.0, jobs_per_year: (10, 10), years: 3, interest: 0.05 };
        for saved in [&[][..], &[0.0][..], &[-3.0][..]] {
            let payback = purchase.payback(saved, 10, 1);
            assert_eq!(payback.years.percentile(0.1).value, f64::INFINITY);
            assert_eq!(payback.jobs.percentile(0.1).value, f64::INFINITY);
            assert_eq!(payback.pays.value, 0.0);
        }
        assert_eq!(Purchase { years: 0, ..purchase }.payback(&[9.0], 4, 1).yearly.percentile(0.5).value, 0.0);
    }
}
