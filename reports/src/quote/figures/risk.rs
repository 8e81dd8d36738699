//! Risk against price, from what a quote says.

use crate::chart::completion::{Mark, MarkKind, curve};
use crate::chart::risk::RiskData;
use crate::quote::findings::{Offer, Price, PriceOf, SettledBy};
use sim::Sorted;

/// Prepares the figure.
pub(crate) fn prepare(costs: &Sorted, offer: &Offer, currency: &str) -> RiskData {
    let values = costs.values();
    let marks = marks(offer);
    let (range, shown) = range(costs, &marks);
    let [middle, most] = [0.5, 0.95].map(|share| costs.percentile(share).value);
    let band = Some((middle, most)).filter(|(middle, most)| most > middle);
    let runs = match values.len() {
        1 => "1 run".to_owned(),
        n => format!("{} runs", scenarios::units::figure(n as f64)),
    };
    RiskData {
        title: title(offer),
        runs: values.len(),
        currency: currency.to_owned(),
        range,
        curve: curve(values, shown).into_iter().map(|(cost, below)| (cost, 100.0 - below)).collect(),
        note: match band {
            Some(_) => {
                format!("{runs}; shaded: from the middle of the costs to what 19 jobs in 20 stay within")
            }
            None => runs,
        },
        band,
        marks,
    }
}

fn title(offer: &Offer) -> String {
    if offer.certain {
        return format!("Every run costs {}", offer.at_risk.said);
    }
    format!("At {} you lose money {}", offer.quote.said, offer.quote.odds)
}

/// The price to quote, the middle of the costs, and what risk and margin alone ask for where that is another price.
fn marks(offer: &Offer) -> Vec<Mark> {
    let mark = |price: &Price, kind, name: &str| Mark {
        at: price.price.value,
        chance: price.risk.value * 100.0,
        kind,
        name: name.to_owned(),
        when: price.said.clone(),
        lines: vec![price.odds.replace("less than", "under")],
    };
    let name = if offer.settled_by == SettledBy::Person { "your price" } else { "quote" };
    let mut marks = vec![mark(&offer.quote, MarkKind::Quote, name)];
    if !offer.certain {
        let even = offer.ladder.iter().find(|price| price.of == PriceOf::Risk(0.5));
        marks.extend(even.map(|price| mark(price, MarkKind::Percentile, "even odds")));
        if offer.settled_by != SettledBy::Risk {
            marks.push(mark(&offer.at_risk, MarkKind::Percentile, &offer.at_risk.what));
        }
    }
    if offer.settled_by != SettledBy::Margin {
        let margin = offer.with_margin.as_ref();
        marks.extend(margin.map(|price| mark(price, MarkKind::Percentile, &price.what)));
    }
    marks.sort_by(|a, b| a.at.total_cmp(&b.at));
    marks
}

/// From and to of the axis, and how many runs lie within. A few runs far beyond the rest are left out.
fn range(costs: &Sorted, marks: &[Mark]) -> ((f64, f64), usize) {
    let values = costs.values();
    let (Some(first), Some(last)) = (values.first(), values.last()) else { return ((0.0, 1.0), 0) };
    let [low, high] = [0.01, 0.99].map(|share| costs.percentile(share).value);
    let far = high + 0.8 * (high - low);
    let end = if *last > far && values.len() >= 100 { far } else { *last };
    let from = marks.iter().map(|mark| mark.at).fold(*first, f64::min);
    let to = marks.iter().map(|mark| mark.at).fold(end, f64::max);
    let spare = if to > from { (to - from) * 0.05 } else { to.abs() * 0.05 + 0.01 };
    let range = ((from - spare).max(0.0), to + spare);
    (range, values.partition_point(|v| *v <= range.1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::risk::draw;
    use crate::chart::{ChartError, Size, legibility};
    use crate::quote::findings::{Asked, offer};

    const TENTH: Asked = Asked { risk: 0.1, margin: None, price: None, rate: None };

    fn data(costs: impl IntoIterator<Item = f64>, asked: &Asked) -> RiskData {
        let costs = Sorted::new(costs);
        prepare(&costs, &offer(&costs, asked, "$"), "$")
    }

    #[test]
    fn the_curve_falls_from_all_to_nothing_and_passes_through_the_marks() {
        let data = data((0..=1_000).map(|i| 1_000.0 + f64::from(i)), &TENTH);
        assert!(data.curve.is_sorted_by(|a, b| a.0 <= b.0 && a.1 >= b.1));
        assert!(data.curve[0].1 > 99.0 && data.curve.last().unwrap().1 == 0.0);
        for mark in &data.marks {
            let near =
                data.curve.iter().min_by(|a, b| (a.0 - mark.at).abs().total_cmp(&(b.0 - mark.at).abs()));
            assert!((near.unwrap().1 - mark.chance).abs() < 1.0, "{mark:?}");
        }
        assert_eq!(data.band, Some((1_500.0, 1_950.0)));
        assert_eq!(data.title, "At $1900 you lose money 1 job in 10");
    }

    #[test]
    fn labels_of_close_prices_do_not_touch() {
        let narrow = || (0..=500).map(|i| 1_000.0 + f64::from(i) / 100.0);
        let all = Asked { risk: 0.07, margin: Some(0.002), price: Some(1_003.0), rate: None };
        let far = Asked { margin: Some(0.8), ..TENTH };
        for data in
            [data(narrow(), &TENTH), data(narrow(), &all), data(narrow(), &far), data([6.3; 20], &TENTH)]
        {
            for size in [Size::PAGE, Size::WIDE, Size::PHONE, Size { width: 300, height: 300 }] {
                let svg = draw(&data, size).unwrap();
                assert_eq!(legibility::faults(&svg), [""; 0], "{data:?} {size:?}");
            }
        }
    }

    #[test]
    fn without_a_run_nothing_is_drawn() {
        let none = RiskData { runs: 0, ..data([1.0], &TENTH) };
        assert!(matches!(draw(&none, Size::PAGE), Err(ChartError::Nothing(_))));
    }
}
