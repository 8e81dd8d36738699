//! Loaders of the job.

use super::makings::{Makings, Sense, mean, or_usual};
use crate::check::names::copies;
use crate::clearance::micrometres;
use crate::defaults::{
    DUMPING, LOADING, NOTHING_SAID, SPEED_EMPTY, SPEED_LOADED, SPREAD_TIME, START_AND_STOP, Usual,
};
use crate::diagnostics::{At, Diagnostics, Read};
use crate::lift::HAND_M3;
use crate::quantity::given::Given;
use crate::raw::{Raw, RawLoader, RawStoppages, Switched};
use crate::scenario::StatedLoader;
use crate::units::{duration, figure, speed};
use sim::{Distribution, Loader, Stoppages};

pub(super) fn make(makings: &Makings<'_>) -> Read<Vec<Loader>> {
    Read::of(|diagnostics| {
        let mut loaders = Vec::new();
        for raw in &makings.raw.loaders {
            let name = &raw.named.name.as_ref()?.value;
            let count = raw.count.as_ref().map_or(1, |count| count.value);
            if count == 0 {
                continue;
            }
            let loader = one(makings, raw, name).join(diagnostics)?;
            let copies = copies(name, count).into_iter();
            loaders.extend(copies.map(|name| Loader { name, ..loader.clone() }));
        }
        Some(loaders)
    })
}

/// What was said of each loader that the job does not hold.
pub(super) fn stated(raw: &Raw) -> Vec<StatedLoader> {
    let one = |loader: &RawLoader| {
        let count = loader.count.as_ref().map_or(1, |count| count.value);
        let bucket_mass_kg = loader.bucket_mass.as_ref().map(|mass| mass.value);
        let lift = loader.lift().map(|(lift, _)| lift);
        std::iter::repeat_n(StatedLoader { bucket_mass_kg, lift }, count as usize)
    };
    raw.loaders.iter().flat_map(one).collect()
}

fn one(makings: &Makings<'_>, raw: &RawLoader, name: &str) -> Read<Loader> {
    Read::of(|diagnostics| {
        let key = |key: &str| format!("loader.{name}.{key}");
        let spreads = makings.raw.crew.spread_share.as_ref().is_some_and(|share| share.value > 0.0);
        let mut step = |given: &Option<At<Given>>, usual: &Usual, its_key: &str, what: &str| {
            let words = |time| format!("{name}: {what} takes {}", duration(time));
            or_usual(given.as_ref(), Sense::Direct, usual, key(its_key), words).join(diagnostics)
        };
        let load_s = step(&raw.loading, &LOADING, "loading", "loading a bucket")?;
        let dump_s = step(&raw.dumping, &DUMPING, "dumping", "dumping it")?;
        let start_stop_s = step(
            &raw.start_and_stop,
            &START_AND_STOP,
            "start_and_stop",
            "starting and stopping on each leg",
        )?;
        let mut pace = |given: &Option<At<Given>>, usual: &Usual, its_key: &str, state: &str| {
            let words = |pace| format!("{name}: drives {} {state}", speed(pace, makings.system));
            or_usual(given.as_ref(), Sense::Inverted, usual, key(its_key), words).join(diagnostics)
        };
        let loaded_m_per_s = pace(&raw.speed_loaded, &SPEED_LOADED, "speed_loaded", "loaded")?;
        let empty_m_per_s = pace(&raw.speed_empty, &SPEED_EMPTY, "speed_empty", "empty")?;
        let spread_s_per_m3 = if spreads {
            let words =
                |time| format!("{name}: spreading with the bucket takes {} for each m3", duration(time));
            or_usual(raw.spread_time.as_ref(), Sense::Direct, &SPREAD_TIME, key("spread_time"), words)
                .join(diagnostics)?
        } else {
            raw.spread_time.as_ref().map_or(0.0, |given| mean(&given.value, Sense::Direct))
        };
        diagnostics.join(limits_assumed(raw, name, makings));
        diagnostics.join(money_assumed(raw, name, makings.raw));
        let plain = |at: &Option<At<f64>>| at.as_ref().map_or(0.0, |at| at.value);
        Some(Loader {
            name: name.to_owned(),
            heaped_m3: raw.heaped.as_ref()?.value,
            struck_m3: raw.struck.as_ref().map(|at| at.value),
            lift_kg: raw.lift().map(|(lift, _)| lift.may_kg()),
            width_m: micrometres(plain(&raw.width)),
            loaded_m_per_s,
            empty_m_per_s,
            load_s,
            dump_s,
            start_stop_s,
            spread_s_per_m3,
            machine_cost_per_h: plain(&raw.machine_cost),
            operator_cost_per_h: plain(&raw.operator_cost),
            fuel_working_l_per_h: plain(&raw.fuel_working),
            fuel_idling_l_per_h: plain(&raw.fuel_idling),
            stoppages: raw.stoppages.as_ref().and_then(|raw| stoppages(makings, raw)),
        })
    })
}

