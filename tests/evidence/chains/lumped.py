"""Each case as the smallest chain that answers it, written down by hand. Equal things are counted, not followed."""


def line(loads, rakers, room, rake, load, haul=0.0, dump=0.0, ret=0.0, clear=0, gap=0.0, length=0.0):
    """One loader, one zone, equal rakers. State: loads not begun, what the loader does, heaps lying, stopped."""
    mean = {"load": load, "haul": haul, "dump": dump, "ret": ret}
    following = {"load": "haul", "haul": "want", "dump": "ret", "ret": "load"}

    def enter(step, left, lying):
        while True:
            if step == "load":
                if left == 0:
                    return left, "gone", lying, 0
                left -= 1
            if step == "want":
                if lying == room:
                    return left, "wait", lying, 0
                step = "dump"
            if mean[step] > 0.0:
                return left, step, lying, 0
            lying += step == "dump"
            step = following[step]

    def moves(state):
        left, step, lying, stopped = state
        if left == 0 and step in ("ret", "gone") and lying == 0:
            return []
        out = []
        if stopped:
            out.append((1 / length, (left, step, lying, 0)))
        elif step in mean:
            out.append((1 / mean[step], enter(following[step], left, lying + (step == "dump"))))
            if gap:
                out.append((1 / gap, (left, step, lying, 1)))
        busy = min(rakers, lying)
        if busy and not (clear and step == "dump"):
            after = enter("want", left, lying - 1) if step == "wait" else (left, step, lying - 1, stopped)
            out.append((busy / rake, after))
        return out

    def tells(state):
        _, step, lying, stopped = state
        doing = [step == s and not stopped for s in ("load", "haul", "wait", "dump", "ret")]
        busy = min(rakers, lying)
        stands = busy if clear and step == "dump" else 0
        return [*doing, bool(stopped), busy - stands, stands]

    return enter("load", loads, 0), moves, tells


TOLD = ["loading", "hauling", "waiting_room", "dumping", "returning", "stopped", "raking", "standing_clear"]


def two_zones(needs, rooms, rake, load, hauls, dump, order, rakers, at_home):
    """One loader, two zones. Rakers either all stay at home, one in each zone, where no zone has room for two heaps; or they
    are alike and walk in no time. No time for the way back.
    State: loads not begun by zone, zone chosen last, what the loader does, its zone, heaps lying by zone, those being raked."""

    def add(pair, z, n):
        return tuple(x + n * (z == i) for i, x in enumerate(pair))

    def choose(left, last, lying):
        wanted = [z for z in (0, 1) if left[z]]
        if order == "in turn" and len(wanted) == 2:
            wanted = [1 - last, last]
        if order == "most room":
            wanted.sort(key=lambda z: (lying[z] - rooms[z], z))
        return next((z for z in wanted if lying[z] < rooms[z]), wanted[0])

    def begin(left, last, lying, raked):
        if left == (0, 0):
            return left, 0, "gone", 0, lying, raked
        z = choose(left, last, lying)
        return add(left, z, -1), z, "load", z, lying, raked

    def arrive(left, last, z, lying, raked):
        return left, last, "wait" if lying[z] == rooms[z] else "dump", z, lying, raked

    def dumped(left, last, z, lying, raked):
        idle = raked[z] == 0 if at_home else sum(raked) < rakers
        return begin(left, last, add(lying, z, 1), add(raked, z, 1) if idle else raked)

    def raked_out(left, last, step, z, lying, raked, zone):
        lying, raked = add(lying, zone, -1), add(raked, zone, -1)
        for at in (zone,) if at_home else (zone, 1 - zone):
            if lying[at] > raked[at]:
                raked = add(raked, at, 1)
                break
        return arrive(left, last, z, lying, raked) if step == "wait" else (left, last, step, z, lying, raked)

    def moves(state):
        left, last, step, z, lying, raked = state
        if step == "gone" and lying == (0, 0):
            return []
        out = []
        if step == "load":
            out.append((1 / load, (left, last, "haul", z, lying, raked)))
        if step == "haul":
            out.append((1 / hauls[z], arrive(left, last, z, lying, raked)))
        if step == "dump":
            out.append((1 / dump, dumped(left, last, z, lying, raked)))
        out += [(raked[i] / rake[i], raked_out(*state, i)) for i in (0, 1) if raked[i]]
        return out

    def tells(state):
        step, raked = state[2], state[5]
        return [step == "load", step == "haul", step == "wait", step == "dump", sum(raked)]

    return begin(needs, 1, (0, 0), (0, 0)), moves, tells


TOLD_ZONES = ["loading", "hauling", "waiting_room", "dumping", "raking"]


