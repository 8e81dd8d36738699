"""Writes line.csv, zones.csv and pair.csv: finite jobs with exponential times (unit: the mean time of a load's loading)."""
import csv
import lumped
from entities import Entities
from solve import both


def write(name, rows):
    with open(name, "w", newline="") as f:
        w = csv.DictWriter(f, rows[0].keys(), lineterminator="\n")
        w.writeheader()
        w.writerows(rows)
    print(name, len(rows), "rows, second method off at most", max(float(r["second_method_off"]) for r in rows))


KEYS = ("loads", "rakers", "room", "rake", "load", "haul", "dump", "ret", "clear", "gap", "length")
LINES = [  # what it shows, then the keys above
    ("rakers", 12, 2, 3, 2.0, 1.0, 0, 0, 0, 0, 0, 0),
    ("rakers", 12, 3, 3, 3.0, 1.0, 0, 0, 0, 0, 0, 0),
    ("rakers", 15, 4, 5, 5.0, 1.0, 0, 0, 0, 0, 0, 0),
    ("rakers", 10, 3, 2, 2.0, 1.0, 0, 0, 0, 0, 0, 0),
    ("dump", 12, 1, 1, 1.0, 1.0, 0, 0.5, 0, 0, 0, 0),
    ("dump", 12, 1, 2, 1.5, 1.0, 0, 0.6, 0, 0, 0, 0),
    ("dump", 12, 2, 2, 2.0, 1.0, 0, 0.6, 0, 0, 0, 0),
    ("dump", 12, 3, 4, 4.0, 1.0, 0, 0.6, 0, 0, 0, 0),
    ("cycle", 10, 1, 1, 2.0, 1.0, 0.7, 0.4, 0.5, 0, 0, 0),
    ("cycle", 10, 2, 2, 4.0, 1.0, 0.7, 0.4, 0.5, 0, 0, 0),
    ("cycle", 15, 3, 4, 8.0, 1.0, 0.5, 0.5, 0.5, 0, 0, 0),
    ("clear", 12, 1, 2, 1.0, 1.0, 0, 0.5, 0, 1, 0, 0),
    ("clear", 12, 1, 4, 1.2, 1.0, 0, 0.5, 0.3, 1, 0, 0),
    ("clear", 12, 2, 2, 2.5, 1.0, 0, 0.5, 0, 1, 0, 0),
    ("clear", 12, 2, 4, 2.5, 1.0, 0.4, 0.8, 0.4, 1, 0, 0),
    ("clear", 12, 3, 3, 3.0, 1.0, 0, 0.6, 0, 1, 0, 0),
    ("clear", 10, 3, 6, 6.0, 1.0, 0, 1.0, 0, 1, 0, 0),
    ("stops", 10, 1, 10, 0.001, 1.0, 0, 0, 0, 0, 4.0, 2.0),
    ("stops", 12, 1, 2, 1.5, 1.0, 0, 0.5, 0, 0, 5.0, 3.0),
    ("stops", 12, 2, 2, 2.5, 1.0, 0.5, 0.5, 0.5, 0, 6.0, 3.0),
    ("stops", 12, 2, 3, 2.5, 1.0, 0.5, 0.5, 0.5, 1, 6.0, 3.0),
    ("stops", 12, 1, 2, 2.0, 1.0, 0, 0.8, 0, 1, 2.0, 1.0),
]


def lines():
    rows = []
    for shows, *values in LINES:
        p = dict(zip(KEYS, values))
        e = Entities([p["loads"]], [p["room"]], p["rake"], p["load"], [p["haul"]], p["dump"], p["ret"], 1, ((0,),) * p["rakers"],
                     clear=p["clear"], gap=p["gap"], length=p["length"])
        row = both(lumped.line(**p), (e.start(), e.moves, e.tells(lumped.TOLD)), lumped.TOLD)
        rows.append({"shows": shows, **p, **row})
    write("line.csv", rows)


ZKEYS = ("order", "rakers", "at_home", "need_1", "need_2", "room_1", "room_2", "rake_1", "rake_2", "load", "haul_1", "haul_2",
         "dump")
ZONES = [
    ("listed", 2, 1, 5, 5, 1, 1, 2.0, 2.0, 1.0, 0.5, 0.8, 0.3),
    ("in turn", 2, 1, 5, 5, 1, 1, 3.0, 1.5, 1.0, 0.5, 0.8, 0.3),
    ("listed", 1, 0, 5, 5, 1, 2, 1.2, 1.2, 1.0, 0.5, 0.8, 0.3),
    ("in turn", 1, 0, 6, 4, 1, 1, 1.5, 1.5, 1.0, 0.3, 0.6, 0.3),
    ("most room", 1, 0, 4, 6, 2, 3, 1.5, 1.5, 1.0, 0.3, 0.6, 0.3),
    ("listed", 2, 0, 6, 4, 2, 1, 3.0, 3.0, 1.0, 0.2, 0.6, 0.4),
    ("in turn", 2, 0, 4, 6, 2, 2, 3.0, 3.0, 1.0, 0.3, 0.5, 0.3),
    ("most room", 2, 0, 5, 5, 2, 3, 4.0, 4.0, 1.0, 0.3, 0.6, 0.2),
]


