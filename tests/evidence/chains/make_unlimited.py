"""Writes largest.csv: completion of N loads, one loader, one raker, no limit to room, any laws:
R_n = max(F_n, R_{n-1}) + W_n, F_n = A_1 + ... + A_n (the recursion of Lindley 1952, kept with its clock).

First method: the joint law of (F, R) on a lattice. A law is put on the lattice by hat functions, which keeps its mean, so that
errors fall with the square of the step (den Iseger, Smith & Dekker 1997 use the same device) and Richardson's extrapolation
from steps h and h/2 applies; the figure from h/2 and h/4 is written, and what it moved by is the error stated.
Second method: N = 2 by Gauss quadrature of P(A1 + max(W1, A2) + W2 <= t); all N by 16 scrambled Sobol nets of 2^16 points
(Owen 1998), with the standard error over the nets.
"""
import numpy as np
from scipy import stats
from scipy.fft import irfft, rfft, next_fast_len
from scipy.integrate import quad
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from make_lines import write
from solve import SHARES


class Law:
    """A law of mean 1 by its family and figures, times a mean. below(x) is the integral of the distribution function."""

    def __init__(self, text, mean):
        family, *figures = text.split()
        f = [float(x) for x in figures]
        if family == "lognormal":
            s2 = np.log1p(f[0] ** 2)
            self.law = stats.lognorm(np.sqrt(s2), scale=mean * np.exp(-s2 / 2))
            tilted = stats.lognorm(np.sqrt(s2), scale=mean * np.exp(s2 / 2))
        elif family == "gamma":
            k = 1 / f[0] ** 2
            self.law, tilted = stats.gamma(k, scale=mean / k), stats.gamma(k + 1, scale=mean / k)
        elif family == "uniform":
            a, b = (mean * x for x in f)
            self.law = stats.uniform(a, b - a)
            tilted = None
            self.below = lambda x: np.where(x < b, np.clip(x - a, 0, None) ** 2 / 2 / (b - a), x - (a + b) / 2)
        elif family == "triangular":
            a, m, b = (mean * x for x in f)
            self.law, tilted = stats.triang((m - a) / (b - a), a, b - a), None
            up = lambda x: np.clip(x, 0, None) ** 3 / 3
            self.below = lambda x: (up(x - a) / (m - a) - up(x - m) * (1 / (m - a) + 1 / (b - m)) + up(x - b) / (b - m)) / (b - a)
        elif family == "pert":
            a, m, b = (mean * x for x in f)
            p = 1 + 4 * (m - a) / (b - a)
            q = 6 - p
            self.law = stats.beta(p, q, a, b - a)
            share, tilted = p / (p + q), stats.beta(p + 1, q, a, b - a)
            part = lambda x: a * self.law.cdf(x) + (b - a) * share * tilted.cdf(x)
            self.below = lambda x: x * self.law.cdf(x) - part(x)
        if family in ("lognormal", "gamma"):
            self.below = lambda x: x * self.law.cdf(x) - mean * tilted.cdf(x)
        assert abs(self.law.mean() - mean) < 1e-9

    def lattice(self, h, m):
        g = self.below(np.arange(-1, m + 1) * h)
        g[0] = 0.0
        return np.diff(g, 2) / h


