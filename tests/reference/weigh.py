"""The numbers behind weighing, by general-purpose libraries: intervals by statsmodels, curves by lifelines.

One line of JSON in, one out: {"portions": [[hits, of], ...], "curves": [[[days, arrived], ...], ...]} gives
{"portions": [[low, high], ...], "curves": [{"steps": [[days, share, low, high], ...], "median": d, "low": d, "high": d}, ...]}.
"""
import json
import sys
import warnings

from lifelines import KaplanMeierFitter
from lifelines.utils import median_survival_times
from statsmodels.stats.proportion import proportion_confint

warnings.simplefilter("ignore")


def finite(x):
    x = float(x)
    return x if x == x and x not in (float("inf"), float("-inf")) else None


def curve(ways):
    fitted = KaplanMeierFitter().fit([d for d, _ in ways], [a for _, a in ways])
    inside = fitted.confidence_interval_survival_function_
    days = sorted({d for d, arrived in ways if arrived})
    low, high = inside.columns
    steps = [[d, finite(fitted.survival_function_.iloc[:, 0].loc[d]), finite(inside[low].loc[d]), finite(inside[high].loc[d])] for d in days]
    ends = median_survival_times(inside)
    return {"steps": steps, "median": finite(fitted.median_survival_time_), "low": finite(ends[low].iloc[0]), "high": finite(ends[high].iloc[0])}


for line in sys.stdin:
    asked = json.loads(line)
    portions = [list(map(float, proportion_confint(h, n, alpha=0.05, method="wilson"))) for h, n in asked["portions"]]
    print(json.dumps({"portions": portions, "curves": [curve(ways) for ways in asked["curves"]]}), flush=True)
