"""Writes layers.csv (job factors over the chance of single loads), loads.csv (how many loads) and delivery.csv (a pile that runs
out)."""
import numpy as np
from scipy import special, stats
from scipy.integrate import quad
from scipy.optimize import brentq
import lumped
from entities import Entities
from make_lines import write
from solve import SHARES, Uniformised, euler, explore


def factor(text):
    """A job factor of mean 1: `lognormal 0.2`, `gamma 0.3`, `one`."""
    if text == "one":
        return None
    family, cv = text.split()
    cv = float(cv)
    if family == "gamma":
        return stats.gamma(1 / cv**2, scale=cv**2)
    s2 = np.log1p(cv**2)
    return stats.lognorm(np.sqrt(s2), scale=np.exp(-s2 / 2))


def gauss(text, n=12):
    """Nodes and weights of the factor's own Gauss rule: Hermite of its logarithm, or generalised Laguerre."""
    if text == "one":
        return np.ones(1), np.ones(1)
    family, cv = text.split()
    cv = float(cv)
    if family == "gamma":
        x, w = special.roots_genlaguerre(n, 1 / cv**2 - 1)
        return x * cv**2, w / w.sum()
    s2 = np.log1p(cv**2)
    x, w = special.roots_hermitenorm(n)
    return np.exp(np.sqrt(s2) * x - s2 / 2), w / w.sum()


def trapezoid(text, h=0.7):
    """Nodes and weights by the plain trapezoid rule in the normal score of the factor."""
    if text == "one":
        return np.ones(1), np.ones(1)
    z = np.arange(-6.3, 6.3 + h / 2, h)
    w = stats.norm.pdf(z)
    q = np.where(z < 0, factor(text).ppf(stats.norm.cdf(z)), factor(text).isf(stats.norm.sf(z)))
    return q, w / w.sum()


KEYS = ("loads", "rakers", "room", "rake", "load", "haul", "dump", "ret", "day", "loader_pace", "travel", "raker_pace")
LAYERS = [  # no rakers: the loader spreads, and the job is the sum of its loads
    (10, 0, 10, 0, 1.0, 0, 0, 0, "lognormal 0.25", "one", "one", "one"),
    (10, 0, 10, 0, 1.0, 0, 0, 0, "gamma 0.4", "one", "one", "one"),
    (8, 1, 2, 1.2, 1.0, 0.5, 0.5, 0.5, "lognormal 0.2", "one", "one", "one"),
    (6, 1, 2, 1.3, 1.0, 0, 0.4, 0, "one", "lognormal 0.2", "one", "lognormal 0.3"),
    (6, 1, 1, 2.0, 1.0, 0.8, 0.4, 0.5, "lognormal 0.15", "one", "gamma 0.3", "one"),
    (6, 2, 2, 3.0, 1.0, 0.4, 0.4, 0.4, "one", "one", "lognormal 0.25", "gamma 0.25"),
]


def slowed(p, pace, travel, raker):
    return dict(rake=p["rake"] * raker, load=p["load"] * pace, haul=p["haul"] * travel, dump=p["dump"] * pace,
                ret=p["ret"] * travel)


def mixed(p, rule):
    """All the chains of a case with the weight of each, the day left out (it scales whole runs)."""
    for u, wu in zip(*rule(p["loader_pace"])):
        for v, wv in zip(*rule(p["travel"])):
            for r, wr in zip(*rule(p["raker_pace"])):
                yield wu * wv * wr, slowed(p, u, v, r)


def layers():
    rows = []
    for values in LAYERS:
        p = dict(zip(KEYS, values))
        shape = {k: p[k] for k in ("loads", "rakers", "room")}
        if p["rakers"]:
            chains = [(w, Uniformised(*lumped.line(**shape, **times))) for w, times in mixed(p, gauss) if w > 1e-10]
        else:
            chains = [(1.0, Sum(p["loads"]))]
        days, weights = gauss(p["day"], 64)
        cdf = lambda t: sum(w * wd * c.cdf(t / d) for w, c in chains for d, wd in zip(days, weights) if wd > 1e-16)
        mean = sum(w * c.mean for w, c in chains)
        second = sum(w * (c.sd**2 + c.mean**2) for w, c in chains) * (weights * days**2).sum()
        top = mean * 12
        points = {n: brentq(lambda t: cdf(t) - s, mean / 20, top, xtol=1e-11) for n, s in SHARES.items()}
        off = [abs(second_cdf(p, points[n]) - SHARES[n]) for n in SHARES]
        row = {**p, "mean": mean, "sd": np.sqrt(second - mean**2), **points}
        rows.append({k: f"{x:.7f}" if k in ("mean", "sd", *SHARES) else x for k, x in row.items()}
                    | {"second_method_off": f"{max(off):.1e}"})
        print(rows[-1], flush=True)
    write("layers.csv", rows)