fn limits_assumed(raw: &RawLoader, name: &str, makings: &Makings<'_>) -> Diagnostics {
    let mut diagnostics = lift_assumed(raw, name);
    if raw.width.is_none() && makings.has_passes_on_a_way() {
        let words = format!("{name}: no width is given, so it is taken to fit through every pass");
        diagnostics.assume(format!("loader.{name}.width"), words, NOTHING_SAID);
    }
    if raw.stoppages.is_none() {
        let words = format!("{name}: never breaks down or is called away");
        diagnostics.assume(format!("loader.{name}.stoppages"), words, NOTHING_SAID);
    }
    diagnostics
}

/// A hand barrow has no figure of a manual, so nothing is said of one.
fn lift_assumed(raw: &RawLoader, name: &str) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    let by_hand = raw.heaped.as_ref().is_some_and(|heaped| heaped.value <= HAND_M3);
    if raw.lift().is_none() && !by_hand {
        let words =
            format!("{name}: what it may lift is not given, so loads are limited by the bucket alone");
        diagnostics.assume(format!("loader.{name}.hydraulic_lift"), words, NOTHING_SAID);
    }
    for lift in raw.lifts.iter().filter(|lift| lift.rated.is_some() && lift.share.is_none()) {
        let usual = lift.figure.usual(raw.on_tracks());
        let share = match usual.value {
            1.0 => "all".to_owned(),
            share => format!("{} %", figure(share * 100.0)),
        };
        let words = format!("{name}: {share} of its {} may be lifted", lift.figure.words());
        diagnostics.assume(format!("loader.{name}.{}", lift.figure.share_key()), words, usual.from);
    }
    diagnostics
}

fn money_assumed(raw: &RawLoader, name: &str, file: &Raw) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    if raw.fuel_working.is_none() && raw.fuel_idling.is_none() {
        let words = format!("{name}: no burn of fuel is given, so none is counted");
        diagnostics.assume(format!("loader.{name}.fuel_working"), words, NOTHING_SAID);
    } else if raw.fuel_idling.is_none() || raw.fuel_working.is_none() {
        let (missing, state) =
            if raw.fuel_idling.is_none() { ("fuel_idling", "idling") } else { ("fuel_working", "working") };
        let words = format!("{name}: burns no fuel while {state}");
        diagnostics.assume(format!("loader.{name}.{missing}"), words, NOTHING_SAID);
    } else if file.money.fuel_price.is_none() && file.said.currency.is_some() {
        diagnostics.assume(
            "money.fuel_price",
            "no price of fuel is given, so it costs nothing",
            NOTHING_SAID,
        );
    }
    if file.said.currency.is_none() {
        return diagnostics;
    }
    for (given, key, what) in [
        (&raw.machine_cost, "machine_cost", "the machine"),
        (&raw.operator_cost, "operator_cost", "its operator"),
    ] {
        if given.is_none() {
            let words = format!("{name}: {what} costs nothing");
            diagnostics.assume(format!("loader.{name}.{key}"), words, NOTHING_SAID);
        }
    }
    diagnostics
}

/// Stoppages come by chance only, so without chance there are none.
fn stoppages(makings: &Makings<'_>, raw: &RawStoppages) -> Option<Stoppages> {
    if makings.raw.spread.switched == Switched::None {
        return None;
    }
    let length_s: Distribution = raw.length.value.clone();
    Some(Stoppages { mean_gap_s: raw.gap.value, length_s })
}
