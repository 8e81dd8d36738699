"""Plays all jobs and writes exact.csv and results.csv. `nice python run.py [replications [job ...]]` (about 15 minutes on
two quiet cores). With jobs named, only their rows of results.csv are computed again.

exact.csv    job,who,figure,value                                times in whole microseconds, volumes in m3
results.csv  job,figure,value,standard_error,replications        times in seconds

In results.csv `<figure>.mean`, `.sd` and `.P10` to `.P95` (Hyndman-Fan type 7). Time accounts are summed over all loaders or all
rakers: `loaders.Hauling_s.mean` is the mean, `loaders.Hauling.share` its share of all their time on the job (a ratio of
means). Standard errors: means by the sample sd, shares by the delta method, sd and percentiles by the bootstrap.
"""

import csv
import sys
from multiprocessing import Pool
from zlib import crc32

import numpy

from jobs import EXACT, HERE, RANDOM
from model import LOADER_ACCOUNTS, RAKER_ACCOUNTS, SECOND, Draws, play

SEED, CHUNK, BOOTSTRAP = 20_261, 500, 300
PERCENTILES = [10, 50, 80, 90, 95]
IN_LAW = ["completion_s", "finish_s", "completion_clock_s", "finish_clock_s", "progress_half_s", "loads", "placed_m3",
          "short_m3", "left_over_m3", "fuel_l", "cost"]


def check(run):
    """Time accounts close and nothing is lost, in every run."""
    for accounts in run.loader_accounts() + run.raker_accounts():
        assert sum(accounts.values()) == run.finish[0], (accounts, run.finish)
    on_piles_or_due = run.delivered - run.placed()
    assert on_piles_or_due > -1e-9
    assert sum(zone.loads for zone in run.zones) == run.loads == len(run.out)
    assert all(zone.room.held == 0 and zone.bound >= 0 for zone in run.zones)


def exact_rows(name, spec):
    run = play(spec, Draws(0))
    check(run)
    yield name, "job", "completion_us", run.completion[0]
    yield name, "job", "completion_clock_us", run.completion[1]
    yield name, "job", "finish_us", run.finish[0]
    yield name, "job", "finish_clock_us", run.finish[1]
    yield name, "job", "loads", run.loads
    yield name, "job", "placed_m3", f"{run.placed():.9f}"
    yield name, "job", "left_over_m3", f"{run.delivered - run.placed():.9f}"
    yield name, "job", "short_m3", f"{sum(run.short(z) for z in run.zones):.9f}"
    yield name, "job", "fuel_l", f"{run.fuel():.9f}"
    yield name, "job", "cost", f"{run.cost():.9f}"
    done, total, twentieth = 0.0, run.placed(), 0
    for clock, volume in run.out:  # where rounding in the last digit decides, no figure is given
        done += volume
        while twentieth < 20 and done >= (twentieth + 1) / 20 * total - 1e-9:
            twentieth += 1
            if twentieth == 20 or abs(done - twentieth / 20 * total) > 1e-6:
                yield name, "job", f"progress_{twentieth}_clock_us", clock - run.start
    for i, zone in enumerate(run.zones):
        yield name, f"zone {i + 1}", "loads", zone.loads
        yield name, f"zone {i + 1}", "placed_m3", f"{zone.placed:.9f}"
    for who, all_accounts in (("loader", run.loader_accounts()), ("raker", run.raker_accounts())):
        for i, accounts in enumerate(all_accounts):
            for activity, spent in accounts.items():
                yield name, f"{who} {i + 1}", f"{activity}_us", spent


def one_run(spec, draws):
    run = play(spec, draws)
    check(run)
    completion, finish = run.completion, run.finish
    row = [completion[0] / SECOND, finish[0] / SECOND, completion[1] / SECOND, finish[1] / SECOND,
           run.progress()[9] / SECOND, run.loads, run.placed(), sum(run.short(z) for z in run.zones),
           run.delivered - run.placed(), run.fuel(), run.cost()]
    for activities, all_accounts in ((LOADER_ACCOUNTS, run.loader_accounts()), (RAKER_ACCOUNTS, run.raker_accounts())):
        row += [sum(accounts[a] for accounts in all_accounts) / SECOND for a in activities]
    return row


def chunk(task):
    name, number, runs = task
    draws = Draws(SEED, crc32(name.encode()), number)
    return [one_run(RANDOM[name][1], draws) for _ in range(runs)]


def law_rows(name, table):
    """Mean, sd and percentiles with their standard errors."""
    n = len(table)
    rng = numpy.random.default_rng([SEED, crc32(name.encode())])
    for column, figure in enumerate(IN_LAW):
        values = table[:, column]
        again = values[rng.integers(0, n, (BOOTSTRAP, n))]
        sd = values.std(ddof=1)
        yield name, f"{figure}.mean", values.mean(), sd / n**0.5, n
        yield name, f"{figure}.sd", sd, again.std(axis=1, ddof=1).std(), n
        errors = numpy.percentile(again, PERCENTILES, axis=1).std(axis=1)
        for p, value, error in zip(PERCENTILES, numpy.percentile(values, PERCENTILES), errors):
            yield name, f"{figure}.P{p}", value, error, n


def account_rows(name, table, spec):
    n, column = len(table), len(IN_LAW)
    finish = table[:, IN_LAW.index("finish_s")]
    for who, activities in (("loaders", LOADER_ACCOUNTS), ("rakers", RAKER_ACCOUNTS)):
        time = finish * len(spec[who])
        for activity in activities:
            spent = table[:, column]
            column += 1
            if time.any():
                yield name, f"{who}.{activity}_s.mean", spent.mean(), spent.std(ddof=1) / n**0.5, n
                share = spent.mean() / time.mean()
                error = (spent - share * time).std(ddof=1) / time.mean() / n**0.5
                yield name, f"{who}.{activity}.share", share, error, n


def write(file, header, rows):
    with open(HERE / file, "w", newline="") as out:
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(header)
        writer.writerows(rows)


def kept_rows(replaced):
    with open(HERE / "results.csv", newline="") as table:
        return [row for row in list(csv.reader(table))[1:] if row[0] not in replaced]


def main():
    replications = int(sys.argv[1]) if len(sys.argv) > 1 else 40_000
    names = sys.argv[2:] or list(RANDOM)
    write("exact.csv", ["job", "who", "figure", "value"],
          [row for name, (_, spec) in EXACT.items() for row in exact_rows(name, spec)])
    rows = kept_rows(names) if sys.argv[2:] else []
    with Pool(2) as pool:
        for name in names:
            spec = RANDOM[name][1]
            tasks = [(name, i, CHUNK) for i in range(replications // CHUNK)]
            table = numpy.array([row for part in pool.imap(chunk, tasks) for row in part])
            for job, figure, value, error, n in [*law_rows(name, table), *account_rows(name, table, spec)]:
                rows.append((job, figure, f"{value:.9g}", f"{error:.4g}", n))
            print(name, "done", flush=True)
    rows.sort(key=lambda row: list(RANDOM).index(row[0]))
    write("results.csv", ["job", "figure", "value", "standard_error", "replications"], rows)


if __name__ == "__main__":
    main()
