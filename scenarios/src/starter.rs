//! A commented starter file for a new job.

mod order;
pub(crate) mod usual;

use crate::document::quoted;
use crate::lift::LiftFigure;
use crate::units::System;
use order::Order;
pub(crate) use order::usual_order;

/// What is asked for a starter file; every answer has a default.
#[derive(Clone, Debug, PartialEq)]
pub struct Answers {
    /// Title of the job.
    pub title: String,
    /// System of units the file is written in.
    pub units: System,
    /// Name of a material in the built-in table.
    pub material: String,
    /// Loose volume to move, with its unit; or an area and its finished depth, as in `110 m2 at 10 cm`.
    pub volume: String,
    /// What a truck brings at a time, with its unit.
    pub truckload: String,
    /// Heaped capacity of the bucket, with its unit.
    pub bucket: String,
    /// Distance from pile to zone, with its unit.
    pub distance: String,
    /// People who rake.
    pub rakers: u32,
    /// Width of the gate on the way, with its unit, if there is one.
    pub gate: Option<String>,
    /// Start of the day, such as `08:00`.
    pub start: String,
    /// Breaks, such as `12:00-12:30`, several with commas between; empty if nobody knows.
    pub breaks: String,
    /// What the machine may lift: the figure that stands in its manual, and how much it says, with its unit.
    pub lift: Option<(LiftFigure, String)>,
    /// What is paid; each may be left out.
    pub prices: AnsweredPrices,
}

/// What is paid, each with its currency and unit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct AnsweredPrices {
    /// Of the material, such as `$18/yd3`.
    pub material: Option<String>,
    /// An hour of the machine, such as `$25/h`.
    pub machine: Option<String>,
    /// An hour of its operator, such as `$35/h`.
    pub operator: Option<String>,
    /// An hour of somebody who rakes, such as `$22/h`.
    pub raker: Option<String>,
}

/// Writes a commented scenario file from the answers. What makes no sense in them is found when the file is read.
pub fn starter(answers: &Answers) -> String {
    let mut text = heading(answers);
    text.push_str(&ground(answers));
    text.push_str(&machine(answers));
    text.push_str(&people(answers));
    text.push_str(&variants(answers));
    text
}

/// The first in US units, the second in metric ones.
fn pick(answers: &Answers, us: &'static str, metric: &'static str) -> &'static str {
    usual::pick(answers.units, us, metric)
}

/// A line with what was answered, or the usual figure in a line that is not read.
fn line(key: &str, answered: Option<&String>, usual: &str) -> String {
    answered.map_or_else(|| format!("# {key} = {usual}"), |typed| format!("{key} = {}", quoted(typed)))
}

fn heading(answers: &Answers) -> String {
    format!(
        r#"# Every quantity carries its unit; both systems may be mixed. Lines that begin with # are not read: take the sign
# away and put your own figure in. What is left out gets a built-in default, and every default used is listed.
#
# A figure can be given three ways:
#   one figure                loading = "20 s"
#   low, typical and high     loading = {{ low = "15 s", typical = "20 s", high = "30 s" }}   (one day in ten is below low,
#                             one in ten above high)
#   a full distribution       loading = {{ family = "lognormal", mean = "20 s", cv = "25 %" }}

title = {title}
units = "{units}"
# date = "2026-04-18"

[material]
name = {material}                # one of the built-in table; any other needs density and fill_factor
# density = {density}
# fill_factor = "95 %"           # what a bucket holds on average, as a share of its heaped capacity
{price}

"#,
        title = quoted(&answers.title),
        units = answers.units,
        material = quoted(&answers.material),
        density = pick(answers, "\"473 lb/yd3\"", "\"280 kg/m3\""),
        price = line("price", answers.prices.material.as_ref(), pick(answers, "\"$18/yd3\"", "\"€24/m3\"")),
    )
}

fn ground(answers: &Answers) -> String {
    let distance = quoted(&answers.distance);
    let way = match &answers.gate {
        None => format!(
            "distance = {distance}              # from the pile to the middle of the ground, as driven"
        ),
        Some(_) => format!("ways = [ {{ from = \"pile\", distance = {distance}, passes = [ \"gate\" ] }} ]"),
    };
    let gate = answers.gate.as_ref().map_or_else(String::new, |width| {
        format!("[[pass]]\nname = \"gate\"\nwidth = {}\n# passing = \"8 s\"\n\n", quoted(width))
    });
    let size = match answers.volume.split_once(" at ") {
        Some((area, depth)) => format!("area = {}\ndepth = {}", quoted(area.trim()), quoted(depth.trim())),
        None => format!("volume = {}", quoted(&answers.volume)),
    };
    let Order { volume, why } = Order::of(answers);
    let usual = Answers::usual(answers.units);
    let of_zone = |key| quoted(&usual.of_zone(key).unwrap_or_default());
    format!(
        r#"[[zone]]                         # one for each part of the ground; repeat the block for more
name = "ground"
{size}                # loose volume, or area = {area} and depth = {depth}
{way}
# room = 3                       # how many heaps may lie there at once

[[stockpile]]
name = "pile"
on_hand = {volume}              # {why}
truckload = {truckload}            # what a truck brings at a time
# carriage = {carriage}             # what bringing it costs, beside its price
# deliveries = [ {{ at = "10:30", volume = {truck}, late = {{ low = "0 min", typical = "10 min", high = "40 min" }} }} ]

{gate}"#,
        volume = quoted(&volume),
        truckload = quoted(&answers.truckload),
        area = of_zone("area"),
        depth = of_zone("depth"),
        carriage = pick(answers, "\"$180\"", "\"€160\""),
        truck = quoted(&usual.truckload),
    )
}