class Sum:
    """The sum of n exponential loads of mean 1."""

    def __init__(self, n):
        self.n, self.mean, self.sd = n, float(n), np.sqrt(n)

    def cdf(self, t):
        return special.gammainc(self.n, t)


def second_cdf(p, t):
    """The chance of being over by t: of the chains that follow everybody, transformed, by the trapezoid rule; where there is
    nothing but the sum of the loads, by Bessel's function (gamma day) or mixed over the sum instead of the day (lognormal)."""
    if not p["rakers"]:
        n = p["loads"]
        if p["day"].startswith("gamma"):
            k = 1 / float(p["day"].split()[1]) ** 2
            pdf = lambda z: 2 * z ** ((k + n) / 2 - 1) * special.kv(k - n, 2 * np.sqrt(z)) / special.gamma(k) / special.gamma(n)
            return quad(pdf, 0, k * t, epsabs=1e-12, limit=200)[0]
        day = factor(p["day"])
        return quad(lambda y: stats.gamma.pdf(y, n) * day.cdf(t / y), 0, 60, epsabs=1e-12, limit=200)[0]
    labels = dict(rake=1.1, load=1.2, haul=1.3, dump=1.4, ret=1.5)
    means = {k: v if p[k] else 0.0 for k, v in labels.items()}
    e = Entities([p["loads"]], [p["room"]], means["rake"], means["load"], [means["haul"]], means["dump"], means["ret"],
                 rakers=((0,),) * p["rakers"])
    order, edges = explore(e.start(), e.moves)
    name = {1 / v: k for k, v in labels.items()}
    after = [[] for _ in order]
    for i, j, rate in edges:
        after[i].append((j, name[rate]))
    mix = [(w, times) for w, times in mixed(p, trapezoid) if w > 1e-12]
    days, weights = trapezoid(p["day"], 0.4)
    at = (20.0 + 2j * np.pi * np.arange(43)) / (2 * t)  # where the inversion asks for the transform
    w = np.array([w * wd for w, _ in mix for wd in weights])[:, None]
    rates = {k: np.array([1 / (times[k] * d) if p[k] else 0.0 for _, times in mix for d in days])[:, None] for k in labels}
    total = first_step(after, rates, at, w) / at
    points = iter(total)
    return euler(lambda s: next(points), t, 20.0)


def first_step(after, rates, at, weights):
    """The transform at these points of all chains at once, mixed: from each state the first step, then the rest. No state comes
    back, so each is worked out once, those it leads to before it."""
    found = {}
    stack = [0]
    while stack:
        i = stack[-1]
        ahead = [j for j, _ in after[i] if j not in found]
        if ahead:
            stack.extend(ahead)
            continue
        stack.pop()
        if i not in found:
            out = sum(rates[k] for _, k in after[i]) if after[i] else 0.0
            found[i] = sum(rates[k] * found[j] for j, k in after[i]) / (out + at) if after[i] else np.ones((1, len(at)))
    return (weights * found[0]).sum(axis=0)


def counts():
    """Chances that at most so many loads of 1 m3 are needed; under 0.05 m3 counts as nothing."""
    rows = []

    def row(kind, need, cv, later, loads, first, second):
        rows.append({"kind": kind, "volume": need, "cv": cv, "later": later, "loads": loads, "chance": f"{first:.9f}",
                     "second_method_off": f"{abs(first - second):.1e}"})

    for cv in (0.15, 0.4):  # loads whose fill is gamma: the sum of n is gamma again
        k = 1 / cv**2
        for n in (8, 9, 10, 11, 12):
            first = stats.gamma.sf(10 - 0.05, k * n, scale=1 / k)
            row("fill of a load, gamma", 10, cv, 0, n, first, by_characteristic_function(k, n, 9.95))
    for cv in (0.1, 0.3):  # the fill of the whole job, the need, the stock: one lognormal
        law = factor(f"lognormal {cv}")
        s = np.sqrt(np.log1p(cv**2))
        score = lambda x: special.erfc(-(np.log(x) + s * s / 2) / s / np.sqrt(2)) / 2
        for n in (6, 8, 10, 12):
            row("fill of the job, lognormal", 9.5, cv, 0, n, law.sf((9.5 - 0.05) / n), 1 - score(9.45 / n))
            row("need, lognormal", 9.5, cv, 0, n, law.cdf((n + 0.05) / 9.5), score((n + 0.05) / 9.5))
            row("stock, lognormal", 9.5, cv, 0, n, law.cdf((n + 0.05) / 9.5), score((n + 0.05) / 9.5))
            two = quad(lambda x: law.pdf(x) * law.cdf((n + 0.05 - 4 * x) / 6), 0, (n + 0.05) / 4, epsabs=1e-12, limit=400)[0]
            z = np.linspace(-9, 9, 20001)
            other = np.trapezoid(stats.norm.pdf(z) * law.cdf(np.maximum(n + 0.05 - 6 * np.exp(s * z - s * s / 2), 0) / 4), z)
            row("stock and a truckload, lognormal", 4, cv, 6, n, two, other)
    write("loads.csv", rows)


