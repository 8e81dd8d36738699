//! What has to follow from a change.

use super::*;

#[test]
fn an_area_offered_in_place_of_a_volume_needs_that_volume() {
    let needs = |text: &str| job(text).map(|job| job.zones.iter().map(|zone| zone.need_m3).sum::<f64>());
    let offered = std::cell::Cell::new(0);
    each_value(|text, value| {
        for both in value.choices.iter().filter(|choice| choice.contains(" at ")) {
            offered.set(offered.get() + 1);
            let (was, now) = (needs(text)?, needs(&done(text, &set(&value.key, both))?)?);
            // An area is offered in whole feet or to three digits.
            ensure((now / was - 1.0).abs() < 0.005, || format!("{both} needs {now} m3, not {was}"))?;
        }
        Ok(())
    });
    assert!(offered.get() > 4, "{offered:?}");
}

#[test]
fn the_trades_words_do_what_a_change_does() {
    for (name, text) in jobs() {
        for change in ["rakers = 3", "loaders = 2", "room = 2"] {
            let (key, value) = change.split_once(" = ").unwrap();
            let changes = vec![change.parse().unwrap()];
            let asked = Selection { changes, ..Selection::default() };
            let Ok(changed) = read(&text).unwrap().scenario(&asked) else { continue };
            assert_eq!(
                job(&done(&text, &set(key, value)).unwrap()).unwrap(),
                changed.job,
                "{name}: {change}"
            );
        }
        // These are written rounded.
        for (change, knob) in [("bucket = 0.5 m3", Knob::Bucket), ("haul = 60 m", Knob::Haul)] {
            let (key, value) = change.split_once(" = ").unwrap();
            let asked = Selection { changes: vec![change.parse().unwrap()], ..Selection::default() };
            let wanted = knob.of_job(&read(&text).unwrap().scenario(&asked).unwrap().job).unwrap();
            let made = knob.of_job(&job(&done(&text, &set(key, value)).unwrap()).unwrap()).unwrap();
            assert!((made - wanted).abs() < 0.005 * wanted, "{name}: {change}: {made}, not {wanted}");
        }
    }
}
