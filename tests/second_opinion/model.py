"""The model a second time, in Python on SimPy, to be compared with the text of the model section by section.

Nothing here is shared with the Rust engine and nothing was copied from it: only the words of the job (field names) are
the same. It is written to be read, not to be fast.

How SimPy is used: SimPy keeps the calendar and runs one process for each loader, each raker and the clock. Its calendar
is ordered by (time, priority, insertion); the text's order of events at one instant is exactly a list of priorities:

    CLOCK         deliveries arrive, breaks and nights end
    RAKER_ENDS+i  raker i's step is over
    LOADER_ENDS+i loader i's step is over
    HOURS_END     breaks and evenings begin (what is over at that instant is over)
    START         one thing starts; comes back after every start until nothing more can

SimPy resumes a process that is told to go with priority 1, before all of these, so a step of no duration ends before the
next thing starts. Time is counted in whole microseconds after midnight of the first day.
"""

from collections import deque
from math import gamma as gamma_function, inf, log, sqrt
from zlib import crc32

import numpy
import simpy

CLOCK, RAKER_ENDS, LOADER_ENDS, HOURS_END, START = 2, 100, 200, 300, 400
SECOND = 1_000_000
DAY = 86_400 * SECOND

LOADER_ACCOUNTS = ["SetUp", "Loading", "Hauling", "Returning", "Passing", "WaitingForFace", "WaitingForPass",
                "WaitingForRoom", "WaitingForDelivery", "Dumping", "Stopped", "OnBreak", "Done", "CleanUp"]
RAKER_ACCOUNTS = ["SetUp", "Raking", "Waiting", "Walking", "StandingClear", "OnBreak", "CleanUp"]
ENTERED_AS_BREAK = {"WaitingForFace", "WaitingForPass", "WaitingForRoom", "WaitingForDelivery",
                    "Raking", "Waiting", "Walking", "StandingClear"}
WORKING_BURN = ["Loading", "Hauling", "Returning", "Passing", "Dumping"]
IDLING_BURN = ["WaitingForFace", "WaitingForPass", "WaitingForRoom", "WaitingForDelivery"]


def micros(seconds):
    """Rounded to the nearest microsecond, halves up."""
    return int(seconds * 1e6 + 0.5)


# ---------------------------------------------------------------------------------------------------- section 2: chance


def sample(law, rng, count):
    """`count` draws from a law written as in jobs.json, for example {"Lognormal": {"mean": 1.0, "cv": 0.2}}."""
    (family, p), = law.items()
    if family == "Constant":
        return numpy.full(count, p)
    if family == "Uniform":
        return rng.uniform(p["least"], p["greatest"], count)
    if family == "Triangular":
        return rng.triangular(p["least"], p["mode"], p["greatest"], count)
    if family == "Pert":
        width = p["greatest"] - p["least"]
        a, b = 1 + 4 * (p["mode"] - p["least"]) / width, 1 + 4 * (p["greatest"] - p["mode"]) / width
        return p["least"] + width * rng.beta(a, b, count)
    if family == "Normal":
        values = rng.normal(p["mean"], p["sd"], count)
        while (values < 0).any():
            again = values < 0
            values[again] = rng.normal(p["mean"], p["sd"], again.sum())
        return values
    if family == "Lognormal":
        sigma2 = log(1 + p["cv"] ** 2)
        return rng.lognormal(log(p["mean"]) - sigma2 / 2, sqrt(sigma2), count)
    if family == "Gamma":
        shape = 1 / p["cv"] ** 2
        return rng.gamma(shape, p["mean"] / shape, count)
    if family == "Weibull":
        return p["mean"] / gamma_function(1 + 1 / p["shape"]) * rng.weibull(p["shape"], count)
    if family == "Exponential":
        return rng.exponential(p["mean"], count)
    if family == "Observed":
        return rng.choice(numpy.array(p), count)
    raise ValueError(family)


