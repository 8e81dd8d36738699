"""The jobs both programs are given. Every number is invented for these checks.

`python jobs.py` writes jobs.json, with the field names of the Rust structs in sim/src/job.rs. Exact jobs hold no chance
at all: they are tests of rules and are compared to the microsecond. Random jobs are compared in law.
"""

import json
from pathlib import Path

HERE = Path(__file__).parent


def constant(x):
    return {"Constant": float(x)}


def uniform(least, greatest):
    return {"Uniform": {"least": least, "greatest": greatest}}


def triangular(least, mode, greatest):
    return {"Triangular": {"least": least, "mode": mode, "greatest": greatest}}


def pert(least, mode, greatest):
    return {"Pert": {"least": least, "mode": mode, "greatest": greatest}}


def normal(mean, sd):
    return {"Normal": {"mean": mean, "sd": sd}}


def lognormal(mean, cv):
    return {"Lognormal": {"mean": mean, "cv": cv}}


def gamma(mean, cv):
    return {"Gamma": {"mean": mean, "cv": cv}}


def weibull(mean, shape):
    return {"Weibull": {"mean": mean, "shape": shape}}


def exponential(mean):
    return {"Exponential": {"mean": mean}}


def observed(*values):
    return {"Observed": list(values)}


def clock(hours, minutes=0, seconds=0.0, day=1):
    return (day - 1) * 86400.0 + hours * 3600.0 + minutes * 60.0 + seconds


def way(pile, distance, *passes):
    """Passes as (index, share)."""
    return {"stockpile": pile, "distance_m": float(distance),
            "passes": [{"pass": index, "share": share} for index, share in passes]}


def zone(need, ways, room=None, walks=None):
    return {"need_m3": need, "ways": ways, "room": room, "walks_m": walks}


def pile(on_hand, *deliveries, face=1):
    """Deliveries as (clock, volume) or (clock, volume, lateness)."""
    return {"on_hand_m3": on_hand, "face": face, "deliveries": [
        {"at_s": d[0], "volume_m3": d[1], "late_s": d[2] if len(d) > 2 else constant(0)} for d in deliveries]}


def loader(**changes):
    return {"heaped_m3": 0.42, "struck_m3": None, "lift_kg": None, "width_m": 1.1,
            "loaded_m_per_s": 1.3, "empty_m_per_s": 1.7, "load_s": 38.0, "dump_s": 17.0, "start_stop_s": 6.0,
            "spread_s_per_m3": 90.0, "machine_cost_per_h": 41.0, "operator_cost_per_h": 29.0,
            "fuel_working_l_per_h": 3.9, "fuel_idling_l_per_h": 1.1, "stoppages": None} | changes


def barrow(**changes):
    return loader(heaped_m3=0.085, width_m=0.7, loaded_m_per_s=0.8, empty_m_per_s=1.1, load_s=71.0, dump_s=9.0,
                  start_stop_s=2.0, spread_s_per_m3=300.0, machine_cost_per_h=0.5, operator_cost_per_h=24.0,
                  fuel_working_l_per_h=0.0, fuel_idling_l_per_h=0.0) | changes


def raker(rate, start_zone=0, walking=1.2, cost=23.0):
    return {"rate_m3_per_h": rate, "start_zone": start_zone, "walking_m_per_s": walking, "cost_per_h": cost}


def passing(seconds, at_once=1, width=1.5):
    return {"width_m": width, "passing_s": seconds, "at_once": at_once}


def raking(together=None, fatigue=None, spread_share=0.0, stand_clear=True):
    if fatigue:
        fatigue = {"share_per_h": fatigue[0], "floor": fatigue[1]}
    return {"together": together, "fatigue": fatigue, "spread_share": spread_share, "stand_clear": stand_clear}


def shift(start=clock(8), end=None, breaks=(), set_up=constant(0), clean_up=constant(0)):
    return {"start_s": start, "end_s": end, "breaks": [{"start_s": b, "end_s": e} for b, e in breaks],
            "set_up_s": set_up, "clean_up_s": clean_up}


DAYS = ["day", "loader_pace", "travel", "raker_pace", "fill", "need", "bulk"]
LOADS = ["fill", "loading", "haul", "dump", "return_leg", "raking"]