def zones():
    rows = []
    for values in ZONES:
        p = dict(zip(ZKEYS, values))
        pair = lambda k: (p[k + "_1"], p[k + "_2"])
        e = Entities(pair("need"), pair("room"), pair("rake"), p["load"], pair("haul"), p["dump"], order=p["order"],
                     rakers=((0,), (1,)) if p["at_home"] else ((0,),) * p["rakers"])
        e.walks = not p["at_home"]
        first = lumped.two_zones(pair("need"), pair("room"), pair("rake"), p["load"], pair("haul"), p["dump"], p["order"],
                                 p["rakers"], p["at_home"])
        rows.append({**p, **both(first, (e.start(), e.moves, e.tells(lumped.TOLD_ZONES)), lumped.TOLD_ZONES)})
    write("zones.csv", rows)


PKEYS = ("loads", "rakers", "room", "rake", "load", "pass", "dump", "clear")
PAIRS = [
    (10, 1, 2, 0.8, 1.0, 0, 0.6, 0),
    (10, 1, 3, 1.0, 1.0, 0, 1.0, 0),
    (10, 2, 2, 1.5, 1.0, 0, 0.6, 1),
    (10, 2, 4, 2.0, 1.0, 0, 1.0, 1),
    (9, 1, 3, 0.8, 1.0, 0.4, 0.5, 0),
    (9, 2, 2, 2.0, 0.6, 0.6, 0.5, 0),
    (9, 2, 3, 1.5, 0.6, 0.5, 0.8, 1),
    (8, 1, 8, 0.2, 0.3, 1.0, 0.2, 0),
]


def pairs():
    rows = []
    for values in PAIRS:
        p = dict(zip(PKEYS, values))
        e = Entities([p["loads"]], [p["room"]], p["rake"], p["load"], [0.0], p["dump"], loaders=2, rakers=((0,),) * p["rakers"],
                     clear=p["clear"], passing=p["pass"])
        first = lumped.pair(passing=p["pass"], **{k: v for k, v in p.items() if k != "pass"})
        rows.append({**p, **both(first, (e.start(), e.moves, e.tells(lumped.TOLD_PAIR)), lumped.TOLD_PAIR)})
    write("pair.csv", rows)


CKEYS = ("loads", "rakers", "crowding", "room", "rake", "load", "dump", "spread_share", "spread", "clear")
CREWS = [  # crowding 0: each rakes alone
    (12, 2, 0.9, 2, 2.0, 1.0, 0.4, 0.0, 0.0, 0),
    (12, 3, 0.7, 3, 3.0, 1.0, 0.4, 0.0, 0.0, 1),
    (12, 1, 0.0, 2, 2.0, 1.0, 0.3, 0.4, 0.8, 0),
    (12, 2, 0.0, 3, 4.0, 1.0, 0.2, 0.25, 1.0, 1),
    (12, 2, 0.8, 3, 4.0, 1.0, 0.2, 0.5, 1.2, 1),
]


def crews():
    """A crew that rakes together is one raker at the sum of the rates times crowding; what the loader spreads of its load makes
    its dump longer and the raking shorter."""
    rows = []
    for values in CREWS:
        p = dict(zip(CKEYS, values))
        crew, rake = (1, 1 / (p["rakers"] * p["crowding"] / p["rake"])) if p["crowding"] else (p["rakers"], p["rake"])
        rake *= 1 - p["spread_share"]
        dump = p["dump"] + p["spread_share"] * p["spread"]
        e = Entities([p["loads"]], [p["room"]], rake, p["load"], [0.0], dump, rakers=((0,),) * crew, clear=p["clear"])
        first = lumped.line(p["loads"], crew, p["room"], rake, p["load"], 0.0, dump, 0.0, p["clear"])
        rows.append({**p, **both(first, (e.start(), e.moves, e.tells(lumped.TOLD)), lumped.TOLD)})
    write("crew.csv", rows)


QKEYS = ("order", "rakers", "need_1", "need_2", "room_1", "room_2", "rake", "load", "haul_1", "haul_2", "dump")
PAIRS_IN_ZONES = [
    ("listed", 1, 5, 5, 2, 1, 0.8, 0.6, 0.8, 1.2, 0.4),
    ("in turn", 2, 6, 4, 2, 2, 1.8, 0.6, 0.8, 1.2, 0.4),
    ("most room", 2, 5, 5, 2, 3, 1.8, 0.6, 0.8, 1.2, 0.4),
]


def pairs_in_zones():
    rows = []
    for values in PAIRS_IN_ZONES:
        p = dict(zip(QKEYS, values))
        both_of = lambda k: (p[k + "_1"], p[k + "_2"])
        needs, rooms, hauls = both_of("need"), both_of("room"), both_of("haul")
        e = Entities(needs, rooms, p["rake"], p["load"], hauls, p["dump"], loaders=2, order=p["order"], rakers=((0,),) * p["rakers"])
        e.walks = True
        first = lumped.pair_in_zones(needs, rooms, p["rake"], p["load"], hauls, p["dump"], p["order"], p["rakers"])
        rows.append({**p, **both(first, (e.start(), e.moves, e.tells(lumped.TOLD_PAIR_IN_ZONES)), lumped.TOLD_PAIR_IN_ZONES)})
    write("pair_in_zones.csv", rows)


if __name__ == "__main__":
    pairs_in_zones()
    lines()
    crews()
    zones()
    pairs()