class Draws:
    """Streams of draws, one for each kind, each going on from run to run."""

    def __init__(self, *seed):
        self.seed = seed
        self.streams = {}

    def draw(self, kind, law):
        if "Constant" in law:
            return law["Constant"]
        if kind not in self.streams:
            rng = numpy.random.default_rng([*self.seed, crc32(kind.encode())])
            self.streams[kind] = (rng, [])
        rng, block = self.streams[kind]
        if not block:
            block.extend(sample(law, rng, 2000).tolist())
        return block.pop()

    def draw_all(self, kind, laws):
        return {name: self.draw(kind + name, law) for name, law in laws.items()}


# ------------------------------------------------------------------------------------------------- section 1: the things


class Queue:
    """A line for a face, a pass or the room of a zone, with how many can be served at once and are now."""

    def __init__(self, waiting, places):
        self.waiting, self.places, self.held, self.line = waiting, places, 0, deque()

    def free(self):
        return self.held < self.places


class Pile:
    def __init__(self, index, spec):
        self.index, self.volume, self.due, self.least = index, 0.0, 0, inf
        self.face = Queue("WaitingForFace", spec["face"])


class Zone:
    def __init__(self, index, spec, need, crumbs):
        self.index, self.need, self.walks_m = index, need, spec["walks_m"]
        self.small = 0 < need < crumbs
        self.least = need if self.small else crumbs  # a need as stated counts, of what remains of it only this or more
        self.room = Queue("WaitingForRoom", inf if spec["room"] is None else spec["room"])  # held: heaps lying there
        self.sent = 0.0  # placed or on its way
        self.placed, self.loads, self.bound, self.dumping = 0.0, 0, 0, 0

    def room_left(self):
        return self.room.places - self.room.held - self.bound


class Heap:
    def __init__(self, zone, volume, raking_noise):
        self.zone, self.volume, self.raking_noise, self.walker = zone, volume, raking_noise, None


class StepEnd(simpy.Event):
    """The end of a timed step, at its place in the order of one instant."""

    def __init__(self, run, priority, delay):
        super().__init__(run.env)
        self._ok, self._value = True, None
        self.callbacks.append(run.ask_for_starts)
        run.env.schedule(self, priority, delay)


class Resource:
    """What loaders and rakers share: accounts, steps, and standing until told to go on."""

    def __init__(self, run, index, accounts, ends):
        self.run, self.index, self.priority = run, index, ends + index
        self.accounts = dict.fromkeys(accounts, 0)
        self.accounts["Night"] = 0
        self.doing = self.entry = "SetUp"
        self.since = run.env.now
        self.busy, self.status, self.go = False, None, None

    def book(self, doing):
        """Enters what was done until now, and takes note of what is done from now on (section 5)."""
        now, closed = self.run.env.now, self.run.closed
        self.accounts[self.entry] += now - self.since
        self.since, self.doing, self.entry = now, doing, doing
        if closed == "night":
            self.entry = "Night"
        elif closed and doing in ENTERED_AS_BREAK:
            self.entry = "OnBreak"

    def step(self, doing, duration):
        """A timed step; lasts until the event returned."""
        self.busy = True
        self.book(doing)
        return StepEnd(self.run, self.priority, duration)

    def stand(self, status):
        """Stands until told to go on by `Run.start_one`."""
        self.busy, self.status = False, status
        self.go = simpy.Event(self.run.env)
        return self.go

    def told_to_go(self):
        self.status = None
        self.go.succeed()
        return True


# --------------------------------------------------------------------------------------------- section 3: loader's cycle