def chance(days=None, loads=None):
    return {"days": {k: (days or {}).get(k, constant(1)) for k in DAYS},
            "loads": {k: (loads or {}).get(k, constant(1)) for k in LOADS}}


def cleared(surplus_zone):
    return {"PileCleared": {"surplus_zone": surplus_zone}}


def named(word, things):
    return [{"name": f"{word} {i + 1}"} | thing for i, thing in enumerate(things)]


def job(*, zones, piles, loaders, rakers, passes=(), raking_=None, order="AsListed", finish="AreaCovered", shift_=None,
        chance_=None, density=310.0, fill=0.93, fuel_price=1.6, material_price=480.0):
    zones = [z | {"walks_m": [float(w) for w in z["walks_m"] or [0.0] * len(zones)]} for z in zones]
    return {
        "material": {"name": "wood chips", "density_kg_per_m3": density, "fill_factor": fill},
        "zones": named("zone", zones), "stockpiles": named("pile", piles), "passes": named("pass", passes),
        "loaders": named("loader", loaders), "rakers": named("raker", rakers),
        "raking": raking_ or raking(), "fill_order": order, "finish": finish, "shift": shift_ or shift(),
        "chance": chance_ or chance(), "prices": {"fuel_per_l": fuel_price, "material": material_price},
    }


EXACT, RANDOM = {}, {}

# ------------------------------------------------------------------------------------------------------------ exact jobs

EXACT["plain_line"] = (
    "one loader, one raker, one zone, no limits; the last load is cut by the need",
    job(zones=[zone(7.3, [way(0, 62)])], piles=[pile(12.0)], loaders=[loader()], rakers=[raker(6.1)],
        raking_=raking(stand_clear=False)))

EXACT["one_heap_of_room"] = (
    "room 1, the loader spreads a quarter, stand clear, lift limit, set-up and clean-up",
    job(zones=[zone(6.0, [way(0, 48)], room=1)], piles=[pile(9.0)],
        loaders=[loader(lift_kg=114.0, heaped_m3=0.5)], rakers=[raker(3.7)], fill=0.9,
        raking_=raking(spread_share=0.25),
        shift_=shift(set_up=constant(611.0), clean_up=constant(433.0))))

EXACT["orchard_gate"] = (
    "two loaders of different pace meet in a one-machine gate, two zones, three rakers who walk, stand clear",
    job(zones=[zone(5.1, [way(0, 75, (0, 0.5))], room=3, walks=[0, 31]),
               zone(4.4, [way(0, 103, (0, 0.35))], room=2, walks=[31, 0])],
        piles=[pile(20.0)], passes=[passing(11.3)],
        loaders=[loader(), loader(heaped_m3=0.31, load_s=33.1, loaded_m_per_s=1.1, empty_m_per_s=1.45, dump_s=14.2)],
        rakers=[raker(2.6), raker(2.1, 1), raker(3.1, 0, 0.9)], order="InTurn"))

EXACT["twins_everywhere"] = (
    "equal machines and equal rakers: every step ends at the same instant; face 1, pass of no time, room 2",
    job(zones=[zone(6.0, [way(0, 60, (0, 0.5))], room=2, walks=[0, 20]),
               zone(6.0, [way(0, 60, (0, 0.5))], room=2, walks=[20, 0])],
        piles=[pile(20.0)], passes=[passing(0.0)],
        loaders=[loader(load_s=40.0, dump_s=20.0, loaded_m_per_s=1.5, empty_m_per_s=1.5, start_stop_s=0.0)] * 3,
        rakers=[raker(4.0), raker(4.0), raker(4.0)], order="MostRoom", fill=1.0,
        shift_=shift(set_up=constant(300.0))))

EXACT["twins_in_breaks"] = (
    "equal machines, round times, breaks that begin at the instant steps end; two piles with two faces",
    job(zones=[zone(5.0, [way(0, 30, (0, 0.5)), way(1, 60)], room=2, walks=[0, 20]),
               zone(5.0, [way(0, 60), way(1, 30, (1, 0.5))], room=3, walks=[20, 0])],
        piles=[pile(6.0, face=2), pile(6.0)], passes=[passing(10.0), passing(10.0, at_once=2)],
        loaders=[loader(heaped_m3=0.4, load_s=40.0, dump_s=20.0, loaded_m_per_s=1.0, empty_m_per_s=1.0,
                        start_stop_s=0.0)] * 3,
        rakers=[raker(6.0), raker(6.0)], order="NearestFirst", fill=1.0,
        shift_=shift(breaks=[(clock(8, 10), clock(8, 12)), (clock(8, 20), clock(8, 20, 30)),
                             (clock(8, 25, 40), clock(8, 33)), (clock(9), clock(9, 5))],
                     clean_up=constant(600.0))))

