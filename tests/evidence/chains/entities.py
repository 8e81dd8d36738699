"""The same jobs as chains in which everybody is followed by number: each loader with its step and zone, each queue in its order,
each heap in the order dumped, each raker with the heap in hand. Far more states, no counting, one program for all cases;
written from the model's words (a loader's cycle, the rakers, the order at one instant), not from lumped.py."""

TIMED = ("load", "haul", "pass out", "dump", "pass back", "ret")


class Entities:
    def __init__(self, needs, rooms, rake, load, hauls, dump=0.0, ret=0.0, loaders=1, rakers=((0,),), order="listed", clear=0,
                 passing=0.0, gap=0.0, length=0.0):
        self.__dict__.update(locals())
        self.zones = range(len(needs))

    def mean(self, step, zone):
        return {"load": self.load, "haul": self.hauls[zone], "pass out": self.passing, "dump": self.dump,
                "pass back": self.passing, "ret": self.ret}[step]

    # State: needs left, zone chosen last, loaders (step, zone, stopped), queues {face, pass, room of zone}, heaps of each zone
    # in order (who rakes it, or None), zone of each raker.
    def start(self):
        loaders = tuple(("choose", 0, 0) for _ in range(self.loaders))
        return self.settle([list(self.needs), None, list(loaders), {"face": [], "pass": [], **{z: [] for z in self.zones}},
                            [[] for _ in self.zones], [r[0] for r in self.rakers]])

    def freeze(self, s):
        left, last, loaders, queues, heaps, at = s
        queues = tuple((k, tuple(v)) for k, v in queues.items())
        return tuple(left), last, tuple(loaders), queues, tuple(map(tuple, heaps)), tuple(at)

    def thaw(self, s):
        left, last, loaders, queues, heaps, at = s
        return [list(left), last, list(loaders), {k: list(v) for k, v in queues}, [list(h) for h in heaps], list(at)]

    def dumping(self, s, zone):
        return sum(step == "dump" and z == zone for step, z, _ in s[2])

    def bound(self, s, zone):
        bound = ("face queue", "load", "haul", "pass out queue", "pass out", "room queue", "ret for", "pass back for",
                 "pass back queue for")
        return sum(step in bound and z == zone for step, z, _ in s[2])

    def pick(self, s):
        left, last = s[0], s[1]
        free = {z: self.rooms[z] - len(s[4][z]) - self.dumping(s, z) - self.bound(s, z) for z in self.zones}
        wanted = [z for z in self.zones if left[z] > 0]
        if self.order == "in turn" and last is not None:
            wanted.sort(key=lambda z: (z - last - 1) % len(self.zones))
        if self.order == "most room":
            wanted.sort(key=lambda z: -free[z])
        return next((z for z in wanted if free[z] >= 1), wanted[0] if wanted else None)

    def settle(self, s):
        while self.raker_starts(s) or self.queue_moves(s) or self.loader_starts(s):
            pass
        return self.freeze(s)

    def raker_starts(self, s):
        heaps, at = s[4], s[5]
        in_hand = {r for zone in heaps for r in zone if r is not None}
        for may_walk in (False, True):
            for r in range(len(at)):
                if r in in_hand:
                    continue
                for zone in [at[r]] + ([z for z in self.zones if z != at[r]] if may_walk and self.walks else []):
                    if None in heaps[zone]:
                        heaps[zone][heaps[zone].index(None)] = r
                        at[r] = zone
                        return True
        return False

    walks = False

    def queue_moves(self, s):
        left, loaders, queues, heaps = s[0], s[2], s[3], s[4]
        if queues["face"] and not any(step == "load" for step, _, _ in loaders):
            n = queues["face"].pop(0)
            zone = loaders[n][1]
            if left[zone] == 0:
                loaders[n] = ("choose at face", 0, 0)
                zone = self.pick(s)
                if zone is None:
                    loaders[n] = ("done", 0, 0)
                    return True
                s[1] = zone
            left[zone] -= 1
            self.begin(s, n, "load", zone)
            return True
        if queues["pass"] and not any(step.startswith("pass") and "queue" not in step for step, _, _ in loaders):
            n = queues["pass"].pop(0)
            self.begin(s, n, loaders[n][0].replace(" queue", ""), loaders[n][1])
            return True
        for zone in self.zones:
            if queues[zone] and len(heaps[zone]) + self.dumping(s, zone) < self.rooms[zone]:
                self.begin(s, queues[zone].pop(0), "dump", zone)
                return True
        return False

    def loader_starts(self, s):
        for n, (step, zone, _) in enumerate(s[2]):
            if step in ("choose", "choose and return"):
                zone_next = self.pick(s)
                if zone_next is None:
                    if step == "choose":
                        s[2][n] = ("done", 0, 0)
                    else:
                        self.back(s, n, "", zone)
                else:
                    s[1] = zone_next
                    if step == "choose":
                        self.line_up(s, n, "face", "face queue", zone_next)
                    else:
                        self.back(s, n, " for", zone_next)
                return True
        return False

    def line_up(self, s, n, queue, step, zone):
        s[3][queue].append(n)
        s[2][n] = (step, zone, 0)

    def back(self, s, n, aim, zone):
        if self.passing:
            self.line_up(s, n, "pass", "pass back queue" + aim, zone)
        else:
            self.begin(s, n, "ret" + aim, zone)

    def begin(self, s, n, step, zone):
        s[2][n] = (step, zone, 0)
        if self.mean(step.replace(" for", ""), zone) == 0:
            self.end(s, n)

    def end(self, s, n):
        step, zone, _ = s[2][n]
        if step == "load":
            self.begin(s, n, "haul", zone)
        elif step == "haul":
            if self.passing:
                self.line_up(s, n, "pass", "pass out queue", zone)
            else:
                self.line_up(s, n, zone, "room queue", zone)
        elif step == "pass out":
            self.line_up(s, n, zone, "room queue", zone)
        elif step == "dump":
            s[4][zone].append(None)
            s[2][n] = ("choose and return", zone, 0)
        elif step.startswith("pass back"):
            self.begin(s, n, "ret" + step[len("pass back"):], zone)
        elif step == "ret for":
            self.line_up(s, n, "face", "face queue", zone)
        else:
            s[2][n] = ("done", 0, 0)

    def moves(self, state):
        s = self.thaw(state)
        carrying = ("load", "haul", "pass out queue", "pass out", "room queue", "dump")
        if not any(s[0]) and not any(s[4]) and not any(step in carrying for step, _, _ in s[2]):
            return []
        out = []
        for n, (step, zone, stopped) in enumerate(s[2]):
            bare = step.replace(" for", "")
            if stopped:
                t = self.thaw(state)
                t[2][n] = (step, zone, 0)
                out.append((1 / self.length, self.freeze(t)))
            elif bare in TIMED:
                t = self.thaw(state)
                self.end(t, n)
                out.append((1 / self.mean(bare, zone), self.settle(t)))
                if self.gap:
                    t = self.thaw(state)
                    t[2][n] = (step, zone, 1)
                    out.append((1 / self.gap, self.freeze(t)))
        for zone in self.zones:
            for k, raker in enumerate(s[4][zone]):
                if raker is not None and not (self.clear and self.dumping(s, zone)):
                    t = self.thaw(state)
                    t[4][zone].pop(k)
                    rate = 1 / (self.rake[zone] if isinstance(self.rake, (list, tuple)) else self.rake)
                    out.append((rate, self.settle(t)))
        return out

    def tells(self, names):
        steps = {"loading": ("load",), "hauling": ("haul",), "waiting_face": ("face queue",),
                 "passing": ("pass out", "pass back", "pass back for"),
                 "waiting_pass": ("pass out queue", "pass back queue", "pass back queue for"),
                 "waiting_room": ("room queue",), "dumping": ("dump",), "returning": ("ret", "ret for")}

        def told(s):
            stands = sum(r is not None for z in self.zones for r in s[4][z] if self.clear and self.dumping(s, z))
            hands = sum(r is not None for z in self.zones for r in s[4][z])
            special = {"stopped": sum(x for _, _, x in s[2]), "raking": hands - stands, "standing_clear": stands}
            return [special[n] if n in special else sum(step in steps[n] and not x for step, _, x in s[2]) for n in names]

        return told