class Loader(Resource):
    def __init__(self, run, index, spec):
        super().__init__(run, index, LOADER_ACCOUNTS, LOADER_ENDS)
        self.spec = spec
        self.stamp = None          # when it joined the queue it stands in
        self.zone = self.way = None  # of the load it is bound for
        self.on_the_road = False
        lift = spec["lift_kg"]
        self.most = inf if lift is None else lift / run.job["material"]["density_kg_per_m3"]
        self.ways = [self.ways_to(zone) for zone in run.job["zones"]]
        self.gap = self.next_gap()

    def ways_to(self, zone):
        """The ways it fits through, the shortest from each pile, nearest pile first."""
        fits = [w for w in zone["ways"] if all(
            self.run.job["passes"][p["pass"]]["width_m"] >= self.spec["width_m"] for p in w["passes"])]
        best = {}
        for way in fits:
            pile = way["stockpile"]
            if pile not in best or way["distance_m"] < best[pile]["distance_m"]:
                best[pile] = way
        return sorted(best.values(), key=lambda w: (w["distance_m"], w["stockpile"]))

    # ------ section 5: stoppages

    def next_gap(self):
        stoppages = self.spec["stoppages"]
        if stoppages is None:
            return inf
        law = {"Exponential": {"mean": stoppages["mean_gap_s"]}}
        return micros(self.run.draws.draw(f"gap{self.index}", law))

    def operate(self, doing, duration):
        """A step in which stoppages can fall."""
        while self.gap < duration:
            duration -= self.gap
            yield self.step(doing, self.gap)
            length = self.run.draws.draw(f"stop{self.index}", self.spec["stoppages"]["length_s"])
            yield self.step("Stopped", micros(length))
            self.gap = self.next_gap()
        self.gap -= duration
        yield self.step(doing, duration)

    # ------ the cycle

    def life(self):
        run = self.run
        yield self.step("SetUp", run.set_up)
        self.book("WaitingForFace")
        yield self.stand("ready when open")
        yield from self.choose()
        while self.zone:
            yield from self.load()
            if not self.zone:
                break
            yield from self.leg("Hauling", self.way)
            yield from self.dump()
            here, back = self.dumped_at, self.way
            yield from self.choose()
            if self.zone:
                to_pile = [w for w in self.ways[here] if w["stockpile"] == self.way["stockpile"]]
                back = to_pile[0] if to_pile else back
            yield from self.leg("Returning", back)
            if run.cleaning:
                break
        self.busy, self.status = False, "done"
        self.book("CleanUp" if run.cleaning else "Done")

    def choose(self):
        """1. Takes a zone and a way from a pile, waiting for a delivery if need be. True if it waited."""
        self.unbind()
        waited = False
        found = self.run.look(self)
        while found == "wait":
            waited = True
            self.book("WaitingForDelivery")
            yield self.stand("waiting for a delivery")
            found = self.run.look(self)
        if found:
            self.zone, self.way = found
            self.zone.bound += 1
            self.run.last_chosen = self.zone.index
        return waited

    def unbind(self):
        if self.zone:
            self.zone.bound -= 1
            self.zone = None

    def queue_for(self, queue, new_load=False):
        """First come, first served; outside working hours nobody who must wait is served, and no load begun."""
        if queue.line or not queue.free() or (new_load and self.run.closed):
            queue.line.append(self)
            self.run.joined += 1
            self.stamp = self.run.joined
            self.book(queue.waiting)
            yield self.stand("in a queue")

    def load(self):
        """2. and 3. Queues for the face and loads; leaves without a load if there is nothing more."""
        run, turn = self.run, False
        while not turn:
            pile = run.piles[self.way["stockpile"]]
            yield from self.queue_for(pile.face, new_load=True)
            turn = True
            if not run.wants(self.zone) or not run.has_material(pile, self.zone):
                waited = yield from self.choose()
                if not self.zone:
                    return
                turn = not waited and run.piles[self.way["stockpile"]] is pile
        pile.face.held += 1
        self.noise = run.noise_of_next_load()
        zone, days = self.zone, run.days
        fill = run.job["material"]["fill_factor"] * days["fill"] * self.noise["fill"]
        self.volume = min(fill * self.spec["heaped_m3"], self.most, pile.volume)
        if not run.takes_surplus(zone):
            self.volume = min(self.volume, zone.need - zone.sent)
        pile.volume -= self.volume
        zone.sent += self.volume
        run.loads_in_hand += 1
        if any(run.takes_surplus(other) for other in run.zones):
            run.wake_those_who_wait()
        pace = days["day"] * days["loader_pace"] * self.noise["loading"]
        yield from self.operate("Loading", micros(self.spec["load_s"] * pace))
        pile.face.held -= 1
        yield self.stand("ready")

    def leg(self, doing, way):
        """4. and 7. Drives the way, cut at the passes."""
        run, out = self.run, doing == "Hauling"
        self.on_the_road = True
        noise = self.noise["haul" if out else "return_leg"]
        speed = self.spec["loaded_m_per_s" if out else "empty_m_per_s"]
        pace = run.days["day"] * run.days["travel"] * noise
        drive = micros((way["distance_m"] / speed + self.spec["start_stop_s"]) * pace)
        met = [(p["share"], p["pass"]) for p in way["passes"]]
        if not out:
            met = [(1 - share, index) for share, index in reversed(met)]
        driven = 0
        for share, index in met:
            cut = int(drive * share + 0.5)
            yield from self.operate(doing, cut - driven)
            driven = cut
            yield self.stand("ready")
            gate = run.passes[index]
            yield from self.queue_for(gate)
            gate.held += 1
            yield from self.operate("Passing", micros(run.job["passes"][index]["passing_s"] * pace))
            gate.held -= 1
            yield self.stand("ready")
        yield from self.operate(doing, drive - driven)
        self.on_the_road = False
        yield self.stand("ready")

    def dump(self):
        """5. and 6. Waits for room and dumps; rakers of the zone stand clear."""
        run, zone, spec = self.run, self.zone, self.spec
        yield from self.queue_for(zone.room)
        zone.room.held += 1
        zone.bound -= 1
        self.zone = None
        zone.dumping += 1
        if run.stand_clear:
            for raker in run.rakers:
                if raker.raking_in is zone:
                    raker.process.interrupt()
        pace = run.days["day"] * run.days["loader_pace"] * self.noise["dump"]
        spread = run.spread_share * self.volume * spec["spread_s_per_m3"]
        yield from self.operate("Dumping", micros((spec["dump_s"] + spread) * pace))
        zone.dumping -= 1
        zone.loads += 1
        zone.placed += self.volume
        run.loads_in_hand -= 1
        self.dumped_at = zone.index
        heap = Heap(zone, self.volume, self.noise["raking"])
        run.heaps.append(heap)
        if run.spread_share == 1:  # spread already: nobody walks to it or rakes it
            run.heaps.remove(heap)
            run.raked_out(heap)
        yield self.stand("ready")