EXACT["waiting_for_the_truck"] = (
    "two piles, late small deliveries, loaders wait; one delivery before the start, one during a break",
    job(zones=[zone(4.2, [way(0, 41), way(1, 88)], room=4, walks=[0, 25]),
               zone(5.3, [way(0, 97), way(1, 37)], walks=[25, 0])],
        piles=[pile(0.8, (clock(7, 10), 1.3), (clock(8, 47, 13.0), 2.9, constant(121.0)), face=2),
               pile(0.0, (clock(8, 21, 17.0), 2.0), (clock(10, 6), 6.0))],
        loaders=[loader(), loader(heaped_m3=0.36, load_s=31.7, start_stop_s=5.1)],
        rakers=[raker(4.1), raker(3.3, 1)], order="NearestFirst",
        shift_=shift(breaks=[(clock(10), clock(10, 15))])))

EXACT["arena_three_days"] = (
    "three working days: breaks, evenings with loads under way, fatigue, set-up, clean-up; a pass on the way",
    job(zones=[zone(21.0, [way(0, 140, (0, 0.4))], room=3, walks=[0, 45]),
               zone(17.0, [way(0, 95)], room=2, walks=[45, 0])],
        piles=[pile(30.0, (clock(7, 30, day=2), 7.0), (clock(9, 50, day=3), 7.0))], passes=[passing(12.7)],
        loaders=[loader(), loader(load_s=44.3, loaded_m_per_s=0.9)], rakers=[raker(3.4), raker(3.1, 1)],
        raking_=raking(fatigue=(0.11, 0.55), spread_share=0.1), order="FarthestFirst",
        shift_=shift(start=clock(8, 30), end=clock(11, 15), breaks=[(clock(9, 30), clock(9, 45))],
                     set_up=constant(937.0), clean_up=constant(1201.0))))

EXACT["surplus_to_the_last_zone"] = (
    "pile cleared: in turn, need met, then the surplus with full buckets, deliveries during the surplus",
    job(zones=[zone(2.1, [way(0, 40)], walks=[0, 22, 35]), zone(1.7, [way(0, 66)], walks=[22, 0, 18], room=2),
               zone(1.9, [way(0, 81)], walks=[35, 18, 0], room=3)],
        piles=[pile(5.5, (clock(9, 31), 2.5))], loaders=[loader(), loader(heaped_m3=0.29, dump_s=12.9)],
        rakers=[raker(3.9), raker(2.7, 2)], order="InTurn", finish=cleared(2)))

EXACT["crew_together"] = (
    "three rakers on each heap together with crowding, two zones, fatigue, break in a walk, no stand clear",
    job(zones=[zone(4.0, [way(0, 55)], room=2, walks=[0, 64]), zone(3.6, [way(0, 83)], room=2, walks=[64, 0])],
        piles=[pile(12.0)], loaders=[loader(), loader(load_s=29.3)],
        rakers=[raker(1.9, 1, 0.8), raker(1.6, 0, 1.1), raker(2.2)], order="MostRoom",
        raking_=raking(together=0.85, fatigue=(0.2, 0.4), stand_clear=False),
        shift_=shift(breaks=[(clock(8, 14), clock(8, 21)), (clock(8, 40), clock(8, 46))])))

EXACT["barrows_spread_it_all"] = (
    "no rakers: barrows spread everything; narrow gate the loader does not fit; clean-up joined by those returning",
    job(zones=[zone(0.6, [way(0, 24, (0, 0.5))]), zone(1.5, [way(0, 52), way(0, 33, (0, 0.7))], room=2)],
        piles=[pile(4.0, face=2)], passes=[passing(7.7, width=0.9)],
        loaders=[barrow(), barrow(load_s=64.5), loader(heaped_m3=0.3)], rakers=[],
        raking_=raking(spread_share=1.0), order="FarthestFirst",
        shift_=shift(clean_up=constant(700.0))))

