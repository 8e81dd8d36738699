"""The two timed jobs in SimPy, as plainly as its documentation would have them written.

    python against.py one-and-one 200 1     # job, runs, seed

prints one line of JSON: runs, loads and completion, both with the standard error of their mean, and the seconds spent a load.
All numbers are invented, the same as in ../speed/jobs.rs.
"""

import json
import math
import statistics
import sys
import time
from dataclasses import dataclass

import numpy
import simpy

HEAPED_M3 = 0.4
NOTHING_M3 = 0.05 * HEAPED_M3  # a need below this counts as nothing
LOADING_S, HAUL_S, DUMP_S, RETURN_S, GATE_S = 18.0, 20.0, 12.0, 16.0, 5.0
RAKING_S_PER_M3 = 3600.0 / 17.76
ROOM = 3


@dataclass(slots=True)
class Draws:
    """What chance has in store for one load: the share of the bucket that is filled, and factors on five times."""

    fill: float
    loading: float
    haul: float
    dump: float
    back: float
    raking: float


def loads_to_come(rng, block=100):
    """The draws of one load after another, drawn a block at a time."""
    least, mode, greatest = 0.75, 0.95, 1.10
    span = greatest - least
    alpha, beta = 1 + 4 * (mode - least) / span, 1 + 4 * (greatest - mode) / span
    sigma = numpy.sqrt(numpy.log1p(numpy.square([0.25, 0.15, 0.30, 0.15, 0.30])))
    while True:
        fills = least + span * rng.beta(alpha, beta, size=block)
        noises = rng.lognormal(-sigma * sigma / 2, sigma, size=(block, 5))
        for fill, noise in zip(fills.tolist(), noises.tolist()):
            yield Draws(fill, *noise)


# ---- One loader, one raker.


def one_and_one(rng):
    env = simpy.Environment()
    room = simpy.Resource(env, capacity=ROOM)
    heaps = simpy.Store(env)
    env.process(lone_loader(env, room, heaps, loads_to_come(rng)))
    loads = env.run(until=env.process(lone_raker(env, room, heaps)))
    return loads, env.now


def lone_loader(env, room, heaps, loads_draws):
    need = 27.16
    while need >= NOTHING_M3:
        draws = next(loads_draws)
        volume = min(draws.fill * HEAPED_M3, need)
        need -= volume
        yield env.timeout(LOADING_S * draws.loading)
        yield env.timeout(HAUL_S * draws.haul)
        place = room.request()
        yield place
        yield env.timeout(DUMP_S * draws.dump)
        yield heaps.put((place, volume * RAKING_S_PER_M3 * draws.raking))
        yield env.timeout(RETURN_S * draws.back)
    yield heaps.put(None)


def lone_raker(env, room, heaps):
    loads = 0
    while heap := (yield heaps.get()):
        place, raking_s = heap
        yield env.timeout(raking_s)
        yield room.release(place)
        loads += 1
    return loads


# ---- Four loaders at one face, one gate both ways, three zones in turn, six rakers.


class Zone:
    def __init__(self, env, number, need):
        self.number = number
        self.open = need  # what is neither placed nor on its way
        self.bound = 0  # loaders bound for it
        self.room = simpy.Resource(env, capacity=ROOM)

    def wants(self):
        return self.open >= NOTHING_M3

    def has_room(self):
        return self.room.count + self.bound < ROOM


@dataclass(slots=True, eq=False)
class Heap:
    zone: Zone
    place: simpy.resources.resource.Request
    raking_s: float


