//! Jobs written down as data, read into the engine's own types.

use serde_json::Value;
use sim::*;

fn number(v: &Value) -> f64 {
    v.as_f64().unwrap_or_else(|| panic!("a number is wanted, not {v}"))
}

fn whole(v: &Value) -> usize {
    usize::try_from(v.as_u64().unwrap_or_else(|| panic!("a whole number is wanted, not {v}"))).unwrap()
}

fn name(v: &Value) -> String {
    v["name"].as_str().unwrap().to_owned()
}

fn list<T>(v: &Value, of: impl Fn(&Value) -> T) -> Vec<T> {
    v.as_array().unwrap_or_else(|| panic!("a list is wanted, not {v}")).iter().map(of).collect()
}

fn maybe<T>(v: &Value, of: impl Fn(&Value) -> T) -> Option<T> {
    (!v.is_null()).then(|| of(v))
}

fn law(v: &Value) -> Distribution {
    let (family, figures) = v.as_object().unwrap().iter().next().unwrap();
    let f = |key: &str| number(&figures[key]);
    match family.as_str() {
        "Constant" => Distribution::Constant(number(figures)),
        "Uniform" => Distribution::Uniform { least: f("least"), greatest: f("greatest") },
        "Triangular" => {
            Distribution::Triangular { least: f("least"), mode: f("mode"), greatest: f("greatest") }
        }
        "Pert" => Distribution::Pert { least: f("least"), mode: f("mode"), greatest: f("greatest") },
        "Normal" => Distribution::Normal { mean: f("mean"), sd: f("sd") },
        "Lognormal" => Distribution::Lognormal { mean: f("mean"), cv: f("cv") },
        "Gamma" => Distribution::Gamma { mean: f("mean"), cv: f("cv") },
        "Weibull" => Distribution::Weibull { mean: f("mean"), shape: f("shape") },
        "Exponential" => Distribution::Exponential { mean: f("mean") },
        "Observed" => Distribution::Observed(list(figures, number).into()),
        other => panic!("no family {other}"),
    }
}

fn zone(v: &Value) -> Zone {
    let pass = |p: &Value| PassOnWay { pass: whole(&p["pass"]), share: number(&p["share"]) };
    let way = |w: &Value| Way {
        stockpile: whole(&w["stockpile"]),
        distance_m: number(&w["distance_m"]),
        passes: list(&w["passes"], pass),
    };
    Zone {
        name: name(v),
        need_m3: number(&v["need_m3"]),
        room: maybe(&v["room"], |r| u32::try_from(whole(r)).unwrap()),
        ways: list(&v["ways"], way),
        walks_m: list(&v["walks_m"], number),
    }
}

fn stockpile(v: &Value) -> Stockpile {
    let delivery = |d: &Value| Delivery {
        at_s: number(&d["at_s"]),
        late_s: law(&d["late_s"]),
        volume_m3: number(&d["volume_m3"]),
    };
    Stockpile {
        name: name(v),
        on_hand_m3: number(&v["on_hand_m3"]),
        deliveries: list(&v["deliveries"], delivery),
        face: u32::try_from(whole(&v["face"])).unwrap(),
    }
}

fn loader(v: &Value) -> Loader {
    let f = |key: &str| number(&v[key]);
    Loader {
        name: name(v),
        heaped_m3: f("heaped_m3"),
        struck_m3: maybe(&v["struck_m3"], number),
        lift_kg: maybe(&v["lift_kg"], number),
        width_m: f("width_m"),
        loaded_m_per_s: f("loaded_m_per_s"),
        empty_m_per_s: f("empty_m_per_s"),
        load_s: f("load_s"),
        dump_s: f("dump_s"),
        start_stop_s: f("start_stop_s"),
        spread_s_per_m3: f("spread_s_per_m3"),
        machine_cost_per_h: f("machine_cost_per_h"),
        operator_cost_per_h: f("operator_cost_per_h"),
        fuel_working_l_per_h: f("fuel_working_l_per_h"),
        fuel_idling_l_per_h: f("fuel_idling_l_per_h"),
        stoppages: maybe(&v["stoppages"], |s| Stoppages {
            mean_gap_s: number(&s["mean_gap_s"]),
            length_s: law(&s["length_s"]),
        }),
    }
}