def pair(loads, rakers, room, rake, load, passing, dump, clear=0):
    """Two equal loaders, one face, one pass there and back (no pass if passing is 0), one zone.
    State: loads not begun, what each loader does (in order), heaps lying. With two loaders no queue is longer than one.
    Who goes back for a load that the other has taken meanwhile finds out when the face is free; who goes back for none is
    gone."""
    after_pass = {"pass out": "room", "pass back": "face", "pass home": "gone"}

    def settle(left, steps, lying):
        steps = list(steps)
        while True:
            steps.sort()
            in_pass = any(s.startswith("pass") for s in steps)
            for n, s in enumerate(steps):
                if s == "face" and "load" not in steps:
                    steps[n], left = ("load", left - 1) if left else ("gone", 0)
                elif s.startswith("queue") and passing == 0:
                    steps[n] = after_pass[s.replace("queue", "pass")]
                elif s.startswith("queue") and not in_pass:
                    steps[n] = s.replace("queue", "pass")
                elif s == "room" and lying + steps.count("dump") < room:
                    steps[n] = "dump"
                else:
                    continue
                break
            else:
                return left, tuple(steps), lying

    def moves(state):
        left, steps, lying = state
        if left == 0 and lying == 0 and all(s in ("gone", "face") or s.endswith(("back", "home")) for s in steps):
            return []
        out = []
        ends = {"load": (load, "queue out"), "dump": (dump, "queue back" if left else "queue home"),
                **{s: (passing, after) for s, after in after_pass.items()}}
        for n, s in enumerate(steps):
            if s in ends:
                mean, after = ends[s]
                out.append((1 / mean, settle(left, steps[:n] + (after,) + steps[n + 1:], lying + (s == "dump"))))
        busy = min(rakers, lying)
        if busy and not (clear and "dump" in steps):
            out.append((busy / rake, settle(left, steps, lying - 1)))
        return out

    def tells(state):
        _, steps, lying = state
        count = lambda *names: sum(s in names for s in steps)
        busy = min(rakers, lying)
        stands = busy if clear and "dump" in steps else 0
        return [count("load"), count("face"), count(*after_pass), sum(s.startswith("queue") for s in steps), count("room"),
                count("dump"), busy - stands, stands]

    return settle(loads, ("face", "face"), 0), moves, tells


TOLD_PAIR = ["loading", "waiting_face", "passing", "waiting_pass", "waiting_room", "dumping", "raking", "standing_clear"]


def pair_in_zones(needs, rooms, rake, load, hauls, dump, order, rakers):
    """Two equal loaders, one face, two zones, rakers who walk in no time; no time for the way back. A loader chooses as soon as it
    has dumped, counts the other as bound for its zone until that one dumps, and chooses again if at its turn at the face its
    zone has enough. State: loads not begun by zone, zone chosen last, both loaders as (step, zone), heaps lying and being
    raked by zone."""
    add = lambda pair, z, n: tuple(x + n * (z == i) for i, x in enumerate(pair))

    def choose(left, last, other, lying):
        wanted = [z for z in (0, 1) if left[z]]
        if not wanted:
            return None
        free = [rooms[z] - lying[z] - (other[1] == z and other[0] != "gone") for z in (0, 1)]
        if order == "in turn" and len(wanted) == 2 and last is not None:
            wanted = [1 - last, last]
        if order == "most room":
            wanted.sort(key=lambda z: (-free[z], z))
        return next((z for z in wanted if free[z] > 0), wanted[0])

    def to_face(left, last, me, other, lying):
        """The state after this loader has chosen and come to the face, the other doing what it does."""
        z = choose(left, last, other, lying)
        if z is None:
            return left, last, ("gone", 0), other
        if other[0] == "load":
            return left, z, ("face", z), other
        return add(left, z, -1), z, ("load", z), other

    def face_free(left, last, me, other, lying):
        """The other loader's turn at the face, if it stands there."""
        if other[0] != "face":
            return left, last, me, other
        z = other[1]
        if left[z] == 0:
            z = choose(left, last, me, lying)
            if z is None:
                return left, last, me, ("gone", 0)
            last = z
        return add(left, z, -1), last, me, ("load", z)

    def state(left, last, one, two, lying, raked):
        return left, last, *sorted((one, two)), lying, raked

    def arrive(z, other, lying):
        held = lying[z] + (other == ("dump", z))
        return ("room", z) if held == rooms[z] else ("dump", z)

    def moves(s):
        left, last, one, two, lying, raked = s
        out = []
        for me, other in ((one, two), (two, one)):
            step, z = me
            if step == "load":
                after = face_free(left, last, ("haul", z), other, lying)
                out.append((1 / load, state(*after, lying, raked)))
            elif step == "haul":
                out.append((1 / hauls[z], state(left, last, arrive(z, other, lying), other, lying, raked)))
            elif step == "dump":
                lies = add(lying, z, 1)
                rakes = add(raked, z, 1) if sum(raked) < rakers else raked
                out.append((1 / dump, state(*to_face(left, last, me, other, lies), lies, rakes)))
        for z in (0, 1):
            if raked[z]:
                lies, rakes = add(lying, z, -1), add(raked, z, -1)
                at = next((at for at in (z, 1 - z) if lies[at] > rakes[at]), None)
                rakes = rakes if at is None else add(rakes, at, 1)
                waits = ("room", z) in (one, two)
                first, other = (two, one) if two == ("room", z) else (one, two)
                first = ("dump", z) if waits else first
                out.append((raked[z] / rake, state(left, last, first, other, lies, rakes)))
        return out

    def tells(s):
        count = lambda name: (s[2][0] == name) + (s[3][0] == name)
        return [count("load"), count("face"), count("haul"), count("room"), count("dump"), sum(s[5])]

    empty = (0, 0)
    begun = to_face(needs, None, None, ("gone", 0), empty)
    left, last, one, _ = begun
    left, last, two, one = to_face(left, last, None, one, empty)
    return state(left, last, one, two, empty, empty), moves, tells


TOLD_PAIR_IN_ZONES = ["loading", "waiting_face", "hauling", "waiting_room", "dumping", "raking"]
