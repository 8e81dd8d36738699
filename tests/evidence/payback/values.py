"""Present values and paybacks by a general-purpose library, for tests/evidence/payback/values.csv.

    python3 -m venv venv && venv/bin/pip install numpy==2.4.6 numpy-financial==1.0.0
    venv/bin/python values.py > values.csv

All inputs are invented. `npv` discounts one sum at the end of each year after the price is paid; `pv` is the same by the
annuity formula; payback is where the running sum of the savings, by numpy's `interp`, reaches the price; `irr` is the interest at which the
present value is nothing.
"""

import csv
import math
import sys

import numpy as np
import numpy_financial as npf

CASES = [
    # price, saved a job, jobs a year, years, interest
    (890, 17.25, 27, 8, 0.06),
    (890, 17.25, 5, 8, 0.06),
    (1150, 0.4, 30, 8, 0.06),
    (480, -3.5, 12, 4, 0.06),
    (2500, 31, 40, 15, 0.035),
    (2500, 31, 40, 1, 0.1),
    (950, 14.5, 12, 10, 0),
    (3200, 88, 9, 20, 0.125),
    (0, 5, 3, 5, 0.05),
    (1, 1000, 250, 50, 1),
]

out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["price", "per_job", "jobs", "years", "interest", "npv", "annuity", "payback_years", "irr"])
for price, per_job, jobs, years, interest in CASES:
    yearly = per_job * jobs
    npv = npf.npv(interest, [-price] + [yearly] * years)
    # Without interest the library divides zero by zero on its way to the same sum.
    with np.errstate(invalid="ignore"):
        annuity = -npf.pv(interest, years, yearly) - price
    back = float("inf")
    if yearly > 0:
        counted = np.arange(math.ceil(price / yearly) + 2)
        back = np.interp(price, np.cumsum(np.full(len(counted), yearly)) - yearly, counted)
    irr = npf.irr([-price] + [yearly] * years) if yearly > 0 and price > 0 else float("nan")
    row = [price, per_job, jobs, years, interest, *(repr(float(v)) for v in (npv, annuity, back, irr))]
    out.writerow("" if v == "nan" else v for v in row)
