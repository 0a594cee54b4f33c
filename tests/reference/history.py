"""Slopes of rows of results by scipy.stats.theilslopes: a list of [x, y] on standard input, their slopes on standard output."""

import json
import sys

from scipy.stats import theilslopes

rows = json.load(sys.stdin)
json.dump([float(theilslopes(y, x)[0]) for x, y in rows], sys.stdout)