fn machine(answers: &Answers) -> String {
    let width = pick(answers, "\"48 in\"", "\"1.2 m\"");
    let width_line = match &answers.gate {
        None => format!("# width = {width}"),
        Some(_) => format!("# width = {width}               # without it the gate is not checked"),
    };
    let prices = &answers.prices;
    let lift = |figure: LiftFigure, usual: &str| {
        let answered = answers.lift.as_ref().filter(|(answered, _)| *answered == figure);
        line(figure.key(), answered.map(|(_, typed)| typed), usual)
    };
    format!(
        r#"[[loader]]
name = "loader"
heaped = {bucket}                # heaped capacity of the bucket
# bucket_mass = {mass}          # what the bucket itself weighs; for trying other buckets
# What the machine may lift: take the line of the figure that stands in its manual. Without any, loads are limited by the
# bucket alone.
{lift}            # a tractor's loader: half of it is used
{capacity}  # a skid-steer, track or wheel loader: all of it is used
{tipping}             # half of it is used, 35 % with tracks = true
{width_line}
# speed_loaded = {loaded}
# speed_empty = {empty}
# loading = "20 s"
# dumping = "12 s"
{machine}
{operator}
# fuel_working = {fuel}

"#,
        bucket = quoted(&answers.bucket),
        mass = pick(answers, "\"180 lb\"", "\"80 kg\""),
        lift = lift(LiftFigure::HydraulicLift, pick(answers, "\"1300 lb\"", "\"600 kg\"")),
        capacity = lift(LiftFigure::RatedOperatingCapacity, pick(answers, "\"900 lb\"", "\"400 kg\"")),
        tipping = lift(LiftFigure::TippingLoad, pick(answers, "\"1800 lb\"", "\"800 kg\"")),
        loaded = pick(answers, "\"3 mph\"", "\"5 km/h\""),
        empty = pick(answers, "\"4 mph\"", "\"6.5 km/h\""),
        machine = line("machine_cost", prices.machine.as_ref(), pick(answers, "\"$25/h\"", "\"€25/h\"")),
        operator = line("operator_cost", prices.operator.as_ref(), pick(answers, "\"$35/h\"", "\"€35/h\"")),
        fuel = pick(answers, "\"1.2 gal/h\"", "\"4.5 l/h\""),
    )
}

fn people(answers: &Answers) -> String {
    let rate = pick(answers, "\"25 yd3/h\"", "\"19 m3/h\"");
    let cost = line("cost", answers.prices.raker.as_ref(), pick(answers, "\"$22/h\"", "\"€22/h\""));
    let breaks: Vec<String> =
        answers.breaks.split(',').map(str::trim).filter(|one| !one.is_empty()).map(quoted).collect();
    let breaks = match breaks.as_slice() {
        [] => "# breaks = [ \"12:00-12:30\" ]".to_owned(),
        all => format!("breaks = [ {} ]", all.join(", ")),
    };
    let crew = match answers.rakers {
        0 => "[crew]\nspread_share = \"100 %\"          # nobody rakes: the loader spreads it all\n\n"
            .to_owned(),
        count => format!(
            "[[raker]]\nname = \"helper\"\ncount = {count}\n# rate = {rate}              # loose volume one person rakes out \
             in an hour\n{cost}\n\n"
        ),
    };
    format!(
        r#"{crew}[shift]
start = {start}
# end = "16:30"
{breaks}
# set_up = "15 min"
# clean_up = {{ low = "10 min", typical = "15 min", high = "30 min" }}

# [money]
# fuel_price = {fuel}
# mobilisation = {mobilisation}         # getting the machine there and back
"#,
        start = quoted(&answers.start),
        fuel = pick(answers, "\"$4/gal\"", "\"€1.60/l\""),
        mobilisation = pick(answers, "\"$90\"", "\"€90\""),
    )
}

fn variants(answers: &Answers) -> String {
    let change = match answers.rakers {
        0 => format!("{{ \"loader.loader.heaped\" = {} }}", pick(answers, "\"20 ft3\"", "\"0.6 m3\"")),
        count => format!("{{ \"raker.helper.count\" = {} }}", count.saturating_add(1)),
    };
    format!(
        "\n# [[alternative]]                # the same job with something changed\n# name = \"a variant\"\n# change = {change}\n"
    )
}

#[cfg(test)]
mod tests;