EXACT["piles_run_out"] = (
    "area covered with too little: shortfall by zone; pass for two at once; three loaders; two passes on a way",
    job(zones=[zone(3.0, [way(0, 58, (0, 0.25), (1, 0.75))], room=2, walks=[0, 12]),
               zone(4.0, [way(0, 90, (0, 0.2))], walks=[12, 0])],
        piles=[pile(5.21)], passes=[passing(13.1, at_once=2), passing(9.9)],
        loaders=[loader(), loader(load_s=35.2), loader(heaped_m3=0.33, empty_m_per_s=2.1)],
        rakers=[raker(5.2), raker(1.7, 1)], order="AsListed"))

EXACT["evening_with_queues"] = (
    "days end while loaders queue for room and pass and a raker walks; deliveries by night and by day; clean-up over the "
    "end of the day",
    job(zones=[zone(5.0, [way(0, 70, (0, 0.6))], room=1, walks=[0, 90]),
               zone(5.0, [way(0, 70, (0, 0.6))], room=3, walks=[90, 0])],
        piles=[pile(2.0, (clock(23), 2.5), (clock(8, 20, day=3), 2.2), (clock(8, 58, 31.0, day=4), 5.0))],
        passes=[passing(31.0)],
        loaders=[loader(), loader(heaped_m3=0.35), loader(load_s=27.0)], rakers=[raker(5.5, 0, 0.8)],
        raking_=raking(fatigue=(0.3, 0.5)), order="InTurn",
        shift_=shift(end=clock(9), set_up=constant(120.0), clean_up=constant(900.0))))

EXACT["breaks_at_the_gate"] = (
    "breaks catch loaders in, before and between two slow passes, at the face and on the way back; fast rakers",
    job(zones=[zone(8.0, [way(0, 90, (0, 0.3), (1, 0.8))])], piles=[pile(10.0)], passes=[passing(57.0), passing(23.0)],
        loaders=[loader(), loader(load_s=29.0), loader(heaped_m3=0.35, load_s=51.0)], rakers=[raker(19.0), raker(19.0)],
        raking_=raking(stand_clear=False),
        shift_=shift(breaks=[(clock(8, m), clock(8, m + 2, 13.0)) for m in (4, 9, 15, 22, 30, 37, 45, 52)],
                     set_up=constant(77.0), clean_up=constant(130.0))))

EXACT["barrows_into_the_evening"] = (
    "no rakers: the last heap is dumped after the end of the day, so clean-up waits for the next morning; set-up runs "
    "into a break",
    job(zones=[zone(0.85, [way(0, 33)]), zone(0.5, [way(0, 51)], room=2)], piles=[pile(3.0, face=2)],
        loaders=[barrow(), barrow(load_s=64.0, heaped_m3=0.1), barrow(load_s=58.0)], rakers=[],
        raking_=raking(spread_share=1.0), order="FarthestFirst",
        shift_=shift(end=clock(8, 24, 50.0), breaks=[(clock(8, 4), clock(8, 7))], set_up=constant(300.0),
                     clean_up=constant(700.0))))

# ----------------------------------------------------------------------------------------------------------- random jobs

RANDOM["line_with_room"] = (
    "everything exponential: the two-station line with room 2",
    job(zones=[zone(10.0, [way(0, 50)], room=2)], piles=[pile(12.0)], loaders=[loader(heaped_m3=0.5, start_stop_s=0.0)],
        rakers=[raker(12.0)], fill=1.0, raking_=raking(stand_clear=False),
        chance_=chance(loads={k: exponential(1.0) for k in ["loading", "haul", "dump", "return_leg", "raking"]})))

RANDOM["two_layers"] = (
    "orchard path: day factors and load noise, lognormal; room 2, stand clear, the loader spreads a fifth",
    job(zones=[zone(13.0, [way(0, 70)], room=2)], piles=[pile(20.0)], loaders=[loader()], rakers=[raker(6.4)],
        raking_=raking(spread_share=0.2),
        chance_=chance(days={"day": lognormal(1.0, 0.12), "loader_pace": lognormal(1.0, 0.08),
                             "travel": gamma(1.0, 0.1), "raker_pace": lognormal(1.0, 0.15), "fill": normal(1.0, 0.05),
                             "need": normal(1.0, 0.1)},
                       loads={"fill": normal(1.0, 0.1), "loading": lognormal(1.0, 0.25), "haul": lognormal(1.0, 0.15),
                              "dump": lognormal(1.0, 0.3), "return_leg": lognormal(1.0, 0.15),
                              "raking": lognormal(1.0, 0.35)})))