# ------------------------------------------------------------------------------------------------ section 4: the rakers


class Raker(Resource):
    """One raker, or the whole crew if it works together."""

    def __init__(self, run, index, rate, speed, start_zone):
        super().__init__(run, index, RAKER_ACCOUNTS, RAKER_ENDS)
        self.rate, self.speed, self.zone = rate, speed, run.zones[start_zone]
        self.raked_today, self.order = 0, None
        self.raking_in, self.walking = None, False  # what can be interrupted

    def life(self):
        yield self.step("SetUp", self.run.set_up)
        while True:
            self.book("Waiting")
            yield self.stand("free")
            doing, heap = self.order
            if doing == "take":
                self.run.heaps.remove(heap)
                self.run.in_hand += 1
                yield from self.rake(heap)
                self.run.in_hand -= 1
                self.run.raked_out(heap)
            else:
                heap.walker = self
                yield from self.walk(heap.zone)
                heap.walker = None

    def rake(self, heap):
        run = self.run
        rate, fatigue = self.rate, run.job["raking"]["fatigue"]
        if fatigue:
            hours = self.raked_today / SECOND / 3600
            rate *= max(fatigue["floor"], 1 - fatigue["share_per_h"] * hours)
        pace = run.days["day"] * run.days["raker_pace"] * heap.raking_noise
        left = micros((1 - run.spread_share) * heap.volume / rate * 3600 * pace)
        if not run.may_rake(heap.zone):
            self.book("StandingClear")
            yield self.stand("heap in hand")
        while True:
            begun, self.raking_in = run.env.now, heap.zone
            try:
                yield self.step("Raking", left)
                done = True
            except simpy.Interrupt:
                done = False
            self.raking_in = None
            left -= run.env.now - begun
            self.raked_today += run.env.now - begun
            if done:
                return
            self.book("StandingClear")
            yield self.stand("heap in hand")

    def walk(self, zone):
        run = self.run
        left = micros(self.zone.walks_m[zone.index] / self.speed)
        while True:
            begun, self.walking = run.env.now, True
            try:
                yield self.step("Walking", left)
                done = True
            except simpy.Interrupt:
                done = False
            self.walking = False
            left -= run.env.now - begun
            if done:
                self.zone = zone
                return
            self.book("Walking")
            yield self.stand("walk in hand")


