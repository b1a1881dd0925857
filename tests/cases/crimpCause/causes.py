"""Steps of the rule of CRIMPCAUSE computed with SciPy, independent of the sources: python3 causes.py > causes.json (from this folder).

Random crimps of invented combinations. Of each list: the scatter of step 2; for some sets of causes how much better they fit than none (step 4, from the
density of the multivariate t distribution that the model implies), the coefficients and their variances (step 7, normal equations by numpy.linalg), and
the numbers reported (step 11, numpy.linalg.lstsq, quantiles of scipy.stats.t).
"""
import json
import numpy as np
import scipy
from scipy import stats

SPREAD, PRIOR_SCATTER, PRIOR_WEIGHT = 0.05, 0.3, 2
rng = np.random.default_rng(20261129)


def crimps():
    combinations, dies, days = int(rng.integers(3, 7)), 3, int(rng.integers(5, 9))
    count = int(rng.integers(18, 40))
    tolerance = float(rng.choice([0.05, 0.12, 1.0]))
    time = np.sort(rng.integers(0, days, count)) * 1.5 + 46000
    combination = np.concatenate([np.arange(combinations), rng.integers(0, combinations, count - combinations)])
    die = combination % dies
    deviation = tolerance * (0.3 * rng.standard_normal(count) + (time > np.median(time)) * 0.8 + (combination == 1) * 0.9)
    return combination, die, time, np.round(deviation, 4), tolerance


def scatter(combination, y):
    differences = np.concatenate([np.abs(np.diff(y[combination == c])) / np.sqrt(2) for c in np.unique(combination)])
    most = 3 * max(1.4826 * np.median(differences), 0.02) if len(differences) >= 6 else np.inf
    return (PRIOR_WEIGHT * PRIOR_SCATTER**2 + np.sum(np.minimum(differences, most) ** 2)) / (PRIOR_WEIGHT + len(differences))


def column(cause, combination, die, time):
    kind, of, boundary = cause["kind"], cause["of"], cause.get("boundary")
    index = np.arange(len(time))
    ofDie = die == of if kind.startswith("die") else np.ones(len(time), bool)
    if kind == "combination":
        return (combination == of) * 1.0
    if kind == "crimp":
        return (index == of) * 1.0
    if kind in ("machine", "die"):
        return ofDie * 1.0
    if kind.endswith("since"):
        return ofDie * (index >= boundary) * 1.0
    if kind == "machine until":
        return (index < boundary) * 1.0
    if kind.endswith("rising until"):
        return np.where(index < boundary, (time - time[0]) / (time[boundary - 1] - time[0]), 0)
    return ofDie * np.where(index >= boundary, (time - time[boundary]) / (time[-1] - time[boundary]), 0)


def now(cause):
    return 0.0 if cause["kind"].endswith("until") else 1.0


def fit(X, kappa, combination, y, s2):
    n = len(y)
    same = combination[:, None] == combination[None, :]
    shape = np.eye(n) + SPREAD**2 / s2 * same + (X * (kappa**2 / s2)) @ X.T
    return -2 * stats.multivariate_t(np.zeros(n), PRIOR_SCATTER**2 * shape, df=PRIOR_WEIGHT).logpdf(y), shape


def posterior(X, kappa, combination, y, s2):
    n = len(y)
    same = combination[:, None] == combination[None, :]
    inverse = np.linalg.inv(np.eye(n) + SPREAD**2 / s2 * same)
    A = X.T @ inverse @ X + np.diag(s2 / kappa**2)
    beta = np.linalg.solve(A, X.T @ inverse @ y)
    left = (PRIOR_WEIGHT * PRIOR_SCATTER**2 + y @ inverse @ y - beta @ A @ beta) / (n + PRIOR_WEIGHT)
    return beta, left * np.diag(np.linalg.inv(A))


def reported(causes, combination, die, time, d, confidence=0.95):
    strays = [c["of"] for c in causes if c["kind"] == "crimp"]
    own = [c["of"] for c in causes if c["kind"] == "combination"]
    lines = [c for c in causes if c["kind"] not in ("crimp", "combination", "machine")]
    counted = np.array([i for i in range(len(d)) if i not in strays])
    used = np.array([i for i in counted if combination[i] not in own])
    L = np.column_stack([np.ones(len(d))] + [column(c, combination, die, time) for c in lines])
    levels = (combination[used][:, None] == np.unique(combination[used])[None, :]) * 1.0
    beta = np.linalg.lstsq(L[used], d[used], rcond=None)[0]
    full = np.column_stack([levels, L[used][:, 1:]])
    left = d[used] - full @ np.linalg.lstsq(full, d[used], rcond=None)[0]
    df = len(used) - np.linalg.matrix_rank(full)
    v = np.array([1.0] + [now(c) if c["kind"].startswith("machine") else 0.0 for c in lines])
    half = stats.t.ppf((1 + confidence) / 2, df) * np.sqrt(left @ left / df * (v @ np.linalg.pinv(L[used].T @ L[used]) @ v))
    means = [float(np.mean((d - L @ beta)[[i for i in counted if combination[i] == c]])) for c in range(combination.max() + 1)]
    return float(v @ beta), float(half), int(df), means


cases = []
for _ in range(8):
    combination, die, time, d, tolerance = crimps()
    y = d / tolerance
    s2 = scatter(combination, y)
    boundaries = [i for i in range(1, len(d)) if time[i] > time[i - 1] and i >= 4 and len(d) - i >= 4 and time[-1] > time[i]]
    b, later = boundaries[len(boundaries) // 2], boundaries[-1]
    sets = [
        [{"kind": "machine", "of": -1}],
        [{"kind": "machine", "of": -1}, {"kind": "combination", "of": 1}],
        [{"kind": "combination", "of": 1}, {"kind": "die", "of": 2}, {"kind": "machine since", "of": -1, "boundary": b}],
        [{"kind": "combination", "of": 1}, {"kind": "machine until", "of": -1, "boundary": b}],
        [{"kind": "machine", "of": -1}, {"kind": "machine rising", "of": -1, "boundary": 0}],
        [{"kind": "machine rising", "of": -1, "boundary": b}, {"kind": "die rising", "of": 0, "boundary": 0}],
        [{"kind": "combination", "of": 0}, {"kind": "machine rising until", "of": -1, "boundary": later}],
    ]
    empty, _shape = fit(np.zeros((len(d), 0)), np.zeros(0), combination, y, s2)
    models = []
    for causes in sets:
        X = np.column_stack([column(c, combination, die, time) for c in causes])
        kappa = np.array([2.0 if c["kind"] == "crimp" else 1.0 for c in causes])
        beta, variance = posterior(X, kappa, combination, y, s2)
        offset, half, df, means = reported(causes, combination, die, time, d)
        models.append({
            "causes": causes, "better": round(float(empty - fit(X, kappa, combination, y, s2)[0]), 8),
            "coefficients": [round(float(x), 9) for x in beta], "variances": [round(float(x), 9) for x in variance],
            "offset": round(offset, 9), "half": round(half, 9), "df": df, "own": [round(x, 9) for x in means],
        })
    cases.append({
        "tolerance": tolerance, "scatter": round(float(s2), 10), "models": models,
        "crimps": [[f"N{c}", f"D{g}", float(t), float(x)] for c, g, t, x in zip(combination, die, time, d)],
    })
print(json.dumps({"source": f"causes.py beside this file, SciPy {scipy.__version__}, NumPy {np.__version__}", "cases": cases}, indent=None, separators=(", ", ": ")).replace('{"tolerance"', '\n{"tolerance"'))
