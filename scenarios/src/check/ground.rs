//! Every zone that needs material can be reached, and every loader gets somewhere.

use crate::clearance::fits;
use crate::diagnostics::Diagnostics;
use crate::raw::{Raw, RawLoader, RawWay, RawZone};
use crate::units::short_length;

pub(super) fn check(raw: &Raw) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    let unread = raw.loaders.iter().any(|loader| loader.width_is_wrong)
        || raw.passes.iter().any(|pass| pass.width.is_none())
        || raw.zones.iter().any(|zone| zone.ways.is_empty());
    if unread || raw.loaders.is_empty() || raw.zones.is_empty() {
        return diagnostics;
    }
    let gets_to = |loader, zone: &RawZone| zone.ways.iter().any(|way| open(raw, loader, way));
    for zone in &raw.zones {
        if !raw.loaders.iter().any(|loader| gets_to(loader, zone)) {
            let what = format!("no loader can get there: {}", narrow(raw, zone));
            let right = "widen the pass, add a way around it, or use a narrower machine";
            diagnostics.problem(&zone.named.place, "", what, right);
        }
    }
    for loader in &raw.loaders {
        let gets_somewhere = raw.zones.iter().any(|zone| gets_to(loader, zone));
        if let (false, Some(width)) = (gets_somewhere, &loader.width) {
            let narrow: Vec<String> = raw.zones.iter().map(|zone| narrow(raw, zone)).take(3).collect();
            let what = format!("this machine fits through to no zone: {}", narrow.join("; "));
            let right = "widen the pass, add a way around it, or leave the machine out";
            diagnostics.wrong_at(width, what, right);
        }
    }
    diagnostics
}

fn open(raw: &Raw, loader: &RawLoader, way: &RawWay) -> bool {
    let machine = loader.width.as_ref().map_or(0.0, |width| width.value);
    way.passes.iter().all(|entry| width_of(raw, &entry.pass.value).is_none_or(|pass| fits(machine, pass)))
}

fn width_of(raw: &Raw, pass: &str) -> Option<f64> {
    raw.passes.iter().find(|p| p.named.shown() == pass)?.width.as_ref().map(|width| width.value)
}

/// The pass of a zone that comes nearest to letting the narrowest machine through, in words.
fn narrow(raw: &Raw, zone: &RawZone) -> String {
    let system = raw.system();
    let widths = raw.loaders.iter().map(|loader| loader.width.as_ref().map_or(0.0, |width| width.value));
    let machine = widths.fold(f64::INFINITY, f64::min);
    let narrowest = zone.ways.iter().filter_map(|way| {
        let passes = way.passes.iter().filter_map(|p| Some((width_of(raw, &p.pass.value)?, &p.pass.value)));
        passes.min_by(|a, b| a.0.total_cmp(&b.0))
    });
    match narrowest.max_by(|a, b| a.0.total_cmp(&b.0)) {
        Some((width, name)) => format!(
            "\"{name}\" is {} wide, the narrowest loader {}, {} too much",
            short_length(width, system),
            short_length(machine, system),
            short_length(machine - width, system)
        ),
        None => String::new(),
    }
}
