//! There is something to move, somewhere to put it, and it can be done in a believable number of loads.

use crate::diagnostics::{At, Diagnostics};
use crate::key::finish::Rule;
use crate::quantity::given::Given;
use crate::raw::{Raw, RawLoader, RawStockpile};
use crate::units::figure;

/// Most loads of one job.
const MOST_LOADS: f64 = 100_000.0;

pub(super) fn check(raw: &Raw) -> Diagnostics {
    let mut diagnostics = prices(raw);
    let unknown = raw.stockpiles.iter().any(|pile| pile.volume_is_wrong);
    if unknown || raw.stockpiles.is_empty() {
        return diagnostics;
    }
    let ordered: f64 = raw.stockpiles.iter().map(delivered).sum();
    if ordered <= 0.0 {
        for pile in &raw.stockpiles {
            let right = "give on_hand = \"20 yd3\", or deliveries";
            diagnostics.problem(&pile.named.place, "", "there is nothing to move", right);
        }
        return diagnostics;
    }
    diagnostics.join(nothing_needed(raw));
    diagnostics
        .join(raw.loaders.iter().find_map(|loader| too_many_loads(raw, loader, ordered)).unwrap_or_default());
    diagnostics.join(out_of_reach(raw));
    diagnostics
}

/// The middle of a quantity as given.
fn middle(given: &Given) -> f64 {
    match given {
        Given::Figure(figure) => *figure,
        Given::Days(three) => three.typical,
        Given::Law(law, _) => law.mean(),
    }
}

fn delivered(pile: &RawStockpile) -> f64 {
    let volume = |given: &Option<At<Given>>| given.as_ref().map_or(0.0, |at| middle(&at.value));
    volume(&pile.on_hand) + pile.deliveries.iter().map(|delivery| volume(&delivery.volume)).sum::<f64>()
}

fn prices(raw: &Raw) -> Diagnostics {
    if raw.material.as_ref().is_none_or(|material| material.price.is_none()) {
        return Diagnostics::default();
    }
    let own = raw.stockpiles.iter().flat_map(|pile| {
        pile.price.iter().chain(pile.deliveries.iter().filter_map(|delivery| delivery.price.as_ref()))
    });
    let right = "give the price per volume under [material], or the price of each delivery, not both";
    own.map(|price| Diagnostics::of_value(price, "the material would be paid twice", right)).collect()
}

fn nothing_needed(raw: &Raw) -> Diagnostics {
    let cleared = raw.finish.rule.as_ref().is_some_and(|rule| rule.value == Rule::PileCleared);
    let none = |given: &Option<At<Given>>| given.as_ref().is_some_and(|at| middle(&at.value) <= 0.0);
    if cleared || raw.zones.is_empty() || !raw.zones.iter().all(|zone| none(&zone.volume)) {
        return Diagnostics::default();
    }
    let right = "give a zone a volume above 0, or rule = \"pile cleared\" under [finish]";
    let volumes = raw.zones.iter().filter_map(|zone| zone.volume.as_ref());
    volumes.map(|volume| Diagnostics::of_value(volume, "no zone needs anything", right)).collect()
}

fn too_many_loads(raw: &Raw, loader: &RawLoader, ordered: f64) -> Option<Diagnostics> {
    let most = figure(MOST_LOADS);
    let heaped = loader.heaped.as_ref()?;
    if ordered > MOST_LOADS * heaped.value {
        let what = format!("with this bucket the job takes some {} loads", figure(ordered / heaped.value));
        let right = format!("at most {most} are simulated; check the volume and the bucket");
        return Some(Diagnostics::of_value(heaped, what, right));
    }
    let (lift, typed) = loader.lift()?;
    let carried = lift.may_kg() / raw.material.as_ref()?.known_density()?;
    (ordered > MOST_LOADS * carried).then(|| {
        let loads = figure(ordered / carried);
        let what = format!("with what may be lifted the job takes some {loads} loads");
        let right = format!("at most {most} are simulated; check this figure, its share and the density");
        Diagnostics::of_value(typed, what, right)
    })
}

/// A zone that needs material but is reached only from piles that never have any.
fn out_of_reach(raw: &Raw) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    for zone in &raw.zones {
        let needs = zone.volume.as_ref().is_none_or(|volume| middle(&volume.value) > 0.0);
        let mut piles = zone.ways.iter().map(|way| match &way.from {
            None => raw.stockpiles.first(),
            Some(from) => raw.stockpiles.iter().find(|pile| pile.named.shown() == from.value),
        });
        let known = zone.ways.iter().all(|way| !way.from_is_wrong);
        let empty = piles.all(|pile| pile.is_some_and(|pile| delivered(pile) <= 0.0));
        if needs && known && !zone.ways.is_empty() && empty {
            let right = "give one of them material, or a way from another pile";
            let what = "the piles it is reached from never have any material";
            diagnostics.problem(&zone.named.place, "", what, right);
        }
    }
    diagnostics
}
