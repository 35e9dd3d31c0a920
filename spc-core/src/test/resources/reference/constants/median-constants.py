# Standard deviation of the median and median of the range of n standard normal values, by adaptive quadrature (SciPy).
import json
from math import lgamma, exp, sqrt, inf
from scipy.integrate import quad, dblquad
from scipy.optimize import brentq
from scipy.stats import norm

def sd_median(n):
    if n % 2:
        m = n // 2
        f = exp(lgamma(n + 1) - 2 * lgamma(m + 1))
        return sqrt(2 * quad(lambda x: x * x * f * norm.cdf(x) ** m * norm.sf(x) ** m * norm.pdf(x), 0, 12, epsabs=1e-14, epsrel=1e-13, limit=400)[0])
    m = n // 2
    f = exp(lgamma(n + 1) - 2 * lgamma(m))
    # the mean of the middle two, v, and half their distance, w: a = v - w, b = v + w, Jacobian 2
    g = lambda w, v: v * v * 2 * f * norm.cdf(v - w) ** (m - 1) * norm.sf(v + w) ** (m - 1) * norm.pdf(v - w) * norm.pdf(v + w)
    return sqrt(2 * dblquad(g, 0, 9, 0, 9, epsabs=1e-13, epsrel=1e-12)[0])

def median_range(n):
    F = lambda w: n * quad(lambda x: norm.pdf(x) * (norm.cdf(x + w) - norm.cdf(x)) ** (n - 1), -12, 12, epsabs=1e-14, epsrel=1e-13, limit=400)[0]
    return brentq(lambda w: F(w) - 0.5, 0.1, 10, xtol=1e-14)

printed_a6 = {2: 1.880, 3: 1.187, 4: 0.796, 5: 0.691, 6: 0.548, 7: 0.508}
printed_d4 = {2: 0.954, 3: 1.588, 4: 1.978, 5: 2.257, 6: 2.472, 7: 2.645}
cases = [{"id": "median-%02d" % n, "input": {"n": n}, "expected": dict({"sd_median": sd_median(n), "d4": median_range(n)},
          **({"a6_printed": printed_a6[n], "d4_printed": printed_d4[n]} if n in printed_a6 else {}))}
         for n in (2, 3, 4, 5, 6, 7, 8, 9, 10, 15, 20, 25)]
json.dump({"source": "order statistics of the normal distribution; printed factors of median charts (ASTM STP 15D; Ishikawa), from memory",
           "edition": "STP 15D 1976", "made-by": "median-constants.py, SciPy", "units": "standard deviations",
           "tolerance": "1e-10 computed; printed digits", "cases": cases}, open("medians.json", "w"), indent=1)
