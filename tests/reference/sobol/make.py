"""Points of the Sobol sequence by SciPy, unscrambled. Writes points.json beside this file.

Run:  python3 make.py
Made with Python 3.11, scipy 1.17. Points 0 to 63 in 64 dimensions, and of points 1000 and 4095 as well; scipy.stats.qmc.Sobol counts them in Gray-code order,
from the direction numbers of Joe and Kuo (new-joe-kuo-6.21201).
"""
import json
import os

from scipy.stats import qmc

sequence = qmc.Sobol(d=64, scramble=False, bits=32)
points = sequence.random(4096)
chosen = [*range(64), 1000, 4095]
out = [{'index': k, 'point': [float(x) for x in points[k]]} for k in chosen]
with open(os.path.join(os.path.dirname(__file__), 'points.json'), 'w') as f:
    json.dump(out, f)
    f.write('\n')