def convolve(p, law, axis):
    m = p.shape[axis]
    n = next_fast_len(2 * m, real=True)
    shape = (n // 2 + 1, 1) if axis == 0 else (1, n // 2 + 1)
    out = irfft(rfft(p, n, axis=axis, workers=2) * rfft(law, n).reshape(shape), n, axis=axis, workers=2)
    return out[:m] if axis == 0 else out[:, :m]


def on_lattice(a, w, loads, top, m):
    """(mean, sd, percentiles) from the law of (F, R) with R >= F, row F and column R; what passes the top never comes back."""
    h = top / m
    pa, pw = a.lattice(h, m), w.lattice(h, m)
    p = np.zeros((m, m))
    p[0, 0] = 1.0
    for _ in range(loads):
        p = convolve(p, pa, 0)
        late = np.tril(p, -1).sum(axis=1)
        p = np.triu(p)
        p[np.arange(m), np.arange(m)] += late
        p = convolve(p, pw, 1)
    r = p.sum(axis=0)
    x = np.arange(m) * h
    mean = (r * x).sum()
    sd = np.sqrt((r * x * x).sum() - mean**2)
    c = CubicSpline(x + h / 2, np.cumsum(r))
    return np.array([mean, sd] + [brentq(lambda t: c(t) - s, h, top - h) for s in SHARES.values()]), 1 - r.sum()


def sobol(a, w, loads, seed):
    u = stats.qmc.Sobol(2 * loads, seed=seed).random_base2(16)
    f = r = 0.0
    for n in range(loads):
        f = f + a.law.ppf(u[:, 2 * n])
        r = np.maximum(f, r) + w.law.ppf(u[:, 2 * n + 1])
    return np.array([r.mean(), r.std(), *np.quantile(r, list(SHARES.values()))])


def two_loads(a, w, t):
    """P(A1 + max(W1, A2) + W2 <= t)."""
    x, k = np.polynomial.legendre.leggauss(60)

    inner = lambda s: quad(lambda y: w.law.pdf(y) * w.law.cdf(s - y) * a.law.cdf(s - y), 0, s, limit=400, epsabs=1e-11,
                           points=[p for p in (*kinks(w), *[s - k for k in (*kinks(w), *kinks(a))]) if 0 < p < s] or None)[0]
    cuts = sorted({0.0, t, *[p for p in (*kinks(a), 0.5 * t) if 0 < p < t]})
    total = 0.0
    for lo, hi in zip(cuts, cuts[1:]):
        at = (hi - lo) / 2 * x + (hi + lo) / 2
        total += (hi - lo) / 2 * sum(ki * a.law.pdf(z) * inner(t - z) for z, ki in zip(at, k))
    return total


def kinks(law):
    low, high = law.law.support()
    out = [p for p in (low, high) if np.isfinite(p)]
    if law.law.dist.name == "triang":
        c, a, scale = law.law.args
        out.append(a + c * scale)
    return out


CASES = [  # loads, law of loading, mean raking, law of raking
    (2, "lognormal 0.4", 1.0, "lognormal 0.4"),
    (5, "lognormal 0.4", 1.0, "lognormal 0.4"),
    (10, "lognormal 0.4", 1.0, "lognormal 0.4"),
    (2, "triangular 0.4 0.8 1.8", 1.1, "triangular 0.4 0.8 1.8"),
    (5, "triangular 0.4 0.8 1.8", 1.1, "triangular 0.4 0.8 1.8"),
    (10, "triangular 0.4 0.8 1.8", 1.1, "triangular 0.4 0.8 1.8"),
    (5, "pert 0.5 0.85 2.1", 0.9, "gamma 0.5"),
    (10, "gamma 0.6", 0.9, "uniform 0.2 1.8"),
]


def main():
    rows = []
    for loads, load_law, rake, rake_law in CASES:
        a, w = Law(load_law, 1.0), Law(rake_law, rake)
        nets = np.array([sobol(a, w, loads, seed) for seed in range(16)])
        net, net_error = nets.mean(axis=0), nets.std(axis=0, ddof=1) / 4
        top = net[0] + 11 * net[1]
        coarse, mid, fine = (on_lattice(a, w, loads, top, m) for m in (512, 1024, 2048))
        lost = fine[1]
        first, figures = (4 * mid[0] - coarse[0]) / 3, (4 * fine[0] - mid[0]) / 3
        error = np.abs(figures - first).max()
        apart = np.abs(figures - net)
        row = {"loads": loads, "load_law": load_law, "rake": rake, "rake_law": rake_law}
        row |= dict(zip(["mean", "sd", *SHARES], (f"{x:.6f}" for x in figures)))
        row |= {"moved_by_halving": f"{error:.1e}", "beyond_lattice": f"{lost:.0e}", "sobol_off": f"{apart.max():.1e}",
                "sobol_off_in_errors": f"{(apart / net_error).max():.1f}"}
        off = apart.max()
        if loads == 2:
            off = max(abs(two_loads(a, w, t) - p) for t, p in zip(figures[2:], SHARES.values()))
        row["second_method_off"] = f"{off:.1e}"
        rows.append(row)
        print(row, flush=True)
    write("largest.csv", rows)


if __name__ == "__main__":
    main()