fn raker(v: &Value) -> Raker {
    Raker {
        name: name(v),
        rate_m3_per_h: number(&v["rate_m3_per_h"]),
        start_zone: whole(&v["start_zone"]),
        walking_m_per_s: number(&v["walking_m_per_s"]),
        cost_per_h: number(&v["cost_per_h"]),
    }
}

fn shift(v: &Value) -> Shift {
    let pause = |b: &Value| Break { start_s: number(&b["start_s"]), end_s: number(&b["end_s"]) };
    Shift {
        start_s: number(&v["start_s"]),
        end_s: maybe(&v["end_s"], number),
        breaks: list(&v["breaks"], pause),
        set_up_s: law(&v["set_up_s"]),
        clean_up_s: law(&v["clean_up_s"]),
    }
}

fn chance(v: &Value) -> Chance {
    let (d, l) = (&v["days"], &v["loads"]);
    Chance {
        days: JobFactors {
            day: law(&d["day"]),
            loader_pace: law(&d["loader_pace"]),
            travel: law(&d["travel"]),
            raker_pace: law(&d["raker_pace"]),
            fill: law(&d["fill"]),
            need: law(&d["need"]),
            bulk: law(&d["bulk"]),
        },
        loads: LoadNoise {
            fill: law(&l["fill"]),
            loading: law(&l["loading"]),
            haul: law(&l["haul"]),
            dump: law(&l["dump"]),
            return_leg: law(&l["return_leg"]),
            raking: law(&l["raking"]),
        },
    }
}

/// A job from its JSON form.
pub(crate) fn job(v: &Value) -> Job {
    let raking = &v["raking"];
    Job {
        material: Material {
            name: name(&v["material"]),
            density_kg_per_m3: number(&v["material"]["density_kg_per_m3"]),
            fill_factor: number(&v["material"]["fill_factor"]),
        },
        zones: list(&v["zones"], zone),
        stockpiles: list(&v["stockpiles"], stockpile),
        passes: list(&v["passes"], |p| Pass {
            name: name(p),
            width_m: number(&p["width_m"]),
            passing_s: number(&p["passing_s"]),
            at_once: u32::try_from(whole(&p["at_once"])).unwrap(),
        }),
        loaders: list(&v["loaders"], loader),
        rakers: list(&v["rakers"], raker),
        raking: Raking {
            together: maybe(&raking["together"], number),
            fatigue: maybe(&raking["fatigue"], |f| Fatigue {
                share_per_h: number(&f["share_per_h"]),
                floor: number(&f["floor"]),
            }),
            spread_share: number(&raking["spread_share"]),
            stand_clear: raking["stand_clear"].as_bool().unwrap(),
        },
        fill_order: match v["fill_order"].as_str().unwrap() {
            "AsListed" => FillOrder::AsListed,
            "FarthestFirst" => FillOrder::FarthestFirst,
            "NearestFirst" => FillOrder::NearestFirst,
            "InTurn" => FillOrder::InTurn,
            "MostRoom" => FillOrder::MostRoom,
            other => panic!("no fill order {other}"),
        },
        finish: match &v["finish"] {
            Value::String(_) => FinishRule::AreaCovered,
            cleared => {
                FinishRule::PileCleared { surplus_zone: whole(&cleared["PileCleared"]["surplus_zone"]) }
            }
        },
        shift: shift(&v["shift"]),
        chance: chance(&v["chance"]),
        prices: Prices {
            fuel_per_l: number(&v["prices"]["fuel_per_l"]),
            material: number(&v["prices"]["material"]),
        },
    }
}