RANDOM["gate_for_two_loaders"] = (
    "two loaders meet in a one-machine gate and share a face; two rakers, one zone; triangular, PERT, uniform",
    job(zones=[zone(14.0, [way(0, 85, (0, 0.5))], room=4)], piles=[pile(20.0)], passes=[passing(21.0)],
        loaders=[loader(), loader(heaped_m3=0.35, load_s=45.0)], rakers=[raker(4.2), raker(3.8)],
        chance_=chance(days={"day": triangular(0.85, 0.95, 1.2), "travel": pert(0.8, 0.95, 1.4)},
                       loads={"fill": triangular(0.8, 1.0, 1.2), "loading": pert(0.6, 0.9, 1.8),
                              "haul": uniform(0.8, 1.2), "dump": triangular(0.5, 1.0, 1.5),
                              "return_leg": uniform(0.7, 1.3), "raking": pert(0.5, 1.0, 1.5)})))

RANDOM["late_trucks"] = (
    "nursery yard: two piles, late deliveries of uncertain volume, nearest first, rakers walk",
    job(zones=[zone(6.0, [way(0, 45), way(1, 95)], room=3, walks=[0, 30]),
               zone(7.0, [way(0, 90), way(1, 40)], walks=[30, 0])],
        piles=[pile(2.5, (clock(8, 50), 4.0, exponential(900.0)), face=2),
               pile(1.5, (clock(9, 10), 4.0, lognormal(600.0, 0.8)), (clock(10), 4.0, uniform(0.0, 1200.0)))],
        loaders=[loader(), loader(heaped_m3=0.36)], rakers=[raker(4.0), raker(3.6, 1)], order="NearestFirst",
        chance_=chance(days={"day": lognormal(1.0, 0.1), "bulk": normal(1.0, 0.08), "need": uniform(0.9, 1.1)},
                       loads={"fill": uniform(0.85, 1.15), "loading": gamma(1.0, 0.3), "haul": gamma(1.0, 0.2),
                              "raking": gamma(1.0, 0.3)})))

RANDOM["arena_days"] = (
    "riding arena over several days: evenings, breaks, fatigue, random set-up and clean-up, overnight delivery",
    job(zones=[zone(12.0, [way(0, 130, (0, 0.4))], room=3, walks=[0, 45]),
               zone(9.0, [way(0, 95)], room=2, walks=[45, 0])],
        piles=[pile(14.0, (clock(7, 30, day=2), 11.0, exponential(1800.0)))], passes=[passing(14.0)],
        loaders=[loader(), loader(load_s=44.0, loaded_m_per_s=0.9)], rakers=[raker(3.4), raker(3.1, 1)],
        raking_=raking(fatigue=(0.1, 0.55), spread_share=0.1), order="FarthestFirst",
        shift_=shift(start=clock(8, 30), end=clock(10, 30), breaks=[(clock(9, 15), clock(9, 30))],
                     set_up=normal(600.0, 120.0), clean_up=pert(300.0, 600.0, 1500.0)),
        chance_=chance(days={"day": lognormal(1.0, 0.1), "raker_pace": gamma(1.0, 0.1), "need": normal(1.0, 0.06)},
                       loads={"loading": lognormal(1.0, 0.2), "haul": weibull(1.0, 4.0), "dump": weibull(1.0, 3.0),
                              "return_leg": weibull(1.0, 4.0), "raking": lognormal(1.0, 0.25)})))