def by_characteristic_function(k, n, x):
    """Chance that a sum of n gamma laws of mean 1 and shape k is over x (Gil-Pelaez 1951)."""
    f = lambda u: (np.exp(-1j * u * x) * (1 - 1j * u / k) ** (-k * n)).imag / u
    return 0.5 + sum(quad(f, a, b, epsabs=1e-13, limit=400)[0] for a, b in zip(range(0, 80, 4), range(4, 84, 4))) / np.pi


def deliveries():
    """k loads on hand, n in all, cycles exponential of mean 1; the truck comes at `promised` and exponentially late. Completion
    max(G_k, promised + L) + G_(n-k) by quadrature; second: the chain (loads dumped, truck here), which is one chain before the
    promise and another after it, by uniformisation of each."""
    rows = []
    for on_hand, loads, promised, late in ((3, 8, 2.0, 2.0), (4, 10, 6.0, 1.5), (2, 6, 0.0, 5.0), (5, 10, 3.0, 1.0)):
        g = lambda k, t: special.gammainc(k, np.maximum(t, 0.0))
        here = lambda t: 1 - np.exp(-(t - promised) / late) if t > promised else 0.0
        rest = loads - on_hand

        def cdf(t):
            both = lambda y: stats.gamma.pdf(t - y, rest) * g(on_hand, y) * here(y)
            return quad(both, promised, t, epsabs=1e-12, limit=300)[0] if t > promised else 0.0

        over = lambda x: 1 - g(on_hand, x) * here(x)
        spans = ((0, promised), (promised, promised + 80 * late))
        parts = lambda f: sum(quad(f, a, b, epsabs=1e-12, limit=300)[0] for a, b in spans)
        mean = parts(over)
        variance = parts(lambda x: 2 * x * over(x)) - mean**2
        points = {n: brentq(lambda t: cdf(t) - s, 0.1, 100, xtol=1e-12) for n, s in SHARES.items()}
        off = [abs(two_epochs(on_hand, loads, promised, late, t) - s) for t, s in zip(points.values(), SHARES.values())]
        row = {"mean": mean + rest, "sd": np.sqrt(variance + rest), **points, "waiting_delivery": mean - on_hand}
        rows.append({"on_hand": on_hand, "loads": loads, "promised": promised, "late": late}
                    | {k: f"{x:.9f}" for k, x in row.items()} | {"second_method_off": f"{max(off):.1e}"})
    write("delivery.csv", rows)


def two_epochs(on_hand, loads, promised, late, t):
    n = 2 * (loads + 1)
    q = np.zeros((n, n))
    for done in range(loads):
        if done < on_hand:
            q[done, done + 1] = 1.0
        q[loads + 1 + done, loads + 2 + done] = 1.0
    before = q.copy()
    for done in range(loads + 1):
        q[done, loads + 1 + done] += 1 / late
    p = np.zeros(n)
    p[0] = 1.0
    for chain, span in ((before, min(t, promised)), (q, max(t - promised, 0.0))):
        rate = chain.sum(axis=1).max() * 1.1
        step = np.eye(n) + (chain - np.diag(chain.sum(axis=1))) / rate
        k = np.arange(int(rate * span + 12 * np.sqrt(rate * span) + 40))
        out = np.zeros(n)
        for weight in stats.poisson.pmf(k, rate * span):
            out += weight * p
            p = p @ step
        p = out
    return p[-1]


if __name__ == "__main__":
    counts()
    deliveries()
    layers()
