use super::*;

#[test]
fn volumes_are_shown_in_three_digits() {
    assert_eq!(volume(22.936_645_740, System::Us), "30 yd3");
    assert_eq!(volume(22.936_645_740, System::Metric), "22.9 m3");
    assert_eq!(bucket(0.396_435_852_288, System::Us), "14 ft3");
    assert_eq!(bucket(0.396_435_852_288, System::Metric), "0.396 m3");
}

#[test]
fn durations_are_said_as_people_say_them() {
    for (seconds, text) in [
        (0.0, "0 s"),
        (2.5, "2.5 s"),
        (45.0, "45 s"),
        (270.0, "4 min 30 s"),
        (300.0, "5 min"),
        (1500.0, "25 min"),
        (3599.0, "1 h"),
        (7500.0, "2 h 05 min"),
        (-180.0, "-3 min"),
        (f64::NAN, "unknown"),
    ] {
        assert_eq!(duration(seconds), text);
    }
}

#[test]
fn the_clock_has_twelve_hours_in_us_units_and_counts_days() {
    assert_eq!(clock(0.0, System::Us), "12:00 am");
    assert_eq!(clock(12.5 * 3600.0, System::Us), "12:30 pm");
    assert_eq!(clock(12.5 * 3600.0, System::Metric), "12:30");
    assert_eq!(clock(86_400.0 + 9.0 * 3600.0, System::Metric), "day 2 09:00");
}

#[test]
fn money_wears_its_currency() {
    assert_eq!(money(380.0, "$"), "$380");
    assert_eq!(money(41.5, "$"), "$41.50");
    assert_eq!(money(12_345.6, "EUR"), "12,346 EUR");
    assert_eq!(money(7.0, ""), "7");
}

#[test]
fn figures_that_are_no_number_are_called_unknown() {
    assert_eq!(figure(f64::INFINITY), "unknown");
    assert_eq!(figure(-0.0), "0");
    assert_eq!(figure(0.001_234), "0.00123");
    assert_eq!(figure(99.96), "100");
}