RANDOM["pile_cleared"] = (
    "allotment: pile cleared, in turn, surplus to the middle zone, lift limit, bulk and need uncertain",
    job(zones=[zone(2.6, [way(0, 40)], walks=[0, 22, 35], room=2), zone(2.2, [way(0, 60)], walks=[22, 0, 18], room=3),
               zone(2.9, [way(0, 85)], walks=[35, 18, 0], room=2)],
        piles=[pile(5.0, (clock(9, 5), 3.5, uniform(0.0, 1500.0)))],
        loaders=[loader(lift_kg=130.0), loader(heaped_m3=0.3)],
        rakers=[raker(3.6), raker(3.0, 2)], order="InTurn", finish=cleared(1), density=320.0,
        chance_=chance(days={"day": lognormal(1.0, 0.1), "fill": lognormal(1.0, 0.06), "need": normal(1.0, 0.12),
                             "bulk": triangular(0.85, 1.0, 1.15)},
                       loads={"fill": normal(1.0, 0.12), "loading": lognormal(1.0, 0.3), "haul": normal(1.0, 0.2),
                              "dump": lognormal(1.0, 0.2), "return_leg": normal(1.0, 0.2),
                              "raking": normal(1.0, 0.25)})))

RANDOM["crew_together"] = (
    "trail: the crew rakes together with crowding and fatigue, walks between zones, breaks, most room left",
    job(zones=[zone(4.0, [way(0, 55)], room=2, walks=[0, 64, 90]), zone(3.6, [way(0, 83)], room=2, walks=[64, 0, 40]),
               zone(3.0, [way(0, 110)], room=1, walks=[90, 40, 0])],
        piles=[pile(14.0)], loaders=[loader(), loader(load_s=29.0)],
        rakers=[raker(1.9, 1, 0.8), raker(1.6, 0, 1.1), raker(2.2)], order="MostRoom",
        raking_=raking(together=0.85, fatigue=(0.15, 0.4)),
        shift_=shift(breaks=[(clock(9), clock(9, 10)), (clock(10), clock(10, 20))]),
        chance_=chance(days={"day": gamma(1.0, 0.12), "raker_pace": lognormal(1.0, 0.1)},
                       loads={"fill": uniform(0.9, 1.1), "loading": gamma(1.0, 0.4), "haul": gamma(1.0, 0.3),
                              "dump": gamma(1.0, 0.4), "return_leg": gamma(1.0, 0.3), "raking": gamma(1.0, 0.5)})))

RANDOM["barrows"] = (
    "allotment with barrows only, no rakers, narrow gate for one, face for two, observed times, clean-up",
    job(zones=[zone(0.8, [way(0, 24, (0, 0.5))], room=1), zone(1.2, [way(0, 35, (0, 0.5))])],
        piles=[pile(3.0, face=2)], passes=[passing(12.0, width=0.9)],
        loaders=[barrow(), barrow(load_s=64.0), barrow(heaped_m3=0.1)], rakers=[],
        raking_=raking(spread_share=1.0), order="FarthestFirst",
        shift_=shift(clean_up=uniform(100.0, 500.0)),
        chance_=chance(days={"day": observed(0.9, 0.95, 1.0, 1.05, 1.1), "fill": uniform(0.9, 1.1)},
                       loads={"fill": triangular(0.7, 1.0, 1.3), "loading": observed(0.5, 0.75, 1.0, 1.0, 1.75),
                              "haul": weibull(1.0, 2.5), "dump": exponential(1.0), "return_leg": weibull(1.0, 2.5)})))

RANDOM["stoppages"] = (
    "two loaders that stop now and then, in the gate, at the face and while dumping; stand clear; break",
    job(zones=[zone(12.0, [way(0, 80, (0, 0.3))], room=3)], piles=[pile(20.0)], passes=[passing(15.0)],
        loaders=[loader(stoppages={"mean_gap_s": 600.0, "length_s": exponential(120.0)}),
                 loader(heaped_m3=0.36, stoppages={"mean_gap_s": 900.0, "length_s": lognormal(240.0, 1.0)})],
        rakers=[raker(4.4), raker(4.0)], shift_=shift(breaks=[(clock(8, 40), clock(8, 50))]),
        chance_=chance(days={"day": lognormal(1.0, 0.08)},
                       loads={"loading": lognormal(1.0, 0.2), "haul": lognormal(1.0, 0.2), "dump": lognormal(1.0, 0.2),
                              "return_leg": lognormal(1.0, 0.2), "raking": lognormal(1.0, 0.3)})))