class Yard:
    def __init__(self, env, rng):
        self.env = env
        self.loads_draws = loads_to_come(rng)
        self.face = simpy.Resource(env)
        self.gate = simpy.Resource(env)
        self.zones = [Zone(env, number, 271.6 / 3) for number in range(3)]
        self.last = -1  # the zone chosen last
        self.waiting = []  # heaps nobody rakes yet, oldest first
        self.idle = {}  # rakers with nothing to do: where they stand, and the event that gives them a heap
        self.loads = 0
        self.in_play = 0
        self.over = env.event()
        for _ in range(4):
            env.process(loader(env, self))
        for number in range(6):
            env.process(raker(env, self, number, self.zones[number // 2]))

    def choose(self):
        """The next zone in turn that wants more and has room; if none has room, the next that wants more."""
        in_turn = [self.zones[(self.last + n) % 3] for n in range(1, 4)]
        wanting = [zone for zone in in_turn if zone.wants()]
        if not wanting:
            return None
        zone = next((zone for zone in wanting if zone.has_room()), wanting[0])
        zone.bound += 1
        self.last = zone.number
        return zone

    def heap_is_there(self, heap):
        """A raker who stands in the zone takes it, or else any who is idle; the lower number first."""
        if not self.idle:
            self.waiting.append(heap)
            return
        number = min(self.idle, key=lambda number: (self.idle[number][0] is not heap.zone, number))
        _, called = self.idle.pop(number)
        called.succeed(heap)

    def next_heap(self, zone):
        """The oldest heap of the zone, or else of any."""
        heap = next((heap for heap in self.waiting if heap.zone is zone), None) or next(iter(self.waiting), None)
        if heap:
            self.waiting.remove(heap)
        return heap

    def heap_is_raked_out(self, heap):
        heap.zone.room.release(heap.place)
        self.in_play -= 1
        if self.in_play == 0 and not any(zone.wants() for zone in self.zones):
            self.over.succeed()


def loader(env, yard):
    zone = yard.choose()
    while zone:
        with yard.face.request() as turn:
            yield turn
            if not zone.wants():
                zone.bound -= 1
                zone = yard.choose()
                if not zone:
                    return
            draws = next(yard.loads_draws)
            volume = min(draws.fill * HEAPED_M3, zone.open)
            zone.open -= volume
            yard.loads += 1
            yard.in_play += 1
            yield env.timeout(LOADING_S * draws.loading)
        yield from drive(env, yard.gate, HAUL_S, draws.haul)
        place = zone.room.request()
        yield place
        zone.bound -= 1
        yield env.timeout(DUMP_S * draws.dump)
        yard.heap_is_there(Heap(zone, place, volume * RAKING_S_PER_M3 * draws.raking))
        zone = yard.choose()
        yield from drive(env, yard.gate, RETURN_S, draws.back)


def drive(env, gate, leg_s, noise):
    yield env.timeout(leg_s / 2 * noise)
    with gate.request() as turn:
        yield turn
        yield env.timeout(GATE_S * noise)
    yield env.timeout(leg_s / 2 * noise)


def raker(env, yard, number, zone):
    while True:
        heap = yard.next_heap(zone)
        if not heap:
            called = env.event()
            yard.idle[number] = (zone, called)
            heap = yield called
        zone = heap.zone
        yield env.timeout(heap.raking_s)
        yard.heap_is_raked_out(heap)


def yard(rng):
    env = simpy.Environment()
    there = Yard(env, rng)
    env.run(until=there.over)
    return there.loads, env.now


def main():
    job, runs, seed = {"one-and-one": one_and_one, "yard": yard}[sys.argv[1]], int(sys.argv[2]), int(sys.argv[3])
    rng = numpy.random.default_rng(seed)
    start = time.perf_counter()
    outcomes = [job(rng) for _ in range(runs)]
    spent = time.perf_counter() - start
    loads, completions = zip(*outcomes)
    answer = {
        "simpy": simpy.__version__,
        "python": sys.version.split()[0],
        "runs": runs,
        "loads": sum(loads),
        "loads_mean": statistics.fmean(loads),
        "loads_se": statistics.stdev(loads) / math.sqrt(runs),
        "completion_s": statistics.fmean(completions),
        "completion_se_s": statistics.stdev(completions) / math.sqrt(runs),
        "seconds_per_load": spent / sum(loads),
    }
    print(json.dumps(answer))


if __name__ == "__main__":
    main()