# ------------------------------------------------------------------------------------------------------- one run of a job


class Run:
    def __init__(self, job, draws):
        self.job, self.draws = job, draws
        shift = job["shift"]
        self.start = micros(shift["start_s"])
        self.env = simpy.Environment(initial_time=self.start)
        self.days = draws.draw_all("days.", job["chance"]["days"] | {"bulk": {"Constant": 1.0}})
        self.set_up = micros(draws.draw("set_up", shift["set_up_s"]))
        self.clean_up = micros(draws.draw("clean_up", shift["clean_up_s"]))
        self.least = 0.05 * min(loader["heaped_m3"] for loader in job["loaders"])
        self.spread_share = job["raking"]["spread_share"]
        self.stand_clear = job["raking"]["stand_clear"]
        rule = job["finish"]
        self.surplus_zone = None if rule == "AreaCovered" else rule["PileCleared"]["surplus_zone"]

        self.closed = None  # "break", "evening" or "night"
        self.nights, self.night_began = 0, None
        self.asked, self.cleaning, self.finished = False, False, simpy.Event(self.env)
        self.joined, self.last_chosen = 0, -1
        self.loads, self.loads_in_hand, self.in_hand, self.delivered = 0, 0, 0, 0.0
        self.heaps = []      # waiting to be raked, in the order they were dumped
        self.out = []        # (clock, volume) of each heap raked out
        self.completion = (0, 0)
        self.load_log = []   # the noise of each load, by load number

        self.piles = [Pile(i, p) for i, p in enumerate(job["stockpiles"])]
        self.zones = [Zone(i, z, z["need_m3"] * self.days["need"], self.least) for i, z in enumerate(job["zones"])]
        self.passes = [Queue("WaitingForPass", p["at_once"]) for p in job["passes"]]
        self.queues = [p.face for p in self.piles] + [z.room for z in self.zones] + self.passes
        self.expect_deliveries()
        self.loaders = [Loader(self, i, spec) for i, spec in enumerate(job["loaders"])]
        self.rakers = self.crew()
        self.everybody = self.rakers + self.loaders
        for person in self.everybody:
            person.process = self.env.process(person.life())
        self.env.process(self.clock())

    def crew(self):
        specs, together = self.job["rakers"], self.job["raking"]["together"]
        if together is not None and specs:
            crowding = together if len(specs) > 1 else 1.0
            rate = crowding * sum(r["rate_m3_per_h"] for r in specs)
            return [Raker(self, 0, rate, min(r["walking_m_per_s"] for r in specs), specs[0]["start_zone"])]
        return [Raker(self, i, r["rate_m3_per_h"], r["walking_m_per_s"], r["start_zone"])
                for i, r in enumerate(specs)]

    def noise_of_next_load(self):
        self.loads += 1
        noise = self.draws.draw_all("loads.", self.job["chance"]["loads"])
        self.load_log.append(noise)
        return noise

    # ------ deliveries

    def expect_deliveries(self):
        bulk = self.job["chance"]["days"]["bulk"]
        for pile, spec in zip(self.piles, self.job["stockpiles"]):
            self.deliver(pile, spec["on_hand_m3"] * self.draws.draw("bulk", bulk))
            for n, delivery in enumerate(spec["deliveries"]):
                volume = delivery["volume_m3"] * self.draws.draw("bulk", bulk)
                # A stream for each: a stream is drawn in blocks, all of one law.
                late = self.draws.draw(f"late {pile.index} {n}", delivery["late_s"])
                at = micros(delivery["at_s"] + late)
                if at <= self.start:
                    self.deliver(pile, volume)
                else:
                    pile.due += 1
                    self.env.process(self.delivery(pile, at, volume))
                    self.delivered += volume

    def deliver(self, pile, volume):
        self.tip(pile, volume)
        self.delivered += volume

    def tip(self, pile, volume):
        """A pile is used however small it is; of what remains after loads were taken, crumbs count as nothing."""
        pile.volume += volume
        if volume > 0:
            pile.least = min(self.least, pile.volume)

    def delivery(self, pile, at, volume):
        yield StepEnd(self, CLOCK, at - self.start)
        pile.due -= 1
        self.tip(pile, volume)
        self.wake_those_who_wait()

    def wake_those_who_wait(self):
        for loader in self.loaders:
            if loader.status == "waiting for a delivery":
                loader.status = "ready when open"

    # ------ what is wanted, and from where

    def has_material(self, pile, zone):
        """What remains of a pile is enough for a small zone that needs no more than that, rounding apart."""
        holds_it_all = zone.small and self.needs(zone) and pile.volume >= zone.need * (1 - 1e-9)
        return pile.volume >= pile.least or holds_it_all

    def needs(self, zone):
        return zone.need - zone.sent >= zone.least

    def takes_surplus(self, zone):
        """Pile cleared: no other zone needs more that any loader can bring now from a pile that has material."""
        if zone.index != self.surplus_zone:
            return False
        for other in self.zones:
            if other is not zone and self.needs(other):
                for loader in self.loaders:
                    for way in loader.ways[other.index]:
                        pile = self.piles[way["stockpile"]]
                        if self.has_material(pile, other):
                            return False
        return True

    def wants(self, zone):
        return self.needs(zone) or self.takes_surplus(zone)

    def look(self, loader):
        """Section 3, 1: the zone and the way of the loader's next load, "wait", or None if there is nothing more."""
        choices, due = [], False
        for zone in self.zones:
            wanted = self.wants(zone)
            if not wanted and zone.index != self.surplus_zone:
                continue
            ways = loader.ways[zone.index]
            way = next((w for w in ways if self.has_material(self.piles[w["stockpile"]], zone)), None)
            # It also waits for the surplus, which is not there until the others' zones are served.
            due = due or any(self.piles[w["stockpile"]].due for w in ways) or (way and not wanted)
            if wanted and way:
                choices.append((zone, way))
        if not choices:
            return "wait" if due else None
        rank = {
            "AsListed": lambda c: c[0].index,
            "FarthestFirst": lambda c: (-c[1]["distance_m"], c[0].index),
            "NearestFirst": lambda c: (c[1]["distance_m"], c[0].index),
            "InTurn": lambda c: (c[0].index - self.last_chosen - 1) % len(self.zones),
            "MostRoom": lambda c: (-c[0].room_left(), c[0].index),
        }[self.job["fill_order"]]
        choices.sort(key=rank)
        return next((c for c in choices if c[0].room_left() > 0), choices[0])

    # ------ heaps

    def may_rake(self, zone):
        return not (self.stand_clear and zone.dumping)

    def raked_out(self, heap):
        heap.zone.room.held -= 1
        self.out.append((self.env.now, heap.volume))
        self.completion = self.moment()

    # ------ section 5: the clock

    def clock(self):
        shift, end = self.job["shift"], self.job["shift"]["end_s"]
        for day in range(400):
            stretches = [(micros(b["start_s"]), micros(b["end_s"]), "break") for b in shift["breaks"]]
            stretches.append((inf if end is None else micros(end), self.start + DAY, "evening"))
            for begins, ends, name in stretches:
                if begins < inf:
                    yield StepEnd(self, HOURS_END, day * DAY + begins - self.env.now)
                    self.close(name)
                yield StepEnd(self, CLOCK, day * DAY + ends - self.env.now)
                self.open(name)
        raise RuntimeError("the job does not end")

    def close(self, name):
        self.closed = name
        for raker in self.rakers:
            if raker.raking_in or raker.walking:
                raker.process.interrupt()
        self.rebook()

    def open(self, name):
        if self.closed == "night":
            self.nights += self.env.now - self.night_began
        self.closed = None
        self.rebook()
        if name == "evening":
            for raker in self.rakers:
                raker.raked_today = 0

    def rebook(self):
        for person in self.everybody:
            person.book(person.doing)

    def moment(self):
        """Now, as (working time, clock time) since the start of the first day."""
        return self.env.now - self.start - self.nights, self.env.now - self.start

    # ------ section 5: at one instant

    def ask_for_starts(self, _event=None):
        if not self.asked:
            self.asked = True
            event = simpy.Event(self.env)
            event._ok, event._value = True, None
            event.callbacks.append(self.starts)
            self.env.schedule(event, START)

    def starts(self, _event):
        self.asked = False
        if self.start_one():
            self.ask_for_starts()
        elif not self.cleaning and (self.clean_up == 0 or not self.closed) and self.is_over():
            self.begin_clean_up()
        elif self.closed == "evening" and not any(person.busy for person in self.everybody):
            self.closed, self.night_began = "night", self.env.now
            self.rebook()

    def start_one(self):
        """One thing starts: rakers, then loaders in queues, then other loaders."""
        if not self.closed:
            for raker in self.rakers:
                if raker.status == "heap in hand" and self.may_rake(raker.zone):
                    return raker.told_to_go()
                if raker.status == "free":
                    heap = next((h for h in self.heaps if h.zone is raker.zone), None)
                    if heap:
                        raker.order = ("take", heap)
                        return raker.told_to_go()
            for raker in self.rakers:
                if raker.status == "walk in hand":
                    return raker.told_to_go()
                if raker.status == "free":
                    heap = next((h for h in self.heaps if h.walker is None), None)
                    if heap:
                        raker.order = ("walk", heap)
                        return raker.told_to_go()
            served = [q for q in self.queues if q.line and q.free()]
            if served:
                first = min(served, key=lambda q: q.line[0].stamp)
                return first.line.popleft().told_to_go()
        for loader in self.loaders:
            if loader.status == "ready" or (loader.status == "ready when open" and not self.closed):
                return loader.told_to_go()
        return False

    def is_over(self):
        setting_up = any(person.busy and person.doing == "SetUp" for person in self.everybody)
        if setting_up or self.loads_in_hand or self.heaps or self.in_hand:
            return False
        return all(loader.status == "done" or self.look(loader) is None for loader in self.loaders)

    def begin_clean_up(self):
        self.cleaning = True
        for person in self.everybody:
            if person in self.rakers or not person.on_the_road:
                for queue in self.queues:
                    if person in queue.line:
                        queue.line.remove(person)
                person.status = "done"
                person.busy = True
                person.book("CleanUp")
        self.env.process(self.close_the_accounts())

    def close_the_accounts(self):
        yield StepEnd(self, RAKER_ENDS, self.clean_up)
        self.finish = self.completion if self.clean_up == 0 else self.moment()
        for person in self.everybody:
            person.book(person.doing)
        self.finished.succeed()

    # ------ section 6

    def play(self):
        self.env.run(until=self.finished)
        return self

    def loader_accounts(self):
        return [{a: loader.accounts[a] for a in LOADER_ACCOUNTS} for loader in self.loaders]

    def raker_accounts(self):
        accounts = [{a: raker.accounts[a] for a in RAKER_ACCOUNTS} for raker in self.rakers]
        return accounts * len(self.job["rakers"]) if self.job["raking"]["together"] is not None else accounts

    def placed(self):
        return sum(zone.placed for zone in self.zones)

    def short(self, zone):
        lacking = zone.need - zone.placed
        least = self.least if zone.loads else zone.least
        return lacking if lacking >= least else 0.0

    def fuel(self):
        litres = 0.0
        for loader, accounts in zip(self.loaders, self.loader_accounts()):
            litres += loader.spec["fuel_working_l_per_h"] * sum(accounts[a] for a in WORKING_BURN) / SECOND / 3600
            litres += loader.spec["fuel_idling_l_per_h"] * sum(accounts[a] for a in IDLING_BURN) / SECOND / 3600
        return litres

    def cost(self):
        per_hour = sum(s["machine_cost_per_h"] + s["operator_cost_per_h"] for s in self.job["loaders"])
        per_hour += sum(s["cost_per_h"] for s in self.job["rakers"])
        prices = self.job["prices"]
        return per_hour * self.finish[0] / SECOND / 3600 + self.fuel() * prices["fuel_per_l"] + prices["material"]

    def progress(self):
        """Clock time since the start of the first day when each twentieth of the volume placed was raked out."""
        total, done, times = self.placed(), 0.0, []
        for clock, volume in self.out:
            done += volume
            while len(times) < 20 and done >= (len(times) + 1) / 20 * total - 1e-9 * total:
                times.append(clock - self.start)
        return times


def play(job, draws):
    """One run of a job."""
    return Run(job, draws).play()