RANDOM["three_loaders_one_face"] = (
    "three loaders at one face, exponential loading, plenty of room and rakers: the finite-source queue",
    job(zones=[zone(16.0, [way(0, 70)])], piles=[pile(20.0)],
        loaders=[loader(load_s=60.0), loader(load_s=60.0), loader(load_s=60.0)],
        rakers=[raker(9.0), raker(9.0)], raking_=raking(stand_clear=False),
        chance_=chance(loads={"loading": exponential(1.0), "haul": exponential(1.0), "dump": exponential(1.0),
                              "return_leg": exponential(1.0), "raking": exponential(1.0)})))

RANDOM["rakers_walk"] = (
    "four rakers walk between three zones served in turn by two loaders; room, stand clear, two piles with faces",
    job(zones=[zone(4.5, [way(0, 50), way(1, 75)], room=2, walks=[0, 40, 70]),
               zone(5.0, [way(0, 80), way(1, 45)], room=3, walks=[40, 0, 35]),
               zone(3.5, [way(0, 60, (0, 0.8)), way(1, 65)], room=1, walks=[70, 35, 0])],
        piles=[pile(7.0), pile(8.0, face=2)], passes=[passing(18.0)],
        loaders=[loader(), loader(load_s=33.0), loader(heaped_m3=0.3)],
        rakers=[raker(2.4), raker(2.0, 1), raker(2.6, 2, 0.7), raker(1.8, 1)], order="InTurn",
        chance_=chance(days={"day": triangular(0.8, 0.9, 1.3), "raker_pace": uniform(0.8, 1.2)},
                       loads={"fill": lognormal(1.0, 0.1), "loading": triangular(0.6, 0.9, 1.5),
                              "haul": pert(0.8, 0.95, 1.4), "dump": uniform(0.5, 1.5),
                              "return_leg": pert(0.8, 0.95, 1.4), "raking": weibull(1.0, 2.0)})))

RANDOM["everything_at_once"] = (
    "all features together: two piles, late truck, passes (one too narrow for a loader), barrow, walking rakers, fatigue, "
    "stoppages, breaks, two days, set-up, clean-up, pile cleared, spread share, all factors",
    job(zones=[zone(4.0, [way(0, 60, (0, 0.5)), way(1, 100)], room=2, walks=[0, 40, 55]),
               zone(4.5, [way(0, 75, (0, 0.4)), way(1, 70), way(1, 50, (1, 0.6))], room=3, walks=[40, 0, 30]),
               zone(1.5, [way(0, 55), way(1, 90), way(0, 35, (1, 0.5))], walks=[55, 30, 0])],
        piles=[pile(5.0, (clock(9, 15), 4.0, exponential(600.0)), face=2),
               pile(1.0, (clock(8, 30, day=2), 3.0, uniform(0.0, 900.0)))],
        passes=[passing(16.0), passing(9.0, at_once=2, width=0.9)],
        loaders=[loader(stoppages={"mean_gap_s": 1500.0, "length_s": gamma(200.0, 0.7)}),
                 loader(heaped_m3=0.33, lift_kg=100.0, width_m=0.95), barrow()],
        rakers=[raker(2.6), raker(2.2, 1), raker(1.9, 2, 0.8)],
        raking_=raking(fatigue=(0.12, 0.5), spread_share=0.15), order="MostRoom", finish=cleared(2),
        shift_=shift(start=clock(8), end=clock(9, 50), breaks=[(clock(9), clock(9, 12))], set_up=triangular(200.0, 400.0, 900.0),
                     clean_up=gamma(500.0, 0.3)),
        chance_=chance(days={"day": lognormal(1.0, 0.1), "loader_pace": uniform(0.85, 1.15), "travel": pert(0.8, 0.95, 1.4),
                             "raker_pace": gamma(1.0, 0.12), "fill": normal(1.0, 0.05), "need": normal(1.0, 0.08),
                             "bulk": triangular(0.9, 1.0, 1.1)},
                       loads={"fill": normal(1.0, 0.1), "loading": lognormal(1.0, 0.3), "haul": weibull(1.0, 4.0),
                              "dump": gamma(1.0, 0.4), "return_leg": weibull(1.0, 4.0), "raking": lognormal(1.0, 0.4)})))


def listed():
    return [{"name": name, "kind": kind, "what": what, "job": spec}
            for kind, jobs in (("exact", EXACT), ("random", RANDOM)) for name, (what, spec) in jobs.items()]


if __name__ == "__main__":
    (HERE / "jobs.json").write_text(json.dumps(listed(), indent=1) + "\n")
