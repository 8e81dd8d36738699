"""Checks the SimPy model against the plain recursion of the text (section 8): one loader, one raker, one zone and pile.

Same draws in, same completion out, to the microsecond, for any draws. `python recursion.py` fails loudly if not.
"""

from jobs import (chance, constant, exponential, gamma, job, loader, lognormal, normal, passing, pert, pile, raker, raking,
                  shift, triangular, uniform, way, weibull, zone)
from model import Draws, micros, play

LAWS = {
    "exponential": [exponential(1.0)] * 5,
    "mixed": [lognormal(1.0, 0.4), gamma(1.0, 0.3), triangular(0.2, 0.8, 2.0), weibull(1.0, 1.7), pert(0.1, 0.8, 2.7)],
    "plain": [uniform(0.0, 2.0), normal(1.0, 0.3), constant(1.0), uniform(0.5, 1.5), exponential(1.0)],
}


def one_line(laws, room, spread_share):
    loading, haul, dump, return_leg, rake = laws
    return job(
        zones=[zone(9.0, [way(0, 66, (0, 0.37))], room=room)], piles=[pile(30.0)], passes=[passing(8.0)],
        loaders=[loader()], rakers=[raker(7.5)], raking_=raking(stand_clear=False, spread_share=spread_share),
        shift_=shift(set_up=uniform(0.0, 900.0)),
        chance_=chance(days={"day": lognormal(1.0, 0.2), "travel": gamma(1.0, 0.1), "raker_pace": uniform(0.8, 1.2),
                             "loader_pace": uniform(0.8, 1.2), "need": normal(1.0, 0.1), "fill": uniform(0.9, 1.1)},
                       loads={"fill": normal(1.0, 0.1), "loading": loading, "haul": haul, "dump": dump,
                              "return_leg": return_leg, "raking": rake}))


def completion_by_recursion(spec, days, set_up, noise, room):
    """Draws of each load in, completion in microseconds out: sums and maxima only."""
    machine, crew, share = spec["loaders"][0], spec["rakers"][0], spec["raking"]["spread_share"]
    distance, gate = spec["zones"][0]["ways"][0]["distance_m"], spec["passes"][0]["passing_s"]
    need = spec["zones"][0]["need_m3"] * days["need"]
    arrive, raked, sent = set_up, [], 0.0
    for n, draw in enumerate(noise):
        fill = spec["material"]["fill_factor"] * days["fill"] * draw["fill"]
        volume = min(fill * machine["heaped_m3"], need - sent)
        sent += volume

        def leg(speed, draw):
            pace = days["day"] * days["travel"] * draw
            return micros((distance / speed + machine["start_stop_s"]) * pace) + micros(gate * pace)

        pace = days["day"] * days["loader_pace"]
        load = micros(machine["load_s"] * pace * draw["loading"])
        spread = share * volume * machine["spread_s_per_m3"]
        dump = micros((machine["dump_s"] + spread) * pace * draw["dump"])
        rake = micros((1 - share) * volume / crew["rate_m3_per_h"] * 3600
                      * days["day"] * days["raker_pace"] * draw["raking"])
        arrive += load + leg(machine["loaded_m_per_s"], draw["haul"])
        before = raked[n - room] if room is not None and n >= room else 0
        dumped = max(arrive, before) + dump
        raked.append(max(dumped, raked[-1] if raked else 0) + rake)
        arrive = dumped + leg(machine["empty_m_per_s"], draw["return_leg"])
    assert need - sent < 0.05 * machine["heaped_m3"]
    return raked[-1]


def main():
    runs = 0
    for name, laws in LAWS.items():
        for room in (1, 2, 3, 5, None):
            for share in (0.0, 0.3):
                spec, draws = one_line(laws, room, share), Draws(7)
                for _ in range(200):
                    run = play(spec, draws)
                    expected = completion_by_recursion(spec, run.days, run.set_up, run.load_log, room)
                    assert run.completion[0] == expected, (name, room, share, run.completion[0], expected)
                    runs += 1
    print(f"{runs} runs agree with the recursion to the microsecond")


if __name__ == "__main__":
    main()
