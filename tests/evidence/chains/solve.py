"""A finite Markov chain that ends, solved in two ways that share nothing but the list of its moves.

`moves(state)` gives (rate, next state) pairs and is empty when the job is over; `tells(state)` gives the figures whose
expected integral over the job is wanted (machines loading, rakers raking, ...).

uniformised(): jumps of a Poisson clock (Jensen 1953; Grassmann 1977). Chances of being over after k jumps, then Poisson
  weights; percentiles by root finding.
transformed(): linear equations for the moments and for the Laplace transform, which is inverted by the Euler summation of
  Abate & Whitt (ORSA Journal on Computing 7, 1995). Gives the chance of being over by a given time.
"""
import numpy as np
import scipy.sparse as sp
import scipy.sparse.linalg as la
from scipy.optimize import brentq
from scipy.stats import poisson

SHARES = {"P10": 0.1, "P50": 0.5, "P80": 0.8, "P90": 0.9, "P95": 0.95}


def explore(start, moves):
    index, order, edges = {start: 0}, [start], []
    for state in order:
        for rate, after in moves(state):
            if after not in index:
                index[after] = len(order)
                order.append(after)
            edges.append((index[state], index[after], rate))
    return order, edges


def generator(order, edges):
    i, j, r = (np.array(x) for x in zip(*edges))
    q = sp.coo_matrix((r.astype(float), (i, j)), shape=(len(order),) * 2).tocsr()
    out = np.asarray(q.sum(axis=1)).ravel()
    return (q - sp.diags(out)).tocsr(), out


class Uniformised:
    def __init__(self, start, moves, tells=None):
        order, edges = explore(start, moves)
        q, out = generator(order, edges)
        over = out == 0.0
        self.rate = out.max() * 1.05
        step = (sp.identity(len(order)) + q / self.rate).T.tocsr()
        told = np.array([tells(s) for s in order], float) if tells else np.zeros((len(order), 0))
        told[over] = 0.0
        p = np.zeros(len(order))
        p[0] = 1.0
        done, self.told = [], np.zeros(told.shape[1])
        while True:
            done.append(p[over].sum())
            self.told += p @ told / self.rate
            if 1.0 - done[-1] < 1e-14:
                break
            p = step @ p
        self.done = np.array(done)
        rest = 1.0 - self.done
        k = np.arange(len(rest))
        self.mean = rest.sum() / self.rate
        self.sd = np.sqrt(2.0 * (rest * (k + 1)).sum() / self.rate**2 - self.mean**2)

    def cdf(self, t):
        middle = self.rate * t
        reach = 12 * np.sqrt(middle) + 30
        k = np.arange(max(0, int(middle - reach)), min(len(self.done), int(middle + reach)))
        return 1.0 - ((1.0 - self.done[k]) * poisson.pmf(k, middle)).sum()

    def percentiles(self):
        top = self.mean + 12 * self.sd
        return {n: brentq(lambda t: self.cdf(t) - p, 1e-6, top, xtol=1e-13) for n, p in SHARES.items()}


class Transformed:
    def __init__(self, start, moves, tells=None):
        order, edges = explore(start, moves)
        q, out = generator(order, edges)
        keep = np.flatnonzero(out > 0.0)
        self.a = q[keep][:, keep].tocsc()
        self.exit = -np.asarray(self.a.sum(axis=1)).ravel()
        self.first = int(np.flatnonzero(keep == 0)[0])
        lu = la.splu(-self.a)
        m1 = lu.solve(np.ones(len(keep)))
        m2 = lu.solve(2.0 * m1)
        self.mean = m1[self.first]
        self.sd = np.sqrt(m2[self.first] - self.mean**2)
        told = np.array([tells(order[k]) for k in keep], float) if tells else np.zeros((len(keep), 0))
        self.told = lu.solve(told)[self.first] if told.shape[1] else np.zeros(0)

    def laplace(self, s):
        eye = sp.identity(self.a.shape[0], dtype=complex, format="csc")
        return la.spsolve(s * eye - self.a, self.exit.astype(complex))[self.first]

    def cdf(self, t):
        return euler(lambda s: self.laplace(s) / s, t)


def euler(f, t, a=20.0, n=30, m=12):
    """Value at t of the function whose Laplace transform is f."""
    terms = [np.exp(a / 2) / (2 * t) * f(a / (2 * t)).real]
    for k in range(1, n + m + 1):
        terms.append(np.exp(a / 2) / t * (-1) ** k * f((a + 2j * k * np.pi) / (2 * t)).real)
    sums = np.cumsum(terms)
    from math import comb
    return sum(comb(m, j) * 2.0**-m * sums[n + j] for j in range(m + 1))


def both(first, second, names):
    """A row of figures from the first chain, and the greatest discrepancy of the second from it (relative for moments and
    times, absolute for chances)."""
    u, v = Uniformised(*first), Transformed(*second)
    p = u.percentiles()
    off = [abs(u.mean / v.mean - 1), abs(u.sd / v.sd - 1)]
    off += [abs(v.cdf(p[n]) - share) for n, share in SHARES.items()]
    off += list(np.abs(u.told - v.told) / v.mean)
    row = {"mean": u.mean, "sd": u.sd, **p, **dict(zip(names, u.told))}
    return {k: f"{x:.9f}" for k, x in row.items()} | {"second_method_off": f"{max(off):.1e}"}
