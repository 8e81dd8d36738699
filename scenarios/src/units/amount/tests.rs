use super::*;
use crate::units::exact;

#[track_caller]
fn reads(text: &str, dimension: Dimension, si: f64) {
    let amount = parse(text).unwrap_or_else(|e| panic!("{text}: {}", e.what()));
    assert_eq!(amount.dimension, dimension, "{text}");
    let value = amount.in_units_of(1.0);
    assert!((value - si).abs() <= 1e-14 * si.abs(), "{text} is {value}, not {si}");
}

#[test]
fn quantities_of_the_trade_are_read_in_both_systems() {
    reads("30 yd3", Dimension::VOLUME, 30.0 * 0.764_554_857_984);
    reads("30 cubic yards", Dimension::VOLUME, 30.0 * 0.764_554_857_984);
    reads("30yd³", Dimension::VOLUME, 30.0 * 0.764_554_857_984);
    reads("14 ft3", Dimension::VOLUME, 14.0 * 0.028_316_846_592);
    reads("0.5 m3", Dimension::VOLUME, 0.5);
    reads("50 in", Dimension::LENGTH, 1.27);
    reads("60\"", Dimension::LENGTH, 1.524);
    reads("4 mph", Dimension::SPEED, 1.788_16);
    reads("6 km/h", Dimension::SPEED, 6.0 / 3.6);
    reads("1.5 m/s", Dimension::SPEED, 1.5);
    reads("300 ft/min", Dimension::SPEED, 1.524);
    reads("20 s", Dimension::TIME, 20.0);
    reads("22 m3/h", Dimension::RATE, 22.0 / 3600.0);
    reads("30 yd3 per hour", Dimension::RATE, 30.0 * 0.764_554_857_984 / 3600.0);
    reads("1.2 gal/h", Dimension::RATE, 1.2 * 0.003_785_411_784 / 3600.0);
    reads("473 lb/yd3", Dimension::DENSITY, 473.0 * 0.453_592_37 / 0.764_554_857_984);
    reads("1.4 t/m3", Dimension::DENSITY, 1400.0);
    reads("40 s/m3", Dimension::TIME_PER_VOLUME, 40.0);
    reads("1 min/yd3", Dimension::TIME_PER_VOLUME, 60.0 / 0.764_554_857_984);
    reads("1/4 acre".trim_start_matches("1/"), Dimension::AREA, 4.0 * 4_046.856_422_4);
    reads("2 tons", Dimension::MASS, 1_814.369_48);
    reads("2 tonnes", Dimension::MASS, 2000.0);
    reads("25 %", Dimension::NUMBER, 0.25);
    reads("25%", Dimension::NUMBER, 0.25);
    reads("5 %/h", Dimension::PER_TIME, 0.05 / 3600.0);
    reads("0.25", Dimension::NUMBER, 0.25);
    reads("1e3 l", Dimension::VOLUME, 1.0);
    reads("-3 m", Dimension::LENGTH, -3.0);
    reads("1,200 ft2", Dimension::AREA, 1200.0 * 0.092_903_04);
    reads("1,200,000 m2", Dimension::AREA, 1_200_000.0);
    reads("2 1/2 in", Dimension::LENGTH, 2.5 * 0.0254);
    reads("½ in", Dimension::LENGTH, 0.5 * 0.0254);
    reads("5 ft 6 1/2 in", Dimension::LENGTH, 1.6764 + 0.0127);
    reads("60 m x 3 m", Dimension::AREA, 180.0);
    reads("60ft × 10ft", Dimension::AREA, 600.0 * 0.092_903_04);
    reads("5' 6\" x 2 1/2 ft", Dimension::AREA, 5.5 * 2.5 * 0.092_903_04);
}

#[test]
fn times_and_lengths_may_be_joined() {
    reads("1 h 30 min", Dimension::TIME, 5400.0);
    reads("1 h 2 min 3 s", Dimension::TIME, 3723.0);
    reads("5 ft 6 in", Dimension::LENGTH, 1.6764);
    reads("5' 6\"", Dimension::LENGTH, 1.6764);
    reads("5'6\"", Dimension::LENGTH, 1.6764);
    assert_eq!(parse("30 min 1 h"), Err(AmountError::Mixed));
    assert_eq!(parse("1 h 3 m"), Err(AmountError::Mixed));
    assert_eq!(parse("1 yd3 3 ft3"), Err(AmountError::Mixed));
}

#[test]
fn money_has_its_sign_before_or_after() {
    for (text, dimension, value, currency) in [
        ("$18/yd3", Dimension::MONEY_PER_VOLUME, 18.0 / 0.764_554_857_984, "$"),
        ("€ 21.50 per m3", Dimension::MONEY_PER_VOLUME, 21.5, "€"),
        ("35 EUR/h", Dimension::MONEY_PER_TIME, 35.0 / 3600.0, "EUR"),
        ("CHF 35/h", Dimension::MONEY_PER_TIME, 35.0 / 3600.0, "CHF"),
        ("380 kr", Dimension::MONEY, 380.0, "kr"),
        ("$380", Dimension::MONEY, 380.0, "$"),
    ] {
        reads(text, dimension, value);
        assert_eq!(parse(text).unwrap().currency.as_deref(), Some(currency));
    }
}

#[test]
fn what_is_no_amount_is_said_to_be_none() {
    assert_eq!(parse("  "), Err(AmountError::Empty));
    assert_eq!(parse("plenty"), Err(AmountError::NotANumber));
    assert_eq!(parse("NaN s"), Err(AmountError::NotFinite));
    assert_eq!(parse("-inf"), Err(AmountError::NotFinite));
    assert_eq!(parse("1e999 s"), Err(AmountError::NotFinite));
    assert_eq!(parse("1,200 m2"), Err(AmountError::Comma("1200 or 1.200".into())));
    assert_eq!(parse("2,5 m"), Err(AmountError::Comma("2.5".into())));
    assert_eq!(parse("60 ft diameter"), Err(AmountError::Round));
    assert_eq!(parse("60 x 3 m"), Err(AmountError::Sides("\"60 m x 3 m\"".into())));
    assert!(matches!(parse("60 m x 3"), Err(AmountError::Sides(_))));
    assert!(matches!(parse("60 m x 3 m x 2 m"), Err(AmountError::Sides(_))));
    assert_eq!(parse("4 yrd3"), Err(AmountError::UnknownUnit("yrd3".into(), Some("yd3"))));
    assert_eq!(parse("4 m3/hx"), Err(AmountError::UnknownUnit("hx".into(), None)));
    assert_eq!(parse("$4/"), Err(AmountError::UnknownUnit(String::new(), None)));
    assert_eq!(parse("30 yd3 of chips"), Err(AmountError::UnknownUnit("yd3 of chips".into(), Some("yd3"))));
    assert!(parse("20 s 30 yd3").is_err());
    assert!(parse("4 / m").is_err());
}

#[test]
fn an_amount_in_its_own_unit_is_exact() {
    let rate = parse("22 m3/h").unwrap();
    assert_eq!(rate.in_units_of(1.0 / exact::hours()), 22.0);
}

#[test]
fn what_is_shown_reads_back_as_the_same_amount() {
    use crate::units::{self, System};
    let shown: [(units::Show, f64); 8] = [
        (units::volume, 33.6),
        (units::bucket, 0.5),
        (units::length, 12.0),
        (units::mass, 480.0),
        (units::speed, 1.5),
        (units::density, 281.0),
        (units::area, 90.0),
        (units::short_length, 0.5),
    ];
    for (show, value) in shown {
        for system in [System::Us, System::Metric] {
            let text = show(value, system);
            let read = parse(&text).unwrap().in_units_of(1.0);
            assert!((read / value - 1.0).abs() < 0.006, "{text} reads back as {read}, not {value}");
        }
    }
}
